package wallclock_test

import (
	"errors"
	"math"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule/wallclock"
)

// zones have ordinary rules, half-hour and two-hour jumps, a clock that moves backward in
// summer, jumps at midnight, skipped days, and none at all.
var zones = []string{
	"UTC", "Europe/Berlin", "America/Denver", "Australia/Lord_Howe", "America/New_York", "Asia/Kathmandu", "Europe/Dublin",
	"Africa/Casablanca", "Antarctica/Troll", "America/St_Johns", "America/Sao_Paulo", "America/Havana", "Asia/Beirut",
	"Pacific/Apia", "Pacific/Kiritimati", "Pacific/Kwajalein", "Pacific/Chatham", "Asia/Tehran",
}

func anyZone(t *rapid.T) *time.Location {
	z, err := time.LoadLocation(rapid.SampledFrom(zones).Draw(t, "zone"))
	if err != nil {
		t.Fatal(err)
	}
	return z
}

// anyInstant is a whole minute from 1973 (since when every offset is a whole minute) to 2060,
// half of them within a day of a change of the offset.
func anyInstant(t *rapid.T, z *time.Location) time.Time {
	at := time.Unix(rapid.Int64Range(1577880, 47304000).Draw(t, "minute")*60, 0)
	if _, end := at.In(z).ZoneBounds(); !end.IsZero() && end.Year() < 2060 && rapid.Bool().Draw(t, "near a jump") {
		at = end.Add(time.Duration(rapid.IntRange(-1500, 1500).Draw(t, "minutes from it")) * time.Minute)
	}
	return at.UTC().Truncate(time.Minute)
}

func mustResolve(t rapid.TB, m wallclock.Moment, z *time.Location, p wallclock.Policy) wallclock.Resolution {
	t.Helper()
	r, err := wallclock.Resolve(m, z, p)
	if err != nil {
		t.Fatalf("%v in %v: %v", m, z, err)
	}
	return r
}

func TestResolveReadsBackWhatTheClockShows(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		z := anyZone(t)
		at := anyInstant(t, z)
		m := wallclock.MomentOf(at, z)
		r := mustResolve(t, m, z, wallclock.RFC5545)
		switch r.Reading {
		case wallclock.Once:
			if !r.At.Equal(at) || r.Doubt() != nil {
				t.Fatalf("%v is %v, resolved to %v", at, m, r)
			}
		case wallclock.Twice:
			if !at.Equal(r.Before) && !at.Equal(r.After) || !r.At.Equal(r.Before) || !r.Before.Before(r.After) {
				t.Fatalf("%v is %v, resolved to %v (%v, %v)", at, m, r, r.Before, r.After)
			}
			for _, shown := range []time.Time{r.Before, r.After} {
				if wallclock.MomentOf(shown, z) != m {
					t.Fatalf("%v does not show %v", shown, m)
				}
			}
		default:
			t.Fatalf("%v is shown at %v but resolved as %v", m, at, r)
		}
	})
}

func TestGapsLieBetweenTheNearestRealTimes(t *testing.T) {
	skipped := 0
	rapid.Check(t, func(t *rapid.T) {
		z := anyZone(t)
		_, end := anyInstant(t, z).In(z).ZoneBounds()
		if end.IsZero() || end.Year() > 2060 {
			return
		}
		// What a clock would show that did not jump.
		_, offset := end.Add(-time.Minute).Zone()
		unmoved := end.Truncate(time.Minute).Add(time.Duration(offset)*time.Second +
			time.Duration(rapid.IntRange(-5, 65).Draw(t, "minutes"))*time.Minute)
		jump := wallclock.MomentOf(unmoved, nil)
		r := mustResolve(t, jump, z, wallclock.RFC5545)
		early, late := mustResolve(t, jump, z, wallclock.Earlier), mustResolve(t, jump, z, wallclock.Later)
		if early.At.After(r.At) || r.At.After(late.At) {
			t.Fatalf("%v in %v: earlier %v, default %v, later %v", jump, z, early, r, late)
		}
		_, err := wallclock.Resolve(jump, z, wallclock.Refuse)
		if (err == nil) != (r.Reading == wallclock.Once) {
			t.Fatalf("%v is shown %v, refused with %v", jump, r.Reading, err)
		}
		if r.Reading != wallclock.Skipped {
			return
		}
		skipped++
		if !errors.Is(err, wallclock.ErrSkipped) || !errors.Is(err, quantity.ErrInconsistent) {
			t.Fatalf("refused with %v", err)
		}
		if !r.Before.Add(time.Minute).Equal(r.After) {
			t.Fatalf("nearest times %v and %v", r.Before, r.After)
		}
		if wallclock.MomentOf(r.Before, z).Compare(jump) >= 0 || wallclock.MomentOf(r.After, z).Compare(jump) <= 0 {
			t.Fatalf("%v is not between %v and %v", jump, r.Before, r.After)
		}
		// The rule in its own words: the offset before the gap.
		_, offset = r.Before.Zone()
		if wall := r.At.Add(time.Duration(offset) * time.Second).UTC(); wallclock.MomentOf(wall, nil) != jump {
			t.Fatalf("%v read with the offset before the gap is not %v", r.At, jump)
		}
		if early.At.After(r.Before) || late.At.Before(r.After) {
			t.Fatalf("earlier %v and later %v are not on the two sides of the jump", early, late)
		}
	})
	if skipped == 0 {
		t.Error("no gap was tried")
	}
}

func TestMonotoneInWallTimeOutsideGaps(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		z := anyZone(t)
		first := wallclock.MomentOf(anyInstant(t, z), z)
		days := time.Date(first.Date.Year, first.Date.Month, first.Date.Day, 0, 0, 0, 0, time.UTC).Unix() / (24 * 60 * 60)
		wall := int(days)*1440 + first.Clock.Minutes() +
			rapid.IntRange(1, 3000).Draw(t, "minutes later")
		second := wallclock.MomentOf(time.Unix(int64(wall)*60, 0), nil)
		if first.Compare(second) >= 0 {
			t.Fatalf("%v is not before %v", first, second)
		}
		for _, p := range []wallclock.Policy{wallclock.RFC5545, wallclock.Earlier, wallclock.Later} {
			a, b := mustResolve(t, first, z, p), mustResolve(t, second, z, p)
			if a.Reading != wallclock.Skipped && b.Reading != wallclock.Skipped && !a.At.Before(b.At) {
				t.Fatalf("%v: %v → %v, %v → %v", p, first, a, second, b)
			}
		}
	})
}

// Go gives the last day of a leap year a bound that lies in the past where a zone is described by
// its rule; the resolver must get past it.
func TestLastDayOfLeapYears(t *testing.T) {
	for _, name := range zones {
		z := zone(t, name)
		for year := 1976; year <= 2096; year += 4 {
			for hour := range 24 {
				for _, date := range []wallclock.Date{{Year: year, Month: 12, Day: 30}, {Year: year, Month: 12, Day: 31},
					{Year: year + 1, Month: 1, Day: 1}} {
					m := date.At(wallclock.Clock{Hour: hour, Minute: 30})
					if r := mustResolve(t, m, z, wallclock.Refuse); wallclock.MomentOf(r.At, z) != m {
						t.Fatalf("%v in %v: %v", m, z, r)
					}
				}
			}
		}
	}
}

func TestSkippedDay(t *testing.T) {
	apia := zone(t, "Pacific/Apia") // went over the date line: 2011-12-29 was followed by 2011-12-31
	r := mustResolve(t, wallclock.MustMoment("Fri 2011-12-30 12:00"), apia, wallclock.RFC5545)
	if r.Reading != wallclock.Skipped || wallclock.MomentOf(r.At, apia) != wallclock.MustMoment("2011-12-31 12:00") {
		t.Errorf("got %v", r)
	}
	h := wallclock.MustHabit("asleep 22:30 to 06:30 every day")
	within := wallclock.Occurrence{From: time.Date(2011, 12, 29, 22, 0, 0, 0, time.UTC),
		To: time.Date(2011, 12, 30, 23, 0, 0, 0, time.UTC)}
	spans, err := h.Over(within, apia)
	if err != nil || len(spans) != 1 || spans[0].Elapsed() != 8*time.Hour ||
		wallclock.MomentOf(spans[0].To, apia).String() != "Sat 2011-12-31 06:30" {
		t.Errorf("got %v, %v", spans, err)
	}
}

func TestHostileInputs(t *testing.T) {
	ok := wallclock.MustMoment("2026-11-28 12:30")
	var none wallclock.Moment
	for name, c := range map[string]struct {
		m        wallclock.Moment
		z        *time.Location
		p        wallclock.Policy
		problems int
	}{
		"nothing":   {none, nil, -1, 3},
		"no zone":   {ok, nil, 0, 1},
		"no policy": {ok, time.UTC, 4, 1},
		"huge date": {wallclock.Moment{Date: wallclock.Date{Year: math.MaxInt, Month: math.MaxInt, Day: math.MaxInt}},
			time.UTC, 0, 1},
		"tiny date": {wallclock.Moment{Date: wallclock.Date{Year: math.MinInt, Month: math.MinInt, Day: math.MinInt}},
			time.UTC, 0, 1},
		"February 30":    {wallclock.Date{Year: 2026, Month: 2, Day: 30}.At(wallclock.Clock{Hour: 12}), time.UTC, 0, 1},
		"negative clock": {ok.Date.At(wallclock.Clock{Hour: -1}), time.UTC, 0, 1},
	} {
		if _, err := wallclock.Resolve(c.m, c.z, c.p); len(quantity.InputErrors(err)) != c.problems {
			t.Errorf("%s: %v, want %d problems", name, err, c.problems)
		}
	}
	// Zones no place has.
	for _, offset := range []int{-1 << 31, -200 * 3600, 200 * 3600, 1<<31 - 1} {
		z := time.FixedZone(strings.Repeat("x", 1<<20), offset)
		r, err := wallclock.Resolve(ok, z, wallclock.RFC5545)
		if err == nil && wallclock.MomentOf(r.At, z) != ok {
			t.Errorf("offset %d: %v", offset, r)
		}
	}
	for _, d := range []wallclock.Date{{}, {Year: math.MaxInt, Month: math.MinInt, Day: math.MaxInt}} {
		_, _ = d.Weekday(), d.String()
		if next := d.AddDays(1); next.IsValid() {
			t.Errorf("the day after %v is %v", d, next)
		}
	}
	if d := ok.Date.AddDays(math.MaxInt); d.IsValid() {
		t.Errorf("got %v", d)
	}
	if d := wallclock.MustDate("9999-12-31").AddDays(1); d.IsValid() {
		t.Errorf("got %v", d)
	}
	if s := wallclock.On(-1, 7, time.Weekday(math.MaxInt)); s != 0 || s.IsValid() || s.Has(-1) || s.Has(99) {
		t.Errorf("got %v", s)
	}
	for _, s := range []string{wallclock.Policy(-5).String(), wallclock.Reading(77).String(),
		wallclock.Days(255).String()} {
		if !strings.HasPrefix(s, "unknown") {
			t.Errorf("got %q", s)
		}
	}
}

// Doubt names what was given and the two nearest real times.
func TestDoubt(t *testing.T) {
	for _, c := range []struct{ zone, moment, want string }{
		{
			"America/Denver", "2026-03-08 02:30",
			"inconsistent: the clocks skip this time: got Sunday 2026-03-08 02:30 in America/Denver, want Sunday 2026-03-08 " +
				"01:59 -07:00 or Sunday 2026-03-08 03:00 -06:00",
		},
		{
			"America/Denver", "2026-11-01 01:30",
			"inconsistent: the clocks show this time twice: got Sunday 2026-11-01 01:30 in America/Denver, want Sunday " +
				"2026-11-01 01:30 -06:00 or Sunday 2026-11-01 01:30 -07:00",
		},
	} {
		r := mustResolve(t, wallclock.MustMoment(c.moment), zone(t, c.zone), wallclock.RFC5545)
		if got := r.Doubt(); got == nil || got.Error() != c.want {
			t.Errorf("got  %v\nwant %v", got, c.want)
		}
	}
}

func BenchmarkResolve(b *testing.B) {
	z := zone(b, "America/Denver")
	m := wallclock.MustMoment("2026-11-28 12:30")
	for b.Loop() {
		if _, err := wallclock.Resolve(m, z, wallclock.RFC5545); err != nil {
			b.Fatal(err)
		}
	}
}
