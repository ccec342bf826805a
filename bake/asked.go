package bake

import (
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
)

// A telling is an answer that tells and derives itself.
type telling interface {
	Report() report.Report
	Working() working.Working
}

// parts are several answers that are told as one, each with the key of its section where it has none of its own.
type parts []struct {
	key string
	telling
}

// with adds an answer, where there is one.
func with[T telling](all parts, key string, one *T) parts {
	if one == nil {
		return all
	}
	return append(all, struct {
		key string
		telling
	}{key, *one})
}

// told is the first answer, with its headline, and the others behind it.
func (all parts) told() (out report.Report) {
	for i, p := range all {
		if i == 0 {
			out = p.Report()
		} else {
			out = out.With(p.key, p.Report())
		}
	}
	return out
}

// derived is how each of them was reached.
func (all parts) derived() (out []working.Working) {
	for _, p := range all {
		out = append(out, p.Working())
	}
	return out
}

// found is an answer, or nothing where there is an error, which is noted.
func found[T any](p *quantity.Problems, path string, one T, err error) *T {
	if p.Join(path, err); err != nil {
		return nil
	}
	return &one
}
