package main

import (
	"encoding/json"
	"fmt"
	"strings"
	"testing"

	"example.org/honestplate"
	"example.org/honestplate/examples/shoot"
)

// shotOf is a copy of a picture of the invented days that a test may change.
func shotOf(t *testing.T, day, dish string) *shoot.Shot {
	t.Helper()
	for i := range demoPlans(t)[day].Shots {
		if s := &demoPlans(t)[day].Shots[i]; s.Dish == dish {
			text, err := json.Marshal(s)
			if err != nil {
				t.Fatal(err)
			}
			out := new(shoot.Shot)
			if err := json.Unmarshal(text, out); err != nil {
				t.Fatal(err)
			}
			return out
		}
	}
	t.Fatalf("no %s in %s", dish, day)
	return nil
}

func wants(t *testing.T, svg []byte, what ...string) {
	t.Helper()
	wellFormed(t, "bench", svg)
	for _, w := range what {
		if !strings.Contains(string(svg), w) {
			t.Errorf("%q is not drawn in %s", w, svg)
		}
	}
}

// A pour's drawing has the jug, its height, where it lands and the puddle's band, from the
// side and from above; what stands beside it is on the same drawing.
func TestAPourIsDrawnFromBothSides(t *testing.T) {
	s := shotOf(t, "autumn", "Buckwheat pancakes")
	p := s.Things[1].Pour
	if p.PuddleMM.Low <= 0 || p.PuddleMM.Low >= p.PuddleMM.Likely || p.PuddleMM.Likely >= p.PuddleMM.High || p.PuddleAfter.After <= 0 {
		t.Fatalf("the plan has no puddle: %+v after %v", p.PuddleMM, p.PuddleAfter)
	}
	svg := benchDrawing(s)
	wants(t, svg, "camera’s side", "From above", "a spout 8 mm wide inside", "25 mm of liquid", ">18 cm<", "no higher than "+height(p.NoHigherMM.Value), "butter curl", "38 mm wide",
		fmt.Sprintf("inner ring at least %s mm, outer at most %s mm", two(p.PuddleMM.Low), two(p.PuddleMM.High)))
	for _, e := range []float64{p.PuddleMM.Low, p.PuddleMM.Likely, p.PuddleMM.High} { // the rings are the plan's
		wants(t, svg, fmt.Sprintf(`r="%s"`, f(e*aboveR/p.PuddleMM.High)))
	}
	p.PuddleMM = honestplate.Estimate{Low: 50, Likely: 60, High: 104}
	wants(t, benchDrawing(s), `r="50"`, `r="60"`, `r="104"`, "inner ring at least 50 mm, outer at most 104 mm")
}

// What is poured into a glass or a bowl is drawn over it, and the glass has its fill line.
func TestAPourIsDrawnOverWhatCatchesIt(t *testing.T) {
	s := shotOf(t, "coast", "Iced coffee with cream")
	wants(t, benchDrawing(s), ">71 mm<", "fill line", ">9 cm<", "the middle of iced coffee, 76 mm wide")
	wants(t, benchDrawing(shotOf(t, "autumn", "Spiced oat bowl")), "the middle of oat porridge, 150 mm wide", ">15 cm<")
	// Beside the glass stands what else is in the frame.
	s.Things = append(s.Things, shoot.PlannedThing{Name: "second bottle", Kind: "bottle", Size: shoot.Size{WidthMM: 62, HeightMM: 240}}, shoot.PlannedThing{Name: "ball", Kind: "scoop", Size: shoot.Size{WidthMM: 50, HeightMM: 50}})
	wants(t, benchDrawing(s), "second bottle", "62 mm wide", "ball")
	if n := len(places(s)); n != 3 {
		t.Errorf("%d places for a glass with its pour, a bottle and a ball", n)
	}
}

// Strips and pieces lie where the plan has them, each under its name or number.
func TestStripsAndPiecesLieWhereThePlanHasThem(t *testing.T) {
	s := shotOf(t, "autumn", "Flatbread with smoked cheese")
	c := s.Things[1].Cheese
	if len(c.StripEnds) != len(c.StripGrams) || len(c.SliceAt) != len(c.SliceGrams) {
		t.Fatalf("%d strips have %d ends, %d slices %d places", len(c.StripGrams), len(c.StripEnds), len(c.SliceGrams), len(c.SliceAt))
	}
	svg := benchDrawing(s)
	for i, g := range c.StripGrams {
		wants(t, svg, fmt.Sprintf("strip %d: %s", i+1, grams(g, s.Things[1].StepGrams)))
	}
	if n := strings.Count(string(svg), `class="strip"`); n != len(c.StripGrams) {
		t.Errorf("%d strips drawn of %d", n, len(c.StripGrams))
	}
	s = shotOf(t, "autumn", "Filled plums")
	p := s.Things[0].Pieces
	if len(p.Spots) != len(p.Sets[0].Names) {
		t.Fatalf("%d spots for %d pieces", len(p.Spots), len(p.Sets[0].Names))
	}
	for _, n := range p.Sets[0].Names {
		wants(t, benchDrawing(s), ">"+n+"<")
	}
}

// Nothing to lay out, no drawing; and a frame full of things is still one drawing.
func TestADrawingOnlyWhereThereIsSomethingToLayOut(t *testing.T) {
	for day, dish := range map[string]string{"autumn": "Brown-butter scoop", "motion": "Ramen, steam", "coast": "Lemon sorbet"} {
		if svg := benchDrawing(shotOf(t, day, dish)); svg != nil {
			t.Errorf("%s is drawn: %s", dish, svg)
		}
	}
	full := shotOf(t, "coast", "Iced coffee with cream")
	for range 4 {
		full.Things = append(full.Things, full.Things...)
	}
	wellFormed(t, "full", benchDrawing(full))
}
