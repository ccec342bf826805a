package cli

import (
	"encoding/json"
	"maps"
	"math"
	"math/rand/v2"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"example.org/maslin/bake"
	"example.org/maslin/dough/quantity"
	"github.com/spf13/cobra"
)

// derivedData is what --json and --working print together.
type derivedData struct {
	Answer  json.RawMessage `json:"answer"`
	Working []struct {
		Title struct{ Text string } `json:"title"`
		Steps []struct {
			Lines []struct {
				Value struct {
					Number   float64 `json:"number"`
					Unit     string  `json:"unit"`
					Decimals int     `json:"decimals"`
				} `json:"value"`
				Rounded *struct {
					Number   float64 `json:"number"`
					Decimals int     `json:"decimals"`
				} `json:"rounded"`
				Shown string `json:"shown"`
			} `json:"lines"`
		} `json:"steps"`
	} `json:"working"`
}

// With --json and --working each command gives both, the answer as data and its derivations, and what a derivation ends
// with is a number of the answer.
func TestDataAndDerivationTogether(t *testing.T) {
	all := everyDraw()
	rounds := 3
	if testing.Short() {
		rounds = 1
	}
	a := questioner{rand.New(rand.NewPCG(7, 20261128))}
	files := strings.NewReplacer("READINGS", probeFile(t), "LOG", logFile(t))
	derived, ends := map[string]bool{}, 0
	for _, name := range slices.Sorted(maps.Keys(all)) {
		for range rounds {
			args := append(all[name](a), "--json", "--working")
			for k := range args {
				args[k] = files.Replace(args[k])
			}
			if name == "no plan" {
				args[1] = a.ownBread(t, "2026-11-28 "+a.between(10, 23, 0, ":00"))
			}
			_, out, complaint := run(args...)
			if out == "" {
				t.Logf("%v: %s", args, complaint)
				continue
			}
			var got derivedData
			var answer any
			if err := json.Unmarshal([]byte(out), &got); err != nil {
				t.Fatalf("%v: %v", args, err)
			}
			if err := json.Unmarshal(got.Answer, &answer); err != nil || len(got.Working) == 0 {
				t.Errorf("%v: answer %v, %d derivations", args, err, len(got.Working))
				continue
			}
			for n := len(args); n > 0; n-- {
				derived[strings.Join(args[:min(n, 2)], " ")] = true
				derived[args[0]] = true
			}
			numbers := numbersIn(answer, nil)
			for _, w := range got.Working {
				if len(w.Steps) == 0 {
					t.Errorf("%v: %s has no step", args, w.Title.Text)
					continue
				}
				last := w.Steps[len(w.Steps)-1]
				line := last.Lines[len(last.Lines)-1]
				there := func(number float64, places int) bool {
					within := 0.51*math.Pow10(-places) + 1e-9*math.Abs(number)
					return slices.ContainsFunc(numbers, func(x float64) bool { return math.Abs(x-number) <= within })
				}
				// What is rounded last may be there as it was before.
				ok := there(line.Value.Number, line.Value.Decimals) || onDemand[w.Title.Text] ||
					line.Rounded != nil && there(line.Rounded.Number, line.Rounded.Decimals) ||
					slices.Contains(clocks(answer, nil), line.Shown)
				if !ok {
					t.Errorf("%s\n    %s ends with %s, which is no number of the answer", strings.Join(args, " "), w.Title.Text,
						line.Shown)
				}
				ends++
			}
		}
	}
	everyCommand(func(path []string, c *cobra.Command) {
		if c.Flags().Lookup("working") != nil && !slices.Contains(unasked, path[0]) && !derived[strings.Join(path, " ")] {
			t.Errorf("%v gives nothing with --json and --working", path)
		}
	})
	t.Logf("%d derivations", ends)
}

// onDemand are derivations that end with a number which the answer works out when it is asked, and which is on the
// screen and not in the data: what mixing warms the dough by, beside the factor; the spread of batches; the pace of a
// culture, which is kept as what its bakes add up to.
var onDemand = map[string]bool{
	"Friction factor": true, "What the batches say about the mixer": true, "What the logged bakes say": true,
}

// clocks are the instants of data as a derivation shows them.
func clocks(data any, out []string) []string {
	switch d := data.(type) {
	case map[string]any:
		for _, v := range d {
			out = clocks(v, out)
		}
	case []any:
		for _, v := range d {
			out = clocks(v, out)
		}
	case string:
		if at, err := time.Parse(time.RFC3339, d); err == nil {
			out = append(out, at.Format("Mon 15:04"))
		}
	}
	return out
}

// numbersIn are the numbers of data: plain ones, and those of quantities in each of the units they are derived in.
func numbersIn(data any, out []float64) []float64 {
	switch d := data.(type) {
	case map[string]any:
		for _, v := range d {
			out = numbersIn(v, out)
		}
	case []any:
		for _, v := range d {
			out = numbersIn(v, out)
		}
	case float64:
		out = append(out, d, 100*d, 60*d) // a share, and hours of a table, are derived in percent and in minutes
	case string:
		out = append(out, numbersOf(d)...)
	}
	return out
}

func numbersOf(text string) []float64 {
	if m, err := quantity.ParseMass(text); err == nil {
		return []float64{m.Grams(), m.Kilograms()}
	}
	if p, err := quantity.ParsePercent(text); err == nil {
		return []float64{p.Points()}
	}
	if t, err := quantity.ParseTemperature(text); err == nil {
		return []float64{t.Celsius()}
	}
	if d, err := quantity.ParseDelta(text); err == nil {
		return []float64{d.Celsius()}
	}
	if v, err := quantity.ParseVolume(text); err == nil {
		return []float64{v.Milliliters(), v.Liters()}
	}
	if l, err := quantity.ParseLength(text); err == nil {
		return []float64{l.Meters(), l.Centimeters(), 1000 * l.Meters()}
	}
	if d, err := quantity.ParseDuration(text); err == nil {
		return []float64{d.Hours(), d.Minutes(), d.Seconds()}
	}
	if p, err := bake.ParsePressure(text); err == nil {
		return []float64{p.Hectopascals(), 100 * p.Hectopascals()}
	}
	if x, err := strconv.ParseFloat(text, 64); err == nil {
		return []float64{x} // money
	}
	return nil
}
