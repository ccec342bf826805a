package textpage

import (
	"strings"
	"testing"
)

// A number keeps its unit, hours keep their minutes, and nothing else is held together.
func TestGlue(t *testing.T) {
	for text, want := range map[string]string{
		"780 g of dough":             "780_g of dough",
		"4 h 30 min bis 5 h (80 %),": "4_h_30_min bis 5_h (80_%),",
		"4 h 30 loaves":              "4_h 30 loaves",
		"the h 30 min":               "the h 30_min",
		"2 days 6h, then":            "2_days 6h, then",
		"3 d 12 h 05 min":            "3_d 12_h_05_min",
		"2 loaves":                   "2 loaves",
		"24 Δ°F or −3 °C.":           "24_Δ°F or −3_°C.",
		"h 30 min":                   "h 30_min",
		"4 h 30":                     "4_h 30",
		" ":                          " ",
		"5 s":                        "5_s",
		"12 min":                     "12_min",
	} {
		if got := strings.ReplaceAll(Glue(text), NoBreak, "_"); got != want {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
}
