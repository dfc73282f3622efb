package plate

import (
	"math"
	"math/rand/v2"
	"testing"
)

func TestSlicesMakeUpTheDish(t *testing.T) {
	r := rand.New(rand.NewPCG(21, 22))
	for range 1000 {
		_, on, _ := randomLayout(r)
		p, err := on.plate()
		if err != nil {
			t.Fatal(err)
		}
		area, moment := 0.0, Point{}
		for k, s := range p.slices {
			area += s.Area
			moment = moment.plus(s.Centre.times(s.Area))
			if s.Number != k+1 || (len(p.slices) > 1 && p.sliceAt(s.Centre) != k) {
				t.Fatalf("%+v: slice %d holds its centre in %d", on, k, p.sliceAt(s.Centre))
			}
		}
		want := 4 * p.a * p.b
		if p.elliptic {
			want = math.Pi * p.a * p.b
		}
		if math.Abs(area-want) > 1e-12*want || moment.norm() > 1e-12*want {
			t.Fatalf("%+v: slices of %v m2, dish of %v; moment %v", on, area, want, moment)
		}
	}
}

func TestArcsMeasureAsWalked(t *testing.T) {
	r := rand.New(rand.NewPCG(23, 24))
	for k := range 60 {
		c := path{arc: true, a: 0.01 + r.Float64(), b: 0.01 + r.Float64(), t0: 7*r.Float64() - 3}
		if k%10 == 0 {
			c.b = c.a
		}
		c.t1 = c.t0 + 2*math.Pi*r.Float64()
		length, moment := 0.0, 0.0
		const n = 20_000
		for i := range n {
			a, b := c.at(float64(i)/n), c.at(float64(i+1)/n)
			d := b.minus(a).norm()
			length += d
			moment += d * (a.Y + b.Y) / 2
		}
		l, m := c.measure()
		if math.Abs(l-length) > 1e-6*length || math.Abs(m-moment) > 1e-6*length*(c.a+c.b) {
			t.Fatalf("%+v: %v and %v, walked %v and %v", c, l, m, length, moment)
		}
	}
}
