package rheology_test

import (
	"fmt"

	"example.org/honestplate/rheology"
)

// A vessel with a straight wall, a bowl and a thin tube at its foot: how long each
// takes to empty to a centimetre of water, or altogether.
func ExampleOrificeTime() {
	const hole = 20e-6 // m2, 5 mm wide
	say("beaker of 50 cm2, 10 cm to 1 cm: %.0f s", 1)(rheology.OrificeTime(0.005, hole, 0.6, 0.10, 0.01))
	say("half a ball of 8 cm radius, full: %.0f s", 1)(rheology.BowlTime(0.08, 0.08, hole, 0.6))
	say("beaker through a tube of 3 mm, 20 cm long: %.0f s", 1)(rheology.TubeTime(1e-6, 0.20, 0.003, 0.005, 0.10, 0.01))
	// Output:
	// beaker of 50 cm2, 10 cm to 1 cm: 41 s
	// half a ball of 8 cm radius, full: 100 s
	// beaker through a tube of 3 mm, 20 cm long: 118 s
}

// Water over a level lip and through a notch, under the same 15 mm.
func ExampleWeirFlow() {
	say("lip of 30 mm: %.0f mL/s", 1e6)(rheology.WeirFlow(0.03, 0.015, 0.6))
	say("notch of 60 degrees: %.0f mL/s", 1e6)(rheology.NotchFlow(60, 0.015, 0.6))
	// Output:
	// lip of 30 mm: 98 mL/s
	// notch of 60 degrees: 23 mL/s
}

// A tube as viscometer: what it delivers, and back from what it delivered.
func ExampleTubeFlow() {
	q, err := rheology.TubeFlow(10e-6, 0.30, 0.004, 0.20, 2)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.2f mL/s\n", q*1e6)
	say("%.1f mm2/s", 1e6)(rheology.TubeViscosity(q, 0.30, 0.004, 0.20, 2))
	// Output:
	// 3.91 mL/s
	// 10.0 mm2/s
}

// A spout of 5 mm inside and 7 mm outside, with water: when it stops dripping, how large
// its drops are and how fast they end up.
func ExampleDropFromSpout() {
	const rho, sigma = 998, 0.0727
	say("a jet from Weber number %.2f", 1)(rheology.DrippingWeber(0.005, 0.007, rho, sigma))
	d, err := rheology.DropFromSpout(0.007, rho, sigma)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("drops of %.1f mm\n", d*1000)
	say("the share of a hanging drop that falls: %.2f", 1)(rheology.DropWeightFactor(0.8))
	say("after a long fall %.1f m/s", 1)(rheology.DropTerminalSpeed(d))
	// Output:
	// a jet from Weber number 0.47
	// drops of 5.7 mm
	// the share of a hanging drop that falls: 0.60
	// after a long fall 9.3 m/s
}

// Films on walls: what a lifted spoon carries out, what runs down steadily, and what
// never leaves.
func ExampleLandauLevich() {
	say("spoon lifted from cream at 5 cm/s: %.2f mm", 1e3)(rheology.LandauLevich(0.006, 1000, 0.045, 0.05))
	say("syrup running down, 0.1 mL/s a centimetre: %.1f mm", 1e3)(rheology.NusseltFilm(1e-5, 1e-4, 90))
	say("a film of 1 mm of it runs at %.2f mL/s a centimetre", 1e4)(rheology.NusseltFlow(0.001, 1e-4, 90))
	say("ketchup that stays on an upright wall: %.1f mm", 1e3)(rheology.StandingFilm(33, 1140, 90))
	say("and how far back from its edge it is 8 mm deep, on the level: %.0f mm", 1e3)(rheology.DepositFront(33, 1140, 0, 0.008))
	// Output:
	// spoon lifted from cream at 5 cm/s: 0.07 mm
	// syrup running down, 0.1 mL/s a centimetre: 0.7 mm
	// a film of 1 mm of it runs at 0.33 mL/s a centimetre
	// ketchup that stays on an upright wall: 3.0 mm
	// and how far back from its edge it is 8 mm deep, on the level: 11 mm
}

// A puddle of syrup after 5 s: 20 mL let go at once, and as much poured in that time.
func ExampleReleasedPuddle() {
	say("let go: %.0f mm", 1e3)(rheology.ReleasedPuddle(20e-6, 2e-4, 5))
	say("poured: %.0f mm", 1e3)(rheology.FedPuddle(4e-6, 2e-4, 5))
	// Output:
	// let go: 64 mm
	// poured: 51 mm
}

// Bubbles in water from a tenth of a millimetre to a centimetre: which law is asked
// depends on the size, and on whether anything coats the bubble.
func ExampleBubbleRise() {
	const rho, gas, eta, sigma = 998, 1.2, 0.001, 0.0728
	say("0.1 mm, Stokes: %.1f mm/s", 1e3)(rheology.StokesBubble(1e-4, eta, rho, false))
	say("0.1 mm, stiff ball: %.1f mm/s", 1e3)(rheology.RigidBubble(1e-4, rho, gas, eta))
	say("3 mm, coated: %.0f mm/s", 1e3)(rheology.EllipsoidBubble(0.003, rho, gas, eta, sigma))
	say("3 mm, clean: %.0f mm/s", 1e3)(rheology.CleanBubble(0.003, rho, gas, eta, sigma))
	say("30 mm, a cap: %.0f mm/s", 1e3)(rheology.CapBubble(0.03, rho, gas))
	rise, err := rheology.BubbleRise(rheology.Water{}, 20, 0.003)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("3 mm in the water of a glass: %.0f mm/s (%.0f to %.0f)\n", rise.Likely*1e3, rise.Low*1e3, rise.High*1e3)
	// Output:
	// 0.1 mm, Stokes: 5.4 mm/s
	// 0.1 mm, stiff ball: 5.1 mm/s
	// 3 mm, coated: 253 mm/s
	// 3 mm, clean: 305 mm/s
	// 30 mm, a cap: 385 mm/s
	// 3 mm in the water of a glass: 253 mm/s (228 to 335)
}

// A drop of milk of 4 mm on a dry plate, and a train of such drops on its own film.
func ExampleRibouxGordillo() {
	const d, eta, rho, sigma = 0.004, 0.002, 1030, 0.047
	r := rheology.RibouxGordillo{Air: rheology.RoomAir()}
	beta, _, err := r.Lift(d, 1.5, eta, rho, sigma)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("at 1.5 m/s the air lifts the sheet by beta %.3f\n", beta)
	say("and it splashes above %.3f", 1)(r.Threshold(d, 1.5, eta, rho, sigma))
	say("20 drops a second at 2 m/s: u = %.0f, and crowns throw from 17", 1)(rheology.YarinWeiss(2, 20, eta, rho, sigma))
	// Output:
	// at 1.5 m/s the air lifts the sheet by beta 0.099
	// and it splashes above 0.118
	// 20 drops a second at 2 m/s: u = 41, and crowns throw from 17
}
