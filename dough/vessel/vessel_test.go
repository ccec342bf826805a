package vessel_test

import (
	"encoding/json"
	"errors"
	"math"
	"testing"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/vessel"
	"example.org/maslin/internal/trial"
	"example.org/maslin/internal/workcheck"

	"pgregory.net/rapid"
)

func TestRiseMarks(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := vessel.RiseContainer{Diameter: trial.Centimeters(t, "diameter", 8, 40),
			Height: trial.Centimeters(t, "height", 5, 60)}
		if rapid.Bool().Draw(t, "square") {
			in = vessel.RiseContainer{
				Width: trial.Centimeters(t, "width", 8, 40),
				Depth: trial.Centimeters(t, "depth", 8, 40),
			}
		}
		if rapid.Bool().Draw(t, "measured") {
			in.Start = trial.Centimeters(t, "start", 0.2, 30)
		} else {
			in.Dough, in.Density = trial.Grams(t, "dough", 400, 8000), rapid.Float64Range(1, 1.3).Draw(t, "density")
		}
		r, err := in.Marks()
		if err != nil {
			t.Fatal(err)
		}
		trial.Sound(t, r.Working())
		if len(r.Marks) != 4 || r.Measured != !in.Start.IsZero() {
			t.Fatalf("%+v", r)
		}
		for i, rise := range []float64{0.3, 0.5, 0.75, 1} {
			if d := r.Marks[i].Height.Centimeters()/r.Start.Centimeters() - 1 - rise; !(math.Abs(d) <= 1e-3) {
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
			if d := r.Start.Centimeters()*area*in.Density - in.Dough.Grams(); !(math.Abs(d) <= 1e-4*area*2) {
				t.Fatalf("the start holds %v g too much", d)
			}
		}
		trial.Travels(t, in)
	})
}

func TestJarSample(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := vessel.SampleJar{
			Diameter: trial.Centimeters(t, "diameter", 3, 12), Height: trial.Centimeters(t, "height", 6,
				25), Rise: trial.Percent(t, "rise", 30, 200),
		}
		r, err := in.Sample()
		if err != nil {
			t.Fatal(err)
		}
		trial.Sound(t, r.Working())
		trial.Travels(t, in)
		top := r.Start.Centimeters() * (1 + in.Rise.Fraction())
		// A tenth to spare, within half a gram.
		half := (1 + in.Rise.Fraction()) / (math.Pi / 4 * in.Diameter.Centimeters() * in.Diameter.Centimeters() * 1.12) / 2
		if !(math.Abs(top-0.9*in.Height.Centimeters()) <= half+1e-3) || len(r.Notes) == 0 {
			t.Fatalf("the sample tops out at %v of %v", top, in.Height)
		}
	})
}

func TestVesselsAndTinsGoBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := vessel.Proofing{Dough: trial.Grams(t, "dough", 100, 4000),
			Vessel: vessel.ProofVessel(rapid.IntRange(0, 1).Draw(t, "vessel"))}
		m := in.Dough
		size, err := in.Size()
		if err != nil {
			t.Fatal(err)
		}
		trial.Sound(t, size.Working())
		trial.Travels(t, in)
		fill, err := vessel.Proofing{Volume: size.Volume.Likely, Vessel: in.Vessel}.Fill()
		if err != nil || !(math.Abs(fill.Dough.Likely.Sub(m).Grams()) <= 1e-5) ||
			fill.Dough.Low.Compare(fill.Dough.High) >= 0 {
			t.Fatalf("%v for %v, which holds %v, %v", size, m, fill, err)
		}
		trial.Sound(t, fill.Working())
		factor, err := vessel.TinLoaf(rapid.IntRange(0, 5).Draw(t, "loaf")).Factor()
		if err != nil || factor.Low > factor.Likely || factor.Likely > factor.High {
			t.Fatal(factor, err)
		}
		tin, err := factor.Tin(m)
		if err != nil {
			t.Fatal(err)
		}
		trial.Sound(t, tin.Working())
		fill, err = factor.Fill(tin.Volume.Low)
		if err != nil || !(math.Abs(fill.Dough.High.Sub(m).Grams()) <= 1e-5) ||
			fill.Dough.Low.Compare(fill.Dough.High) > 0 {
			t.Fatalf("%v for %v, which takes %v, %v", tin, m, fill, err)
		}
		trial.Sound(t, fill.Working())
	})
	r, err := vessel.Proofing{Dough: quantity.Grams(885)}.Size() // a loaf of the hall kitchen
	if err != nil {
		t.Fatal(err)
	}
	for _, b := range r.Round {
		if want := b.Diameter == quantity.MustLength("9 in"); b.Fits != want {
			t.Errorf("%v fits: %v", b.Diameter, b.Fits)
		}
	}
}

// What one's own tin takes says what every other tin takes of the same bread.
func TestOwnTinScales(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		own := vessel.OwnTin{Volume: quantity.Milliliters(rapid.Float64Range(800, 4000).Draw(t, "mL")),
			Dough: trial.Grams(t, "dough", 600, 790)}
		f, err := own.Factor()
		if err != nil {
			t.Fatal(err)
		}
		other := quantity.Milliliters(rapid.Float64Range(500, 9000).Draw(t, "other"))
		fill, err := f.Fill(other)
		if err != nil {
			t.Fatal(err)
		}
		trial.Sound(t, fill.Working())
		want := own.Dough.Grams() * other.Milliliters() / own.Volume.Milliliters()
		if got := fill.Dough.Likely.Grams(); !(math.Abs(got-want) <= 1e-6*want) || fill.Dough.Low != fill.Dough.High {
			t.Errorf("%v takes %v, so %v takes %v, not %v g", own.Volume, own.Dough, other, fill.Dough, want)
		}
		trial.Travels(t, own)
		trial.Travels(t, f)
	})
}

// A tapered tin holds less than its rim says, a box what its sides say.
func TestTaperedTin(t *testing.T) {
	cm := quantity.Centimeters
	box, err := vessel.TinBox{Length: cm(20), Width: cm(10), Height: cm(8)}.Volume()
	if err != nil || box != quantity.Milliliters(1600) {
		t.Error(box, err)
	}
	// A pyramid cut off at half its height: 7/8 of the whole pyramid of twice the height.
	cut, err := vessel.TinBox{Length: cm(20), Width: cm(20), Height: cm(10), BaseLength: cm(10),
		BaseWidth: cm(10)}.Volume()
	if err != nil || !(math.Abs(cut.Milliliters()-7.0/8*20*20*20/3) <= 1e-6) {
		t.Error(cut, err)
	}
}

func TestHostileVessels(t *testing.T) {
	nan := math.NaN()
	cm := quantity.Centimeters
	own := vessel.TinFactor{Low: nan, Likely: 2, High: 9}
	for name, c := range map[string]struct {
		err  error
		want string
	}{
		"volume": {trial.Err(vessel.MixedDough{Mass: quantity.Grams(nan), Density: nan}.Volume()),
			"mass out of range; density out of range"},
		"marks, zero": {trial.Err(vessel.RiseContainer{}.Marks()), "diameter required; start required"},
		"marks": {trial.Err(vessel.RiseContainer{
			Diameter: cm(nan), Height: cm(-3), Start: quantity.Meters(9), Rises: []quantity.Percent{quantity.NewPercent(nan),
				{}},
		}.Marks()), "diameter out of range; height out of range; start out of range; rises[0] out of range; rises[1] " +
			"required"},
		"marks, density": {trial.Err(vessel.RiseContainer{Diameter: cm(9), Dough: quantity.Grams(500), Density: 9}.Marks()),
			"density out of range"},
		"marks, both": {trial.Err(vessel.RiseContainer{Diameter: cm(9), Width: cm(9), Depth: cm(9),
			Start: cm(3)}.Marks()), "diameter inconsistent"},
		"marks, too big": {trial.Err(vessel.RiseContainer{Diameter: cm(3), Dough: quantity.Kilograms(100)}.Marks()),
			"dough out of range"},
		"marks, many": {trial.Err(vessel.RiseContainer{Diameter: cm(9), Start: cm(3),
			Rises: make([]quantity.Percent, 51)}.Marks()), "rises out of range"},
		"jar, zero": {trial.Err(vessel.SampleJar{}.Sample()), "diameter required; height required"},
		"jar": {trial.Err(vessel.SampleJar{
			Diameter: quantity.Meters(1), Height: cm(nan), Rise: quantity.NewPercent(-1), Density: 9,
		}.Sample()), "diameter out of range; height out of range; rise out of range; density out of range"},
		"basket":      {trial.Err(vessel.Proofing{Vessel: 7}.Size()), "vessel out of range; dough required"},
		"basket fill": {trial.Err(vessel.Proofing{Vessel: 7}.Fill()), "vessel out of range; volume required"},
		"basket sides": {trial.Err(vessel.Proofing{Volume: quantity.Liters(1), Diameter: cm(nan), Depth: cm(4)}.Fill()),
			"volume inconsistent; diameter out of range"},
		"basket deep": {trial.Err(vessel.Proofing{Diameter: cm(20), Depth: cm(11)}.Fill()), "depth out of range"},
		"basket oval": {trial.Err(vessel.Proofing{Diameter: cm(20), Length: cm(30), Depth: cm(1)}.Fill()),
			"diameter inconsistent; width required"},
		"piece, zero": {trial.Err(vessel.SizedPiece{}.Dough()), "length required"},
		"piece, stick": {trial.Err(vessel.SizedPiece{Bread: vessel.Baguette, Diameter: cm(5), Width: cm(6)}.Dough()),
			"diameter inconsistent; width inconsistent; length required"},
		"piece, disk": {trial.Err(vessel.SizedPiece{Bread: vessel.Pita, Length: cm(20)}.Dough()), "length inconsistent"},
		"piece, both": {trial.Err(vessel.SizedPiece{Diameter: cm(20), Width: cm(20), Mass: quantity.Grams(9)}.Dough()),
			"diameter inconsistent; mass inconsistent"},
		"piece, wild": {trial.Err(vessel.SizedPiece{Bread: -1, Length: cm(nan), Width: cm(-3)}.Dough()),
			"bread out of range; length out of range; width out of range"},
		"piece size": {trial.Err(vessel.SizedPiece{Bread: vessel.Pita, Mass: quantity.Grams(nan), Diameter: cm(5),
			Length: cm(4), Width: cm(3)}.Size()),
			"mass out of range; diameter inconsistent; length inconsistent; width inconsistent"},
		"piece size, width": {trial.Err(vessel.SizedPiece{Mass: quantity.Grams(500), Width: cm(1)}.Size()),
			"width out of range"},
		"tin factor": {trial.Err(vessel.TinLoaf(99).Factor()), "loaf out of range"},
		"own tin":    {trial.Err(vessel.OwnTin{}.Factor()), "volume required; dough required"},
		"own brick": {trial.Err(vessel.OwnTin{Volume: quantity.Milliliters(100), Dough: quantity.Grams(400)}.Factor()),
			"dough inconsistent"},
		"tin box": {trial.Err(vessel.TinBox{Width: cm(nan), Height: quantity.Meters(3), BaseWidth: cm(4)}.Volume()),
			"length required; width out of range; height out of range"},
		"tin":     {trial.Err(own.Fill(quantity.Volume{})), "low out of range; high out of range; volume required"},
		"tin for": {trial.Err(own.Tin(quantity.Grams(nan))), "low out of range; high out of range; dough out of range"},
	} {
		if got := trial.Refused(c.err); got != c.want {
			t.Errorf("%s:\n got %s\nwant %s", name, got, c.want)
		}
	}
}

// A volume says how it was reckoned, and only then.
func TestVolumesShowTheirWorking(t *testing.T) {
	v, err := vessel.MixedDough{Mass: quantity.Grams(2660)}.Volume()
	if err != nil || v.Working().Len() != 3 {
		t.Fatal(v, err)
	}
	workcheck.Verify(t, v.Working())
	if n := (vessel.VesselVolume{}).Working().Len(); n != 0 {
		t.Error(n)
	}
}

// Results are data for others; read back as an answer they would have lost their question, which is refused.
func TestAnswersTravel(t *testing.T) {
	size, err := vessel.Proofing{Dough: quantity.Grams(885)}.Size()
	if err != nil {
		t.Fatal(err)
	}
	data, err := json.Marshal(size)
	if err != nil {
		t.Fatal(err)
	}
	var back struct {
		Volume quantity.Range[quantity.Volume] `json:"volume"`
	}
	if err := json.Unmarshal(data, &back); err != nil || back.Volume != size.Volume {
		t.Error(back.Volume, err)
	}
	if err := json.Unmarshal(data, &vessel.VesselVolume{}); !errors.Is(err, quantity.ErrForm) {
		t.Error(err)
	}
	if text := size.Report().Text(report.Options{}); text == "" {
		t.Error("no report")
	}
}

// A size gives a dough that gives the size back; a larger piece never takes less dough; °F has no part in it, but an
// inch does as 2.54 cm; and every figure shows its working.
func TestSizedPiecesGoBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := vessel.SizedPiece{Bread: vessel.SizedBread(rapid.IntRange(0, 18).Draw(t, "bread"))}
		long, wide := trial.Centimeters(t, "long", 10, 60), trial.Centimeters(t, "wide", 10, 60)
		tray := in.Bread <= vessel.AmericanPanPizza
		stick := in.Bread >= vessel.Baguette
		switch {
		case stick:
			in.Length = long
		case tray && rapid.Bool().Draw(t, "rectangular"):
			in.Length, in.Width = long, wide
		default:
			in.Diameter = long
		}
		r, err := in.Dough()
		if err != nil {
			t.Fatal(err)
		}
		trial.Sound(t, r.Working())
		if r.Thickness.High.IsZero() == tray {
			t.Fatalf("thickness %v of a %v", r.Thickness, in.Bread)
		}
		back, err := vessel.SizedPiece{Bread: in.Bread, Mass: r.Dough.Likely, Width: in.Width}.Size()
		if err != nil {
			t.Fatal(err)
		}
		trial.Sound(t, back.Working())
		if d := back.Across.Likely.Centimeters() - long.Centimeters(); !(math.Abs(d) <= 0.01) ||
			back.Across.Low.Compare(back.Across.Likely) > 0 || back.Across.Likely.Compare(back.Across.High) > 0 {
			t.Fatalf("%v back as %v", long, back.Across)
		}
		trial.Travels(t, in)
		larger := in
		larger.Length, larger.Diameter = in.Length.Times(2), in.Diameter.Times(2)
		more, err := larger.Dough()
		if err != nil || more.Dough.Likely.Grams() < 1.99*r.Dough.Likely.Grams() {
			t.Fatal(more, err)
		}
	})
}

// The cap of half a ball is half a ball, an oval basket is as much larger as it is longer, and a wider or deeper basket
// never takes less.
func TestBasketsBySides(t *testing.T) {
	cm := quantity.Centimeters
	fill := func(in vessel.Proofing) float64 {
		t.Helper()
		r, err := in.Fill()
		if err != nil {
			t.Fatal(err)
		}
		return r.Volume.Milliliters()
	}
	if v := fill(vessel.Proofing{Diameter: cm(20), Depth: cm(10)}); !(math.Abs(v-2*math.Pi*1000/3) <= 0.01) {
		t.Error(v)
	}
	round := fill(vessel.Proofing{Diameter: cm(14), Depth: cm(7)})
	if oval := fill(vessel.Proofing{Length: cm(28), Width: cm(14), Depth: cm(7)}); !(math.Abs(oval-2*round) <= 0.01) {
		t.Error(oval, round)
	}
	last := 0.0
	for d := 12.0; d < 40; d++ {
		v := fill(vessel.Proofing{Diameter: cm(d), Depth: cm(6)})
		if v <= last || fill(vessel.Proofing{Diameter: cm(d), Depth: cm(5)}) >= v {
			t.Error(d, v)
		}
		last = v
	}
}

// A shallow tin is filled higher than a deep one of the same volume, and only where the loaf is an open white one.
func TestShallowTins(t *testing.T) {
	cm := quantity.Centimeters
	shallow := vessel.TinBox{Length: cm(24), Width: cm(12), Height: cm(8.3)}
	deep := vessel.TinBox{Length: cm(24), Width: cm(12), Height: cm(8.4)}
	for _, c := range []struct {
		box  vessel.TinBox
		loaf vessel.TinLoaf
		want float64
	}{
		{shallow, vessel.OpenTinWhite, 2.4}, {deep, vessel.OpenTinWhite, 3.0}, {shallow, vessel.RyeTin, 1.7},
		{deep, vessel.ShallowTinWhite, 2.4},
	} {
		r, err := c.box.Fill(c.loaf)
		if err != nil || !(math.Abs(r.Volume.Milliliters()/r.Dough.Likely.Grams()-c.want) <= 1e-6) {
			t.Error(c.loaf, r, err)
		}
		workcheck.Verify(t, r.Working())
		if n := len(r.Report().RestsOn); n < 1 || (c.loaf == vessel.RyeTin) != (n == 1) {
			t.Error(r.Report().RestsOn)
		}
	}
	if _, err := (vessel.TinBox{}).Fill(vessel.OpenTinWhite); err == nil {
		t.Error("no tin was filled")
	}
	if _, err := shallow.Fill(99); err == nil {
		t.Error("an unknown loaf")
	}
}
