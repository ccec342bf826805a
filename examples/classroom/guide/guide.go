// Package guide holds the lessons of the classroom, and what the page says at each of their links, so that every number
// in them is checked.
package guide

import (
	_ "embed"
	"regexp"
	"strings"
)

//go:embed lesson.md
var lesson string

// A Stop is a link of a lesson, and the sentence that the page shows there.
type Stop struct {
	Title    string
	Fragment string
	Says     string // nothing for a worksheet
}

var link = regexp.MustCompile(`(?s)\[([^\]]+)\]\(classroom\.html(#[^)]+)\)(?:\n\n> ([^\n]+))?`)

// Lesson lists the links of the lesson, in order.
func Lesson() []Stop {
	var out []Stop
	for _, m := range link.FindAllStringSubmatch(lesson, -1) {
		out = append(out, Stop{strings.ReplaceAll(m[1], "\n", " "), m[2], m[3]})
	}
	return out
}
