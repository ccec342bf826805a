package mixing_test

import (
	"strings"
	"testing"

	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
)

// A name is text of one line: what would move the cursor or turn the direction of writing is refused where it stands.
func TestNamesAreText(t *testing.T) {
	for _, bad := range []string{"a\x1b[2J", "a\nb", "a\u202eb", "\xff", "\x00"} {
		in := hall()
		in.Others = append([]mixing.Factor(nil), in.Others...)
		in.Others[1].Name = bad
		if got := fields(second(in.Water())); got != "Others[1].Name out of range" {
			t.Errorf("%q: %s", bad, got)
		}
		b := hallBalance()
		b.Ingredients[2].Name = bad
		if got := fields(second(b.Final())); got != "Ingredients[2].Name out of range" {
			t.Errorf("%q: %s", bad, got)
		}
	}
}

// Each problem has the path of the data form, which a form on a page can highlight, and a code.
func TestErrorsNameTheDataForm(t *testing.T) {
	for name, c := range map[string]struct {
		err  error
		want string
	}{
		"water":    {second(mixing.Factors{Others: make([]mixing.Factor, 1)}.Water()), "target others[0].temperature"},
		"friction": {second(mixing.Measured{}.Friction()), "dough water others"},
		"ice":      {second(mixing.IceWater{}.Replace()), "water tap need"},
		"motor":    {second(mixing.Motor{Watts: -1}.Work()), "watts time dough"},
		"balance":  {second(hostileBalance().Final()), ""},
		"fit":      {second(mixing.Mix{}.Fit()), "mixer dough flour"},
		"sticking": {second(mixing.Sticking{Kneaded: -1}.Advise()), "mix.mixer mix.dough mix.flour kneaded"},
		"planned":  {second(mixing.Planned{}.Pour()), "target room ingredients water mixer"},
		"scald":    {second(mixing.Scald{}.Pour()), "flour flour_temperature water"},
		"change":   {second(mixing.DoughChange{SaltTo: quantity.NewPercent(9)}.Effect()), "salt_to"},
		"log":      {second(mixing.Log{Batches: make([]mixing.Logged, 1)}.Learn()), "kind batches[0].ingredients"},
	} {
		var paths []string
		for _, e := range quantity.InputErrors(c.err) {
			paths = append(paths, e.Path)
			if e.Path == "" || e.GoPath == "" || e.Code == "" {
				t.Errorf("%s: %+v", name, e)
			}
		}
		if got := strings.Join(paths, " "); !strings.HasPrefix(got, c.want) || c.want == "" && len(paths) < 8 {
			t.Errorf("%s: %s, want %s", name, got, c.want)
		}
	}
}
