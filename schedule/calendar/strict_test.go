package calendar_test

import (
	"fmt"
	"regexp"
	"strings"
	"time"
	"unicode/utf8"
)

// A second reading of RFC 5545, written without looking at the writer: it accepts exactly what
// the standard allows for the few components and properties that this package writes, and
// gives the decoded values back.

type component struct {
	name       string
	properties map[string][]string // decoded values by name, with parameters: "TRIGGER;RELATED=END"
	inside     []*component
}

func (c *component) one(name string) (string, error) {
	if v := c.properties[name]; len(v) == 1 {
		return v[0], nil
	}
	return "", fmt.Errorf("%s has %d of %s", c.name, len(c.properties[name]), name)
}

// grammar says of each component which properties it must have once and which it may have once.
var grammar = map[string]struct{ must, may, inside string }{
	"VCALENDAR": {"VERSION PRODID", "CALSCALE NAME X-WR-CALNAME", "VEVENT"},
	"VEVENT":    {"UID DTSTAMP DTSTART SUMMARY SEQUENCE TRANSP", "DTEND DESCRIPTION LOCATION", "VALARM"},
	"VALARM":    {"ACTION DESCRIPTION TRIGGER", "", ""},
}

var (
	contentLine = regexp.MustCompile(`^([A-Z][A-Z0-9-]*)((?:;[A-Z-]+=[A-Z0-9-]+)*):`)
	utcTime     = regexp.MustCompile(`^\d{8}T\d{6}Z$`)
	duration    = regexp.MustCompile(`^[+-]?PT(?:\d+H(?:\d+M(?:\d+S)?)?|\d+M(?:\d+S)?|\d+S)$`)
	uuid        = regexp.MustCompile(`^[0-9a-f]{8}-[0-9a-f]{4}-5[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$`)
)

// strict decodes a calendar file and refuses every fault it knows.
func strict(file []byte) (*component, error) {
	text, ok := strings.CutSuffix(string(file), "\r\n")
	if !ok {
		return nil, fmt.Errorf("the last line does not end in CRLF")
	}
	var logical []string
	for n, line := range strings.Split(text, "\r\n") {
		switch {
		case len(line) > 75:
			return nil, fmt.Errorf("line %d has %d octets", n+1, len(line))
		case !utf8.ValidString(line):
			return nil, fmt.Errorf("line %d is not UTF-8", n+1)
		case line == "":
			return nil, fmt.Errorf("line %d is empty", n+1)
		}
		for _, r := range line {
			if r < ' ' && r != '\t' || r == 0x7f {
				return nil, fmt.Errorf("line %d holds the control character %U", n+1, r)
			}
		}
		if line[0] == ' ' || line[0] == '\t' {
			if len(logical) == 0 {
				return nil, fmt.Errorf("the first line is a continuation")
			}
			logical[len(logical)-1] += line[1:]
			continue
		}
		logical = append(logical, line)
	}
	return build(logical)
}

func build(lines []string) (*component, error) {
	root := &component{}
	stack := []*component{root}
	for _, line := range lines {
		m := contentLine.FindStringSubmatch(line)
		if m == nil {
			return nil, fmt.Errorf("%q is not a content line", line)
		}
		name, value := m[1], line[len(m[0]):]
		top := stack[len(stack)-1]
		switch name {
		case "BEGIN":
			c := &component{name: value, properties: map[string][]string{}}
			if top == root && value != "VCALENDAR" || top != root && !contains(grammar[top.name].inside, value) {
				return nil, fmt.Errorf("%q inside %q", value, top.name)
			}
			top.inside = append(top.inside, c)
			stack = append(stack, c)
			continue
		case "END":
			if top == root || value != top.name {
				return nil, fmt.Errorf("END:%s inside %q", value, top.name)
			}
			if err := top.complete(); err != nil {
				return nil, err
			}
			stack = stack[:len(stack)-1]
			continue
		}
		if top == root || !contains(grammar[top.name].must+" "+grammar[top.name].may, name) {
			return nil, fmt.Errorf("%s inside %q", name, top.name)
		}
		decoded, err := decode(name, m[2], value)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", name, err)
		}
		top.properties[name] = append(top.properties[name], decoded)
		if m[2] != "" {
			top.properties[name+m[2]] = append(top.properties[name+m[2]], decoded)
		}
	}
	if len(stack) != 1 || len(root.inside) != 1 {
		return nil, fmt.Errorf("not one complete VCALENDAR")
	}
	return root.inside[0], nil
}

func contains(words, word string) bool {
	return strings.Contains(" "+words+" ", " "+word+" ")
}

// complete checks what must be there once, and what may be there once.
func (c *component) complete() error {
	g := grammar[c.name]
	for _, name := range strings.Fields(g.must) {
		if _, err := c.one(name); err != nil {
			return err
		}
	}
	for _, name := range strings.Fields(g.may) {
		if len(c.properties[name]) > 1 {
			return fmt.Errorf("%s has %d of %s", c.name, len(c.properties[name]), name)
		}
	}
	if c.name == "VCALENDAR" && len(c.inside) == 0 {
		return fmt.Errorf("no component in the calendar")
	}
	if end := c.properties["DTEND"]; end != nil && end[0] <= c.properties["DTSTART"][0] {
		return fmt.Errorf("DTEND %s is not later than DTSTART", end[0])
	}
	return nil
}

func decode(name, parameters, value string) (string, error) {
	if parameters != "" && (name != "TRIGGER" || parameters != ";RELATED=END") {
		return "", fmt.Errorf("parameters %q", parameters)
	}
	matches := func(re *regexp.Regexp) (string, error) {
		if !re.MatchString(value) {
			return "", fmt.Errorf("%q does not match %v", value, re)
		}
		return value, nil
	}
	oneOf := func(words string) (string, error) {
		if !contains(words, value) {
			return "", fmt.Errorf("got %q, want one of %s", value, words)
		}
		return value, nil
	}
	switch name {
	case "VERSION":
		return oneOf("2.0")
	case "CALSCALE":
		return oneOf("GREGORIAN")
	case "ACTION":
		return oneOf("DISPLAY")
	case "TRANSP":
		return oneOf("OPAQUE TRANSPARENT")
	case "SEQUENCE":
		return matches(regexp.MustCompile(`^(0|[1-9]\d{0,9})$`))
	case "TRIGGER":
		return matches(duration)
	case "UID":
		return matches(uuid)
	case "DTSTAMP", "DTSTART", "DTEND":
		if _, err := time.Parse("20060102T150405Z", value); err != nil {
			return "", err
		}
		return matches(utcTime)
	}
	return unescape(value)
}

// unescape decodes a TEXT value and refuses what its grammar does not allow.
func unescape(s string) (string, error) {
	var b strings.Builder
	for i := 0; i < len(s); i++ {
		switch s[i] {
		case ';', ',':
			return "", fmt.Errorf("bare %q in a text", s[i])
		case '\\':
			i++
			if i == len(s) {
				return "", fmt.Errorf("a text ends in a backslash")
			}
			switch s[i] {
			case 'n', 'N':
				b.WriteByte('\n')
			case '\\', ';', ',':
				b.WriteByte(s[i])
			default:
				return "", fmt.Errorf("unknown escape \\%c", s[i])
			}
		default:
			b.WriteByte(s[i])
		}
	}
	return b.String(), nil
}
