package vessel_test

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/vessel"
	"example.org/maslin/internal/sources"
	"example.org/maslin/internal/trial"
)

// What a tray of 40 × 25 cm (1000 cm²), a disk of 30 cm (225π cm²) and a stick of 50 cm take, in grams: the figures
// of the trade for a cm² or a cm, multiplied by hand.
func TestDoughBySizeOfEveryBread(t *testing.T) {
	cm := quantity.Centimeters
	tray := vessel.SizedPiece{Length: cm(40), Width: cm(25)}
	disk := vessel.SizedPiece{Diameter: cm(30)}
	stick := vessel.SizedPiece{Length: cm(50)}
	for bread, c := range map[vessel.SizedBread]struct {
		in                vessel.SizedPiece
		low, likely, high float64
	}{
		vessel.PanPizza: {tray, 500, 600, 700}, vessel.LowFocaccia: {tray, 450, 500, 550},
		vessel.TallFocaccia: {tray, 800, 900, 1000}, vessel.SicilianPizza: {tray, 800, 850, 900},
		vessel.DeepPanPizza: {tray, 900, 950, 1000}, vessel.AmericanPanPizza: {tray, 700, 750, 800},
		vessel.ThinCrispPizza: {disk, 141.37, 155.51, 169.65}, vessel.NeapolitanPizza: {disk, 162.58, 197.92, 219.13},
		vessel.NewYorkPizza: {disk, 240.33, 282.74, 321.62}, vessel.AmericanPizza: {disk, 353.43, 371.10, 388.77},
		vessel.Pita: {disk, 219.13, 275.67, 353.43}, vessel.Tortilla: {disk, 98.96, 109.56, 120.17},
		vessel.Bun: {disk, 622.04, 671.52, 721.00}, vessel.Baguette: {stick, 240, 270, 300},
		vessel.Ficelle: {stick, 100, 115, 130}, vessel.Batard: {stick, 1000, 1250, 1600},
		vessel.HotDogRoll: {stick, 215, 240, 270}, vessel.Ciabatta: {stick, 550, 630, 700},
		vessel.BreadStick: {stick, 25, 35, 50},
	} {
		c.in.Bread = bread
		r, err := c.in.Dough()
		if err != nil {
			t.Fatal(err)
		}
		for _, x := range []struct{ got, want float64 }{
			{r.Dough.Low.Grams(), c.low}, {r.Dough.Likely.Grams(), c.likely}, {r.Dough.High.Grams(), c.high},
		} {
			if !(math.Abs(x.got-x.want) <= 0.01) { // printed to a hundredth of a gram
				t.Errorf("%v: %.2f g, want %.2f g", bread, x.got, x.want)
			}
		}
	}
}

// The tin that a kilogram of dough takes, in liters, by the sources that each range names: the wholesale loaf has 7.6
// in³ for an ounce, 4.393 mL/g; freshly milled whole grain 1.54 to 1.82; the others lie between 1.4 and 4.2.
func TestTinFactorOfEveryLoaf(t *testing.T) {
	for loaf, want := range map[vessel.TinLoaf][3]float64{
		vessel.OpenTinWhite: {2.4, 3, 3.5}, vessel.WholesaleWhite: {4.39308, 4.39308, 4.39308},
		vessel.LiddedTin: {3.6, 3.9, 4.2}, vessel.WholeGrainTin: {1.7, 2.4, 2.9}, vessel.RyeTin: {1.4, 1.7, 2},
		vessel.EnrichedTin: {3, 3.3, 3.6}, vessel.ShallowTinWhite: {2.2, 2.4, 3.2}, vessel.SourdoughTin: {2.4, 2.6, 2.8},
		vessel.HomeMilledTin: {1.54, 1.67, 1.82}, vessel.GlutenFreeTin: {1.7, 1.85, 2},
	} {
		f, err := loaf.Factor()
		if err != nil {
			t.Fatal(err)
		}
		for i, got := range []float64{f.Low, f.Likely, f.High} {
			if !(math.Abs(got-want[i]) <= 1e-5) {
				t.Errorf("%v: %v mL/g, want %v", loaf, got, want[i])
			}
		}
	}
}

// A tin of one's own has 1 to 8 mL for each gram, both included; a tin is shallow below 0.7 of its width.
func TestBordersOfTins(t *testing.T) {
	ml, g, cm := quantity.Milliliters, quantity.Grams, quantity.Centimeters
	for _, c := range []struct {
		volume, dough float64
		ok            bool
	}{{1000, 1000, true}, {999, 1000, false}, {8000, 1000, true}, {8001, 1000, false}, {800, 9, false}} {
		if _, err := (vessel.OwnTin{Volume: ml(c.volume), Dough: g(c.dough)}).Factor(); (err == nil) != c.ok {
			t.Errorf("%v mL for %v g: %v", c.volume, c.dough, err)
		}
	}
	just := vessel.TinBox{Length: cm(25), Width: cm(10), Height: cm(7)}
	r, err := just.Fill(vessel.OpenTinWhite)
	if err != nil || !(math.Abs(r.Dough.Likely.Grams()-1750/3.0) <= 0.01) {
		t.Errorf("a tin of exactly 0.7 of its width takes %v, %v, want 583.33 g", r.Dough.Likely, err)
	}
}

// Fifty marks fit on a box and fifty-one do not.
func TestFiftyMarks(t *testing.T) {
	in := vessel.RiseContainer{Width: quantity.Centimeters(10), Depth: quantity.Centimeters(10),
		Height: quantity.Centimeters(14), Dough: quantity.Grams(1000)}
	for i := range 51 {
		in.Rises = append(in.Rises, percent(float64(i+1)))
		if _, err := in.Marks(); (err == nil) != (i < 50) {
			t.Errorf("%d marks: %v", i+1, err)
		}
	}
}

func percent(points float64) quantity.Percent { return quantity.NewPercent(points) }

// The marks of a working are numbered from one, each by its own rise; the sample of a jar shows its weight.
func TestWorkingsOfMarks(t *testing.T) {
	cm := quantity.Centimeters
	r, err := vessel.RiseContainer{Width: cm(10), Depth: cm(10), Height: cm(14), Dough: quantity.Grams(1120),
		Rises: []quantity.Percent{percent(25), percent(60)}}.Marks()
	if err != nil {
		t.Fatal(err)
	}
	trial.Holds(t, r.Working().Text(100), "A = 10 × 10 A = 100.0 cm²", "h_start = 1120 ÷ 1.12 ÷ 100.0",
		"h_1 = 10.0 × (1 + 25 ÷ 100)", "h_2 = 10.0 × (1 + 60 ÷ 100)", "h_2 = 16.0 cm",
		"ρ 1.12 g/mL density of the mixed dough")
	jar, err := vessel.SampleJar{Diameter: cm(6), Height: cm(10), Rise: percent(100)}.Sample()
	if err != nil {
		t.Fatal(err)
	}
	// 0.9·10/2 = 4.5 cm of a jar of 9π cm² at 1.12 g/mL.
	trial.Holds(t, jar.Working().Text(100), "h_sample = 4.5", "m = 1.12 × π ÷ 4 × 6 × 6 × 4.50", "m ≈ 143 g")
	if (vessel.JarSample{}).Working().Len() != 0 {
		t.Error("a jar of nothing")
	}
	_, err = vessel.SampleJar{}.Sample()
	if got := trial.Refused(err); !strings.HasPrefix(got, "diameter required; height required") ||
		!strings.Contains(err.Error(), "2 cm to 20 cm") || !strings.Contains(err.Error(), "3 cm to 40 cm") {
		t.Errorf("%s: %v", got, err)
	}
}

// Round baskets are listed for a basket alone, with their source; a question that was not asked is told so.
func TestWhatAVolumeRestsOn(t *testing.T) {
	basket, err := vessel.Proofing{Dough: quantity.Grams(900)}.Size()
	if err != nil {
		t.Fatal(err)
	}
	room, err := vessel.MixedDough{Mass: quantity.Grams(1000)}.Volume()
	if err != nil {
		t.Fatal(err)
	}
	for i, c := range []struct {
		v        vessel.VesselVolume
		sections string
		sources  int
	}{{basket, "round_baskets measure", 2}, {room, "measure", 1}, {vessel.VesselVolume{}, "", 0}} {
		r := c.v.Report()
		var keys []string
		for _, s := range r.Sections {
			keys = append(keys, s.Key)
		}
		if got := strings.Join(keys, " "); got != c.sections || len(r.Sources) != c.sources {
			t.Errorf("%s: %q with %d sources, want %q with %d", strconv.Itoa(i), got, len(r.Sources), c.sections, c.sources)
		}
	}
	if last := basket.Report().Sources; len(last) == 2 && last[1] != sources.BasketSizes {
		t.Errorf("baskets by %v", last[1])
	}
	tin, err := (vessel.TinFactor{Low: 2, Likely: 2, High: 2, Loaf: vessel.RyeTin}).Tin(quantity.Grams(500))
	if err == nil {
		trial.Holds(t, tin.Report().Text(report.Options{}), "A tin of 1000 mL for 500 g of dough")
	}
}
