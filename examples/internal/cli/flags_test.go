package cli

import (
	"reflect"
	"slices"
	"strings"
	"testing"

	"example.org/maslin/bake"
	"example.org/maslin/dough"
	"example.org/maslin/dough/flour"
	"example.org/maslin/dough/quantity"
	"github.com/google/go-cmp/cmp"
	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

// An option means one thing in every command: it is given the same kind of value, or it is named after a thing whose
// weight and warmth their units tell apart.
func TestOptionsMeanOneThing(t *testing.T) {
	byUnit := strings.Fields("flour water levain dough core room bowl target other rise")
	own := strings.Fields("bread loaf yeast to") // a bread by its name or its size, a loaf by its weight or its kind, and the like
	kinds := map[string]map[string]string{}
	everyCommand(func(path []string, c *cobra.Command) {
		if path[0] == "new" || path[0] == "completion" {
			return // its flags are answers
		}
		c.NonInheritedFlags().VisitAll(func(f *pflag.Flag) {
			if kinds[f.Name] == nil {
				kinds[f.Name] = map[string]string{}
			}
			kinds[f.Name][f.Value.Type()] += " " + strings.Join(path, " ")
		})
	})
	if len(kinds) < 100 {
		t.Fatalf("only %d options", len(kinds))
	}
	for name, of := range kinds {
		if len(of) > 1 && !slices.Contains(byUnit, name) && !slices.Contains(own, name) {
			t.Errorf("--%s is given %v", name, of)
		}
	}
}

// read fills a value from texts as a flag does.
func read(t *testing.T, to any, tag reflect.StructTag, texts ...string) error {
	t.Helper()
	set, _ := reader(reflect.ValueOf(to).Elem(), tag)
	for _, text := range texts {
		if err := set(text); err != nil {
			return err
		}
	}
	return nil
}

func TestValuesOfFlags(t *testing.T) {
	temperatures := []quantity.Temperature{quantity.Celsius(1)}
	if err := read(t, &temperatures, "", "18C, 20C", "68F"); err != nil {
		t.Error(err)
	}
	c := quantity.Celsius
	if d := cmp.Diff([]quantity.Temperature{c(18), c(20), c(20)}, temperatures); d != "" {
		t.Error(d)
	}
	var percents []quantity.Percent
	if err := read(t, &percents, "", "0,5 %; 1,5 %", "30,5%"); err != nil || len(percents) != 3 {
		t.Error(err, percents)
	}
	var lots []flour.FlourLot
	const ofLots = `pair:"Name=Protein@Share?"`
	if err := read(t, &lots, ofLots, "strong=13.5%@60%", "plain flour = 10 %"); err != nil {
		t.Error(err)
	}
	want := []flour.FlourLot{
		{Name: "strong", Protein: quantity.NewPercent(13.5), Share: quantity.NewPercent(60)},
		{Name: "plain flour", Protein: quantity.NewPercent(10)},
	}
	if d := cmp.Diff(want, lots); d != "" {
		t.Error(d)
	}
	for _, text := range []string{"", "strong", "=13%", "strong=", "strong=13%@", "strong=13"} {
		if err := read(t, &lots, ofLots, text); err == nil {
			t.Errorf("%q is read", text)
		}
	}
	var stock []dough.Stock
	if err := read(t, &stock, `pair:"Name=Mass"`, "water"); err == nil || !strings.Contains(err.Error(), "water=2 kg") {
		t.Errorf("no example in %v", err)
	}
	var style bake.Style
	if err := read(t, &style, "", "Soft-Roll"); err != nil || style != bake.SoftRoll {
		t.Error(err, style)
	}
	if err := read(t, &style, "", "loaf"); err == nil || !strings.Contains(err.Error(), "lean hearth, baguette, ") {
		t.Error(err)
	}
	var kind dough.Kind
	if err := read(t, &kind, `words:"fresh,instant" form:"* yeast"`, "instant"); err != nil || kind != dough.KindInstantYeast {
		t.Error(err, kind)
	}
	var is bool
	var n int
	var seed uint64
	var x float64
	if read(t, &is, "", "true") != nil || !is || read(t, &n, "", " -3 ") != nil || n != -3 ||
		read(t, &seed, "", "7") != nil || seed != 7 || read(t, &x, "", "1,25") != nil || x != 1.25 {
		t.Error(is, n, seed, x)
	}
	if read(t, &is, "", "maybe") == nil || read(t, &n, "", "3.5") == nil || read(t, &seed, "", "-1") == nil || read(t, &x, "", "a") == nil {
		t.Error("what is no value is read")
	}
}

// Flags are found by the fields that they fill, in the words of the library.
func TestFaultsNameTheirFlags(t *testing.T) {
	for line, want := range map[string]string{
		"bulk --prefermented 9% --dough 25C --retard 900h": "--retard: ",
		"loss --baked 780g --weighed 900g=950g":            "--weighed: ",
		"water --dough 24C --mixer hand --flour 21C":       "--room: required",
		"oven 245C --pieces 0 --dough 897g":                "--pieces: ",
		"vessel tin --size 24x11x9000cm":                   "--size: ",
		"done --core 95C --altitude 99km":                  "--altitude: ",
		"log core 400C":                                    "TEMPERATURE: ",
		"compare curves none trade-q10":                    "CURVE: ",
		"chill soup":                                       "FOOD: ",
		"exercise --count 99999":                           "--count: ",
	} {
		status, out, complaint := run(strings.Fields(line)...)
		if status != exitBadInput || out != "" || !strings.Contains(complaint, ": "+want) {
			t.Errorf("%s: %d %s", line, status, complaint)
		}
	}
}

func TestNamesOfFlags(t *testing.T) {
	for name, want := range map[string]string{"InOven": "in-oven", "W": "w", "KnownDough": "known-dough", "loaf": "loaf"} {
		if got := kebab(name); got != want {
			t.Errorf("%s becomes %s", name, got)
		}
	}
}
