package desk

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

func TestFragmentComesBack(t *testing.T) {
	for _, s := range []State{
		{At: firstTask, Fields: map[string]string{}, Was: map[string]string{}},
		{At: "clock.rise", Units: "US customary", Large: true, Phase: shown, Guess: "5 h & more",
			Why:    "because = of # 100 %\n„ß“",
			Fields: map[string]string{"history": "0 h|26 °C;2 h|25 °C", "rise": ""}, Was: map[string]string{"rise": "75 %"}},
		{At: worksheet, Fields: map[string]string{"topic.water": "on", "answer.30": "+1"}, Was: map[string]string{}},
	} {
		again, told := ReadFragment(s.Fragment())
		if diff := cmp.Diff(s, again); diff != "" || len(told) > 0 {
			t.Errorf("%s\n%s%v", s.Fragment(), diff, told)
		}
		for _, c := range s.Fragment()[1:] {
			if !strings.ContainsRune("&=%-._~", c) && (c > 'z' || !unreserved(byte(c))) {
				t.Errorf("%q in %s", c, s.Fragment())
			}
		}
	}
}

// A link that is not whole, or not ours, is told and not guessed at.
func TestLinksThatCannotBeRead(t *testing.T) {
	good := State{At: "water.plan", Fields: map[string]string{"room": "30 °C"}}.Fragment()
	for _, c := range []struct{ fragment, want string }{
		{"#hello", "not one of this page"}, {"#v=1&at=%zz", "cut off"}, {"#v=1&v=1", "cut off"},
		{"#at=water.plan", "its beginning is missing"}, {strings.Replace(good, "v=1", "v=2", 1), `of version "2"`},
		{good[:len(good)-1], "cut off"}, {good[:40], "cut off"}, {strings.Replace(good, "30", "31", 1), "check sum"},
	} {
		s, told := ReadFragment(c.fragment)
		if len(told) != 1 || !strings.Contains(told[0].String(), c.want) || s.At != firstTask || len(s.Fields) > 0 {
			t.Errorf("%s: %v, %+v; want %q", c.fragment, told, s, c.want)
		}
	}
	if s, told := ReadFragment(""); s.At != firstTask || len(told) > 0 {
		t.Errorf("no link: %v", told)
	}
}

// What a whole link holds and this page does not know is named; the rest is used.
func TestLinksWithUnknownParts(t *testing.T) {
	for _, c := range []struct {
		state State
		want  string
	}{
		{State{At: "water.steam"}, `"water.steam"`}, {State{At: "water.plan", Units: "ells"}, `"ells"`},
		{State{At: "water.plan", Language: "tlh"}, `"tlh"`}, {State{At: "water.plan", Phase: "peeked"}, `"peeked"`},
		{State{At: "water.plan", Fields: map[string]string{"moon": "full"}}, `"moon"`},
	} {
		c.state.Why = "kept"
		s, told := ReadFragment(c.state.Fragment())
		if len(told) != 1 || !strings.Contains(told[0].String(), c.want) || s.Why != "kept" {
			t.Errorf("%+v: %v", s, told)
		}
		if out := ask(t, Request{Do: "open", Fragment: c.state.Fragment()}); !strings.Contains(out.Page, `role="alert"`) {
			t.Errorf("%s: the page does not say so", c.want)
		}
	}
	long := State{At: "water.plan", Fields: map[string]string{"room": strings.Repeat("é", longest)}}
	if s, _ := ReadFragment(long.Fragment()); len(s.Fields["room"]) > longest+3 {
		t.Errorf("a text of %d bytes is kept", len(s.Fields["room"]))
	}
}

func TestStopsAndPlaces(t *testing.T) {
	tk, _ := taskOf("water.plan")
	f, _ := tk.field("room")
	for _, units := range []string{"", "US customary"} {
		r := State{Units: units}.reader()
		stops := f.stops(r)
		for i, text := range stops {
			if got := f.place(text, r); got != i {
				t.Errorf("%s: %q is at %d, want %d", units, text, got, i)
			}
		}
	}
	r := State{}.reader()
	for text, want := range map[string]int{"-20 °C": 0, "99 °C": 80, "20": 40, "68 °F": 40, "20,4": 41, "warm": -1,
		"": -1, "20 g": -1} {
		if got := f.place(text, r); got != want {
			t.Errorf("%q is at %d, want %d", text, got, want)
		}
	}
}
