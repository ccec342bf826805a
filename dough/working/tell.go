package working

import (
	"math"
	"strconv"
	"strings"

	"example.org/maslin/dough/quantity"
)

// tell writes the sentence for the reader.
func (r Reader) tell(b *strings.Builder, m Message) {
	args := decodeArgs(m.args)
	template := m.template
	if m.id != "" {
		if t, ok := r.Language.Sentences[m.id]; ok && fits(t, m.template, len(args)) {
			template = t
		}
	}
	for _, p := range pieces(template) {
		switch {
		case p.index < 0:
			b.WriteString(p.plain)
		case p.index >= len(args):
			b.WriteString(p.text)
		case p.words != nil:
			word := p.words[len(p.words)-1]
			if args[p.index].text == "1" && args[p.index].kind == kindNumber {
				word = p.words[0]
			}
			b.WriteString(word)
		case args[p.index].kind == kindMessage:
			r.tell(b, args[p.index].message)
		default:
			b.WriteString(r.shown(m.id, args[p.index], p))
		}
	}
}

// shown is one argument as the placeholder asks for it.
func (r Reader) shown(sentence string, a arg, p piece) string {
	nan, sign := math.NaN(), ""
	if p.sign && !strings.HasPrefix(a.text, "-") {
		sign = "+"
	}
	switch a.kind {
	case kindMass:
		return sign + r.Mass(read(a, quantity.ParseMass, quantity.Grams(nan)), p.places)
	case kindTemperature:
		t := read(a, quantity.ParseTemperature, quantity.Temperature{})
		if p.width > 0 {
			t = r.dialed(t, float64(p.width))
		}
		return r.Temperature(t, p.places)
	case kindDelta:
		d := read(a, quantity.ParseDelta, quantity.DeltaCelsius(nan))
		if p.width > 0 {
			d = r.stepped(d, float64(p.width))
		}
		return sign + r.Delta(d, p.places)
	case kindLength:
		return sign + r.Length(read(a, quantity.ParseLength, quantity.Meters(nan)))
	case kindVolume:
		return sign + r.Volume(read(a, quantity.ParseVolume, quantity.Liters(nan)))
	case kindPercent:
		return sign + r.Percent(read(a, quantity.ParsePercent, quantity.NewPercent(nan)), p.places)
	case kindElapsed:
		return sign + r.Elapsed(a.elapsed())
	case kindInstant:
		return r.moment(a, p.verb)
	case kindRange:
		return r.ranged(sentence, a.parts, p)
	case kindNumber:
		return sign + r.plainNumber(a.text, p)
	case kindWord:
		return r.wordOf(sentence, a.text)
	}
	name := a.text
	if w, ok := r.Language.Words["working.Name/"+name]; ok {
		name = w
	}
	if p.verb == 'q' {
		return strconv.Quote(name)
	}
	return name
}

func read[T any](a arg, parse func(string) (T, error), none T) T {
	v, err := parse(a.text)
	if err != nil {
		return none
	}
	return v
}

func (r Reader) moment(a arg, verb byte) string {
	t, ok := a.instant()
	if !ok {
		return a.text
	}
	if verb == 'd' {
		return r.Date(t)
	}
	var text string
	switch verb {
	case 't':
		text = r.Clock(t)
	case 'x':
		text = r.DateClock(t)
	default:
		text = r.DayClock(t)
	}
	if zone := a.which(); zone != "" && r.Zone == nil {
		return Tell("working.clock_in_zone", "%s %s", text, zone).Text(r)
	}
	return text
}

// plainNumber keeps a whole number as it is written and shows others as asked.
func (r Reader) plainNumber(text string, p piece) string {
	x, err := strconv.ParseFloat(text, 64)
	if err != nil {
		return text
	}
	var shown string
	switch whole := !strings.ContainsAny(text, ".eIN"); {
	case whole && p.places < 0:
		shown = strings.Replace(text, "-", "−", 1)
	case p.verb == 'g' && p.places >= 0:
		shown = r.number(strings.Replace(strconv.FormatFloat(x, 'g', p.places, 64), "-", "−", 1))
	default:
		shown = r.Number(x, p.places)
	}
	if n := p.width - len(shown); n > 0 && x >= 0 {
		shown = strings.Repeat("0", n) + shown
	}
	return shown
}

// ranged shows a range of low, likely, high and the probability it claims, of which likely and the claim may be
// missing.
func (r Reader) ranged(sentence string, parts []arg, p piece) string {
	if len(parts) != 4 {
		return ""
	}
	low, likely, high := r.shown(sentence, parts[0], p), r.shown(sentence, parts[1], p), r.shown(sentence, parts[2], p)
	claim := r.shown(sentence, parts[3], piece{places: -1})
	hasLikely, claims := !parts[1].nothing(), !parts[3].nothing()
	switch {
	case low == high && (!hasLikely || likely == low): // a range of nothing, as it is shown
		return low
	case hasLikely && claims:
		return Tell("working.range", "%[1]s to %[3]s (%[4]s), likely %[2]s", low, likely, high, claim).Text(r)
	case hasLikely:
		return Tell("working.range_likely", "%[1]s to %[3]s, likely %[2]s", low, likely, high).Text(r)
	case claims:
		return Tell("working.range_claim", "%[1]s to %[2]s (%[3]s)", low, high, claim).Text(r)
	}
	return Tell("working.range_plain", "%[1]s to %[2]s", low, high).Text(r)
}

// nothing reports a zero or missing quantity.
func (a arg) nothing() bool {
	return strings.Trim(a.text, "0.") == "" || strings.HasPrefix(a.text, "0 ")
}
