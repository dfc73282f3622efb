package main

import (
	"fmt"
	"testing"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/thermal"
)

func TestPage(t *testing.T) { chapter.Check(t) }

// The soup is hot, the spoon is in place, and the steam that everybody saw at the stove
// is gone when the focus is set. The soup still burns the tongue. What has ended is not
// the heat but the cloud: one does not see vapour, one sees the droplets it makes where it
// mixes with the cooler air of the room.
//
// # How long it is seen
//
// The clock of a hot dish follows the temperature of the surface and asks, all along,
// what mass of droplets the best of all mixtures with the room's air carries. About 1 g
// in a cubic metre is taken as seen, from 0.3 to 2: breath on a cool morning has about
// that much. No published threshold for the eye or the lens was found, so this is an
// estimate.
func Example_seen() {
	for _, room := range []thermal.Air{{TempC: 15, RH: 0.6}, {TempC: 22, RH: 0.4}, {TempC: 28, RH: 0.3}} {
		k, err := soup().Clock(room)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%.0f degC, %.0f %%: steam until %v, then the surface is at %.0f degC\n",
			room.TempC, 100*room.RH, k.SteamEnds.Round(30*time.Second), k.SteamC)
	}
	// Output:
	// 15 degC, 60 %: steam until 17:30 (8:30..31:00), then the surface is at 41 degC
	// 22 degC, 40 %: steam until 9:00 (2:30..17:00), then the surface is at 51 degC
	// 28 degC, 30 %: steam until 3:30 (0:30..9:30), then the surface is at 59 degC
}

// Minutes. In a warm, dry studio there is hardly time to sit down; in a cool, damp one the
// same soup gives five times as long. That is why steam is shot in cold rooms, and
// why the crew waits with the soup and not with the light.
//
// # The bowl
//
// A bowl off the shelf takes heat at once. It weighs more than it looks. Beside the steam
// stands when the soup falls below 60 degC, the limit that the clock takes where none is
// given; what hot holding asks for is in the local food code.
func Example_theBowl() {
	room := thermal.Air{TempC: 18, RH: 0.5}
	for _, bowl := range []struct {
		name string
		dish thermal.HotDish
	}{{"off the shelf", soup()}, {"warmed with the soup", warmed()}} {
		k, err := bowl.dish.Clock(room)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%-21s steam until %v; above 60 degC until %v\n", bowl.name, k.SteamEnds.Round(30*time.Second), k.Limit.Round(30*time.Second))
	}
	// Output:
	// off the shelf         steam until 13:00 (5:30..24:00); above 60 degC until 4:30 (3:30..6:00)
	// warmed with the soup  steam until 17:30 (9:30..29:30); above 60 degC until 9:00 (7:30..11:00)
}

// Warming the bowl is the cheapest minutes of the day. Hot water from the kettle does it;
// dry it, since a drop on the rim is in the picture.
//
// Figure: steam
//
// # The background
//
// The same cloud shows against a dark wall with a light behind it, and does not against a
// white cloth. Tell the clock what counts.
func Example_theBackground() {
	room := thermal.Air{TempC: 18, RH: 0.5}
	for _, b := range []struct {
		name string
		gm3  float64
	}{{"white cloth", 2}, {"as it comes", 1}, {"dark, light from behind", 0.3}} {
		d := warmed()
		d.VisibleGM3 = honestplate.Factor(b.gm3, 1.3)
		k, err := d.Clock(room)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%-24s %v\n", b.name, k.SteamEnds.Round(30*time.Second))
	}
	// Output:
	// white cloth              11:00 (7:00..15:30)
	// as it comes              17:30 (12:30..23:00)
	// dark, light from behind  26:30 (19:30..33:30)
}

// One test bowl settles it: pour, look through the camera, and note when the steam is no
// longer seen. That minute, given to the clock of the next bowl, narrows it.
func Example_oneTestBowl() {
	room := thermal.Air{TempC: 18, RH: 0.5}
	before, err := warmed().Clock(room)
	if err != nil {
		fmt.Println(err)
		return
	}
	_, lesson, err := warmed().Observe(thermal.Lesson{}, []thermal.Seen{{Event: "steam ends", At: 14 * time.Minute}}, room)
	if err != nil {
		fmt.Println(err)
		return
	}
	after, err := warmed().Knowing(lesson, room)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("before:", before.SteamEnds.Round(30*time.Second))
	fmt.Println("after: ", after.SteamEnds.Round(30*time.Second))
	// Output:
	// before: 17:30 (9:30..29:30)
	// after:  14:00 (12:30..15:30)
}

// # Fat
//
// Broth with eyes of fat, a sheet of cheese, foam: what is covered gives nothing off. It
// keeps the soup hot for longer and hides that it is.
func Example_fat() {
	room := thermal.Air{TempC: 18, RH: 0.5}
	for _, covered := range []float64{0, 0.6, 1} {
		d := warmed()
		d.Covered = covered
		k, err := d.Likely(room)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%.0f %% covered: above 60 degC until %v\n", 100*covered, k.Limit.Likely.Round(30*time.Second))
	}
	// Output:
	// 0 % covered: above 60 degC until 9:00
	// 60 % covered: above 60 degC until 13:30
	// 100 % covered: above 60 degC until 26:30
}

// Where all is covered no steam is seen at all, however hot the broth, and the clock says
// so; else its steam is that of what is left open.
//
// # What could go wrong
//
// The steam of the clock rises in a calm room. A draught mixes it thinner and sooner, and a
// lamp close above it dries it from within. Nobody has published how steam fades over a
// bowl, so no course stands behind these minutes: only the cooling has been measured, on
// mugs. What counts as seen decides the width of the window more than all else together.
//
// A steamer behind the bowl, a wet sponge from the microwave, smoke: they are stand-ins.
// They say that a dish is hot, and it has to be as hot as it is sold; they go into the
// record. Where the client sells the heat itself, the steam is the product's own.
//
// Steam and hot soup scald; a steamer on a wet set wants a guarded supply. Food that has
// stood warm for the camera is not eaten. Follow local codes for food and electricity.
// These are estimates, not guarantees.
//
// # Sources
//
// Mixing of moist air: ASHRAE Handbook Fundamentals (SI) 2021, chapter 1; that droplets form
// where the mixing line lies above saturation is the physics of mixing clouds (from
// memory). The threshold of 1 g/m3 (0.3 to 2) is an engineering estimate. The cooling is
// compared with logged mugs in the page of agreement. That steam is shot in cold rooms,
// against dark grounds and with warmed bowls: common practice, no source. Soup, bowls and
// rooms are invented.
func Example_sources() {}
