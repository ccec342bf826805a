package quantity

import (
	"maps"
	"reflect"
	"slices"
	"strconv"
	"strings"
)

const (
	maxFormItems = 1000 // in one list of a form
	maxFormName  = 1000 // bytes
)

// ReadForm reads texts by the paths of the data form into the value that into points to, such as the fields of an
// HTML form: "target": "26 °C", "others[0].temperature": "21 °C". The names of the fields are then the paths of the
// errors, and no application needs a table from one to the other. A name without a text is not given: what has no text
// below it stays as it is, and a list ends with its last item that has one. It reports everything that is wrong at
// once, in the order of the fields, as [ReadJSON] does and with the same codes: an unknown name, one that is given
// twice, a text that its quantity or enumeration refuses, an index beyond 999 or beyond a gap of the list.
//
// Names are those of the json tags, exactly; numbers, with a decimal point or comma, and "true", "false" or "on" are
// read from text too. The name "" is the whole, such as the number of a single field. What reads itself
// from JSON is read from the names of its JSON ("history.knots[0].temperature"), if that holds texts alone, or
// whole from one text that is its JSON, such as a hidden field. A table with keys of its own is not read. Whether what
// must be given is given, and fits, is for the check of the input; its problems may stand at a part that has no name of
// its own, and concern all names below it. See [Problems.ErrFor]. After an error the value is partly filled and not to
// be used.
func ReadForm(form map[string][]string, into any) error {
	target := reflect.ValueOf(into)
	if target.Kind() != reflect.Pointer || target.IsNil() {
		return &InputError{Code: "wrong_type", Want: Tell("quantity.want_pointer_to_read_into", "a pointer to read into"),
			Err: ErrForm}
	}
	f := formReader{jsonReader{keys: map[reflect.Type][]jsonField{}}}
	f.part(jsonPath{}, f.tree(form), target.Elem())
	return f.problems.Err()
}

type formReader struct{ jsonReader }

// tree puts the names of a form together by their parts.
func (f *formReader) tree(form map[string][]string) *formPart {
	root := &formPart{}
	for _, name := range slices.SortedFunc(maps.Keys(form), compareNames) {
		texts := slices.DeleteFunc(slices.Clone(form[name]), func(t string) bool { return strings.TrimSpace(t) == "" })
		steps, ok := formSteps(name)
		switch {
		case !ok:
			f.refuse(&formPart{name: name, named: true}, jsonPath{inGo: shortName(name)},
				Tell("quantity.got_name_not_known", "a name that is not known"),
				Tell("quantity.want_name_like", `a name like "others[0].temperature"`))
		case len(texts) > 1:
			at := jsonPath{data: shortName(name), inGo: shortName(name)}
			f.add(at, "duplicate_key", Tell("quantity.got_name_second_time", "the name a second time"),
				Tell("quantity.want_each_name_once", "each name once"))
		default:
			root.put(steps, name, strings.Join(texts, ""))
		}
	}
	return root
}

// part reads what is named by n, and below it, into v.
func (f *formReader) part(at jsonPath, n *formPart, v reflect.Value) {
	if len(f.problems.list) >= maxProblems {
		return
	}
	if n.blank() {
		v = reflect.New(v.Type()).Elem() // nothing is given; the names have to be known all the same
	}
	for v.Kind() == reflect.Pointer {
		if v.IsNil() {
			v.Set(reflect.New(v.Type().Elem()))
		}
		v = v.Elem()
	}
	if read := readsItself(v); read != nil && !hasKeys(v.Type()) {
		f.itself(at, n, read)
		return
	}
	if n.named {
		f.set(at, n.text, v)
	}
	switch text := readsText(v) != nil; {
	case v.Kind() == reflect.Struct && !text:
		f.members(at, n, v)
	case v.Kind() == reflect.Slice && !text:
		f.items(at, n, v)
	default:
		for _, p := range n.parts {
			f.refuse(p, jsonPath{&at, "", p.step}, Tell("quantity.got_more_name", "more of a name, %s", Excerpt(p.step)),
				Tell("quantity.want_name_to_end_here", "the name to end here"))
		}
	}
}

// hasKeys reports whether the fields of a type say by their tags what its JSON is.
func hasKeys(t reflect.Type) bool {
	if t.Kind() != reflect.Struct {
		return false
	}
	for i := range t.NumField() {
		if f := t.Field(i); f.IsExported() && f.Tag.Get("json") != "" {
			return true
		}
	}
	return false
}

// members reads the fields of a struct, in their order, and then refuses the names that are none.
func (f *formReader) members(at jsonPath, n *formPart, v reflect.Value) {
	fields := f.fields(v.Type())
	for _, field := range fields {
		if p := n.find(field.key); p != nil {
			f.part(jsonPath{&at, field.key, field.name}, p, v.FieldByIndex(field.index))
		}
	}
	for _, p := range n.parts {
		if find(fields, p.step) < 0 {
			f.refuse(p, jsonPath{&at, "", p.step}, Tell("quantity.got_name_not_known", "a name that is not known"),
				accepted(fields))
		}
	}
}

// items reads a list up to its last item that has a text.
func (f *formReader) items(at jsonPath, n *formPart, v reflect.Value) {
	last := -1
	for i, p := range n.parts {
		if !p.blank() {
			last = i
		}
	}
	next := 0
	for i, p := range n.parts {
		there := jsonPath{&at, p.step, p.step}
		if next >= maxFormItems || p.step != "["+strconv.Itoa(next)+"]" {
			f.refuse(p, there, Tell("quantity.got_index", "the index %s", Excerpt(strings.Trim(p.step, "[]"))),
				Tell("quantity.want_indexes_from_0_without_gap", "indexes from 0 without a gap, at most 999"))
			continue
		}
		item := reflect.New(v.Type().Elem()).Elem()
		if next < v.Len() {
			item = v.Index(next)
		}
		f.part(there, p, item)
		if next == v.Len() && i <= last {
			v.Set(reflect.Append(v, item))
		}
		next++
	}
}

// itself hands the texts to what reads its own JSON.
func (f *formReader) itself(at jsonPath, n *formPart, read func([]byte) error) {
	if n.blank() {
		return
	}
	text, ok := n.json()
	if !ok {
		f.refuse(n, at, nil,
			Tell("quantity.want_indexes_from_0_without_gap", "indexes from 0 without a gap, at most 999"))
		return
	}
	if err := read(text); err != nil {
		f.join(at, err)
	}
}

// refuse tells a problem at each name that begins so; where nothing else is said of what was given, it is the name.
func (f *formReader) refuse(n *formPart, at jsonPath, got any, want Phrase) {
	if n.named && len(f.problems.list) < maxProblems {
		_, goPath := at.both()
		said := got
		if said == nil {
			said = Excerpt(n.name)
		}
		f.problems.note(InputError{Path: shortName(n.name), GoPath: shortName(goPath), Code: "unknown_key", Got: said,
			Want: want, Err: ErrForm})
	}
	for _, p := range n.parts {
		f.refuse(p, jsonPath{&at, "", p.step}, got, want)
	}
}

// shortName is a name of a form as a path: whole, unless nobody would read it.
func shortName(name string) string {
	if len(name) <= 200 && strconv.Quote(name) == `"`+name+`"` {
		return name
	}
	return short(name)
}

// set reads the text into a value without parts; no text leaves it as it is.
func (f *formReader) set(at jsonPath, text string, v reflect.Value) {
	switch {
	case strings.TrimSpace(text) == "":
	case readsText(v) != nil:
		f.given(at, text, v)
	case v.Kind() == reflect.String:
		v.SetString(text)
	case v.Kind() == reflect.Bool:
		on := text == "on" || text == "true"
		if !on && text != "false" {
			f.add(at, "wrong_type", Excerpt(text), Tell("quantity.want_true_false_or", "true, false or on"))
		}
		v.SetBool(on)
	case isNumber(v):
		number := strings.TrimSpace(text)
		if v.CanFloat() {
			number = strings.Replace(number, ",", ".", 1)
		}
		if want := setNumber(v, number); !want.IsZero() {
			f.add(at, "wrong_type", Excerpt(text), want)
		}
	default:
		f.add(at, "wrong_type", Tell("quantity.got_text", "a text"),
			Tell("quantity.want_names_parts", "the names of its parts"))
	}
}
