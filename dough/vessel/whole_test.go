package vessel_test

import (
	"fmt"
	"strings"
	"testing"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/vessel"
	"example.org/maslin/internal/trial"
)

// factor is the tin factor of a loaf.
func factor(t vessel.TinLoaf) vessel.TinFactor {
	f, err := t.Factor()
	if err != nil {
		panic(err)
	}
	return f
}

// One answer of each kind as it is told today, page and derivation. Where the figures come from, and that each line of
// arithmetic holds, the other tests know; here stands that nothing is lost, and that no number moves unseen.
func TestWholeAnswers(t *testing.T) {
	g, cm := quantity.Grams, quantity.Centimeters
	own, err := vessel.OwnTin{Volume: quantity.Liters(2), Dough: g(750)}.Factor()
	if err != nil {
		t.Fatal(err)
	}
	for name, a := range map[string]trial.Told{
		"room":        trial.Must(vessel.MixedDough{Mass: g(1800)}.Volume()),
		"basket":      trial.Must(vessel.Proofing{Dough: g(900)}.Size()),
		"bowl":        trial.Must(vessel.Proofing{Vessel: vessel.LinedBowl, Dough: g(1200)}.Size()),
		"basket-fill": trial.Must(vessel.Proofing{Diameter: cm(21), Depth: cm(8)}.Fill()),
		"bowl-fill":   trial.Must(vessel.Proofing{Vessel: vessel.LinedBowl, Volume: quantity.Liters(2)}.Fill()),
		"tin":         trial.Must(factor(vessel.RyeTin).Tin(g(1000))),
		"own-tin":     trial.Must(own.Tin(g(900))),
		"own-fill":    trial.Must(own.Fill(quantity.Liters(1.5))),
		"deep-fill": trial.Must(vessel.TinBox{Length: cm(24), Width: cm(11),
			Height: cm(11)}.Fill(vessel.OpenTinWhite)),
		"low-fill": trial.Must(vessel.TinBox{Length: cm(24), Width: cm(11),
			Height: cm(7)}.Fill(vessel.OpenTinWhite)),
		"home-milled-fill": trial.Must(factor(vessel.HomeMilledTin).Fill(quantity.Liters(2))),
		"trade-fill":       trial.Must(factor(vessel.WholesaleWhite).Fill(quantity.Liters(2))),
		"marks":            trial.Must(vessel.RiseContainer{Diameter: cm(20), Height: cm(15), Dough: g(3000)}.Marks()),
		"square-marks": trial.Must(vessel.RiseContainer{Width: cm(20), Depth: cm(25), Dough: g(3000), Density: 1.1,
			Rises: []quantity.Percent{percent(40)}}.Marks()),
		"measured-marks": trial.Must(vessel.RiseContainer{Diameter: cm(20), Start: cm(8)}.Marks()),
		"jar":            trial.Must(vessel.SampleJar{Diameter: cm(5), Height: cm(12)}.Sample()),
		"tray":           trial.Must(vessel.SizedPiece{Bread: vessel.LowFocaccia, Length: cm(40), Width: cm(30)}.Dough()),
		"round-tray":     trial.Must(vessel.SizedPiece{Bread: vessel.DeepPanPizza, Diameter: cm(28)}.Dough()),
		"tray-size":      trial.Must(vessel.SizedPiece{Bread: vessel.LowFocaccia, Mass: g(900), Width: cm(30)}.Size()),
		"disk":           trial.Must(vessel.SizedPiece{Bread: vessel.NeapolitanPizza, Diameter: cm(30)}.Dough()),
		"disk-size":      trial.Must(vessel.SizedPiece{Bread: vessel.NeapolitanPizza, Mass: g(260)}.Size()),
		"stick":          trial.Must(vessel.SizedPiece{Bread: vessel.Baguette, Length: cm(55)}.Dough()),
		"stick-size":     trial.Must(vessel.SizedPiece{Bread: vessel.Baguette, Mass: g(350)}.Size()),
		"no-volume":      vessel.VesselVolume{}, "no-fill": vessel.VesselFill{}, "no-marks": vessel.RiseMarks{},
		"no-sample": vessel.JarSample{}, "no-piece": vessel.PieceFit{},
	} {
		trial.KeptAnswer(t, name, a, 0)
	}
}

// Each figure at its least and its most, and just beyond either: what is taken, and what is said of what is not. The
// ranges are those of the documentation.
func TestFiguresAtTheirBounds(t *testing.T) {
	var page strings.Builder
	g, cm, ml := quantity.Grams, quantity.Centimeters, quantity.Milliliters
	said := func(what string, x any, err error) {
		text := "taken"
		if err != nil {
			text = strings.ReplaceAll(err.Error(), "\n", "; ")
		}
		fmt.Fprintf(&page, "%s %v: %s\n", what, x, text)
	}
	around := func(what string, low, high float64, ask func(x float64) error) {
		for _, x := range []float64{0, low * 0.999, low, high, high * 1.001} {
			said(what, x, ask(x))
		}
	}
	jar := vessel.SampleJar{Diameter: cm(10), Height: cm(20)}
	round := vessel.RiseContainer{Diameter: cm(20), Start: cm(5)}
	square := vessel.RiseContainer{Width: cm(20), Depth: cm(20), Start: cm(5)}
	weighed := vessel.RiseContainer{Diameter: cm(20), Dough: g(1000)}
	tin := vessel.TinBox{Length: cm(30), Width: cm(20), Height: cm(10)}
	proof := vessel.Proofing{Length: cm(40), Width: cm(20), Depth: cm(8)}
	likely := factor(vessel.RyeTin)
	for _, c := range []struct {
		what      string
		low, high float64
		ask       func(x float64) error
	}{
		{"jar diameter", 2, 20, func(x float64) error { in := jar; in.Diameter = cm(x); return trial.Err(in.Sample()) }},
		{"jar height", 3, 40, func(x float64) error { in := jar; in.Height = cm(x); return trial.Err(in.Sample()) }},
		{"jar rise", 10, 500, func(x float64) error { in := jar; in.Rise = percent(x); return trial.Err(in.Sample()) }},
		{"jar density", 0.5, 1.4, func(x float64) error { in := jar; in.Density = x; return trial.Err(in.Sample()) }},
		{"mass", 1, 1e8, func(x float64) error { return trial.Err(vessel.MixedDough{Mass: g(x)}.Volume()) }},
		{"density", 0.5, 1.4, func(x float64) error {
			return trial.Err(vessel.MixedDough{Mass: g(1000), Density: x}.Volume())
		}},
		{"diameter", 2, 200, func(x float64) error { in := round; in.Diameter = cm(x); return trial.Err(in.Marks()) }},
		{"start", 0.2, 200, func(x float64) error { in := round; in.Start = cm(x); return trial.Err(in.Marks()) }},
		{"height", 1, 300, func(x float64) error { in := round; in.Height = cm(x); return trial.Err(in.Marks()) }},
		{"rise", 1, 500, func(x float64) error {
			in := round
			in.Rises = []quantity.Percent{percent(x)}
			return trial.Err(in.Marks())
		}},
		{"width", 2, 200, func(x float64) error { in := square; in.Width = cm(x); return trial.Err(in.Marks()) }},
		{"depth", 2, 200, func(x float64) error { in := square; in.Depth = cm(x); return trial.Err(in.Marks()) }},
		{"dough", 71, 70_000, func(x float64) error { in := weighed; in.Dough = g(x); return trial.Err(in.Marks()) }},
		{"dough's density", 0.5, 1.4, func(x float64) error {
			in := weighed
			in.Density = x
			return trial.Err(in.Marks())
		}},
		{"proof", 50, 5000, func(x float64) error { return trial.Err(vessel.Proofing{Dough: g(x)}.Size()) }},
		{"basket", 100, 20_000, func(x float64) error { return trial.Err(vessel.Proofing{Volume: ml(x)}.Fill()) }},
		{"basket across", 8, 80, func(x float64) error {
			return trial.Err(vessel.Proofing{Diameter: cm(x), Depth: cm(4)}.Fill())
		}},
		{"basket length", 8, 80, func(x float64) error { in := proof; in.Length = cm(x); return trial.Err(in.Fill()) }},
		{"basket width", 8, 80, func(x float64) error {
			in := proof
			in.Width, in.Depth = cm(x), cm(4)
			return trial.Err(in.Fill())
		}},
		{"basket depth", 3, 10, func(x float64) error { in := proof; in.Depth = cm(x); return trial.Err(in.Fill()) }},
		{"own volume", 50, 8000, func(x float64) error {
			return trial.Err(vessel.OwnTin{Volume: ml(x), Dough: g(x / 2)}.Factor())
		}},
		{"own dough", 10, 50_000, func(x float64) error {
			return trial.Err(vessel.OwnTin{Volume: ml(max(50, x)), Dough: g(x)}.Factor())
		}},
		{"own factor", 1, 8, func(x float64) error {
			return trial.Err(vessel.OwnTin{Volume: ml(1000 * x), Dough: g(1000)}.Factor())
		}},
		{"tin", 50, 50_000, func(x float64) error { return trial.Err(likely.Fill(ml(x))) }},
		{"tin dough", 10, 20_000, func(x float64) error { return trial.Err(likely.Tin(g(x))) }},
		{"low factor", 1, 8, func(x float64) error {
			return trial.Err(vessel.TinFactor{Low: x, Likely: 8, High: 8}.Fill(ml(1000)))
		}},
		{"high factor", 1, 8, func(x float64) error {
			return trial.Err(vessel.TinFactor{Low: 1, Likely: 1, High: x}.Fill(ml(1000)))
		}},
		{"likely factor", 2, 4, func(x float64) error {
			return trial.Err(vessel.TinFactor{Low: 2, Likely: x, High: 4}.Tin(g(1000)))
		}},
		{"tin length", 1, 200, func(x float64) error { in := tin; in.Length = cm(x); return trial.Err(in.Volume()) }},
		{"tin width", 1, 200, func(x float64) error { in := tin; in.Width = cm(x); return trial.Err(in.Volume()) }},
		{"tin height", 1, 200, func(x float64) error { in := tin; in.Height = cm(x); return trial.Err(in.Volume()) }},
		{"floor length", 1, 30, func(x float64) error { in := tin; in.BaseLength = cm(x); return trial.Err(in.Volume()) }},
		{"floor width", 1, 20, func(x float64) error { in := tin; in.BaseWidth = cm(x); return trial.Err(in.Volume()) }},
		{"disk", 5, 200, func(x float64) error {
			return trial.Err(vessel.SizedPiece{Bread: vessel.Pita, Diameter: cm(x)}.Dough())
		}},
		{"stick", 5, 200, func(x float64) error {
			return trial.Err(vessel.SizedPiece{Bread: vessel.Ficelle, Length: cm(x)}.Dough())
		}},
		{"tray length", 5, 200, func(x float64) error {
			return trial.Err(vessel.SizedPiece{Length: cm(x), Width: cm(30)}.Dough())
		}},
		{"tray width", 5, 200, func(x float64) error {
			return trial.Err(vessel.SizedPiece{Length: cm(30), Width: cm(x)}.Dough())
		}},
		{"piece", 5, 50_000, func(x float64) error { return trial.Err(vessel.SizedPiece{Mass: g(x)}.Size()) }},
		{"piece width", 5, 200, func(x float64) error {
			return trial.Err(vessel.SizedPiece{Mass: g(900), Width: cm(x)}.Size())
		}},
	} {
		around(c.what, c.low, c.high, c.ask)
	}
	both := vessel.SizedPiece{Diameter: cm(30), Length: cm(30), Width: cm(30), Mass: g(500)}
	for b := range vessel.SizedBread(19) {
		both.Bread = b
		said("too much said of", b, trial.Err(both.Dough()))
		said("too much said of", b, trial.Err(both.Size()))
	}
	all := round
	all.Width, all.Depth = cm(20), cm(20)
	said("round and", "square", trial.Err(all.Marks()))
	said("no", "container", trial.Err(vessel.RiseContainer{}.Marks()))
	fifty := round
	fifty.Rises = make([]quantity.Percent, 51)
	said("marks", 51, trial.Err(fifty.Marks()))
	over := proof
	over.Diameter, over.Volume = cm(20), ml(1000)
	said("basket, all", "ways", trial.Err(over.Fill()))
	for _, in := range []vessel.Proofing{{Length: cm(30)}, {Width: cm(30)}, {Depth: cm(8)}, {Diameter: cm(30)}, {}} {
		said("basket in", "part", trial.Err(in.Fill()))
	}
	for _, text := range []string{"", "x", "24x11x7cm", "24x11x7", "24 cm x 11 cm x 7 cm", "9x5xin",
		"24x11cm", "1x2x3x4cm", "24x11x7 kg"} {
		said("tin", text, trial.Err(vessel.ReadTin(text, "")))
		said("floor", text, trial.Err(vessel.ReadTin("24x11x7cm", text)))
	}
	trial.Kept(t, "bounds.txt", page.String())
}

// A mark at the rim itself is not above it.
func TestMarkAtTheRim(t *testing.T) {
	in := vessel.RiseContainer{Diameter: quantity.Centimeters(20), Start: quantity.Centimeters(10),
		Height: quantity.Centimeters(15), Rises: []quantity.Percent{percent(50), percent(50.1)}}
	r, err := in.Marks()
	if err != nil || r.Marks[0].Above || !r.Marks[1].Above {
		t.Errorf("%v, %v", r.Marks, err)
	}
}
