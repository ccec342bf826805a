package ferment

import "math"

// The weights of the robust variant: Huber's to begin with, so that the start does not matter, then Tukey's biweight, which
// gives a bake beyond 4.685 spreads no say at all and keeps 95 % of the efficiency on ordinary bakes. The two means are those of
// w and w·r² over a standard normal r: 1 − 2/c² + 3/c⁴ and 1 − 6/c² + 15/c⁴, the cut at c changing them by less
// than 1e-4. Source: Huber, Robust Statistics, 4.8 and 7.8.
const (
	huber         = 2.0
	biweight      = 4.685
	meanWeight    = 1 - 2/(biweight*biweight) + 3/(biweight*biweight*biweight*biweight)
	meanWeighted2 = 1 - 6/(biweight*biweight) + 15/(biweight*biweight*biweight*biweight)
	huberRounds   = 8
	mostRounds    = 60
	roughly       = 1e-3 // of the spread: Huber's weights have done their part
	settled       = 1e-6
)

// sums are what the regression needs of the bakes: Σ w·h·hᵀ, Σ w·h·y, Σ w·y² and Σ w, with w the weight over the scale.
type sums struct {
	gram            matrix
	moment          vector
	squares, weight float64
}

// gather adds the bakes up, by kneading: the row of a bake is that of amplitude, pace and temperature, and once more
// its pace for the way of kneading. leave < 0 uses every one.
func gather(log []observation, leave int) (s sums) {
	var by [ByMachine + 1]struct {
		gram   [3][3]float64
		moment [3]float64
	}
	for i := range log {
		if i == leave {
			continue
		}
		o := &log[i]
		w := o.weight / o.scale
		h := [3]float64{-o.sens, 1, o.mean - reference}
		k := &by[o.kind]
		for i, hi := range h {
			wh := w * hi
			for j := 0; j <= i; j++ {
				k.gram[i][j] += wh * h[j]
			}
			k.moment[i] += wh * o.y
		}
		s.squares += w * o.y * o.y
		s.weight += o.weight
	}
	for kind := range by {
		k := &by[kind]
		u := unknownKneading + kind
		for i := range 3 {
			for j := 0; j <= i; j++ {
				s.gram[i][j] += k.gram[i][j]
			}
			s.moment[i] += k.moment[i]
		}
		s.gram[u][unknownAmplitude] = k.gram[unknownPace][unknownAmplitude]
		s.gram[u][unknownPace] = k.gram[unknownPace][unknownPace]
		s.gram[u][unknownTemperature] = k.gram[unknownTemperature][unknownPace]
		s.gram[u][u] = k.gram[unknownPace][unknownPace]
		s.moment[u] = k.moment[unknownPace]
	}
	for j := range unknowns {
		for k := range j {
			s.gram[k][j] = s.gram[j][k]
		}
	}
	return s
}

// posterior is the closed form for a given variance between bakes: the mean and covariance of the unknowns.
func (s *sums) posterior(precision *matrix, start *vector, variance float64) (mean vector, cov matrix, ok bool) {
	a, m := *precision, *start
	for j := range unknowns {
		for k := range unknowns {
			a[j][k] += s.gram[j][k] / variance
		}
		m[j] += s.moment[j] / variance
	}
	if cov, ok = a.inverse(); !ok {
		return mean, cov, false
	}
	return cov.times(&m), cov, true
}

// left is what the unknowns leave of the squares: Σ w·((y − hᵀx)² + hᵀPh).
func (s *sums) left(mean *vector, cov *matrix) float64 {
	gx := s.gram.times(mean)
	rss := s.squares - 2*s.moment.dot(mean) + mean.dot(&gx)
	for j := range unknowns {
		for k := range unknowns {
			rss += s.gram[j][k] * cov[j][k]
		}
	}
	return math.Max(0, rss)
}

// weigh gives each bake its weight by how far it is from what the others say, Huber's or, bounded, Tukey's.
func (b *belief) weigh(log []observation, bounded bool) {
	var paces [ByMachine + 1]float64
	for k := range paces {
		paces[k] = b.mean[unknownPace] + b.mean[unknownKneading+k] - reference*b.mean[unknownTemperature]
	}
	for i := range log {
		o := &log[i]
		fit := o.mean*b.mean[unknownTemperature] - o.sens*b.mean[unknownAmplitude] + paces[o.kind]
		r := math.Abs(o.y-fit) / math.Sqrt(o.scale) / b.sigma
		if bounded {
			x := math.Max(0, 1-r*r/(biweight*biweight))
			o.weight = x * x
		} else {
			o.weight = math.Min(1, huber/math.Max(r, 1e-9))
		}
	}
}

// without is what is known before the bakes that are about to be learned, counting those; leave < 0 counts every one.
func (b *belief) without(log []observation, leave int) *belief {
	out := &belief{kind: b.kind, mean: b.mean, sigma: b.sigma, nu: b.nu, bakes: b.bakes, coldest: math.Inf(1)}
	if b.bakes > 0 {
		out.coldest = b.coldest
	}
	for i := range log {
		if i != leave {
			out.bakes++
			out.coldest = math.Min(out.coldest, log[i].mean)
		}
	}
	return out
}

// regress is the normal regression with an unknown σ; leave < 0 uses every observation.
func (b *belief) regress(log []observation, robust bool, leave int) (*belief, bool) {
	precision, ok := b.cov.inverse()
	if !ok {
		return nil, false
	}
	start := precision.times(&b.mean)
	out := b.without(log, leave)
	if robust { // weights are the caller's to keep, so work on a copy
		log = append([]observation(nil), log...)
	}
	s := gather(log, leave)
	bounded := false // the weights are Tukey's
	for round := range mostRounds {
		if out.mean, out.cov, ok = s.posterior(&precision, &start, out.sigma*out.sigma); !ok {
			return nil, false
		}
		rss, n := s.left(&out.mean, &out.cov), float64(out.bakes-b.bakes)
		if bounded {
			rss /= meanWeighted2
			n = s.weight / meanWeight
		}
		out.nu = b.nu + n
		next := math.Sqrt((b.nu*b.sigma*b.sigma + rss) / out.nu)
		change := math.Abs(next - out.sigma)
		out.sigma = next
		if change < settled && (!robust || bounded) {
			break
		}
		if robust {
			bounded = bounded || round >= huberRounds || change < roughly
			out.weigh(log, bounded)
			s = gather(log, leave)
		}
	}
	return out, true
}
