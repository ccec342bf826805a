package schedule

import (
	"context"
	"strings"
	"testing"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/workcheck"
)

// refused is the working of a "no", checked by hand, and its lines by their symbols.
func refused(t testing.TB, p Problem) (Timetable, map[string]string) {
	t.Helper()
	tt, err := p.Latest(context.Background())
	if err != nil || tt.Conflict == nil {
		t.Fatal(tt.Message(), err)
	}
	w := tt.Working()
	workcheck.Verify(t, w)
	out := map[string]string{}
	for _, line := range w.Lines(working.Reader{}) {
		out[line.Symbol] = line.Value
	}
	return tt, out
}

// The rules of a "no" are added up against the time there is.
func TestRefusalsAddUp(t *testing.T) {
	circle := Problem{Anchor: dawn, Horizon: mins(24 * 60), Steps: []DayStep{{ID: "A"}, {ID: "B"}, {ID: "C"}},
		Links: []Link{{From: "A", To: "B", Min: mins(60), Max: mins(90)}, {From: "B", To: "C", Min: mins(120), Max: NoLimit},
			{From: "A", To: "C", Min: -NoLimit, Max: mins(170)}}}
	tight := Problem{Anchor: dawn, Horizon: mins(24 * 60),
		Steps: []DayStep{{ID: "mix", Min: mins(30)}, {ID: "rise", Min: mins(200)}, {ID: "bake", Min: mins(40)}},
		Links: []Link{{From: "mix", To: "rise"}, {From: "rise", To: "bake", Min: mins(5), Max: mins(20)}},
		Bounds: []Bound{{Step: "bake", Edge: End, Latest: dawn.Add(mins(240).Duration()), Wanted: true,
			Words: working.Say("lunch at ten")}}}
	asleep := tight
	asleep.Resources = []Resource{{ID: "baker", Closed: []Span{
		{From: dawn.Add(mins(100).Duration()), To: dawn.Add(mins(300).Duration()), Words: working.Say("away")}}}}
	asleep.Steps = append([]DayStep(nil), tight.Steps...)
	asleep.Steps[2].Needs = []Need{{Resource: "baker", Amount: 1}}
	for _, c := range []struct {
		name string
		p    Problem
		want map[string]string
	}{
		{"a circle", circle, map[string]string{"P_least": "180 min (3h)", "Δ": "10 min"}},
		{"a day too short", tight, map[string]string{
			"P_1": "245 min (4h05m)", "E_1": "Sat 10:05", "Δ": "5 min", "P_2": "275 min (4h35m)", "E_2": "Sat 10:35",
			"Δ_W": "35 min"}},
		{"an absence", asleep, map[string]string{"Δ_W": "100 min (1h40m)", "E_3": "Sat 11:40"}},
		{"short by hours", loads(20, 45, 2, 210, 480), map[string]string{
			"T_there": "270 min (4h30m)", "T_room": "540 min (9h)", "T_lack": "360 min (6h)", "Δ_W": "180 min (3h)"}},
		{"short by number", loads(3, 60, 2, 0, 100), map[string]string{
			"T_there": "100 min (1h40m)", "n_fit": "2", "Δn": "1", "Δ_W": "20 min"}},
	} {
		tt, got := refused(t, c.p)
		for symbol, want := range c.want {
			if got[symbol] != want {
				t.Errorf("%s: %s is %q, want %q\n%s", c.name, symbol, got[symbol], want, tt.Working().Text(100))
			}
		}
	}
}

// What the clash and the nearest time rest on is in the words of the rules, and the likely length of a living step is
// told as likely.
func TestRefusalsNameTheirRules(t *testing.T) {
	p := hall()
	p.Horizon = quantity.Elapsed(p.Bounds[0].Latest.Sub(p.Anchor)) + mins(48*60)
	p.Anchor = p.Anchor.Add(mins(20 * 60).Duration())
	tt, got := refused(t, p)
	text := tt.Working().Text(100)
	if !strings.Contains(text, "lunch at 12:30") || !strings.Contains(text, "the first moment") {
		t.Error(text)
	}
	if tt.After != nil && got["Δ_W"] == "" {
		t.Errorf("the nearest time is not derived\n%s", text)
	}
}
