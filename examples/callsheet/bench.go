package main

import (
	"fmt"
	"math"

	"example.org/honestplate/examples/shoot"
)

const benchStyle = `text{font:13px system-ui,sans-serif;fill:#1c1a17}.small{font-size:11px}.thing{fill:#fff;stroke:#1c1a17;stroke-width:1.5}` +
	`.fill{fill:#e2d9c5;stroke:none}.ice{fill:#fff;stroke:#1c1a17}.dim{stroke:#1c1a17;stroke-width:.8}.maybe{fill:none;stroke:#1c1a17;stroke-dasharray:5 4}` +
	`.handle{fill:none;stroke:#1c1a17;stroke-width:4}.glass{fill:none;stroke:#1c1a17;stroke-width:1.2}.likely{fill:#e2d9c5;stroke:#1c1a17;stroke-width:1.5}.stream{fill:#8d867a;stroke:#1c1a17;stroke-width:.8}.table{stroke:#1c1a17;stroke-width:2}`

// The table line of a side view, and the room above it.
const ground, above = 262.0, 222.0

// benchDrawing draws what of a shot must be laid out, on one drawing: a glass with its
// fill line and the pour into it at one scale, a build by its layers, the puddle of a
// pour from above. It is nil where there is nothing to lay out. Drawings of strips and
// pieces come from portion.
func benchDrawing(s *shoot.Shot) []byte {
	c, x := &canvas{h: 306}, 10.0
	var glass *shoot.PlannedThing
	var pour *stream
	for i := range s.Things {
		switch t := &s.Things[i]; {
		case t.Pour != nil && pour == nil:
			p := t.Pour
			pour = &stream{t.Name, p.Outlet, p.HeadMM, p.DropMM, p.NoHigherMM.Or(0), p.StreamMM, p}
		case t.Coil != nil && pour == nil:
			k := t.Coil
			pour = &stream{t.Name, k.Outlet, k.HeadMM, k.DropMM, 0, k.ThreadMM, nil}
		case t.Cold != nil && t.Cold.FillMM > 0 && glass == nil:
			glass = t
		}
	}
	if glass != nil || pour != nil {
		x += side(c, x, glass, pour) + 20
	}
	if pour != nil && pour.pour != nil && pour.pour.PuddleMM.High > 0 {
		x += puddleAbove(c, x, pour.name, pour.pour) + 20
	}
	for i := range s.Things {
		if b := s.Things[i].Build; b != nil {
			x += layers(c, x, b) + 20
		}
	}
	if x == 10 {
		return nil
	}
	c.w = x
	return c.svg("What to lay out for "+s.Dish, benchStyle)
}

// A stream is what runs from a jug: of a pour, or of a drizzle.
type stream struct {
	name                         string
	outlet                       shoot.Outlet
	head, drop, noHigher, across float64         // mm
	pour                         *shoot.PourPlan // nil of a drizzle
}

// side draws a glass, and a jug above it or above the food, from the camera's side and
// at one scale.
func side(c *canvas, x float64, glass *shoot.PlannedThing, pour *stream) float64 {
	width, surface, tall := 0.0, 0.0, 0.0 // mm
	if glass != nil {
		g := glass.Cold
		width, surface, tall = g.WidthMM, g.FillMM+g.WallMM, g.HeightMM
	}
	if pour != nil {
		tall = max(tall, (surface+pour.drop)*1.42, surface+min(pour.noHigher, 3*pour.drop))
	}
	scale := above / max(tall, 60)
	middle := x + 130
	c.line(x, ground, x+260, ground, "table")
	if glass != nil {
		glassSide(c, middle, scale, glass.Cold)
	}
	name := "from the camera’s side"
	if pour != nil {
		pourSide(c, middle, ground-surface*scale, scale, width/2*scale, pour)
		name = pour.name + ", " + name
	} else {
		name = glass.Name + ", " + name
	}
	c.middle(middle, ground+18, 300, 13, "", name)
	return 300
}

// pourSide draws jug, stream and height over the surface on which it lands.
func pourSide(c *canvas, middle, surface, scale, half float64, p *stream) {
	y := surface - p.drop*scale
	w := max(p.across*scale, 2)
	jug(c, middle-w/2, y, p.outlet.Kind == "bottle" || p.outlet.Kind == "closed bottle")
	c.rect(middle-w/2, y, w, surface-y, "stream")
	rule := middle + max(half, 20) + 16
	c.line(rule, y, rule, surface, "dim")
	c.line(rule-5, y, rule+5, y, "dim")
	c.line(rule-5, surface, rule+5, surface, "dim")
	c.text(rule+9, (y+surface)/2-3, "start", "", height(p.drop))
	c.text(rule+9, (y+surface)/2+12, "start", "small", two(p.across)+" mm thick below")
	if n := p.noHigher; n > p.drop*1.1 && n <= 3*p.drop {
		top := surface - n*scale
		c.line(middle-70, top, rule+5, top, "maybe")
		c.text(rule+9, top+4, "start", "small", "no higher than "+height(n))
	}
	c.text(middle-100, y-58, "start", "small", outlet(p.outlet)+",")
	c.text(middle-100, y-44, "start", "small", two(p.head)+" mm of liquid over it")
}

// jug draws a tilted jug, or a bottle, whose lip is at a point; the liquid in it stands
// level with the lip.
func jug(c *canvas, x, y float64, bottle bool) {
	at := func(dx, dy float64) string { return f(x+dx) + " " + f(y+dy) }
	if bottle {
		c.path("M"+at(0, 0)+" L"+at(-7, -12)+" L"+at(-33, 3)+" L"+at(-48, -8)+" L"+at(-100, 22)+" L"+at(-84, 50)+" L"+at(-32, 20)+" L"+at(-26, 15)+" Z", "thing")
		return
	}
	c.path("M"+at(-30, -29)+" C"+at(-42, -54)+" "+at(-78, -36)+" "+at(-62, -11), "handle")
	c.path("M"+at(0, 0)+" L"+at(-20, -35)+" L"+at(-72, -5)+" L"+at(-52, 30)+" Z", "thing")
	c.path("M"+at(0, 0)+" L"+at(-69, 0)+" L"+at(-52, 30)+" Z", "fill")
	c.path("M"+at(0, 0)+" L"+at(-20, -35)+" L"+at(-72, -5)+" L"+at(-52, 30)+" Z", "glass")
}

// glassSide draws a glass in its proportions, with its fill line and its ice.
func glassSide(c *canvas, middle, scale float64, g *shoot.ColdPlan) {
	w, wall := g.WidthMM*scale, max(g.WallMM*scale, 1.5)
	left, bottom := middle-w/2, ground-g.WallMM*scale
	top, rim := bottom-g.FillMM*scale, ground-g.HeightMM*scale
	c.rect(left+wall, top, w-2*wall, bottom-top, "fill")
	// The ice floats: as much of it as its own square would take, in at most six pieces.
	if g.IceG > 0 {
		n := math.Min(math.Max(math.Round(g.IceG/20), 1), 6)
		edge := math.Min(math.Cbrt(g.IceG/n/0.917e-3)*scale, (w-2*wall)/3.2)
		for i := range int(n) {
			row := float64(i / 3)
			c.rect(left+wall+3+float64(i%3)*(edge+2), top-edge*0.12+row*(edge+2), edge, edge, "ice")
		}
	}
	c.path(fmt.Sprintf("M%s %s V%s H%s V%s", f(left), f(rim), f(ground), f(left+w), f(rim)), "glass")
	c.path(fmt.Sprintf("M%s %s V%s H%s V%s", f(left+wall), f(rim), f(bottom), f(left+w-wall), f(rim)), "glass")
	c.line(left-24, top, left, top, "dim")
	c.text(left-28, top-3, "end", "", fmt.Sprintf("%.0f mm", g.FillMM))
	c.text(left-28, top+11, "end", "small", "fill line")
}

// puddleAbove draws where the liquid lands and how far it spreads: the likely edge and
// its band.
func puddleAbove(c *canvas, x float64, name string, p *shoot.PourPlan) float64 {
	scale := 210 / max(p.PuddleMM.High, 1)
	cx, cy := x+150, 135.0
	c.circle(cx, cy, p.PuddleMM.High/2*scale, "maybe")
	c.circle(cx, cy, p.PuddleMM.Likely/2*scale, "likely")
	c.circle(cx, cy, p.PuddleMM.Low/2*scale, "maybe")
	c.line(cx-6, cy, cx+6, cy, "dim")
	c.line(cx, cy-6, cx, cy+6, "dim")
	c.middle(cx, 280, 290, 13, "", name+" lands on the cross, seen from above")
	c.text(cx, 296, "middle", "small", fmt.Sprintf("and spreads to %s across", millimetres(p.PuddleMM)))
	return 300
}

// layers draws a build from the side, from the bottom up; how thick a layer is nobody
// has said, so all are drawn alike.
func layers(c *canvas, x float64, b *shoot.BuildPlan) float64 {
	n := float64(len(b.Layers))
	tall := math.Min(above/n, 38)
	for i, l := range b.Layers {
		y := ground - tall*float64(i+1)
		c.rect(x+30, y+1.5, 150, tall-3, map[bool]string{true: "likely", false: "thing"}[i%2 == 0])
		c.text(x+22, y+tall/2+5, "end", "", fmt.Sprint(i+1))
		text := l.Name
		if l.Grams > 0 {
			text += ", " + number(l.Grams) + " g"
		} else if l.Count > 0 {
			text += fmt.Sprintf(", %d", l.Count)
		}
		c.fit(x+190, y+tall/2+5, 240, 13, "", text)
	}
	c.line(x, ground, x+200, ground, "table")
	c.text(x+105, ground+18, "middle", "", "from the side, bottom up")
	c.text(x+105, ground+33, "middle", "small", "thickness not to scale")
	return 430
}
