package heat_test

import (
	"fmt"
	"time"

	"example.org/honestplate/thermal/heat"
)

// An ice ball in the hand-warm air of a set: the solver follows its melting, and what
// the heat did.
func ExampleBody_Run() {
	ice := heat.Ice()
	solid := ice.Density * ice.SpecificHeat // J/(m3 K)
	curve := heat.Melting{TempC: 0, Width: 0.02, Latent: ice.Density * heat.Fusion,
		SolidK: ice.Conductivity, LiquidK: 0.56, SolidHeat: solid, LiquidHeat: 4.2e6}.Curve(-30, 30)
	ball := heat.Body{Form: heat.SphereForm, Radius: 0.025, Curve: curve}
	air := func(surfaceC float64, _ time.Duration) float64 { return 12 * (25 - surfaceC) }
	states, err := ball.Run(-10, 0.02, air, 10*time.Minute, 30*time.Minute)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, s := range states {
		fmt.Printf("%v: surface %.1f degC, %.0f %% past melting, heat in %.1f kJ\n", s.Time, s.SurfaceC, 100*s.PastShare, s.HeatJ/1000)
	}
	// Output:
	// 10m0s: surface 0.0 degC, 0 % past melting, heat in 1.6 kJ
	// 30m0s: surface 0.7 degC, 13 % past melting, heat in 4.4 kJ
}

// A curve may also be given point by point: a fat that melts over a range.
func ExampleCurve() {
	fat := heat.Curve{
		heat.CurvePoint{TempC: 0, Enthalpy: 0, Conductivity: 0.2},
		heat.CurvePoint{TempC: 25, Enthalpy: 50e6, Conductivity: 0.2},
		heat.CurvePoint{TempC: 35, Enthalpy: 200e6, Conductivity: 0.17},
		heat.CurvePoint{TempC: 80, Enthalpy: 280e6, Conductivity: 0.17},
	}
	slab := heat.Body{Form: heat.SlabForm, Radius: 0.005, Curve: fat}
	states, err := slab.Run(5, 35, func(surfaceC float64, _ time.Duration) float64 { return 10 * (60 - surfaceC) }, 5*time.Minute, 20*time.Minute)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, s := range states {
		fmt.Printf("%v: %.0f %% molten\n", s.Time, 100*s.PastShare)
	}
	// Output:
	// 5m0s: 0 % molten
	// 20m0s: 30 % molten
}

// How much of a lamp's radiation is light: the share between 0.38 and 0.78 um.
func ExampleBlackbodyFraction() {
	for _, kelvin := range []float64{3200, 5600} {
		low, err := heat.BlackbodyFraction(0.38e-6 * kelvin)
		if err != nil {
			fmt.Println(err)
			return
		}
		high, err := heat.BlackbodyFraction(0.78e-6 * kelvin)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%.0f K: %.0f %%\n", kelvin, 100*(high-low))
	}
	// Output:
	// 3200 K: 16 %
	// 5600 K: 46 %
}
