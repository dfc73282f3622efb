package thermal_test

import (
	"fmt"
	"log"
	"math"
	"time"

	"example.org/honestplate/thermal"
)

// A sheet of ice on a tray of water whose surface is kept at -20 degC: by the
// quasi-steady law, and with the heat that the ice itself stores.
func ExampleSheetTime() {
	ice := thermal.Phase{Conductivity: 2.2, HeatCapacity: 1.93e6}
	water := thermal.Phase{Conductivity: 0.57, HeatCapacity: 4.2e6}
	const thick, latent = 0.01, 306e6 // m, J/m3
	t, err := thermal.SheetTime(0, thick, 20, ice.Conductivity, latent)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println("quasi-steady:", t.Round(time.Second))
	for _, warm := range []float64{0, 10} {
		lambda, err := thermal.NeumannLambda(ice, water, 20, warm, latent)
		if err != nil {
			log.Fatal(err)
		}
		s := math.Pow(thick/(2*lambda), 2) * ice.HeatCapacity / ice.Conductivity
		fmt.Printf("water at %2.0f degC: %v\n", warm, time.Duration(s*1e9).Round(time.Second))
	}
	// Output:
	// quasi-steady: 5m48s
	// water at  0 degC: 6m2s
	// water at 10 degC: 7m18s
}

// Half of a ball of ice of 50 mm, dripping in warm air: a smaller ball takes up heat
// the quicker, by the square metre.
func ExampleBallMeltTime() {
	h := func(diameter float64) float64 { return 15 * math.Pow(diameter/0.05, -0.25) }
	t, err := thermal.BallMeltTime(0.05, 0.5, 24, 306e6, h)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println(t.Round(time.Minute))
	// Output:
	// 1h11m0s
}

// A wax of invented figures, as the solver sees it: enthalpy and conductivity by
// points. How far a disc of 10 mm melts in hot air.
func ExampleCurvePoint() {
	wax := thermal.Curve{
		thermal.CurvePoint{TempC: 20, Enthalpy: 0, Conductivity: 0.25},
		thermal.CurvePoint{TempC: 50, Enthalpy: 60e6, Conductivity: 0.25},
		thermal.CurvePoint{TempC: 58, Enthalpy: 230e6, Conductivity: 0.16},
		thermal.CurvePoint{TempC: 80, Enthalpy: 270e6, Conductivity: 0.16},
	}
	disc := thermal.Body{Form: thermal.SlabForm, Radius: 0.005, Curve: wax}
	warm := func(surfaceC float64, _ time.Duration) float64 { return 60 * (75 - surfaceC) }
	states, err := disc.Run(20, 58, warm, 10*time.Minute, 20*time.Minute)
	if err != nil {
		log.Fatal(err)
	}
	for _, s := range states {
		fmt.Printf("%v: surface %.0f, core %.0f degC, melted %.0f %%\n", s.Time, s.SurfaceC, s.CoreC, 100*s.PastShare)
	}
	// Output:
	// 10m0s: surface 62, core 51 degC, melted 49 %
	// 20m0s: surface 67, core 56 degC, melted 91 %
}
