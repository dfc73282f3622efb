package portion

// A Formula is a recipe by mass that can be made larger or smaller.
type Formula struct {
	Parts     []Ingredient // masses that stand for ratios, g
	StepGrams float64      // step of the scale, g; 0 means 1 g
	// Locked says that the ratios are signed off by the maker's technician and are
	// constraints, not wishes: no rounding is allowed.
	Locked bool
}

// For returns the parts of a batch of the given mass in whole steps that sum to it
// exactly. Unless Locked, every part is its ratio rounded to the step above or
// below (LargestRemainder). Locked, only batches that hold the ratios exactly will
// do: another is a StepError that gives the nearest two.
//
// Errors besides: those of Declaration.Share; InputError for bad parts; RangeError
// where Locked ratios need more steps than a batch can have.
func (f Formula) For(batchGrams float64) (Shares, error) {
	d := Declaration{Item: "batch", Grams: batchGrams, StepGrams: f.StepGrams}
	if err := positive("batch mass", batchGrams, "g"); err != nil {
		return Shares{}, err
	}
	if f.Locked {
		least, err := f.LeastExact()
		if err != nil {
			return Shares{}, err
		}
		if _, err := steps("batch mass", batchGrams, toDecimal(least)); err != nil {
			return Shares{}, err
		}
	}
	if _, err := sumOf(f.Parts); err != nil {
		return Shares{}, err
	}
	zones := make([]Zone, len(f.Parts))
	for i, p := range f.Parts {
		zones[i] = Zone{Name: p.Name, Weight: p.Grams}
	}
	return d.Share(zones)
}

// LeastExact returns the smallest batch, in grams, whose parts are all whole steps
// in exactly the ratios of the formula; its multiples are the others. Ratios are
// those of the parts as written, so 12.5 : 37.5 is 1 : 3. Errors as For.
func (f Formula) LeastExact() (float64, error) {
	if _, err := sumOf(f.Parts); err != nil {
		return 0, err
	}
	claims := make([]Claim, len(f.Parts))
	for i, p := range f.Parts {
		claims[i].Weight = p.Grams
	}
	places, ok := decimalPlaces(claims)
	weights := make([]uint64, len(claims))
	var sum uint64
	if ok {
		sum, ok = scaleByTen(weights, claims, places)
	}
	common := int64(0)
	for _, w := range weights {
		common = gcd(common, int64(w)) // w is below 2^62
	}
	if !ok || int64(sum)/common > maxSteps {
		return 0, &RangeError{"steps of the smallest exact batch", float64(sum) / float64(max(common, 1)), 0, maxSteps, "steps", "limit of this package"}
	}
	d := Declaration{Grams: 1, StepGrams: f.StepGrams}
	if err := notNegative("scale step (StepGrams)", f.StepGrams, "g"); err != nil {
		return 0, err
	}
	if f.StepGrams != 0 {
		if err := within("scale step (StepGrams)", f.StepGrams, leastStepGrams, mostStepGrams, "g", "limit of this package"); err != nil {
			return 0, err
		}
	}
	return d.step().times(int64(sum) / common), nil
}
