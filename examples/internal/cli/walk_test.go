package cli

import (
	"maps"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

// unworked are the options that no derivation depends on: the form of the answer, files beside it, clocks, the log.
var unworked = strings.Fields("as document help json level us working language log now version cautions csv html ics svg " +
	"replace step late") // a plan whose step is late keeps its numbers; only its times move

// unasked are the commands that derive nothing: they keep what is observed, or tell the day, whose numbers are those of
// the plan.
var unasked = strings.Fields("bake-file log now")

// The random walk over workings asks every command that can show one, with every option that its numbers depend on.
func TestTheWalkAsksEverything(t *testing.T) {
	a := questioner{rand.New(rand.NewPCG(1, 20261128))}
	asked := map[string]bool{}
	for _, draw := range everyDraw() {
		for range 120 {
			path := ""
			for i, word := range draw(a) {
				switch {
				case strings.HasPrefix(word, "--"):
					word, _, _ = strings.Cut(word, "=")
					asked[path+" "+word] = true
				case i == 0 || i == 1 && knownCommand(path+" "+word):
					path = strings.TrimSpace(path + " " + word)
					asked[path] = true
				}
			}
		}
	}
	everyCommand(func(path []string, c *cobra.Command) {
		name := strings.Join(path, " ")
		if c.Flags().Lookup("working") == nil || slices.Contains(unasked, path[0]) {
			return
		}
		if !asked[name] {
			t.Errorf("%s is never asked", name)
			return
		}
		c.Flags().VisitAll(func(f *pflag.Flag) {
			if !slices.Contains(unworked, f.Name) && !asked[name+" --"+f.Name] {
				t.Errorf("%s is never asked with --%s", name, f.Name)
			}
		})
	})
}

func knownCommand(name string) bool {
	for _, c := range commands() {
		if c.name == strings.TrimSpace(name) {
			return true
		}
	}
	return false
}

// everyDraw are the draws of the usual and of the rarer questions.
func everyDraw() map[string]func(questioner) []string {
	out := maps.Clone(drawn)
	maps.Copy(out, rarer)
	return out
}

// probeFile is what a probe in a dough wrote.
func probeFile(t *testing.T) string {
	name := filepath.Join(t.TempDir(), "probe.csv")
	if err := os.WriteFile(name, []byte("0:00,25.5C\n1:00,24.8C\n2:30,24C\n5:00,23.2C\n8:00,22.7C\n12:00,22.5C\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	return name
}

// logFile is the log of three bakes of the hall's bread.
func logFile(t *testing.T) string {
	name := filepath.Join(t.TempDir(), "bakes.jsonl")
	for day, took := range []string{"20:10", "20:35", "19:58"} {
		date := "2026-11-" + strconv.Itoa(14+day) + " "
		for _, line := range [][]string{
			{"log", "mix", "../../bakes/hall-kitchen.toml", "--dough", "26C", "--flour", "21C", "--water", "20C", "--levain",
				"22C", "--room", "22C", "--slow", "3m", "--fast", "7m", "--now", date + "17:42"},
			{"log", "ready", "24%", "--now", date + took},
			{"log", "weights", "--in", "897g", "--out", strconv.Itoa(778+3*day) + "g", "--style", "lean hearth", "--now",
				date + "23:00"},
		} {
			if status, _, complaint := run(append(line, "--log", name)...); status != 0 {
				t.Fatal(line, complaint)
			}
		}
	}
	return name
}
