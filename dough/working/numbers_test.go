package working_test

import (
	"encoding/json"
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/trial"
)

// How numbers are written: every unit for both readers, at the sizes where the way of writing changes.
func TestHowNumbersAreWritten(t *testing.T) {
	us := working.Reader{Units: working.USCustomary}
	comma := working.Reader{Language: working.Language{Decimal: ","}}
	var page strings.Builder
	sizes := []float64{0, 1, 1.5, -2.25, 9.995, 12.345678, 99.95, 123456.789, 0.012345, 0.0001,
		0.00009999, 4.567e-7, 60, 90,
		5999.5, 1e6}
	page.WriteString("amounts with three decimals\n")
	for _, u := range []working.Unit{working.Number, working.Percent, working.Celsius,
		working.DeltaCelsius, working.Kelvin,
		working.Fahrenheit, working.DeltaFahrenheit, working.Gram, working.Kilogram, working.Ounce, working.Pound,
		working.Meter, working.Centimeter, working.Foot, working.Inch, working.Liter, working.Milliliter, working.Quart,
		working.FluidOunce, working.Second, working.Minute, working.Hour, "kJ/kg"} {
		fmt.Fprintf(&page, "%q\n", string(u))
		for _, x := range sizes {
			v := working.Amount(x, u, 3)
			fmt.Fprintf(&page, "  %v | %s | %s | %s\n", x, v.Text(working.Reader{}), v.Text(us), v.Text(comma))
		}
	}
	page.WriteString("numbers by decimals\n")
	for _, x := range append(sizes, math.NaN(), math.Inf(1), 1e21, 9.99e20, 1e-6, 9.9e-7, 0.5e-6,
		0.499e-6, 0.0049, 0.005) {
		fmt.Fprintf(&page, "  %v", x)
		for _, places := range []int{-1, 0, 1, 2, 6, 15, 16, 30} {
			fmt.Fprintf(&page, " | %s", working.Reader{}.Number(x, places))
		}
		fmt.Fprintf(&page, " | %s\n", comma.Number(x, 1))
	}
	page.WriteString("templates\n")
	for _, template := range []string{"%v", "%d", "%s", "%q", "%f", "%g", "%.0f", "%.1f", "%.3g", "%.0g", "%+.1f", "%+d",
		"%02d", "%05d", "%012d", "%013d", "%.12f", "%.13f", "%[1]v", "%[1]d", "%[0]v", "%[2]v", "%[1",
		"%[", "%", "%%", "%+",
		"%0", "%.", "%.1", "%t", "%x", "%z", "%v {1|piece|pieces}", "{1|piece|pieces}", "{2|a|b}", "{1|a}", "{0|a|b}",
		"{1|a|b|c}", "{1|a|b", "{x|a|b}", "{9999|a|b}"} {
		fmt.Fprintf(&page, "  %q", template)
		for _, arg := range []any{7, 1, -7, 0, 2.5, -0.25, 1234567.25, 1e-9, "word"} {
			fmt.Fprintf(&page, " | %s", working.Tell("test.numbers", template, arg))
		}
		page.WriteString("\n")
	}
	page.WriteString("durations\n")
	for _, d := range []time.Duration{0, time.Second, -time.Second, 499 * time.Millisecond, 90 * time.Second, time.Hour,
		47*time.Hour + 59*time.Minute, 48 * time.Hour, 49 * time.Hour, 72*time.Hour + time.Second, -96 * time.Hour,
		-1 << 63, 1<<63 - 1} {
		fmt.Fprintf(&page, "  %d | %s | %s\n", d, working.Reader{}.Elapsed(d), working.Tell("test.d", "%v", d))
	}
	page.WriteString("quantities by decimals\n")
	nan := math.NaN()
	for _, r := range []working.Reader{{}, us, comma} {
		for _, places := range []int{-1, 0, 1, 2} {
			fmt.Fprintf(&page, "  %d:", places)
			for _, g := range []float64{0, 0.004, 0.04, 0.5, 780, -780, 9999, 10_000, 10_000.5, 12_000, 453.59237, 907.18474,
				nan} {
				fmt.Fprintf(&page, " | %s", r.Mass(quantity.Grams(g), places))
			}
			for _, c := range []float64{-18, 0, 24, 24.5, 21.11, nan} {
				fmt.Fprintf(&page, " | %s", r.Temperature(quantity.Celsius(c), places))
				fmt.Fprintf(&page, " | %s", r.Delta(quantity.DeltaCelsius(c), places))
			}
			for _, p := range []float64{0, 0.004, 0.04, 12.5, 68, -3, nan} {
				fmt.Fprintf(&page, " | %s", r.Percent(quantity.NewPercent(p), places))
			}
			page.WriteString("\n")
		}
		for _, x := range []float64{0, 0.005, 0.01, 0.25, 1, 2.99, 3, 3.05, 5, 1150, nan} {
			fmt.Fprintf(&page, " | %s | %s", r.Length(quantity.Meters(x)), r.Volume(quantity.Liters(x)))
		}
		page.WriteString("\n")
	}
	trial.Kept(t, "numbers.txt", page.String())
}

// A message in its data form: what is read is told and written again, and what is refused says where and why.
func TestMessagesInTheirDataForm(t *testing.T) {
	var page strings.Builder
	deep := strings.Repeat(`{"id":"a","say":"%v","args":[{"message":`, 40) + `"x"` + strings.Repeat(`}]}`, 40)
	arg := func(text string) string { return `{"id":"a.b","say":"%v","args":[` + text + `]}` }
	for _, text := range []string{`null`, `""`, `"plain 50 %v"`, ` "x" `, `7`, `[]`, `{}`,
		`{"text":"as 5 % is"}`, `{"id":"a"}`,
		`{"say":"%v and %v","args":[{"number":1}]}`, `{"args":[{"number":1}]}`, `{"id":1}`, `{"what":1}`,
		`{"id":"a","id":"b"}`,
		arg(`{"number":7}`), arg(`{"number":7.50}`), arg(`{"number":1e3}`), arg(`{"number":-0.0}`), arg(`{"number":-0}`),
		arg(`{"number":18446744073709551615}`), arg(`{"number":9223372036854775808}`), arg(`{"number":1e400}`),
		arg(`{"number":"NaN"}`), arg(`{"number":"+Inf"}`), arg(`{"number":"7"}`), arg(`{"number":null}`),
		arg(`{"number":0.1000000000000000055}`), arg(`{}`), arg(`7`), arg(`{"number":1,"name":"x"}`), arg(`{"name":"x"}`),
		arg(`{"name":7}`), arg(`{"word":"bake.Style/lean"}`), arg(`{"word":"lean"}`), arg(`{"duration":"4h30m"}`),
		arg(`{"duration":"4h30m0.000000001s"}`), arg(`{"duration":"soon"}`),
		arg(`{"time":"2026-11-28T14:05:00+01:00[Europe/Zurich]"}`), arg(`{"time":"2026-11-28T14:05:00+01:00"}`),
		arg(`{"time":"noon]"}`), arg(`{"mass":"40 g"}`), arg(`{"mass":""}`), arg(`{"mass":"1 lb"}`), arg(`{"mass":"1 L"}`),
		arg(`{"temperature":"70 °F"}`), arg(`{"temperature":"7"}`),
		arg(`{"temperature_difference":"3 K"}`), arg(`{"temperature_difference":"3 °C"}`),
		arg(`{"length":"9 in"}`), arg(`{"length":"9 g"}`), arg(`{"volume":"1 cup"}`), arg(`{"volume":"1 kg"}`),
		arg(`{"percent":"5 %"}`), arg(`{"percent":"5"}`), arg(`{"loaf":"x"}`), arg(`{"message":"in it"}`),
		arg(`{"message":{"say":"%v","args":[{"mass":"1 g"}]}}`), arg(`{"message":7}`),
		arg(`{"message":{"say":"%v","args":[{"mass":"1"}]}}`),
		arg(`{"range":[{"number":1},{"number":2},{"number":3},{"percent":"80 %"}]}`),
		arg(`{"range":[{"number":1},{"number":0},{"number":3},{"percent":"0 %"}]}`),
		arg(`{"range":[{"number":1},{"number":2},{"number":3},{"percent":"0 %"}]}`),
		arg(`{"range":[{"number":1},{"number":0},{"number":3},{"percent":"80 %"}]}`),
		arg(`{"range":[{"number":1},{"number":1},{"number":1},{"percent":"80 %"}]}`),
		arg(`{"range":[{"number":1},{"number":2},{"number":1},{"percent":"80 %"}]}`),
		arg(`{"range":[{"number":1}]}`), arg(`{"range":7}`), arg(`{"range":[{"number":1},{"number":2},{"mass":"3"},{}]}`),
		deep} {
		shown := text
		if len(shown) > 200 {
			shown = shown[:60] + "…"
		}
		fmt.Fprintf(&page, "%s\n", shown)
		var m, back working.Message
		if err := json.Unmarshal([]byte(text), &m); err != nil {
			fmt.Fprintf(&page, "  %v\n", err)
			continue
		}
		again, err := json.Marshal(m)
		if err != nil || json.Unmarshal(again, &back) != nil || back != m {
			t.Errorf("%s is written as %s, %v, and read back as %#v", text, again, err, back)
		}
		fmt.Fprintf(&page, "  %s\n  %s\n", m, again)
	}
	trial.Kept(t, "messages.txt", page.String())
}

// Words that mean something in Markdown, HTML or TeX, and every sign of a formula, in every form.
func TestPagesOfStrangeWords(t *testing.T) {
	signs := "−–×÷·≈≤≥≠±Σ∑∫√∞→∈⌈⌉⌊⌋αβγδεζηθκλμµνξπΠρστφψωΔΓΦΛ²³⁻¹⁰⁴⁵⁶¾⅓⅔⅛⁷⁸⁹ᵢⱼₙ₀₁₂₃₄₅₆₇₈₉°′½¼"
	var page strings.Builder
	for _, words := range []string{"a`b``c", "\\*_`[]<>|#\r\n&'\"", "x_water²", "T₁₂ and t⁻¹⁵", "e^(−c·x)^2", "a_b^c",
		"max_k + min", "ſƀ", "„so“ ‘it’ … \u00a0\u202f\t", "a=b/c%{}~^", "[link](http://x)", "é ÿ À", "x^−1.5,z", "^(", "日",
	} {
		w := hostile(words)
		for _, text := range []string{w.Text(60), w.Markdown(), w.LaTeX(), working.Telling{}.HTML(w, 3),
			working.TeX(words)} {
			page.WriteString(text + "\n")
		}
	}
	named := working.Derive(say("signs"))
	named.Find(working.Finding{Name: say("signs"), Symbol: signs, By: working.Num(2).Times(3), Source: working.Algebra()})
	page.WriteString(working.TeX(signs) + "\n" + named.Working().LaTeX() + "\n")
	none := working.Derive(working.Message{})
	none.Find(working.Finding{Name: say("first"), Symbol: "a", By: working.Num(2).Times(3), Source: working.Algebra()})
	none.Find(working.Finding{Name: say("next"), Symbol: "b", By: working.Num(2).Times(5), Source: working.NoSource("x")})
	for _, level := range []working.Level{working.Everything, working.WithNumbers, working.InWords} {
		as := working.Telling{Level: level}
		page.WriteString(as.Text(none.Working()) + as.Markdown(none.Working()) + as.LaTeX(none.Working()) +
			as.HTML(none.Working(), 2))
	}
	page.WriteString(working.Working{}.LaTeX() + working.Working{}.Markdown() + working.Working{}.Text(40))
	trial.Kept(t, "strange.txt", page.String())
}

// Tables as they are told: columns that hold in a reader's units and columns that do not, cells with as many decimals
// as they need or are given, a column that is short, times of day, a sum that needs more digits than its cells show.
func TestPagesOfTables(t *testing.T) {
	us := working.Reader{Units: working.USCustomary}
	hour := time.Date(2026, 11, 29, 8, 0, 0, 0, time.UTC)
	at := func(minutes int) float64 { return float64(hour.Unix())/60 + float64(minutes) }
	times := func(factor float64) func(int, []working.Expr) working.Expr {
		return func(_ int, before []working.Expr) working.Expr { return before[len(before)-1].Times(factor) }
	}
	warm := func(_ int, before []working.Expr) working.Expr { return before[0].Plus(0.25).Times(before[1]) }
	for name, columns := range map[string][]working.Column{
		"1 weights": {{Symbol: "m", Meaning: say("weight"), Unit: working.Gram, Cells: []float64{780, 12.5, 0.3333333}},
			{Symbol: "d", Meaning: say("double"), Unit: working.Gram, By: times(2)}},
		"2 degrees": {{Symbol: "T", Meaning: say("oven"), Unit: working.Celsius, Decimals: 1,
			Cells: []float64{220, 180.55}},
			{Symbol: "L", Meaning: say("length"), Unit: working.Centimeter, Cells: []float64{20, 33}},
			{Symbol: "h", Meaning: say("heat"), Unit: "kJ", By: warm, Decimals: 2},
			{Symbol: "s", Meaning: say("share"), Unit: working.Number, By: times(1.0 / 3), Decimals: 2}},
		"3 short": {{Symbol: "a", Unit: working.Number, Cells: []float64{1, 2, 3}},
			{Symbol: "b", Unit: working.Percent, Cells: []float64{12.5, 1.0 / 3}}},
		"4 clock": {{Symbol: "t", Unit: working.Clock, Cells: []float64{at(0), at(95)}},
			{Symbol: "n", Unit: working.Number, Cells: []float64{4, 9}, Decimals: working.WholeNumber}},
		"5 fine": {{Symbol: "x", Unit: working.Number, Cells: []float64{1.0 / 3, 2.0 / 3, 1.0 / 7}, Decimals: 2},
			{Symbol: "y", Unit: working.Number, By: times(1000), Decimals: 3}},
		"6 same": {{Symbol: "p", Unit: working.Number, Cells: []float64{2, 3}},
			{Symbol: "q", Unit: working.Number, By: times(1)}, {Symbol: "q", Unit: working.Number, By: times(10)}},
	} {
		d := working.Derive(say(name))
		d.Find(working.Finding{Name: say("sum"), Symbol: "S", Decimals: 3, Unit: columns[len(columns)-1].Unit,
			Table: working.Table{Columns: columns}, Source: working.Algebra()})
		w := d.Working()
		text, err := json.Marshal(w)
		if err != nil {
			t.Fatal(err)
		}
		trial.Kept(t, "tables/"+name[:1]+".txt", w.Text(100)+working.Telling{Reader: us, Width: 100}.Text(w)+w.Markdown()+
			w.LaTeX()+working.Telling{Reader: us}.HTML(w, 3)+"\n"+longFractions.ReplaceAllString(string(text), "$1")+"\n")
	}
}
