package viscometer

import (
	_ "embed"
	"fmt"
	"strings"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/rheology"
	"example.org/honestplate/rheology/internal/check"
	"example.org/honestplate/rheology/internal/table"
)

// cupBand is the 95 % band of a standard cup's formula. The 23 calibration points
// printed on the Cannon Instrument cup page (Zahn, Shell, Ford; mixed viscosity
// standards at 25 degC; read) lie within 1.7 % of the formulas with one exception at
// 3.5 %: standard deviation 1.1 %, so 2.2 %. For the other makes it is taken to be the same.
const cupBand = 0.022

// cups.json holds the rest of each. The standards themselves were not seen;
// testdata/cup_constants.csv has what was.
//
//go:embed cups.json
var cupTable []byte

// Cups returns the standard flow cups, by family from the smallest orifice:
//
//   - ISO 2431 with an orifice of 3, 4, 5 or 6 mm, for 30 to 100 s: 7..42, 34..135, 91..326
//     and 188..684 mm2/s.
//   - DIN 53211, 4 mm, withdrawn and still about, for 25 to 150 s. It is not the ISO cup of 4
//     mm: at 40 s it tells 172 mm2/s, that one 50.
//   - Ford cups of ASTM D1200, 1 to 5. Numbers 1 and 2 are Cannon Instrument's, 3 to 5 from a
//     copy of the standard; they agree with Cannon's calibration points. The Hydraulic
//     Institute's table of "Ford cups" is another scale, 3 % lower at 34 s of number 4.
//   - Zahn and Shell dip cups of ASTM D4212, Zahn 1 to 5 and Shell 1, 2, 2.5, 3, 3.5, 4, 5, 6.
//
// The orifices of the ISO and DIN cups are in their names, their 100 mL and those of the other
// families (Ford 100 mL, Zahn 44 mL, Shell 23 mL) are from memory; a tenth more in the
// orifice is a quarter less in the shear rate. The list is new at every call.
func Cups() []Cup {
	all := table.Read[[]Cup](cupTable)
	for i := range all {
		all[i].Rel, all[i].Reading = cupBand, 500*time.Millisecond
	}
	return all
}

// CupNamed returns a standard cup by a short name, its family and its number or millimetres:
// "ISO 4", "DIN 4", "Ford 4", "Zahn 2", "Shell 2.5", or by its whole Name. For another the
// InputError says which exist.
func CupNamed(name string) (Cup, error) {
	var short []string
	for _, c := range Cups() {
		family, _, _ := strings.Cut(c.Name, " ")
		number := strings.TrimSuffix(c.Name[strings.LastIndex(strings.TrimSuffix(c.Name, " mm"), " ")+1:], " mm")
		if strings.EqualFold(name, c.Name) || strings.EqualFold(name, family+" "+number) {
			return c, nil
		}
		short = append(short, family+" "+number)
	}
	return Cup{}, &honestplate.InputError{Field: "Name", Got: fmt.Sprintf("%q", name), Want: "one of " + strings.Join(short, ", ")}
}

// ISOCupFor returns the ISO 2431 cup that can tell a liquid at a temperature in degC, at the
// cup's own shear rate: of two, the one of smaller orifice, whose longer time is read more
// finely. Below 7 or above 684 mm2/s none does, a RangeError: milk as it comes is
// too thin for a cup of this standard. A liquid with a yield stress is a
// RefusedError (ErrNoFlow).
func ISOCupFor(l rheology.Liquid, tempC float64) (Cup, error) {
	cups := Cups()[:4]
	for _, c := range cups {
		t, err := c.timeOf(l, tempC, 1, likelyOf)
		if err != nil {
			return Cup{}, err
		}
		if c.Least <= t && t <= c.Most {
			return c, nil
		}
	}
	nu, err := kinematicViscosity(l, tempC)
	if err != nil {
		return Cup{}, err
	}
	low, _, _ := cups[0].Range()
	_, high, _ := cups[3].Range()
	return Cup{}, check.Outside("Nu", nu.Likely, low, high, "m2/s", "the ISO 2431 cups of 3 to 6 mm, at their own shear rate")
}
