// Command mutants shows which deliberate errors the tests of a package do not notice.
//
// It samples places of the package, and for each a small error: a boundary moved, a sum for a difference, a constant
// off by one or by one percent, a statement dropped, two arguments exchanged, a result withheld. All of them are built
// into one test binary, in which an environment variable chooses the one that is made; the tests run once for each.
// The tree is not touched: the changed files reach the compiler by an overlay.
//
//	go run ./.ci/mutants -pkg ./bake -n 100 -seed 1 -out bake.jsonl
//
// Few places take no such choice, a constant declaration for one: their errors are built one by one.
package main
