package plate

import (
	"errors"
	"math"
	"testing"

	"example.org/honestplate"
	"example.org/honestplate/portion"
	"example.org/honestplate/portion/record"
)

// A Placing has exported fields, so a program can make or change one by hand: what is on
// no slice does not count, and nothing panics.
func TestWhatPlaceHasNotMadeIsStillAssigned(t *testing.T) {
	changed, err := Scatter{Count: 3, Diameter: 0.02}.Place(Round{Diameter: 0.3, Slices: 3})
	if err != nil {
		t.Fatal(err)
	}
	changed.Spots = append(changed.Spots, Spot{Slice: 99, Piece: 7}, Spot{Slice: -1})
	for _, p := range []Placing{{}, {Spots: []Spot{{Number: 1, Slice: 3}}}, changed} {
		got, err := p.Assign(weighed(len(p.Spots), 1))
		if err != nil {
			t.Fatal(err)
		}
		on, want := 0.0, 0.0
		for _, s := range got.Slices {
			on += s.Grams
		}
		for _, s := range got.Spots {
			if s.Slice >= 1 && s.Slice <= len(got.Slices) {
				want += got.Pieces[s.Piece].Grams
			}
		}
		if math.Abs(on-want) > 1e-6 {
			t.Errorf("%v g on the slices, want %v", on, want)
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
