package main

import (
	"fmt"
	"math"
	"testing"
	"time"

	"example.org/honestplate/rheology/look/sharp"
)

func TestPage(t *testing.T) { chapter.Check(t) }

// hundreds rounds for the eye: a flash is not known to more.
func hundreds(v float64) int { return int(math.Round(v/100)) * 100 }

// The crown was there, the light was there, and on the large screen every droplet is a
// dash. The flash is a good one: the maker prints 1/1000 of a second. Is that not short?
//
// # What moves
//
// First the speeds. Milk from a jug 20 cm above the bowl, and the crown that its head
// throws up in half a millimetre of milk. A crown's foot runs outward ever more slowly.
func Example_whatMoves() {
	moves, _, err := movers()
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, m := range moves {
		fmt.Printf("%-22s %.1f m/s\n", m.name, m.speed)
	}
	// Output:
	// the stream as it lands 2.0 m/s
	// the rim after 2 ms     1.0 m/s
	// the rim after 10 ms    0.4 m/s
}

// # What blurs
//
// While the light is on, the image runs over the sensor: speed times time times
// magnification, here half of life size on pixels of 4 thousandths of a millimetre. The
// time is the question. A maker's figure is nearly always t0.5, the time above half of
// the peak; the tail that follows is in the picture too. t0.1, the time above a tenth, is
// what blurs, and it is about three times as long. Some call the time of 90 % of the
// light t0.1: ask which.
func Example_whatBlurs() {
	moves, _, err := movers()
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, e := range []struct {
		name     string
		exposure sharp.Exposure
	}{
		{"lamps, shutter 1/8000", sharp.Exposure{Shutter: time.Second / 8000}},
		{"flash, t0.5 of 1/1000", sharp.Exposure{HalfPower: time.Second / 1000}},
		{"flash, t0.1 of 1/10000", sharp.Exposure{TenthPower: time.Second / 10000}},
	} {
		for _, m := range moves[:2] {
			b, err := camera.Blur(m.speed, e.exposure)
			if err != nil {
				fmt.Println(err)
				return
			}
			fmt.Printf("%-23s %-22s %.2f mm on the sensor, %.0f pixels\n", e.name, m.name, 1000*b.Sensor.Likely, b.Pixels.Likely)
		}
	}
	// Output:
	// lamps, shutter 1/8000   the stream as it lands 0.12 mm on the sensor, 31 pixels
	// lamps, shutter 1/8000   the rim after 2 ms     0.06 mm on the sensor, 16 pixels
	// flash, t0.5 of 1/1000   the stream as it lands 2.98 mm on the sensor, 746 pixels
	// flash, t0.5 of 1/1000   the rim after 2 ms     1.51 mm on the sensor, 377 pixels
	// flash, t0.1 of 1/10000  the stream as it lands 0.10 mm on the sensor, 25 pixels
	// flash, t0.1 of 1/10000  the rim after 2 ms     0.05 mm on the sensor, 13 pixels
}

// With the flash of 1/1000 a droplet is a dash of three millimetres on the sensor: worse
// than lamps with a fast shutter.
//
// # What it takes
//
// Two measures. Not more than a pixel, if the client will look at the file; or 0.03 mm on
// a frame of 24 x 36, the circle of confusion that a print forgives. Which flash does
// that, and at which setting?
func Example_whatItTakes() {
	moves, _, err := movers()
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, limit := range []struct {
		name string
		m    float64
	}{{"a pixel", camera.Pixel}, {"a print", sharp.FullFrameCircle}} {
		for _, m := range moves {
			s, err := camera.Freezes(m.speed, limit.m)
			if err != nil {
				fmt.Println(err)
				return
			}
			fmt.Printf("%s, %-22s t0.1 of 1/%d s, printed as t0.5 of 1/%d\n",
				limit.name, m.name, hundreds(1/s), hundreds(sharp.TailFactor/s))
			for _, u := range sharp.Units()[:4] {
				if set, err := u.For(s); err == nil {
					fmt.Printf("    %s at %s (%s)\n", u.Name, set.Power, set.Known)
				}
			}
		}
	}
	// Output:
	// a pixel, the stream as it lands t0.1 of 1/248500 s, printed as t0.5 of 1/745600
	// a pixel, the rim after 2 ms     t0.1 of 1/125500 s, printed as t0.5 of 1/376500
	// a pixel, the rim after 10 ms    t0.1 of 1/56100 s, printed as t0.5 of 1/168400
	// a print, the stream as it lands t0.1 of 1/33100 s, printed as t0.5 of 1/99400
	// a print, the rim after 2 ms     t0.1 of 1/16700 s, printed as t0.5 of 1/50200
	// a print, the rim after 10 ms    t0.1 of 1/7500 s, printed as t0.5 of 1/22500
	//     hot-shoe flash, guide number 28 at 1/64 (read)
	//     hot-shoe flash, guide number 24 at 1/16 (read)
	//     studio flash with a switch (IGBT) at lowest (memory)
}

// For a pixel at this magnification no flash of the list is short enough: such pictures
// are made at a lower magnification, or with a spark. For a print the rim is within reach
// once it has slowed, of flashes that are cut off, turned down; the stream and the young rim
// ask for a quarter of life size. A studio pack that regulates by voltage gets longer as it
// is turned down: there it is the full power that is short, and not short enough.
//
// Figure: needed
//
// The bill is light: at 1/64 of the power there is a sixty-fourth of it. Bring the flash
// near, use several, open the lens, raise the sensitivity. Half the magnification doubles
// the time.
//
// # When to press
//
// A film of milk gives a crown. A bowl gives a crater and, if it is deep enough, a jet
// after it. Counted from contact:
func Example_whenToPress() {
	_, crown, err := movers()
	if err != nil {
		fmt.Println(err)
		return
	}
	ms := func(d time.Duration) int64 { return d.Round(time.Millisecond).Milliseconds() }
	fmt.Printf("film: the crown falls back after %d ms (%d to %d)\n",
		ms(crown.Lasts.Likely.After), ms(crown.Lasts.Earliest.After), ms(crown.Lasts.Latest.After))
	for _, depth := range []float64{0.002, 0.030} {
		m, err := sharp.Contact{Diameter: crown.Diameter, Speed: crown.Speed, Depth: depth}.Moments()
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%2.0f mm: crater deepest after %d ms (%d to %d)", depth*1000,
			ms(m.Crater.Likely.After), ms(m.Crater.Earliest.After), ms(m.Crater.Latest.After))
		if m.Jet.MayHappen() {
			fmt.Printf(", jet after %d ms (%d to %d)\n", ms(m.Jet.Likely.After), ms(m.Jet.Earliest.After), ms(m.Jet.Latest.After))
		} else {
			fmt.Println(", no jet that throws drops")
		}
	}
	// Output:
	// film: the crown falls back after 31 ms (15 to 46)
	//  2 mm: crater deepest after 38 ms (1 to 57), no jet that throws drops
	// 30 mm: crater deepest after 38 ms (19 to 57), jet after 76 ms (38 to 153)
}

// It is an order, not a timetable: crown, crater, jet. Nobody was found who measured one of
// them with all that it hangs on. Set the trigger's delay to the middle of the band and
// step it by a quarter of the band from drop to drop; a few takes find the moment, and it
// stays where it is as long as height and liquid do.
//
// Figure: order
//
// Depth is the other handle. Splashes are largest over a film of a third of the drop;
// jets are highest near 7 mm of water, and below 3 mm they throw no drops.
//
// # What could go wrong
//
// A flash in a bright room makes two pictures: the sharp one of the flash and the dragged
// one of the lamps. Darken the set until a frame without the flash is black.
//
// What moves towards the lens leaves the plane of focus before it blurs. And the trigger:
// a camera's own delay is longer than a crown lasts. Trip the flash, not the shutter.
//
// The durations of flashes are a maker's table and one photographer's photodiode (read),
// and memory for studio packs: measure your own.
//
// Capacitors of flashes hold a deadly charge long after they were switched off: do not
// open them. Keep packs and leads out of the reach of the droplets, use guarded fixtures,
// follow local codes for electricity near liquids, and warn people with photosensitive
// epilepsy before a burst. Wipe the floor before the next take.
//
// # Sources
//
// Blur: geometry. t0.5 and t0.1: makers' and photographers' pages (read). Circle of
// confusion: from memory. Crown: Yarin and Weiss 1995, its life of 10 to 30 diameters over
// speed from memory. Crater: an energy balance (the argument read in an abstract, the
// factors derived). Jets and depth: Science 1967, 158, 1184, and 1970, 169, 1311 (abstracts
// read). Jug, bowl and camera are invented.
func Example_sources() {}
