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
	s := Scale{StepGrams: 0.5, MaxGrams: 3000, Verified: true}
	for load, want := range map[float64]float64{0: 0.25, 250: 0.25, 250.5: 0.5, 1000: 0.5, 1000.5: 0.75, 3000: 0.75} {
		if got, err := s.MaxError(load); err != nil || got != want {
			t.Errorf("%v g: %v, %v; want %v", load, got, err, want)
		}
		service := s
		service.Verified = false
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
	if want := math.Sqrt(0.25/6 + 0.25/3); math.Abs(w.Standard-want) > 1e-12 || w.Expanded != 2*w.Standard || w.Grams != 62 || w.Readings != 3 || w.LeastGrams != 10 {
		t.Errorf("%+v, want u = %v", w, want)
	}
	if _, err := (Scale{StepGrams: 0.5}).Weigh(62, 62.5); err != nil {
		t.Errorf("a reading that flickers by one step: %v", err)
	}
	if w.String() != "62.00 +- 0.71 g" {
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
		if rng.IntN(2) == 0 {
			s.Check = CheckWeight{Grams: 300 * s.StepGrams, Reading: 302 * s.StepGrams}
		}
		one, err := s.Sum(load)
		if err != nil {
			t.Fatal(err)
		}
		single, err := s.Weigh(load)
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(one.Standard-single.Standard) > 1e-12 || one.Grams != single.Grams || one.LeastGrams != single.LeastGrams {
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

// A check weight takes off what the scale was found to be wrong by, and leaves open what
// one reading of it leaves open.
func TestCheckWeightIsBetterThanAClass(t *testing.T) {
	bare := Scale{StepGrams: 0.1, VerifyGrams: 1}
	checked := bare
	checked.Check = CheckWeight{Grams: 100, Reading: 100.5}
	a, err := bare.Weigh(62.3)
	b, err2 := checked.Weigh(62.3)
	if err != nil || err2 != nil {
		t.Fatal(err, err2)
	}
	if want := 62.3 * 100 / 100.5; math.Abs(b.Grams-want) > 1e-12 || b.Expanded > 0.11 || a.Expanded < 1 {
		t.Errorf("by class %v, by the weight %v, want %v g", a, b, want)
	}
	if _, err := checked.Weigh(201); fieldOf(err) != "Check.Grams" {
		t.Errorf("far beyond the weight: %v", err)
	}
	if _, err := checked.Sum(50, 201); fieldOf(err) != "Check.Grams" {
		t.Errorf("far beyond the weight: %v", err)
	}
	checked.Check.Reading = 120
	if _, err := checked.Weigh(62); fieldOf(err) != "Check.Reading" {
		t.Errorf("another weight: %v", err)
	}
}

// JCGM 100:2008 (GUM), example in 5.2.2 (from memory): ten resistors of 1000 ohm, each
// compared with one standard known to 0.1 ohm; the sum is known to 1 ohm, not 0.32. Here
// they are loads on one scale.
func TestWhatIsCommonAddsUp(t *testing.T) {
	s := Scale{StepGrams: 1e-3, VerifyGrams: 1, Check: CheckWeight{Grams: 1000, Reading: 1000, Standard: 0.1}}
	w, err := s.Sum(slices.Repeat([]float64{1000}, 10)...)
	if err != nil || math.Abs(w.Standard-1.00) > 0.005 {
		t.Errorf("%v, %v", w.Standard, err)
	}
}

func TestPictureShowsWhatIsDeclared(t *testing.T) {
	d := Declaration{Item: "smoked cheese", Grams: 62, StepGrams: 0.5, MinusGrams: 1, PlusGrams: 1, Advertised: true}
	for _, c := range []struct {
		grams float64
		want  Verdict
		act   string
	}{{62, Agrees, ""}, {62.5, Agrees, ""}, {61.5, Agrees, ""}, {62.6, CannotTell, ""}, {60.6, CannotTell, ""}, {64, Differs, Exceed}, {60, Differs, Reduce}} {
		v, err := d.JudgePicture(Weighing{Grams: c.grams, Expanded: 0.5})
		var e *honestplate.RefusedError
		switch {
		case v.Verdict != c.want || v.Reason == "":
			t.Errorf("%v g: %+v, %v", c.grams, v, err)
		case c.act == "" && err != nil:
			t.Errorf("%v g: %+v, %v", c.grams, v, err)
		case c.act != "" && (!errors.As(err, &e) || !errors.Is(err, honestplate.ErrAdvertised) || !strings.Contains(e.Reason, string(c.act))):
			t.Errorf("%v g: %+v, %v", c.grams, v, err)
		}
	}
	// A scale that cannot know agrees with nothing, whatever it shows.
	coarse := Scale{StepGrams: 50}
	for _, reading := range []float64{0, 20, 50, 62, 100} {
		w, err := coarse.Weigh(reading)
		if err != nil {
			t.Fatal(err)
		}
		if v, err := d.JudgePicture(w); err != nil || v.Verdict != CannotTell {
			t.Errorf("%v g on a scale of 50 g: %+v, %v", reading, v, err)
		}
	}
	if v, err := d.JudgePicture(Weighing{Grams: 0, Expanded: 100}); err != nil || v.Verdict != CannotTell {
		t.Errorf("nothing weighed: %+v, %v", v, err)
	}
	if v, err := d.JudgePicture(Weighing{Grams: 62, Expanded: 0.1, LeastGrams: 100}); err != nil || v.Verdict != CannotTell {
		t.Errorf("below the least load: %+v, %v", v, err)
	}
	if v, err := d.JudgePicture(Weighing{Grams: 20, Expanded: 0.1, LeastGrams: 100}); !errors.Is(err, honestplate.ErrAdvertised) || v.Verdict != Differs {
		t.Errorf("far off below the least load: %+v, %v", v, err)
	}
	d.Advertised = false
	if v, err := d.JudgePicture(Weighing{Grams: 80}); err != nil || v.Verdict != Differs {
		t.Errorf("garnish: %+v, %v", v, err)
	}
	d.MinusGrams, d.PlusGrams = 0, 0
	if v, err := d.JudgePicture(Weighing{Grams: 62, Expanded: 0.1}); err != nil || v.Verdict != CannotTell || !strings.Contains(v.Reason, "no tolerance") {
		t.Errorf("without a tolerance: %+v, %v", v, err)
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

// fieldOf returns the field that an error is about, or its text.
func fieldOf(err error) string {
	switch e := honestplate.Cause(err).(type) {
	case nil:
		return ""
	case *honestplate.InputError:
		return e.Field
	case *honestplate.RangeError:
		return e.Field
	case *honestplate.RefusedError:
		return e.Field
	}
	return err.Error()
}
