package plate

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
	apart := s.Diameter + s.Gap - roundoff
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
	d := &darts{rooms: rooms, r: r}
	// Slices take turns, so that early and late pieces are everywhere.
	for turn := range s.Count {
		for k, n := range quota {
			if int64(turn) < n {
				x := d.farthest(k, min(12+2*len(d.at), 60), -1)
				d.at, d.slice = append(d.at, x), append(d.slice, k)
			}
		}
	}
	for round := 0; ; round++ {
		crowded := d.move(apart, round > 0)
		if crowded == 0 {
			return d.at, nil
		}
		if d.work > scatterWork || round == 60 {
			return nil, s.crowded(s.Count - crowded)
		}
	}
}

// A darts is the pieces thrown so far.
type darts struct {
	rooms [][]Point // by slice: where a piece may lie
	r     *rand.Rand
	at    []Point
	slice []int // of each piece
	work  int   // distances measured
}

// nearest is the distance of x from the nearest piece but one.
func (d *darts) nearest(x Point, but int) float64 {
	d.work += len(d.at)
	least := math.Inf(1)
	for i, y := range d.at {
		if i != but {
			least = min(least, x.minus(y).square())
		}
	}
	return math.Sqrt(least)
}

// farthest returns the spot, of many random ones in slice k, that is farthest from the
// pieces but one.
func (d *darts) farthest(k, tries, but int) Point {
	found, distance := Point{}, -1.0
	for range tries {
		x := d.rooms[k][d.r.IntN(len(d.rooms[k]))]
		if far := d.nearest(x, but); far > distance {
			found, distance = x, far
		}
	}
	return found
}

// move moves every piece to a better spot, or with only those too close only such, and
// returns how many were too close.
func (d *darts) move(apart float64, only bool) (crowded int) {
	for i := range d.at {
		now, tries := d.nearest(d.at[i], i), 400
		if now < apart {
			crowded++
		} else if only {
			continue // even enough: leave it random
		} else {
			tries = 8
		}
		if x := d.farthest(d.slice[i], tries, i); d.nearest(x, i) > now {
			d.at[i] = x
		}
	}
	return crowded
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
