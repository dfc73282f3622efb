// Package honestplate is the front door of a library for photographing food and
// drink honestly: the client's real product, in its declared amount, looking its
// best in front of hot lights, in a window of seconds to minutes, with a record
// of how the picture was made.
//
// The work is in three trees that do not import each other:
//
//   - rheology: how a liquid pours and looks; blends, recipes, cups, splashes.
//   - thermal: how long it holds; fog, ice, scoops, cheese, freezers, lamps.
//   - portion: who gets how much; shares, pieces, hero units, the record.
//
// The folder examples composes them. This package is the vocabulary they share:
//
//   - [Estimate] is a number with its 95 % band.
//   - [Moment] and [Window] are a time, and a time with its band, that may be never.
//   - [Optional] is a number that may be left out and may also be 0.
//   - [InputError], [RangeError], [RefusedError] are its errors: see [Cause], [In].
//   - [Finite], [Positive], [NotNegative] and [InRange] are the checks that return
//     them, for whoever implements an interface of the module.
//
// # Conventions
//
// Numbers are float64 in SI units, except temperatures in degrees Celsius (names
// ending in TempC or C) and masses in grams (names with Grams). Fractions are
// 0..1 unless the name says Percent. What cannot be never is a time.Duration.
// Every prediction that a user acts on carries a 95 % band. What is left out has
// a stated default or is refused. Outside a model's stated range there is an error
// that says which value, which limit and whose; nothing is clamped in silence.
//
// Types are plain values, safe to use from many goroutines at once. A call that
// evaluates a formula takes less than a microsecond and allocates nothing; one that
// integrates a course takes milliseconds; one that returns a band over uncertain
// inputs runs some hundreds of courses on all cores. From version 0.1.0 on names are
// stable within a minor version; numbers move when the evidence does.
//
// # The wire
//
// What a program would send or keep marshals to JSON and reads back equal: names in
// snake_case with the unit last, enumerations as words, a [Moment] in seconds (_s) with
// null for never, an [Optional] that is not given as null, a time.Duration in
// nanoseconds (_ns). What could not be read back refuses to be written.
//
// # Cautions
//
// These are estimates, not guarantees. Hot lamps, mains near liquids, dry ice,
// deep-frozen surfaces and glass under thermal shock injure people; food that
// was out under lights is not eaten; allergens and the law of advertising and of
// weights and measures are local. Follow local codes and licensed practice.
package honestplate

import (
	"bytes"
	"cmp"
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"
	"time"
	"unicode"
)

// An Estimate is a number with its 95 % band, Low <= Likely <= High; the doc comment of
// what returns it says where the band is from.
type Estimate struct {
	Low    float64 `json:"low"`
	Likely float64 `json:"likely"`
	High   float64 `json:"high"`
}

// Exactly returns v without a band.
func Exactly(v float64) Estimate { return Estimate{v, v, v} }

// Within returns v with a band of plus or minus the fraction rel of v.
func Within(v, rel float64) Estimate {
	d := math.Abs(v * rel)
	return Estimate{v - d, v, v + d}
}

// Factor returns v with a band from v/f to v*f, for what is known to a factor; a
// factor below 1 means its reciprocal.
func Factor(v, f float64) Estimate {
	a, b := v/f, v*f
	return Estimate{min(a, b), v, max(a, b)}
}

// Contains reports whether x lies in the band.
func (e Estimate) Contains(x float64) bool { return e.Low <= x && x <= e.High }

// Times returns the estimate multiplied by k; a negative k turns the band round.
func (e Estimate) Times(k float64) Estimate {
	a, b := e.Low*k, e.High*k
	return Estimate{min(a, b), e.Likely * k, max(a, b)}
}

// Check returns an [InputError] unless the three numbers are finite and in order.
func (e Estimate) Check(field string) error {
	err := cmp.Or(Finite(field+".Low", e.Low, ""), Finite(field+".Likely", e.Likely, ""), Finite(field+".High", e.High, ""))
	if err == nil && (e.Low > e.Likely || e.Likely > e.High) {
		return &InputError{field, e.String(), "a band in order: Low, Likely, High"}
	}
	return err
}

// String gives the number for people, with the digits that its band warrants:
// "9.0 (4.9..16.1)", or the number alone where it has no band.
func (e Estimate) String() string {
	if e.Low == e.High {
		return withUnit(e.Likely, "")
	}
	verb, digits := byte('g'), 3
	if d := 2 - int(math.Ceil(math.Log10((e.High-e.Low)/2))); d >= -3 && d <= 9 {
		verb, digits = 'f', max(d, 0)
	}
	text := func(v float64) string { return strconv.FormatFloat(v, verb, digits, 64) }
	return fmt.Sprintf("%s (%s..%s)", text(e.Likely), text(e.Low), text(e.High))
}

// UnmarshalJSON reads {"low":..,"likely":..,"high":..}; all three must be there, and
// in order.
func (e *Estimate) UnmarshalJSON(b []byte) error {
	var read Estimate
	err := readThree(b, [3]string{"low", "likely", "high"}, [3]any{&read.Low, &read.Likely, &read.High})
	if err := cmp.Or(err, read.Check("band")); err != nil {
		return err
	}
	*e = read
	return nil
}

// A Moment is a time counted from a start, or never. The zero value is the start
// itself. For a date ask [Moment.At] or [Moment.BackFrom]: never has none.
type Moment struct {
	After time.Duration // since the start; means nothing when Never
	Never bool          // it does not happen within the horizon of what was asked
}

// After returns the moment d after the start.
func After(d time.Duration) Moment { return Moment{After: d} }

// Never returns the moment that does not come.
func Never() Moment { return Moment{Never: true} }

// At returns the date of the moment for a start, and false for never.
func (m Moment) At(start time.Time) (time.Time, bool) {
	if m.Never {
		return time.Time{}, false
	}
	return start.Add(m.After), true
}

// BackFrom returns when to start for the moment to fall on end, and false for never.
func (m Moment) BackFrom(end time.Time) (time.Time, bool) {
	if m.Never {
		return time.Time{}, false
	}
	return end.Add(-m.After), true
}

// Before reports whether m comes before other; never comes last.
func (m Moment) Before(other Moment) bool {
	return !m.Never && (other.Never || m.After < other.After)
}

// Round returns the moment rounded as time.Duration.Round does; never stays.
func (m Moment) Round(to time.Duration) Moment { return Moment{m.After.Round(to), m.Never} }

// String gives min:s below an hour and h:min:s above, to the second, or "never".
func (m Moment) String() string {
	if m.Never {
		return "never"
	}
	s := int64(m.After.Round(time.Second) / time.Second)
	switch {
	case s < 0:
		return "-" + After(time.Duration(-s)*time.Second).String()
	case s < 3600:
		return fmt.Sprintf("%d:%02d", s/60, s%60)
	}
	return fmt.Sprintf("%d:%02d:%02d", s/3600, s/60%60, s%60)
}

// MarshalJSON writes seconds, to the nanosecond, or null for never.
func (m Moment) MarshalJSON() ([]byte, error) {
	if m.Never {
		return []byte("null"), nil
	}
	sign, n := "", uint64(m.After)
	if m.After < 0 {
		sign, n = "-", -n
	}
	text := fmt.Sprintf("%s%d.%09d", sign, n/1e9, n%1e9)
	return []byte(strings.TrimSuffix(strings.TrimRight(text, "0"), ".")), nil
}

// UnmarshalJSON reads what MarshalJSON writes: a number of seconds, rounded to the
// nanosecond, or null.
func (m *Moment) UnmarshalJSON(b []byte) error {
	text := string(bytes.TrimSpace(b))
	if text == "null" {
		*m = Never()
		return nil
	}
	// A decimal goes through time's own reader, so that every nanosecond comes back.
	d, err := time.ParseDuration(text + "s")
	if strings.ContainsAny(text, "eE") {
		var seconds float64
		seconds, err = strconv.ParseFloat(text, 64)
		d = time.Duration(math.Round(seconds * 1e9))
		if !(math.Abs(seconds) < 9.2e9) {
			err = ErrRange
		}
	}
	if err != nil {
		return &InputError{"time", text, "seconds, a number within 292 years, or null for never"}
	}
	*m = After(d)
	return nil
}

// A Window says when something happens, or how long it takes: a 95 % band from the
// earliest to the latest moment, and the likely one. Each may be never.
type Window struct {
	Earliest Moment `json:"earliest_s"`
	Likely   Moment `json:"likely_s"`
	Latest   Moment `json:"latest_s"`
}

// Lasting returns a window of three durations.
func Lasting(earliest, likely, latest time.Duration) Window {
	return Window{After(earliest), After(likely), After(latest)}
}

// MayHappen reports whether the event happens anywhere in the band.
func (w Window) MayHappen() bool { return !w.Earliest.Never }

// Round returns the window with each moment rounded: a band of minutes is not to be
// read in seconds.
func (w Window) Round(to time.Duration) Window {
	return Window{w.Earliest.Round(to), w.Likely.Round(to), w.Latest.Round(to)}
}

// Check returns an [InputError] unless the three moments are in order.
func (w Window) Check(field string) error {
	if w.Likely.Before(w.Earliest) || w.Latest.Before(w.Likely) {
		return &InputError{field, w.String(), "a band in order: Earliest, Likely, Latest"}
	}
	return nil
}

// String gives the window for people: "2:10 (1:30..3:05)", or "never" for what never
// happens.
func (w Window) String() string {
	if !w.MayHappen() || w.Earliest == w.Latest {
		return w.Likely.String()
	}
	return fmt.Sprintf("%s (%s..%s)", w.Likely, w.Earliest, w.Latest)
}

// UnmarshalJSON reads {"earliest_s":..,"likely_s":..,"latest_s":..}; all three must
// be there, null for never, and in order.
func (w *Window) UnmarshalJSON(b []byte) error {
	var read Window
	err := readThree(b, [3]string{"earliest_s", "likely_s", "latest_s"}, [3]any{&read.Earliest, &read.Likely, &read.Latest})
	if err := cmp.Or(err, read.Check("window")); err != nil {
		return err
	}
	*w = read
	return nil
}

// readThree reads a JSON object that has just the three members. A null for a number
// is refused: what is not there is not 0.
func readThree(b []byte, names [3]string, into [3]any) error {
	var members map[string]json.RawMessage
	if err := json.Unmarshal(b, &members); err != nil {
		return err
	}
	for i, name := range names {
		_, number := into[i].(*float64)
		m, ok := members[name]
		if !ok || number && string(m) == "null" || len(members) != len(names) {
			return &InputError{"band", string(b), "an object of just " + strings.Join(names[:], ", ")}
		} else if err := json.Unmarshal(m, into[i]); err != nil {
			return In(name, err)
		}
	}
	return nil
}

// An Optional is a number that may be left out and may also be 0, such as the
// temperature of a wall. The zero value is: not given.
type Optional struct {
	Value float64
	Given bool
}

// Some returns the Optional that is given, with the value v.
func Some(v float64) Optional { return Optional{v, true} }

// Or returns the value, or the default v where none is given.
func (o Optional) Or(v float64) float64 {
	if o.Given {
		return o.Value
	}
	return v
}

// IsZero reports that nothing is given, so that a field tagged omitzero stays away.
func (o Optional) IsZero() bool { return !o.Given }

// MarshalJSON writes the number, or null where none is given.
func (o Optional) MarshalJSON() ([]byte, error) {
	if !o.Given {
		return []byte("null"), nil
	}
	return json.Marshal(o.Value)
}

// UnmarshalJSON reads a number or null.
func (o *Optional) UnmarshalJSON(b []byte) error {
	var v *float64
	if err := json.Unmarshal(b, &v); err != nil {
		return err
	}
	*o = Optional{}
	if v != nil {
		*o = Some(*v)
	}
	return nil
}

// The kinds of error of the module, for errors.Is.
var (
	// ErrInput marks an input that makes no sense: not a number, negative where a
	// size is wanted, empty, contradictory.
	ErrInput = errors.New("honestplate: invalid input")
	// ErrRange marks a sensible input outside the stated range of a model.
	ErrRange = errors.New("honestplate: outside the model's range")
	// ErrAdvertised marks what may not be done with the advertised product.
	ErrAdvertised = errors.New("honestplate: the advertised product is shown as it is sold")
	// ErrInfeasible marks a wish that is proven to have no answer.
	ErrInfeasible = errors.New("honestplate: no answer meets all conditions")
	// ErrNoFlow marks a liquid that its yield stress holds where it is.
	ErrNoFlow = errors.New("honestplate: it does not flow")
)

// An InputError says which input makes no sense and what is wanted instead.
// errors.Is(err, [ErrInput]) holds.
type InputError struct {
	// Field is the path as a caller writes it, from the receiver: Thin.FatPercent of
	// a recipe. Arguments are written like fields: Air.RH, Lamps[2].Source, TempC.
	Field string
	Got   string // what was given, with its unit
	Want  string // what to give instead
}

// Error gives the field, what was given and what is wanted, on one line.
func (e *InputError) Error() string {
	return fmt.Sprintf("honestplate: %s is %s, want %s", OneLine(e.Field), OneLine(e.Got), OneLine(e.Want))
}

// Is reports that an InputError is an ErrInput.
func (e *InputError) Is(target error) bool { return target == ErrInput }

// A RangeError says which input left a model's range, the limits and whose limits
// they are. errors.Is(err, [ErrRange]) holds.
type RangeError struct {
	Field     string  // as in an InputError
	Value     float64 // as given; finite
	Low, High float64 // the range
	Unit      string  // of the value and the range; empty for a pure number
	Source    string  // whose range: author and year, or what stops the model there
}

// Error gives the field, its value, the limits and their source, on one line.
func (e *RangeError) Error() string {
	return fmt.Sprintf("honestplate: %s is %s, outside %.6g..%s (%s)", OneLine(e.Field),
		withUnit(e.Value, e.Unit), e.Low, withUnit(e.High, e.Unit), OneLine(e.Source))
}

// Is reports that a RangeError is an ErrRange.
func (e *RangeError) Is(target error) bool { return target == ErrRange }

// A RefusedError says no where the inputs are sound. errors.Is(err, e.Kind) holds.
type RefusedError struct {
	Field  string // what it hangs on, as in an InputError
	Kind   error  // [ErrAdvertised], [ErrInfeasible] or [ErrNoFlow]
	Reason string // what stands against it
	Advice string // what may be done instead
}

// Error gives the reason and what to do instead, on one line.
func (e *RefusedError) Error() string {
	text := fmt.Sprintf("honestplate: %s: %s", OneLine(e.Field), OneLine(e.Reason))
	if e.Advice != "" {
		text += "; " + OneLine(e.Advice)
	}
	return text
}

// Unwrap returns the kind.
func (e *RefusedError) Unwrap() error { return e.Kind }

// Cause returns the error of this vocabulary that err is or wraps: an *[InputError],
// a *[RangeError] or a *[RefusedError], for one type switch. What is none of them
// comes back as it is.
func Cause(err error) error {
	var input *InputError
	var outside *RangeError
	var refused *RefusedError
	switch {
	case errors.As(err, &input):
		return input
	case errors.As(err, &outside):
		return outside
	case errors.As(err, &refused):
		return refused
	}
	return err
}

// In returns err with the place put before its field: an error about RH in the input
// Air becomes one about Air.RH. Other errors come back wrapped with the place.
func In(place string, err error) error {
	switch e := err.(type) {
	case nil:
		return nil
	case *InputError:
		return &InputError{join(place, e.Field), e.Got, e.Want}
	case *RangeError:
		return &RangeError{join(place, e.Field), e.Value, e.Low, e.High, e.Unit, e.Source}
	case *RefusedError:
		return &RefusedError{join(place, e.Field), e.Kind, e.Reason, e.Advice}
	}
	return fmt.Errorf("%s: %w", OneLine(place), err)
}

func join(place, field string) string {
	if place == "" || field == "" || field[0] == '[' {
		return place + field
	}
	return place + "." + field
}

// Finite returns an [InputError] if v is NaN or infinite.
func Finite(field string, v float64, unit string) error {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return &InputError{field, withUnit(v, unit), "a finite number"}
	}
	return nil
}

// Positive returns an [InputError] unless v is finite and above zero.
func Positive(field string, v float64, unit string) error {
	if !(v > 0) || math.IsInf(v, 0) {
		return &InputError{field, withUnit(v, unit), "a finite number above 0"}
	}
	return nil
}

// NotNegative returns an [InputError] unless v is finite and at least zero.
func NotNegative(field string, v float64, unit string) error {
	if !(v >= 0) || math.IsInf(v, 0) {
		return &InputError{field, withUnit(v, unit), "a finite number, 0 or more"}
	}
	return nil
}

// InRange returns an [InputError] for a value that is not finite and a [RangeError]
// for one outside low..high, with the source of these limits.
func InRange(field string, v, low, high float64, unit, source string) error {
	if low <= v && v <= high && !math.IsInf(v, 0) {
		return nil // the usual case, quickly
	}
	if err := Finite(field, v, unit); err != nil {
		return err
	}
	return &RangeError{field, v, low, high, unit, source}
}

// withUnit gives a value for people; what is not a number is called so.
func withUnit(v float64, unit string) string {
	if math.IsNaN(v) {
		return "not a number"
	}
	return strings.TrimSuffix(strconv.FormatFloat(v, 'g', 6, 64)+" "+OneLine(unit), " ")
}

// OneLine returns the text with control characters, line ends and bidirectional
// controls as spaces: a name that a user chose neither breaks a message nor turns it.
func OneLine(text string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsControl(r) || unicode.In(r, unicode.Zl, unicode.Zp, unicode.Bidi_Control) {
			return ' '
		}
		return r
	}, text)
}
