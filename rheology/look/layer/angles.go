package layer

import (
	"math"

	"gonum.org/v1/gonum/integrate/quad"
)

// orders of the expansion of a phase function that the points sum exactly.
const orders = points

// angles are the directions inside a layer of one refractive index.
type angles struct {
	mu      vector         // cosines inside
	weight  vector         // of the integral over the cosine from 0 to 1
	flux    vector         // 2 weight mu: sums radiance to flux, 1 for radiance 1
	legends [orders]vector // Legendre polynomials at mu
	surface surface        // to the air
}

// The points of Gauss on 0..1, for half of the directions each.
var gauss = func() (g struct{ x, w [points / 2]float64 }) {
	quad.Legendre{}.FixedLocations(g.x[:], g.w[:], 0, 1)
	return g
}()

// anglesFor returns the directions for a layer of index n and a beam that arrives at the
// cosine given. The fan that the surface holds back (total reflection) and the fan that
// it lets out have Gauss points of their own, for radiance breaks between them.
func anglesFor(n, glass, cosine float64) *angles {
	a := new(angles)
	edge := 0.5
	if n > 1 {
		edge = math.Sqrt(1 - 1/(n*n))
	}
	half := points / 2
	for i, x := range gauss.x {
		w := gauss.w[i]
		a.mu[i], a.weight[i] = edge*x, edge*w
		a.mu[half+i], a.weight[half+i] = edge+(1-edge)*x, (1-edge)*w
	}
	a.mu[beam] = math.Sqrt(1 - (1-cosine*cosine)/(n*n))
	for i, mu := range a.mu {
		a.flux[i] = 2 * a.weight[i] * mu
		a.legends[0][i], a.legends[1][i] = 1, mu
		for l := 2; l < orders; l++ {
			k := float64(l)
			a.legends[l][i] = ((2*k-1)*mu*a.legends[l-1][i] - (k-1)*a.legends[l-2][i]) / k
		}
	}
	a.surface = newSurface(a, n, glass)
	return a
}

// uniform is radiance 1 in every direction.
func uniform() (v vector) {
	for i := range v {
		v[i] = 1
	}
	return v
}

// total sums radiance to flux, 1 for radiance 1.
func (a *angles) total(v *vector) float64 {
	s := 0.0
	for i := range points {
		s += a.flux[i] * v[i]
	}
	return s
}
