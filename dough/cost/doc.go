// Package cost answers what a batch and a loaf cost, what a unit of a usable ingredient costs, and how much to buy.
//
// # Standing assumptions
//
// Money is an amount without a currency. Amounts are exact fractions until the last step and are rounded once, as
// named. Only materials and what the caller adds to them are counted: no wages, no rent.
//
// # Limits
//
// 1 to 200 ingredients, prices to 1,000,000,000 with at most 12 decimals, 100 t.
//
// # From question to method
//
//	what does a loaf cost                      CostSheet.Cost
//	what does a kilogram cost                  CostSheet.Cost, CostedLine.UnitCost
//	how much is usable, how much to buy        Trimming.UsableYield, Trimming.ToBuy
//	a price as text                            ParseMoney
//	how was this reached, how is it shown      the Working and Report methods of Costing
package cost
