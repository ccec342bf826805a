// Command handler answers HTTP: post a bake as JSON, get the plan as JSON.
//
//	go run ./examples/handler &
//	curl --data @bake.json localhost:8080/plan
//
// The shape of a bake is bakeday.Bake, that of the answer bakeday.PlanSchema. What is wrong with
// a bake comes back as a list, each with the path of its field.
package main

import (
	"encoding/json"
	"flag"
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
	server := &http.Server{Addr: *address, Handler: handler(time.Now), ReadTimeout: 10 * time.Second, WriteTimeout: 10 * time.Second}
	log.Fatal(server.ListenAndServe())
}

// problem is one thing that is wrong with a bake.
type problem struct {
	Field string `json:"field,omitempty"`
	Got   string `json:"got,omitempty"`
	Want  string `json:"want"`
}

func handler(now func() time.Time) http.Handler {
	mux := http.NewServeMux()
	mux.HandleFunc("POST /plan", func(w http.ResponseWriter, r *http.Request) {
		var bake bakeday.Bake
		d := json.NewDecoder(http.MaxBytesReader(w, r.Body, 1<<20))
		d.DisallowUnknownFields()
		if err := d.Decode(&bake); err != nil {
			reply(w, http.StatusBadRequest, []problem{{Want: "a bake as JSON: " + err.Error()}})
			return
		}
		zone, err := time.LoadLocation(bake.Zone)
		if err != nil || bake.Zone == "" || bake.Zone == "Local" {
			reply(w, http.StatusUnprocessableEntity, []problem{{"Zone", quantity.Excerpt(bake.Zone), `an IANA time zone, such as "Europe/Zurich"`}})
			return
		}
		day, err := bake.Plan(r.Context(), bakeday.Clock{Now: now(), Zone: zone})
		if err != nil {
			var all []problem
			for _, e := range quantity.InputErrors(err) {
				all = append(all, problem{e.GoPath, e.Got, e.Want})
			}
			if len(all) == 0 {
				all = []problem{{Want: err.Error()}}
			}
			reply(w, http.StatusUnprocessableEntity, all)
			return
		}
		reply(w, http.StatusOK, day.Data()) // a plan that is not possible is an answer too
	})
	return mux
}

func reply(w http.ResponseWriter, status int, v any) {
	w.Header().Set("Content-Type", "application/json")
	w.WriteHeader(status)
	if err := json.NewEncoder(w).Encode(v); err != nil {
		log.Print(err)
	}
}
