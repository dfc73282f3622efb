package rheology

import (
	"cmp"
	"math"

	"example.org/honestplate"
	"example.org/honestplate/rheology/internal/check"
)

// Cold cream thins with shear above this fat content and below the melting of
// the fat. Rothwell 1966 found cream cooled no further than 20 degC Newtonian; Nair &
// Mook 1933 found cold cream thixotropic (both abstracts read). Neither prints a
// coefficient.
const (
	thinningFat   = 20.0 // %, from which on
	thinningMost  = 0.2  // 1 - n at 50 % fat in the cold: engineering estimate, no source
	thinningRate0 = 1.0  // 1/s, plateau below
	thinningRate1 = 1000 // 1/s, plateau above
)

// ViscosityAtRate returns the apparent viscosity in Pa s at a shear rate in 1/s.
// Up to 20 % fat, or from 40 degC, it is Viscosity. Above, the cream thins as a
// power law between 1 and 1000 1/s with a plateau on either side,
//
//	eta = Viscosity x (rate/100)^(n-1),  n = 1 - 0.2 (F - 20)/30
//
// fading out from 20 to 40 degC as the fat melts. No published n and K by fat were found: n is an
// engineering estimate, no source, and the band allows 1-n to be anything from 0 to
// twice that. Stirring and ageing change cold cream more than shear rate does.
func (d Dairy) ViscosityAtRate(tempC, shearRate float64) (honestplate.Estimate, error) {
	v, low, high, err := d.lnViscosity(tempC)
	err = cmp.Or(honestplate.NotNegative("ShearRate", shearRate, "1/s"), err)
	return check.Unless(err, exp(thinningAt(tempC, shearRate).ln(d.FatPercent, v, low, high)))
}

// thinning is what a shear rate does to the cold creams of a temperature: ln of the rate
// over that of Viscosity, times how cold it is. 0 does nothing.
type thinning float64

func thinningAt(tempC, shearRate float64) thinning {
	if tempC >= meltEnd {
		return 0
	}
	return thinning(math.Log(min(max(shearRate, thinningRate0), thinningRate1)/dairyRate) * coldShare(tempC))
}

// ln moves the logarithms of a viscosity and its band from the rate of Viscosity to this
// one.
func (t thinning) ln(fatPercent, v, low, high float64) (value, l, h float64) {
	by := t.by(fatPercent)
	return v + by, low + min(0, 2*by), high + max(0, 2*by)
}

// by is how far the logarithm of the viscosity moves.
func (t thinning) by(fatPercent float64) float64 {
	return -thinningMost / (dairyHighFat - thinningFat) * max(0, fatPercent-thinningFat) * float64(t)
}
