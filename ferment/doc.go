// Package ferment answers: how fast does a dough ferment, when is bulk done, how far may it rise before shaping, what
// happens in the refrigerator, when is a levain ripe, and what do the bakes so far say about this kitchen?
//
// Every answer about time is a range with the probability it claims (80 %), and every range says what it rests on. How
// it works, with the formulas, is told in CLOCK.md beside this file.
//
// # The model
//
// A culture grows at a rate μ(T) that a [Curve] gives. Over a temperature [History] it receives the dose M = ∫ μ dt,
// grows
// by the factor e^M, and the dough rises by
//
//	R = f·s/K·(e^(p·M) − 1)
//
// where f is the share of the flour that is prefermented, s what the salt leaves of the gas, K the amplitude and p the
// pace of this culture. For a small levain the time goes as ln(1/f), for a large dose of commercial yeast as 1/f: one
// formula serves both. In a dough with a levain and yeast together each grows at its own
// rate, and the gas of both is added up.
//
// # Standing assumptions
//
// The dough follows the history given; heat made by the ferment is ignored. Carbon dioxide dissolves before anything
// rises (about a
// quarter of what a doubling needs): that is within the amplitude. A levain is taken to be used ripe; one from the
// refrigerator starts
// with a lag. Rises add up through shaping as if nothing were lost. There is no plateau: a rise beyond 300 % is
// reported as that or more.
//
// What is assumed of an unknown culture, all judgments: K is 1 with a standard deviation of 0.35 in its log; the log
// of the rate has one of
// 0.30, of which 0.12 differ from bake to bake, 0.10 belong to the way of kneading and 0.25 to the culture; the
// temperature sensitivity
// differs from the curve's by 0.03 per °C; above 27 °C (33 °C for commercial yeast) and below 18 °C the range is
// wider, and below the
// coldest bake learned from. Ten thousand simulated
// kitchens drawn from these find 78 to 81 % of doughs inside the range, before any bake is logged and after any number.
//
// # Limits
//
// No pH is promised. Sugar, fat, milk and malt are not in the model: log bakes with such doughs apart. The Gänzle
// constants are from memory,
// checked against everything published about them. Temperatures are in °C inside, between −25 and 60.
//
// # From question to function
//
//	when has the dough risen that far?                 Bulk.Estimate, Estimate.Ready
//	how far has it risen at a time; the curve          Estimate.RiseAt, Estimate.Curve
//	the dough has risen this far: when now?            Estimate.Update, RiseFromHeights
//	how far may it rise before shaping?                Proof.RiseBeforeShaping, Proof.ShapeAt
//	how much levain or yeast to be ready in time?      Bulk.AmountFor
//	how warm a dough, room or box?                     Bulk.StartFor, Bulk.RoomFor, Bulk.HeldFor
//	when is the levain ripe, how long usable?          Levain.Ripe, SeedShare
//	what do my logged bakes say?                       Learning.Learn, Lesson.Review
//	mild or sharp?                                     Estimate.Flavor
//	what can hurt?                                     Estimate.Cautions, Ripeness.Cautions
//	what temperature has the dough?                    Constant, Readings, ParseReadings, Relaxing, Cooling, Join
//	how much growth does a history give?               Dose
//	which curve, and how do they compare?              Curves, Applicable, CompareCurves, Bulk.TimeTable
//	levain in percent of flour, salt in the water      Prefermented, SaltInWater
//	growth with a lag and a plateau                    Baranyi, Gompertz
//	rates of one's own                                 Cardinal, SquareRoot, ConstantQ10, or any Curve
package ferment
