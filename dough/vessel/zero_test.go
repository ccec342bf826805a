package vessel_test

import (
	"fmt"
	"testing"

	"example.org/maslin/dough/vessel"
	"example.org/maslin/dough/working"
)

func TestZeroResultsPrint(t *testing.T) {
	for _, r := range []fmt.Stringer{vessel.RiseMarks{}, vessel.JarSample{}, vessel.VesselFill{}, vessel.VesselVolume{},
		vessel.ProofVessel(9), vessel.TinLoaf(-1), vessel.PieceFit{}, vessel.SizedBread(99)} {
		if r.String() == "" {
			t.Errorf("%T prints nothing", r)
		}
	}
	for _, w := range []interface{ Working() working.Working }{vessel.RiseMarks{}, vessel.JarSample{},
		vessel.VesselFill{}, vessel.VesselVolume{}, vessel.PieceFit{}} {
		if n := w.Working().Len(); n != 0 {
			t.Errorf("%T derives %d steps from nothing", w, n)
		}
	}
}

func TestNamesAreReadBack(t *testing.T) {
	for i := range 2 {
		text, err := vessel.ProofVessel(i).MarshalText()
		var back vessel.ProofVessel
		if err != nil || back.UnmarshalText(text) != nil || back != vessel.ProofVessel(i) {
			t.Errorf("%v", vessel.ProofVessel(i))
		}
	}
	for i := range 10 {
		text, err := vessel.TinLoaf(i).MarshalText()
		var back vessel.TinLoaf
		if err != nil || back.UnmarshalText(text) != nil || back != vessel.TinLoaf(i) {
			t.Errorf("%v", vessel.TinLoaf(i))
		}
	}
	for i := range 19 {
		text, err := vessel.SizedBread(i).MarshalText()
		var back vessel.SizedBread
		if err != nil || back.UnmarshalText(text) != nil || back != vessel.SizedBread(i) {
			t.Errorf("%v", vessel.SizedBread(i))
		}
	}
	if _, err := vessel.ProofVessel(-1).MarshalText(); err == nil {
		t.Error("a value without a name was written")
	}
}
