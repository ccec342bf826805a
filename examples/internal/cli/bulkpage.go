package cli

import (
	"fmt"
	"math"
	"strings"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/ferment"
	"example.org/maslin/internal/curve"
	"example.org/maslin/schedule/bakeday"
)

// bulkAnswer is everything that was asked of a dough.
type bulkAnswer struct {
	estimate ferment.Estimate // with the readings taken in, when there are some
	seen     ferment.Progress

	target    ferment.ShapeTarget
	hasTarget bool
	shapeAt   ferment.Estimate // until it is to be shaped; the zero value when that is not to be

	readyBy time.Duration
	amount  *ferment.AmountAnswer
	held    *ferment.TemperatureAnswer
	startAt *ferment.TemperatureAnswer
	roomAt  *ferment.TemperatureAnswer
}

// main is the estimate that the dough is watched for.
func (a bulkAnswer) main() ferment.Estimate {
	if a.hasTarget && a.shapeAt.Reached() {
		return a.shapeAt
	}
	return a.estimate
}

func (a bulkAnswer) plot(f *bulkFlags, u units) curve.Plot {
	e := a.main()
	start := time.Time{}
	if f.clocked {
		start = f.start
	}
	return riseCurve(e, u, "Rise of the dough: "+percent(e.Bulk().Rise, 0)+" wanted", start)
}

func (a bulkAnswer) cautions() []working.Caution {
	all := a.estimate.Cautions()
	if a.hasTarget {
		all = append(all, a.target.Cautions()...)
	}
	var out []working.Caution
	seen := map[string]bool{}
	for _, c := range all {
		if !seen[string(c.Subject)] {
			out = append(out, c)
			seen[string(c.Subject)] = true
		}
	}
	return out
}

// bulkPage prints the clock of a dough.
func bulkPage(p *page, s System, f *bulkFlags, a bulkAnswer, u units) {
	e := a.main()
	p.para(0, doughWords(f, u))
	p.heading("Ready")
	switch {
	case a.hasTarget && !a.target.Feasible:
		p.para(2, "do not wait: even shaped at once it would rise by "+percent(a.target.Unrisen, 0)+" before it goes into the oven; less time in the cold, a colder refrigerator or less levain")
	case a.hasTarget:
		p.para(2, fmt.Sprintf("shape when it has risen by %s, no more: %s at %s brings it to about %s when it goes into the oven (%s to %s)",
			percent(a.target.Rise, 0), f.retard, u.temperature(f.refrigerator, 0), percent(a.target.After.Likely, 0), percent(a.target.After.Low, 0), percent(a.target.After.High, 0)))
	}
	readyLines(p, e, f)
	if len(f.seen) > 0 && !a.hasTarget {
		p.para(2, "what you saw: "+a.seen.String())
	}
	if a.readyBy > 0 {
		p.heading("Ready after " + quantity.FormatDuration(a.readyBy) + byClock(f, a.readyBy))
		a.inverseLines(p, u)
	}
	p.heading("The rise")
	p.draw(s, a.plot(f, u))
	p.heading("What this rests on")
	for _, line := range e.RestsOn() {
		p.para(2, "· "+u.say(line))
	}
	for _, line := range e.Notes() {
		p.para(2, "· "+u.say(line))
	}
	if e.Bulk().Yeast.Kind == ferment.NoYeast && e.Reached() {
		if flavor, err := e.Flavor(e.Ready().Likely); err == nil {
			p.para(2, "· "+flavorWords(flavor, u))
		}
	}
	p.para(2, "· go by the dough, not the clock: log your bakes, and the range narrows")
}

func flavorWords(f ferment.Flavor, u units) string {
	lean := "neither to mild nor to acid"
	switch {
	case f.Index > 105:
		lean = "to acid"
	case f.Index < 95:
		lean = "to mild"
	}
	return fmt.Sprintf("flavor leans %s: index %.0f, 100 being %s throughout; a direction, not a pH", lean, f.Index, u.temperature(quantity.Celsius(24), 0))
}

func readyLines(p *page, e ferment.Estimate, f *bulkFlags) {
	if !e.Reached() {
		p.para(2, "it does not rise by "+percent(e.Bulk().Rise, 0)+" within 30 days")
		return
	}
	r := e.Ready()
	p.para(2, fmt.Sprintf("%s risen %s after mixing", percent(e.Bulk().Rise, 0), r))
	if f.clocked {
		p.para(2, clockRange(r, f.start))
	}
}

// clockRange prints a range by the clock.
func clockRange(r quantity.TimeRange, start time.Time) string {
	at := func(d time.Duration) string { return clock(start.Add(d.Round(time.Minute)), start) }
	return fmt.Sprintf("by the clock: %s to %s (%s), likely %s", at(r.Early), at(r.Late), percent(r.Probability, 0), at(r.Likely))
}

func byClock(f *bulkFlags, d time.Duration) string {
	if !f.clocked {
		return ""
	}
	return ", at " + clock(f.start.Add(d), f.start)
}

func (a bulkAnswer) inverseLines(p *page, u units) {
	if x := a.amount; x != nil {
		switch {
		case !x.Feasible:
			p.para(2, "by the amount: "+u.say(x.Why))
		case x.Yeast.Kind != ferment.NoYeast:
			p.para(2, "by the amount: "+percent(x.Yeast.Amount, 2)+" "+x.Yeast.Kind.String()+"; then "+x.Estimate.Ready().String())
		default:
			p.para(2, "by the amount: "+percent(x.Inoculation, 1)+" of the flour in the levain; then "+x.Estimate.Ready().String())
		}
	}
	for _, t := range []struct {
		words string
		t     *ferment.TemperatureAnswer
	}{{"by the dough", a.startAt}, {"by the room", a.roomAt}, {"by a proofing box", a.held}} {
		if t.t == nil {
			continue
		}
		line := u.say(t.t.Why)
		if t.t.Feasible {
			line = u.temperature(t.t.Temperature, 1) + "; then " + t.t.Estimate.Ready().String()
		}
		p.para(2, t.words+": "+line)
	}
}

func doughWords(f *bulkFlags, u units) string {
	b := f.bulk
	leaven := percent(b.Inoculation, 1) + " of the flour in the levain"
	if b.Yeast.Kind != ferment.NoYeast {
		yeast := percent(b.Yeast.Amount, 2) + " " + b.Yeast.Kind.String()
		if b.Inoculation.IsZero() {
			leaven = yeast
		} else {
			leaven += ", " + yeast
		}
	}
	words := []string{leaven, "salt " + percent(f.salt, 1), "hydration " + percent(f.hydration, 0)}
	if b.WholeGrain.Sign() > 0 {
		words = append(words, "whole grain "+percent(b.WholeGrain, 0))
	}
	return "A dough with " + strings.Join(words, ", ") + "; " + stands(f, "mixing", u)
}

func stands(f *bulkFlags, after string, u units) string {
	switch {
	case f.readings != "":
		return "its temperature as read in " + printable(f.readings)
	case f.room.IsZero():
		return "held at " + u.temperature(f.dough, 1)
	}
	room := u.temperature(f.room, 1)
	if !f.night.IsZero() {
		room += " by day and " + u.temperature(f.night, 1) + " by night"
	}
	return u.temperature(f.dough, 1) + " after " + after + ", in a room of " + room
}

// bulkSheet is the answer of bulk as data; the number in Format grows when a field changes its
// meaning.
type bulkSheet struct {
	Format  string              `json:"format"`
	Rise    quantity.Percent    `json:"rise"`
	Reached bool                `json:"reached"`
	Ready   *bakeday.Range      `json:"ready,omitempty"`
	Mixed   *time.Time          `json:"mixed,omitempty"`
	Shape   *shapeSheet         `json:"shape,omitempty"`
	Seen    *seenSheet          `json:"seen,omitempty"`
	ReadyBy *readyBySheet       `json:"ready_by,omitempty"`
	Acid    float64             `json:"acid_index,omitempty"`
	RestsOn []string            `json:"rests_on"`
	Notes   []string            `json:"notes"`
	Curve   []bakeday.CurveData `json:"curve"`
}

type shapeSheet struct {
	Feasible bool             `json:"feasible"`
	Rise     quantity.Percent `json:"rise"`
	Total    bakeday.BandData `json:"rise_in_oven"`
	Unrisen  quantity.Percent `json:"if_shaped_at_once"`
}

type seenSheet struct {
	Says   string        `json:"says"`
	Before bakeday.Range `json:"before"`
	Later  string        `json:"later"`
}

type readyBySheet struct {
	After       quantity.Elapsed      `json:"after"`
	Inoculation *quantity.Percent     `json:"inoculation,omitempty"`
	Yeast       *quantity.Percent     `json:"yeast,omitempty"`
	Dough       *quantity.Temperature `json:"dough,omitempty"`
	Room        *quantity.Temperature `json:"room,omitempty"`
	Held        *quantity.Temperature `json:"held,omitempty"`
	Why         []string              `json:"not_feasible"`
}

func (a bulkAnswer) sheet(f *bulkFlags) bulkSheet {
	e := a.main()
	out := bulkSheet{Format: "maslin bulk 1", Rise: tenthPercent(e.Bulk().Rise), Reached: e.Reached(), RestsOn: metric(e.RestsOn()), Notes: metric(e.Notes()), Curve: curveData(e)}
	if e.Reached() {
		r := bakeday.NewRange(e.Ready())
		out.Ready = &r
		if flavor, err := e.Flavor(e.Ready().Likely); err == nil {
			out.Acid = math.Round(flavor.Index)
		}
	}
	if f.clocked {
		out.Mixed = &f.start
	}
	if a.hasTarget {
		out.Shape = &shapeSheet{a.target.Feasible, tenthPercent(a.target.Rise), bandData(a.target.After), tenthPercent(a.target.Unrisen)}
	}
	if len(f.seen) > 0 {
		later := a.seen.Shift().Round(time.Minute)
		sign := ""
		if later < 0 {
			sign, later = "-", -later
		}
		out.Seen = &seenSheet{a.seen.String(), bakeday.NewRange(a.seen.Before), sign + quantity.FormatDuration(later)}
	}
	if a.readyBy > 0 {
		out.ReadyBy = a.inverseSheet()
	}
	return out
}

func (a bulkAnswer) inverseSheet() *readyBySheet {
	out := &readyBySheet{After: quantity.Elapsed(a.readyBy), Why: []string{}}
	if x := a.amount; x != nil {
		switch {
		case !x.Feasible:
			out.Why = append(out.Why, x.Why.String())
		case x.Yeast.Kind != ferment.NoYeast:
			y := hundredth(x.Yeast.Amount)
			out.Yeast = &y
		default:
			y := tenthPercent(x.Inoculation)
			out.Inoculation = &y
		}
	}
	for _, t := range []struct {
		to **quantity.Temperature
		t  *ferment.TemperatureAnswer
	}{{&out.Dough, a.startAt}, {&out.Room, a.roomAt}, {&out.Held, a.held}} {
		switch {
		case t.t == nil:
		case t.t.Feasible:
			x := tenth(t.t.Temperature)
			*t.to = &x
		default:
			out.Why = append(out.Why, t.t.Why.String())
		}
	}
	return out
}

func hundredth(p quantity.Percent) quantity.Percent {
	r, err := quantity.ParsePercent(p.Text(2))
	if err != nil {
		return p
	}
	return r
}
