package plated

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"math/rand/v2"
	"strings"
	"testing"

	"example.org/honestplate"
	"example.org/honestplate/portion"
	"example.org/honestplate/portion/plate"
)

// wellFormed fails the test unless the bytes are one XML document.
func wellFormed(t *testing.T, svg []byte) {
	t.Helper()
	dec := xml.NewDecoder(bytes.NewReader(svg))
	for {
		if _, err := dec.Token(); err == io.EOF {
			break
		} else if err != nil {
			t.Fatalf("%v\n%.400s", err, svg)
		}
	}
	if bytes.Contains(svg, []byte("NaN")) || bytes.Contains(svg, []byte("Inf")) {
		t.Fatal("not a number in the drawing")
	}
}

// randomDish draws a dish; behind a pointer it is the same dish.
func randomDish(r *rand.Rand) plate.Dish {
	size := func() float64 { return 0.05 + 0.4*r.Float64() }
	round := plate.Round{Diameter: size(), Edge: 0.02 * r.Float64(), Slices: r.IntN(30), TurnDegrees: 720*r.Float64() - 360}
	tray := plate.Rectangle{Width: size(), Depth: size(), Edge: 0.02 * r.Float64(), Columns: r.IntN(6), Rows: r.IntN(5)}
	return []plate.Dish{round, &round, tray, &tray}[r.IntN(4)]
}

func TestDrawingsAreWellFormedAndStable(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 10))
	drawn := 0
	for range 120 {
		on := randomDish(r)
		d := portion.Declaration{
			Item:  "a <b> & \"c\" \x00\xff" + strings.Repeat("long ", 30),
			Grams: float64(1 + r.IntN(400)), StepGrams: []float64{0.1, 0.5, 1}[r.IntN(3)], Advertised: r.IntN(2) == 0,
		}
		how := plate.Strips{Width: 0.02 * r.Float64() * float64(r.IntN(2)), Favour: 0.9 * r.Float64() * float64(r.IntN(2))}
		s := plate.Scatter{Count: 1 + r.IntN(12), Diameter: 0.004 + 0.02*r.Float64(), OverCuts: r.IntN(2) == 0}
		var pieces []portion.Piece
		for k := range s.Count * r.IntN(2) {
			pieces = append(pieces, portion.Piece{Name: strings.Repeat("n<", k), Grams: 0.1 + float64(r.IntN(200))/10})
		}
		for _, draw := range []func() ([]byte, error){
			func() ([]byte, error) { return Strips(how, on, d) },
			func() ([]byte, error) { return Spread(plate.Spread{Favour: how.Favour}, on, d) },
			func() ([]byte, error) { return Pieces(d.Item, s, on, pieces) },
		} {
			svg, err := draw()
			if err != nil { // an uncut dish, or no room
				continue
			}
			drawn++
			wellFormed(t, svg)
			if again, _ := draw(); !bytes.Equal(svg, again) {
				t.Fatal("the same layout, other bytes")
			}
		}
	}
	if drawn < 240 {
		t.Errorf("only %d drawings", drawn)
	}
}

func TestDrawingsShowWhatABenchNeeds(t *testing.T) {
	bread := plate.Round{Diameter: 0.3, Edge: 0.02, Slices: 8}
	cheese := portion.Declaration{Item: "cheese", Grams: 62, StepGrams: 0.5, Advertised: true}
	strips, err := Strips(plate.Strips{Favour: 0.2, Weights: []float64{1, 1, 1, 1, 1, 1, 1, 2}}, bread, cheese)
	if err != nil {
		t.Fatal(err)
	}
	spread, err := Spread(plate.Spread{}, plate.Rectangle{Width: 0.3, Depth: 0.2, Columns: 3, Rows: 2}, cheese)
	if err != nil {
		t.Fatal(err)
	}
	olives, err := Pieces("", plate.Scatter{Count: 3, Diameter: 0.018}, plate.Round{Diameter: 0.2, Slices: 3},
		[]portion.Piece{{Name: "A", Grams: 4.1}, {Grams: 4.2}, {Name: "C", Grams: 4.4}})
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		svg  []byte
		want []string
	}{
		{strips, []string{"camera side", " mm<", "weigh out", "slice 8", "62 g", "no more and no less", "favoured", "weighted", "sans-serif", ">cheese<"}},
		{spread, []string{"camera side", "Spread inside the edge, 6 slices", "Weigh out, slice by slice", "Together 62 g"}},
		{olives, []string{"camera side", ">Pieces<", "3 pieces, each 18 mm across", "Together 12.7 g", "  A<", "piece 2", "4.4 g", "(1 piece)"}},
	} {
		for _, want := range c.want {
			if !bytes.Contains(c.svg, []byte(want)) {
				t.Errorf("no %q in the drawing", want)
			}
		}
	}
}

// Every strip ends where the dish does and begins where its cut does: the lines on the
// page are as long as the strips in the table.
func TestStripsAreDrawnAtTheirLength(t *testing.T) {
	cheese := portion.Declaration{Grams: 62, StepGrams: 0.5}
	for _, c := range []struct {
		how plate.Strips
		on  plate.Dish
	}{
		{plate.Strips{Hub: 0.02}, plate.Round{Diameter: 0.3, Edge: 0.02, Slices: 7, TurnDegrees: 11}},
		{plate.Strips{}, plate.Rectangle{Width: 0.3, Depth: 0.2, Edge: 0.02, Columns: 4, Rows: 2}},
	} {
		l, err := c.how.Lay(c.on, cheese)
		if err != nil {
			t.Fatal(err)
		}
		s := newSheet(l, c.how)
		for i, line := range s.strips {
			if got := line.q.minus(line.p).norm(); got < l.Strips[i].Length-1e-6 || got > l.Strips[i].Length+1e-6 {
				t.Errorf("strip %d: %v m, want %v", i+1, got, l.Strips[i].Length)
			}
			if out := s.dish.beyond(line.q, line.q.minus(line.p).unit()); out < 0.02-1e-6 {
				t.Errorf("strip %d ends %v m from the rim, whose edge is free", i+1, out)
			}
		}
	}
}

func TestDrawingsRefuseWhatLayAndPlaceRefuse(t *testing.T) {
	cheese := portion.Declaration{Grams: 62, StepGrams: 0.5}
	round := plate.Round{Diameter: 0.3, Slices: 8}
	for name, draw := range map[string]func() ([]byte, error){
		"no dish":   func() ([]byte, error) { return Strips(plate.Strips{}, nil, cheese) },
		"nil round": func() ([]byte, error) { return Spread(plate.Spread{}, (*plate.Round)(nil), cheese) },
		"nothing":   func() ([]byte, error) { return Strips(plate.Strips{}, round, portion.Declaration{}) },
		"weights":   func() ([]byte, error) { return Spread(plate.Spread{Weights: []float64{1}}, round, cheese) },
		"no pieces": func() ([]byte, error) { return Pieces("x", plate.Scatter{}, round, nil) },
		"too many pieces": func() ([]byte, error) {
			return Pieces("x", plate.Scatter{Count: 1, Diameter: 0.01}, round, make([]portion.Piece, 2))
		},
	} {
		if svg, err := draw(); svg != nil || !errors.Is(err, honestplate.ErrInput) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// The sheet of a bread: what a crew prints and lays beside it.
func ExampleStrips() {
	svg, err := Strips(plate.Strips{Hub: 0.015, Favour: 0.25}, plate.Round{Diameter: 0.3, Edge: 0.02, Slices: 8},
		portion.Declaration{Item: "smoked cheese", Grams: 62, StepGrams: 0.5, Advertised: true})
	if err != nil {
		fmt.Println(err)
		return
	}
	for line := range strings.Lines(string(svg)) {
		if strings.HasPrefix(line, "<desc>") {
			fmt.Print(line)
		}
	}
	// Output:
	// <desc>62 g declared, in steps of 0.5 g. Advertised: the real product, no more and no less. 8 strips along the cuts, 8 slices. Camera side favoured: near edge +25 %, far edge -25 %. </desc>
}
