package published

import "testing"

func TestOutsideLimits(t *testing.T) {
	for _, c := range []struct{ n, least, most int }{
		{1, 0, 1}, {8, 0, 2}, {20, 0, 3}, {40, 0, 5}, {63, 0, 7}, {107, 1, 10}, {1000, 37, 64},
	} {
		if least, most := OutsideLimits(c.n); least != c.least || most != c.most {
			t.Errorf("%d points: %d to %d outside, want %d to %d", c.n, least, most, c.least, c.most)
		}
	}
}

// The limits against the sum of the distribution's own terms.
func TestOutsideLimitsHoldNinetyFivePerCent(t *testing.T) {
	for n := 1; n <= 300; n++ {
		least, most := OutsideLimits(n)
		below, within, p := 0.0, 0.0, 1.0
		for range n {
			p *= 0.95
		}
		for k := 0; k <= n; k++ {
			switch {
			case k < least:
				below += p
			case k <= most:
				within += p
			}
			p *= float64(n-k) / float64(k+1) * 0.05 / 0.95
		}
		if above := 1 - below - within; below > 0.025 || above > 0.025+1e-12 {
			t.Errorf("%d points: %.4f below, %.4f above the limits", n, below, above)
		}
	}
}
