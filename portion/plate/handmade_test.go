package plate

import (
	"bytes"
	"errors"
	"testing"

	"example.org/honestplate"
	"example.org/honestplate/portion"
	"example.org/honestplate/portion/record"
)

// A Layout or a Placing has exported fields, so a program can make or change one by
// hand. Drawing it must not fail.
func TestWhatLayAndPlaceHaveNotMadeStillDraws(t *testing.T) {
	empty := Placing{Spots: []Spot{{Number: 1, Slice: 3}}}
	changed, err := Scatter{Count: 3, Diameter: 0.02}.Place(Round{Diameter: 0.3, Slices: 3})
	if err != nil {
		t.Fatal(err)
	}
	changed.Spots = append(changed.Spots, Spot{Slice: 99, Piece: 7}, Spot{Slice: -1})
	for _, p := range []Placing{{}, empty, changed} {
		if svg := p.SVG(); !bytes.HasPrefix(svg, []byte("<svg")) {
			t.Errorf("drew %.40q", svg)
		}
		total := 0
		for _, n := range p.counts() {
			total += n
		}
		if want := min(3, 3*len(p.counts())); total != want {
			t.Errorf("%d spots on the slices, not %d", total, want)
		}
		for _, g := range p.grams() {
			if g != 0 {
				t.Errorf("%v g without pieces", g)
			}
		}
	}
	laid, err := Strips{Pattern: Across, Count: 2}.Lay(Round{Diameter: 0.3, Slices: 2}, portion.Declaration{Grams: 10})
	if err != nil {
		t.Fatal(err)
	}
	laid.Strips = append(laid.Strips, Strip{Number: 3})
	for _, l := range []Layout{{}, {Slices: make([]Slice, 2), Strips: make([]Strip, 2)}, laid} {
		if svg := l.SVG(); !bytes.HasPrefix(svg, []byte("<svg")) {
			t.Errorf("drew %.40q", svg)
		}
	}
}

func TestExtremesGiveErrorsNotInfinities(t *testing.T) {
	cases := map[string]func() (float64, error){
		"a repeatability of tonnes": func() (float64, error) {
			w, err := portion.Scale{Repeat: 1e300}.Sum(1)
			return w.Standard, err
		},
		"no reader": func() (float64, error) {
			_, err := record.Read(nil)
			return 0, err
		},
	}
	for name, f := range cases {
		if v, err := f(); !errors.Is(err, honestplate.ErrInput) && !errors.Is(err, honestplate.ErrRange) {
			t.Errorf("%s: %v, error %v", name, v, err)
		}
	}
}

func TestNoDishIsRefusedAlsoAsANilPointer(t *testing.T) {
	for _, on := range []Dish{nil, (*Round)(nil), (*Rectangle)(nil)} {
		for _, err := range []error{
			failure(Strips{}.Lay(on, portion.Declaration{Grams: 10})), failure(Spread{}.Lay(on, portion.Declaration{Grams: 10})),
			failure(Scatter{Count: 1, Diameter: 0.01}.Place(on)),
		} {
			var e *honestplate.InputError
			if !errors.As(err, &e) || e.Field != "Dish" {
				t.Errorf("%T: %v", on, err)
			}
		}
	}
}

func failure[T any](_ T, err error) error { return err }
