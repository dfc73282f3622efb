package shoot

import (
	"cmp"
	"errors"
	"math"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/rheology"
	"example.org/honestplate/rheology/look"
	"example.org/honestplate/rheology/look/sharp"
	"example.org/honestplate/rheology/pour"
)

// mixAhead leaves time to mix, chill, test, correct and test again; common practice, no
// source.
const mixAhead = 20 * time.Minute

// mixing is how long mixing, chilling, testing and correcting take; common practice, no
// source.
const mixing = 75 * time.Minute

// cupGrams is what a cup test drains, g: the standard cups hold about 100 mL.
const cupGrams = 110

// testsPerBatch is how often a batch is timed: before and after a correction, and once
// more on the set.
const testsPerBatch = 3

// pour works a pour out: what is in the jug, how it is tested, what the stream does.
func (d *day) pour(j *job, t *Thing, p *PlannedThing, at string) error {
	q := t.Pour
	plan := &PourPlan{TempC: q.TempC, PouredGrams: q.PouredG, Outlet: q.Outlet, DropMM: q.DropMM, Onto: q.Onto, DepthMM: q.DepthMM}
	p.Pour = plan
	var liquid rheology.Liquid
	var err error
	if len(q.Liquids) == 2 {
		liquid, err = d.blend(j, t, p)
	} else {
		liquid, err = d.asItIs(j, t, p)
	}
	if err != nil {
		return err
	}
	if plan.PredictedPaS, err = liquid.Viscosity(plan.TempC); err != nil {
		return honestplate.In("temp_c", err)
	}
	plan.ShearRate = liquid.Describe().ShearRate
	run, err := q.Outlet.pour(liquid, plan.TempC, q.PouredG)
	if err != nil {
		return honestplate.In("outlet", err)
	}
	plan.HeadMM = math.Round(run.headMM*10) / 10
	plan.Lasts = run.Duration
	plan.LiquidRules = run.Friction > 0.5 && math.Log(run.Viscosity.High/run.Viscosity.Low) > 2*run.Hydraulics
	if spreadOf(run.Duration) > 10 || run.MayStay {
		p.Notes = append(p.Notes, Note{Code: MayStay, Thing: t.Name})
	}
	if err := plan.landing(q, run.Pour); err != nil {
		return err
	}
	coat, err := pour.Wall{Height: 0.03}.Drain(liquid, plan.TempC, 2*time.Second)
	if err == nil {
		plan.CoatMM = coat.Mean.Times(1000)
	} else if !errors.Is(err, honestplate.ErrRange) {
		return err
	}
	j.tool("jug for "+t.Name, 1)
	return plan.picture(q, liquid)
}

// Measures of the camera where the brief says none: a full frame's width, and a pixel.
const sensorWidth, pixel = 0.036, 4.4e-6 // m

// picture says how the liquid looks where it lies, and which flash freezes it.
func (plan *PourPlan) picture(q *Pour, liquid rheology.Liquid) error {
	camera := sharp.Camera{Magnification: sensorWidth / (cmp.Or(q.FrameMM, 200) / 1000), Pixel: pixel}
	if light, err := camera.Freezes(plan.SpeedMS, pixel); err == nil {
		plan.FreezeS = honestplate.Some(light)
	} else if !errors.Is(err, honestplate.ErrRange) {
		return honestplate.In("frame_width_mm", err)
	}
	if q.Hides == "" || plan.CoatMM.Likely <= 0 {
		return nil
	}
	milk, err := look.Of(liquid)
	if err != nil {
		return nil // neither milk nor cream: how it looks is not known
	}
	optics, err := milk.Optics()
	if err != nil {
		return err
	}
	ground := map[string]look.Ground{"flake": look.Flake, "chocolate": look.Chocolate, "glass": look.Black}[q.Hides]
	h := &Hides{What: q.Hides}
	plan.Hides = h
	if h.NeedsMM, err = optics.Hides(look.Scene{}, ground, look.White, look.Hidden); err != nil {
		return err
	}
	h.NeedsMM = h.NeedsMM.Times(1000)
	for _, c := range []struct {
		mm float64
		to *float64
	}{{plan.CoatMM.Low, &h.Contrast.Low}, {plan.CoatMM.Likely, &h.Contrast.Likely}, {plan.CoatMM.High, &h.Contrast.High}} {
		if *c.to, err = optics.Contrast(look.Scene{}, c.mm/1000, ground, look.White); err != nil {
			return err
		}
	}
	h.Does = h.Contrast.Likely >= look.Hidden
	return nil
}

// spreadOf is how many times longer the late end of a window is than the early one.
func spreadOf(w honestplate.Window) float64 {
	if w.Latest.Never {
		return math.Inf(1)
	}
	return w.Latest.After.Seconds() / math.Max(w.Earliest.After.Seconds(), 1e-9)
}

// landing follows the stream to the food.
func (plan *PourPlan) landing(q *Pour, run pour.Pour) error {
	stream, err := run.Stream(q.DropMM / 1000)
	if err != nil {
		return honestplate.In("drop_mm", err)
	}
	plan.StreamMM, plan.SpeedMS, plan.Breaks, plan.MayBreak = stream.Diameter*1000, stream.Speed, stream.Broken || stream.Drips, stream.MayBreak
	splash, err := stream.Splash(pour.Target{Film: q.DepthMM / 1000})
	if err == nil {
		plan.Splash = string(splash.Summary)
	} else if !errors.Is(err, honestplate.ErrRange) {
		return honestplate.In("depth_mm", err)
	}
	if q.Onto == "dry plate" {
		if puddle, err := run.Puddle(10*time.Second, 0); err == nil {
			plan.PuddleMM = puddle.Radius.Times(2000)
		} else if !errors.Is(err, honestplate.ErrRange) {
			return err
		}
	}
	return nil
}

// ran is a pour with the head that it took.
type ran struct {
	pour.Pour
	headMM float64
}

// pour runs the liquid out of the outlet. Where a duration is wanted, the head that gives
// it is found first.
func (o *Outlet) pour(l rheology.Liquid, tempC, grams float64) (ran, error) {
	at := func(headMM float64) (pour.Pour, error) {
		if o.Kind == "lip" {
			return pour.Lip{Width: o.WidthMM / 1000, Length: o.LengthMM / 1000, Head: headMM / 1000}.Pour(l, tempC, grams)
		}
		return pour.Spout{Diameter: o.WidthMM / 1000, Length: cmp.Or(o.LengthMM, o.WidthMM) / 1000, Head: headMM / 1000}.Pour(l, tempC, grams)
	}
	if o.Seconds == 0 {
		p, err := at(o.HeadMM)
		return ran{p, o.HeadMM}, err
	}
	low, high := 0.5, 500.0
	for range 60 {
		mid := math.Sqrt(low * high)
		p, err := at(mid)
		if err != nil {
			return ran{}, err
		}
		if p.Duration.Likely.Never || p.Duration.Likely.After.Seconds() > o.Seconds {
			low = mid
		} else {
			high = mid
		}
	}
	if high > 499 {
		return ran{}, &honestplate.RangeError{Field: "pour_seconds", Value: o.Seconds, Low: 0, High: o.Seconds * 10, Unit: "s", Source: "no head up to half a metre pours it so fast"}
	}
	p, err := at(high)
	return ran{p, high}, err
}

// blend mixes the two liquids at hand, tests and corrects.
func (d *day) blend(j *job, t *Thing, p *PlannedThing) (rheology.Liquid, error) {
	q, plan := t.Pour, p.Pour
	wanted := q.WantedMPaS / 1000
	if q.PoursLike != nil {
		eta, err := q.PoursLike.Is.Viscosity(q.TempC)
		if err != nil {
			return nil, honestplate.In("pours_like.is", err)
		}
		wanted = eta.Likely
	}
	plan.WantedPaS = honestplate.Some(wanted)
	use := q.PouredG * float64(max(j.shot.Units.Need, 1))
	grams := q.BatchGrams
	if grams == 0 {
		grams = math.Ceil((use+testsPerBatch*cupGrams)*1.05/10) * 10
	}
	plan.BatchGrams = grams
	plan.Batches = int(math.Ceil(use / math.Max(grams-testsPerBatch*cupGrams, q.PouredG)))
	recipe := rheology.Recipe{Thin: q.Liquids[0].Is.Liquid, Thick: q.Liquids[1].Is.Liquid, BatchGrams: grams, StepGrams: math.Max(d.step(), 0.1), TempC: q.TempC}
	batch, err := recipe.For(wanted)
	if err != nil {
		return nil, err
	}
	plan.Blend = []BlendPart{{q.Liquids[0].Name, batch.ThinGrams}, {q.Liquids[1].Name, batch.ThickGrams}}
	liquid, err := batch.Mix()
	if err != nil {
		return nil, err
	}
	most, err := d.cup(j, t, p, &batch, liquid)
	if err != nil {
		return nil, err
	}
	for i, s := range q.Liquids {
		need := plan.Blend[i].Grams * float64(plan.Batches)
		j.buy(Purchase{What: s.Name, Grams: need + most[i]*float64(plan.Batches), PackGrams: cmp.Or(s.PackGrams, 1000)})
	}
	j.drafts = append(j.drafts, draft{task: Task{What: Mix, Thing: t.Name, TempC: q.TempC, HasTemp: true}, ahead: mixAhead, lasts: mixing, hands: true})
	return liquid, nil
}

// cup says how the batch is tested, and what at the most a correction adds of either
// liquid.
func (d *day) cup(j *job, t *Thing, p *PlannedThing, batch *rheology.Batch, liquid rheology.Liquid) (most [2]float64, err error) {
	tempC := t.Pour.TempC
	nu, err := rheology.KinematicViscosity(liquid, tempC)
	if err != nil {
		return most, err
	}
	cup, err := rheology.ISOCupFor(nu.Likely)
	if errors.Is(err, honestplate.ErrRange) {
		p.Notes = append(p.Notes, Note{Code: TooThinForCup, Thing: t.Name})
		return most, nil
	}
	if err != nil {
		return most, err
	}
	w, err := cup.TimeOf(liquid, tempC)
	if err != nil {
		return most, err
	}
	test := &CupTest{Cup: cup.Name, TempC: tempC, Expected: w}
	if test.Leave, err = leaveIt(cup, batch, liquid); err != nil {
		return most, err
	}
	p.Pour.Cup = test
	j.tool(cup.Name+" cup", 1)
	for _, share := range []float64{5. / 6, 11. / 12, 13. / 12, 7. / 6} {
		at := time.Duration(share * float64(w.Likely.After)).Round(time.Second)
		at = min(max(at, cup.Least), cup.Most)
		if n := len(test.Corrections); at >= test.Leave.Earliest.After && at <= test.Leave.Latest.After || n > 0 && test.Corrections[n-1].Seconds == at.Seconds() {
			continue
		}
		fix, err := batch.CorrectFromCup(cup, at)
		if errors.Is(err, honestplate.ErrRange) {
			continue
		}
		if err != nil {
			return most, err
		}
		c := Correction{Seconds: at.Seconds()}
		switch {
		case fix.AddThickGrams > 0:
			c.Add, c.Grams = t.Pour.Liquids[1].Name, fix.AddThickGrams
			most[1] = math.Max(most[1], fix.AddThickGrams)
		case fix.AddThinGrams > 0:
			c.Add, c.Grams = t.Pour.Liquids[0].Name, fix.AddThinGrams
			most[0] = math.Max(most[0], fix.AddThinGrams)
		default:
			c.Leave = true
			continue
		}
		test.Corrections = append(test.Corrections, c)
	}
	return most, nil
}

// leaveIt finds the readings that mean: leave it. Their own band, as wide as the cup's,
// holds the thickness that is wanted, so that the reading asks for nothing. To half a
// second: a stop-watch tells no better.
func leaveIt(cup rheology.Cup, batch *rheology.Batch, liquid rheology.Liquid) (honestplate.Window, error) {
	const step = 500 * time.Millisecond
	density, err := liquid.Density(batch.Recipe.TempC)
	if err != nil {
		return honestplate.Window{}, err
	}
	wanted := batch.TargetPaS / density.Likely
	var early, likely, late time.Duration
	best := math.Inf(1)
	for at := cup.Least.Round(step); at <= cup.Most; at += step {
		nu, err := cup.KinematicViscosity(at)
		if err != nil {
			return honestplate.Window{}, err
		}
		if nu.Low > wanted {
			break
		}
		if nu.High < wanted {
			continue
		}
		if early == 0 {
			early = at
		}
		late = at
		if off := math.Abs(math.Log(nu.Likely / wanted)); off < best {
			best, likely = off, at
		}
	}
	return honestplate.Lasting(early, likely, late), nil
}

// asItIs pours one liquid; of an advertised one only the temperature may be chosen.
func (d *day) asItIs(j *job, t *Thing, p *PlannedThing) (rheology.Liquid, error) {
	q, plan := t.Pour, p.Pour
	liquid := q.Liquids[0].Is.Liquid
	wanted := q.WantedMPaS / 1000
	if q.PoursLike != nil {
		eta, err := q.PoursLike.Is.Viscosity(q.TempC)
		if err != nil {
			return nil, honestplate.In("pours_like.is", err)
		}
		wanted = eta.Likely
	}
	if wanted > 0 {
		plan.WantedPaS = honestplate.Some(wanted)
		tempC, err := rheology.ServeAt(liquid, wanted, q.LowestC.Value, q.HighestC.Value)
		if err != nil {
			return nil, err
		}
		plan.TempC = math.Round(tempC)
	}
	use := q.PouredG * float64(max(j.shot.Units.Need, 1))
	plan.BatchGrams, plan.Batches = math.Max(q.BatchGrams, use), 1
	plan.Blend = []BlendPart{{q.Liquids[0].Name, use}}
	j.buy(Purchase{What: q.Liquids[0].Name, Grams: use + cupGrams, PackGrams: cmp.Or(q.Liquids[0].PackGrams, 1000)})
	if math.Abs(plan.TempC-d.air.TempC) > 2 {
		j.drafts = append(j.drafts, draft{task: Task{What: Warm, Thing: t.Name, TempC: plan.TempC, HasTemp: true}, ahead: 0, lasts: 30 * time.Minute, hands: true})
	}
	return liquid, nil
}

// drizzle works out a thread that coils.
func (d *day) drizzle(j *job, t *Thing, p *PlannedThing) error {
	q := t.Drizzle
	run, err := q.Outlet.pour(q.Liquid.Is.Liquid, q.TempC, q.DrizzleG)
	if err != nil {
		return honestplate.In("outlet", err)
	}
	stream, err := run.Stream(q.DropMM / 1000)
	if err != nil {
		return honestplate.In("drop_mm", err)
	}
	plan := &CoilPlan{Lasts: run.Duration, HeadMM: math.Round(run.headMM*10) / 10, ThreadMM: stream.Diameter * 1000,
		Grams: q.DrizzleG, TempC: q.TempC, Outlet: q.Outlet, DropMM: q.DropMM}
	p.Coil = plan
	if spreadOf(run.Duration) > 10 || run.MayStay {
		p.Notes = append(p.Notes, Note{Code: MayStay, Thing: t.Name})
	}
	coil, err := stream.Coil()
	switch {
	case err == nil:
		plan.Coils, plan.RingMM, plan.TurnsPS = coil.Coils, coil.Radius.Times(2000), coil.Frequency
	case !errors.Is(err, honestplate.ErrRange) && !errors.Is(err, honestplate.ErrNoFlow):
		return err
	}
	use := q.DrizzleG * float64(max(j.shot.Units.Need, 1))
	j.buy(Purchase{What: q.Liquid.Name, Grams: use, PackGrams: cmp.Or(q.Liquid.PackGrams, 1000)})
	if math.Abs(q.TempC-d.air.TempC) > 2 {
		j.drafts = append(j.drafts, draft{task: Task{What: Warm, Thing: t.Name, TempC: q.TempC, HasTemp: true}, ahead: 0, lasts: 30 * time.Minute, hands: true})
	}
	return nil
}
