package flour_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.org/maslin/dough/flour"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/internal/sources"
)

// Half of each: 10.000001 and 10 make 10.0000005, which is even as 10; 10.000003 and 10 make 10.0000015, as 10.000002.
func TestProteinIsRoundedHalfToEven(t *testing.T) {
	half := percent(50)
	for first, want := range map[string]string{"10.000001 %": "10 %", "10.000003 %": "10.000002 %"} {
		got, err := flour.FlourBlend{Flours: []flour.FlourLot{
			{Protein: quantity.MustPercent(first), Share: half}, {Protein: percent(10), Share: half},
		}}.Protein()
		if err != nil || got != quantity.MustPercent(want) {
			t.Errorf("half of %s and half of 10 %% make %v, %v, want %s", first, got, err, want)
		}
	}
}

// Up to which hydration a class is used, from the only list that names hydrations: weak 50, medium 60, strong 70, very
// strong 90 %; what each figure says of 65 %, by its own list.
func TestWhatEachListSaysOfAHydration(t *testing.T) {
	type said struct{ class, upTo, stance string }
	for name, c := range map[string]struct {
		in   flour.FlourStrength
		want []said
	}{
		"weak": {flour.FlourStrength{W: 100}, []said{{"weak", "50 %", "against"}, {"very weak", "50 %", "against"},
			{"weak", "50 %", "against"}}},
		"still weak": {flour.FlourStrength{W: 150}, []said{{"medium", "60 %", "against"}, {"weak", "50 %", "against"},
			{"weak", "50 %", "against"}}},
		"strong at last": {flour.FlourStrength{W: 400}, []said{{"very strong", "90 %", "for"},
			{"very strong", "90 %", "for"}, {"strong", "70 %", "for"}}},
		"weak by protein":   {flour.FlourStrength{Protein: percent(9)}, []said{{"weak", "50 %", "against"}}},
		"medium by protein": {flour.FlourStrength{Protein: percent(12)}, []said{{"medium", "60 %", "against"}}},
		"strong by protein": {flour.FlourStrength{Protein: percent(14)}, []said{{"strong", "70 %", "for"}}},
		"medium": {flour.FlourStrength{W: 230}, []said{{"medium", "60 %", "against"}, {"medium", "60 %", "against"},
			{"medium", "60 %", "against"}}},
		"for bread": {flour.FlourStrength{W: 270}, []said{{"strong", "70 %", "for"}, {"for bread", "70 %", "for"},
			{"medium", "60 %", "against"}}},
		"strong": {flour.FlourStrength{W: 345}, []said{{"strong", "70 %", "for"}, {"very strong", "90 %", "for"},
			{"medium", "60 %", "against"}}},
		"very strong": {flour.FlourStrength{W: 430}, []said{{"very strong", "90 %", "for"}, {"very strong", "90 %", "for"},
			{"very strong", "90 %", "for"}}},
		"extensible":     {flour.FlourStrength{PL: 0.49}, []said{{"extensible: spreads", "", "silent"}}},
		"balanced":       {flour.FlourStrength{PL: 0.5}, []said{{"balanced or near it", "", "silent"}}},
		"still balanced": {flour.FlourStrength{PL: 0.9}, []said{{"balanced or near it", "", "silent"}}},
		"tenacious": {flour.FlourStrength{PL: 0.905},
			[]said{{"tenacious: takes more water and resists shaping", "", "silent"}}},
		"sprouted": {flour.FlourStrength{FallingNumber: 159}, []said{{"much enzyme: a sticky dough", "", "against"}}},
		"sound":    {flour.FlourStrength{FallingNumber: 160}, []said{{"sound", "", "silent"}}},
		"thirsty": {flour.FlourStrength{Absorption: percent(58)},
			[]said{{"water for a dough of standard stiffness", "68 %", "for"}}},
	} {
		c.in.Hydration = percent(65)
		r, err := c.in.Judge()
		if err != nil {
			t.Fatal(err)
		}
		var got []said
		for _, o := range r.Opinions {
			upTo := ""
			if !o.Used.High.IsZero() {
				upTo = o.Used.High.String()
			}
			got = append(got, said{o.Class.String(), upTo, o.Stance.String()})
		}
		if diff := cmp.Diff(c.want, got, cmp.AllowUnexported(said{})); diff != "" {
			t.Errorf("%s: %s", name, diff)
		}
	}
}

// The square of two flours and the least change of several rest on different authors; each is named once.
func TestBlendsAndListsNameTheirSources(t *testing.T) {
	two := flour.FlourBlend{Target: percent(12), Flours: []flour.FlourLot{{Protein: percent(10)}, {Protein: percent(14)}}}
	b, err := two.Shares()
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(sources.PearsonMSU, b.Report().Sources[0]); diff != "" {
		t.Error(diff)
	}
	two.Flours[0].Share, two.Flours[1].Share = percent(60), percent(40)
	if b, err = two.Shares(); err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(sources.LeastChange, b.Report().Sources[0]); diff != "" {
		t.Error(diff)
	}
	s, err := flour.FlourStrength{Hydration: percent(65), W: 200, Protein: percent(11)}.Judge()
	if err != nil {
		t.Fatal(err)
	}
	keys := map[string]int{}
	for _, source := range s.Report().Sources {
		keys[source.Key]++
	}
	if len(keys) != 3 || keys[sources.StrengthList2017.Key] != 1 { // which speaks of W and of protein
		t.Errorf("sources: %v", keys)
	}
}
