package vessel_test

import (
	"math"
	"testing"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/vessel"
	"example.org/maslin/internal/trial"
	"example.org/maslin/internal/workcheck"

	"pgregory.net/rapid"
)

func TestFillLines(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := vessel.RiseContainer{Diameter: trial.Centimeters(t, "diameter", 8, 40), Height: trial.Centimeters(t, "height", 5, 60)}
		if rapid.Bool().Draw(t, "square") {
			in = vessel.RiseContainer{Width: trial.Centimeters(t, "width", 8, 40), Depth: trial.Centimeters(t, "depth", 8, 40)}
		}
		if rapid.Bool().Draw(t, "measured") {
			in.Start = trial.Centimeters(t, "start", 0.2, 30)
		} else {
			in.Dough, in.Density = trial.Grams(t, "dough", 400, 8000), rapid.Float64Range(1, 1.3).Draw(t, "density")
		}
		r, err := vessel.FillLines(in)
		if err != nil {
			t.Fatal(err)
		}
		trial.Sound(t, r.Working())
		if len(r.Marks) != 4 || r.Measured != !in.Start.IsZero() {
			t.Fatalf("%+v", r)
		}
		for i, rise := range []float64{0.3, 0.5, 0.75, 1} {
			if d := r.Marks[i].Height.Centimeters()/r.Start.Centimeters() - 1 - rise; math.Abs(d) > 1e-3 {
				t.Fatalf("mark %d is %v above the start", i, d+rise)
			}
			if r.Marks[i].Above != (!in.Height.IsZero() && r.Marks[i].Height.Compare(in.Height) > 0) {
				t.Fatalf("mark %v against a rim at %v", r.Marks[i], in.Height)
			}
		}
		if !r.Measured {
			area := in.Width.Centimeters() * in.Depth.Centimeters()
			if !in.Diameter.IsZero() {
				area = math.Pi * in.Diameter.Centimeters() * in.Diameter.Centimeters() / 4
			}
			if d := r.Start.Centimeters()*area*in.Density - in.Dough.Grams(); math.Abs(d) > 1e-4*area*2 {
				t.Fatalf("the start holds %v g too much", d)
			}
		}
	})
}

func TestFillSample(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := vessel.SampleJar{Diameter: trial.Centimeters(t, "diameter", 3, 12), Height: trial.Centimeters(t, "height", 6, 25), Rise: trial.Percent(t, "rise", 30, 200)}
		r, err := vessel.FillSample(in)
		if err != nil {
			t.Fatal(err)
		}
		trial.Sound(t, r.Working())
		top := r.Start.Centimeters() * (1 + in.Rise.Fraction())
		// A tenth to spare, and at most the gram that was rounded away.
		gram := (1 + in.Rise.Fraction()) / (math.Pi / 4 * in.Diameter.Centimeters() * in.Diameter.Centimeters() * 1.12)
		if top > 0.9*in.Height.Centimeters()+1e-3 || top < 0.9*in.Height.Centimeters()-gram-1e-3 || len(r.Notes) == 0 {
			t.Fatalf("the sample tops out at %v of %v", top, in.Height)
		}
	})
}

func TestVesselsAndTinsGoBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := trial.Grams(t, "dough", 100, 4000)
		in := vessel.ProofVessel(rapid.IntRange(0, 1).Draw(t, "vessel"))
		r, err := vessel.ProofVesselFor(m, in)
		if err != nil {
			t.Fatal(err)
		}
		trial.Sound(t, r.Working())
		_, likely, _, err := vessel.DoughForVessel(r.Volume.Likely, in)
		if err != nil || math.Abs(likely.Sub(m).Grams()) > 1e-5 {
			t.Fatalf("%v for %v, which holds %v, %v", r.Volume, m, likely, err)
		}
		loaf := vessel.TinLoaf(rapid.IntRange(0, 5).Draw(t, "loaf"))
		tin, err := vessel.TinForDough(m, loaf)
		if err != nil {
			t.Fatal(err)
		}
		fill, err := vessel.DoughForTin(tin.Low, loaf)
		if err != nil || math.Abs(fill.High.Sub(m).Grams()) > 1e-5 || fill.Low.Compare(fill.High) > 0 {
			t.Fatalf("%v for %v, which takes %v, %v", tin, m, fill, err)
		}
		trial.Sound(t, fill.Working())
	})
	r, err := vessel.ProofVesselFor(quantity.Grams(885), vessel.ProofBasket) // a loaf of the hall kitchen
	if err != nil {
		t.Fatal(err)
	}
	for _, b := range r.Round {
		if want := b.Diameter == quantity.MustLength("9 in"); b.Fits != want {
			t.Errorf("%v fits: %v", b.Diameter, b.Fits)
		}
	}
}

func TestHostileVessels(t *testing.T) {
	nan := math.NaN()
	for name, c := range map[string]struct {
		err  error
		want string
	}{
		"volume":         {trial.Err(vessel.DoughVolume(quantity.Grams(nan), nan)), "dough out of range; density out of range"},
		"lines, zero":    {trial.Err(vessel.FillLines(vessel.RiseContainer{})), "Diameter required; Start required"},
		"lines":          {trial.Err(vessel.FillLines(vessel.RiseContainer{Diameter: quantity.Centimeters(nan), Height: quantity.Centimeters(-3), Start: quantity.Meters(9), Rises: []quantity.Percent{quantity.NewPercent(nan), {}}})), "Diameter out of range; Height out of range; Start out of range; Rises[0] out of range; Rises[1] out of range"},
		"lines, both":    {trial.Err(vessel.FillLines(vessel.RiseContainer{Diameter: quantity.Centimeters(9), Width: quantity.Centimeters(9), Depth: quantity.Centimeters(9), Start: quantity.Centimeters(3)})), "Diameter inconsistent"},
		"lines, too big": {trial.Err(vessel.FillLines(vessel.RiseContainer{Diameter: quantity.Centimeters(3), Dough: quantity.Kilograms(100)})), "Dough out of range"},
		"lines, many":    {trial.Err(vessel.FillLines(vessel.RiseContainer{Diameter: quantity.Centimeters(9), Start: quantity.Centimeters(3), Rises: make([]quantity.Percent, 51)})), "Rises out of range"},
		"jar, zero":      {trial.Err(vessel.FillSample(vessel.SampleJar{})), "Diameter required; Height required"},
		"jar":            {trial.Err(vessel.FillSample(vessel.SampleJar{Diameter: quantity.Meters(1), Height: quantity.Centimeters(nan), Rise: quantity.NewPercent(-1), Density: 9})), "Diameter out of range; Height out of range; Rise out of range; Density out of range"},
		"vessel":         {trial.Err(vessel.ProofVesselFor(quantity.Mass{}, 7)), "dough out of range; vessel out of range"},
		"tin factor":     {trial.Err(vessel.TinFactorOf(99)), "loaf out of range"},
		"tin box":        {trial.Err(vessel.TinBox(quantity.Length{}, quantity.Centimeters(nan), quantity.Meters(3))), "length out of range; width out of range; height out of range"},
		"tin":            {trial.Err(vessel.DoughForTin(quantity.Volume{}, -1)), "tin out of range; loaf out of range"},
		"tin for":        {trial.Err(vessel.TinForDough(quantity.Grams(nan), 99)), "dough out of range; loaf out of range"},
	} {
		if got := trial.Refused(c.err); got != c.want {
			t.Errorf("%s:\n got %s\nwant %s", name, got, c.want)
		}
	}
	if _, _, _, err := vessel.DoughForVessel(quantity.Volume{}, 9); trial.Refused(err) != "v out of range; vessel out of range" {
		t.Error(err)
	}
}

// A volume says how it was reckoned, and only then.
func TestVolumesShowTheirWorking(t *testing.T) {
	v, err := vessel.TinForDough(quantity.Grams(900), vessel.OpenTinWhite)
	if err != nil || len(v.Working().Steps) != 3 {
		t.Fatal(v, err)
	}
	workcheck.Verify(t, v.Working())
	if v, err = vessel.DoughVolume(quantity.Grams(2660), 0); err != nil {
		t.Fatal(err)
	}
	workcheck.Verify(t, v.Working())
	if n := len((vessel.VesselVolume{}).Working().Steps); n != 0 {
		t.Error(n)
	}
}
