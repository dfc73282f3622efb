package portion

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"
)

func TestSegmentsSectorsAndChordsAgree(t *testing.T) {
	r := rand.New(rand.NewPCG(19, 20))
	for range 10_000 {
		radius, degrees := 0.01+r.Float64(), 360*r.Float64()
		half := degrees / 2 * math.Pi / 180
		distance := radius * math.Cos(half)
		chord, err1 := Chord(radius, distance)
		segment, err2 := SegmentArea(radius, distance)
		sector, err3 := SectorArea(radius, degrees)
		rest, err4 := SegmentArea(radius, -distance)
		if err := errors.Join(err1, err2, err3, err4); err != nil {
			t.Fatal(err)
		}
		// A sector is its segment and the triangle between (less it, past a half turn).
		if d := sector - segment - distance*chord/2; math.Abs(d) > 1e-12*radius*radius {
			t.Fatalf("radius %v, %v degrees: off by %v", radius, degrees, d)
		}
		if d := segment + rest - math.Pi*radius*radius; math.Abs(d) > 1e-12*radius*radius {
			t.Fatalf("radius %v, distance %v: the two parts miss the disc by %v", radius, distance, d)
		}
	}
}

// The mean total length of parallel chords over all offsets is exactly pi R^2 / s.
func TestParallelChordsOverADiscCoverItsArea(t *testing.T) {
	const radius = 1.0
	for _, spacing := range []float64{0.05, 0.1, 0.5, 0.9} {
		mean := 0.0
		const offsets = 20_000
		for i := range offsets {
			for y := -radius - spacing + spacing*(float64(i)+0.5)/offsets; y < radius+spacing; y += spacing {
				c, err := Chord(radius, y)
				if err != nil {
					t.Fatal(err)
				}
				mean += c / offsets
			}
		}
		if want := math.Pi * radius * radius / spacing; math.Abs(mean/want-1) > 1e-6 {
			t.Errorf("spacing %v: %v, want %v", spacing, mean, want)
		}
	}
}

func TestRingsOfEqualAreaAreEqual(t *testing.T) {
	radii, err := EqualRings(0.15, 7)
	if err != nil {
		t.Fatal(err)
	}
	inner := 0.0
	for i, r := range radii {
		if a := math.Pi * (r*r - inner*inner); math.Abs(a-math.Pi*0.15*0.15/7) > 1e-15 {
			t.Errorf("ring %d: %v m2", i+1, a)
		}
		inner = r
	}
}

func TestSlicesMakeUpTheDish(t *testing.T) {
	r := rand.New(rand.NewPCG(21, 22))
	for range 10_000 {
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
	for k := range 300 {
		c := curve{arc: true, a: 0.01 + r.Float64(), b: 0.01 + r.Float64(), t0: 7*r.Float64() - 3}
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

func TestGeometryRefuses(t *testing.T) {
	nan := math.NaN()
	for i, err := range []error{
		second(Chord(0, 1)), second(Chord(1, nan)), second(SegmentArea(-1, 0)), second(SegmentArea(1, math.Inf(1))),
		second(SegmentArea(1e200, 0)), second(SectorArea(nan, 1)), second(SectorArea(1, nan)), second(SectorArea(1e200, 90)),
		second(EqualRings(0, 1)), second(EqualRings(1, 0)), second(EqualRings(1, 100_001)),
	} {
		if !errors.Is(err, ErrInput) {
			t.Errorf("case %d: %v", i, err)
		}
	}
	if err := second(SectorArea(1, 361)); !errors.Is(err, ErrRange) {
		t.Errorf("have %v", err)
	}
	if c, err := Chord(1, -1); c != 0 || err != nil {
		t.Errorf("at the rim: %v, %v", c, err)
	}
}

func FuzzGeometry(f *testing.F) {
	f.Add(1.0, 0.5, 90.0, 3)
	f.Fuzz(func(t *testing.T, radius, distance, degrees float64, n int) {
		for _, v := range []func() (float64, error){
			func() (float64, error) { return Chord(radius, distance) },
			func() (float64, error) { return SegmentArea(radius, distance) },
			func() (float64, error) { return SectorArea(radius, degrees) },
			func() (float64, error) { return Evenness([]Point{{radius, distance}, {degrees, 0}}, radius) },
		} {
			if x, err := v(); err == nil && (math.IsNaN(x) || math.IsInf(x, 0) || x < 0) {
				t.Fatalf("%v", x)
			}
		}
		if rings, err := EqualRings(radius, min(n, 1000)); err == nil && rings[len(rings)-1] != radius {
			t.Fatalf("last ring at %v", rings[len(rings)-1])
		}
	})
}
