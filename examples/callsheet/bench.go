package main

import (
	"fmt"
	"math"

	"example.org/honestplate/examples/shoot"
)

const benchStyle = `text{font:13px system-ui,sans-serif;fill:#1c1a17}.small{font-size:11px}.thing{fill:#fff;stroke:#1c1a17;stroke-width:1.5}` +
	`.fill{fill:#e2d9c5;stroke:none}.ice{fill:#fff;stroke:#1c1a17}.dim{stroke:#1c1a17;stroke-width:.8}.maybe{fill:none;stroke:#1c1a17;stroke-dasharray:5 4}` +
	`.likely{fill:#e2d9c5;stroke:#1c1a17;stroke-width:1.5}.stream{fill:#cfc3a6;stroke:#1c1a17;stroke-width:.8}.table{stroke:#1c1a17;stroke-width:2}`

// benchDrawing draws what of a shot must be laid out: a pour from the camera's side with
// its height, and the puddle from above with its band; a glass with its fill line. It is
// nil where there is nothing to lay out. Drawings of strips and pieces come from portion.
func benchDrawing(s *shoot.Shot) []byte {
	var parts []func(c *canvas, x float64) float64
	for i := range s.Things {
		t := &s.Things[i]
		if p := t.Pour; p != nil {
			parts = append(parts, func(c *canvas, x float64) float64 { return pourSide(c, x, t, p) })
			if p.PuddleMM.High > 0 {
				parts = append(parts, func(c *canvas, x float64) float64 { return puddleAbove(c, x, t, p) })
			}
		}
		if c := t.Cold; c != nil && c.FillMM > 0 {
			parts = append(parts, func(cv *canvas, x float64) float64 { return glassSide(cv, x, t, c) })
		}
	}
	if len(parts) == 0 {
		return nil
	}
	c := &canvas{h: 300}
	x := 10.0
	for _, draw := range parts {
		x += draw(c, x) + 30
	}
	c.w = x
	return c.svg("What to lay out for "+s.Dish, benchStyle)
}

// pourSide draws jug, stream and height from the camera's side.
func pourSide(c *canvas, x float64, t *shoot.PlannedThing, p *shoot.PourPlan) float64 {
	const ground = 250.0
	scale := 170 / max(p.DropMM, p.NoHigherMM.Or(0), 60)
	y := ground - p.DropMM*scale
	c.line(x, ground, x+220, ground, "table")
	// The jug: a body with its mouth at the top of the stream.
	c.path(fmt.Sprintf("M%s %s l-46 -34 l26 -22 l34 10 l-8 46 z", f(x+104), f(y)), "thing")
	w := max(p.StreamMM*scale, 2)
	c.rect(x+100-w/2, y, w, ground-y, "stream")
	c.line(x+150, y, x+150, ground, "dim")
	c.line(x+144, y, x+156, y, "dim")
	c.line(x+144, ground, x+156, ground, "dim")
	c.text(x+160, (y+ground)/2+4, "start", "", height(p.DropMM))
	if n := p.NoHigherMM; n.Given && n.Value > p.DropMM && n.Value*scale < 230 {
		top := ground - n.Value*scale
		c.line(x+40, top, x+180, top, "maybe")
		c.text(x+184, top+4, "start", "small", "no higher")
	}
	c.text(x+100, ground+18, "middle", "", t.Name)
	c.text(x+100, ground+34, "middle", "small", "from the camera's side")
	return 230
}

// puddleAbove draws where the liquid lands and how far it spreads: the likely edge and
// its band.
func puddleAbove(c *canvas, x float64, t *shoot.PlannedThing, p *shoot.PourPlan) float64 {
	scale := 210 / max(p.PuddleMM.High, 1)
	cx, cy := x+110, 125.0
	c.circle(cx, cy, p.PuddleMM.High/2*scale, "maybe")
	c.circle(cx, cy, p.PuddleMM.Likely/2*scale, "likely")
	c.circle(cx, cy, p.PuddleMM.Low/2*scale, "maybe")
	c.line(cx-6, cy, cx+6, cy, "dim")
	c.line(cx, cy-6, cx, cy+6, "dim")
	c.text(cx, 268, "middle", "", fmt.Sprintf("%s lands on the cross and spreads", t.Name))
	c.text(cx, 284, "middle", "small", fmt.Sprintf("to %s across; from above", millimetres(p.PuddleMM)))
	return 230
}

// glassSide draws a glass with its fill line and its ice.
func glassSide(c *canvas, x float64, t *shoot.PlannedThing, cold *shoot.ColdPlan) float64 {
	const ground, tall = 250.0, 200.0
	w := 90.0
	inside := cold.FillMM / max(cold.HeightMM, cold.FillMM)
	top := ground - tall*inside
	c.rect(x+40, top, w, ground-top, "fill")
	for i := range int(math.Min(cold.IceG/25, 5)) {
		c.rect(x+46+float64(i%3)*27, top+4+float64(i/3)*26, 22, 22, "ice")
	}
	c.path(fmt.Sprintf("M%s %s V%s H%s V%s", f(x+40), f(ground-tall), f(ground), f(x+40+w), f(ground-tall)), "maybe")
	c.line(x, ground, x+170, ground, "table")
	c.line(x+40+w, top, x+40+w+22, top, "dim")
	c.text(x+40+w+26, top+4, "start", "", fmt.Sprintf("%.0f mm", cold.FillMM))
	c.text(x+85, ground+18, "middle", "", t.Name)
	c.text(x+85, ground+34, "middle", "small", "fill line, inside")
	return 190
}
