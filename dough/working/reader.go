package working

import (
	"cmp"
	"maps"
	"math"
	"slices"
	"strconv"
	"strings"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/internal/enum"
)

// A Reader says for whom something is told: the units, the language, and the zone of the clock. The zero value
// reads metric English and the clock that each moment was given with.
type Reader struct {
	Units    Units          `json:"units"`
	Language Language       `json:"language,omitzero"`
	Zone     *time.Location `json:"-"` // nil: each moment in the zone that it was given in
}

// ClockStyle is how a time of day is written.
type ClockStyle int

// The ways to write a time of day.
const (
	// ClockByUnits writes 12 hours for a reader of US customary units and 24 hours for a metric one.
	ClockByUnits ClockStyle = iota
	Clock24
	Clock12
)

var clockStyles = enum.Of[ClockStyle]("way to write the time of day", "by units", "24 hours", "12 hours")

// String returns the word.
func (s ClockStyle) String() string { return clockStyles.String(s) }

// MarshalText implements encoding.TextMarshaler.
func (s ClockStyle) MarshalText() ([]byte, error) { return clockStyles.Marshal(s) }

// UnmarshalText implements encoding.TextUnmarshaler; it reads the words that String prints, and no others.
func (s *ClockStyle) UnmarshalText(text []byte) error { return clockStyles.Unmarshal(s, text) }

// A Language is a catalog as plain data. Whatever it lacks is English, so the zero value is English. It is only
// read; whoever made it must not change its maps while others read them.
type Language struct {
	// Tag is the BCP 47 tag, such as "de-CH". Nothing is decided by it.
	Tag string `json:"tag,omitzero"`
	// Sentences are templates by identifier, such as "mixing.water_too_warm": "das Wasser ist mit %.1f zu warm".
	// Besides the sentences of the library they hold how a range, a duration, a date and a list are put together
	// ("working.range", "working.hours_minutes", "working.date", "working.and").
	Sentences map[string]string `json:"sentences,omitzero"`
	// Words are the words of enumerations by type and English word, "bake.Style/lean hearth", of weekdays and months,
	// "time.Weekday/Sat" and "time.Month/November", the subjects of cautions, "working.Subject/burns", and what an
	// enumeration is called in an error, "enum.Noun/style of bread". "working.Name/salt" is the word for an ingredient or
	// another name that is exactly that; a name without one is shown as it was given. A key with a sentence in front,
	// "bakeday.step_mix#bake.Style/lean hearth", holds in that sentence alone.
	Words map[string]string `json:"words,omitzero"`
	// Decimal is the decimal sign; not given, a point.
	Decimal string `json:"decimal,omitzero"`
	// Clock is how a time of day is written.
	Clock ClockStyle `json:"clock,omitzero"`
}

// Over is the language with whatever it lacks taken from base, of which the first that has it counts: a catalog of
// several files, one's own wording over a shipped catalog, or a dialect over its language. None of them is changed.
func (l Language) Over(base ...Language) Language {
	all := append([]Language{l}, base...)
	out := Language{Sentences: map[string]string{}, Words: map[string]string{}}
	for _, one := range slices.Backward(all) {
		out.Tag, out.Decimal = cmp.Or(one.Tag, out.Tag), cmp.Or(one.Decimal, out.Decimal)
		out.Clock = cmp.Or(one.Clock, out.Clock)
		maps.Copy(out.Sentences, one.Sentences)
		maps.Copy(out.Words, one.Words)
	}
	return out
}

// Check compares the sentences of the language with the English ones, by identifier. Each that is missing, unknown, or
// does not show the same arguments is a problem at its identifier. The English catalog is what examples/catalog prints
// from the source of the library.
func (l Language) Check(english Language) error {
	var bad quantity.Problems
	for _, id := range sorted(english.Sentences) {
		text, ok := l.Sentences[id]
		of := english.Sentences[id]
		switch {
		case !ok:
			bad.Required("Sentences["+id+"]", quantity.Tell("working.want_sentence", "%s", quantity.Excerpt(of)))
		case !fits(text, of, 10_000):
			bad.Add("Sentences["+id+"]", quantity.Excerpt(text),
				quantity.Tell("working.want_same_arguments", "the same arguments as in %s", quantity.Excerpt(of)),
				quantity.ErrInconsistent)
		}
	}
	for _, id := range sorted(l.Sentences) {
		if _, ok := english.Sentences[id]; !ok {
			bad.Add("Sentences["+id+"]", quantity.Excerpt(id),
				quantity.Tell("working.want_identifier_library", "an identifier of the library"), quantity.ErrInconsistent)
		}
	}
	return bad.ErrFor(l)
}

// number writes the decimal sign of the language into a number that is written with a point.
func (r Reader) number(text string) string {
	if d := r.Language.Decimal; d != "" && d != "." {
		return strings.Replace(text, ".", d, 1)
	}
	return text
}

// Number shows a number with that many decimals, or with those it needs if places is negative.
func (r Reader) Number(x float64, places int) string {
	if math.IsNaN(x) {
		return "NaN"
	}
	places = min(places, 15)
	var precision int
	format := byte('f')
	if places < 0 {
		precision = -1
		if size := math.Abs(x); size != 0 && (size < 1e-6 || size >= 1e21) {
			format = 'g'
		}
	} else {
		const most = 18 // a float64 has no more digits that mean something
		precision = enough(x, min(places, most))
	}
	return r.number(strings.Replace(strconv.FormatFloat(x, format, precision, 64), "-", "−", 1))
}

// enough is the number of decimals asked for, or as many as show two significant digits of what would else
// show as zero; what is smaller than a millionth is zero.
func enough(x float64, places int) int {
	size := math.Abs(x)
	if size < 0.5e-6 || math.IsInf(x, 0) || size >= 0.5*math.Pow10(-places) {
		return places
	}
	return max(places, 1-int(math.Floor(math.Log10(size))))
}

// Mass shows a weight with that many decimals of a gram, or every digit it has if places is negative, whole kilograms
// from 10 kg on as such; for US customary units as [Units.Mass].
func (r Reader) Mass(m quantity.Mass, places int) string {
	switch {
	case !m.IsValid():
		return r.word("invalid mass")
	case r.Units == USCustomary:
		return r.number(USCustomary.Mass(m))
	case places < 0 && math.Abs(m.Kilograms()) >= 10 && m == quantity.Kilograms(math.Round(m.Kilograms())):
		return r.number(m.Text(quantity.Kilogram, 0))
	case places < 0:
		return r.number(m.String())
	}
	return r.number(m.Text(quantity.Gram, enough(m.Grams(), places)))
}

// Temperature shows °C with that many decimals, or every digit it has if places is negative; °F with one fewer.
func (r Reader) Temperature(t quantity.Temperature, places int) string {
	switch {
	case !t.IsValid():
		return r.word("no temperature")
	case r.Units == USCustomary:
		return r.number(degrees(t, places))
	case places < 0:
		return r.number(t.String())
	}
	return r.number(t.Text(quantity.CelsiusScale, places))
}

// dialed is a temperature that an oven is set to, in whole steps of its dial: 220 °C is 430 °F, not 428 °F. A reader of
// °C is told whole degrees as they are.
func (r Reader) dialed(t quantity.Temperature, step float64) quantity.Temperature {
	switch {
	case !t.IsValid() || t.IsZero():
		return t
	case r.Units == USCustomary:
		return quantity.Fahrenheit(step * math.Round(t.Fahrenheit()/step))
	case t == quantity.Celsius(math.Round(t.Celsius())):
		return t
	}
	return quantity.Celsius(step * math.Round(t.Celsius()/step))
}

// Delta shows a difference of temperatures with that many decimals of a degree of the reader's, or every
// digit it has if places is negative (in °F a tenth).
func (r Reader) Delta(d quantity.TemperatureDelta, places int) string {
	switch {
	case !d.IsValid():
		return r.word("invalid temperature difference")
	case r.Units == USCustomary && places < 0:
		return r.number(trimmed(USCustomary.Delta(d, 1), places))
	case r.Units == USCustomary:
		return r.number(USCustomary.Delta(d, places))
	case places < 0:
		return r.number(d.String())
	}
	return r.number(d.Text(quantity.CelsiusScale, places))
}

// stepped is a difference in whole steps for a reader of °F: thermostats off by 10 °C are off by 20 °F, not 18.
func (r Reader) stepped(d quantity.TemperatureDelta, step float64) quantity.TemperatureDelta {
	if r.Units != USCustomary || !d.IsValid() {
		return d
	}
	return quantity.DeltaFahrenheit(step * math.Round(d.Fahrenheit()/step))
}

// Length shows centimeters and meters, or inches and feet; see [Units.Length].
func (r Reader) Length(l quantity.Length) string {
	if !l.IsValid() {
		return r.word("invalid length")
	}
	return r.number(r.Units.Length(l))
}

// Volume shows milliliters and liters, or fluid ounces and quarts; see [Units.Volume].
func (r Reader) Volume(v quantity.Volume) string {
	if !v.IsValid() {
		return r.word("invalid volume")
	}
	return r.number(r.Units.Volume(v))
}

// Percent shows a percentage with that many decimals, or every digit it has if places is negative.
func (r Reader) Percent(p quantity.Percent, places int) string {
	switch {
	case !p.IsValid():
		return r.word("invalid percentage")
	case places < 0:
		return r.number(p.String())
	}
	return r.number(p.Text(enough(p.Points(), places)))
}

// word shows an English word of the library that is no sentence.
func (r Reader) word(english string) string { return r.wordOf("", "working.Word/"+english) }

// wordOf shows the word of an enumeration by its key, in the sentence.
func (r Reader) wordOf(sentence, key string) string {
	if sentence != "" {
		if w, ok := r.Language.Words[sentence+"#"+key]; ok {
			return w
		}
	}
	if w, ok := r.Language.Words[key]; ok {
		return w
	}
	_, word, _ := strings.Cut(key, "/")
	return word
}
