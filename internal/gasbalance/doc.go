// Package gasbalance is the clock of a dough: cells of levain and of commercial yeast that grow and crowd, the gas
// they make, and the gas a rise takes. One law serves bulk, proof, retard, preferments and levain feeds, in the
// cold, in the warm and at altitude.
//
// # The law
//
//	dX/dt = P·μ₂₇·g_l(T)·φ·X     dY/dt = P·μ₂₇·g_y(T)·φ·Y     φ = max(0, 1 − (X + Y)/X_m)
//	dG/dt = e^a·P·q₂₇·r_q(T)·(X + Y)                           ready when G = N(R, T, p)
//
// X and Y are cells of levain and yeast in % of the flour as instant dry yeast, G is CO₂ in liters (25 °C, 1 atm)
// per kilogram of flour, R the rise, p the air pressure in atm, T the temperature in °C, t the time in hours. P is
// what formula and kitchen do to every rate. Cells are a capacity to make gas, not counted cells: do not print them
// as numbers of yeast.
//
// # Standing assumptions
//
// Everything here is plain numbers, already checked: this package refuses nothing, rounds nothing and words
// nothing. No pH, acid, nitrogen, lag of yeast, sugar limit on gas in a dough (beyond about 8 L/kg) or dying cells
// (from 43 °C); retention is one curve for every flour; folding and shaping lose nothing.
//
// # From question to function
//
//	how fast is it at a temperature?                        Curve.Rate, Law.LevainGrowth
//	what do salt, sugar, water and whole grain do?          Formula.Solutes, Law.Pace, Law.Unusual
//	how strong is a ripe levain?                            Law.RipeLevain
//	how much gas takes a rise, what rise makes a gas?       Law.Need, Law.Rise; Law.Ripeness for a preferment
//	where does a history take a dough?                      Clock.Advance, AdvanceAlong, Follow, FollowWarm
//	what goes from a preferment into a dough?               State.HandOn, Mix
//	when is it ready, and how sure is that?                 Clock.Times, Clock.Likely, Belief.Spread
//	how far has it risen?                                   Clock.RiseBand
//	what does a reading of the dough say?                   Law.Observe
//	what do logged bakes say?                               Law.Row, Group.Learn, Group.LearnRobustly, Group.Taught
package gasbalance
