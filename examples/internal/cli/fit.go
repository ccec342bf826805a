package cli

import (
	"context"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/schedule/bakeday"
)

// usualLevers are tried when the bake names none: a levain of half to twice its size, a dough two
// degrees cooler or one warmer.
func usualLevers(b bakeday.Bake) bakeday.Levers {
	l := bakeday.Levers{Temperature: []quantity.Temperature{
		b.Mixing.Temperature.Add(quantity.DeltaCelsius(-2)), b.Mixing.Temperature.Add(quantity.DeltaCelsius(1)),
	}}
	if b.Levain != nil {
		p := b.Levain.Prefermented.Points()
		l.Prefermented = []quantity.Percent{quantity.NewPercent(p / 2), quantity.NewPercent(min(2*p, 50))}
	}
	return l
}

// runFit looks for a better setting of the levers.
func runFit(ctx context.Context, s System, l loaded, f planFlags) error {
	if l.bake.Levers.IsZero() {
		l.bake.Levers = usualLevers(l.bake)
	}
	ctx, cancel := context.WithTimeout(ctx, 20*time.Second)
	defer cancel()
	fit, err := l.bake.Fit(ctx, l.clock)
	if err != nil {
		return complain(l.name, located(l.file, err))
	}
	return s.tell(f.output, fitted{fit}, fit.Best.Day.Possible())
}

// fitted tells the best setting, and derives its day.
type fitted struct{ bakeday.Fitted }

// Workings are those of the day that fits best.
func (f fitted) Workings() []working.Working { return f.Best.Day.Workings() }
