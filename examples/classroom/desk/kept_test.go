package desk

import (
	"fmt"
	"maps"
	"regexp"
	"slices"
	"strings"
	"testing"

	"example.org/maslin/internal/trial"
)

// The pictures that the benches draw, as they were looked at in the browser. Whoever moves a line on purpose looks at
// the page again (check.sh -shots) and keeps the new ones.
func TestPicturesAreAsTheyWereLookedAt(t *testing.T) {
	picture := regexp.MustCompile(`(?s)<svg.*?</svg>`)
	var out strings.Builder
	states := []State{{At: "water.plan", Fields: map[string]string{"room": "35 °C", "target": "22 °C"}}}
	for _, id := range Tasks() {
		states = append(states, State{At: id})
	}
	for _, s := range states {
		id := s.At
		s.Phase = open
		a := ask(t, Request{Do: "type", Width: 700, State: s})
		for _, svg := range picture.FindAllString(a.Answer, -1) {
			fmt.Fprintf(&out, "%s\n%s\n", id, strings.ReplaceAll(svg, "><", ">\n<"))
		}
		for _, name := range slices.Sorted(maps.Keys(a.Board)) {
			fmt.Fprintf(&out, "%s, board %s\n%s\n", id, name, strings.ReplaceAll(a.Board[name], "><", ">\n<"))
		}
	}
	trial.Kept(t, "pictures.txt", out.String())
}
