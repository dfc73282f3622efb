package plate

import (
	"errors"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"example.org/honestplate"
	"example.org/honestplate/portion"
	"example.org/honestplate/portion/internal/decimal"
)

// randomLayout draws a dish, strips and a declaration, all of them valid.
func randomLayout(r *rand.Rand) (Strips, Dish, portion.Declaration) {
	size := func() float64 { return 0.05 + 0.4*r.Float64() }
	edge := 0.02 * r.Float64()
	slices, turn := r.IntN(13), 720*r.Float64()-360
	var on Dish
	switch r.IntN(2) {
	case 0:
		on = Round{size(), edge, slices, turn}
	default:
		on = Rectangle{size(), size(), edge, r.IntN(5), r.IntN(5)}
	}
	s := Strips{Favour: 0.9 * r.Float64() * float64(r.IntN(2))}
	d := portion.Declaration{Item: "cheese", StepGrams: []float64{0.1, 0.5, 1, 0.3}[r.IntN(4)]}
	d.Grams = decimal.Step(d.StepGrams).Times(1 + r.Int64N(2000))
	return s, on, d
}

func TestLayoutsSumToTheDeclaredAmount(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	laid := 0
	for k := range 1000 {
		s, on, d := randomLayout(r)
		l, err := s.Lay(on, d)
		if err != nil {
			if p, _ := on.plate(); len(p.slices) == 1 && errors.Is(err, honestplate.ErrInput) {
				continue // an uncut dish
			}
			t.Fatalf("case %d: %v\n%+v %+v %+v", k, err, s, on, d)
		}
		laid++
		total, _, _ := decimal.Around(d.Grams, decimal.Step(d.StepGrams))
		var segments, bySlice, byStrip int64
		length, lengths := 0.0, 0.0
		for _, g := range l.Segments {
			n, up, ok := decimal.Around(g.Grams, decimal.Step(d.StepGrams))
			if !ok || n != up || n < 0 {
				t.Fatalf("case %d: segment of %v g", k, g.Grams)
			}
			segments += n
			length += g.Length
		}
		for _, x := range l.Slices {
			n, up, ok := decimal.Around(x.Grams, decimal.Step(d.StepGrams))
			if !ok || n != up {
				t.Fatal(err)
			}
			bySlice += n
		}
		for _, x := range l.Strips {
			n, up, ok := decimal.Around(x.Grams, decimal.Step(d.StepGrams))
			if !ok || n != up {
				t.Fatal(err)
			}
			byStrip += n
			lengths += x.Length
		}
		if segments != total || bySlice != total || byStrip != total {
			t.Fatalf("case %d: %d steps declared, %d on segments, %d on slices, %d in strips", k, total, segments, bySlice, byStrip)
		}
		all := 0.0
		for _, g := range l.Segments {
			all += g.weight
		}
		exact := func(keep func(Segment) bool) (sum float64) {
			for _, g := range l.Segments {
				if keep(g) {
					sum += g.weight / all * d.Grams
				}
			}
			return sum
		}
		for _, x := range l.Slices {
			if e := exact(func(g Segment) bool { return g.Slice == x.Number }); math.Abs(x.Grams-e) > d.StepGrams*(1+1e-6) {
				t.Fatalf("case %d: slice %d has %v g, exactly %v", k, x.Number, x.Grams, e)
			}
		}
		for _, x := range l.Strips {
			if e := exact(func(g Segment) bool { return g.Strip == x.Number }); math.Abs(x.Grams-e) > d.StepGrams*(1+1e-6) {
				t.Fatalf("case %d: strip %d has %v g, exactly %v", k, x.Number, x.Grams, e)
			}
		}
		if math.Abs(length-lengths) > 1e-9*lengths {
			t.Fatalf("case %d: segments of %v m, strips of %v m\n%+v %+v", k, length, lengths, s, on)
		}
	}
	if laid < 800 {
		t.Errorf("only %d layouts", laid)
	}
}

// Each slice's grams are its length's worth to within a step; walking along every
// strip in small steps measures the lengths a second time.
func TestSliceSharesFollowTheLengthWalked(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 8))
	for k := range 200 {
		s, on, d := randomLayout(r)
		l, err := s.Lay(on, d)
		if p, _ := on.plate(); len(p.slices) == 1 {
			continue
		}
		if err != nil {
			t.Fatal(err)
		}
		worth, all := make([]float64, len(l.Slices)), 0.0
		for _, strip := range l.Strips {
			const n = 2000
			for i := range n {
				a, b := strip.path.at(float64(i)/n), strip.path.at(float64(i+1)/n)
				w := b.minus(a).norm() * (1 - s.Favour*(a.Y+b.Y)/2/l.plate.b)
				// Half to either side of the cut.
				side := Point{a.Y - b.Y, b.X - a.X}.times(1e-3)
				worth[l.plate.sliceAt(a.toward(b, 0.5).plus(side))] += w / 2
				worth[l.plate.sliceAt(a.toward(b, 0.5).minus(side))] += w / 2
				all += w
			}
		}
		for i, x := range l.Slices {
			exact := d.Grams * worth[i] / all
			if math.Abs(x.Grams-exact) > d.StepGrams+0.004*d.Grams {
				t.Errorf("case %d, slice %d: %v g, walked %v g\n%+v %+v", k, i+1, x.Grams, exact, s, on)
			}
		}
	}
}

// common practice, no source: cheese laid over the cuts of a flatbread before baking
// is still the declared cheese, no more and no less, however it is laid.
func TestCheeseOverTheCutsIsStillTheDeclaredAmount(t *testing.T) {
	d := portion.Declaration{Item: "cheese", Grams: 62, StepGrams: 0.5, Advertised: true}
	for _, favour := range []float64{0, 0.25, 0.9} {
		l, err := Strips{Hub: 0.015, Favour: favour}.Lay(Round{Diameter: 0.3, Edge: 0.02, Slices: 8}, d)
		if err != nil {
			t.Fatal(err)
		}
		strips, slices := 0.0, 0.0
		for _, s := range l.Strips {
			strips += s.Grams
		}
		for _, s := range l.Slices {
			slices += s.Grams
		}
		if strips != 62 || slices != 62 {
			t.Errorf("favour %v: %v g in strips, %v g on slices", favour, strips, slices)
		}
		if len(l.Strips) != 8 || len(l.Slices) != 8 || len(l.Segments) != 16 {
			t.Errorf("%d strips, %d slices, %d segments", len(l.Strips), len(l.Slices), len(l.Segments))
		}
	}
}

// common practice, no source: favouring the camera moves grams, it never adds any.
func TestFavourMovesGramsTowardsTheCamera(t *testing.T) {
	d := portion.Declaration{Item: "cheese", Grams: 200, StepGrams: 0.1}
	near, far := 0.0, math.Inf(1)
	for _, favour := range []float64{0, 0.3, 0.6, 0.9} {
		l, err := Strips{Favour: favour}.Lay(Round{Diameter: 0.3, Slices: 6}, d)
		if err != nil {
			t.Fatal(err)
		}
		// Slice 1 faces the camera, slice 4 is opposite.
		if favour > 0 && !(l.Slices[0].Grams > near && l.Slices[3].Grams < far) {
			t.Errorf("favour %v: slice 1 has %v g after %v, slice 4 %v g after %v", favour, l.Slices[0].Grams, near, l.Slices[3].Grams, far)
		}
		near, far = l.Slices[0].Grams, l.Slices[3].Grams
	}
}

// common practice, no source: a ratio signed off by the maker's technician is a
// constraint, not a wish: 2 to 1 is 2 to 1 and nothing stays nothing.
func TestSliceWeightsAreKept(t *testing.T) {
	d := portion.Declaration{Item: "cheese", Grams: 90, StepGrams: 1}
	l, err := Strips{Weights: []float64{2, 1, 0, 0}}.Lay(Round{Diameter: 0.3, Slices: 4}, d)
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range []float64{60, 30, 0, 0} {
		if l.Slices[i].Grams != want {
			t.Errorf("slice %d: %v g, want %v", i+1, l.Slices[i].Grams, want)
		}
	}
}

func TestStripsCrossAsGeometrySays(t *testing.T) {
	// Two cuts away from the camera and one across, on a tray with a free edge of 10 mm:
	// strips of 180, 280 and 180 mm from left to right, cut where the cuts cross them.
	l, err := Strips{}.Lay(Rectangle{Width: 0.3, Depth: 0.2, Edge: 0.01, Columns: 3, Rows: 2}, portion.Declaration{Grams: 640, StepGrams: 1})
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range []float64{0.18, 0.28, 0.18} {
		if math.Abs(l.Strips[i].Length-want) > 1e-12 {
			t.Errorf("strip %d: %v m, want %v", i+1, l.Strips[i].Length, want)
		}
	}
	// Half of 90, 100 and 90 mm on either side of the cut across; half of 90 mm on either
	// side of the others.
	want := map[[2]int]float64{{2, 1}: 45, {2, 2}: 50, {2, 3}: 45, {2, 4}: 45, {2, 5}: 50, {2, 6}: 45,
		{1, 1}: 45, {1, 2}: 45, {1, 4}: 45, {1, 5}: 45, {3, 2}: 45, {3, 3}: 45, {3, 5}: 45, {3, 6}: 45}
	if len(l.Segments) != len(want) {
		t.Errorf("%d segments, want %d", len(l.Segments), len(want))
	}
	for _, g := range l.Segments {
		mm := want[[2]int{g.Strip, g.Slice}]
		if math.Abs(1000*g.Length-mm) > 1e-9 || g.Grams != mm {
			t.Errorf("strip %d on slice %d: %v m, %v g, want %v mm and as many grams", g.Strip, g.Slice, g.Length, g.Grams, mm)
		}
	}
	// A cut that lies in the free edge gets no strip.
	l, err = Strips{}.Lay(Rectangle{Width: 0.3, Depth: 0.2, Edge: 0.06, Columns: 2, Rows: 4}, portion.Declaration{Grams: 100, StepGrams: 1})
	if err != nil {
		t.Fatal(err)
	}
	if len(l.Strips) != 2 || math.Abs(l.Strips[0].Length-0.08) > 1e-12 || math.Abs(l.Strips[1].Length-0.18) > 1e-12 {
		t.Errorf("%+v", l.Strips)
	}
}

func TestLayRefusesByName(t *testing.T) {
	good, round := portion.Declaration{Grams: 62, StepGrams: 0.5}, Round{Diameter: 0.3, Slices: 8}
	nan, inf := math.NaN(), math.Inf(1)
	for _, c := range []struct {
		name string
		s    Strips
		on   Dish
		d    portion.Declaration
	}{
		{"Declaration.Grams", Strips{}, round, portion.Declaration{Count: 3}},
		{"Grams", Strips{}, round, portion.Declaration{Grams: 62.2, StepGrams: 0.5}},
		{"Dish", Strips{}, nil, good},
		{"Dish.Diameter", Strips{}, Round{Diameter: nan, Slices: 2}, good},
		{"Dish.Diameter", Strips{}, Round{Diameter: 11, Slices: 2}, good},
		{"Dish.Width", Strips{}, Rectangle{Width: 0, Depth: 1, Columns: 2}, good},
		{"Dish.Depth", Strips{}, Rectangle{Width: 1, Depth: inf}, good},
		{"Dish.TurnDegrees", Strips{}, Round{Diameter: 1, Slices: 2, TurnDegrees: nan}, good},
		{"Dish.Edge", Strips{}, Round{Diameter: 0.3, Edge: 0.15}, good},
		{"Dish.Edge", Strips{}, Round{Diameter: 0.3, Edge: -1}, good},
		{"Dish.Slices", Strips{}, Round{Diameter: 0.3, Slices: 1001}, good},
		{"Dish.Columns", Strips{}, Rectangle{Width: 1, Depth: 1, Columns: -1}, good},
		{"Dish.Slices", Strips{}, Rectangle{Width: 1, Depth: 1, Columns: 40, Rows: 40}, good},
		{"uncut", Strips{}, Round{Diameter: 0.3}, good},
		{"uncut", Strips{}, Rectangle{Width: 0.3, Depth: 0.2, Edge: 0.085, Rows: 5}, good},
		{"Dish.Slices", Strips{}, Round{Diameter: 0.3, Slices: 101}, good},
		{"Favour", Strips{Favour: 1}, round, good},
		{"Hub", Strips{Hub: -1}, round, good},
		{"Hub", Strips{Hub: 0.01}, Rectangle{Width: 1, Depth: 1, Columns: 2}, good},
		{"Hub", Strips{Hub: 0.15}, round, good},
		{"Width", Strips{Width: 1}, round, good},
		{"Width", Strips{Width: nan}, round, good},
		{"Weights", Strips{Weights: []float64{1}}, round, good},
		{"Weights[1]", Strips{Weights: []float64{1, nan}}, Round{Diameter: 0.3, Slices: 2}, good},
		{"Weights", Strips{Weights: []float64{0, 0}}, Round{Diameter: 0.3, Slices: 2}, good},
	} {
		_, err := c.s.Lay(c.on, c.d)
		if err == nil || !strings.Contains(err.Error(), c.name) || !(errors.Is(err, honestplate.ErrInput) || errors.Is(err, honestplate.ErrRange)) {
			t.Errorf("want an error about %s, have %v", c.name, err)
		}
	}
}

func TestSpreadFollowsTheArea(t *testing.T) {
	r := rand.New(rand.NewPCG(35, 36))
	for k := range 1000 {
		_, on, d := randomLayout(r)
		s := Spread{Favour: 0.9 * r.Float64() * float64(r.IntN(2))}
		l, err := s.Lay(on, d)
		if err != nil {
			t.Fatalf("case %d: %v", k, err)
		}
		total, _, _ := decimal.Around(d.Grams, decimal.Step(d.StepGrams))
		sum, area, weight := int64(0), 0.0, 0.0
		for i, x := range l.Slices {
			n, up, ok := decimal.Around(x.Grams, decimal.Step(d.StepGrams))
			if !ok || n != up {
				t.Fatal(err)
			}
			sum += n
			a, c := l.plate.covered(i)
			area += a
			weight += a * (1 - s.Favour*c.Y/l.plate.b)
		}
		if sum != total {
			t.Fatalf("case %d: %d steps declared, %d spread", k, total, sum)
		}
		a, b := l.plate.inner()
		want := 4 * a * b
		if l.plate.round {
			want = math.Pi * a * a
		}
		// Favouring moves grams, it adds none: the weights sum to the area.
		if math.Abs(area-want) > 1e-12*want || math.Abs(weight-want) > 1e-12*want {
			t.Fatalf("case %d: %v m2 covered, weight %v, want %v", k, area, weight, want)
		}
	}
	l, err := Spread{Weights: []float64{1, 3}}.Lay(Round{Diameter: 0.3, Slices: 2}, portion.Declaration{Grams: 100})
	if err != nil || l.Slices[0].Grams != 25 || l.Slices[1].Grams != 75 {
		t.Errorf("%+v, %v", l.Slices, err)
	}
	for _, s := range []Spread{{Favour: 1}, {Weights: []float64{0, 0}}, {Weights: []float64{1}}} {
		if _, err := s.Lay(Round{Diameter: 0.3, Slices: 2}, portion.Declaration{Grams: 100}); err == nil {
			t.Errorf("%+v: no error", s)
		}
	}
	if _, err := (Spread{}).Lay(nil, portion.Declaration{Grams: 100}); !errors.Is(err, honestplate.ErrInput) {
		t.Errorf("no dish: %v", err)
	}
	if _, err := (Spread{}).Lay(Round{Diameter: 0.3}, portion.Declaration{Grams: 1e7}); !errors.Is(err, honestplate.ErrRange) {
		t.Errorf("too many steps: %v", err)
	}
}

func FuzzLay(f *testing.F) {
	f.Add(0, 0.3, 0.2, 0.02, 8, 2, 0.0, 0.0, 0.0, 0.0, 62.0, 0.5, 1.0)
	f.Add(1, 0.3, 0.2, 0.02, 8, 2, 10.0, 0.0, 0.02, 0.5, 62.0, 0.5, 1.0)
	f.Fuzz(func(t *testing.T, shape int, width, depth, edge float64, n, rows int, turn, hub, bar, favour, grams, step, weight float64) {
		var on Dish
		switch shape {
		case 0:
			on = Round{width, edge, n, turn}
		default:
			on = Rectangle{width, depth, edge, n, rows}
		}
		s := Strips{Hub: hub, Width: bar, Favour: favour}
		if n > 0 && n < 50 {
			s.Weights = make([]float64, n)
			for i := range s.Weights {
				s.Weights[i] = weight
			}
		}
		d := portion.Declaration{Grams: grams, StepGrams: step}
		if l, err := (Spread{Favour: favour, Weights: s.Weights}).Lay(on, d); err == nil && len(l.Slices) == 0 {
			t.Fatal("spread over nothing")
		}
		l, err := s.Lay(on, d)
		if err != nil {
			return
		}
		if sold, err := l.SliceSold(weight); err == nil && math.IsNaN(sold.Over+sold.MostGrams+sold.LeastGrams) {
			t.Fatalf("%+v", sold)
		}
		total, _, _ := decimal.Around(d.Grams, decimal.Step(d.StepGrams))
		sum := int64(0)
		for _, g := range l.Segments {
			n, up, ok := decimal.Around(g.Grams, decimal.Step(d.StepGrams))
			if !ok || n != up {
				t.Fatalf("a segment of %v g", g.Grams)
			}
			sum += n
			if math.IsNaN(g.Length + g.Grams + g.From.X + g.From.Y + g.To.X + g.To.Y) {
				t.Fatal("NaN in a segment")
			}
		}
		if sum != total {
			t.Fatalf("%d steps declared, %d laid", total, sum)
		}
	})
}

// A strip along a cut is one piece on either side of it: the cut itself makes no
// crossing, however it is turned (every Hub, all rounds of the review's list).
func TestStripsAlongCutsAreNotCutByThem(t *testing.T) {
	for _, hub := range []float64{0, 0.015, 0.02} {
		for slices := 3; slices <= 24; slices++ {
			for _, diameter := range []float64{0.2, 0.22, 0.24, 0.25, 0.26, 0.28, 0.3, 0.32, 0.35} {
				for _, turn := range []float64{0, 7.3, 180.0 / float64(slices)} {
					l, err := Strips{Hub: hub}.Lay(Round{Diameter: diameter, Edge: 0.015, Slices: slices, TurnDegrees: turn}, portion.Declaration{Grams: 62, StepGrams: 0.5})
					if err != nil {
						t.Fatal(err)
					}
					if len(l.Strips) != slices || len(l.Segments) != 2*slices {
						t.Fatalf("hub %v, %v m, turned %v: %d strips and %d segments over %d cuts", hub, diameter, turn, len(l.Strips), len(l.Segments), slices)
					}
				}
			}
		}
	}
}

// Equal segments are equal to the rounding, whatever the last bits of their lengths:
// noise far above that of a fused multiply-add changes nothing.
func TestNoiseInTheLastBitsMovesNoGrams(t *testing.T) {
	r := rand.New(rand.NewPCG(71, 72))
	for k := range 500 {
		values := make([]float64, 2+r.IntN(24))
		noisy := make([]float64, len(values))
		for i := range values {
			values[i] = float64(1+r.IntN(4)) / float64(1+r.IntN(3)) * 0.0123
			noisy[i] = values[i] * (1 + 1e-14*(r.Float64()-0.5))
		}
		a, _ := wholeParts(values)
		b, _ := wholeParts(noisy)
		if !slices.Equal(a, b) {
			t.Fatalf("case %d: %v became %v", k, a, b)
		}
	}
}
