package outfile

import (
	"bytes"
	"io"
	"os"
)

// Form is a kind of file that a program writes, and how a file that exists is known to be one.
type Form struct {
	// Name is for messages: "an HTML page".
	Name string
	// Begins reports whether a file that begins so is of the form. It sees at most 4096 bytes.
	Begins func(start []byte) bool
}

// HTML is a page of the library, which says so in its head.
func HTML() Form {
	return Form{"an HTML page of this program", func(start []byte) bool {
		return hasTag(start, "<!doctype html") && bytes.Contains(start, []byte(`<meta name="generator" content="Maslin">`))
	}}
}

// SVG is a curve of the library, as it is known by its names.
func SVG() Form {
	return Form{"an SVG picture of this program", func(start []byte) bool {
		return hasTag(start, "<svg") && bytes.Contains(start, []byte(` aria-labelledby="curve-`))
	}}
}

// Calendar is an iCalendar file of the library (RFC 5545, section 3.7.3: PRODID). Any other may be somebody's
// appointments.
func Calendar() Form {
	return Form{"a calendar of this program", func(start []byte) bool {
		return hasTag(start, "begin:vcalendar") && bytes.Contains(start, []byte("\nPRODID:-//maslin//"))
	}}
}

// CSV is a table whose heading is the line given. Any other table may be somebody's readings.
func CSV(heading string) Form {
	return Form{"a table with the columns of this program", func(start []byte) bool {
		line, _, _ := bytes.Cut(withoutMark(start), []byte("\n"))
		return string(bytes.TrimRight(line, "\r")) == heading
	}}
}

// hasTag looks for a tag in lower case, whatever the case, after a byte-order mark and white space.
func hasTag(start []byte, tag string) bool {
	return bytes.HasPrefix(bytes.ToLower(bytes.TrimLeft(withoutMark(start), " \t\r\n")), []byte(tag))
}

func withoutMark(start []byte) []byte { return bytes.TrimPrefix(start, []byte("\ufeff")) }

// holds reports whether the file is empty or of the form.
func (f Form) holds(name string) (bool, error) {
	file, err := os.Open(name)
	if err != nil {
		return false, err
	}
	defer file.Close()
	start, err := io.ReadAll(io.LimitReader(file, 4096))
	if err != nil {
		return false, err
	}
	return len(start) == 0 || f.Begins(start), nil
}
