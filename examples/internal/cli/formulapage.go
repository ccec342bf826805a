package cli

import (
	"fmt"
	"strings"

	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
)

// formulaPage prints the three views of a batch, and what can be read from them.
func formulaPage(p *page, u units, name string, b dough.Batch, w dough.Weighing, exact bool) {
	title := fmt.Sprintf("%s — %s of dough", name, u.mass(rounded(b.Dough())))
	if b.Pieces() > 0 {
		title += fmt.Sprintf(", %s of %s", count(b.Pieces(), "piece", "pieces"), u.mass(rounded(b.ScalingWeight())))
	}
	p.para(0, title)
	if l := b.Limiting(); l != "" {
		p.para(0, "What runs out first: "+printable(l))
	}
	section(p, "Overall formula, in percent of all flour")
	var rows [][]string
	for _, l := range b.Overall() {
		rows = append(rows, []string{u.mass(tenthGram(l.Mass)), percent(l.Percent, 1), printable(l.Name)})
	}
	p.rows(2, "rrl", append(rows, []string{u.mass(tenthGram(b.Dough())), percent(b.Total(), 1), "together"}))
	for _, build := range w.Builds {
		section(p, first(printable(build.Build.Name))+", made beforehand")
		linesOf(p, u, build.Lines, build.Made)
		if build.Removed.Sign() > 0 {
			p.para(2, u.mass(build.Removed)+" is taken away again before mixing, to be the next culture")
		}
	}
	section(p, "Final dough, weighed at mixing")
	linesOf(p, u, w.Lines, w.Dough)
	if !tenthGram(w.Residue).IsZero() {
		p.para(2, "rounding to the scale "+leaves(w.Residue, u))
	}
	for _, small := range w.TooSmall() {
		p.para(2, printable(small.Name)+": "+small.Exact.Text(quantity.Gram, 3)+" is too little for this scale: weigh it as part of a larger amount, dissolved in water")
	}
	readPart(p, u, b)
}

func linesOf(p *page, u units, lines []dough.Weighed, total quantity.Mass) {
	var rows [][]string
	for _, l := range lines {
		rows = append(rows, []string{u.mass(l.Mass), share(l.Percent), printable(l.Name)})
	}
	p.rows(2, "rrl", append(rows, []string{u.mass(total), "", "together"}))
}

func share(p quantity.Percent) string {
	if p.Sign() == 0 {
		return ""
	}
	return percent(p, 1)
}

func first(text string) string {
	if text == "" {
		return text
	}
	return strings.ToUpper(text[:1]) + text[1:]
}

// tenthGram rounds for reading only.
func tenthGram(m quantity.Mass) quantity.Mass {
	r, _ := m.RoundTo(quantity.Grams(0.1))
	return r
}

// readPart prints what is read from a formula.
func readPart(p *page, u units, b dough.Batch) {
	section(p, "What it is")
	wet := b.EffectiveHydration()
	effective, unknown := wet.Hydration, wet.Unknown
	rows := [][]string{{"hydration", percent(b.Hydration(), 1)}}
	if effective != b.Hydration() {
		rows = append(rows, []string{"with the water in the other ingredients", percent(effective, 1)})
	}
	if h := b.FinalHydration(); len(b.Builds()) > 0 && h.IsValid() {
		rows = append(rows, []string{"of what is weighed at mixing, levain aside", percent(h, 1)})
	}
	net, errNet := b.DoughYield().Net()
	gross, errGross := b.DoughYield().Gross()
	if errNet == nil && errGross == nil {
		rows = append(rows, []string{"dough yield (TA)", number(net) + ", gross " + number(gross)})
	}
	if b.Prefermented().Sign() > 0 {
		rows = append(rows, []string{"prefermented flour", percent(b.Prefermented(), 1)})
	}
	for _, build := range b.Builds() {
		if !build.Fermented || build.Into != "" {
			continue
		}
		for _, reading := range []dough.LevainReading{dough.LevainOfAddedFlour, dough.LevainOfTotalFlour, dough.LevainOfDough} {
			if v, ok := b.LevainPercent(build.Name, reading); ok {
				text := reading.String()
				if build.Name != "levain" {
					text = printable(build.Name) + ": " + text
				}
				rows = append(rows, []string{text, percent(v, 1)})
			}
		}
	}
	rows = append(rows, []string{"salt", percent(b.SaltShare(), 2)})
	if v := b.SaltInWater(); v.IsValid() {
		rows = append(rows, []string{"salt in the dough's water", percent(v, 2)})
	}
	rows = append(rows, []string{"whole grain", percent(b.WholeGrain(), 0)}, []string{"rye", percent(b.Rye(), 0)},
		[]string{"flour in all", u.mass(rounded(b.Flour()))}, []string{"water in all", u.mass(rounded(b.Water()))})
	p.rows(2, "ll", rows)
	if len(unknown) > 0 {
		p.para(2, "the water in "+printable(strings.Join(unknown, ", "))+" is not stated and counts as none")
	}
	allergens := "allergens: " + b.Allergens().String()
	if missing := b.Unstated(); len(missing) > 0 {
		allergens += "; not stated for " + printable(strings.Join(missing, ", "))
	}
	p.para(2, allergens)
}

func number(p quantity.Percent) string { return strings.TrimSuffix(p.Text(1), " %") }

// mend says what a dough has become and what to add.
func mend(s System, f formulaFlags, name string, b dough.Batch) error {
	r, err := dough.Mishap{Batch: b, Extra: f.extra, Restore: f.restore}.Repair()
	if err != nil {
		return f.in.complain(err)
	}
	workings := append(workingsOfBatch(b)[:1], r.Working())
	return s.show(f.output, answer{
		page: func(p *page, u units) { mendPage(p, u, name, f, b, r) }, data: mendData(name, f, b, r), workings: workings, cautions: b.Cautions(),
	})
}

func mendPage(p *page, u units, name string, f formulaFlags, b dough.Batch, r dough.Repair) {
	p.para(0, fmt.Sprintf("%s — mending %s of dough", name, u.mass(rounded(b.Dough()))))
	section(p, "What is different from the plan")
	for _, e := range f.extra {
		word := " too much "
		if e.Mass.Sign() < 0 {
			word = " too little "
			e.Mass = e.Mass.Neg()
		}
		p.para(2, u.mass(e.Mass)+word+printable(e.Name))
	}
	section(p, "To bring back "+restores(f.restore))
	var rows [][]string
	for _, l := range r.Add {
		rows = append(rows, []string{u.mass(tenthGram(l.Mass)), printable(l.Name)})
	}
	if len(rows) == 0 {
		p.para(2, "nothing needs to be added")
	} else {
		p.rows(2, "rl", rows)
	}
	section(p, "The dough")
	line := func(what string, of func(dough.Batch) string) []string {
		return []string{what, of(b), of(r.Became), of(r.After)}
	}
	p.rows(2, "lrrl", [][]string{
		{"", "planned", "now", "mended"},
		line("dough", func(b dough.Batch) string { return u.mass(rounded(b.Dough())) }),
		line("hydration", func(b dough.Batch) string { return percent(b.Hydration(), 1) }),
		line("salt", func(b dough.Batch) string { return percent(b.SaltShare(), 2) }),
		line("prefermented", func(b dough.Batch) string { return percent(b.Prefermented(), 1) }),
	})
	if b.Pieces() > 0 {
		each := r.After.Dough().Divide(int64(b.Pieces()))
		p.para(2, fmt.Sprintf("%s of it weigh %s each", count(b.Pieces(), "piece", "pieces"), u.mass(rounded(each))))
	}
}

func restores(r dough.Restore) string {
	if r == dough.RestoreAll {
		return "every line, the levain too, add"
	}
	return r.String() + ", add"
}

// section starts a section with a heading that wraps.
func section(p *page, title string) {
	if p.b.Len() > 0 {
		p.line("")
	}
	p.para(0, title)
}
