package figure

import (
	"bytes"
	"fmt"
	"image/color"

	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
	"gonum.org/v1/plot/vg/vgsvg"
)

// A Patch is a plain square of colour with a few words below it.
type Patch struct {
	R, G, B uint8
	Text    string
}

// Swatches is a table of patches: groups one under the other, each with the rows and
// columns named. Patches go by group, then row, then column.
type Swatches struct {
	Groups, Rows, Columns []string
	Patches               []Patch
}

// SVG draws the table on a mid grey ground, on which an eye judges whites.
func (s Swatches) SVG() ([]byte, error) {
	if len(s.Patches) != len(s.Groups)*len(s.Rows)*len(s.Columns) {
		return nil, fmt.Errorf("%d patches for %d x %d x %d", len(s.Patches), len(s.Groups), len(s.Rows), len(s.Columns))
	}
	// Groups stand side by side, so that the drawing is as wide as the others.
	const rowHeight, head, left = 2.2 * vg.Centimeter, 1.3 * vg.Centimeter, 1.6 * vg.Centimeter
	height := head + rowHeight*vg.Length(len(s.Rows)) + vg.Points(10)
	c := vgsvg.NewWith(vgsvg.UseWH(Width, height))
	canvas := draw.New(c)
	canvas.FillPolygon(Paper, rectangle(0, 0, Width, height))
	ground := color.RGBA{0x80, 0x80, 0x80, 0xff}
	style := New("", "", "").Legend.TextStyle
	small := style
	small.Font.Size = 7
	groupWidth := (Width - left - vg.Points(8)) / vg.Length(len(s.Groups))
	cell := groupWidth / vg.Length(len(s.Columns))
	for g, name := range s.Groups {
		x0 := left + groupWidth*vg.Length(g)
		canvas.FillText(style, vg.Point{X: x0 + vg.Points(4), Y: height - vg.Points(16)}, name)
		canvas.FillPolygon(ground, rectangle(x0+vg.Points(2), vg.Points(6), groupWidth-vg.Points(4), height-head-vg.Points(6)))
		for col, name := range s.Columns {
			canvas.FillText(small, vg.Point{X: x0 + cell*vg.Length(col) + vg.Points(6), Y: height - head + vg.Points(4)}, name)
		}
		for row := range s.Rows {
			y := height - head - rowHeight*vg.Length(row+1)
			for col := range s.Columns {
				p := s.Patches[(g*len(s.Rows)+row)*len(s.Columns)+col]
				x := x0 + cell*vg.Length(col)
				canvas.FillPolygon(color.RGBA{p.R, p.G, p.B, 0xff}, rectangle(x+vg.Points(6), y+vg.Points(16), cell-vg.Points(12), rowHeight-vg.Points(22)))
				canvas.FillText(small, vg.Point{X: x + vg.Points(6), Y: y + vg.Points(6)}, p.Text)
			}
		}
	}
	for row, name := range s.Rows {
		canvas.FillText(style, vg.Point{X: vg.Points(8), Y: height - head - rowHeight*(vg.Length(row)+0.5)}, name)
	}
	var b bytes.Buffer
	if _, err := c.WriteTo(&b); err != nil {
		return nil, fmt.Errorf("drawing swatches: %w", err)
	}
	return anyFont(b.Bytes()), nil
}

func rectangle(x, y, w, h vg.Length) []vg.Point {
	return []vg.Point{{X: x, Y: y}, {X: x + w, Y: y}, {X: x + w, Y: y + h}, {X: x, Y: y + h}}
}
