package cli

import (
	"fmt"

	"example.org/maslin/examples/internal/bakelog"
	"example.org/maslin/schedule/bakeday"
)

// learnCulture gives the bake the culture that the log knows, and says how much it rests on.
func learnCulture(s System, log string, b *bakeday.Bake) (string, error) {
	name, content, err := logFlags{log: log}.read(s)
	if err != nil {
		return "", err
	}
	words, err := learnFrom(bakelog.Group(content.Entries), b)
	if err != nil {
		return "", badInput("%s: %s", name, err)
	}
	if words == "" {
		return fmt.Sprintf("the log %s has no bake to learn this culture from yet", name), nil
	}
	return words, nil
}

// learnFrom gives the bake the culture that earlier bakes taught, in words; they are empty when they taught nothing.
func learnFrom(bakes []bakelog.Bake, b *bakeday.Bake) (string, error) {
	leavening, words := bakelog.Levain, "the levain"
	yeast, raised := yeastName(b)
	switch {
	case b.Levain == nil:
		leavening, words = bakelog.Yeast, "the yeast ("+yeast+")"
	case raised:
		leavening, words = bakelog.Both, "levain and yeast ("+yeast+")"
	}
	c, ok, err := bakelog.Culture(bakes, leavening)
	if err != nil || !ok {
		return "", err
	}
	b.Culture = c.Lesson.Culture
	return words + ": " + b.Culture.String(), nil
}

// yeastName is the name of the line of yeast, if there is one.
func yeastName(b *bakeday.Bake) (string, bool) {
	for _, o := range b.Others {
		if o.Kind.Yeast() {
			return printable(o.Name), true
		}
	}
	return "", false
}
