package wallclock_test

import (
	"encoding/csv"
	"fmt"
	"os"
	"strings"
	"testing"
	"time"
	_ "time/tzdata"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule/wallclock"
)

func zone(t testing.TB, name string) *time.Location {
	t.Helper()
	z, err := time.LoadLocation(name)
	if err != nil {
		t.Fatal(err)
	}
	return z
}

const instantForm = "2006-01-02T15:04Z07:00"

func TestPublished(t *testing.T) {
	f, err := os.Open("testdata/published.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	for _, row := range rows[1:] {
		in := map[string]string{}
		for pair := range strings.SplitSeq(row[2], ";") {
			key, value, ok := strings.Cut(pair, "=")
			if !ok {
				t.Fatalf("%s: input %q", row[0], pair)
			}
			in[key] = value
		}
		got, err := compute(t, in)
		if err != nil {
			t.Errorf("%s: %v", row[0], err)
		} else if got != row[3] {
			t.Errorf("%s: %s: got %s, want %s", row[0], row[2], got, row[3])
		}
	}
}

func compute(t *testing.T, in map[string]string) (string, error) {
	z := zone(t, in["zone"])
	if at, ok := in["jump"]; ok {
		return acrossJump(at, z)
	}
	if text, ok := in["habit"]; ok {
		return lengthOfNight(text, in["night"], z)
	}
	var policy wallclock.Policy
	if err := policy.UnmarshalText([]byte(in["policy"])); err != nil {
		return "", err
	}
	at, err := instant(in["moment"], z, policy)
	if err != nil {
		return "", err
	}
	if after, ok := in["after"]; ok {
		d, err := time.ParseDuration(after)
		return wallclock.MomentOf(at.Add(d), z).String(), err
	}
	if until, ok := in["until"]; ok {
		end, err := instant(until, z, policy)
		return quantity.FormatDuration(end.Sub(at)), err
	}
	return at.UTC().Format(instantForm), nil
}

func instant(text string, z *time.Location, policy wallclock.Policy) (time.Time, error) {
	m, err := wallclock.ParseMoment(text)
	if err != nil {
		return time.Time{}, err
	}
	r, err := wallclock.Resolve(m, z, policy)
	return r.At, err
}

// acrossJump says what the clock shows around a jump, and confirms that the resolver finds the
// same jump from the wall-clock side.
func acrossJump(at string, z *time.Location) (string, error) {
	jump, err := time.Parse(instantForm, at)
	if err != nil {
		return "", err
	}
	before, after := wallclock.MomentOf(jump.Add(-time.Minute), z), wallclock.MomentOf(jump, z)
	if before.Compare(after) < 0 { // a gap
		probe := before.Date.At(wallclock.Clock{Hour: before.Clock.Hour + 1, Minute: 15})
		if after.Clock.Minute == 0 {
			probe.Clock.Minute = 59
		}
		r, err := wallclock.Resolve(probe, z, wallclock.RFC5545)
		if err != nil || r.Reading != wallclock.Skipped || !r.After.Equal(jump) ||
			!r.Before.Equal(jump.Add(-time.Minute)) {
			return "", fmt.Errorf("%v: %v, not the gap at %v (%v)", probe, r, jump, err)
		}
	} else {
		last, err := wallclock.Resolve(before, z, wallclock.RFC5545)
		if err != nil || last.Reading != wallclock.Twice || !last.At.Equal(jump.Add(-time.Minute)) {
			return "", fmt.Errorf("%v: %v, not the end of the fold at %v (%v)", before, last, jump, err)
		}
		first, err := wallclock.Resolve(after, z, wallclock.RFC5545)
		if err != nil || first.Reading != wallclock.Twice || !first.After.Equal(jump) {
			return "", fmt.Errorf("%v: %v, not the start of the fold at %v (%v)", after, first, jump, err)
		}
	}
	return before.String() + " then " + after.String(), nil
}

func lengthOfNight(habit, night string, z *time.Location) (string, error) {
	h, err := wallclock.ParseHabit(habit)
	if err != nil {
		return "", err
	}
	evening, err := instant(night+" 23:00", z, wallclock.Refuse)
	if err != nil {
		return "", err
	}
	spans, err := h.Over(wallclock.Occurrence{From: evening, To: evening.Add(time.Hour)}, z)
	if err != nil || len(spans) != 1 {
		return "", fmt.Errorf("got %v, want one span (%v)", spans, err)
	}
	return quantity.FormatDuration(spans[0].Elapsed()), nil
}
