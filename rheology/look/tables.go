package look

import "math"

// The tables below stand at 375, 400 .. 775 nm.
const (
	tableStart = 375.0
	tableStep  = 25.0
)

type table [17]float64

// Refractive index of water (Hale and Querry 1973) and of milk fat (Michalski and others
// 2001), and the absorbance of riboflavin in its own unit (Du and others 1998), all as
// read in Frisvad's program.
var (
	waterIndex = table{1.341, 1.339, 1.338, 1.337, 1.336, 1.335, 1.334, 1.333, 1.333, 1.332, 1.332, 1.331, 1.331, 1.331, 1.330, 1.330, 1.330}
	fatIndex   = table{1.480, 1.476, 1.473, 1.470, 1.468, 1.466, 1.464, 1.463, 1.462, 1.461, 1.460, 1.459, 1.458, 1.457, 1.457, 1.456, 1.456}
	riboflavin = table{0.07117, 0.05934, 0.07215, 0.08300, 0.06379, 0.01962, 0.00950, 0.00957, 0.01198, 0.01047, 0.01046, 0.01061, 0.00671, 0.01034, 0.00589, 0.00886, 0.01015}
	// fatExtinction is the imaginary part of the index of milk fat in 1e-6 (Michalski).
	fatExtinction = table{4.0, 6.4, 8.6, 11.4, 11.0, 10.0, 4.7, 4.6, 4.7, 4.9, 5.0, 5.0, 5.1, 5.2, 5.2, 5.2, 5.2}
)

// at interpolates in wavelength, in nm, and holds the ends.
func (t *table) at(nm float64) float64 {
	x := min(max((nm-tableStart)/tableStep, 0), float64(len(t)-1))
	i := min(int(x), len(t)-2)
	f := x - float64(i)
	return float64((1-f)*t[i]) + float64(f*t[i+1])
}

// serumAbsorption is that of milk's serum in 1/m: the measured three bands of skim milk
// (Jensen and others 2001: 1.4, 2.5 and 14.2 per m in red, green and blue, taken at 610, 545
// and 465 nm), riboflavin's shape putting the blue one together. The floor of riboflavin's
// table is that of the instrument and is taken off.
func serumAbsorption(nm float64) float64 {
	const red, green, blue = 1.4, 2.5, 14.2
	const floor = 0.0105
	ground := green + (red-green)*min(max((nm-545)/(610-545), 0), 1)
	peak := (blue - green) / (riboflavin.at(465) - floor)
	if nm > 530 {
		return ground
	}
	return ground + peak*max(0, riboflavin.at(nm)-floor)
}

// caroteneAbsorption is that of milk fat in 1/m for each mg of carotene in a kg of fat:
// 140,000 per molar and cm at 450 nm (molar mass 536.87; both from memory), in the shape
// of milk fat's own absorption, whose floor beyond 525 nm is that of the instrument and
// taken off.
func caroteneAbsorption(nm float64) float64 {
	const molar = 140_000 * math.Ln10 * 100 // 1/m for 1 mol/L
	const perMilligram = molar * fatDensity * 1e-6 / 536.87
	if nm >= 550 {
		return 0
	}
	absorbs := func(nm float64) float64 { return 4 * math.Pi * fatExtinction.at(nm) * 1e-6 / (nm * 1e-9) }
	const floor = 103 // 1/m: the mean of 550..600 nm
	return perMilligram * max(0, absorbs(nm)-floor) / (absorbs(450) - floor)
}
