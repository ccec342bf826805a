package ferment_test

import (
	"fmt"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
	"example.org/maslin/ferment"
	"example.org/maslin/internal/trial"
)

// What is asked backwards is derived as the dough it leads to, and derives nothing where it leads to none.
func TestWhatIsAskedBackwardsIsDerived(t *testing.T) {
	text := func(w working.Working) string { return w.Text(110) }
	box, err := good().HeldFor(6 * time.Hour)
	if err != nil || !box.Feasible {
		t.Fatal(box, err)
	}
	b := good()
	b.History = ferment.Constant(box.Temperature)
	if d := cmp.Diff(text(estimate(t, b).Working()), text(box.Working())); d != "" {
		t.Error(d)
	}
	p, err := estimate(t, good()).Update(ferment.RiseReading{At: span(3), Rise: pct(20)})
	if err != nil {
		t.Fatal(err)
	}
	if d := cmp.Diff(text(p.Now.Working()), text(p.Working())); d != "" {
		t.Error(d)
	}
	none, err := good().HeldFor(10 * time.Minute)
	if err != nil || none.Feasible {
		t.Fatal(none, err)
	}
	if d := cmp.Diff(text(ferment.Estimate{}.Working()), text(none.Working())); d != "" {
		t.Error(d)
	}
}

// What to do with a dough that is to be shaped stands first and strongly; a warning where there is nothing to wait for.
func TestTheInstructionStandsFirst(t *testing.T) {
	for total, want := range map[float64]report.Tone{20: report.Warning, 150: report.Strong} {
		s, err := ferment.Proof{Bulk: good(), Total: pct(total), Stages: []ferment.Piece{
			loafInto(ferment.Room{Night: quantity.Celsius(23)}, 6)}}.RiseBeforeShaping()
		if err != nil || s.Feasible != (want == report.Strong) {
			t.Fatal(s, err)
		}
		first, ok := s.Report().Section("ready").Blocks[0].(report.Paragraph)
		if !ok || first.Tone != want {
			t.Errorf("a total of %v %% begins with %+v", total, first)
		}
	}
}

// A table of rises has a column of its own name for each amount, and a dough that cannot be has its place in the table.
func TestColumnsOfATableOfRises(t *testing.T) {
	in := ferment.RiseTable{Bulk: good(), Temperatures: temperatures(22, 24), Amounts: []quantity.Percent{pct(5), pct(10),
		pct(20)}}
	r, err := in.Times()
	if err != nil {
		t.Fatal(err)
	}
	var keys []string
	for _, c := range r.Report().Grids()[0].Columns {
		keys = append(keys, c.Key)
	}
	if d := cmp.Diff([]string{"temperature", "amount_1", "amount_2", "amount_3"}, keys); d != "" {
		t.Error(d)
	}
	in.Amounts[2] = pct(101)
	r, err = in.Times()
	if got := trial.Refused(err); got != "bulk.inoculation out of range" || r.Times != nil {
		t.Errorf("%v, refused are %q", r.Times, got)
	}
	in.Amounts[2], in.Temperatures[1] = pct(20), quantity.Celsius(44)
	if got := trial.Refused(trial.Err(in.Times())); got != "bulk.history outside the model's range" {
		t.Errorf("refused are %q", got)
	}
}

// Ways to a time are refused as each of them is: by the dough, by the time, and by the drift where the dough drifts.
func TestWaysThatCannotBeAsked(t *testing.T) {
	ways := func(b ferment.Bulk, hours float64, drift ferment.Relaxing) string {
		return trial.Refused(trial.Err(b.WaysTo(span(hours).Duration(), drift)))
	}
	drift := ferment.Relaxing{Start: quantity.Celsius(25), Room: ferment.Room{Night: quantity.Celsius(22)},
		TimeConstant: span(200)}
	bad := changed(func(b *ferment.Bulk) { b.Salt = pct(16) })
	for _, c := range [][2]string{
		{ways(good(), 5, ferment.Relaxing{}), ""}, {ways(bad, 5, ferment.Relaxing{}), "salt out of range"},
		{ways(bad, 0.1, drift), "salt out of range; ready out of range"},
		{ways(good(), 5, drift), "drift.time_constant out of range"},
		{ways(good(), 5, ferment.Relaxing{Start: quantity.Celsius(25)}), "drift.room.night required"},
		{ways(good(), 5, ferment.Relaxing{Room: ferment.Room{Night: quantity.Celsius(20)}}), "drift.start required"},
	} {
		if d := cmp.Diff(c[1], c[0]); d != "" {
			t.Error(d)
		}
	}
}

// Readings of a dough come one after the other, each later than all before it, in one update or in several.
func TestReadingsOfADoughInOrder(t *testing.T) {
	e := estimate(t, good())
	at := func(hour float64) ferment.RiseReading { return ferment.RiseReading{At: span(hour), Rise: pct(10)} }
	p, err := e.Update(at(2), at(2.5))
	if err != nil {
		t.Fatal(err)
	}
	const late = "].at: inconsistent: got %s, want after the reading before it, at %s"
	for _, c := range []struct {
		of   ferment.Estimate
		in   []ferment.RiseReading
		want string
	}{
		{e, []ferment.RiseReading{at(2), at(2)}, "readings[1" + fmt.Sprintf(late, "2h", "2h")},
		{e, []ferment.RiseReading{at(2), at(1)}, "readings[1" + fmt.Sprintf(late, "1h", "2h")},
		{p.Now, []ferment.RiseReading{at(2.5)}, "readings[0" + fmt.Sprintf(late, "2h30m", "2h30m")},
		{p.Now, []ferment.RiseReading{at(2.6), at(2.7)}, ""},
		{p.Now, nil, "readings: required: want at least one reading"},
		{ferment.Estimate{}, []ferment.RiseReading{at(2)}, "estimate: required: want an estimate of a dough"},
	} {
		if d := cmp.Diff(c.want, saying(trial.Err(c.of.Update(c.in...)))); d != "" {
			t.Error(d)
		}
	}
}
