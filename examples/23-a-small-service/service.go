package main

import (
	"encoding/json"
	"fmt"
	"io"
	"net/http"
	"runtime"

	"example.org/honestplate"
	"example.org/honestplate/examples/shoot"
	"example.org/honestplate/rheology"
	"example.org/honestplate/thermal"
	"example.org/honestplate/thermal/light"
)

// mostBytes is how long a question may be, and busy how many are answered at once: a
// band runs on all cores anyway.
const mostBytes = 1 << 20

var busy = make(chan struct{}, runtime.GOMAXPROCS(0))

// service answers three questions of a set, each a POST of JSON.
func service() http.Handler {
	mux := http.NewServeMux()
	mux.HandleFunc("POST /glass", answer(glass))
	mux.HandleFunc("POST /recipe", answer(recipe))
	mux.HandleFunc("POST /plan", answer(plan))
	return mux
}

// glass says when a cold glass hazes, beads and runs.
func glass(r io.Reader) (any, error) {
	var q struct {
		Glass thermal.Glass `json:"glass"`
		Air   thermal.Air   `json:"air"`
		Lamps []light.Lamp  `json:"lamps,omitzero"`
	}
	if err := strictly(r, &q); err != nil {
		return nil, err
	}
	clock, err := q.Glass.Clock(q.Air, q.Lamps...)
	if err != nil {
		return nil, err
	}
	return map[string]honestplate.Window{
		"haze": clock.Haze.Window, "beads": clock.Beads.Window, "runs": clock.Runs.Window,
	}, nil
}

// recipe says what to weigh for a wanted viscosity.
func recipe(r io.Reader) (any, error) {
	var q struct {
		Recipe rheology.Recipe `json:"recipe"`
		PaS    float64         `json:"wanted_pa_s"`
	}
	if err := strictly(r, &q); err != nil {
		return nil, err
	}
	batch, err := q.Recipe.For(q.PaS)
	if err != nil {
		return nil, err
	}
	return map[string]any{"thin_grams": batch.ThinGrams, "thick_grams": batch.ThickGrams, "predicted_pa_s": batch.Predicted}, nil
}

// plan turns a brief into the day's plan.
func plan(r io.Reader) (any, error) {
	brief, err := shoot.Read(r)
	if err != nil {
		return nil, err
	}
	return brief.Plan(nil)
}

// strictly reads one JSON object; a misspelt name is an error, not a default.
func strictly(r io.Reader, into any) error {
	d := json.NewDecoder(r)
	d.DisallowUnknownFields()
	if err := d.Decode(into); err != nil {
		if cause := honestplate.Cause(err); cause != err {
			return cause
		}
		return &honestplate.InputError{Field: "body", Got: honestplate.OneLine(err.Error()), Want: "the JSON of the question"}
	}
	return nil
}

// A problem is what a form can show beside a field.
type problem struct {
	Field string   `json:"field"`
	Line  int      `json:"line,omitempty"`
	Low   *float64 `json:"low,omitempty"`
	High  *float64 `json:"high,omitempty"`
	Text  string   `json:"text"`
}

// problemOf maps any error of the module to a status and a problem.
func problemOf(err error) (int, problem) {
	switch e := honestplate.Cause(err).(type) {
	case *honestplate.InputError:
		return http.StatusBadRequest, problem{Field: e.Field, Text: "want " + e.Want}
	case *honestplate.RangeError:
		return http.StatusUnprocessableEntity, problem{Field: e.Field, Low: &e.Low, High: &e.High, Text: fmt.Sprintf("%g to %g %s: %s", e.Low, e.High, e.Unit, e.Source)}
	case *honestplate.RefusedError:
		return http.StatusConflict, problem{Field: e.Field, Text: e.Reason + "; " + e.Advice}
	}
	return http.StatusInternalServerError, problem{Text: "this is ours to mend"}
}

// problemsOf maps all that is wrong: the faults of a file, by line, or the dishes of a brief
// that cannot be planned. The status is that of the last.
func problemsOf(err error) (status int, list []problem) {
	wrong := []error{err}
	if many, ok := err.(interface{ Unwrap() []error }); ok {
		wrong = many.Unwrap()
	}
	faults, inFile := err.(shoot.Faults)
	for i, e := range wrong {
		code, p := problemOf(e)
		if status = code; inFile {
			p.Line = faults[i].Line
		}
		list = append(list, p)
	}
	return status, list
}

// answer wraps a question as a handler: one at a time a core, errors as problems.
func answer(ask func(io.Reader) (any, error)) http.HandlerFunc {
	return func(w http.ResponseWriter, r *http.Request) {
		select {
		case busy <- struct{}{}:
			defer func() { <-busy }()
		case <-r.Context().Done():
			return
		}
		status := http.StatusOK
		out, err := ask(http.MaxBytesReader(w, r.Body, mostBytes))
		if err != nil {
			var list []problem
			status, list = problemsOf(err)
			out = map[string][]problem{"problems": list}
		}
		w.Header().Set("Content-Type", "application/json")
		w.WriteHeader(status)
		_ = json.NewEncoder(w).Encode(out) // a reader that went away is no fault of ours
	}
}
