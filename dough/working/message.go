package working

import (
	"fmt"
	"strconv"
	"strings"

	"example.org/maslin/dough/quantity"
)

// A Message is a sentence of the library with quantities in it, such as a note, a caution or a
// remedy, that can be shown in the units of its reader. It is immutable and comparable; the zero
// value is no message.
//
// Text form and JSON are the metric sentence. A Message that is read back from text is that
// sentence and has no other units.
type Message struct{ metric, us string }

// Say makes a message. Without args the text is taken as it is. Otherwise the format has one verb
// for each of args, %v or with a number of decimals %.1f, and %% for a percent sign.
//
// A [quantity.Mass], [quantity.Temperature] or [quantity.TemperatureDelta] is shown in the units of the
// reader: in metric units with every digit it has, or as many decimals as the verb says; in US
// customary units as [Units] does. A [quantity.Length] or [quantity.Volume] is shown as Units does in
// both. A Message is put in as its own text. Anything else is shown as package fmt does.
//
// A missing or a superfluous argument shows in the text as it does with package fmt.
func Say(format string, args ...any) Message {
	if len(args) == 0 {
		return Message{format, format}
	}
	metric, us := make([]any, len(args)), make([]any, len(args))
	places := decimals(format)
	for i, a := range args {
		p := -1
		if i < len(places) {
			p = places[i]
		}
		metric[i], us[i] = a, a
		switch v := a.(type) {
		case Message:
			metric[i], us[i] = shown(v.metric), shown(v.us)
		case quantity.Mass:
			us[i] = shown(USCustomary.Mass(v))
		case quantity.Temperature:
			us[i] = shown(degrees(v, p))
		case quantity.TemperatureDelta:
			us[i] = shown(trimmed(USCustomary.Delta(v, max(p, 1)), p))
		case quantity.Length:
			metric[i], us[i] = shown(Metric.Length(v)), shown(USCustomary.Length(v))
		case quantity.Volume:
			metric[i], us[i] = shown(Metric.Volume(v)), shown(USCustomary.Volume(v))
		}
	}
	return Message{fmt.Sprintf(format, metric...), fmt.Sprintf(format, us...)}
}

// shown is text that prints as itself under every verb.
type shown string

func (s shown) Format(f fmt.State, _ rune) { _, _ = f.Write([]byte(s)) }

// degrees shows °F to the whole degree when °C were, otherwise to a tenth, without a useless ".0" when no
// number of decimals was asked for.
func degrees(t quantity.Temperature, places int) string {
	if places >= 0 {
		return USCustomary.Temperature(t, places)
	}
	return trimmed(USCustomary.Temperature(t, 2), places)
}

func trimmed(text string, places int) string {
	if places >= 0 {
		return text
	}
	return strings.Replace(text, ".0 ", " ", 1)
}

// decimals lists the number of decimals of each verb of a format, −1 where it names none.
func decimals(format string) []int {
	var out []int
	for {
		_, rest, ok := strings.Cut(format, "%")
		if !ok {
			return out
		}
		end := strings.IndexFunc(rest, func(r rune) bool { return r == '%' || r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' })
		if end < 0 {
			return out
		}
		verb := rest[:end+1]
		format = rest[end+1:]
		if verb == "%" {
			continue
		}
		places := -1
		if _, p, ok := strings.Cut(verb[:end], "."); ok {
			if n, err := strconv.Atoi(p); err == nil {
				places = n
			}
		}
		out = append(out, places)
	}
}

// Join makes one message of several, with the separator between them.
func Join(messages []Message, separator string) Message {
	metric, us := make([]string, len(messages)), make([]string, len(messages))
	for i, m := range messages {
		metric[i], us[i] = m.metric, m.us
	}
	return Message{strings.Join(metric, separator), strings.Join(us, separator)}
}

// Text returns the sentence in the units.
func (m Message) Text(u Units) string {
	if u == USCustomary {
		return m.us
	}
	return m.metric
}

// String returns the sentence in metric units.
func (m Message) String() string { return m.metric }

// IsZero reports whether there is no message.
func (m Message) IsZero() bool { return m == Message{} }

// Equal reports m == n.
func (m Message) Equal(n Message) bool { return m == n }

// AppendText implements encoding.TextAppender: the metric sentence.
func (m Message) AppendText(b []byte) ([]byte, error) { return append(b, m.metric...), nil }

// MarshalText implements encoding.TextMarshaler: the metric sentence.
func (m Message) MarshalText() ([]byte, error) { return []byte(m.metric), nil }

// UnmarshalText implements encoding.TextUnmarshaler: the sentence as it stands, in every unit.
func (m *Message) UnmarshalText(text []byte) error {
	*m = Say(string(text))
	return nil
}
