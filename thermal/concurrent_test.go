package thermal

import (
	"errors"
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
)

func both[T any](v T, err error) any { return []any{v, err} }

// concurrentCalls calls every exported function and method once, by name. The values
// they start from are shared, so that a method that wrote to its receiver would show.
func concurrentCalls(t *testing.T) map[string]func() any {
	must := func(err error) {
		if err != nil {
			t.Helper()
			t.Fatal(err)
		}
	}
	const minute = time.Minute
	room, key := Air{TempC: 24, RH: 0.55, Speed: 0.1}, Lamp{Watts: 650, Distance: 1.4, BeamDegrees: 40}
	mix, food := VanillaIceCream(), Food{Water: 0.6, Protein: 0.1, Fat: 0.1, Carbohydrate: 0.15, Fibre: 0.03, Ash: 0.02, FreezeC: -2}
	curve, err := mix.Curve()
	must(err)
	series, err := NewSeries(CylinderForm, 2)
	must(err)
	history, err := series.At(0.5)
	must(err)
	transient, err := Solid{Material: butterLike, Size: Size{Diameter: 0.05, Height: 0.04}, H: 9, StartC: 4, AmbientC: 24}.Transient()
	must(err)
	wall := Surface{Shape: VerticalCylinder, Length: 0.08, Diameter: 0.075, Activity: 1}
	exchanger, err := wall.In(room)
	must(err)
	flux, err := exchanger.At(5, 10)
	must(err)
	block := HalfSpace{Material: butterLike, StartC: 5}
	marble := HalfSpace{Material: Material{Density: 2600, SpecificHeat: 880, Conductivity: 2.5}, StartC: 20}
	lump := Lumped{Material: SodaLime(), Volume: 1e-6, Area: 1e-2, H: 10, StartC: 90, AmbientC: 20}
	freezing := Freezing{Size: Size{Diameter: 0.05}, Medium: BlastFreezer(), StartC: 5, EndC: -18}
	freezing.Food, err = food.Freezable()
	must(err)
	body := Body{Form: SphereForm, Radius: 0.02, Cells: 20, Curve: Sharp(0, 0.1, iceCp, waterCp, iceFusion, iceK, waterK, -60, 60)}
	near, far := Phase{iceK, iceCp}, Phase{waterK, waterCp}
	freeze := DeepFreeze{Mix: mix, Diameter: 0.01, StartC: -19, TargetC: -20, Medium: PlateFreezer()}
	scoop := Scoop{Mix: mix, Diameter: 0.05, StartC: -12, Horizon: 5 * time.Second}
	glass := Glass{Diameter: 0.075, Height: 0.12, WallThickness: 0.003, DrinkGrams: 200, DrinkC: 4, WallC: 4, Horizon: minute}
	soup := HotDish{Grams: 350, Diameter: 0.16, StartC: 85, LimitC: 84.8, Activity: 1}
	cheese := Cheese{Grams: 60, Diameter: 0.12, StartC: 90, RunnyC: Exactly(89), SetC: Exactly(88)}
	iced := IcedDrink{DrinkGrams: 200, DrinkC: 20, Size: 0.025, IceGrams: 60, IceC: -10, Diameter: 0.07, Horizon: 10 * time.Second}
	chips := IceOnTable{Shape: IceChip, Size: 0.003, StartC: -2, Horizon: 20 * time.Second}
	curl := Softening{Food: Butter(), Thickness: 0.01, Across: 0.03, StartC: 5, Horizon: 20 * time.Second}
	balance := HeatBalance{Air: 10, Stored: 9}
	window := Window{minute, 2 * minute, Never}
	input, limit := &InputError{"x", 1, "m", "more"}, &RangeError{"x", 1, 2, 3, "m", "us"}
	study := Study{Inputs: []Uncertain{{Name: "a", Likely: 2, Low: 1, High: 3}, {Name: "b", Likely: 5, Low: 4, High: 6}}, Events: 1,
		Model: func() func([]float64, []time.Duration) error {
			return func(x []float64, at []time.Duration) error {
				at[0] = seconds(x[0]*x[0] + x[1])
				return nil
			}
		}}
	return map[string]func() any{
		"AltitudeAtPressure": func() any { return both(AltitudeAtPressure(9e4)) },
		"BallMeltTime": func() any {
			return both(BallMeltTime(0.03, 0.5, 20, iceFusion, func(d float64) float64 { return 1 / d }))
		},
		"BlackbodyFraction":           func() any { return both(BlackbodyFraction(2e-3)) },
		"Clock":                       func() any { return Clock(90 * time.Second) },
		"ContactC":                    func() any { return both(ContactC(block, marble)) },
		"DropDiameter":                func() any { return both(DropDiameter(50, 40, 0.5)) },
		"EnhancementFactor":           func() any { return both(EnhancementFactor(20, 1e5)) },
		"IrradianceFromLux":           func() any { return both(IrradianceFromLux(2000, LED)) },
		"LatentHeat":                  func() any { return both(LatentHeat(5)) },
		"LightBand":                   func() any { low, high := LightBand(key); return []float64{low, high} },
		"MixedNusselt":                func() any { return both(MixedNusselt(5, 7)) },
		"NeumannLambda":               func() any { return both(NeumannLambda(near, far, 10, 5, iceFusion)) },
		"NusseltCylinderAcross":       func() any { return both(NusseltCylinderAcross(1e3, 0.7)) },
		"NusseltHorizontalCylinder":   func() any { return both(NusseltHorizontalCylinder(1e6, 0.7)) },
		"NusseltPlateAlong":           func() any { return both(NusseltPlateAlong(1e4, 0.7)) },
		"NusseltPlateDown":            func() any { return both(NusseltPlateDown(1e6, 0.7)) },
		"NusseltPlateUp":              func() any { return both(NusseltPlateUp(1e6, 0.7)) },
		"NusseltSphere":               func() any { return both(NusseltSphere(1e6, 0.7)) },
		"NusseltSphereInStream":       func() any { return both(NusseltSphereInStream(1e3, 0.7, 1)) },
		"NusseltVerticalCylinder":     func() any { return both(NusseltVerticalCylinder(1e6, 0.7, 2)) },
		"NusseltVerticalPlate":        func() any { return both(NusseltVerticalPlate(1e6, 0.7)) },
		"NusseltVerticalPlateLaminar": func() any { return both(NusseltVerticalPlateLaminar(1e6, 0.7)) },
		"Overrun":                     func() any { return both(Overrun(1000, 600)) },
		"PressureAtAltitude":          func() any { return both(PressureAtAltitude(500)) },
		"RunningDrop":                 func() any { return both(RunningDrop(60, 30)) },
		"SaturationPressure":          func() any { return both(SaturationPressure(20)) },
		"SaturationTemperature":       func() any { return both(SaturationTemperature(1500)) },
		"ShapeFactor":                 func() any { return both(ShapeFactor(Size{Diameter: 0.05, Height: 0.04}, 2)) },
		"SheetTime":                   func() any { return both(SheetTime(0, 0.01, 10, iceK, iceFusion)) },
		"StefanLambda":                func() any { return both(StefanLambda(0.3)) },
		"SucroseDepression":           func() any { return both(SucroseDepression(40)) },
		"Exactly":                     func() any { return Exactly(3) },
		"Sharp":                       func() any { return Sharp(0, 0.1, iceCp, waterCp, iceFusion, iceK, waterK, -60, 60) },
		"Watery":                      func() any { return both(Watery(0.7, -2, 1050)) },
		"MixIce":                      func() any { return both(MixIce(50, -5, 200, 20)) },
		"NewSeries":                   func() any { return both(NewSeries(SlabForm, 3)) },

		"ClearIce":             func() any { return both(ClearIce(0.03)) },
		"ClearWater":           func() any { return both(ClearWater(0.03)) },
		"DarkFood":             func() any { return DarkFood() },
		"PaleFood":             func() any { return PaleFood() },
		"WhiteFood":            func() any { return WhiteFood() },
		"Absorptance.Absorbed": func() any { return both(PaleFood().Absorbed(key)) },
		"Absorptance.Of":       func() any { return both(PaleFood().Of(Tungsten)) },
		"Lamp.At":              func() any { return both(key.At(2)) },
		"Lamp.Illuminance":     func() any { return both(key.Illuminance()) },
		"Lamp.Irradiance":      func() any { return both(key.Irradiance()) },
		"Source.Data":          func() any { return both(Flash.Data()) },
		"Source.String":        func() any { return Flash.String() },

		"AirFromDewPoint":       func() any { return both(AirFromDewPoint(24, 12, 0)) },
		"AirFromEnthalpy":       func() any { return both(AirFromEnthalpy(5e4, 0.008, 0)) },
		"AirFromHumidityRatio":  func() any { return both(AirFromHumidityRatio(24, 0.008, 0)) },
		"AirFromWetBulb":        func() any { return both(AirFromWetBulb(24, 17, 0)) },
		"Air.Conductivity":      func() any { return both(room.Conductivity()) },
		"Air.Density":           func() any { return both(room.Density()) },
		"Air.DewPointC":         func() any { return both(room.DewPointC()) },
		"Air.Enthalpy":          func() any { return both(room.Enthalpy()) },
		"Air.HumidityRatio":     func() any { return both(room.HumidityRatio()) },
		"Air.SpecificHeat":      func() any { return both(room.SpecificHeat()) },
		"Air.SpecificVolume":    func() any { return both(room.SpecificVolume()) },
		"Air.Steam":             func() any { return both(room.Steam(80, 1)) },
		"Air.Validate":          func() any { return room.Validate() },
		"Air.VapourDensity":     func() any { return both(room.VapourDensity()) },
		"Air.VapourDiffusivity": func() any { return both(room.VapourDiffusivity()) },
		"Air.VapourPressure":    func() any { return both(room.VapourPressure()) },
		"Air.Viscosity":         func() any { return both(room.Viscosity()) },
		"Air.WetBulbC":          func() any { return both(room.WetBulbC()) },

		"Surface.Exchange":       func() any { return both(wall.Exchange(room, 5, 10)) },
		"Surface.In":             func() any { return both(wall.In(room)) },
		"Exchanger.At":           func() any { return both(exchanger.At(4, 20)) },
		"Exchanger.EquilibriumC": func() any { return both(exchanger.EquilibriumC(30)) },
		"Flux.Total":             func() any { return flux.Total() },

		"Component.Conductivity":       func() any { return both(Protein.Conductivity(20)) },
		"Component.Density":            func() any { return both(Protein.Density(20)) },
		"Component.SpecificHeat":       func() any { return both(Protein.SpecificHeat(20)) },
		"Component.String":             func() any { return Fibre.String() },
		"Food.ApparentHeat":            func() any { return both(food.ApparentHeat(-5)) },
		"Food.Conductivity":            func() any { return both(food.Conductivity(-5)) },
		"Food.Density":                 func() any { return both(food.Density(-5)) },
		"Food.Enthalpy":                func() any { return both(food.Enthalpy(-5)) },
		"Food.Freezable":               func() any { return both(food.Freezable()) },
		"Food.FreezingHeat":            func() any { return both(food.FreezingHeat()) },
		"Food.IceFraction":             func() any { return both(food.IceFraction(-5)) },
		"Food.Points":                  func() any { return both(food.Points()) },
		"Food.SpecificHeat":            func() any { return both(food.SpecificHeat(-5)) },
		"Food.Validate":                func() any { return food.Validate() },
		"EnthalpyCurve.ApparentHeat":   func() any { return both(curve.ApparentHeat(-8)) },
		"EnthalpyCurve.Conductivity":   func() any { return both(curve.Conductivity(-8)) },
		"EnthalpyCurve.Density":        func() any { return curve.Density() },
		"EnthalpyCurve.Enthalpy":       func() any { return both(curve.Enthalpy(-8)) },
		"EnthalpyCurve.FreezingPointC": func() any { return curve.FreezingPointC() },
		"EnthalpyCurve.IceFraction":    func() any { return both(curve.IceFraction(-8)) },
		"EnthalpyCurve.Points":         func() any { return curve.Points() },
		"EnthalpyCurve.TempC":          func() any { return both(curve.TempC(1e5)) },

		"ChocolateIceCream":         func() any { return ChocolateIceCream() },
		"FrozenYogurt":              func() any { return FrozenYogurt() },
		"Gelato":                    func() any { return Gelato() },
		"IcePop":                    func() any { return IcePop() },
		"PremiumIceCream":           func() any { return PremiumIceCream() },
		"SoftServe":                 func() any { return SoftServe() },
		"Sorbet":                    func() any { return Sorbet() },
		"VanillaIceCream":           func() any { return VanillaIceCream() },
		"FrozenMix.Curve":           func() any { return both(mix.Curve()) },
		"FrozenMix.Density":         func() any { return both(mix.Density()) },
		"FrozenMix.FreezingPointC":  func() any { return both(mix.FreezingPointC()) },
		"FrozenMix.FrozenAtC":       func() any { return both(mix.FrozenAtC(0.5)) },
		"FrozenMix.MixDensity":      func() any { return both(mix.MixDensity()) },
		"FrozenMix.Validate":        func() any { return mix.Validate() },
		"FrozenMix.WaterFraction":   func() any { return mix.WaterFraction() },
		"Butter":                    func() any { return Butter() },
		"DarkChocolate":             func() any { return DarkChocolate() },
		"MilkChocolate":             func() any { return MilkChocolate() },
		"SetCream":                  func() any { return SetCream() },
		"WhippedCream":              func() any { return WhippedCream() },
		"WhiteChocolate":            func() any { return WhiteChocolate() },
		"SoftFood.Validate":         func() any { return curl.Food.Validate() },
		"SodaLime":                  func() any { return SodaLime() },
		"Material.Diffusivity":      func() any { return both(butterLike.Diffusivity()) },
		"Material.Effusivity":       func() any { return both(butterLike.Effusivity()) },
		"Material.Validate":         func() any { return butterLike.Validate() },
		"AnnealedGlass":             func() any { return AnnealedGlass() },
		"BorosilicateGlass":         func() any { return BorosilicateGlass() },
		"TemperedGlass":             func() any { return TemperedGlass() },
		"Ware.Shock":                func() any { return both(AnnealedGlass().Shock(20, 90, 0.004, 500)) },
		"ShockRisk.String":          func() any { return ShockLikely.String() },
		"BlastFreezer":              func() any { return BlastFreezer() },
		"DeepFreezer":               func() any { return DeepFreezer() },
		"DryIce":                    func() any { return DryIce() },
		"HomeFreezer":               func() any { return HomeFreezer() },
		"PlateFreezer":              func() any { return PlateFreezer() },
		"ServingCabinet":            func() any { return ServingCabinet() },
		"Medium.Validate":           func() any { return freezing.Medium.Validate() },
		"Freezing.Pham":             func() any { return both(freezing.Pham()) },
		"Freezing.Plank":            func() any { return both(freezing.Plank()) },
		"Form.String":               func() any { return SlabForm.String() },
		"IceShape.PieceGrams":       func() any { return both(IceBall.PieceGrams(0.03)) },
		"IceShape.String":           func() any { return IceBall.String() },
		"Rest.String":               func() any { return OnCone.String() },
		"HalfSpace.Convected":       func() any { return both(block.Convected(24, 9, 0.01, minute)) },
		"HalfSpace.ConvectedTimeTo": func() any { return both(block.ConvectedTimeTo(10, 24, 90, 0.001)) },
		"HalfSpace.Heated":          func() any { return both(block.Heated(100, 0.01, minute)) },
		"HalfSpace.Held":            func() any { return both(block.Held(24, 0.01, minute)) },
		"HalfSpace.HeldDepth":       func() any { return both(block.HeldDepth(24, 10, minute)) },
		"HalfSpace.HeldFlux":        func() any { return both(block.HeldFlux(24, minute)) },
		"Lumped.Biot":               func() any { return both(lump.Biot()) },
		"Lumped.TempC":              func() any { return both(lump.TempC(minute)) },
		"Lumped.TimeConstant":       func() any { return both(lump.TimeConstant()) },
		"Lumped.TimeTo":             func() any { return both(lump.TimeTo(40)) },
		"Series.At":                 func() any { return both(series.At(1)) },
		"Series.FirstTerm":          func() any { root, factor := series.FirstTerm(); return []float64{root, factor} },
		"Series.Heat":               func() any { return both(series.Heat(1e-3)) },
		"Series.Mean":               func() any { return both(series.Mean(0.1)) },
		"Series.Theta":              func() any { return both(series.Theta(0.3, 0.002)) },
		"History.Fourier":           func() any { return both(history.Fourier(0.4)) },
		"History.Theta":             func() any { return both(history.Theta(0.2)) },
		"Solid.Transient": func() any {
			tr, err := Solid{butterLike, Size{Diameter: 0.05}, 9, 4, 24}.Transient() // holds functions, which do not compare
			if err != nil {
				return err
			}
			return both(tr.MeanC(minute))
		},
		"Transient.Heat":       func() any { return both(transient.Heat(minute)) },
		"Transient.MeanC":      func() any { return both(transient.MeanC(minute)) },
		"Transient.MeanTimeTo": func() any { return both(transient.MeanTimeTo(15)) },
		"Transient.TempC":      func() any { return both(transient.TempC(Place{R: 0.5, H: 1}, minute)) },
		"Transient.TimeTo":     func() any { return both(transient.TimeTo(Place{}, 15)) },
		"Body.Run":             func() any { return both(body.Run(-10, 0, convection(15, 25), minute, 5*minute)) },

		"HeatBalance.Error":  func() any { return balance.Error() },
		"InputError.Error":   func() any { return input.Error() },
		"InputError.Is":      func() any { return errors.Is(input, ErrInput) && input.Is(ErrInput) },
		"RangeError.Error":   func() any { return limit.Error() },
		"RangeError.Is":      func() any { return errors.Is(limit, ErrRange) && limit.Is(ErrRange) },
		"SolverError.Error":  func() any { return (&SolverError{At: minute}).Error() },
		"Sensitivity.String": func() any { return Sensitivity{Input: "humidity", Share: 0.5}.String() },
		"DefaultStages":      func() any { return DefaultStages() },
		"Window.MayHappen":   func() any { return window.MayHappen() },
		"Window.Round":       func() any { return window.Round(time.Second) },
		"Window.String":      func() any { return window.String() },
		"Study.Run":          func() any { return both(study.Run()) },
		"Cheese.Clock":       func() any { return both(cheese.Clock(room)) },
		"Cheese.Likely":      func() any { return both(cheese.Likely(room, key)) },
		"DeepFreeze.After":   func() any { return both(freeze.After(FreezeStage{Medium: DryIce(), For: minute})) },
		"DeepFreeze.Time":    func() any { return both(freeze.Time()) },
		"DeepFreeze.Times":   func() any { return both(freeze.Times()) },
		"Glass.Clock":        func() any { return both(glass.Clock(room)) },
		"Glass.Likely":       func() any { return both(glass.Likely(room, key)) },
		"HotDish.Clock":      func() any { return both(soup.Clock(room)) },
		"HotDish.Likely":     func() any { return both(soup.Likely(room, key)) },
		"IceOnTable.Clock":   func() any { return both(chips.Clock(room)) },
		"IcedDrink.Clock":    func() any { return both(iced.Clock(room)) },
		"Scoop.Hold":         func() any { return both(scoop.Hold(room, key)) },
		"Scoop.Likely":       func() any { return both(scoop.Likely(room, key)) },
		"Softening.Clock":    func() any { return both(curl.Clock(room)) },
	}
}

// Every call gives the same answer from 64 goroutines at once, each in an order of
// its own, as it gives alone: to the bit.
func TestConcurrentUseGivesTheSerialAnswers(t *testing.T) {
	calls := concurrentCalls(t)
	want := map[string]any{}
	var names []string
	for name, call := range calls {
		want[name] = call()
		names = append(names, name)
		if pair, ok := want[name].([]any); ok && pair[1] != nil {
			t.Errorf("%s: %v: an error compares too little", name, pair[1])
		}
	}
	var wait sync.WaitGroup
	for g := range 64 {
		wait.Go(func() {
			for _, i := range rand.New(rand.NewPCG(uint64(g), 7)).Perm(len(names)) {
				if got := calls[names[i]](); !reflect.DeepEqual(got, want[names[i]]) {
					t.Errorf("%s: %v, alone %v", names[i], got, want[names[i]])
				}
			}
		})
	}
	wait.Wait()
}

// The table above leaves nothing exported out, and each entry calls what it names.
func TestConcurrentUseCoversEveryExportedCall(t *testing.T) {
	fset := token.NewFileSet()
	paths, err := filepath.Glob("*.go")
	if err != nil {
		t.Fatal(err)
	}
	called := map[string]bool{}
	var exported []string
	for _, path := range paths {
		if strings.HasSuffix(path, "_test.go") && path != "concurrent_test.go" {
			continue
		}
		file, err := parser.ParseFile(fset, path, nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		for _, d := range file.Decls {
			fn, ok := d.(*ast.FuncDecl)
			if !ok || !fn.Name.IsExported() || strings.HasPrefix(fn.Name.Name, "Test") {
				continue
			}
			name := fn.Name.Name
			if fn.Recv != nil {
				typ := fn.Recv.List[0].Type
				if star, ok := typ.(*ast.StarExpr); ok {
					typ = star.X
				}
				receiver := typ.(*ast.Ident)
				if !receiver.IsExported() {
					continue
				}
				name = receiver.Name + "." + name
			}
			exported = append(exported, name)
		}
		ast.Inspect(file, func(n ast.Node) bool {
			entry, ok := n.(*ast.KeyValueExpr)
			if !ok {
				return true
			}
			key, ok := entry.Key.(*ast.BasicLit)
			if !ok {
				return true
			}
			name := strings.Trim(key.Value, `"`)
			_, method, found := strings.Cut(name, ".")
			if !found {
				method = name
			}
			ast.Inspect(entry.Value, func(n ast.Node) bool {
				if id, ok := n.(*ast.Ident); ok && id.Name == method {
					called[name] = true
				}
				return true
			})
			return true
		})
	}
	for _, name := range exported {
		if !called[name] {
			t.Errorf("%s is not called", name)
		}
	}
	if len(exported) < 150 {
		t.Errorf("only %d functions and methods found", len(exported))
	}
}
