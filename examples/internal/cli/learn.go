package cli

import (
	"context"
	"fmt"
	"math"
	"strings"
	"time"

	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/examples/internal/bakelog"
	"example.org/maslin/ferment"
	"example.org/maslin/schedule/bakeday"
	"github.com/spf13/cobra"
)

type learnFlags struct {
	output
	logFlags
}

func newLearn(s System) *cobra.Command {
	var f learnFlags
	cmd := &cobra.Command{
		Use:   "learn [FILE]",
		Short: "What your log teaches about mixer, culture and oven, and how well the ranges held",
		Long: `learn says what your log teaches: how much a minute of mixing warms the dough, how fast your
culture is and how strongly temperature moves it, what your loaves lose in the oven, and how
well the ranges would have held for each of your bakes. With a bake FILE it shows what that
changes in the next plan, and what to write into the file.`,
		Example: "  maslin learn\n  maslin learn hall-kitchen.toml",
		Args:    cobra.MaximumNArgs(1),
	}
	f.output.register(cmd)
	f.logFlags.register(cmd)
	cmd.RunE = func(cmd *cobra.Command, args []string) error { return runLearn(cmd.Context(), s, f, args) }
	return cmd
}

// lessons are everything the log teaches.
type lessons struct {
	name     string
	entries  int
	bakes    []bakelog.Bake
	mixers   []bakelog.Mixed
	cultures []bakelog.Cultured
	losses   []bakelog.Lost
}

func learnt(name string, content bakelog.Content) (lessons, error) {
	l := lessons{name: name, entries: len(content.Entries), bakes: bakelog.Group(content.Entries)}
	var err error
	if l.mixers, err = bakelog.Mixers(l.bakes); err != nil {
		return l, err
	}
	for _, leavening := range []bakelog.Leavening{bakelog.Levain, bakelog.Yeast, bakelog.Both} {
		c, _, err := bakelog.Culture(l.bakes, leavening)
		if err != nil {
			return l, err
		}
		if len(c.Bakes)+len(c.Skipped) > 0 {
			l.cultures = append(l.cultures, c)
		}
	}
	l.losses, err = bakelog.Losses(content.Entries)
	return l, err
}

func runLearn(ctx context.Context, s System, f learnFlags, args []string) error {
	if err := f.check(); err != nil {
		return err
	}
	name, content, err := f.read(s)
	if err != nil {
		return err
	}
	l, err := learnt(name, content)
	if err != nil {
		return badInput("%s: %s", name, err)
	}
	var next *nextPlan
	zone := s.Now().Location()
	if len(args) == 1 {
		if next, err = l.next(ctx, s, args[0], f.now); err != nil {
			return err
		}
		zone = next.before.Zone
	}
	data := l.sheet(next)
	return s.show(f.output, answer{
		page: func(p *page, u units) { learnPage(p, l, next, zone, u) }, data: data, workings: l.workings(),
		no: len(l.bakes) == 0 && len(l.losses) == 0,
	})
}

func (l lessons) workings() []working.Working {
	var out []working.Working
	for _, m := range l.mixers {
		if len(m.Batches) > 0 {
			out = append(out, m.Learned.Working())
		}
	}
	for _, x := range l.losses {
		out = append(out, x.Learned.Working())
	}
	return out
}

func learnPage(p *page, l lessons, next *nextPlan, zone *time.Location, u units) {
	if len(l.bakes) == 0 && len(l.losses) == 0 {
		p.para(0, "There is nothing to learn from in "+printable(l.name)+" yet. Log a dough as it leaves the mixer, and when it was ready:")
		p.para(2, "maslin log mix FILE --dough 25.5C")
		p.para(2, "maslin log ready 28%")
		return
	}
	p.para(0, fmt.Sprintf("%s: %s, %s", printable(l.name), counted(l.entries, "observation"), counted(len(l.bakes), "dough")))
	for _, m := range l.mixers {
		p.heading("The mixer: " + m.Kind.String())
		if len(m.Batches) > 0 {
			mixerLines(p, m, u)
		}
		skippedLines(p, m.Skipped, zone)
	}
	for _, c := range l.cultures {
		switch c.Leavening {
		case bakelog.Levain:
			p.heading("The culture")
		case bakelog.Yeast:
			p.heading("The yeast")
		case bakelog.Both:
			p.heading("Levain and yeast together")
		}
		if len(c.Bakes) > 0 {
			cultureLines(p, c, zone, u)
		}
		skippedLines(p, c.Skipped, zone)
	}
	if len(l.losses) > 0 {
		p.heading("The oven")
		for _, x := range l.losses {
			p.para(2, x.Style.String()+": loses "+x.Learned.String())
		}
	}
	if next != nil {
		next.lines(p, u)
	}
}

func counted(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}

var speedNames = []string{"slow", "fast"}

func mixerLines(p *page, m bakelog.Mixed, u units) {
	for i, r := range m.Learned.PerMinute {
		name := "mixing"
		if i < len(speedNames) {
			name = speedNames[i]
		}
		p.para(2, fmt.Sprintf("a minute %s warms the dough by %s, give or take %s", name, deltaTo(r.Value, 2, u), deltaTo(r.StandardError, 2, u)))
	}
	p.para(2, fmt.Sprintf("bowl and hook count as %s of the dough, give or take %s", percent(m.Learned.Bowl.Value, 0), percent(m.Learned.Bowl.StandardError, 0)))
	p.para(2, fmt.Sprintf("one batch differs from the next by %s; learned from %s", deltaTo(m.Learned.Spread, 1, u), batchCount(m.Learned.Batches)))
}

func batchCount(n int) string {
	if n == 1 {
		return "1 batch"
	}
	return fmt.Sprintf("%d batches", n)
}

func deltaTo(d quantity.TemperatureDelta, places int, u units) string {
	if u.us {
		return strings.Replace(d.Text(quantity.FahrenheitScale, places), "Δ", "", 1)
	}
	return strings.Replace(d.Text(quantity.CelsiusScale, places), "Δ", "", 1)
}

func cultureLines(p *page, c bakelog.Cultured, zone *time.Location, u units) {
	known := c.Lesson.Culture
	pace, warm := known.Pace(), known.TemperatureSensitivity()
	p.para(2, fmt.Sprintf("pace: %.2f of the usual (%.2f to %.2f, 80 %%), at 24 °C; learned from %s", pace.Likely.Fraction(), pace.Low.Fraction(), pace.High.Fraction(), counted(known.Bakes(), "bake")))
	p.para(2, fmt.Sprintf("a degree Celsius warmer speeds it up by %+.1f %% more than the law (%+.1f to %+.1f)", warm.Likely.Points(), warm.Low.Points(), warm.High.Points()))
	low, high := c.Lesson.Temperatures()
	if high.Sub(low).Celsius() < 2 {
		p.para(4, fmt.Sprintf("that is hardly learned: all bakes were between %s and %s; log a cool and a warm one", u.temperature(low, 1), u.temperature(high, 1)))
	}
	p.para(2, fmt.Sprintf("one bake differs from the next by %.0f %%", known.BakeToBake().Points()))
	reviews, inside, err := c.Lesson.Reviews()
	if err != nil || len(reviews) < 2 {
		p.para(2, "how well the ranges hold can be said from two bakes on")
		return
	}
	p.para(2, fmt.Sprintf("how well the ranges held: %d of %d bakes lay inside the range that the other bakes give (of many, about 80 %% should)", inside, len(reviews)))
	const most = 24
	from := max(0, len(reviews)-most)
	if from > 0 {
		p.para(4, fmt.Sprintf("the last %d:", most))
	}
	reviewPlot(p, c.Bakes[from:], reviews[from:], zone)
}

// reviewPlot draws each bake's range about its likely time, and where the bake really was.
func reviewPlot(p *page, bakes []bakelog.Bake, reviews []ferment.Review, zone *time.Location) {
	const lead = 22 // date and time taken
	width := min(p.width-lead-2, 50)
	if width < 16 {
		for i, r := range reviews {
			p.para(4, bakes[i].Mixed.In(zone).Format("2 Jan")+": "+r.String())
		}
		return
	}
	// The axis is the log of the time over the likely one, as wide as the widest range or the wildest bake needs.
	span := math.Log(1.25)
	for _, r := range reviews {
		for _, d := range []time.Duration{r.Predicted.Early, r.Predicted.Late, r.Took.Duration()} {
			span = max(span, math.Abs(math.Log(float64(d)/float64(r.Predicted.Likely))))
		}
	}
	span = min(span, math.Log(4))
	column := func(d, likely time.Duration) int {
		x := math.Log(float64(d)/float64(likely)) / span
		return int(math.Round((max(-1, min(1, x)) + 1) / 2 * float64(width-1)))
	}
	for i, r := range reviews {
		cells := []rune(strings.Repeat(" ", width))
		early, late, took := column(r.Predicted.Early, r.Predicted.Likely), column(r.Predicted.Late, r.Predicted.Likely), column(r.Took.Duration(), r.Predicted.Likely)
		for k := early; k <= late; k++ {
			cells[k] = '-'
		}
		cells[early], cells[late], cells[column(r.Predicted.Likely, r.Predicted.Likely)] = '[', ']', '|'
		cells[took] = 'o'
		if !r.Inside {
			cells[took] = 'X'
		}
		p.line("    %-7s%9s  %s", bakes[i].Mixed.In(zone).Format("2 Jan"), quantity.FormatDuration(r.Took.Duration().Round(time.Minute)), strings.TrimRight(string(cells), " "))
	}
	left, right := fmt.Sprintf("%.2f x", math.Exp(-span)), fmt.Sprintf("%.2f x likely", math.Exp(span))
	p.line("    %s%s%s%s", strings.Repeat(" ", 18), left, strings.Repeat(" ", max(1, width-len(left)-len(right))), right)
	p.para(4, "[ to ] the range, | likely, o the bake, X a bake outside")
}

func skippedLines(p *page, all []bakelog.Skipped, zone *time.Location) {
	const most = 5
	for i, x := range all {
		if i == most {
			p.para(2, fmt.Sprintf("and %d more that teach nothing", len(all)-most))
			break
		}
		p.para(2, "not learned from "+x.Mixed.In(zone).Format("2 Jan 15:04")+": "+x.Why)
	}
}

// nextPlan is what the lessons change in the plan of a bake file.
type nextPlan struct {
	file          string
	before, after bakeday.Day
	warming       *quantity.TemperatureDelta
	loss          *quantity.Percent
	bulkBefore    quantity.TimeRange
	bulkAfter     *quantity.TimeRange
}

// next plans a bake as its file has it, and with what the log teaches.
func (l lessons) next(ctx context.Context, s System, file, now string) (*nextPlan, error) {
	in, err := load(s, file, now)
	if err != nil {
		return nil, err
	}
	n := &nextPlan{file: file}
	if n.before, err = in.bake.Plan(ctx, in.clock); err != nil {
		return nil, complain(file, located(in.file, err))
	}
	b := in.bake
	for _, m := range l.mixers {
		if m.Kind == b.Mixing.Mixer && len(m.Batches) > 0 {
			if rise, ok := usualWarming(m); ok {
				n.warming, b.Mixing.Warming = &rise, rise
			}
		}
	}
	for _, x := range l.losses {
		if x.Style == b.Loaves.Style {
			loss := tenthPercent(x.Learned.Mean)
			n.loss, b.Loaves.Loss = &loss, loss
		}
	}
	if n.after, err = b.Plan(ctx, in.clock); err != nil {
		return nil, badInput("%s: with what the log teaches: %s", file, err)
	}
	n.bulkBefore = n.before.Rising.Bulk.Ready()
	bulk := n.after.Rising.Bulk.Bulk()
	for _, c := range l.cultures {
		if c.Leavening == bakelog.LeaveningOf(bulk) && len(c.Bakes) > 0 {
			bulk.Culture = c.Lesson.Culture
			e, err := bulk.Estimate()
			if err != nil {
				return nil, badInput("%s: with what the log teaches: %s", file, err)
			}
			r := e.Ready()
			n.bulkAfter = &r
		}
	}
	return n, nil
}

// usualWarming is how much the mixer is likely to warm a batch like the last one.
func usualWarming(m bakelog.Mixed) (quantity.TemperatureDelta, bool) {
	last := m.Batches[len(m.Batches)-1]
	prediction, err := m.Learned.Predict(last, quantity.NewPercent(80))
	if err != nil {
		return quantity.TemperatureDelta{}, false
	}
	d, err := quantity.ParseDelta(prediction.Rise.Text(quantity.CelsiusScale, 1))
	return d, err == nil
}

func (n *nextPlan) lines(p *page, u units) {
	p.heading("The next plan, and what the log changes")
	p.para(2, "of "+printable(n.file)+":")
	if n.warming == nil && n.loss == nil && n.bulkAfter == nil {
		p.para(2, "nothing yet: no dough of this mixer, no loaf of this kind and no ready dough with this leavening is logged")
		return
	}
	change := func(what, before, after string) {
		if before == after {
			p.para(2, what+": "+before+", as before")
			return
		}
		p.para(2, what+": "+before+" becomes "+after)
	}
	if n.warming != nil {
		change("mixing warms the dough by", u.delta(n.before.Water.Warming), u.delta(n.after.Water.Warming))
		change("water", u.temperature(n.before.Water.Temperature, 1), u.temperature(n.after.Water.Temperature, 1))
	}
	if n.loss != nil {
		change("loss in the oven", percent(n.before.Baking.Loss, 1), percent(n.after.Baking.Loss, 1))
		change("dough for one loaf", u.mass(rounded(n.before.Baking.Scaling)), u.mass(rounded(n.after.Baking.Scaling)))
	}
	if n.bulkAfter != nil {
		change("bulk", n.bulkBefore.String(), n.bulkAfter.String())
	}
	var write []string
	if n.warming != nil {
		text, err := n.warming.MarshalText()
		if err == nil {
			write = append(write, fmt.Sprintf("warming = %q", text))
		}
	}
	if n.loss != nil {
		text, err := n.loss.MarshalText()
		if err == nil {
			write = append(write, fmt.Sprintf("loss = %q", text))
		}
	}
	if len(write) > 0 {
		p.para(2, "to keep it, write into the file: "+strings.Join(write, " and "))
	}
}

// lessonSheet is the answer of learn as data.
type lessonSheet struct {
	Format   string          `json:"format"`
	Log      string          `json:"log"`
	Doughs   int             `json:"doughs"`
	Mixers   []mixerLesson   `json:"mixers"`
	Cultures []cultureLesson `json:"cultures"`
	Losses   []lossLesson    `json:"losses"`
	Next     *nextPlanSheet  `json:"next_plan,omitempty"`
}

type mixerLesson struct {
	Mixer     mixing.MixerKind            `json:"mixer"`
	Batches   int                         `json:"batches"`
	PerMinute []quantity.TemperatureDelta `json:"warming_per_minute"`
	Errors    []quantity.TemperatureDelta `json:"standard_errors"`
	Skipped   []skippedData               `json:"not_learned_from"`
}

type skippedData struct {
	Bread string    `json:"bread,omitempty"`
	Mixed time.Time `json:"mixed"`
	Why   string    `json:"why"`
}

type estimatedData struct {
	Low    float64 `json:"low"`
	Likely float64 `json:"likely"`
	High   float64 `json:"high"`
}

type cultureLesson struct {
	Leavening   bakelog.Leavening `json:"leavening"`
	Bakes       int               `json:"bakes"`
	Pace        *estimatedData    `json:"pace,omitempty"`
	Sensitivity *estimatedData    `json:"temperature_sensitivity,omitempty"`
	BakeToBake  float64           `json:"bake_to_bake,omitempty"`
	Inside      int               `json:"inside_the_range"`
	Reviews     []reviewData      `json:"reviews"`
	Skipped     []skippedData     `json:"not_learned_from"`
}

type reviewData struct {
	Mixed     time.Time        `json:"mixed"`
	Took      quantity.Elapsed `json:"took"`
	Predicted bakeday.Range    `json:"predicted"`
	Inside    bool             `json:"inside"`
}

type lossLesson struct {
	Style  string           `json:"style"`
	Loaves int              `json:"loaves"`
	Mean   quantity.Percent `json:"mean"`
	Low    quantity.Percent `json:"low"`
	High   quantity.Percent `json:"high"`
}

type nextPlanSheet struct {
	Warming *quantity.TemperatureDelta `json:"warming,omitempty"`
	Water   [2]quantity.Temperature    `json:"water"` // before and after
	Loss    *quantity.Percent          `json:"loss,omitempty"`
	Scaling [2]quantity.Mass           `json:"scaling_weight"`
	Bulk    []bakeday.Range            `json:"bulk"`
}

func (l lessons) sheet(next *nextPlan) lessonSheet {
	out := lessonSheet{Format: "maslin learn 1", Log: l.name, Doughs: len(l.bakes), Mixers: []mixerLesson{}, Cultures: []cultureLesson{}, Losses: []lossLesson{}}
	for _, m := range l.mixers {
		one := mixerLesson{Mixer: m.Kind, Batches: len(m.Batches), PerMinute: []quantity.TemperatureDelta{}, Errors: []quantity.TemperatureDelta{}, Skipped: skippedSheet(m.Skipped)}
		for _, r := range m.Learned.PerMinute {
			one.PerMinute = append(one.PerMinute, hundredthDelta(r.Value))
			one.Errors = append(one.Errors, hundredthDelta(r.StandardError))
		}
		out.Mixers = append(out.Mixers, one)
	}
	for _, c := range l.cultures {
		one := cultureLesson{Leavening: c.Leavening, Bakes: len(c.Bakes), Reviews: []reviewData{}, Skipped: skippedSheet(c.Skipped)}
		if len(c.Bakes) > 0 {
			known := c.Lesson.Culture
			one.Pace, one.Sensitivity, one.BakeToBake = estimatedSheet(known.Pace()), estimatedSheet(known.TemperatureSensitivity()), rounded4(known.BakeToBake().Fraction())
			if reviews, inside, err := c.Lesson.Reviews(); err == nil {
				one.Inside = inside
				for i, r := range reviews {
					one.Reviews = append(one.Reviews, reviewData{c.Bakes[i].Mixed, quantity.Elapsed(r.Took.Duration().Round(time.Minute)), bakeday.NewRange(r.Predicted), r.Inside})
				}
			}
		}
		out.Cultures = append(out.Cultures, one)
	}
	for _, x := range l.losses {
		out.Losses = append(out.Losses, lossLesson{x.Style.String(), x.Learned.Count, tenthPercent(x.Learned.Mean), tenthPercent(x.Learned.Next.Low), tenthPercent(x.Learned.Next.High)})
	}
	if next != nil {
		out.Next = &nextPlanSheet{
			Warming: next.warming, Loss: next.loss, Bulk: []bakeday.Range{bakeday.NewRange(next.bulkBefore)},
			Water:   [2]quantity.Temperature{tenth(next.before.Water.Temperature), tenth(next.after.Water.Temperature)},
			Scaling: [2]quantity.Mass{rounded(next.before.Baking.Scaling), rounded(next.after.Baking.Scaling)},
		}
		if next.bulkAfter != nil {
			out.Next.Bulk = append(out.Next.Bulk, bakeday.NewRange(*next.bulkAfter))
		}
	}
	return out
}

func skippedSheet(all []bakelog.Skipped) []skippedData {
	out := []skippedData{}
	for _, x := range all {
		out = append(out, skippedData(x))
	}
	return out
}

func estimatedSheet(e quantity.Range[quantity.Percent]) *estimatedData {
	return &estimatedData{rounded4(e.Low.Fraction()), rounded4(e.Likely.Fraction()), rounded4(e.High.Fraction())}
}

func rounded4(x float64) float64 { return math.Round(x*1e4) / 1e4 }

func hundredthDelta(d quantity.TemperatureDelta) quantity.TemperatureDelta {
	r, err := quantity.ParseDelta(d.Text(quantity.CelsiusScale, 2))
	if err != nil {
		return d
	}
	return r
}
