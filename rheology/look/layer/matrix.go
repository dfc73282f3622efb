package layer

// The directions of one hemisphere: Gauss points in which fluxes are summed, and last the
// direction of the beam, which has no weight and only looks on.
const (
	points = 8
	size   = points + 1
	beam   = points
)

type (
	vector [size]float64
	matrix [size]vector
)

func identity() (m matrix) {
	for i := range m {
		m[i][i] = 1
	}
	return m
}

// times sets m to a b.
func (m *matrix) times(a, b *matrix) {
	for i := range m {
		var row vector
		for k, f := range a[i] {
			if f == 0 {
				continue
			}
			for j := range row {
				row[j] += f * b[k][j]
			}
		}
		m[i] = row
	}
}

// plus returns m + k b.
func (m *matrix) plus(k float64, b *matrix) (out matrix) {
	for i := range out {
		for j := range out[i] {
			out[i][j] = m[i][j] + k*b[i][j]
		}
	}
	return out
}

// on returns m v.
func (m *matrix) on(v *vector) (out vector) {
	for i := range m {
		s := 0.0
		for j, f := range m[i] {
			s += f * v[j]
		}
		out[i] = s
	}
	return out
}

// under sets m to a^-1 b by elimination without pivots; a is used up. The matrices here
// are the unit matrix less one of positive entries whose rows sum to less than 1, or plus
// a small one, so that the diagonal stands.
func (m *matrix) under(a, b *matrix) {
	*m = *b
	for k := range size {
		inverse := 1 / a[k][k]
		for i := k + 1; i < size; i++ {
			f := a[i][k] * inverse
			if f == 0 {
				continue
			}
			for j := k + 1; j < size; j++ {
				a[i][j] -= f * a[k][j]
			}
			for j := range size {
				m[i][j] -= f * m[k][j]
			}
		}
	}
	for k := size - 1; k >= 0; k-- {
		row := m[k]
		for l := k + 1; l < size; l++ {
			f := a[k][l]
			for j := range row {
				row[j] -= f * m[l][j]
			}
		}
		inverse := 1 / a[k][k]
		for j := range row {
			row[j] *= inverse
		}
		m[k] = row
	}
}
