// Package bake answers: is it baked, how long still, how much will it lose, when may I cut it, and how does
// it keep?
//
// # What a probe can and cannot tell
//
// A probe tells how far the heat has come. Starch and protein set between 60 and 90 °C, so a core below its
// target is not bread yet, wherever the oven stands. While the core rises a probe also tells the future:
// the distance to the boiling point shrinks by nearly the same share every minute, so two readings a few
// minutes apart give the time that is left ([Probe.TimeLeft]).
//
// A probe cannot tell that a loaf has baked out. The crumb stays moist, and a moist crumb gets no hotter
// than water boils: the core runs up to that temperature and stands there while the loaf goes on drying,
// setting and browning. In one test kitchen a loaf passed 93 °C at half of an hour's bake, stood at 99 °C
// from 45 minutes on, and was pale with a gummy crumb when pulled then. So a loaf whose core is there is set,
// and done when its weight or its time says that it has baked out: a hearth loaf in about as long again as its core
// took to come within 7 °C of boiling, pan bread and soft breads 15 parts after the 85 of the arrival. Within 1.5 °C of
// boiling a reading says nothing, and this package answers so ([SaysNothing], [NearBoiling]).
//
// The boiling point falls by 1 °C for every 300 m. A target of 96 °C is never reached at 2,000 m, where
// water boils at 93.3 °C. Targets are therefore capped at the local boiling point less 2 °C ([Cap]); they
// are not lowered across the board ([Offset]), because the setting of starch and protein does not depend on
// the pressure. No tested table for bread at altitude exists; the rule is a judgment, and it says so.
//
// A probe cannot see the crust. Color is a criterion of its own: a strong fire browns a loaf that is not baked. What
// a bake does to the outside is computed by a moving front and the kinetics of browning, as a band
// ([OvenBake.BakeOut]). Pizza and flat breads have no middle for a probe and are done by time and color
// ([Style.ByCore]). A probe does not see its own place either: the coldest point lies a little below the middle, a
// tip near the crust reads high, and a loaf taken from its tin for some minutes reads lower than before. And it
// proves no safety.
//
// Before 55 °C (45 °C below boiling) the core still gains speed and readings promise too long a bake: they
// are left out. After the oven a core still gains about half of its distance to boiling ([TakenOut.CarryOver]),
// but no bake-out.
//
// No measured series of a bread's core was found in open data. The minutes-left model is checked on
// numerical loaves with a moving evaporation front (internal/xcheck/bakesim): the exponential is 5 to 60 %
// too long, most for early readings; the quickening form 2 to 11 %; the ranges of both hold the truth in at
// least 8 of 10 cases. The one published pair of points, 93.3 °C at 30 and 98.9 °C at 45 minutes, gives a
// time constant of 8.4 minutes.
//
// # Standing assumptions
//
// A loaf is what went in as one piece of dough; losses are percentages of the dough unless [OfBread] is
// named. Cores are true temperatures of the middle. The oven is hot enough to keep the surface of the crumb
// at the boiling point. Guide values (times, losses, volumes) are for ordinary wheat and rye breads; each
// says how firmly it is known, and a bake of your own replaces it ([OvenPiece], [LossLog.Learn]). Nothing
// here replaces local codes, the makers' manuals, or a food authority; cautions come as data with the
// results.
//
// # From question to method
//
//	what does done mean for this bread?             Style.Guide
//	… here, at this altitude or barometer?          Goal.Target, Site.BoilingPoint, Site.StandardAtmosphere
//	is it done?                                     LoafReading.Judge
//	how long still, from probe readings?            Probe.TimeLeft
//	… without a probe?                              OvenPiece.BakeTime, UnprobedLoaf.Arrival
//	how far does the core rise after the oven?      TakenOut.CarryOver
//	the bake from switching on to the last loaf     OvenLoad.Program
//	what does the bake do to the crust?             OvenBake.BakeOut, Program.BakeOut, DryCrust.Color
//	… in my oven, with my dough?                    OvenBake.LearnBrowning
//	what do I set my oven to?                       OvenSetting.Dial, GasMark, NearestMark
//	… and what does a batch do at that setting?     AskedOven.Answer
//	what did this loaf lose?                        WeighedLoaf.Loss
//	how much will it lose?                          Style.UsualLoss, Style.LossOfBread, LossLog.Learn
//	how much dough for this loaf, bread of a dough? PromisedLoaf.Scaling, ScaledPiece.Bread
//	what weight does the law want? (information)    PackedWeight.Limits, Solids.LeastLoss
//	… all that is known of a loss, at once          AskedLoss.Answer
//	when may I cut it?                              CoolingLoaf.Time, CoolingProbe.TimeLeft
//	how stale does it get, how do I keep it?        StoredLoaf.Staling
//	what can hurt                                   OvenCautions, FoodCautions
package bake
