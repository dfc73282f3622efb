package portion

import (
	"cmp"
	"fmt"
	"math"
	"slices"
)

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
	Pattern Pattern
	// Count is the number of strips: of each direction for a Lattice. AlongCuts takes
	// one a cut and wants 0 here. Up to 1000.
	Count int
	// TurnDegrees turns Across and Lattice anticlockwise as seen from above; at 0
	// Across runs left to right, parallel to the picture.
	TurnDegrees float64
	// Hub is the radius about the centre that strips along cuts keep free, m.
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
	Declaration Declaration
	Dish        Dish
	Strips      []Strip
	Slices      []SlicePortion
	Segments    []Segment // by strip, in order along it
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
	if err := notNegative("hub", s.Hub, "m"); err != nil {
		return err
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

// paths returns the strips, each as the curves it is made of.
func (s Strips) paths(p plate) [][]curve {
	var out [][]curve
	switch s.Pattern {
	case AlongCuts:
		for _, c := range p.cuts {
			if laid, ok := s.along(p, c); ok {
				out = append(out, []curve{laid})
			}
		}
	case Across, Lattice:
		turns := []float64{s.TurnDegrees}
		if s.Pattern == Lattice {
			turns = append(turns, s.TurnDegrees+90)
		}
		for _, turn := range turns {
			sin, cos := math.Sincos(turn * math.Pi / 180)
			along, normal := Point{cos, sin}, Point{-sin, cos}
			spacing := 2 * p.reach(normal) / float64(s.Count)
			for k := range s.Count {
				offset := (float64(k) - float64(s.Count-1)/2) * spacing
				if c, ok := p.clip(normal.times(offset), along); ok {
					out = append(out, []curve{c})
				}
			}
		}
	case Rings:
		a, b := p.inner()
		for k := range s.Count {
			f := math.Sqrt((float64(k) + 0.5) / float64(s.Count))
			out = append(out, ring(p, a*f, b*f))
		}
	}
	return out
}

// along returns the part of a cut inside the free edge and outside the hub.
func (s Strips) along(p plate, cut curve) (curve, bool) {
	d := cut.q.minus(cut.p)
	d = d.times(1 / d.norm())
	c, ok := p.clip(cut.p, d)
	if p.elliptic {
		c.p = d.times(s.Hub) // a cut of the round kind begins at the centre
	}
	return c, ok && c.q.minus(c.p).dot(d) > 0
}

// ring returns the outline of the dish's shape with the given half axes, from the
// side nearest to the camera on.
func ring(p plate, a, b float64) []curve {
	if p.elliptic {
		return []curve{{arc: true, a: a, b: b, t0: -math.Pi / 2, t1: 3 * math.Pi / 2}}
	}
	c := [4]Point{{a, -b}, {a, b}, {-a, b}, {-a, -b}}
	return []curve{{p: c[3], q: c[0]}, {p: c[0], q: c[1]}, {p: c[1], q: c[2]}, {p: c[2], q: c[3]}}
}

// place numbers the strips in the order of placing and cuts them into segments.
func (l *Layout) place(paths [][]curve) {
	for _, path := range paths {
		s := Strip{paths: path}
		moment := Point{}
		for _, c := range path {
			length, rise := c.measure()
			s.Length += length
			moment = moment.plus(Point{c.at(0.5).X * length, rise})
		}
		s.middle = moment.times(1 / s.Length)
		l.Strips = append(l.Strips, s)
	}
	// A hair's breadth of difference must not decide the order.
	hair := 1e-9 * (l.plate.a + l.plate.b)
	slices.SortStableFunc(l.Strips, func(s, t Strip) int {
		return cmp.Or(cmp.Compare(math.Round(t.middle.Y/hair), math.Round(s.middle.Y/hair)),
			cmp.Compare(math.Round(s.middle.X/hair), math.Round(t.middle.X/hair)))
	})
	for i := range l.Strips {
		s := &l.Strips[i]
		s.Number = i + 1
		for _, c := range s.paths {
			l.cut(s.Number, c)
		}
	}
}

// cut splits a strip's curve where it crosses the cuts.
func (l *Layout) cut(number int, c curve) {
	at := []float64{0, 1}
	for _, k := range l.plate.cuts {
		for _, u := range c.crossings(k.p, k.q) {
			if u > 0 && u < 1 {
				at = append(at, u)
			}
		}
	}
	slices.Sort(at)
	// Two cuts that meet on the strip leave a segment of no length between them.
	dust := 1e-9 * (l.plate.a + l.plate.b)
	for i := 1; i < len(at); i++ {
		part := c.part(at[i-1], at[i])
		length, rise := part.measure()
		if length <= dust {
			continue
		}
		middle := part.at(0.5)
		// A strip that runs along a cut lies half on either side of it.
		d := part.at(0.5 + 1e-3).minus(part.at(0.5 - 1e-3))
		side := Point{-d.Y, d.X}.times(dust / d.norm())
		holders := []int{l.plate.sliceAt(middle.plus(side)), l.plate.sliceAt(middle.minus(side))}
		if holders[0] == holders[1] {
			holders = holders[:1]
		}
		share := 1 / float64(len(holders))
		for _, h := range holders {
			weight := (length - l.how.Favour*rise/l.plate.b) * share
			if len(l.how.Weights) > 0 {
				weight *= l.how.Weights[h]
			}
			l.Segments = append(l.Segments, Segment{Strip: number, Slice: h + 1, Length: length * share,
				From: part.at(0), To: part.at(1), weight: weight, path: part})
		}
	}
}

// share spreads the steps over the table of strips and slices, then over the
// segments where a strip has several on one slice, and sums up.
func (l *Layout) share(total int64) error {
	all := 0.0
	for _, s := range l.Segments {
		all += s.weight
	}
	if !(all > 0) {
		return &InputError{"weight of the slices that carry strips", all, "", "above 0"}
	}
	ideal := make([][]float64, len(l.Strips))
	byStrip, bySlice := make([]float64, len(l.Strips)), make([]float64, len(l.plate.slices))
	for i := range ideal {
		ideal[i] = make([]float64, len(bySlice))
	}
	cells := make(map[[2]int][]int)
	for i, s := range l.Segments {
		at := [2]int{s.Strip - 1, s.Slice - 1}
		cells[at] = append(cells[at], i)
		steps := s.weight / all * float64(total)
		ideal[at[0]][at[1]] += steps
		byStrip[at[0]] += steps
		bySlice[at[1]] += steps
	}
	whole, err := controlled(ideal, byStrip, bySlice, float64(total))
	if err != nil {
		return err
	}
	strips, slices := make([]int64, len(byStrip)), make([]int64, len(bySlice))
	for at, own := range cells {
		n := whole[at[0]][at[1]]
		strips[at[0]] += n
		slices[at[1]] += n
		if n == 0 {
			continue
		}
		claims := make([]Claim, len(own))
		for i, k := range own {
			claims[i].Weight = l.Segments[k].weight
		}
		got, err := LargestRemainder.Apportion(n, claims)
		if err != nil {
			return err
		}
		for i, k := range own {
			l.Segments[k].steps = got[i]
			l.Segments[k].Grams = l.grams(got[i])
		}
	}
	for i, n := range strips {
		l.Strips[i].Grams = l.grams(n)
	}
	for k, n := range slices {
		l.Slices = append(l.Slices, SlicePortion{l.plate.slices[k], l.grams(n)})
	}
	return nil
}

func (l *Layout) grams(steps int64) float64 { return l.Declaration.step().times(steps) }
