package portion

import (
	"bytes"
	"reflect"
	"sync"
	"testing"
)

// Values are plain: many goroutines share one input and all see the serial answer.
func TestChoosingAndLayingOutAtOnce(t *testing.T) {
	pick := Pick{Pieces: weighed(60, 1), Count: 12, Grams: 216, StepGrams: 0.1}
	strips, scatter := Strips{Favour: 0.3}, Scatter{Count: 12, Diameter: 0.02}
	dish, cheese := Round{Diameter: 0.3, Edge: 0.02, Slices: 6}, Declaration{Grams: 62, StepGrams: 0.5}
	record := goodRecord()
	type answer struct {
		picked  Picked
		placing Placing
		svg     []byte
		text    string
	}
	answers := make([]answer, 65)
	do := func(a *answer) {
		a.picked, _ = pick.Best()
		a.placing, _ = scatter.Place(dish)
		a.placing, _ = a.placing.Assign(pick.Pieces[:12])
		l, _ := strips.Lay(dish, cheese)
		var b bytes.Buffer
		_ = record.Write(&b)
		a.svg, a.text = append(l.SVG(), a.placing.SVG()...), b.String()+record.Statement()
	}
	do(&answers[64])
	var wait sync.WaitGroup
	for i := range 64 {
		wait.Go(func() { do(&answers[i]) })
	}
	wait.Wait()
	for i := range 64 {
		if !reflect.DeepEqual(answers[i], answers[64]) {
			t.Fatalf("goroutine %d sees another answer", i)
		}
	}
	if len(answers[64].picked.Chosen) != 12 || len(answers[64].svg) == 0 {
		t.Error("no answer at all")
	}
}
