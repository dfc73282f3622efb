package main

import (
	"fmt"
	"math"

	"example.org/honestplate/examples/shoot"
)

const benchStyle = `text{font:13px system-ui,sans-serif;fill:#1c1a17}.small{font-size:11px}.head{font-weight:700}.thing{fill:#fff;stroke:#1c1a17;stroke-width:1.5}` +
	`.fill{fill:#e2d9c5;stroke:none}.ice{fill:#fff;stroke:#1c1a17}.dim{stroke:#1c1a17;stroke-width:.8}.maybe{fill:none;stroke:#1c1a17;stroke-dasharray:5 4}` +
	`.handle{fill:none;stroke:#1c1a17;stroke-width:4}.glass{fill:none;stroke:#1c1a17;stroke-width:1.2}.likely{fill:#e2d9c5;stroke:#1c1a17;stroke-width:1.5}` +
	`.strip{stroke:#8d867a;stroke-width:9}.stream{fill:#8d867a;stroke:#1c1a17;stroke-width:.8}.table{stroke:#1c1a17;stroke-width:2}.mark{fill:#1c1a17}`

// panelHeight is that of every panel; the table of a side view lies at ground, and the
// tallest thing on it reaches so far above it.
const panelHeight, ground, above = 306.0, 262.0, 222.0

// benchDrawing draws what of a shot must be laid out, on one drawing: from the camera's
// side at one scale what stands in the frame, with the jug over what it pours into and
// the fill line of a glass; from above where a stream lands and how far it spreads; a
// build by its layers; strips and pieces where they lie. It is nil where there is nothing
// to lay out. Every length is the plan's.
func benchDrawing(s *shoot.Shot) []byte {
	var panels []*canvas
	if p := sideView(s); p != nil {
		panels = append(panels, p)
	}
	for i := range s.Things {
		if r := streamOf(&s.Things[i]); r != nil {
			panels = append(panels, landing(r, thingNamed(s, r.into)))
		}
	}
	for i := range s.Things {
		switch t := &s.Things[i]; {
		case t.Build != nil:
			panels = append(panels, layers(t.Build))
		case t.Cheese != nil:
			panels = append(panels, strips(t))
		case t.Pieces != nil && len(t.Pieces.Spots) > 0:
			panels = append(panels, pieces(t))
		}
	}
	if len(panels) == 0 {
		return nil
	}
	return inRows(panels).svg("What to lay out for "+s.Dish, benchStyle)
}

// inRows sets panels beside each other, at most three in a row.
func inRows(panels []*canvas) *canvas {
	out := new(canvas)
	for i := 0; i < len(panels); i += 3 {
		x := 10.0
		for _, p := range panels[i:min(i+3, len(panels))] {
			fmt.Fprintf(&out.b, `<g transform="translate(%s %s)">`+"\n", f(x), f(out.h))
			out.b.Write(p.b.Bytes())
			out.b.WriteString("</g>\n")
			x += p.w + 20
		}
		out.w = max(out.w, x)
		out.h += panelHeight
	}
	return out
}

// A stream is what runs from a jug: of a pour, or of a drizzle.
type stream struct {
	name                         string
	into                         string // the thing in the frame that it lands in
	outlet                       shoot.Outlet
	head, drop, noHigher, across float64 // mm
	pour                         *shoot.PourPlan
	coil                         *shoot.CoilPlan
}

func streamOf(t *shoot.PlannedThing) *stream {
	if p := t.Pour; p != nil {
		return &stream{t.Name, p.Into, p.Outlet, p.HeadMM, p.DropMM, p.NoHigherMM.Or(0), p.StreamMM, p, nil}
	}
	if k := t.Coil; k != nil {
		return &stream{t.Name, "", k.Outlet, k.HeadMM, k.DropMM, 0, k.ThreadMM, nil, k}
	}
	return nil
}

func thingNamed(s *shoot.Shot, name string) *shoot.PlannedThing {
	for i := range s.Things {
		if name != "" && s.Things[i].Name == name {
			return &s.Things[i]
		}
	}
	return nil
}

// A place is where something stands on the table, with what runs into it.
type place struct {
	thing  *shoot.PlannedThing // nil of a plate
	stream *stream
}

// surface is how high the stream lands, mm.
func (p place) surface() float64 {
	switch t := p.thing; {
	case t == nil:
		return 0
	case t.Cold != nil && t.Cold.FillMM > 0:
		return t.Cold.FillMM + t.Cold.WallMM
	default:
		return bowlDepth * t.Size.WidthMM
	}
}

// bowlDepth is how deep a bowl is drawn, of its width: the plan has its width alone.
const bowlDepth = 0.36

// tall is how far a place reaches above the table, mm, less the jug.
func (p place) tall() float64 {
	high := 0.0
	if p.thing != nil {
		high = max(p.thing.Size.HeightMM, p.surface())
	}
	if f := p.stream; f != nil {
		high = max(high, p.surface()+f.drop)
		if f.noHigher <= 2*f.drop {
			high = max(high, p.surface()+f.noHigher)
		}
	}
	return high
}

func (p place) across() float64 {
	w := 0.0
	if p.thing != nil {
		w = p.thing.Size.WidthMM
	}
	if p.stream != nil && p.stream.pour != nil {
		w = max(w, p.stream.pour.PuddleMM.High)
	}
	return w
}

// mostPlaces is how many things that nothing runs into stand beside the others: what is
// left has its line on the page.
const mostPlaces = 3

// places lists what stands in the frame, where something is poured or a glass is filled.
func places(s *shoot.Shot) (out []place) {
	lay := false
	taken := map[string]bool{}
	for i := range s.Things {
		if f := streamOf(&s.Things[i]); f != nil {
			out, lay = append(out, place{thingNamed(s, f.into), f}), true
			taken[f.into] = true
		}
	}
	beside := 0
	for i := range s.Things {
		t := &s.Things[i]
		lay = lay || t.Cold != nil && t.Cold.FillMM > 0
		if t.Size.WidthMM > 0 && !taken[t.Name] && beside < mostPlaces {
			out, beside = append(out, place{thing: t}), beside+1
		}
	}
	if !lay {
		return nil
	}
	return out
}

// jugRoom is what a jug with its words takes over its lip.
const jugRoom = 74.0

// sideView draws the frame from the camera's side, at one scale; nil where nothing is
// poured and no glass is filled.
func sideView(s *shoot.Shot) *canvas {
	all := places(s)
	if all == nil {
		return nil
	}
	scale := 1.6
	for _, p := range all {
		room := above
		if p.stream != nil {
			room -= jugRoom
		}
		scale = min(scale, room/max(p.tall(), 10), 240/max(p.across(), 10))
	}
	c := &canvas{h: panelHeight}
	c.text(0, 14, "start", "head", "From the camera’s side")
	c.text(0, 28, "start", "small", "to scale")
	x := 0.0
	for _, p := range all {
		left, right := 62.0, 62.0
		if p.thing != nil && p.thing.Cold != nil && p.thing.Cold.FillMM > 0 {
			left = 62 + p.across()/2*scale
		}
		if p.stream != nil {
			left, right = max(left, 112), p.across()/2*scale+134
		}
		left, right = max(left, p.across()/2*scale+6), max(right, p.across()/2*scale+6)
		p.draw(c, x+left, scale, left+right)
		x += left + right
	}
	c.line(0, ground, x, ground, "table")
	c.w = x
	return c
}

// draw sets a place round a middle.
func (p place) draw(c *canvas, middle, scale, room float64) {
	name, size := "", ""
	if t := p.thing; t != nil {
		name, size = t.Name, fmt.Sprintf("%.0f mm wide", t.Size.WidthMM)
		thingSide(c, middle, scale, t)
	}
	if r := p.stream; r != nil {
		if p.thing == nil {
			name, size = "plate, or what lies on it", ""
			if q := r.pour; q != nil && q.PuddleMM.High > 0 {
				w := q.PuddleMM.Likely / 2 * scale
				c.path(fmt.Sprintf("M%s %s Q%s %s %s %s Z", f(middle-w), f(ground), f(middle), f(ground-7), f(middle+w), f(ground)), "likely")
			}
		}
		pourSide(c, middle, ground-p.surface()*scale, scale, p.across()/2*scale, r)
	}
	c.middle(middle, ground+18, room-8, 13, "", name)
	c.middle(middle, ground+33, room-8, 11, "small", size)
}

// thingSide draws a thing standing on the table.
func thingSide(c *canvas, middle, scale float64, t *shoot.PlannedThing) {
	w, h := t.Size.WidthMM*scale, t.Size.HeightMM*scale
	switch t.Kind {
	case "iced_drink":
		glassSide(c, middle, scale, t.Cold)
	case "bowl":
		h = bowlDepth * w
		c.path(fmt.Sprintf("M%s %s Q%s %s %s %s H%s Q%s %s %s %s Z", f(middle-w/2), f(ground-h), f(middle-w/2), f(ground), f(middle-w/5), f(ground),
			f(middle+w/5), f(middle+w/2), f(ground), f(middle+w/2), f(ground-h)), "likely")
	case "bottle":
		c.path(fmt.Sprintf("M%s %s V%s L%s %s V%s H%s V%s L%s %s V%s Z", f(middle-w/2), f(ground), f(ground-h*0.62), f(middle-w/5), f(ground-h*0.8), f(ground-h),
			f(middle+w/5), f(ground-h*0.8), f(middle+w/2), f(ground-h*0.62), f(ground)), "thing")
	case "scoop":
		c.circle(middle, ground-h/2, w/2, "thing")
	default:
		c.rect(middle-w/2, ground-h, w, h, "thing")
	}
}

// pourSide draws jug, stream and height over the surface on which it lands.
func pourSide(c *canvas, middle, surface, scale, half float64, p *stream) {
	y := surface - p.drop*scale
	w := max(p.across*scale, 2)
	jug(c, middle-w/2, y, p.outlet.Kind == "bottle" || p.outlet.Kind == "closed bottle")
	c.rect(middle-w/2, y, w, surface-y, "stream")
	rule := middle + max(half, 12) + 14
	c.line(rule, y, rule, surface, "dim")
	c.line(rule-5, y, rule+5, y, "dim")
	c.line(rule-5, surface, rule+5, surface, "dim")
	lines := []string{two(p.across) + " mm thick", "where it lands"}
	if n := p.noHigher; n > p.drop*1.1 {
		if n <= 2*p.drop {
			top := surface - n*scale
			c.line(middle-10, top, rule+5, top, "maybe")
			c.text(rule+9, top+4, "start", "small", "no higher than "+height(n))
		} else {
			lines = append(lines, "no higher than "+height(n))
		}
	}
	c.text(rule+9, (y+surface)/2-10, "start", "head", height(p.drop))
	for i, l := range lines {
		c.text(rule+9, (y+surface)/2+5+14*float64(i), "start", "small", l)
	}
	c.text(middle-106, y-66, "start", "small", outlet(p.outlet)+",")
	c.text(middle-106, y-53, "start", "small", two(p.head)+" mm of liquid over it")
}

// jug draws a tilted jug, or a bottle, whose lip is at a point; the liquid in it stands
// level with the lip.
func jug(c *canvas, x, y float64, bottle bool) {
	at := func(dx, dy float64) string { return f(x+dx) + " " + f(y+dy) }
	if bottle {
		c.path("M"+at(0, 0)+" L"+at(-7, -12)+" L"+at(-33, 3)+" L"+at(-48, -8)+" L"+at(-100, 22)+" L"+at(-84, 50)+" L"+at(-32, 20)+" L"+at(-26, 15)+" Z", "thing")
		return
	}
	c.path("M"+at(-30, -29)+" C"+at(-42, -49)+" "+at(-78, -36)+" "+at(-62, -11), "handle")
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
	c.text(left-8, top-5, "end", "head", fmt.Sprintf("%.0f mm", g.FillMM))
	c.text(left-8, top+14, "end", "small", "fill line")
}

// layers draws a build from the side, from the bottom up; how thick a layer is nobody
// has said, so all are drawn alike.
func layers(b *shoot.BuildPlan) *canvas {
	c := &canvas{w: 430, h: panelHeight}
	c.text(0, 14, "start", "head", "From the side, bottom up; thickness not to scale")
	n := float64(len(b.Layers))
	tall := math.Min(above/n, 38)
	for i, l := range b.Layers {
		y := ground - tall*float64(i+1)
		c.rect(30, y+1.5, 150, tall-3, map[bool]string{true: "likely", false: "thing"}[i%2 == 0])
		c.text(22, y+tall/2+5, "end", "", fmt.Sprint(i+1))
		text := l.Name
		if l.Grams > 0 {
			text += ", " + number(l.Grams) + " g"
		} else if l.Count > 0 {
			text += fmt.Sprintf(", %d", l.Count)
		}
		c.fit(190, y+tall/2+5, 240, 13, "", text)
	}
	c.line(0, ground, 200, ground, "table")
	return c
}
