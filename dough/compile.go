package dough

import (
	"strconv"
	"unicode"
	"unicode/utf8"

	"example.org/maslin/dough/quantity"
)

// A formula is checked and flattened before it is weighed: one list of ingredients, and a tree
// of what is made beforehand, in which every node holds the exact share it takes of each
// ingredient. Shares are products of two percentages, in units of 10⁻¹⁶ of the total flour, so
// that "uses up all the rye" is decided exactly.

const (
	one      = 100_000_000 // 100 % in millionths of a point
	maxLines = 200
	maxNodes = 50
	maxDepth = 8
	maxName  = 200
	nobody   = -1
)

var wantNames = quantity.Tell("dough.want_name_1_to_200_bytes", "a name of 1 to 200 bytes")

var (
	noPercent    quantity.Percent
	leastPercent = quantity.MustPercent("0.000001 %")
	wholeFlour   = quantity.MustPercent("100 %")
	mostOfFlour  = quantity.MustPercent("1000 %")
	mostInAll    = quantity.MustPercent("5000 %")
	leastWater   = quantity.MustPercent("1 %")
)

type item struct {
	name     string
	kind     Kind
	contains Allergens
	role     Role
	percent  quantity.Percent
	water    quantity.Percent
}

// isWater reports whether the whole line counts as water in the hydration.
func (it *item) isWater() bool {
	return it.role == RoleLiquid && (it.kind == KindWater || it.kind == KindUnstated)
}

type node struct {
	name      string
	path      string // of its field, for error messages
	kind      PrefermentKind
	soaker    SoakerKind
	fermented bool
	parent    int // index of the node it goes into; 0 is the dough
	flour     quantity.Percent
	hydration quantity.Percent
	share     []int64 // of each item, everything nested included
	blend     []quantity.Percent
	parts     []nodePart
	seed      Seed
	seedBlend []quantity.Percent
	starter   int // item of a starter on a line of its own, or nobody
}

// nodePart is an amount that is given as a percentage: of the node's own flour, or of total flour
// in a soaker.
type nodePart struct {
	item    int
	percent quantity.Percent
}

type compiled struct {
	name   string
	items  []item
	flours int // items[:flours] are the flours
	water  int // the first line that is water, or nobody
	salt   int
	total  quantity.Percent
	nodes  []node // nodes[0] is the dough; empty when nothing is made beforehand
}

func compile(f *Formula, p *quantity.Problems) compiled {
	n := len(f.Flours) + len(f.Liquids) + len(f.Others) + len(f.Inclusions)
	if n > maxLines {
		p.Add("Flours", quantity.Tell("dough.got_lines", "%d lines", n),
			quantity.Tell("dough.want_at_most_200_lines", "at most 200 lines"), quantity.ErrOutOfRange)
		return compiled{}
	}
	c := compiled{items: make([]item, 0, n+1), flours: len(f.Flours), water: nobody, salt: nobody}
	if c.name = f.Name; c.name != "" {
		checkName(p, "Name", c.name)
	}
	var names nameSet
	c.addParts(p, &names, "Flours", f.Flours, RoleFlour, wholeFlour)
	if len(f.Flours) == 0 {
		p.Required("Flours", quantity.Tell("dough.want_at_least_one_flour_flours",
			"at least one flour; the flours add up to 100 %%"))
	} else if c.total != wholeFlour {
		p.Add("Flours", quantity.Tell("dough.got_flours_add_up_to", "flours that add up to %v", c.total),
			quantity.Tell("dough.want_100_percent", "100 %%"), quantity.ErrInconsistent)
	}
	if len(f.Liquids) == 0 {
		p.Required("Liquids", quantity.Tell("dough.want_at_least_one_liquid_water",
			"at least one liquid, such as water 70 %%"))
	}
	c.addParts(p, &names, "Liquids", f.Liquids, RoleLiquid, mostOfFlour)
	if outside(f.Salt, noPercent, wholeFlour) {
		p.Add("Salt", f.Salt, quantity.Tell("dough.want_0_percent_to_100_percent", "0 %% to 100 %%"), quantity.ErrOutOfRange)
	}
	if !f.Salt.IsZero() {
		c.salt = len(c.items)
		names.add(&c, p, "Salt", "salt")
		c.items = append(c.items, item{name: "salt", kind: KindSalt, role: RoleSalt, percent: f.Salt})
		c.total = c.total.Add(f.Salt)
	}
	c.addParts(p, &names, "Others", f.Others, RoleOther, mostOfFlour)
	c.addParts(p, &names, "Inclusions", f.Inclusions, RoleInclusion, mostOfFlour)
	if p.Err() == nil && c.total.Compare(mostInAll) > 0 {
		p.Add("", quantity.Tell("dough.got_total", "a total of %v", c.total),
			quantity.Tell("dough.want_at_most_all", "at most %v in all", mostInAll), quantity.ErrOutOfRange)
	}
	if len(f.Preferments) == 0 && len(f.Soakers) == 0 {
		return c
	}
	// From here on problems are only gathered; shares mean something when there are none.
	root := node{share: make([]int64, len(c.items)), starter: nobody, parent: nobody}
	for i := range c.items {
		root.share[i] = millionths(c.items[i].percent) * one
	}
	c.nodes = append(c.nodes, root)
	c.children(p, &names, "", 0, f.Preferments, f.Soakers, 1)
	for i := range c.nodes { // starters on lines of their own came in last
		c.nodes[i].share = append(c.nodes[i].share, make([]int64, len(c.items)-len(c.nodes[i].share))...)
	}
	if p.Err() == nil {
		c.checkTree(p)
	}
	return c
}

func outside(v, low, high quantity.Percent) bool {
	return !v.IsValid() || v.Compare(low) < 0 || v.Compare(high) > 0
}

func millionths(p quantity.Percent) int64 {
	n, _ := p.Millionths()
	return n
}

// addParts checks one list of the formula and puts it on the list of ingredients.
func (c *compiled) addParts(p *quantity.Problems, names *nameSet, list string, parts []Part, role Role,
	high quantity.Percent) {
	for i := range parts {
		part := &parts[i]
		names.add(c, p, at(list, i)+".Name", part.Name)
		switch {
		case outside(part.Percent, noPercent, high):
			p.Add(at(list, i)+".Percent", part.Percent, quantity.Tell("dough.want_0_percent_to", "0 %% to %v", high),
				quantity.ErrOutOfRange)
		case role == RoleLiquid && part.Percent.IsZero():
			p.Add(at(list, i)+".Percent", part.Percent, quantity.Tell("dough.want_more_than_0_percent_leave",
				"more than 0 %%; leave out a liquid that is not used"),
				quantity.ErrOutOfRange)
		}
		if part.Kind >= kindEnd {
			kindWords.CheckIfGiven(p, at(list, i)+".Kind", part.Kind)
		}
		if outside(part.Water, noPercent, wholeFlour) {
			p.Add(at(list, i)+".Water", part.Water,
				quantity.Tell("dough.want_0_percent_to_100_percent_ingredients", "0 %% to 100 %% of the ingredient's weight"),
				quantity.ErrOutOfRange)
		}
		k := len(c.items)
		c.items = c.items[:k+1] // within the capacity that compile made; filling in place is what makes this fast
		it := &c.items[k]
		it.name, it.kind, it.contains = part.Name, part.Kind, part.Contains
		it.role, it.percent, it.water = role, part.Percent, part.Water
		if c.water == nobody && it.isWater() {
			c.water = k
		}
		c.total = c.total.Add(part.Percent)
	}
}

func at(list string, i int) string { return list + "[" + strconv.Itoa(i) + "]" }

func join(path, field string) string {
	if path == "" {
		return field
	}
	return path + "." + field
}

// nameSet finds names used twice. A 64-bit sieve makes the usual case, no repetition, cheap.
type nameSet struct {
	seen uint64
}

func (s *nameSet) add(c *compiled, p *quantity.Problems, path, name string) {
	if !checkName(p, path, name) {
		return
	}
	bit := uint64(1) << ((uint(len(name))*7 + uint(name[0])*3 + uint(name[len(name)-1])) & 63)
	if s.seen&bit != 0 && (c.item(name) != nobody || c.node(name) != nobody) {
		p.Add(path, quantity.Tell("dough.got_name_second_time", "the name %s a second time", quantity.Excerpt(name)),
			quantity.Tell("dough.want_names_differ", "names that differ"),
			quantity.ErrInconsistent)
	}
	s.seen |= bit
}

// checkName refuses a name that is empty, too long, or no plain text: a name is shown on terminals and pages, where
// control characters and marks of direction would change what stands around it.
func checkName(p *quantity.Problems, path, name string) bool {
	switch {
	case name == "":
		p.Required(path, wantNames)
	case len(name) > maxName:
		p.Add(path, quantity.Tell("dough.got_name_bytes", "a name of %d bytes", len(name)), wantNames, quantity.ErrOutOfRange)
	case !utf8.ValidString(name) || hides(name):
		p.Add(path, quantity.Excerpt(name), quantity.Tell("dough.want_name_without_control_characters_and",
			"a name without control characters and marks of direction"),
			quantity.ErrOutOfRange)
	default:
		return true
	}
	return false
}

// hides reports whether a name has characters that show nothing of themselves and change what stands around them.
func hides(name string) bool {
	for _, r := range name {
		if unicode.IsControl(r) || unicode.Is(unicode.Bidi_Control, r) {
			return true
		}
	}
	return false
}

func (c *compiled) item(name string) int {
	for i := range c.items {
		if c.items[i].name == name {
			return i
		}
	}
	return nobody
}

func (c *compiled) node(name string) int {
	for i := 1; i < len(c.nodes); i++ {
		if c.nodes[i].name == name {
			return i
		}
	}
	return nobody
}
