package viscometer_test

import (
	"testing"
	"time"
)

func TestACupDoesNotAllocate(t *testing.T) {
	cup := cup("ISO 4")
	for name, call := range map[string]func(){
		"KinematicViscosity": func() { cup.KinematicViscosity(40 * time.Second) },
		"Time":               func() { cup.Time(5e-5) },
	} {
		if n := testing.AllocsPerRun(100, call); n != 0 {
			t.Errorf("%s allocates %v times", name, n)
		}
	}
}
