package published

import "gonum.org/v1/gonum/stat/distuv"

// OutsideLimits returns the least and the most of n points that may lie outside their
// 95 % bands: the central 95 % of the binomial distribution of n trials at 0.05. Fewer
// says that the bands are too wide, more that they are too narrow.
func OutsideLimits(n int) (least, most int) {
	b := distuv.Binomial{N: float64(n), P: 0.05}
	for b.CDF(float64(least)) <= 0.025 {
		least++
	}
	for most = least; b.CDF(float64(most)) < 0.975; {
		most++
	}
	return least, most
}
