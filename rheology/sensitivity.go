package rheology

import (
	"cmp"
	"fmt"
	"math"

	"example.org/honestplate"
	"example.org/honestplate/rheology/internal/check"
)

// A Sensitivity says what a small slip does to a batch: each a relative change of
// its viscosity, so 0.02 is 2 % thicker.
type Sensitivity struct {
	OneGram       float64 `json:"one_gram"`        // 1 g of the thick liquid in place of 1 g of the thin
	Warmer        float64 `json:"warmer"`          // 1 degC warmer; below 0
	OneFatPercent float64 `json:"one_fat_percent"` // the thick liquid with 1 % more fat; 0 unless it is of milk
	GramsADegree  float64 `json:"grams_a_degree"`  // grams of thick for thin that do as much as 1 degC colder
}

// Sensitivity returns what 1 g, 1 degC and 1 % of fat do to the batch's predicted
// viscosity. Where a step of 1 leaves the range (no thin liquid left, the end of a
// liquid's temperatures, 50 % fat) the step the other way is taken and turned round. A
// batch below 1 g is an InputError; other errors are those of For.
func (b Batch) Sensitivity() (Sensitivity, error) {
	var p pair
	if err := b.Recipe.pair(&p); err != nil {
		return Sensitivity{}, honestplate.In("Recipe", err)
	}
	if err := cmp.Or(honestplate.NotNegative("ThinGrams", b.ThinGrams, "g"), honestplate.NotNegative("ThickGrams", b.ThickGrams, "g")); err != nil {
		return Sensitivity{}, err
	}
	total := b.ThinGrams + b.ThickGrams
	if !(total >= 1) || math.IsInf(total, 0) {
		return Sensitivity{}, check.Input("ThinGrams+ThickGrams", total, "g", "at least 1 g, finite")
	}
	w := b.ThickGrams / total
	var s Sensitivity
	up, down := w, w-1/total
	if b.ThinGrams >= 1 {
		up, down = w+1/total, w
	}
	gram := p.lnAt(min(1, up)) - p.lnAt(max(0, down))
	s.OneGram = math.Expm1(gram)

	m, err := b.Mix()
	if err != nil {
		return Sensitivity{}, err
	}
	warmer, errW := lnStep(m, b.Recipe.TempC, 1)
	colder, errC := lnStep(m, b.Recipe.TempC, -1)
	switch {
	case errW != nil && errC != nil:
		return Sensitivity{}, errW
	case errW != nil:
		warmer = -colder
	case errC != nil:
		colder = -warmer
	}
	s.Warmer = math.Expm1(warmer)
	if gram > 0 {
		s.GramsADegree = colder / gram
	}

	fatter, sign, ok := fatter(b.Recipe.Thick)
	if ok {
		r := b.Recipe
		r.Thick = fatter
		var q pair
		if err := r.pair(&q); err != nil {
			return Sensitivity{}, fmt.Errorf("with 1 %% of fat more or less: %w", err)
		}
		s.OneFatPercent = math.Expm1(sign * (q.lnAt(w) - p.lnAt(w)))
	}
	return s, nil
}

// lnStep is the change of ln(viscosity) over a step of temperature.
func lnStep(m Mix, tempC, step float64) (float64, error) {
	here, err := m.Viscosity(tempC)
	there, err2 := m.Viscosity(tempC + step)
	return math.Log(there.Likely / here.Likely), cmp.Or(err, err2)
}

// fatter returns a milk or cream with 1 % more fat, sign 1, or near the end of the
// range with 1 % less, sign -1.
func fatter(l Liquid) (_ Liquid, sign float64, ok bool) {
	switch l := l.(type) {
	case Dairy:
		if l.FatPercent > dairyHighFat-1 {
			return Dairy{FatPercent: l.FatPercent - 1, Treatment: l.Treatment}, -1, true
		}
		return Dairy{FatPercent: l.FatPercent + 1, Treatment: l.Treatment}, 1, true
	case Measured:
		base, known := l.Liquid.(Dairy)
		if !known || base.Treatment == Thickened || base.check(l.TempC) != nil {
			return nil, 0, false
		}
		// The same cream with more fat: the k that was measured, by the law.
		more, sign, _ := fatter(base)
		e, k := emulsionAt(l.TempC), l.coldK(base)
		l.PaS = l.PaS.Times(math.Exp(e.ln(more.(Dairy).FatPercent, k) - e.ln(base.FatPercent, k)))
		l.Liquid = more
		return l, sign, true
	}
	return nil, 0, false
}
