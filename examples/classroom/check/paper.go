package main

import (
	"errors"
	"fmt"
	"path/filepath"
	"strconv"
	"strings"

	"example.org/maslin/dough/working"
	"example.org/maslin/examples/classroom/desk"
	"example.org/maslin/schedule/exercise"
)

// worksheet answers a paper: right answers, a usual mistake, and nonsense; then it prints worksheet and key.
func (v *visit) worksheet() error {
	set, err := exercise.Paper{Count: 6, Seed: 7, Difficulty: exercise.Usual}.Exercises()
	if err != nil {
		return err
	}
	at := desk.State{At: "worksheet", Fields: map[string]string{"seed": "7"}}
	if err := v.t.open(v.single + at.Fragment()); err != nil {
		return err
	}
	answer := func(i int, text, want string) error {
		id := "f-answer." + strconv.Itoa(i+1)
		if err := v.t.put(id, text); err != nil {
			return err
		}
		var got string
		err := errors.Join(v.t.run(`document.getElementById("check-`+strconv.Itoa(i+1)+`").click()`, nil),
			v.t.run(`document.getElementById("`+id+`-verdict").textContent`, &got))
		if err == nil && !strings.Contains(got, want) {
			err = fmt.Errorf("question %d, answered %q: the page says %q, want %q", i+1, text, got, want)
		}
		return err
	}
	for i, e := range set.Exercises {
		value := working.Amount(e.Answer.Number, e.Answer.Unit, e.Answer.Decimals).Text(working.Reader{})
		number, _, _ := strings.Cut(value, " (") // "312 min (5h12m)"
		if err := errors.Join(answer(i, "banana", "read"), answer(i, bare(e.Slips[0].Value), e.Slips[0].Mistake.String()),
			answer(i, number, "Right")); err != nil {
			return err
		}
	}
	if err := v.t.run(`document.getElementById("key").click()`, nil); err != nil {
		return err
	}
	for _, what := range []string{"worksheet", "key"} {
		var out struct{ Data string }
		if err := errors.Join(v.t.run(`document.body.dataset.print = "`+what+`"`, nil),
			v.t.call("Page.printToPDF", map[string]any{"printBackground": false}, &out)); err != nil {
			return err
		}
		if len(out.Data) < 2000 {
			return fmt.Errorf("the print of the %s has %d bytes", what, len(out.Data))
		}
		if v.shots != "" {
			if err := save(filepath.Join(v.shots, what+".pdf"), out.Data); err != nil {
				return err
			}
		}
	}
	return nil
}

// bare is the number of a value, which the page takes in the unit of the question.
func bare(v working.Value) string {
	return strconv.FormatFloat(v.Number, 'f', 4, 64)
}
