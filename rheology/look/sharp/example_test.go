package sharp_test

import (
	"fmt"
	"time"

	"example.org/honestplate/rheology/look/sharp"
)

// A drop at 2 m/s, half life size, a pixel of 4 um: which light keeps it within a pixel, and
// which within what a print shows?
func ExampleCamera_Freezes() {
	camera := sharp.Camera{Magnification: 0.5, Pixel: 4e-6}
	for _, limit := range []float64{camera.Pixel, sharp.FullFrameCircle} {
		seconds, err := camera.Freezes(2, limit)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%2.0f um: 1/%.0f s\n", limit*1e6, 1/seconds)
	}
	// Output:
	//  4 um: 1/250000 s
	// 30 um: 1/33333 s
}

// The maker prints 1/5000 s. It is t0.5; the tail is in the picture too.
func ExampleCamera_Blur() {
	camera := sharp.Camera{Magnification: 0.5, Pixel: 4e-6}
	blur, err := camera.Blur(2, sharp.Exposure{HalfPower: time.Second / 5000})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%v pixels, brightest over %.0f\n", blur.Pixels, blur.Pixels.Low)
	// Output:
	// 150 (50..166) pixels, brightest over 50
}

// A stream at 1 m/s at a fifth of life size, for a print: what to set on the flash.
func ExampleUnit_For() {
	seconds, err := sharp.Camera{Magnification: 0.2, Pixel: 4e-6}.Freezes(1, sharp.FullFrameCircle)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("wanted 1/%.0f s\n", 1/seconds)
	for _, u := range sharp.Units() {
		s, err := u.For(seconds)
		if err != nil {
			fmt.Printf("%s: none is short enough\n", u.Name)
			continue
		}
		fmt.Printf("%s: %s (%s)\n", u.Name, s.Power, s.Known)
	}
	// Output:
	// wanted 1/6667 s
	// hot-shoe flash, guide number 28: 1/64 (read)
	// hot-shoe flash, guide number 24: 1/16 (read)
	// studio flash, voltage regulated: none is short enough
	// studio flash with a switch (IGBT): lowest (memory)
	// air-gap spark flash: 1/1 (memory)
}

// A drop of milk of 4 mm falls into the full bowl at 2 m/s. When to press?
func ExampleContact_Moments() {
	m, err := sharp.Contact{Diameter: 0.004, Speed: 2, Depth: 0.03}.Moments()
	if err != nil {
		fmt.Println(err)
		return
	}
	ms := func(d time.Duration) int64 { return d.Round(time.Millisecond).Milliseconds() }
	fmt.Printf("crater deepest after %d ms (%d to %d), at most %.0f mm\n",
		ms(m.Crater.Likely.After), ms(m.Crater.Earliest.After), ms(m.Crater.Latest.After), 1000*m.CraterRadius)
	fmt.Printf("jet after %d ms (%d to %d)\n", ms(m.Jet.Likely.After), ms(m.Jet.Earliest.After), ms(m.Jet.Latest.After))
	// Output:
	// crater deepest after 42 ms (21 to 64), at most 10 mm
	// jet after 85 ms (42 to 169)
}

// A crown has a radius of 14 mm when it falls back after 40 ms. How fast was its rim after 2 ms?
func ExampleRimSpeed() {
	v, err := sharp.RimSpeed(0.014, 40*time.Millisecond, 2*time.Millisecond)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.2f m/s\n", v)
	// Output:
	// 0.78 m/s
}
