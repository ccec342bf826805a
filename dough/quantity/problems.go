package quantity

import (
	"errors"
	"time"
)

// Problems collects everything that is wrong with an input, in the order found. The zero
// value is ready. It is not safe for concurrent use; a calculation makes its own. Paths are Go paths from the
// input ("Flours[2].Percent"); [Problems.ErrFor] adds those of the data form.
type Problems struct {
	list []error
}

// Add notes one problem. Got is what [InputError] says.
func (p *Problems) Add(path string, got any, want Phrase, reason error) {
	p.AddCode(path, "", got, want, reason)
}

// AddCode notes one problem that programs know by a code of its own, such as "culture_too_large".
func (p *Problems) AddCode(path, code string, got any, want Phrase, reason error) {
	p.note(InputError{GoPath: path, Code: code, Got: got, Want: want, Err: reason})
}

func (p *Problems) note(e InputError) {
	e.Code = e.code()
	p.list = append(p.list, &e)
}

// outside notes a value that does not lie between two bounds. Go cannot tell zero from a field that was not given.
func (p *Problems) outside(path string, got, low, high any, zero bool) bool {
	e := InputError{GoPath: path, Got: got, Want: between(low, high), Low: low, High: high, Err: ErrOutOfRange}
	if zero {
		e.Got, e.Err = Tell("quantity.got_zero_or_nothing", "%v or nothing", got), ErrRequired
	}
	p.note(e)
	return false
}

// Required notes that a field is missing; want says what belongs there.
func (p *Problems) Required(path string, want Phrase) { p.Add(path, nil, want, ErrRequired) }

func between(low, high any) Phrase { return Tell("quantity.want_between", "%v to %v", low, high) }

// Join notes the problems of a part of the input, whose paths are put below path. An error
// that is not an [InputError] is kept, prefixed with the path. Nil is ignored.
func (p *Problems) Join(path string, err error) {
	if err != nil {
		p.list = append(p.list, At(path, err))
	}
}

// Float checks that a plain number lies in [low, high]; NaN does not. Unit is for the message.
func (p *Problems) Float(path string, got, low, high float64, unit string) bool {
	if got >= low && got <= high {
		return true
	}
	if unit == "" {
		return p.outside(path, got, low, high, got == 0)
	}
	of := func(x float64) Phrase { return Tell("quantity.number_of", "%v %s", x, unit) }
	p.outside(path, of(got), of(low), of(high), got == 0)
	last := p.list[len(p.list)-1].(*InputError)
	last.Low, last.High = low, high
	return false
}

// Int checks that a count lies in [low, high].
func (p *Problems) Int(path string, got, low, high int) bool {
	if got >= low && got <= high {
		return true
	}
	return p.outside(path, got, low, high, got == 0)
}

// Duration checks that a duration lies in [low, high].
func (p *Problems) Duration(path string, got, low, high time.Duration) bool {
	if got >= low && got <= high {
		return true
	}
	return p.outside(path, Elapsed(got), Elapsed(low), Elapsed(high), got == 0)
}

// ErrFor returns nil when there is no problem, and otherwise all of them, joined, each with the path that the data
// form of the input has for it; see [DataPaths]. A value that could not be read is not given, of course: that it is
// required is left out where its path has an earlier problem.
func (p *Problems) ErrFor(input any) error {
	if len(p.list) == 0 {
		return nil
	}
	var out Problems
	told := map[string]bool{}
	for _, err := range p.list {
		found := InputErrors(err)
		if len(found) == 0 {
			out.list = append(out.list, err)
		}
		for _, e := range found {
			if e.Err == ErrRequired && told[e.GoPath] {
				continue
			}
			told[e.GoPath] = e.GoPath != ""
			out.list = append(out.list, e)
		}
	}
	return DataPaths(input, out.Err())
}

// Err returns nil when there is no problem, and otherwise all of them, joined.
func (p *Problems) Err() error {
	if len(p.list) == 0 {
		return nil
	}
	return errors.Join(p.list...)
}

// Ranged is what [Check] can compare: every quantity of this package.
type Ranged[T any] interface {
	Compare(T) int
	IsValid() bool
	String() string
}

// Check notes a problem unless got is valid and lies in [low, high]. Nothing, where nothing cannot be, is not given: a
// zero value outside the range is reported as required, here as by the other checks of numbers.
func Check[T Ranged[T]](p *Problems, path string, got, low, high T) bool {
	if got.IsValid() && got.Compare(low) >= 0 && got.Compare(high) <= 0 {
		return true
	}
	if t, ok := any(got).(Temperature); ok && t.IsZero() { // no temperature reads so: nothing was given
		p.note(InputError{GoPath: path, Want: between(low, high), Low: low, High: high, Err: ErrRequired})
		return false
	}
	var zero T
	return p.outside(path, got, low, high, any(got) == any(zero))
}
