package bake

import (
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
)

// AskedLoss is what is known of a loaf, and everything that is asked at once of what it loses. What is nil is not
// asked.
type AskedLoss struct {
	Style Style         `json:"style,omitzero"`
	Bread *PromisedLoaf `json:"bread,omitempty"` // how much dough for this loaf?
	Piece *ScaledPiece  `json:"piece,omitempty"` // or: how heavy is the loaf of this dough?
	// Known says that the loss of the Bread or the Piece is one's own. Otherwise it is that of the Loaves, and without
	// those the usual one.
	Known  bool          `json:"known,omitzero"`
	Loaves []WeighedLoaf `json:"loaves,omitempty"`
	Packed *PackedWeight `json:"packed,omitempty"`
	Solids *Solids       `json:"solids,omitempty"`
}

// LossAnswers are the answers of [AskedLoss.Answer].
type LossAnswers struct {
	answer

	Scaling *Scaling       `json:"scaling,omitempty"`
	Usual   *LossGuide     `json:"usual,omitempty"`
	Learned *LearnedLoss   `json:"learned,omitempty"`
	Average *AverageWeight `json:"average_system,omitempty"`
	Solids  *SolidsLoss    `json:"solids_rule,omitempty"`
}

// Answer asks, as far as they are asked, [Style.LossOfBread] or [Style.UsualLoss], [LossLog.Learn],
// [PromisedLoaf.Scaling] or [ScaledPiece.Bread], [PackedWeight.Limits] and [Solids.LeastLoss]; what can be answered is,
// beside an error for the rest. Valid range, accuracy and sources are theirs. Errors: theirs; ErrRequired where nothing
// is asked; ErrInconsistent for a Bread and a Piece.
func (a AskedLoss) Answer() (LossAnswers, error) {
	var p quantity.Problems
	if a.Bread == nil && a.Piece == nil && len(a.Loaves) == 0 && a.Packed == nil && a.Solids == nil {
		p.Required("Bread.Baked", quantity.Tell("bake.want_bread_or_other",
			"the weight of a cool loaf; or a piece of dough, loaves weighed, packed ones or solids"))
	} else if a.Bread != nil && a.Piece != nil {
		p.Add("Piece", quantity.Tell("bake.got_bread_and_piece", "a bread and a piece"),
			quantity.Tell("bake.want_bread_or_piece", "one of them: the other follows from it"), quantity.ErrInconsistent)
	}
	var out LossAnswers
	var loss quantity.Percent
	if a.Bread != nil || a.Piece != nil {
		usual, err := a.usual()
		out.Usual, loss = found(&p, "", usual, err), usual.Loss.Likely
	}
	if len(a.Loaves) > 0 {
		learned, err := LossLog{Style: a.Style, Loaves: a.Loaves}.Learn()
		out.Learned, loss = found(&p, "", learned, err), learned.Mean
	}
	if a.Bread != nil {
		in := *a.Bread
		if !a.Known {
			in.Loss = loss
		}
		scaling, err := in.Scaling()
		out.Scaling = found(&p, "Bread", scaling, err)
	} else if a.Piece != nil {
		in := *a.Piece
		if !a.Known {
			in.Loss = loss
		}
		bread, err := in.Bread()
		out.Scaling = found(&p, "Piece", bread, err)
	}
	if a.Packed != nil {
		limits, err := a.Packed.Limits()
		out.Average = found(&p, "Packed", limits, err)
	}
	if a.Solids != nil {
		solids, err := a.Solids.LeastLoss()
		out.Solids = found(&p, "Solids", solids, err)
	}
	return out, p.ErrFor(a)
}

// usual is the loss of the style. What is wrong with the dough of a bread is told of the bread.
func (a AskedLoss) usual() (LossGuide, error) {
	var guide LossGuide
	var err error
	path := "Piece.Dough"
	if a.Bread != nil {
		path = "Bread.Baked"
		guide, err = a.Style.LossOfBread(a.Bread.Baked)
	} else {
		guide, err = a.Style.UsualLoss(a.Piece.Dough)
	}
	var p quantity.Problems
	for _, e := range quantity.InputErrors(err) {
		if moved := *e; e.GoPath == "Dough" {
			moved.Path, moved.GoPath = "", path
			e = &moved
		}
		p.Join("", e)
	}
	return guide, p.Err()
}

// parts are the answers in the order in which they are told: first the weights, then what they rest on.
func (a LossAnswers) parts() parts {
	all := with(nil, "scaling", a.Scaling)
	all = with(with(all, "usual", a.Usual), "learned", a.Learned)
	return with(with(all, "average_system", a.Average), "solids_rule", a.Solids)
}

// String is the headline of the report.
func (a LossAnswers) String() string { return a.Report().Headline.String() }

// Report tells the answers one after the other.
func (a LossAnswers) Report() report.Report { return a.parts().told() }

// Workings derive each of them.
func (a LossAnswers) Workings() []working.Working { return a.parts().derived() }
