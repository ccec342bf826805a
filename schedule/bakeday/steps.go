package bakeday

import (
	"strconv"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/schedule"
)

// The IDs of the steps, by which links, bounds, logs and answers refer to them; those of steps that
// may come several times have their number added: "fold-2".
const (
	idFeed     = "feed"
	idRipen    = "ripen"
	idMix      = "mix"
	idBulk     = "bulk"
	idFold     = "fold"
	idLaminate = "laminate"
	idShape    = "shape"
	idChill    = "chill"
	idRetard   = "retard"
	idDivide   = "divide"
	idLoad     = "load"
	idRescore  = "rescore"
	idOut      = "take-out"
	idWarm     = "warm-up"
	idProof    = "proof"
	idHeat     = "preheat"
	idBake     = "bake"
	idCool     = "cool"
	idVent     = "vent"
	idTurn     = "turn"
	idEarly    = "shape-if-early"
	idLate     = "shape-if-late"
	idInCold   = "in-the-cold"
	idCoolDown = "cool-down"

	baker = "baker" // when somebody is there
	hands = "hands" // what two hands can do at a time
)

// nth is the ID of a step that may come several times.
func nth(id string, i int) string { return id + "-" + strconv.Itoa(i+1) }

// numbered is a step of which there are several, with its number in its name when there is more than one.
func numbered(kind schedule.StepKind, id string, i, of int, name working.Message) schedule.DayStep {
	s := schedule.DayStep{ID: nth(id, i), Kind: kind, Number: i + 1, Of: of, Name: name}
	if of > 1 {
		s.Name = working.Tell("bakeday.numbered", "%v, %d of %d", name, i+1, of)
	}
	return s
}

// StepNamed answers: which step of the day is meant? By its ID ("fold-2"), or by its kind ("shape") where the day has
// only one such step. Steps that only keep room are not found.
//
// Errors: ErrRequired for an empty text; ErrInconsistent when no step, or more than one, is meant, with the IDs that
// are.
func (d Day) StepNamed(text string) (schedule.Timed, error) {
	var kind schedule.StepKind
	byKind := kind.UnmarshalText([]byte(text)) == nil && kind != 0
	var found []schedule.Timed
	ids := ""
	for _, i := range d.Timetable.ByTime() {
		s := d.Timetable.Steps[i]
		if s.Spare {
			continue
		}
		if ids != "" {
			ids += ", "
		}
		ids += s.ID
		switch {
		case s.ID == text:
			return s, nil
		case byKind && s.Kind == kind:
			found = append(found, s)
		}
	}
	if len(found) == 1 {
		return found[0], nil
	}
	if text == "" {
		return schedule.Timed{}, &quantity.InputError{Want: quantity.Tell("bakeday.want_one", "one of: %s", ids),
			Err: quantity.ErrRequired}
	}
	var got any = quantity.Excerpt(text)
	if len(found) > 1 {
		got = quantity.Tell("bakeday.got_several", "%s, of which there are %d", got, len(found))
	}
	return schedule.Timed{}, &quantity.InputError{Got: got, Want: quantity.Tell("bakeday.want_one", "one of: %s", ids),
		Err: quantity.ErrInconsistent}
}
