package main

import (
	"context"
	"encoding/json"
	"fmt"
	"log"
	"net"
	"net/http"
	"net/http/httptest"
	"os"
	"os/exec"
	"strings"
	"testing"
	"time"

	"example.org/maslin/examples/internal/tomlbind"
	"example.org/maslin/schedule/bakeday"
)

func post(body string) *httptest.ResponseRecorder { return postAs("application/json", body) }

func postAs(kind, body string) *httptest.ResponseRecorder {
	w := httptest.NewRecorder()
	r := httptest.NewRequest(http.MethodPost, "/plan", strings.NewReader(body))
	r.Header.Set("Content-Type", kind)
	now := func() time.Time { return time.Date(2026, 11, 25, 20, 0, 0, 0, time.UTC) }
	handler(now).ServeHTTP(w, r)
	return w
}

// rolls is the shipped bake as JSON, without what JSON leaves at zero.
const rolls = `{"name": "Coffee rolls", "wanted": "Sunday 15:00", "salt": "1.8 %",
 "loaves": {"pieces": 24, "baked": "70 g", "loss": "12 %", "style": "soft roll"},
 "flour": [{"name": "wheat flour", "percent": "100 %", "kind": "wheat"}],
 "liquid": [{"name": "water", "percent": "60 %"}],
 "other": [{"name": "instant yeast", "percent": "0.8 %", "kind": "instant yeast"}],
 "mixing": {"temperature": "25 °C", "mixer": "planetary"},
 "bulk": {"rise": "150 %"}, "shaping": {"takes": "45m"},
 "oven": {"temperature": "210 °C", "together": 12, "preheat": "20m", "uncovered": "16m"},
 "kitchen": {"zone": "Europe/Zurich", "mixer": [{"kind": "planetary", "bowl": "7 L"}], "altitude": "1150 m", "day": "22 °C", "night": "19 °C", "tap": "10 °C"}}`

func TestABakeBecomesAPlan(t *testing.T) {
	w := post(rolls)
	var s bakeday.PlanData
	if err := json.Unmarshal(w.Body.Bytes(), &s); err != nil || w.Code != http.StatusOK {
		t.Fatal(w.Code, err, w.Body)
	}
	if !s.Possible || s.Formula.Pieces != 24 || len(s.Steps) < 6 || s.Wanted.Format("Mon 15:04") != "Sun 15:00" {
		t.Errorf("%+v", s)
	}
}

func TestWhatIsWrongIsListed(t *testing.T) {
	for _, c := range []struct {
		name, body string
		status     int
		fields     string
	}{
		{"two faults", strings.NewReplacer(`"pieces": 24`, `"pieces": 0`, `"210 °C"`, `"21 °C"`).Replace(rolls), 422, "loaves.pieces oven.temperature"},
		{"zone", strings.Replace(rolls, "Europe/Zurich", "Europe/Atlantis", 1), 422, "kitchen.zone"},
		{"no zone", strings.Replace(rolls, "Europe/Zurich", "", 1), 422, "kitchen.zone"},
		{"no JSON", "salt = 2", 422, ""},
		{"unknown name", `{"sallt": "2 %"}`, 422, "sallt"},
		{"a unit", strings.Replace(rolls, `"1.8 %"`, `"1.8 g"`, 1), 422, "salt"},
		{"three units", strings.NewReplacer(`"1.8 %"`, `"1.8 g"`, `"percent": "60 %"`, `"percent": 60`, `"16m"`, `"16"`).Replace(rolls), 422, "salt liquid[0].percent oven.uncovered"},
	} {
		w := post(c.body)
		var all []struct {
			Path, Code, Want string
		}
		if err := json.Unmarshal(w.Body.Bytes(), &all); err != nil || w.Code != c.status || len(all) == 0 {
			t.Errorf("%s: %d %v %.200s", c.name, w.Code, err, w.Body)
			continue
		}
		var fields []string
		for _, p := range all {
			if p.Want == "" || p.Code == "" {
				t.Errorf("%s: nothing wanted", c.name)
			}
			fields = append(fields, p.Path)
		}
		if got := strings.Join(fields, " "); got != c.fields {
			t.Errorf("%s: %q, want %q", c.name, got, c.fields)
		}
	}
	if w := post(`{"name": "` + strings.Repeat("x", 2<<20) + `"}`); w.Code != http.StatusRequestEntityTooLarge {
		t.Error("huge:", w.Code)
	}
	w := httptest.NewRecorder()
	handler(time.Now).ServeHTTP(w, httptest.NewRequest(http.MethodGet, "/plan", nil))
	if w.Code != http.StatusMethodNotAllowed {
		t.Error(w.Code)
	}
}

// TestTheShippedBakesSurviveJSON: a bake written as JSON plans as the bake file does.
func TestTheShippedBakesSurviveJSON(t *testing.T) {
	for _, name := range []string{"hall-kitchen.toml", "same-day-rolls.toml", "supper-loaves.toml"} {
		bread, body := shipped(t, name)
		var s bakeday.PlanData
		if w := post(string(body)); json.Unmarshal(w.Body.Bytes(), &s) != nil || !s.Possible || s.Name != bread {
			t.Errorf("%s: %d %.300s", name, w.Code, w.Body)
		}
	}
}

// A bake file is posted as it is written by hand, and makes the same plan as its JSON; what is wrong with it is told by
// line and column, and a kitchen file is not looked for on the server.
func TestABakeFileIsPosted(t *testing.T) {
	source, err := os.ReadFile("../bakes/hall-kitchen.toml")
	if err != nil {
		t.Fatal(err)
	}
	_, body := shipped(t, "hall-kitchen.toml")
	if w := postAs("application/toml; charset=utf-8", string(source)); w.Code != http.StatusOK || w.Body.String() != post(string(body)).Body.String() {
		t.Errorf("%d %.300s", w.Code, w.Body)
	}
	for file, want := range map[string]string{
		"salt = 2": `[{"path":"salt","line":1,"column":8,"message":"wrong form: got the number 2, want a text: ` +
			`a percentage with its sign, such as \"68 %\""}]`,
		"kitchen = \"hall.toml\"": `[{"path":"kitchen","line":1,"column":11,"message":"wrong form: got the text ` +
			`\"hall.toml\", want an object"}]`,
		"salt = ": `[{"line":1,"column":7,"message":"no TOML: expected value, not end of input"}]`,
	} {
		if w := postAs("application/toml", file); w.Code != http.StatusUnprocessableEntity || strings.TrimSpace(w.Body.String()) != want {
			t.Errorf("%s: %d %s", file, w.Code, w.Body)
		}
	}
	w := postAs("application/toml", strings.Replace(string(source), `"245 °C"`, `"24 °C"`, 1))
	if w.Code != http.StatusUnprocessableEntity || !strings.Contains(w.Body.String(), `"path":"oven.temperature","line":56,"column":15,`) {
		t.Errorf("%d %.300s", w.Code, w.Body)
	}
}

// shipped is a bake file of the examples as JSON, and what its bread is called.
func shipped(t *testing.T, name string) (bread string, body []byte) {
	t.Helper()
	source, err := os.ReadFile("../bakes/" + name)
	if err != nil {
		t.Fatal(err)
	}
	var b bakeday.Bake
	if f := tomlbind.Bind(source, &b); len(f.Faults) > 0 {
		t.Fatal(f.Faults)
	}
	body, err = json.Marshal(b)
	if err != nil {
		t.Fatal(err)
	}
	return b.Name, body
}

// As much is read as is said, to the byte; answers say that they are JSON; who does not wait is told so.
func TestTheDoor(t *testing.T) {
	fill := strings.Repeat(" ", 1<<20-len(rolls))
	if w := post(rolls + fill); w.Code != http.StatusOK || w.Header().Get("Content-Type") != "application/json" {
		t.Error("1 MiB:", w.Code, w.Header())
	}
	if w := post(rolls + fill + " "); w.Code != http.StatusRequestEntityTooLarge || w.Body.String() != "\"at most 1 MB of JSON\"\n" {
		t.Error("one byte more:", w.Code, w.Body)
	}
	gone, leave := context.WithCancel(context.Background())
	leave()
	w := httptest.NewRecorder()
	handler(time.Now).ServeHTTP(w, httptest.NewRequest(http.MethodPost, "/plan", strings.NewReader(rolls)).WithContext(gone))
	if w.Code != http.StatusServiceUnavailable || !strings.Contains(w.Body.String(), "cancel") {
		t.Error("nobody waits:", w.Code, w.Body)
	}
	w = httptest.NewRecorder()
	handler(time.Now).ServeHTTP(w, httptest.NewRequest(http.MethodGet, "/", nil))
	if w.Code != http.StatusNotFound {
		t.Error(w.Code)
	}
}

// As a program it listens where it is told to, waits for no sender without end, and plans from now on.
func TestMain(m *testing.M) {
	if os.Getenv("HANDLER_IS_THE_PROGRAM") != "" {
		main()
		return
	}
	var said strings.Builder
	log.SetOutput(&said)
	status := m.Run()
	if said.Len() > 0 && status == 0 {
		fmt.Fprintln(os.Stderr, "nothing went wrong, and the log says:", said.String())
		status = 1
	}
	os.Exit(status)
}

func TestTheProgram(t *testing.T) {
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Skip(err)
	}
	address := l.Addr().String()
	_ = l.Close() // the program listens there now, if nobody else is quicker
	cmd := exec.Command(os.Args[0], "-address", address)
	cmd.Env = append(os.Environ(), "HANDLER_IS_THE_PROGRAM=1")
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	ended := make(chan struct{})
	go func() { _ = cmd.Wait(); close(ended) }()
	defer func() { _ = cmd.Process.Kill(); <-ended }()
	for tries := 0; ; tries++ {
		answer, err := http.Post("http://"+address+"/plan", "application/json", strings.NewReader(rolls))
		if err == nil {
			var s bakeday.PlanData
			err = json.NewDecoder(answer.Body).Decode(&s)
			_ = answer.Body.Close()
			if ahead := time.Until(s.Wanted); err != nil || answer.StatusCode != http.StatusOK || ahead <= 0 || ahead > 15*24*time.Hour {
				t.Errorf("%d, %v: wanted at %v", answer.StatusCode, err, s.Wanted)
			}
			break
		}
		select {
		case <-ended:
			t.Fatalf("it ended: %v", cmd.ProcessState)
		case <-time.After(20 * time.Millisecond):
		}
		if tries > 3000 {
			t.Fatal(err)
		}
	}
	s := server("x:1")
	for _, patience := range []time.Duration{s.ReadTimeout, s.WriteTimeout} {
		if s.Addr != "x:1" || patience < time.Second || patience > time.Minute {
			t.Errorf("%q waits for %v", s.Addr, patience)
		}
	}
}
