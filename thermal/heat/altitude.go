package heat

import (
	"math"

	"example.org/honestplate"
)

// PressureAtAltitude returns the pressure of the standard atmosphere in Pa at an
// altitude in m above the sea:
//
//	p = 101325 (1 - 2.25577e-5 z)^5.2559
//
// for z in -5000..11000 m; outside it returns an [honestplate.RangeError]. The weather moves the
// true pressure by +-3 %.
//
// Source: ASHRAE Handbook Fundamentals (SI) 2021, ch. 1, eq. 3, read in a
// copy.
func PressureAtAltitude(m float64) (float64, error) {
	if err := honestplate.InRange("Altitude", m, -5000, 11000, "m", "ASHRAE Handbook Fundamentals 2021, ch. 1, eq. 3"); err != nil {
		return 0, err
	}
	return StandardPressure * math.Pow(1-2.25577e-5*m, 5.2559), nil
}
