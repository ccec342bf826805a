// Package flour answers what flours do: in which shares to blend them, how much gluten to add, what protein, ash and
// absorption are at another moisture, and whether a flour is strong enough for a hydration.
//
// # Standing assumptions
//
// Protein, ash and absorption are percentages of the flour's weight. All flours of one question stand on the same
// moisture basis: as measured, 14 % in the US and in the standards, or dry. Protein is not quality: gluten gives
// strength that a weak or damaged flour lacks only in part.
//
// # Limits
//
// 2 to 50 flours in a blend, moistures 0 to 60 %. The published lists of flour strength disagree, none is a standard,
// and only one of them names hydrations.
//
// # From question to method
//
//	flours to a protein                        FlourBlend.Shares
//	the protein of a blend                     FlourBlend.Protein
//	vital gluten, added or replacing flour     GlutenBoost.Doses
//	protein, ash, absorption at a moisture     FlourBasis.Protein, FlourBasis.Absorption
//	a European type number                     FlourAsh.Type
//	is this flour too weak for the water       FlourStrength.Judge
//	how was this reached, how is it shown      the Working and Report methods of every answer
package flour
