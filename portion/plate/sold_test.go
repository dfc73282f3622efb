package plate

import (
	"errors"
	"math"
	"testing"

	"example.org/honestplate"
	"example.org/honestplate/portion"
)

// Favour 0.9 puts 11 g on the slice in front where a buyer of a slice gets 7.75 g:
// 42 % more, though the total is true.
func TestFavourShowsMoreThanASliceHolds(t *testing.T) {
	bread := Round{Diameter: 0.3, Edge: 0.02, Slices: 8}
	cheese := portion.Declaration{Item: "cheese", Grams: 62, StepGrams: 0.5, Advertised: true}
	lay := func(favour float64, d portion.Declaration) Layout {
		l, err := Strips{Favour: favour}.Lay(bread, d)
		if err != nil {
			t.Fatal(err)
		}
		return l
	}
	strong := lay(0.9, cheese)
	got, err := strong.SliceSold(0.1)
	if !errors.Is(err, honestplate.ErrAdvertised) || !got.Beyond || got.EvenGrams != 7.75 || got.MostSlice != 1 || math.Abs(got.Over-0.42) > 0.01 {
		t.Errorf("%+v, %v", got, err)
	}
	if got, err := strong.SliceSold(0.5); err != nil || got.Beyond {
		t.Errorf("%+v, %v: half as much again was allowed", got, err)
	}
	// The step of the scale is no favour: 8 g where 7.75 g are even.
	even := lay(0, cheese)
	if got, err := even.SliceSold(0); err != nil || got.Beyond || got.MostGrams != 8 {
		t.Errorf("%+v, %v", got, err)
	}
	// An allowance that ends on a whole step ends there: a quarter more than 8 g is 10 g,
	// and half a gram more is beyond.
	two, err := Spread{Weights: []float64{10.5, 5.5}}.Lay(Round{Diameter: 0.3, Slices: 2}, portion.Declaration{Grams: 16, StepGrams: 0.5})
	if err != nil {
		t.Fatal(err)
	}
	if got, err := two.SliceSold(0.25); err != nil || got.MostGrams != 10.5 || !got.Beyond {
		t.Errorf("%+v, %v: 10.5 g are beyond a quarter more than 8 g", got, err)
	}
	if got, err := two.SliceSold(0.3125); err != nil || got.Beyond {
		t.Errorf("%+v, %v: 10.5 g were allowed", got, err)
	}
	dressing := cheese
	dressing.Advertised = false
	if got, err := lay(0.9, dressing).SliceSold(0); err != nil || !got.Beyond {
		t.Errorf("%+v, %v: want it said, not refused", got, err)
	}
	for _, bad := range []float64{-0.1, 1.1, math.NaN()} {
		if _, err := even.SliceSold(bad); err == nil {
			t.Errorf("allowance %g passes", bad)
		}
	}
	uncut, err := Spread{}.Lay(Round{Diameter: 0.3}, cheese)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := uncut.SliceSold(0.1); !errors.Is(err, honestplate.ErrInput) {
		t.Error(err)
	}
}

// Where strips meet at a centre the layout says how large a hub keeps them apart.
func TestStripsDoNotLieOnEachOther(t *testing.T) {
	cheese := portion.Declaration{Grams: 62, StepGrams: 0.5}
	l, err := Strips{}.Lay(Round{Diameter: 0.3, Slices: 8}, cheese)
	if err != nil {
		t.Fatal(err)
	}
	// Eight strips of 8 mm: 4 mm over tan 22.5 degrees.
	if want := 0.004 / math.Tan(math.Pi/8); math.Abs(l.LeastHub-want) > 1e-12 {
		t.Errorf("hub %g m, want %g", l.LeastHub, want)
	}
	if l, err = (Strips{Hub: l.LeastHub}).Lay(Round{Diameter: 0.3, Slices: 8}, cheese); err != nil || l.LeastHub != 0 {
		t.Errorf("hub %g m still asked for, %v", l.LeastHub, err)
	}
	if l, err = (Strips{}).Lay(Round{Diameter: 0.3, Slices: 2}, cheese); err != nil || l.LeastHub > 1e-9 {
		t.Errorf("two strips in one line want a hub of %g m, %v", l.LeastHub, err)
	}
	if l, err = (Strips{Width: 0.02}).Lay(Round{Diameter: 0.3, Slices: 4}, cheese); err != nil || math.Abs(l.LeastHub-0.01) > 1e-12 {
		t.Errorf("four strips of 20 mm want a hub of %g m, %v", l.LeastHub, err)
	}
	if l, err = (Strips{}).Lay(Rectangle{Width: 0.3, Depth: 0.2, Columns: 4}, cheese); err != nil || l.LeastHub != 0 {
		t.Errorf("a tray wants a hub of %g m, %v", l.LeastHub, err)
	}
}
