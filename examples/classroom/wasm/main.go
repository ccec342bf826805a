//go:build js && wasm

// Command wasm is the classroom's desk in a browser: one function, maslinAnswer, that takes a request as an object and
// gives a response as an object. It knows nothing of the page.
package main

import (
	"math"
	"runtime/debug"
	"syscall/js"

	"example.org/maslin/examples/classroom/desk"
)

func main() {
	// A page asks little and often: it need not be tidied after every answer.
	debug.SetGCPercent(400)
	js.Global().Set("maslinAnswer", js.FuncOf(func(_ js.Value, args []js.Value) any {
		var q desk.Request
		if len(args) > 0 && args[0].Type() == js.TypeObject {
			q = request(args[0])
		}
		return response(desk.Answer(q))
	}))
	if ready := js.Global().Get("maslinReady"); ready.Type() == js.TypeFunction {
		ready.Invoke()
	}
	select {}
}

func request(v js.Value) desk.Request {
	q := desk.Request{Do: text(v, "do"), Fragment: text(v, "fragment"), Name: text(v, "name"), Row: count(v, "row"),
		Across: number(v, "across"), Down: number(v, "down"), Width: count(v, "width"), Quick: v.Get("quick").Truthy(),
		Working: v.Get("working").Truthy(), Level: text(v, "level")}
	if s := v.Get("state"); s.Type() == js.TypeObject {
		q.State = desk.State{At: text(s, "at"), Units: text(s, "units"), Language: text(s, "language"),
			Large: s.Get("large").Truthy(), Phase: text(s, "phase"), Guess: text(s, "guess"), Why: text(s, "why"),
			Fields: texts(s, "fields"), Was: texts(s, "was")}
	}
	return q
}

func text(v js.Value, name string) string {
	if t := v.Get(name); t.Type() == js.TypeString {
		return t.String()
	}
	return ""
}

func number(v js.Value, name string) float64 {
	if n := v.Get(name); n.Type() == js.TypeNumber {
		return n.Float()
	}
	return 0
}

// count is a whole number, and −1, which is no row and no width, for what is none.
func count(v js.Value, name string) int {
	x := number(v, name)
	if x != math.Trunc(x) || math.Abs(x) > math.MaxInt32 {
		return -1
	}
	return int(x)
}

func texts(v js.Value, name string) map[string]string {
	held := v.Get(name)
	if held.Type() != js.TypeObject {
		return nil
	}
	names := js.Global().Get("Object").Call("keys", held)
	out := map[string]string{}
	for i := range names.Length() {
		key := names.Index(i).String()
		out[key] = text(held, key)
	}
	return out
}

func response(r desk.Response) map[string]any {
	s := r.State
	places := map[string]any{}
	for name, place := range r.Places {
		places[name] = place
	}
	return map[string]any{
		"state": map[string]any{"at": s.At, "units": s.Units, "language": s.Language, "large": s.Large, "phase": s.Phase,
			"guess": s.Guess, "why": s.Why, "fields": object(s.Fields), "was": object(s.Was)},
		"fragment": r.Fragment, "title": r.Title, "page": r.Page, "answer": r.Answer, "working": r.Working,
		"status": r.Status, "problems": object(r.Problems), "places": places, "board": object(r.Board), "focus": r.Focus,
		"headline": r.Headline, "value": r.Value,
	}
}

func object(texts map[string]string) map[string]any {
	out := map[string]any{}
	for name, text := range texts {
		out[name] = text
	}
	return out
}
