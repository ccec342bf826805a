//go:build js && classroom

package desk

import (
	"syscall/js"

	"example.org/maslin/dough/working"
	"example.org/maslin/examples/classroom/beside"
)

// catalog is the German catalog, which lies beside the program in a section of its own: a program that reads JSON is a
// tenth larger. Without the section everything is English.
func catalog() working.Language {
	section := js.Global().Get("maslinSection")
	if section.Type() != js.TypeFunction {
		return working.Language{Tag: "en"}
	}
	return beside.Read(section.Invoke(beside.Section).String())
}
