package report

import (
	"time"

	"example.org/maslin/dough/working"
)

// Options say for whom a report is rendered, and where. The zero value is metric English, 80 columns, no color.
type Options struct {
	Units    working.Units
	Language working.Language
	Zone     *time.Location // of the clock; nil: as each moment was given
	// Width is how many columns there are, for text; 0 means 80. Less than 20 is taken as 20.
	Width int
	// Color marks headings and times with the colors of a terminal; ASCII leaves every other character out.
	Color, ASCII bool
	// EveryCaution prints all cautions in full; otherwise those that come with every bake are told in short.
	EveryCaution bool
	// WithSources adds who says so.
	WithSources bool
	// Rank is that of the first heading of a fragment, 1 to 4, for a page that has headings of its own; 0 means 1.
	Rank int
	// Picture is how wide pictures are in a page, in CSS pixels, 240 to 2000; 0 means 700.
	Picture int
}

// Reader is whom the report is told to.
func (o Options) Reader() working.Reader {
	return working.Reader{Units: o.Units, Language: o.Language, Zone: o.Zone}
}
