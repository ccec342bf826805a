package cli

import (
	"fmt"
	"strings"

	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/ferment"
	"example.org/maslin/internal/textpage"
	"github.com/spf13/cobra"
)

func newTable(s System) *cobra.Command {
	cmd := &cobra.Command{
		Use:     "table",
		Short:   "Tables for teaching: bulk by temperature and leaven, water by flour and room",
		Example: "  maslin table bulk\n  maslin table water",
		Args:    subcommand,
		RunE:    func(cmd *cobra.Command, _ []string) error { return s.showHelp(cmd) },
	}
	cmd.AddCommand(newTableBulk(s), newTableWater(s))
	return cmd
}

// subcommand refuses a word that is no subcommand.
func subcommand(cmd *cobra.Command, args []string) error {
	if len(args) == 0 {
		return nil
	}
	var known []string
	for _, c := range cmd.Commands() {
		known = append(known, c.Name())
	}
	return badInput("maslin %s: no %s %s, want %s", cmd.Name(), cmd.Name(), quantity.Excerpt(args[0]), strings.Join(known, " or "))
}

func noFiles(cmd *cobra.Command, args []string) error {
	if len(args) > 0 {
		return badInput("maslin %s: takes flags only, got %s", strings.TrimPrefix(cmd.CommandPath(), "maslin "), quantity.Excerpt(args[0]))
	}
	return nil
}

// listFlag reads several quantities: "18C, 20C, 22C"; with decimal commas they are set apart by ";".
type listFlag[T any] struct {
	to    *[]T
	parse func(string) (T, error)
	given string
	kind  string
}

func (f *listFlag[T]) Set(text string) error {
	at := ","
	if strings.Contains(text, ";") {
		at = ";"
	}
	parts := strings.Split(text, at)
	if len(parts) > 20 {
		return &quantity.InputError{Got: fmt.Sprintf("%d values", len(parts)), Want: "20 at most", Err: quantity.ErrOutOfRange}
	}
	*f.to = nil
	for _, part := range parts {
		v, err := f.parse(strings.TrimSpace(part))
		if err != nil {
			return err
		}
		*f.to = append(*f.to, v)
	}
	f.given = text
	return nil
}

func (f *listFlag[T]) String() string { return f.given }
func (f *listFlag[T]) Type() string   { return f.kind }

func listed[T any](cmd *cobra.Command, to *[]T, parse func(string) (T, error), name, kind, usage string) {
	cmd.Flags().Var(&listFlag[T]{to: to, parse: parse, kind: kind}, name, usage)
}

func celsius(values ...float64) []quantity.Temperature {
	var out []quantity.Temperature
	for _, v := range values {
		out = append(out, quantity.Celsius(v))
	}
	return out
}

func percents(values ...float64) []quantity.Percent {
	var out []quantity.Percent
	for _, v := range values {
		out = append(out, quantity.NewPercent(v))
	}
	return out
}

type tableBulkFlags struct {
	output
	temperatures                      []quantity.Temperature
	amounts                           []quantity.Percent
	rise, salt, hydration, wholeGrain quantity.Percent
	yeast, curve                      string
}

func newTableBulk(s System) *cobra.Command {
	f := tableBulkFlags{rise: quantity.NewPercent(75), salt: quantity.NewPercent(2), hydration: quantity.NewPercent(70)}
	cmd := &cobra.Command{
		Use:   "bulk",
		Short: "How long bulk takes, by temperature and amount of leaven",
		Long: `bulk prints how long a dough held at one temperature takes to rise, for amounts of levain (flour
in it, of all flour) or of yeast (of the flour). Each time is the likely one; the line
below says how far doughs differ from it.`,
		Example: "  maslin table bulk\n  maslin table bulk --yeast instant --rise \"100 %\" --temperatures 20C,24C,28C",
		Args:    noFiles,
		RunE:    func(cmd *cobra.Command, _ []string) error { return runTableBulk(s, f) },
	}
	f.register(cmd)
	listed(cmd, &f.temperatures, quantity.ParseTemperature, "temperatures", "LIST", "of the dough (18C,20C,22C,24C,26C,28C)")
	listed(cmd, &f.amounts, quantity.ParsePercent, "amounts", "LIST", "of levain flour (5%,10%,15%,20%,30%), or of yeast (0.2%,0.5%,1%,1.5%,2%)")
	text(cmd.Flags(), &f.rise, "rise", "PERCENT", "wanted: 100 % is doubled (75 %)")
	text(cmd.Flags(), &f.salt, "salt", "PERCENT", "of the flour (2 %)")
	text(cmd.Flags(), &f.hydration, "hydration", "PERCENT", "of the flour (70 %)")
	text(cmd.Flags(), &f.wholeGrain, "whole-grain", "PERCENT", "of the flour (0 %)")
	cmd.Flags().StringVar(&f.yeast, "yeast", "", "with yeast of this `KIND` instead of a levain: instant, active or fresh")
	cmd.Flags().StringVar(&f.curve, "curve", "", "rate `CURVE`; maslin compare curves lists them")
	return cmd
}

func runTableBulk(s System, f tableBulkFlags) error {
	if err := f.check(); err != nil {
		return err
	}
	flags := map[string]string{
		"Bulk.Rise": "--rise", "Bulk.Hydration": "--hydration", "Bulk.Salt": "--salt", "Bulk.WholeGrain": "--whole-grain",
		"Bulk.Inoculation": "--amounts", "Bulk.Yeast.Amount": "--amounts", "Bulk.History": "--temperatures", "Temperatures": "--temperatures",
		"Amounts": "--amounts",
	}
	t := ferment.RiseTable{
		Bulk:         ferment.Bulk{Rise: f.rise, WholeGrain: f.wholeGrain, Hydration: f.hydration, Salt: f.salt, Law: ferment.GasBalance()},
		Temperatures: f.temperatures, Amounts: f.amounts,
	}
	amounts := percents(5, 10, 15, 20, 30)
	if f.yeast != "" {
		kinds := map[string]ferment.YeastKind{"instant": ferment.InstantYeast, "active": ferment.ActiveDryYeast, "fresh": ferment.FreshYeast}
		kind, ok := kinds[f.yeast]
		if !ok {
			return badInput("maslin table bulk: --yeast: got %s, want instant, active or fresh", quantity.Excerpt(f.yeast))
		}
		t.Bulk.Yeast.Kind = kind
		amounts = percents(0.2, 0.5, 1, 1.5, 2)
	}
	if f.curve != "" {
		c, err := curveNamed("table bulk", "--curve", f.curve)
		if err != nil {
			return err
		}
		t.Bulk.Law = ferment.GasBalance().With(ferment.Rivals{Levain: c})
		if t.Bulk.Yeast.Kind != ferment.NoYeast {
			t.Bulk.Law = ferment.GasBalance().With(ferment.Rivals{Yeast: c})
		}
	}
	if t.Temperatures == nil {
		t.Temperatures = celsius(18, 20, 22, 24, 26, 28)
	}
	if t.Amounts == nil {
		t.Amounts = amounts
	}
	times, err := t.Times()
	if err != nil {
		return complaints("table bulk", err, flags)
	}
	return s.tell(f.output, times, true)
}

// grid prints cells in columns as wide as they need, the first left and the others right; what is
// wider than the page is printed row by row.
func (p *page) grid(indent int, rows [][]string) {
	var widths []int
	for _, r := range rows {
		for i, cell := range r {
			if i == len(widths) {
				widths = append(widths, 0)
			}
			widths[i] = max(widths[i], textpage.Width(p.Plain(cell)))
		}
	}
	total := indent
	for _, w := range widths {
		total += w + 2
	}
	if total-2 > p.Columns() {
		p.gridAsList(indent, rows)
		return
	}
	for _, r := range rows {
		text := strings.Repeat(" ", indent)
		for i, cell := range r {
			pad := strings.Repeat(" ", widths[i]-textpage.Width(p.Plain(cell)))
			if i == 0 {
				text += cell + pad
			} else {
				text += "  " + pad + cell
			}
		}
		p.Line("%s", text)
	}
}

// gridAsList names the column before each cell.
func (p *page) gridAsList(indent int, rows [][]string) {
	for _, r := range rows[1:] {
		p.Para(indent, r[0]+":")
		for i, cell := range r[1:] {
			p.Para(indent+2, rows[0][i+1]+": "+cell)
		}
	}
}

// waterTable is a table of water temperatures, as data.
type waterTable struct {
	Dough   quantity.Temperature      `json:"dough"`
	Warming quantity.TemperatureDelta `json:"warming"`
	Guess   bool                      `json:"warming_is_a_guide_value"`
	Levain  *quantity.Temperature     `json:"levain,omitempty"`
	Flour   []quantity.Temperature    `json:"flour"`
	Room    []quantity.Temperature    `json:"room"`
	Water   [][]waterCell             `json:"water"` // by flour, then by room
}

type waterCell struct {
	Temperature quantity.Temperature `json:"temperature"`
	Feasible    bool                 `json:"feasible"`
	Instead     string               `json:"instead,omitempty"`
}

type tableWaterFlags struct {
	output
	dough, levain quantity.Temperature
	warming       quantity.TemperatureDelta
	mixer         mixing.MixerKind
	flour, room   []quantity.Temperature
}

func newTableWater(s System) *cobra.Command {
	f := tableWaterFlags{dough: quantity.Celsius(25), mixer: mixing.Hand, flour: celsius(10, 15, 18, 20, 22, 25, 28), room: celsius(15, 18, 20, 22, 25, 28)}
	cmd := &cobra.Command{
		Use:     "water",
		Short:   "How warm the water must be, by flour and room temperature",
		Example: "  maslin table water --dough 25C --warming 4dC\n  maslin table water --mixer planetary --levain 22C --us",
		Args:    noFiles,
		RunE:    func(cmd *cobra.Command, _ []string) error { return runTableWater(s, f) },
	}
	f.register(cmd)
	text(cmd.Flags(), &f.dough, "dough", "TEMPERATURE", "wanted when mixed (25C)")
	text(cmd.Flags(), &f.levain, "levain", "TEMPERATURE", "of the levain, when there is one")
	text(cmd.Flags(), &f.warming, "warming", "DIFFERENCE", "how much mixing warms the dough: 4dC, 7dF")
	text(cmd.Flags(), &f.mixer, "mixer", "KIND", "take the guide value for: hand, planetary, spiral, processor (hand)")
	listed(cmd, &f.flour, quantity.ParseTemperature, "flour", "LIST", "temperatures of the flour (10C,15C,18C,20C,22C,25C,28C)")
	listed(cmd, &f.room, quantity.ParseTemperature, "room", "LIST", "temperatures of the room (15C,18C,20C,22C,25C,28C)")
	return cmd
}

func runTableWater(s System, f tableWaterFlags) error {
	if err := f.check(); err != nil {
		return err
	}
	flags := map[string]string{"Target": "--dough", "Others[0].Temperature": "--flour", "Others[1].Temperature": "--room", "Others[2].Temperature": "--levain", "Friction": "--warming", "Kind": "--mixer"}
	t := waterTable{Dough: f.dough, Warming: f.warming, Flour: f.flour, Room: f.room}
	count := 3
	if !f.levain.IsZero() {
		t.Levain, count = &f.levain, 4
	}
	if f.warming.IsZero() {
		prior, err := f.mixer.Prior()
		if err != nil {
			return complaints("table water", err, flags)
		}
		if t.Warming, err = prior.Friction.Rise(); err != nil {
			return complaints("table water", err, flags)
		}
		t.Guess = true
	}
	friction, err := mixing.FrictionOf(t.Warming, count)
	if err != nil {
		return complaints("table water", err, flags)
	}
	var middle mixing.WaterResult
	for i, flour := range t.Flour {
		var row []waterCell
		for j, room := range t.Room {
			in := mixing.Factors{Target: f.dough, Friction: friction.Factor, Others: []mixing.Factor{{Kind: mixing.FlourFactor, Name: "flour", Temperature: flour}, {Kind: mixing.RoomFactor, Name: "room", Temperature: room}}}
			if t.Levain != nil {
				in.Others = append(in.Others, mixing.Factor{Kind: mixing.LevainFactor, Name: "levain", Temperature: f.levain})
			}
			w, err := in.Water()
			if err != nil {
				return complaints("table water", err, flags)
			}
			if i == len(t.Flour)/2 && j == len(t.Room)/2 {
				middle = w
			}
			cell := waterCell{Temperature: w.Temperature, Feasible: w.Feasible}
			if !w.Feasible && len(w.Remedies) > 0 {
				cell.Instead = w.Remedies[0].Text.String()
			}
			row = append(row, cell)
		}
		t.Water = append(t.Water, row)
	}
	return s.show(f.output, answer{
		page: func(p *page, u units) { waterTablePage(p, t, u) }, data: t, workings: []working.Working{middle.Working()},
	})
}

func waterTablePage(p *page, t waterTable, u units) {
	line := "How warm the water must be for a dough of " + u.temperature(t.Dough, 1) + ", which mixing warms by " + u.delta(t.Warming)
	if t.Guess {
		line += " (a guide value)"
	}
	if t.Levain != nil {
		line += ", with a levain of " + u.temperature(*t.Levain, 1)
	}
	p.Para(0, line)
	p.Para(0, "rows: flour; columns: room")
	p.Line("")
	head := []string{""}
	for _, r := range t.Room {
		head = append(head, u.temperature(r, 0)+" ")
	}
	rows := [][]string{head}
	marked := ""
	for i, flour := range t.Flour {
		row := []string{u.temperature(flour, 0)}
		for _, c := range t.Water[i] {
			cell := u.temperature(c.Temperature, 1)
			if c.Feasible {
				cell += " "
			} else {
				cell += "*"
				marked = "* cannot be poured as it is: maslin water says what to do instead"
			}
			row = append(row, cell)
		}
		rows = append(rows, row)
	}
	p.grid(2, rows)
	p.Line("")
	if marked != "" {
		p.Para(0, marked)
	}
	p.Para(0, "--working shows how the temperature in the middle was reached.")
}
