package heat_test

import (
	"fmt"
	"os"
	"text/tabwriter"

	"example.org/honestplate/thermal/heat"
)

// What does a wet surface exchange with the room, W/m2, as it goes from frozen to hot?
// Dew and frost heat it; from the dew point on it dries, and hot food cools mostly by
// that.
func ExampleExchanger_At() {
	room := heat.MoistAir{TempC: 23, RH: 0.5}
	wet := heat.Surface{Shape: heat.PlateUp, Length: 0.05, Activity: 1}
	x, err := wet.In(room)
	if err != nil {
		fmt.Println(err)
		return
	}
	w := tabwriter.NewWriter(os.Stdout, 0, 0, 2, ' ', tabwriter.AlignRight)
	fmt.Fprintln(w, "degC\tair\troom\tvapour\tg/m2 min\t")
	for _, t := range []float64{-18, 0, 12, 23, 60, 85} {
		f, err := x.At(t, 0)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Fprintf(w, "%.0f\t%.0f\t%.0f\t%.0f\t%.1f\t\n", t, f.Convection, f.Radiation, f.Latent, 6e4*f.VapourRate)
	}
	w.Flush()
	// Output:
	// degC   air  room  vapour  g/m2 min
	//    -18   158   184      96       2.0
	//      0    76   113      45       1.1
	//     12    30    58       0       0.0
	//     23     0     0     -78      -1.9
	//     60  -299  -247   -2644     -67.3
	//     85  -612  -467  -12683    -331.6
}

// A fan doubles what a still room does to a cold glass.
func ExampleSurface_In() {
	glass := heat.Surface{Shape: heat.VerticalCylinder, Length: 0.08, Diameter: 0.075}
	for _, speed := range []float64{0, 0.2, 1} {
		x, err := glass.In(heat.MoistAir{TempC: 23, RH: 0.5, Speed: speed})
		if err != nil {
			fmt.Println(err)
			return
		}
		f, err := x.At(3, 0)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%.1f m/s: h %.1f W/(m2 K), dew %.1f g/(m2 min)\n", speed, f.H, 6e4*f.VapourRate)
	}
	// Output:
	// 0.0 m/s: h 5.8 W/(m2 K), dew 1.5 g/(m2 min)
	// 0.2 m/s: h 7.1 W/(m2 K), dew 1.9 g/(m2 min)
	// 1.0 m/s: h 13.0 W/(m2 K), dew 3.4 g/(m2 min)
}

// How warm does a dry prop get under a lamp, black paper and white?
func ExampleExchanger_EquilibriumC() {
	x, err := heat.Surface{Shape: heat.PlateUp, Length: 0.05}.In(heat.MoistAir{TempC: 23, RH: 0.5, Speed: 0.15})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, light := range []float64{50, 200, 400} {
		c, err := x.EquilibriumC(light)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("absorbs %3.0f W/m2: %.0f degC\n", light, c)
	}
	// Output:
	// absorbs  50 W/m2: 28 degC
	// absorbs 200 W/m2: 39 degC
	// absorbs 400 W/m2: 53 degC
}
