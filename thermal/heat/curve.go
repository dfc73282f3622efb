package heat

import (
	"fmt"

	"example.org/honestplate/thermal/internal/check"
)

// A CurvePoint is one point of a Curve.
type CurvePoint struct {
	TempC        float64 // degC
	Enthalpy     float64 // by volume, J/m3, from any datum
	Conductivity float64 // W/(m K)
}

// A Curve is a material as the solver sees it: enthalpy and conductivity against
// temperature, straight between the points. Temperature and enthalpy must both
// rise strictly from point to point. A change of phase at one temperature is
// given as a narrow range, such as 0.02 K: see Melting.
type Curve []CurvePoint

// A Melting is a material that melts at one temperature, spread over a small width
// about it.
type Melting struct {
	TempC                 float64 // where it melts, degC
	Width                 float64 // over which the latent heat is spread, K
	Latent                float64 // by volume, J/m3
	SolidK, LiquidK       float64 // conductivities, W/(m K)
	SolidHeat, LiquidHeat float64 // heat capacities by volume, J/(m3 K)
}

// Curve returns the material from lowC to highC, degC.
func (m Melting) Curve(lowC, highC float64) Curve {
	solid, liquid := m.TempC-m.Width/2, m.TempC+m.Width/2
	molten := m.Latent + (m.SolidHeat+m.LiquidHeat)/2*m.Width
	return Curve{
		{lowC, m.SolidHeat * (lowC - solid), m.SolidK},
		{solid, 0, m.SolidK},
		{liquid, molten, m.LiquidK},
		{highC, molten + m.LiquidHeat*(highC-liquid), m.LiquidK},
	}
}

// maxCurvePoints bounds what a curve may hold.
const maxCurvePoints = 10000

// check demands what the solver needs of a curve.
func (c Curve) check() error {
	if len(c) < 2 || len(c) > maxCurvePoints {
		return check.Input("Curve", float64(len(c)), "points", "2 to 10000")
	}
	for i, p := range c {
		at := fmt.Sprintf("Curve[%d]", i)
		if err := check.Fields("any food or ware",
			check.Number(at+".TempC", p.TempC, -273.15, 5000, "degC"),
			check.Number(at+".Enthalpy", p.Enthalpy, -1e13, 1e13, "J/m3"),
			check.Number(at+".Conductivity", p.Conductivity, 1e-4, 1e5, "W/(m K)")); err != nil {
			return err
		}
		if i > 0 && !(p.TempC-c[i-1].TempC >= 1e-6) {
			return check.Input(at+".TempC", p.TempC, "degC", "at least 1e-6 K above the point before it")
		}
		if i > 0 && !(p.Enthalpy-c[i-1].Enthalpy >= (p.TempC-c[i-1].TempC)*1e-3) {
			return check.Input(at+".Enthalpy", p.Enthalpy, "J/m3", "rising with temperature")
		}
	}
	return nil
}
