package shoot_test

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"

	"example.org/honestplate/examples/shoot"
)

// BenchmarkPlan reads and plans what the first demonstration held, and the invented days of
// the call sheet, which hold far more.
func BenchmarkPlan(b *testing.B) {
	for _, path := range []string{"testdata/first.json", "../callsheet/days/autumn.json", "../callsheet/days/coast.json", "../callsheet/days/motion.json"} {
		text, err := os.ReadFile(path)
		if err != nil {
			b.Fatal(err)
		}
		b.Run(filepath.Base(path), func(b *testing.B) {
			for b.Loop() {
				brief, err := shoot.Read(bytes.NewReader(text))
				if err != nil {
					b.Fatal(err)
				}
				if _, err := brief.Plan(nil); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
