package main

import (
	"errors"
	"fmt"

	"example.org/maslin/examples/classroom/desk"
	"example.org/maslin/examples/classroom/guide"
)

// lesson walks through the lesson as a class does: follow the link, guess, lock, reveal, read, open the working.
func (v *visit) lesson() error {
	if err := errors.Join(v.t.screen(360, 800, false), v.t.open(v.single)); err != nil {
		return err
	}
	var errs []error
	for _, stop := range guide.Lesson() {
		errs = append(errs, v.lessonStop(stop))
	}
	return errors.Join(errs...)
}

func (v *visit) lessonStop(stop guide.Stop) error {
	if err := v.t.visit(stop.Fragment); err != nil {
		return err
	}
	var problems, questions int
	err := errors.Join(v.t.run(`document.querySelectorAll("main > .problem").length`, &problems),
		v.t.run(`document.querySelectorAll(".questions > li").length`, &questions))
	if err != nil || problems > 0 {
		return fmt.Errorf("%s: the page complains of the link (%w)", stop.Title, err)
	}
	if stop.Says == "" {
		if questions != 7 {
			return fmt.Errorf("%s: %d questions", stop.Title, questions)
		}
		return nil
	}
	var guesses bool
	if err := v.t.run(`!!document.getElementById("guess")`, &guesses); err != nil {
		return err
	}
	if guesses {
		err := errors.Join(v.t.put("guess", "10"), v.t.run(`document.getElementById("lock").click()`, nil),
			v.t.until(`!document.querySelector("#answer .report")`, patience),
			v.t.run(`document.getElementById("reveal").click()`, nil),
			v.t.until(`document.getElementById("verdict").textContent !== ""`, patience))
		if err != nil {
			return fmt.Errorf("%s: %w", stop.Title, err)
		}
	}
	var said string
	if err := v.t.run(`document.querySelector("#answer .report h3").textContent.replaceAll("\u00a0", " ")`,
		&said); err != nil {
		return fmt.Errorf("%s: %w", stop.Title, err)
	}
	if said != stop.Says {
		return fmt.Errorf("%s: the page says %q, the lesson %q", stop.Title, said, stop.Says)
	}
	err = errors.Join(v.t.run(`document.querySelector("#working-box summary").click()`, nil),
		v.t.until(`!!document.querySelector("#working math")`, patience))
	if err != nil {
		s, _ := desk.ReadFragment(stop.Fragment)
		return fmt.Errorf("%s (%s): %w", stop.Title, s.At, err)
	}
	return nil
}
