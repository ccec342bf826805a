package main

import (
	"encoding/json"
	"errors"
	"fmt"
	"math/rand/v2"
	"slices"
	"strconv"
	"strings"

	"example.org/maslin/examples/classroom/desk"
)

// compare asks the page and this program the same questions with random inputs, and fails on the first byte that
// differs. Every tenth question goes through the page as a link does, and what it shows is compared too.
func (v *visit) compare() error {
	if err := v.t.open(v.single); err != nil {
		return err
	}
	draw := rand.New(rand.NewPCG(18, 2026))
	var errs []error
	for _, bench := range []string{"percentages", "water", "clock", "heat", "day"} {
		tasks := slices.DeleteFunc(desk.Tasks(), func(id string) bool { return !strings.HasPrefix(id, bench+".") })
		answered := 0
		for i := range v.asked {
			s := randomState(draw, tasks[i%len(tasks)])
			q := desk.Request{Do: "type", State: s, Width: 1000, Working: i%4 == 0}
			request, err := json.Marshal(q)
			if err != nil {
				return err
			}
			var given desk.Response
			if err := v.t.run("maslinAnswer("+string(request)+")", &given); err != nil {
				return err
			}
			out := desk.Answer(q)
			inPage, native := exactly(given), exactly(out)
			if inPage != native {
				errs = append(errs, fmt.Errorf("%s: %s\nin the page %s\nnatively    %s", s.At, request, excerpt(inPage, native),
					excerpt(native, inPage)))
				continue
			}
			if out.Headline != "" {
				answered++
			}
			if i%10 == 0 {
				errs = append(errs, v.seen(s, out))
			}
		}
		fmt.Printf("     %s: %d random inputs equal to the last digit, %d with an answer\n", bench, v.asked, answered)
		if answered*10 < v.asked*3 {
			errs = append(errs, fmt.Errorf("%s: only %d of %d random inputs have an answer", bench, answered, v.asked))
		}
	}
	return errors.Join(errs...)
}

// exactly is a response as text: nothing and an empty list are the same.
func exactly(out desk.Response) string {
	for _, texts := range []*map[string]string{&out.State.Fields, &out.State.Was, &out.Problems, &out.Board} {
		if *texts == nil {
			*texts = map[string]string{}
		}
	}
	if out.Places == nil {
		out.Places = map[string]int{}
	}
	b, err := json.Marshal(out)
	if err != nil {
		return err.Error()
	}
	return string(b)
}

// seen opens a state in the page and compares the sentence that it shows.
func (v *visit) seen(s desk.State, out desk.Response) error {
	if err := v.t.visit(s.Fragment()); err != nil {
		return err
	}
	var shown string
	if err := v.t.run(`(document.querySelector("#answer .report h3") || {textContent: ""}).textContent.replaceAll("\u00a0", " ")`,
		&shown); err != nil {
		return err
	}
	if shown != out.Headline {
		return fmt.Errorf("%s: the page shows %q, the library says %q", s.At, shown, out.Headline)
	}
	return nil
}

// visit follows a link in a page that is open.
func (t *tab) visit(fragment string) error {
	return t.run("(() => { history.pushState(null, '', "+strconv.Quote(fragment)+"); "+
		"window.dispatchEvent(new PopStateEvent('popstate')); })()", nil)
}

// excerpt is where a text begins to differ from another.
func excerpt(a, b string) string {
	i := 0
	for i < len(a) && i < len(b) && a[i] == b[i] {
		i++
	}
	return "…" + a[max(i-40, 0):min(i+80, len(a))]
}

// randomState is a task with some of its fields changed: to a place of their slider, to a word of their list,
// or to some of the rows of a table; and now and then to what cannot be.
func randomState(draw *rand.Rand, id string) desk.State {
	s := desk.State{At: id, Phase: "open", Fields: map[string]string{}}
	if draw.IntN(3) == 0 {
		s.Units = "US customary"
	}
	if draw.IntN(5) == 0 {
		s.Language = "de"
	}
	for _, f := range desk.Fields(s) {
		switch {
		case draw.IntN(3) == 0: // as it is
		case draw.IntN(60) == 0:
			s.Fields[f.Name] = []string{"", "twelve", "-5", "1e9 g", "NaN", "9999 °C"}[draw.IntN(6)]
		case len(f.Rows) > 0:
			kept := f.Rows[:1+draw.IntN(len(f.Rows))]
			s.Fields[f.Name] = strings.Join(kept, ";")
		case len(f.Stops) > 0:
			s.Fields[f.Name] = f.Stops[near(draw, f.Place, len(f.Stops))]
		}
	}
	return s
}

// near is a place about where a slider stands, so that most inputs are such as a baker might try.
func near(draw *rand.Rand, place, n int) int {
	spread := max(n/6, 2)
	return min(max(place+draw.IntN(2*spread+1)-spread, 0), n-1)
}
