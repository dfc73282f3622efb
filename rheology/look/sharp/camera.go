package sharp

import (
	"cmp"
	"math"
	"time"

	"example.org/honestplate"
)

// FullFrameCircle is the circle of confusion in m that is allowed at 24 x 36 mm, from
// memory: a blur that a print looked at from its own width does not show.
const FullFrameCircle = 0.03e-3

// A Camera is what turns metres before the lens into metres and pixels on the sensor.
type Camera struct {
	// Magnification is the size on the sensor over the size before the lens, 0.001..10; 1 is
	// life size. Of a thin lens it is f/(d - f), f its focal length and d the distance from
	// lens to subject.
	Magnification float64 `json:"magnification"`
	// Pixel is the width of a pixel in m, 0.5e-6..50e-6.
	Pixel float64 `json:"pixel_m"`
}

// check wants a camera that can be.
func (c Camera) check() error {
	return cmp.Or(honestplate.InRange("Magnification", c.Magnification, 1e-3, 10, "", "photography"),
		honestplate.InRange("Pixel", c.Pixel, 0.5e-6, 50e-6, "m", "sensors that are made"))
}

// A Blur is how far something ran while the light was on.
type Blur struct {
	Sensor honestplate.Estimate `json:"sensor_m"` // on the sensor, m
	Pixels honestplate.Estimate `json:"pixels"`   // on the sensor, in pixels
}

// Blur returns the blur of something that crosses the view at the speed in m/s: speed times
// the time of the light times magnification. The band is that of the time.
func (c Camera) Blur(speed float64, e Exposure) (Blur, error) {
	if err := cmp.Or(c.check(), checkSpeed(speed)); err != nil {
		return Blur{}, err
	}
	t, err := e.Seconds()
	if err != nil {
		return Blur{}, err
	}
	sensor := t.Times(speed * c.Magnification)
	return Blur{Sensor: sensor, Pixels: sensor.Times(1 / c.Pixel)}, nil
}

// Freezes returns the longest time in s that something at the speed in m/s may be lit for
// a blur of limit m on the sensor: the camera's Pixel for a pixel, [FullFrameCircle] for
// a print. It is t0.1 of a flash, or the shutter under lamps that burn all the time.
func (c Camera) Freezes(speed, limit float64) (float64, error) {
	if err := cmp.Or(c.check(), checkSpeed(speed),
		honestplate.InRange("limit", limit, 1e-7, 1e-2, "m", "a blur on a sensor")); err != nil {
		return 0, err
	}
	if speed == 0 {
		return 0, &honestplate.InputError{Field: "speed", Got: "0",
			Want: "a speed above 0: what stands needs no freezing"}
	}
	return limit / c.Magnification / speed, nil
}

func checkSpeed(speed float64) error {
	return honestplate.InRange("speed", speed, 0, 1000, "m/s", "what moves on a set")
}

// RimSpeed returns the speed in m/s of a crown's foot at a time after contact, from the
// radius in m that it has after a longer one: it grows with the root of the time (Yarin
// and Weiss 1995, from memory), so the speed is radius/(2 sqrt(at after)). Radius and time
// are those of the Crown in package pour.
func RimSpeed(radius float64, after, at time.Duration) (float64, error) {
	if err := honestplate.InRange("radius", radius, 1e-5, 1, "m", "crowns on a set"); err != nil {
		return 0, err
	}
	if at <= 0 || after < at || after > time.Minute {
		return 0, &honestplate.InputError{Field: "at", Got: at.String(),
			Want: "a time above 0, up to " + after.String()}
	}
	return radius / (2 * math.Sqrt(at.Seconds()*after.Seconds())), nil
}
