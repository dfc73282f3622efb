package portion

import (
	"fmt"
	"os"
	"testing"
)

func TestDraw(t *testing.T) {
	for name, c := range map[string]struct {
		on Dish
		s  Scatter
	}{
		"p_round":  {Round{Diameter: 0.30, Edge: 0.02, Slices: 8}, Scatter{Count: 24, Diameter: 0.022, Gap: 0.002, CutGap: 0.002}},
		"p_ring":   {Oval{Width: 0.36, Depth: 0.22, Edge: 0.01, Slices: 6}, Scatter{Arrangement: Ring, Count: 14, Diameter: 0.022, Gap: 0.002, CutGap: 0.002}},
		"p_spiral": {Round{Diameter: 0.30, Edge: 0.02, Slices: 4}, Scatter{Arrangement: Spiral, Count: 40, Diameter: 0.016, CutGap: 0.002}},
		"p_rect":   {Rectangle{Width: 0.30, Depth: 0.2, Edge: 0.01, Columns: 3, Rows: 2}, Scatter{Count: 12, Diameter: 0.03, Gap: 0.002, CutGap: 0.002}},
		"p_free":   {Round{Diameter: 0.26, Edge: 0.02}, Scatter{Count: 60, Diameter: 0.014, Gap: 0.002}},
	} {
		p, err := c.s.Place(c.on)
		if err != nil {
			t.Error(name, err)
			continue
		}
		ps := weighed(c.s.Count, 3)
		p, err = p.Assign(ps)
		if err != nil {
			t.Fatal(name, err)
		}
		fmt.Println(name, p.Grams(), p.Counts(), p.Nearest())
		os.WriteFile("/tmp/hp/scratch/pb/"+name+".svg", p.SVG(), 0o644)
	}
}
