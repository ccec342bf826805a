package dough

import (
	"math/big"
	"slices"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/enum"
)

// Restore says what of a formula is to come back after a mishap.
type Restore uint8

const (
	// RestoreHydrationAndSalt brings back the water, the flours and the salt. It is the default:
	// these are at hand. The prefermented share gets smaller.
	RestoreHydrationAndSalt Restore = iota
	// RestoreHydration brings back the water and the flours only.
	RestoreHydration
	// RestoreAll brings back every line, preferments included: the batch gets larger and the
	// formula is the old one.
	RestoreAll
)

var restoreWords = enum.Of[Restore]("restoration", "hydration and salt", "hydration", "all")

// String names the restoration.
func (r Restore) String() string { return restoreWords.String(r) }

// MarshalText implements encoding.TextMarshaler.
func (r Restore) MarshalText() ([]byte, error) { return restoreWords.Marshal(r) }

// UnmarshalText implements encoding.TextUnmarshaler; it reads the words that String prints, and no others.
func (r *Restore) UnmarshalText(text []byte) error { return restoreWords.Unmarshal(r, text) }

// Mishap is a batch in which something was weighed wrongly: 40 g of water too much, the salt left
// out, flour thrown in because the dough did not clear the bowl.
type Mishap struct {
	Batch Batch `json:"batch"`
	// Extra is by how much each line of the final dough differs from the plan; less than planned
	// is negative. Names are those of ingredients and preferments.
	Extra   []Stock `json:"extra,omitzero"`
	Restore Restore `json:"restore"`
}

// Repair is what to do about a [Mishap].
type Repair struct {
	answer

	Became Batch       `json:"became"`       // the batch as it is now, with the formula it has become
	Add    []DoughLine `json:"add,omitzero"` // what to add; empty if nothing helps or nothing is wrong
	After  Batch       `json:"after"`        // the batch with what is to be added
	in     Mishap
	most   string // the line that stands furthest above the plan
	ratio  [2]quantity.Mass
}

// Repair answers what the formula has become, and what to add so that it comes back.
//
//	r = max(a_i ÷ m_i);  add_i = r·m_i − a_i
//
// m_i is what the plan has of a line, a_i what is there, over the lines that Restore names. Nothing can be
// taken out of a dough, so the line that is furthest above its plan sets the size of the repaired
// batch. With RestoreAll preferments are lines of their own; otherwise flours and water are totals,
// what the preferments hold included, and the addition is fresh flour and water. Each addition
// is rounded half to even to the microgram. Errors: ErrInconsistent for a name the batch does not
// have or more left out than was planned. Source: algebra.
func (m Mishap) Repair() (Repair, error) {
	var p quantity.Problems
	if len(m.Batch.mass) == 0 {
		p.Required("Batch", quantity.Tell("dough.want_batch_was_planned", "the batch as it was planned"))
	}
	restoreWords.Check(&p, "Restore", m.Restore)
	if len(m.Extra) > maxLines {
		p.Add("Extra", quantity.Tell("dough.got_too_many_lines", "too many lines"),
			quantity.Tell("dough.want_at_most_200", "at most 200"), quantity.ErrOutOfRange)
	}
	if err := p.ErrFor(m); err != nil {
		return Repair{}, err
	}
	m.Extra = slices.Clone(m.Extra)
	w := m.Batch.Weights()
	for i, e := range m.Extra {
		if err := w.change(&m.Batch, e); err != nil {
			return Repair{}, quantity.DataPaths(m, quantity.At(at("Extra", i), err))
		}
	}
	r := Repair{in: m}
	var err error
	if r.Became, err = w.Batch(); err != nil {
		return Repair{}, quantity.DataPaths(m, quantity.At("Extra", err))
	}
	plan, now := m.restored(&m.Batch), m.restored(&r.Became)
	for _, l := range plan {
		a := find(now, l.Name)
		if r.most == "" || larger(a.Mass, l.Mass, r.ratio[0], r.ratio[1]) {
			r.most, r.ratio = l.Name, [2]quantity.Mass{a.Mass, l.Mass}
		}
	}
	for _, l := range plan {
		a := find(now, l.Name)
		add := l.Mass.Scale(r.ratio[0], r.ratio[1]).Sub(a.Mass)
		if add.Sign() <= 0 {
			continue
		}
		l.Mass = add
		r.Add = append(r.Add, l)
		if err := w.change(&m.Batch, Stock{l.Name, add}); err != nil {
			return Repair{}, err
		}
	}
	ofListFlour(r.Add)
	if r.After, err = w.Batch(); err != nil {
		return Repair{}, err
	}
	return r, nil
}

// restored lists the lines of a batch that the repair is to bring back.
func (m *Mishap) restored(b *Batch) []DoughLine {
	if m.Restore == RestoreAll {
		return slices.DeleteFunc(b.FinalDough(), func(l DoughLine) bool { return l.Role == RoleStarter })
	}
	var out []DoughLine
	for _, l := range b.Overall() {
		if l.Mass.IsZero() {
			continue
		}
		switch {
		case l.Role == RoleFlour, l.Role == RoleLiquid && (l.Kind == KindWater || l.Kind == KindUnstated),
			l.Role == RoleSalt && m.Restore == RestoreHydrationAndSalt:
			out = append(out, l)
		}
	}
	return out
}

func find(lines []DoughLine, name string) DoughLine {
	for _, l := range lines {
		if l.Name == name {
			return l
		}
	}
	return DoughLine{Name: name}
}

// larger reports a/b > c/d for positive b and d.
func larger(a, b, c, d quantity.Mass) bool {
	left := new(big.Int).Mul(big.NewInt(micrograms(a)), big.NewInt(micrograms(d)))
	return left.Cmp(new(big.Int).Mul(big.NewInt(micrograms(c)), big.NewInt(micrograms(b)))) > 0
}

// change adds to, or takes from, one line of the final dough.
func (w *Weights) change(b *Batch, e Stock) error {
	if !e.Mass.IsValid() || e.Mass.Compare(mostDough) > 0 || e.Mass.Compare(mostDough.Neg()) < 0 {
		return &quantity.InputError{GoPath: "Mass", Got: e.Mass,
			Want: quantity.Tell("dough.want_difference_at_most", "a difference of at most %v",
				mostDough), Err: quantity.ErrOutOfRange}
	}
	if j := b.c.item(e.Name); j != nobody && b.c.items[j].role != RoleStarter {
		return w.Final.change(&b.c.items[j], e.Mass)
	}
	for i := range w.Preferments {
		if pf := &w.Preferments[i]; pf.Name == e.Name {
			return pf.change(b, e.Mass)
		}
	}
	for i := range w.Soakers {
		if s := &w.Soakers[i]; s.Name == e.Name {
			build, _ := b.Build(e.Name)
			times, used, err := enlarge(s.Used, build.Used, e.Mass)
			s.Bowl.times(times)
			s.Used, s.fit = used, true
			return err
		}
	}
	return &quantity.InputError{GoPath: "Name", Got: quantity.Excerpt(e.Name),
		Want: quantity.Tell("dough.want_ingredient_or_preferment_final_dough",
			"an ingredient or preferment of the final dough"), Err: quantity.ErrInconsistent}
}

func (b *Bowl) change(it *item, extra quantity.Mass) error {
	tooLittle := func(has quantity.Mass) error {
		return &quantity.InputError{GoPath: "Mass", Got: quantity.Tell("dough.got_of", "%v of %s", extra,
			quantity.Excerpt(it.name)),
			Want: quantity.Tell("dough.want_no_more_left_out_than", "no more left out than the %v planned at mixing",
				has), Err: quantity.ErrInconsistent}
	}
	if it.role == RoleSalt {
		sum := b.Salt.Add(extra)
		if sum.Sign() < 0 {
			return tooLittle(b.Salt)
		}
		b.Salt = sum
		return nil
	}
	list := map[Role]*[]Weight{RoleFlour: &b.Flours, RoleLiquid: &b.Liquids, RoleOther: &b.Others,
		RoleInclusion: &b.Inclusions}[it.role]
	for i := range *list {
		if w := &(*list)[i]; w.Name == it.name {
			if w.Mass.Add(extra).Sign() < 0 {
				return tooLittle(w.Mass)
			}
			w.Mass = w.Mass.Add(extra)
			return nil
		}
	}
	if extra.Sign() < 0 {
		return tooLittle(quantity.Mass{})
	}
	*list = append(*list, Weight{Name: it.name, Mass: extra, Kind: it.kind, Water: it.water, Contains: it.contains})
	return nil
}

func (b *Bowl) times(n int64) {
	for _, list := range [][]Weight{b.Flours, b.Liquids, b.Others, b.Inclusions} {
		for i := range list {
			list[i].Mass = list[i].Mass.Times(n)
		}
	}
	b.Salt = b.Salt.Times(n)
}

func (pf *PrefermentWeights) change(b *Batch, extra quantity.Mass) error {
	build, _ := b.Build(pf.Name)
	times, used, err := enlarge(pf.Used, build.Used, extra)
	pf.times(times)
	pf.Used, pf.fit = used, true
	return err
}

func (pf *PrefermentWeights) times(n int64) {
	pf.Bowl.times(n)
	pf.Seed.Mass = pf.Seed.Mass.Times(n)
	for i := range pf.Preferments {
		pf.Preferments[i].times(n)
	}
	for i := range pf.Soakers {
		pf.Soakers[i].Bowl.times(n)
	}
}

// enlarge finds by which whole number the weights of a build must be multiplied so that the
// amount used can be taken from it.
func enlarge(used, planned, extra quantity.Mass) (times int64, now quantity.Mass, err error) {
	if used.IsZero() {
		used = planned
	}
	now = used.Add(extra)
	if now.Sign() <= 0 {
		return 1, used, &quantity.InputError{GoPath: "Mass", Got: extra,
			Want: quantity.Tell("dough.want_something_left_planned", "something left of the %v planned",
				used), Err: quantity.ErrInconsistent}
	}
	times = 1
	for used.Times(times).Compare(now) < 0 {
		times *= 2
	}
	return times, now, nil
}

// Working derives the additions.
func (r Repair) Working() working.Working {
	d := working.Derive(working.Tell("dough.derive_repair", "Repair of a dough"))
	if r.most == "" {
		return d.Working()
	}
	plan, now := r.in.restored(&r.in.Batch), r.in.restored(&r.Became)
	had := working.Given("a_0", working.Tell("dough.symbol_in_bowl", "%s in the bowl", r.most), r.ratio[0])
	planned := working.Given("m_0", working.Tell("dough.symbol_planned", "%s as planned", r.most), r.ratio[1])
	d.Find(working.Finding{
		Name: working.Tell("dough.furthest", "how far %s is above its plan, the furthest of all, in percent of it",
			r.most), Symbol: "r",
		By: working.Num(100).Times(had).Over(planned), Is: r.ratio[0].PercentOf(r.ratio[1]), Decimals: 2,
		Note: working.Tell("dough.repair_size",
			"nothing can be taken out, so this is the size of the repaired batch"), Source: working.Algebra(),
	})
	all := working.Given("D_now", working.Tell("dough.symbol_dough_now", "dough as it is now"), r.Became.Dough())
	for i, l := range plan {
		a := find(now, l.Name)
		add := l.Mass.Scale(r.ratio[0], r.ratio[1]).Sub(a.Mass)
		if add.Sign() <= 0 {
			continue
		}
		m := working.Given(subscript("m", i), working.Tell("dough.symbol_planned", "%s as planned", l.Name), l.Mass)
		is := working.Given(subscript("a", i), working.Tell("dough.symbol_in_bowl", "%s in the bowl", l.Name), a.Mass)
		all = all.Plus(d.Find(weight(working.Finding{
			Name: working.Tell("dough.to_add", "%s to add", l.Name), Symbol: subscript("x",
				i), By: m.Times(had).Over(planned).Minus(is), Is: add,
			Source: working.Algebra(),
		}, add)))
	}
	mended := all
	if r.After.Dough() == r.Became.Dough() {
		mended = all.Plus(0) // nothing is added
	}
	d.Find(working.Finding{
		Name: working.Tell("dough.dough_mended", "dough when it is mended"), Symbol: "D", By: mended,
		Is: r.After.Dough(), Within: 0.001, Source: working.Algebra(),
	})
	return d.Working()
}
