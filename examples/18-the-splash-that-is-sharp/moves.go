package main

import (
	"time"

	"example.org/honestplate/rheology"
	"example.org/honestplate/rheology/look/sharp"
	"example.org/honestplate/rheology/pour"
)

// camera: half of life size, pixels of 4 um. Invented.
var camera = sharp.Camera{Magnification: 0.5, Pixel: 4e-6}

// A mover is what crosses the view.
type mover struct {
	name  string
	speed float64 // m/s
}

// movers are what a jug of milk 20 cm above a bowl sets in motion.
func movers() ([]mover, pour.Crown, error) {
	jug := pour.Lip{Width: 0.020, Length: 0.010, Head: 0.008}
	p, err := jug.Pour(rheology.Dairy{FatPercent: 3.5}, 6, 200)
	if err != nil {
		return nil, pour.Crown{}, err
	}
	stream, err := p.Stream(0.20)
	if err != nil {
		return nil, pour.Crown{}, err
	}
	crown, err := stream.Crown(0.0005)
	if err != nil {
		return nil, pour.Crown{}, err
	}
	out := []mover{{"the stream as it lands", stream.Speed}}
	for _, ms := range []int{2, 10} {
		at := time.Duration(ms) * time.Millisecond
		v, err := sharp.RimSpeed(crown.Largest.Likely, crown.Lasts.Likely.After, at)
		if err != nil {
			return nil, pour.Crown{}, err
		}
		out = append(out, mover{map[int]string{2: "the rim after 2 ms", 10: "the rim after 10 ms"}[ms], v})
	}
	return out, crown, nil
}
