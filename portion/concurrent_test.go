package portion_test

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
	"example.org/honestplate/portion"
	"example.org/honestplate/portion/apportion"
	"example.org/honestplate/portion/plate"
	"example.org/honestplate/portion/record"
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
	cheese := portion.Declaration{Item: "cheese", Grams: 62, StepGrams: 0.5, Count: 9, Advertised: true}
	zones := []portion.Zone{{Name: "near", Weight: 3, MinGrams: 10, MaxCount: 4}, {Name: "middle", Weight: 2}, {Name: "far", Weight: 1, MaxGrams: 9}}
	claims := []apportion.Claim{{Weight: 5.2}, {Weight: 3.1, Min: 2}, {Weight: 1.7, Max: 9}}
	parts := []portion.Ingredient{{"sugar", 80}, {"starch", 15}, {"cocoa", 35}}
	table := portion.Table{Declaration: cheese, Rows: zones, Columns: []portion.Zone{{Weight: 1}, {Weight: 2}}}
	weights, rows, columns := [][]float64{{1, 2.5}, {0, 3.25}, {2, 1}}, []int64{4, 3, 5}, []int64{5, 7}
	pieces := make([]portion.Piece, 60)
	for i := range pieces {
		pieces[i] = portion.Piece{Grams: float64(150+i*37%60) / 10, Score: float64(i * 29 % 101)}
	}
	pick := portion.Pick{Pieces: pieces, Count: 12, Grams: 216, StepGrams: 0.1}
	dish := plate.Round{Diameter: 0.3, Edge: 0.02, Slices: 6}
	scatter, strips := plate.Scatter{Count: 12, Diameter: 0.02}, plate.Strips{Favour: 0.3}
	placing, err := scatter.Place(dish)
	must(err)
	placing, err = placing.Assign(pick.Pieces[:12])
	must(err)
	layout, err := strips.Lay(dish, cheese)
	must(err)
	specified := record.Specification{Product: "sandwich", Version: "4",
		Layers: []record.Layer{{Name: "bread", Declared: portion.Amount{Grams: 60, MinusGrams: 4, PlusGrams: 4}},
			{Name: "ham", Declared: portion.Amount{Grams: 40, MinusGrams: 2, PlusGrams: 2}}},
		Ratios: []record.Ratio{{Layer: "ham", To: "bread", Least: 0.5, Most: 0.8}},
		Signed: record.Signature{Name: "T. Invented", Date: "2026-01-10"}}
	build := record.Build{Scale: portion.Scale{StepGrams: 0.1}, Layers: []record.Placed{{Reading: 60}, {Reading: 100}}}
	signedOff, err := specified.MarshalJSON()
	must(err)
	ref, err := specified.Ref()
	must(err)
	items, err := specified.Items(build)
	must(err)
	kept := record.Record{Revision: 1, Picture: "sandwich", Date: "2026-10-05", SourceType: "digitalCapture", Specification: &ref,
		Takes: []record.Take{{Number: 1, File: "0001.raw", Chosen: true}}, Items: items,
		Edits: []record.Edit{{Action: "c2pa.cropped"}}, Signed: []record.Signature{{Name: "A. Invented"}}}
	data, err := kept.MarshalJSON()
	must(err)
	scale := portion.Scale{StepGrams: 0.1, MaxGrams: 3000, Class: portion.ClassII, Repeat: 0.05}
	weighing, err := scale.Weigh(62, 62.1, 62)
	must(err)
	heroes := portion.Heroes{Takes: 10, Good: 7, Wanted: 2}
	together := portion.Heroes{Prior: portion.Prior{3, 2}, Correlation: 0.2, Batch: 4, Wanted: 3}
	limits := portion.Limits{Low: honestplate.Some(61), High: honestplate.Some(63)}
	stylist := ed25519.NewKeyFromSeed([]byte(strings.Repeat("a", 32)))
	client := ed25519.NewKeyFromSeed([]byte(strings.Repeat("b", 32)))
	first, err := kept.Sign(stylist)
	must(err)
	later, err := kept.Next()
	must(err)
	second, err := later.Sign(client)
	must(err)
	revisions := []record.Revision{{Record: kept, Signature: first}, {Record: later, Signature: second}}
	pinned := []ed25519.PublicKey{stylist.Public().(ed25519.PublicKey), client.Public().(ed25519.PublicKey)}
	text := func(v encoding.TextMarshaler, back encoding.TextUnmarshaler) any {
		b, err := v.MarshalText()
		return got(b, err, back.UnmarshalText(b), reflect.ValueOf(back).Elem().Interface(), fmt.Sprint(v))
	}
	said := func(err error) any { return got(err.Error(), errors.Unwrap(err).Error()) }
	calls := map[string]func() any{
		"Declaration.Allows":       func() any { return cheese.Allows(portion.Thin).Error() },
		"Declaration.JudgeCount":   func() any { return cheese.JudgeCount(8).Error() },
		"Declaration.JudgePicture": func() any { return one(cheese.JudgePicture(weighing)) },
		"Declaration.Share":        func() any { return one(cheese.Share(zones)) },
		"Declaration.Validate":     func() any { return cheese.Validate() },
		"record.FileSHA256":        func() any { return one(record.FileSHA256(bytes.NewReader(data))) },
		"Finding.String":           func() any { f, err := kept.Items[0].Verdict(); return got(f.String(), err) },
		"Heroes.Finish":            func() any { return one(together.Finish(9, true, false, true)) },
		"Heroes.Stop":              func() any { return one(heroes.Stop(9, 10, 3)) },
		"Amount.Judge": func() any {
			return one(portion.Amount{Grams: 62, PlusGrams: 2}.Judge(&weighing, 0, honestplate.Optional{}))
		},
		"Amount.String":                       func() any { return portion.Amount{Grams: 62, Count: 3}.String() },
		"Amount.Validate":                     func() any { return portion.Amount{Grams: 62}.Validate() },
		"Limits.Validate":                     func() any { return limits.Validate() },
		"Scale.Evidence":                      func() any { return one(scale.Evidence(62)) },
		"Verdict.Worst":                       func() any { return portion.Agrees.Worst(portion.Differs) },
		"Limits.Accept":                       func() any { return one(limits.Accept(0.2)) },
		"Limits.Capability":                   func() any { return one(limits.Capability(0.2)) },
		"Limits.Decide":                       func() any { return one(limits.Decide(62.3, 0.2)) },
		"Prior.After":                         func() any { return one(portion.Prior{}.After(9, 4, 0.5)) },
		"record.Record.Changes":               func() any { return one(kept.Changes(revisions[1].Record)) },
		"record.Record.Next":                  func() any { return one(kept.Next()) },
		"record.Record.SHA256":                func() any { return one(kept.SHA256()) },
		"record.Record.Sign":                  func() any { return one(kept.Sign(stylist)) },
		"record.Item.MarshalJSON":             func() any { return one(kept.Items[0].MarshalJSON()) },
		"record.Item.UnmarshalJSON":           func() any { var i record.Item; err := i.UnmarshalJSON([]byte(`{"item":"x"}`)); return got(i, err) },
		"record.Item.Verdict":                 func() any { return one(kept.Items[0].Verdict()) },
		"record.Specification.BeforeWeighing": func() any { return one(specified.BeforeWeighing(scale)) },
		"record.Specification.Check":          func() any { return one(specified.Check(build)) },
		"record.Specification.InForce":        func() any { return specified.InForce("2026-05-05") },
		"record.Specification.Items":          func() any { return one(specified.Items(build)) },
		"record.Specification.MarshalJSON":    func() any { return one(specified.MarshalJSON()) },
		"record.Specification.Ref":            func() any { return one(specified.Ref()) },
		"record.Specification.UnmarshalJSON":  func() any { var s record.Specification; err := s.UnmarshalJSON(signedOff); return got(s, err) },
		"record.Specification.Validate":       func() any { return specified.Validate() },
		"record.Verify":                       func() any { return one(record.Verify(revisions, pinned...)) },
		"Formula.For":                         func() any { return one(portion.Formula{Parts: parts}.For(100)) },
		"Heroes.Chance":                       func() any { return one(heroes.Chance(5)) },
		"Heroes.LowestRate":                   func() any { return one(heroes.LowestRate()) },
		"Heroes.Units":                        func() any { return one(heroes.Units()) },
		"plate.Layout.MarshalJSON":            func() any { _, err := layout.MarshalJSON(); return err.Error() },
		"plate.Layout.SliceSold":              func() any { return one(layout.SliceSold(0.9)) },
		"Pick.Best":                           func() any { return one(pick.Best()) },
		"Pick.Sets":                           func() any { return one(pick.Sets(3)) },
		"Pick.ToWeigh":                        func() any { return one(portion.Pick{Count: 3, Grams: 54}.ToWeigh(1, 0.9, portion.PieceMass{18, 1})) },
		"plate.Placing.Assign":                func() any { return one(placing.Assign(pick.Pieces[12:24])) },
		"plate.Placing.MarshalJSON":           func() any { _, err := placing.MarshalJSON(); return err.Error() },
		"record.Record.MarshalJSON":           func() any { return one(kept.MarshalJSON()) },
		"record.Record.Statement":             func() any { return kept.Statement() },
		"record.Record.UnmarshalJSON":         func() any { var r record.Record; err := r.UnmarshalJSON(data); return got(r, err) },
		"record.Record.Validate":              func() any { return kept.Validate() },
		"record.Record.Write":                 func() any { var b bytes.Buffer; err := kept.Write(&b); return got(b.String(), err) },
		"Scale.LeastLoad":                     func() any { return one(scale.LeastLoad()) },
		"Scale.MaxError":                      func() any { return one(scale.MaxError(62)) },
		"Scale.Sum":                           func() any { return one(scale.Sum(20, 21, 21)) },
		"Scale.Weigh":                         func() any { return one(scale.Weigh(62, 62.1)) },
		"plate.Scatter.Place":                 func() any { return one(scatter.Place(dish)) },
		"plate.Spread.Lay":                    func() any { return one(plate.Spread{Favour: 0.2}.Lay(dish, cheese)) },
		"plate.Strips.Lay":                    func() any { return one(strips.Lay(dish, cheese)) },
		"Table.Share":                         func() any { return one(table.Share()) },
		"Weighing.String":                     func() any { return weighing.String() },
		"Quid":                                func() any { return one(portion.Quid(parts, 120)) },
		"record.Read":                         func() any { return one(record.Read(bytes.NewReader(data))) },
		"TolerableNegativeError":              func() any { return one(portion.TolerableNegativeError(330)) },

		"apportion.Biproportional":     func() any { return one(apportion.Biproportional(weights, rows, columns)) },
		"apportion.ControlledRounding": func() any { return one(apportion.ControlledRounding(weights)) },
		"apportion.Ideal":              func() any { return one(apportion.Ideal(23, claims)) },
		"apportion.Method.Apportion":   func() any { return one(apportion.HuntingtonHill.Apportion(23, claims)) },
	}
	for name, call := range map[string]func() any{
		"Class":            func() any { return text(portion.ClassII, new(portion.Class)) },
		"apportion.Method": func() any { return text(apportion.QuotaMethod, new(apportion.Method)) },
	} {
		calls[name+".String"], calls[name+".MarshalText"], calls[name+".UnmarshalText"] = call, call, call
	}
	for name, call := range map[string]func() any{
		"InfeasibleError":       func() any { return said(&portion.InfeasibleError{Pick: pick, Below: honestplate.Some(9.5)}) },
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
// types of the tree, as Name and Type.Name, those of a sub-package with its name before.
func exportedCalls(t *testing.T) []string {
	t.Helper()
	var names []string
	for dir, prefix := range map[string]string{".": "", "apportion": "apportion.", "plate": "plate.", "record": "record."} {
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
