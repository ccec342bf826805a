// Package dough answers: how much of everything for this many loaves, what is the true
// hydration, how is the levain built, and what has a formula become when something was
// weighed wrongly?
//
// # Standing assumptions
//
// Percentages are baker's percentages: of the weight of all flour, that inside levains and other
// preferments included. A [Formula] is the overall formula; what is made beforehand is taken out of
// its lines, never added to them. Hydration counts the liquids that are water and no other; the
// flour's own moisture never counts. What an ingredient is (grain, milk, allergens) is stated by its
// [Kind] and never guessed from its name.
//
// Masses are exact to the microgram. Parts always add up to the whole: the overall formula, the
// builds and the final dough are three views of one [Batch] and reconcile exactly. Rounding to what
// a scale can weigh is a separate last step, [Batch.Weigh], which shows its residue.
//
// # Limits
//
// 1 g to 100 t of dough; at most 200 ingredients, 50 preferments and soakers, 8 levels of nesting.
// A scald's evaporation, the water that a soaker binds and the weight a levain loses as gas are not
// modeled. Fermentation times are in package ferment, water temperature and mixers in package
// dough/mixing, flours, foods, vessels and costs in the packages below this one. Values are immutable and safe for
// concurrent use.
//
// # From question to method
//
//	how much of everything, for …               Formula.For
//	  … so many loaves of a baked weight           Baked
//	  … so many pieces of a scaling weight         Pieces
//	  … so much dough or flour                     ByDough, ByFlour
//	  … the levain at hand                         ByLevain
//	  … what there is of several ingredients       AtHand, Batch.Limiting
//	  … a vessel that is full when risen           ByVolume
//	what is wrong with this formula             Formula.Check
//	the overall formula, with weights           Batch.Overall
//	what to make beforehand                     Batch.Builds, Batch.Build
//	what to weigh at mixing                     Batch.FinalDough
//	in grams my scales can weigh                Batch.Weigh, Scales, Weighing.TooSmall
//	flour rounded up, as the trade does         Batch.FlourUp
//	how many pieces does this make              Batch.Divide
//	hydration                                   Batch.Hydration, Batch.FinalHydration
//	  … with the water in milk, eggs, butter       Batch.EffectiveHydration, Part.Water
//	  … as a German dough yield                    Batch.DoughYield, DoughYield.Net, DoughYield.Gross
//	prefermented flour, salt, rye, whole grain  Batch.Prefermented, SaltShare, SaltInWater, Rye, WholeGrain, Share
//	what does "20 % levain" mean                PrintedLevain.Flour, Batch.LevainPercent
//	how is the seed counted                     Seed, SeedAccount
//	the usual hydration of a poolish, a biga    PrefermentKind.UsualHydration
//	from the starter at hand to a ripe levain   LevainBuild.Plan, LevainPlan.Weigh
//	what does this feeding make                 Feeding
//	one levain for several doughs               OneLevain.Plan
//	which formula is this                       Weights.Batch, Batch.Formula
//	I poured too much water                     Mishap.Repair
//	what can hurt                               Batch.Cautions, Batch.Allergens, Batch.Unstated
//	how is it shown, how was it reached         the Report and Working methods of every answer
//	keep it, send it                            JSON of every input and answer; a Batch comes back from its order or weights
//
// # From percentages to water temperature
//
// A walk for a student, with the bread of a village hall: six loaves of 780 g, four parts wheat and one
// part rye. The same numbers are in the examples below.
//
// 1. Flour is 100 %. The flours are 80 % bread flour and 20 % whole rye; everything else is
// weighed against them: 72 % water, 2 % salt. The sum is 174 %. Nothing here is a weight yet, which is
// why a formula scales.
//
// 2. From loaf to dough. A loaf loses weight in the oven, here 12 % of what goes in. So a piece weighs
// 780 ÷ (1 − 0.12) = 886.4 g, and six of them 5318.2 g. Bake loss is a share of the piece. What sticks to
// bowl and bench is another loss, a share of the dough that is mixed; [Baked] keeps the two apart.
//
// 3. From dough to flour. 174 % is 5318.2 g, so 100 % is 5318.2 ÷ 1.74 = 3056.4 g; the water is 72 % of
// that, 2200.6 g. The lines are rounded so that they add up to the dough ([quantity.Apportion]).
//
// 4. Take the levain out. 15 % of the flour ferments beforehand, as rye with as much water: 458.5 g
// of each. It was in the formula all along, so what is left to weigh at mixing is 152.8 g of rye and
// 1742.2 g of water. The dough in the bowl feels as wet as 67 % until the levain is in; the dough is
// one of 72 %. "20 % levain" in a book may mean four things; [PrintedLevain] translates.
//
// 5. Build the levain. [LevainBuild] starts from the starter there is: with 20 % of the new flour as
// starter it ripens overnight, with 100 % before noon (package ferment says when, and how surely). Keep
// some back before mixing.
//
// 6. Round for the scale. [Batch.Weigh] rounds flour and water to 1 g and salt to 0.1 g, so that each
// list still adds up, and says what rounding left out. Round once, at the end, and never put a rounded
// weight back into the formula.
//
// 7. Choose the dough's temperature, say 24.5 °C. Flour, levain and room have theirs; the mixer adds
// some, its friction, which is measured once: the dough's temperature after mixing minus what it
// would have been. The water is the one thing whose temperature is free. It has to make up what the others
// lack: target + Σ (target − each of the others) − friction. With flour at 21 °C, levain at 23 °C, the room
// at 22 °C and a friction of 12 Δ°C the water is 24.5 + 3.5 + 1.5 + 2.5 − 12 = 20 °C.
//
// 8. That rule treats flour, levain and room as if they weighed as much as the water. Package
// dough/mixing has it as the factor method, and beside it the heat balance that weighs each by its mass and
// specific heat (this is where the 1742.2 g of water of step 4 and not the 2200.6 g of step 3 belong,
// because the levain's water is already at the levain's temperature), and turns water that would have to be
// colder than the tap into ice.
package dough
