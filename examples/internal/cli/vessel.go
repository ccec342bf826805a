package cli

import (
	"slices"
	"strconv"
	"strings"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/vessel"
	"example.org/maslin/examples/internal/tomlbind"
	"example.org/maslin/internal/textpage"
	"github.com/spf13/cobra"
)

// The vessels, and the flags that go with each.
var vesselFlagsOf = map[string][]string{
	"tin":    {"dough", "volume", "size", "base", "loaf", "own-volume", "own-dough"},
	"basket": {"dough", "volume", "diameter", "length", "width", "height"},
	"bowl":   {"dough", "volume", "diameter", "length", "width", "height"},
	"piece":  {"bread", "dough", "diameter", "length", "width"},
	"tub":    {"dough", "diameter", "width", "depth", "height", "start", "rise", "density"},
	"jar":    {"diameter", "height", "rise", "density"},
}

var vesselWords = []string{"tin", "basket", "bowl", "piece", "tub", "jar"}

type vesselFlags struct {
	output
	in                                    *asked
	dough                                 quantity.Mass
	volume                                quantity.Volume
	size, base                            []quantity.Length
	diameter, width, depth, height, start quantity.Length
	length                                quantity.Length
	rises                                 []quantity.Percent
	density                               float64
	loaf                                  vessel.TinLoaf
	bread                                 vessel.SizedBread
	own                                   vessel.OwnTin
}

func newVessel(s System) *cobra.Command {
	cmd := &cobra.Command{
		Use:   "vessel tin|basket|bowl|piece|tub|jar",
		Short: "How much dough for a tin, basket, tray or pizza, and where to mark the rise on a tub",
		Long: `vessel says how much dough goes into a tin, a proofing basket or a lined bowl, or how large a one a
dough needs; how much goes into a tray of focaccia, a pizza or a baguette of a size, or how large they get;
where to mark a straight-sided tub so that the rise can be read; and how much dough
to put into a small sample jar, with its marks. Sizes are inside sizes. What a tin of your own takes
says what another takes of the same bread.`,
		Example: `  maslin vessel tin --size 24x11x7cm --loaf open-white
  maslin vessel tin --volume 2.4L --own-volume 1.44L --own-dough 450g
  maslin vessel basket --dough 850g
  maslin vessel basket --diameter 22cm --height 8.5cm
  maslin vessel piece --bread tall-focaccia --length 40cm --width 30cm
  maslin vessel piece --bread neapolitan-pizza --dough 250g
  maslin vessel tub --diameter 26cm --start 6cm --rise 75%
  maslin vessel jar --diameter 6cm --height 12cm`,
		ValidArgs: vesselWords,
	}
	f := &vesselFlags{in: ask(cmd)}
	in := f.in
	in.value(&f.dough, "dough", "MASS", "of one loaf or piece, or in the tub", "Dough", "Mass")
	in.value(&f.volume, "volume", "VOLUME", "of the tin, basket or bowl, filled with water to the rim", "Volume")
	in.each(func(text string) (err error) { f.size, err = sides(text, 3); return err }, "size", "LxWxH", "of a tin with flat sides, such as 24x11x7cm", "Box.Length", "Box.Width", "Box.Height")
	in.each(func(text string) (err error) { f.base, err = sides(text, 2); return err }, "base", "LxW", "of its floor, where the tin tapers (as the rim)", "Box.BaseLength", "Box.BaseWidth")
	in.word(&f.loaf, wordsOf(vessel.OpenTinWhite, vessel.WholesaleWhite, vessel.LiddedTin, vessel.WholeGrainTin, vessel.RyeTin, vessel.EnrichedTin, vessel.ShallowTinWhite, vessel.SourdoughTin, vessel.HomeMilledTin, vessel.GlutenFreeTin), "loaf", "what bakes in the tin (open white)", "loaf")
	in.word(&f.bread, sizedWords(), "bread", "that goes by its size (pan pizza)", "Bread")
	in.value(&f.own.Volume, "own-volume", "VOLUME", "of a tin of yours that you know, filled with water to the rim", "Own.Volume")
	in.value(&f.own.Dough, "own-dough", "MASS", "that it takes of this bread", "Own.Dough")
	in.value(&f.diameter, "diameter", "LENGTH", "of a round tub, jar, basket, tray or pizza", "Diameter")
	in.value(&f.length, "length", "LENGTH", "of a tray, an oval basket or a baguette", "Length")
	in.value(&f.width, "width", "LENGTH", "of a square tub, a tray or an oval basket", "Width")
	in.value(&f.depth, "depth", "LENGTH", "of a square tub", "Depth")
	in.value(&f.height, "height", "LENGTH", "of the tub or jar; how deep the basket is", "Height", "Depth")
	in.value(&f.start, "start", "LENGTH", "of the dough when it was put in, pressed level (by --dough and its density)", "Start")
	in.each(func(text string) error {
		r, err := quantity.ParsePercent(text)
		f.rises = append(f.rises, r)
		return err
	}, "rise", "PERCENT", "to mark, may be repeated (tub: 30 %, 50 %, 75 % and 100 %); the most that a jar is to hold (100 %)", "Rises", "Rise")
	in.each(func(text string) (err error) {
		f.density, err = strconv.ParseFloat(strings.TrimSpace(text), 64)
		if err != nil {
			return &quantity.InputError{Got: quantity.Excerpt(text), Want: quantity.Tell("cli.want_number_kilograms_liter_1_1", "a number of kilograms in a liter, such as 1.1"), Err: quantity.ErrUnit}
		}
		if f.density == 0 { // zero means not given to the library
			return &quantity.InputError{Got: "0", Want: quantity.Tell("cli.want_0_5_to_1_4", "0.5 to 1.4 kg/L"), Err: quantity.ErrOutOfRange}
		}
		return nil
	}, "density", "KG/L", "of the dough when put in (1.12)", "Density")
	f.register(cmd)
	cmd.Args = func(cmd *cobra.Command, args []string) error {
		example, _, _ := strings.Cut(strings.TrimSpace(cmd.Example), "\n")
		switch {
		case len(args) == 0:
			return badInput("maslin vessel: required: want %s\nfor example: %s", either(vesselWords), example)
		case len(args) > 1:
			return badInput("maslin vessel: got %s after %s, want one vessel and flags", quantity.Excerpt(textpage.Printable(args[1])), quantity.Excerpt(textpage.Printable(args[0])))
		case !slices.Contains(vesselWords, args[0]):
			text := ""
			if near := tomlbind.Suggest(args[0], vesselWords); near != "" {
				text = "; did you mean " + near + "?"
			}
			return badInput("maslin vessel: got %s, want %s%s", quantity.Excerpt(textpage.Printable(args[0])), either(vesselWords), text)
		}
		return nil
	}
	cmd.RunE = func(_ *cobra.Command, args []string) error { return runVessel(s, args[0], f) }
	return cmd
}

// sides reads "24x11x7cm" or "9 x 5 x 3 in": the unit of the last side is that of those without.
func sides(text string, n int) ([]quantity.Length, error) {
	wrong := func(reason error) error {
		want := quantity.Tell("cli.want_length_width_and_height_inside", `length, width and height inside, such as "24x11x7cm" or "9x5x3in"`)
		if n == 2 {
			want = quantity.Tell("cli.want_length_and_width_inside_19x9cm", `length and width inside, such as "19x9cm"`)
		}
		return &quantity.InputError{Got: quantity.Excerpt(text), Want: want, Err: reason}
	}
	parts := strings.FieldsFunc(text, func(r rune) bool { return r == 'x' || r == 'X' || r == '×' || r == '*' })
	if len(parts) != n {
		return nil, wrong(quantity.ErrUnit)
	}
	last := strings.TrimSpace(parts[n-1])
	unit := strings.TrimLeft(last, "0123456789.,")
	var out []quantity.Length
	for _, part := range parts {
		if part = strings.TrimSpace(part); strings.TrimLeft(part, "0123456789.,") == "" {
			part += unit
		}
		l, err := quantity.ParseLength(part)
		if err != nil {
			return nil, err
		}
		out = append(out, l)
	}
	return out, nil
}

// sizedWords are the breads that go by their size.
func sizedWords() []string {
	var out []string
	for b := vessel.PanPizza; b <= vessel.BreadStick; b++ {
		out = append(out, b.String())
	}
	return out
}

func runVessel(s System, kind string, f *vesselFlags) error {
	if err := f.check(); err != nil {
		return err
	}
	in := f.in
	for _, name := range []string{"dough", "volume", "size", "base", "loaf", "bread", "own-volume", "own-dough", "diameter", "length", "width", "depth", "height", "start", "rise", "density"} {
		if !slices.Contains(vesselFlagsOf[kind], name) {
			var with []string
			for _, w := range vesselWords {
				if slices.Contains(vesselFlagsOf[w], name) {
					with = append(with, w)
				}
			}
			in.only(either(with), name)
		}
	}
	a, err := f.answer(kind)
	if wrong := in.complain(err); wrong != nil {
		return wrong
	}
	return s.tell(f.output, a, true)
}

func (f *vesselFlags) answer(kind string) (telling, error) {
	switch kind {
	case "tub":
		return vessel.RiseContainer{
			Diameter: f.diameter, Width: f.width, Depth: f.depth, Height: f.height, Start: f.start, Dough: f.dough, Density: f.density, Rises: f.rises,
		}.Marks()
	case "jar":
		jar := vessel.SampleJar{Diameter: f.diameter, Height: f.height, Density: f.density}
		if len(f.rises) > 1 {
			f.in.fault("rise", count(len(f.rises), "rise", "rises"), quantity.Tell("cli.want_one_rise_jar", "one rise of the jar"), quantity.ErrInconsistent)
		} else if len(f.rises) == 1 {
			if jar.Rise = f.rises[0]; jar.Rise.IsZero() {
				f.in.fault("rise", "0 %", quantity.Tell("cli.want_10_percent_to_500_percent", "10 %% to 500 %%"), quantity.ErrOutOfRange)
			}
		}
		return jar.Sample()
	case "tin":
		return f.tin()
	case "piece":
		in := vessel.SizedPiece{Bread: f.bread, Length: f.length, Width: f.width, Diameter: f.diameter, Mass: f.dough}
		if f.in.given("dough") {
			return in.Size()
		}
		return in.Dough()
	}
	in := vessel.Proofing{Dough: f.dough, Volume: f.volume, Diameter: f.diameter, Length: f.length, Width: f.width, Depth: f.height}
	if kind == "bowl" {
		in.Vessel = vessel.LinedBowl
	}
	if f.in.given("height") {
		f.in.not("the sides", "dough", "volume")
		return in.Fill()
	}
	f.in.only("--height", "diameter", "length", "width")
	switch f.one("dough", "volume") {
	case "volume":
		return in.Fill()
	case "dough":
		return in.Size()
	}
	return vessel.VesselFill{}, nil // said already
}

// one of the sizes of a tin, basket or bowl has to be there, and no second one.
func (f *vesselFlags) one(names ...string) string {
	var given []string
	for _, n := range names {
		if f.in.given(n) {
			given = append(given, n)
		}
	}
	switch len(given) {
	case 0:
		f.in.fault(names[0], "", quantity.Tell("cli.want_or_2", "--%s or --%s", strings.Join(names[:len(names)-1], ", --"), names[len(names)-1]), quantity.ErrRequired)
		return ""
	case 1:
		return given[0]
	}
	f.in.fault(given[1], quantity.Tell("cli.got_together", "it together with --%s", given[0]), quantity.Tell("cli.want_one_and", "one of --%s and --%s", strings.Join(names[:len(names)-1], ", --"), names[len(names)-1]), quantity.ErrInconsistent)
	return ""
}

func (f *vesselFlags) tin() (telling, error) {
	given := f.one("dough", "volume", "size")
	if given != "size" {
		f.in.only("--size", "base")
	}
	factor, err := f.loaf.Factor()
	own := f.in.given("own-volume") || f.in.given("own-dough")
	if own {
		factor, err = vessel.OwnTin{Volume: f.own.Volume, Dough: f.own.Dough}.Factor()
		err = quantity.At("Own", err)
	}
	if err != nil {
		return nil, err
	}
	switch given {
	case "dough":
		return factor.Tin(f.dough)
	case "volume":
		return factor.Fill(f.volume)
	case "size":
		if len(f.size) != 3 {
			break // said already
		}
		box := vessel.TinBox{Length: f.size[0], Width: f.size[1], Height: f.size[2]}
		if len(f.base) == 2 {
			box.BaseLength, box.BaseWidth = f.base[0], f.base[1]
		}
		volume, err := box.Volume()
		if err != nil {
			return nil, quantity.At("Box", err)
		}
		if own {
			return factor.Fill(volume)
		}
		return box.Fill(f.loaf)
	}
	return vessel.VesselFill{}, nil
}
