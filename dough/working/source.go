package working

import (
	"example.org/maslin/internal/enum"
	"strconv"
	"strings"
)

// Standing says how firmly a number or rule is known.
type Standing int

// The standings, from firm to weak.
const (
	// Published: read in the named source.
	Published Standing = iota
	// Computed: follows from a stated formula and stated inputs.
	Computed
	// CommonPractice: a rule of the trade with no source.
	CommonPractice
	// FromMemory: remembered, not verified.
	FromMemory
	// Judgment: chosen by this library where published figures are missing or disagree.
	Judgment
)

var standings = enum.Of[Standing]("standing of a source", "published", "computed", "common practice", "from memory",
	"judgment")

// String returns the word.
func (s Standing) String() string { return standings.String(s) }

// MarshalText implements encoding.TextMarshaler.
func (s Standing) MarshalText() ([]byte, error) { return standings.Marshal(s) }

// UnmarshalText implements encoding.TextUnmarshaler; it reads the words that String prints, and no others.
func (s *Standing) UnmarshalText(text []byte) error { return standings.Unmarshal(s, text) }

// Source names who says so. Key is a short handle, such as "IF97"; Where is the page,
// equation or table.
type Source struct {
	Key      string   `json:"key"`
	Author   string   `json:"author,omitzero"`
	Title    string   `json:"title"`
	Year     int      `json:"year,omitzero"`
	Where    string   `json:"where,omitzero"`
	URL      string   `json:"url,omitzero"`
	Standing Standing `json:"standing"`
}

// IsZero reports whether no source is given.
func (s Source) IsZero() bool { return s == Source{} }

// At returns the source with the place in it: a page, an equation, a table.
func (s Source) At(where string) Source {
	s.Where = where
	return s
}

// String prints the reference in one line.
func (s Source) String() string { return s.Message().String() }

// Message is the reference in one line. Its standing is told in the language of the reader, and so is a title that is
// a phrase of this library and no book's.
func (s Source) Message() Message {
	if s.IsZero() {
		return Tell("working.source_none", "no source")
	}
	if own := (Source{Key: s.Key, Title: s.Title, Standing: s.Standing}); s == own && s.Standing != Published &&
		s.Title != "" {
		return s.standing(sourceTitle(s.Title))
	}
	var parts []string
	if s.Author != "" {
		parts = append(parts, s.Author)
	}
	title := s.Title
	if s.Year != 0 {
		title += " (" + strconv.Itoa(s.Year) + ")"
	}
	if title != "" {
		parts = append(parts, strings.TrimSpace(title))
	}
	if s.Where != "" {
		parts = append(parts, s.Where)
	}
	if s.URL != "" {
		parts = append(parts, s.URL)
	}
	text := strings.Join(parts, ", ")
	switch {
	case s.Standing == Published:
		return Say("%s", text)
	case text == "":
		return Say("%v", s.Standing)
	}
	return s.standing(text)
}

// sourceTitle is a phrase of this library, which a language may have words for.
type sourceTitle string

// standing is the reference with how firmly it is known.
func (s Source) standing(reference any) Message {
	if s.Standing == CommonPractice {
		return Tell("working.source_practice", "%v [common practice, no source]", reference)
	}
	return Tell("working.source_standing", "%v [%v]", reference, s.Standing)
}

// NoSource is a rule of the trade that nobody in particular says.
func NoSource(rule string) Source {
	return Source{Key: "practice", Title: rule, Standing: CommonPractice}
}

// Algebra is the source of a step that follows from the steps before it.
func Algebra() Source {
	return Source{Key: "algebra", Title: "arithmetic on the values above", Standing: Computed}
}
