package bakeday

import (
	"testing"

	"example.org/maslin/dough/working"
	"example.org/maslin/schedule"
	"github.com/google/go-cmp/cmp"
)

// What clashes with an absence is told with the work right before it, back to the first step that is no work, and of
// the first of the steps that clash.
func TestTheWorkRightBeforeAStep(t *testing.T) {
	step := func(id string, kind schedule.StepKind, takes int) schedule.DayStep {
		return schedule.DayStep{ID: id, Kind: kind, Name: working.Say("%s", id), Min: minutes(takes), Max: minutes(takes)}
	}
	next := func(from, to string) schedule.Link {
		return schedule.Link{From: from, To: to, Kind: schedule.EndToStart}
	}
	var d Day
	d.problem.Steps = []schedule.DayStep{step("mix", schedule.Mix, 25), step("bulk", schedule.Bulk, 180),
		step("fold", schedule.Fold, 5), step("shape", schedule.Shape, 40), step("proof", schedule.Proof, 60)}
	d.problem.Links = []schedule.Link{next("mix", "bulk"), next("bulk", "fold"), next("fold", "shape"),
		next("shape", "proof"), {From: "mix", To: "fold", Kind: schedule.StartToStart}}
	rule := func(r schedule.Rule, id string) schedule.Member {
		return schedule.Member{Breach: schedule.Breach{Rule: r, Step: id}}
	}
	away := rule(schedule.Absence, "")
	takes := func(id, says string) RuleData {
		return RuleData{Rule: schedule.StepExact, Step: id, Words: working.Say("%s", says)}
	}
	for name, c := range map[string]struct {
		members []schedule.Member
		first   string
		work    []RuleData
	}{
		"nobody is away": {[]schedule.Member{rule(schedule.StepMin, "proof")}, "", nil},
		"no length":      {[]schedule.Member{away, rule(schedule.StepMax, "proof")}, "", nil},
		"nothing before": {[]schedule.Member{away, rule(schedule.StepExact, "mix")}, "mix", nil},
		"after one work": {[]schedule.Member{rule(schedule.StepMin, "bulk"), away}, "bulk",
			[]RuleData{takes("mix", "mix takes 25m")}},
		"after rest": {[]schedule.Member{rule(schedule.StepMin, "fold"), away}, "fold", nil},
		"after two": {[]schedule.Member{away, rule(schedule.StepMin, "proof")}, "proof",
			[]RuleData{takes("fold", "fold takes 5m"), takes("shape", "shape takes 40m")}},
		"the first of several": {[]schedule.Member{away, rule(schedule.StepMin, "proof"), rule(schedule.StepMin, "bulk")},
			"bulk",
			[]RuleData{takes("mix", "mix takes 25m")}},
	} {
		work, first := d.workBefore(&schedule.Conflict{Members: c.members})
		if diff := cmp.Diff(c.work, work, sameWords); diff != "" || first != c.first {
			t.Errorf("%s: before %q, not %q:\n%s", name, first, c.first, diff)
		}
	}
}
