package working

import (
	"encoding/json"
	"math"
	"strconv"
	"strings"
	"time"

	"example.org/maslin/dough/quantity"
)

// deepest is how many messages inside messages are read from JSON.
const deepest = 32

// wireMessage is a message in JSON: Text is the English metric sentence for readers that know nothing else;
// Say is the template.
type wireMessage struct {
	ID   string            `json:"id,omitzero"`
	Text string            `json:"text"`
	Say  string            `json:"say,omitzero"`
	Args []json.RawMessage `json:"args,omitzero"`
}

// MarshalJSON writes {"id", "text", "say", "args"}: text is the English sentence in metric units for simple
// readers, say the English template, and each argument an object that names its kind, such as
// {"temperature": "24.5 °C"}. No message is null.
func (m Message) MarshalJSON() ([]byte, error) {
	if m.IsZero() {
		return []byte("null"), nil
	}
	w := wireMessage{ID: m.id, Text: m.String()}
	if m.template != literal(w.Text) || m.id != "" {
		w.Say = m.template
	}
	for _, a := range decodeArgs(m.args) {
		raw, err := json.Marshal(map[string]any{a.kind: a.wire()})
		if err != nil {
			return nil, err
		}
		w.Args = append(w.Args, raw)
	}
	return json.Marshal(w)
}

func (a arg) wire() any {
	switch a.kind {
	case kindMessage:
		return a.message
	case kindRange:
		var parts []any
		for _, p := range a.parts {
			parts = append(parts, map[string]any{p.kind: p.wire()})
		}
		return parts
	case kindElapsed:
		return quantity.Elapsed(a.elapsed())
	case kindNumber:
		if x, err := strconv.ParseFloat(a.text, 64); err == nil && !math.IsInf(x, 0) && !math.IsNaN(x) {
			return json.Number(a.text)
		}
	}
	return a.text
}

// UnmarshalJSON reads what MarshalJSON wrote, so that the message is equal to the one written; the text beside the
// template is not believed but told again. A plain text is a sentence as it stands. Errors: *quantity.InputError
// that names the part.
func (m *Message) UnmarshalJSON(data []byte) error {
	read, err := readMessage(data, 0)
	if err != nil {
		return err
	}
	*m = read
	return nil
}

func refuse(path string, got []byte, want quantity.Phrase) error {
	return &quantity.InputError{
		GoPath: path,
		Got:    quantity.Excerpt(string(got)),
		Want:   want,
		Err:    quantity.ErrInconsistent,
	}
}

func readMessage(data []byte, depth int) (Message, error) {
	text := strings.TrimSpace(string(data))
	switch {
	case text == "null":
		return Message{}, nil
	case depth > deepest:
		return Message{}, refuse("args", data, quantity.Tell("working.want_at_most_messages_inside_each",
			"at most %d messages inside each other", deepest))
	case strings.HasPrefix(text, `"`):
		var s string
		if err := json.Unmarshal(data, &s); err != nil {
			return Message{}, refuse("", data, quantity.Tell("working.want_text_or_message", "a text or a message"))
		}
		if s == "" {
			return Message{}, nil
		}
		return Say(s), nil
	}
	var w wireMessage
	if !strings.HasPrefix(text, "{") {
		return Message{}, refuse("", data, quantity.Tell("working.want_text_or_id_say_args",
			`a text or {"id", "say", "args"}`))
	}
	if err := quantity.ReadJSON(data, &w); err != nil {
		return Message{}, err
	}
	m := Message{id: w.ID, template: w.Say}
	if w.Say == "" && len(w.Args) == 0 {
		m.template = literal(w.Text)
	}
	var args []arg
	for i, raw := range w.Args {
		a, err := readArg(raw, depth)
		if err != nil {
			return Message{}, quantity.At("args["+strconv.Itoa(i)+"]", err)
		}
		args = append(args, a)
	}
	if w.Say == "" && len(args) > 0 {
		return Message{}, &quantity.InputError{GoPath: "say", Err: quantity.ErrRequired, Want: quantity.Tell(
			"working.want_template", "the template that shows the arguments")}
	}
	m.args = encodeArgs(args)
	return m, nil
}

func readArg(data []byte, depth int) (arg, error) {
	var object map[string]json.RawMessage
	if err := json.Unmarshal(data, &object); err != nil || len(object) != 1 {
		return arg{}, refuse("", data, quantity.Tell("working.want_one_argument_mass_40_g",
			`one argument, such as {"mass": "40 g"}`))
	}
	for kind, raw := range object {
		a, err := readKind(kind, raw, depth)
		return a, quantity.At(kind, err)
	}
	return arg{}, nil
}

func readKind(kind string, raw []byte, depth int) (arg, error) {
	switch kind {
	case kindMessage:
		m, err := readMessage(raw, depth+1)
		return arg{kind: kind, message: m}, err
	case kindRange:
		var parts []json.RawMessage
		if err := json.Unmarshal(raw, &parts); err != nil || len(parts) != 4 || depth > deepest {
			return arg{}, refuse("", raw, quantity.Tell("working.want_low_likely_high_and_probability",
				"low, likely, high and probability"))
		}
		out := arg{kind: kind}
		for i, part := range parts {
			a, err := readArg(part, depth+1)
			if err != nil {
				return arg{}, quantity.At("["+strconv.Itoa(i)+"]", err)
			}
			out.parts = append(out.parts, a)
		}
		return out, nil
	case kindNumber:
		if x, err := strconv.ParseFloat(string(raw), 64); err == nil && !math.IsInf(x, 0) {
			return arg{kind: kind, text: canonical(string(raw), x)}, nil
		}
	}
	var text string
	if err := json.Unmarshal(raw, &text); err != nil || string(raw) == "null" {
		return arg{}, refuse("", raw, quantity.Tell("working.want_text", "a text"))
	}
	return readText(kind, text)
}

// canonical writes a whole number with its digits and any other as Go writes a float.
func canonical(text string, x float64) string {
	if i, err := strconv.ParseInt(text, 10, 64); err == nil {
		return strconv.FormatInt(i, 10)
	}
	if u, err := strconv.ParseUint(text, 10, 64); err == nil {
		return strconv.FormatUint(u, 10)
	}
	return strconv.FormatFloat(x+0, 'g', -1, 64)
}

func readText(kind, text string) (arg, error) {
	var want quantity.Phrase
	switch kind {
	case kindName:
		return arg{kind: kind, text: text}, nil
	case kindWord:
		if strings.Contains(text, "/") {
			return arg{kind: kind, text: text}, nil
		}
		want = quantity.Tell("working.want_type_and_word_bake_style", `a type and its word, such as "bake.Style/lean hearth"`)
	case kindNumber:
		if x, err := strconv.ParseFloat(text, 64); err == nil && (math.IsNaN(x) || math.IsInf(x, 0)) {
			return arg{kind: kind, text: strconv.FormatFloat(x, 'g', -1, 64)}, nil
		}
		want = quantity.Tell("working.want_number", "a number")
	case kindElapsed:
		if d, err := time.ParseDuration(text); err == nil {
			return elapsedArg(d), nil
		}
		want = quantity.Tell("working.want_duration_4h30m", `a duration, such as "4h30m"`)
	case kindInstant:
		a := arg{kind: kind, text: text}
		if _, ok := a.instant(); ok && strings.HasSuffix(text, "]") {
			return a, nil
		}
		want = quantity.Tell("working.want_time_zone_2026_11_28t14",
			`a time with its zone, such as "2026-11-28T14:05:00+01:00[Europe/Zurich]"`)
	case kindMass:
		return again(kind, text, quantity.ParseMass)
	case kindTemperature:
		return again(kind, text, quantity.ParseTemperature)
	case kindDelta:
		return again(kind, text, quantity.ParseDelta)
	case kindLength:
		return again(kind, text, quantity.ParseLength)
	case kindVolume:
		return again(kind, text, quantity.ParseVolume)
	case kindPercent:
		return again(kind, text, quantity.ParsePercent)
	default:
		want = quantity.Tell("working.want_known_kind_argument", "a known kind of argument")
	}
	return arg{}, refuse("", []byte(text), want)
}

// again parses a quantity and keeps its canonical text; an empty text is one that is not given.
func again[T interface{ MarshalText() ([]byte, error) }](
	kind, text string,
	parse func(string) (T, error),
) (arg, error) {
	if text == "" {
		return arg{kind: kind}, nil
	}
	v, err := parse(text)
	if err != nil {
		return arg{}, err
	}
	return textArg(kind, v), nil
}
