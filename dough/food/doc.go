// Package food answers how much water and protein foods bring, what a cup or spoon of them weighs, and how much of
// another form of yeast raises a dough alike.
//
// # Standing assumptions
//
// The shipped table is a selection from the USDA National Nutrient Database for Standard Reference, release 28. A cup
// is the US customary one of 236.588 mL. A volume is not a weight: how a cup was filled moves it by a quarter, so a
// weight from a volume is a range.
//
// # Limits
//
// Real foods differ from the table: flours by one to two points of water from season to season. The published yeast
// tables differ by a fifth and more; [YeastForm] shows the spread.
//
// # From question to method
//
//	water in food, from a table                Find, Search, SR28
//	milk in place of water                     Food.InPlaceOfWater
//	cups and spoons, with their spread         FoodVolume.Weight, FoodMeasures
//	… as people type them                      ReadVolume
//	by when a filling or soaker must be cold   ChilledFood.Limits
//	fresh, active dry and instant yeast        YeastSwap.Convert, DefaultYeast, PublishedYeast
//	how was this reached, how is it shown      the Working and Report methods of every answer
package food
