package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"strings"
	"unicode"

	"example.org/honestplate"
	"example.org/honestplate/examples/shoot"
)

// A recordFile is a record to fill in, with its file's name.
type recordFile struct {
	name string
	data []byte
	kept bool // the folder has it, filled in
}

// filesOf makes what -out writes, by file name, but for the records that are kept.
func filesOf(p *shoot.Plan, kept ...keptRecord) (map[string][]byte, error) {
	files := map[string][]byte{}
	records, err := recordFiles(p, kept...)
	if err != nil {
		return nil, err
	}
	for _, r := range records {
		if !r.kept {
			files[r.name] = r.data
		}
	}
	plan, err := json.MarshalIndent(p, "", "  ")
	if err != nil {
		return nil, err
	}
	files["plan.json"] = append(plan, '\n')
	if files["print.html"], err = printed(p, kept...); err != nil {
		return nil, err
	}
	if files["set.html"], err = setPage(p, records, kept...); err != nil {
		return nil, err
	}
	files["callsheet.md"] = newSheet(p, kept...).markdown()
	for i := range p.Days {
		files[chartName(i)] = dayChart(p, i)
	}
	return files, nil
}

// chartName is the file of a day's chart.
func chartName(day int) string {
	if day == 0 {
		return "day.svg"
	}
	return fmt.Sprintf("day-%d.svg", day+1)
}

// recordFiles are the records to fill in, one a picture, under the name of the one that is
// kept where there is one.
func recordFiles(p *shoot.Plan, kept ...keptRecord) ([]recordFile, error) {
	var out []recordFile
	for i, r := range p.Records() {
		var b bytes.Buffer
		if err := r.Write(&b); err != nil {
			return nil, honestplate.In(p.Shots[i].Dish, err)
		}
		f := recordFile{name: fmt.Sprintf("record-%d-%s.json", i+1, slug(p.Shots[i].Dish)), data: b.Bytes()}
		for _, k := range kept {
			if k.name == f.name || k.picture == r.Picture {
				f.name, f.kept = k.name, true
				break
			}
		}
		out = append(out, f)
	}
	return out, nil
}

// slug is a dish's name as a file's: letters and digits of any script, at most forty.
func slug(name string) string {
	var b strings.Builder
	n := 0
	for _, r := range name {
		switch {
		case n == 40:
			return strings.Trim(b.String(), "-")
		case unicode.IsLetter(r), unicode.IsDigit(r):
			b.WriteRune(unicode.ToLower(r))
			n++
		case b.Len() > 0 && !strings.HasSuffix(b.String(), "-"):
			b.WriteByte('-')
		}
	}
	if out := strings.Trim(b.String(), "-"); out != "" {
		return out
	}
	return "picture"
}
