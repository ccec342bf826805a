package working

import (
	"fmt"
	"reflect"
	"strconv"
	"strings"
	"time"

	"example.org/maslin/dough/quantity"
)

// The kinds of arguments, as JSON names them.
const (
	kindMass        = "mass"
	kindTemperature = "temperature"
	kindDelta       = "temperature_difference"
	kindLength      = "length"
	kindVolume      = "volume"
	kindPercent     = "percent"
	kindElapsed     = "duration" // whole seconds
	kindInstant     = "time"     // RFC 3339 with the zone's name in brackets behind it
	kindRange       = "range"    // low, likely, high, probability
	kindNumber      = "number"
	kindWord        = "word" // "bake.Style/lean hearth"
	kindName        = "name"
	kindMessage     = "message"
)

// An arg is one argument of a message in its canonical form: equal arguments have equal texts.
type arg struct {
	kind    string
	text    string
	message Message // of a message
	parts   []arg   // of a range
}

func argsOf(values []any) []arg {
	out := make([]arg, len(values))
	for i, v := range values {
		out[i] = argOf(v)
	}
	return out
}

type teller interface{ Message() Message }

// phrased are values and reasons of rooms that know no messages.
type phrased interface{ Phrase() quantity.Phrase }

func argOf(value any) arg {
	switch v := value.(type) {
	case nil:
		return arg{kind: kindName}
	case Message:
		return arg{kind: kindMessage, message: v}
	case quantity.Mass:
		return textArg(kindMass, v)
	case quantity.Temperature:
		return textArg(kindTemperature, v)
	case quantity.TemperatureDelta:
		return textArg(kindDelta, v)
	case quantity.Length:
		return textArg(kindLength, v)
	case quantity.Volume:
		return textArg(kindVolume, v)
	case quantity.Percent:
		return textArg(kindPercent, v)
	case quantity.Elapsed:
		return elapsedArg(time.Duration(v))
	case time.Duration:
		return elapsedArg(v)
	case time.Time:
		return instantArg(v)
	case quantity.TimeRange:
		minutes := func(d time.Duration) arg { return elapsedArg(d.Round(time.Minute)) }
		claim := textArg(kindPercent, v.Probability)
		return arg{kind: kindRange, parts: []arg{minutes(v.Early), minutes(v.Likely), minutes(v.Late), claim}}
	case quantity.Window:
		return arg{kind: kindMessage, message: windowMessage(v)}
	case string:
		return arg{kind: kindName, text: v}
	case quantity.Phrase:
		return arg{kind: kindMessage, message: phrase(v)}
	case teller:
		if v := reflect.ValueOf(value); v.Kind() == reflect.Pointer && v.IsNil() {
			return arg{kind: kindName}
		}
		return arg{kind: kindMessage, message: v.Message()}
	case phrased:
		return arg{kind: kindMessage, message: phrase(v.Phrase())}
	case error:
		return arg{kind: kindMessage, message: Problem(v)}
	}
	return otherArg(value)
}

func otherArg(value any) arg {
	v := reflect.ValueOf(value)
	t := v.Type()
	word, named := value.(fmt.Stringer)
	switch v.Kind() {
	case reflect.Int, reflect.Int8, reflect.Int16, reflect.Int32, reflect.Int64:
		if named {
			return arg{kind: kindWord, text: t.String() + "/" + word.String()}
		}
		return arg{kind: kindNumber, text: strconv.FormatInt(v.Int(), 10)}
	case reflect.Uint, reflect.Uint8, reflect.Uint16, reflect.Uint32, reflect.Uint64, reflect.Uintptr:
		if named {
			return arg{kind: kindWord, text: t.String() + "/" + word.String()}
		}
		return arg{kind: kindNumber, text: strconv.FormatUint(v.Uint(), 10)}
	case reflect.Float32, reflect.Float64:
		return arg{kind: kindNumber, text: strconv.FormatFloat(v.Float()+0, 'g', -1, 64)} // no negative zero
	case reflect.String:
		if !named {
			return arg{kind: kindWord, text: t.String() + "/" + v.String()}
		}
	case reflect.Struct:
		if t.PkgPath() == reflect.TypeFor[quantity.Mass]().PkgPath() && strings.HasPrefix(t.Name(), "Range[") {
			r := arg{kind: kindRange}
			for _, name := range []string{"Low", "Likely", "High", "Probability"} {
				f := v.FieldByName(name)
				if !f.IsValid() || !f.CanInterface() {
					return arg{kind: kindName, text: fmt.Sprint(value)}
				}
				r.parts = append(r.parts, argOf(f.Interface()))
			}
			return r
		}
	}
	return arg{kind: kindName, text: fmt.Sprint(value)}
}

// textArg keeps the exact text form; nothing for a quantity that is not given or invalid.
func textArg(kind string, v interface{ MarshalText() ([]byte, error) }) arg {
	text, err := v.MarshalText()
	if err != nil {
		text = nil
	}
	return arg{kind: kind, text: string(text)}
}

func elapsedArg(d time.Duration) arg {
	return arg{kind: kindElapsed, text: strconv.FormatInt(int64(d.Round(time.Second)/time.Second), 10)}
}

// elapsed is the duration that a text of seconds stands for.
func (a arg) elapsed() time.Duration {
	s, _ := strconv.ParseInt(a.text, 10, 64)
	return time.Duration(s) * time.Second
}

// whichTag precedes the abbreviation of the zone in a moment whose time of day the clocks show twice: only the zone
// itself knows that they do, and it does not travel. The form is an experimental tag of RFC 9557 (2024), section 3.1.
const whichTag = "][_which="

func instantArg(t time.Time) arg {
	text := t.Format(time.RFC3339) + "[" + t.Location().String()
	if shownTwice(t.Round(time.Minute)) {
		zone, _ := t.Round(time.Minute).Zone()
		text += whichTag + zone
	}
	return arg{kind: kindInstant, text: text + "]"}
}

// which is the abbreviation of a moment's zone, where its time of day alone does not say which moment it is.
func (a arg) which() string {
	_, zone, _ := strings.Cut(strings.TrimSuffix(a.text, "]"), whichTag)
	return zone
}

// instant is the moment with the clock and the zone's name that it was given with.
func (a arg) instant() (time.Time, bool) {
	stamp, zone, _ := strings.Cut(strings.TrimSuffix(a.text, "]"), "[")
	zone, _, _ = strings.Cut(zone, whichTag)
	t, err := time.Parse(time.RFC3339, stamp)
	if err != nil {
		return time.Time{}, false
	}
	_, offset := t.Zone()
	if zone == "UTC" && offset == 0 {
		return t.UTC(), true
	}
	return t.In(time.FixedZone(zone, offset)), true
}

// encodeArgs writes each argument as its kind, the length of what follows, and that; nested ones the same way.
func encodeArgs(args []arg) string {
	if len(args) == 0 {
		return ""
	}
	var b strings.Builder
	for _, a := range args {
		text := a.text
		switch a.kind {
		case kindMessage:
			text = encodeTexts(a.message.id, a.message.template, a.message.args)
		case kindRange:
			text = encodeArgs(a.parts)
		}
		b.WriteString(encodeTexts(a.kind, text))
	}
	return b.String()
}

func encodeTexts(texts ...string) string {
	var b strings.Builder
	for _, t := range texts {
		b.WriteString(strconv.Itoa(len(t)))
		b.WriteByte(':')
		b.WriteString(t)
	}
	return b.String()
}

// decodeArgs reads what encodeArgs wrote.
func decodeArgs(text string) []arg {
	var out []arg
	for text != "" {
		var a arg
		a.kind, text = decodeText(text)
		a.text, text = decodeText(text)
		switch a.kind {
		case kindMessage:
			var rest string
			a.message.id, rest = decodeText(a.text)
			a.message.template, rest = decodeText(rest)
			a.message.args, _ = decodeText(rest)
			a.text = ""
		case kindRange:
			a.parts, a.text = decodeArgs(a.text), ""
		}
		out = append(out, a)
	}
	return out
}

func decodeText(text string) (first, rest string) {
	length, rest, _ := strings.Cut(text, ":")
	n, err := strconv.Atoi(length)
	if err != nil || n < 0 || n > len(rest) {
		return "", ""
	}
	return rest[:n], rest[n:]
}
