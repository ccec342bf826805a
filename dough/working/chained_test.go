package working_test

import (
	"math/rand/v2"
	"testing"

	"example.org/maslin/dough/working"
	"example.org/maslin/internal/workcheck"
)

// Where a column is worked out from another that is worked out itself, every cell is still what the printed cells
// before it give: what is printed finer for the one does not upset the other.
func TestColumnsWorkedOutFromOneAnother(t *testing.T) {
	r := rand.New(rand.NewPCG(2, 1))
	for range 30 {
		cells := func(least, most float64) (out []float64) {
			for range 8 {
				out = append(out, least+(most-least)*r.Float64())
			}
			return out
		}
		d := working.Derive(say("What each takes off"))
		d.Find(working.Finding{Name: say("all together"), Symbol: "Q", Unit: working.Number, Decimals: 7,
			Source: working.NoSource("numbers drawn"), Table: working.Table{Columns: []working.Column{
				{Symbol: "u", Meaning: say("before"), Decimals: 6, Cells: cells(0.01, 0.06)},
				{Symbol: "n", Meaning: say("noise"), Decimals: 6, Cells: cells(0.02, 2)},
				{Symbol: "w", Meaning: say("weight"), Decimals: 6,
					By: func(_ int, c []working.Expr) working.Expr { return c[0].Over(c[0].Plus(c[1])) }},
				{Symbol: "c", Meaning: say("share"), Decimals: 5, Cells: cells(0.2, 0.4)},
				{Symbol: "f", Meaning: say("what it takes off"), Decimals: 8,
					By: func(_ int, c []working.Expr) working.Expr { return c[3].ToThe(2).Times(c[0]).Times(c[2]) }},
			}}})
		workcheck.Verify(t, d.Working())
	}
}
