package pour_test

import (
	"errors"
	"fmt"
	"log"
	"os"
	"text/tabwriter"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/rheology"
	"example.org/honestplate/rheology/pour"
)

// The same small jug spout, 8 mm wide and 30 mm long, kept tilted so that the liquid stands
// 60 mm over its mouth: from milk to honey.
func ExampleSpout_Pour() {
	spout := pour.Spout{Diameter: 0.008, Length: 0.030, Head: 0.060}
	w := tabwriter.NewWriter(os.Stdout, 0, 0, 2, ' ', 0)
	fmt.Fprintln(w, "200 g of\tlasts\tand\tleaves behind")
	for _, l := range []struct {
		name   string
		liquid rheology.Liquid
	}{
		{"milk", rheology.Dairy{FatPercent: 3.5}},
		{"cream, 30 %", rheology.Dairy{FatPercent: 30}},
		{"sugar syrup, 65 Brix", rheology.Sucrose{Brix: 65}},
		{"honey", rheology.Honey{MoisturePercent: 17}},
	} {
		p, err := spout.Pour(l.liquid, 20, 200)
		if err != nil {
			log.Fatal(err)
		}
		d := p.Duration
		fmt.Fprintf(w, "%s\t%v (%v to %v)\t%s\t%.1f g\n", l.name, d.Likely.After.Round(100*time.Millisecond),
			d.Earliest.After.Round(100*time.Millisecond), d.Latest.After.Round(100*time.Millisecond), p.Regime, p.LeftGrams.Likely)
	}
	w.Flush()
	// Output:
	// 200 g of              lasts                         and                            leaves behind
	// milk                  4.6s (4.2s to 5.1s)           between laminar and turbulent  0.2 g
	// cream, 30 %           5.4s (4.9s to 7.5s)           laminar, held by inertia       0.6 g
	// sugar syrup, 65 Brix  11.4s (10.9s to 12s)          laminar, held by friction      1.9 g
	// honey                 12m56s (7m10.9s to 23m17.6s)  laminar, held by friction      2.4 g
}

// Ketchup stays in a narrow spout, and the error says what would move it.
func ExampleSpout_Pour_held() {
	_, err := pour.Spout{Diameter: 0.008, Length: 0.030, Head: 0.040}.Pour(rheology.Food("tomato ketchup"), 20, 50)
	var stays *honestplate.RefusedError
	if errors.As(err, &stays) {
		fmt.Println(stays.Reason)
		fmt.Println(stays.Advice)
	}
	// Output:
	// the liquid's yield stress holds it under 40 mm
	// it moves from 52.79 mm on: tilt further, fill higher or take a wider mouth
}

// Milk over a jug's lip: how far it may fall before it is drops, and how wide it is in the
// bowl.
func ExamplePour_Stream() {
	p, err := pour.Lip{Width: 0.020, Length: 0.010, Head: 0.008}.Pour(rheology.Dairy{FatPercent: 3.5}, 6, 200)
	if err != nil {
		log.Fatal(err)
	}
	s, err := p.Stream(0.25)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("%.1f mm wide at the lip, %.1f mm after 25 cm, at %.1f m/s\n", p.Diameter*1000, s.Diameter*1000, s.Speed)
	fmt.Printf("whole for %.1f m (%.1f to %.1f)\n", s.BreakUp.Likely, s.BreakUp.Low, s.BreakUp.High)
	// Output:
	// 9.9 mm wide at the lip, 2.9 mm after 25 cm, at 2.2 m/s
	// whole for 1.0 m (0.3 to 1.7)
}

// Milk from 25 cm onto a dry glazed plate, and into the film that then lies on it: every
// published criterion for each, and what they say together.
func ExampleStream_Splash() {
	p, err := pour.Spout{Diameter: 0.008, Length: 0.030, Head: 0.030}.Pour(rheology.Dairy{FatPercent: 3.5}, 20, 200)
	if err != nil {
		log.Fatal(err)
	}
	s, err := p.Stream(0.25)
	if err != nil {
		log.Fatal(err)
	}
	for _, onto := range []pour.Target{{}, {Film: 0.002}} {
		splash, err := s.Splash(onto)
		if err != nil {
			log.Fatal(err)
		}
		if onto.Film == 0 {
			fmt.Println("dry plate:", splash.Summary)
		} else {
			fmt.Printf("film of %.0f mm: %s\n", onto.Film*1000, splash.Summary)
		}
		for _, v := range splash.Verdicts {
			if v.Applies {
				fmt.Printf("  %-34s %s above %.1f m/s, here %.1f\n", v.Criterion, v.Outcome, v.ThresholdSpeed, splash.Speed)
			}
		}
	}
	// Output:
	// dry plate: no splash
	//   Vander Wal, Berger and Mozes 2006  droplets thrown along the surface above 3.0 m/s, here 2.3
	//   Riboux and Gordillo 2014           droplets thrown along the surface above 2.3 m/s, here 2.3
	// film of 2 mm: criteria disagree
	//   Rioboo and others 2003, crown      crown above 0.7 m/s, here 2.3
	//   Rioboo and others 2003, droplets   crown that throws droplets above 1.7 m/s, here 2.3
	//   Cossali, Coghe and Marengo 1997    crown that throws droplets above 2.4 m/s, here 2.3
	//   Vander Wal, Berger and Mozes 2006  crown that throws droplets above 2.2 m/s, here 2.3
}

// What the crown round the first drop of milk looks like.
func ExampleStream_Crown() {
	p, err := pour.Spout{Diameter: 0.004, Length: 0.010, Head: 0.030}.Pour(rheology.Dairy{FatPercent: 3.5}, 20, 20)
	if err != nil {
		log.Fatal(err)
	}
	s, err := p.Stream(0.40)
	if err != nil {
		log.Fatal(err)
	}
	c, err := s.Crown(0.001)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("crown: %v, some %.0f mm across within %v ms\n", c.Expected, 2000*c.Largest.Likely, c.Lasts.Likely.After.Milliseconds())
	// Output:
	// crown: true, some 13 mm across within 12 ms
}

// Cool honey coils: which regime, and which way it moves. The figures behind are orders of
// magnitude only and are not printed.
func ExampleStream_Coil() {
	p, err := pour.Spout{Diameter: 0.012, Length: 0.020, Head: 0.060}.Pour(rheology.Honey{MoisturePercent: 17}, 10, 100)
	if err != nil {
		log.Fatal(err)
	}
	for _, drop := range []float64{0.01, 0.05, 0.20} {
		s, err := p.Stream(drop)
		if err != nil {
			log.Fatal(err)
		}
		c, err := s.Coil()
		if err != nil {
			log.Fatal(err)
		}
		fmt.Printf("from %2.0f cm: %s; from higher %s, poured faster %s, thicker %s\n", drop*100, c.Regime, c.Height, c.Rate, c.Thickness)
	}
	// Output:
	// from  1 cm: no coil; from higher about the same, poured faster about the same, thicker about the same
	// from  5 cm: inertio-gravitational; from higher faster, poured faster slower, thicker slower
	// from 20 cm: inertial; from higher faster, poured faster slower, thicker slower
}

// A slow pour over a glass lip runs back under it.
func ExamplePour_Dribble() {
	for _, head := range []float64{0.004, 0.020} {
		p, err := pour.Lip{Width: 0.020, Length: 0.005, Head: head}.Pour(rheology.Dairy{FatPercent: 3.5}, 20, 200)
		if err != nil {
			log.Fatal(err)
		}
		c, err := p.Dribble(30)
		if err != nil {
			log.Fatal(err)
		}
		fmt.Printf("%2.0f mm over the lip: %.2f m/s, clings below about %.2f: %v\n", head*1000, c.Speed, c.Threshold.Likely, c.Dribbles)
	}
	// Output:
	// 4 mm over the lip: 0.12 m/s, clings below about 0.21: true
	// 20 mm over the lip: 0.40 m/s, clings below about 0.10: false
}
