package shoot

import (
	"math"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/thermal"
	"example.org/honestplate/thermal/cold"
	"example.org/honestplate/thermal/food"
	"example.org/honestplate/thermal/heat"
	"example.org/honestplate/thermal/ware"
)

// overnight is how long ahead a drink goes into the fridge; common practice, no source.
const overnight = 14 * time.Hour

// fridgeH is the exchange with the air of a fridge, W/(m2 K): published examples have 6
// to 9 (read).
const fridgeH = 7

// carry is how long a unit is on its way from its store to the set: common practice, no
// source.
const carry = time.Minute

// glass is the drink as its clock takes it.
func (d *day) glass(q *Drink) thermal.Glass {
	g := thermal.Glass{
		Diameter: q.DiameterMM / 1000, Height: q.HeightMM / 1000, WallThickness: q.WallMM / 1000,
		DrinkGrams: q.FillGrams, DrinkC: honestplate.Some(q.DrinkC), WallC: honestplate.Some(q.GlassC.Or(d.air.TempC)),
	}
	g.Drink = food.Drink{Brix: q.Brix, AlcoholPercent: q.AlcoholPercent}
	if i := q.Ice; i != nil {
		g.IceGrams, g.IceSize = i.Grams, i.SizeMM/1000
		g.IceShape = map[string]thermal.IceShape{"ball": thermal.IceBall, "crushed": thermal.IceChip}[i.Shape]
		if i.TempC != 0 {
			g.IceC = honestplate.Some(i.TempC)
		}
	}
	return g
}

// drink works a cold drink out: its fog, its ice and what the picture wants of them.
func (d *day) drink(j *job, t *Thing, p *PlannedThing) (*shown, error) {
	q := t.Drink
	clock, err := clockOf(d, d.glass(q))
	if err != nil {
		return nil, err
	}
	haze, beads, clear := q.Wanted == "haze", q.Wanted == "beads", q.Wanted == "clear"
	marks := []mark{
		kept(clock.Kept, "haze", "haze", haze, clear), kept(clock.Kept, "white", "opaque", false, haze),
		kept(clock.Kept, "beads", "beads", beads, false), kept(clock.Kept, "runs", "runs", false, beads),
	}
	if q.Ice != nil {
		marks = append(marks, kept(clock.Kept, "ice gone", "ice gone", false, true))
	}
	events, l := d.clocked(j, t, marks...)
	p.Events = events
	p.Cold = &ColdPlan{StartC: q.DrinkC, FillMM: fill(q), HeightMM: q.HeightMM, WidthMM: q.DiameterMM, WallMM: q.WallMM}
	if q.Ice != nil {
		p.Cold.IceG = q.Ice.Grams
	}
	if haze && !clock.Haze.MayHappen() || beads && !clock.Beads.MayHappen() {
		p.Notes = append(p.Notes, Note{Code: NeverLooks, Thing: t.Name})
	}
	glassC := q.GlassC.Or(d.air.TempC)
	shock, err := ware.Glassware().Annealed.Shock(glassC, q.DrinkC)
	if err != nil {
		return nil, err
	}
	if shock.MayBreak {
		p.Cold.ShockK, p.Cold.Breaks = math.Round(shock.DeltaK), shock.Breaks
	}
	if q.DrinkC < d.air.TempC-1 {
		d.chill(j, t, p, q.DrinkC, overnight, Chill)
	}
	if wall := heat.SodaLime(); glassC < d.air.TempC-1 {
		d.chill(j, t, p, glassC, coolTime(wall.Density*wall.SpecificHeat, q.WallMM/1000, d.air.TempC, glassC), ChillDry)
	}
	return l, nil
}

// fill is how high the drink stands in the glass, inside, mm: drink and ice, of which
// nine tenths lie under the line.
func fill(q *Drink) float64 {
	bore := q.DiameterMM - 2*q.WallMM
	grams := q.FillGrams
	if q.Ice != nil {
		grams += q.Ice.Grams
	}
	return grams * 1000 / (math.Pi / 4 * bore * bore)
}

// mostTooCold is how far below the temperature it is wanted at a thing may wait for its turn,
// K: so much carrying and filling warm it (common practice, no source). Colder it is another
// thing, which fogs sooner and stands longer.
const mostTooCold = 4

// chill drafts the time in a fridge, or in a freezer for what is below freezing, and says
// where there is none so cold.
func (d *day) chill(j *job, t *Thing, p *PlannedThing, tempC float64, lasts time.Duration, what TaskKind) {
	stores := d.brief.Fridges
	if tempC < 0 {
		stores = d.brief.Freezers
	}
	store, ok := atLeast(stores, tempC-0.9)
	if !ok {
		p.Notes = append(p.Notes, Note{Code: NoColdStore, Thing: t.Name, Value: honestplate.Some(tempC - 1), Text: store.Name})
		if store.Name == "" {
			return
		}
	}
	if store.TempC < tempC-mostTooCold {
		p.Notes = append(p.Notes, Note{Code: StoreTooCold, Thing: t.Name, Value: honestplate.Some(tempC), Second: honestplate.Some(store.TempC), Text: store.Name})
	}
	if store.Units < j.shot.Units.Need {
		j.limits = append(j.limits, limit{store.Units, store.Name})
	}
	if what == Chill {
		p.Cold.Store, p.Cold.StoreC, p.Cold.Needs = store.Name, store.TempC, honestplate.Lasting(lasts, lasts, lasts)
	}
	j.drafts = append(j.drafts, draft{task: Task{What: what, Thing: t.Name, Store: store.Name, TempC: store.TempC, HasTemp: true, Units: min(j.shot.Units.Need, store.Units)}, ahead: carry, lasts: lasts})
}

// coolTime is how long a wall or a slab takes to cool in a fridge a kelvin colder than it
// has to be: both sides give heat off, half as long again is left for the crowd.
func coolTime(heatPerM3, thickness, fromC, toC float64) time.Duration {
	tau := heatPerM3 * thickness / (2 * fridgeH) // s
	took := tau * math.Log((fromC-toC+1)/1)
	return time.Duration(1.5*took*float64(time.Second)).Round(time.Minute) + 10*time.Minute
}

// mixOf is the typical recipe of a brief's word.
func mixOf(name string) food.FrozenMix {
	typical := food.Recipes()
	return map[string]food.FrozenMix{
		"vanilla ice cream": typical.VanillaIceCream, "chocolate ice cream": typical.ChocolateIceCream, "premium ice cream": typical.PremiumIceCream,
		"gelato": typical.Gelato, "sorbet": typical.Sorbet, "soft serve": typical.SoftServe, "frozen yogurt": typical.FrozenYogurt, "ice pop": typical.IcePop,
	}[name]
}

// structures are the library's for the words of a brief.
var structures = map[string]food.Structure{"natural": food.NaturalStructure, "stabilised": food.StabilisedStructure, "much destabilised fat": food.DestabilisedStructure}

// ball is the scoop as its clock takes it, straight from the cabinet or hardened.
func (d *day) ball(q *Scoop) (s thermal.Scoop, freeze thermal.DeepFreeze, hardened bool) {
	s = thermal.Scoop{Mix: mixOf(q.Mix), Diameter: q.Diameter / 1000, StartC: q.CabinetC, Structure: structures[q.Structure]}
	switch q.Rests {
	case "", "plate":
		s.Rest = thermal.OnPlate
		if q.RestC.Given && q.RestC.Value < d.air.TempC-2 {
			s.Rest, s.PlateC = thermal.OnChilledPlate, q.RestC
		}
	case "cone":
		s.Rest = thermal.OnCone
	case "nothing":
		s.Rest = thermal.OnNothing
	}
	store, ok := coldest(d.brief.Freezers)
	if !q.Freeze || !ok {
		return s, freeze, false
	}
	m := cold.Freezers().Home
	m.Name, m.TempC = store.Name, store.TempC
	if store.AirSpeed > 0 {
		m.H = honestplate.Factor(heatOfFan(store.AirSpeed), 1.5)
	}
	target := math.Min(store.TempC+4, s.StartC-1)
	if target <= store.TempC+0.5 || s.StartC-target < 2 {
		return s, freeze, false
	}
	freeze = thermal.DeepFreeze{Mix: s.Mix, Diameter: s.Diameter, StartC: honestplate.Some(s.StartC), TargetC: target, Medium: m}
	s.StartC = target
	return s, freeze, true
}

// scoop works a ball of frozen dessert out: how long it is hardened and how it holds.
func (d *day) scoop(j *job, t *Thing, p *PlannedThing) (*shown, error) {
	q := t.Scoop
	s, freeze, hardened := d.ball(q)
	p.Cold = &ColdPlan{StartC: s.StartC}
	if t.Grams > 0 {
		density, err := s.Mix.Density()
		if err != nil {
			return nil, err
		}
		p.Cold.BallMM = 1000 * math.Cbrt(t.Grams/1000/density*6/math.Pi)
	}
	switch {
	case hardened:
		if err := d.harden(j, t, p, freeze); err != nil {
			return nil, err
		}
	case q.Freeze:
		p.Notes = append(p.Notes, Note{Code: NotWorthIt, Thing: t.Name, Value: honestplate.Some(0)})
	}
	clock, err := clockOf(d, s)
	if err != nil {
		return nil, err
	}
	marks := []mark{kept(clock.Kept, "soft", "softens", false, true), kept(clock.Kept, "drip", "drips", false, true), kept(clock.Kept, "slump", "slumps", false, true)}
	if s.Rest == thermal.OnPlate || s.Rest == thermal.OnChilledPlate {
		marks = append(marks, kept(clock.Kept, "puddle", "puddle", false, true))
	}
	events, l := d.clocked(j, t, marks...)
	p.Events = events
	j.tool("gloves for the freezer", 2)
	return l, nil
}

// harden drafts the time in the coldest freezer, by the late end of its band.
func (d *day) harden(j *job, t *Thing, p *PlannedThing, freeze thermal.DeepFreeze) error {
	store, _ := coldest(d.brief.Freezers)
	clock, err := freeze.Knowing(d.lesson)
	if err != nil {
		return err
	}
	w := clock.Mean.Window
	p.Cold.Store, p.Cold.StoreC, p.Cold.Needs = store.Name, store.TempC, w
	lasts := w.Latest
	if lasts.Never {
		lasts = w.Likely
	}
	if lasts.Never {
		p.Notes = append(p.Notes, Note{Code: NoColdStore, Thing: t.Name, Value: honestplate.Some(freeze.TargetC), Text: store.Name})
		return nil
	}
	if store.Units < j.shot.Units.Need {
		j.limits = append(j.limits, limit{store.Units, store.Name})
	}
	j.drafts = append(j.drafts, draft{task: Task{What: Harden, Thing: t.Name, Store: store.Name, TempC: store.TempC, HasTemp: true, Units: min(store.Units, j.shot.Units.Need)},
		ahead: carry, lasts: (lasts.After + 15*time.Minute).Round(5 * time.Minute)})
	return nil
}

// heatOfFan is the exchange of a ball with the stream of a freezer's fan, W/(m2 K),
// between the published 15 of a still and 25 to 50 of a blast freezer: estimate.
func heatOfFan(speed float64) float64 { return math.Min(10+16*math.Sqrt(speed), 60) }

// softOf is the food of a brief's word.
func softOf(name string) food.SoftFood {
	usual := food.SoftFoods()
	return map[string]food.SoftFood{
		"butter": usual.Butter, "dark chocolate": usual.DarkChocolate, "milk chocolate": usual.MilkChocolate, "white chocolate": usual.WhiteChocolate,
		"whipped cream": usual.WhippedCream, "set cream": usual.SetCream,
	}[name]
}

// piece is soft food as its clock takes it.
func (d *day) piece(q *Soft) thermal.Softening {
	return thermal.Softening{
		Food: softOf(q.Food), Form: heat.SlabForm, Thickness: q.ThicknessMM / 1000, Across: q.AcrossMM / 1000, StartC: honestplate.Some(q.StartC),
		Below: map[string]ware.Tabletop{"wood": ware.WoodTop, "plastic": ware.PlasticTop, "glass": ware.GlassTop, "stone": ware.StoneTop, "metal": ware.MetalTop, "rack": ware.WireRack}[q.On],
	}
}

// soft works butter and the like out.
func (d *day) soft(j *job, t *Thing, p *PlannedThing) (*shown, error) {
	clock, err := clockOf(d, d.piece(t.Soft))
	if err != nil {
		return nil, err
	}
	events, l := d.clocked(j, t, kept(clock.Kept, "soft", "softens", false, true), kept(clock.Kept, "runny", "runs", false, true))
	p.Events = events
	if startC := t.Soft.StartC; startC < d.air.TempC-1 {
		p.Cold = &ColdPlan{StartC: startC}
		// No soft food takes more heat than water does, and a thick one may stay overnight.
		lasts := coolTime(1000*heat.WaterHeat, t.Soft.ThicknessMM/1000, d.air.TempC, startC)
		d.chill(j, t, p, startC, min(lasts, overnight), Chill)
	}
	return l, nil
}
