package rheology

import (
	"cmp"
	"fmt"
	"math"

	"example.org/honestplate"
	"example.org/honestplate/rheology/internal/physics"
)

// Dairy is milk or cream by its fat content, 0..50 % fat and 0..80 degC. The
// zero value is milk without fat. It holds for plain milk and cream: not
// whipped, soured, or set with a thickener. Milk and cream that stood warm on a set are
// not for eating.
//
// # What is known
//
// Milk is known to per cents, hot cream to a tenth, cold cream only to a factor.
// At 30 % fat and 3..20 degC the published and tabulated values run from 0.26 of
// Bakshi & Smith 1984, the only traceable formula for the cold, up to it:
// treatment, ageing, homogenising and stabiliser change a cream more than its
// fat content does. So use this to plan, then measure: see [Measured].
//
// # The model
//
// Two laws enclose what is known:
//
//	lower  L = plasma(t) x 10^(A (f + f^(5/3)))   separate globules: Phipps' fat factor
//	upper  B = exp(-8.9 + 0.1 F + 2721.5/T)       Bakshi & Smith
//
// plasma is Fernandez-Martin 1972 at 9 % solids to 30 degC, Phipps' own from 40
// degC, and passes smoothly between. Then
//
//   - 40..80 degC: Phipps 1969 governs. Likely = L, band x/: 1.10. Homogenised cream is
//     thicker than that from about 10 % fat: Bertsch & Cerf 1983 (homogenised, to 15 %,
//     from 70 degC) lie 8 % above Phipps at 10 % fat, 16 % at 12 and 33 % at 15.
//   - 0..30 degC, to 3 % fat: Likely = L, band x/: 1.12.
//   - 0..30 degC, from 12 % fat: cold globules cluster, more or less. Likely is the
//     geometric mean of L and B; the band is L/1.12..B x 1.12. Between 3 and 12 %
//     the mean is phased in.
//   - 30..40 degC: the fat melts, and the share of B fades out.
//   - Above 30 % fat in the cold B, above 40 % both laws are extrapolated: the band
//     widens as they part, and by a further 2 % for each per cent of fat above 40.
//
// The geometric mean is our choice, not a published law: B alone is the traceable
// one, but a value known to be high would put too little cream into every recipe.
// Half the distance is where the other values lie: the cold creams of 15 % fat and
// more in the tables below have a mean ratio to Likely of 1.0. The band at 5 degC is
// x/: 1.5 at 12 % fat, 1.9 at 20 %, 2.4 at 30 %, 3.1 at 40 %.
//
// # The evidence for the band
//
// testdata/dairy_viscosity.csv: 25 values read with temperature and fat (4 creams
// from a pump maker's chart, 18 of a table of unknown origin, 3 milks) and 38
// remembered ones (Steffe, Jenness & Patton, Earle, Whitaker): 92 % of those read,
// 95 % of all 63, lie inside; mean ratio to Likely 0.97. The known creams of 10..20 %
// lie low in the band (0.55..0.76 of Likely), those above 40 % high (1.25..1.5).
//
// # Flow
//
// Phipps found cream Newtonian at 40..80 degC up to 50 % fat (his formula ends at 40).
// Cold cream thickens
// for two days and thins when stirred; with more than 20 % fat and below 40 degC
// see [Dairy.ViscosityAtRate]. Viscosity itself is at 100 1/s, about that of a pour.
type Dairy struct {
	FatPercent float64 `json:"fat_percent"` // % by mass, 0..50
}

const (
	sourceDairy   = "Dairy: Bakshi & Smith 1984 (0..30 degC) joined to Phipps 1969 (40..80 degC)"
	dairyHighFat  = 50.0 // %; beyond it butter is near, and no law holds
	dairyHighC    = 80.0 // degC, of Phipps
	dairyRate     = 100.0
	lnColdMilk    = 0.11332868530700327 // ln 1.12: all cold milk values lie within 12 %
	lnHotCream    = 0.09531017980432487 // ln 1.10: hot milk and cream from memory; Phipps' abstract prints no scatter
	lnBeyondForty = 0.02                // a further band for each % of fat above Phipps' 40 %
)

// Describe names the product by its fat and says whose numbers these are.
func (d Dairy) Describe() Description {
	desc := Description{
		Name:   fmt.Sprintf("%s, %.4g %% fat", dairyName(d.FatPercent), d.FatPercent),
		Source: "Bakshi & Smith 1984 (0..30 degC), Phipps 1969 (40..80 degC), Fernandez-Martin 1972 (skim milk)",
		LowC:   0, HighC: dairyHighC,
		Band: "milk x/: 1.12, hot cream x/: 1.10; cold cream from separate globules (Phipps' fat factor) up to Bakshi & Smith",
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
	// Written so that the usual case costs two comparisons.
	if d.FatPercent >= 0 && d.FatPercent <= dairyHighFat && tempC >= 0 && tempC <= dairyHighC {
		return nil
	}
	return cmp.Or(honestplate.InRange("FatPercent", d.FatPercent, 0, dairyHighFat, "%", sourceDairy),
		honestplate.InRange("TempC", tempC, 0, dairyHighC, "degC", sourceDairy))
}

// Viscosity returns the dynamic viscosity in Pa s with its 95 % band, at 100 1/s
// where the cream thins; the type's comment says from which laws and data. A fat
// content outside 0..50 % or a temperature outside 0..80 degC is a RangeError.
// The value rises with fat and falls with temperature everywhere.
func (d Dairy) Viscosity(tempC float64) (honestplate.Estimate, error) {
	v, low, high, err := d.lnViscosity(tempC)
	if err != nil {
		return honestplate.Estimate{}, err
	}
	return honestplate.Estimate{Low: math.Exp(low), Likely: math.Exp(v), High: math.Exp(high)}, nil
}

// lnViscosity returns the logarithms of the viscosity in Pa s and of its band. A
// log-mixing rule that asks for these saves itself the exponentials.
func (d Dairy) lnViscosity(tempC float64) (value, low, high float64, err error) {
	if err := d.check(tempC); err != nil {
		return 0, 0, 0, err
	}
	laws := dairyLawsAt(tempC)
	value, low, high = laws.ln(d.FatPercent, phippsShape(d.FatPercent/100))
	return value, low, high, nil
}

// dairyAt is what the laws need of the temperature, worked out once for all the
// parts of a blend.
type dairyAt struct {
	hot    bool    // from 40 degC
	cold   float64 // the share of the cold laws
	plasma float64 // ln of the viscosity without fat, Pa s
	slope  float64 // of ln viscosity in phippsShape
	bakshi float64 // ln of Bakshi & Smith without fat, Pa s
}

func dairyLawsAt(tempC float64) dairyAt {
	const lnMilli = -6.907755278982137 // ln 0.001: mPa s to Pa s
	slope := phippsSlope(tempC)
	if tempC >= 40 {
		return dairyAt{hot: true, plasma: lnMilli + lnPhippsPlasma(tempC), slope: slope}
	}
	cold, plasma := 1.0, lnSkim(tempC)
	if tempC > 30 {
		cold = 1 - physics.Smoothstep((tempC-30)/10)
		plasma = cold*plasma + (1-cold)*lnPhippsPlasma(tempC)
	}
	return dairyAt{false, cold, lnMilli + plasma, slope, lnMilli + lnBakshi(0, tempC)}
}

// ln returns the logarithms of the viscosity in Pa s and of its band; shape is the
// phippsShape of the fat.
func (a *dairyAt) ln(fatPercent, shape float64) (value, low, high float64) {
	lower := a.plasma + a.slope*shape
	beyond := lnBeyondForty * max(0, fatPercent-40)
	if a.hot {
		w := lnHotCream + beyond
		return lower, lower - w, lower + w
	}
	value, gap := a.clustered(fatPercent, lower)
	w := lnHotCream + a.cold*(lnColdMilk-lnHotCream) + beyond
	return value, lower - w, lower + gap + w
}

// clustered raises the law of separate globules by what the clustering of cold ones does,
// and returns how far it can raise it: never negative, though B passes below L under
// about 3 % fat, where B is simply low for skim milk.
func (a *dairyAt) clustered(fatPercent, lower float64) (value, gap float64) {
	gap = a.cold * max(0, a.bakshi+0.1*fatPercent-lower)
	return lower + 0.5*physics.Smoothstep((fatPercent-3)*(1.0/9))*gap, gap
}
