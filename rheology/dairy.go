package rheology

import (
	"cmp"
	"fmt"

	"example.org/honestplate"
	"example.org/honestplate/rheology/internal/check"
)

// Dairy is milk or cream by its fat content, 0..50 % fat and 0..80 degC. The
// zero value is milk without fat. It holds for milk and cream that is not whipped, soured,
// or set with a thickener. Milk and cream that stood warm on a set are not for eating.
//
// # What is known
//
// Milk is known to per cents, hot cream to a tenth, cold cream only to a factor, because
// treatment, age and stabiliser change it more than fat does. Say the Treatment if you know
// it, and then measure: one cup time fixes the constant and with it the whole fat curve, see
// [Measured].
//
// # The model
//
// One law, hot and cold: globules of fat crowd the plasma they float in,
//
//	eta = plasma(t) (1 - phi/0.62)^(-1.55 k)
//
// plasma is Fernandez-Martin 1972 at 9 % solids, phi the volume fraction of fat, and k how
// far the globules hold together: 1.08 from 40 degC (separate, Phipps 1969 to 40 % fat
// within 13 %); to 20 degC 1.05 for milk, 1.5 for plain cream, 2.5 for homogenised cream;
// straight between 20 and 40 degC as the fat melts. ln eta is convex in fat everywhere. The
// form and 0.62 are one fit to all values of testdata/dairy_viscosity.csv; agreement with
// these is no validation: 61 of the 63 lie in the band, and the 22 cold creams of 15 % and
// more, 18 of them from one tabulated straight line, have a mean ratio of 1.1 to it.
//
// # The band, and who leans
//
// In ln(viscosity) the 95 % band is 0.07 and what cream adds: at 20 and 30 % fat x/: 1.45
// and 1.65 for plain cold cream, x/: 1.1 to 1.2 hot. With the treatment not stated its
// upper end reaches Bakshi & Smith 1984, the one traceable cold formula: 2.0 to 3.8 times
// all other creams of 20 % fat or more, and where homogenised cream lies. It is shown, not
// averaged in. No published number separates the treatments of one cream: plain stands
// on four sources (one remembered, one a straight line somebody tabulated), homogenised on
// one cream at 0.5 1/s whose fat was inferred.
//
// The mean of ln(published/law) by class: below 5 % fat -0.02, and -0.07 for another table of
// whole milk; 12 to 25 % +0.03 for the tabulated line, -0.24 for the one other value (Earle,
// 20 %, from memory); above 25 % -0.04 for what was measured, +0.17 for the tabulated line,
// which lies over the law at 30..45 %. 5 to 12 % has no measurement: the table of unknown origin
// gives 10 % cream as whole milk, in whole mPa s, and its 5 % creams below skim milk; those
// four values lie below the law and are shown as printed.
//
// # Flow
//
// Phipps found cream Newtonian at 40..80 degC up to 50 % fat (his formula ends at 40).
// Cold cream thickens for two days and thins when stirred; with more than 20 % fat and below
// 40 degC see [Dairy.ViscosityAtRate]. Viscosity itself is at 100 1/s, about that of a pour.
type Dairy struct {
	FatPercent float64   `json:"fat_percent"`        // % by mass, 0..50
	Treatment  Treatment `json:"treatment,omitzero"` // PlainCream, Homogenised or Thickened; "" where it is not stated
}

const (
	sourceDairy  = "Dairy: an emulsion law on Fernandez-Martin 1972, cold to 50 % fat by a pump maker's chart, hot by Phipps 1969"
	dairyHighFat = 50.0 // %; beyond it butter is near, and no law holds
	dairyHighC   = 80.0 // degC, of Fernandez-Martin and Phipps
	dairyRate    = 100.0
)

// Describe names the product by its fat and treatment and says whose numbers these are.
func (d Dairy) Describe() Description {
	name := dairyName(d.FatPercent)
	if d.Treatment != notStated {
		name = honestplate.OneLine(string(d.Treatment)) + " " + name
	}
	desc := Description{
		Name:   fmt.Sprintf("%s, %.4g %% fat", name, d.FatPercent),
		Source: "emulsion law on Fernandez-Martin 1972 (skim milk), fitted to a pump maker's chart, Earle, Phipps 1969 (40..80 degC)",
		LowC:   0, HighC: dairyHighC,
		Band: "milk x/: 1.15, hot cream x/: 1.15 if plain; cold cream by treatment, up to Bakshi & Smith 1984 if that is not stated",
	}
	if d.FatPercent > thinningFat {
		desc.ShearRate = dairyRate
	}
	return desc
}

func dairyName(fat float64) string {
	switch {
	case fat < 0.5:
		return "skim milk"
	case fat < 9:
		return "milk"
	case fat < 18:
		return "half-cream"
	default:
		return "cream"
	}
}

func (d Dairy) check(tempC float64) error {
	return cmp.Or(d.checkRange(tempC), d.Treatment.check())
}

// checkRange is check without the treatment: thickened cream has a density, too.
func (d Dairy) checkRange(tempC float64) error {
	if f := d.FatPercent; 0 <= f && f <= dairyHighFat && 0 <= tempC && tempC <= dairyHighC {
		return nil // the usual case, quickly
	}
	return cmp.Or(honestplate.InRange("FatPercent", d.FatPercent, 0, dairyHighFat, "%", sourceDairy),
		honestplate.InRange("TempC", tempC, 0, dairyHighC, "degC", sourceDairy))
}

// Viscosity returns the dynamic viscosity in Pa s with its 95 % band, at 100 1/s
// where the cream thins; the type's comment says from which laws and data. A fat
// content outside 0..50 % or a temperature outside 0..80 degC is a RangeError; thickened
// cream, which no law of fat describes, an InputError. The value rises with fat and falls
// with temperature everywhere.
func (d Dairy) Viscosity(tempC float64) (honestplate.Estimate, error) {
	v, low, high, err := d.lnViscosity(tempC)
	return check.Unless(err, exp(v, low, high))
}

// lnViscosity returns the logarithms of the viscosity in Pa s and of its band. A
// log-mixing rule that asks for these saves itself the exponentials.
func (d Dairy) lnViscosity(tempC float64) (value, low, high float64, err error) {
	if err := d.check(tempC); err != nil {
		return 0, 0, 0, err
	}
	e := emulsionAt(tempC)
	value, low, high = e.estimate(d.FatPercent, d.Treatment, d.Treatment.coldK())
	return value, low, high, nil
}
