package dough

import (
	"strconv"
	"strings"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"
)

// figure prints a quantity without its unit, for a line of numbers.
func figure(v interface{ String() string }) string {
	number, _, _ := strings.Cut(v.String(), " ")
	return number
}

func subscript(letter string, i int) string { return letter + "_" + strconv.Itoa(i+1) }

// Working derives the weights: the dough from the target, the flour from the dough, each line
// from the flour, and what each preferment holds.
func (b Batch) Working() working.Working {
	w := working.Working{Title: "Dough for " + b.dough.String()}
	if len(b.mass) == 0 {
		return w
	}
	if b.weighed {
		w.Steps = append(w.Steps, b.weighedSteps()...)
		w.Steps = append(w.Steps, b.shareSteps()...)
		return w
	}
	w.Steps = append(w.Steps, b.targetSteps()...)
	w.Steps = append(w.Steps, b.totalStep(), b.flourStep())
	w.Steps = append(w.Steps, b.lineSteps()...)
	for k := 1; k < len(b.work); k++ {
		w.Steps = append(w.Steps, b.nodeSteps(k)...)
	}
	w.Steps = append(w.Steps, b.shareSteps()...)
	return w
}

func (b *Batch) targetSteps() []working.Step {
	var n int
	var each quantity.Mass
	var bake, process quantity.Percent
	switch t := b.target.(type) {
	case Pieces:
		n, each, process = t.Count, t.Each, t.ProcessLoss
	case Baked:
		n, each, bake, process = t.Pieces, t.Each, t.Loss, t.ProcessLoss
	case ByVolume:
		return []working.Step{{
			Name: "dough that fills the vessel when risen", Symbol: "D", Formula: "V × ρ × 1000 ÷ (1 + r ÷ 100)",
			Where: []working.Binding{
				{Symbol: "V", Meaning: "volume of the vessel", Value: t.Volume.Text(quantity.Liter, 6)},
				{Symbol: "ρ", Meaning: "density of the dough before it rises", Value: decimalText(t.Density) + " kg/L"},
				{Symbol: "r", Meaning: "increase in volume", Value: t.Rise.String()},
			},
			Numbers: figure2(t.Volume.Text(quantity.Liter, 6)) + " × " + decimalText(t.Density) + " × 1000 ÷ (1 + " + figure(t.Rise) + " ÷ 100)",
			Value:   b.dough.Text(quantity.Gram, 3), Tolerance: 0.001, Note: "rounded to the microgram", Source: working.Algebra(),
		}}
	case ByLevain:
		return []working.Step{b.stockStep(t.Preferment, t.Mass)}
	case AtHand:
		for _, s := range t.Stock {
			if s.Name == b.goal.limiting {
				return []working.Step{b.stockStep(s.Name, s.Mass)}
			}
		}
		return nil
	default:
		return nil
	}
	return []working.Step{{
		Name: "dough to mix", Symbol: "D", Formula: "n × m ÷ (1 − l ÷ 100) ÷ (1 − v ÷ 100)",
		Where: []working.Binding{
			{Symbol: "n", Meaning: "number of pieces", Value: strconv.Itoa(n)},
			{Symbol: "m", Meaning: "weight of one, " + map[bool]string{true: "baked and cooled", false: "as scaled"}[bakedTarget(b.target)], Value: each.String()},
			{Symbol: "l", Meaning: "bake loss, of the scaling weight", Value: bake.String()},
			{Symbol: "v", Meaning: "process loss, of the dough mixed", Value: process.String()},
		},
		Numbers: strconv.Itoa(n) + " × " + figure(each) + " ÷ (1 − " + figure(bake) + " ÷ 100) ÷ (1 − " + figure(process) + " ÷ 100)",
		Value:   b.dough.Text(quantity.Gram, 6), Note: "rounded half to even to the microgram", Source: working.Algebra(),
	}}
}

func bakedTarget(t Target) bool {
	_, ok := t.(Baked)
	return ok
}

// stockStep finds the flour from what is at hand of one ingredient or preferment.
func (b *Batch) stockStep(name string, m quantity.Mass) working.Step {
	var share quantity.Percent
	if j := b.c.item(name); j != nobody {
		share = b.c.items[j].percent
	} else if k := b.c.node(name); k != nobody {
		share = shareOfFlour(b.c.nodes[k].shareSum())
	}
	return working.Step{
		Name: "flour from what is at hand", Symbol: "F_0", Formula: "m ÷ (q ÷ 100)",
		Where: []working.Binding{
			{Symbol: "m", Meaning: name + " at hand", Value: m.String()},
			{Symbol: "q", Meaning: name + " as a percentage of total flour", Value: share.String()},
		},
		Numbers: figure(m) + " ÷ (" + figure(share) + " ÷ 100)",
		Value:   b.goal.flour.Text(quantity.Gram, 6), Tolerance: b.goal.flour.Grams()/millionthsFloat(share) + 1e-6*float64(len(b.c.items)+1)*100/share.Points(),
		Note: "less a few micrograms, so that rounded lines stay within what is at hand", Source: working.Algebra(),
	}
}

func millionthsFloat(p quantity.Percent) float64 { return p.Points() * 1e6 }

func decimalText(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

func figure2(text string) string {
	number, _, _ := strings.Cut(text, " ")
	return number
}

func (b *Batch) totalStep() working.Step {
	s := working.Step{Name: "total of the percentages", Symbol: "P", Value: b.c.total.String(), Exact: true, Source: sources.Gisslen}
	for i := range b.c.items {
		it := &b.c.items[i]
		sym := subscript("p", i)
		s.Where = append(s.Where, working.Binding{Symbol: sym, Meaning: it.name, Value: it.percent.String()})
		if i > 0 {
			s.Formula += " + "
			s.Numbers += " + "
		}
		s.Formula += sym
		s.Numbers += figure(it.percent)
	}
	return s
}

func (b *Batch) flourStep() working.Step {
	if b.goal.flour.IsZero() {
		return working.Step{
			Name: "total flour", Symbol: "F", Formula: "D ÷ (P ÷ 100)",
			Where:   []working.Binding{{Symbol: "D", Meaning: "dough", Value: b.dough.String()}},
			Numbers: figure(b.dough) + " ÷ (" + figure(b.c.total) + " ÷ 100)",
			Value:   b.flour.Text(quantity.Gram, 6), Tolerance: 1e-6 * float64(b.c.flours),
			Note: "the sum of the flour lines, each apportioned to the microgram", Source: sources.Gisslen,
		}
	}
	return working.Step{
		Name: "total flour", Symbol: "F", Formula: "F_0",
		Where:   []working.Binding{{Symbol: "F_0", Meaning: "flour asked for", Value: b.goal.flour.String()}},
		Numbers: figure(b.goal.flour), Value: b.flour.String(), Exact: true, Source: working.Algebra(),
	}
}

func (b *Batch) lineSteps() []working.Step {
	steps := make([]working.Step, 0, len(b.c.items)+1)
	add := working.Step{Name: "the lines add up", Symbol: "D", Value: b.dough.String(), Exact: true, Source: working.Algebra()}
	for i := range b.c.items {
		it := &b.c.items[i]
		sym := subscript("m", i)
		s := working.Step{
			Name: it.name, Symbol: sym, Formula: subscript("p", i) + " × D ÷ P",
			Where:   []working.Binding{{Symbol: "D", Meaning: "dough", Value: b.dough.String()}},
			Numbers: figure(it.percent) + " × " + figure(b.dough) + " ÷ " + figure(b.c.total),
			Value:   b.mass[i].Text(quantity.Gram, 6), Tolerance: 1e-6,
			Note: "apportioned by largest remainder, so that the lines add up to the dough", Source: sources.LargestRemainder,
		}
		if !b.goal.flour.IsZero() {
			s.Formula = subscript("p", i) + " ÷ 100 × F"
			s.Where = nil
			s.Numbers = figure(it.percent) + " ÷ 100 × " + figure(b.flour)
			s.Note = "rounded to the microgram; the flours add up to the total flour"
		}
		steps = append(steps, s)
		if i > 0 {
			add.Formula += " + "
			add.Numbers += " + "
		}
		add.Formula += sym
		add.Numbers += figure(b.mass[i])
	}
	return append(steps, add)
}

// nodeSteps shows what one preferment or soaker holds.
func (b *Batch) nodeSteps(k int) []working.Step {
	n, w := &b.c.nodes[k], &b.work[k]
	var steps []working.Step
	total := working.Step{Name: n.name + " in all", Symbol: subscript("U", k-1), Value: quantity.Sum(w.total...).String(), Exact: true, Source: working.Algebra()}
	for j := range b.c.items {
		if w.total[j].IsZero() {
			continue
		}
		sym := "m_" + strconv.Itoa(k) + "_" + strconv.Itoa(j+1)
		share := n.share[j]
		steps = append(steps, working.Step{
			Name: b.c.items[j].name + " in " + n.name, Symbol: sym, Formula: "q ÷ 100 × F",
			Where:   []working.Binding{{Symbol: "q", Meaning: "share of total flour: that of the build times that within it", Value: exactShare(share)}},
			Numbers: figure2(exactShare(share)) + " ÷ 100 × " + figure(b.flour),
			Value:   w.total[j].Text(quantity.Gram, 6), Tolerance: 1e-6*float64(len(b.work)+2) + b.absorbed(n.parent, j),
			Note: "rounded to the microgram", Source: working.Algebra(),
		})
		if total.Numbers != "" {
			total.Formula += " + "
			total.Numbers += " + "
		}
		total.Formula += sym
		total.Numbers += figure(w.total[j])
	}
	steps = append(steps, total)
	if !w.starter.IsZero() {
		steps = append(steps, b.starterStep(k))
	}
	return steps
}

// absorbed is how much, in grams, a build may bear of an ingredient of which what it goes into has
// next to nothing left; see rounding. Zero when the shares leave nothing over, or something to weigh.
func (b *Batch) absorbed(parent, j int) float64 {
	left, slack := b.c.nodes[parent].share[j], b.c.nodes[parent].rounding(j)
	for i := parent + 1; i < len(b.c.nodes); i++ {
		if b.c.nodes[i].parent == parent {
			left -= b.c.nodes[i].share[j]
			slack += b.c.nodes[i].rounding(j)
		}
	}
	if left == 0 || left > slack {
		return 0
	}
	return float64(slack) / one / one * b.flour.Grams()
}

// starterStep shows the starter that build k is started from.
func (b *Batch) starterStep(k int) working.Step {
	n, w := &b.c.nodes[k], &b.work[k]
	s := w.starterOf
	sub := "_" + strconv.Itoa(k)
	step := working.Step{
		Name: "starter in " + n.name + ", " + s.Account.String(), Symbol: "c" + sub, Value: w.starter.Text(quantity.Gram, 6),
		Where: []working.Binding{{Symbol: "s" + sub, Meaning: "inoculation, " + s.Of.String(), Value: s.Percent.String()}},
		// A counted starter that its build has no room for is smaller by up to 3 µg of flour and of water.
		Tolerance: 7e-6, Note: "rounded to the microgram", Source: working.Algebra(),
	}
	if s.Account == SeedRemoved || s.Account == SeedRemovedAtEnd {
		step.Source = sources.HamelmanBread
	}
	flour := quantity.Sum(w.own[:b.c.flours]...)
	mix := quantity.Sum(w.total...).Add(w.carried)
	if s.Account == SeedRemovedAtEnd {
		mix = mix.Sub(w.starter)
	}
	all := working.Binding{Symbol: "M" + sub, Meaning: "everything in the build", Value: mix.String()}
	switch {
	case s.Of == OfMix && s.Account == SeedCounted:
		step.Formula, step.Numbers = "M"+sub+" × s"+sub+" ÷ 100", figure(mix)+" × "+figure(s.Percent)+" ÷ 100"
		step.Where = append(step.Where, all)
	case s.Of == OfMix:
		step.Formula = "M" + sub + " × s" + sub + " ÷ (100 − s" + sub + ")"
		step.Numbers = figure(mix) + " × " + figure(s.Percent) + " ÷ (100 − " + figure(s.Percent) + ")"
		step.Where = append(step.Where, all)
	default:
		step.Formula, step.Numbers = "f"+sub+" × s"+sub+" ÷ 100", figure(flour)+" × "+figure(s.Percent)+" ÷ 100"
		step.Where = append(step.Where, working.Binding{Symbol: "f" + sub, Meaning: "new flour", Value: flour.String()})
		step.Tolerance += 1e-6 * s.Percent.Fraction() * float64(b.c.flours+2)
	}
	return step
}

// weighedSteps derive the percentages from the weights that were given.
func (b *Batch) weighedSteps() []working.Step {
	flour := working.Step{Name: "total flour", Symbol: "F", Value: b.flour.String(), Exact: true, Source: sources.Gisslen}
	var steps []working.Step
	for i := range b.c.items {
		it := &b.c.items[i]
		sym := subscript("m", i)
		bind := working.Binding{Symbol: sym, Meaning: it.name + " in all", Value: b.mass[i].String()}
		step := working.Step{
			Name: it.name, Symbol: subscript("p", i), Formula: "100 × " + sym + " ÷ F", Where: []working.Binding{bind},
			Numbers: "100 × " + figure(b.mass[i]) + " ÷ " + figure(b.flour), Value: it.percent.Text(6),
			Note: "rounded half to even to a millionth of a point", Source: sources.Gisslen,
		}
		if i < b.c.flours {
			if i > 0 {
				flour.Formula += " + "
				flour.Numbers += " + "
			}
			flour.Formula += sym
			flour.Numbers += figure(b.mass[i])
			flour.Where = append(flour.Where, bind)
			step.Tolerance, step.Note = 1e-6, "apportioned by largest remainder, so that the flours add up to 100 %"
		}
		if it.role == RoleStarter {
			step.Tolerance = 1e-6 * (2 + it.percent.Fraction()) // from the inoculation, which is rounded too
		}
		steps = append(steps, step)
	}
	return append([]working.Step{flour}, steps...)
}

// exactShare prints a share in units of 10⁻¹⁶ as percent with every digit.
func exactShare(s int64) string {
	const unit = int64(one) * 1_000_000 // one percentage point
	text := strconv.FormatInt(s/unit, 10)
	frac := strconv.FormatInt(unit+s%unit, 10)[1:]
	if frac = strings.TrimRight(frac, "0"); frac != "" {
		text += "." + frac
	}
	return text + " %"
}

func (b *Batch) shareSteps() []working.Step {
	step := func(name, symbol string, pick func(*item) bool) working.Step {
		s := working.Step{Name: name, Symbol: symbol, Value: b.sum(pick).String(), Exact: true, Source: sources.Gisslen}
		for i := range b.c.items {
			if pick(&b.c.items[i]) {
				if s.Numbers != "" {
					s.Formula += " + "
					s.Numbers += " + "
				}
				s.Formula += subscript("p", i)
				s.Numbers += figure(b.c.items[i].percent)
			}
		}
		if s.Numbers == "" {
			s.Note = "there is none"
		}
		return s
	}
	steps := []working.Step{step("hydration", "h", (*item).isWater)}
	if pre := b.Prefermented(); !pre.IsZero() {
		s := working.Step{Name: "prefermented flour", Symbol: "x", Value: pre.String(), Exact: true, Source: sources.HamelmanBread}
		for i := 1; i < len(b.c.nodes); i++ {
			if n := &b.c.nodes[i]; n.parent == 0 && n.fermented {
				if s.Numbers != "" {
					s.Formula += " + "
					s.Numbers += " + "
				}
				s.Formula += subscript("f", i-1)
				s.Numbers += figure(n.flour)
				s.Where = append(s.Where, working.Binding{Symbol: subscript("f", i-1), Meaning: "flour in " + n.name + ", of total flour", Value: n.flour.String()})
			}
		}
		steps = append(steps, s)
	}
	return steps
}
