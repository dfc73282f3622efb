package main

import (
	"bytes"
	"encoding/json"
	"encoding/xml"
	"fmt"
	"html"
	"io"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"sync"
	"testing"
	"time"
	"unicode"
	"unicode/utf8"

	"example.org/honestplate"
	"example.org/honestplate/examples/shoot"
	"example.org/honestplate/portion/record"
)

// plans are the invented days, planned once.
var plans = sync.OnceValues(func() (map[string]*shoot.Plan, error) {
	out := map[string]*shoot.Plan{}
	for _, day := range []string{"autumn", "coast", "motion"} {
		p, err := planOf(day, "", "")
		if err != nil {
			return nil, fmt.Errorf("%s: %w", day, err)
		}
		out[day] = p
	}
	return out, nil
})

func demoPlans(t *testing.T) map[string]*shoot.Plan {
	t.Helper()
	p, err := plans()
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func demoFiles(t *testing.T) map[string][]byte {
	t.Helper()
	files, err := filesOf(demoPlans(t)["autumn"])
	if err != nil {
		t.Fatal(err)
	}
	return files
}

func textOf(t *testing.T, p *shoot.Plan) string {
	t.Helper()
	var b bytes.Buffer
	if err := newSheet(p).writeText(&b); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

func TestTheSheetFitsATerminal(t *testing.T) {
	for day, p := range demoPlans(t) {
		for line := range strings.Lines(textOf(t, p)) {
			if n := utf8.RuneCountInString(strings.TrimRight(line, "\n")); n > columns {
				t.Errorf("%s: %d columns: %s", day, n, line)
			}
		}
	}
}

// wrong is what no page and no line of the terminal may say: a laboratory's units, codes,
// and sentences that cancel themselves.
var wrong = regexp.MustCompile(`mPa|[0-9] C\b|degC|\bdeg\b|[0-9]-[0-9]+ °C| -[0-9]+ °C|1 pieces|\bLoS\b|laminar|optimum|percentile|\bsigma\b|model leaves|decided by|Pa s|W/m|Reynolds|Weber|inertia|criteri|NaN|Inf\b|%!|never until|until never|from never|for the other 0|weigh 0 more| 0 more|1 good takes` +
	`|[0-9] (K|Pa|kPa|W|J|N|kJ|m/s|1/s|m2|m3|mol|Hz|lux|lx|kg/m|g/m|mL/s|cP|cSt|St)\b|W/\(|m²|m³|s⁻|viscosit|irradian|emissiv|conducti|absorptan|heat transfer|convection|coefficient|lognormal|quantile`)

// readable is what somebody reads of a file: the page's script and its data are not, but
// for the words that it shows.
func readable(t *testing.T, name string, data []byte) string {
	t.Helper()
	if name != "set.html" {
		return string(data)
	}
	page, _, _ := strings.Cut(string(data), `<script type="application/json"`)
	for _, s := range island(t, data).Shots {
		page += fmt.Sprintln(s.When, s.Dish, s.Do, s.More, s.Start, s.Cautions, s.Cups)
		for _, e := range s.Events {
			page += e.Words + "\n"
		}
	}
	return page
}

// What people read, of the morning and of a day that has begun, speaks the trade's language.
func TestPagesSpeakTheTradesLanguage(t *testing.T) {
	all := maps.Clone(demoPlans(t))
	facts := t.TempDir() + "/facts.json"
	if err := os.WriteFile(facts, []byte(`{"now": "2026-10-14T10:45:00+02:00", "room": {"temp_c": 25, "rh_percent": 55},
		"cups": [{"dish": "Spiced oat bowl", "thing": "poured milk", "cup": "ISO 2431, 3 mm", "temp_c": 7, "seconds": [36]}],
		"takes": [{"dish": "Filled plums", "unit": 1, "good": true}], "weights": [{"dish": "Spiced oat bowl", "thing": "oat porridge", "unit": 1, "grams": 251}]}`), 0o600); err != nil {
		t.Fatal(err)
	}
	begun, err := planOf("autumn", "", facts)
	if err != nil {
		t.Fatal(err)
	}
	all["begun"] = begun
	for day, p := range all {
		files, err := filesOf(p)
		if err != nil {
			t.Fatal(err)
		}
		files["terminal"] = []byte(textOf(t, p))
		for name, data := range files {
			if strings.HasSuffix(name, ".json") {
				continue
			}
			text := readable(t, name, data)
			if m := wrong.FindString(text); m != "" {
				i := strings.Index(text, m)
				t.Errorf("%s, %s: %q in %.120q", day, name, m, text[max(i-60, 0):])
			}
		}
	}
}

// Every code of a plan has words, and they are the trade's: none is printed as it is.
func TestEveryCodeHasWords(t *testing.T) {
	for _, of := range []struct {
		kind string
		word func(code string) string
	}{
		{"NoteCode", func(code string) string {
			return note(shoot.Note{Code: shoot.NoteCode(code), Thing: "sorbet", Value: honestplate.Some(3), Second: honestplate.Some(0.5), Text: "freezer"})
		}},
		{"Caution", func(code string) string { return cautionWords[shoot.Caution(code)] }},
		{"Remedy", func(code string) string { return remedyWords[shoot.Remedy(code)] }},
	} {
		codes := constants(t, of.kind)
		if len(codes) < 5 {
			t.Fatalf("%d constants of %s", len(codes), of.kind)
		}
		for _, code := range codes {
			if text := of.word(code); text == "" || text == code && of.kind == "NoteCode" || wrong.MatchString(text) {
				t.Errorf("%s %q is said as %q", of.kind, code, text)
			}
		}
	}
	for input, text := range reasonWords {
		if wrong.MatchString(text) {
			t.Errorf("%q is said as %q", input, text)
		}
	}
}

// constants lists the values of a type of package shoot, as its source has them.
func constants(t *testing.T, of string) (out []string) {
	t.Helper()
	names, err := filepath.Glob("../shoot/*.go")
	if err != nil || len(names) == 0 {
		t.Fatalf("no source of package shoot: %v", err)
	}
	line := regexp.MustCompile(`^\s+\w+\s+` + of + `\s+= "([^"]+)"`)
	for _, name := range names {
		data, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		for l := range strings.Lines(string(data)) {
			if m := line.FindStringSubmatch(l); m != nil {
				out = append(out, m[1])
			}
		}
	}
	return out
}

// Every file that is written is read back, by the library where it is the library's.
func TestEveryFileIsReadBack(t *testing.T) {
	for day, p := range demoPlans(t) {
		files, err := filesOf(p)
		if err != nil {
			t.Fatal(err)
		}
		records := 0
		for name, data := range files {
			switch {
			case isRecord(name):
				r, err := record.Read(bytes.NewReader(data))
				if err != nil {
					t.Errorf("%s, %s: %v", day, name, err)
				}
				if filledIn(data) {
					t.Errorf("%s, %s: a new record counts as filled in", day, name)
				}
				records++
				_ = r
			case name == "plan.json":
				var back shoot.Plan
				if err := json.Unmarshal(data, &back); err != nil {
					t.Fatal(err)
				}
				again, err := json.MarshalIndent(&back, "", "  ")
				if err != nil || !bytes.Equal(append(again, '\n'), data) {
					t.Errorf("%s: the plan does not come back: %v", day, err)
				}
			case strings.HasSuffix(name, ".svg"):
				wellFormed(t, name, data)
			case name == "set.html":
				island(t, data)
			}
		}
		if records != len(p.Shots) {
			t.Errorf("%s: %d records for %d pictures", day, records, len(p.Shots))
		}
	}
}

func wellFormed(t *testing.T, name string, data []byte) {
	t.Helper()
	d := xml.NewDecoder(bytes.NewReader(data))
	for {
		if _, err := d.Token(); err == io.EOF {
			return
		} else if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
	}
}

// island reads the plan inside the page for the set.
func island(t *testing.T, page []byte) (data struct {
	Title string
	Shots []setShot
}) {
	t.Helper()
	_, rest, ok := bytes.Cut(page, []byte(`<script type="application/json" id="plan">`))
	text, _, closed := bytes.Cut(rest, []byte("</script>"))
	if !ok || !closed {
		t.Fatal("no plan in the page")
	}
	if err := json.Unmarshal(text, &data); err != nil {
		t.Fatal(err)
	}
	return data
}

// Names in any script, and markup in them, survive as text everywhere.
func TestHostileNamesSurviveAsText(t *testing.T) {
	names := []string{
		`</script><script>alert(1)</script>`, `<img src=x onerror=alert(1)>`, `a & b "c" 'd'`, `[click](https://example.invalid) *em* _u_ ~~~`,
		"`code` | pipe | # head", "\u202egnp.exe", "日本語の名前 とても長いものです", "اسم عربي", "\ufffe\uffff\u0001", "https://example.invalid/x www.example.invalid",
		"1. list", "- item", "e\u0301e\u0301 ไก่ย่าง", strings.Repeat("食", 166), "\u2028\u0085\u009b2J", "שלום (עולם)", "\\[x](y) \\*z\\*", "{{.}} ${x} %d %s", strings.Repeat("long ", 80),
	}
	source := demoPlans(t)["autumn"]
	for _, name := range names {
		text, err := json.Marshal(source)
		if err != nil {
			t.Fatal(err)
		}
		var p shoot.Plan
		if err := json.Unmarshal(text, &p); err != nil {
			t.Fatal(err)
		}
		p.Title, p.Client, p.About = name, name, name
		for i := range p.Shots {
			p.Shots[i].Dish, p.Shots[i].About, p.Shots[i].Allergens = name, name, []string{name}
			for k := range p.Shots[i].Things {
				p.Shots[i].Things[k].Name = fmt.Sprint(name, k)
			}
		}
		for i := range p.Tasks {
			p.Tasks[i].Thing, p.Tasks[i].Text, p.Tasks[i].Who = name, name, name
		}
		clean := strings.ContainsAny(name, "\u202e\ufffe\u0001\u2028") // of which not every letter stays
		files, err := filesOf(&p)
		if err != nil {
			t.Errorf("%q: %v", name, err)
			continue
		}
		for file, data := range files {
			switch {
			case isRecord(file):
				if _, err := record.Read(bytes.NewReader(data)); err != nil {
					t.Errorf("%q: %s: %v", name, file, err)
				}
			case strings.HasSuffix(file, ".svg"):
				wellFormed(t, file, data)
			case file == "print.html" || file == "set.html":
				body := data
				if file == "set.html" {
					body, _, _ = bytes.Cut(data, []byte("<script>"))
					for i, s := range island(t, data).Shots {
						if !strings.Contains(s.Dish, strings.TrimSpace(name)[:min(3, len(strings.TrimSpace(name)))]) && !clean {
							t.Errorf("%q: shot %d is %q", name, i, s.Dish)
						}
					}
				}
				if bytes.Contains(body, []byte("alert(1)</script>")) || bytes.Contains(body, []byte("<img")) {
					t.Errorf("%q: markup stays alive in %s", name, file)
				}
			case file == "callsheet.md":
				for _, bad := range []string{"<script", "<img", "](https", " *em*", "\u202e", " ~~~", "\x01"} {
					if strings.Contains(strings.ReplaceAll(string(data), `\`+strings.TrimSpace(bad), ""), bad) {
						t.Errorf("%q: %q stays alive in Markdown", name, bad)
					}
				}
			}
		}
		out := textOf(t, &p)
		if strings.ContainsAny(out, "\u202e\x1b\x01") {
			t.Errorf("%q: controls reach the terminal", name)
		}
		if utf8.RuneCountInString(name) < 50 {
			survives(t, name, files, out)
		}
	}
}

// survives wants a name to be read, letter by letter, in what every kind of page shows.
func survives(t *testing.T, name string, files map[string][]byte, terminal string) {
	t.Helper()
	one := func(text string) string { return strings.Join(strings.Fields(text), " ") }
	want := one(honestplate.OneLine(name))
	var chart strings.Builder
	for d := xml.NewDecoder(bytes.NewReader(files["day.svg"])); ; {
		token, err := d.Token()
		if err != nil {
			break
		}
		if text, ok := token.(xml.CharData); ok {
			chart.Write(text)
		}
	}
	forXML := strings.Map(func(r rune) rune { // what XML has no place for
		if r == 0xfffe || r == 0xffff {
			return utf8.RuneError
		}
		return r
	}, want)
	var plan struct{ Title string }
	if err := json.Unmarshal(files["plan.json"], &plan); err != nil || plan.Title != name {
		t.Errorf("%q is %q in the plan: %v", name, plan.Title, err)
	}
	_, page, _ := strings.Cut(string(files["print.html"]), "<h1>")
	page, _, _ = strings.Cut(page, "</h1>")
	mark, _, _ := strings.Cut(string(files["callsheet.md"]), "\n")
	unescaped := regexp.MustCompile(`\\([[:punct:]])`).ReplaceAllString(strings.TrimPrefix(mark, "# "), "$1")
	for where, text := range map[string]string{"the terminal": terminal, "print.html": honestplate.OneLine(html.UnescapeString(page)), "callsheet.md": unescaped, "set.html": honestplate.OneLine(island(t, files["set.html"]).Title)} {
		if !strings.Contains(one(text), want) {
			t.Errorf("%q is not in %s: %.200q", want, where, one(text))
		}
	}
	if !strings.Contains(one(chart.String()), forXML) {
		t.Errorf("%q is not in the chart: %.300q", forXML, one(chart.String()))
	}
}

// A wide script takes two columns a letter: a table with such names keeps its columns.
func TestColumnsHoldForWideScripts(t *testing.T) {
	rows := table([]string{"time", "picture", "units"}, [][]string{{"10:00", "日本語の名前", "5"}, {"11:00", "ไก่ย่าง", "12"}, {"12:00", strings.Repeat("食", 166), "3"}, {"13:00", strings.Repeat("é", 300), "3"}})
	last := cells(rows[0][:strings.Index(rows[0], "units")])
	for _, r := range rows {
		if n := cells(strings.TrimRight(r, " ")); n > columns {
			t.Errorf("%d columns: %s", n, r)
		}
		for _, n := range []string{"5", "12", "3"} {
			if at := strings.LastIndex(strings.TrimRight(r, " "), "  "+n); at > 0 && cells(r[:at+2]) != last {
				t.Errorf("%s stands at column %d, want %d: %s", n, cells(r[:at+2]), last, r)
			}
		}
	}
}

func TestTheProgramSaysWhatIsWrong(t *testing.T) {
	for _, c := range []struct {
		args   []string
		status int
		want   string
	}{
		{[]string{"-day", "winter"}, 2, `there is no invented day "winter": autumn, coast, motion`},
		{[]string{"-day", "../x"}, 2, `there is no invented day "../x": autumn, coast, motion`},
		{[]string{"left over"}, 2, `"left over" is left over: see -help`},
		{[]string{"-brief", "does-not-exist.json"}, 1, "open does-not-exist.json: no such file or directory"},
		{[]string{"-brief", "main.go"}, 2, ""},
	} {
		var out, errOut bytes.Buffer
		if status := run(c.args, &out, &errOut); status != c.status || out.Len() > 0 || c.want != "" && errOut.String() != "callsheet: "+c.want+"\n" {
			t.Errorf("%v: status %d, %q", c.args, status, errOut.String())
		}
	}
}

// Nothing is told twice: within a picture's part no line repeats another, and an event
// of a thing is named once.
func TestNothingIsToldTwice(t *testing.T) {
	for day, p := range demoPlans(t) {
		for _, pg := range pages(p) {
			seen := map[string]bool{}
			for _, l := range dishBlock(pg).Lines {
				if seen[l.Text] {
					t.Errorf("%s, %s: %q twice", day, pg.Dish, l.Text)
				}
				seen[l.Text] = true
			}
			for i := range pg.Shot.Things {
				for _, e := range pg.Shot.Things[i].Events {
					n := 0
					for _, l := range pg.Windows {
						name := pg.Shot.Things[i].Name
						n += strings.Count(l.Text, event(e.Key)+" of "+name)
						if strings.HasPrefix(l.Text, name) {
							n += strings.Count(l.Text, event(e.Key)+" "+window(e.When))
						}
					}
					if n > 1 || n == 0 && e.When.MayHappen() {
						t.Errorf("%s, %s: %s is told %d times", day, pg.Dish, event(e.Key), n)
					}
				}
			}
		}
		seen := map[string]bool{}
		for _, i := range attention(p).items() {
			if seen[i] {
				t.Errorf("%s: %q twice", day, i)
			}
			seen[i] = true
		}
	}
}

func (b *block) items() []string {
	if b == nil {
		return nil
	}
	return b.Items
}

// A row of the day is one line on a terminal, so that the day is read at a glance.
func TestTheDayIsScannable(t *testing.T) {
	for day, p := range demoPlans(t) {
		b := dayTable(p)
		if got := len(table(b.Head, b.Rows)); got != len(b.Rows)+1 {
			t.Errorf("%s: %d lines for %d rows", day, got, len(b.Rows))
		}
		text := textOf(t, p)
		if strings.Index(text, "THE DAY") > 2500 {
			t.Errorf("%s: the day begins too late", day)
		}
	}
}

// Once the day has begun, what to do in the next minutes comes first.
func TestNowComesFirst(t *testing.T) {
	facts := t.TempDir() + "/facts.json"
	if err := os.WriteFile(facts, []byte(`{"now": "2026-10-14T09:02:00+02:00"}`), 0o600); err != nil {
		t.Fatal(err)
	}
	p, err := planOf("autumn", "", facts)
	if err != nil {
		t.Fatal(err)
	}
	s := newSheet(p)
	if s.Blocks[0].Title != "Now, 09:02" || len(s.Blocks[0].Items) == 0 {
		t.Errorf("first comes %+v", s.Blocks[0])
	}
	p.Shots[0].Done = true
	var text bytes.Buffer
	if err := newSheet(p).writeText(&text); err != nil || strings.Contains(text.String(), "1 Jan") || strings.Contains(text.String(), "1 FILLED PLUMS") {
		t.Errorf("what is done takes room on the sheet: %v", err)
	}
	p.Shots[0].Done = false
	p.Next = nil
	if b := now(p); len(b.Items) != 1 || !strings.HasPrefix(b.Items[0], "nothing begins in the next 20 minutes; next is 1 ") {
		t.Errorf("%+v", b)
	}
}

// What was noted on the set is on the page of its picture, with unit and time where they
// are known; a note about a picture that there is not is refused by its field.
func TestNotesOfTheSetAreOnThePage(t *testing.T) {
	write := func(dish string) string {
		file := t.TempDir() + "/facts.json"
		text := fmt.Sprintf(`{"now": "2026-10-14T09:02:00+02:00", "notes": [{"dish": %q, "unit": 2, "at": "2026-10-14T08:31:00+02:00", "text": "lower, from the left"}, {"dish": %q, "text": "less light"}]}`, dish, dish)
		if err := os.WriteFile(file, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
		return file
	}
	p, err := planOf("autumn", "", write("Brown-butter scoop"))
	if err != nil {
		t.Fatal(err)
	}
	files, err := filesOf(p)
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"08:31, unit 2: lower, from the left", "less light"} {
		for name, text := range map[string]string{"terminal": textOf(t, p), "print.html": string(files["print.html"]), "set.html": string(files["set.html"]), "callsheet.md": string(files["callsheet.md"])} {
			if !strings.Contains(text, want) {
				t.Errorf("%s does not say %q", name, want)
			}
		}
	}
	if _, err := planOf("autumn", "", write("Soup")); err == nil || !strings.Contains(err.Error(), "facts.notes[0].dish") {
		t.Errorf("a note about a picture that there is not: %v", err)
	}
}

// Before the button stand at most four lines, and what a pour takes is on its page.
func TestAPourCanBeRepeatedFromItsPage(t *testing.T) {
	for day, p := range demoPlans(t) {
		files, err := filesOf(p)
		if err != nil {
			t.Fatal(err)
		}
		for _, s := range island(t, files["set.html"]).Shots {
			if len(s.Do) == 0 || len(s.Do) > mostDo {
				t.Errorf("%s, %s: %d lines to read with a unit waiting", day, s.Dish, len(s.Do))
			}
		}
		for i := range p.Shots {
			s := &p.Shots[i]
			for k := range s.Things {
				t2 := &s.Things[k]
				var want []string
				if q := t2.Pour; q != nil {
					want = []string{outlet(q.Outlet), height(q.DropMM), degrees(q.TempC) + " °C", two(q.HeadMM) + " mm of liquid"}
				}
				if q := t2.Coil; q != nil {
					want = []string{outlet(q.Outlet), height(q.DropMM), degrees(q.TempC) + " °C", two(q.HeadMM) + " mm of liquid"}
				}
				text := fmt.Sprint(pageOf(p, s).Work)
				for _, w := range want {
					if !strings.Contains(text, w) {
						t.Errorf("%s, %s: %q is not on the page", day, s.Dish, w)
					}
				}
				if (t2.Pour != nil || t2.Coil != nil || t2.Build != nil) && benchDrawing(s) == nil {
					t.Errorf("%s, %s: nothing drawn", day, s.Dish)
				}
			}
		}
	}
}

// In the chart no bar with its text covers another of its row.
func TestTheChartsTextsDoNotOverlap(t *testing.T) {
	x := func(at time.Time) float64 { return laneNames + at.Sub(time.Unix(0, 0)).Minutes() }
	at := func(m int) time.Time { return time.Unix(0, 0).Add(time.Duration(m) * time.Minute) }
	bars := []bar{{at(0), at(10), "a long text of a short task", "work"}, {at(20), at(40), "another", "work"}, {at(300), at(310), strings.Repeat("食", 80), "work"}, {at(900), at(960), "at the end of the day, with much to say", "store"}, {at(905), at(906), "and one more", "store"}}
	rows, n := rowsOf(bars, x)
	if n < 2 {
		t.Fatalf("%v", rows)
	}
	for i := range bars {
		from, to := reach(bars[i], x)
		if to > chartWidth+mostText || from < 0 {
			t.Errorf("bar %d goes from %g to %g", i, from, to)
		}
		for j := range i {
			f, u := reach(bars[j], x)
			if rows[i] == rows[j] && f < to && from < u {
				t.Errorf("bars %d and %d cover each other", i, j)
			}
		}
	}
}

// Long names are cut at letters, never between a letter and its marks.
func TestTextsAreCutAtLetters(t *testing.T) {
	for _, s := range []string{strings.Repeat("e\u0301", 50), strings.Repeat("食", 50), "short", "", strings.Repeat("ไก่", 40), "a\xffb" + strings.Repeat("x", 90)} {
		got := cutTo(s, 80, 11)
		if widthOf(got, 11) > 80+11 || !utf8.ValidString(strings.ToValidUTF8(got, "")) {
			t.Errorf("%q: %q is %g wide", s, got, widthOf(got, 11))
		}
		if cut, ok := strings.CutSuffix(got, "…"); ok {
			if !strings.HasPrefix(s, cut) {
				t.Errorf("%q is cut to %q", s, got)
			}
			if r, _ := utf8.DecodeRuneInString(s[len(cut):]); unicode.In(r, unicode.Mn) {
				t.Errorf("%q is cut before a mark", got)
			}
		} else if got != s {
			t.Errorf("%q became %q", s, got)
		}
	}
}
