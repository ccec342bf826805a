package cli

import (
	"errors"
	"strings"

	"example.org/maslin/dough"
	"example.org/maslin/dough/cost"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/examples/internal/tomlbind"
	"example.org/maslin/internal/textpage"
	"github.com/spf13/cobra"
)

type costFlags struct {
	output
	in      *asked
	weights []string
	sheet   cost.CostSheet  // what the flags fill
	prices  []cost.CostLine // name, price and pack
	yields  []namedPercent
}

type namedPercent struct {
	name string
	of   quantity.Percent
}

func newCost(s System) *cobra.Command {
	cmd := &cobra.Command{
		Use:   "cost FILE",
		Short: "What the ingredients of a batch cost, and those of a loaf",
		Long: `cost adds up what goes into the loaves of a bake file, or into --weights, at the prices given: what a
pack costs and what it weighs. The flour and water of the levain are in it. Water without a price
is free; every other ingredient needs one. Amounts are exact until the last step and rounded
once. No currency is named: it is whatever the prices are in. Work, rent and the oven are in it
only as far as --other says.`,
		Example: `  maslin cost --weights '1 kg wheat, 700 g water, 20 g salt' --loaves 2 --price wheat=20/25kg --price salt=0.90/kg
  maslin cost examples/bakes/hall-kitchen.toml --price 'wheat bread flour=28.50/25kg' --price 'whole rye flour=1.60/kg' --price salt=0.90/kg --sold 5`,
	}
	f := &costFlags{in: ask(cmd)}
	in := f.in
	in.each(func(text string) error { f.weights = append(f.weights, text); return nil }, "weights", "LIST", "what goes in: '1 kg wheat, 700 g water, 20 g salt'", "Final", "Preferments", "Flours", "Liquids")
	in.each(func(text string) error {
		one, err := priceOf(text)
		if err == nil {
			f.prices = append(f.prices, one)
		}
		return err
	}, "price", "NAME=MONEY/PACK", "of an ingredient: wheat=20/25kg (may be repeated)", "Lines")
	in.each(func(text string) error {
		var y namedPercent
		name, err := named(text, &y.of, quantity.Tell("cli.want_name_and_usable_part_what", `a name and the usable part of what is bought, such as "walnuts=95 %%"`))
		if err == nil && y.of.IsZero() {
			err = &quantity.InputError{Got: "0 %", Want: quantity.Tell("cli.want_1_percent_to_100_percent", "1 %% to 100 %%"), Err: quantity.ErrOutOfRange}
		}
		if err == nil {
			y.name = name
			f.yields = append(f.yields, y)
		}
		return err
	}, "yield", "NAME=PERCENT", "usable part of what is bought (100 %; may be repeated)")
	in.each(func(text string) (err error) { f.sheet.Other, err = cost.ParseMoney(text); return err }, "other", "MONEY", "what else the batch costs: fuel, packing", "Other")
	in.number(&f.sheet.Loaves, "loaves", "the batch makes (the file's, or 1)", "Loaves")
	in.number(&f.sheet.Sold, "sold", "of them are sold (all)", "Sold")
	in.each(func(text string) error {
		for u, word := range unitWords {
			if text == word || text == word+"s" {
				f.sheet.Unit = unitsByWord[u]
				return nil
			}
		}
		return &quantity.InputError{Got: quantity.Excerpt(text), Want: either(unitWords), Err: quantity.ErrUnit}
	}, "unit", "WORD", "that prices are compared by: kilogram, gram, pound, ounce (kilogram; pound with --us)", "Unit")
	roundings := wordsOf(cost.MoneyExact, cost.MoneyUp, cost.MoneyHalfUp, cost.MoneyHalfEven)
	in.word(&f.sheet.Rounding, roundings[1:], "rounding", "of each amount, once (half up)", "Rounding")
	in.word(&f.sheet.UnitRounding, roundings, "unit-rounding", "of the price of a unit before it is used (exact)", "UnitRounding")
	in.number(&f.sheet.Places, "places", "decimals of the money, 0 to 6 (2)", "Places")
	f.register(cmd)
	cmd.Args = func(cmd *cobra.Command, args []string) error {
		if in.given("weights") && len(args) > 0 {
			return badInput("maslin cost: got %s and --weights, want one of them", quantity.Excerpt(textpage.Printable(args[0])))
		}
		if in.given("weights") {
			return nil
		}
		if len(args) == 0 {
			example, _, _ := strings.Cut(strings.TrimSpace(cmd.Example), "\n")
			return badInput("maslin cost: required: want a bake file, or --weights\nfor example: %s", example)
		}
		return oneFile(cmd, args)
	}
	cmd.ValidArgsFunction = bakeFiles
	cmd.RunE = func(_ *cobra.Command, args []string) error { return runCost(s, args, f) }
	return cmd
}

var (
	unitWords   = []string{"kilogram", "gram", "pound", "ounce"}
	unitsByWord = []quantity.MassUnit{quantity.Kilogram, quantity.Gram, quantity.Pound, quantity.Ounce}
)

// priceOf reads "wheat=20/25kg"; a unit alone, "0.90/kg", is a pack of one.
func priceOf(text string) (cost.CostLine, error) {
	var p cost.CostLine
	name, rest, found := strings.Cut(text, "=")
	pays, pack, slash := strings.Cut(rest, "/")
	p.Name = strings.TrimSpace(name)
	if !found || !slash || p.Name == "" {
		return p, &quantity.InputError{Got: quantity.Excerpt(text), Want: quantity.Tell("cli.want_name_what_pack_costs_and", `a name, what a pack costs and what it weighs, such as "wheat=20/25kg"`), Err: quantity.ErrUnit}
	}
	var err error
	if p.Price, err = cost.ParseMoney(pays); err != nil {
		return p, err
	}
	if pack = strings.TrimSpace(pack); pack != "" && strings.Trim(pack, "abcdefghijklmnopqrstuvwxyz") == "" {
		pack = "1 " + pack
	}
	if err = p.Pack.UnmarshalText([]byte(pack)); err == nil && p.Pack.Sign() <= 0 {
		err = &quantity.InputError{Got: quantity.Excerpt(pack), Want: quantity.Tell("cli.want_pack_above_0_g", "a pack above 0 g"), Err: quantity.ErrOutOfRange}
	}
	return p, err
}

// batch is the dough that is costed, and how many loaves it makes.
func (f *costFlags) batch(args []string) (b dough.Batch, name string, loaves int, err error) {
	in := f.in
	if in.given("weights") {
		w, words := weightsOf(f.weights)
		if words != nil {
			in.note("weights", words)
			return b, "", 1, nil
		}
		b, err = w.Batch()
		return b, "", 1, err
	}
	file, fault := readFormula(args[0])
	if fault != nil {
		var flags *exit
		if wrong := in.complain(nil); errors.As(wrong, &flags) {
			fault = badInput("%s\n%s", flags.text, fault)
		}
		return b, "", 1, fault
	}
	if b, err = file.bake.Batch(nil); err != nil {
		return b, "", 1, file.complain(err)
	}
	return b, textpage.Printable(file.bake.Name), b.Pieces(), nil
}

func runCost(s System, args []string, f *costFlags) error {
	if err := f.check(); err != nil {
		return err
	}
	in := f.in
	batch, name, loaves, err := f.batch(args)
	if err != nil {
		var e *exit
		if errors.As(err, &e) {
			return err
		}
		return in.complain(err)
	}
	sheet := f.sheet
	if in.given("loaves") {
		loaves = sheet.Loaves
		if loaves == 0 {
			in.fault("loaves", "0", quantity.Tell("cli.want_1_to_1000000", "1 to 1000000"), quantity.ErrOutOfRange)
			loaves = 1
		}
	}
	sheet.Loaves = loaves
	if in.given("sold") && sheet.Sold == 0 {
		in.fault("sold", "0", quantity.Tell("cli.want_1_to_loaves_made", "1 to the loaves made"), quantity.ErrOutOfRange)
	}
	if in.given("places") && sheet.Places <= 0 {
		if sheet.Places < 0 {
			in.fault("places", quantity.Tell("cli.got_negative_number", "a negative number"), quantity.Tell("cli.want_0_to_6", "0 to 6"), quantity.ErrOutOfRange)
		}
		sheet.Places = -1
	}
	if !in.given("unit") {
		if sheet.Unit = quantity.Kilogram; f.us {
			sheet.Unit = quantity.Pound
		}
	}
	if len(in.faults) == 0 || len(batch.Overall()) > 0 {
		sheet.Lines = f.lines(batch)
	}
	if wrong := in.complain(nil); wrong != nil {
		return wrong
	}
	sheet.Name = name
	c, err := sheet.Cost()
	if err != nil {
		return in.complain(err)
	}
	return s.tell(f.output, c, true)
}

// lines puts prices to the ingredients; every price and yield has to find its own.
func (f *costFlags) lines(b dough.Batch) []cost.CostLine {
	in := f.in
	var lines []cost.CostLine
	var names []string
	at := map[string]int{}
	for _, l := range b.Overall() {
		key := strings.ToLower(l.Name)
		if i, ok := at[key]; ok {
			lines[i].Used = lines[i].Used.Add(l.Mass)
			continue
		}
		at[key] = len(lines)
		names = append(names, l.Name)
		line := cost.CostLine{Name: l.Name, Used: l.Mass}
		if l.Kind == dough.KindWater || strings.EqualFold(l.Name, "water") {
			line.Pack = quantity.Kilograms(1) // free unless a price is given
		}
		lines = append(lines, line)
	}
	find := func(flag, name string) (int, bool) {
		i, ok := at[strings.ToLower(name)]
		if !ok && len(names) > 0 {
			want := quantity.Tell("cli.want_one", "one of %s", textpage.Printable(strings.Join(names, ", ")))
			near := tomlbind.Suggest(strings.ToLower(name), names)
			for _, n := range names {
				if near == "" && name != "" && strings.Contains(strings.ToLower(n), strings.ToLower(name)) {
					near = n
				}
			}
			if near != "" {
				want = quantity.Tell("cli.want_did_you_mean", "%v; did you mean %s?", want, textpage.Printable(near))
			}
			in.fault(flag, quantity.Excerpt(name), want, quantity.ErrInconsistent)
		}
		return i, ok
	}
	priced := map[int]bool{}
	for _, one := range f.prices {
		i, ok := find("price", one.Name)
		switch {
		case !ok:
		case priced[i]:
			in.fault("price", quantity.Tell("cli.got_second_price", "a second price of %s", quantity.Excerpt(one.Name)), quantity.Tell("cli.want_one_price_each_ingredient", "one price for each ingredient"), quantity.ErrInconsistent)
		default:
			priced[i] = true
			lines[i].Price, lines[i].Pack = one.Price, one.Pack
		}
	}
	for _, y := range f.yields {
		if i, ok := find("yield", y.name); ok {
			lines[i].Yield = y.of
		}
	}
	var missing []string
	for i, l := range lines {
		if l.Pack.IsZero() && !priced[i] {
			missing = append(missing, l.Name)
		}
	}
	if len(missing) > 0 {
		in.fault("price", quantity.Tell("cli.got_no_price", "no price of %s", textpage.Printable(strings.Join(missing, ", "))), quantity.Tell("cli.want_price_each_ingredient_20_25kg", `a price of each ingredient, such as "%s=20/25kg"`, textpage.Printable(missing[0])), quantity.ErrRequired)
	}
	return lines
}
