package sharp

import (
	"fmt"
	"time"

	"example.org/honestplate"
)

// A Setting of a flash unit.
type Setting struct {
	Power    string   `json:"power"`    // share of full power, as it stands on the unit: "1/16"
	Exposure Exposure `json:"exposure"` // how long it burns there
	// Known says where the time is from: "read" at a maker or a measurement, "memory"
	// where it is recalled.
	Known string `json:"known"`
}

// A Unit is a flash with its settings from the brightest down.
type Unit struct {
	Name     string    `json:"name"`     // its kind, no maker
	Settings []Setting `json:"settings"` // from the brightest down
	Note     string    `json:"note"`     // what to know before trusting it
}

// Units lists flash units of the kinds that are about, none by its maker's name. A unit on
// the camera and one with a switch (IGBT) get shorter as they are turned down; studio
// packs that regulate by voltage get longer, and only their full power is known. Buy by
// the maker's t0.1.
func Units() []Unit {
	half := func(power string, us float64, known string) Setting {
		return Setting{power, Exposure{HalfPower: microseconds(us)}, known}
	}
	tenth := func(power string, us float64, known string) Setting {
		return Setting{power, Exposure{TenthPower: microseconds(us)}, known}
	}
	return []Unit{
		{
			Name: "hot-shoe flash, guide number 28",
			Settings: []Setting{
				half("1/1", 959.7, "read"), half("1/2", 880.3, "read"), half("1/4", 350, "read"), half("1/16", 100, "read"),
				half("1/32", 55, "read"), half("1/64", 40, "read"), half("1/128", 25, "read"),
			},
			Note: "the maker's table; taken as t0.5, which it does not say; cut off, so that the tail is shorter than assumed",
		},
		{
			Name: "hot-shoe flash, guide number 24",
			Settings: []Setting{
				tenth("1/1.3", 1900, "read"), tenth("1/1.7", 830, "read"), tenth("1/2", 500, "read"), tenth("1/4", 225, "read"),
				tenth("1/16", 100, "read"), tenth("1/40", 75, "read"), tenth("1/80", 60, "read"),
			},
			Note: "measured by one photographer with a photodiode: the whole pulse, so t0.1 is no longer",
		},
		{
			Name:     "studio flash, voltage regulated",
			Settings: []Setting{half("1/1", 670, "memory")},
			Note:     "0.67 to 2 ms by unit, the shortest shown; turned down it gets longer, and warmer",
		},
		{
			Name:     "studio flash with a switch (IGBT)",
			Settings: []Setting{tenth("lowest", 100, "memory")},
			Note:     "50 to 100 us by unit, the longest shown; turned down it gets bluer",
		},
		{
			Name:     "air-gap spark flash",
			Settings: []Setting{tenth("1/1", 0.5, "memory")},
			Note:     "for bullets; high voltage, for trained people",
		},
	}
}

// For returns the brightest setting whose light lasts no longer than seconds, its tail
// counted: [Camera.Freezes] says how long that is. It reads the settings that are given,
// and nothing between them. A unit that has none is refused ([honestplate.ErrInfeasible]).
func (u Unit) For(seconds float64) (Setting, error) {
	if err := honestplate.Positive("seconds", seconds, "s"); err != nil {
		return Setting{}, err
	}
	shortest := 0.0
	for i, s := range u.Settings {
		t, err := s.Exposure.Seconds()
		if err != nil {
			return Setting{}, honestplate.In(fmt.Sprintf("Settings[%d].Exposure", i), err)
		}
		if t.Likely <= seconds {
			return s, nil
		}
		if i == 0 || t.Likely < shortest {
			shortest = t.Likely
		}
	}
	if len(u.Settings) == 0 {
		return Setting{}, &honestplate.InputError{Field: "Settings", Got: "none", Want: "at least one setting"}
	}
	return Setting{}, &honestplate.RefusedError{Field: "seconds", Kind: honestplate.ErrInfeasible,
		Reason: fmt.Sprintf("the shortest light of the unit lasts 1/%.0f s, wanted is 1/%.0f s", 1/shortest, 1/seconds),
		Advice: "take a shorter flash, a lower magnification or a larger circle of confusion"}
}

func microseconds(us float64) time.Duration { return time.Duration(us * 1000) }
