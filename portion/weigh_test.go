package portion

import (
	"errors"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"example.org/honestplate"
)

func TestErrorOfScalesInService(t *testing.T) {
	s := Scale{StepGrams: 0.5, MaxGrams: 3000}
	for load, want := range map[float64]float64{0: 0.25, 250: 0.25, 250.5: 0.5, 1000: 0.5, 1000.5: 0.75, 3000: 0.75} {
		if got, err := s.MaxError(load); err != nil || got != want {
			t.Errorf("%v g: %v, %v; want %v", load, got, err, want)
		}
		service := s
		service.InService = true
		if got, err := service.MaxError(load); err != nil || got != 2*want {
			t.Errorf("%v g in service: %v, %v; want %v", load, got, err, 2*want)
		}
	}
	if _, err := s.MaxError(3000.5); !errors.Is(err, honestplate.ErrRange) {
		t.Errorf("above the greatest load: %v", err)
	}
	if _, err := (Scale{StepGrams: 0.1}).MaxError(1000.1); !errors.Is(err, honestplate.ErrRange) {
		t.Errorf("above 10 000 e: %v", err)
	}
}

func TestClassesHaveNames(t *testing.T) {
	for c, want := range map[Class]string{ClassI: "I", ClassII: "II", ClassIII: "III", ClassIIII: "IIII", 9: "Class(9)"} {
		if c.String() != want {
			t.Errorf("%d is %q", int(c), c)
		}
	}
}

func TestUncertaintyOfAWeighing(t *testing.T) {
	w, err := Scale{StepGrams: 0.5}.Weigh(62, 62, 62)
	if err != nil {
		t.Fatal(err)
	}
	if want := math.Sqrt(0.25/6 + 0.0625/3); math.Abs(w.Standard-want) > 1e-12 || w.Expanded != 2*w.Standard || w.Grams != 62 || w.Readings != 3 {
		t.Errorf("%+v, want u = %v", w, want)
	}
	if _, err := (Scale{StepGrams: 0.5}).Weigh(62, 62.5); err != nil {
		t.Errorf("a reading that flickers by one step: %v", err)
	}
	if w.String() != "62.00 +- 0.50 g" {
		t.Errorf("%v", w)
	}
	if s := (Weighing{Grams: 1234, Expanded: 20}).String(); s != "1234 +- 20 g" {
		t.Error(s)
	}
	if s := (Weighing{Grams: 5}).String(); s != "5 g" {
		t.Error(s)
	}
}

func TestBadWeighings(t *testing.T) {
	s := Scale{StepGrams: 0.5}
	for name, c := range map[string]struct {
		err  error
		kind error
	}{
		"no reading":       {failure(s.Weigh()), honestplate.ErrInput},
		"NaN":              {failure(s.Weigh(math.NaN())), honestplate.ErrInput},
		"spread":           {failure(s.Weigh(62, 64)), honestplate.ErrRange},
		"too heavy":        {failure(s.Weigh(1e6)), honestplate.ErrRange},
		"no loads":         {failure(s.Sum()), honestplate.ErrInput},
		"bad load":         {failure(s.Sum(1, -1)), honestplate.ErrInput},
		"step":             {failure(Scale{StepGrams: -1}.MaxError(1)), honestplate.ErrInput},
		"huge step":        {failure(Scale{StepGrams: 1e9}.MaxError(1)), honestplate.ErrRange},
		"interval":         {failure(Scale{VerifyGrams: math.NaN()}.MaxError(1)), honestplate.ErrInput},
		"greatest load":    {failure(Scale{MaxGrams: -1}.MaxError(1)), honestplate.ErrInput},
		"repeatability":    {failure(Scale{Repeat: -1}.MaxError(1)), honestplate.ErrInput},
		"class":            {failure(Scale{Class: 9}.MaxError(1)), honestplate.ErrInput},
		"least load step":  {failure(Scale{StepGrams: -1}.LeastLoad()), honestplate.ErrInput},
		"least load class": {failure(Scale{Class: 9}.LeastLoad()), honestplate.ErrInput},
		"NaN load":         {failure(s.MaxError(math.NaN())), honestplate.ErrInput},
	} {
		if !errors.Is(c.err, c.kind) {
			t.Errorf("%s: %v", name, c.err)
		}
	}
}

// A sum of one is that weighing; more weighings are less sure, by more than the
// square root of their number and by no more than the number.
func TestSumsGrowUnsure(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 7))
	for range 1000 {
		s := Scale{StepGrams: []float64{0.01, 0.1, 0.5, 1}[rng.IntN(4)], Class: Class(rng.IntN(3)), Repeat: 0.1 * rng.Float64()}
		load := 400 * s.StepGrams * rng.Float64()
		one, err := s.Sum(load)
		if err != nil {
			t.Fatal(err)
		}
		single, err := s.Weigh(load)
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(one.Standard-single.Standard) > 1e-12 {
			t.Fatalf("%+v, %v g: %v alone, %v as a sum", s, load, single, one)
		}
		n := 2 + rng.IntN(30)
		many, err := s.Sum(slices.Repeat([]float64{load}, n)...)
		if err != nil {
			t.Fatal(err)
		}
		if k := many.Standard / one.Standard; k < math.Sqrt(float64(n)) || k > float64(n) {
			t.Fatalf("%d weighings are %v times as unsure as one", n, k)
		}
	}
}

func TestPictureShowsWhatIsDeclared(t *testing.T) {
	d := Declaration{Item: "smoked cheese", Grams: 62, StepGrams: 0.5, Advertised: true}
	for _, c := range []struct {
		grams float64
		act   string
	}{{62, ""}, {62.4, ""}, {61.6, ""}, {63, Exceed}, {61, Reduce}} {
		v, err := d.JudgePicture(Weighing{Grams: c.grams, Expanded: 0.5})
		var e *honestplate.RefusedError
		switch {
		case c.act == "" && (err != nil || !v.Agrees):
			t.Errorf("%v g: %+v, %v", c.grams, v, err)
		case c.act != "" && (!errors.As(err, &e) || !errors.Is(err, honestplate.ErrAdvertised) || !strings.Contains(e.Reason, string(c.act)) || v.Agrees):
			t.Errorf("%v g: %+v, %v", c.grams, v, err)
		}
	}
	d.Advertised = false
	if v, err := d.JudgePicture(Weighing{Grams: 80}); err != nil || v.Agrees {
		t.Errorf("garnish: %+v, %v", v, err)
	}
	for name, err := range map[string]error{
		"no declaration": failure(Declaration{}.JudgePicture(Weighing{Grams: 1})),
		"only a count":   failure(Declaration{Count: 3}.JudgePicture(Weighing{Grams: 1})),
		"NaN":            failure(d.JudgePicture(Weighing{Grams: math.NaN()})),
		"uncertainty":    failure(d.JudgePicture(Weighing{Grams: 1, Expanded: -1})),
	} {
		if !errors.Is(err, honestplate.ErrInput) {
			t.Errorf("%s: %v", name, err)
		}
	}
}
