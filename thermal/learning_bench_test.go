package thermal

import (
	"testing"
	"time"

	"example.org/honestplate/thermal/internal/study"
)

// What is known of a glass of which 4,096 runs are there, once it was seen to bead: the
// windows of all its events.
func BenchmarkWeighGlass(b *testing.B) {
	f, err := testGlass().frame(studio, nil)
	benchmarkObserve(b, f, err, Seen{Event: "beads", At: 14 * time.Minute, Within: 5 * time.Minute}, false)
}

// What the same costs where the runs have to be drawn anew, for the clock that takes
// longest.
func BenchmarkRedrawScoop(b *testing.B) {
	f, err := ball(-18).frame(studio, nil)
	benchmarkObserve(b, f, err, Seen{Event: "softens", At: 12 * time.Minute, Within: 5 * time.Second}, true)
}

// What it costs to find that two observations do not go together.
func BenchmarkRedrawRefused(b *testing.B) {
	f, err := ball(-18).frame(studio, nil)
	if err != nil {
		b.Fatal(err)
	}
	start, err := f.basis(Lesson{}, study.TaughtRuns)
	if err != nil {
		b.Fatal(err)
	}
	k := f.known(Lesson{}, start, nil)
	seen := []Seen{{Event: "softens", At: 2 * time.Minute, Within: time.Second}, {Event: "slumps", At: 90 * time.Minute, Within: time.Second}}
	for b.Loop() {
		if _, err := k.after(seen); err == nil {
			b.Fatal("they go together")
		}
	}
}

func benchmarkObserve[M any](b *testing.B, f frame[M], err error, seen Seen, redraws bool) {
	b.Helper()
	if err != nil {
		b.Fatal(err)
	}
	start, err := f.basis(Lesson{}, study.TaughtRuns)
	if err != nil {
		b.Fatal(err)
	}
	r, err := f.known(Lesson{}, start, nil).runs()
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		after, _, err := r.Observe(seen)
		if err != nil {
			b.Fatal(err)
		}
		if anew := after.kept.(*kept[M]).basis != start; anew != redraws {
			b.Fatalf("drawn anew: %t", anew)
		}
	}
}
