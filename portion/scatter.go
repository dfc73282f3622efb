package portion

import (
	"cmp"
	"errors"
	"fmt"
	"math"
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
	Item        string      // what the pieces are, for the drawing; may be empty
	Arrangement Arrangement // how they are spread
	Count       int         // pieces, 1 to 1000
	Diameter    float64     // of the circle that the largest piece needs, m, above 0
	Gap         float64     // least distance between two pieces' circles, m, 0 or more
	CutGap      float64     // least distance between a piece's circle and a cut, m, 0 or more
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
	Scatter Scatter // as asked for
	Dish    Dish    // what the pieces lie on
	Spots   []Spot  // one a piece, in the order of placing
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

// Error says how many found room.
func (e *CrowdedError) Error() string {
	return fmt.Sprintf("portion: no room for %d pieces clear of edges, cuts and each other; room was found for %d", e.Count, e.Placed)
}

// Is reports that a CrowdedError is an ErrCrowded.
func (e *CrowdedError) Is(target error) bool { return target == ErrCrowded }

const maxSpots = 1000

// Place finds the spots. A single piece lies in the middle if it is clear there.
// Every slice is given its share of the pieces in proportion to its area (for a Ring
// to its length of ring; a Spiral takes what its spiral meets), by largest remainder,
// and every spot keeps the distances asked for. The same Scatter gives the same spots
// everywhere.
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
	if !p.holds(x, s.Diameter/2-touch) {
		return false
	}
	return s.OverCuts || p.fromCuts(x) >= s.Diameter/2+s.CutGap-touch
}
