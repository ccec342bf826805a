package main

import (
	"errors"
	"fmt"
	"time"

	"example.org/maslin/examples/classroom/desk"
)

const patience = 10 * time.Second

// press presses a key and lets it go.
func (t *tab) press(key string) error {
	keys := map[string]struct {
		code int
		text string
	}{"Tab": {9, ""}, "Enter": {13, "\r"}, "ArrowRight": {39, ""}, "ArrowDown": {40, ""}, " ": {32, " "}}
	k := keys[key]
	down := map[string]any{"type": "keyDown", "key": key, "code": key, "windowsVirtualKeyCode": k.code}
	if k.text != "" {
		down["text"] = k.text
	}
	return errors.Join(t.call("Input.dispatchKeyEvent", down, nil),
		t.call("Input.dispatchKeyEvent", map[string]any{"type": "keyUp", "key": key, "code": key,
			"windowsVirtualKeyCode": k.code}, nil))
}

// tabTo presses Tab until the element that has the attention has the id.
func (t *tab) tabTo(id string) error {
	for range 60 {
		var at string
		if err := t.run("document.activeElement.id || document.activeElement.dataset.slide || ''", &at); err != nil {
			return err
		}
		if at == id {
			return nil
		}
		if err := t.press("Tab"); err != nil {
			return err
		}
	}
	return fmt.Errorf("%s is not reached by the Tab key", id)
}

// keyboard goes through a task with the keyboard alone: guess, lock, reveal, move a slider, open the working.
func (v *visit) keyboard() error {
	if err := v.t.open(v.single + (desk.State{At: "water.friction"}.Fragment())); err != nil {
		return err
	}
	if err := v.t.tabTo("guess"); err != nil {
		return err
	}
	if err := errors.Join(v.t.call("Input.insertText", map[string]any{"text": "12"}, nil), v.t.press("Enter"),
		v.t.until(`document.activeElement.id === "reveal"`, patience), v.t.press("Enter"),
		v.t.until(`document.activeElement.id === "verdict"`, patience)); err != nil {
		return err
	}
	var verdict, live, before, after string
	if err := errors.Join(v.t.run(`document.getElementById("verdict").textContent`, &verdict),
		v.t.run(`document.getElementById("live").textContent`, &live),
		v.t.run(`document.getElementById("f-dough").value`, &before)); err != nil {
		return err
	}
	if verdict == "" || live == "" {
		return fmt.Errorf("verdict %q, announced %q", verdict, live)
	}
	if err := v.t.run(`document.querySelector('[data-slide="dough"]').focus()`, nil); err != nil {
		return err
	}
	if err := errors.Join(v.t.press("ArrowRight"),
		v.t.until(`document.querySelector(".changed").textContent.includes("26")`, patience),
		v.t.run(`document.getElementById("f-dough").value`, &after)); err != nil {
		return err
	}
	if before == after {
		return fmt.Errorf("the slider does not move: %s", after)
	}
	if err := v.t.run(`document.querySelector("#working-box summary").focus()`, nil); err != nil {
		return err
	}
	return errors.Join(v.t.press("Enter"), v.t.until(`!!document.querySelector("#working math")`, patience))
}

// pointer draws on the board of temperatures: the corner that is nearest moves, and so does its cell.
func (v *visit) pointer() error {
	if err := v.t.screen(1280, 900, false); err != nil {
		return err
	}
	if err := v.t.open(v.single + (desk.State{At: "clock.rise", Phase: "open"}.Fragment())); err != nil {
		return err
	}
	var at struct{ X, Y float64 }
	err := v.t.run(`(() => { const b = document.querySelector("[data-board] svg"); b.scrollIntoView({block: "center"});
		const r = b.getBoundingClientRect(); return {X: r.left + r.width * 0.95, Y: r.top + r.height * 0.2} })()`, &at)
	if err != nil {
		return err
	}
	mouse := func(kind string, y float64) error {
		return v.t.call("Input.dispatchMouseEvent", map[string]any{"type": kind, "x": at.X, "y": y, "button": "left",
			"buttons":    1,
			"clickCount": 1}, nil)
	}
	if err := errors.Join(mouse("mousePressed", at.Y), mouse("mouseMoved", at.Y+10),
		mouse("mouseReleased", at.Y+10)); err != nil {
		return err
	}
	return v.t.until(`!document.getElementById("f-history[3].temperature").value.startsWith("22")`, patience)
}
