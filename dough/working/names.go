package working

import (
	"strconv"
	"strings"
)

// names gives each symbol of a derivation a name of its own: the one it was bound with, and if another symbol has
// that already, with a number behind it.
type names struct {
	reader Reader
	of     map[bindingKey]string
	taken  map[string]bool
	step   map[bindingKey]int // which step found it, from 1
	// which step told the conversion of a symbol into another unit: it is told once
	converted map[bindingKey]*binding
}

func newNames(steps []step, r Reader) *names {
	n := &names{reader: r, of: map[bindingKey]string{}, taken: map[string]bool{}, step: map[bindingKey]int{},
		converted: map[bindingKey]*binding{}}
	for i, s := range steps {
		for _, c := range s.finding.Table.Columns {
			n.name(c.symbol().symbol)
		}
		for _, sym := range symbolsOf(s.finding.By) {
			n.name(sym.symbol)
		}
		n.name(s.result)
		if k := s.result.key(); n.step[k] == 0 {
			n.step[k] = i + 1
		}
	}
	return n
}

func (n *names) name(b *binding) string {
	k := b.key()
	if name, ok := n.of[k]; ok {
		return name
	}
	own := n.reader.symbol(b.name)
	name := own
	for i := 2; n.taken[name]; i++ {
		separator := "_"
		if strings.Contains(own, "_") {
			separator = ""
			if last := own[len(own)-1]; last >= '0' && last <= '9' {
				separator = "_"
			}
		}
		name = own + separator + strconv.Itoa(i)
	}
	n.of[k], n.taken[name] = name, true
	return name
}

// symbol is a symbol with the words of its index in the language of the reader: T_flour, or T_Mehl.
func (r Reader) symbol(name string) string {
	if len(r.Language.Words) == 0 {
		return name
	}
	parts := strings.Split(name, "_")
	for i, index := range parts[1:] {
		if word, ok := r.Language.Words["working.Index/"+index]; ok {
			parts[i+1] = word
		}
	}
	return strings.Join(parts, "_")
}
