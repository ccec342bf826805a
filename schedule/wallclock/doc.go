// Package wallclock answers: which instant does this clock time mean in this place, and when,
// on the real time axis, is the baker asleep or away?
//
// People write wall-clock times: lunch at 12:30, asleep from 22:30 to 06:30. Dough counts
// elapsed time. Twice a year in many places the two disagree: a night is an hour short or an
// hour long, one clock time is skipped (a gap) and another is shown twice (a fold). This
// package turns the first into the second with its own resolver, by a rule that is named and
// that the caller chooses; it never asks time.Date about a time in a gap or a fold, whose
// answer there is not specified.
//
//	What is this day, clock time, moment?             ParseDate, ParseClock, ParseMoment
//	Which instant is it in this zone?                 Resolve
//	Was it skipped or shown twice?                    Resolution.Reading, Resolution.Doubt
//	What does the clock show at this instant?         MomentOf, DateOf, ClockOf
//	"asleep 22:30 to 06:30 every day" as a value      Habit, ParseHabit
//	When is that, over these days?                    Habit.Over, Expand
//	One list without overlaps; only inside a span     Merge, Clip
//	What is left free?                                Free
//	How long is it altogether, in elapsed time?       Total
//
// # Standing assumptions
//
//   - The calendar is the Gregorian one, for years 1 to 9999, and clock times are whole minutes.
//   - The zone is a *time.Location which the caller loads; its rules are as good as the caller's
//     time zone data. The package never reads the clock or the zone of the machine.
//   - Spans are instants in UTC, from From up to but not including To.
//
// # The rule for gaps and folds
//
// RFC 5545 (iCalendar, 2009), section 3.3.5: a time that is skipped is read with the offset
// from before the gap, so 02:30 on the morning on which the clock jumps from 02:00 to 03:00 is
// shown as 03:30; a time that is shown twice means the first. This is the zero [Policy]. The
// others are Earlier, Later and Refuse.
package wallclock
