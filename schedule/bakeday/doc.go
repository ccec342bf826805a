// Package bakeday answers: plan my whole bake.
//
// It asks every room of the library and puts the answers into one day: what to weigh, how warm
// the water, when the levain is ripe and the dough ready, how far it may rise before the cold,
// when each loaf bakes and what done means at this altitude, and a timetable that works backward
// from when the bread is wanted, around sleep and absence.
//
//	the whole bake, from a Bake to a Day         Plan
//	when it is wanted                            Wish, ParseWish
//	is the bake as written possible              Bake.Check
//	how much of everything, for any target       Bake.Batch, Bake.Formula
//	what is in the way when it cannot be         Day.Timetable.Conflict, Day.Earlier, Day.Later
//	does it survive an early or a late dough     Day.Careful, Day.Robust
//	a step is late: what now                     Day.Replan
//	which amounts and temperatures fit best      Fit
//	with what my own bakes have taught           Bake.Culture
//	the day as plain data, and as a calendar     Day.Data, PlanData.CalendarEvents
//	what can hurt                                Day.Cautions
//	how each number was reached                  Day.Workings
//
// A bake has one levain, or yeast, or both; any number of poolishes, bigas and other preferments with yeast, of soakers and
// scalds stand as long as the baker says. What the yeast grows in a preferment is not counted.
//
// # Standing assumptions
//
// All batches of one dough stand together in one covered tub; its clock starts when the last batch leaves
// the mixer. The room follows a smooth day and night. Loaves go from the refrigerator
// straight into the oven, the last rounds staying cold a little longer than the first, unless a warm-up is asked for. The
// baker stays in the kitchen while the oven is hot.
package bakeday
