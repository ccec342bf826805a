package cli

import "example.org/maslin/dough/quantity"

func tenth(t quantity.Temperature) quantity.Temperature {
	r, err := quantity.ParseTemperature(t.Text(quantity.CelsiusScale, 1))
	if err != nil {
		return t
	}
	return r
}

func tenthPercent(p quantity.Percent) quantity.Percent {
	r, err := quantity.ParsePercent(p.Text(1))
	if err != nil {
		return p
	}
	return r
}
