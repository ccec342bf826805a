package bake

import (
	"math"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/heat"
)

// UnprobedLoaf asks how long heat takes into the core of a loaf, when there is no probe.
type UnprobedLoaf struct {
	Goal
	Shape Shape                `json:"shape,omitzero"`
	Dough quantity.Mass        `json:"dough"`          // of the piece when it goes in
	Start quantity.Temperature `json:"start,omitzero"` // of the dough; not given: 25 °C
}

// Arrival is when the core of a loaf reaches its target, reckoned from its size alone.
type Arrival struct {
	answer

	Time         quantity.TimeRange   `json:"time"`
	Target       quantity.Temperature `json:"target"`
	TimeConstant quantity.TimeRange   `json:"time_constant"`
	in           UnprobedLoaf
	target       target
	volume       float64 // mL
	alpha        float64 // m²/s, as measured
	tau          float64 // min
	terms        []heat.AxisTerm
}

const (
	// vaporGain is how much better a hot crumb conducts than the measurement without evaporation:
	// evaporation and condensation in closed pores carry about 60 % of the heat (Zhang et al. 2025). 1.8
	// makes a hearth loaf of 900 g arrive at 85 % of its guide time, as the S-curve has it.
	vaporGain = 1.8
	// startLead is A in T = T_b − (T_b − T₀)·A·e^(−t/τ), with the lag of the crust: 2 to 3.2.
	startLead = 2.5
	priorHalf = 0.4
)

// Arrival answers: how long until the core is at its target, from the size of the loaf alone?
//
// Formula: t = τ·ln(A·(T_b − T₀)/(T_b − T*)), 1/τ = α·Σ z²/R² over the axes of the shape, with the surface of the
// crumb at T_b. Symbols: A 2.5; α = 1.8·exp(0.01·ε − 15.25) m²/s at porosity ε in %; R half dimensions from the
// style's usual volume; z first eigenvalues. Valid range: 20 g to 5 kg; dough −5 to 45 °C. Accuracy: ±40 %, a
// judgment: it is the range that claims 80 %. A known bake ([OvenPiece.BakeTime]) or a probe ([Probe.TimeLeft]) says
// more. Errors: [quantity.ErrRequired], [quantity.ErrOutOfRange]. Source: Zanoni, Peri and Gianotti (1995); Çengel,
// chapter 4; 1.8 and A are judgments.
func (in UnprobedLoaf) Arrival() (Arrival, error) {
	var p quantity.Problems
	if checkGoal(&p, in.Goal) && !in.Style.ByCore() && in.Wanted.IsZero() {
		p.Add(
			"Style",
			in.Style,
			quantity.Tell("bake.want_bread_middle_probe_thin_breads",
				"a bread with a middle for a probe; thin breads are done by time and color"),
			quantity.ErrModelRange,
		)
	}
	shapes.CheckIfGiven(&p, "Shape", in.Shape)
	quantity.Check(&p, "Dough", in.Dough, quantity.Grams(20), quantity.Grams(5000))
	if in.Start.IsZero() {
		in.Start = quantity.Celsius(25)
	}
	quantity.Check(&p, "Start", in.Start, quantity.Celsius(-5), quantity.Celsius(45))
	if err := p.ErrFor(in); err != nil {
		return Arrival{}, err
	}
	t, err := in.target()
	if err != nil {
		return Arrival{}, err
	}
	in.Shape = in.Shape.For(in.Style)
	ml, porosity := specificVolume(in.Style)
	loss, _, _, _ := usualLoss(in.Style, in.Dough.Grams())
	volume := in.Dough.Grams() * (1 - loss/100) * ml
	alpha, err := heat.CrumbDiffusivity(porosity)
	if err != nil {
		return Arrival{}, err
	}
	const c = 2800 // any: only α matters when the surface is held
	body, err := heat.NewBody(in.Shape.solid(volume*1e-6),
		heat.Material{Conductivity: breadK, HeatCapacity: c, Density: breadK / (vaporGain * alpha * c)}, math.Inf(1))
	if err != nil {
		return Arrival{}, err
	}
	tau := body.SlowestTime() / 60
	likely := tau * math.Log(startLead*(t.boiling-in.Start.Celsius())/(t.boiling-t.core))
	a := Arrival{
		Target: quantity.Celsius(t.core),
		in:     in,
		target: t,
		volume: volume,
		alpha:  alpha,
		tau:    tau,
		terms:  body.FirstTerms(),
	}
	a.Time = leftRange(likely*(1-priorHalf), likely, likely*(1+priorHalf))
	a.TimeConstant = leftRange(tau*(1-priorHalf), tau, tau*(1+priorHalf))
	return a, nil
}

// String prints "24m to 56m (80 %), likely 40m, to a core of 94.1 °C".
func (a Arrival) String() string { return a.message().String() }

func (a Arrival) message() working.Message {
	return working.Tell("bake.arrival", "%v, to a core of %.1f", a.Time, a.Target)
}
