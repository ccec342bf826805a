package working

import (
	"strings"
)

// A Message is a sentence of the library with quantities in it, such as a note, a caution or a
// remedy: a stable identifier, the English sentence as a template, and typed arguments. It is told
// in the units and the language of its reader ([Message.Text]), and it travels: JSON holds all of it,
// so that who reads it back can still tell it to anybody.
//
// A Message is immutable and comparable with ==; the zero value is no message.
type Message struct {
	id       string
	template string
	args     string // the arguments in the form of encodeArgs, so that == compares them
}

// Tell makes a message. The identifier names the sentence for catalogs and programs, such as
// "mixing.water_too_warm": the room, a dot, and words of lower-case letters, digits and underscores. One
// identifier has one English template in the whole library.
//
// The template has placeholders, which take the arguments in order or by number, so that a translation can
// reorder them: %v, %[2]v, with a number of decimals %.1f or %[2].1f, a whole number %d, and %q for a name in
// quotes. %% is a percent sign; a percent sign that begins no placeholder is itself. {1|piece|pieces} takes the
// first word if argument 1 is exactly one and the last word otherwise. What each kind of argument is shown as:
//
//	quantity.Mass, Temperature,           in the reader's units; metric with every digit it has, or
//	TemperatureDelta, Length, Volume      as many decimals as asked for
//	quantity.Percent                      the same in all units
//	quantity.Elapsed, time.Duration       "4h30m", to the second
//	time.Time                             %v "Sat 14:05", %t "14:05", %d "Saturday 28 November",
//	                                      %x "Saturday 28 November 2026, 14:05"
//	quantity.TimeRange, Range             "5h10m to 7h25m (80 %), likely 6h10m"
//	int, float64 and their like           a number
//	an integer type with String           a word, translated by the key "bake.Style/lean hearth"
//	string                                a name that somebody gave: as it stands, unless the language has a
//	                                      word for this very name, by the key "working.Name/salt"
//	Message, or a type with Message()     told in its place
//	error                                 its problems, told by [Problem]
//	anything else                         as package fmt shows it, never translated
//
// A temperature that an oven is set to is told with the step of its dial, %05.0f: 220 °C is 430 °F then, not 428 °F.
// A quantity that rounds to nothing though it is not nothing is shown with two significant digits. A placeholder
// without its argument shows as it is written.
func Tell(id, english string, args ...any) Message {
	return Message{id: id, template: english, args: encodeArgs(argsOf(args))}
}

// Say makes a message that has no identifier and so stays English: without args the text is taken as it is. It
// is for texts that a person wrote; sentences of the library use [Tell].
func Say(format string, args ...any) Message {
	if len(args) == 0 {
		format = literal(format)
	}
	return Message{template: format, args: encodeArgs(argsOf(args))}
}

// literal is the template that prints as the text.
func literal(text string) string { return strings.ReplaceAll(text, "%", "%%") }

// Join makes one message of several, with the separator between them.
func Join(messages []Message, separator string) Message {
	var parts []string
	var args []arg
	for _, m := range messages {
		parts = append(parts, "%v")
		args = append(args, arg{kind: kindMessage, message: m})
	}
	return Message{template: strings.Join(parts, literal(separator)), args: encodeArgs(args)}
}

// And lists arguments as [Tell] takes them: "a, b and c". Without any it is no message.
func And(items ...any) Message {
	return list(items, func(a, b any) Message { return Tell("working.and", "%v and %v", a, b) })
}

// Or lists alternatives: "a, b or c". Without any it is no message.
func Or(items ...any) Message {
	return list(items, func(a, b any) Message { return Tell("working.or", "%v or %v", a, b) })
}

func list(items []any, last func(a, b any) Message) Message {
	switch len(items) {
	case 0:
		return Message{}
	case 1:
		return Say("%v", items[0])
	}
	n := len(items)
	out := last(items[n-2], items[n-1])
	for i := n - 3; i >= 0; i-- {
		out = Tell("working.list", "%v, %v", items[i], out)
	}
	return out
}

// ID returns the identifier: what a program asks for to know which sentence this is. It is empty for what a
// person wrote, and for a [Join].
func (m Message) ID() string { return m.id }

// Text tells the sentence in the units and the language of the reader. Where the language lacks the
// sentence, or has one that does not use the arguments of the English one, it is English.
func (m Message) Text(r Reader) string {
	var b strings.Builder
	r.tell(&b, m)
	return b.String()
}

// String tells the sentence in English and metric units.
func (m Message) String() string { return m.Text(Reader{}) }

// IsZero reports whether there is no message.
func (m Message) IsZero() bool { return m == Message{} }

// Equal reports m == n.
func (m Message) Equal(n Message) bool { return m == n }

// AppendText implements encoding.TextAppender: the English sentence in metric units.
func (m Message) AppendText(b []byte) ([]byte, error) { return append(b, m.String()...), nil }

// MarshalText implements encoding.TextMarshaler: the English sentence in metric units. It is for logs; JSON
// keeps the whole message.
func (m Message) MarshalText() ([]byte, error) { return m.AppendText(nil) }

// UnmarshalText implements encoding.TextUnmarshaler: the sentence as it stands, in every language and unit.
func (m *Message) UnmarshalText(text []byte) error {
	*m = Say(string(text))
	return nil
}
