package desk

import (
	"cmp"
	"math"
	"time"

	"example.org/maslin/dough"
	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
)

// Pictures of the page. Each has a title and a sentence that says the same; its numbers stand in the tables of the
// report below it. Nothing is told by color alone: every part carries its name.

func picture(id string, width, height float64, title, sentence working.Message, r working.Reader,
	draw func(b *builder)) string {
	b := &builder{}
	b.tag("figure", "class", "drawing")
	b.tag("svg", "role", "img", "aria-labelledby", id+"-title "+id+"-desc", "viewBox", "0 0 "+px(width)+" "+px(height),
		"width", px(width), "height", px(height))
	b.el("title", title.Text(r), "id", id+"-title")
	b.el("desc", sentence.Text(r), "id", id+"-desc")
	draw(b)
	b.end("svg")
	b.el("figcaption", sentence.Text(r))
	b.end("figure")
	return b.String()
}

func (b *builder) rect(x, y, w, h float64, class string) {
	b.tag("rect", "x", px(x), "y", px(y), "width", px(max(w, 0)), "height", px(h), "class", class)
	b.end("rect")
}

func (b *builder) label(x, y float64, anchor, text string, class ...string) {
	attributes := []string{"x", px(x), "y", px(y), "text-anchor", anchor}
	if len(class) > 0 {
		attributes = append(attributes, "class", class[0])
	}
	b.el("text", text, attributes...)
}

// drawBowls shows flour and water of the dough in the bowl where they are: the levain's, and the mixer's. Both bowls
// are drawn to one scale.
func drawBowls(b dough.Batch, r working.Reader, width int) string {
	type part struct {
		name working.Message
		mass quantity.Mass
		kind string
	}
	var inLevain, inMixer []part
	flour, poured, rest := quantity.Mass{}, quantity.Mass{}, quantity.Mass{}
	builds := b.Builds()
	for _, l := range b.FinalDough() {
		switch l.Role {
		case dough.RoleFlour:
			flour = flour.Add(l.Mass)
		case dough.RoleLiquid:
			poured = poured.Add(l.Mass)
		case dough.RolePreferment:
		default:
			rest = rest.Add(l.Mass)
		}
	}
	flourWord, waterWord := working.Tell("desk.bowl_flour", "flour"), working.Tell("desk.bowl_water", "water")
	for _, p := range builds {
		inLevain = append(inLevain, part{flourWord, p.Flour, "flour"}, part{waterWord, p.Water, "water"})
	}
	inMixer = append(inMixer, part{flourWord, flour, "flour"}, part{waterWord, poured, "water"},
		part{working.Tell("desk.bowl_rest", "salt"), rest, "rest"})
	sentence := working.Tell("desk.bowls_sentence",
		"In the mixing bowl %.0f of flour and %.0f of water, in the levain's bowl %.0f of "+
			"flour and %.0f of water: together %.0f of flour and %.0f of water, %.1f.", flour, poured, b.Flour().Sub(flour),
		b.Water().Sub(poured),
		b.Flour(), b.Water(), b.Hydration())
	w := float64(min(max(width, 260), 720))
	perGram := (w - 8) / max(b.Dough().Grams(), 1)
	const row, gap, head = 46.0, 14.0, 22.0
	lists := []struct {
		name  working.Message
		parts []part
	}{{working.Tell("desk.bowl_levain", "the levain's bowl"),
		inLevain}, {working.Tell("desk.bowl_mixer", "the mixing bowl"), inMixer}}
	return picture("bowls", w, 2*(row+gap+head), working.Tell("desk.bowls", "Two bowls, one dough"), sentence, r,
		func(p *builder) {
			for i, list := range lists {
				y, x := float64(i)*(row+gap+head), 4.0
				p.label(4, y+16, "start", list.name.Text(r))
				for _, part := range list.parts {
					long := part.mass.Grams() * perGram
					p.rect(x, y+head, long, row, part.kind)
					if text := part.name.Text(r); long > 7*float64(len([]rune(text)))+2 {
						p.label(x+long/2, y+head+20, "middle", text, "in")
						p.label(x+long/2, y+head+38, "middle", r.Mass(part.mass, 0), "in")
					}
					x += long
				}
			}
		})
}

// drawLevers shows by how much each thermometer is off what is wanted, and the water that makes up for all of them.
func drawLevers(in mixing.Planned, p mixing.PlannedWater, r working.Reader, width int) string {
	type lever struct {
		name working.Message
		at   quantity.Temperature
	}
	levers := []lever{
		{working.Tell("desk.lever_flour", "flour"), in.Ingredients[0].Temperature},
		{working.Tell("desk.lever_levain", "levain"), in.Ingredients[1].Temperature},
		{working.Tell("desk.lever_room", "room"), in.Room},
		{working.Tell("desk.lever_balance", "water, by heat"), p.Temperature},
		{working.Tell("desk.lever_factors", "water, by factors"), p.ByFactors},
	}
	farthest := 5.0
	for _, l := range levers {
		farthest = max(farthest, math.Abs(l.at.Sub(in.Target).Celsius()))
	}
	const row = 30.0
	w := float64(min(max(width, 280), 720))
	middle, reach := w/2, w/2-84
	sentence := working.Tell("desk.levers_sentence",
		"Wanted are %.1f. Mixing warms the dough by %.1f. The water makes up for all: %.1f by "+
			"the heat balance, %.1f by the factor method.", in.Target, p.Warming, p.Temperature, p.ByFactors)
	return picture("levers", w, row*float64(len(levers))+26,
		working.Tell("desk.levers", "Thermometers as levers about the dough wanted"),
		sentence, r, func(b *builder) {
			b.label(middle, 16, "middle", r.Temperature(in.Target, 1))
			b.tag("path", "d", "M"+px(middle)+" 22V"+px(22+row*float64(len(levers))), "class", "axis")
			b.end("path")
			for i, l := range levers {
				y := 26 + row*float64(i)
				off := l.at.Sub(in.Target)
				long := off.Celsius() / farthest * reach
				class := "warm"
				if long < 0 {
					class = "cold"
				}
				// The name stands on the other side of the middle, so that no line runs through a word.
				side, anchor, other, otherAnchor := middle+long+6, "start", middle-6, "end"
				if long < 0 {
					side, anchor, other, otherAnchor = middle+long-6, "end", middle+6, "start"
				}
				b.rect(middle+min(long, 0), y+8, math.Abs(long), 12, class)
				b.label(other, y+19, otherAnchor, l.name.Text(r))
				b.label(side, y+19, anchor, r.Delta(off, 1))
			}
		})
}

// The drawing board of temperatures: time along, temperature up. A pointer moves the corner that is nearest to it.
const (
	boardHigh   = 240.0
	boardMargin = 46.0
	coldest     = 0.0 // °C
	warmest     = 40.0
)

func boardWidth(width int) float64 { return float64(min(max(width, 280), 720)) }

// drawBoard draws the corners of a table of times and temperatures; ok is false if it holds none.
func drawBoard(v *values, name string, width int) (string, bool) {
	knots := v.corners(name)
	if len(knots) == 0 {
		return "", false
	}
	w, r := boardWidth(width), v.reader
	x := func(t time.Duration) float64 {
		return boardMargin + (w-2*boardMargin)*min(t.Hours()/day.Hours(), 1)
	}
	y := func(t quantity.Temperature) float64 {
		share := (min(max(t.Celsius(), coldest), warmest) - coldest) / (warmest - coldest)
		return boardHigh - boardMargin - (boardHigh-2*boardMargin)*share
	}
	sentence := working.Tell("desk.board_sentence",
		"%[1]d {1|corner|corners} from %[2].1f to %[3].1f. Pull a corner up or down, or type in the table.",
		len(knots), knots[0].temperature, knots[len(knots)-1].temperature)
	return picture("board-"+name, w, boardHigh, working.Tell("desk.board", "How warm the dough is, hour by hour"),
		sentence, r,
		func(b *builder) {
			b.tag("rect", "x", "0", "y", "0", "width", px(w), "height", px(boardHigh), "class", "board", "data-draw", name)
			b.end("rect")
			for c := coldest; c <= warmest; c += 10 {
				at := quantity.Celsius(c)
				b.tag("path", "d", "M"+px(boardMargin)+" "+px(y(at))+"H"+px(w-boardMargin), "class", "axis")
				b.end("path")
				b.label(2, y(at)+4, "start", r.Temperature(at, 0))
			}
			for h := 0; h <= int(day.Hours()); h += 3 {
				t := time.Duration(h) * time.Hour
				b.label(x(t), boardHigh-8, "middle", working.Tell("desk.board_hours", "%.0f h", t.Hours()).Text(r))
			}
			line := ""
			for i, k := range knots {
				step := "L"
				if i == 0 {
					step = "M"
				}
				line += step + px(x(k.at)) + " " + px(y(k.temperature))
			}
			b.tag("path", "d", line, "class", "line")
			b.end("path")
			for _, k := range knots {
				b.tag("circle", "cx", px(x(k.at)), "cy", px(y(k.temperature)), "r", "9", "class", "corner")
				b.end("circle")
			}
		}), true
}

type corner struct {
	row         int
	at          time.Duration
	temperature quantity.Temperature
}

// corners are the rows of a table that can be read.
func (v *values) corners(name string) []corner {
	trial := values{task: v.task, texts: v.texts, reader: v.reader}
	var out []corner
	for i, r := range trial.rows(name) {
		before := len(quantity.InputErrors(trial.problems.Err()))
		c := corner{i, time.Duration(at[quantity.Elapsed](r, "at")), at[quantity.Temperature](r, "temperature")}
		if len(quantity.InputErrors(trial.problems.Err())) == before {
			out = append(out, c)
		}
	}
	return out
}

// drawn is the table after a pointer was at a place of the board, given as shares of its width and height: the corner
// that is nearest along has the temperature of that place, to half a degree.
func (v *values) drawn(name string, across, down float64, width int) string {
	w := boardWidth(width)
	hour := (across*w - boardMargin) / (w - 2*boardMargin) * day.Hours()
	share := (boardHigh - boardMargin - down*boardHigh) / (boardHigh - 2*boardMargin)
	degrees := coldest + min(max(share, 0), 1)*(warmest-coldest)
	text := v.text(name)
	knots := v.corners(name)
	if len(knots) == 0 || math.IsNaN(hour+degrees) {
		return text
	}
	best := knots[0]
	for _, k := range knots {
		if cmp.Less(math.Abs(k.at.Hours()-hour), math.Abs(best.at.Hours()-hour)) {
			best = k
		}
	}
	typed, n := rowsOf(text), -1
	for i, cells := range typed {
		if !blank(cells) {
			n++
		}
		if n == best.row && len(cells) > 1 {
			at := quantity.Celsius(math.Round(degrees*2) / 2)
			if v.reader.Units == working.USCustomary {
				at = quantity.Fahrenheit(math.Round(at.Fahrenheit()))
			}
			typed[i][1] = v.reader.Temperature(at, -1)
			break
		}
	}
	return textOf(typed)
}
