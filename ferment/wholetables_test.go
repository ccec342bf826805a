package ferment_test

import (
	"regexp"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/ferment"
	"example.org/maslin/internal/trial"
)

func temperatures(celsius ...float64) (out []quantity.Temperature) {
	for _, c := range celsius {
		out = append(out, quantity.Celsius(c))
	}
	return out
}

// Rate curves side by side: four, which are drawn, five, which are not, two that have no temperature in common but one,
// and of one's own.
func TestWholePagesOfCurves(t *testing.T) {
	own := func(name string, low, high float64) ferment.Curve {
		c, err := ferment.ConstantQ10{Name: name, Q: 2, Rate: 0.25, Reference: 24, Low: low, High: high}.Curve()
		if err != nil {
			t.Fatal(err)
		}
		return c
	}
	mine, err := ferment.NewCurve(ferment.About{Name: "a winter of jars", Low: 15, High: 30},
		func(c float64) float64 { return max(0, 0.02*(c-10)) })
	if err != nil {
		t.Fatal(err)
	}
	root, err := ferment.SquareRoot{Name: "short root", Min: 4, B: 0.03}.Curve()
	if err != nil {
		t.Fatal(err)
	}
	rates := func(curves []ferment.Curve, celsius ...float64) ferment.CurveRates {
		r, err := ferment.CurveTable{Curves: curves, Temperatures: temperatures(celsius...)}.Rates()
		if err != nil {
			t.Fatal(err)
		}
		return r
	}
	four, named := rates(ferment.Curves()[:4], 4, 24, 36.5), rates(ferment.Curves(), 0, 15, 38, 45.4)
	few := rates([]ferment.Curve{mine, root}, 5, 10, 15, 30)
	touching := rates([]ferment.Curve{own("cool", 5, 20), own("warm", 20, 40)}, 20, 20.1)
	keep(t, "curves.txt", leaf{"four", four.Report()}, leaf{"all", named.Report()}, leaf{"of one's own", few.Report()},
		leaf{"touching", touching.Report()}, leaf{"none", ferment.CurveRates{}.Report()})
	derived := four.Working().Text(110) + "\n" + named.Working().Text(110) + "\n" + few.Working().Text(110)
	trial.Kept(t, "curvesderived.txt", beyondTwelve.ReplaceAllString(derived, "$1"))
}

// beyondTwelve are digits that differ from machine to machine: some round a product and a sum at once.
var beyondTwelve = regexp.MustCompile(`(\.\d{12})\d+`)

// Tables of rises: with levain, of one dough, and with yeast; what is derived is the cell in the middle.
func TestWholePagesOfRises(t *testing.T) {
	times := func(b ferment.Bulk, celsius, amounts []float64) ferment.RiseTimes {
		in := ferment.RiseTable{Bulk: b, Temperatures: temperatures(celsius...)}
		for _, a := range amounts {
			in.Amounts = append(in.Amounts, pct(a))
		}
		r, err := in.Times()
		if err != nil {
			t.Fatal(err)
		}
		return r
	}
	levain := times(good(), []float64{18, 20, 22, 24, 26}, []float64{5, 10, 15, 20})
	keep(t, "rises.txt", leaf{"levain", levain.Report()},
		leaf{"yeast", times(yeasted(ferment.FreshYeast, 9), []float64{21, 24}, []float64{1, 2.5, 4}).Report()},
		leaf{"one dough", times(good(), []float64{23}, []float64{10}).Report()},
		leaf{"kept and read again", ferment.RiseTimes{Table: levain.Table, Times: levain.Times}.Report()},
		leaf{"none", ferment.RiseTimes{}.Report()})
	middle := changed(func(b *ferment.Bulk) {
		b.Inoculation, b.History = pct(15), ferment.Constant(quantity.Celsius(22))
	})
	want := working.Telling{Width: 110}.Text(estimate(t, middle).Working())
	if got := (working.Telling{Width: 110}).Text(levain.Working()); got != want {
		t.Errorf("derived is\n%s\nwant the dough of the middle\n%s", got, want)
	}
}

// What bakes have taught: nothing, little at one temperature, and much that changed over a year.
func TestWholePagesOfLessons(t *testing.T) {
	log := bakeLog(t, 30)
	for i := range log {
		log[i].On = time.Date(2026, 1, 4, 8, 0, 0, 0, time.UTC).AddDate(0, 0, 9*i)
		if i >= 15 {
			log[i].Took = log[i].Took * 3 / 2
		}
	}
	one := ferment.LoggedBulk{Bulk: good(), Took: span(7)}
	keep(t, "lessons.txt",
		leaf{"one bake", learn(t, ferment.Learning{Bakes: []ferment.LoggedBulk{one}}).Report()},
		leaf{"three alike", learn(t, ferment.Learning{Bakes: []ferment.LoggedBulk{one, one, one}, Person: "Ada",
			Name: "rye"}).Report()},
		leaf{"changed over the year", learn(t, ferment.Learning{Bakes: log}).Report()},
		leaf{"nothing", ferment.Lesson{}.Report()})
}
