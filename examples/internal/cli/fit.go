package cli

import (
	"context"
	"fmt"
	"strings"
	"time"

	"example.org/maslin/dough/quantity"
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

type choiceSheet struct {
	Changes []string         `json:"changes"`
	Against []string         `json:"against"`
	Points  float64          `json:"points"`
	Plan    bakeday.PlanData `json:"plan"`
}

type fitSheet struct {
	AsWritten choiceSheet   `json:"as_written"`
	Best      choiceSheet   `json:"best"`
	Others    []choiceSheet `json:"others"`
	Tried     int           `json:"tried"`
}

func sheetOf(c bakeday.Choice) choiceSheet {
	return choiceSheet{movedWords(c.Changes), againstWords(c.Against), c.Points, c.Day.Data()}
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
	data := fitSheet{AsWritten: sheetOf(fit.AsWritten), Best: sheetOf(fit.Best), Others: []choiceSheet{}, Tried: fit.Tried}
	for _, o := range fit.Others {
		data.Others = append(data.Others, sheetOf(o))
	}
	return s.show(f.output, answer{
		data: data, no: !fit.Best.Day.Possible(), workings: fit.Best.Day.Workings(),
		page: func(p *page, u units) { fitPage(p, fit, data, u) },
	})
}

func fitPage(p *page, fit bakeday.Fitted, data fitSheet, u units) {
	p.para(0, fmt.Sprintf("%d settings tried.", fit.Tried))
	p.para(0, "As written: "+said(data.AsWritten.Against)+".")
	if len(fit.Best.Changes) == 0 {
		p.para(0, "Nothing within the levers fits better.")
		return
	}
	p.para(0, "Fits best: "+strings.Join(data.Best.Changes, "; ")+". Against it: "+said(data.Best.Against)+".")
	for _, o := range data.Others {
		if len(o.Changes) > 0 {
			p.para(2, "or "+strings.Join(o.Changes, "; ")+": "+said(o.Against))
		}
	}
	if fit.Best.Day.Possible() {
		p.para(2, fmt.Sprintf("with it, bulk takes %s, and the dough is shaped when it has risen by %s", data.Best.Plan.Bulk.Ready.TimeRange(), percent(data.Best.Plan.Bulk.ShapeAt, 0)))
		timetablePart(p, data.Best.Plan)
	}
}

func movedWords(all []bakeday.Moved) []string {
	out := []string{}
	for _, m := range all {
		out = append(out, m.String())
	}
	return out
}

func againstWords(all []bakeday.Against) []string {
	out := []string{}
	for _, a := range all {
		out = append(out, a.String())
	}
	return out
}

func said(against []string) string {
	if len(against) == 0 {
		return "nothing"
	}
	return strings.Join(against, ", ")
}
