package house

import (
	"flag"
	"fmt"
	"os"
	"strings"
	"testing"
	"time"

	"example.org/maslin/bake"
	"example.org/maslin/dough"
	"example.org/maslin/dough/food"
	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/vessel"
	"example.org/maslin/dough/working"
)

var updateDefaults = flag.Bool("defaults", false, "rewrite the tables of bake/DEFAULTS.md")

const defaultsPage = "../../bake/DEFAULTS.md"

// TestDefaultsStandBesideTheirEvidence: the page that sets each default of bowl, tin and oven beside what it rests on
// is made from the answers themselves.
func TestDefaultsStandBesideTheirEvidence(t *testing.T) {
	text, err := os.ReadFile(defaultsPage)
	if err != nil {
		t.Fatal(err)
	}
	out := string(text)
	for name, table := range map[string]string{
		"kneading": kneadingDefaults(t), "tins": tinDefaults(t), "pieces": pieceDefaults(t), "done": doneDefaults(t),
		"times": timeDefaults(t), "keeping": keepDefaults(t), "chilled": chillDefaults(t), "cautions": cautionDefaults(t),
	} {
		from, to := "<!-- "+name+" -->\n", "<!-- end -->"
		head, rest, ok := strings.Cut(out, from)
		_, tail, ok2 := strings.Cut(rest, to)
		if !ok || !ok2 {
			t.Errorf("no place for the table %q", name)
			continue
		}
		out = head + from + table + to + tail
	}
	switch {
	case out == string(text):
	case *updateDefaults:
		if err := os.WriteFile(defaultsPage, []byte(out), 0o644); err != nil {
			t.Fatal(err)
		}
	default:
		t.Error("bake/DEFAULTS.md is not what the library says: go test ./internal/house -run Defaults -defaults")
	}
}

// table writes rows of Markdown; the columns are parted by |.
type table struct{ strings.Builder }

func newTable(columns ...string) *table {
	t := &table{}
	t.row(columns...)
	t.WriteString("|" + strings.Repeat("---|", len(columns)) + "\n")
	return t
}

func (t *table) row(cells ...string) {
	for i, c := range cells {
		cells[i] = strings.ReplaceAll(c, "|", "/")
	}
	t.WriteString("| " + strings.Join(cells, " | ") + " |\n")
}

func must[T any](t *testing.T) func(T, error) T {
	return func(v T, err error) T {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
}

func saying(sources []working.Source) string {
	var out []string
	for _, s := range sources {
		out = append(out, s.String())
	}
	return strings.Join(out, "; ")
}

func kneadingDefaults(t *testing.T) string {
	out := newTable("mixer", "dough", "minutes", "evidence")
	liters := map[mixing.MixerKind]float64{mixing.Planetary: 5, mixing.Spiral: 20, mixing.Fork: 20, mixing.Processor: 2}
	for _, mixer := range quantity.Values[mixing.MixerKind]() {
		for _, kind := range quantity.Values[mixing.DoughKind]() {
			k := must[mixing.Kneading](t)(mixing.Mix{
				Mixer: mixer, Kind: kind, Bowl: quantity.Liters(liters[mixer]), Flour: quantity.Kilograms(1),
				Water: quantity.Grams(650), Dough: quantity.Grams(1700),
			}.Kneading())
			var says []working.Source
			for _, s := range k.Stages {
				if len(says) == 0 || says[len(says)-1] != s.Source {
					says = append(says, s.Source)
				}
			}
			out.row(mixer.String(), kind.String(), k.String(), saying(says))
		}
	}
	return out.String()
}

func tinDefaults(t *testing.T) string {
	out := newTable("loaf of a tin", "mL for a gram of dough", "evidence")
	for _, loaf := range quantity.Values[vessel.TinLoaf]() {
		f := must[vessel.TinFactor](t)(loaf.Factor())
		out.row(loaf.String(), fmt.Sprintf("%.2f to %.2f, likely %.2f", f.Low, f.High, f.Likely), f.Source.String())
	}
	for _, v := range quantity.Values[vessel.ProofVessel]() {
		s := must[vessel.VesselVolume](t)(vessel.Proofing{Vessel: v, Dough: quantity.Kilograms(1)}.Size())
		out.row("proof in a "+v.String(), fmt.Sprintf("%.2f to %.2f, likely %.2f", s.Volume.Low.Liters(),
			s.Volume.High.Liters(), s.Volume.Likely.Liters()), s.Report().Sources[0].String())
	}
	return out.String()
}

func pieceDefaults(t *testing.T) string {
	out := newTable("bread by size", "dough", "evidence")
	for _, bread := range quantity.Values[vessel.SizedBread]() {
		in, unit, per := vessel.SizedPiece{Bread: bread, Diameter: quantity.Centimeters(20)}, "g/cm²", 314.159265
		if bread >= vessel.Baguette {
			in, unit, per = vessel.SizedPiece{Bread: bread, Length: quantity.Centimeters(20)}, "g/cm", 20
		}
		f := must[vessel.PieceFit](t)(in.Dough())
		out.row(bread.String(), fmt.Sprintf("%.3g to %.3g %s, likely %.3g", f.Dough.Low.Grams()/per,
			f.Dough.High.Grams()/per, unit, f.Dough.Likely.Grams()/per), f.Report().Sources[0].String())
	}
	return out.String()
}

func doneDefaults(t *testing.T) string {
	out := newTable("style", "core", "accepted", "loss at least", "or held", "agreement", "evidence")
	for _, style := range quantity.Values[bake.Style]() {
		g := must[bake.StyleGuide](t)(style.Guide())
		core, accepted, loss, held := "by time and color", "", "", ""
		if style.ByCore() {
			core, accepted = g.Core.String(), g.Accepted.String()
			loss, held = "no criterion", "no criterion"
			if !g.MinimumLoss.IsZero() {
				loss, held = g.MinimumLoss.String(), g.Hold.String()
			}
			if g.AsLongAgain {
				held = "as long again as to 7 °C below boiling; usual piece " + g.Hold.String()
			}
		}
		out.row(style.String(), core, accepted, loss, held, g.Confidence.String(), saying(g.Sources))
	}
	return out.String()
}

func timeDefaults(t *testing.T) string {
	out := newTable("style", "piece", "bakes", "evidence", "loses", "of the loss")
	usual := map[bake.Style]float64{bake.Baguette: 350, bake.SoftRoll: 85, bake.CrustyRoll: 85, bake.Bagel: 110,
		bake.ParBaked: 300, bake.Pizza: 250, bake.FlatBread: 100, bake.Focaccia: 800, bake.Enriched: 750}
	for _, style := range quantity.Values[bake.Style]() {
		grams := usual[style]
		if grams == 0 {
			grams = 1000
		}
		b := must[bake.BakeTime](t)(bake.OvenPiece{Style: style, Dough: quantity.Grams(grams)}.BakeTime())
		l := must[bake.LossGuide](t)(style.UsualLoss(quantity.Grams(grams)))
		out.row(style.String(), quantity.Grams(grams).String(), b.Time.String(), saying(b.Report().Sources),
			l.Loss.String(), l.Note.String())
	}
	return out.String()
}

func keepDefaults(t *testing.T) string {
	out := newTable("style", "usually good for", "evidence")
	for _, style := range quantity.Values[bake.Style]() {
		s := must[bake.Staleness](t)(bake.StoredLoaf{Style: style, Stays: []bake.Stay{
			{For: quantity.Elapsed(24 * time.Hour), At: quantity.Celsius(21)},
		}}.Staling())
		out.row(style.String(), told(s.Keeps.Low)+" to "+told(s.Keeps.High), "from memory and judgment")
	}
	return out.String()
}

// told is a duration as people are told it.
func told(e quantity.Elapsed) string { return working.Reader{}.Elapsed(e.Duration()) }

func chillDefaults(t *testing.T) string {
	out := newTable("food", "limit", "within", "evidence")
	for _, kind := range quantity.Values[food.ChilledKind]() {
		p := must[food.ChillPlan](t)(food.ChilledFood{Kind: kind}.Limits())
		for _, l := range p.Limits {
			to := "thrown away"
			if !l.To.IsZero() {
				to = l.To.String()
			}
			out.row(kind.String(), to, told(l.Within), l.Source.String())
		}
	}
	return out.String()
}

func cautionDefaults(t *testing.T) string {
	out := newTable("subject", "in short", "evidence")
	all := append(bake.OvenCautions(), bake.FoodCautions()...)
	var parts []dough.Part
	for _, k := range []dough.Kind{dough.KindEgg, dough.KindCookedFilling, dough.KindInfusedOil, dough.KindImprover,
		dough.KindWholeRye} {
		parts = append(parts, dough.Part{Name: k.String(), Percent: quantity.NewPercent(1), Kind: k})
	}
	b := must[dough.Batch](t)(dough.Formula{
		Flours:  []dough.Part{{Name: "flour", Percent: quantity.NewPercent(100), Kind: dough.KindWheat}},
		Liquids: []dough.Part{{Name: "water", Percent: quantity.NewPercent(70)}}, Others: parts,
	}.For(dough.ByFlour{Mass: quantity.Kilograms(1)}))
	for _, c := range append(all, b.Cautions()...) {
		short := c.Short
		if short.IsZero() {
			short = c.Text
		}
		out.row(string(c.Subject), short.String(), c.Source.String())
	}
	return out.String()
}
