package thermal

import (
	"testing"
	"time"

	"example.org/honestplate"
)

func TestRoundingAWindowKeepsItsOrderAndNever(t *testing.T) {
	w := honestplate.Window{Earliest: 89 * time.Second, Likely: 91 * time.Second, Latest: Never}
	for _, c := range []struct {
		to   time.Duration
		want honestplate.Window
	}{
		{time.Minute, honestplate.Window{time.Minute, 2 * time.Minute, Never}},
		{15 * time.Second, honestplate.Window{90 * time.Second, 90 * time.Second, Never}},
		{0, w},
		{-time.Second, w},
	} {
		if got := w.Round(c.to); got != c.want {
			t.Errorf("rounded to %v: %v, want %v", c.to, got, c.want)
		}
	}
	never := honestplate.Window{Never, Never, Never}
	for _, to := range []time.Duration{time.Nanosecond, time.Second, time.Hour, 10000 * time.Hour} {
		if got := never.Round(to); got != never {
			t.Errorf("never rounded to %v is %v", to, got)
		}
	}
}
