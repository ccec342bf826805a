package bakeday

import (
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"

	"example.org/maslin/bake"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/schedule"
)

// StepNote is a note of the baker's own on a step: on every step of a kind ("fold", "vent"), or on one by its ID
// ("fold-2").
type StepNote struct {
	Step string `json:"step"` // the ID or the kind of the step, such as "fold-2" or "shape"
	Says string `json:"says"` // what the plan is to say there
}

const mostNotes = 50

// kindOf reads the kind of step that a note is for; of several kinds of tending, which.
func (n StepNote) kindOf() (kind schedule.StepKind, phase bake.PhaseKind, ok bool) {
	if kind.UnmarshalText([]byte(n.Step)) == nil && kind != 0 {
		return kind, 0, true
	}
	if phase.UnmarshalText([]byte(n.Step)) == nil && phase != 0 {
		return schedule.Tend, phase, true
	}
	return 0, 0, false
}

// on reports whether the note is for a step.
func (n StepNote) on(s StepData) bool {
	if n.Step == s.ID {
		return true
	}
	kind, phase, ok := n.kindOf()
	return ok && kind == s.Kind && (phase == 0 || phase == s.Phase)
}

// checkNotes reports notes without a step or words. Whether the plan has a step of that ID is known when it is made.
func (b *Bake) checkNotes(p *quantity.Problems) {
	p.Int("Notes", len(b.Notes), 0, mostNotes)
	for i, n := range b.Notes[:min(len(b.Notes), mostNotes)] {
		path := fmt.Sprintf("Notes[%d]", i)
		switch _, _, ok := n.kindOf(); {
		case n.Step == "":
			p.Required(path+".Step", quantity.Tell("bakeday.want_kind_step_fold_or_id",
				`a kind of step, such as "fold", or the ID of one, such as "fold-2"`))
		case !ok && !slices.Contains(b.stepIDs(), n.Step):
			p.Add(path+".Step", quantity.Excerpt(n.Step),
				quantity.Tell("bakeday.want_kind_step_fold_or_id",
					`a kind of step, such as "fold", or the ID of one, such as "fold-2"`), quantity.ErrOutOfRange)
		}
		switch {
		case n.Says == "":
			p.Required(path+".Says", quantity.Tell("bakeday.want_what_to_be_remembered", "what is to be remembered"))
		case len(n.Says) > maxName || !utf8.ValidString(n.Says) || strings.ContainsFunc(n.Says, unprintable):
			p.Add(path+".Says", quantity.Excerpt(n.Says), nameWant, quantity.ErrOutOfRange)
		}
	}
}

// stepIDs are those that a plan of the bake may have.
func (b *Bake) stepIDs() []string {
	out := []string{idFeed, idRipen, idBulk, b.afterBulk(), b.shaped(), idRetard, idOut, idWarm, idProof, idHeat, idCool}
	several := func(id string, n int) {
		for i := range min(n, 60) {
			out = append(out, nth(id, i))
		}
	}
	if b.Bulk.Lamination != nil {
		out = append(out, idLaminate)
	}
	several(idFold, b.Bulk.Folds)
	several(idMix, 60)
	for _, id := range []string{idBake, idLoad, idVent, idRescore, idTurn} {
		several(id, max(1, b.Loaves.Pieces))
	}
	for i, s := range b.beforehand() {
		out = append(out, nth(schedule.Make.String(), i), nth(s.waits.String(), i), nth(idCoolDown, i))
	}
	return out
}

// notesOn are the baker's notes on a step.
func (b *Bake) notesOn(s StepData) []string {
	var out []string
	for _, n := range b.Notes {
		if n.on(s) {
			out = append(out, n.Says)
		}
	}
	return out
}

// notesAside names the notes for which this plan has no step.
func (d *Day) notesAside() []working.Message {
	if !d.Possible() || len(d.Bake.Notes) == 0 {
		return nil
	}
	var out []working.Message
	steps := d.stepData()
	for _, n := range d.Bake.Notes {
		if !slices.ContainsFunc(steps, n.on) {
			out = append(out, working.Tell("bakeday.note_aside", "for your note on %s this plan has no step: %s", n.Step,
				n.Says))
		}
	}
	return out
}
