// Package sources holds the references of the library as Go values, each declared once, so
// that a formula without its source does not compile. One file per room; a value's name is its
// author or standard and the subject.
package sources

import "example.org/maslin/dough/working"

// Practice is a rule of the trade with no source.
func Practice(rule string) working.Source { return working.NoSource(rule) }

// practice is a rule of the trade that rooms tell from others by its key.
func practice(key, rule string) working.Source {
	return working.Source{Key: key, Title: rule, Standing: working.CommonPractice}
}
