// Command handler answers HTTP: post a bake, get the plan as JSON.
//
//	go run ./examples/handler &
//	curl --data @bake.json localhost:8080/plan
//	curl --data-binary @examples/bakes/hall-kitchen.toml -H 'Content-Type: application/toml' localhost:8080/plan
//
// The shape of a bake is bakeday.Bake, that of the answer bakeday.PlanSchema. What is wrong with a bake comes back with
// status 422 as a list, each with the path of its field in the JSON posted, or in a bake file with its line and column.
// The page /water asks how warm the water must be in a form whose fields have those paths as names, in English and
// German.
package main

import (
	"encoding/json"
	"flag"
	"io"
	"log"
	"mime"
	"net/http"
	"time"
	_ "time/tzdata"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/examples/internal/tomlbind"
	"example.org/maslin/schedule/bakeday"
)

func main() {
	address := flag.String("address", "localhost:8080", "where to listen")
	flag.Parse()
	log.Fatal(server(*address).ListenAndServe())
}

// server waits for nobody longer than a plan takes.
func server(address string) *http.Server {
	const patience = 10 * time.Second
	return &http.Server{Addr: address, Handler: handler(time.Now), ReadTimeout: patience, WriteTimeout: patience}
}

func handler(now func() time.Time) http.Handler {
	mux := http.NewServeMux()
	mux.HandleFunc("POST /plan", func(w http.ResponseWriter, r *http.Request) {
		body, err := io.ReadAll(http.MaxBytesReader(w, r.Body, 1<<20))
		if err != nil {
			reply(w, http.StatusRequestEntityTooLarge, "at most 1 MB of JSON")
			return
		}
		bake, file, err := read(r.Header.Get("Content-Type"), body)
		if err != nil || file != nil && len(file.Faults) > 0 {
			reply(w, http.StatusUnprocessableEntity, listed(file, err))
			return
		}
		clock := bakeday.KitchenClock{Now: now()}
		if zone, err := time.LoadLocation(bake.Kitchen.Zone); err == nil && bake.Kitchen.Zone != "" {
			clock.Zone = zone // without one the plan says what is wrong with it
		}
		day, err := bake.Plan(r.Context(), clock)
		switch {
		case len(quantity.InputErrors(err)) > 0:
			reply(w, http.StatusUnprocessableEntity, listed(file, err))
		case err != nil: // the time given to the request ran out
			reply(w, http.StatusServiceUnavailable, err.Error())
		default:
			reply(w, http.StatusOK, day) // a plan that is not possible is an answer too
		}
	})
	mux.HandleFunc("GET /water", water)
	mux.HandleFunc("POST /water", water)
	return mux
}

// read reads a bake as JSON, or as a bake file, which knows the places of its keys.
func read(kind string, body []byte) (bake bakeday.Bake, file *tomlbind.File, err error) {
	if media, _, _ := mime.ParseMediaType(kind); media != "application/toml" { // a charset may stand behind it
		bake, err = bakeday.Read(body)
		return bake, nil, err
	}
	file = tomlbind.Bind(body, &bake)
	return bake, file, nil
}

// A place is where in a bake file something is wrong, and what.
type place struct {
	Path    string `json:"path,omitempty"`
	Line    int    `json:"line"`
	Column  int    `json:"column"`
	Message string `json:"message"`
}

// listed is everything that is wrong with a bake: of JSON by path, of a bake file also by place.
func listed(file *tomlbind.File, err error) any {
	problems := quantity.InputErrors(err)
	if file == nil {
		return problems
	}
	var out []place
	for _, f := range file.Faults {
		out = append(out, place{f.Key, f.Line, f.Column, f.Text.String()})
	}
	for _, e := range problems {
		line, column := file.Locate(e.Path)
		out = append(out, place{e.Path, line, column, e.Error()})
	}
	return out
}

func reply(w http.ResponseWriter, status int, v any) {
	w.Header().Set("Content-Type", "application/json")
	w.WriteHeader(status)
	if err := json.NewEncoder(w).Encode(v); err != nil {
		log.Print(err)
	}
}
