//go:build !(js && classroom)

package desk

import (
	"example.org/maslin/dough/working"
	"example.org/maslin/examples/internal/language"
)

// catalog is the German catalog. The page itself is built with the tag classroom and finds it beside the program.
func catalog() working.Language { return language.German() }
