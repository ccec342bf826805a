package bakeday

import (
	"encoding"
	"fmt"
	"reflect"
	"strings"

	"example.org/maslin/dough/quantity"
)

// oneKitchen finds the kitchen of all bakes: the order's, or that which the first of them describes. A bake that
// describes another one is a fault, which names what differs.
func (o *Order) oneKitchen(p *quantity.Problems) {
	of := "" // whose kitchen it is; nothing: that of the day
	for i := range o.Bakes {
		k := &o.Bakes[i].Kitchen
		switch {
		case reflect.ValueOf(*k).IsZero():
		case reflect.ValueOf(o.Kitchen).IsZero():
			o.Kitchen, of = *k, o.Bakes[i].Name
		default:
			for _, d := range differences(*k, o.Kitchen) {
				p.AddCode(fmt.Sprintf("Bakes[%d].Kitchen.%s", i, d.field), "other_kitchen", d.told(), d.wanted(of),
					quantity.ErrInconsistent)
			}
		}
	}
}

// difference is a field in which two kitchens differ.
type difference struct{ field, got, want string }

// told is what the bake has, and wanted what the kitchen has of the bread that describes it, or of the day.
func (d difference) told() any {
	if d.got == "" {
		return quantity.Tell("bakeday.got_nothing", "nothing")
	}
	return d.got
}

func (d difference) wanted(of string) quantity.Phrase {
	by := quantity.Excerpt(of)
	switch {
	case d.want == "" && of == "":
		return quantity.Tell("bakeday.want_nothing_as_in_day", "nothing, as in the kitchen of the day")
	case d.want == "":
		return quantity.Tell("bakeday.want_nothing_as_in_kitchen_of", "nothing, as in the kitchen of %s", by)
	case of == "":
		return quantity.Tell("bakeday.want_as_in_day", "%s, as in the kitchen of the day", d.want)
	}
	return quantity.Tell("bakeday.want_as_in_kitchen_of", "%s, as in the kitchen of %s", d.want, by)
}

func (d difference) wantedOfLevain(in string) quantity.Phrase {
	if d.want == "" {
		return quantity.Tell("bakeday.want_nothing_same_levain_has", "nothing, as the same levain has in %s",
			quantity.Excerpt(in))
	}
	return quantity.Tell("bakeday.want_same_levain_has", "%s, as the same levain has in %s", d.want, quantity.Excerpt(in))
}

// differences lists the fields in which two kitchens differ.
func differences(a, b Kitchen) []difference {
	var out []difference
	va, vb := reflect.ValueOf(a), reflect.ValueOf(b)
	for i := range va.NumField() {
		x, y := va.Field(i).Interface(), vb.Field(i).Interface()
		if !reflect.DeepEqual(x, y) {
			out = append(out, difference{va.Type().Field(i).Name, asData(x), asData(y)})
		}
	}
	return out
}

// asData shows a value as a person reads it in data, shortened: the text of a quantity, the parts of a list one after
// the other, and of a part what is given.
func asData(v any) string {
	if text := shownParts(reflect.ValueOf(v)); text != "" {
		return quantity.Excerpt(text)
	}
	return ""
}

func shownParts(v reflect.Value) string {
	if !v.IsValid() || v.IsZero() {
		return ""
	}
	if m, ok := v.Interface().(encoding.TextMarshaler); ok {
		text, err := m.MarshalText()
		if err != nil {
			return "a value that cannot be written"
		}
		return string(text)
	}
	var parts []string
	put := func(v reflect.Value, between string) string {
		if text := shownParts(v); text != "" {
			parts = append(parts, text)
		}
		return strings.Join(parts, between)
	}
	text := ""
	switch v.Kind() {
	case reflect.Pointer, reflect.Interface:
		return shownParts(v.Elem())
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			text = put(v.Index(i), ", ")
		}
	case reflect.Struct:
		for i := range v.NumField() {
			if v.Type().Field(i).IsExported() {
				text = put(v.Field(i), " ")
			}
		}
	default:
		return fmt.Sprint(v.Interface())
	}
	return text
}

// feeds is the bread with whose levain a bread is fed: the first one whose levain has the same name, or itself.
func (o *Order) feeds(i int) int {
	l := o.Bakes[i].Levain
	for j := range i {
		if l != nil && l.Name != "" && o.Bakes[j].Levain != nil && o.Bakes[j].Levain.Name == l.Name {
			return j
		}
	}
	return i
}

// oneLevain reports levains of one name that are not one levain.
func (o *Order) oneLevain(p *quantity.Problems) {
	asked := map[int]bool{} // whose flour is asked for
	for i := range o.Bakes {
		j := o.feeds(i)
		if j == i {
			continue
		}
		a, b := *o.Bakes[i].Levain, *o.Bakes[j].Levain
		// How much of it goes into each dough is the dough's own.
		a.Prefermented, a.Weight = b.Prefermented, b.Weight
		if a.Flour == "" || b.Flour == "" {
			a.Flour, b.Flour = "", "" // it is asked for below
		}
		va, vb := reflect.ValueOf(a), reflect.ValueOf(b)
		for f := range va.NumField() {
			if x, y := va.Field(f).Interface(), vb.Field(f).Interface(); x != y {
				d := difference{va.Type().Field(f).Name, asData(x), asData(y)}
				p.AddCode(fmt.Sprintf("Bakes[%d].Levain.%s", i, d.field), "other_levain", d.told(),
					d.wantedOfLevain(o.Bakes[j].Name), quantity.ErrInconsistent)
			}
		}
		for _, k := range []int{j, i} {
			if o.Bakes[k].Levain.Flour == "" && !asked[k] {
				asked[k] = true
				p.Required(fmt.Sprintf("Bakes[%d].Levain.Flour", k), quantity.Tell(
					"bakeday.want_flour_levain_feeds_several_doughs", "the flour of a levain that feeds several doughs"))
			}
		}
	}
}

// enoughLevain reports a levain that stands ready and is shared by more than there is of it. What must be fed anyway is
// fed more, and its note says how much starter that takes.
func (p *planning) enoughLevain(bad *quantity.Problems) {
	for i, d := range p.breads {
		all := p.partners(i)
		l := d.Bake.Levain
		if d.levain != i || len(all) < 2 || !l.standing() || l.CultureAtHand.IsZero() {
			continue
		}
		if made, _ := together(all); made.Compare(l.CultureAtHand) > 0 {
			bad.AddCode(fmt.Sprintf("Bakes[%d].Levain.CultureAtHand", i), "levain_shared_out", l.CultureAtHand,
				quantity.Tell("bakeday.want_which_doughs_take_together_make",
					"%s, which the doughs take together: make fewer loaves, or feed it", made.Text(quantity.Gram, 0)),
				quantity.ErrInconsistent)
		}
	}
}
