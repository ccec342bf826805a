package dough

import (
	"slices"

	"example.org/maslin/dough/quantity"
)

// Weight is one ingredient as it was weighed.
type Weight struct {
	Name     string           `json:"name"`
	Mass     quantity.Mass    `json:"mass"`
	Kind     Kind             `json:"kind,omitzero"`
	Water    quantity.Percent `json:"water"` // water content of the ingredient; see [Part]
	Contains Allergens        `json:"contains,omitzero"`
}

// Bowl is what was weighed into one bowl, preferments and soakers aside.
type Bowl struct {
	Flours     []Weight      `json:"flours"`
	Liquids    []Weight      `json:"liquids"`
	Salt       quantity.Mass `json:"salt,omitzero"`
	Others     []Weight      `json:"others,omitzero"`
	Inclusions []Weight      `json:"inclusions,omitzero"`
}

// Weights is a dough as it was weighed. It mirrors [Formula]: what went into the bowl at mixing, and
// what had been made beforehand. An ingredient has the same name everywhere.
type Weights struct {
	Name        string              `json:"name,omitzero"` // of the bread
	Final       Bowl                `json:"final"`
	Preferments []PrefermentWeights `json:"preferments,omitzero"`
	Soakers     []SoakerWeights     `json:"soakers,omitzero"`
}

// PrefermentWeights is a preferment as it was weighed.
type PrefermentWeights struct {
	Name        string              `json:"name"`
	Kind        PrefermentKind      `json:"kind"`
	Bowl        Bowl                `json:"bowl"`
	Seed        SeedWeights         `json:"seed,omitzero"`
	Preferments []PrefermentWeights `json:"preferments,omitzero"`
	Soakers     []SoakerWeights     `json:"soakers,omitzero"`
	// Used is how much of it went on; zero means all of it, less a starter that is removed again.
	Used quantity.Mass `json:"used,omitzero"`

	fit bool // the weights follow from Used: what is not used was never made
}

// SoakerWeights is a soaker or scald as it was weighed.
type SoakerWeights struct {
	Name string        `json:"name"`
	Kind SoakerKind    `json:"kind"`
	Bowl Bowl          `json:"bowl"`
	Used quantity.Mass `json:"used,omitzero"` // zero means all of it

	fit bool
}

// SeedWeights is the ripe starter that a preferment was started from.
type SeedWeights struct {
	Mass      quantity.Mass    `json:"mass,omitzero"`
	Hydration quantity.Percent `json:"hydration,omitzero"` // needed to split it, when it is counted
	// its flours in percent of its flour; empty: those of the preferment
	Blend   []Part      `json:"blend,omitzero"`
	Account SeedAccount `json:"account"`
}

// Batch answers which formula the weights are.
//
//	percentage = 100 · weight ÷ Σ flour
//
// All flour counts, that of the preferments and of counted starters included. The weights of the
// batch are the weights given, exactly; its percentages are rounded half to even to a millionth
// of a point, the flours by largest remainder so that they add up to 100 %. [Batch.Formula]
// gives the formula itself. Errors: InputError for weights that are negative or beyond 100 t, a
// name with two roles, a preferment without flour, Used beyond what was made. Source: the baker's
// percentage as in Gisslen, Professional Baking; the readings of the seed starter are named at
// [SeedAccount].
func (w Weights) Batch() (Batch, error) {
	var p quantity.Problems
	if w.Name != "" {
		checkName(&p, "Name", w.Name)
	}
	t := tally{p: &p, title: w.Name}
	root := t.bowl("Final", &w.Final)
	nodes := []tallyNode{{lines: root, parent: nobody}}
	t.nodes = &nodes
	t.collect("", 0, w.Preferments, w.Soakers, 1)
	if err := p.ErrFor(w); err != nil {
		return Batch{}, err
	}
	t.keep()
	t.use(0, quantity.Mass{})
	if err := p.ErrFor(w); err != nil {
		return Batch{}, err
	}
	b, err := t.batch()
	return b, quantity.DataPaths(w, err)
}

// tally gathers weights into one list of ingredients and a tree of bowls.
type tally struct {
	title string
	p     *quantity.Problems
	names []tallyName
	nodes *[]tallyNode
}

type tallyName struct {
	w    Weight
	role Role
}

type tallyNode struct {
	name      string
	kind      PrefermentKind
	soaker    SoakerKind
	fermented bool
	parent    int
	path      string
	lines     []quantity.Mass // own, by ingredient
	seed      SeedWeights
	used      quantity.Mass // asked for; zero is all
	fit       bool
	total     []quantity.Mass
	given     *given // how it was weighed, by the tally's names
}

func (t *tally) bowl(path string, b *Bowl) []quantity.Mass {
	lines := make([]quantity.Mass, len(t.names))
	list := func(name string, weights []Weight, role Role) {
		if len(weights)+len(t.names) > maxLines {
			t.p.Add(join(path, name), quantity.Tell("dough.got_lines", "%d lines", len(weights)),
				quantity.Tell("dough.want_at_most_200_lines_all", "at most 200 lines in all"), quantity.ErrOutOfRange)
			return
		}
		for i, w := range weights {
			j := t.name(join(path, at(name, i)), w, role)
			if j == nobody {
				continue
			}
			for len(lines) < len(t.names) {
				lines = append(lines, quantity.Mass{})
			}
			lines[j] = lines[j].Add(w.Mass)
		}
	}
	list("Flours", b.Flours, RoleFlour)
	list("Liquids", b.Liquids, RoleLiquid)
	if !b.Salt.IsZero() {
		list("Salt", []Weight{{Name: "salt", Mass: b.Salt, Kind: KindSalt}}, RoleSalt)
	}
	list("Others", b.Others, RoleOther)
	list("Inclusions", b.Inclusions, RoleInclusion)
	return lines
}

func (t *tally) name(path string, w Weight, role Role) int {
	if !checkName(t.p, path+".Name", w.Name) {
		return nobody
	}
	quantity.Check(t.p, path+".Mass", w.Mass, quantity.Mass{}, mostDough)
	kindWords.CheckIfGiven(t.p, path+".Kind", w.Kind)
	if outside(w.Water, noPercent, wholeFlour) {
		t.p.Add(path+".Water", w.Water, quantity.Tell("dough.want_0_percent_to_100_percent_ingredients",
			"0 %% to 100 %% of the ingredient's weight"), quantity.ErrOutOfRange)
	}
	for j := range t.names {
		n := &t.names[j]
		if n.w.Name != w.Name {
			continue
		}
		if n.role != role {
			t.p.Add(path+".Name", quantity.Tell("dough.got_and", "%s as %v and as %v", quantity.Excerpt(w.Name), role, n.role),
				quantity.Tell("dough.want_one_role_one_name", "one role for one name"), quantity.ErrInconsistent)
		}
		if n.w.Kind == KindUnstated {
			n.w.Kind = w.Kind
		} else if w.Kind != KindUnstated && w.Kind != n.w.Kind {
			t.p.Add(path+".Kind", quantity.Tell("dough.got_and_2", "%v and %v", w.Kind, n.w.Kind),
				quantity.Tell("dough.want_one_kind_one_name", "one kind for one name"), quantity.ErrInconsistent)
		}
		if n.w.Water.IsZero() {
			n.w.Water = w.Water
		}
		n.w.Contains |= w.Contains
		return j
	}
	t.names = append(t.names, tallyName{w, role})
	return len(t.names) - 1
}

func (t *tally) collect(path string, parent int, prefs []PrefermentWeights, soakers []SoakerWeights, depth int) {
	if len(prefs)+len(soakers) == 0 {
		return
	}
	if depth > maxDepth || len(prefs)+len(soakers)+len(*t.nodes) > maxNodes+1 {
		t.p.Add(join(path, "Preferments"), quantity.Tell("dough.got_too_many", "too many"),
			quantity.Tell("dough.want_at_most_50_at_most", "at most 50 in at most 8 levels"), quantity.ErrOutOfRange)
		return
	}
	for i := range prefs {
		pf := &prefs[i]
		here := join(path, at("Preferments", i))
		checkName(t.p, here+".Name", pf.Name)
		prefermentWords.Check(t.p, here+".Kind", pf.Kind)
		n := tallyNode{name: pf.Name, kind: pf.Kind, fermented: true, parent: parent, path: here, used: pf.Used,
			fit: pf.fit, seed: pf.Seed}
		n.lines = t.bowl(here+".Bowl", &pf.Bowl)
		t.seed(here+".Seed", &n.seed)
		quantity.Check(t.p, here+".Used", pf.Used, quantity.Mass{}, mostDough)
		self := len(*t.nodes)
		*t.nodes = append(*t.nodes, n)
		t.collect(here, self, pf.Preferments, pf.Soakers, depth+1)
	}
	for i := range soakers {
		s := &soakers[i]
		here := join(path, at("Soakers", i))
		checkName(t.p, here+".Name", s.Name)
		soakerWords.Check(t.p, here+".Kind", s.Kind)
		quantity.Check(t.p, here+".Used", s.Used, quantity.Mass{}, mostDough)
		n := tallyNode{name: s.Name, soaker: s.Kind, parent: parent, path: here, used: s.Used, fit: s.fit}
		n.lines = t.bowl(here+".Bowl", &s.Bowl)
		*t.nodes = append(*t.nodes, n)
	}
}

func (t *tally) seed(path string, s *SeedWeights) {
	seedWords.Check(t.p, path+".Account", s.Account)
	if !quantity.Check(t.p, path+".Mass", s.Mass, quantity.Mass{}, mostDough) || s.Mass.IsZero() ||
		s.Account != SeedCounted {
		return
	}
	if s.Hydration.IsZero() {
		t.p.Required(path+".Hydration", quantity.Tell("dough.want_hydration_starter_to_split_into",
			"the hydration of the culture, to split it into flour and water"))
	} else if outside(s.Hydration, leastWater, mostOfFlour) {
		t.p.Add(path+".Hydration", s.Hydration, quantity.Tell("dough.want_1_percent_to_1000_percent_6", "1 %% to 1000 %%"),
			quantity.ErrOutOfRange)
	}
	if len(s.Blend) > maxLines {
		t.p.Add(path+".Blend", quantity.Tell("dough.got_flours", "%d flours", len(s.Blend)),
			quantity.Tell("dough.want_at_most_200", "at most 200"), quantity.ErrOutOfRange)
		return
	}
	for i, part := range s.Blend {
		if outside(part.Percent, noPercent, wholeFlour) {
			t.p.Add(path+"."+at("Blend", i)+".Percent", part.Percent,
				quantity.Tell("dough.want_0_percent_to_100_percent", "0 %% to 100 %%"), quantity.ErrOutOfRange)
		}
		t.name(path+"."+at("Blend", i), Weight{Name: part.Name, Kind: part.Kind}, RoleFlour)
	}
}

// made returns everything in bowl k, what goes into it included.
func (t *tally) made(k int) quantity.Mass {
	n := &(*t.nodes)[k]
	sum := quantity.Sum(n.lines...).Add(n.seed.Mass)
	for _, i := range t.children(k) {
		sum = sum.Add(t.goesOn(i))
	}
	return sum
}

func (t *tally) children(k int) []int {
	var out []int
	for i := k + 1; i < len(*t.nodes); i++ {
		if (*t.nodes)[i].parent == k {
			out = append(out, i)
		}
	}
	return out
}

// carried returns how much of bowl k is starter that is removed at the end.
func (t *tally) carried(k int) quantity.Mass {
	n := &(*t.nodes)[k]
	var sum quantity.Mass
	if n.seed.Account == SeedRemovedAtEnd {
		sum = n.seed.Mass
	}
	for _, i := range t.children(k) {
		sum = sum.Add(t.carriedOn(i))
	}
	return sum
}

// carriedOn returns how much of such starter goes on from bowl k: its share of what is used.
func (t *tally) carriedOn(k int) quantity.Mass {
	c, n := t.carried(k), &(*t.nodes)[k]
	if c.IsZero() || n.used.IsZero() {
		return c
	}
	return c.Scale(n.used, t.made(k).Sub(t.removed(k)))
}

// removed returns what is taken away from bowl k before it is used.
func (t *tally) removed(k int) quantity.Mass {
	n := &(*t.nodes)[k]
	var out quantity.Mass
	if n.seed.Account == SeedRemoved {
		out = n.seed.Mass
	}
	if n.parent == 0 && k > 0 {
		out = out.Add(t.carried(k))
	}
	return out
}

// goesOn returns how much of bowl k goes into the next one.
func (t *tally) goesOn(k int) quantity.Mass {
	n := &(*t.nodes)[k]
	if !n.used.IsZero() {
		return n.used
	}
	return t.made(k).Sub(t.removed(k))
}

// net returns how much of what goes on from bowl k counts in the dough: all but starter that is removed at the end.
func (t *tally) net(k int) quantity.Mass {
	if (*t.nodes)[k].parent == 0 {
		return t.goesOn(k)
	}
	return t.goesOn(k).Sub(t.carriedOn(k))
}

// keep remembers the bowls as they were weighed when of some only a part was used.
func (t *tally) keep() {
	partly := false
	for k := 1; k < len(*t.nodes); k++ {
		n := &(*t.nodes)[k]
		partly = partly || !n.used.IsZero() && !n.fit && n.used != t.made(k).Sub(t.removed(k))
	}
	if !partly {
		return
	}
	for k := 1; k < len(*t.nodes); k++ {
		n := &(*t.nodes)[k]
		if n.fit || n.parent > 0 && (*t.nodes)[n.parent].fit {
			n.fit = true
			continue
		}
		n.given = &given{own: slices.Clone(n.lines), starter: n.seed.Mass, removed: t.removed(k), used: t.goesOn(k)}
	}
}

// use scales bowl k to what counts of it in the dough, and then what goes into it.
func (t *tally) use(k int, used quantity.Mass) {
	n := &(*t.nodes)[k]
	if made := t.made(k).Sub(t.removed(k)); k > 0 && n.used.Compare(made) > 0 {
		t.p.Add(n.path+".Used", n.used,
			quantity.Tell("dough.want_at_most_there", "at most the %v that there is", made), quantity.ErrInconsistent)
		return
	}
	if k > 0 && used.Sign() <= 0 {
		t.p.Add(n.path, quantity.Tell("dough.got_nothing", "nothing in it"),
			quantity.Tell("dough.want_ingredients_weights_above_0_g",
				"ingredients with weights above 0 g"), quantity.ErrInconsistent)
		return
	}
	aside := n.seed.Account == SeedRemoved || n.seed.Account == SeedRemovedAtEnd // counts nowhere in the dough
	list := slices.Clone(n.lines)
	seedAt := len(list)
	if !aside {
		list = append(list, n.seed.Mass)
	}
	children := t.children(k)
	for _, i := range children {
		list = append(list, t.net(i))
	}
	if whole := quantity.Sum(list...); k > 0 && used != whole {
		scaled, err := quantity.ApportionLike(used, list)
		if err != nil {
			t.p.Join(n.path, err)
			return
		}
		if aside {
			n.seed.Mass = n.seed.Mass.Scale(used, whole)
		}
		list = scaled
	}
	copy(n.lines, list)
	if !aside {
		n.seed.Mass = list[seedAt]
		seedAt++
	}
	for c, i := range children {
		t.use(i, list[seedAt+c])
	}
}
