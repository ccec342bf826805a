package main

import (
	"errors"
	"fmt"
	"strconv"
	"strings"

	"example.org/maslin/examples/classroom/desk"
)

// hostile tries what people and links do to a page. It must say what is wrong, and go on.
func (v *visit) hostile() error {
	if err := v.t.open(v.single); err != nil {
		return err
	}
	var errs []error
	good := desk.State{At: "water.plan", Phase: "open", Fields: map[string]string{"room": "30 °C"}}.Fragment()
	for _, fragment := range []string{
		"#hello", "#v=9&at=water.plan", "#%zz", "#v=1", good[:len(good)-12], strings.Replace(good, "30", "31", 1), "#=&=&=",
		"#v=1&v=1", "#" + strings.Repeat("x=1&", 50000), "#at=water.plan", "#<script>alert(1)</script>",
	} {
		errs = append(errs, v.complains(fragment))
	}
	for _, s := range []desk.State{
		{At: "nowhere.task"}, {At: "water.plan", Units: "cubits"}, {At: "water.plan", Language: "xx"},
		{At: "heat.cool", Phase: "half"},
		{At: "water.plan", Fields: map[string]string{"<b>": "1"}},
	} {
		errs = append(errs, v.complains(s.Fragment()))
	}
	errs = append(errs, v.typesNonsense(), v.goesBack(), v.keepsNothing(), v.twoTabs())
	return errors.Join(errs...)
}

// complains follows a link that is wrong: the page says so, and is there.
func (v *visit) complains(fragment string) error {
	if err := v.t.visit(fragment); err != nil {
		return err
	}
	var seen struct{ Problem, Task string }
	err := v.t.run(`({Problem: (document.querySelector("main > .problem") || {textContent: ""}).textContent,
		Task: (document.getElementById("task-title") || {textContent: ""}).textContent})`, &seen)
	if err == nil && (seen.Problem == "" || seen.Task == "") {
		err = fmt.Errorf("%.60s: the page says %q and shows %q", fragment, seen.Problem, seen.Task)
	}
	return err
}

// put types a text into a field as a person does, and lets the page take it in.
func (t *tab) put(id, text string) error {
	return t.run(`(async () => { const e = document.getElementById(`+strconv.Quote(id)+`);
		e.value = `+strconv.Quote(text)+`;
		e.dispatchEvent(new Event("input", {bubbles: true})); e.dispatchEvent(new Event("change", {bubbles: true}));
		await Promise.race([new Promise((next) => requestAnimationFrame(() => requestAnimationFrame(next))),
			new Promise((next) => setTimeout(next, 500))]); })()`, nil)
}

// typesNonsense types what is no number into every field of every task: the problem stands at the field, and the page
// goes on when it is mended.
func (v *visit) typesNonsense() error {
	nonsense := []string{"twelve", "", "1e400 g", "-40 %", "∞", "<img src=x onerror=alert(1)>",
		strings.Repeat("9", 3000), "\u202e12", "0 K"}
	for i, id := range desk.Tasks() {
		if err := v.t.visit(desk.State{At: id, Phase: "open"}.Fragment()); err != nil {
			return err
		}
		for k, f := range desk.Fields(desk.State{At: id, Phase: "open"}) {
			if len(f.Rows) > 0 || len(f.Stops) == 0 || len(f.Stops) < 12 && f.Place == 0 {
				continue
			}
			text := nonsense[(i+k)%len(nonsense)]
			if err := v.t.put("f-"+f.Name, text); err != nil {
				return err
			}
			var seen struct {
				Problem string
				Answer  string
			}
			err := v.t.run(`({Problem: [...document.querySelectorAll("[data-problem]")].map((p) => p.textContent).join(""),
				Answer: document.getElementById("answer").textContent})`, &seen)
			if err != nil {
				return err
			}
			if seen.Problem == "" && seen.Answer == "" {
				return fmt.Errorf("%s, %s, %.40q: neither a problem nor an answer", id, f.Name, text)
			}
			if err := v.t.put("f-"+f.Name, f.Stops[f.Place]); err != nil {
				return err
			}
		}
		// A plan of a day is worked out a moment after the typing has ended.
		if err := v.t.until(`!!document.querySelector("#answer .report")`, patience); err != nil {
			return fmt.Errorf("%s: no answer after everything was mended: %w", id, err)
		}
	}
	return nil
}

// goesBack locks a guess, reveals, and goes back and forward: each is the page that it was.
func (v *visit) goesBack() error {
	if err := v.t.visit(desk.State{At: "water.friction"}.Fragment()); err != nil {
		return err
	}
	if err := v.t.put("guess", "12 Δ°C"); err != nil {
		return err
	}
	steps := []struct{ do, there string }{
		{`document.getElementById("lock").click()`, "reveal"}, {`document.getElementById("reveal").click()`, "verdict"},
		{"history.back()", "reveal"}, {"history.forward()", "verdict"},
	}
	for _, s := range steps {
		if err := v.t.run(s.do, nil); err != nil {
			return err
		}
		if err := v.t.until(`!!document.getElementById("`+s.there+`")`, patience); err != nil {
			return fmt.Errorf("after %s: %w", s.do, err)
		}
	}
	return nil
}

// keepsNothing fails if anything was stored.
func (v *visit) keepsNothing() error {
	var kept int
	err := v.t.run(`document.cookie.length`, &kept)
	if err == nil && kept > 0 {
		err = errors.New("the page stored a cookie")
	}
	if err == nil {
		err = v.t.run(`(() => { try { return localStorage.length + sessionStorage.length } catch { return 0 } })()`, &kept)
	}
	if err == nil && kept > 0 {
		err = errors.New("the page stored something")
	}
	return err
}

// twoTabs changes one tab and looks at another.
func (v *visit) twoTabs() error {
	other, err := v.b.tab()
	if err != nil {
		return err
	}
	defer other.close()
	at := desk.State{At: "heat.boiling", Phase: "open"}.Fragment()
	if err := errors.Join(other.open(v.single+at), v.t.visit(at), v.t.put("f-place.altitude", "0 m")); err != nil {
		return err
	}
	for _, c := range []struct {
		t    *tab
		want string
	}{{v.t, "0 m"}, {other, "1150 m"}} {
		var text string
		if err := c.t.run(`document.getElementById("f-place.altitude").value`, &text); err != nil || text != c.want {
			return fmt.Errorf("a tab says %q where %q was typed (%w)", text, c.want, err)
		}
	}
	return nil
}
