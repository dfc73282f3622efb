package rheology

import "math"

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
// fading out from 30 to 40 degC. No published n and K by fat were found: n is an
// engineering estimate, no source, and the band allows 1-n to be anything from 0 to
// twice that. Stirring and ageing change cold cream more than shear rate does.
func (d Dairy) ViscosityAtRate(tempC, shearRate float64) (Estimate, error) {
	if err := notNegative("shear rate", shearRate, "1/s"); err != nil {
		return Estimate{}, err
	}
	e, err := d.Viscosity(tempC)
	if err != nil || d.FatPercent <= thinningFat || tempC >= 40 {
		return e, err
	}
	index := thinningMost * (d.FatPercent - thinningFat) / (dairyHighFat - thinningFat) * (1 - smoothstep((tempC-30)/10))
	decades := math.Log(min(max(shearRate, thinningRate0), thinningRate1) / dairyRate)
	most := math.Exp(-2 * index * decades)
	return Estimate{
		Value: e.Value * math.Exp(-index*decades),
		Low:   e.Low * min(1, most),
		High:  e.High * max(1, most),
	}, nil
}
