package shoot

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"example.org/honestplate"
)

// small is a brief of a day with dishes whose pictures last so many minutes.
func small(minutes ...float64) (*Brief, []*job) {
	b := &Brief{Days: []Day{{Date: Date{2026, 10, 14}, Call: TimeOfDay{8 * 60}, FirstShot: TimeOfDay{10 * 60}, Wrap: TimeOfDay{18 * 60}}}}
	var jobs []*job
	for i, m := range minutes {
		b.Dishes = append(b.Dishes, Dish{Name: fmt.Sprint("dish ", i), SlotMinutes: 30})
		p := Picture{Sure: true, To: honestplate.After(time.Duration(m * float64(time.Minute)))}
		if m < 0 {
			p = Picture{Always: true}
		}
		jobs = append(jobs, &job{shot: Shot{Dish: b.Dishes[i].Name, Picture: p}})
	}
	for i := range jobs {
		jobs[i].dish = &b.Dishes[i]
	}
	return b, jobs
}

func names(jobs []*job) string {
	var out []string
	for _, j := range jobs {
		out = append(out, strings.TrimPrefix(j.dish.Name, "dish "))
	}
	return strings.Join(out, " ")
}

func TestWhatHoldsLongestComesFirst(t *testing.T) {
	b, jobs := small(5, -1, 20, 5)
	b.order(jobs)
	if got := names(jobs); got != "1 2 0 3" {
		t.Errorf("order is %s", got)
	}
}

func TestABriefOverrulesTheOrder(t *testing.T) {
	b, jobs := small(5, -1, 20, 5)
	b.Order = "fixed"
	b.order(jobs)
	if got := names(jobs); got != "0 1 2 3" {
		t.Errorf("fixed order is %s", got)
	}
	b, jobs = small(5, -1, 20, 5)
	b.Dishes[3].Order, b.Dishes[1].Order = 1, 9
	b.order(jobs)
	if got := names(jobs); got != "3 2 0 1" {
		t.Errorf("with places wanted the order is %s", got)
	}
}

func TestSlotsKeepLunchChangeoverAndWrap(t *testing.T) {
	b, jobs := small(9, 8, 7, 6)
	b.Days[0].Lunch, b.Days[0].LunchMinutes = TimeOfDay{11 * 60}, 60
	b.Days[0].Wrap = TimeOfDay{13 * 60}
	days := b.days(time.UTC)
	b.place(jobs, days, time.Time{})
	var at []string
	for _, j := range jobs {
		at = append(at, j.shot.At.Format("15:04"))
	}
	// 10:40 to 11:10 would run into lunch; 13:20 would pass the wrap, and there is no other day.
	if got := strings.Join(at, " "); got != "10:00 12:00 12:40 13:20" {
		t.Errorf("slots at %s", got)
	}
	if n := jobs[3].shot.Notes; len(n) != 1 || n[0].Code != Overtime || n[0].Value.Value != 50 {
		t.Errorf("notes %v", n)
	}
	if n := jobs[2].shot.Notes; len(n) != 1 || n[0].Value.Value != 10 {
		t.Errorf("notes %v", n)
	}
}

func TestASecondDayTakesWhatTheFirstCannot(t *testing.T) {
	b, jobs := small(9, 8, 7)
	b.Days[0].Wrap = TimeOfDay{11 * 60}
	b.Days = append(b.Days, Day{Date: Date{2026, 10, 15}, Call: TimeOfDay{9 * 60}, FirstShot: TimeOfDay{9*60 + 30}, Wrap: TimeOfDay{17 * 60}})
	b.Dishes[0].Day = 2
	days := b.days(time.UTC)
	b.place(jobs, days, time.Time{})
	got := ""
	for _, j := range jobs {
		got += fmt.Sprintf("%s:%d ", strings.TrimPrefix(j.dish.Name, "dish "), j.shot.Day)
	}
	if got != "1:0 0:1 2:1 " {
		t.Errorf("days are %s", got)
	}
}

func TestClockChangesAreMarked(t *testing.T) {
	b, _ := small()
	b.Days[0].Date = Date{2026, 10, 25}
	zone, err := Place{TimeZone: "Europe/Vienna"}.zone()
	if err != nil {
		t.Fatal(err)
	}
	if d := b.days(zone)[0]; d.Shift != -time.Hour || d.Call.Format("15:04 -0700") != "08:00 +0100" {
		t.Errorf("shift %v, call %v", d.Shift, d.Call)
	}
	b.Days[0].Date = Date{2026, 10, 26}
	if d := b.days(zone)[0]; d.Shift != 0 {
		t.Errorf("shift %v on the day after", d.Shift)
	}
}

func TestTasksEndInTimeAndHandsDoOneThingAtOnce(t *testing.T) {
	b, jobs := small(9, 8, 7)
	b.Hands = 2
	for _, j := range jobs {
		for k := range 3 {
			j.drafts = append(j.drafts, draft{task: Task{What: OwnStep, Text: fmt.Sprint(j.dish.Name, k), Units: 1},
				ahead: time.Duration(k*7) * time.Minute, lasts: 25 * time.Minute, hands: k != 1})
		}
	}
	days := b.days(time.UTC)
	b.place(jobs, days, time.Time{})
	tasks, _ := b.tasksOf(jobs, days, time.Time{})
	if len(tasks) != 9 {
		t.Fatalf("%d tasks", len(tasks))
	}
	for i, x := range tasks {
		for _, j := range jobs {
			if j.shot.Number == x.Shot && x.End.After(j.shot.At) {
				t.Errorf("%s ends after its shot", x.Text)
			}
		}
		if x.End.Sub(x.Start) != 25*time.Minute {
			t.Errorf("%s takes %v", x.Text, x.End.Sub(x.Start))
		}
		for _, y := range tasks[:i] {
			if x.Hand > 0 && x.Hand == y.Hand && x.Start.Before(y.End) && y.Start.Before(x.End) {
				t.Errorf("hand %d does %s and %s at once", x.Hand, x.Text, y.Text)
			}
		}
	}
}

func TestAStoreThatIsTooSmallIsTold(t *testing.T) {
	b, jobs := small(9)
	b.Freezers = []Store{{Name: "deep", TempC: -38, Units: 5}}
	jobs[0].drafts = []draft{{task: Task{What: Harden, Units: 8, Store: "deep"}, ahead: time.Minute, lasts: 2 * time.Hour}}
	days := b.days(time.UTC)
	b.place(jobs, days, time.Time{})
	tasks, _ := b.tasksOf(jobs, days, time.Time{})
	tasks, notes := b.stores(tasks, jobs, days, time.Time{})
	if len(notes) != 1 || notes[0].Code != StoreFull || notes[0].Value.Value != 8 {
		t.Errorf("notes %v", notes)
	}
	if len(tasks) != 3 || tasks[0].What != SwitchOn || tasks[1].What != Verify || tasks[1].Start.Format("02 15:04") != "13 18:00" || !tasks[0].End.Before(tasks[1].End) {
		t.Errorf("tasks %v", tasks)
	}
}
