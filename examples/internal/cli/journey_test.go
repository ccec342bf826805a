package cli

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.org/maslin/internal/trial"
)

// A benchDay is where a day is lived through: a folder, a log in it, and what was said.
type benchDay struct {
	t    *testing.T
	home string // where the test began
	out  strings.Builder
}

// atBench is an empty folder with the hall's bake files and their kitchen.
func atBench(t *testing.T, files ...string) *benchDay {
	home, err := os.Getwd()
	if err != nil {
		t.Fatal(err)
	}
	from := filepath.Join(home, "../../bakes")
	t.Chdir(t.TempDir())
	for _, name := range append(files, "sunday/home.toml") {
		content, err := os.ReadFile(filepath.Join(from, name))
		if err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(filepath.Base(name), content, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	return &benchDay{t: t, home: home}
}

// does gives a command line, typing the answers where it asks.
func (b *benchDay) does(line string, answers ...string) {
	status, out, complaint := asked(System{In: strings.NewReader(strings.Join(answers, "\n") + "\n"), Width: 72,
		Getenv: variables(map[string]string{"MASLIN_LOG": "bakes.jsonl"})}, shellWords(line)...)
	b.out.WriteString(heard(line, status, out, complaint))
}

// shows notes what stands in a file.
func (b *benchDay) shows(name string) {
	content, err := os.ReadFile(name)
	if err != nil {
		b.t.Error(err)
	}
	fmt.Fprintf(&b.out, "# %s\n%s\n", name, content)
}

// kept compares what was noted with what was said before.
func (b *benchDay) kept(name string) {
	b.t.Chdir(b.home)
	trial.Kept(b.t, name, b.out.String())
}

func (b *benchDay) writes(name, content string) {
	if err := os.WriteFile(name, []byte(content), 0o600); err != nil {
		b.t.Fatal(err)
	}
}

// A bread from the first question to what it taught, with what is refused on the way.
func TestADayAtTheBench(t *testing.T) {
	b := atBench(t, "hall-kitchen.toml", "same-day-rolls.toml")
	b.does("now hall-kitchen.toml --follow --now '2026-11-27 08:00'")
	b.does("now hall-kitchen.toml --done --at 9:05 --now '2026-11-27 09:06'")
	b.does("now hall-kitchen.toml --now '2026-11-27 17:30'")
	b.does("log mix hall-kitchen.toml --dough 25.2C --flour 21C --water 17C --levain 22C --room 22C --slow 3m --fast 8m " +
		"--now '2026-11-27 17:59'")
	b.does("now hall-kitchen.toml --now '2026-11-27 18:20'")
	b.does("log rise 12% --at 19:40 --now '2026-11-27 19:42'")
	b.does("log rise --from 12cm --to 14cm --at 20:10 --now '2026-11-27 20:12'")
	b.does("now hall-kitchen.toml --now '2026-11-27 20:15' --us")
	b.does("log ready 30% --now '2026-11-27 20:50'")
	b.does("now hall-kitchen.toml --done --step shape --at 21:20 --now '2026-11-27 21:25'")
	b.does("now hall-kitchen.toml --now '2026-11-28 08:20'")
	b.does("log core 90.2C --after 35m --now '2026-11-28 09:00'")
	b.does("now hall-kitchen.toml --now '2026-11-28 09:02'")
	b.does("log core 95C --after 42m --done --now '2026-11-28 09:07'")
	b.does("now hall-kitchen.toml --now '2026-11-28 09:10'")
	b.does("log weights --in 897g --out 781g --now '2026-11-28 11:40'")
	b.does("log note 'crust a little pale' --now '2026-11-28 12:40'")
	b.does("now hall-kitchen.toml --now '2026-11-28 12:45'")
	b.does("log show")
	b.does("log show --last 2 --json")
	b.does("learn hall-kitchen.toml --now '2026-11-28 13:00'")
	b.does("plan hall-kitchen.toml --learned --now '2026-11-29 13:00' --as markdown")
	b.writes("older.csv", "date,weight in,weight out\n2026-10-01,897 g,780 g\n2026-10-02,897 g,x\n")
	b.does("log import older.csv")
	b.writes("older.csv", "kind,at,bread,in,out,style\nweights,2026-10-01 12:00,Rolls,897 g,780 g,lean hearth\n")
	b.does("log import older.csv")
	b.does("log import older.csv")
	b.kept("bench-day.txt")
}

// What is refused at the bench is refused before anything is written down.
func TestRefusalsAtTheBench(t *testing.T) {
	b := atBench(t, "hall-kitchen.toml")
	b.writes("itself.toml", "format = 1\nkitchen = \"itself.toml\"\n")
	b.writes("probe.csv", "0:00,25.5C\n1:00,24.8C\n2:30,241C\n1:00,x\n")
	b.writes("notes.jsonl", "Dear diary\n")
	b.writes("hot.csv", "0:00,25.5C\n1:00,24.8C\n2:30,241C\n")
	b.writes("back.csv", "0:00,25.5C\n2:00,24.8C\n1:30,24C\n")
	b.writes("faulty.toml", "format = 2\nname = \"Loaf\"\nmoon = 1\nwanted = \"soon\"\nloaves = { pieces = 0, baked = \"x\", stars = 3 }\n"+
		"salt = \"90 %\"\n[[flour]]\nname = \"wheat\"\npercent = \"100 %\"\nkind = \"wheat\"\n[kitchen]\nzone = \"Mars/Base\"\n")
	b.writes("other.toml.answers", strings.Repeat("x", 1<<16+1))
	for _, line := range []string{
		"log ready 40% --readings none.csv", "log ready 40% --readings probe.csv", "log mix none.toml --dough 25C",
		"log mix hall-kitchen.toml --dough 300C", "log rise", "log rise 5 --from 12cm", "log core 150C", "log core",
		"log weights --in 897g", "log weights --in 897g --out 990g", "log note", "log note ''", "log import none.csv",
		"log import probe.csv", "log show --last 0", "log show --log notes.jsonl", "log note x --log notes.jsonl",
		"log note x --log .", "log note x --at '2027-01-01 10:00'", "plan itself.toml", "plan home.toml", "plan .",
		"plan hall-kitchen.toml --html hall-kitchen.toml", "plan hall-kitchen.toml --ics a.ics --html a.ics",
		"plan hall-kitchen.toml --csv bakes.jsonl", "plan hall-kitchen.toml --json --as markdown",
		"plan hall-kitchen.toml --working --as markdown", "now hall-kitchen.toml --follow --done",
		"now hall-kitchen.toml --log . --done", "bulk --readings probe.csv --prefermented 10%",
		"bulk --readings none.csv --prefermented 10%", "bulk --dough 61C --room 20C --prefermented 10%",
		"bulk --dough=-25C --room 20C --prefermented 10% --seen '30 %'", "convert '10g fresh yeast' --to instant --method scooped",
		"convert 375F --method scooped --to instant", "cost --weights '' --loaves 2", "done --core 95C --core 25min=80C",
		"formula hall-kitchen.toml --weights '1 kg wheat'", "formula hall-kitchen.toml --dough 2kg --flour 1kg --stock salt=2g",
		"formula hall-kitchen.toml --each 300g --baked 250g", "water --measured 26C --poured 18C --flour 21C --room 22C --mixer hand",
		"water --dough 26C --flour 21C --room 22C --warming 3dC --mixer hand", "learn none.toml", "learn --pool x=none.jsonl",
		"plan faulty.toml", "formula faulty.toml", "pln x", "log nte x", "log rise 30% --from 12cm --to 14cm",
		"bulk --dough 25C --prefermented 9% --mixed 14:00 --ready-by 14:00", "bulk --dough 25C --prefermented 9% --now soon",
		"levain --ratio 1:2:2 --room 25C --now soon", "bulk --readings hot.csv --prefermented 10%",
		"bulk --readings back.csv --prefermented 10%", "levain --ratio 1:2:2 --readings hot.csv",
		"vessel tub --diameter 22cm --dough 2kg --density 0", "vessel jar --diameter 6cm --height 12cm --rise 0%",
		"formula --weights '1 kg wheat, 700 g water' --pieces 2 --each 300g --baked 250g --loss 12% --dough 1kg --flour 1kg",
		"formula hall-kitchen.toml --pieces 0", "levain --want 0g --culture 0g --scale 0g", "log show --log hot.csv",
		"learn --half-life 5", "bulk --dough 25C --room 20C --night 90C --prefermented 10%",
		"plan hall-kitchen.toml --late 5h --step moon --now '2026-11-27 18:00'", "new other.toml --ask",
		"new hall-kitchen.toml", "new other.toml --wanted yesterday --hydration 700%", "new . --zone UTC", "new a/b.toml --zone UTC",
	} {
		b.does(line)
	}
	left, err := os.ReadDir(".")
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range left {
		fmt.Fprintln(&b.out, f.Name())
	}
	b.shows("notes.jsonl")
	b.kept("bench-refusals.txt")
}

// A new bread by questions: answers that are told as they are taken, one that cannot be read, and the way back.
func TestAnInterview(t *testing.T) {
	b := atBench(t)
	b.does("new loaf.toml --ask", "Hall loaf", "4", "back", "back", "Village loaf", "3", "x", "UTC",
		"", "", "", "", "", "", "", "", "", "", "", "", "", "", "", "")
	b.does("new flags.toml --name Flags --pieces 3 --zone Europe/Zurich --leaven yeast --cold no --mixer spiral --rye '20 %'")
	b.does("new guessed.toml")
	b.does("plan flags.toml --now '2026-11-25 20:00'")
	for _, name := range []string{"loaf.toml", "flags.toml", "guessed.toml"} {
		if _, err := os.Stat(name); err == nil {
			b.shows(name)
		}
	}
	b.kept("interview.txt")
}
