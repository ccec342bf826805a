package bakeday

import (
	"time"

	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/ferment"
	"example.org/maslin/schedule"
)

// A dough that rests in the cold before it is divided, as many a brioche or focaccia does overnight, goes into the
// refrigerator in its tub when it has risen as far as the plan says, is divided and shaped cold, and proofs in the
// warm.
const (
	// usualUndividedProof is how long pieces of cold dough proof when nobody says it; common practice, no source.
	usualUndividedProof = quantity.Elapsed(90 * time.Minute)
	// puttingIn is how long hands are busy when the tub goes into the refrigerator.
	puttingIn = quantity.Elapsed(5 * time.Minute)
)

// undivided reports whether the dough rests in the cold before it is divided.
func (b *Bake) undivided() bool { return b.Retard != nil && b.Retard.Undivided }

// afterBulk is the step that ends the bulk: the dough is shaped, or put into the cold as it is.
func (b *Bake) afterBulk() string {
	if b.undivided() {
		return idChill
	}
	return idShape
}

// shaped is the step in which the dough is shaped. After the cold it has an ID of its own: that it was done says
// nothing of the bulk.
func (b *Bake) shaped() string {
	if b.undivided() {
		return idDivide
	}
	return idShape
}

// afterCold is the time from the refrigerator to the oven.
func (b *Bake) afterCold() quantity.Elapsed {
	if b.undivided() {
		return grid(b.Shaping.Takes.Duration()) + b.Retard.warming()
	}
	return b.Retard.warming()
}

// retardName says what rests in the cold.
func (b *Bake) retardName() working.Message {
	if b.undivided() {
		return working.Tell("bakeday.step_cold_dough", "the dough rests in the cold")
	}
	return working.Tell("bakeday.step_retard", "cold retard")
}

// chillName says that the dough goes into the cold.
func (b *Bake) chillName() working.Message {
	return working.Tell("bakeday.step_chill", "put the dough into the cold")
}

// endOfBulkMark names in a curve the rise at which the bulk ends.
func (b *Bake) endOfBulkMark() working.Message {
	if b.undivided() {
		return working.Tell("bakeday.curve_chill", "into the cold")
	}
	return working.Tell("bakeday.curve_shape", "shape")
}

// endOfBulk is the step after the bulk.
func (n *network) endOfBulk() schedule.DayStep {
	if n.b.undivided() {
		return schedule.DayStep{ID: idChill, Kind: schedule.Chill, Name: n.b.chillName(), Min: puttingIn, Needs: n.work}
	}
	return n.shaping()
}

func (n *network) shaping() schedule.DayStep {
	return schedule.DayStep{ID: n.b.shaped(), Kind: schedule.Shape, Name: n.b.shapeName(),
		Min: grid(n.b.Shaping.Takes.Duration()), Needs: n.work}
}

// coldDough shapes and proofs what comes from the cold undivided; it returns the ID of the last step.
func (n *network) coldDough(rest string) string {
	shape := n.add(n.shaping())
	n.atOnce(rest, shape)
	proofs := n.b.Retard.warming()
	proof := n.add(schedule.DayStep{ID: idProof, Kind: schedule.Proof, Name: n.b.proofName(), Min: proofs, Max: proofs})
	n.atOnce(shape, proof)
	return proof
}

// stages are where the dough stands from the end of its bulk to the oven.
func (b *Bake) stages(batch dough.Batch, m moments, zone *time.Location) []ferment.Piece {
	loaf := b.piece(batch.ScalingWeight())
	cold := loaf
	cold.Exposure = ferment.Refrigerator
	if b.undivided() {
		cold = ferment.Piece{Mass: batch.Dough(), Form: ferment.Tub, Exposure: ferment.RefrigeratorTub}
	}
	cold.Into, cold.For = ferment.Room{Night: b.Kitchen.Refrigerator}, quantity.Elapsed(m.retard)
	out := []ferment.Piece{cold}
	if b.undivided() {
		loaf.Into, loaf.Exposure, loaf.For = b.room(m.mixed, zone), ferment.Open, grid(b.Shaping.Takes.Duration())
		out = append(out, loaf)
	}
	if warming := b.Retard.warming(); warming > 0 {
		loaf.Into, loaf.Exposure, loaf.For = b.proofing(m.mixed, zone), ferment.Covered, warming
		out = append(out, loaf)
	}
	return out
}
