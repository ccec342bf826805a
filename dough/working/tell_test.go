package working_test

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"pgregory.net/rapid"
)

// crumb stands for any enumeration of a room.
type crumb int

func (c crumb) String() string { return [...]string{"open", "close"}[c] }

// german is a catalog as an application passes it.
func german() working.Language {
	return working.Language{
		Tag: "de-CH", Decimal: ",",
		Sentences: map[string]string{
			"test.water":            "bei %[2]v Mehl das Wasser auf %[1].1f bringen",
			"test.crumb":            "Krume %v",
			"working.caution":       "%s: %v",
			"working.range":         "%[1]s bis %[3]s (%[4]s), wohl %[2]s",
			"working.hours_minutes": "%d Std. %d Min.",
			"working.day_clock":     "%s, %s Uhr",
			"working.date":          "%s, %d. %s",
			"working.and":           "%v und %v",
			"error.at":              "%s: %v",
			"error.got_want":        "%v: %s gegeben, %s verlangt",
			"error.out_of_range":    "außerhalb der Grenzen",
			"test.faulty":           "nur %v",
			"test.beyond":           "%[9]v %v",
		},
		Words: map[string]string{
			"working_test.crumb/open": "offen", "time.Weekday/Sat": "Sa", "time.Weekday/Saturday": "Samstag",
			"time.Month/November":   "November",
			"working.Subject/burns": "Verbrennungen", "test.crumb#working_test.crumb/close": "dicht",
		},
	}
}

// A sentence is written once and told to whoever reads it.
func ExampleTell() {
	m := working.Tell("test.water", "water at %.1f for flour at %v", quantity.Celsius(25.25), quantity.Celsius(20))
	us := working.Reader{Units: working.USCustomary}
	fmt.Println(m.ID())
	fmt.Println(m)
	fmt.Println(m.Text(us))
	fmt.Println(m.Text(working.Reader{Language: german()}))
	kept, _ := json.Marshal(m)
	fmt.Println(string(kept))
	var back working.Message
	_ = json.Unmarshal(kept, &back)
	fmt.Println(back == m, back.Text(us))
	// Output:
	// test.water
	// water at 25.2 °C for flour at 20 °C
	// water at 77 °F for flour at 68 °F
	// bei 20 °C Mehl das Wasser auf 25,2 °C bringen
	// {"id":"test.water","text":"water at 25.2 °C for flour at 20 °C","say":"water at %.1f for flour at %v","args":[{"temperature":"25.25 °C"},{"temperature":"20 °C"}]}
	// true water at 77 °F for flour at 68 °F
}

// everyKind is a message with each kind of argument.
func everyKind() working.Message {
	zurich := time.FixedZone("Europe/Zurich", 3600)
	noon := time.Date(2026, 11, 28, 14, 5, 0, 0, zurich)
	rise := quantity.TimeRange{
		Early:       310 * time.Minute,
		Likely:      370 * time.Minute,
		Late:        445 * time.Minute,
		Probability: quantity.NewPercent(80),
	}
	return working.Tell("test.all",
		"%v|%.1f|%v|%v|%v|%.1f|%v|%v|%v|%v|%t|%d|%x|%v|%v|%d|%.2f|%+.1f|%02d|%v|%s|%q|%v|%v|%v|%v",
		quantity.Grams(780), quantity.Celsius(24.5), quantity.DeltaCelsius(-12), quantity.Meters(1150),
		quantity.Liters(1.5), quantity.NewPercent(66.67), quantity.Elapsed(270*time.Minute), 90*time.Second,
		-45*time.Minute, noon, noon, noon, noon, rise, rise.Probability, 6, math.Pi, 2.5, 7, -3, "Wilma %v", "Wilma",
		crumb(0), working.And("a", quantity.Grams(3), crumb(1)), time.Saturday, working.Message{})
}

func TestEveryKindOfArgument(t *testing.T) {
	for _, c := range []struct {
		name   string
		reader working.Reader
		want   string
	}{
		{"metric", working.Reader{},
			"780 g|24.5 °C|−12 Δ°C|1150 m|1500 mL|66.7 %|4h30m|1m30s|−45m|Sat 14:05|14:05|Saturday 28 November|Saturday 28 " +
				"November 2026, 14:05|" +
				"5h10m to 7h25m (80 %), likely 6h10m|80 %|6|3.14|+2.5|07|−3|Wilma %v|\"Wilma\"|open|a, 3 g and close|Saturday|"},
		{"US", us, "1 lb 11.5 oz|76 °F|−21.6 Δ°F|3773 ft|1.6 qt|66.7 %|4h30m|1m30s|−45m|Sat 2:05 pm|2:05 pm|Saturday 28 " +
			"November|Saturday 28 November 2026, 2:05 pm|" +
			"5h10m to 7h25m (80 %), likely 6h10m|80 %|6|3.14|+2.5|07|−3|Wilma %v|\"Wilma\"|open|a, 0.11 oz and close|Saturday|"},
		{"German, in UTC", working.Reader{Language: german(), Zone: time.UTC},
			"780 g|24,5 °C|−12 Δ°C|1150 m|1500 mL|66,7 %|4 Std. 30 Min.|1m30s|−45m|Sa, 13:05 Uhr|13:05|Samstag, 28. " +
				"November|Samstag, 28. November 2026, 13:05|" +
				"5 Std. 10 Min. bis 7 Std. 25 Min. (80 %), wohl 6 Std. 10 Min.|80 %|6|3,14|+2,5|07|−3|Wilma " +
				"%v|\"Wilma\"|offen|a, 3 g und close|Samstag|"},
	} {
		if got := everyKind().Text(c.reader); got != c.want {
			t.Errorf("%s:\n got %s\nwant %s", c.name, got, c.want)
		}
	}
	kept, err := json.Marshal(everyKind())
	var back working.Message
	if err != nil || json.Unmarshal(kept, &back) != nil || back != everyKind() {
		t.Errorf("JSON is not the same on the way back: %v\n%s", err, kept)
	}
}

func TestCatalogsFallBackToEnglish(t *testing.T) {
	de := working.Reader{Language: german()}
	for _, c := range []struct {
		m    working.Message
		want string
	}{
		{working.Tell("test.unknown", "no such %v", crumb(0)), "no such offen"},
		{working.Tell("test.crumb", "a %v crumb", crumb(1)), "Krume dicht"},
		{working.Tell("test.faulty", "%v of %v", 1, 2), "1 of 2"},
		{working.Tell("test.beyond", "%v", 1), "1"},
		{working.Caution{Subject: "burns", Text: working.Tell("test.unknown", "x")}.Message(), "Verbrennungen: x"},
		{working.Tell("test.n", "%d {1|piece|pieces}, %[2]d {2|loaf|loaves}", 1, 2), "1 piece, 2 loaves"},
	} {
		if got := c.m.Text(de); got != c.want {
			t.Errorf("got %q, want %q", got, c.want)
		}
	}
	err := german().Check(working.Language{Sentences: map[string]string{"test.water": "%v %v", "test.faulty": "%v of %v",
		"test.missing": "x"}})
	text := fmt.Sprint(err)
	for _, want := range []string{"sentences[test.missing]: required", "sentences[test.faulty]: inconsistent",
		"sentences[working.and]: inconsistent"} {
		if !strings.Contains(text, want) {
			t.Errorf("no complaint %q in %s", want, text)
		}
	}
	if strings.Contains(text, "[test.water]") {
		t.Error(text)
	}
	if err := (working.Language{Sentences: map[string]string{"a.b": "%[2]v " +
		"%[1]v"}}).Check(working.Language{Sentences: map[string]string{"a.b": "%v %v"}}); err != nil {
		t.Error(err)
	}
}

func TestProblemsCanBeToldInAnotherLanguage(t *testing.T) {
	var bad quantity.Problems
	bad.Int("Pieces", -1, 1, 1000)
	bad.Required("Name", quantity.Tell("test.want_name", "a name"))
	bad.Join("Oven", errors.New("is cold"))
	err := bad.Err()
	if got := working.Problem(err).String(); got != err.Error() {
		t.Errorf("English:\n%s\nwant\n%s", got, err)
	}
	want := "Pieces: außerhalb der Grenzen: −1 gegeben, 1 to 1000 verlangt\nName: required: want a name\nOven: is cold"
	if got := working.Problem(err).Text(working.Reader{Language: german()}); got != want {
		t.Errorf("German:\n%s\nwant\n%s", got, want)
	}
	for err, id := range map[error]string{context.DeadlineExceeded: "error.time_ran_out",
		context.Canceled: "error.canceled", errors.New("x"): "error.other"} {
		if m := working.Problem(err); m.ID() != id || !strings.Contains(m.String(), err.Error()) {
			t.Errorf("%v: %s %s", err, m.ID(), m)
		}
	}
	if !working.Problem(nil).IsZero() {
		t.Error("no error is a message")
	}
}

func TestSmallAmountsDoNotShowAsZero(t *testing.T) {
	for _, c := range []struct {
		m    working.Message
		want string
	}{
		{working.Tell("t.a", "%.1f", quantity.Grams(0.04)), "0.040 g"},
		{working.Tell("t.a", "%.0f", quantity.Grams(0.35)), "0.35 g"},
		{working.Tell("t.a", "%.0f", quantity.Grams(0.6)), "1 g"},
		{working.Tell("t.a", "%.1f", quantity.NewPercent(0.04)), "0.040 %"},
		{working.Tell("t.a", "%.1f", -0.004), "−0.0040"},
		{working.Tell("t.a", "%.1f", 1e-9), "0.0"},
		{working.Tell("t.a", "%.1f", 0.0), "0.0"},
		{working.Tell("t.a", "%.1f", quantity.Celsius(0.01)), "0.0 °C"},
	} {
		if got := c.m.String(); got != c.want {
			t.Errorf("got %q, want %q", got, c.want)
		}
	}
}

func TestRefusedMessages(t *testing.T) {
	for text, path := range map[string]string{
		`3`: "", `[]`: "", `{"args":3}`: "Args", `{"say":null}`: "Say", `{"id":null}`: "ID", `{"says":"x"}`: "says",
		`{"say":"x","say":"y"}`: "Say", `{"args":[{"mass":"3 g"}]}`: "say",
		`{"say":"%v","args":[{"mass":null}]}`: "args[0].mass",
		`{"say":"%v","args":[3]}`:             "args[0]",
		`{"args":[{"mass":"3"}]}`:             "args[0].mass", `{"args":[{"mass":3}]}`: "args[0].mass",
		`{"args":[{"mass":"3 g","delta":"3"}]}`: "args[0]", `{"args":[{"x":"y"}]}`: "args[0].x",
		`{"args":[{"word":"y"}]}`: "args[0].word", `{"args":[{"time":"noon"}]}`: "args[0].time",
		`{"args":[{"number":"3"}]}`: "args[0].number", `{"args":[{"number":1e999}]}`: "args[0].number",
		`{"args":[{"range":[]}]}`:                           "args[0].range",
		`{"args":[{"range":[{"mass":"a"},1,2,3]}]}`:         "args[0].range[0].mass",
		`{"args":[{"duration":"4"}]}`:                       "args[0].duration",
		`{"args":[{"message":{"args":[{"percent":"5"}]}}]}`: "args[0].message.args[0].percent",
	} {
		var m working.Message
		err := json.Unmarshal([]byte(text), &m)
		var in *quantity.InputError
		if !errors.As(err, &in) || in.GoPath != path || !m.IsZero() {
			t.Errorf("%s: %v, %v", text, err, m)
		}
	}
	deep := strings.Repeat(`{"say":"%v","args":[{"message":`, 100) + `"x"` + strings.Repeat("}]}", 100)
	if err := json.Unmarshal([]byte(deep), new(working.Message)); !errors.Is(err, quantity.ErrOutOfRange) {
		t.Error(err)
	}
	within := strings.Repeat(`{"say":"%v","args":[{"message":`, 20) + `"x"` + strings.Repeat("}]}", 20)
	if err := json.Unmarshal([]byte(within), new(working.Message)); err != nil {
		t.Error(err)
	}
	var m working.Message
	if err := json.Unmarshal([]byte(`"100 % rye, %v"`), &m); err != nil || m.String() != "100 % rye, %v" {
		t.Error(m, err)
	}
}

// Whatever the templates and the arguments are, nothing panics, JSON comes back equal, and every argument of the
// English sentence is there whatever the catalog says.
func TestHostileTemplates(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		template := rapid.OneOf(rapid.String(), rapid.StringMatching(`(%|\[|\]|[0-9.+%{|}vdstqfgx ]){0,12}`))
		english, translated := template.Draw(t, "english"), template.Draw(t, "translated")
		name, grams := rapid.String().Draw(t, "name"), rapid.Float64().Draw(t, "grams")
		m := working.Tell("a.b", "%v "+english, "<name>", quantity.Grams(grams), grams, name)
		if !strings.Contains(
			m.Text(working.Reader{Language: working.Language{Sentences: map[string]string{"a.b": translated}}}),
			"<name>") {
			t.Fatalf("the translation %q loses the name", translated)
		}
		kept, err := json.Marshal(m)
		var back working.Message
		if err != nil || json.Unmarshal(kept, &back) != nil {
			t.Fatalf("%v: %s", err, kept)
		}
		if strings.ToValidUTF8(m.String(), "") == m.String() && strings.ToValidUTF8(english+name, "") == english+name &&
			back != m {
			t.Fatalf("%s came back as %#v", kept, back)
		}
	})
}

// What a catalog lacks comes from the one below it; nothing of either changes.
func TestACatalogOverAnother(t *testing.T) {
	base := working.Language{Tag: "de", Decimal: ",", Clock: working.Clock24,
		Sentences: map[string]string{"a.b": "b %v", "a.c": "c"}, Words: map[string]string{"x.Y/z": "Z"}}
	own := working.Language{Tag: "de-AT", Sentences: map[string]string{"a.b": "eigenes %v"}}
	got := own.Over(base)
	want := working.Language{Tag: "de-AT", Decimal: ",", Clock: working.Clock24,
		Sentences: map[string]string{"a.b": "eigenes %v", "a.c": "c"}, Words: map[string]string{"x.Y/z": "Z"}}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
	got.Sentences["a.c"], got.Words["x.Y/z"] = "", ""
	if base.Sentences["a.b"] != "b %v" || base.Sentences["a.c"] != "c" || base.Words["x.Y/z"] != "Z" ||
		len(own.Sentences) != 1 {
		t.Error("changed:", base, own)
	}
	if text := working.Tell("a.b", "in English %v",
		3).Text(working.Reader{Language: own.Over(base)}); text != "eigenes 3" {
		t.Error(text)
	}
	last := working.Language{Tag: "x", Sentences: map[string]string{"a.b": "last", "a.d": "d"}}
	if three := own.Over(base, last); three.Sentences["a.b"] != "eigenes %v" || three.Sentences["a.c"] != "c" ||
		three.Sentences["a.d"] != "d" || three.Tag != "de-AT" {
		t.Error(three)
	}
	if diff := cmp.Diff(base, (working.Language{}).Over(base)); diff != "" {
		t.Error(diff)
	}
}

// What an oven is set to is told in steps of its dial: 5 °F, or whole degrees Celsius.
func TestOvenSettings(t *testing.T) {
	us := working.Reader{Units: working.USCustomary}
	for _, c := range []struct {
		set        quantity.Temperature
		metric, us string
	}{
		{quantity.Celsius(220), "220 °C", "430 °F"}, {quantity.Celsius(200), "200 °C", "390 °F"},
		{quantity.Celsius(232), "232 °C", "450 °F"}, {quantity.Fahrenheit(475), "245 °C", "475 °F"},
		{quantity.Fahrenheit(450), "230 °C", "450 °F"}, {quantity.Celsius(275), "275 °C", "525 °F"},
		{quantity.Temperature{}, "no temperature", "no temperature"},
	} {
		m := working.Tell("test.set", "%05.0f", c.set)
		if got := m.Text(working.Reader{}); got != c.metric {
			t.Errorf("%v is %s", c.set, got)
		}
		if got := m.Text(us); got != c.us {
			t.Errorf("%v is %s in °F", c.set, got)
		}
	}
	// A core is no setting.
	if got := working.Tell("test.core", "%.0f", quantity.Celsius(97)).Text(us); got != "207 °F" {
		t.Error(got)
	}
}
