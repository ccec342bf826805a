package desk

import (
	"encoding/xml"
	"errors"
	"io"
	"strings"
	"testing"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/house"
	"example.org/maslin/schedule/exercise"
)

func ask(t testing.TB, q Request) Response {
	t.Helper()
	return Answer(q)
}

// Every task has an answer as it stands, in both systems of units, with a working whose last value is told in it.
func TestEveryTaskHasAnAnswer(t *testing.T) {
	if len(Tasks()) < 16 {
		t.Fatalf("%d tasks", len(Tasks()))
	}
	for _, id := range Tasks() {
		for _, units := range []string{"metric", "US customary"} {
			out := ask(t, Request{Do: "type", Working: true, Width: 1200, State: State{At: id, Units: units, Phase: open}})
			if out.Headline == "" || len(out.Problems) > 0 || out.Status != out.Headline {
				t.Errorf("%s, %s: %q, %v", id, units, out.Headline, out.Problems)
			}
			if !strings.Contains(out.Working, "<math") {
				t.Errorf("%s, %s: no working", id, units)
			}
			if wrong := map[string]string{"metric": "°F", "US customary": "°C"}[units]; strings.Contains(out.Headline, wrong) {
				t.Errorf("%s: %s in %s", id, units, out.Headline)
			}
		}
	}
}

// What the page shows is well formed: every tag that is opened is closed, and every id is there once.
func TestPagesAreWellFormed(t *testing.T) {
	for _, id := range append(Tasks(), worksheet) {
		for _, phase := range []string{guessing, locked, shown, open} {
			out := ask(t, Request{Do: "open", Width: 400, Working: true,
				Fragment: State{At: id, Phase: phase, Guess: "12",
					Fields: map[string]string{"key": "on", "answer.1": "<b>"}}.Fragment()})
			if id != worksheet {
				out = ask(t, Request{Do: "open", Width: 400, Working: true,
					Fragment: State{At: id, Phase: phase, Guess: "12"}.Fragment()})
			}
			d := xml.NewDecoder(strings.NewReader(strings.NewReplacer("&nbsp;", " ").Replace(out.Page)))
			d.Strict, d.AutoClose, d.Entity = false, xml.HTMLAutoClose, xml.HTMLEntity
			ids := map[string]bool{}
			depth := 0
			for {
				token, err := d.Token()
				if errors.Is(err, io.EOF) {
					break
				}
				if err != nil {
					t.Fatalf("%s, %q: %v", id, phase, err)
				}
				switch token := token.(type) {
				case xml.StartElement:
					depth++
					for _, a := range token.Attr {
						if a.Name.Local != "id" {
							continue
						}
						if ids[a.Value] {
							t.Errorf("%s, %q: two elements are %q", id, phase, a.Value)
						}
						ids[a.Value] = true
					}
				case xml.EndElement:
					depth--
				}
			}
			if depth != 0 || !ids["task-title"] {
				t.Errorf("%s, %q: depth %d, ids %v", id, phase, depth, ids)
			}
		}
	}
}

// The rhythm: guess, lock, reveal, change one thing.
func TestGuessLockReveal(t *testing.T) {
	s := State{At: "water.friction", Guess: "about twelve"}
	if out := ask(t, Request{Do: "lock", State: s}); out.State.Phase != guessing ||
		!strings.Contains(out.Page, "guess-problem") {
		t.Fatalf("a guess that cannot be read is locked: %+v", out.State)
	}
	s.Guess = "12"
	first := ask(t, Request{Do: "lock", State: s})
	if first.State.Phase != locked || first.Headline != "" || strings.Contains(first.Page, "14.0") ||
		first.Focus != "reveal" {
		t.Fatalf("locked: %q %q, or the answer is there already", first.State.Phase, first.Headline)
	}
	second := ask(t, Request{Do: "reveal", State: first.State})
	if !strings.Contains(second.Answer, "too low by 2.0 Δ°C") || second.Value != "14 Δ°C" {
		t.Fatalf("revealed: %s %s", second.Value, second.Answer)
	}
	next := second.State
	next.Fields = map[string]string{"dough": "27 °C"}
	third := ask(t, Request{Do: "type", State: next})
	for _, want := range []string{"You changed one thing, dough when the mixer stops, from 26 °C to 27 °C",
		"friction factor 14.0", "friction factor 17.0"} {
		if !strings.Contains(third.Answer, want) {
			t.Errorf("after a change: no %q in %s", want, third.Answer)
		}
	}
	next.Fields["water"] = "19 °C"
	if out := ask(t, Request{Do: "type", State: next}); !strings.Contains(out.Answer, "You changed 2 things") {
		t.Errorf("after two changes: %s", out.Answer)
	}
	again := ask(t, Request{Do: "again", State: next}).State
	if again.Phase != guessing || again.Guess != "" || again.Fields["water"] != "19 °C" {
		t.Errorf("again: %+v", again)
	}
	if fresh := ask(t, Request{Do: "fresh", State: next}).State; len(fresh.Fields) > 0 {
		t.Errorf("fresh: %+v", fresh)
	}
}

// Verdicts: inside and outside a range, right, too high.
func TestVerdicts(t *testing.T) {
	for _, c := range []struct{ at, guess, want string }{
		{"clock.rise", "5 h", "lies in the library"}, {"clock.rise", "20", "lies outside"},
		{"water.friction", "14.2", "is right"},
		{"water.friction", "20", "too high by 6.0 Δ°C"}, {"heat.crust", "9", "lies in"},
		{"percentages.scale", "1500 g", "too low by 314.0 g"},
	} {
		out := ask(t, Request{Do: "type", State: State{At: c.at, Guess: c.guess, Phase: shown}})
		if !strings.Contains(out.Answer, c.want) {
			t.Errorf("%s, %s: no %q in %.300s", c.at, c.guess, c.want, out.Answer)
		}
	}
}

// A board's corner goes where the pointer is, and no other.
func TestDrawing(t *testing.T) {
	q := Request{Do: "draw", Name: "history", Across: 0.93, Down: 0.5, Width: 1200,
		State: State{At: "clock.rise", Phase: open}}
	out := ask(t, q)
	if got := out.State.Fields["history"]; got != "0 h|26 °C;2 h|25 °C;5 h|23 °C;12 h|20 °C" {
		t.Errorf("%s", got)
	}
	if out.Board["history"] == "" || out.Headline == "" {
		t.Error("no board or no answer")
	}
	q.State.Units = "US customary"
	if got := ask(t, q).State.Fields["history"]; !strings.HasSuffix(got, "12 h|68 °F") {
		t.Errorf("%s", got)
	}
	q.Name = "jar"
	if out := ask(t, q); len(out.State.Fields) > 0 {
		t.Errorf("a table that is not drawn: %v", out.State.Fields)
	}
}

// A reading of the jar narrows the band.
func TestJarNarrows(t *testing.T) {
	width := func(fields map[string]string) float64 {
		s := State{At: "clock.rise", Phase: open, Fields: fields}
		tk, _ := taskOf(s.At)
		a, err := tk.solve(&values{task: tk, texts: fields})
		if err != nil {
			t.Fatal(err)
		}
		return float64(a.high.(quantity.Elapsed) - a.low.(quantity.Elapsed))
	}
	if before, after := width(nil), width(map[string]string{"jar": "3 h|35 %"}); after > before/2 {
		t.Errorf("%v before, %v after", before, after)
	}
}

// Rows come and go; a row that is empty is no row.
func TestRows(t *testing.T) {
	s := State{At: "water.class", Phase: open}
	added := ask(t, Request{Do: "add", Name: "batches", State: s})
	if rows := rowsOf(added.State.Fields["batches"]); len(rows) != 4 || !blank(rows[3]) ||
		added.Focus != "f-batches[3].flour" {
		t.Errorf("%v, %s", rows, added.Focus)
	}
	if !strings.Contains(added.Answer, "from 3 batches") {
		t.Errorf("an empty row counts: %.200s", added.Answer)
	}
	dropped := ask(t, Request{Do: "drop", Name: "batches", Row: 0, State: added.State})
	if !strings.Contains(dropped.Answer, "from 2 batches") {
		t.Errorf("%.200s", dropped.Answer)
	}
	broken := ask(t, Request{Do: "type", State: State{At: "water.class",
		Fields: map[string]string{"batches": "21 °C|15 °C|22 °C|8 min|x"}}})
	if broken.Problems["batches[0].dough"] == "" {
		t.Errorf("%v", broken.Problems)
	}
}

// A worksheet is the library's; an answer is judged by it.
func TestWorksheet(t *testing.T) {
	set, err := exercise.Paper{Count: 4, Seed: 3, Difficulty: exercise.Hard,
		Topics: []exercise.Topic{exercise.Water, exercise.Loss}}.Exercises()
	if err != nil {
		t.Fatal(err)
	}
	s := State{At: worksheet, Fields: map[string]string{"count": "4", "seed": "3", "difficulty": "hard",
		"topic.water": "on", "topic.loss": "on"}}
	out := ask(t, Request{Do: "paper", State: s})
	for _, e := range set.Exercises {
		if !strings.Contains(out.Page, entities.Replace(e.Question.String())) {
			t.Errorf("no %s", e.Question)
		}
	}
	if strings.Contains(out.Page, "paper-key") {
		t.Error("the key is there before it is asked for")
	}
	for i, e := range set.Exercises {
		for text, want := range map[string]string{
			e.Answer.Text(working.Reader{}): "Right.", e.Slips[0].Value.Text(working.Reader{}): e.Slips[0].Mistake.String(),
			"?": "cannot be read",
		} {
			text, _, _ := strings.Cut(text, " (")
			s.Fields["answer.1"] = text
			if got := judged(e, text, working.Reader{}).String(); !strings.Contains(got, want) {
				t.Errorf("question %d, %q: %s, want %s", i+1, text, got, want)
			}
		}
	}
	keyed := ask(t, Request{Do: "key", State: s})
	if !strings.Contains(keyed.Page, "paper-key") || keyed.State.Fields["key"] != "on" {
		t.Error("no key")
	}
	for _, wrong := range []map[string]string{{"count": "0"}, {"count": "99"}, {"seed": "-1"}, {"difficulty": "deadly"},
		{"count": "six"}} {
		if out := ask(t, Request{Do: "paper", State: State{At: worksheet, Fields: wrong}}); len(out.Problems) == 0 {
			t.Errorf("%v is taken", wrong)
		}
	}
}

// The sentences of the page have identifiers of their own, as those of the library do.
func TestSentencesOfThePage(t *testing.T) {
	english, faults, err := house.Sentences("../../..")
	if err != nil || len(faults) > 0 {
		t.Fatal(err, faults)
	}
	for id := range english {
		if strings.HasPrefix(id, "desk.") {
			t.Errorf("the library has a sentence of the page: %s", id)
		}
	}
}
