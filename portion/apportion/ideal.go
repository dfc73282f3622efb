package apportion

// Ideal returns the quotas that [Method.Apportion] by [LargestRemainder] rounds: k v within Min
// and Max with one k for all, summing to the total as real numbers. Errors as
// [Method.Apportion].
func Ideal(total int64, claims []Claim) ([]float64, error) {
	if err := checkClaims(total, claims); err != nil {
		return nil, err
	}
	p, err := newParties(total, claims)
	if err != nil {
		return nil, err
	}
	held, units, weightSum := p.boundQuotas()
	out := make([]float64, len(claims))
	for i, w := range p.weight {
		if out[i] = float64(p.low[i]); !held[i] {
			out[i] = float64(w) / float64(weightSum) * float64(units)
		}
	}
	return out, nil
}
