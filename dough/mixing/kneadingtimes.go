package mixing

import (
	"strconv"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"
)

// A time is from and to in seconds with where it is from.
type kneadFor struct {
	step     KneadingStep
	speed    int
	from, to float64 // minutes
	source   working.Source
}

// stages are the usual times of a dough in a mixer.
func (in Mix) stages() []KneadingStage {
	times, scale := in.byHand(), 0
	switch in.Mixer {
	case Planetary:
		if in.household() {
			times, scale = in.inHousehold(), 10
		} else {
			times, scale = in.inPlanetary(), 2
		}
	case Spiral:
		times, scale = in.inSpiral(), 2
	case Fork:
		times, scale = in.inFork(), 2
	case Processor:
		times = in.inProcessor()
	}
	if in.Kind == GlutenFreeDough {
		times = in.withoutGluten()
	}
	var out []KneadingStage
	for _, t := range times {
		s := KneadingStage{
			Step: t.step, Mixer: in.Mixer, Speed: t.speed, Scale: scale, From: minutesElapsed(t.from),
			To: minutesElapsed(t.to), Source: t.source,
		}
		if scale == 0 {
			s.Speed = 0
		}
		if scale == 2 && in.stiffForSecond() {
			s.Speed = 1
		}
		out = append(out, s)
	}
	return out
}

func minutesElapsed(m float64) quantity.Elapsed { return quantity.Elapsed(m * float64(time.Minute)) }

func symbolNumber(symbol string, i int) string { return symbol + "_" + strconv.Itoa(i+1) }

// byHand: from memory and common practice; rye is mixed, not kneaded (Warenkunde Brot p. 120).
func (in Mix) byHand() []kneadFor {
	m := sources.KneadingMemory
	switch in.Kind {
	case RyeDough:
		return []kneadFor{{MixTogether, 0, 4, 6, sources.WarenkundeKneading}}
	case MixedRyeDough:
		return []kneadFor{{Knead, 0, 5, 8, m}}
	case WholeGrainDough:
		return []kneadFor{{Knead, 0, 6, 10, m}}
	case SpeltDough:
		return []kneadFor{{Knead, 0, 4, 6, m}}
	}
	if in.rich() {
		return []kneadFor{{Knead, 0, 8, 10, m}, {KneadFatIn, 0, 8, 12, m}}
	}
	return []kneadFor{{Knead, 0, 8, 12, m}}
}

// withoutGluten: mixed until even, with the flat beater where there is one; from memory.
func (in Mix) withoutGluten() []kneadFor {
	m := sources.KneadingMemory
	switch {
	case in.Mixer == Processor:
		return []kneadFor{{MixTogether, 0, 0.5, 1, m}}
	case in.Mixer == Planetary && in.household():
		return []kneadFor{{MixTogether, 2, 3, 5, m}}
	case in.Mixer == Spiral || in.Mixer == Fork:
		return []kneadFor{{MixTogether, 1, 5, 8, m}}
	}
	return []kneadFor{{MixTogether, 1, 3, 5, m}}
}

// inHousehold: a scale of ten. Plain bread by La Muehla; stiff dough by makers' booklets; the rest from memory.
func (in Mix) inHousehold() []kneadFor {
	m := sources.KneadingMemory
	switch in.Kind {
	case RyeDough:
		return []kneadFor{{MixTogether, 1, 4, 6, m}}
	case MixedRyeDough:
		return []kneadFor{{MixTogether, 1, 3, 4, m}, {Knead, 1, 2, 3, sources.ASBERye}}
	case WholeGrainDough:
		return []kneadFor{{MixTogether, 1, 2, 3, m}, {Knead, 2, 4, 5, m}}
	case SpeltDough:
		return []kneadFor{{MixTogether, 1, 3, 3, m}, {Knead, 2, 2, 3, m}}
	}
	switch {
	case in.rich():
		return []kneadFor{{MixTogether, 1, 2, 3, m}, {Knead, 2, 4, 6, m}, {KneadFatIn, 2, 8, 12, m}}
	case in.hydration().Points() <= stiffDough && in.Kind != EnrichedDough:
		return []kneadFor{{MixTogether, 1, 1, 2, sources.HouseholdManuals}, {Knead, 2, 2, 3, sources.HouseholdManuals}}
	case in.hydration().Points() > wetDough:
		return []kneadFor{{MixTogether, 1, 2, 4, sources.LaMuehla}, {Knead, 2, 8, 12, m}}
	}
	return []kneadFor{{MixTogether, 1, 2, 4, sources.LaMuehla}, {Knead, 2, 6, 8, sources.LaMuehla}}
}

// inPlanetary: machines of the trade.
func (in Mix) inPlanetary() []kneadFor {
	m := sources.KneadingMemory
	switch in.Kind {
	case RyeDough:
		return []kneadFor{{MixTogether, 1, 5, 8, sources.WarenkundeKneading}}
	case MixedRyeDough:
		return []kneadFor{{MixTogether, 1, 2, 4, sources.ASBERye}, {Knead, 2, 2, 3, sources.ASBERye}}
	case WholeGrainDough:
		return []kneadFor{{MixTogether, 1, 4, 6, m}, {Knead, 2, 4, 6, m}}
	case SpeltDough:
		return []kneadFor{{MixTogether, 1, 4, 4, sources.IREKSMixing}, {Knead, 2, 2, 3, sources.IREKSMixing}}
	}
	if in.rich() {
		return []kneadFor{{MixTogether, 1, 3, 4, sources.IREKSSweet}, {Knead, 2, 6, 8, sources.IREKSSweet},
			{KneadFatIn, 1, 4, 6, m}}
	}
	if in.Kind == PizzaDough && in.hydration().Points() <= 45 {
		return []kneadFor{{MixTogether, 1, 3, 5, sources.PlanetaryManuals}}
	}
	return []kneadFor{{MixTogether, 1, 3, 5, m}, {Knead, 2, 6, 10, m}}
}

// inSpiral: wheat by King Arthur (bread) and IREKS (rolls), spelt and sweet doughs by IREKS.
func (in Mix) inSpiral() []kneadFor {
	m := sources.KneadingMemory
	switch in.Kind {
	case RyeDough:
		return []kneadFor{{MixTogether, 1, 6, 10, m}}
	case MixedRyeDough:
		return []kneadFor{{MixTogether, 1, 5, 5, sources.KingArthurMixing}, {Knead, 2, 2, 3, sources.KingArthurMixing}}
	case WholeGrainDough:
		return []kneadFor{{MixTogether, 1, 4, 6, m}, {Knead, 2, 3, 5, m}}
	case SpeltDough:
		return []kneadFor{{MixTogether, 1, 4, 4, sources.IREKSMixing}, {Knead, 2, 2, 3, sources.IREKSMixing}}
	case EnrichedDough:
		if in.rich() {
			return []kneadFor{
				{MixTogether, 1, 4, 4, sources.IREKSSweet}, {Knead, 2, 6, 8, sources.IREKSSweet}, {KneadFatIn, 1, 3, 5,
					m},
			}
		}
		return []kneadFor{{MixTogether, 1, 3, 4, sources.IREKSSweet}, {Knead, 2, 6, 8, sources.IREKSSweet}}
	}
	if in.rich() {
		return []kneadFor{{MixTogether, 1, 3, 4, sources.IREKSSweet}, {Knead, 2, 6, 8, sources.IREKSSweet},
			{KneadFatIn, 1, 3, 5, m}}
	}
	if in.hydration().Points() > wetDough {
		return []kneadFor{{MixTogether, 1, 3, 5, m}, {Knead, 2, 5, 8, m}}
	}
	return []kneadFor{{MixTogether, 1, 3, 3, sources.KingArthurMixing}, {Knead, 2, 3, 5, sources.KingArthurMixing}}
}

// inFork: slow machines, from memory.
func (in Mix) inFork() []kneadFor {
	m := sources.KneadingMemory
	switch in.Kind {
	case RyeDough:
		return []kneadFor{{MixTogether, 1, 10, 15, m}}
	case MixedRyeDough:
		return []kneadFor{{MixTogether, 1, 8, 10, m}, {Knead, 2, 2, 4, m}}
	case WholeGrainDough:
		return []kneadFor{{MixTogether, 1, 8, 10, m}, {Knead, 2, 4, 6, m}}
	case SpeltDough:
		return []kneadFor{{MixTogether, 1, 8, 10, m}, {Knead, 2, 2, 3, m}}
	}
	if in.rich() {
		return []kneadFor{{MixTogether, 1, 8, 10, m}, {Knead, 2, 6, 8, m}, {KneadFatIn, 1, 6, 8, m}}
	}
	return []kneadFor{{MixTogether, 1, 8, 10, m}, {Knead, 2, 8, 12, m}}
}

// inProcessor: half a minute is usually enough, up to a minute and a half as long as the blade does not slow down.
// Source: a maker's booklet; rye and rich doughs from memory.
func (in Mix) inProcessor() []kneadFor {
	m := sources.KneadingMemory
	switch {
	case in.Kind == RyeDough || in.Kind == MixedRyeDough:
		return []kneadFor{{MixTogether, 0, 1.0 / 3, 2.0 / 3, m}}
	case in.rich():
		return []kneadFor{{Knead, 0, 0.5, 1, sources.HouseholdManuals}, {KneadFatIn, 0, 1.0 / 3, 2.0 / 3, m}}
	}
	return []kneadFor{{Knead, 0, 0.5, 1.5, sources.HouseholdManuals}}
}
