package plate

import (
	"cmp"
	"fmt"
	"math"

	"example.org/honestplate"
	"example.org/honestplate/portion/internal/check"
)

// SliceSold compares a slice in the picture with the slice that people buy: data for a
// record. Favouring the camera leaves the total true; where a slice is the unit that is
// sold, the slice that fills the frame may still show more than a buyer gets.
type SliceSold struct {
	Slices     int     `json:"slices"`      // of the dish, each sold by itself
	EvenGrams  float64 `json:"even_grams"`  // what a slice carries on average: the declared mass over the slices
	MostGrams  float64 `json:"most_grams"`  // on the fullest slice in the picture
	MostSlice  int     `json:"most_slice"`  // its number
	LeastGrams float64 `json:"least_grams"` // on the emptiest
	Over       float64 `json:"over"`        // MostGrams over EvenGrams, less 1: 0.48 is 48 % more than a buyer gets
	Allowance  float64 `json:"allowance"`   // as asked for
	Beyond     bool    `json:"beyond"`      // the fullest slice exceeds the allowance by more than the step of the scale explains
}

// SliceSold says what the favour of a layout means where a slice is what people buy: how
// much more than the even share the fullest slice carries, against an allowance such as
// 0.1 for a tenth more. The next whole step of the scale above the allowance still counts
// as within it.
//
// For an advertised item favour beyond the allowance is refused, with a
// [honestplate.RefusedError] of the kind [honestplate.ErrAdvertised] beside the data; for
// others Beyond is set. Which allowance is fair, and whether any is, is for local law on
// advertising: arranging food so that one unit looks like more misleads even with a true
// total. Other errors: [honestplate.InputError] for an uncut dish,
// [honestplate.RangeError] for an allowance outside 0..1.
func (l Layout) SliceSold(allowance float64) (SliceSold, error) {
	if err := honestplate.InRange("Allowance", allowance, 0, 1, "", "a part of the even share: more than twice as much is no allowance"); err != nil {
		return SliceSold{}, err
	}
	n := len(l.Slices)
	if n < 2 {
		return SliceSold{}, check.Input("Slices", n, "", "a dish cut into slices that are sold by themselves")
	}
	out := SliceSold{Slices: n, EvenGrams: l.Declaration.Grams / float64(n), LeastGrams: math.Inf(1), Allowance: allowance}
	for _, s := range l.Slices {
		if s.Grams > out.MostGrams {
			out.MostGrams, out.MostSlice = s.Grams, s.Number
		}
		out.LeastGrams = min(out.LeastGrams, s.Grams)
	}
	out.Over = out.MostGrams/out.EvenGrams - 1
	// Half a thousandth of a step is dust of the division.
	step := l.grams(1)
	allowed := float64(math.Ceil(out.EvenGrams*(1+allowance)/step-5e-4) * step)
	if out.Beyond = out.MostGrams > allowed+step/2; !out.Beyond || !l.Declaration.Advertised {
		return out, nil
	}
	return out, &honestplate.RefusedError{
		Field: "Favour", Kind: honestplate.ErrAdvertised,
		Reason: fmt.Sprintf("slice %d carries %.6g g of %s where a buyer of a slice gets %.6g g: %.0f %% more, beyond the %.3g %% allowed",
			out.MostSlice, out.MostGrams, cmp.Or(l.Declaration.Item, "the item"), out.EvenGrams, 100*out.Over, 100*allowance),
		Advice: "lay it with less Favour, or show the whole dish as what is sold",
	}
}
