package rheology_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"math/rand/v2"
	"path/filepath"
	"reflect"
	"strings"
	"sync"
	"testing"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/rheology"
)

// all takes what a call returned as one value.
func all(v ...any) []any { return v }

// A set of everything that the package offers, shared by all goroutines.
func sharedCalls(t *testing.T) map[string]func() []any {
	must := func(err error) {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
	}
	milk, cream := rheology.Dairy{FatPercent: 3.5}, rheology.Dairy{FatPercent: 36}
	measured := rheology.Measured{Liquid: cream, TempC: 6, PaS: honestplate.Within(0.021, 0.05)}
	mix, err := rheology.Blend(rheology.Part{Liquid: milk, Grams: 300}, rheology.Part{Liquid: measured, Grams: 200})
	must(err)
	recipe := rheology.Recipe{Thin: milk, Thick: cream, BatchGrams: 500, StepGrams: 1, TempC: 6}
	batch, err := recipe.For(0.012)
	must(err)
	prepared, err := recipe.Prepare()
	must(err)
	program := rheology.Program{
		Stock: []rheology.Stock{{Liquid: milk, CostPerKg: 1}, {Liquid: rheology.Dairy{FatPercent: 12}, CostPerKg: 2}, {Liquid: cream, CostPerKg: 7}}, BatchGrams: 500, StepGrams: 1, TempC: 6,
	}
	cases := []rheology.BlendCase{
		{TempC: 6, ThinFatPercent: 3.5, ThinPaS: 0.0029, ThickFatPercent: 36, ThickPaS: 0.036, FatPercent: 12, PaS: 0.0047},
		{TempC: 6, ThinFatPercent: 3.5, ThinPaS: 0.0029, ThickFatPercent: 36, ThickPaS: 0.036, FatPercent: 28, PaS: 0.0155},
	}
	points := []rheology.FlowPoint{{ShearRate: 1, Stress: 40}, {ShearRate: 3, Stress: 44}, {ShearRate: 10, Stress: 51}, {ShearRate: 30, Stress: 62}, {ShearRate: 100, Stress: 83}, {ShearRate: 300, Stress: 118}}
	fit, err := rheology.FitFlow(rheology.FitHerschelBulkley, points)
	must(err)
	temps := []rheology.TemperaturePoint{{TempC: 8, PaS: 0.62}, {TempC: 20, PaS: 0.27}, {TempC: 45, PaS: 0.078}}
	vogel, err := rheology.FitVogel(temps...)
	must(err)
	own := rheology.Own{Name: "house syrup", Curve: vogel, DensityKgM3: 1310}
	cup := rheology.ISO2431(4)
	ball := rheology.FallingBall{Diameter: 0.003, Density: 7800, TubeDiameter: 0.06, Distance: 0.1}
	spout := rheology.Spout{Diameter: 0.008, Length: 0.03, Head: 0.06, SurfaceArea: 0.006}
	lip := rheology.Lip{Width: 0.02, Length: 0.01, Head: 0.008}
	pour, err := spout.Pour(milk, 20, 200)
	must(err)
	stream, err := pour.Stream(0.25)
	must(err)
	thick, err := rheology.Spout{Diameter: 0.012, Length: 0.02, Head: 0.06}.Pour(rheology.Honey{MoisturePercent: 17}, 10, 100)
	must(err)
	thread, err := thick.Stream(0.05)
	must(err)
	crown, err := stream.Crown(0.001)
	must(err)
	splash, err := stream.Splash(rheology.Target{})
	must(err)
	pipe := rheology.Pipe{Diameter: 0.006, Length: 0.02}
	flow, err := pipe.Flow(rheology.PowerLaw{K: 10, N: 0.5}, 2000)
	must(err)
	jet := rheology.Jet{Diameter: 0.004, Speed: 1, Viscosity: 0.002, Density: 1030, SurfaceTension: 0.047}
	drop := rheology.RibouxGordillo{Air: rheology.RoomAir()}
	const rho, gas, eta, sigma = 998.0, 1.2, 0.001, 0.0728

	calls := map[string]func() []any{
		"ApparentViscosity": func() []any { return all(rheology.ApparentViscosity(rheology.PowerLaw{K: 10, N: 0.5}, 7)) },
		"BakshiSmith":       func() []any { return all(rheology.BakshiSmith(3.5, 20)) },
		"BowlTime":          func() []any { return all(rheology.BowlTime(0.08, 0.07, 2e-5, 0.6)) },
		"CapBubble":         func() []any { return all(rheology.CapBubble(0.03, rho, gas)) },
		"CheckFlow":         func() []any { return all(rheology.CheckFlow(rheology.Casson{Yield: 2, Plastic: 1})) },
		"CleanBubble":       func() []any { return all(rheology.CleanBubble(0.003, rho, gas, eta, sigma)) },
		"DepositFront":      func() []any { return all(rheology.DepositFront(33, 1140, 5, 0.005)) },
		"DrippingWeber":     func() []any { return all(rheology.DrippingWeber(0.005, 0.007, rho, sigma)) },
		"DropFromSpout":     func() []any { return all(rheology.DropFromSpout(0.007, rho, sigma)) },
		"DropTerminalSpeed": func() []any { return all(rheology.DropTerminalSpeed(0.003)) },
		"DropWeightFactor":  func() []any { return all(rheology.DropWeightFactor(0.8)) },
		"EllipsoidBubble":   func() []any { return all(rheology.EllipsoidBubble(0.003, rho, gas, eta, sigma)) },
		"FedPuddle":         func() []any { return all(rheology.FedPuddle(4e-6, 2e-4, 5)) },
		"FernandezMartin":   func() []any { return all(rheology.FernandezMartin(12, 20)) },
		"LandauLevich":      func() []any { return all(rheology.LandauLevich(0.006, 1000, 0.045, 0.05)) },
		"NotchFlow":         func() []any { return all(rheology.NotchFlow(60, 0.015, 0.6)) },
		"NusseltFilm":       func() []any { return all(rheology.NusseltFilm(1e-5, 1e-4, 90)) },
		"NusseltFlow":       func() []any { return all(rheology.NusseltFlow(0.001, 1e-4, 90)) },
		"OrificeTime":       func() []any { return all(rheology.OrificeTime(0.005, 2e-5, 0.6, 0.1, 0.01)) },
		"Phipps":            func() []any { return all(rheology.Phipps(36, 60)) },
		"ReleasedPuddle":    func() []any { return all(rheology.ReleasedPuddle(2e-5, 2e-4, 5)) },
		"RigidBubble":       func() []any { return all(rheology.RigidBubble(1e-4, rho, gas, eta)) },
		"ServeAt":           func() []any { return all(rheology.ServeAt(cream, 0.03, 2, 12)) },
		"StandingFilm":      func() []any { return all(rheology.StandingFilm(33, 1140, 90)) },
		"StokesBubble":      func() []any { return all(rheology.StokesBubble(1e-4, eta, rho, true)) },
		"TubeFlow":          func() []any { return all(rheology.TubeFlow(1e-5, 0.3, 0.004, 0.2, 2)) },
		"TubeTime":          func() []any { return all(rheology.TubeTime(1e-6, 0.2, 0.003, 0.005, 0.1, 0.01)) },
		"TubeViscosity":     func() []any { return all(rheology.TubeViscosity(3.9e-6, 0.3, 0.004, 0.2, 2)) },
		"WeirFlow":          func() []any { return all(rheology.WeirFlow(0.03, 0.015, 0.6)) },
		"YarinWeiss":        func() []any { return all(rheology.YarinWeiss(2, 20, 0.002, 1030, 0.047)) },
		"Batch.Chill":       func() []any { return all(batch.Chill(0.0115, 2, 6)) },
		"Batch.Correct":     func() []any { return all(batch.Correct(0.009)) },
		"Batch.FromCup":     func() []any { return all(batch.CorrectFromCup(rheology.ISO2431(3), 33*time.Second)) },
		"Batch.Mix":         func() []any { return all(batch.Mix()) },
		"Batch.Sensitivity": func() []any { return all(batch.Sensitivity()) },
		"BlendCase.Mix":     func() []any { return all(cases[0].Mix(rheology.Emulsion)) },
		"Crown.Radius":      func() []any { return all(crown.Radius(5 * time.Millisecond)) },
		"Cups": func() []any {
			return all(rheology.DIN53211(), rheology.FordCup(4), rheology.ShellCup(3), rheology.ZahnCup(2))
		},
		"ISOCupFor":     func() []any { return all(rheology.ISOCupFor(5e-5)) },
		"Cup.Kinematic": func() []any { return all(cup.KinematicViscosity(40 * time.Second)) },
		"Cup.Range":     func() []any { return all(cup.Range()) },
		"Cup.String":    func() []any { return all(cup.String()) },
		"Cup.Time":      func() []any { return all(cup.Time(5e-5)) },
		"Cup.TimeOf":    func() []any { return all(cup.TimeOf(rheology.Glycerol{Percent: 80}, 20)) },
		"BubblesClear":  func() []any { return all(rheology.BubblesClear(rheology.Sucrose{Brix: 65}, 20, 5e-4, 0.08)) },
		"BubbleRise":    func() []any { return all(rheology.BubbleRise(rheology.Ketchup, 20, 0.003)) },
		"DairyDensity":  func() []any { return all(rheology.DairyDensity(3.5, 8.8, 20)) },
		"Estimates": func() []any {
			return all(honestplate.Exactly(1), honestplate.Factor(2, 1.5), honestplate.Within(3, 0.1))
		},
		"Estimate.Contains":  func() []any { return all(honestplate.Factor(2, 1.5).Contains(3), honestplate.Factor(2, 1.5).Times(3)) },
		"KinematicViscosity": func() []any { return all(rheology.KinematicViscosity(cream, 6)) },
		"ViscosityAtRate":    func() []any { return all(rheology.ViscosityAtRate(cream, 6, 20)) },
		"FallingBall.Time":   func() []any { return all(ball.Time(rheology.Honey{MoisturePercent: 17}, 20)) },
		"FallingBall.Visc":   func() []any { return all(ball.Viscosity(25*time.Second, 1420)) },
		"BestFlow":           func() []any { return all(rheology.BestFlow(points)) },
		"FitFlow":            func() []any { return all(rheology.FitFlow(rheology.FitCarreau, points)) },
		"FlowFit":            func() []any { return all(fit.StandardError(0), fit.Kind.String()) },
		"FlowFit.Viscosity":  func() []any { return all(fit.Viscosity(20)) },
		"Rabinowitsch":       func() []any { return all(rheology.RabinowitschMooney(points)) },
		"ReadFlowPoints":     func() []any { return all(rheology.ReadFlowPoints(strings.NewReader("1,2\n3,4\n"))) },
		"FitPowerLawLog":     func() []any { return all(rheology.FitPowerLawLog(points)) },
		"FitInteraction":     func() []any { return all(rheology.FitInteraction(cases)) },
		"CompareRules":       func() []any { return all(rheology.CompareRules(cases)) },
		"FitVogel":           func() []any { return all(rheology.FitVogel(temps...)) },
		"Vogel":              func() []any { return all(vogel.ActivationEnergy(20)) },
		"Vogel.Viscosity":    func() []any { return all(vogel.Viscosity(20)) },
		"RoomAir":            func() []any { return all(rheology.RoomAir()) },
		"Jet.BreakUp":        func() []any { return all(jet.BreakUp(false)) },
		"Jet.Fall":           func() []any { return all(jet.Fall(0.1)) },
		"Jet.Falling":        func() []any { return all(jet.FallingBreakUp(true)) },
		"Jet.WaveGrowth":     func() []any { return all(jet.WaveGrowth()) },
		"Lip.Pour":           func() []any { return all(lip.Pour(cream, 6, 200)) },
		"Mix.FatPercent":     func() []any { return all(mix.FatPercent()) },
		"Mix.Parts":          func() []any { return all(mix.Parts()) },
		"Pipe.Flow":          func() []any { return all(pipe.Flow(rheology.HerschelBulkley{Yield: 32, K: 18, N: 0.3}, 3000)) },
		"Pipe.Hedstrom":      func() []any { return all(pipe.Hedstrom(rheology.Bingham{Yield: 5, Plastic: 0.5}, 1100)) },
		"Pipe.PressureFor":   func() []any { return all(pipe.PressureFor(rheology.Casson{Yield: 5, Plastic: 2}, 5e-6)) },
		"PipeFlow":           func() []any { return all(flow.ApparentShearRate()) },
		"PipeFlow.Reynolds":  func() []any { return all(flow.Reynolds(1140)) },
		"Pour.Cling":         func() []any { return all(pour.Cling(30)) },
		"Pour.Last":          func() []any { return all(pour.Last()) },
		"Pour.Puddle":        func() []any { return all(pour.Puddle(3*time.Second, 40)) },
		"Pour.Rest":          func() []any { return all(pour.Rest(40)) },
		"Pour.Series":        func() []any { return all(pour.Series(5)) },
		"Pour.Stream":        func() []any { return all(pour.Stream(0.25)) },
		"PowerLaw.Pipe": func() []any {
			return all(rheology.PowerLaw{K: 10, N: 0.5}.ForPipe(), rheology.PowerLaw{K: 10, N: 0.5}.FromPipe())
		},
		"Prepared.For":     func() []any { return all(prepared.For(0.012)) },
		"Program.For":      func() []any { return all(program.For(0.008)) },
		"Program.LeastOf":  func() []any { return all(program.LeastOf(2, 0.008)) },
		"Program.Reach":    func() []any { return all(program.Reach()) },
		"Recipe.For":       func() []any { return all(recipe.For(0.012)) },
		"Recipe.ForFat":    func() []any { return all(recipe.ForFat(12)) },
		"Recipe.Prepare":   func() []any { return all(recipe.Prepare()) },
		"Recipe.Reach":     func() []any { return all(recipe.Reach()) },
		"Riboux.Lift":      func() []any { return all(drop.Lift(0.004, 2, 0.002, 1030, 0.047)) },
		"Riboux.Threshold": func() []any { return all(drop.Threshold(0.004, 2, 0.002, 1030, 0.047)) },
		"Sauce.Flow":       func() []any { return all(rheology.Ketchup.Flow(20)) },
		"Spout.Discharges": func() []any { return all(spout.Discharges(1500)) },
		"Spout.Pour":       func() []any { return all(spout.Pour(rheology.Ketchup, 20, 50)) },
		"Stream.Coil":      func() []any { return all(thread.Coil()) },
		"Stream.Crown":     func() []any { return all(stream.Crown(0.001)) },
		"Stream.Splash":    func() []any { return all(stream.Splash(rheology.Target{Film: 0.002})) },
		"SplashVerdict":    func() []any { return all(splash.Verdicts[0].Exceeded()) },
		"Sucrose.Baume":    func() []any { return all(rheology.Sucrose{Brix: 65}.Baume()) },
		"Trend.String":     func() []any { return all(rheology.Trend(1).String()) },
		"Wall.Drain":       func() []any { return all(rheology.Wall{Height: 0.09}.Drain(cream, 6, 5*time.Second)) },
	}
	for _, l := range append(rheology.Catalogue(), measured, mix, own) {
		name := l.Describe().Name
		tempC := max(l.Describe().LowC, min(20, l.Describe().HighC))
		calls[name+" Describe"] = func() []any { return all(l.Describe()) }
		calls[name+" Viscosity"] = func() []any { return all(l.Viscosity(tempC)) }
		calls[name+" Density"] = func() []any { return all(l.Density(tempC)) }
		calls[name+" SurfaceTension"] = func() []any { return all(l.SurfaceTension(tempC)) }
		if l, ok := l.(rheology.Yielding); ok {
			calls[name+" YieldStress"] = func() []any { return all(l.YieldStress(tempC)) }
		}
	}
	for _, m := range []rheology.FlowModel{
		rheology.Newtonian{PaS: 1}, rheology.PowerLaw{K: 3, N: 0.5}, rheology.Bingham{Yield: 5, Plastic: 0.5}, rheology.Casson{Yield: 2, Plastic: 1},
		rheology.HerschelBulkley{Yield: 5, K: 3, N: 0.5}, rheology.Carreau{Zero: 2, Time: 0.3, N: 0.4},
	} {
		calls[m.Name()] = func() []any { return all(m.Stress(7), m.YieldStress()) }
	}
	for _, r := range []rheology.Rule{rheology.LogMass, rheology.LogVolume, rheology.Emulsion, rheology.Interaction{D: -1, E: 0.2}} {
		calls[r.String()] = func() []any {
			return all(r.Blend(rheology.Part{Liquid: milk, Grams: 2}, rheology.Part{Liquid: cream, Grams: 1}))
		}
	}
	advertised := recipe
	advertised.Advertised = true
	for name, call := range map[string]func() error{
		"AdvertisedError": func() error { _, err := advertised.For(0.012); return err },
		"InputError":      func() error { _, err := recipe.For(-1); return err },
		"RangeError":      func() error { _, err := milk.Viscosity(200); return err },
		"NoFlowError": func() error {
			_, err := rheology.Spout{Diameter: 0.004, Head: 0.01}.Pour(rheology.Ketchup, 20, 50)
			return err
		},
	} {
		calls[name] = func() []any {
			err := call()
			is := false
			for _, kind := range []error{honestplate.ErrAdvertised, honestplate.ErrInput, honestplate.ErrRange, honestplate.ErrNoFlow} {
				is = is || err.(interface{ Is(error) bool }).Is(kind)
			}
			return all(err.Error(), is)
		}
	}
	return calls
}

func TestConcurrentUseGivesWhatSerialUseGives(t *testing.T) {
	calls := sharedCalls(t)
	var names []string
	want := map[string][]any{}
	for name, call := range calls {
		names = append(names, name)
		want[name] = call()
		if !reflect.DeepEqual(call(), want[name]) {
			t.Fatalf("%s: a second call differs, or holds a NaN", name)
		}
	}
	var wg sync.WaitGroup
	for g := range 64 {
		wg.Go(func() {
			for _, i := range rand.New(rand.NewPCG(uint64(g), 1)).Perm(len(names)) {
				if got := calls[names[i]](); !reflect.DeepEqual(got, want[names[i]]) {
					t.Errorf("%s: %v beside others, alone %v", names[i], got, want[names[i]])
				}
			}
		})
	}
	wg.Wait()
}

// What the package offers and the table above does not call would not be tried.
func TestConcurrentTableCallsEveryExportedFunction(t *testing.T) {
	fset := token.NewFileSet()
	table, err := parser.ParseFile(fset, "concurrent_test.go", nil, parser.SkipObjectResolution)
	if err != nil {
		t.Fatal(err)
	}
	called := map[string]bool{}
	ast.Inspect(table, func(n ast.Node) bool {
		if c, ok := n.(*ast.CallExpr); ok {
			if s, ok := c.Fun.(*ast.SelectorExpr); ok {
				called[s.Sel.Name] = true
			}
		}
		return true
	})
	paths, err := filepath.Glob("*.go")
	if err != nil {
		t.Fatal(err)
	}
	count := 0
	for _, path := range paths {
		if strings.HasSuffix(path, "_test.go") {
			continue
		}
		f, err := parser.ParseFile(fset, path, nil, parser.SkipObjectResolution)
		if err != nil {
			t.Fatal(err)
		}
		for _, d := range f.Decls {
			if d, ok := d.(*ast.FuncDecl); ok && d.Name.IsExported() {
				count++
				if !called[d.Name.Name] {
					t.Errorf("%s: %s is called by none of the table", path, d.Name.Name)
				}
			}
		}
	}
	if count < 150 {
		t.Errorf("only %d exported functions found", count)
	}
}
