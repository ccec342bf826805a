package report_test

import (
	"encoding/json"
	"fmt"

	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
)

// A report is told in its reader's units.
func ExampleReport_Text() {
	r := report.Report{
		Headline: working.Tell("example.water", "water at %.1f", quantity.Celsius(18.8)),
		Sections: []report.Section{
			{
				Key:   "why",
				Title: working.Tell("example.why", "So that the dough leaves the mixer at %.0f", quantity.Celsius(26)),
				Blocks: []report.Block{
					report.Rows{
						{
							Label: working.Tell("example.flour", "flour"),
							Value: report.Rounded(quantity.Celsius(21.8), 1),
						},
						{
							Label: working.Tell("example.warming", "the mixer warms by"),
							Value: report.Rounded(quantity.DeltaCelsius(5), 0),
						},
					},
				},
			},
		},
	}
	fmt.Print(r.Text(report.Options{Units: working.USCustomary}))
	// Output:
	// water at 66 °F
	//
	// So that the dough leaves the mixer at 79 °F
	//   flour               71 °F
	//   the mixer warms by  9 Δ°F
}

// The same table for a spreadsheet.
func ExampleGrid_CSV() {
	t := report.Grid{
		Key: "weigh", Columns: []report.GridColumn{{Key: "item"}, {Key: "mass", Right: true}},
		Rows: [][]report.Cell{{report.Of("water"), report.Of(quantity.Grams(1813))}},
	}
	fmt.Print(string(t.CSV()))
	// Output:
	// item,mass_g
	// water,1813
}

// An application's own catalog: what it has is told in its language, and the rest in English.
func ExampleOptions() {
	var german working.Language
	err := json.Unmarshal([]byte(`{
		"tag": "de", "decimal": ",",
		"sentences": {"mixing.water_at": "%v mit %.1f", "mixing.title_factors": "Gerechnet mit"},
		"words": {"mixing.FactorKind/flour": "Mehl", "working.Name/room": "Raum", "mixing.Substance/water": "Wasser"}
	}`), &german)
	if err != nil {
		fmt.Println(err)
		return
	}
	water, err := mixing.Factors{
		Target: quantity.Celsius(26),
		Others: []mixing.Factor{
			{Kind: mixing.FlourFactor, Temperature: quantity.Celsius(21)},
			{Kind: mixing.RoomFactor, Name: "room", Temperature: quantity.Celsius(23)},
		},
		Friction: quantity.DeltaCelsius(12),
	}.Water()
	if err != nil {
		fmt.Println(working.Problem(err).Text(working.Reader{Language: german}))
		return
	}
	r := water.Report()
	r.Cautions, r.RestsOn = nil, nil
	fmt.Print(r.Text(report.Options{Language: german}))
	// Output:
	// Wasser mit 22,0 °C
	//
	// Gerechnet mit
	//   Mehl               21,0 °C
	//   Raum               23,0 °C
	//   friction factor    12,0 Δ°C; for 3 factors
	//   warming by mixing  4,0 Δ°C
	//   dough wanted       26,0 °C
}
