package look_test

import (
	"errors"
	"fmt"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/rheology"
	"example.org/honestplate/rheology/look"
	"example.org/honestplate/rheology/look/colour"
	"example.org/honestplate/rheology/pour"
)

// How white is a deep bowl of this milk under tungsten light, and how far is that known?
func ExampleOptics_Appear() {
	milk, err := look.Milk{FatPercent: 3.5, HomogenisedMPa: honestplate.Some(20)}.Optics()
	if err != nil {
		fmt.Println(err)
		return
	}
	a, err := milk.Appear(look.Scene{Light: colour.A})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("L* %v, b* %v, %s\n", a.Lightness, a.Yellow, a.Swatch.Hex())
	// Output:
	// L* 96.1 (94.6..97.6), b* 9.6 (6.1..14.0), #f9f3e1
}

// The blend beside the milk: as a thin coat on the fruit, and as a deep pool.
func ExampleOptics_Beside() {
	milk, err := look.Milk{FatPercent: 3.5}.Optics()
	if err != nil {
		fmt.Println(err)
		return
	}
	cream, err := look.Milk{FatPercent: 36, Carotene: honestplate.Some(6)}.Optics()
	if err != nil {
		fmt.Println(err)
		return
	}
	blend, err := look.Mix(look.Part{Optics: milk, Volume: 4}, look.Part{Optics: cream, Volume: 1})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, s := range []look.Scene{{Depth: honestplate.Some(0.3e-3)}, {}} {
		c, err := blend.Beside(&milk, s)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("L* %.0f beside %.0f, b* %.0f beside %.0f: %v\n",
			c.First.Lab.L, c.Second.Lab.L, c.First.Lab.B, c.Second.Lab.B, c.Eye)
	}
	// Output:
	// L* 65 beside 60, b* -6 beside -10: well visible
	// L* 95 beside 95, b* 13 beside 10: noticeable
}

// From which depth does milk hide black from white, and from which a flake in a white bowl?
func ExampleOptics_Hides() {
	milk, err := look.Milk{FatPercent: 3.5}.Optics()
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, dark := range []look.Ground{look.Black, look.Flake} {
		depth, err := milk.Hides(look.Scene{}, dark, look.White, look.Hidden)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%v mm\n", depth.Times(1000))
	}
	// Output:
	// 4.5 (2.3..8.5) mm
	// 4.0 (2.1..7.6) mm
}

// What does the milk that is left on a glass two seconds after the pour still hide of the
// chocolate behind it?
func ExampleOptics_Contrast() {
	liquid := rheology.Dairy{FatPercent: 3.5}
	coat, err := pour.Wall{Height: 0.05}.Drain(liquid, 6, 2*time.Second)
	if err != nil {
		fmt.Println(err)
		return
	}
	milk, err := look.Of(liquid)
	if err != nil {
		fmt.Println(err)
		return
	}
	o, err := milk.Optics()
	if err != nil {
		fmt.Println(err)
		return
	}
	contrast, err := o.Contrast(look.Scene{}, coat.Mean.Likely, look.Chocolate, look.White)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.2f mm: contrast %.2f of %.2f\n", 1000*coat.Mean.Likely, contrast, look.Hidden)
	// Output:
	// 0.06 mm: contrast 0.12 of 0.98
}

// How much cream until 2 mm over the flakes hide to 0.95? Not in what is sold.
func ExampleCreamFor() {
	recipe := rheology.Recipe{
		Thin: rheology.Dairy{FatPercent: 3.5}, Thick: rheology.Dairy{FatPercent: 36},
		BatchGrams: 500, StepGrams: 1, TempC: 6,
	}
	c, err := look.CreamFor(recipe, 0.002, 0.95)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.0f g of milk, %.0f g of cream\n", c.Batch.ThinGrams, c.Batch.ThickGrams)
	recipe.Advertised = true
	_, err = look.CreamFor(recipe, 0.002, 0.95)
	fmt.Println(errors.Is(err, honestplate.ErrAdvertised))
	// Output:
	// 368 g of milk, 132 g of cream
	// true
}

// What milk is for light at one wavelength, and how far that is known.
func ExampleOptics_At() {
	for _, m := range []look.Milk{{FatPercent: 3.5}, {FatPercent: 3.5, HomogenisedMPa: honestplate.Some(20)}} {
		o, err := m.Optics()
		if err != nil {
			fmt.Println(err)
			return
		}
		c, err := o.At(550)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("reduced scattering %v per mm, absorption %.4f per mm\n", c.ReducedScattering.Times(1e-3), c.Absorption/1000)
	}
	// Output:
	// reduced scattering 4.4 (2.3..8.4) per mm, absorption 0.0023 per mm
	// reduced scattering 4.89 (4.07..5.87) per mm, absorption 0.0023 per mm
}
