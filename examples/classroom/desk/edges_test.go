package desk

import (
	"maps"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// The check sum of a link is FNV-1a of 32 bits. Source: test vectors of draft-eastlake-fnv, appendix C.
func TestCheckSum(t *testing.T) {
	for text, want := range map[string]string{"": "811c9dc5", "a": "e40c292c", "b": "e70c2de5", "foobar": "bf9cf968"} {
		if got := checkSum(text); got != want {
			t.Errorf("%q: %s, want %s", text, got, want)
		}
	}
}

// Percent-encoding as in RFC 3986, section 2.1: upper and lower case say the same, and what is cut off is no link.
func TestPercentEncoding(t *testing.T) {
	for text, want := range map[string]string{
		"": "", "a-z_.~AZ09": "a-z_.~AZ09", "%C3%A9": "é", "%c3%a9": "é", "%41%5a%61%7A": "AZaz", "+": "+", "%25": "%", "%00": "\x00",
	} {
		if got, ok := unescape(text); !ok || got != want {
			t.Errorf("%q: %q, %v", text, got, ok)
		}
	}
	for _, text := range []string{"%", "%4", "a%", "%zz", "%4g", "%g4", "%/4", "%:4", "%@4", "%[4", "%`4", "%4/", "%%41"} {
		if got, ok := unescape(text); ok {
			t.Errorf("%q is %q", text, got)
		}
	}
	for text, want := range map[string]string{"é": "%C3%A9", " +%&=": "%20%2B%25%26%3D", "az-AZ_09.~": "az-AZ_09.~", "@[`{/:": "%40%5B%60%7B%2F%3A"} {
		if got := escape(text); got != want {
			t.Errorf("%q: %s, want %s", text, got, want)
		}
	}
	for text, ok := range map[string]bool{"a=1&b=2": true, "a=1&a=2": false, "a": false, "a=1&": false, "a=%": false, "%=1": false, "a==": true, "%61=1&a=2": false} {
		if _, got := splitPairs(text); got != ok {
			t.Errorf("%s: %v", text, got)
		}
	}
}

// signed is a link as the page writes it, of parts that it would not write.
func signed(body string) string { return "#" + body + "&end=" + checkSum(body) }

// Parts of a link that this page does not know are left out and named one by one; a link twice signed is not whole.
func TestPartsOfLinks(t *testing.T) {
	s, told := ReadFragment(signed("v=1&at=water.plan&large=1&moon=full&f.room=30%20%C2%B0C&phase=open&q="))
	if len(told) != 2 || !strings.Contains(told[0].String(), `"moon"`) || !strings.Contains(told[1].String(), `"q"`) {
		t.Errorf("%v", told)
	}
	want := State{At: "water.plan", Large: true, Phase: open, Fields: map[string]string{"room": "30 °C"}, Was: map[string]string{}}
	if diff := cmp.Diff(want, s); diff != "" {
		t.Error(diff)
	}
	if s, told := ReadFragment(signed("v=1&large=yes")); s.Large || s.At != firstTask || len(told) != 0 {
		t.Errorf("%+v, %v", s, told)
	}
	for _, fragment := range []string{"#v=1", "#&end=811c9dc5", signed("a"), "#v=2"} {
		if s, told := ReadFragment(fragment); len(told) != 1 || s.At != firstTask {
			t.Errorf("%s: %+v, %v", fragment, s, told)
		}
	}
	whole := State{At: "water.plan", Why: "x"}.Fragment()
	if s, told := ReadFragment(strings.TrimPrefix(whole, "#")); len(told) != 0 || s.Why != "x" {
		t.Errorf("without its sign: %+v, %v", s, told)
	}
}

// A text is kept up to its limit to the byte, and broken at no character.
func TestLongTexts(t *testing.T) {
	for length, want := range map[int]int{longest - 1: longest - 1, longest: longest, longest + 1: longest, 3 * longest: longest} {
		s, _ := State{At: firstTask, Why: strings.Repeat("x", length)}.settled()
		if len(s.Why) != want {
			t.Errorf("%d bytes: %d are kept, want %d", length, len(s.Why), want)
		}
	}
	s, _ := State{At: firstTask, Guess: strings.Repeat("é", longest), Why: "\xff"}.settled()
	if s.Guess != strings.Repeat("é", longest/2) || s.Why != "\uFFFD" {
		t.Errorf("%d bytes, %q", len(s.Guess), s.Why)
	}
}

// What each thing done gives back: all of the page after a button or a link, its parts alone while somebody types.
func TestWhatIsGivenBack(t *testing.T) {
	state := State{At: "water.friction", Phase: shown, Guess: "12", Fields: map[string]string{"dough": "27 °C"}}
	before := maps.Clone(state.Fields)
	for do, whole := range map[string]bool{"open": true, "type": false, "draw": false, "working": false, "units": true, "large": true,
		"again": true, "": true} {
		out := ask(t, Request{Do: do, State: state, Fragment: state.Fragment(), Width: 900})
		if (out.Page != "") != whole || (out.Title != "") != whole || (out.Focus != "") != whole || out.Fragment == "" {
			t.Errorf("%q: a page of %d bytes, title %q, focus %q", do, len(out.Page), out.Title, out.Focus)
		}
	}
	link := ask(t, Request{Do: "link", State: state})
	if link.Fragment != state.Fragment() || link.Page+link.Answer+link.Title+link.Status != "" {
		t.Errorf("%+v", link)
	}
	if !maps.Equal(before, state.Fields) {
		t.Errorf("the state was changed: %v", state.Fields)
	}
	if out := ask(t, Request{Do: "open", Fragment: State{At: worksheet}.Fragment()}); out.Title != "Worksheet · Maslin classroom" {
		t.Error(out.Title)
	}
}

// Buttons do one thing each and take the attention where it belongs.
func TestButtons(t *testing.T) {
	state := State{At: "water.friction", Guess: "12", Why: "so", Fields: map[string]string{"dough": "27 °C"}}
	wasLocked := ask(t, Request{Do: "lock", State: state}).State
	for _, c := range []struct {
		do, name string
		from     State
		focus    string
		changed  func(State) State
	}{
		{"reveal", "", wasLocked, "verdict", func(s State) State { s.Phase = shown; return s }},
		{"reveal", "", state, "verdict", func(s State) State { return s }},
		{"show", "", wasLocked, "answer-title", func(s State) State { s.Phase, s.Was = open, map[string]string{}; return s }},
		{"again", "", wasLocked, "guess", func(s State) State {
			s.Phase, s.Guess, s.Why, s.Was = guessing, "", "", map[string]string{}
			return s
		}},
		{"fresh", "", wasLocked, "task-title", func(s State) State { return State{At: s.At} }},
		{"language", "de", state, "language", func(s State) State { s.Language = "de"; return s }},
		{"language", "tlh", state, "language", func(s State) State { return s }},
		{"units", "US customary", wasLocked, "units", func(s State) State {
			s.Units, s.Guess, s.Fields = "US customary", "12 Δ°C", s.Was // the question stays the same one
			return s
		}},
		{"units", "ells", state, "units", func(s State) State { s.Guess = "12 Δ°C"; return s }},
		{"large", "", state, "large", func(s State) State { s.Large = true; return s }},
		{"key", "", state, "key", func(s State) State { return s }},
		{"check", "3", state, "check-3", func(s State) State { return s }},
		{"lock", "", wasLocked, "guess", func(s State) State { return s }},
		{"drop", "dough", state, "task-title", func(s State) State { return s }},
	} {
		out := ask(t, Request{Do: c.do, Name: c.name, State: c.from})
		want, got := c.changed(c.from), out.State
		for _, s := range []*State{&want, &got} { // nothing typed is nothing typed
			if len(s.Fields) == 0 {
				s.Fields = nil
			}
			if len(s.Was) == 0 {
				s.Was = nil
			}
		}
		if diff := cmp.Diff(want, got); diff != "" || out.Focus != c.focus {
			t.Errorf("%s %s: focus %q, %s", c.do, c.name, out.Focus, diff)
		}
	}
	small := ask(t, Request{Do: "large", State: ask(t, Request{Do: "large", State: state}).State})
	if small.State.Large || strings.Contains(small.Page, `class="page large"`) {
		t.Error("large type stays")
	}
	sheet := State{At: worksheet}
	for _, want := range []string{"on", "off", "on"} {
		if sheet = ask(t, Request{Do: "key", State: sheet}).State; sheet.Fields["key"] != want {
			t.Errorf("key %q, want %q", sheet.Fields["key"], want)
		}
	}
}

// Rows are added up to the most that a table has, and dropped one by one, the one that is meant.
func TestRowsToTheirMost(t *testing.T) {
	tk, _ := taskOf("water.class")
	f, _ := tk.field("batches")
	s := State{At: "water.class", Phase: open}
	for range f.most + 3 {
		s = ask(t, Request{Do: "add", Name: "batches", State: s}).State
	}
	if rows := rowsOf(s.Fields["batches"]); len(rows) != f.most {
		t.Errorf("%d rows, want %d", len(rows), f.most)
	}
	s.Fields = map[string]string{"batches": "21 °C|15 °C|22 °C|8 min|25 °C;22 °C|15 °C|22 °C|8 min|26 °C;23 °C|15 °C|22 °C|8 min|27 °C"}
	for row, want := range map[int]string{0: "22 23", 1: "21 23", 2: "21 22", -1: "21 22 23", 3: "21 22 23"} {
		out := ask(t, Request{Do: "drop", Name: "batches", Row: row, State: s})
		var left []string
		for _, cells := range rowsOf(out.State.Fields["batches"]) {
			left = append(left, strings.TrimSuffix(cells[0], " °C"))
		}
		if strings.Join(left, " ") != want || out.Focus != "add-batches" {
			t.Errorf("without row %d: %v, focus %s", row, left, out.Focus)
		}
	}
}

// Pictures are as wide as their column: one below the other on a narrow page, 26 rem and the rest on a wide one.
func TestWidths(t *testing.T) {
	viewBox := regexp.MustCompile(`viewBox="0 0 (\d+) `)
	for width, want := range map[int][2]int{400: {360, 360}, 959: {919, 919}, 960: {416, 464}, 1248: {416, 752}, 4000: {416, 752}} {
		if side, main := (Request{Width: width}).columns(); side != want[0] || main != want[1] {
			t.Errorf("%d px: %d and %d, want %v", width, side, main, want)
		}
		out := ask(t, Request{Do: "type", Width: width, State: State{At: "clock.rise", Phase: open}})
		if found := viewBox.FindStringSubmatch(out.Answer); found == nil {
			t.Errorf("%d px: no picture", width)
		}
	}
}

// A guess is judged to the limit of what is near, and a range with its ends.
func TestVerdictsAtTheirLimits(t *testing.T) {
	for _, c := range []struct{ at, guess, want string }{
		{"water.friction", "14", "is right"}, {"water.friction", "13", "too low by 1.0 Δ°C"},
		{"water.friction", "15", "too high by 1.0 Δ°C"}, {"clock.rise", "3h18m", "lies in the library"},
		{"clock.rise", "3h16m", "lies outside"}, {"clock.rise", "7h24m", "lies in the library"},
		{"clock.rise", "7h26m", "lies outside"}, {"clock.rise", "soon", "cannot be read"},
	} {
		out := ask(t, Request{Do: "type", State: State{At: c.at, Guess: c.guess, Phase: shown}})
		if !strings.Contains(out.Answer, c.want) {
			t.Errorf("%s, %s: no %q in %.300s", c.at, c.guess, c.want, out.Answer)
		}
	}
	us := ask(t, Request{Do: "type", State: State{At: "water.friction", Units: "US customary", Guess: "30", Phase: shown}})
	found := regexp.MustCompile(`of 30 Δ°F is too high by (\S+) Δ°F: the library says (\S+) Δ°F`).FindStringSubmatch(us.Answer)
	if found == nil {
		t.Fatalf("%.300s", us.Answer)
	}
	off, errOff := strconv.ParseFloat(found[1], 64)
	says, errSays := strconv.ParseFloat(found[2], 64)
	if errOff != nil || errSays != nil || math.Abs(off+says-30) > 1e-9 || says < 20 { // 14 Δ°C are 25.2 Δ°F, from whole °F
		t.Errorf("%q", found[0])
	}
}
