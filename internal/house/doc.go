// Package house holds the tests that keep the laws of the house: which package may import
// which, what stands at the top level, that every exported identifier is documented, that
// library code stays pure, and that a sentence has one identifier and an identifier one sentence.
//
// [Sentences] lists the sentences of the library from its source, for whoever checks a catalog of another language.
package house
