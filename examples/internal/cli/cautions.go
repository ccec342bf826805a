package cli

import (
	"fmt"
	"strings"
)

// A hazard is one thing that can hurt: the subject of its caution, and what it says.
type hazard struct{ subject, text string }

// An inShort is the short form of a usual caution, known by its subject and first words.
type inShort struct{ subject, begins, says string }

// usual are the cautions that come with every bake, in short, under the place where they count. What
// is not listed here, such as allergens, food kept too warm or a refrigerator that is, is always printed in full; so
// is a caution whose words have changed.
var usual = []struct {
	title string
	short []inShort
}{
	{"raw dough", []inShort{
		{"raw dough", "raw flour may carry germs", "raw flour may carry germs: do not taste it; wash hands and tools"},
		{"raw dough", "raw flour and raw dough", "raw flour may carry germs: do not taste it; wash hands and tools"},
		{"raw dough", "Raw flour and dough", "raw flour may carry germs: do not taste it; wash hands and tools"},
	}},
	{"levain", []inShort{
		{"levain", "discard a culture", "pink or orange streaks, mold or a foul smell: throw it away with all it touched, do not taste it"},
	}},
	{"mixer", []inShort{
		{"mixer", "keep hands", "hands, scrapers, sleeves and hair out of a moving bowl: stop it first"},
		{"mixer", "stay with a mixer", "stay with it while it runs"},
		{"mixer", "never defeat a guard", "guards and interlocks stay on, and its manual and local safety rules decide"},
		{"motor", "let a motor", "a hot motor rests with the power off"},
	}},
	{"flour dust", []inShort{
		{"flour dust", "cover the bowl", "cover the bowl and start slowly"},
		{"flour dust", "Dust little", "dust little and from low down: breathed for years it causes asthma, and a cloud of it can ignite"},
	}},
	{"burns and steam", []inShort{
		{"burns", "Oven, pot, lid", "oven, pots, lids and racks burn at a touch: dry gloves that cover the wrist"},
		{"steam", "Open the oven", "open oven and lids away from you and let the steam out first; water for steam only into a pan meant for it"},
		{"hot glass, enamel and iron", "No water on", "no water on hot glass, enamel or cast iron: it can burst"},
		{"children and animals", "Keep them away", "children and animals away from the oven and from hot pots"},
	}},
	{"first aid", []inShort{
		{"first aid", "Cool a burn", "a burn is cooled at once under cool running water for 20 minutes, no ice, no butter, then covered; call for help when it is large, deep, or on face or hands"},
	}},
	{"the bread", []inShort{
		{"never a promise", "A core temperature", "a core temperature is no proof that food is safe"},
		{"acrylamide", "It forms", "bake golden, not dark (acrylamide)"},
		{"rope", "Spores of", "cool fast on a rack, keep dry, and throw away what smells of overripe fruit or pulls strings (rope)"},
	}},
	{"rules", []inShort{
		{"rules", "In a business", "local fire, gas, food and labor codes decide in a business; gas and electrical work is for licensed people"},
	}},
}

// shortOf is where a hazard stands among the usual ones.
func shortOf(h hazard) (group, item int, ok bool) {
	for g := range usual {
		for i, s := range usual[g].short {
			if h.subject == s.subject && strings.HasPrefix(h.text, s.begins) {
				return g, i, true
			}
		}
	}
	return 0, 0, false
}

// takeCare prints what can hurt: what is special about this bake in full, and the usual in short,
// each hazard still named. With full every caution is printed whole; more says how to ask for that.
func (p *page) takeCare(all []hazard, full bool, more string) {
	if len(all) == 0 {
		return
	}
	p.care("Take care")
	short := make([][]string, len(usual))
	found := false
	for _, h := range all {
		g, i, ok := shortOf(h)
		if full || !ok {
			p.hazard(h.subject, h.text)
			continue
		}
		found = true
		says := usual[g].short[i].says
		known := false
		for _, s := range short[g] {
			known = known || s == says
		}
		if !known {
			short[g] = append(short[g], says)
		}
	}
	if found {
		p.para(2, "the usual, in short (in full: "+more+"):")
		for g, says := range short {
			if len(says) > 0 {
				p.hazard(usual[g].title, strings.Join(says, "; "))
			}
		}
	}
	p.para(2, "Local food and workplace rules and licensed professionals decide, not these words.")
}

// hazard prints one thing that can hurt.
func (p *page) hazard(subject, text string) {
	p.para(2, fmt.Sprintf("%s %s", p.warn(subject+":"), text))
}
