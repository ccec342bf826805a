package bench_test

import (
	"encoding/json"
	"fmt"
	"strings"
	"testing"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
	"example.org/maslin/schedule/bench"
)

func ExampleNewEntries() {
	seen := noted("")[0]
	seen.Kind, seen.Bread, seen.Rise = bench.SawRise, "Hall loaf", &bench.SeenRise{Rise: quantity.NewPercent(30)}
	all := bench.Observations{seen}
	says, err := all.Tells(seen)
	fmt.Println(bench.NewEntries{Entries: all, Says: says}.Report().Text(report.Options{}), err)
	// Output:
	// logged: Sat 10:40, Hall loaf: risen by 30 %
	//
	//   · no mixing was logged before it: a plan that is followed goes by it, and it
	//     teaches nothing until the mixing is logged too
	//  <nil>
}

// One entry is the headline, several are listed; a step is called as the plan calls it.
func TestNewEntries(t *testing.T) {
	step := noted("")[0]
	step.Kind, step.Step, step.Bread = bench.SawStep, "shape", "Rye"
	l := bench.NewEntries{Entries: bench.Observations{step}, Done: working.Say("shape the loaves")}
	if got := l.String(); got != "logged: Sat 10:40, Rye: done: shape the loaves (shape)" {
		t.Error(got)
	}
	l.Entries = append(l.Entries, noted("sticky")...)
	text := l.Report().Text(report.Options{})
	for _, want := range []string{
		"logged:\n", "Sat 10:40, Rye: done: shape the loaves (shape)", "Sat 10:40, note: sticky",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is missing in %s", want, text)
		}
	}
	if got := (bench.NewEntries{}).String(); got != "nothing new is logged" {
		t.Error(got)
	}
	data, err := json.Marshal(bench.NewEntries{Entries: noted("x"), Says: []working.Message{}})
	text = string(data)
	if err != nil || !strings.HasPrefix(text, `{"logged":[{"v":1,`) || !strings.HasSuffix(text, `"says":[]}`) {
		t.Errorf("%s, %v", data, err)
	}
}
