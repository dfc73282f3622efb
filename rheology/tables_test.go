package rheology

import (
	"bytes"
	"encoding/json"
	"testing"
)

// Every member of the embedded tables is one that is read, and none is left out.
func TestTablesAreReadWhole(t *testing.T) {
	strict := func(b []byte, v any) {
		t.Helper()
		d := json.NewDecoder(bytes.NewReader(b))
		d.DisallowUnknownFields()
		if err := d.Decode(v); err != nil {
			t.Error(err)
		}
	}
	var syrups map[string]syrupKind
	strict(syrupTable, &syrups)
	for of, k := range syrups {
		if k.Name == "" || k.Unit == "" || k.Source == "" || k.Band == "" || k.Limits == "" || !(k.Low < k.Usual && k.Usual < k.High) ||
			!(k.LowC < k.HighC) || k.Spread <= 1 || k.Density <= 0 || (k.Tension == line{}) != (of == "maple") {
			t.Errorf("%s: %+v", of, k)
		}
	}
	var all map[Food]*foodData
	strict(foodTable, &all)
	for f, d := range all {
		if d.Source == "" || d.Band == "" || !(d.LowC < d.HighC) || d.Spread <= 1 || d.Density[0] <= 0 || d.Tension[0] <= 0 || (d.PaS > 0) == (len(d.Curves) > 0) {
			t.Errorf("%s: %+v", f, d)
		}
	}
	if len(syrups) != len(syrupKinds) || len(all) != len(foods) {
		t.Errorf("%d syrups and %d foods", len(syrupKinds), len(foods))
	}
}
