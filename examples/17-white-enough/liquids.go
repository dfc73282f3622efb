package main

import (
	"example.org/honestplate"
	"example.org/honestplate/rheology/look"
	"example.org/honestplate/rheology/look/colour"
)

// usualCarotene is in mg per kg of fat.
const usualCarotene = 6

var lights = []colour.Light{colour.D65, colour.A, colour.LEDB3}

// liquids are milk, homogenised, cream, not, and four parts of one with one of the other
// by volume, from cows of one meadow.
func liquids(carotene float64) (milk, blend, cream look.Optics, err error) {
	c := honestplate.Some(carotene)
	if milk, err = (look.Milk{FatPercent: 3.5, HomogenisedMPa: honestplate.Some(20), Carotene: c}).Optics(); err != nil {
		return milk, blend, cream, err
	}
	if cream, err = (look.Milk{FatPercent: 36, HomogenisedMPa: honestplate.Some(0), Carotene: c}).Optics(); err != nil {
		return milk, blend, cream, err
	}
	blend, err = look.Mix(look.Part{Optics: milk, Volume: 4}, look.Part{Optics: cream, Volume: 1})
	return milk, blend, cream, err
}
