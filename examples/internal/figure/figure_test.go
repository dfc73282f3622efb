package figure

import (
	"bytes"
	"testing"

	"github.com/google/go-cmp/cmp"
	"gonum.org/v1/plot/vg/draw"
	"gonum.org/v1/plot/vg/vgsvg"
)

func TestTicksAreRoundNumbers(t *testing.T) {
	labels := func(low, high float64) []string {
		var out []string
		for _, tick := range (Ticks{}).Ticks(low, high) {
			out = append(out, tick.Label)
		}
		return out
	}
	for _, c := range []struct {
		low, high float64
		want      []string
	}{
		{20, 80, []string{"20", "30", "40", "50", "60", "70", "80"}},
		{0, 1, []string{"0", "0.2", "0.4", "0.6", "0.8", "1"}},
		{-5, 25, []string{"-5", "0", "5", "10", "15", "20", "25"}},
	} {
		if diff := cmp.Diff(c.want, labels(c.low, c.high)); diff != "" {
			t.Errorf("ticks of %g..%g (-want +got):\n%s", c.low, c.high, diff)
		}
	}
}

func TestLogTicksLabelDecades(t *testing.T) {
	var got []string
	for _, tick := range (LogTicks{}).Ticks(0.5, 20) {
		if tick.Label != "" {
			got = append(got, tick.Label)
		}
	}
	if diff := cmp.Diff([]string{"0.5", "1", "2", "5", "10", "20"}, got); diff != "" {
		t.Errorf("log ticks (-want +got):\n%s", diff)
	}
}

// A page is stale when its figure's bytes change, so the same plot must give the
// same bytes.
func TestSameBytes(t *testing.T) {
	draw := func() []byte {
		p := New("t", "x, s", "y, mm")
		x, y := []float64{1, 2, 3}, []float64{2, 4, 3}
		if err := Band(p, 0, "band", x, []float64{1, 3, 2}, []float64{3, 5, 4}); err != nil {
			t.Fatal(err)
		}
		if err := Line(p, 0, "line", XY(x, y)); err != nil {
			t.Fatal(err)
		}
		if err := Points(p, 1, "published", XY(x, y)); err != nil {
			t.Fatal(err)
		}
		svg, err := SVG(p, Width, Height)
		if err != nil {
			t.Fatal(err)
		}
		return svg
	}
	first := draw()
	if !bytes.Contains(first, []byte("sans-serif")) {
		t.Error("the drawing names no fallback font")
	}
	for range 3 {
		if !bytes.Equal(first, draw()) {
			t.Fatal("two drawings of one plot differ")
		}
	}
}

// A long label must not push a logarithmic axis away from the edge.
func TestLogAxesFillTheDrawing(t *testing.T) {
	p := New("", "a long label of the horizontal axis, mm", "a long label of the vertical axis, s")
	LogX(p)
	LogY(p)
	p.X.Min, p.X.Max, p.Y.Min, p.Y.Max = 1, 300, 1, 300
	svg, err := SVG(p, Width, Height)
	if err != nil {
		t.Fatal(err)
	}
	if p.X.Label.Text == "" || p.Y.Label.Text == "" {
		t.Error("drawing took a label off the plot")
	}
	for _, label := range []string{p.X.Label.Text, p.Y.Label.Text} {
		if !bytes.Contains(svg, []byte(label)) {
			t.Errorf("the label %q is not drawn", label)
		}
	}
	// Inside the margins of SVG and the labels: the axes reach 94 % of the way.
	p.X.Label.Text, p.Y.Label.Text = "", ""
	c := draw.New(vgsvg.NewWith(vgsvg.UseWH(Width, Height)))
	if d := p.DataCanvas(c); d.Max.Y < 0.94*Height || d.Max.X < 0.94*Width {
		t.Errorf("the plot ends at %v of %v x %v", d.Max, Width, Height)
	}
}
