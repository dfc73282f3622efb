package portion

import "fmt"

// A Pattern is how strips lie on a dish.
type Pattern int

const (
	// AlongCuts lays one strip over every cut, along it, half on either side: the
	// zero value. Pulled apart after baking, every slice carries its halves.
	AlongCuts Pattern = iota
	// Across lays parallel strips across the dish and its cuts, evenly spaced.
	Across
	// Lattice lays two sets of parallel strips at right angles.
	Lattice
	// Rings lays concentric strips, each through the middle of a ring of equal area.
	Rings
)

var patternNames = [...]string{"along the cuts", "across", "lattice", "rings"}

// String names the pattern.
func (p Pattern) String() string {
	if p < 0 || int(p) >= len(patternNames) {
		return fmt.Sprintf("Pattern(%d)", int(p))
	}
	return patternNames[p]
}

// Strips says how an item in strips of one width and thickness is laid, so that its
// mass goes with its length.
type Strips struct {
	Pattern Pattern // how they lie
	// Count is the number of strips: of each direction for a Lattice. AlongCuts takes
	// one a cut and wants 0 here. Up to 1000.
	Count int
	// TurnDegrees turns Across and Lattice anticlockwise as seen from above; at 0
	// Across runs left to right, parallel to the picture. -360..360.
	TurnDegrees float64
	// Hub is the radius about the centre that strips along the cuts of a Round or an
	// Oval keep free, m.
	Hub float64
	// Width is the strip's width, m, for the drawing only. 0 draws 8 mm.
	Width float64
	// Favour moves mass towards the camera: at the near edge of the dish a length
	// of strip carries (1+Favour) of the even share, at the far edge (1-Favour),
	// linear between. 0..0.9; 0 is even. It moves grams, it never adds any.
	Favour float64
	// Weights are further weights of the slices, by slice number: a ratio the maker
	// has signed off, or 0 for a slice that gets nothing. Empty means all 1.
	Weights []float64
}

// A Segment is the part of a strip that one slice carries.
type Segment struct {
	Strip, Slice int // numbers, from 1
	// Length of strip on the slice, m; along a cut, half the length is counted on
	// either side.
	Length float64
	Grams  float64 // whole steps
	From   Point   // where the segment begins
	To     Point   // and ends
	steps  int64
	weight float64
	path   curve
}

// A Strip is one piece to weigh out, cut to length and lay.
type Strip struct {
	Number int     // from 1, in the order of placing: far side first, nearest last
	Length float64 // m
	Grams  float64 // whole steps: the sum of its segments
	middle Point   // where its number is drawn
	paths  []curve
}

// SlicePortion is what one slice carries.
type SlicePortion struct {
	Slice
	Grams float64 // whole steps: the sum of its segments
}

// A Layout is a dish with a declared amount laid out on it. The strips' grams and
// the slices' grams each sum to the declared amount, exactly, in whole steps.
type Layout struct {
	Declaration Declaration    // what was laid
	Dish        Dish           // what it lies on
	Strips      []Strip        // in the order of placing; none for a Spread
	Slices      []SlicePortion // one a slice, in order of number
	Segments    []Segment      // by strip, in order along it
	how         Strips
	plate       plate
}

const (
	maxStrips    = 1000
	maxCells     = 10_000 // of the table of strips and slices
	maxLaidSteps = 1e6    // of the declared mass
	defaultBar   = 0.008  // m, drawn width of a strip
)

// Lay lays the declared mass on the dish in strips and shares it, in whole steps of
// the scale, over the segments that the cuts make of them, in proportion to length
// and the weights asked for: what a strip carries on a slice, each strip and each
// slice are all within a step of their exact shares (ControlledRounding), and the
// total is exact.
//
// Lengths are in closed form, those of ovals by elliptic integrals. Laid over the
// cuts before baking the item is still the declared amount: no more, no less.
//
// Errors: those of Declaration.Validate; an *InputError for a dish or strips that
// make no sense, for a declaration without a mass, and where nothing would carry
// the mass; a *RangeError outside the stated limits.
func (s Strips) Lay(on Dish, d Declaration) (Layout, error) {
	total, p, err := layable(on, d)
	if err != nil {
		return Layout{}, err
	}
	if err := s.check(p); err != nil {
		return Layout{}, err
	}
	l := Layout{Declaration: d, Dish: on, how: s, plate: p}
	l.place(s.paths(p))
	if len(l.Segments) == 0 {
		return Layout{}, &InputError{"number of strips", 0, "", "at least 1; uncut dishes have no cuts to lay along"}
	}
	if cells := len(l.Strips) * len(p.slices); cells > maxCells {
		return Layout{}, &RangeError{"strips times slices", float64(cells), 1, maxCells, "", "limit of this package"}
	}
	if err := l.share(total); err != nil {
		return Layout{}, err
	}
	return l, nil
}

// layable checks what every layout needs: a mass in not too many steps, and a dish.
func layable(on Dish, d Declaration) (total int64, p plate, err error) {
	if total, err = d.Steps(); err != nil {
		return 0, p, err
	}
	if d.Grams == 0 {
		return 0, p, &InputError{"declared mass (Grams)", 0, "g", "above 0 to lay it out"}
	}
	if err := within("declared mass in steps", float64(total), 1, maxLaidSteps, "steps", "limit of this package"); err != nil {
		return 0, p, err
	}
	if on == nil {
		return 0, p, &InputError{"dish", 0, "", "a Round, an Oval or a Rectangle"}
	}
	p, err = on.plate()
	return total, p, err
}

// checkFavour checks how slices are favoured.
func checkFavour(p plate, favour float64, weights []float64) error {
	if err := within("favour", favour, 0, 0.9, "", "limit of this package"); err != nil {
		return err
	}
	if len(weights) != 0 && len(weights) != len(p.slices) {
		return &InputError{"number of slice weights", float64(len(weights)), "", fmt.Sprintf("none, or one for each of the %d slices", len(p.slices))}
	}
	for i, w := range weights {
		if err := within(fmt.Sprintf("weight of slice %d", i+1), w, 0, 1e9, "", "limit of this package"); err != nil {
			return err
		}
	}
	return nil
}

func (s Strips) check(p plate) error {
	if s.Pattern < 0 || int(s.Pattern) >= len(patternNames) {
		return &InputError{"pattern", float64(s.Pattern), "", "one of the patterns of this package"}
	}
	if s.Pattern == AlongCuts {
		if s.Count != 0 {
			return &InputError{"number of strips along cuts", float64(s.Count), "", "0, for there is one a cut"}
		}
	} else if s.Count < 1 || s.Count > maxStrips {
		return &InputError{"number of strips", float64(s.Count), "", fmt.Sprintf("1 to %d", maxStrips)}
	}
	if err := within("turn of the strips", s.TurnDegrees, -360, 360, "degrees", "a full turn"); err != nil {
		return err
	}
	if s.TurnDegrees != 0 && s.Pattern != Across && s.Pattern != Lattice {
		return &InputError{"turn of the strips", s.TurnDegrees, "degrees", "0, for only strips across and lattices turn"}
	}
	if err := notNegative("hub", s.Hub, "m"); err != nil {
		return err
	}
	if s.Hub > 0 && (s.Pattern != AlongCuts || !p.elliptic) {
		return &InputError{"hub", s.Hub, "m", "0, for only cuts from a centre leave one free"}
	}
	a, b := p.inner()
	if s.Hub >= min(a, b) {
		return &InputError{"hub", s.Hub, "m", "less than the laid radius, " + withUnit(min(a, b), "m")}
	}
	if err := within("strip width", s.Width, 0, 2*min(p.a, p.b), "m", "the dish"); err != nil {
		return err
	}
	return checkFavour(p, s.Favour, s.Weights)
}
