package main

import (
	"encoding/base64"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
)

func checks() []check {
	return []check{
		{"together", (*visit).together},
		{"compare", (*visit).compare},
		{"hostile", (*visit).hostile},
		{"keyboard", (*visit).keyboard},
		{"pointer", (*visit).pointer},
		{"worksheet", (*visit).worksheet},
		{"lesson", (*visit).lesson},
		{"timing", (*visit).timing},
		{"accessible", (*visit).accessible},
		{"zoom", (*visit).zoom},
		{"pictures", (*visit).pictures},
	}
}

// complaintOf is what an event says went wrong in the page: an exception, a message of an error, a request to
// somewhere.
func complaintOf(e event) string {
	switch e.Method {
	case "Runtime.exceptionThrown":
		return "the page threw: " + string(e.Params)
	case "Log.entryAdded":
		var p struct {
			Entry struct {
				Level, Text, URL string
			} `json:"entry"`
		}
		if json.Unmarshal(e.Params, &p) == nil && p.Entry.Level == "error" {
			return "the page complained: " + p.Entry.Text + " " + p.Entry.URL
		}
	case "Network.requestWillBeSent":
		var p struct {
			Request struct{ URL string } `json:"request"`
		}
		if json.Unmarshal(e.Params, &p) == nil {
			for _, fine := range []string{"http://127.0.0.1:", "file://", "data:", "about:", "blob:"} {
				if strings.HasPrefix(p.Request.URL, fine) {
					return ""
				}
			}
			return "the page asked for " + p.Request.URL
		}
	}
	return ""
}

// screen sets the size of the window and light or dark.
func (t *tab) screen(width, height int, dark bool) error {
	scheme := "light"
	if dark {
		scheme = "dark"
	}
	err := t.call("Emulation.setDeviceMetricsOverride",
		map[string]any{"width": width, "height": height, "deviceScaleFactor": 1,
			"mobile": width < 1000}, nil)
	if err != nil {
		return err
	}
	return t.call("Emulation.setEmulatedMedia", map[string]any{"features": []map[string]string{
		{"name": "prefers-color-scheme", "value": scheme}, {"name": "prefers-reduced-motion", "value": "reduce"}}}, nil)
}

func (v *visit) shoot(name string) error {
	if v.shots == "" {
		return nil
	}
	var out struct{ Data string }
	if err := v.t.call("Page.captureScreenshot", map[string]any{"format": "png", "captureBeyondViewport": true},
		&out); err != nil {
		return err
	}
	return save(filepath.Join(v.shots, name+".png"), out.Data)
}

func save(path, data string) error {
	b, err := base64.StdEncoding.DecodeString(data)
	if err != nil {
		return err
	}
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		return err
	}
	return os.WriteFile(path, b, 0o644)
}

// zoom visits every page as it is at 200 % in a window of 1280 px, and at 400 %: nothing may have to be scrolled across,
// and nothing that can be pressed may be smaller than a finger.
func (v *visit) zoom() error {
	if err := v.t.open(v.single); err != nil {
		return err
	}
	var errs []error
	for _, at := range pages() {
		for _, width := range []int{640, 320} {
			err := v.t.call("Emulation.setDeviceMetricsOverride", map[string]any{"width": width, "height": 450,
				"deviceScaleFactor": float64(1280) / float64(width), "mobile": false}, nil)
			if err = errors.Join(err, v.t.visit(at.link())); err != nil {
				return err
			}
			var wide int
			var small string
			err = errors.Join(v.t.run("document.documentElement.scrollWidth", &wide), v.t.run(`[...document.querySelectorAll(
				"button, select, summary, nav a, input:not([type=range])")].filter((e) => {
				const box = e.getBoundingClientRect();
				return box.width > 0 && box.height > 0 && Math.min(box.width, box.height) < 23.5;
			}).map((e) => e.outerHTML.slice(0, 60)).join(", ")`, &small))
			if err != nil {
				return err
			}
			if wide > width {
				errs = append(errs, fmt.Errorf("%s is %d wide in a window of %d", at.At, wide, width))
			}
			if small != "" {
				errs = append(errs, fmt.Errorf("%s in a window of %d: too small to press: %s", at.At, width, small))
			}
		}
	}
	return errors.Join(errs...)
}

// widest is what reaches farthest to the right of the window.
func (v *visit) widest() (text string) {
	err := v.t.run(`[...document.querySelectorAll("main *")].map((e) => [e.getBoundingClientRect().right, e]).filter(
		(x) => x[0] > innerWidth).sort((a, b) => b[0] - a[0]).slice(0, 3).map(
		(x) => Math.round(x[0]) + " " + x[1].outerHTML.slice(0, 200)).join("; ")`, &text)
	if err != nil {
		return err.Error()
	}
	return text
}

// pictures takes a picture of each page in each width, light and dark, in both languages, and fails where a page is
// wider than its window.
func (v *visit) pictures() error {
	if err := v.t.open(v.single); err != nil {
		return err
	}
	for i, at := range pages() {
		for _, tag := range []string{"en", "de"} {
			at.Language = tag
			for k, width := range []int{360, 768, 1280} {
				dark := (i+k)%2 == 1 // every second one; the next page has the others
				if err := v.t.screen(width, 900, dark); err != nil {
					return err
				}
				if err := v.t.visit(at.link()); err != nil {
					return err
				}
				var wide int
				if err := v.t.run("document.documentElement.scrollWidth", &wide); err != nil {
					return err
				}
				if wide > width {
					return fmt.Errorf("%s (%s) is %d wide in a window of %d: %s", at.At, tag, wide, width, v.widest())
				}
				if err := v.shoot(fmt.Sprintf("%02d-%s-%s-%d", i, at.At, tag, width)); err != nil {
					return err
				}
			}
		}
	}
	return nil
}
