package ferment

import "math"

// inverse of a symmetric positive definite matrix by Cholesky factors; ok is false when it is not.
func (m *matrix) inverse() (out matrix, ok bool) {
	var l matrix
	for i := range unknowns {
		for j := 0; j <= i; j++ {
			s := m[i][j]
			for k := range j {
				s -= l[i][k] * l[j][k]
			}
			if i == j {
				if !(s > 0) {
					return out, false
				}
				l[i][i] = math.Sqrt(s)
			} else {
				l[i][j] = s / l[j][j]
			}
		}
	}
	// Columns of L⁻¹, then L⁻ᵀ·L⁻¹.
	var r matrix
	for j := range unknowns {
		for i := j; i < unknowns; i++ {
			s := 0.0
			if i == j {
				s = 1
			}
			for k := j; k < i; k++ {
				s -= l[i][k] * r[k][j]
			}
			r[i][j] = s / l[i][i]
		}
	}
	for i := range unknowns {
		for j := range unknowns {
			for k := max(i, j); k < unknowns; k++ {
				out[i][j] += r[k][i] * r[k][j]
			}
		}
	}
	return out, true
}

func (m *matrix) times(v *vector) (out vector) {
	for i := range unknowns {
		for j := range unknowns {
			out[i] += m[i][j] * v[j]
		}
	}
	return out
}

func (v *vector) dot(w *vector) (s float64) {
	for i := range unknowns {
		s += v[i] * w[i]
	}
	return s
}
