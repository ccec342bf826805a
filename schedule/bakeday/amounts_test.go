package bakeday

import (
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// loafByWeight is the hall's loaf as a recipe card has it: 500 g of flour, 350 g of water, 100 g of levain at 100 % and
// 10 g of salt.
func loafByWeight() Bake {
	b := hall()
	g := quantity.Grams
	b.Flours = []Ingredient{
		{Name: "wheat bread flour", Weight: g(450), Kind: dough.KindWheat},
		{Name: "whole rye flour", Weight: g(50), Kind: dough.KindWholeRye},
	}
	b.Liquids = []Ingredient{{Name: "water", Weight: g(350)}}
	b.Salt, b.SaltWeight = quantity.Percent{}, g(10)
	b.Levain = &Levain{
		Weight: g(100), Hydration: quantity.NewPercent(100), Flour: "whole rye flour", Inoculation: quantity.NewPercent(40),
	}
	b.Loaves = Loaves{}
	return b
}

func ExampleBake_Batch_byWeight() {
	b, err := loafByWeight().Batch(nil)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(b.Dough().Text(quantity.Gram, 1), "of dough,", b.Flour().Text(quantity.Gram, 1), "of it flour")
	for _, l := range b.FinalDough() {
		fmt.Printf("%s: %s, %s\n", l.Name, l.Mass.Text(quantity.Gram, 1), l.Percent.Text(1))
	}
	fmt.Println("hydration", b.Hydration().Text(1), "salt", b.SaltShare().Text(2), "in the levain",
		b.Prefermented().Text(1))
	// Output:
	// 960.0 g of dough, 550.0 g of it flour
	// wheat bread flour: 450.0 g, 90.0 %
	// whole rye flour: 50.0 g, 10.0 %
	// water: 350.0 g, 70.0 %
	// salt: 10.0 g, 2.0 %
	// levain: 100.0 g, 20.0 %
	// hydration 72.7 % salt 1.82 % in the levain 9.1 %
}

// What is weighed at mixing is what the file says, whatever is made beforehand beside it, and all of it adds up.
func TestWeightsStayAsWritten(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		grams := func(name string, low, high int) quantity.Mass {
			return quantity.Grams(float64(rapid.IntRange(low*10, high*10).Draw(t, name)) / 10)
		}
		pct := func(name string, low, high int) quantity.Percent {
			return quantity.NewPercent(float64(rapid.IntRange(low, high).Draw(t, name)))
		}
		b := loafByWeight()
		b.Flours[0].Weight, b.Flours[1].Weight = grams("wheat", 300, 900), grams("rye", 20, 300)
		b.Liquids[0].Weight, b.SaltWeight = grams("water", 300, 900), grams("salt", 1, 20)
		b.Levain.Weight, b.Levain.Hydration = grams("levain", 20, 300), pct("hydration", 50, 150)
		b.Levain.Flour = rapid.SampledFrom([]string{"", "wheat bread flour", "whole rye flour"}).Draw(t, "flour")
		b.Others = []Ingredient{{Name: "fresh yeast", Weight: grams("yeast", 1, 9), Kind: dough.KindFreshYeast}}
		b.Inclusions = []Ingredient{{Name: "walnuts", Weight: grams("nuts", 10, 200), Kind: dough.KindNuts}}
		want := map[string]quantity.Mass{
			"wheat bread flour": b.Flours[0].Weight, "whole rye flour": b.Flours[1].Weight, "water": b.Liquids[0].Weight,
			"salt": b.SaltWeight, "levain": b.Levain.Weight, "fresh yeast": b.Others[0].Weight,
			"walnuts": b.Inclusions[0].Weight,
		}
		if rapid.Bool().Draw(t, "biga") {
			b.Preferments = []PrefermentWork{{
				Name: "biga", Kind: dough.Biga, Weight: grams("biga", 50, 300), Hydration: pct("stiff", 45, 60),
				Yeast: pct("its yeast", 0, 2), Salt: pct("its salt", 0, 2),
				Flour: rapid.SampledFrom([]string{"", "wheat bread flour"}).Draw(t, "of"),
			}}
			want["biga"] = b.Preferments[0].Weight
		}
		if rapid.Bool().Draw(t, "scald") {
			parts := []SoakerPart{
				{Name: "whole rye flour", Weight: grams("scalded", 10, 90)}, {Name: "water", Weight: grams("hot", 20, 200)},
			}
			b.Soakers = []SoakerWork{{Name: "scald", Kind: dough.Scald, Parts: parts}}
			want["scald"] = parts[0].Weight.Add(parts[1].Weight)
		}
		batch, err := b.Batch(nil)
		if err != nil {
			t.Fatal(err)
		}
		var sum quantity.Mass
		for _, l := range batch.FinalDough() {
			if off := math.Abs(l.Mass.Sub(want[l.Name]).Grams()); !(off <= 0.0005) { // a millionth of a point of 5 kg
				t.Errorf("%s: %v, written %v", l.Name, l.Mass, want[l.Name])
			}
			sum = sum.Add(want[l.Name])
		}
		if off := math.Abs(batch.Dough().Sub(sum).Grams()); !(off <= 0.0005) {
			t.Errorf("%v of dough of %v", batch.Dough(), sum)
		}
	})
}

// The loaves share the dough, or scale it.
func TestLoavesOfAWeighedDough(t *testing.T) {
	g := quantity.Grams
	for name, c := range map[string]struct {
		loaves  Loaves
		perLoaf bool
		pieces  int
		dough   float64
	}{
		"nothing said":              {Loaves{}, false, 1, 960},
		"three share it":            {Loaves{Pieces: 3}, false, 3, 960},
		"weights of one, of six":    {Loaves{Pieces: 6}, true, 6, 5760},
		"weights of one, of one":    {Loaves{}, true, 1, 960},
		"rolls of 80 g":             {Loaves{Scaling: g(80)}, false, 12, 960},
		"rolls of about 100 g":      {Loaves{Scaling: g(100)}, false, 10, 960},
		"rolls of 70 g when baked":  {Loaves{Baked: g(70), Loss: quantity.NewPercent(12.5)}, false, 12, 960},
		"one larger than the dough": {Loaves{Scaling: g(1000)}, false, 1, 960},
		"one of 500 g":              {Loaves{Pieces: 1, Scaling: g(500)}, false, 1, 500},
		"six of 900 g":              {Loaves{Pieces: 6, Scaling: g(900)}, false, 6, 5400},
		"two baked":                 {Loaves{Pieces: 2, Baked: g(880), Loss: quantity.NewPercent(12)}, false, 2, 2000},
	} {
		b := loafByWeight()
		b.Loaves, b.PerLoaf = c.loaves, c.perLoaf
		batch, err := b.Batch(nil)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		if batch.Pieces() != c.pieces || !(math.Abs(batch.Dough().Grams()-c.dough) <= 0.001) {
			t.Errorf("%s: %d of %v, in all %v", name, batch.Pieces(), batch.ScalingWeight(), batch.Dough())
		}
	}
	// In percent too a loaf may be given as dough; its loss is that of the style.
	b := hall()
	b.Loaves.Baked, b.Loaves.Loss, b.Loaves.Scaling = quantity.Mass{}, quantity.Percent{}, g(900)
	batch, err := b.Batch(nil)
	if err != nil || !(math.Abs(batch.ScalingWeight().Grams()-900) <= 0.001) {
		t.Error(batch.ScalingWeight(), err)
	}
	d := plan(t, b)
	if l := d.Bake.Loaves; !(math.Abs(l.Baked.Grams()-900*(1-l.Loss.Fraction())) <= 0.001) ||
		l.Loss != d.Baking.Usual.Loss.Likely {
		t.Errorf("baked %v, lost %v of 900 g", l.Baked, l.Loss)
	}
}

// Weights and percentages that contradict each other are said where they stand.
func TestAmountsThatContradict(t *testing.T) {
	g, pct := quantity.Grams, quantity.NewPercent
	for name, c := range map[string]struct {
		change func(*Bake)
		want   []string
	}{
		"both": {func(b *Bake) { b.Liquids[0].Percent = pct(70) },
			[]string{"liquid[0].weight weight_and_percent"}},
		"both of the salt": {func(b *Bake) { b.Salt = pct(2) }, []string{"salt_weight weight_and_percent"}},
		"one flour": {func(b *Bake) { b.Flours[1] = Ingredient{Name: "rye", Percent: pct(20)} },
			[]string{"flour[1].percent flour_not_weighed"}},
		"one flour, nothing": {func(b *Bake) { b.Flours[1] = Ingredient{Name: "rye"} }, []string{"flour[1].weight required"}},
		"levain in percent": {func(b *Bake) { b.Levain.Weight, b.Levain.Prefermented = quantity.Mass{}, pct(10) },
			[]string{"levain.prefermented flour_weighed"}},
		"no levain":    {func(b *Bake) { b.Levain.Weight = quantity.Mass{} }, []string{"levain.weight required"}},
		"both levains": {func(b *Bake) { b.Levain.Prefermented = pct(10) }, []string{"levain.weight weight_and_percent"}},
		"negative":     {func(b *Bake) { b.SaltWeight = g(-1) }, []string{"salt_weight out_of_range"}},
		"scaling and baked": {func(b *Bake) { b.Loaves.Scaling, b.Loaves.Baked = g(900), g(800) },
			[]string{"loaves.scaling baked_and_scaling"}},
		"more than the dough": {func(b *Bake) { b.Loaves.Scaling = g(2000) }, []string{"loaves.scaling more_than_dough"}},
		"baked too heavy": {func(b *Bake) { b.Loaves.Baked, b.Loaves.Loss = g(2000), pct(12) },
			[]string{"loaves.baked more_than_dough"}},
		"crumbs": {func(b *Bake) { b.Loaves.Pieces = 100 }, []string{"loaves.scaling out_of_range"}},
		"soaker part": {func(b *Bake) {
			b.Soakers = []SoakerWork{{Name: "s", Parts: []SoakerPart{{Name: "water", Percent: pct(5)}}}}
		}, []string{"soaker[0].part[0].percent flour_weighed"}},
		"two at once": {func(b *Bake) { b.Salt, b.Liquids[0].Percent = pct(2), pct(70) },
			[]string{"liquid[0].weight weight_and_percent", "salt_weight weight_and_percent"}},
		"stock": {func(b *Bake) { b.Flours[0].AtHand = g(-5) }, []string{"flour[0].at_hand out_of_range"}},
	} {
		b := loafByWeight()
		c.change(&b)
		var got []string
		for _, e := range quantity.InputErrors(b.Check(wednesday(t))) {
			got = append(got, e.Path+" "+e.Code)
		}
		if name == "two at once" && len(got) == 2 && got[0] > got[1] {
			got[0], got[1] = got[1], got[0]
		}
		if diff := cmp.Diff(c.want, got); diff != "" {
			t.Errorf("%s: %s", name, diff)
		}
		if _, err := b.Batch(nil); err == nil {
			t.Errorf("%s: a batch was made", name)
		}
	}
	b := hall() // in percent; a line may be left out
	b.Salt = quantity.Percent{}
	if err := b.Check(wednesday(t)); err != nil {
		t.Error(err)
	}
	b.SaltWeight, b.Salt, b.PerLoaf = g(10), quantity.Percent{}, true
	var got []string
	for _, e := range quantity.InputErrors(b.Check(wednesday(t))) {
		got = append(got, e.Path+" "+e.Code)
	}
	if diff := cmp.Diff([]string{"salt_weight flour_not_weighed", "per_loaf nothing_weighed"}, got); diff != "" {
		t.Error(diff)
	}
	// What the formula finds wrong is said at the weight, where it was written.
	b = loafByWeight()
	b.Liquids[0].Weight, b.Loaves.Pieces = quantity.Kilograms(6), 3
	if err := b.Check(wednesday(t)); err == nil || !strings.Contains(err.Error(), "liquid[0].weight") {
		t.Error(err)
	}
}

// A bake by weight is kept as it was written, and its plan shows both.
func TestABakeByWeightIsKept(t *testing.T) {
	b := loafByWeight()
	text, err := json.Marshal(b)
	if err != nil {
		t.Fatal(err)
	}
	again, err := Read(text)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(b.Flours, again.Flours); diff != "" {
		t.Error(diff)
	}
	if again.SaltWeight != b.SaltWeight || again.Levain.Weight != b.Levain.Weight {
		t.Errorf("%+v", again)
	}
	d := plan(t, b)
	dough := d.Data().Weigh[1]
	if dough.Total != quantity.Grams(960) || dough.Lines[0].Mass != quantity.Grams(450) ||
		dough.Lines[0].Percent != quantity.NewPercent(90) {
		t.Errorf("%+v", dough)
	}
	if _, err := b.Fit(t.Context(), wednesday(t), nil); err != nil {
		t.Error(err)
	}
}

// What there is of flour or ripe levain decides how many loaves there are.
func TestWhatIsAtHandLimitsTheBake(t *testing.T) {
	g := quantity.Grams
	six := loafByWeight()
	six.PerLoaf, six.Loaves.Pieces = true, 6
	for name, c := range map[string]struct {
		change func(*Bake)
		pieces int
		dough  float64
		says   string
	}{
		"enough":          {func(b *Bake) { b.Flours[0].AtHand = g(2700) }, 6, 5760, ""},
		"a gram too few":  {func(b *Bake) { b.Flours[0].AtHand = g(2699) }, 5, 4800, "wheat bread flour"},
		"less than one":   {func(b *Bake) { b.Flours[0].AtHand = g(225) }, 1, 480, "wheat bread flour"},
		"salt for two":    {func(b *Bake) { b.Liquids[0].AtHand = g(1000) }, 2, 1920, "water"},
		"the scarcest":    {func(b *Bake) { b.Flours[0].AtHand, b.Liquids[0].AtHand = g(2000), g(1000) }, 2, 1920, "water"},
		"ripe levain":     {func(b *Bake) { b.Levain.RipeNow, b.Levain.CultureAtHand = true, g(450) }, 4, 3840, "levain"},
		"its own flour":   {func(b *Bake) { b.Levain.RipeNow, b.Flours[1].AtHand = true, g(300) }, 6, 5760, ""},
		"fed for the day": {func(b *Bake) { b.Flours[1].AtHand = g(300) }, 3, 2880, "whole rye flour"},
	} {
		b := six
		l := *six.Levain
		b.Levain, b.Flours, b.Liquids = &l, append([]Ingredient{}, six.Flours...), append([]Ingredient{}, six.Liquids...)
		c.change(&b)
		d := plan(t, b)
		if d.Bake.Loaves.Pieces != c.pieces || !(math.Abs(d.Batch.Dough().Grams()-c.dough) <= 0.01) {
			t.Errorf("%s: %d loaves of %v of dough", name, d.Bake.Loaves.Pieces, d.Batch.Dough())
		}
		said := ""
		for _, n := range d.Notes {
			if n.ID() == "bakeday.note_limited" {
				said = n.String()
			}
		}
		if c.says == "" != (said == "") || !strings.Contains(said, c.says) {
			t.Errorf("%s: %q", name, said)
		}
	}
}

// Impossible weights are refused and nothing panics.
func TestHostileWeights(t *testing.T) {
	var invalid quantity.Mass
	if err := invalid.UnmarshalText([]byte("1e400 g")); err == nil {
		t.Fatal("read")
	}
	huge := quantity.Kilograms(1e12)
	for _, m := range []quantity.Mass{huge, huge.Times(1000), quantity.Grams(-1), quantity.Grams(1e-6)} {
		for _, change := range []func(*Bake){
			func(b *Bake) { b.Flours[0].Weight = m }, func(b *Bake) { b.Levain.Weight = m },
			func(b *Bake) { b.Loaves.Scaling = m }, func(b *Bake) { b.Liquids[0].Weight = m },
		} {
			b := loafByWeight()
			change(&b)
			if err := b.Check(wednesday(t)); err != nil && len(quantity.InputErrors(err)) == 0 {
				t.Error(err)
			}
			if _, err := b.Batch(nil); errors.Is(err, errors.ErrUnsupported) {
				t.Error(err)
			}
		}
	}
}

// The water of a levain is water, whatever other liquid stands before it.
func TestTheWaterOfALevainByWeight(t *testing.T) {
	b := loafByWeight()
	g := quantity.Grams
	b.Liquids = []Ingredient{
		{Name: "milk", Weight: g(100), Kind: dough.KindMilk, Water: quantity.NewPercent(88)},
		{Name: "water", Weight: g(250), Kind: dough.KindWater},
	}
	batch, err := b.Batch(nil)
	if err != nil {
		t.Fatal(err)
	}
	for _, l := range batch.Overall() {
		want := map[string]float64{"milk": 100, "water": 300}[l.Name]
		if want > 0 && !(math.Abs(l.Mass.Grams()-want) <= 0.001) {
			t.Errorf("%v of %s in all", l.Mass, l.Name)
		}
	}
}
