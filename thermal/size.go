package thermal

// A Size gives the shape of a piece by the sizes that are set:
//
//	Diameter                   ball
//	Diameter, Long             long cylinder, ends not counted
//	Diameter, Height           short cylinder
//	Height                     slab, both faces exposed
//	Height, Width, Long        long bar, ends not counted
//	Height, Width, Depth       brick
//
// A slab with an insulated back is one of twice its thickness.
type Size struct {
	Diameter float64 // m
	Height   float64 // or thickness, m
	Width    float64 // m
	Depth    float64 // m
	Long     bool    // so long that its ends do not matter
}

// A Place in a piece is given along its sizes, each 0 at the centre and 1 at the
// surface. The zero value is the centre.
type Place struct {
	R float64 // along the diameter
	H float64 // along the height or thickness
	W float64 // along the width
	D float64 // along the depth
}

// axis is one direction in which heat flows: its form and half size.
type axis struct {
	form Form
	half float64
	at   func(Place) float64
}

// axes returns the directions of a shape, an *InputError if the sizes make none or a
// *RangeError for one outside 1e-7..1e4 m.
func (s Size) axes() ([]axis, error) {
	for _, v := range [...]struct {
		name string
		size float64
	}{{"diameter", s.Diameter}, {"height", s.Height}, {"width", s.Width}, {"depth", s.Depth}} {
		if err := notNegative(v.name, v.size, "m"); err != nil {
			return nil, err
		}
		if v.size != 0 {
			if err := within(v.name, v.size, 1e-7, 1e4, "m", "any piece"); err != nil {
				return nil, err
			}
		}
	}
	r := func(p Place) float64 { return p.R }
	slabs := []axis{
		{SlabForm, s.Height / 2, func(p Place) float64 { return p.H }},
		{SlabForm, s.Width / 2, func(p Place) float64 { return p.W }},
		{SlabForm, s.Depth / 2, func(p Place) float64 { return p.D }},
	}
	n := 0 // slab directions given, which must be the first n
	for n < 3 && slabs[n].half > 0 {
		n++
	}
	for _, a := range slabs[n:] {
		if a.half > 0 {
			return nil, &InputError{"width or depth", 2 * a.half, "m", "given after height, then width"}
		}
	}
	switch {
	case s.Diameter > 0 && n == 0 && !s.Long:
		return []axis{{SphereForm, s.Diameter / 2, r}}, nil
	case s.Diameter > 0 && n == 0:
		return []axis{{CylinderForm, s.Diameter / 2, r}}, nil
	case s.Diameter > 0 && n == 1 && !s.Long:
		return []axis{{CylinderForm, s.Diameter / 2, r}, slabs[0]}, nil
	case s.Diameter == 0 && (n == 3 || n == 1) && !s.Long, s.Diameter == 0 && n == 2 && s.Long:
		return slabs[:n], nil
	}
	return nil, &InputError{"number of sizes", float64(n), "", "those of one of the six shapes"}
}
