package shoot

import (
	"fmt"
	"time"
	_ "time/tzdata" // zones must not hang on the machine

	"example.org/honestplate"
)

// A Date is a calendar date, 2026-10-14 in a file.
type Date struct {
	Year  int
	Month time.Month
	Day   int
}

// UnmarshalText reads year-month-day.
func (d *Date) UnmarshalText(b []byte) error {
	t, err := time.Parse(time.DateOnly, string(b))
	if err != nil {
		return &honestplate.InputError{Got: fmt.Sprintf("%q", b), Want: "a date as year-month-day, such as 2026-10-14"}
	}
	d.Year, d.Month, d.Day = t.Date()
	return nil
}

// MarshalText writes year-month-day.
func (d Date) MarshalText() ([]byte, error) {
	return fmt.Appendf(nil, "%04d-%02d-%02d", d.Year, d.Month, d.Day), nil
}

// JSONSchema describes the date.
func (Date) JSONSchema() map[string]any {
	return map[string]any{"type": "string", "format": "date", "pattern": `^[0-9]{4}-[0-9]{2}-[0-9]{2}$`}
}

// A TimeOfDay is a time on the wall clock of the place, 08:30 in a file. The zero value
// is not given: midnight is 24:00.
type TimeOfDay struct{ Minutes int }

// UnmarshalText reads hours:minutes, 00:01 to 24:00.
func (t *TimeOfDay) UnmarshalText(b []byte) error {
	var h, m int
	if n, err := fmt.Sscanf(string(b), "%d:%d", &h, &m); n != 2 || err != nil || len(b) != 5 || b[2] != ':' ||
		h < 0 || m < 0 || m > 59 || h*60+m > 24*60 {
		return &honestplate.InputError{Got: fmt.Sprintf("%q", b), Want: "a time as hours:minutes, such as 08:30"}
	}
	t.Minutes = h*60 + m
	if t.Minutes == 0 {
		t.Minutes = 24 * 60
	}
	return nil
}

// MarshalText writes hours:minutes.
func (t TimeOfDay) MarshalText() ([]byte, error) { return []byte(t.String()), nil }

// String gives hours:minutes.
func (t TimeOfDay) String() string { return fmt.Sprintf("%02d:%02d", t.Minutes/60, t.Minutes%60) }

// IsZero reports that no time is given.
func (t TimeOfDay) IsZero() bool { return t.Minutes == 0 }

// JSONSchema describes the time.
func (TimeOfDay) JSONSchema() map[string]any {
	return map[string]any{"type": "string", "pattern": "^([01][0-9]|2[0-4]):[0-5][0-9]$"}
}

// on is the instant of a time of day on a date. Midnight, 24:00, ends the date. Where the
// clocks change, time.Date decides; [Day] marks such days in the plan.
func (t TimeOfDay) on(d Date, zone *time.Location) time.Time {
	return time.Date(d.Year, d.Month, d.Day, t.Minutes/60, t.Minutes%60, 0, 0, zone)
}

// zone is the place's time zone.
func (p Place) zone() (*time.Location, error) {
	if p.TimeZone == "" {
		return time.UTC, nil
	}
	if p.TimeZone == "Local" {
		return nil, &honestplate.InputError{Field: "place.time_zone", Got: "Local", Want: "an IANA name such as Europe/Vienna"}
	}
	zone, err := time.LoadLocation(p.TimeZone)
	if err != nil {
		return nil, &honestplate.InputError{Field: "place.time_zone", Got: fmt.Sprintf("%q", p.TimeZone), Want: "an IANA name such as Europe/Vienna"}
	}
	return zone, nil
}

// at is the instant of a time of the day. A night's shoot goes on past midnight: what is
// earlier than the call is on the next date.
func (d Day) at(t TimeOfDay, zone *time.Location) time.Time {
	date := d.Date
	if t.Minutes < d.Call.Minutes {
		date.Day++
	}
	return t.on(date, zone)
}
