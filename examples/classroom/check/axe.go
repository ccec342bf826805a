package main

import (
	"errors"
	"fmt"
	"strings"
)

// accessible has axe-core look at every page, light and dark, on a phone and on a desk, with the working open. It may
// find nothing.
func (v *visit) accessible() error {
	var errs []error
	for i, at := range pages() {
		dark, width := i%2 == 1, []int{360, 1280}[i/2%2]
		if err := v.t.screen(width, 900, dark); err != nil {
			return err
		}
		if i == 0 {
			if err := v.t.open(v.served); err != nil {
				return err
			}
			if err := v.t.run(v.axe, nil); err != nil {
				return err
			}
		}
		if err := v.t.visit(at.link()); err != nil {
			return err
		}
		if err := v.t.run(`document.querySelectorAll("details").forEach((d) => { d.open = true; })`, nil); err != nil {
			return err
		}
		var found []string
		err := v.t.run(`axe.run(document, {resultTypes: ["violations"]}).then((r) => r.violations.map((v) =>
			v.id + ": " + v.help + " " +
			v.nodes.slice(0, 3).map((n) => n.html.slice(0, 160)).join(" | ")))`, &found)
		if err != nil {
			return err
		}
		for _, f := range found {
			errs = append(errs, fmt.Errorf("%s (dark %v, %d): %s", at.At, dark, width, f))
		}
		errs = append(errs, v.targets(at.At))
	}
	return errors.Join(errs...)
}

// targets fails for what is pressed and smaller than 44 by 44 CSS pixels: links of a menu, buttons, fields, sliders.
func (v *visit) targets(at string) error {
	var small []string
	err := v.t.run(`[...document.querySelectorAll(
			"nav a, button, select, input:not([type=checkbox]), textarea, summary, label.check")]
		.filter((e) => e.getClientRects().length)
		.filter((e) => Math.min(e.getBoundingClientRect().height, e.getBoundingClientRect().width) < 43.5)
		.map((e) => e.outerHTML.slice(0, 120))`, &small)
	if err == nil && len(small) > 0 {
		err = fmt.Errorf("%s: smaller than 44 pixels: %s", at, strings.Join(small[:min(len(small), 3)], " "))
	}
	return err
}
