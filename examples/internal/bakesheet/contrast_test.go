package bakesheet_test

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"testing"

	"example.org/maslin/dough/report"
)

// A color is sRGB, each part 0 to 1.
type color [3]float64

func parseColor(t *testing.T, text string) color {
	t.Helper()
	if len(text) == 4 { // #abc
		text = fmt.Sprintf("#%c%c%c%c%c%c", text[1], text[1], text[2], text[2], text[3], text[3])
	}
	n, err := strconv.ParseUint(text[1:], 16, 32)
	if err != nil || len(text) != 7 {
		t.Fatalf("%q is no color", text)
	}
	return color{float64(n>>16) / 255, float64(n>>8&255) / 255, float64(n&255) / 255}
}

// over is a color laid over another with an opacity.
func (c color) over(under color, opacity float64) color {
	for i := range c {
		c[i] = c[i]*opacity + under[i]*(1-opacity)
	}
	return c
}

// luminance is the relative luminance. Source: W3C, Web Content Accessibility Guidelines 2.1 (2018), section 6, relative luminance.
func (c color) luminance() float64 {
	for i, x := range c {
		if x <= 0.03928 {
			c[i] = x / 12.92
		} else {
			c[i] = math.Pow((x+0.055)/1.055, 2.4)
		}
	}
	return 0.2126*c[0] + 0.7152*c[1] + 0.0722*c[2]
}

// contrast is the contrast ratio, 1 to 21. Source: as luminance, contrast ratio.
func contrast(a, b color) float64 {
	x, y := a.luminance(), b.luminance()
	return (max(x, y) + 0.05) / (min(x, y) + 0.05)
}

func TestContrastOfKnownColors(t *testing.T) {
	for _, c := range []struct {
		a, b string
		want float64
	}{{"#000", "#fff", 21}, {"#777777", "#ffffff", 4.48}, {"#767676", "#ffffff", 4.54}, {"#ff0000", "#ffffff", 4.00}} {
		if got := contrast(parseColor(t, c.a), parseColor(t, c.b)); !(math.Abs(got-c.want) <= 0.005) {
			t.Errorf("%s on %s: %.3f, want %.2f", c.a, c.b, got, c.want)
		}
	}
}

// schemes are the colors of the page as its style has them: by light, by dark, in print.
func schemes(t *testing.T) []map[string]color {
	t.Helper()
	page := []byte(report.Style())
	var out []map[string]color
	for _, root := range regexp.MustCompile(`:root\{([^}]*)\}`).FindAllSubmatch(page, -1) {
		one := map[string]color{}
		for _, v := range regexp.MustCompile(`--([a-z-]+):(#[0-9a-f]+)`).FindAllSubmatch(root[1], -1) {
			one[string(v[1])] = parseColor(t, string(v[2]))
		}
		out = append(out, one)
	}
	if len(out) != 3 {
		t.Fatalf("the style has %d sets of colors, want 3", len(out))
	}
	return out
}

// Text keeps a contrast of 4.5 to 1 and lines one of 3 to 1, on everything they stand on. Source of the limits: W3C, Web Content
// Accessibility Guidelines 2.1 (2018), success criteria 1.4.3 and 1.4.11.
func TestEverythingStandsOutFromWhatItIsOn(t *testing.T) {
	band, labels := slices.Max(opacities(t, `path class="curve-band"`)), slices.Min(opacities(t, "text"))
	marks := slices.Min(opacities(t, `path[^>]*class="curve-mark"`))
	for i, c := range schemes(t) {
		scheme := []string{"light", "dark", "print"}[i]
		under := map[string]color{"paper": c["paper"], "the band of the curve": c["curve-band"].over(c["paper"], band)}
		least := func(what, on string, limit float64) {
			if got := contrast(c[what], under[on]); !(got >= limit) {
				t.Errorf("%s: %s on %s has a contrast of %.2f, want %g", scheme, what, on, got, limit)
			}
		}
		for _, text := range []string{"ink", "soft", "accent", "warn"} {
			least(text, "paper", 4.5)
		}
		for _, on := range []string{"paper", "the band of the curve"} {
			least("ink", on, 4.5) // the words of the curve
			least("curve-line", on, 3)
			least("curve-second", on, 3)
		}
		if got := contrast(c["ink"].over(c["paper"], labels), c["paper"]); !(got >= 4.5) {
			t.Errorf("%s: the titles of the axes have a contrast of %.2f, want 4.5", scheme, got)
		}
		if got := contrast(c["ink"].over(under["the band of the curve"], marks), under["the band of the curve"]); !(got >= 3) {
			t.Errorf("%s: the marks on the band have a contrast of %.2f, want 3", scheme, got)
		}
	}
}

// opacities are how thickly parts of the picture are laid on, as it has them.
func opacities(t *testing.T, of string) []float64 {
	t.Helper()
	picture := render(t, planned(t, "hall-kitchen.toml", nil))
	var out []float64
	for _, m := range regexp.MustCompile(`<`+of+`[^>]*opacity="([0-9.]+)"`).FindAllStringSubmatch(picture, -1) {
		x, err := strconv.ParseFloat(m[1], 64)
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, x)
	}
	if len(out) == 0 {
		t.Fatalf("the picture has no %q with an opacity", of)
	}
	return out
}
