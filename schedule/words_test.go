package schedule

import (
	"context"
	"encoding"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
)

// Rules without words of the user's are told in words made from the names.
func TestRulesInMadeWords(t *testing.T) {
	at := func(m int) time.Time { return dawn.Add(mins(m).Duration()) }
	link := func(kind LinkKind, least, most int) Link {
		l := Link{From: "a", To: "b", Kind: kind, Min: mins(least), Max: mins(most)}
		if most > 900 {
			l.Max = NoLimit
		}
		if least < -900 {
			l.Min = -NoLimit
		}
		return l
	}
	p := Problem{Anchor: dawn, Horizon: mins(600), Alike: [][]string{{"a", "b"}},
		Steps: []DayStep{{ID: "a", Name: working.Say("the sponge"), Min: mins(10), Max: mins(30)}, {ID: "b", Min: mins(20)},
			{ID: "c", Min: mins(60), Max: mins(120), Living: true}},
		Links: []Link{link(EndToStart, 0, 0), link(EndToStart, 0, 999), link(StartToStart, 5, 15), link(EndToEnd, 7, 7),
			link(StartToEnd, -999, 90), link(EndToStart, -10, -5), link(EndToStart, -4, -4), link(EndToStart, -999, 0)},
		Bounds: []Bound{{Step: "a", Edge: Start, Earliest: at(1), Latest: at(500)}, {Step: "b", Edge: End, Latest: at(550)},
			{Step: "c", Edge: End, Earliest: at(100), Latest: at(100)}},
		Resources: []Resource{{ID: "hands", Capacity: 2, Closed: []Span{{From: at(60), To: at(90)}}},
			{ID: "oven", Name: working.Say("the oven")}},
	}
	c, err := p.compile()
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, r := range c.rules {
		got = append(got, r.words().String())
	}
	want := []string{
		"nothing before Sat 06:00", "everything done by Sat 16:00",
		"the sponge takes at least 10m", "the sponge takes at most 30m", "b takes 20m", "c likely takes 1h30m",
		"b follows the sponge at once", "b comes after the sponge", "start of b after start of the sponge: at least 5m",
		"start of b after start of the sponge: at most 15m", "end of b after end of the sponge: exactly 7m",
		"end of b after start of the sponge: at most 1h30m", "start of b before end of the sponge: at most 10m",
		"start of b before end of the sponge: at least 5m", "start of b before end of the sponge: exactly 4m",
		"start of b after end of the sponge: at most 0m",
		"start of the sponge no earlier than Sat 06:01", "start of the sponge no later than Sat 14:20",
		"end of b no later than Sat 15:10", "end of c at Sat 07:40",
		"hands: 2 at a time", "hands away Sat 07:00 to Sat 07:30", "the oven: one program at a time",
		"b starts no earlier than the sponge",
	}
	if d := strings.Join(got, "\n"); d != strings.Join(want, "\n") {
		t.Errorf("%s\n\nwant\n%s", d, strings.Join(want, "\n"))
	}
}

// Kinds have the same text both ways, no two of one sort the same, and another text is refused.
func TestKindsAsText(t *testing.T) {
	type kind interface {
		encoding.TextMarshaler
		String() string
	}
	check := func(n int, of func(k int) kind, read func(text []byte) (kind, error)) {
		seen := map[string]bool{}
		for k := range n {
			text, err := of(k).MarshalText()
			if err != nil || seen[string(text)] {
				t.Errorf("%d of %T: %q, %v", k, of(k), text, err)
			}
			seen[string(text)] = true
			if back, err := read(text); err != nil || back != of(k) || of(k).String() != string(text) {
				t.Errorf("%q comes back as %v, %v", text, back, err)
			}
		}
		if _, err := of(n).MarshalText(); err == nil {
			t.Errorf("%d of %T has a text", n, of(n))
		}
		if _, err := read([]byte("poodle")); err == nil {
			t.Errorf("a poodle is a %T", of(0))
		}
	}
	check(int(Other)+1, func(k int) kind { return StepKind(k) },
		func(b []byte) (kind, error) { var k StepKind; err := k.UnmarshalText(b); return k, err })
	check(int(Unknown)+1, func(k int) kind { return Verdict(k) },
		func(b []byte) (kind, error) { var k Verdict; err := k.UnmarshalText(b); return k, err })
	check(int(StartToEnd)+1, func(k int) kind { return LinkKind(k) },
		func(b []byte) (kind, error) { var k LinkKind; err := k.UnmarshalText(b); return k, err })
	check(int(End)+1, func(k int) kind { return Edge(k) },
		func(b []byte) (kind, error) { var k Edge; err := k.UnmarshalText(b); return k, err })
	check(int(Missing)+1, func(k int) kind { return Rule(k) },
		func(b []byte) (kind, error) { var k Rule; err := k.UnmarshalText(b); return k, err })
	check(int(AnyOrder)+1, func(k int) kind { return Easing(k) },
		func(b []byte) (kind, error) { var k Easing; err := k.UnmarshalText(b); return k, err })
	check(int(AwayAllTime)+1, func(k int) kind { return Absent(k) },
		func(b []byte) (kind, error) { var k Absent; err := k.UnmarshalText(b); return k, err })
}

// Nobody has to stand by what ripens, rests, rises, warms or cools by itself.
func TestKindsThatTakeHands(t *testing.T) {
	alone := map[StepKind]bool{Ripen: true, Stand: true, Bulk: true, Proof: true, Retard: true, WarmUp: true,
		Preheat: true,
		Cool:    true}
	for k := StepKind(0); k <= Other; k++ {
		if k.Hands() == alone[k] {
			t.Errorf("%v takes hands: %v", k, k.Hands())
		}
	}
}

// How much a timetable survives, in words.
func TestRobustnessInWords(t *testing.T) {
	at := func(m int) time.Time { return dawn.Add(mins(m).Duration()) }
	r := Robustness{Share: 0.25, ByMoving: true,
		Spreads: []Spread{{Label: Label{ID: "bulk"}, Early: mins(90), Late: mins(150)}},
		Against: []Breach{{Words: working.Say("asleep")}, {Words: working.Say("lunch")}},
		Watches: []Watch{{Label: Label{ID: "bulk"}, From: at(60), To: at(90)},
			{Label: Label{ID: "proof"}, From: at(95), To: at(99), Warning: working.Say("nobody is there")}}}
	const want = "survives 25.0 % of the ranges\n  bulk: 1h30m to 2h30m\n  " +
		"all of them when the steps before are timed differently\n  because of: asleep; lunch\n" +
		"look at bulk from Sat 07:00 to Sat 07:30\nlook at proof from Sat 07:35 to Sat 07:39: nobody is there"
	if got := r.String(); got != want {
		t.Errorf("%s\nwant %s", got, want)
	}
	if got := (Robustness{Survives: true}).String(); got != "survives the whole range of every living step" {
		t.Error(got)
	}
	if got := (Robustness{}).String(); got != "survives 0.0 % of the ranges" {
		t.Error(got)
	}
}

// Surviving says the same as Robust but for what is in the way.
func TestSurvivingIsRobustWithoutReasons(t *testing.T) {
	tt := plan(t, hall())
	a, err := tt.Robust(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	b, err := tt.Surviving(context.Background())
	if err != nil || len(b.Against) != 0 || len(a.Against) == 0 {
		t.Fatal(b.Against, err)
	}
	if a.Against = nil; a.String() != b.String() || a.Share != b.Share {
		t.Errorf("%v\n%v", a, b)
	}
}

// What somebody leaves out of a span or a bound is asked for by name.
func TestWhatIsLeftOut(t *testing.T) {
	for path, spoil := range map[string]func(p *Problem){
		"Bounds[0].EarlyPerMinute": func(p *Problem) {
			p.Bounds[0].Earliest, p.Bounds[0].Latest, p.Bounds[0].EarlyPerMinute = dawn, time.Time{}, 1
		},
		"Resources[0].Closed[0].From":  func(p *Problem) { p.Resources[0].Closed[0].From = time.Time{} },
		"Resources[0].Awkward[0].From": func(p *Problem) { p.Resources[0].Awkward = []Awkward{{To: dawn}} },
		"Resources[0].Awkward[0].To":   func(p *Problem) { p.Resources[0].Awkward = []Awkward{{From: dawn, To: dawn}} },
		"Steps[0].Max":                 func(p *Problem) { p.Steps[0].Max = -1 },
	} {
		p := loaf()
		spoil(&p)
		_, err := p.Earliest(context.Background())
		if got := quantity.InputErrors(err); len(got) != 1 || got[0].GoPath != path {
			t.Errorf("%v, want %s", err, path)
		}
	}
}
