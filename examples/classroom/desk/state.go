package desk

import (
	"hash/fnv"
	"slices"
	"strings"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
)

// Version is that of the links. A link of another version is not guessed at.
const Version = "1"

// A State is everything a page is in: it is what a link holds.
type State struct {
	At       string            `json:"at"`              // the task, such as "water.plan", or the worksheet
	Units    string            `json:"units,omitempty"` // "metric" or "US customary"
	Language string            `json:"language,omitempty"`
	Large    bool              `json:"large,omitempty"` // large type, for the wall
	Phase    string            `json:"phase,omitempty"` // "", "locked", "shown" or "open"
	Guess    string            `json:"guess,omitempty"`
	Why      string            `json:"why,omitempty"`
	Fields   map[string]string `json:"fields,omitempty"` // as typed, where it is not what the task starts with
	Was      map[string]string `json:"was,omitempty"`    // what the fields were when the guess was locked
}

// The phases of a task: guess, lock, reveal; or shown at once, for who teaches at the wall.
const (
	guessing = ""
	locked   = "locked"
	shown    = "shown"
	open     = "open"
)

// longest is how much of a text a state keeps. Nobody types more into a field; a link may hold anything.
const longest = 4000

// Fragment is the state as the fragment of a link, "#v=1&at=water.plan&…&end=1a2b3c4d". The last part is a check sum
// of what stands before it, by which a link that was cut off is known.
func (s State) Fragment() string {
	var b strings.Builder
	b.WriteString("v=" + Version)
	put := func(key, value string) {
		if value != "" {
			b.WriteString("&" + escape(key) + "=" + escape(value))
		}
	}
	put("at", s.At)
	put("units", s.Units)
	put("language", s.Language)
	if s.Large {
		put("large", "1")
	}
	put("phase", s.Phase)
	put("guess", s.Guess)
	put("why", s.Why)
	for _, group := range []struct {
		prefix string
		texts  map[string]string
	}{{"f.", s.Fields}, {"w.", s.Was}} {
		for _, name := range sortedKeys(group.texts) {
			// An empty field is not one that was never touched.
			b.WriteString("&" + escape(group.prefix+name) + "=" + escape(group.texts[name]))
		}
	}
	body := b.String()
	return "#" + body + "&end=" + checkSum(body)
}

func sortedKeys(m map[string]string) []string {
	keys := make([]string, 0, len(m))
	for k := range m {
		keys = append(keys, k)
	}
	slices.Sort(keys)
	return keys
}

func checkSum(text string) string {
	h := fnv.New32a()
	h.Write([]byte(text))
	const digits = "0123456789abcdef"
	sum, out := h.Sum32(), make([]byte, 8)
	for i := range out {
		out[7-i] = digits[sum>>(4*i)&15]
	}
	return string(out)
}

// ReadFragment reads a link. What it cannot read is told and not guessed at: the state is then as far as the link is
// whole, and of the first page when it is not.
func ReadFragment(fragment string) (State, []working.Message) {
	first := State{At: firstTask}
	text := strings.TrimPrefix(fragment, "#")
	if text == "" {
		return first, nil
	}
	pairs, readable := splitPairs(text)
	cut := strings.LastIndex(text, "&end=")
	whole := cut >= 0 && checkSum(text[:cut]) == text[cut+len("&end="):]
	version, hasVersion := pairs["v"]
	switch {
	case hasVersion && version != Version:
		return first, []working.Message{working.Tell("desk.link_version",
			"This link is of version %s; this page reads version %s. Nothing of it was used.",
			quantity.Excerpt(version), Version)}
	case hasVersion && !whole:
		return first, []working.Message{working.Tell("desk.link_cut",
			"This link was cut off or changed on its way: its check sum does not fit. Nothing of it was used; ask for it "+
				"again.")}
	case !readable || !hasVersion:
		return first, []working.Message{working.Tell("desk.link_foreign",
			"This link is not one of this page, or its beginning is missing: nothing of it was used.")}
	}
	return stateOf(pairs)
}

func stateOf(pairs map[string]string) (State, []working.Message) {
	s := State{Fields: map[string]string{}, Was: map[string]string{}}
	var told []working.Message
	for _, key := range sortedKeys(pairs) {
		value := pairs[key]
		switch {
		case key == "v" || key == "end":
		case key == "at":
			s.At = value
		case key == "units":
			s.Units = value
		case key == "language":
			s.Language = value
		case key == "large":
			s.Large = value == "1"
		case key == "phase":
			s.Phase = value
		case key == "guess":
			s.Guess = value
		case key == "why":
			s.Why = value
		case strings.HasPrefix(key, "f."):
			s.Fields[key[2:]] = value
		case strings.HasPrefix(key, "w."):
			s.Was[key[2:]] = value
		default:
			told = append(told, working.Tell("desk.link_unknown", "The link says %s, which this page does not know; it was "+
				"left out.", quantity.Excerpt(key)))
		}
	}
	s, more := s.settled()
	return s, append(told, more...)
}

// settled is the state with everything left out that this page does not know, and what that was.
func (s State) settled() (State, []working.Message) {
	var told []working.Message
	unknown := func(what working.Message, value string) {
		told = append(told, working.Tell("desk.state_unknown", "%v: %s is not known here.", what, quantity.Excerpt(value)))
	}
	if s.At == "" {
		s.At = firstTask
	}
	if s.At != worksheet {
		if _, ok := taskOf(s.At); !ok {
			unknown(working.Tell("desk.word_task", "task"), s.At)
			s.At, s.Fields, s.Was, s.Phase, s.Guess = firstTask, nil, nil, guessing, ""
		}
	}
	var units working.Units
	if s.Units != "" && units.UnmarshalText([]byte(s.Units)) != nil {
		unknown(working.Tell("desk.word_units", "units"), s.Units)
		s.Units = ""
	}
	if _, ok := languageOf(s.Language); !ok {
		unknown(working.Tell("desk.word_language", "language"), s.Language)
		s.Language = ""
	}
	if s.Phase != guessing && s.Phase != locked && s.Phase != shown && s.Phase != open {
		unknown(working.Tell("desk.word_phase", "step"), s.Phase)
		s.Phase = guessing
	}
	s.Guess, s.Why = shortened(s.Guess), shortened(s.Why)
	known := fieldNames(s)
	var more []working.Message
	s.Fields, more = keepKnown(s.Fields, known, true)
	told = append(told, more...)
	s.Was, _ = keepKnown(s.Was, known, false)
	return s, told
}

func keepKnown(texts map[string]string, known []string, tell bool) (map[string]string, []working.Message) {
	var told []working.Message
	kept := map[string]string{}
	for _, name := range sortedKeys(texts) {
		if slices.Contains(known, name) {
			kept[name] = shortened(texts[name])
		} else if tell {
			told = append(told, working.Tell("desk.field_unknown", "The field %s is not known here; it was left out.",
				quantity.Excerpt(name)))
		}
	}
	return kept, told
}

func shortened(text string) string {
	if len(text) <= longest {
		return strings.ToValidUTF8(text, "\uFFFD")
	}
	return strings.ToValidUTF8(text[:longest], "\uFFFD")
}

// unitsOf are the units of the reader; metric unless the state says otherwise.
func (s State) unitsOf() working.Units {
	var u working.Units
	if s.Units != "" && u.UnmarshalText([]byte(s.Units)) != nil {
		return working.Metric
	}
	return u
}

// reader is for whom everything of the state is told.
func (s State) reader() working.Reader {
	language, _ := languageOf(s.Language)
	return working.Reader{Units: s.unitsOf(), Language: language}
}
