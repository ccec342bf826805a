package house

import "reflect"

// What the public rooms export. The two lists are empty here; TestRoomsByReflection puts a file in place of this one
// that fills them from the source, so that no list is kept by hand.

// exportedTypes are the exported types without type parameters, by their names with the package ("bake.Style").
func exportedTypes() []namedType { return nil }

// exportedFuncs are the exported functions without type parameters.
func exportedFuncs() []namedFunc { return nil }

type namedType struct {
	name string
	typ  reflect.Type
}

type namedFunc struct {
	name string
	fn   any
}
