package portion

import (
	"bytes"
	"crypto/ed25519"
	"encoding"
	"errors"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"math/rand/v2"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"sync"
	"testing"

	"example.org/honestplate"
	"example.org/honestplate/portion/apportion"
)

// concurrentCalls is one call of every exported function and method of the tree, by
// name. All share their inputs, so that a write to any of them would be seen.
func concurrentCalls(t *testing.T) map[string]func() any {
	must := func(err error) {
		if err != nil {
			t.Fatal(err)
		}
	}
	got := func(values ...any) any { return values }
	one := func(v any, err error) any { return []any{v, err} }
	cheese := Declaration{Item: "cheese", Grams: 62, StepGrams: 0.5, Count: 9, Advertised: true}
	zones := []Zone{{Name: "near", Weight: 3, MinGrams: 10, MaxCount: 4}, {Name: "middle", Weight: 2}, {Name: "far", Weight: 1, MaxGrams: 9}}
	claims := []apportion.Claim{{Weight: 5.2}, {Weight: 3.1, Min: 2}, {Weight: 1.7, Max: 9}}
	parts := []Ingredient{{"sugar", 80}, {"starch", 15}, {"cocoa", 35}}
	table := Table{Declaration: cheese, Rows: zones, Columns: []Zone{{Weight: 1}, {Weight: 2}}}
	weights, rows, columns := [][]float64{{1, 2.5}, {0, 3.25}, {2, 1}}, []int64{4, 3, 5}, []int64{5, 7}
	pick := Pick{Pieces: weighed(60, 1), Count: 12, Grams: 216, StepGrams: 0.1}
	dish := Round{Diameter: 0.3, Edge: 0.02, Slices: 6}
	scatter, strips := Scatter{Count: 12, Diameter: 0.02}, Strips{Favour: 0.3}
	placing, err := scatter.Place(dish)
	must(err)
	placing, err = placing.Assign(pick.Pieces[:12])
	must(err)
	layout, err := strips.Lay(dish, cheese)
	must(err)
	record := goodRecord()
	data, err := record.MarshalJSON()
	must(err)
	scale := Scale{StepGrams: 0.1, MaxGrams: 3000, Class: ClassII, Repeat: 0.05}
	weighing, err := scale.Weigh(62, 62.1, 62)
	must(err)
	heroes := Heroes{Takes: 10, Good: 7, Wanted: 2}
	together := Heroes{Prior: Prior{3, 2}, Correlation: 0.2, Batch: 4, Wanted: 3}
	limits, specified := limits(61, 63), burger()
	build := built(fine, 28, 113, 14, 27)
	signedOff, err := specified.MarshalJSON()
	must(err)
	revisions := chain(t)
	stylist, client := testKeys()
	pinned := []ed25519.PublicKey{stylist.Public().(ed25519.PublicKey), client.Public().(ed25519.PublicKey)}
	text := func(v encoding.TextMarshaler, back encoding.TextUnmarshaler) any {
		b, err := v.MarshalText()
		return got(b, err, back.UnmarshalText(b), reflect.ValueOf(back).Elem().Interface(), fmt.Sprint(v))
	}
	said := func(err error) any { return got(err.Error(), errors.Unwrap(err).Error()) }
	calls := map[string]func() any{
		"Declaration.Allows":           func() any { return cheese.Allows(Thin).Error() },
		"Declaration.JudgeCount":       func() any { return cheese.JudgeCount(8).Error() },
		"Declaration.JudgePicture":     func() any { return one(cheese.JudgePicture(weighing)) },
		"Declaration.Share":            func() any { return one(cheese.Share(zones)) },
		"Declaration.ShareCount":       func() any { return one(cheese.ShareCount(zones)) },
		"Declaration.Validate":         func() any { return cheese.Validate() },
		"FileSHA256":                   func() any { return one(FileSHA256(bytes.NewReader(data))) },
		"Finding.String":               func() any { f, err := record.Items[0].Verdict(); return got(f.String(), err) },
		"Heroes.Finish":                func() any { return one(together.Finish(9, true, false, true)) },
		"Heroes.Stop":                  func() any { return one(heroes.Stop(9, 10, 3)) },
		"Limits.Accept":                func() any { return one(limits.Accept(0.2)) },
		"Limits.Capability":            func() any { return one(limits.Capability(0.2)) },
		"Limits.Decide":                func() any { return one(limits.Decide(62.3, 0.2)) },
		"Prior.After":                  func() any { return one(Prior{}.After(9, 4, 0.5)) },
		"ReadSpecification":            func() any { return one(ReadSpecification(bytes.NewReader(signedOff))) },
		"Record.Canonical":             func() any { return one(record.Canonical()) },
		"Record.Changes":               func() any { return one(record.Changes(revisions[2].Record)) },
		"Record.Next":                  func() any { return one(record.Next()) },
		"Record.SHA256":                func() any { return one(record.SHA256()) },
		"Record.Sign":                  func() any { return one(record.Sign(stylist)) },
		"RecordItem.MarshalJSON":       func() any { return one(record.Items[0].MarshalJSON()) },
		"RecordItem.UnmarshalJSON":     func() any { var i RecordItem; err := i.UnmarshalJSON([]byte(`{"item":"x"}`)); return got(i, err) },
		"RecordItem.Verdict":           func() any { return one(record.Items[0].Verdict()) },
		"Specification.BeforeWeighing": func() any { return one(specified.BeforeWeighing(scale)) },
		"Specification.Check":          func() any { return one(specified.Check(build)) },
		"Specification.InForce":        func() any { return specified.InForce("2026-05-05") },
		"Specification.Items":          func() any { return one(specified.Items(build)) },
		"Specification.MarshalJSON":    func() any { return one(specified.MarshalJSON()) },
		"Specification.Ref":            func() any { return one(specified.Ref()) },
		"Specification.UnmarshalJSON":  func() any { var s Specification; err := s.UnmarshalJSON(signedOff); return got(s, err) },
		"Specification.Validate":       func() any { return specified.Validate() },
		"Specification.Write":          func() any { var b bytes.Buffer; err := specified.Write(&b); return got(b.String(), err) },
		"VerifyRevisions":              func() any { return one(VerifyRevisions(revisions, pinned...)) },
		"Formula.For":                  func() any { return one(Formula{Parts: parts}.For(100)) },
		"Heroes.Chance":                func() any { return one(heroes.Chance(5)) },
		"Heroes.LowestRate":            func() any { return one(heroes.LowestRate()) },
		"Heroes.Units":                 func() any { return one(heroes.Units()) },
		"Layout.MarshalJSON":           func() any { _, err := layout.MarshalJSON(); return err.Error() },
		"Layout.SVG":                   func() any { return layout.SVG() },
		"Layout.SliceSold":             func() any { return one(layout.SliceSold(0.9)) },
		"Pick.Best":                    func() any { return one(pick.Best()) },
		"Pick.Sets":                    func() any { return one(pick.Sets(3)) },
		"Pick.ToWeigh":                 func() any { return one(Pick{Count: 3, Grams: 54}.ToWeigh(1, 0.9, PieceMass{18, 1})) },
		"Placing.Assign":               func() any { return one(placing.Assign(pick.Pieces[12:24])) },
		"Placing.MarshalJSON":          func() any { _, err := placing.MarshalJSON(); return err.Error() },
		"Placing.SVG":                  func() any { return placing.SVG() },
		"Record.MarshalJSON":           func() any { return one(record.MarshalJSON()) },
		"Record.Statement":             func() any { return record.Statement() },
		"Record.UnmarshalJSON":         func() any { var r Record; err := r.UnmarshalJSON(data); return got(r, err) },
		"Record.Validate":              func() any { return record.Validate() },
		"Record.Write":                 func() any { var b bytes.Buffer; err := record.Write(&b); return got(b.String(), err) },
		"RecordItem.Declaration":       func() any { return record.Items[0].Declaration() },
		"Scale.LeastLoad":              func() any { return one(scale.LeastLoad()) },
		"Scale.MaxError":               func() any { return one(scale.MaxError(62)) },
		"Scale.Sum":                    func() any { return one(scale.Sum(20, 21, 21)) },
		"Scale.Weigh":                  func() any { return one(scale.Weigh(62, 62.1)) },
		"Scatter.Place":                func() any { return one(scatter.Place(dish)) },
		"Spread.Lay":                   func() any { return one(Spread{Favour: 0.2}.Lay(dish, cheese)) },
		"Strips.Lay":                   func() any { return one(strips.Lay(dish, cheese)) },
		"Table.Share":                  func() any { return one(table.Share()) },
		"Weighing.String":              func() any { return weighing.String() },
		"Quid":                         func() any { return one(Quid(parts, 120)) },
		"ReadRecord":                   func() any { return one(ReadRecord(bytes.NewReader(data))) },
		"TolerableNegativeError":       func() any { return one(TolerableNegativeError(330)) },

		"apportion.Biproportional":     func() any { return one(apportion.Biproportional(weights, rows, columns)) },
		"apportion.ControlledRounding": func() any { return one(apportion.ControlledRounding(weights)) },
		"apportion.Ideal":              func() any { return one(apportion.Ideal(23, claims)) },
		"apportion.Method.Apportion":   func() any { return one(apportion.HuntingtonHill.Apportion(23, claims)) },
	}
	for name, call := range map[string]func() any{
		"Arrangement":      func() any { return text(Ring, new(Arrangement)) },
		"Class":            func() any { return text(ClassII, new(Class)) },
		"Pattern":          func() any { return text(Lattice, new(Pattern)) },
		"apportion.Method": func() any { return text(apportion.QuotaMethod, new(apportion.Method)) },
	} {
		calls[name+".String"], calls[name+".MarshalText"], calls[name+".UnmarshalText"] = call, call, call
	}
	for name, call := range map[string]func() any{
		"InfeasibleError":       func() any { return said(&InfeasibleError{Pick: pick, Below: honestplate.Some(9.5)}) },
		"StepError":             func() any { return said(&StepError{"Grams", 1.2, 0.5, 1, 1.5}) },
		"apportion.BoundsError": func() any { return said(&apportion.BoundsError{Field: "Zones", Total: 3, Least: 4, Most: 9}) },
		"apportion.MarginError": func() any { return said(&apportion.MarginError{Rows: []int{0}, Columns: []int{1}}) },
	} {
		calls[name+".Error"], calls[name+".Unwrap"] = call, call
	}
	return calls
}

// Values are plain: 16 goroutines share the inputs, each takes the calls in another
// order, and all see the serial answers, bit for bit.
func TestConcurrentUseGivesTheSerialAnswers(t *testing.T) {
	calls := concurrentCalls(t)
	var names []string
	want := map[string]any{}
	for name, call := range calls {
		names = append(names, name)
		want[name] = call()
		if list, ok := want[name].([]any); ok {
			if err, failed := list[len(list)-1].(error); failed {
				t.Errorf("%s: %v", name, err)
			}
		}
	}
	slices.Sort(names)
	var wait sync.WaitGroup
	for i := range 16 {
		wait.Go(func() {
			order := slices.Clone(names)
			rand.New(rand.NewPCG(uint64(i), 51)).Shuffle(len(order), func(a, b int) { order[a], order[b] = order[b], order[a] })
			for _, name := range order {
				if got := calls[name](); !reflect.DeepEqual(got, want[name]) {
					t.Errorf("goroutine %d: %s gives another answer: %v, want %v", i, name, got, want[name])
				}
			}
		})
	}
	wait.Wait()
}

// exportedCalls lists the exported functions and the exported methods of exported
// types of the tree, as Name and Type.Name, those of apportion with its name before.
func exportedCalls(t *testing.T) []string {
	t.Helper()
	var names []string
	for dir, prefix := range map[string]string{".": "", "apportion": "apportion."} {
		for _, f := range parsed(t, dir, false) {
			for _, d := range f.Decls {
				fn, ok := d.(*ast.FuncDecl)
				if !ok || !fn.Name.IsExported() {
					continue
				}
				name := fn.Name.Name
				if fn.Recv != nil {
					typ := fn.Recv.List[0].Type
					if star, ok := typ.(*ast.StarExpr); ok {
						typ = star.X
					}
					if id, ok := typ.(*ast.Ident); !ok || !id.IsExported() {
						continue
					} else {
						name = id.Name + "." + name
					}
				}
				names = append(names, prefix+name)
			}
		}
	}
	slices.Sort(names)
	return names
}

// parsed returns the syntax of a folder's files, of its tests or of the others.
func parsed(t *testing.T, dir string, tests bool) (out []*ast.File) {
	t.Helper()
	names, err := filepath.Glob(filepath.Join(dir, "*.go"))
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range names {
		if strings.HasSuffix(name, "_test.go") != tests {
			continue
		}
		f, err := parser.ParseFile(token.NewFileSet(), name, nil, parser.SkipObjectResolution)
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, f)
	}
	return out
}

func TestConcurrentCallsLeaveNothingOut(t *testing.T) {
	calls := concurrentCalls(t)
	exported := exportedCalls(t)
	for _, name := range exported {
		if calls[name] == nil {
			t.Errorf("%s is not called", name)
		}
	}
	if len(exported) != len(calls) {
		t.Errorf("%d calls for %d exported functions and methods", len(calls), len(exported))
	}
}
