package cli

import (
	"context"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/examples/internal/bakelog"
	"example.org/maslin/ferment"
	"example.org/maslin/schedule"
	"example.org/maslin/schedule/bakeday"
	"github.com/spf13/cobra"
)

type nowFlags struct {
	noteFlags
	rise         quantity.Percent
	done, follow bool
	step         string
}

func newNow(s System) *cobra.Command {
	cmd := &cobra.Command{
		Use:   "now FILE",
		Short: "At the bench: the step of the day that is due, what to look for, and the new range after a look",
		Long: `now reads the plan of a bake file and your log, and says what is under way, what comes next and
what to look for. What the log has taught about the culture counts, as in maslin plan --learned.
--follow keeps to the plan as it is now while you bake; --rise logs how far
the dough has risen and answers with the new range; --done logs that a step is done.

Exit status: 0 answered; 1 the plan does not fit; 2 bad input.`,
		Example: "  maslin now hall-kitchen.toml --follow\n  maslin now hall-kitchen.toml --rise 20% --at 18:50\n  maslin now hall-kitchen.toml --done\n  maslin now hall-kitchen.toml --done --step shape --at 20:40",
		Args:    oneFile,
	}
	var f nowFlags
	f.register(cmd)
	cmd.Flags().Lookup("bread").Hidden = true // the file names it
	f.in.value(&f.rise, "rise", "PERCENT", "the dough has risen so far: log it", "rise.rise")
	cmd.Flags().BoolVar(&f.done, "done", false, "log that the step that was due is done")
	cmd.Flags().StringVar(&f.step, "step", "", "with --done: this `STEP` instead, such as shape or fold-2")
	cmd.Flags().BoolVar(&f.follow, "follow", false, "keep to the plan as it is now, while you bake")
	cmd.RunE = func(cmd *cobra.Command, args []string) error { return runNow(cmd.Context(), s, &f, args[0]) }
	return cmd
}

// bench is the day as it stands at one moment.
type bench struct {
	in       loaded
	day      bakeday.Day
	sheet    bakeday.PlanData
	learned  string // what the log knew of the culture when the plan was made, in words
	now      time.Time
	followed *bakelog.Plan
	done     map[string]time.Time // steps that the log says are done
	dough    *bakelog.Bake        // as it was mixed, when that is logged
	progress *ferment.Progress    // of the bulk, when it has begun
	mixed    time.Time            // when the bulk began, as logged or as planned
	changed  *bakeday.Replanned
	steps    []bakeday.StepData // planned again, when something changed
}

func runNow(ctx context.Context, s System, f *nowFlags, file string) error {
	if err := f.in.complain(nil); err != nil {
		return err
	}
	if err := f.check(); err != nil {
		return err
	}
	if f.bread != "" {
		return badInput("maslin now: --bread: the bread is the one of the bake file")
	}
	if f.step != "" && !f.done {
		return badInput("maslin now: --step: goes with --done")
	}
	l, err := load(s, file, "")
	if err != nil {
		return err
	}
	now, err := f.clock(s, l.clock.Zone)
	if err != nil {
		return err
	}
	_, content, err := f.read(s)
	if err != nil {
		return err
	}
	b, err := benchAt(ctx, l, now, content.Entries)
	if err != nil {
		return err
	}
	if !b.sheet.Possible {
		return s.show(f.output, answer{no: true, data: b.data(), page: func(p *page, u units) {
			p.para(0, printable(b.sheet.Name)+", wanted "+longTime(b.sheet.Wanted))
			notPossible(p, b.sheet, u)
			p.para(2, "the whole plan: maslin plan "+printable(file))
		}})
	}
	entries, err := f.entries(s, b)
	if err != nil {
		return err
	}
	if len(entries) == 0 {
		return f.show(s, b, file, nil)
	}
	name, err := f.append(s, entries...)
	if err != nil {
		return f.in.complain(err)
	}
	if _, content, err = f.read(s); err != nil {
		return kept(name, err)
	}
	if b, err = benchAt(ctx, l, now, content.Entries); err != nil {
		return kept(name, err)
	}
	return kept(name, f.show(s, b, file, entries))
}

// show says how things stand, and first what was logged.
func (f *nowFlags) show(s System, b *bench, file string, entries []bakelog.Entry) error {
	return s.show(f.output, answer{data: b.data(), page: func(p *page, u units) {
		for _, e := range entries {
			p.para(0, "logged: "+entryLine(e, u))
		}
		nowPage(p, b, file, u)
		p.takeCare(b.hazards(u), false, "maslin plan "+shellWord(file)+" --cautions")
	}})
}

// entries are what the flags ask to be logged. Whoever logs follows the plan.
func (f *nowFlags) entries(s System, b *bench) ([]bakelog.Entry, error) {
	var out []bakelog.Entry
	add := func(kind bakelog.Kind) (*bakelog.Entry, error) {
		e, err := f.entry(s, kind, b.in.clock.Zone)
		e.Bread = b.sheet.Name
		out = append(out, e)
		return &out[len(out)-1], err
	}
	rise := f.in.given("rise")
	if b.followed == nil && (f.follow || rise || f.done) {
		e, err := add(bakelog.KindPlan)
		if err != nil {
			return nil, err
		}
		e.At = b.now
		e.Plan = &bakelog.Plan{Made: b.day.Now, Wanted: b.sheet.Wanted}
	}
	if rise {
		e, err := add(bakelog.KindRise)
		if err != nil {
			return nil, err
		}
		e.Rise = &bakelog.Rise{Rise: f.rise}
		if e.At.Before(b.mixed) {
			return nil, badInput("maslin now: --rise: the bulk fermentation begins at %s, after %s; say when it was mixed with maslin log mix", clock(b.mixed, b.now), clock(e.At, b.now))
		}
		if err := e.Check(); err != nil {
			return nil, f.in.complain(err)
		}
	}
	if f.done {
		step, err := b.named(f.step)
		if err != nil {
			return nil, err
		}
		e, err := add(bakelog.KindStep)
		if err != nil {
			return nil, err
		}
		e.Step = step.ID
	}
	return out, nil
}

// benchAt works the day out at one moment, from the plan and the log.
func benchAt(ctx context.Context, l loaded, now time.Time, entries []bakelog.Entry) (*bench, error) {
	b := &bench{in: l, now: now, done: map[string]time.Time{}}
	for _, e := range entries {
		const after = 12 * time.Hour // the plan still counts so long after the bread was wanted
		if e.Kind == bakelog.KindPlan && e.Bread == l.bake.Name && !e.At.After(now) && e.Plan.Wanted.Add(after).After(now) {
			b.followed = e.Plan
		}
	}
	in := l
	in.clock.Now = now
	if b.followed != nil {
		in.clock.Now = b.followed.Made
	}
	var err error
	if b.learned, err = learnFrom(mixedBefore(entries, in.clock.Now), &in.bake); err != nil {
		return nil, badInput("%s: %s", l.name, err)
	}
	if b.day, err = in.bake.Plan(ctx, in.clock); err != nil {
		return nil, complain(l.name, located(l.file, err))
	}
	b.sheet = b.day.Data()
	if !b.sheet.Possible {
		return b, nil
	}
	b.steps = append([]bakeday.StepData(nil), b.sheet.Steps...)
	bulk, hasBulk := b.step("bulk")
	b.mixed = bulk.Start
	var since []bakelog.Entry
	for _, e := range entries {
		if e.At.Before(in.clock.Now) || e.At.After(now) {
			continue
		}
		since = append(since, e)
		if e.Kind == bakelog.KindStep && e.Bread == l.bake.Name {
			b.done[e.Step] = e.At
		}
	}
	b.addDough(bakelog.Group(since), since)
	if hasBulk && !b.mixed.After(now) {
		if err := b.follow(ctx, in, entries); err != nil {
			return nil, err
		}
	}
	if err := b.replan(ctx, bulk); err != nil {
		return nil, err
	}
	for i := range b.steps { // the plan may have it at another time
		if b.steps[i].ID == bulk.ID && b.dough != nil && !b.dough.Mix.Dough.IsZero() {
			b.steps[i].Start = b.mixed
			b.steps[i].Takes = quantity.Elapsed(b.steps[i].End.Sub(b.mixed))
		}
	}
	return b, nil
}

// mixedBefore are the doughs of the log that were mixed before a moment.
func mixedBefore(entries []bakelog.Entry, at time.Time) []bakelog.Bake {
	var out []bakelog.Bake
	for _, one := range bakelog.Group(entries) {
		if one.Mixed.Before(at) {
			out = append(out, one)
		}
	}
	return out
}

// addDough finds the dough in the log; without a logged mixing, readings count from the plan's.
func (b *bench) addDough(bakes []bakelog.Bake, since []bakelog.Entry) {
	for i := range bakes {
		if bakes[i].Bread == b.in.bake.Name {
			b.dough, b.mixed = &bakes[i], bakes[i].Mixed.In(b.in.clock.Zone)
		}
	}
	if b.dough != nil {
		return
	}
	planned := bakelog.Bake{Bread: b.in.bake.Name, Mixed: b.mixed}
	for _, e := range since {
		if e.Kind == bakelog.KindRise && (e.Bread == b.in.bake.Name || e.Bread == "") && e.At.After(b.mixed) {
			planned.Rises = append(planned.Rises, e)
		}
	}
	if len(planned.Rises) > 0 {
		b.dough = &planned
	}
}

// follow brings the clock of the dough up to date: its real temperature after mixing, what the
// log knows of the culture, and what was read.
func (b *bench) follow(ctx context.Context, in loaded, entries []bakelog.Entry) error {
	rising := b.day.Rising
	if b.dough != nil && !b.dough.Mix.Dough.IsZero() {
		again := in.bake
		again.Mixing.Temperature = b.dough.Mix.Dough
		if day, err := again.Plan(ctx, in.clock); err == nil && day.Rising.Feasible {
			rising = day.Rising
		}
	}
	bulk := rising.Bulk.Bulk()
	before := mixedBefore(entries, b.mixed)
	c, ok, err := bakelog.Culture(before, bakelog.LeaveningOf(bulk))
	if err != nil {
		return err
	}
	if ok {
		bulk.Culture = c.Lesson.Culture
	}
	var dough bakelog.Bake
	if b.dough != nil {
		dough = *b.dough
	}
	dough.Mixed = b.mixed
	progress, err := followed(bulk, dough)
	if err != nil {
		return badInput("%s: %s", b.in.name, err)
	}
	b.progress = &progress
	return nil
}

// replan plans the rest of the day again when what happened differs from the plan.
func (b *bench) replan(ctx context.Context, bulk bakeday.StepData) error {
	step, at := b.deviation(bulk)
	if step.ID == "" {
		return nil
	}
	by := at.Sub(step.Start).Truncate(time.Minute)
	const enough = 5 * time.Minute
	if by < enough && by > -enough {
		return nil
	}
	r, err := b.day.Replan(ctx, bakeday.Late{Step: step.ID, By: quantity.Elapsed(by)})
	if err != nil {
		return nil // too far from the plan to plan again: the plan stands, and the range says so
	}
	b.changed = &r
	if len(r.Timetable.Steps) > 0 {
		after := b.day
		after.Timetable = r.Timetable
		b.steps = after.Data().Steps
	}
	return nil
}

// deviation is the last thing that tells when a step of the plan really begins.
func (b *bench) deviation(bulk bakeday.StepData) (step bakeday.StepData, at time.Time) {
	last := time.Time{}
	for i, s := range b.sheet.Steps {
		done, ok := b.done[s.ID]
		if !ok || !s.Hands || done.Before(last) || s.Kind == schedule.Fold {
			continue
		}
		for _, next := range b.sheet.Steps[i+1:] {
			if !next.Start.Before(s.End) && next.Kind != schedule.Preheat {
				last, step, at = done, next, done.Add(next.Start.Sub(s.End))
				break
			}
		}
	}
	shape, ok := b.step("shape")
	if _, shaped := b.done[shape.ID]; !ok || shaped || bulk.ID == "" {
		return step, at
	}
	if b.progress != nil && b.dough != nil && len(b.dough.Rises) > 0 {
		r := b.progress.Now.Ready()
		ready := b.mixed.Add(r.Likely)
		// A dough that is late waits for its baker; long after the range nobody is waiting any more.
		const over = time.Hour
		if ready.Before(b.now) && !b.now.After(b.mixed.Add(r.Late+over)) {
			ready = b.now
		}
		return shape, ready
	}
	if b.dough != nil && b.mixed.After(last) {
		return bulk, b.mixed
	}
	return step, at
}

func (b *bench) step(id string) (bakeday.StepData, bool) {
	for _, s := range b.sheet.Steps {
		if s.ID == id {
			return s, true
		}
	}
	return bakeday.StepData{}, false
}

// named finds the step that --done means.
func (b *bench) named(text string) (bakeday.StepData, error) {
	if text == "" {
		due, ok := b.due()
		if !ok {
			return due, badInput("maslin now: --done: no step was due yet; say which with --step")
		}
		return due, nil
	}
	step, err := b.day.StepNamed(text)
	if err != nil {
		return bakeday.StepData{}, badInput("maslin now: --step: %v", err)
	}
	found, _ := b.step(step.ID)
	return found, nil
}

// underWay lists what is going on; what needs hands and is over counts as done.
func (b *bench) underWay() []bakeday.StepData {
	var out []bakeday.StepData
	for _, s := range b.steps {
		if _, done := b.done[s.ID]; !done && !s.Start.After(b.now) && s.End.After(b.now) {
			out = append(out, s)
		}
	}
	return out
}

// due is the step that needed hands last.
func (b *bench) due() (due bakeday.StepData, ok bool) {
	for _, s := range b.steps {
		if _, done := b.done[s.ID]; !done && s.Hands && !s.Start.After(b.now) {
			due, ok = s, true
		}
	}
	return due, ok
}

// next is the step that needs hands now or next.
func (b *bench) next() (bakeday.StepData, bool) {
	for _, s := range b.steps {
		_, done := b.done[s.ID]
		switchOn := s.Kind == schedule.Preheat && s.Start.After(b.now) // the oven heats by itself, once it is on
		if !done && (s.Hands && s.End.After(b.now) || switchOn) {
			return s, true
		}
	}
	return bakeday.StepData{}, false
}
