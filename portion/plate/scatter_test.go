package plate

import (
	"errors"
	"math"
	"math/rand/v2"
	"reflect"
	"strings"
	"testing"

	"example.org/honestplate"
	"example.org/honestplate/portion"
)

func randomScatter(r *rand.Rand) (Scatter, Dish) {
	_, on, _ := randomLayout(r)
	s := Scatter{
		Count:    1 + r.IntN(24),
		Diameter: 0.004 + 0.02*r.Float64(),
		Gap:      0.003 * r.Float64(),
		CutGap:   0.003 * r.Float64(),
		Seed:     r.Uint64(),
	}
	if r.IntN(3) == 0 {
		s.OverCuts, s.CutGap = true, 0
	}
	return s, on
}

// The distances are measured here anew, on the outlines themselves.
func TestSpotsKeepClearOfEdgesCutsAndEachOther(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 12))
	placed := 0
	for k := range 120 {
		s, on := randomScatter(r)
		p, err := s.Place(on)
		if err != nil {
			if !errors.Is(err, honestplate.ErrInfeasible) {
				t.Fatalf("case %d: %v", k, err)
			}
			continue
		}
		placed++
		dish, err := plateOf(on)
		if err != nil {
			t.Fatal(err)
		}
		if len(p.Spots) != s.Count {
			t.Fatalf("case %d: %d spots for %d pieces", k, len(p.Spots), s.Count)
		}
		a, b := dish.inner()
		for i, x := range p.Spots {
			if x.Number != i+1 || x.Piece != -1 || x.Slice != dish.sliceAt(x.At)+1 {
				t.Fatalf("case %d: %+v", k, x)
			}
			if i > 0 && x.At.Y > p.Spots[i-1].At.Y+1e-6 {
				t.Fatalf("case %d: spot %d lies further than the one before it", k, i+1)
			}
			for u := range 240 {
				sin, cos := math.Sincos(2 * math.Pi * float64(u) / 240)
				edge := Point{a * cos, b * sin}
				if !dish.round {
					edge = edge.times(1 / max(math.Abs(cos), math.Abs(sin)))
				}
				if d := edge.minus(x.At).norm(); d < s.Diameter/2-1e-9 {
					t.Fatalf("case %d: %v m from the edge, piece of %v\n%+v %+v", k, d, s.Diameter, s, on)
				}
			}
			if !s.OverCuts {
				for _, c := range dish.cuts {
					for u := range 41 {
						if d := c.at(float64(u) / 40).minus(x.At).norm(); d < s.Diameter/2+s.CutGap-1e-9 {
							t.Fatalf("case %d: %v m from a cut", k, d)
						}
					}
				}
			}
		}
		if n := nearest(p); s.Count > 1 && n < s.Diameter+s.Gap-2e-9 {
			t.Fatalf("case %d: two pieces %v m apart", k, n)
		}
		if k%20 < 3 {
			if again, _ := s.Place(on); !reflect.DeepEqual(again, p) {
				t.Fatalf("case %d: other spots the second time", k)
			}
		}
	}
	if placed < 60 {
		t.Errorf("only %d found room", placed)
	}
}

func TestScatteredPiecesAreEvenButNotALattice(t *testing.T) {
	for seed := range uint64(5) {
		p, err := Scatter{Count: 60, Diameter: 0.014, Seed: seed}.Place(Round{Diameter: 0.26})
		if err != nil {
			t.Fatal(err)
		}
		var at []Point
		for _, s := range p.Spots {
			at = append(at, s.At)
		}
		if e := evenness(at, math.Pi*0.123*0.123); e < 1.45 || e > 2 {
			t.Errorf("seed %d: evenness %.3f", seed, e)
		}
	}
}

// evenness is the index of Clark and Evans (1954, Distance to nearest neighbor as a
// measure of spatial relationships in populations; from memory): the mean distance
// from a point to its nearest neighbour over 0.5/sqrt(n/area), what random points would
// have. 0 is clumped, 1 random, 2.1491 a perfect hexagonal lattice.
func evenness(points []Point, area float64) float64 {
	sum := 0.0
	for i, x := range points {
		least := math.Inf(1)
		for j, y := range points {
			if i != j {
				least = min(least, x.minus(y).norm())
			}
		}
		sum += least
	}
	n := float64(len(points))
	return sum / n * 2 * math.Sqrt(n/area)
}

func TestASinglePieceLiesInTheMiddle(t *testing.T) {
	p, err := Scatter{Count: 1, Diameter: 0.02}.Place(Rectangle{Width: 0.3, Depth: 0.2})
	if err != nil || p.Spots[0].At != (Point{}) {
		t.Errorf("%+v, %v", p.Spots, err)
	}
}

func TestAssignUsesEveryPieceOnce(t *testing.T) {
	r := rand.New(rand.NewPCG(15, 16))
	assigned := 0
	for range 120 {
		s, on := randomScatter(r)
		p, err := s.Place(on)
		if err != nil {
			continue
		}
		var q Placing
		for range 4 { // trays of pieces for the same spots
			assigned++
			pieces := weighed(s.Count, r.Uint64())
			if q, err = p.Assign(pieces); err != nil {
				t.Fatal(err)
			}
			seen := make([]bool, len(pieces))
			total, slices := 0.0, 0.0
			for _, x := range q.Spots {
				if seen[x.Piece] {
					t.Fatalf("piece %d twice", x.Piece)
				}
				seen[x.Piece] = true
				total += pieces[x.Piece].Grams
			}
			for _, g := range q.grams() {
				slices += g
			}
			if math.Abs(total-slices) > 1e-6 {
				t.Fatalf("%v g of pieces, %v g on slices", total, slices)
			}
			// The better-looking lies nearer to the camera within its slice.
			for i, x := range q.Spots {
				for _, y := range q.Spots[:i] {
					if x.Slice == y.Slice && pieces[x.Piece].Score < pieces[y.Piece].Score {
						t.Fatalf("spot %d holds a worse piece than spot %d behind it", x.Number, y.Number)
					}
				}
			}
		}
	}
	if assigned < 240 {
		t.Errorf("only %d trays were assigned", assigned)
	}
	p, err := Scatter{Count: 8, Diameter: 0.02}.Place(Round{Diameter: 0.3, Slices: 8})
	if err != nil {
		t.Fatal(err)
	}
	for _, pieces := range [][]portion.Piece{nil, make([]portion.Piece, 8), weighed(9, 1)} {
		if _, err := p.Assign(pieces); !errors.Is(err, honestplate.ErrInput) {
			t.Errorf("%d pieces: %v", len(pieces), err)
		}
	}
	bad := weighed(8, 1)
	bad[3].Score = math.NaN()
	if _, err := p.Assign(bad); !errors.Is(err, honestplate.ErrInput) || !strings.Contains(err.Error(), "Pieces[3].Score") {
		t.Errorf("have %v", err)
	}
}

func TestPlaceRefusesByName(t *testing.T) {
	good, on := Scatter{Count: 8, Diameter: 0.02}, Round{Diameter: 0.3, Slices: 8}
	for name, change := range map[string]func(*Scatter){
		"Count":                  func(s *Scatter) { s.Count = 0 },
		"Diameter":               func(s *Scatter) { s.Diameter = math.NaN() },
		"Gap":                    func(s *Scatter) { s.Gap = -1 },
		"CutGap":                 func(s *Scatter) { s.CutGap = math.Inf(1) },
		"0 where pieces may lie": func(s *Scatter) { s.CutGap, s.OverCuts = 1, true },
	} {
		s := good
		change(&s)
		if _, err := s.Place(on); !errors.Is(err, honestplate.ErrInput) || !strings.Contains(err.Error(), name) {
			t.Errorf("want an error about %s, have %v", name, err)
		}
	}
	if _, err := good.Place(nil); !errors.Is(err, honestplate.ErrInput) {
		t.Errorf("no dish: %v", err)
	}
	if _, err := good.Place(Round{}); !errors.Is(err, honestplate.ErrInput) {
		t.Errorf("zero dish: %v", err)
	}
	for _, s := range []Scatter{{Count: 1, Diameter: 0.29}, {Count: 1000, Diameter: 0.02}, {Count: 1, Diameter: 0.4}, {Count: 40, Diameter: 0.04}} {
		var e *honestplate.RefusedError
		if _, err := s.Place(on); !errors.As(err, &e) || e.Field != "Count" || !errors.Is(err, honestplate.ErrInfeasible) {
			t.Errorf("%+v: have %v", s, err)
		}
	}
}

func FuzzPlace(f *testing.F) {
	f.Add(0, 8, 0.02, 0.002, 0.002, false, uint64(1), 0.3, 0.2, 0.02, 8, 2, 0.0)
	f.Add(1, 8, 0.02, 0.002, 0.002, false, uint64(1), 0.3, 0.2, 0.02, 8, 2, 10.0)
	f.Add(1, 8, 0.02, 0.002, 0.0, true, uint64(1), 0.3, 0.2, 0.02, 8, 2, 10.0)
	f.Fuzz(func(t *testing.T, shape, count int, diameter, gap, cutGap float64, over bool, seed uint64, width, depth, edge float64, n, rows int, turn float64) {
		var on Dish
		switch shape {
		case 0:
			on = Round{width, edge, n, turn}
		default:
			on = Rectangle{width, depth, edge, n, rows}
		}
		if count > 60 || n > 60 || rows > 8 {
			t.Skip("slow")
		}
		s := Scatter{count, diameter, gap, cutGap, over, seed}
		p, err := s.Place(on)
		if err != nil {
			return
		}
		for _, x := range p.Spots {
			if math.IsNaN(x.At.X+x.At.Y) || x.Slice < 1 || x.Slice > len(p.Slices) {
				t.Fatalf("%+v", x)
			}
		}
		if d := nearest(p); count > 1 && d < diameter-2e-9 {
			t.Fatalf("%v m apart", d)
		}
		if len(p.Spots) != count {
			t.Fatalf("%d of %d pieces on the slices", len(p.Spots), count)
		}
		if _, err := p.Assign(weighed(count, seed)); err != nil {
			t.Fatal(err)
		}
	})
}

// nearest is the least distance between the centres of two pieces.
func nearest(p Placing) float64 {
	least := math.Inf(1)
	for i, x := range p.Spots {
		for _, y := range p.Spots[:i] {
			least = min(least, x.At.minus(y.At).norm())
		}
	}
	return least
}

// weighed draws n pieces of about 18 g (normal, 3 g) weighed to 0.1 g, with whole
// scores 0..100, as off a tray.
func weighed(n int, seed uint64) []portion.Piece {
	r := rand.New(rand.NewPCG(seed, 0))
	out := make([]portion.Piece, n)
	for i := range out {
		out[i] = portion.Piece{
			Grams: float64(max(80, int64(math.Round(180+30*r.NormFloat64())))) / 10,
			Score: float64(r.IntN(101)),
		}
	}
	return out
}
