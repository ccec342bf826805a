// Package bakeday answers: plan my whole bake, or the day of a kitchen with several breads.
//
// It asks every room of the library and puts the answers into one day: what to weigh, how warm
// the water, when the levain is ripe and the dough ready, how far it may rise before the cold,
// when each loaf bakes and what done means at this altitude, and a timetable that works backward
// from when the bread is wanted, around sleep and absence.
//
//	the whole bake, from a Bake to a Day         Bake.Plan
//	several breads of one kitchen in one day     Order.Plan, KitchenDay
//	what two breads both want                    KitchenDay.Wants
//	a bake from JSON, and its form               Read, BakeSchema
//	when it is wanted                            Wish, ParseWish
//	is the bake as written possible              Bake.Check
//	how much of everything, for any target       Bake.Batch, Bake.Formula
//	what is in the way when it cannot be         Day.Data (why_not), Day.Earlier, Day.Later
//	does it survive an early or a late dough     Day.Careful, Day.Room, Day.Robust
//	a step is late: what now                     Day.Replan, KitchenDay.Replan, Day.StepNamed
//	which amounts and temperatures fit best      Bake.Fit, Order.Fit
//	with what my own bakes have taught           Bake.Culture
//	two plans side by side, and by hand          Day.Beside, Bake.KneadedBy
//	the day as plain data, and as a calendar     Day.Data, PlanSchema, PlanData.CalendarEvents
//	what can hurt                                Day.Cautions
//	how each number was reached                  Day.Workings
//
// # Which plan is chosen
//
// Of the timetables that keep all rules, in this order: the one with room for the most of the range in which the
// dough may be early or late (all of it, three quarters, half, a quarter); among these, where the bake does not say
// how fresh its bread is to be, bread that is cool within six hours of when it is wanted, as long as there is room
// for a quarter of the range; folds as near to their interval as that allows; then the latest. A bake that sets
// fresh_within has said what it wants.
//
// # Amounts, moments and the oven
//
// Amounts are percentages of all flour, or weights: of the whole dough, or of one loaf where the bake says so. Where
// flours are weighed, a line is what goes into the bowl at mixing, and what is made beforehand comes beside it; in
// percent it is taken out of the lines. What there is of an ingredient, or of a levain that stands ripe, limits how
// many loaves there are.
//
// A line goes in at mixing, at a fold, at the lamination, at shaping, or on top before the oven; the steps say what
// and how much. A scaling weight is of the dough alone, without what is filled in at shaping or laid on top.
//
// What the bake leaves open of its oven takes the guide values of package bake, and says so. The lid, the steam, a
// second scoring and a turn of the loaves are steps at their minutes; they move with their round and are not planned
// apart from it. Pizza and flat breads are baked to order, one after the other, the last out when they are wanted.
//
// A bake has one levain, or yeast, or both, and any number of poolishes, bigas and other preferments with yeast,
// which are ripe by the clock of their yeast unless the baker says how long they stand; soakers and scalds stand as
// long as the baker says.
//
// # Several breads
//
// What a [Kitchen] has is shared: hands, mixers, oven, pots, places. The oven has one temperature at a time: between
// two breads it reheats, rises or falls; a bread on the falling heat of another waits for it. A deck holds one bread
// at a time. The room that is kept for early and late doughs is the same share for all breads. What a later start of
// one does to the others is for [KitchenDay.Replan]: it leaves the other breads where they are, if that is possible.
//
// # What is not planned
//
// A dough that is built up in two doughs on a stiff levain, as panettone: the first dough is no preferment, since it
// holds the levain and is judged by its rise. A dough rests in the cold once: before it is divided, or when it is
// shaped.
//
// # Standing assumptions
//
// Loading and unloading the oven, and a minute there for a lid or the steam, interrupt other work; which work that is,
// the notes of the day say. Pots that the bread before did not bake in heat for half an hour. Washing a mixer takes the
// mixer's time, and no hands of the plan's.
//
// All batches of one dough stand together in one covered tub; its clock starts when the last batch leaves the mixer.
// The room follows a smooth day and night. Loaves go from the refrigerator straight into the oven, the last rounds
// staying cold a little longer than the first, unless a warm-up is asked for. The baker stays in the kitchen while
// the oven is hot.
//
// # Speed
//
// Processor time on one core of a cloud machine that others load: one bread 4.8 ms, three breads of a Sunday 20 ms
// (BenchmarkPlan, BenchmarkThreeBreads).
package bakeday
