package portion

import (
	"math"
	"math/rand/v2"
)

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
		return nil, s.crowded(0)
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
				d = min(d, x.minus(y).square())
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
			return nil, s.crowded(s.Count - crowded)
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
	areas := make([]float64, len(p.slices))
	for k := range areas {
		if len(rooms[k]) > 0 {
			areas[k] = p.slices[k].Area
		}
	}
	quota, ok := shareByParts(int64(s.Count), areas)
	if !ok {
		return nil, s.crowded(0)
	}
	return quota, nil
}
