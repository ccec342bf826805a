// Package ferment answers: how fast does a dough ferment, when is bulk done, how far may it rise before shaping, what
// happens in the refrigerator, when is a levain or a poolish ripe, and what do the bakes so far say about this kitchen?
//
// Every answer about time is a range with the probability it claims (80 %), and every range says what it rests on. How
// it works, with the formulas and a table of what changes when a number is wrong, is told in CLOCK.md beside this file.
//
// # The law
//
// Cells of levain and of commercial yeast, counted by the gas they make, grow and crowd each other; they make gas by a
// curve of its own; a rise takes gas in its bubbles, at the pressure of the place, and in the dough's water:
//
//	dX/dt = P·μ₂₇·g(T)·(1 − X/X_m)·X     dG/dt = K·P·q₂₇·r(T)·X     ready when G = N(R, T, p)
//
// One law ([GasBalance]) serves bulk, proof, retard, warm-up, levain and yeast together, and every preferment: a
// poolish or a levain ripens by the same equations and hands its cells on. Salt and sugar act through what they press
// with in the dough's water. An older, simpler law is kept as [DoseLaw] for comparison and teaching.
//
// # Standing assumptions
//
// The dough follows the history given; the heat it makes itself counts only when asked for ([Bulk.OwnHeat]). A levain
// in Inoculation is used ripe; one from the refrigerator starts with e^(−0.35) of its cells. Rises add up through
// shaping as if nothing were lost. A rise beyond 300 % is reported as that or more.
//
// What is assumed of an unknown culture is judged, not measured: see the spreads in CLOCK.md. Simulated kitchens drawn
// from these beliefs lie inside the ranges in four of five cases; no claim is made of real bakes but the score of one's
// own ([Culture.Score]).
//
// # Limits
//
// No pH is promised. No acid, nitrogen or lag of dry yeast; no dying cells, so nothing above 43 °C; below −1 °C a
// dough freezes. Fat, egg, milk and malt are not in the law but for their water. Stiff unkneaded bigas and sponges
// ripened for acid take longer than their gas says. Sugar beyond 25 % is extrapolated.
//
// # From question to method
//
//	when has the dough risen that far?                 Bulk.Estimate, Estimate.Ready
//	how far has it risen at a time; the curve          Estimate.RiseAt, Estimate.RiseCurve
//	the dough has risen this far: when now?            Estimate.Update, Heights.Rise
//	a probe is in the dough: when now?                 Bulk.Follow, Followed.Read, Followed.Ready
//	how far may it rise before shaping, and when?      Proof.RiseBeforeShaping
//	how much levain or yeast to be ready in time?      Bulk.AmountFor
//	how warm a dough, room or box?                     Bulk.StartFor, Bulk.RoomFor, Bulk.HeldFor; all of them Bulk.WaysTo
//	when is the levain or poolish ripe, how long good? Ripening.Ripe
//	how much seed or yeast for it to be ripe in time?  Ripening.SeedFor, Ripening.YeastFor
//	what share of flour comes with seed or levain?     FeedRatio.SeedShare, LevainPercent.Prefermented
//	what do my logged bakes say?                       Learning.Learn, Lesson.Reviews
//	what does a class know; where does one start?      Culture.Merge, Culture.Of, Culture.Members
//	how have the ranges held?                          Culture.Score, Culture.Pooled, Held.Share
//	how long by temperature and amount?                RiseTable.Times
//	mild or sharp?                                     Estimate.Flavor
//	what can hurt?                                     Estimate.Cautions, Ripeness.Cautions, ShapeTarget.Cautions
//	what temperature has the dough?                    Constant, Readings.History, ParseReadings, Relaxing.History, Piece.History, Join, FromKnots
//	how warm is the room by then?                      Room.At
//	which rate curve, and how do they compare?         Curves, CurveTable.Rates, Curve.Dose
//	the older law beside this one                      DoseLaw.Ready
//	growth with a lag and a plateau                    Baranyi, Gompertz
//	rates of one's own                                 Cardinal.Curve, SquareRoot.Curve, ConstantQ10.Curve, NewCurve; in the law: Law.With
package ferment
