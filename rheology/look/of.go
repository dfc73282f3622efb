package look

import (
	"cmp"
	"fmt"
	"math"
	"sort"

	"example.org/honestplate"
	"example.org/honestplate/rheology"
)

// proteinOfSolids is the share of protein in milk's solids-not-fat (from memory: 3.4 of
// 8.9 %).
const proteinOfSolids = 0.38

// Of returns the milk that a liquid is, by its composition: milk, cream, blends and
// measured ones of them, thinned with water or not. What composition does not say is left
// out, homogenisation and carotene: set them if you know. A liquid with more than traces
// of sugar, glycerol or what is not known is an InputError.
func Of(l rheology.Liquid) (Milk, error) {
	name := "nothing"
	if l != nil {
		name = l.Describe().Name
	}
	c, known := rheology.CompositionOf(l)
	if !known || c.SugarPercent+c.GlycerolPercent > 0.5 {
		return Milk{}, &honestplate.InputError{Field: "Liquid", Got: name,
			Want: "milk, cream, or a blend of them, with water if need be"}
	}
	m := Milk{FatPercent: c.FatPercent, ProteinPercent: honestplate.Some(proteinOfSolids * c.MilkSolidsPercent)}
	return m, m.check()
}

// Cream is the answer of [CreamFor]: a batch to weigh out, and how well it hides.
type Cream struct {
	Batch    rheology.Batch       `json:"batch"`    // what to weigh out, in whole steps
	Contrast honestplate.Estimate `json:"contrast"` // of the coat between black and white, with its band
	Hides    honestplate.Estimate `json:"hides_m"`  // m: from this depth on the batch hides so well
}

// CreamFor returns the least of the recipe's thick liquid, in whole steps of the scale, with
// which a coat of the depth in m hides black from white to the contrast ratio, such as
// [Hidden]. Both liquids must be milk or cream of different fat. The scene is daylight and
// a beam square on; homogenisation is taken as not known.
//
// An advertised product is refused ([honestplate.ErrAdvertised]), and so is a coat too thin
// for cream alone ([honestplate.ErrInfeasible]): no cream makes the film that a pour leaves on
// glass, 0.05 to 0.2 mm, hide to 0.98.
func CreamFor(r rheology.Recipe, coat, contrast float64) (Cream, error) {
	if err := cmp.Or(honestplate.InRange("coat", coat, 1e-6, 1, "m", "a coat on a set"), checkRatio(contrast)); err != nil {
		return Cream{}, err
	}
	thin, thinMilk, err := part(r.Thin)
	thick, thickMilk, err2 := part(r.Thick)
	// The recipe refuses what is advertised and what is no recipe.
	_, refused := r.ForFat(thinMilk.FatPercent)
	if err := cmp.Or(honestplate.In("Thin", err), honestplate.In("Thick", err2), refused); err != nil {
		return Cream{}, err
	}
	blend := func(share float64) (Optics, error) {
		return Mix(Part{thin, (1 - share) * thinMilk.volume()}, Part{thick, share * thickMilk.volume()})
	}
	hides := func(share float64) (float64, error) {
		o, err := blend(share)
		if err != nil {
			return 0, err
		}
		return o.Contrast(Scene{}, coat, Black, White)
	}
	most, err := hides(1)
	if err != nil {
		return Cream{}, err
	}
	if most < contrast {
		return Cream{}, tooThin(&thick, coat, contrast, most)
	}
	steps := int(math.Round(r.BatchGrams / r.StepGrams))
	k := sort.Search(steps, func(k int) bool {
		got, failed := hides(float64(k) / float64(steps))
		err = cmp.Or(err, failed)
		return got >= contrast
	})
	if err != nil {
		return Cream{}, err
	}
	share := float64(k) / float64(steps)
	batch, err := r.ForFat(thinMilk.FatPercent + share*(thickMilk.FatPercent-thinMilk.FatPercent))
	o, err2 := blend(share)
	if err := cmp.Or(err, err2); err != nil {
		return Cream{}, err
	}
	ratio, err := o.contrastBand(Scene{}, coat)
	depth, err2 := o.Hides(Scene{}, Black, White, contrast)
	return Cream{batch, ratio, depth}, cmp.Or(err, err2)
}

// part is one liquid of a recipe, for light.
func part(l rheology.Liquid) (Optics, Milk, error) {
	m, err := Of(l)
	if err != nil {
		return Optics{}, Milk{}, err
	}
	o, err := m.Optics()
	return o, m, err
}

// tooThin is what cream alone does not hide.
func tooThin(cream *Optics, coat, contrast, most float64) error {
	advice := "no coat of it will"
	if h, err := cream.Hides(Scene{}, Black, White, contrast); err == nil {
		advice = fmt.Sprintf("it takes a coat of %.2g mm", 1000*h.Likely)
	}
	return &honestplate.RefusedError{Field: "coat", Kind: honestplate.ErrInfeasible,
		Reason: fmt.Sprintf("the thick liquid alone hides to %.2f at %.3g mm", most, 1000*coat), Advice: advice}
}

// contrastBand is Contrast with the band that the scattering's factor gives it.
func (o *Optics) contrastBand(s Scene, depth float64) (honestplate.Estimate, error) {
	s.Depth = honestplate.Some(depth)
	low, err := o.contrast(s, 1/o.factor, Black, White)
	likely, err2 := o.contrast(s, 1, Black, White)
	high, err3 := o.contrast(s, o.factor, Black, White)
	return honestplate.Estimate{Low: low, Likely: likely, High: high}, cmp.Or(err, err2, err3)
}
