package gasbalance

import "math"

// Unknown is what is known of one unknown of a culture, whatever the way of kneading: its mean and standard deviation.
func (t *Taught) Unknown(i int) (mean, sd float64) {
	return t.effects.mean[i], math.Sqrt(math.Max(0, t.effects.cov[i][i]))
}

// Sound reports whether sums can be those of bakes: finite, with squares and counts that are not negative and a
// Gram matrix with no negative diagonal. Sums read from a file are checked by it.
func (s *Sums) Sound() bool {
	finite := func(v float64) bool { return !math.IsNaN(v) && !math.IsInf(v, 0) }
	ok := s.Bakes >= 0 && s.Weight >= 0 && s.Squares >= 0 && finite(s.Weight) && finite(s.Squares) &&
		finite(s.Coldest) && finite(s.Day)
	for k := range s.Gram {
		for i := range s.Gram[k] {
			ok = ok && finite(s.Moment[k][i]) && s.Gram[k][i][i] >= 0
			for j := range s.Gram[k][i] {
				ok = ok && finite(s.Gram[k][i][j])
			}
		}
	}
	return ok
}
