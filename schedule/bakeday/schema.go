package bakeday

import _ "embed" // the schemas

// Embedding needs variables; they are constants in all but name.
var (
	//go:embed plan.schema.json
	planSchema string
	//go:embed bake.schema.json
	bakeSchema string
	//go:embed kitchenday.schema.json
	kitchenDaySchema string
)

// PlanSchema returns the JSON Schema (2020-12) of [PlanData], the plan's data form, as text.
func PlanSchema() string { return planSchema }

// BakeSchema returns the JSON Schema (2020-12) of [Bake], the input, as text.
func BakeSchema() string { return bakeSchema }

// KitchenDaySchema returns the JSON Schema (2020-12) of [KitchenDayData], as text.
func KitchenDaySchema() string { return kitchenDaySchema }
