// Package mixing answers: how warm must the water be, how much ice, what will the mixer do to
// the dough, does the batch fit the bowl, how is it kneaded, and why does it not clear the bowl?
//
// # From question to method
//
//	how warm must the water of this batch be?          Planned.Pour
//	the same by the trade's factor method              Factors.Water
//	the factors of a dough that is weighed             Factors.Weighed
//	it cannot be poured: what else?                    PlannedWater.Remedies, WaterResult.Remedies
//	what friction factor has my mixer?                 Measured.Friction
//	a factor for three temperatures, and I use four?   Friction.For, Friction.Rise, FrictionOf
//	I have no measured batch yet                       MixerKind.Prior
//	how much ice instead of water, or on top of it?    IceWater.Replace, IceWater.Add
//	the same with the heat of everything counted       Balance.WaterFor, .IceFor, .FlourFor, .Final
//	why do the two methods differ?                     Balance.Compare
//	how much work does a motor put into a dough?       Motor.Work
//	what do my logged batches say about my mixer?      Log.Learn
//	by how much did mixing warm this batch?            Logged.Warming
//	how warm will this batch come out, how surely?     Learned.Predict, Planned.Pour
//	how long may the mixer still run?                  Learned.MinutesLeft
//	will the dough fit, and how do I split it?         Mix.Fit
//	how is it kneaded, how long, what to look for?     Mix.Kneading
//	colder dough, more salt: how much longer?          DoughChange.Effect
//	it does not clear the bowl: what now?              Sticking.Advise, Mix.FlourFor
//	how hot must the water of a scald be?              Scald.Pour
//	what can hurt?                                     MixerKind.Cautions, ScaldWater.Cautions
//
// # From percentages to water temperature
//
// A formula (package dough) gives the flour, the water and the levain of a batch. Measure the
// temperatures of flour, room and levain, decide how warm the dough should be (24 to 26 °C for
// most wheat doughs, 27 to 29 °C with much rye), and take a friction factor from [MixerKind.Prior]; then
// [Factors.Water] says how warm the water must be. Measure the dough when the mixer stops and
// give the figures to [Measured.Friction]: from now on that factor is better than any table. After some
// batches [Log.Learn] knows what a minute at each speed does, and says how surely.
//
// # Two methods
//
// The factor method gives every factor the same weight whatever its mass, and counts the mixer, the
// bowl and the heat of wetting as one friction factor. It works because that factor is measured on the
// same dough. A friction factor is a temperature difference, counted once for every factor: three
// factors and a dough that warms by 4 °C make a friction factor of 12 °C. The number of factors
// includes the water.
//
// The heat balance weighs each part by its heat capacity. The factor method is the special case in
// which they are all equal. In a real dough the water weighs more than the flour, so that a degree
// of water moves the dough by more than the factor method says: by 0.4 in a field rule, 0.58 by
// calorimetry of flour and water alone, 0.33 by three factors. Near the conditions in which the
// friction factor was measured the two agree; far from them, as on the first hot day, believe the
// balance.
//
// # One account of the bowl
//
// A plan and what is learned from bakes must reckon alike, or a bake that came out as planned would change the
// next plan. [Planned], [Logged.Warming], [Log.Learn] and [Learned.Predict] all use the heat balance: the warming by
// mixing is what the dough has above the temperature at which its ingredients meet. [Planned.Pour] sets the factor
// method beside it, and says when the two differ by more than 1 °C of water.
//
// # Limits
//
// Specific heats are constants near 20 °C. Ice is taken to melt within the mixing time.
// Fermentation heat during mixing is left out. Figures on friction and capacity are the trade's;
// they disagree and are shown as ranges with their sources. The machine's manual is always right
// about the machine.
//
// # Defaults and their evidence
//
//	friction of hand, stand mixer, processor    trade figures, published (Prior.Figures)
//	friction of spiral, fork                    from memory
//	warming per minute                          two leads of the trade, common practice; spread: judgment
//	bowl 10 % ± 10 % of the dough's capacity    judgment
//	thermometer 0.7 °C                          judgment
//	specific heats                              handbooks; salt from memory
//	capacity of bowls of 7 to 65 L              operators' manuals, published
//	capacity of smaller bowls                   one maker's figure (its bowl's size from memory), judgment
//	capacity by hand                            common practice
//	kneading, spiral: wheat, spelt, some rye    King Arthur, IREKS; sweet doughs: IREKS
//	kneading, household: plain, stiff           La Muehla, makers' booklets; the rest from memory
//	kneading by hand, fork, rye, whole grain    from memory, good to a third
//	temperature and salt on kneading            Hlynka (1962), one flour
//	clears the bowl up to 72 to 75 % water      from memory
//	at most 3 % of flour against sticking       judgment
//	mash of 65 °C                               common practice
package mixing
