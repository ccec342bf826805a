package gasbalance

// The unknowns of a kitchen, in the order of every [Vector]: the log of the amplitude, the log of the pace, the
// slope per °C from 24 °C, the shift of the cold end in °C, the levain's mixture as the log of its growth, and the log
// of the growth of commercial yeast. All are 0 for the typical kitchen.
const (
	Amplitude = iota
	Pace
	Slope
	ColdEnd
	Mixture
	Growth
	Unknowns // how many there are
)

// Vector holds one value for each unknown.
type Vector [Unknowns]float64

// Matrix holds one value for each pair of unknowns.
type Matrix [Unknowns][Unknowns]float64

// rides is how many unknowns ride along with a state: all but the amplitude, by which the log of the gas goes as 1.
const rides = Unknowns - 1

// State is a dough or preferment at one moment: its cells, the gas made since mixing, and how all of that goes with
// the unknowns. It is a value: the state after a prefix of a history is all that is needed to go on, whatever came
// before.
type State struct {
	// Levain and Yeast are X and Y, cells counted by their gas, in % of the flour as instant dry yeast.
	Levain, Yeast float64
	// Gas is CO₂ made since mixing for an amplitude of 1, L per kg flour at 25 °C and 1 atm.
	Gas float64

	levain, yeast, gas [rides]float64 // derivatives by all unknowns but the amplitude
}

// Start is a dough as mixed, of cells in % of its flour as instant dry yeast.
func Start(levain, yeast float64) State { return State{Levain: levain, Yeast: yeast} }

// Cells are those of both leavenings together.
func (s *State) Cells() float64 { return s.Levain + s.Yeast }

// LogGas are the derivatives of ln G by the unknowns: 1 by the amplitude. Without gas all are 1, which a fast
// kitchen and a slow one share.
func (s *State) LogGas() Vector {
	if !(s.Gas > 0) {
		return Vector{1, 1, 1, 1, 1, 1}
	}
	r := 1 / s.Gas
	return Vector{1, s.gas[0] * r, s.gas[1] * r, s.gas[2] * r, s.gas[3] * r, s.gas[4] * r}
}

// HandOn is what a preferment in this state gives to a dough: a share of the dough's flour comes in it. Its gas is
// lost in mixing. The doubt in its cells, which goes with the unknowns, is handed on with them.
func (s *State) HandOn(share float64) State {
	out := State{Levain: share * s.Levain, Yeast: share * s.Yeast}
	for j := range rides {
		out.levain[j] = share * s.levain[j]
		out.yeast[j] = share * s.yeast[j]
	}
	return out
}

// Mix puts the cells of several parts into one dough; the gas starts from none.
func Mix(parts ...State) (s State) {
	for i := range parts {
		p := &parts[i]
		s.Levain += p.Levain
		s.Yeast += p.Yeast
		for j := range rides {
			s.levain[j] += p.levain[j]
			s.yeast[j] += p.yeast[j]
		}
	}
	return s
}
