package thermal

import "math"

// PressureAtAltitude returns the pressure of the standard atmosphere in Pa at an
// altitude in m above the sea:
//
//	p = 101325 (1 - 2.25577e-5 z)^5.2559
//
// for z in -5000..11000 m; outside it returns a *RangeError. The weather moves the
// true pressure by +-3 %.
//
// Source: ASHRAE Handbook Fundamentals (SI) 2021, ch. 1, eq. 3, read in a
// copy.
func PressureAtAltitude(m float64) (float64, error) {
	if err := within("altitude", m, -5000, 11000, "m", "ASHRAE Handbook Fundamentals 2021, ch. 1, eq. 3"); err != nil {
		return 0, err
	}
	return StandardPressure * math.Pow(1-2.25577e-5*m, 5.2559), nil
}

// AltitudeAtPressure returns the altitude in m at which the standard atmosphere
// has the pressure pa: the inverse of PressureAtAltitude, with the same range.
func AltitudeAtPressure(pa float64) (float64, error) {
	const low, high = 22631, 177688 // Pa at 11000 and -5000 m
	if err := within("air pressure", pa, low, high, "Pa", "ASHRAE Handbook Fundamentals 2021, ch. 1, eq. 3"); err != nil {
		return 0, err
	}
	return (1 - math.Pow(pa/StandardPressure, 1/5.2559)) / 2.25577e-5, nil
}
