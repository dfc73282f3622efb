package shoot

import (
	"testing"

	"example.org/honestplate"
)

func TestTheFrameShowsWhatAllOfItShows(t *testing.T) {
	fog := shown{causes: []Cause{{Thing: "glass", Event: "haze"}, {Thing: "glass", Event: "white"}},
		likely: interval{from: s(10), to: s(100), opens: 0, closes: 1}}
	ice := shown{causes: []Cause{{Thing: "ice", Event: "ice gone"}}, likely: interval{to: s(90), opens: -1, closes: 0}}
	for i := range 40 {
		fog.runs = append(fog.runs, interval{from: s(float64(i)), to: s(float64(100 + i)), opens: 0, closes: 1})
		ice.runs = append(ice.runs, interval{to: s(float64(105 - i)), opens: -1, closes: 0})
	}
	p := joint([]shown{fog, ice}, nil)
	if p.OpensBy.Event != "haze" || p.OpensBy.Share != 1 || p.ClosesBy.Event != "ice gone" || p.ClosesBy.Share != 0.925 {
		t.Errorf("opens by %+v, closes by %+v", p.OpensBy, p.ClosesBy)
	}
	if p.Opens.Likely != s(10) || p.Closes.Likely != s(90) || p.Opens.Earliest != s(0) || p.Opens.Latest != s(39) {
		t.Errorf("opens %v, closes %v", p.Opens, p.Closes)
	}
	// Run by run the glass that fogs late is the one whose ice goes first: the picture is
	// shorter than the separate bands say.
	if !p.Sure || p.From != s(35) || p.To != s(70) {
		t.Errorf("stands %v to %v", p.From, p.To)
	}
	for _, w := range []honestplate.Window{p.Opens, p.Closes} {
		if err := w.Check("window"); err != nil {
			t.Error(err)
		}
	}
}

func TestWhereNothingChangesThePictureIsAlways(t *testing.T) {
	if p := joint(nil, nil); !p.Always || !p.Length().Never {
		t.Errorf("got %+v", p)
	}
}
