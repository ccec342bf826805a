// Package mixing answers: how warm must the water be, how much ice, what will the mixer do to
// the dough, and does the batch fit the bowl?
//
// # From question to function
//
//	how warm must the water be?                      WaterTemperature
//	what friction factor has my mixer?               FrictionFromBatch
//	that factor is for three temperatures, I use four ConvertFriction, Rise, FrictionOf
//	I have no measured batch yet                     PriorFor
//	how much ice instead of water, or on top of it?  ReplaceWithIce, AddIce
//	will the dough fit the mixer?                    Fits
//
// # Standing assumptions
//
// The factor method is a rule of the trade, not a heat balance: it gives every factor the same
// weight whatever its mass. It works because the friction factor is measured on the same dough
// and takes up the difference. A friction factor is a temperature difference, counted once for
// every factor: three factors and a dough that warms by 4 °C make a friction factor of 12 °C.
// The number of factors includes the water.
package mixing
