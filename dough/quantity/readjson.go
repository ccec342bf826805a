package quantity

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"reflect"
	"strconv"
	"strings"
	"unicode/utf8"
)

// The limits of [ReadJSON].
const (
	maxJSON      = 10 << 20 // bytes
	maxJSONDepth = 64       // objects and lists inside each other
	maxJSONItems = 200_000  // in all lists and tables together, since an item may take more room than its text
	maxProblems  = 100
)

// ReadJSON reads one JSON text into the value that into points to, and reports everything that is wrong with it at
// once, each with its path: unknown keys, keys that stand twice, a value of the wrong JSON type, a text that its
// quantity or enumeration refuses, a number too large for its field, null for a value. A text that is no JSON, has
// more than 10 MB, 64 levels or 200,000 items, or goes on after its end is one problem. After an error the value is
// partly filled and not to be used.
//
// Keys are those of the json tags, exactly. null is read only where Go writes it, for a list, a table or a pointer that
// is nil. A type with UnmarshalText is read from a text, one with UnmarshalJSON
// reads itself; a time.Time is RFC 3339. Whether what must be given is given, and fits, is for the check of the input.
// Errors: [InputErrors] with the codes not_json, too_large, too_deep, too_many_items, trailing_data, unknown_key,
// duplicate_key, wrong_type, null, and those of the values' own texts. After 100 problems it stops (too_many_problems).
func ReadJSON(data []byte, into any) error {
	target := reflect.ValueOf(into)
	if target.Kind() != reflect.Pointer || target.IsNil() {
		return fmt.Errorf("quantity.ReadJSON: cannot read into %T, only into a pointer", into)
	}
	if len(data) > maxJSON {
		return formError("too_large", Tell("quantity.got_bytes", "%d bytes", len(data)),
			Tell("quantity.want_at_most_10_mb_json", "at most 10 MB of JSON"), ErrOutOfRange)
	}
	if at := firstInvalid(data); at >= 0 {
		return formError("not_json", Tell("quantity.got_bytes_are_no_utf_8", "%v, bytes that are no UTF-8",
			position(data, at)), Tell("quantity.want_json_utf_8", "JSON in UTF-8"), ErrForm)
	}
	if at := tooDeep(data); at >= 0 {
		return formError("too_deep", position(data, at),
			Tell("quantity.want_at_most_levels_objects_and", "at most %d levels of objects and lists",
				maxJSONDepth), ErrOutOfRange)
	}
	if err := wholeValue(data); err != nil {
		return err
	}
	r := jsonReader{tokens: json.NewDecoder(bytes.NewReader(data)), keys: map[reflect.Type][]jsonField{}}
	r.tokens.UseNumber()
	switch err := r.value(jsonPath{}, target.Elem()); {
	case errors.Is(err, errEnough):
		r.put(jsonPath{}, "too_many_problems", "", Tell("quantity.want_fewer_than_problems_rest_was",
			"fewer than %d problems; the rest was not read", maxProblems), ErrForm)
	case errors.Is(err, errTooMany):
		at := position(data, int(r.tokens.InputOffset()))
		r.put(jsonPath{}, "too_many_items", at, Tell("quantity.want_at_most_items_all_lists",
			"at most %d items in all lists together", maxJSONItems),
			ErrOutOfRange)
	case err != nil:
		r.add(jsonPath{}, "not_json", Excerpt(err.Error()), Tell("quantity.want_json", "JSON"))
	}
	return r.problems.Err()
}

// wholeValue checks that the text is one JSON value.
func wholeValue(data []byte) error {
	var raw json.RawMessage
	tokens := json.NewDecoder(bytes.NewReader(data))
	err := tokens.Decode(&raw)
	var syntax *json.SyntaxError
	switch {
	case err == nil:
		rest := data[tokens.InputOffset():]
		if more := len(bytes.TrimLeft(rest, " \t\r\n")); more > 0 {
			return formError("trailing_data", position(data, len(data)-more),
				Tell("quantity.want_nothing_after_end_value", "nothing after the end of the value"), ErrForm)
		}
		return nil
	case errors.As(err, &syntax):
		return formError("not_json", Tell("quantity.got_at_fault", "%v, %s",
			position(data, int(syntax.Offset)-1), Excerpt(syntax.Error())), Tell("quantity.want_json", "JSON"), ErrForm)
	}
	return formError("not_json", Tell("quantity.got_text_ends_too_early", "a text that ends too early"),
		Tell("quantity.want_whole_json_value", "a whole JSON value"), ErrForm)
}

// tooDeep returns where objects and lists lie too deep in each other, and −1 when they do not.
func tooDeep(data []byte) int {
	open, text := 0, false
	for i := 0; i < len(data); i++ {
		switch c := data[i]; {
		case text && c == '\\':
			i++
		case c == '"':
			text = !text
		case text:
		case c == '{' || c == '[':
			if open++; open > maxJSONDepth {
				return i
			}
		case c == '}' || c == ']':
			open--
		}
	}
	return -1
}

func formError(code string, got any, want Phrase, reason error) error {
	return &InputError{Code: code, Got: got, Want: want, Err: reason}
}

func firstInvalid(data []byte) int {
	if utf8.Valid(data) {
		return -1
	}
	for i := 0; i < len(data); {
		r, size := utf8.DecodeRune(data[i:])
		if r == utf8.RuneError && size == 1 {
			return i
		}
		i += size
	}
	return -1
}

// position says where a byte stands, as an editor counts.
func position(data []byte, at int) Phrase {
	before := data[:max(0, min(at, len(data)))]
	line := bytes.Count(before, []byte("\n"))
	column := utf8.RuneCount(before[bytes.LastIndexByte(before, '\n')+1:])
	return Tell("quantity.position", "line %d, column %d", line+1, column+1)
}

// A jsonReader goes through the tokens of a text and a Go value side by side.
type jsonReader struct {
	tokens   *json.Decoder
	problems Problems
	items    int
	keys     map[reflect.Type][]jsonField
}

// jsonPath is where the reader stands, in the names of the data and of Go. It is a list from the inside out, so that
// nothing is put together before there is a problem.
type jsonPath struct {
	outer *jsonPath
	data  string
	inGo  string
}

func (p jsonPath) both() (data, goPath string) {
	if p.outer == nil {
		return p.data, p.inGo
	}
	data, goPath = p.outer.both()
	return joinPath(data, p.data), joinPath(goPath, p.inGo)
}

func (p *jsonPath) at(i int) jsonPath {
	index := "[" + strconv.Itoa(i) + "]"
	return jsonPath{p, index, index}
}

// What ends the reading before its end.
var (
	errTooMany = errors.New("too many items")
	errEnough  = errors.New("enough problems")
)

func (r *jsonReader) add(at jsonPath, code string, got any, want Phrase) {
	r.put(at, code, got, want, ErrForm)
}

func (r *jsonReader) put(at jsonPath, code string, got any, want Phrase, reason error) {
	r.join(at, &InputError{Code: code, Got: got, Want: want, Err: reason})
}

// join puts the path in front of the problems of a part that read itself.
func (r *jsonReader) join(at jsonPath, err error) {
	data, goPath := at.both()
	found := InputErrors(err)
	if len(found) == 0 {
		found = []*InputError{{Code: "wrong_type", Want: literally(cut(err.Error())), Err: ErrForm}}
	}
	for _, e := range found {
		moved := *e
		inner := e.Path
		if inner == "" {
			inner = dataPath(nil, e.GoPath)
		}
		moved.Path, moved.GoPath = joinPath(data, inner), joinPath(goPath, e.GoPath)
		moved.ahead, moved.derived = "", ""
		r.problems.note(moved)
	}
}

// cut shortens what a foreign error says.
func cut(text string) string {
	const most = 200
	if len(text) <= most {
		return text
	}
	return strings.ToValidUTF8(text[:most], "") + "…"
}

// value reads the next value into v. It returns an error only when reading cannot go on.
func (r *jsonReader) value(at jsonPath, v reflect.Value) error {
	whole := v
	for v.Kind() == reflect.Pointer {
		v.Set(reflect.New(v.Type().Elem()))
		v = v.Elem()
	}
	if read := readsItself(v); read != nil {
		return r.raw(at, read, whole)
	}
	token, err := r.tokens.Token()
	if err != nil {
		return err
	}
	if token == nil {
		r.null(at, whole)
		return nil
	}
	return r.token(at, token, v)
}

func (r *jsonReader) token(at jsonPath, token json.Token, v reflect.Value) error {
	if readsText(v) != nil {
		return r.text(at, token, v)
	}
	switch v.Kind() {
	case reflect.Struct:
		if token == json.Delim('{') {
			return r.object(at, v)
		}
	case reflect.Map:
		if token == json.Delim('{') {
			return r.table(at, v)
		}
	case reflect.Slice, reflect.Array:
		if token == json.Delim('[') {
			return r.list(at, v)
		}
	case reflect.String:
		if s, ok := token.(string); ok {
			v.SetString(s)
			return nil
		}
	case reflect.Bool:
		if b, ok := token.(bool); ok {
			v.SetBool(b)
			return nil
		}
	default:
		if n, ok := token.(json.Number); ok && isNumber(v) {
			if want := setNumber(v, n.String()); !want.IsZero() {
				r.put(at, "", n, want, ErrOutOfRange)
			}
			return nil
		}
	}
	r.add(at, "wrong_type", described(token), wanted(v.Type()))
	return r.skip(token)
}
