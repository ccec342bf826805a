// Command handler answers HTTP: post a bake as JSON, get the plan as JSON.
//
//	go run ./examples/handler &
//	curl --data @bake.json localhost:8080/plan
//
// The shape of a bake is bakeday.Bake, that of the answer bakeday.PlanSchema. What is wrong with
// a bake comes back with status 422 as a list, each with the path of its field in the JSON posted. The page /water asks
// how warm the water must be in a form whose fields have those paths as names, in English and German.
package main

import (
	"encoding/json"
	"flag"
	"io"
	"log"
	"net/http"
	"time"
	_ "time/tzdata"

	"example.org/maslin/dough/quantity"
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
		bake, err := bakeday.Read(body)
		if err != nil {
			reply(w, http.StatusUnprocessableEntity, quantity.InputErrors(err))
			return
		}
		clock := bakeday.KitchenClock{Now: now()}
		if zone, err := time.LoadLocation(bake.Kitchen.Zone); err == nil && bake.Kitchen.Zone != "" {
			clock.Zone = zone // without one the plan says what is wrong with it
		}
		day, err := bake.Plan(r.Context(), clock)
		switch problems := quantity.InputErrors(err); {
		case len(problems) > 0:
			reply(w, http.StatusUnprocessableEntity, problems)
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

func reply(w http.ResponseWriter, status int, v any) {
	w.Header().Set("Content-Type", "application/json")
	w.WriteHeader(status)
	if err := json.NewEncoder(w).Encode(v); err != nil {
		log.Print(err)
	}
}
