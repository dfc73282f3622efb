package thermal

import (
	"errors"
	"math"
	"runtime"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
)

// twoInputs: the first input decides the first event alone; the second event
// happens only when the second input is above its median, and depends on it.
func twoInputs() Study {
	return Study{
		Inputs: []Uncertain{
			{Name: "a", Likely: 100, Low: 80, High: 130},
			{Name: "b", Likely: 1, Low: 0.5, High: 2, Scale: true},
		},
		Events: 2,
		Model: func() func([]float64, []time.Duration) error {
			return func(x []float64, at []time.Duration) error {
				at[0] = time.Duration(x[0] * float64(time.Second))
				at[1] = Never
				if x[1] > 1 {
					at[1] = time.Duration(float64(time.Minute) / x[1])
				}
				return nil
			}
		},
	}
}

func TestBandOfAnIdentityModelIsTheInputsBand(t *testing.T) {
	out, err := twoInputs().Run()
	if err != nil {
		t.Fatal(err)
	}
	w := out[0].Window
	for _, c := range []struct {
		name      string
		got, want time.Duration
		within    time.Duration
	}{
		{"earliest", w.Earliest, 80 * time.Second, time.Second},
		{"likely", w.Likely, 100 * time.Second, 0},
		{"latest", w.Latest, 130 * time.Second, 1500 * time.Millisecond},
	} {
		if d := c.got - c.want; max(d, -d) > c.within {
			t.Errorf("%s %v, want %v", c.name, c.got, c.want)
		}
	}
	if s := out[0].Decides[0]; s.Input != "a" || s.Share < 0.97 {
		t.Errorf("the first event is decided by %v", out[0].Decides)
	} else if s.Low != 80*time.Second || s.High != 130*time.Second {
		t.Errorf("limits of a give %v and %v", s.Low, s.High)
	}
}

func TestNeverIsLaterThanEverything(t *testing.T) {
	out, err := twoInputs().Run()
	if err != nil {
		t.Fatal(err)
	}
	w := out[1].Window
	if w.Latest != Never || w.Likely != Never {
		t.Errorf("window %v, want likely and latest never", w)
	}
	if !w.MayHappen() || w.Earliest < 25*time.Second || w.Earliest > 35*time.Second {
		t.Errorf("earliest %v, want about 30 s", w.Earliest)
	}
	if s := out[1].Decides[0]; s.Input != "b" || s.Low != Never || s.High != 30*time.Second {
		t.Errorf("decided by %v", out[1].Decides)
	}
}

func TestStudyDoesNotDependOnTheNumberOfCores(t *testing.T) {
	before := runtime.GOMAXPROCS(1)
	defer runtime.GOMAXPROCS(before)
	one, err := twoInputs().Run()
	if err != nil {
		t.Fatal(err)
	}
	runtime.GOMAXPROCS(7)
	seven, err := twoInputs().Run()
	if err != nil {
		t.Fatal(err)
	}
	if d := cmp.Diff(one, seven); d != "" {
		t.Error(d)
	}
}

func TestStudyWithoutInputsHasNoWidth(t *testing.T) {
	s := twoInputs()
	s.Model = func() func([]float64, []time.Duration) error {
		return func(_ []float64, at []time.Duration) error {
			at[0], at[1] = time.Minute, Never
			return nil
		}
	}
	for _, inputs := range [][]Uncertain{nil, s.Inputs} {
		s.Inputs = inputs
		out, err := s.Run()
		if err != nil {
			t.Fatal(err)
		}
		if out[0].Window != (Window{time.Minute, time.Minute, time.Minute}) || out[1].MayHappen() {
			t.Errorf("outcomes %v", out)
		}
		if len(out[0].Decides) != 0 {
			t.Errorf("nothing moves it, yet %v", out[0].Decides)
		}
	}
}

func TestStudyRefusesNonsense(t *testing.T) {
	good := twoInputs()
	for name, spoil := range map[string]func(*Study){
		"no events":         func(s *Study) { s.Events = 0 },
		"negative samples":  func(s *Study) { s.Samples = -1 },
		"too many samples":  func(s *Study) { s.Samples = 5000 },
		"too many inputs":   func(s *Study) { s.Inputs = make([]Uncertain, 25) },
		"no model":          func(s *Study) { s.Model = nil },
		"NaN":               func(s *Study) { s.Inputs[0].Likely = math.NaN() },
		"infinite limit":    func(s *Study) { s.Inputs[0].High = math.Inf(1) },
		"low above likely":  func(s *Study) { s.Inputs[0].Low = 101 },
		"high below likely": func(s *Study) { s.Inputs[0].High = 99 },
		"factor too wide":   func(s *Study) { s.Inputs[1].Low = 1e-60 },
		"factor through 0":  func(s *Study) { s.Inputs[1].Low = 0 },
		"min above max":     func(s *Study) { s.Inputs[0].Min, s.Inputs[0].Max = 2, 1 },
	} {
		s := good
		s.Inputs = append([]Uncertain(nil), good.Inputs...)
		spoil(&s)
		if _, err := s.Run(); !errors.Is(err, ErrInput) {
			t.Errorf("%s: error %v, want ErrInput", name, err)
		}
	}
}

func TestStudyReportsTheEarliestFailingRun(t *testing.T) {
	s := twoInputs()
	boom := errors.New("boom")
	s.Model = func() func([]float64, []time.Duration) error {
		return func(x []float64, _ []time.Duration) error {
			if x[1] == 2 { // run 4: the second input at its high limit
				return boom
			}
			return nil
		}
	}
	_, err := s.Run()
	if !errors.Is(err, boom) || err.Error() != "thermal: run 4 of the band: boom" {
		t.Errorf("error %v", err)
	}
}

func TestLimitsHoldTheSamples(t *testing.T) {
	s := twoInputs()
	s.Inputs[0] = Uncertain{Name: "RH", Likely: 0.9, Low: 0.5, High: 1.2, Min: 0, Max: 1}
	s.Samples = 1000
	s.Model = func() func([]float64, []time.Duration) error {
		return func(x []float64, _ []time.Duration) error {
			if x[0] < 0 || x[0] > 1 {
				return errors.New("outside")
			}
			return nil
		}
	}
	if _, err := s.Run(); err != nil {
		t.Error(err)
	}
}

func BenchmarkStudyOverhead(b *testing.B) {
	s := twoInputs()
	b.ReportAllocs()
	for b.Loop() {
		if _, err := s.Run(); err != nil {
			b.Fatal(err)
		}
	}
}

func FuzzStudy(f *testing.F) {
	f.Add(1.0, 0.5, 2.0, true, 0.0, 0.0, 20)
	f.Add(1e99, -1e99, 1e100, false, 0.0, 0.0, 9)
	f.Add(0.9, 0.8, 1.1, false, 0.0, 1.0, 300)
	f.Fuzz(func(t *testing.T, likely, low, high float64, scale bool, least, most float64, n int) {
		s := twoInputs()
		s.Inputs[0] = Uncertain{Name: "x", Likely: likely, Low: low, High: high, Scale: scale, Min: least, Max: most}
		s.Samples = n
		s.Model = func() func([]float64, []time.Duration) error {
			return func(x []float64, at []time.Duration) error {
				if math.IsNaN(x[0]) || math.IsInf(x[0], 0) {
					t.Fatalf("a sample of %+v is %g", s.Inputs[0], x[0])
				}
				at[0] = seconds(math.Abs(x[0]))
				at[1] = Never
				return nil
			}
		}
		out, err := s.Run()
		if err != nil {
			if !errors.Is(err, ErrInput) && !errors.Is(err, ErrRange) {
				t.Fatal(err)
			}
			return
		}
		w := out[0].Window
		if w.Earliest > w.Likely || w.Likely > w.Latest || w.Earliest < 0 {
			t.Fatalf("%+v: %+v", s.Inputs[0], w)
		}
		sum := 0.0
		for _, d := range out[0].Decides {
			if math.IsNaN(d.Share) || d.String() == "" {
				t.Fatalf("%+v", d)
			}
			sum += d.Share
		}
		if len(out[0].Decides) > 0 && math.Abs(sum-1) > 1e-9 {
			t.Fatalf("shares sum to %g", sum)
		}
	})
}

// Two inputs of known weights: the share is that of the variance, and the band that
// of their sum, to what 256 samples can say.
func TestSharesAreThoseOfTheVariance(t *testing.T) {
	s := Study{
		Inputs: []Uncertain{
			{Name: "minor", Likely: 100, Low: 90, High: 110},
			{Name: "major", Likely: 100, Low: 70, High: 130},
			{Name: "idle", Likely: 1, Low: 0, High: 2},
		},
		Events: 1,
		Model: func() func([]float64, []time.Duration) error {
			return func(x []float64, at []time.Duration) error {
				at[0] = seconds(x[0] + x[1])
				return nil
			}
		},
	}
	out, err := s.Run()
	if err != nil {
		t.Fatal(err)
	}
	d := out[0].Decides
	if d[0].Input != "major" || math.Abs(d[0].Share-0.9) > 0.03 || d[1].Input != "minor" || d[2].Share > 0.01 {
		t.Errorf("decided by %v", d)
	}
	half := math.Sqrt(10*10 + 30*30)
	if low, high := 200-out[0].Earliest.Seconds(), out[0].Latest.Seconds()-200; math.Abs(low/half-1) > 0.1 || math.Abs(high/half-1) > 0.1 {
		t.Errorf("band %v, want 200 s +- %.1f", out[0].Window, half)
	}
}
