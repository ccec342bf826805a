package cli

import (
	"context"
	"fmt"
	"math"
	"strconv"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/textpage"
	"github.com/spf13/cobra"
)

// methodsCompared is the factor method and the heat balance for one dough, as data.
type methodsCompared struct {
	Dough       quantity.Temperature      `json:"dough"`
	ByFactors   quantity.Temperature      `json:"water_by_factors"`
	ByBalance   quantity.Temperature      `json:"water_by_balance"`
	Difference  quantity.TemperatureDelta `json:"difference"`
	Agreeing    quantity.TemperatureDelta `json:"agreeing_friction"`
	Sensitivity [2]float64                `json:"dough_per_degree_of_water"` // factors, balance
	Parts       []partCompared            `json:"parts"`
}

type partCompared struct {
	Name    string                    `json:"name"`
	Weight  float64                   `json:"weight_in_the_balance"`
	Counted int                       `json:"weight_in_the_factor_method"`
	Shift   quantity.TemperatureDelta `json:"shift"`
}

func newCompareWater(s System) *cobra.Command {
	var o output
	var now string
	cmd := &cobra.Command{
		Use:   "water FILE",
		Short: "The factor method and the heat balance for the water of one bake",
		Long: `water works out the water of one batch twice: by the trade's factor method, in which flour, room
and levain count as much as the water, and by a heat balance, in which each counts by its
mass and specific heat. Mixing warms the dough by the same in both.`,
		Example:           "  maslin compare water examples/bakes/hall-kitchen.toml",
		Args:              oneFile,
		ValidArgsFunction: bakeFiles,
		RunE: func(cmd *cobra.Command, args []string) error {
			return runCompareWater(cmd.Context(), s, o, args[0], now)
		},
	}
	o.register(cmd)
	cmd.Flags().StringVar(&now, "now", "", "plan as if it were this `TIME` in the bake's zone, such as \"2026-11-25 20:00\"")
	return cmd
}

func runCompareWater(ctx context.Context, s System, o output, name, now string) error {
	if err := o.check(); err != nil {
		return err
	}
	l, err := load(s, name, now)
	if err != nil {
		return err
	}
	day, err := l.bake.Plan(ctx, l.clock)
	if err != nil {
		return complain(name, located(l.file, err))
	}
	c, ok := day.Water.Comparison()
	if !ok {
		return badInput("maslin compare water: %s: the two methods cannot be compared here", textpage.Printable(name))
	}
	data := methodsCompared{
		Dough: day.Bake.Mixing.Temperature, ByFactors: c.ByFactors, ByBalance: c.ByBalance, Difference: c.Difference, Agreeing: c.AgreeingFriction,
		Sensitivity: [2]float64{c.SensitivityByFactors, c.SensitivityByBalance},
	}
	for _, p := range c.Parts {
		data.Parts = append(data.Parts, partCompared(p))
	}
	return s.show(o, answer{page: func(p *page, u units) { methodsPage(p, data, u) }, data: data, workings: []working.Working{c.Working()}})
}

func methodsPage(p *page, data methodsCompared, u units) {
	p.Para(0, "The water for a dough of "+u.temperature(data.Dough, 1)+", by two methods")
	p.Line("")
	number := func(v float64, places int) string { return strconv.FormatFloat(v, 'f', places, 64) }
	p.grid(2, [][]string{
		{"", "factors", "balance"},
		{"water", u.temperature(data.ByFactors, 1), u.temperature(data.ByBalance, 1)},
		{"dough per degree of water", number(data.Sensitivity[0], 2), number(data.Sensitivity[1], 2)},
	})
	p.heading("What each counts, the water as one, and what it moves")
	rows := [][]string{{"", "factors", "balance", "moves the water by"}}
	for _, part := range data.Parts {
		shift := part.Shift
		if math.Abs(shift.Celsius()) < 0.05 {
			shift = quantity.TemperatureDelta{} // not −0.0
		}
		rows = append(rows, []string{textpage.Printable(part.Name), fmt.Sprint(part.Counted), number(part.Weight, 2), u.delta(shift)})
	}
	p.grid(2, rows)
	p.Line("")
	p.Para(0, "With a friction factor of "+u.delta(data.Agreeing)+" the two agree at these temperatures, and only at these. Far from where a friction factor was measured, believe the balance.")
}
