package main

import (
	"bytes"
	"encoding/json"
	"encoding/xml"
	"fmt"
	"io"
	"regexp"
	"strings"
	"sync"
	"testing"
	"unicode/utf8"

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

// What people read has no laboratory's units, no codes and no sentence that cancels itself.
func TestPagesSpeakTheTradesLanguage(t *testing.T) {
	wrong := regexp.MustCompile(`mPa|Pa s|W/m|Reynolds|Weber|inertia|criteri|NaN|Inf\b|%!|never until|until never|from never|for the other 0|weigh 0 more| 0 more|1 good takes`)
	for day, p := range demoPlans(t) {
		files, err := filesOf(p)
		if err != nil {
			t.Fatal(err)
		}
		for name, data := range files {
			if strings.HasSuffix(name, ".json") {
				continue
			}
			text := string(data)
			if name == "set.html" {
				text, _, _ = strings.Cut(text, "<script>")
			}
			if m := wrong.FindString(text); m != "" {
				i := strings.Index(text, m)
				t.Errorf("%s, %s: %q in %.120q", day, name, m, text[max(i-60, 0):])
			}
		}
	}
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
		"1. list", "- item", "\\[x](y) \\*z\\*", "{{.}} ${x} %d %s", strings.Repeat("long ", 80),
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
		clean := strings.ContainsAny(name, "\u202e\ufffe\u0001") // the record refuses what is no text
		if clean {
			p.Shots = p.Shots[:0]
		}
		files, err := filesOf(&p)
		if err != nil {
			t.Errorf("%q: %v", name, err)
			continue
		}
		for file, data := range files {
			switch {
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
		if out := textOf(t, &p); strings.ContainsAny(out, "\u202e\x1b\x01") {
			t.Errorf("%q: controls reach the terminal", name)
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
