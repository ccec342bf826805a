package curve

import (
	"strings"
	"testing"
)

// beside is a plot with a line beside the likely one; the likely one leaves the picture.
func beside() Plot {
	return Plot{
		Title: "Rates", About: "cut at 3", X: []float64{0, 10, 20, 30}, Mid: []float64{0, 1, 2, 900}, XUnit: "°C",
		MidName: "one",
		Beside:  []Line{{Name: "other", Y: []float64{1, 1.5, 2, 2.5}}}, Top: 3,
		Marks: []Mark{{X: 10, Text: "here"}},
	}
}

func TestLinesBesideAndWhatLeavesThePicture(t *testing.T) {
	svg, err := beside().SVG(Size{Width: 600, Height: 300})
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"other", "<clipPath id=", `clip-path="url(#curve-`, "stroke-dasharray=\"8 4\"",
		"10 °C here",
		"<desc", "cut at 3</desc>"} {
		if !strings.Contains(svg, want) {
			t.Errorf("the picture has no %s", want)
		}
	}
	if strings.Contains(svg, ">200<") || strings.Contains(svg, ">800<") {
		t.Error("the axis reaches beyond the top")
	}
	text, err := beside().Text(Screen{Width: 60, Height: 10})
	if err != nil {
		t.Fatal(err)
	}
	rows := strings.Split(text, "\n")
	if !strings.Contains(text, "∙∙ other") || !strings.Contains(text, "a  10 °C  here") {
		t.Error(text)
	}
	for _, row := range rows[2:] {
		if strings.HasSuffix(row, "━━━━━━━━") {
			t.Errorf("a line that leaves the picture is drawn along its frame:\n%s", text)
		}
	}
	whole := beside()
	whole.Top = 0
	if svg, err := whole.SVG(Size{Width: 600, Height: 300}); err != nil || strings.Contains(svg, "clipPath") {
		t.Errorf("cut without a top: %v", err)
	}
	for _, spoil := range []func(*Plot){
		func(p *Plot) { p.Beside[0].Y = p.Beside[0].Y[1:] },
		func(p *Plot) { p.Beside = append(p.Beside, p.Beside[0], p.Beside[0], p.Beside[0]) },
		func(p *Plot) { p.Beside[0].Y[2] = 1e300 },
		func(p *Plot) { p.Top = 1e300 },
	} {
		p := beside()
		spoil(&p)
		if p.Check() == nil {
			t.Errorf("%+v passes", p)
		}
	}
}
