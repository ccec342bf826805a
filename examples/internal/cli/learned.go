package cli

import (
	"fmt"

	"example.org/maslin/dough"
	"example.org/maslin/examples/internal/bakelog"
	"example.org/maslin/schedule/bakeday"
)

// learnCulture gives the bake the culture that the log knows, and says how much it rests on.
func learnCulture(s System, log string, b *bakeday.Bake) (string, error) {
	name, content, err := logFlags{log: log}.read(s)
	if err != nil {
		return "", err
	}
	leavening := bakelog.Levain
	if b.Levain == nil {
		leavening = bakelog.Yeast
	}
	c, ok, err := bakelog.Culture(bakelog.Group(content.Entries), leavening)
	if err != nil {
		return "", badInput("%s: %s", name, err)
	}
	if !ok {
		return fmt.Sprintf("the log %s has no bake to learn this culture from yet", name), nil
	}
	b.Culture = c.Lesson.Culture
	words := "the levain"
	if b.Levain == nil {
		words = "the yeast (" + yeastName(b) + ")"
	}
	return fmt.Sprintf("%s: %s", words, b.Culture), nil
}

func yeastName(b *bakeday.Bake) string {
	for _, o := range b.Others {
		if o.Kind.Yeast() {
			return printable(o.Name)
		}
	}
	return dough.KindUnstated.String()
}
