package cli

import (
	"io"

	"example.org/maslin/internal/textpage"
)

// A page is what the program prints besides the library's reports.
type page struct{ *textpage.Page }

// page is an empty page for this reader.
func (s System) page() *page {
	p := textpage.New(widthOf(s))
	p.ASCII, p.Color = asciiOnly(s), s.colored()
	return &page{p}
}

func (p *page) flush(w io.Writer) error {
	_, err := io.WriteString(w, p.String())
	return err
}

// heading starts a section.
func (p *page) heading(text string) { p.Section(p.Bold(text)) }
