// Package trial has what the tests of several rooms share: drawn quantities, the refused fields of an error, and
// workings checked inside a property.
package trial
