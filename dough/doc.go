// Package dough answers: how much of everything for this many loaves, what is the true
// hydration, and how is the levain built?
package dough
