package planner

import (
	"testing"

	"pgregory.net/rapid"
)

// Whatever of the questions is not settled, the least change that is named was seen to be enough, and it is called
// proven only when it is the least.
func TestLeastOfWhatIsKnown(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		most := rapid.IntRange(0, 3000).Draw(t, "most")
		enough := rapid.IntRange(1, 4000).Draw(t, "enough") // the truth: this or more is enough
		clear := rapid.IntRange(0, 4000).Draw(t, "clear")   // within this distance of the truth nothing is settled
		asked, unsure := 0, 0
		try := func(x int) Truth {
			asked++
			if x < 1 || x > most {
				t.Fatalf("asked about %d of %d", x, most)
			}
			if d := max(x-enough, enough-x); clear > 0 && d < clear && x != enough {
				unsure++
				return Unsure
			}
			return truth(x >= enough)
		}
		least, proven := Least(most, try)
		switch {
		case least == 0 && proven && enough <= most:
			t.Fatalf("says that nothing up to %d is enough, but %d is", most, enough)
		case least > 0 && least < enough:
			t.Fatalf("says that %d is enough, but %d is the least", least, enough)
		case least > 0 && proven && least != enough:
			t.Fatalf("says that %d is proven the least, but %d is", least, enough)
		case unsure == 0 && !proven:
			t.Fatalf("everything was settled, but %d is not proven", least)
		case unsure == 0 && enough <= most && least != enough:
			t.Fatalf("everything was settled, but the least is %d and not %d", least, enough)
		case asked > 30:
			t.Fatalf("asked %d questions about %d", asked, most)
		}
	})
}

// Time that runs out is no reason to name a change that nobody can make.
func TestLeastWhenTheTimeIsUp(t *testing.T) {
	for calls := range 25 {
		left := calls
		least, proven := Least(1<<19, func(x int) Truth {
			if left--; left < 0 {
				return Unsure
			}
			return truth(x >= 37)
		})
		if least != 0 && least < 37 || proven && least != 37 {
			t.Errorf("after %d questions: %d, proven %v", calls, least, proven)
		}
		if calls == 0 && (least != 0 || proven) {
			t.Errorf("nothing is known, but %d is named", least)
		}
	}
}

// Of one thing, and of nothing, the least is known after a question at most.
func TestLeastOfOne(t *testing.T) {
	for _, c := range []struct {
		most   int
		answer Truth
		least  int
		proven bool
	}{{1, Yes, 1, true}, {1, No, 0, true}, {1, Unsure, 0, false}, {0, Yes, 0, true}, {2, Yes, 1, true}} {
		if least, proven := Least(c.most, func(int) Truth { return c.answer }); least != c.least || proven != c.proven {
			t.Errorf("of %d, always %v: %d, proven %v, want %d, %v", c.most, c.answer, least, proven, c.least, c.proven)
		}
	}
}

// Whoever gives up in the middle says so: with however little effort, no answer is wrong.
func TestAnAnswerIsRightOrUnsure(t *testing.T) {
	said := map[Truth]int{}
	tenfold(t, func(t *rapid.T) {
		n := pairOfTasks(t)
		want := NewProber(nil, n).Feasible()
		for _, effort := range []int{1, 3, 10, 30, 100, 1000} {
			var none *Watch
			got := NewProber(none.Within(effort), n).Feasible()
			said[got]++
			if got != Unsure && got != want {
				t.Fatalf("with an effort of %d %v, want %v", effort, got, want)
			}
		}
	})
	if len(said) != 3 {
		t.Errorf("said only %v", said)
	}
}
