package desk

import (
	"encoding/json"
	"fmt"
	"os"
	"strings"
	"testing"
	"time"
)

func ask(t testing.TB, q Request) Response {
	t.Helper()
	in, err := json.Marshal(q)
	if err != nil {
		t.Fatal(err)
	}
	var out Response
	if err := json.Unmarshal(Answer(in), &out); err != nil {
		t.Fatal(err)
	}
	return out
}

func TestTry(t *testing.T) {
	for _, id := range append(Tasks(), worksheet) {
		for _, units := range []string{"metric", "US customary"} {
			t0 := time.Now()
			out := ask(t, Request{Do: "type", State: State{At: id, Units: units, Phase: open}, Width: 600})
			d := time.Since(t0)
			t0 = time.Now()
			w := ask(t, Request{Do: "working", Working: true, State: State{At: id, Units: units, Phase: open}, Width: 600})
			fmt.Println(id, units, d, time.Since(t0), len(out.Answer), len(w.Working), out.Headline, out.Value, out.Problems, out.Status)
			if len(out.Problems) > 0 || out.Headline == "" && id != worksheet {
				t.Error(id, out.Problems, out.Answer)
			}
		}
	}
	out := ask(t, Request{Do: "show", State: State{At: "percentages.scale"}, Width: 600})
	os.WriteFile("/tmp/page.html", []byte(out.Page), 0o600)
	if strings.Contains(out.Page, "fault") {
		t.Error()
	}
}
