package bakeday

import (
	"fmt"
	"time"

	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/ferment"
)

// computed reports whether the clock says how long a preferment stands: the baker has not.
func (x PrefermentWork) computed() bool { return x.AtLeast == 0 && x.AtMost == 0 }

// ripens answers when a preferment of which the baker says no hours is ripe, made so long before a dough is mixed
// that it is at its peak then. Its temperature follows the room, from that of the room when it is made.
func (b *Bake) ripens(i int, batch dough.Batch, mixed time.Time, zone *time.Location) (ferment.Ripeness, error) {
	x := b.Preferments[i]
	y, ok := b.yeast()
	if !ok {
		return ferment.Ripeness{}, nil // the check says what is missing
	}
	build, _ := batch.Build(x.Name)
	in := ferment.Ripening{
		Yeast: ferment.Yeast{Kind: yeastKind(y.Kind), Amount: x.Yeast}, Hydration: b.wetness(x), Salt: x.Salt,
		WholeGrain: wholeGrainOf(build), History: ferment.Constant(x.Temperature), Law: ferment.GasBalance(),
	}
	stands := 12 * time.Hour
	for range 2 { // the room at the time it is made depends on how long it takes
		if x.Temperature.IsZero() {
			var err error
			made := mixed.Add(-stands)
			if in.History, err = (ferment.Piece{
				Mass: build.Made, Form: ferment.Tub, Start: b.roomAt(made, zone), Into: b.room(made, zone),
				Exposure: ferment.Covered, For: quantity.Elapsed(laidOut),
			}).History(); err != nil {
				return ferment.Ripeness{}, quantity.At(fmt.Sprintf("Preferments[%d]", i), err)
			}
		}
		r, err := in.Ripe()
		if err != nil || !x.Temperature.IsZero() {
			return r, quantity.At(fmt.Sprintf("Preferments[%d]", i), err)
		}
		stands = min(r.Peak.Likely, laidOut)
	}
	r, err := in.Ripe()
	return r, quantity.At(fmt.Sprintf("Preferments[%d]", i), err)
}

// wholeGrainOf is the share of whole grain in the flour of a build.
func wholeGrainOf(build dough.Build) quantity.Percent {
	var flour, whole quantity.Mass
	for _, line := range build.Lines {
		if line.Role == dough.RoleFlour {
			flour = flour.Add(line.Mass)
			if line.Kind.WholeGrain() {
				whole = whole.Add(line.Mass)
			}
		}
	}
	if flour.IsZero() {
		return quantity.Percent{}
	}
	return whole.PercentOf(flour)
}

// ripen works out the preferments of which the baker says no hours; the others have no answer here.
func (d *Day) ripen(b *Bake, m moments) error {
	d.Preferments = nil
	var p quantity.Problems
	for i, x := range b.Preferments {
		var r ferment.Ripeness
		if x.computed() {
			var err error
			r, err = b.ripens(i, d.Batch, m.mixed, d.Zone)
			p.Join("", err)
		}
		d.Preferments = append(d.Preferments, r)
	}
	return p.Err()
}

// standing is how long a preferment stands before the dough is mixed: to its peak, or to the middle of the baker's
// hours.
func (b *Bake) standing(i int, m moments) time.Duration {
	x := b.Preferments[i]
	if x.computed() && i < len(m.peaks) {
		return m.peaks[i]
	}
	return x.AtLeast.Duration() + (x.AtMost.Duration()-x.AtLeast.Duration())/2
}

// peaks are those of the preferments of which the baker says no hours.
func (d *Day) peaks() []time.Duration {
	var out []time.Duration
	for _, r := range d.Preferments {
		out = append(out, r.Peak.Likely)
	}
	return out
}

// beforehandAt lists what is made before the dough with the hours that were computed.
func (n *network) beforehandAt() []beforehand {
	all := n.b.beforehand()
	for i := range n.b.Preferments {
		if n.b.Preferments[i].computed() && i < len(n.t.ripens) {
			r := n.t.ripens[i]
			all[i].computed = true
			all[i].least = grid(r.Peak.Likely).Duration()
			all[i].most = max(all[i].least, grid(r.Until.Likely).Duration())
		}
	}
	return all
}
