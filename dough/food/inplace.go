package food

import "example.org/maslin/dough/quantity"

// InPlaceOfWater returns how much of a liquid holds so much water.
//
//	m = water ÷ (content ÷ 100)
//
// content is the liquid's water content: 88.13 % for whole milk, so that 150 g of water become
// 170.2 g of milk. Rounded half to even to the microgram. Errors: ErrOutOfRange for a content
// outside 1 % to 100 % or a negative weight. Source: algebra; contents from USDA National Nutrient
// Database SR28.
func InPlaceOfWater(water quantity.Mass, content quantity.Percent) (quantity.Mass, error) {
	var p quantity.Problems
	quantity.Check(&p, "water", water, quantity.Mass{}, mostDough)
	quantity.Check(&p, "content", content, leastWater, wholeFlour)
	if err := p.Err(); err != nil {
		return quantity.Mass{}, err
	}
	return water.Over(content), nil
}
