package cli

import (
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.org/maslin/internal/handcheck"
)

// questioner draws command lines of which each answer has a derivation, a no as well.
type questioner struct{ *rand.Rand }

func (a questioner) maybe(args ...string) []string {
	if a.IntN(2) == 0 {
		return nil
	}
	return args
}

func (a questioner) one(words ...string) string { return words[a.IntN(len(words))] }

func (a questioner) between(low, high, places float64, unit string) string {
	x := low + (high-low)*a.Float64()
	return strconv.FormatFloat(x, 'f', int(places), 64) + unit
}

// flags are drawn in pairs: a name, and what it is given.
func flags(lists ...[]string) []string { return slices.Concat(lists...) }

var styles = []string{"lean hearth", "baguette", "pan", "enriched", "soft roll", "wholegrain", "rye", "mixed rye",
	"focaccia"}

// drawn draw the arguments of each command that derives its answer.
var drawn = map[string]func(questioner) []string{
	"bulk": func(a questioner) []string {
		out := flags(
			[]string{"bulk", "--dough", a.between(18, 29, 1, "C")}, a.maybe("--room", a.between(15, 29, 0, "C")),
			a.maybe("--weight", a.between(800, 8000, 0, "g")), a.maybe("--hydration", a.between(58, 85, 0, "%")),
			a.maybe("--salt", a.between(1.5, 2.5, 1, "%")), a.maybe("--whole-grain", a.between(5, 60, 0, "%")),
			a.maybe("--altitude", a.between(0, 2500, 0, "m")), a.maybe("--mixed", "14:05"),
		)
		switch a.IntN(4) {
		case 0:
			return append(out, "--yeast", a.between(0.2, 1.5, 1, "% ")+a.one("instant", "fresh", "active dry"), "--rise",
				a.between(40, 120, 0, "%"))
		case 1:
			return append(out, "--prefermented", a.between(5, 25, 0, "%"), "--yeast", a.between(0.1, 0.3, 2, "% ")+"instant")
		case 2:
			return append(out, "--prefermented", a.between(8, 20, 0, "%"), "--retard", a.between(8, 16, 0, "h"),
				"--refrigerator", a.between(3, 7, 0, "C"))
		}
		return flags(out, []string{"--prefermented", a.between(5, 25, 0, "%")},
			a.maybe("--seen", a.between(10, 40, 0, "%")+" at 2h"))
	},
	"ripe": func(a questioner) []string {
		return flags([]string{"levain", "--ratio", a.one("1:1:1", "1:2:2", "1:5:5"), "--dough", a.between(18, 29, 0, "C"),
			"--room", a.between(18, 27, 0, "C")}, a.maybe("--cold"))
	},
	"ready by": func(a questioner) []string {
		leaven := []string{"--prefermented", a.between(8, 20, 0, "%")}
		if a.IntN(2) == 0 {
			leaven = []string{"--yeast", a.between(0.3, 1, 1, "% ") + "instant"}
		}
		return flags([]string{"bulk", "--dough", a.between(21, 27, 1, "C"), "--room", a.between(18, 27, 0, "C"),
			"--ready-by", a.between(3, 8, 0, "h")}, leaven)
	},
	"levain": func(a questioner) []string {
		return flags([]string{"levain", "--want", a.between(50, 3000, 0, "g")}, a.maybe("--keep", a.between(10, 100, 0, "g")),
			[]string{"--culture", a.between(5, 400, 0, "g")}, a.maybe("--inoculation", a.between(10, 50, 0, "%")),
			a.maybe("--room", a.between(19, 28, 0, "C")),
			a.maybe("--hydration", a.between(50, 125, 0, "%")), a.maybe("--stages", strconv.Itoa(1+a.IntN(3))))
	},
	"water": func(a questioner) []string {
		out := flags([]string{"water", "--dough", a.between(22, 28, 1, "C"), "--flour", a.between(15, 30, 0, "C"), "--room",
			a.between(15, 32, 0, "C")},
			a.maybe("--levain", a.between(18, 28, 0, "C")))
		switch a.IntN(3) {
		case 0:
			return append(out, "--mixer", a.one("hand", "planetary", "spiral", "fork"), "--water-weight",
				a.between(300, 3000, 0, "g"),
				"--tap", a.between(8, 22, 0, "C"), "--flour-weight", a.between(500, 4000, 0, "g"), "--balance")
		case 1:
			return append(out, "--friction", a.between(2, 14, 1, "dC"), "--water-weight", a.between(300, 3000, 0, "g"),
				"--tap", a.between(8, 22, 0, "C"))
		}
		return append(out, "--warming", a.between(1, 9, 1, "dC"))
	},
	"friction": func(a questioner) []string {
		return []string{"water", "--measured", a.between(22, 29, 1, "C"), "--poured", a.between(8, 30, 0, "C"), "--flour",
			a.between(15, 28, 0, "C"), "--room", a.between(15, 28, 0, "C")}
	},
	"mixer": func(a questioner) []string {
		return []string{"mixer", "--mixer", a.one("planetary", "spiral", "processor"), "--bowl", a.between(4, 30, 0, "L"),
			"--dough", a.between(1000, 8000, 0, "g"),
			"--flour", a.between(600, 900, 0, "g"), "--water", a.between(350, 500, 0, "g")}
	},
	"scald": func(a questioner) []string {
		return flags([]string{"scald", "--flour-weight", "200g", "--flour", a.between(15, 25, 0, "C"), "--water-weight",
			a.between(250, 800, 0, "g")}, a.maybe("--altitude", "1150m"))
	},
	"blend": func(a questioner) []string {
		return []string{"flour", "--lot", "bread flour=" + a.between(12, 14, 1, "%"), "--lot", "all-purpose=" +
			a.between(8, 11, 1, "%"), "--target", a.between(11, 12, 1, "%"), "--total", a.between(500, 3000, 0, "g")}
	},
	"least change": func(a questioner) []string {
		return []string{"flour", "--lot", "strong=" + a.between(13, 14, 1, "%") + "@60%", "--lot", "wheat=11%@30%", "--lot",
			"rye=8.5%@10%", "--target", a.between(11.5, 12.8, 1, "%")}
	},
	"gluten": func(a questioner) []string {
		return []string{"flour", "--protein", a.between(9, 11, 1, "%"), "--target", a.between(11.5, 13, 1, "%"), "--gluten",
			"--total", a.between(500, 2000, 0, "g")}
	},
	"carries": func(a questioner) []string {
		return flags([]string{"flour", "--hydration", a.between(60, 85, 0, "%")},
			[]string{"--protein", a.between(9, 14, 1, "%")}, a.maybe("--w", a.between(150, 400, 0, "")))
	},
	"yeast": func(a questioner) []string {
		return []string{"convert", a.between(1, 60, 1, "g"), a.one("fresh", "active dry", "instant") + " yeast", "--to",
			a.one("fresh", "active dry", "instant")}
	},
	"convert": func(a questioner) []string {
		return []string{"convert", a.between(1, 5, 0, "cups"), a.one("honey", "sugar", "salt")}
	},
	"tin": func(a questioner) []string {
		return []string{"vessel", "tin", "--size", a.between(18, 33, 0, "x") + a.between(9, 13, 0, "x") +
			a.between(6, 10, 1, "cm"), "--loaf", a.one("open white", "lidded", "rye", "enriched")}
	},
	"basket": func(a questioner) []string {
		return []string{"vessel", "basket", "--dough", a.between(400, 1800, 0, "g")}
	},
	"tub": func(a questioner) []string {
		return []string{"vessel", "tub", "--diameter", a.between(15, 35, 0, "cm"), "--start", a.between(4, 9, 1, "cm"),
			"--rise", a.between(30, 100, 0, "%")}
	},
	"jar": func(a questioner) []string {
		return []string{"vessel", "jar", "--diameter", a.between(4, 9, 1, "cm"), "--height", a.between(9, 16, 1, "cm")}
	},
	"cost": func(a questioner) []string {
		return flags([]string{"cost", "--weights", "1 kg wheat, 700 g water, 20 g salt", "--loaves",
			strconv.Itoa(1 + a.IntN(6)), "--price", "wheat=" + a.between(10, 40, 2, "") + "/25kg", "--price", "salt=0.90/kg"},
			a.maybe("--other", a.between(0.5, 4, 2, "")), a.maybe("--yield", "wheat=98%"))
	},
	"formula": func(a questioner) []string {
		return flags([]string{"formula", "../../bakes/hall-kitchen.toml"},
			[]string{a.one("--pieces", "--pieces"), strconv.Itoa(1 + a.IntN(9))})
	},
	"formula by dough": func(a questioner) []string {
		return flags([]string{"formula", "../../bakes/hall-kitchen.toml"},
			[]string{"--dough", a.between(800, 9000, 0, "g")}, a.maybe("--scale", a.one("1g", "5g", "10g")))
	},
	"formula by weights": func(a questioner) []string {
		return []string{"formula", "--weights", a.between(500, 900, 0, "g wheat, ") +
			a.between(50, 300, 0, "g whole rye, ") + a.between(400, 800, 0, "g water, 20 g salt, ") +
			a.between(100, 300, 0, "g levain at 100 %")}
	},
	"repair": func(a questioner) []string {
		return []string{"formula", "../../bakes/hall-kitchen.toml", "--too-much", a.between(10, 80, 0, "g water")}
	},
	"done": func(a questioner) []string {
		return flags([]string{"done", "--style", a.one(styles...), "--core", a.between(88, 99, 1, "C")},
			a.maybe("--altitude", a.between(0, 2500, 0, "m")),
			a.maybe("--dough", "897g", "--loaf", a.between(760, 840, 0, "g")), a.maybe("--held",
				a.between(2, 20, 0, "min")), a.maybe("--rule", a.one("cap", "offset")))
	},
	"left": func(a questioner) []string {
		first := 60 + 20*a.Float64()
		second := first + 3 + 6*a.Float64()
		times := []string{"25min", "32min"}
		if a.IntN(2) == 0 {
			times = []string{"14:05", "14:11"}
		}
		return flags([]string{"done", "--style", a.one(styles...), "--core", fmt.Sprintf("%s=%.1fC", times[0], first),
			"--core", fmt.Sprintf("%s=%.1fC", times[1], second)},
			a.maybe("--altitude", "1150m"), a.maybe("--in-oven", a.between(26, 40, 0, "min")), a.maybe("--approach",
				"exponential"))
	},
	"cool": func(a questioner) []string {
		return flags([]string{"cool", "--loaf", a.between(300, 1800, 0, "g"), "--room", a.between(15, 27, 0, "C")},
			a.maybe("--style", a.one(styles...)))
	},
	"cool by readings": func(a questioner) []string {
		first := 80 + 15*a.Float64()
		return []string{"cool", "--core", fmt.Sprintf("9:40=%.0fC", first), "--core",
			fmt.Sprintf("10:05=%.0fC", first-15-10*a.Float64()), "--room", a.between(17, 24, 0, "C")}
	},
	"loss": func(a questioner) []string {
		return flags([]string{"loss", "--baked", a.between(300, 1500, 0, "g")}, a.maybe("--style", a.one(styles...)),
			a.maybe("--weighed", "897g=781g", "--weighed", a.between(895, 905, 0, "g=")+a.between(780, 799, 0, "g")))
	},
	"packed": func(a questioner) []string { return []string{"loss", "--packed", a.between(100, 1000, 0, "g")} },
	"solids": func(a questioner) []string { return []string{"loss", "--hydration", a.between(58, 80, 0, "%")} },
	"of loaf": func(a questioner) []string {
		return []string{"loss", "--dough", a.between(300, 1500, 0, "g"), "--style", a.one(styles...)}
	},
	"oven": func(a questioner) []string {
		return flags([]string{"oven", a.between(180, 260, 0, "C")}, []string{"--fan"},
			a.maybe("--off", a.between(-15, 15, 0, "dC")))
	},
	"rounds": func(a questioner) []string {
		return []string{"oven", "245C", "--pieces", strconv.Itoa(2 + a.IntN(6)), "--dough", a.between(500, 1200, 0, "g"),
			"--vessel", a.one("pot", "stone", "tray"), "--together", "2"}
	},
	"sticking": func(a questioner) []string {
		return flags([]string{"sticking", "--mixer", a.one("hand", "planetary", "spiral"), "--dough", "1900g", "--flour",
			"1100g", "--water", a.between(650, 780, 0, "g"), "--mixing", a.between(3, 15, 0, "min")}, a.maybe("--rested"))
	},
	"curves":  func(a questioner) []string { return []string{"compare", "curves", "ganzle-yeast-held", "trade-q10"} },
	"methods": func(a questioner) []string { return []string{"compare", "water", "../../bakes/hall-kitchen.toml"} },
	"table":   func(a questioner) []string { return []string{"table", "bulk"} },
	"no plan": func(a questioner) []string {
		return []string{"plan", "", "--now", "2026-11-28 " + a.between(5, 9, 0, ":30")}
	},
	"day": func(a questioner) []string {
		return flags([]string{"plan", "../../bakes/sunday/loaf.toml", "../../bakes/sunday/focaccia.toml", "--now"},
			[]string{a.one("2026-11-27 12:30", "2026-11-28 08:00", "2026-11-28 14:00", "2026-11-28 18:00")})
	},
	"day that fits": func(a questioner) []string {
		return []string{"plan", "../../bakes/sunday/loaf.toml", "../../bakes/sunday/focaccia.toml", "--fit", "--now",
			"2026-11-27 " + a.one("12:30", "18:00")}
	},
	"plan": func(a questioner) []string {
		return []string{"plan", "../../bakes/" + a.one("hall-kitchen", "same-day-rolls", "supper-loaves", "overnight-buns") + ".toml"}
	},
}

// ownBread writes a bake file for a bread drawn at random, and returns its name.
func (a questioner) ownBread(t *testing.T, wanted string) string {
	name := filepath.Join(t.TempDir(), "own.toml")
	status, _, complaint := run("new", name, "--zone", "Europe/Zurich", "--wanted", wanted, "--leaven",
		a.one("levain", "yeast"),
		"--cold", a.one("yes", "no"), "--mixer", a.one("hand", "planetary", "spiral", "processor"), "--rye",
		a.between(0, 60, 0, " %"),
		"--hydration", a.between(62, 80, 0, " %"), "--pieces", strconv.Itoa(1+a.IntN(5)), "--baked",
		a.between(400, 1200, 0, " g"),
		"--altitude", a.between(0, 1800, 0, " m"), "--day", a.between(19, 26, 0, " °C"), "--night",
		a.between(15, 20, 0, " °C"),
		"--tap", a.between(8, 18, 0, " °C"))
	if status != 0 {
		t.Fatal(complaint)
	}
	return name
}

// heading stands above the derivations of an answer, germanHeading above those in German.
const (
	heading       = "How each number was reached"
	germanHeading = "Wie jede Zahl gefunden wurde"
)

// Every line that --working prints evaluates to the value printed below it, and what a derivation ends with is on the
// screen: read from the text alone, for random questions to every command, in metric and in US units, in English and in
// German. MASLIN_WORKED=1000 asks each command as often as that makes a thousand questions.
func TestEveryPrintedWorkingIsTrue(t *testing.T) {
	all := everyDraw()
	questions := 2 * len(all)
	if n, err := strconv.Atoi(os.Getenv("MASLIN_WORKED")); err == nil {
		questions = n
	}
	a := questioner{rand.New(rand.NewPCG(uint64(questions), 20261128))}
	names := slices.Sorted(func(yield func(string) bool) {
		for name := range all {
			if !yield(name) {
				return
			}
		}
	})
	files := strings.NewReplacer("READINGS", probeFile(t), "LOG", logFile(t))
	steps, bare, answered := 0, map[string]int{}, 0
	refused := map[string]int{}
	for i := range questions {
		name := names[i%len(names)]
		args := append(all[name](a), "--working")
		for k := range args {
			args[k] = files.Replace(args[k])
		}
		if name == "plan" && i/len(names)%3 > 0 {
			args[1] = a.ownBread(t, "Sunday 18:00")
		}
		if name == "no plan" {
			args[1] = a.ownBread(t, "2026-11-28 "+a.between(10, 23, 0, ":00"))
		}
		if i/len(names)%2 == 1 {
			args = append(args, "--us")
		}
		width, begins := 80, heading
		german := i/len(names)%5 >= 3
		if german {
			args = append(args, "--language", "de")
			begins = germanHeading
		}
		status, out, complaint := run(args...)
		page, _, ok := strings.Cut(out, begins)
		if !ok {
			refused[name]++
			t.Logf("%v: %d %s", args, status, complaint)
			continue
		}
		answered++
		if german {
			page, out = handcheck.FromGerman(page, width), handcheck.FromGerman(out, width)
			width = len(out) // no line is broken any more
		}
		faults, counts := handcheck.Faults(out, width)
		for _, f := range faults {
			t.Errorf("%s\n    %s", strings.Join(args, " "), f)
		}
		steps += counts.Steps
		for _, b := range counts.Bare {
			bare[b]++
		}
		if counts.Steps == 0 {
			t.Errorf("%v derives nothing", args)
		}
		for _, d := range handcheck.Read(out, width) {
			last := d.Steps[len(d.Steps)-1]
			line := last.Lines[len(last.Lines)-1]
			shown := line.Value
			if line.Rounded != "" {
				shown = line.Rounded
			}
			if v, ok := handcheck.ReadValue(shown); ok && !handcheck.OnScreen(page, v) {
				t.Errorf("%s\n    %s ends with %s = %s, which is not on the screen", strings.Join(args, " "), d.Title,
					line.Symbol, shown)
			}
		}
	}
	without := 0
	for name, n := range bare {
		without += n
		t.Logf("%d × no arithmetic: %s", n, name)
	}
	t.Logf("%d questions, %d answered, %d steps, %d without arithmetic", questions, answered, steps, without)
	if 100*without > 3*steps {
		t.Errorf("%d of %d steps have no arithmetic", without, steps)
	}
	for name, n := range refused {
		if n*2 > questions/len(names)+1 {
			t.Errorf("%s was refused %d times", name, n)
		}
	}
}
