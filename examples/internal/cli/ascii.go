package cli

import (
	"io"

	"example.org/maslin/internal/textpage"
)

// asciiOnly reports whether the reader's locale is the plain C or POSIX one, which shows nothing
// but ASCII. A locale that is not set says nothing.
func asciiOnly(s System) bool {
	for _, name := range []string{"LC_ALL", "LC_CTYPE", "LANG"} {
		if v := s.Getenv(name); v != "" {
			return v == "C" || v == "POSIX"
		}
	}
	return false
}

// plain is a text as this reader can see it.
func (s System) plain(text string) string {
	if asciiOnly(s) {
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
