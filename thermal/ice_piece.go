package thermal

import (
	"cmp"
	"math"

	"example.org/honestplate"
	"example.org/honestplate/thermal/heat"
	"example.org/honestplate/thermal/internal/check"
)

// An IceShape is the shape of pieces of ice.
type IceShape int

// The shapes of ice.
const (
	IceCube IceShape = iota // Size is the edge
	IceBall                 // Size is the diameter
	IceChip                 // a flake; Size is its thickness, a third of its width
)

var iceShapes = [...]string{"cube", "ball", "chip"}

// String gives the shape's name.
func (s IceShape) String() string { return check.Name("ice shape", int(s), iceShapes[:]) }

// MarshalText writes the shape's name; an unknown one is refused.
func (s IceShape) MarshalText() ([]byte, error) { return check.Named("Shape", int(s), iceShapes[:]) }

// UnmarshalText reads the shape's name.
func (s *IceShape) UnmarshalText(b []byte) error { return check.Read("Shape", b, iceShapes[:], s) }

// An iceBox is a piece of ice: its width and height, how much of the block around it it
// fills, and the share of its surface that lies on a table. What melts evenly takes as long
// as the ball of the same ratio of volume to surface.
type iceBox struct {
	width, height, fill, lies float64
}

func (s IceShape) box(size float64) iceBox {
	switch s {
	case IceBall:
		return iceBox{size, size, math.Pi / 6, 0.02}
	case IceChip:
		return iceBox{3 * size, size, 1, 0.3}
	}
	return iceBox{size, size, 1, 1.0 / 6}
}

func (b iceBox) volume() float64 { return b.fill * b.width * b.width * b.height }

func (b iceBox) grams() float64 { return 1000 * heat.Ice().Density * b.volume() }

// length is six times the volume over the surface: the edge of a cube, the diameter of
// a ball.
func (b iceBox) length() float64 { return 3 * b.width * b.height / (b.width + 2*b.height) }

func (s IceShape) check(size float64) error { return s.checkAs("Shape", "Size", size) }

func (s IceShape) checkAs(shape, field string, size float64) error {
	return cmp.Or(check.One(shape, int(s), iceShapes[:]),
		honestplate.InRange(field, size, 0.001, 0.2, "m", "pieces of ice for glasses and buckets"))
}

// PieceGrams returns the mass of one piece of ice, g, of the given size, m,
// 0.001..0.2: a cube of edge Size, a ball of that diameter, a chip of that thickness
// and three times as long and wide, of clear ice of 917 kg/m3.
func (s IceShape) PieceGrams(size float64) (float64, error) {
	if err := s.check(size); err != nil {
		return 0, err
	}
	return s.box(size).grams(), nil
}
