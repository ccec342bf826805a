// Package ferment answers: how fast does a dough ferment, when is bulk done, what happens in the refrigerator, when is
// a levain ripe?
package ferment
