package main

import (
	"fmt"
	"math"

	"example.org/honestplate"
	"example.org/honestplate/examples/shoot"
)

// The middle of a view from above, and how far it reaches.
const aboveX, aboveY, aboveR = 165.0, 140.0, 104.0

// cameraMark says where the camera stands: at the bottom of a view from above.
func cameraMark(c *canvas) {
	y := aboveY + aboveR + 12
	c.path(fmt.Sprintf("M%s %s L%s %s L%s %s Z", f(aboveX), f(y), f(aboveX-7), f(y+10), f(aboveX+7), f(y+10)), "mark")
	c.text(aboveX+12, y+10, "start", "small", "camera")
}

// landing draws from above where a stream lands: on the cross, in the middle of what
// catches it. What spreads or coils has its band: the inner ring is the least, the outer
// the most, the edge between them the likely one.
func landing(s *stream, into *shoot.PlannedThing) *canvas {
	c := &canvas{w: 330, h: panelHeight}
	c.text(0, 14, "start", "head", "From above: "+cutTo(s.name, 200, 13))
	line, note := "lands on the cross", ""
	across := 0.0
	switch {
	case into != nil:
		across = into.Size.WidthMM
		c.circle(aboveX, aboveY, aboveR, "likely")
		note = fmt.Sprintf("the middle of %s, %.0f mm wide", into.Name, across)
	case s.pour != nil && s.pour.PuddleMM.High > 0:
		q := s.pour
		across = q.PuddleMM.High
		rings(c, q.PuddleMM)
		line += fmt.Sprintf("; %s mm wide %s s later", two(q.PuddleMM.Likely), number(q.PuddleAfter.After.Seconds()))
		note = fmt.Sprintf("inner ring at least %s mm, outer at most %s mm", two(q.PuddleMM.Low), two(q.PuddleMM.High))
	case s.coil != nil && s.coil.Coils:
		q := s.coil.RingMM
		across = q.High
		rings(c, q)
		line = fmt.Sprintf("on the cross, in rings about %s mm wide", two(q.Likely))
		note = fmt.Sprintf("much enlarged; at least %s mm, at most %s mm", two(q.Low), two(q.High))
	}
	if across > 0 {
		c.circle(aboveX, aboveY, max(s.across/2*aboveR*2/across, 2), "stream")
	}
	c.line(aboveX-16, aboveY, aboveX+16, aboveY, "dim")
	c.line(aboveX, aboveY-16, aboveX, aboveY+16, "dim")
	cameraMark(c)
	c.middle(aboveX, 284, 328, 13, "", line)
	c.middle(aboveX, 300, 328, 11, "small", note)
	return c
}

// rings draws a width with its band.
func rings(c *canvas, e honestplate.Estimate) {
	scale := aboveR / e.High
	c.circle(aboveX, aboveY, aboveR, "maybe")
	c.circle(aboveX, aboveY, e.Likely*scale, "likely")
	c.circle(aboveX, aboveY, e.Low*scale, "maybe")
}

// strips draws cheese over its cuts from above: the strips' numbers at their outer ends,
// what each weighs beside them, and what a slice then carries on the slice.
func strips(t *shoot.PlannedThing) *canvas {
	p := t.Cheese
	c := &canvas{w: 420, h: panelHeight}
	c.text(0, 14, "start", "head", "From above: "+cutTo(t.Name, 300, 13))
	scale := 2 * (aboveR - 8) / p.DiameterMM
	at := func(s shoot.Spot) (x, y float64) { return aboveX + s.XMM*scale, aboveY - s.YMM*scale }
	c.circle(aboveX, aboveY, aboveR-8, "thing")
	if p.RimMM > 0 {
		c.circle(aboveX, aboveY, (p.DiameterMM/2-p.RimMM)*scale, "maybe")
	}
	few := len(p.StripEnds) <= 12
	for i, ends := range p.StripEnds {
		x1, y1 := at(ends[0])
		x2, y2 := at(ends[1])
		c.line(x1, y1, x2, y2, "strip")
		if few {
			x, y := at(outside(ends, p.DiameterMM/2+13/scale))
			c.text(x, y+5, "middle", "head", fmt.Sprint(i+1))
		}
	}
	for i, s := range p.SliceAt {
		if x, y := at(s); few {
			c.text(x, y+4, "middle", "small", number(p.SliceGrams[i]))
		}
	}
	cameraMark(c)
	c.text(300, 40, "start", "head", "Weigh out")
	for i, g := range p.StripGrams {
		if y := 60 + 19*float64(i); few {
			c.text(300, y, "start", "", fmt.Sprintf("strip %d: %s", i+1, grams(g, t.StepGrams)))
		}
	}
	c.middle(aboveX, 284, 328, 13, "", "lay 1 first, the last in front")
	c.middle(aboveX, 300, 328, 11, "small", "on a slice: the grams that it then carries")
	return c
}

// outside is the strip's outer end, moved out to a distance from the middle.
func outside(ends [2]shoot.Spot, far float64) shoot.Spot {
	e := ends[1]
	if away := ends[0]; math.Hypot(away.XMM, away.YMM) > math.Hypot(e.XMM, e.YMM) {
		e = away
	}
	k := far / max(math.Hypot(e.XMM, e.YMM), 1e-9)
	return shoot.Spot{XMM: e.XMM * k, YMM: e.YMM * k}
}

// pieces draws where the pieces of the first hero lie.
func pieces(t *shoot.PlannedThing) *canvas {
	p := t.Pieces
	c := &canvas{w: 330, h: panelHeight}
	c.text(0, 14, "start", "head", "From above: "+cutTo(t.Name, 130, 13)+", hero 1")
	scale := 2 * aboveR / p.PlateMM
	c.circle(aboveX, aboveY, aboveR, "thing")
	for _, s := range p.Spots {
		x, y := aboveX+s.At.XMM*scale, aboveY-s.At.YMM*scale
		r := p.PieceMM / 2 * scale
		c.circle(x, y, r, "likely")
		c.middle(x, y+4, 2*r+10, 11, "small", s.Name)
	}
	cameraMark(c)
	c.middle(aboveX, 284, 328, 13, "", "the best-looking piece in front")
	c.middle(aboveX, 300, 328, 11, "small", fmt.Sprintf("plate %.0f mm; names as on the tray", p.PlateMM))
	return c
}
