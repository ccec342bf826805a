// Package house holds the tests that keep the laws of the house: which package may import
// which, what stands at the top level, that every exported identifier is documented, and that
// library code stays pure. It has no code of its own.
package house
