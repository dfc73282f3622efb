package figure

import (
	"bytes"
	"testing"
)

func TestANoteIsDrawnInTheFigure(t *testing.T) {
	p := New("", "x, m", "y, m")
	if err := Line(p, 0, "", XY([]float64{0, 1}, []float64{0, 1})); err != nil {
		t.Fatal(err)
	}
	if err := Note(p, 0.5, 0.2, "beads here"); err != nil {
		t.Fatal(err)
	}
	svg, err := SVG(p, Width, Height)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Contains(svg, []byte("beads here")) {
		t.Error("the figure lacks its note")
	}
}
