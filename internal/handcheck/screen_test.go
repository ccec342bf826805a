package handcheck

import "testing"

func TestValuesAreFoundOnTheScreen(t *testing.T) {
	const page = "shape at 31 %, ready in 2h19m to 5h (80 %), likely 3h27m; 5 lb 14.9 oz of dough, 1.25 kg of flour at " +
		"24.2 °C,\n" +
		"Δ 3.5 Δ°C, kept for 4 days, then 2 days 6h, 3 days 12h07m and 5 days 26m, in the oven Sat 14:05, out at 14:40, a " +
		"basket of 2.8 qt, dry for 29m49s, or 1h02m30s, −5 min, 3.5 × " +
		"10⁻⁷ of it, rinse for 45s, wait 25m"
	for text, want := range map[string]bool{
		"31.30 %": true, "31.6 %": false, "31.3 g": false, "207 min (3h27m)": true, "208 min (3h28m)": false,
		"5 h": true, "300 min": true, "301 min": false, "94.901 oz": true, "94.7 oz": false, "1250 g": true, "1251.2 g": true,
		"1260 g": false, "24.18 °C": true, "24.18 Δ°C": false, "96 h (4 days)": true,
		"54 h (2 days 6h)": true, "53 h (2 days 5h)": false, "5047 min (3 days 12h07m)": true, "7226 min": true,
		"7225 min": false, "3.5 Δ°F": false, "3.5 Δ°C": true, "Sat 14:05": true, "Sun 14:05": false,
		"Sun 14:40": true, "Sun 14:41": false, "89.6 fl oz": true, "29.82 min": true, "29.9 min": false, "−5 min": true,
		"5 min": false, "3.51 × 10⁻⁷": true, "2650 mL": true, "80 %": true, "1789 s": true, "62.5 min": true,
		"62.6 min": false, "45 s": true, "46 s": false, "25 min": true, "94.9503 oz": false, "5760.503 min": false,
	} {
		v, ok := ReadValue(text)
		if !ok {
			t.Fatalf("%q is no value", text)
		}
		if got := OnScreen(page, v); got != want {
			t.Errorf("%s on the screen: %v", text, got)
		}
	}
}
