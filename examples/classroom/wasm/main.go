//go:build js && wasm

// Command wasm is the classroom's desk in a browser: one function, maslinAnswer, that takes a request as JSON and
// gives a response as JSON. It knows nothing of the page.
package main

import (
	"runtime/debug"
	"syscall/js"

	"example.org/maslin/examples/classroom/desk"
)

func main() {
	// A page asks little and often: it need not be tidied after every answer.
	debug.SetGCPercent(400)
	js.Global().Set("maslinAnswer", js.FuncOf(func(_ js.Value, args []js.Value) any {
		if len(args) != 1 || args[0].Type() != js.TypeString {
			return string(desk.Answer(nil))
		}
		return string(desk.Answer([]byte(args[0].String())))
	}))
	if ready := js.Global().Get("maslinReady"); ready.Type() == js.TypeFunction {
		ready.Invoke()
	}
	select {}
}
