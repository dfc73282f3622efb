package light

import (
	"math"

	"example.org/honestplate"
	"example.org/honestplate/thermal/heat"
)

// The black bodies whose spectra the sources have, K. An LED is taken as flat from 400 to
// 700 nm.
const (
	tungstenK = 3200.0
	xenonK    = 5600.0 // discharge and flash
)

// ClearIce returns what a path of clear ice, 0..10 m, absorbs: 1 - exp(-alpha path)
// over each source's spectrum, good to 0.03. Cloudy ice sends light on longer ways and
// absorbs more, up to the double of a thin path. Another path is an [honestplate.RangeError].
//
// Source: Warren and Brandt 2008, Optical constants of ice from the ultraviolet to the
// microwave (read in a public database of refractive indices).
func ClearIce(path float64) (Absorptance, error) { return through(path, iceSpectrum[:]) }

// ClearWater returns what a path of water, or of a drink as clear, absorbs, as ClearIce
// does. Source: Hale and Querry 1973, Optical constants of water in the 200-nm to 200-um
// wavelength region (read in the same database).
func ClearWater(path float64) (Absorptance, error) { return through(path, waterSpectrum[:]) }

func through(path float64, rows []spectral) (Absorptance, error) {
	if err := honestplate.InRange("Path", path, 0, 10, "m", "the published optical constants; farther in only visible light is left"); err != nil {
		return Absorptance{}, err
	}
	xenon := absorbed(path, rows, xenonK)
	return Absorptance{absorbed(path, rows, tungstenK), xenon, absorbed(path, rows, 0), xenon}, nil
}

// A spectral is one row of optical constants.
type spectral struct {
	um    float64 // wavelength, um
	alpha float64 // absorption coefficient, 1/m
}

// absorbed is the share of a black body's light (flat from 0.4 to 0.7 um if kelvins
// is 0) that a straight path absorbs. Between rows it takes the mean of their
// shares: against the full tables of the source that is good to 0.03.
func absorbed(path float64, rows []spectral, kelvins float64) float64 {
	below := func(um float64) float64 {
		if kelvins == 0 {
			return min(max((um-0.4)/0.3, 0), 1)
		}
		below, _ := heat.BlackbodyFraction(um * 1e-6 * kelvins) // finite and positive
		return below
	}
	share := func(r spectral) float64 { return -math.Expm1(-r.alpha * path) }
	last := rows[len(rows)-1]
	sum := below(rows[0].um)*share(rows[0]) + (1-below(last.um))*share(last)
	for i := range len(rows) - 1 {
		sum += (below(rows[i+1].um) - below(rows[i].um)) * (share(rows[i]) + share(rows[i+1])) / 2
	}
	return sum
}

// iceSpectrum: alpha = 4 pi k/lambda; see ClearIce.
var iceSpectrum = [...]spectral{
	{0.4, 0.000743}, {0.5, 0.0148}, {0.6, 0.12}, {0.7, 0.5206}, {0.8, 2.105}, {0.9, 5.864},
	{0.97, 12}, {1.03, 28.43}, {1.1, 19.42}, {1.2, 70.27}, {1.27, 133.6}, {1.4, 177.7},
	{1.504, 4489}, {1.613, 2072}, {1.8, 985.1}, {1.942, 7170}, {2.0, 10300}, {2.19, 1553},
	{2.5, 3785}, {3.003, 1.833e6},
}

// waterSpectrum: see ClearWater.
var waterSpectrum = [...]spectral{
	{0.4, 0.05843}, {0.5, 0.02513}, {0.6, 0.2283}, {0.7, 0.6014}, {0.8, 1.963}, {0.9, 6.786},
	{0.975, 44.85}, {1.0, 36.32}, {1.2, 103.6}, {1.4, 1239}, {1.6, 671.5}, {1.8, 802.9},
	{2.0, 6912}, {2.2, 1651}, {2.4, 5006}, {3.0, 1.139e6},
}
