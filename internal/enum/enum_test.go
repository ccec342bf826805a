package enum_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"strings"
	"testing"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/internal/enum"
	"github.com/google/go-cmp/cmp"
)

type bread int

const (
	hearth bread = iota + 1
	softRoll
)

var breads = enum.Of[bread]("style of bread", "", "lean hearth", "soft roll")

func (b bread) String() string                   { return breads.String(b) }
func (b bread) MarshalText() ([]byte, error)     { return breads.Marshal(b) }
func (b *bread) UnmarshalText(text []byte) error { return breads.Unmarshal(b, text) }

type side uint8

var sides = enum.Of[side]("side", "left", "right")

func (s side) MarshalText() ([]byte, error)     { return sides.Marshal(s) }
func (s *side) UnmarshalText(text []byte) error { return sides.Unmarshal(s, text) }

func TestWordsGoOutAndComeBack(t *testing.T) {
	type all struct {
		B    bread          `json:"b"`
		Skip bread          `json:"skip,omitempty"`
		S    side           `json:"s"`
		Keys map[bread]bool `json:"keys"`
	}
	in := all{B: softRoll, S: 1, Keys: map[bread]bool{hearth: true}}
	text, err := json.Marshal(in)
	if err != nil || string(text) != `{"b":"soft roll","s":"right","keys":{"lean hearth":true}}` {
		t.Fatalf("%s, %v", text, err)
	}
	var out all
	if err := json.Unmarshal(text, &out); err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(in, out); diff != "" {
		t.Error(diff)
	}
	if got := fmt.Sprint(quantity.Values[bread](), len(quantity.Values[side]()), bread(7),
		bread(0)); got != "[lean hearth soft roll] 2 unknown style of bread 7 " {
		t.Errorf("%q", got)
	}
	b := hearth
	if err := b.UnmarshalText(nil); err != nil || b != 0 {
		t.Errorf("no word is not given: %v, %v", b, err)
	}
}

func TestUnknownWordsAreRefused(t *testing.T) {
	b := hearth
	for _, text := range []string{"Lean hearth", "lean-hearth", "rye", " ", strings.Repeat("x", 1<<20)} {
		err := b.UnmarshalText([]byte(text))
		all := quantity.InputErrors(err)
		if !errors.Is(err, quantity.ErrOutOfRange) || b != hearth || len(all) != 1 || all[0].Code != enum.UnknownWord ||
			len(err.Error()) > 150 {
			t.Errorf("%.20q: %v, %v", text, b, err)
		}
	}
	want := `out of range: got "rye", want style of bread: lean hearth, soft roll`
	if got := fmt.Sprint(b.UnmarshalText([]byte("rye"))); got != want {
		t.Error(got)
	}
	s := side(1)
	if err := s.UnmarshalText(nil); !errors.Is(err, quantity.ErrRequired) || s != 1 {
		t.Errorf("a side must be said: %v, %v", s, err)
	}
	for _, bad := range []bread{-1, 3, 1 << 30} {
		if _, err := bad.MarshalText(); err == nil {
			t.Errorf("%d was written", bad)
		}
	}
	if _, err := side(200).MarshalText(); err == nil {
		t.Error("200 was written")
	}
}

func TestWordsAsTyped(t *testing.T) {
	for _, text := range []string{"soft roll", " Soft-Roll ", "SOFT_ROLL", "softroll", // 64 bytes are read
		strings.Repeat(" ", 55) + "soft roll"} {
		if got, err := breads.Parse(text); err != nil || got != softRoll {
			t.Errorf("%q: %v, %v", text, got, err)
		}
	}
	for text, want := range map[string]error{"": quantity.ErrRequired, " - ": quantity.ErrRequired,
		"roll": quantity.ErrOutOfRange, "soft rill": quantity.ErrOutOfRange, "leanhearts": quantity.ErrOutOfRange,
		strings.Repeat(" ", 56) + "soft roll":  quantity.ErrOutOfRange,
		strings.Repeat(" ", 100) + "soft roll": quantity.ErrOutOfRange} {
		if got, err := breads.Parse(text); !errors.Is(err, want) || got != 0 {
			t.Errorf("%q: %v, %v", text, got, err)
		}
	}
}

func TestChecks(t *testing.T) {
	var p quantity.Problems
	ok := []bool{
		breads.Check(&p, "A", hearth), breads.Check(&p, "B", 0), breads.Check(&p, "C", 9), breads.CheckIfGiven(&p, "D", 0),
		breads.CheckIfGiven(&p, "E", 9),
		sides.Check(&p, "F", 0), breads.Has(softRoll), breads.Has(0), breads.Has(-1),
	}
	if diff := cmp.Diff([]bool{true, false, false, true, false, true, true, false, false}, ok); diff != "" {
		t.Error(diff)
	}
	want := `B: required: want style of bread: lean hearth, soft roll
C: out of range: got unknown style of bread 9, want style of bread: lean hearth, soft roll
E: out of range: got unknown style of bread 9, want style of bread: lean hearth, soft roll`
	if diff := cmp.Diff(want, fmt.Sprint(p.Err())); diff != "" {
		t.Error(diff)
	}
}
