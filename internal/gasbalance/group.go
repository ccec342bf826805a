package gasbalance

import (
	"cmp"
	"slices"
)

// Group is the log of several cultures of several persons, all of one kind of leavening: a class that pools what it
// learns, or one kitchen. It is a value; adding to it or merging two makes another. What is learned does not depend
// on the order.
type Group struct {
	Kind Leavening
	// HalfLife is after how many days a bake counts half; 0 forgets nothing.
	HalfLife float64
	// Entries hold one culture each, in order of person and culture.
	Entries []Entry
}

// Entry is what the bakes of one culture say.
type Entry struct {
	Person  string `json:"person,omitzero"`
	Culture string `json:"culture,omitzero"`
	Sums    Sums   `json:"sums"`
}

func (g Group) find(person, culture string) (int, bool) {
	return slices.BinarySearchFunc(g.Entries, Entry{Person: person, Culture: culture}, func(a, b Entry) int {
		return cmp.Or(cmp.Compare(a.Person, b.Person), cmp.Compare(a.Culture, b.Culture))
	})
}

// With is the group with more said about a culture.
func (g Group) With(person, culture string, s Sums) Group {
	if i, found := g.find(person, culture); found {
		s = g.Entries[i].Sums.Merge(s, g.HalfLife)
	}
	return g.set(person, culture, s)
}

// set is the group with the sums of a culture put in the place of what they were.
func (g Group) set(person, culture string, s Sums) Group {
	i, found := g.find(person, culture)
	g.Entries = slices.Clone(g.Entries)
	if found {
		g.Entries[i].Sums = s
	} else {
		g.Entries = slices.Insert(g.Entries, i, Entry{Person: person, Culture: culture, Sums: s})
	}
	return g
}

// Merge is both logs together: learning it is learning both.
func (g Group) Merge(h Group) Group {
	for _, e := range h.Entries {
		g = g.With(e.Person, e.Culture, e.Sums)
	}
	return g
}

// levels are the covariances of the three levels.
type levels struct{ everyone, person, culture effectMatrix }

func levelsOf(kind Leavening) levels {
	return levels{level(kind, partEveryone), level(kind, partPerson), level(kind, partCulture)}
}

// says is what one culture's bakes say about its person: its luck is first learned from its own bakes alone, so
// that no order matters.
func (l *levels) says(kind Leavening, s *Sums, alone *gaussian) evidence {
	t := s.from(kind, alone, luckOf(kind))
	e := s.evidence(t.Luck * t.Luck)
	return e.up(&l.culture)
}

// Before is what all other bakes say of a culture before its own are looked at: its person's other cultures, and
// other persons.
func (g Group) before(person, culture string) gaussian {
	lv := levelsOf(g.Kind)
	alone := unknown(g.Kind)
	var same, others, of evidence
	for i := range g.Entries {
		e := &g.Entries[i]
		if e.Sums.Bakes > 0 && (e.Person != person || e.Culture != culture) {
			said := lv.says(g.Kind, &e.Sums, &alone)
			if e.Person == person {
				same.add(&said, 1)
			} else {
				of.add(&said, 1)
			}
		}
		if last := i+1 == len(g.Entries) || g.Entries[i+1].Person != e.Person; last && e.Person != person {
			up := of.up(&lv.person)
			others.add(&up, 1)
			of = evidence{}
		}
	}
	out := gaussian{cov: lv.everyone}
	out = out.seen(&others.precision, &others.moment)
	out.cov.add(&lv.person, 1)
	out = out.seen(&same.precision, &same.moment)
	out.cov.add(&lv.culture, 1)
	return out
}

// Taught is what the whole group says of one culture; of one not in it, what a newcomer starts from.
func (g Group) Taught(person, culture string) Taught {
	before := g.before(person, culture)
	i, found := g.find(person, culture)
	if !found || g.Entries[i].Sums.Bakes == 0 {
		out := Taught{kind: g.Kind, effects: before, Luck: luckOf(g.Kind), Freedom: freedom}
		return out
	}
	s := g.Entries[i].Sums
	return s.from(g.Kind, &before, luckOf(g.Kind))
}

// Without answers for each of a culture's rows, which its sums hold: what would have been known without it? Each is
// taken out of the sums again and the rest solved, so that n bakes cost n solutions and not n logs. Weights are
// those with which the rows were added; nil is 1 for each.
func (g Group) Without(person, culture string, rows []Row, weights []float64, visit func(i int, t *Taught)) {
	before := g.before(person, culture)
	i, found := g.find(person, culture)
	if !found {
		return
	}
	all := g.Entries[i].Sums
	guess := all.from(g.Kind, &before, luckOf(g.Kind)).Luck
	coldest, second := coldestTwo(rows)
	for i := range rows {
		s := all
		w := 1.0
		if weights != nil {
			w = weights[i]
		}
		s.include(&rows[i], w, -1)
		s.Coldest = coldest
		if rows[i].Celsius == coldest {
			s.Coldest = second
		}
		t := s.from(g.Kind, &before, guess)
		visit(i, &t)
	}
}

func coldestTwo(rows []Row) (first, second float64) {
	for i := range rows {
		switch c := rows[i].Celsius; {
		case i == 0:
			first, second = c, c
		case c < first:
			first, second = c, first
		case i == 1 || c < second:
			second = c
		}
	}
	return first, second
}
