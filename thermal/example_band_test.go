package thermal_test

import (
	"fmt"
	"time"

	"example.org/honestplate/thermal"
)

// How sure is it when a chilled plate stops fogging? The model is simple: the plate
// warms towards the room and clears when it passes the dew point. What the room is
// like and how fast it warms are known only so well.
func ExampleStudy() {
	study := thermal.Study{
		Inputs: []thermal.Uncertain{
			{Name: "room temperature", Likely: 23, Low: 22, High: 24},
			{Name: "humidity", Likely: 0.50, Low: 0.40, High: 0.60, Min: 0, Max: 1},
			{Name: "time constant", Likely: 12, Low: 9, High: 16, Scale: true}, // minutes
		},
		Events: 1,
		Model: func() func([]float64, []time.Duration) error {
			return func(x []float64, at []time.Duration) error {
				dew, err := thermal.Air{TempC: x[0], RH: x[1]}.DewPointC()
				if err != nil {
					return err
				}
				plate := thermal.Lumped{
					Material: thermal.Material{Conductivity: 1.5, Density: 2000, SpecificHeat: 900},
					Volume:   0.005, Area: 1, H: 0.005 * 2000 * 900 / (60 * x[2]), StartC: 2, AmbientC: x[0],
				}
				at[0], err = plate.TimeTo(dew)
				return err
			}
		},
	}
	out, err := study.Run()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("clear after", out[0].Window)
	for _, s := range out[0].Decides {
		fmt.Println(s)
	}
	// Output:
	// clear after 7:47 (4:18..12:29)
	// humidity 69 % (4:36 to 11:19)
	// time constant 30 % (5:51 to 10:23)
	// room temperature 1 % (7:18 to 8:16)
}

// A band of minutes, read in quarters of a minute.
func ExampleWindow_Round() {
	w := thermal.Window{Earliest: 224 * time.Second, Likely: 529 * time.Second, Latest: thermal.Never}
	fmt.Println(w.Round(15 * time.Second))
	// Output:
	// 8:45 (3:45..never)
}
