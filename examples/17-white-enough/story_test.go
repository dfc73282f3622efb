package main

import (
	"errors"
	"fmt"
	"testing"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/rheology"
	"example.org/honestplate/rheology/look"
	"example.org/honestplate/rheology/pour"
)

func TestPage(t *testing.T) { chapter.Check(t) }

// A bowl of flakes, a jug of milk. On the screen the milk is grey, the flakes show through
// it, and the client says: whiter. The usual answer is cream. Crews say that the blend is
// whiter than milk. Is it?
//
// # What makes it white
//
// Milk is white because it is full of small things of another refractive index: casein
// micelles of a twentieth of a micrometre, and fat globules. Each takes light out of its
// way. How far light gets before it has forgotten where it came from is the reciprocal
// of the reduced scattering.
func Example_whatScatters() {
	for _, c := range []struct {
		name string
		milk look.Milk
	}{
		{"skim milk", look.Milk{FatPercent: 0.1, HomogenisedMPa: honestplate.Some(20)}},
		{"milk, homogenised", look.Milk{FatPercent: 3.5, HomogenisedMPa: honestplate.Some(20)}},
		{"milk, not homogenised", look.Milk{FatPercent: 3.5, HomogenisedMPa: honestplate.Some(0)}},
		{"cream", look.Milk{FatPercent: 36, HomogenisedMPa: honestplate.Some(0)}},
	} {
		o, err := c.milk.Optics()
		if err != nil {
			fmt.Println(err)
			return
		}
		at, err := o.At(550)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%-22s %v per mm\n", c.name, at.ReducedScattering.Times(1e-3))
	}
	// Output:
	// skim milk              1.03 (0.86..1.24) per mm
	// milk, homogenised      4.89 (4.07..5.87) per mm
	// milk, not homogenised  2.66 (2.21..3.19) per mm
	// cream                  10.6 (5.3..21.3) per mm
}

// Fat counts, and so does how small it was beaten. Milk that was not homogenised scatters
// about half as much. The band of cream is wide: the model adds up globules as if each were
// alone, and in cream they are not.
//
// # As a coat, as a pool
//
// Now the blend: four parts of milk, one of cream, beside the milk alone. A coat of 0.3 mm
// on a dark berry; a deep bowl. Three lights, and for each the camera is balanced. The
// difference is CIEDE2000: from 0.5 on an eye finds it side by side, from 3 on at a glance.
func Example_coatAndPool() {
	milk, blend, _, err := liquids(usualCarotene)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, light := range lights {
		for _, s := range []struct {
			name  string
			scene look.Scene
		}{{"coat", look.Scene{Depth: honestplate.Some(0.3e-3), Light: light}}, {"pool", look.Scene{Light: light}}} {
			c, err := blend.Beside(&milk, s.scene)
			if err != nil {
				fmt.Println(err)
				return
			}
			fmt.Printf("%-6v %s: L* %.0f and %.0f, b* %.0f and %.0f; difference %v, %v\n", light, s.name,
				c.First.Lab.L, c.Second.Lab.L, c.First.Lab.B, c.Second.Lab.B, c.Difference, c.Eye)
		}
	}
	// Output:
	// D65    coat: L* 66 and 62, b* -6 and -10; difference 4.4 (2.0..6.6), well visible
	// D65    pool: L* 96 and 96, b* 13 and 10; difference 2.38 (1.69..3.17), noticeable
	// A      coat: L* 66 and 61, b* -7 and -10; difference 4.8 (2.3..7.0), well visible
	// A      pool: L* 96 and 96, b* 14 and 10; difference 2.61 (1.87..3.43), noticeable
	// LED-B3 coat: L* 66 and 62, b* -7 and -10; difference 4.6 (2.2..6.8), well visible
	// LED-B3 pool: L* 96 and 96, b* 14 and 11; difference 2.51 (1.80..3.32), noticeable
}

// The blend's numbers come first. Read by rows. As a thin coat the blend is whiter, and
// anybody sees it. As a pool it is no whiter: milk was as white as it gets, for all light
// that goes in comes out again. But it is yellower, and that one sees too. The yellow is
// carotene, which lives in the fat and comes from what the cow ate.
//
// Figure: swatches
//
// So where the lens looks into a deep bowl, cream does not make it whiter by this model.
// That crews find it whiter is common practice, no source; no published colour of cream was
// found that could decide it. Ask for the carotene, or read the b* off the client's own
// cream, before you promise anything.
func Example_carotene() {
	for _, mg := range []float64{0, 3, 6, 12} {
		milk, blend, _, err := liquids(mg)
		if err != nil {
			fmt.Println(err)
			return
		}
		c, err := blend.Beside(&milk, look.Scene{})
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%2.0f mg per kg of fat: the pool of the blend has b* %.0f, the milk %.0f: %v\n", mg, c.First.Lab.B, c.Second.Lab.B, c.Eye)
	}
	// Output:
	// 0 mg per kg of fat: the pool of the blend has b* 6, the milk 6: not seen
	//  3 mg per kg of fat: the pool of the blend has b* 10, the milk 8: slightly noticeable
	//  6 mg per kg of fat: the pool of the blend has b* 13, the milk 10: noticeable
	// 12 mg per kg of fat: the pool of the blend has b* 18, the milk 12: well visible
}

// # How thin still hides
//
// Paint is said to hide when black under it reflects at least 0.98 of what white does. How
// deep must it be? A clear glass is gone when all that may stand behind it is: that is black
// on white too. And for less: a flake in a white bowl.
func Example_hiding() {
	milk, blend, cream, err := liquids(usualCarotene)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, c := range []struct {
		name string
		o    *look.Optics
	}{{"milk", &milk}, {"blend", &blend}, {"cream", &cream}} {
		full, err := c.o.Hides(look.Scene{}, look.Black, look.White, look.Hidden)
		if err != nil {
			fmt.Println(err)
			return
		}
		flake, err := c.o.Hides(look.Scene{}, look.Flake, look.White, 0.95)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%-5s black on white is gone at %v mm, a flake in a white bowl all but gone at %v mm\n",
			c.name, full.Times(1000), flake.Times(1000))
	}
	// Output:
	// milk  black on white is gone at 4.1 (2.7..6.1) mm, a flake in a white bowl all but gone at 2.19 (1.46..3.28) mm
	// blend black on white is gone at 3.3 (2.2..4.9) mm, a flake in a white bowl all but gone at 1.75 (1.17..2.63) mm
	// cream black on white is gone at 1.9 (0.9..3.8) mm, a flake in a white bowl all but gone at 0.98 (0.49..1.96) mm
}

// Nothing that runs off by itself is as thick as that. Two seconds after the jug has
// passed, this is left on a glass wall of 5 cm, and this is what it does to the chocolate
// behind it.
func Example_whatIsLeftOnTheGlass() {
	milk, blend, cream, err := liquids(usualCarotene)
	if err != nil {
		fmt.Println(err)
		return
	}
	thin, thick := rheology.Dairy{FatPercent: 3.5}, rheology.Dairy{FatPercent: 36}
	mix, err := rheology.Blend(rheology.Part{Liquid: thin, Grams: 400}, rheology.Part{Liquid: thick, Grams: 100})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, c := range []struct {
		name   string
		liquid rheology.Liquid
		o      *look.Optics
	}{{"milk", thin, &milk}, {"blend", mix, &blend}, {"cream", thick, &cream}} {
		coat, err := pour.Wall{Height: 0.05}.Drain(c.liquid, 6, 2*time.Second)
		if err != nil {
			fmt.Println(err)
			return
		}
		contrast, err := c.o.Contrast(look.Scene{}, coat.Mean.Likely, look.Chocolate, look.White)
		if err != nil {
			fmt.Println(err)
			return
		}
		a, err := c.o.Appear(look.Scene{Depth: honestplate.Some(coat.Mean.Likely), Ground: look.Chocolate})
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%-5s leaves %v mm: contrast %.2f, L* %.0f over chocolate\n", c.name, coat.Mean.Times(1000), contrast, a.Lab.L)
	}
	// Output:
	// milk  leaves 0.0578 (0.0496..0.0672) mm: contrast 0.13, L* 35 over chocolate
	// blend leaves 0.067 (0.056..0.088) mm: contrast 0.16, L* 39 over chocolate
	// cream leaves 0.165 (0.122..0.319) mm: contrast 0.52, L* 67 over chocolate
}

// A coat that was left behind never hides. It veils. Where the flake must be gone, it
// must lie under the milk, not behind what runs off it.
//
// Figure: hiding
//
// # How much cream
//
// Turn it round. The bowl has 2 mm over the flakes. Which half kilogram of milk and cream
// hides black from white to 0.95 with those 2 mm? That is more than
// a flake asks.
func Example_creamFor() {
	recipe := rheology.Recipe{
		Thin: rheology.Dairy{FatPercent: 3.5}, Thick: rheology.Dairy{FatPercent: 36},
		BatchGrams: 500, StepGrams: 1, TempC: 6,
	}
	for _, mm := range []float64{3, 2, 1} {
		c, err := look.CreamFor(recipe, mm/1000, 0.95)
		if err != nil {
			fmt.Printf("%g mm: %v\n", mm, err)
			continue
		}
		fmt.Printf("%g mm: %.0f g of milk, %.0f g of cream: contrast %v\n", mm, c.Batch.ThinGrams, c.Batch.ThickGrams, c.Contrast)
	}
	recipe.Advertised = true
	_, err := look.CreamFor(recipe, 0.002, 0.95)
	fmt.Println("advertised:", errors.Is(err, honestplate.ErrAdvertised))
	// Output:
	// 3 mm: 500 g of milk, 0 g of cream: contrast 0.956 (0.883..0.986)
	// 2 mm: 368 g of milk, 132 g of cream: contrast 0.950 (0.865..0.985)
	// 1 mm: honestplate: coat: the thick liquid alone hides to 0.94 at 1 mm; it takes a coat of 1.1 mm
	// advertised: true
}

// The advertised milk is not thickened, not for its look either: what is shown is what is
// sold. For a stand-in beside the advertised cereal the band says to test: pour the depth
// that you need over a black and a white stripe, and look.
//
// # What could go wrong
//
// The numbers are for a wide and level pool. A colorimeter looks through a small port,
// loses light at its edge and reads milk darker, skim milk by 13 of L*: a reading and a
// prediction are two things. Froth is whiter than any milk, and goes.
//
// The flake, the chocolate and the white are assumed, no source. Wet, everything is
// darker than dry: take yours wet, beside a grey card.
//
// Milk that stood under the lamps is not for drinking, and milk and cereal are on the lists
// of allergens: label what is on the table.
//
// # Sources
//
// Globules, micelles and their indices: Frisvad, Christensen and Jensen 2007, "Computing
// the scattering properties of participating media using Lorenz-Mie theory" (as read in
// the first author's program). Absorption of milk: Jensen and others 2001 (read in public
// code). Layers: van de Hulst 1980 and Prahl, van Gemert and Welch 1993. Observer and
// lights: CIE. Difference: Sharma, Wu and Dalal 2005; its steps for the eye from an
// abstract on plant drinks. Carotene by season and the contrast ratio of 0.98: from
// memory. The coat on the glass: Jeffreys 1930. Cereal, bowl and jug are invented.
func Example_sources() {}
