package bakeday

import (
	"context"
	"testing"
)

// A day of which the timetable says that a bread may wait 13 minutes longer, which moves its dough by as much, so that
// it does not fit: that is no way out, and those that are named are.
func TestWaysOutThatHelpOnlyOnPaperAreNotNamed(t *testing.T) {
	o := someDay(randomly(5030))
	k := planAll(t, o)
	if k.Possible() || len(k.useless) != 1 {
		t.Fatalf("possible %v, %d ways out do not help", k.Possible(), len(k.useless))
	}
	if again, ok := allowed(o, k, k.useless[0]); !ok || planAll(t, again).Possible() {
		t.Errorf("%v helps", k.useless[0].Words)
	}
	for _, m := range k.Data().Why.Remedies {
		if m == k.useless[0] {
			t.Errorf("%v is named", m.Words)
		}
		again, ok := wished(o, m)
		if !ok {
			again, ok = allowed(o, k, m)
		}
		if ok && !planAll(t, again).Possible() {
			t.Errorf("%v does not help", m.Words)
		}
	}
	whole, err := o.whole()
	if err != nil {
		t.Fatal(err)
	}
	m := k.useless[0]
	m.Step = "Nobody/cool"
	if _, ok := whole.allowing(&k, m); ok {
		t.Error("a bread that is not there was changed")
	}
	ended, cancel := context.WithCancel(context.Background())
	cancel()
	before := len(k.useless)
	if whole.remedies(ended, &k, wednesday(t)); len(k.useless) != before {
		t.Error("what time ran out for counts as no help")
	}
}
