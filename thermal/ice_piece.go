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

// icePiece is a piece as the ball of the same ratio of volume to surface, in which
// quasi-steady melting takes as long, and how many times that ball's mass it has.
type icePiece struct {
	radius float64 // m
	grams  float64 // of the piece
	table  float64 // share of its surface that lies on a table
}

func (s IceShape) piece(size float64) icePiece {
	p := icePiece{radius: size / 2, grams: 1000 * heat.Ice().Density * size * size * size, table: 1.0 / 6}
	switch s {
	case IceBall:
		p.grams, p.table = p.grams*math.Pi/6, 0.02
	case IceChip: // t x 3t x 3t: volume 9 t3, surface 30 t2
		p = icePiece{0.9 * size, 9 * p.grams, 0.3}
	}
	return p
}

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
	return s.piece(size).grams, nil
}
