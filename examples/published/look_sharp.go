package published

import (
	"fmt"
	"math"
	"strings"
	"time"

	"example.org/honestplate/rheology/look/sharp"
	"example.org/honestplate/testdata"
)

// Checks of what freezes motion.
var lookSharp = []Check{
	{
		Table: "flash_durations", Package: "rheology", Quantity: "how long a flash burns", Unit: "s",
		Claim: "the table, to a nanosecond", Points: flashDurations,
	},
	{
		Table: "motion_blur", Package: "rheology", Quantity: "blur on the sensor", Unit: "pixels or mm",
		Claim: "1e-5", Points: motionBlur,
	},
	{
		Table: "splash_moments", Package: "rheology", Quantity: "depth below which no jet throws drops", Unit: "mm",
		Claim: "the printed digit", Points: splashMoments,
	},
}

func flashDurations(r testdata.Row) ([]Point, error) {
	label := r.Text("unit") + " at " + r.Text("power")
	for _, u := range sharp.Units() {
		if !strings.HasPrefix(r.Text("unit"), strings.TrimSuffix(u.Name, " m")) && !strings.HasPrefix(r.Text("unit"), "small "+u.Name) {
			continue
		}
		for _, s := range u.Settings {
			if s.Power != r.Text("power") {
				continue
			}
			d := max(s.Exposure.HalfPower, s.Exposure.TenthPower)
			return []Point{Near(label, figure(r, "duration_s"), d.Seconds(), 1.1e-9)}, nil
		}
	}
	return []Point{Skip(label, "a range, or one figure of a unit whose other settings are not known: not a setting to choose")}, nil
}

func motionBlur(r testdata.Row) ([]Point, error) {
	c := sharp.Camera{Magnification: figure(r, "magnification"), Pixel: 1e-5}
	if r.Text("magnification") == "" {
		f := figure(r, "focal_length_m")
		c = sharp.Camera{Magnification: f / (figure(r, "distance_m") - f), Pixel: 1 / figure(r, "pixels_per_m")}
	}
	shutter := time.Duration(math.Round(figure(r, "exposure_s") * 1e9))
	b, err := c.Blur(figure(r, "speed_m_per_s"), sharp.Exposure{Shutter: shutter})
	if err != nil {
		return nil, err
	}
	got := b.Pixels.Likely
	if r.Text("unit") == "mm" {
		got = 1000 * b.Sensor.Likely
	}
	return []Point{NearRel(fmt.Sprintf("%s, %s s", r.Text("case"), r.Text("exposure_s")), figure(r, "blur"), got, 1e-5)}, nil
}

func splashMoments(r testdata.Row) ([]Point, error) {
	if r.Text("finding") != "no jet drops below" {
		return []Point{Skip(r.Text("subject")+", "+r.Text("finding"), "no moment with all its inputs, or no number")}, nil
	}
	least := 0.0
	for um := 5000; um > 1000; um -= 10 {
		m, err := sharp.Contact{Diameter: 0.004, Speed: 3, Depth: float64(um) * 1e-6}.Moments()
		if err != nil {
			return nil, err
		}
		if m.Jet.MayHappen() {
			least = float64(um) / 1000
		}
	}
	return []Point{Near(r.Text("subject"), figure(r, "value"), least, 0.01)}, nil
}
