package cli

import (
	"context"
	"fmt"
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
	if b.Levain == nil {
		return l
	}
	share := b.Levain.Prefermented
	if batch, err := b.Batch(nil); err == nil && share.IsZero() && len(b.Preferments) == 0 {
		share = batch.Prefermented() // the levain is given by weight
	}
	if p := share.Points(); p > 0 {
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
	progress, done := watched(s)
	fit, err := l.bake.Fit(ctx, l.clock, progress)
	done()
	if err != nil {
		return complain(l.name, located(l.file, err))
	}
	return s.tell(f.output, fitted{fit}, fit.Best.Day.Possible())
}

// watched shows how the search goes on a line of its own while somebody looks, and takes the line away when it is done.
func watched(s System) (progress func(tried, left int), done func()) {
	if !s.Terminal {
		return nil, func() {}
	}
	shown := 0
	show := func(text string) {
		fmt.Fprintf(s.Err, "\r%-*s\r%s", shown, "", text)
		shown = len(text)
	}
	return func(tried, left int) { show(fmt.Sprintf("%d tried, at most %d to go", tried, left)) },
		func() { show("") }
}

// fitted tells the best setting, and derives its day.
type fitted struct{ bakeday.Fitted }

// Workings are those of the day that fits best.
func (f fitted) Workings() []working.Working { return f.Best.Day.Workings() }
