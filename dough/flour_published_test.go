package dough_test

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/internal/workcheck"
	"github.com/shopspring/decimal"
)

// The figures about ingredients, vessels and cost stand in a table of their own; its inputs name what to
// find.
func TestPublishedIngredients(t *testing.T) {
	f, err := os.Open("testdata/published_ingredients.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	seen := map[string]bool{}
	for _, row := range rows[1:] {
		t.Run(row[0], func(t *testing.T) {
			if seen[row[0]] {
				t.Error("id used twice")
			}
			seen[row[0]] = true
			if row[5] == "" || row[6] == "" {
				t.Error("a row needs the reason of its tolerance and its source")
			}
			switch row[7] {
			case "published", "computed", "common practice", "from memory":
			default:
				t.Errorf("status %q", row[7])
			}
			in := &inputs{t: t, pairs: map[string]string{}, used: map[string]bool{}}
			for _, pair := range strings.Split(row[2], ";") {
				key, value, ok := strings.Cut(pair, "=")
				if !ok {
					t.Fatalf("input %q", pair)
				}
				in.pairs[strings.TrimSpace(key)] = strings.TrimSpace(value)
			}
			if row[3] == "refused" {
				if v, err := ingredient(in); err == nil {
					t.Errorf("%s: got %v, want an error", row[1], v)
				}
				return
			}
			got, err := ingredient(in)
			if err != nil {
				t.Fatal(err)
			}
			for key := range in.pairs {
				if !in.used[key] {
					t.Errorf("input %q is not used", key)
				}
			}
			want, err1 := strconv.ParseFloat(row[3], 64)
			tolerance, err2 := strconv.ParseFloat(row[4], 64)
			if err1 != nil || err2 != nil || tolerance < 0 {
				t.Fatalf("expected %q, tolerance %q", row[3], row[4])
			}
			if !(math.Abs(got-want) <= tolerance+1e-12*math.Abs(want)) {
				t.Errorf("%s: got %v, want %v ± %v", row[1], got, want, tolerance)
			}
		})
	}
	if len(seen) < 60 {
		t.Errorf("only %d rows", len(seen))
	}
}

func money(in *inputs, key string) decimal.Decimal { return decimal.RequireFromString(in.text(key)) }

func (in *inputs) massOr(key string) quantity.Mass {
	if !in.has(key) {
		return quantity.Mass{}
	}
	return in.mass(key)
}

func (in *inputs) unitOf(key string) quantity.MassUnit {
	if !in.has(key) {
		return quantity.Gram
	}
	return map[string]quantity.MassUnit{"g": quantity.Gram, "kg": quantity.Kilogram, "lb": quantity.Pound, "oz": quantity.Ounce}[in.text(key)]
}

func yeastKind(in *inputs, key string) dough.Kind {
	var k dough.Kind
	if err := k.UnmarshalText([]byte(in.text(key))); err != nil {
		in.t.Fatal(err)
	}
	return k
}

func ingredient(in *inputs) (float64, error) {
	switch find := in.text("find"); find {
	case "pearson":
		r, err := dough.PearsonSquare(dough.TwoFlours{A: dough.FlourLot{Protein: in.percent("a")}, B: dough.FlourLot{Protein: in.percent("b")}, Target: in.percent("target"), Total: in.massOr("total")})
		if err != nil {
			in.used["get"], in.used["unit"] = true, true
			return 0, err
		}
		switch in.text("get") {
		case "share a":
			return r.Flours[0].Share.Points(), nil
		case "share b":
			return r.Flours[1].Share.Points(), nil
		case "mass a":
			return r.Flours[0].Mass.In(in.unitOf("unit")), nil
		case "mass b":
			return r.Flours[1].Mass.In(in.unitOf("unit")), nil
		}
		return 100 * r.Flours[1].Share.Points() / r.Flours[0].Share.Points(), nil // b for 100 of a
	case "blend protein":
		p, err := dough.BlendProtein([]dough.WeighedFlour{
			{FlourLot: dough.FlourLot{Protein: in.percent("a")}, Mass: in.mass("mass a")}, {FlourLot: dough.FlourLot{Protein: in.percent("b")}, Mass: in.mass("mass b")},
		})
		return p.Points(), err
	case "add gluten", "replace with gluten":
		boost := dough.AddGluten
		if find != "add gluten" {
			boost = dough.ReplaceWithGluten
		}
		r, err := boost(dough.GlutenBoost{Protein: in.percent("protein"), Target: in.percent("target"), Flour: in.massOr("flour")})
		if in.has("flour") {
			return r.ExtraWater.Grams() / r.Gluten.Grams(), err
		}
		return r.PerFlour.Points(), err
	case "basis", "absorption":
		convert := dough.ConvertBasis
		if find == "absorption" {
			convert = dough.ConvertAbsorption
		}
		r, err := convert(dough.FlourBasis{Value: in.percent("value"), From: in.percent("from"), To: in.percent("to")})
		return r.Value.Points(), err
	case "yield of absorption": // dough for 100 of flour, a against b, in percent
		return 100 * ((100+in.number("a"))/(100+in.number("b")) - 1), nil
	case "type":
		return dough.FlourType(in.percent("ash"), in.percent("moisture"))
	case "food":
		f, ok := dough.SR28().Find(in.text("ndb"))
		if !ok {
			in.t.Fatal("not in the table")
		}
		switch in.text("get") {
		case "protein":
			return f.Protein.Points(), nil
		case "ash":
			return f.Ash.Points(), nil
		}
		return f.Water.Points(), nil
	case "effective", "water share":
		names, values := in.list("foods")
		var amounts []dough.FoodAmount
		for i, ndb := range names {
			f, ok := dough.SR28().Find(ndb)
			if !ok {
				in.t.Fatalf("%s is not in the table", ndb)
			}
			m, err := quantity.ParseMass(values[i])
			if err != nil {
				in.t.Fatal(err)
			}
			amounts = append(amounts, dough.FoodAmount{Food: f, Mass: m})
		}
		water, err := dough.WaterIn(amounts)
		if in.has("plus") {
			water = water.Add(in.mass("plus"))
		}
		if find == "effective" {
			return water.PercentOf(in.mass("flour")).Points(), err
		}
		return water.Grams(), err
	case "milk for water":
		f, _ := dough.SR28().Find(in.text("ndb"))
		m, err := dough.InPlaceOfWater(in.mass("water"), f.Water)
		return m.Grams(), err
	case "volume":
		v, err := quantity.ParseVolume(in.text("volume"))
		if err != nil {
			in.t.Fatal(err)
		}
		var method dough.FillMethod
		if in.has("method") {
			if err := method.UnmarshalText([]byte(in.text("method"))); err != nil {
				in.t.Fatal(err)
			}
		}
		r, err := dough.MassOfVolume(dough.FoodVolume{Food: in.text("of"), Volume: v, Method: method})
		return r.Likely.Grams(), err
	case "density of measure":
		for _, m := range dough.FoodMeasures() {
			if m.Food == in.text("of") && m.Source.Key == "SR28 weights" {
				return m.Mass.Grams() / m.Per.Milliliters(), nil
			}
		}
		in.t.Fatal("no such measure")
	case "water mass":
		v, err := quantity.ParseVolume(in.text("volume"))
		if err != nil {
			in.t.Fatal(err)
		}
		m, err := dough.WaterMass(v, quantity.MustTemperature(in.text("at")))
		return m.Grams(), err
	case "yeast":
		swap := dough.YeastSwap{Mass: in.mass("mass"), From: yeastKind(in, "from"), To: yeastKind(in, "to")}
		if in.has("table") {
			for _, table := range dough.PublishedYeast() {
				if table.Name == in.text("table") {
					swap.Table = table
				}
			}
		}
		r, err := dough.ConvertYeast(swap)
		if in.has("get") {
			if in.text("get") == "low" {
				return r.Low.Grams(), err
			}
			return r.High.Grams(), err
		}
		return r.Mass.Grams(), err
	case "unit cost":
		var how dough.MoneyRounding
		if in.has("round") {
			if err := how.UnmarshalText([]byte(in.text("round"))); err != nil {
				in.t.Fatal(err)
			}
		}
		u := dough.UnitPrice{Price: money(in, "price"), Pack: in.mass("pack"), Unit: in.unitOf("unit"), Rounding: how}
		if in.has("yield") {
			u.Yield = in.percent("yield")
		}
		d, err := dough.UnitCost(u)
		return d.InexactFloat64(), err
	case "cost":
		sheet := dough.CostSheet{Lines: []dough.CostLine{{Used: in.mass("used"), Price: money(in, "price"), Pack: in.mass("pack")}}, Loaves: 1, Unit: in.unitOf("unit"), Places: 2}
		if in.has("yield") {
			sheet.Lines[0].Yield = in.percent("yield")
		}
		if in.has("round") {
			if err := sheet.UnitRounding.UnmarshalText([]byte(in.text("round"))); err != nil {
				in.t.Fatal(err)
			}
		}
		c, err := dough.Cost(sheet)
		return c.Batch.InexactFloat64(), err
	case "usable":
		p, err := dough.UsableYield(in.mass("usable"), in.mass("bought"))
		return p.Points(), err
	case "buy":
		m, err := dough.ToBuy(in.mass("usable"), in.percent("yield"))
		return m.In(in.unitOf("unit")), err
	case "tin factor":
		f, err := dough.TinFactorOf(dough.WholesaleWhite)
		return f.Low, err
	case "tin box":
		l := func(key string) quantity.Length {
			v, err := quantity.ParseLength(in.text(key))
			if err != nil {
				in.t.Fatal(err)
			}
			return v
		}
		v, err := dough.TinBox(l("length"), l("width"), l("height"))
		if in.has("dough") {
			return v.Milliliters() / in.mass("dough").Grams(), err
		}
		return v.Milliliters(), err
	case "lined bowl":
		v, err := quantity.ParseVolume(in.text("volume"))
		if err != nil {
			in.t.Fatal(err)
		}
		_, m, _, err := dough.DoughForVessel(v, dough.LinedBowl)
		return m.Grams(), err
	case "basket":
		r, err := dough.ProofVesselFor(quantity.Grams(700), dough.ProofBasket)
		if err != nil {
			return 0, err
		}
		d, err := quantity.ParseLength(in.text("diameter"))
		if err != nil {
			in.t.Fatal(err)
		}
		for _, b := range r.Round {
			if b.Diameter == d {
				if in.text("get") == "low" {
					return b.Low.In(quantity.Pound), nil
				}
				return b.High.In(quantity.Pound), nil
			}
		}
		in.t.Fatal("no such basket")
	case "strength":
		r, err := dough.JudgeFlour(dough.FlourStrength{Hydration: quantity.MustPercent("65 %"), W: in.number("w")})
		if err != nil {
			return 0, err
		}
		for _, o := range r.Opinions {
			if o.Source.Key == in.text("list") {
				return o.High.Points(), nil
			}
		}
		in.t.Fatal("no such list")
	case "total": // of 100 % of flour and the parts
		names, values := in.list("parts")
		f := dough.Formula{Flours: []dough.Part{{Name: "flour", Percent: quantity.MustPercent("100 %")}}}
		for i, name := range names {
			p, err := quantity.ParsePercent(values[i])
			if err != nil {
				in.t.Fatal(err)
			}
			if part := (dough.Part{Name: name, Percent: p}); name == "water" {
				f.Liquids = append(f.Liquids, part)
			} else {
				f.Others = append(f.Others, part)
			}
		}
		b, err := f.For(dough.ByFlour{Mass: quantity.Grams(1000)})
		return b.Total().Points(), err
	case "convert":
		return in.mass("mass").In(in.unitOf("unit")), nil
	default:
		in.t.Fatalf("nothing finds %q", find)
	}
	return 0, nil
}

// A misprint is one: its own arithmetic gives something else than what is printed.
func TestIngredientMisprints(t *testing.T) {
	f, err := os.Open("testdata/misprints_ingredients.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	for _, row := range rows[1:] {
		_, v, err := workcheck.Evaluate(row[3])
		if err != nil {
			t.Errorf("%s: %v", row[0], err)
			continue
		}
		_, frac, _ := strings.Cut(row[2], ".")
		if strconv.FormatFloat(v, 'f', len(frac), 64) == row[2] {
			t.Errorf("%s: %s is what the arithmetic gives", row[0], row[2])
		}
	}
}
