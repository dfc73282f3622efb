package plate

import (
	"math"

	"example.org/honestplate/portion/internal/controlled"
)

// mirror returns which slice is the image of each as the camera sees left and right, and
// false if the cuts are not their own image.
func (p plate) mirror() (image []int, ok bool) {
	image = make([]int, len(p.slices))
	for k, s := range p.slices {
		image[k] = p.sliceAt(Point{-s.Centre.X, s.Centre.Y})
		if !p.images(s.Centre, p.slices[image[k]].Centre) {
			return nil, false
		}
	}
	for k, i := range image {
		if image[i] != k {
			return nil, false
		}
	}
	return image, true
}

// images reports whether two places are each other's image.
func (p plate) images(s, t Point) bool {
	return math.Abs(s.X+t.X) <= p.tolerance() && math.Abs(s.Y-t.Y) <= p.tolerance()
}

// mirror returns the images of strips and slices where the whole table of their parts
// is its own image.
func (l *Layout) mirror(parts [][]int64) (m controlled.Mirror, ok bool) {
	if m.Columns, ok = l.plate.mirror(); !ok {
		return m, false
	}
	m.Rows = make([]int, len(l.Strips))
	for i := range m.Rows {
		m.Rows[i] = -1
	}
	for i, s := range l.Strips {
		for k, t := range l.Strips {
			if m.Rows[i] >= 0 {
				break
			}
			if m.Rows[k] < 0 && l.plate.images(s.path.at(0.5), t.path.at(0.5)) && imageOf(parts[i], parts[k], m.Columns) {
				m.Rows[i], m.Rows[k] = k, i
			}
		}
		if m.Rows[i] < 0 {
			return m, false
		}
	}
	return m, true
}

// imageOf reports whether a row is the other's image.
func imageOf(row, other []int64, image []int) bool {
	for j, n := range row {
		if other[image[j]] != n {
			return false
		}
	}
	return true
}

// mirrored returns a sharing by weights that is its own image, where the weights are and
// it is as near as the given one.
func mirrored(steps []int64, total int64, weights []float64, image []int) []int64 {
	parts, all := wholeParts(weights)
	if !imageOf(parts, parts, image) {
		return steps
	}
	row := each(parts, func(n int64) controlled.Amount { return controlled.Quotient(n*total, all) })
	whole := controlled.Whole(total)
	return controlled.Mirrored([][]controlled.Amount{row}, []controlled.Amount{whole}, row, whole,
		controlled.Mirror{Rows: []int{0}, Columns: image}, [][]int64{steps})[0]
}
