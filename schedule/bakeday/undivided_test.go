package bakeday

import (
	"errors"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/schedule"
	"example.org/maslin/schedule/wallclock"
	"github.com/google/go-cmp/cmp"
)

// overnight are buns of a dough that rests in the refrigerator overnight and is divided in the morning.
func overnight() Bake {
	b := rolls()
	b.Name, b.Wanted = "Overnight buns", OnDay(time.Sunday, wallclock.MustClock("12:00"))
	b.Bulk, b.Mixing.Temperature = BulkWork{Rise: quantity.NewPercent(230)}, quantity.Celsius(23)
	b.Others[0].Percent = quantity.NewPercent(0.3)
	b.Loaves.Pieces, b.Loaves.Baked = 24, quantity.Grams(80)
	b.Oven = OvenWork{Temperature: quantity.Celsius(200), Together: 12, Preheat: quantity.Elapsed(25 * time.Minute),
		Uncovered: quantity.Elapsed(16 * time.Minute)}
	b.Retard = &Retard{AtLeast: quantity.Elapsed(10 * time.Hour), AtMost: quantity.Elapsed(16 * time.Hour),
		Undivided: true}
	return b
}

// The dough goes into the cold in its tub, is divided cold and proofs for an hour and a half, or as long as is said.
func TestADoughThatRestsInTheColdUndivided(t *testing.T) {
	for proof, said := range map[time.Duration]time.Duration{90 * time.Minute: 0, 2 * time.Hour: 2 * time.Hour} {
		b := overnight()
		b.Retard.WarmUp = quantity.Elapsed(said)
		d := plan(t, b)
		if !d.Possible() {
			t.Fatal(d.Data().Why)
		}
		var kinds []string
		takes := map[schedule.StepKind]time.Duration{}
		before := time.Time{}
		for _, s := range d.Data().Steps {
			if s.Kind == schedule.Preheat || s.Kind == schedule.Tend {
				continue
			}
			kinds = append(kinds, s.Kind.String())
			takes[s.Kind] = s.Takes.Duration()
			if !before.IsZero() && s.Kind != schedule.Bake && !s.Start.Equal(before) {
				t.Errorf("%s does not begin when the step before it ends", s.ID)
			}
			before = s.End
		}
		want := []string{"mix", "bulk", "chill", "retard", "shape", "proof", "bake", "bake", "cool"}
		if d.Baking.Rounds != 2 {
			t.Fatal(d.Baking.Rounds)
		}
		if diff := cmp.Diff(want, compact(kinds, d.Water.Mixes)); diff != "" {
			t.Error(diff)
		}
		if cold := takes[schedule.Retard]; cold < 10*time.Hour || cold > 16*time.Hour || takes[schedule.Proof] != proof {
			t.Errorf("%v in the cold and a proof of %v, wanted %v", cold, takes[schedule.Proof], proof)
		}
		r := d.Rising
		if rise := r.InOven.Likely.Points(); rise < 228 || rise > 232 {
			t.Errorf("risen by %v in the oven, wanted 230 %%", rise)
		}
		if c := r.FromCold.Celsius(); c < 4 || c > 7 || r.Into.Celsius() < 12 || r.Into.Celsius() > 22 {
			t.Errorf("it comes out at %v and goes into the oven at %v", r.FromCold, r.Into)
		}
	}
}

// compact leaves out all but the first of the steps of mixing.
func compact(kinds []string, mixes int) []string { return kinds[mixes-1:] }

// A larger dough cools more slowly and goes into the cold earlier; in a colder refrigerator it may rise further before.
// So may shaped pieces, which are cold within the hour.
func TestWhatCoolsSlowlyGoesIntoTheColdEarlier(t *testing.T) {
	at := func(change func(*Bake)) float64 {
		b := overnight()
		change(&b)
		d := plan(t, b)
		if !d.Rising.Feasible {
			t.Fatalf("%v", d.Data().Why)
		}
		return d.Rising.ShapeAt.Points()
	}
	usual := at(func(*Bake) {})
	larger := at(func(b *Bake) { b.Loaves.Pieces += 12 })
	colder := at(func(b *Bake) { b.Kitchen.Refrigerator = quantity.Celsius(2) })
	shaped := at(func(b *Bake) {
		r := *b.Retard
		r.Undivided, r.WarmUp = false, quantity.Elapsed(90*time.Minute)
		b.Retard = &r
	})
	if !(larger < usual-5) || !(colder > usual) || !(shaped > usual) {
		t.Errorf("%v %%; the larger dough %v, in the colder refrigerator %v, shaped %v", usual, larger, colder, shaped)
	}
}

// It is told as what it is: nothing is shaped before the cold, and the sheet asks when the dough went in.
func TestTheColdOfADoughIsTold(t *testing.T) {
	d := plan(t, overnight())
	text := d.Report().Text(report.Options{Width: 200}) + string(d.Sheet(report.Options{}))
	for _, want := range []string{"put the dough into the cold", "the dough rests in the cold",
		"into the refrigerator when it has risen by", "in its tub",
		"then divide and shape it cold; final proof 1h30m", "into the cold at"} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not told", want)
		}
	}
	for _, wrong := range []string{"cold retard", "shape when it has risen", "ready to shape", "the loaves go in"} {
		if strings.Contains(text, wrong) {
			t.Errorf("%q is told", wrong)
		}
	}
	b := overnight()
	b.Bulk.Rise = quantity.NewPercent(60)
	why := plan(t, b).Data().Why
	if why == nil || !strings.Contains(why.Says.String(), "even if it went into the cold at once") {
		t.Errorf("%v", why)
	}
}

// A dough takes one place in the refrigerator until it is divided, and its trays the box.
func TestPlacesOfADoughInTheCold(t *testing.T) {
	b := overnight()
	b.Kitchen.RefrigeratorPlaces = 1
	o := Order{Kitchen: b.Kitchen, Bakes: []Bake{b, hall()}}
	for i := range o.Bakes {
		o.Bakes[i].Kitchen = Kitchen{}
	}
	_, err := o.Plan(t.Context(), wednesday(t))
	if err == nil || !strings.Contains(err.Error(), "places in the refrigerator") {
		t.Errorf("six loaves in one place: %v", err)
	}
	o.Bakes = o.Bakes[:1]
	second := o.Bakes[0]
	second.Name = "More buns"
	o.Bakes = append(o.Bakes, second)
	k := planAll(t, o)
	if k.Possible() {
		t.Error("two doughs lie in one place at once")
	}
	o.Kitchen.RefrigeratorPlaces = 2
	if k = planAll(t, o); !k.Possible() {
		t.Errorf("two doughs in two places: %v", k.Data().Why)
	}
	b.Kitchen.BoxPlaces, b.Bulk.Box = 1, quantity.Celsius(28)
	if _, err := b.Plan(t.Context(), wednesday(t)); !errors.Is(err, quantity.ErrInconsistent) {
		t.Errorf("two trays in a box for one: %v", err)
	}
}

// perhapsUndivided makes some of the rests of a random day those of undivided dough, without a draw: the other days
// that were drawn before there were such stay what they were.
func (r *Retard) perhapsUndivided() *Retard {
	const four = quantity.Elapsed(4 * time.Hour)
	if r.Undivided = r.AtLeast < 3*four && r.WarmUp > 0; r.Undivided && r.AtLeast == four {
		r.WarmUp = 0
	}
	return r
}

// What the judge of random days goes by: the order of the steps after mixing, in which step the dough is shaped, and
// how long it proofs from the cold.
func (o one) afterMixing() []string {
	if o.b.Retard == nil || !o.b.Retard.Undivided {
		return []string{"bulk", "shape", "retard", "take-out", "warm-up", "proof", "bake-1"}
	}
	order := []string{"bulk", "chill", "retard", "divide", "proof", "bake-1"}
	for _, id := range order {
		if _, ok := o.at[id]; !ok {
			o.say("there is no %s", id)
		}
	}
	return order
}

func (o one) shaped() string {
	if o.b.Retard != nil && o.b.Retard.Undivided {
		return "divide"
	}
	return "shape"
}

func (o one) proofsCold() {
	proof := cmpOr(o.b.Retard.WarmUp.Duration(), 90*time.Minute)
	o.within("proof", proof, proof)
}

// The judge of random days sees what is wrong with such a dough.
func TestTheJudgeSeesTheColdOfADough(t *testing.T) {
	b := overnight()
	o := Order{Kitchen: b.Kitchen, Bakes: []Bake{b, rolls()}}
	for i := range o.Bakes {
		o.Bakes[i].Kitchen = Kitchen{}
	}
	ordered, right := bothAsText(t, o, wednesday(t))
	for say, spoil := range map[string]func(*KitchenDayData){
		"there is no chill":     func(d *KitchenDayData) { ownStep(d, 0, "chill").ID = "shape" },
		"divide takes":          func(d *KitchenDayData) { later(ownStep(d, 0, "divide"), 0, 5) },
		"proof takes":           func(d *KitchenDayData) { later(ownStep(d, 0, "proof"), 0, 5) },
		"proof does not follow": func(d *KitchenDayData) { later(ownStep(d, 0, "proof"), 3, 3) },
	} {
		if got := spoiled(t, ordered, right, spoil); !strings.Contains(got, say) {
			t.Errorf("%q is not seen: %s", say, got)
		}
	}
}

// What is laid into dough that comes from the cold has not been in the cold with it: it stands warm from the shaping to
// the oven, and is ready when the dough is divided.
func TestAFillingGoesIntoColdDoughAfterTheCold(t *testing.T) {
	b := overnight()
	b.Inclusions = []Ingredient{{Name: "stewed apples", Percent: quantity.NewPercent(20),
		Kind: dough.KindCookedFilling, At: schedule.Shape}}
	d := plan(t, b)
	divide, _ := d.Timetable.Step("divide")
	baked, _ := d.Timetable.Step("bake-1")
	if warm := d.standsWarm(b.Inclusions[0]); warm != baked.Start.Sub(divide.Start) || warm < 2*time.Hour {
		t.Errorf("it stands warm for %v, divided at %v and baked at %v", warm, divide.Start, baked.Start)
	}
	if in, there := d.goesIn(b.Inclusions[0]); !there || !in.Equal(divide.Start) {
		t.Errorf("it goes in at %v", in)
	}
	// In the dough from the mixer on, the hours in the cold do not count.
	b.Inclusions[0].At = 0
	d = plan(t, b)
	mix, _ := d.Timetable.Step("mix-1")
	cold, _ := d.Timetable.Step("retard")
	baked, _ = d.Timetable.Step("bake-1")
	if warm := d.standsWarm(b.Inclusions[0]); warm != baked.Start.Sub(mix.Start)-cold.End.Sub(cold.Start) {
		t.Errorf("mixed in, it stands warm for %v", warm)
	}
}
