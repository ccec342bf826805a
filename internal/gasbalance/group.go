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
	// HalfLife is after how many days a bake counts half, in every culture; 0 leaves it to each culture's log.
	HalfLife float64
	// Entries hold one culture each, in order of person and culture.
	Entries []Entry
}

// Entry is what the bakes of one culture say.
type Entry struct {
	Person  string `json:"person,omitzero"`
	Culture string `json:"culture,omitzero"`
	Sums    Sums   `json:"sums"`
	// Fading are the same bakes with those counting less that are older than the last, for each of the half-lives
	// that are chosen from; none where nothing is chosen. They are never changed in place.
	Fading []Sums `json:"fading,omitempty"`
}

func (g Group) find(person, culture string) (int, bool) {
	return slices.BinarySearchFunc(g.Entries, Entry{Person: person, Culture: culture}, func(a, b Entry) int {
		return cmp.Or(cmp.Compare(a.Person, b.Person), cmp.Compare(a.Culture, b.Culture))
	})
}

// With is the group with more said about a culture.
func (g Group) With(person, culture string, s Sums) Group {
	return g.Add(Entry{Person: person, Culture: culture, Sums: s})
}

// Add is the group with more said about a culture.
func (g Group) Add(e Entry) Group {
	if i, found := g.find(e.Person, e.Culture); found {
		e = g.Entries[i].merge(e, g.HalfLife)
	}
	return g.set(e)
}

// entry is what is known of a culture by its own bakes.
func (g Group) entry(person, culture string) Entry {
	if i, found := g.find(person, culture); found {
		return g.Entries[i]
	}
	return Entry{Person: person, Culture: culture}
}

// set is the group with what is said about a culture put in the place of what was.
func (g Group) set(e Entry) Group {
	i, found := g.find(e.Person, e.Culture)
	g.Entries = slices.Clone(g.Entries)
	if found {
		g.Entries[i] = e
	} else {
		g.Entries = slices.Insert(g.Entries, i, e)
	}
	return g
}

// Merge is both logs together: learning it is learning both.
func (g Group) Merge(h Group) Group {
	for _, e := range h.Entries {
		g = g.Add(e)
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
			own := e.speaks()
			said := lv.says(g.Kind, &own, &alone)
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
	s := g.Entries[i].speaks()
	out := s.from(g.Kind, &before, luckOf(g.Kind))
	out.HalfLife = g.Entries[i].halfLife(g.HalfLife)
	if k := g.Entries[i].fading(); k > 0 {
		out.Evidence = g.Entries[i].Fading[k-1].Score.Foretold - g.Entries[i].Sums.Score.Foretold
	}
	return out
}

// Without answers for each of a culture's bakes, which its sums hold: what would have been known without it? Each is
// taken out of the sums again and the rest solved, so that n bakes cost n solutions and not n logs. Where old bakes
// fade, the others count as seen from its day: the less the longer before or after it they were. The bakes are in order
// of their days; weights are those with which the sums hold them, nil is 1 for each.
func (g Group) Without(person, culture string, bakes []Dated, weights []float64, visit func(i int, t *Taught)) {
	before := g.before(person, culture)
	at, found := g.find(person, culture)
	if !found {
		return
	}
	all, halfLife := g.Entries[at].speaks(), g.Entries[at].halfLife(g.HalfLife)
	guess := all.from(g.Kind, &before, luckOf(g.Kind)).Luck
	coldest, second := coldestTwo(bakes)
	known := func(i int, s Sums) {
		s.Coldest = coldest
		if bakes[i].Celsius == coldest {
			s.Coldest = second
		}
		t := s.from(g.Kind, &before, guess)
		visit(i, &t)
	}
	if weights == nil {
		weights = slices.Repeat([]float64{1}, len(bakes))
	}
	if halfLife > 0 {
		all.around(bakes, weights, halfLife, known)
		return
	}
	for i := range bakes {
		s := all
		s.include(&bakes[i].Row, weights[i], -1)
		known(i, s)
	}
}

func coldestTwo(rows []Dated) (first, second float64) {
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
