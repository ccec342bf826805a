package cli

import (
	"context"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule/bakeday"
)

// lateSheet is the rest of the day as data.
type lateSheet struct {
	Step    string             `json:"step"` // its ID
	Begins  time.Time          `json:"begins"`
	Wanted  time.Time          `json:"wanted"`
	Moved   quantity.Elapsed   `json:"moved"`
	Changes []string           `json:"changes"`
	Steps   []bakeday.StepData `json:"steps"`
	Risen   quantity.Percent   `json:"risen"`
	Allowed quantity.Percent   `json:"allowed"`
}

// runLate plans the rest of the day again because a step is late.
func runLate(ctx context.Context, s System, day bakeday.Day, file string, f planFlags) error {
	if f.at == "" {
		return badInput("maslin plan: --late: say which step is late with --at, such as --at shape")
	}
	if !day.Possible() {
		return s.show(f.output, answer{page: func(p *page, u units) { planPage(p, day, day.Data(), u, file, f.cautions) }, data: day.Data(), no: true})
	}
	r, err := day.Replan(ctx, bakeday.Late{Step: f.at, By: f.late})
	if err != nil {
		return complaints("plan", err, map[string]string{"Step": "--at", "By": "--late"})
	}
	data := lateSheet{Step: r.Late.ID, Begins: r.Now.In(day.Zone), Wanted: r.Wanted.In(day.Zone), Moved: r.Moved, Changes: []string{}, Risen: r.Risen, Allowed: r.Allowed}
	for _, c := range r.Changes {
		data.Changes = append(data.Changes, c.String())
	}
	after := day
	after.Timetable = r.Timetable
	possible := len(r.Timetable.Steps) > 0
	if possible {
		for _, t := range after.Data().Steps {
			if t.End.After(r.Now) {
				data.Steps = append(data.Steps, t)
			}
		}
	}
	return s.show(f.output, answer{no: !possible, data: data, page: func(p *page, u units) { latePage(p, day, r, data, possible, u) }})
}

func latePage(p *page, day bakeday.Day, r bakeday.Replanned, data lateSheet, possible bool, u units) {
	p.para(0, printable(u.say(r.Late.Title()))+" begins at "+data.Begins.Format("Mon 15:04")+":")
	if !possible {
		p.para(2, "the rest fits no more, today or later: "+r.String())
		return
	}
	switch {
	case r.Moved > 0:
		p.para(2, "the bread is ready "+data.Moved.String()+" later than wanted, at "+longTime(data.Wanted))
		for _, m := range r.Why.Members {
			if m.Enough && !m.Remedy.IsZero() {
				p.para(4, "· unless: "+printable(u.say(m.Words))+" ("+printable(u.say(m.Remedy))+")")
			}
		}
	default:
		p.para(2, "the bread is still there when it is wanted, "+longTime(data.Wanted))
	}
	for _, c := range data.Changes {
		p.para(2, "· "+printable(c))
	}
	if data.Allowed.Sign() > 0 {
		line := "by then the dough has likely risen " + percent(data.Risen, 0) + "; the rest that is left wants it shaped at " + percent(data.Allowed, 0)
		switch over := data.Risen.Points() - data.Allowed.Points(); {
		case over > 5:
			line += ": it will be further on than wanted, so get it cold quickly and bake it first"
		case over < -5:
			line += ": it will be behind, so let it rise on before it goes into the cold, if there is time"
		}
		p.para(2, line)
	}
	sheet := day.Data()
	sheet.Steps, sheet.Wanted = data.Steps, data.Wanted
	timetablePart(p, sheet)
}
