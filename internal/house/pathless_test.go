package house

import (
	"reflect"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
)

// TestErrorsHaveDataPathsByReflection: whoever is told what is wrong with an input is told the path of it in the data
// form, too, so that a form or a file can mark it; and what is accepted, in words that have an identifier.
func TestErrorsHaveDataPathsByReflection(t *testing.T) {
	if len(exportedTypes()) == 0 {
		t.Skip("run by TestRoomsByReflection")
	}
	if testing.Short() {
		t.Skip("some seconds long")
	}
	m := newMaker(3)
	harvest(t, m, 1)
	m.hostile = true
	o := offences{}
	seen := 0
	for _, c := range callables() {
		if c.leftOut() || collecting[c.name] {
			continue
		}
		for range 20 {
			results, panicked, hung := c.within(m, 10*time.Second)
			if hung || panicked != "" {
				break // TestNothingPanicsByReflection tells
			}
			for _, e := range inputErrors(results) {
				seen++
				switch {
				case e.GoPath != "" && e.Path == "":
					o.add(c.name, "%v has no data path", e)
				case e.Want.ID == "" && !e.Want.IsZero():
					o.add(c.name, "%v wants something without an identifier", e)
				}
			}
		}
	}
	if seen < 1000 {
		t.Errorf("only %d errors were seen", seen)
	}
	o.judgeDrawn(t, nil)
}

// collecting are the functions by which a room puts errors together, and what a test hands them comes back.
var collecting = map[string]bool{
	"quantity.At": true, "quantity.DataPaths": true, "quantity.InputErrors": true,
	"(*quantity.Problems).Err": true, "(*quantity.Problems).ErrFor": true, "(*quantity.Problems).Join": true,
}

func inputErrors(results []reflect.Value) []*quantity.InputError {
	if !failed(results) {
		return nil
	}
	err, _ := results[len(results)-1].Interface().(error)
	return quantity.InputErrors(err)
}
