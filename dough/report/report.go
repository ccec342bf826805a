package report

import (
	"slices"

	"example.org/maslin/dough/working"
	"example.org/maslin/internal/enum"
)

// A Report is an answer as a document. Make it with the Report method of an answer; an application may put
// reports together, leave sections out, or make its own.
type Report struct {
	// Headline is the answer in one sentence: what String prints.
	Headline working.Message `json:"headline"`
	Sections []Section       `json:"sections,omitzero"`
	// Cautions are what can go wrong or hurt.
	Cautions []working.Caution `json:"cautions,omitzero"`
	// RestsOn says what the answer takes for granted.
	RestsOn []working.Message `json:"rests_on,omitzero"`
	// Sources are who says so.
	Sources []working.Source `json:"sources,omitzero"`
}

// A Section is a part of a report under a title; without a title it continues what stands before it.
type Section struct {
	// Key names the section for programs, such as "weigh" or "oven".
	Key    string          `json:"key"`
	Title  working.Message `json:"title,omitzero"`
	Blocks []Block         `json:"blocks"`
}

// A Block is a [Paragraph], [List], [Rows], [Grid], [Chart] or [Reckoning].
type Block interface{ block() }

// A Paragraph is one or more sentences.
type Paragraph struct {
	Text working.Message `json:"text"`
	// Tone says how loud it is.
	Tone Tone `json:"tone,omitzero"`
}

// Tone says how loud a paragraph is.
type Tone int

// The weights.
const (
	Plain   Tone = iota
	Strong       // what the reader must not miss
	Warning      // what can go wrong or hurt
	Aside        // what most readers may skip
)

var tones = enum.Of[Tone]("tone of a paragraph", "plain", "strong", "warning", "aside")

// String returns the word.
func (t Tone) String() string { return tones.String(t) }

// MarshalText implements encoding.TextMarshaler.
func (t Tone) MarshalText() ([]byte, error) { return tones.Marshal(t) }

// UnmarshalText implements encoding.TextUnmarshaler; it reads the words that String prints, and no others.
func (t *Tone) UnmarshalText(text []byte) error { return tones.Unmarshal(t, text) }

// A List is sentences of equal rank.
type List []working.Message

// Rows are values with their labels, one a line.
type Rows []Row

// A Row is one value with its label, and a remark.
type Row struct {
	Label working.Message `json:"label"`
	Value Cell            `json:"value"`
	Note  working.Message `json:"note,omitzero"`
}

// A Reckoning is the arithmetic of a derivation, each line on one line, and what its symbols stand for.
type Reckoning struct {
	Of working.Working `json:"of"`
}

func (Paragraph) block() {}
func (List) block()      {}
func (Rows) block()      {}
func (Grid) block()      {}
func (Chart) block()     {}
func (Reckoning) block() {}

// Section returns the section with the key; one without blocks if there is none.
func (r Report) Section(key string) Section {
	for _, s := range r.Sections {
		if s.Key == key {
			return s
		}
	}
	return Section{Key: key}
}

// Grids lists the tables of the report, in order.
func (r Report) Grids() []Grid {
	var out []Grid
	for _, s := range r.Sections {
		for _, b := range s.Blocks {
			if t, ok := b.(Grid); ok {
				out = append(out, t)
			}
		}
	}
	return out
}

// Say makes a paragraph of a sentence.
func Say(m working.Message) Paragraph { return Paragraph{Text: m} }

// With is the report and another one behind it: its sections, or, where it has none, its headline in a section of the
// key; what it rests on and its sources; and its cautions, of which each is said once.
func (r Report) With(key string, more Report) Report {
	r.Sections = slices.Clone(r.Sections)
	if len(more.Sections) == 0 {
		more.Sections = []Section{{Key: key, Blocks: []Block{Say(more.Headline)}}}
	}
	r.Sections = append(r.Sections, more.Sections...)
	r.RestsOn = append(slices.Clip(r.RestsOn), more.RestsOn...)
	r.Sources = append(slices.Clip(r.Sources), more.Sources...)
	r.Cautions = slices.Clone(r.Cautions)
	for _, c := range more.Cautions {
		said := func(o working.Caution) bool { return o.Text == c.Text }
		if !slices.ContainsFunc(r.Cautions, said) {
			r.Cautions = append(r.Cautions, c)
		}
	}
	return r
}
