package workcheck

import (
	"testing"

	"example.org/maslin/dough/working"
)

func TestLinesOfDerivationsAreReadAsPrinted(t *testing.T) {
	good := working.Line{
		Symbol: "D", Formula: "B ÷ (1 − L_1 ÷ 100)", Numbers: "780 ÷ (1 − 12 ÷ 100)", Value: "886.36 g",
		Where: []working.Binding{
			{Symbol: "B", Meaning: "baked", Value: "780 g"},
			{Symbol: "L_1", Meaning: "loss", Value: "12 %"},
		},
	}
	if f := lineFaults(good); len(f) > 0 {
		t.Fatal(f)
	}
	for name, spoil := range map[string]func(*working.Line){
		"wrong digit":          func(l *working.Line) { l.Value = "886.37 g" },
		"not exact":            func(l *working.Line) { l.Exact = true },
		"other numbers":        func(l *working.Line) { l.Numbers = "780 ÷ 0.88001" },
		"another value":        func(l *working.Line) { l.Where[1].Value = "12.01 %" },
		"a symbol unexplained": func(l *working.Line) { l.Where = l.Where[:1] },
		"another formula":      func(l *working.Line) { l.Formula = "B × (1 − L_1 ÷ 100)" },
		"no number":            func(l *working.Line) { l.Value = "much" },
		"no arithmetic":        func(l *working.Line) { l.Numbers = "780 ÷ much" },
		"wrong power":          func(l *working.Line) { l.Value = "886.36 × 10⁻¹ g" },
	} {
		l := good
		l.Where = append([]working.Binding(nil), good.Where...)
		spoil(&l)
		if len(lineFaults(l)) == 0 {
			t.Errorf("%s: not found", name)
		}
	}
	for _, l := range []working.Line{
		{Formula: "t − d", Numbers: "Sun 00:15 − 40 min", Value: "Sat 23:35",
			Where: []working.Binding{{Symbol: "t", Value: "Sun 00:15"}, {Symbol: "d", Value: "40 min"}}, Exact: true},
		{Formula: "t − d", Numbers: "Sun 12:15 am − 40 min", Value: "Sat 11:35 pm",
			Where: []working.Binding{{Symbol: "t", Value: "Sun 12:15 am"}, {Symbol: "d", Value: "40 min"}}},
		{Formula: "a × 10", Numbers: "−5.5 × 10^(−7) × 10", Value: "−5.5 × 10⁻⁶ m²/s",
			Where: []working.Binding{{Symbol: "a", Value: "−5.5 × 10⁻⁷ m²/s"}}, Exact: true},
	} {
		if f := lineFaults(l); len(f) > 0 {
			t.Error(f)
		}
	}
	if f := lineFaults(working.Line{Formula: "t − d", Numbers: "Sun 00:15 − 40 min", Value: "Sat 23:30",
		Where: []working.Binding{{Symbol: "t", Value: "Sun 00:15"}, {Symbol: "d", Value: "40 min"}}}); len(
		f,
	) == 0 {
		t.Error("a clock that is wrong passes")
	}
}
