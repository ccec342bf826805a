package bake

import (
	"fmt"
	"strings"
	"testing"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/internal/trial"
)

// Every figure of every style, written a second time as it was chosen from its sources: who changes one says so twice.
func TestFiguresOfEveryStyle(t *testing.T) {
	var b strings.Builder
	for _, s := range quantity.Values[Style]() {
		r := rowOf(s)
		fmt.Fprintf(&b, "%v: %v; core %v (%v to %v), loses %v %%, holds %v, hearth %v, %v\n", s, r.shape, r.done.core,
			r.done.from, r.done.to, r.done.loss, r.done.hold, r.done.hearth, r.done.confidence)
		fmt.Fprintf(&b, "  %v g in %v min, exponent %.4f, from %v to %v g, spread %v, %v min/g; "+
			"oven %v then %v, steam %v min\n", r.bake.grams, r.bake.minutes, r.bake.exponent, r.bake.from, r.bake.to,
			r.bake.spread, r.bake.perGram, r.oven[0], r.oven[1], r.steam)
		fmt.Fprintf(&b, "  loss %v (%v to %v); crumb %v mL/g, %v; warm %v; keeps %d to %d h\n", r.loss.likely, r.loss.low,
			r.loss.high, r.crumb.mlPerGram, r.crumb.porosity, r.warm, int(r.keeps.from), int(r.keeps.to))
	}
	trial.Kept(t, "styles.txt", b.String())
}
