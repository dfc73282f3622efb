package shoot

import (
	"cmp"

	"example.org/honestplate/portion/plate"
)

// A Size is how large something stands in the frame; 0 where the brief does not say.
type Size struct {
	WidthMM  float64 `json:"width_mm,omitempty"`
	HeightMM float64 `json:"height_mm,omitempty"`
}

// A Spot is a place on a dish seen from above, counted from its middle.
type Spot struct {
	XMM float64 `json:"x_mm"` // to the right
	YMM float64 `json:"y_mm"` // away from the camera
}

func spotOf(p plate.Point) Spot { return Spot{1000 * p.X, 1000 * p.Y} }

// A PieceSpot is where a piece of the first hero lies: the best-looking one in front.
type PieceSpot struct {
	Name string `json:"name"`
	At   Spot   `json:"at"`
}

// size is how large a thing stands in the frame, as far as its kind says it.
func (t *Thing) size() Size {
	switch {
	case t.Bowl != nil:
		return Size{WidthMM: t.Bowl.DiameterMM}
	case t.Drink != nil:
		return Size{t.Drink.DiameterMM, t.Drink.HeightMM}
	case t.Bottle != nil:
		return Size{t.Bottle.DiameterMM, t.Bottle.HeightMM}
	case t.Scoop != nil:
		return Size{t.Scoop.Diameter, t.Scoop.Diameter}
	case t.Soft != nil:
		return Size{t.Soft.AcrossMM, t.Soft.ThicknessMM}
	}
	return Size{}
}

// catches is the thing in which a pour lands: a pool is in a glass or a bowl, a film lies
// on what is in a bowl. It is empty for a plate and where the frame has neither.
func (d *Dish) catches(q *Pour) string {
	glass, bowl := "", ""
	for i := range d.Things {
		switch t := &d.Things[i]; {
		case t.Drink != nil:
			glass = cmp.Or(glass, t.Name)
		case t.Bowl != nil:
			bowl = cmp.Or(bowl, t.Name)
		}
	}
	switch q.Onto {
	case "pool":
		return cmp.Or(glass, bowl)
	case "film":
		return bowl
	}
	return ""
}
