package bake

import (
	"math"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/heat"
	"example.org/maslin/internal/sources"
)

// OvenPiece asks how long a piece of a mass usually bakes.
type OvenPiece struct {
	Style       Style         `json:"style"`
	Dough       quantity.Mass `json:"dough"`                // of one piece when it goes in
	Shape       Shape         `json:"shape,omitzero"`       // the style's usual one unless set
	Cold        bool          `json:"cold,omitzero"`        // straight from the refrigerator, near 4 °C, not from a room
	Extrapolate bool          `json:"extrapolate,omitzero"` // accept masses outside the data

	// A bake of your own that the time is scaled from: mass and time, or neither.
	KnownDough quantity.Mass    `json:"known_dough,omitzero"`
	KnownTime  quantity.Elapsed `json:"known_time,omitzero"`
	KnownShape Shape            `json:"known_shape,omitzero"` // the same shape unless set
	KnownCold  bool             `json:"known_cold,omitzero"`  // the known bake came from the refrigerator too
}

// BakeTime is how long a piece bakes.
type BakeTime struct {
	answer

	Time         quantity.TimeRange `json:"time"`
	Extrapolated bool               `json:"extrapolated"` // outside the masses the figures come from
	in           OvenPiece
	ref          reference
	minutes      float64
	shape        float64 // factor of the shape
}

// reference is a known bake and the exponent of time on mass.
type reference struct {
	grams, minutes, exponent float64
	from, to                 float64 // masses the figures come from, g
	spread                   float64 // half range as a share
	perGram                  float64 // of a straight table, min per g; 0: none
	source                   working.Source
}

// The exponents 0.39 and 0.57 are the log-log slopes of the published table of guide times; 2/3 is the
// limit for a body that keeps its form (sources.Barham), which practice stays under because large loaves
// are flatter and bake cooler.
const (
	wheatExponent, ryeExponent, greatestExponent = 0.39, 0.57, 2.0 / 3
	// sheetExponent is for breads whose depth is given: more of it is wider, hardly slower (judgment).
	sheetExponent   = 0.1
	coldFactor      = 1.064 // ln(2.5·96/4) ÷ ln(2.5·75/4), see BakingTime
	bakeProbability = 80.0
)

// BakeTime answers: how long does a piece of this mass usually bake?
//
// Formula: t = t_ref + s·(m − m_ref) inside the published table of hearth loaves, otherwise t = t_ref·(m/m_ref)^n;
// from a known bake of your own always the power. A piece from the refrigerator takes 6.4 % longer: ln(A·(T_b −
// T₀)/(T_b − T*)) with A = 2.5, T₀ = 4 instead of 25 °C. Another shape than that of the reference changes the time by
// (τ/τ_ref)^0.58, with τ the conduction time constants of the two shapes at the same volume, and the exponent that
// turns the 2/3 of theory into the 0.39 of practice. Symbols: m dough per piece; n = 0.39 for wheat, 0.57 for rye and
// dense doughs, 0.48 between. Valid range: the masses of the figures (hearth loaves 500 to 1,750 g), or half to twice
// a known bake; outside only with Extrapolate. Accuracy: the range claims 80 % and is a judgment: ±20 to 30 %, or ±12
// % from a known bake. Errors: [quantity.ErrOutOfRange], [quantity.ErrRequired], [quantity.ErrModelRange]. Source:
// guide bake times of a German glossary; exponents fitted to them; upper bound 2/3, Barham.
func (in OvenPiece) BakeTime() (BakeTime, error) {
	var p quantity.Problems
	styles.Check(&p, "Style", in.Style)
	massOK := quantity.Check(&p, "Dough", in.Dough, leastOvenPiece, mostOvenPiece)
	known := !in.KnownDough.IsZero() || in.KnownTime != 0
	if known {
		massOK = quantity.Check(&p, "KnownDough", in.KnownDough, leastOvenPiece, mostOvenPiece) && massOK
		p.Duration("KnownTime", in.KnownTime.Duration(), time.Minute, 24*time.Hour)
	}
	ref := rowOf(in.Style).bake
	if known {
		g := in.KnownDough.Grams()
		ref.grams, ref.minutes, ref.from, ref.to, ref.spread, ref.perGram = g, in.KnownTime.Duration().
			Minutes(),
			g/2, 2*g, 0.12, 0
		ref.source = sources.Practice("a bake of your own")
	}
	shapeOK := shapes.CheckIfGiven(&p, "Shape", in.Shape)
	shapeOK = shapes.CheckIfGiven(&p, "KnownShape", in.KnownShape) && shapeOK
	m := in.Dough.Grams()
	outside := massOK && (m < ref.from || m > ref.to)
	if outside && !in.Extrapolate {
		p.Add(
			"Dough",
			in.Dough,
			quantity.Tell("bake.want_g_to_g_bread_or",
				"%.0f g to %.0f g for %v bread, or outside the data all the same (extrapolate)", ref.from, ref.to, in.Style),
			quantity.ErrModelRange,
		)
	}
	if err := p.ErrFor(in); err != nil {
		return BakeTime{}, err
	}
	was := UsualShape.For(in.Style)
	if known {
		was = in.Shape.For(in.Style)
		if in.KnownShape != UsualShape {
			was = in.KnownShape
		}
	}
	factor := 1.0
	if shapeOK {
		var err error
		if factor, err = shapeFactor(was, in.Shape.For(in.Style)); err != nil {
			return BakeTime{}, err
		}
	}
	t := ref.at(m) * factor
	t *= coldChange(in)
	spread := ref.spread
	if outside {
		spread += 0.1
	}
	return BakeTime{
		Time: quantity.TimeRange{
			Early:       minutes(t * (1 - spread)),
			Likely:      minutes(t),
			Late:        minutes(t * (1 + spread)),
			Probability: quantity.NewPercent(bakeProbability),
		},
		Extrapolated: outside, in: in, ref: ref, minutes: t, shape: factor,
	}, nil
}

// coldChange is the factor for a piece from the refrigerator when the reference came from a room, or the
// other way round. Guide times are for pieces from a room.
func coldChange(in OvenPiece) float64 {
	reference := in.KnownTime != 0 && in.KnownCold
	switch {
	case in.Cold && !reference:
		return coldFactor
	case !in.Cold && reference:
		return 1 / coldFactor
	}
	return 1
}

// shapeExponent turns the conduction limit 2/3 on mass into the 0.39 that practice shows.
const shapeExponent = wheatExponent / greatestExponent

// shapeFactor is how much longer or shorter a loaf of the same volume bakes in another shape.
func shapeFactor(from, to Shape) (float64, error) {
	if from == to {
		return 1, nil
	}
	var tau [2]float64
	for i, s := range [2]Shape{from, to} {
		body, err := heat.NewBody(s.solid(2e-3),
			heat.Material{Conductivity: breadK, Density: 300, HeatCapacity: 2800}, math.Inf(1))
		if err != nil {
			return 0, err
		}
		tau[i] = body.SlowestTime()
	}
	return math.Pow(tau[1]/tau[0], shapeExponent), nil
}

func (r reference) at(m float64) float64 {
	if r.perGram == 0 {
		return r.minutes * math.Pow(m/r.grams, r.exponent)
	}
	inside := math.Min(math.Max(m, r.from), r.to)
	t := r.minutes + r.perGram*(inside-r.grams)
	return t * math.Pow(m/inside, r.exponent)
}

// String prints "38m to 57m (80 %), likely 48m".
func (b BakeTime) String() string { return b.message().String() }

func (b BakeTime) message() working.Message {
	if b.Extrapolated {
		return working.Tell("bake.time_extrapolated", "%v, outside the known masses", b.Time)
	}
	return working.Tell("bake.time", "%v", b.Time)
}
