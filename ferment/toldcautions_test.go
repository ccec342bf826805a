package ferment_test

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/ferment"
	"example.org/maslin/internal/trial"
)

// What can go wrong is said whole: of doughs with and without milk, in the warm and in the cold, until the oven and
// after shaping, and of preferments.
func TestCautionsAreToldWhole(t *testing.T) {
	var b strings.Builder
	tell := func(name string, cautions []working.Caution) {
		b.WriteString("== " + name + "\n")
		for _, c := range cautions {
			fmt.Fprintf(&b, "%v: %v [%s; %v]\n", c.Subject, c.Text, c.Source.Key, c.Short)
		}
	}
	milk := func(h ferment.History) ferment.Bulk {
		return with(good(), func(b *ferment.Bulk) { b.Enriched, b.History = true, h })
	}
	tell("dough", estimate(t, good()).Cautions())
	tell("dough with milk", estimate(t, milk(good().History)).Cautions())
	tell("fast dough with milk", estimate(t, with(yeasted(ferment.InstantYeast, 3), func(b *ferment.Bulk) {
		b.Enriched, b.History = true, ferment.Constant(quantity.Celsius(30))
	})).Cautions())
	tell("dough with milk at 5 °C", estimate(t, milk(ferment.Constant(quantity.Celsius(5)))).Cautions())
	tell("dough in a cellar", estimate(t, with(good(), func(b *ferment.Bulk) {
		b.History = corners(t, 0, 24, 2, 24, 3, 9)
	})).Cautions())
	shape := func(enriched bool, place float64, hours float64) []working.Caution {
		p := ferment.Proof{Bulk: good(), Bench: quantity.Elapsed(30 * time.Minute), Total: pct(90),
			Stages: []ferment.Piece{{Mass: quantity.Grams(900), Form: ferment.Round, Exposure: ferment.Refrigerator,
				Into: ferment.Room{Night: quantity.Celsius(place)}, For: quantity.Elapsed(hours * float64(time.Hour))}}}
		p.Bulk.Enriched = enriched
		got, err := p.RiseBeforeShaping()
		if err != nil {
			t.Fatal(err)
		}
		return got.Cautions()
	}
	tell("shaped, in a refrigerator", shape(false, 4, 12))
	tell("shaped with milk, in a refrigerator", shape(true, 4, 12))
	tell("shaped with milk, in a proofing box", shape(true, 28, 1.5))
	tell("shaped with milk, longer in a proofing box", shape(true, 28, 1.51))
	tell("shaped, in a refrigerator that is too warm", shape(false, 8, 12))
	ripe := func(r ferment.Ripening) []working.Caution {
		r.Hydration, r.Law = pct(100), ferment.GasBalance()
		got, err := r.Ripe()
		if err != nil {
			t.Fatal(err)
		}
		return got.Cautions()
	}
	tell("levain", ripe(ferment.Ripening{Seed: pct(20), History: ferment.Constant(quantity.Celsius(24))}))
	tell("poolish in a cellar", ripe(ferment.Ripening{Yeast: ferment.Yeast{Kind: ferment.FreshYeast, Amount: pct(1)},
		History: corners(t, 0, 20, 1, 8.5)}))
	tell("poolish that comes into a cellar late", ripe(ferment.Ripening{
		Yeast:   ferment.Yeast{Kind: ferment.FreshYeast, Amount: pct(0.05)},
		History: corners(t, 0, 16, 8, 16, 9, 8.5)}))
	tell("nothing", ferment.Estimate{}.Cautions())
	trial.Kept(t, "cautions.txt", b.String())
}
