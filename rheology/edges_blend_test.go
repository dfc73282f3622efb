package rheology_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"example.org/honestplate"
	. "example.org/honestplate/rheology"
)

// odd is a liquid that answers with whatever it is given, errors among them.
type odd struct {
	eta, rho, sigma honestplate.Estimate
	err             error
	below           float64 // degC, where err comes; 0: everywhere
}

func (o odd) Describe() Description { return Description{Name: "odd", LowC: -5, HighC: 95} }
func (o odd) answer(e honestplate.Estimate, tempC float64) (honestplate.Estimate, error) {
	if o.err != nil && (o.below == 0 || tempC < o.below) {
		return honestplate.Estimate{}, o.err
	}
	return e, nil
}
func (o odd) Viscosity(tempC float64) (honestplate.Estimate, error) { return o.answer(o.eta, tempC) }
func (o odd) Density(tempC float64) (honestplate.Estimate, error)   { return o.answer(o.rho, tempC) }
func (o odd) SurfaceTension(tempC float64) (honestplate.Estimate, error) {
	return o.answer(o.sigma, tempC)
}

func TestALiquidThatAnswersNonsenseMakesABlendFail(t *testing.T) {
	good := odd{eta: honestplate.Exactly(0.01), rho: honestplate.Exactly(1000), sigma: honestplate.Exactly(0.05)}
	milk := Part{Dairy{FatPercent: 3.5}, 100}
	for name, change := range map[string]func(*odd){
		"zero viscosity":     func(o *odd) { o.eta = honestplate.Estimate{} },
		"NaN viscosity":      func(o *odd) { o.eta = honestplate.Exactly(math.NaN()) },
		"infinite viscosity": func(o *odd) { o.eta = honestplate.Exactly(math.Inf(1)) },
		"infinite band":      func(o *odd) { o.eta.High = math.Inf(1) },
		"zero density":       func(o *odd) { o.rho = honestplate.Estimate{} },
		"negative tension":   func(o *odd) { o.sigma = honestplate.Exactly(-1) },
		"an error":           func(o *odd) { o.err = &honestplate.InputError{Field: "itself"} },
	} {
		o := good
		change(&o)
		failed := false
		for _, r := range []Rule{{}, {D: -0.1}} {
			m := mustBlend(t, r, milk, Part{o, 50})
			_, err1 := m.Viscosity(20)
			_, err2 := m.Density(20)
			_, err3 := m.SurfaceTension(20)
			_, err4 := m.ViscosityAtRate(20, 10)
			for _, err := range []error{err1, err2, err3, err4} {
				if err != nil {
					failed = true
					if !errors.Is(err, honestplate.ErrInput) {
						t.Errorf("%s: %v", name, err)
					}
				}
			}
		}
		if !failed {
			t.Errorf("%s passed", name)
		}
		if strings.Contains(name, "viscosity") || name == "an error" {
			if _, _, err := (Recipe{Thin: Water{}, Thick: o, BatchGrams: 10, StepGrams: 1, TempC: 20}).Reach(); !errors.Is(err, honestplate.ErrInput) {
				t.Errorf("recipe of %s: %v", name, err)
			}
		}
	}
	heavy := good
	heavy.rho = honestplate.Estimate{}
	if _, err := mustBlend(t, Rule{}, Part{heavy, 1}).Density(20); !errors.Is(err, honestplate.ErrInput) {
		t.Errorf("no density: %v", err)
	}
	m := mustBlend(t, Rule{}, milk, Part{good, 50})
	if _, err := m.ViscosityAtRate(20, -1); !errors.Is(err, honestplate.ErrInput) {
		t.Errorf("negative shear rate: %v", err)
	}
	if _, err := (Mix{}).ViscosityAtRate(20, 1); !errors.Is(err, honestplate.ErrInput) {
		t.Errorf("empty mix: %v", err)
	}
	one := mustBlend(t, Rule{}, milk)
	a, err := one.ViscosityAtRate(20, 10)
	if b, _ := milk.Liquid.Viscosity(20); err != nil || a != b {
		t.Errorf("one liquid at a rate: %v, %v", a, err)
	}
}

func TestABlendSaysWhatItIs(t *testing.T) {
	m := mustBlend(t, Rule{}, Part{Dairy{FatPercent: 3.5}, 300}, Part{Dairy{FatPercent: 36}, 100})
	d := m.Describe()
	if d.Name != "25 % cream, 36 % fat + 75 % milk, 3.5 % fat" || d.LowC != 0 || d.HighC != 80 || d.ShearRate != 100 || !strings.Contains(d.Source, "log-mixing by mass with its departure") {
		t.Errorf("%+v", d)
	}
	c, known := CompositionOf(m)
	if !known || math.Abs(c.FatPercent-11.625) > 1e-12 {
		t.Errorf("%+v, known %v", c, known)
	}
	other := mustBlend(t, Rule{D: -1}, Part{Water{}, 1}, Part{Sucrose{Brix: 60}, 1})
	if c, known := CompositionOf(other); !known || c.SugarPercent != 30 || !strings.Contains(other.Describe().Source, "interaction -1") {
		t.Errorf("%+v, %v", c, other.Describe())
	}
	nested := mustBlend(t, Rule{}, Part{m, 100}, Part{Dairy{FatPercent: 20}, 100})
	if c, known := CompositionOf(nested); !known || math.Abs(c.FatPercent-15.8125) > 1e-12 {
		t.Errorf("nested: %+v %v", c, known)
	}
	if _, known := CompositionOf(mustBlend(t, Rule{}, Part{Food("custard"), 1}, Part{Water{}, 1})); known {
		t.Error("custard is known")
	}
	for r, want := range map[Rule]string{{}: "log-mixing by mass with its departure", {NoDeparture: true}: "log-mixing alone"} {
		if r.String() != want {
			t.Errorf("%q, want %q", r, want)
		}
	}
}

func TestAThinningCreamThinsItsBlend(t *testing.T) {
	m := mustBlend(t, Rule{}, Part{Dairy{FatPercent: 3.5}, 100}, Part{Dairy{FatPercent: 45}, 400})
	slow, err1 := m.ViscosityAtRate(5, 1)
	own, err2 := m.Viscosity(5)
	fast, err3 := m.ViscosityAtRate(5, 1000)
	if err := errors.Join(err1, err2, err3); err != nil {
		t.Fatal(err)
	}
	if !(slow.Likely > own.Likely && own.Likely > fast.Likely) {
		t.Errorf("1 1/s %v, 100 1/s %v, 1000 1/s %v", slow, own, fast)
	}
	at, err := m.ViscosityAtRate(5, 100)
	if err != nil || math.Abs(at.Likely/own.Likely-1) > 1e-9 || math.Abs(at.Low/own.Low-1) > 1e-9 || math.Abs(at.High/own.High-1) > 1e-9 {
		t.Errorf("at its own rate %v, %v, want %v", at, err, own)
	}
}

func TestARecipeForFatIsThePearsonSquare(t *testing.T) {
	b, err := kitchen(1000, 1).ForFat(18)
	if err != nil || b.ThickGrams != math.Round(1000*14.5/32.5) || b.ThinGrams+b.ThickGrams != 1000 || b.TargetPaS != b.Predicted.Likely {
		t.Errorf("%+v, %v", b, err)
	}
	var r *honestplate.RangeError
	for _, fat := range []float64{3, 37} {
		if _, err := kitchen(1000, 1).ForFat(fat); !errors.As(err, &r) || r.Low != 3.5 || r.High != 36 {
			t.Errorf("%v %%: %v", fat, err)
		}
	}
	if _, err := (Recipe{Thin: Water{}, Thick: Dairy{FatPercent: 36}, BatchGrams: 10, StepGrams: 1, TempC: 6}).ForFat(10); !errors.Is(err, honestplate.ErrInput) {
		t.Errorf("water: %v", err)
	}
	if _, err := kitchen(1000.5, 1).ForFat(18); !errors.Is(err, honestplate.ErrInput) {
		t.Errorf("broken step: %v", err)
	}
}

func TestAStepThatIsNoDecimalStillAddsUp(t *testing.T) {
	r := kitchen(30, 0.3)
	b, err := r.For(0.012)
	if err != nil || math.Abs(b.ThinGrams+b.ThickGrams-30) > 1e-9 {
		t.Errorf("%+v, %v", b, err)
	}
	r = kitchen(500, 2.5)
	if b, err = r.For(0.012); err != nil || b.ThinGrams+b.ThickGrams != 500 {
		t.Errorf("%+v, %v", b, err)
	}
}

func TestEqualLiquidsMakeARecipeOfOneViscosity(t *testing.T) {
	same := Dairy{FatPercent: 20}
	v, _ := same.Viscosity(6)
	r := Recipe{Thin: same, Thick: same, BatchGrams: 100, StepGrams: 1, TempC: 6}
	if b, err := r.For(v.Likely); err != nil || b.ThinGrams+b.ThickGrams != 100 {
		t.Errorf("%+v, %v", b, err)
	}
	if _, err := r.For(v.Likely * 1.01); !errors.Is(err, honestplate.ErrRange) {
		t.Errorf("%v", err)
	}
}

func TestABatchWithoutItsLiquidsIsRefused(t *testing.T) {
	if _, err := (Batch{ThinGrams: 1}).Mix(); !errors.Is(err, honestplate.ErrInput) {
		t.Errorf("%v", err)
	}
	b, err := kitchen(500, 1).For(0.012)
	if err != nil {
		t.Fatal(err)
	}
	b.Recipe.TempC = 99
	if _, err := b.Chill(0.01, 2, 6); !errors.Is(err, honestplate.ErrRange) {
		t.Errorf("99 degC: %v", err)
	}
	b.Recipe.TempC = 6
	b.TargetPaS = 0
	if _, err := b.Chill(0.01, 2, 6); !errors.Is(err, honestplate.ErrInput) {
		t.Errorf("no target: %v", err)
	}
	b.ThinGrams = math.NaN()
}

func TestServeAtPassesOnTheLiquidsErrors(t *testing.T) {
	o := odd{eta: honestplate.Exactly(0.01), err: &honestplate.InputError{Field: "itself"}, below: 50}
	if _, err := ServeAt(o, 0.005, 60, 90); !errors.Is(err, honestplate.ErrRange) {
		t.Errorf("constant: %v", err)
	}
	if _, err := ServeAt(o, 0.005, 40, 90); !errors.Is(err, honestplate.ErrInput) {
		t.Errorf("%v", err)
	}
}
