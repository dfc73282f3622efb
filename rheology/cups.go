package rheology

import (
	"fmt"
	"strconv"
	"time"

	"example.org/honestplate"
)

// cupBand is the 95 % band of a standard cup's formula. The 23 calibration points
// printed on the Cannon Instrument cup page (Zahn, Shell, Ford; mixed viscosity
// standards at 25 degC; read) lie within 1.7 % of the formulas with one exception at
// 3.5 %: standard deviation 1.1 %, so 2.2 %.
const cupBand = 0.022

const (
	byHand = 500 * time.Millisecond
	mm2    = 1e-6
	// The standards themselves were not seen; testdata/cup_constants.csv has what was.
	iso    = "ISO 2431 as copied in a public program (mendip-defender/conversion_calculators; read)"
	din    = "DIN 53211 as copied in a public program (mendip-defender/conversion_calculators; read)"
	d1200  = "ASTM D1200 as copied in a public program (mendip-defender/conversion_calculators; read)"
	cannon = "Cannon Instrument cup page, 25 degC (read)"
	noSize = "no such cup"
)

// ISO2431 returns the flow cup of ISO 2431 with an orifice of 3, 4, 5 or 6 mm,
// for 30 to 100 s: 7..42, 34..135, 91..326 and 188..684 mm2/s. The constants were
// read in a copy of the standard; the band of 2.2 % is that found for other
// makes of cup. For another size the cup answers every question with an InputError.
func ISO2431(mm int) Cup {
	c := Cup{Name: fmt.Sprintf("ISO 2431, %d mm", mm), Least: 30 * time.Second, Most: 100 * time.Second, Rel: cupBand, Reading: byHand, Source: iso}
	switch mm {
	case 3:
		c.A, c.B = 0.443*mm2, 200*mm2
	case 4:
		c.A, c.B = 1.37*mm2, 200*mm2
	case 5:
		c.A, c.B = 3.28*mm2, 220*mm2
	case 6:
		c.A, c.B = 6.90*mm2, 570*mm2
	default:
		return unknown(c)
	}
	return c
}

// ISOCupFor returns the ISO 2431 cup whose range holds the kinematic viscosity nu in
// m2/s: of two, the one of smaller orifice, whose longer time is read more
// finely. Below 7 or above 684 mm2/s none does, a RangeError: milk as it comes is
// too thin for a cup of this standard.
func ISOCupFor(nu float64) (Cup, error) {
	low, _, _ := ISO2431(3).Range()
	_, high, _ := ISO2431(6).Range()
	if err := honestplate.InRange("kinematic viscosity", nu, low, high, "m2/s", "the ISO 2431 cups of 3 to 6 mm"); err != nil {
		return Cup{}, err
	}
	for mm := 3; ; mm++ {
		c := ISO2431(mm)
		if _, high, _ := c.Range(); nu <= high {
			return c, nil
		}
	}
}

// DIN53211 returns the 4 mm flow cup of DIN 53211, withdrawn and still about, for 25
// to 150 s. It is not the ISO cup of 4 mm: at 40 s it tells 172 mm2/s, that one 50.
func DIN53211() Cup {
	return Cup{Name: "DIN 53211, 4 mm", A: 4.57 * mm2, B: 452 * mm2, Least: 25 * time.Second, Most: 150 * time.Second, Rel: cupBand, Reading: byHand, Source: din}
}

// FordCup returns the Ford cup of ASTM D1200, number 1 to 5. Numbers 1 and 2 are
// Cannon Instrument's, 3 to 5 from a copy of the standard; they agree with
// Cannon's calibration points. For another number the cup answers every question
// with an InputError. The Hydraulic Institute's table of "Ford
// cups" is another scale, 3 % lower at 34 s of number 4.
func FordCup(number int) Cup {
	c := Cup{Name: fmt.Sprintf("Ford cup, ASTM D1200, number %d", number), Least: 20 * time.Second, Most: 100 * time.Second, Rel: cupBand, Reading: byHand, Source: d1200}
	switch number {
	case 1:
		c.A, c.C, c.Least, c.Source = 0.49*mm2, 35, 55*time.Second, cannon
	case 2:
		c.A, c.C, c.Least, c.Source = 1.44*mm2, 18, 40*time.Second, cannon
	case 3:
		c.A, c.C = 2.31*mm2, 6.58
	case 4:
		c.A, c.C = 3.85*mm2, 4.49
	case 5:
		c.A, c.C = 12.1*mm2, 2
	default:
		return unknown(c)
	}
	return c
}

// ZahnCup returns the Zahn dip cup of ASTM D4212, number 1 to 5 (Cannon Instrument,
// read; number 1 from 35 s, the others 20..80 s). For another number the cup
// answers every question with an InputError.
func ZahnCup(number int) Cup {
	c := Cup{Name: fmt.Sprintf("Zahn cup, ASTM D4212, number %d", number), Least: 20 * time.Second, Most: 80 * time.Second, Rel: cupBand, Reading: byHand, Source: cannon}
	switch number {
	case 1:
		c.A, c.C, c.Least = 1.1*mm2, 29, 35*time.Second
	case 2:
		c.A, c.C = 3.5*mm2, 14
	case 3:
		c.A, c.C = 11.7*mm2, 7.5
	case 4:
		c.A, c.C = 14.8*mm2, 5
	case 5:
		c.A = 23 * mm2
	default:
		return unknown(c)
	}
	return c
}

// ShellCup returns the Shell dip cup of ASTM D4212, number 1, 2, 2.5, 3, 3.5, 4, 5
// or 6 (Cannon Instrument, read; 20..80 s). For another number the cup answers every
// question with an InputError.
func ShellCup(number float64) Cup {
	c := Cup{Name: "Shell cup, ASTM D4212, number " + strconv.FormatFloat(number, 'g', 6, 64), Least: 20 * time.Second, Most: 80 * time.Second, Rel: cupBand, Reading: byHand, Source: cannon}
	switch number {
	case 1:
		c.A, c.C = 0.226*mm2, 13
	case 2:
		c.A, c.C = 0.576*mm2, 5
	case 2.5:
		c.A, c.C = 0.925*mm2, 3
	case 3:
		c.A, c.C = 1.51*mm2, 2
	case 3.5:
		c.A, c.C = 2.17*mm2, 1.5
	case 4:
		c.A, c.C = 3.45*mm2, 1
	case 5:
		c.A, c.C = 6.5*mm2, 1
	case 6:
		c.A, c.C = 16.2*mm2, 0.5
	default:
		return unknown(c)
	}
	return c
}

// unknown leaves A at 0, so that every method of the cup returns an InputError.
func unknown(c Cup) Cup {
	c.Source = noSize
	return c
}
