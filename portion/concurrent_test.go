package portion

import (
	"bytes"
	"errors"
	"go/ast"
	"go/parser"
	"go/token"
	"math"
	"math/rand/v2"
	"os"
	"reflect"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"
)

// concurrentCalls is one call of every exported function and method, by name. All
// share their inputs, so that a write to any of them would be seen.
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
	claims := []Claim{{Weight: 5.2}, {Weight: 3.1, Min: 2}, {Weight: 1.7, Max: 9}}
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
	grid, err := table.Share()
	must(err)
	shares, err := cheese.Share(zones)
	must(err)
	record := goodRecord()
	data, err := record.MarshalJSON()
	must(err)
	scale := Scale{StepGrams: 0.1, MaxGrams: 3000, Class: ClassII, Repeat: 0.05}
	weighing, err := scale.Weigh(62, 62.1, 62)
	must(err)
	heroes := Heroes{Takes: 10, Good: 7, Wanted: 2}
	lot := Lot{Nominal: 500, Size: 300}
	contents := packs(30, 501)
	budget := []Component{{"scale", 0.1, 0, 9}, {"reading", 0.03, 2, 0}}
	combined, err := Combine(budget...)
	must(err)
	points := []Point{{0, 0}, {1, 0}, {0, 1}, {1, 1.1}}
	cannot := errors.New("beneath")
	infeasible := &InfeasibleError{Grams: 10, Known: true, Below: 9.5, Above: 11}
	said := func(err interface {
		error
		Is(error) bool
	}, target error) any {
		return got(err.Error(), err.Is(target), err.Is(cannot))
	}
	calls := map[string]func() any{
		"Arrangement.String":        func() any { return Ring.String() + Arrangement(-1).String() },
		"Class.String":              func() any { return ClassII.String() },
		"Combined.Expanded":         func() any { return one(combined.Expanded(0.95)) },
		"Declaration.Allows":        func() any { return cheese.Allows(Thin) },
		"Declaration.JudgeCount":    func() any { return cheese.JudgeCount(8) },
		"Declaration.JudgePicture":  func() any { return one(cheese.JudgePicture(weighing)) },
		"Declaration.Share":         func() any { return one(cheese.Share(zones)) },
		"Declaration.ShareBy":       func() any { return one(cheese.ShareBy(Dean, zones)) },
		"Declaration.ShareContents": func() any { return one(cheese.ShareContents([]Content{{"fat", 30}, {"rest", 70}})) },
		"Declaration.ShareCount":    func() any { return one(cheese.ShareCount(Webster, zones)) },
		"Declaration.ShareNear":     func() any { return one(cheese.ShareNear([]Wish{{Grams: 30}, {Grams: 20, Firmness: 4}})) },
		"Declaration.Steps":         func() any { return one(cheese.Steps()) },
		"Declaration.Validate":      func() any { return cheese.Validate() },
		"Formula.For":               func() any { return one(Formula{Parts: parts}.For(100)) },
		"Formula.LeastExact":        func() any { return one(Formula{Parts: parts, Locked: true}.LeastExact()) },
		"Grid.Grams":                func() any { return grid.Grams(1, 1) },
		"Heroes.Chance":             func() any { return one(heroes.Chance(5)) },
		"Heroes.LowestRate":         func() any { return one(heroes.LowestRate()) },
		"Heroes.Units":              func() any { return one(heroes.Units()) },
		"Layout.SVG":                func() any { return layout.SVG() },
		"Lot.Judge":                 func() any { return one(lot.Judge(contents)) },
		"Lot.Plan":                  func() any { return one(lot.Plan()) },
		"Method.Apportion":          func() any { return one(HuntingtonHill.Apportion(23, claims)) },
		"Method.String":             func() any { return QuotaMethod.String() },
		"Pattern.String":            func() any { return Lattice.String() },
		"Pick.Best":                 func() any { return one(pick.Best()) },
		"Placing.Assign":            func() any { return one(placing.Assign(pick.Pieces[12:24])) },
		"Placing.Counts":            func() any { return placing.Counts() },
		"Placing.Grams":             func() any { return placing.Grams() },
		"Placing.Nearest":           func() any { return placing.Nearest() },
		"Placing.SVG":               func() any { return placing.SVG() },
		"Record.MarshalJSON":        func() any { return one(record.MarshalJSON()) },
		"Record.Statement":          func() any { return record.Statement() },
		"Record.UnmarshalJSON":      func() any { var r Record; err := r.UnmarshalJSON(data); return got(r, err) },
		"Record.Validate":           func() any { return record.Validate() },
		"Record.Write":              func() any { var b bytes.Buffer; err := record.Write(&b); return got(b.String(), err) },
		"RecordItem.Declaration":    func() any { return record.Items[0].Declaration() },
		"Scale.LeastLoad":           func() any { return one(scale.LeastLoad()) },
		"Scale.MaxError":            func() any { return one(scale.MaxError(62)) },
		"Scale.MostWeighings":       func() any { return one(scale.MostWeighings(18, 5)) },
		"Scale.Sum":                 func() any { return one(scale.Sum(20, 21, 21)) },
		"Scale.Weigh":               func() any { return one(scale.Weigh(62, 62.1)) },
		"Scatter.Place":             func() any { return one(scatter.Place(dish)) },
		"Shares.TotalSteps":         func() any { return shares.TotalSteps() },
		"Spread.Lay":                func() any { return one(Spread{Favour: 0.2}.Lay(dish, cheese)) },
		"Strips.Lay":                func() any { return one(strips.Lay(dish, cheese)) },
		"System.JudgePackage":       func() any { return one(AverageEU.JudgePackage(500, 486, 0.5)) },
		"Table.Round":               func() any { return one(table.Round()) },
		"Table.Share":               func() any { return one(table.Share()) },
		"Weighing.String":           func() any { return weighing.String() },

		"AboutServings":             func() any { return one(AboutServings(3.4)) },
		"Biproportional":            func() any { return one(Biproportional(weights, rows, columns)) },
		"CheckScale":                func() any { eu, us, err := CheckScale(15, 1, 0.5); return got(eu, us, err) },
		"Chord":                     func() any { return one(Chord(0.15, 0.06)) },
		"Combine":                   func() any { return one(Combine(budget...)) },
		"ControlledRounding":        func() any { return one(ControlledRounding(weights)) },
		"EqualRings":                func() any { return one(EqualRings(0.15, 4)) },
		"Evenness":                  func() any { return one(Evenness(points, 2)) },
		"FillDeviation":             func() any { return one(FillDeviation(500, 20)) },
		"Fit":                       func() any { return one(Fit(weights, floats(rows), floats(columns))) },
		"Ideal":                     func() any { return one(Ideal(23, claims)) },
		"MaximumAllowableVariation": func() any { return one(MaximumAllowableVariation(113)) },
		"Quid":                      func() any { return one(Quid(parts, 120)) },
		"ReadRecord":                func() any { return one(ReadRecord(bytes.NewReader(data))) },
		"Rectangular":               func() any { return one(Rectangular(0.5)) },
		"Repeated":                  func() any { m, s, u, err := Repeated(62, 62.1, 61.8); return got(m, s, u, err) },
		"Resolution":                func() any { return one(Resolution(0.1)) },
		"SampleFactor":              func() any { return one(SampleFactor(30, 0.995)) },
		"SectorArea":                func() any { return one(SectorArea(0.15, 45)) },
		"SegmentArea":               func() any { return one(SegmentArea(0.15, 0.06)) },
		"TolerableNegativeError":    func() any { return one(TolerableNegativeError(330)) },
		"UnitRate":                  func() any { r, n, err := UnitRate(0.6, 600e9, 60e9, 90*time.Second); return got(r, n, err) },
		"WholePercents":             func() any { return one(WholePercents(parts)) },

		"InfeasibleError.Closest": func() any { g, ok := infeasible.Closest(); return got(g, ok) },
	}
	for name, call := range map[string]func() any{
		"AdvertisedError": func() any { return said(&AdvertisedError{"cheese", Thin}, ErrAdvertised) },
		"CrowdedError":    func() any { return said(&CrowdedError{9, 7}, ErrCrowded) },
		"EffortError":     func() any { return said(&EffortError{1000}, ErrEffort) },
		"InfeasibleError": func() any { return said(infeasible, ErrInfeasible) },
		"InputError":      func() any { return said(&InputError{"mass", math.NaN(), "g", "above 0"}, ErrInput) },
		"MarginError":     func() any { return said(&MarginError{Rows: []int{0}, Columns: []int{1}}, ErrInput) },
		"RangeError":      func() any { return said(&RangeError{"mass", 2, 0, 1, "g", "a scale"}, ErrRange) },
		"StepError":       func() any { return said(&StepError{"Grams", 1.2, 0.5, 1, 1.5}, ErrInput) },
	} {
		calls[name+".Error"], calls[name+".Is"] = call, call
	}
	return calls
}

// Values are plain: 64 goroutines share the inputs, each takes the calls in another
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
	for i := range 64 {
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
// types, as Name and Type.Name.
func exportedCalls(t *testing.T) []string {
	t.Helper()
	entries, err := os.ReadDir(".")
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	for _, e := range entries {
		if !strings.HasSuffix(e.Name(), ".go") || strings.HasSuffix(e.Name(), "_test.go") {
			continue
		}
		f, err := parser.ParseFile(token.NewFileSet(), e.Name(), nil, parser.SkipObjectResolution)
		if err != nil {
			t.Fatal(err)
		}
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
				id, ok := typ.(*ast.Ident)
				if !ok || !id.IsExported() {
					continue
				}
				name = id.Name + "." + name
			}
			names = append(names, name)
		}
	}
	slices.Sort(names)
	return names
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
	// A call stands under its own name: the last part of it is called in this file.
	f, err := parser.ParseFile(token.NewFileSet(), "concurrent_test.go", nil, parser.SkipObjectResolution)
	if err != nil {
		t.Fatal(err)
	}
	called := map[string]bool{}
	ast.Inspect(f, func(n ast.Node) bool {
		if c, ok := n.(*ast.CallExpr); ok {
			switch fun := c.Fun.(type) {
			case *ast.SelectorExpr:
				called[fun.Sel.Name] = true
			case *ast.Ident:
				called[fun.Name] = true
			}
		}
		return true
	})
	for _, name := range exported {
		if last := name[strings.LastIndex(name, ".")+1:]; !called[last] {
			t.Errorf("%s is named and not called", name)
		}
	}
}
