// Package bench answers: how does the day go?
//
// A plan says what is to happen; at the bench something else happens. This package takes what a baker observes (a
// dough left the mixer so warm, it has risen so far, the core is at so much, the loaf weighs so much) and says what
// is due now, what to look for, how the ranges have changed, what of the plan changes, and what all bakes together
// teach. It is pure: where observations are kept, and what time it is, belongs to the caller.
//
// # From question to method
//
//	what can be observed                         Observation
//	is it possible at all                        Observation.Check
//	can it be true                               Observations.Doubts
//	which observations are of one dough          Observations.Bakes
//	what is due, and what do I look for          Under.At, KitchenUnder.At
//	which step is meant, which is due            DayNow.StepsDue, DayNow.Step
//	what is there to write down next             KitchenNow.Expected
//	what was read of a loaf or a dough, as typed ReadProbe, ReadRises
//	what does a log hold, how does it go on      LogReading.From, Observations.Lines, Observations.Behind
//	what was logged, and says that at once       NewEntries.Report, Observations.Tells
//	what do my bakes teach                       Observations.Learn
//	the bake as it is planned with that          Lessons.Apply
//	what changes in the next plan                Lessons.NextPlan
//	how well did the ranges hold, and by whom    Lessons.Scores
//	several people's bakes together              Observations.Pool
//
// # Standing assumptions
//
// An observation that names no bread is of the dough that was mixed last. What no dough explains is kept and teaches
// nothing. An observation that can hardly be true is questioned and moves no range before it is confirmed.
//
// # Limits
//
// The dough of a bake whose mixing was not observed is taken to be mixed as planned.
package bench
