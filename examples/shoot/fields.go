package shoot

import (
	"errors"
	"fmt"
	"strings"
	"unicode"

	"example.org/honestplate"
)

// in puts an error under a place of the brief. A field that begins with ../ is of what
// holds the place, as in a path of files; a fact's keeps its own path.
func in(place string, err error) error {
	return refielded(err, func(field string) string {
		if strings.HasPrefix(field, "facts.") {
			return field
		}
		at := place
		for at != "" && strings.HasPrefix(field, "../") {
			field = field[len("../"):]
			at = at[:max(strings.LastIndex(at, "."), 0)]
		}
		if at == "" || field == "" || field[0] == '[' {
			return at + field
		}
		return at + "." + field
	})
}

// refielded gives an error of the vocabulary another field.
func refielded(err error, field func(string) string) error {
	switch e := err.(type) {
	case *honestplate.InputError:
		return &honestplate.InputError{Field: field(e.Field), Got: e.Got, Want: e.Want}
	case *honestplate.RangeError:
		return &honestplate.RangeError{Field: field(e.Field), Value: e.Value, Low: e.Low, High: e.High, Unit: e.Unit, Source: e.Source}
	case *honestplate.RefusedError:
		return &honestplate.RefusedError{Field: field(e.Field), Kind: e.Kind, Reason: e.Reason, Advice: e.Advice}
	}
	if c := honestplate.Cause(err); err != nil && c != err {
		return refielded(c, field)
	}
	return err
}

// fieldNames are the brief's fields for those of the library, which knows nothing of briefs.
type fieldNames map[string]string

// of puts an error of the library into the brief's words: its field, and the unit that
// the field's name has. A field that is not listed is written as briefs write one.
func (n fieldNames) of(err error) error {
	if err == nil {
		return nil
	}
	err = refielded(err, n.field)
	var input *honestplate.InputError
	var outside *honestplate.RangeError
	switch {
	case errors.As(err, &outside):
		by, unit := unitOf(outside.Field, outside.Unit)
		outside.Value, outside.Low, outside.High, outside.Unit = outside.Value*by, outside.Low*by, outside.High*by, unit
	case errors.As(err, &input):
		var v float64
		var unit string
		if _, err := fmt.Sscanf(input.Got, "%g %s", &v, &unit); err == nil {
			if by, in := unitOf(input.Field, unit); by != 1 {
				input.Got = fmt.Sprintf("%.6g %s", v*by, in)
			}
		}
	}
	return err
}

func (n fieldNames) field(field string) string {
	best := ""
	for library := range n {
		rest, ok := strings.CutPrefix(field, library)
		if ok && len(library) > len(best) && (rest == "" || rest[0] == '.' || rest[0] == '[') {
			best = library
		}
	}
	rest := strings.Replace(snake(field[len(best):]), ".declared.", ".", 1)
	if best == "" || rest == "" {
		return n[best] + rest
	}
	return strings.TrimSuffix(n[best]+rest, ".")
}

// unitOf is what a value in the library's unit is multiplied by for a field of the brief,
// and the unit that it then has.
func unitOf(field, unit string) (float64, string) {
	switch {
	case strings.HasSuffix(field, "_mm") && unit == "m":
		return 1000, "mm"
	case strings.HasSuffix(field, "_mpa_s") && unit == "Pa s":
		return 1000, "mPa s"
	case strings.HasSuffix(field, "_percent") && unit == "":
		return 100, "%"
	}
	return 1, unit
}

// snake writes FatPercent as fat_percent, as every field of a brief is written.
func snake(field string) string {
	var b strings.Builder
	lower := false
	for _, r := range field {
		if unicode.IsUpper(r) && lower {
			b.WriteByte('_')
		}
		lower = unicode.IsLower(r)
		b.WriteRune(unicode.ToLower(r))
	}
	return b.String()
}

// The library's fields of each kind in the brief's words.
var (
	thingNames = fieldNames{"Item": "name"}
	bowlNames  = fieldNames{"Grams": "fill_grams", "Diameter": "diameter_mm", "LimitC": "best_above_c"}
	drinkNames = fieldNames{"Diameter": "diameter_mm", "Height": "height_mm", "WallThickness": "wall_mm", "DrinkGrams": "fill_grams", "WallC": "glass_c",
		"Drink.Brix": "brix", "Drink.AlcoholPercent": "alcohol_percent", "Drink": "", "IceGrams": "ice.grams", "IceSize": "ice.size_mm", "IceC": "ice.temp_c"}
	bottleNames = fieldNames{"Diameter": "diameter_mm", "Height": "height_mm", "WallThickness": "wall_mm", "DrinkGrams": "fill_grams", "DrinkC": "serve_c", "WallC": "serve_c",
		"Drink.Brix": "brix", "Drink.AlcoholPercent": "alcohol_percent", "Drink": "", "StartC": "from_c", "TargetC": "serve_c"}
	scoopNames  = fieldNames{"Diameter": "diameter_mm", "StartC": "cabinet_c", "TargetC": "cabinet_c", "PlateC": "rests_on_c", "Medium.TempC": "../../../freezers"}
	softNames   = fieldNames{"Thickness": "thickness_mm", "Across": "across_mm"}
	cheeseNames = fieldNames{"Grams": "../grams", "Diameter": "diameter_mm", "StartC": "baked_c", "BreadThickness": "bread_mm", "SauceThickness": "sauce_mm", "Edge": "rim_mm",
		"Dish.Slices": "slices", "StepGrams": "../../../scale.step_grams"}
	pourNames = fieldNames{"PaS": "wanted_mpa_s", "Thin.TempC": "temp_c", "Thick.TempC": "temp_c", "Thin": "liquids[0].is", "Thick": "liquids[1].is",
		"Width": "outlet.width_mm", "Diameter": "outlet.width_mm", "Length": "outlet.length_mm", "Head": "outlet.head_mm", "Duration": "outlet", "Grams": "poured_grams",
		"Of": "liquids[0].is.of", "FatPercent": "liquids[0].is.fat_percent", "SolidsPercent": "liquids[0].is.solids_percent", "Brix": "liquids[0].is.brix",
		"MoisturePercent": "liquids[0].is.moisture_percent", "StepGrams": "../../../scale.step_grams"}
	drizzleNames = fieldNames{"Width": "outlet.width_mm", "Diameter": "outlet.width_mm", "Length": "outlet.length_mm", "Head": "outlet.head_mm", "Duration": "outlet", "Grams": "drizzled_grams",
		"Of": "liquid.is.of", "FatPercent": "liquid.is.fat_percent", "SolidsPercent": "liquid.is.solids_percent", "Brix": "liquid.is.brix", "MoisturePercent": "liquid.is.moisture_percent"}
	pieceNames = fieldNames{"Pieces": "weighed", "SDGrams": "spread_grams", "Tolerance": "tolerance_grams", "Grams": "../grams", "MeanGrams": "../grams", "Count": "../count",
		"StepGrams": "../../../scale.step_grams"}
	buildNames = fieldNames{"Layers": "../../specification.components", "Product": "../../specification.product", "Version": "../../specification.version",
		"Build.Scale.Load": "../../specification.components", "Build.Scale.StepGrams": "../../../scale.step_grams", "Build.Scale": "../../../scale", "ValidUntil": "../../specification.valid_until",
		"Signed": "../../specification.signed_by"}
	lampNames = fieldNames{"Distance": "distance_m", "Joules": "joules_per_pop", "Transmittance": "diffuser_stops"}
	roomNames = fieldNames{"RH": "rh_percent", "Speed": "air_speed_m_s", "PressurePa": "../place.altitude_m"}
	dishNames = fieldNames{"Correlation": "go_wrong_together", "Wanted": "wanted_takes", "Takes": "earlier.takes", "Good": "earlier.good", "Weight": "earlier.weight"}
	cupNames  = fieldNames{"Times": "seconds", "TempC": "temp_c", "Cup": "cup"}
)
