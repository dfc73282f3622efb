package layer

import (
	"math"

	"gonum.org/v1/gonum/integrate/quad"
)

// A surface is the border of a layer to air, for light from inside along the layer's
// directions: what it sends back. What it lets through is the rest.
type surface struct {
	back vector
	n2   float64 // index of the layer, squared
	edge float64 // cosine inside below which nothing gets out
}

// newSurface works the surface out along the directions. Reflection changes so sharply
// where the fan that gets out begins that few points miss some of it: what they let
// through is scaled so that light from all sides gets through as it should.
func newSurface(a *angles, n, glass float64) surface {
	s := surface{n2: n * n, edge: math.Sqrt(max(0, 1-1/(n*n)))}
	got := 0.0
	for i, mu := range a.mu {
		s.back[i] = throughGlass(mu, n, glass)
		got += a.flux[i] * (1 - s.back[i])
	}
	scale := (1 - outsideReflection(n, glass)) / (n * n) / got
	for i := range points {
		s.back[i] = 1 - scale*(1-s.back[i])
	}
	return s
}

// outsideReflection is what a surface reflects of light that comes from all sides
// outside: the mean over the cosine, by Gauss and Legendre.
func outsideReflection(n, glass float64) float64 {
	if n == 1 && glass == 0 {
		return 0
	}
	return quad.Fixed(func(u float64) float64 {
		return 2 * u * throughGlass(math.Sqrt(1-(1-u*u)/(n*n)), n, glass)
	}, 0, 1, 64, quad.Legendre{}, 1)
}

// throughGlass is the reflectance from inside a layer of index n towards air, by way of a
// clear plate if glass is not 0: light that goes to and fro in the plate is added up.
func throughGlass(mu, n, glass float64) float64 {
	if glass == 0 {
		return fresnel(mu, n, 1)
	}
	r1 := fresnel(mu, n, glass)
	sin := math.Sqrt(max(0, 1-mu*mu)) * n / glass
	if sin >= 1 {
		return 1
	}
	r2 := fresnel(math.Sqrt(1-sin*sin), glass, 1)
	if r1 == 1 || r2 == 1 {
		return 1
	}
	return (r1 + r2 - 2*r1*r2) / (1 - r1*r2)
}

// fresnel is the reflectance of a smooth surface for unpolarised light that comes from
// index n1 at the cosine mu and goes to index n2.
func fresnel(mu, n1, n2 float64) float64 {
	if n1 == n2 {
		return 0
	}
	sin := math.Sqrt(max(0, 1-mu*mu)) * n1 / n2
	if sin >= 1 {
		return 1
	}
	out := math.Sqrt(1 - sin*sin)
	s := (n1*mu - n2*out) / (n1*mu + n2*out)
	p := (n1*out - n2*mu) / (n1*out + n2*mu)
	return (s*s + p*p) / 2
}
