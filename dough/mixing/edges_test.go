package mixing

import (
	"errors"
	"slices"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
)

// paths are what an error complains about.
func paths(err error) string {
	var out []string
	for _, e := range quantity.InputErrors(err) {
		out = append(out, e.GoPath)
	}
	return strings.Join(out, " ")
}

// Without flour the flour is asked for, and nothing is said of a share of it.
func TestScaldWithoutFlour(t *testing.T) {
	in := Scald{FlourTemperature: quantity.Celsius(20), Water: quantity.Grams(500)}
	if _, err := in.Pour(); paths(err) != "Flour" {
		t.Error(err)
	}
	for grams, ok := range map[float64]bool{49.9: false, 50: true, 2000: true, 2000.1: false} {
		in.Flour, in.Water = quantity.Grams(100), quantity.Grams(grams)
		if _, err := in.Pour(); (err == nil) != ok || !ok && paths(err) != "Water" {
			t.Errorf("%v g of water on 100 g of flour: %v", grams, err)
		}
	}
}

func twoFlours() Balance {
	return Balance{
		Ingredients: []Portion{
			{Name: "wheat", Mass: quantity.Grams(600), Temperature: quantity.Celsius(18), Substance: Flour},
			{Name: "rye", Mass: quantity.Grams(200), Temperature: quantity.Celsius(22), Substance: Flour},
			{Name: "levain", Mass: quantity.Grams(200), Temperature: quantity.Celsius(24), Substance: Levain,
				Hydration: quantity.MustPercent("100 %")},
		},
		Water: quantity.Grams(500), WaterTemperature: quantity.Celsius(15),
	}
}

// Only the flour may come without a temperature, and only where the flour is asked for.
func TestTemperaturesThatAreAskedFor(t *testing.T) {
	b := twoFlours()
	b.Ingredients[0].Temperature, b.Ingredients[1].Temperature = quantity.Temperature{}, quantity.Temperature{}
	if _, err := b.FlourFor(quantity.Celsius(24)); err != nil {
		t.Errorf("the flour is what is asked for: %v", err)
	}
	if _, err := b.Final(); paths(err) != "Ingredients[0].Temperature Ingredients[1].Temperature" {
		t.Error(err)
	}
	b = twoFlours()
	b.Ingredients[2].Temperature = quantity.Temperature{}
	if _, err := b.FlourFor(quantity.Celsius(24)); paths(err) != "Ingredients[2].Temperature" ||
		!errors.Is(err, quantity.ErrRequired) {
		t.Error(err)
	}
}

// The mean of flours is that of their heat: three parts at 18 °C and one at 22 °C are at 19 °C.
func TestMeanOfFlours(t *testing.T) {
	r, err := twoFlours().Final()
	if err != nil {
		t.Fatal(err)
	}
	if d := r.meanFlour().Celsius() - 19; d > 1e-4 || d < -1e-4 {
		t.Errorf("%v", r.meanFlour())
	}
}

// What nothing was said of the bowl means that it has a tenth of the dough's capacity, give or take as much.
func TestBowlThatNobodyMeasured(t *testing.T) {
	batch := Logged{
		Ingredients: []Portion{
			{Mass: quantity.Grams(1000), Temperature: quantity.Celsius(20), Substance: Flour},
			{Mass: quantity.Grams(700), Temperature: quantity.Celsius(18), Substance: Water},
		},
		Bowl: quantity.Celsius(21), Dough: quantity.Celsius(24),
		Speeds: []quantity.Elapsed{quantity.Elapsed(4 * time.Minute), quantity.Elapsed(6 * time.Minute)},
	}
	learn := func(bowl, spread string) Learned {
		t.Helper()
		log := Log{Kind: Planetary, Batches: []Logged{batch, batch}}
		if bowl != "" {
			log.Bowl, log.BowlSpread = quantity.MustPercent(bowl), quantity.MustPercent(spread)
		}
		l, err := log.Learn()
		if err != nil {
			t.Fatal(err)
		}
		return l
	}
	if usual, said := learn("", ""), learn("10 %", "10 %"); !slices.Equal(usual.theta, said.theta) {
		t.Errorf("%v, with a tenth said %v", usual.theta, said.theta)
	}
	if other := learn("20 %", "10 %"); slices.Equal(other.theta, learn("", "").theta) {
		t.Error("what is said of the bowl changes nothing")
	}
	l := learn("", "")
	p, err := l.Predict(batch, quantity.MustPercent("80 %"))
	if err != nil {
		t.Fatal(err)
	}
	for text, want := range map[string][]string{
		l.Working().Text(200): {"dough of batch 1", "bowl of batch 1", "minutes of batch 1 at speed 1", "t_1_2",
			"bowl of batch 2", "rise expected of batch 2"},
		p.Working().Text(200): {"minutes at speed 1", "minutes at speed 2", "r_1", "t_2"},
	} {
		for _, w := range want {
			if !strings.Contains(text, w) {
				t.Errorf("%q is not in\n%s", w, text)
			}
		}
		for _, w := range []string{"batch 0", "batch 3", "speed 0", "speed 3"} {
			if strings.Contains(text, w) {
				t.Errorf("%q is in\n%s", w, text)
			}
		}
	}
}

// Each factor stands on the page with a tenth of a degree.
func TestFactorsOnThePage(t *testing.T) {
	r, err := Factors{Target: quantity.Celsius(25), Friction: quantity.DeltaCelsius(12), Others: []Factor{
		{Kind: FlourFactor, Temperature: quantity.Celsius(18.3)}, {Kind: RoomFactor, Temperature: quantity.Celsius(21)},
		{Kind: LevainFactor, Temperature: quantity.Celsius(23.75)}}}.Water()
	if err != nil {
		t.Fatal(err)
	}
	page := r.Report().Text(report.Options{Width: 80})
	for _, want := range []string{"18.3 °C\n", "21.0 °C\n", "23.8 °C\n", "12.0 Δ°C"} {
		if !strings.Contains(page, want) {
			t.Errorf("%q is not on the page:\n%s", want, page)
		}
	}
}

// Two levains are two factors, each of its own temperature; one factor of levains stands for both.
func TestLevainsCompared(t *testing.T) {
	b := twoFlours()
	b.Ingredients = append(b.Ingredients, Portion{Name: "second", Mass: quantity.Grams(100),
		Temperature: quantity.Celsius(10), Substance: Levain, Hydration: quantity.MustPercent("100 %")})
	b.Room = quantity.Celsius(21)
	counted := func(levains ...float64) []int {
		t.Helper()
		in := Factors{Target: quantity.Celsius(24), Friction: quantity.DeltaCelsius(10), Others: []Factor{
			{Kind: FlourFactor, Temperature: quantity.Celsius(19)}, {Kind: RoomFactor, Temperature: quantity.Celsius(21)}}}
		for _, at := range levains {
			in.Others = append(in.Others, Factor{Kind: LevainFactor, Temperature: quantity.Celsius(at)})
		}
		c, err := b.Compare(in)
		if err != nil {
			t.Fatal(err)
		}
		terms := []int{}
		for i := range levains {
			final, err := b.Final()
			if err != nil {
				t.Fatal(err)
			}
			terms = append(terms, len(c.termsOf(LevainFactor, i, final)))
		}
		return terms
	}
	if got := counted(20); !slices.Equal(got, []int{2}) {
		t.Errorf("one factor stands for %v levains, want both", got)
	}
	if got := counted(24, 10); !slices.Equal(got, []int{1, 1}) {
		t.Errorf("two factors stand for %v levains, want one each", got)
	}
}

// What is noted of wet doughs and of thin pizza doughs is of wheat, and of machines.
func TestNotesOfKneading(t *testing.T) {
	for _, c := range []struct {
		kind      DoughKind
		mixer     MixerKind
		water     float64
		wet, thin bool
	}{
		{WheatDough, Spiral, 72, false, false}, {WheatDough, Spiral, 73, true, false}, {WheatDough, Hand, 80, true, false},
		{RyeDough, Spiral, 80, false, false}, {GlutenFreeDough, Spiral, 85, false, false},
		{RyeDough, Spiral, 70, false, false}, {PizzaDough, Spiral, 45, false, true}, {PizzaDough, Spiral, 46, false, false},
		{PizzaDough, Hand, 45, false, false}, {WheatDough, Spiral, 45, false, false}, {PizzaDough, Spiral, 74, true, false},
	} {
		k, err := Mix{Mixer: c.mixer, Kind: c.kind, Bowl: quantity.Liters(20), Flour: quantity.Grams(1000),
			Water: quantity.Grams(10 * c.water), Dough: quantity.Grams(2500)}.Kneading()
		if err != nil {
			t.Fatal(err)
		}
		noted := func(id string) bool {
			return slices.ContainsFunc(k.Notes, func(m working.Message) bool { return m.ID() == id })
		}
		if wet, thin := noted("mixing.note_wet_dough"), noted("mixing.note_thin_pizza"); wet != c.wet || thin != c.thin {
			t.Errorf("%v in a %v mixer with %v %% of water: wet %v, thin %v", c.kind, c.mixer, c.water, wet, thin)
		}
	}
}
