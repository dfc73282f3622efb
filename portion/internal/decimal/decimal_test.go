package decimal

import "testing"

func TestDecimalsReadAsWritten(t *testing.T) {
	for _, c := range []struct {
		v    float64
		want Decimal
	}{{0.5, Decimal{5, -1}}, {-62, Decimal{-62, 0}}, {0.1 + 0.2, Decimal{3, -1}}, {1e300, Decimal{1, 300}}, {0, Decimal{}}, {123.456, Decimal{123456, -3}}} {
		if got := Of(c.v); got != c.want {
			t.Errorf("%v: %+v, want %+v", c.v, got, c.want)
		}
	}
	for _, c := range []struct {
		d    Decimal
		n    int64
		want float64
	}{{Decimal{1, -1}, 3, 0.3}, {Decimal{5, 2}, 2, 1000}, {Decimal{123456789012345, -14}, 1e12, 1234567890123.45}, {Decimal{1, 30}, 7, 7e30}, {Decimal{1, -1}, 0, 0}} {
		if got := c.d.Times(c.n); got != c.want {
			t.Errorf("%+v x %d = %v, want %v", c.d, c.n, got, c.want)
		}
	}
}
