package cli

import (
	"io"
	"strconv"

	"example.org/maslin/internal/textpage"
)

// A page is what the program prints besides the library's reports.
type page struct{ *textpage.Page }

// page is an empty page for this reader.
func (s System) page() *page {
	p := textpage.New(s.width())
	p.ASCII, p.Color = s.asciiOnly(), s.colored()
	return &page{p}
}

func (p *page) flush(w io.Writer) error {
	_, err := io.WriteString(w, p.String())
	return err
}

// heading starts a section.
func (p *page) heading(text string) { p.Section(p.Bold(text)) }

// width is how wide the output may be: COLUMNS, or as the terminal is, or 80.
func (s System) width() int {
	if n, err := strconv.Atoi(s.Getenv("COLUMNS")); err == nil && n >= 20 {
		return n
	}
	if s.Width > 0 {
		return s.Width
	}
	return 80
}

// colored reports whether the output may have colors: on a terminal that has them, unless NO_COLOR is set.
func (s System) colored() bool {
	term := s.Getenv("TERM")
	return s.Terminal && s.Getenv("NO_COLOR") == "" && term != "" && term != "dumb"
}

// asciiOnly reports whether the reader's locale is the plain C or POSIX one, which shows nothing
// but ASCII. A locale that is not set says nothing.
func (s System) asciiOnly() bool {
	for _, name := range []string{"LC_ALL", "LC_CTYPE", "LANG"} {
		if v := s.Getenv(name); v != "" {
			return v == "C" || v == "POSIX"
		}
	}
	return false
}

// plain is a text as this reader can see it.
func (s System) plain(text string) string {
	if s.asciiOnly() {
		return textpage.ASCII(text)
	}
	return text
}

// asciiWriter writes ASCII; every write must hold whole characters.
type asciiWriter struct{ io.Writer }

func (w asciiWriter) Write(b []byte) (int, error) {
	if _, err := io.WriteString(w.Writer, textpage.ASCII(string(b))); err != nil {
		return 0, err
	}
	return len(b), nil
}
