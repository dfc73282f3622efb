package portion

import (
	"cmp"
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
)

// An Arrangement is how separate pieces are spread over a dish.
type Arrangement int

const (
	// BlueNoise spreads pieces evenly without a pattern: random, but never close
	// together. It is the zero value.
	BlueNoise Arrangement = iota
	// Ring sets pieces on one ring along the edge.
	Ring
	// Spiral sets pieces on a sunflower's spiral from the centre: the k-th at radius
	// c sqrt(k), each 137.508 degrees further than the last (Vogel 1979, A better way
	// to construct the sunflower head; the angle 180 (3 - sqrt 5) is exact). On an
	// oval or a rectangle the spiral is stretched with it. One piece alone lies in the
	// middle, where that is clear.
	Spiral
)

var arrangementNames = [...]string{"scattered", "in a ring", "in a spiral"}

// String names the arrangement.
func (a Arrangement) String() string {
	if a < 0 || int(a) >= len(arrangementNames) {
		return fmt.Sprintf("Arrangement(%d)", int(a))
	}
	return arrangementNames[a]
}

// A Scatter says how separate pieces are placed: clear of each other, of the free
// edge and of the cuts.
type Scatter struct {
	Item        string // what the pieces are, for the drawing; may be empty
	Arrangement Arrangement
	Count       int     // pieces, 1 to 1000
	Diameter    float64 // of the circle that the largest piece needs, m, above 0
	Gap         float64 // least distance between two pieces' circles, m, 0 or more
	CutGap      float64 // least distance between a piece's circle and a cut, m, 0 or more
	// OverCuts lets pieces lie on cuts; CutGap must then be 0.
	OverCuts bool
	Seed     uint64 // another seed is another BlueNoise; the same seed is the same one
}

// A Spot is where a piece goes.
type Spot struct {
	Number int   // from 1, in the order of placing: far side first, nearest last
	At     Point // the piece's centre
	Slice  int   // number of the slice that holds the centre
	Piece  int   // index into Placing.Pieces; -1 before Assign
}

// A Placing is the spots for the pieces of one dish.
type Placing struct {
	Scatter Scatter
	Dish    Dish
	Spots   []Spot
	Pieces  []Piece // what Assign was given; nil before
	plate   plate
}

// ErrCrowded marks pieces that do not find room, for errors.Is.
var ErrCrowded = errors.New("portion: no room for so many pieces")

// A CrowdedError says that not all pieces found room. errors.Is(err, ErrCrowded)
// holds.
type CrowdedError struct {
	Count int // pieces wanted
	// Placed is how many the arrangement found room for. For BlueNoise and Spiral
	// another way of placing might fit more.
	Placed int
}

func (e *CrowdedError) Error() string {
	return fmt.Sprintf("portion: no room for %d pieces clear of edges, cuts and each other; room was found for %d", e.Count, e.Placed)
}

// Is reports that a CrowdedError is an ErrCrowded.
func (e *CrowdedError) Is(target error) bool { return target == ErrCrowded }

const maxSpots = 1000

// Place finds the spots. A single piece lies in the middle if it is clear there. Every slice is given its share of the pieces in proportion
// to its area (for a Ring to its length of ring; a Spiral takes what its spiral
// meets), by largest remainder, and every spot keeps the distances asked for. The
// same Scatter gives the same spots everywhere.
//
// Errors: an *InputError for a dish or a scatter that makes no sense, a *CrowdedError
// where room was not found.
func (s Scatter) Place(on Dish) (Placing, error) {
	if on == nil {
		return Placing{}, &InputError{"dish", 0, "", "a Round, an Oval or a Rectangle"}
	}
	p, err := on.plate()
	if err != nil {
		return Placing{}, err
	}
	if err := s.check(); err != nil {
		return Placing{}, err
	}
	var at []Point
	switch {
	case s.Count == 1 && s.clear(p, Point{}):
		at = []Point{{}}
	case s.Arrangement == Ring:
		at, err = s.ring(p)
	case s.Arrangement == Spiral:
		at, err = s.spiral(p)
	default:
		at, err = s.scatter(p)
	}
	if err != nil {
		return Placing{}, err
	}
	out := Placing{Scatter: s, Dish: on, plate: p}
	farFirst(at, p)
	for i, x := range at {
		out.Spots = append(out.Spots, Spot{i + 1, x, p.sliceAt(x) + 1, -1})
	}
	return out, nil
}

func (s Scatter) check() error {
	if s.Arrangement < 0 || int(s.Arrangement) >= len(arrangementNames) {
		return &InputError{"arrangement", float64(s.Arrangement), "", "one of the arrangements of this package"}
	}
	if s.Count < 1 || s.Count > maxSpots {
		return &InputError{"number of pieces to place", float64(s.Count), "", fmt.Sprintf("1 to %d", maxSpots)}
	}
	if err := positive("diameter of a piece", s.Diameter, "m"); err != nil {
		return err
	}
	if err := notNegative("gap between pieces", s.Gap, "m"); err != nil {
		return err
	}
	if err := notNegative("gap to the cuts", s.CutGap, "m"); err != nil {
		return err
	}
	if s.OverCuts && s.CutGap != 0 {
		return &InputError{"gap to the cuts", s.CutGap, "m", "0 where pieces may lie over the cuts"}
	}
	return nil
}

// farFirst sorts points into the order of placing.
func farFirst(at []Point, p plate) {
	// A hair's breadth of difference must not decide the order.
	hair := 1e-9 * (p.a + p.b)
	slices.SortStableFunc(at, func(s, t Point) int {
		return cmp.Or(cmp.Compare(math.Round(t.Y/hair), math.Round(s.Y/hair)), cmp.Compare(math.Round(s.X/hair), math.Round(t.X/hair)))
	})
}

// touch is the dust allowed for: a distance short by less counts as kept.
const touch = 1e-12

// clear reports whether a piece at x is clear of the edge and the cuts.
func (s Scatter) clear(p plate, x Point) bool {
	if p.inside(x) < s.Diameter/2-touch {
		return false
	}
	return s.OverCuts || p.fromCuts(x) >= s.Diameter/2+s.CutGap-touch
}

// inside is the distance of x from the outline inside the free edge; negative
// outside it.
func (p plate) inside(x Point) float64 {
	a, b := p.inner()
	x = Point{math.Abs(x.X), math.Abs(x.Y)}
	if !p.elliptic {
		return min(a-x.X, b-x.Y)
	}
	if a == b {
		return a - x.norm()
	}
	d := ellipseNearest(a, b, x).minus(x).norm()
	if math.Hypot(x.X/a, x.Y/b) > 1 {
		return -d
	}
	return d
}

// ellipseNearest returns the point of the ellipse's first quadrant nearest to x in
// it: (a^2 X/(t+a^2), b^2 Y/(t+b^2)) with t the largest root of
// (a X/(t+a^2))^2 + (b Y/(t+b^2))^2 = 1, found by bisection.
func ellipseNearest(a, b float64, x Point) Point {
	low, high := -min(a, b)*min(a, b), math.Hypot(a*x.X, b*x.Y)
	if a < b && x.X == 0 || a > b && x.Y == 0 || a == b {
		// On the long axis the nearest point may leave it: bisection would meet 0/0.
		if n, ok := offAxis(a, b, x); ok {
			return n
		}
	}
	for range 200 {
		t := low + (high-low)/2
		if t == low || t == high {
			break
		}
		if u, v := a*x.X/(t+a*a), b*x.Y/(t+b*b); u*u+v*v > 1 {
			low = t
		} else {
			high = t
		}
	}
	return Point{a * a * x.X / (high + a*a), b * b * x.Y / (high + b*b)}
}

// offAxis is ellipseNearest on the longer axis.
func offAxis(a, b float64, x Point) (Point, bool) {
	if a > b {
		if c := a * x.X / (a*a - b*b); c < 1 {
			return Point{a * c, b * math.Sqrt((1-c)*(1+c))}, true
		}
		return Point{a, 0}, true
	}
	if b > a {
		n, ok := offAxis(b, a, Point{x.Y, x.X})
		return Point{n.Y, n.X}, ok
	}
	return Point{}, false
}

// fromCuts is the distance of x from the nearest cut; infinite without cuts. Only
// the cuts that bound its slice can be nearest: any other lies behind them.
func (p plate) fromCuts(x Point) float64 {
	d := math.Inf(1)
	if len(p.cuts) == 0 {
		return d
	}
	k := p.sliceAt(x)
	if p.elliptic {
		for _, i := range [2]int{k, (k + len(p.cuts) - 1) % len(p.cuts)} {
			d = min(d, p.cuts[i].distance(x))
		}
		return d
	}
	// Cuts between columns come first, then those between rows.
	column, row := k%p.columns, k/p.columns
	for _, side := range [2]int{-1, 0} {
		if i := column + side; i >= 0 && i < p.columns-1 {
			d = min(d, p.cuts[i].distance(x))
		}
		if i := row + side; i >= 0 && i < p.rows-1 {
			d = min(d, p.cuts[p.columns-1+i].distance(x))
		}
	}
	return d
}

// distance is that of x from a straight curve.
func (c curve) distance(x Point) float64 {
	along := c.q.minus(c.p)
	u := max(0, min(x.minus(c.p).dot(along)/along.dot(along), 1))
	return x.minus(c.at(u)).norm()
}

// scatterWork bounds the distances that scatter measures.
const scatterWork = 50_000_000

// scatter throws darts: for each piece, of many random spots the one farthest from
// the pieces already there (Mitchell 1991, Spectrally optimal sampling for
// distribution ray tracing: best candidate; from memory). Every piece is then moved
// once to a better one of some spots in its slice, and what still lies too close to
// the best of many, over and over.
func (s Scatter) scatter(p plate) ([]Point, error) {
	apart := s.Diameter + s.Gap - touch
	// No packing of circles is denser than the hexagonal one (Thue; from memory): the
	// dish with half a gap around it holds no more than its area over a hexagon's.
	a, b := p.inner()
	if float64(s.Count)*apart*apart*math.Sqrt(3)/2 > 4*(a+apart)*(b+apart) {
		return nil, &CrowdedError{s.Count, 0}
	}
	r := rand.New(rand.NewPCG(s.Seed, 0x5ca77e4))
	rooms := s.rooms(p, r)
	quota, err := s.quota(p, rooms)
	if err != nil {
		return nil, err
	}
	var at []Point
	var slice []int
	work := 0
	nearest := func(x Point, but int) float64 {
		work += len(at)
		d := math.Inf(1)
		for i, y := range at {
			if i != but {
				d = min(d, (x.X-y.X)*(x.X-y.X)+(x.Y-y.Y)*(x.Y-y.Y))
			}
		}
		return math.Sqrt(d)
	}
	best := func(k, tries, but int) Point {
		found, distance := Point{}, -1.0
		for range tries {
			x := rooms[k][r.IntN(len(rooms[k]))]
			if d := nearest(x, but); d > distance {
				found, distance = x, d
			}
		}
		return found
	}
	// Slices take turns, so that early and late pieces are everywhere.
	for turn := range s.Count {
		for k, n := range quota {
			if int64(turn) < n {
				at, slice = append(at, best(k, min(12+2*len(at), 60), -1)), append(slice, k)
			}
		}
	}
	for round := 0; ; round++ {
		crowded := 0
		for i := range at {
			d, tries := nearest(at[i], i), 400
			if d >= apart {
				if round > 0 {
					continue // even enough: leave it random
				}
				tries = 8
			} else {
				crowded++
			}
			if x := best(slice[i], tries, i); nearest(x, i) > d {
				at[i] = x
			}
		}
		if crowded == 0 {
			return at, nil
		}
		if work > scatterWork || round == 60 {
			return nil, &CrowdedError{s.Count, s.Count - crowded}
		}
	}
}

// rooms lists, by slice, random spots at which a piece is clear of edges and cuts.
func (s Scatter) rooms(p plate, r *rand.Rand) [][]Point {
	rooms := make([][]Point, len(p.slices))
	a, b := p.inner()
	for range 20_000 + 200*len(p.slices) {
		x := Point{a * (2*r.Float64() - 1), b * (2*r.Float64() - 1)}
		if s.clear(p, x) {
			k := p.sliceAt(x)
			rooms[k] = append(rooms[k], x)
		}
	}
	return rooms
}

// quota shares the pieces over the slices that have room.
func (s Scatter) quota(p plate, rooms [][]Point) ([]int64, error) {
	claims := make([]Claim, len(p.slices))
	some := false
	for k := range claims {
		if len(rooms[k]) > 0 {
			claims[k].Weight = p.slices[k].Area
			some = true
		}
	}
	if !some {
		return nil, &CrowdedError{s.Count, 0}
	}
	return LargestRemainder.Apportion(int64(s.Count), claims)
}
