package main

import (
	"bufio"
	"encoding/json"
	"fmt"
	"io"
	"math"
	"os"
	"strings"
	"text/tabwriter"
	"time"
)

// reportAll reads the figures of both sides and prints a row a peer: both medians
// and their ratio. It fails if the two sides do not agree on an answer.
func reportAll(paths []string, w io.Writer) error {
	ours := map[string]figure{}
	var peers []figure
	for _, path := range paths {
		f, err := os.Open(path)
		if err != nil {
			return err
		}
		defer f.Close()
		for sc := bufio.NewScanner(f); sc.Scan(); {
			if strings.TrimSpace(sc.Text()) == "" {
				continue
			}
			var fig figure
			if err := json.Unmarshal(sc.Bytes(), &fig); err != nil {
				return fmt.Errorf("%s: %w", path, err)
			}
			if fig.Side == "honestplate" {
				ours[fig.Job] = fig
			} else {
				peers = append(peers, fig)
			}
		}
	}
	tw := tabwriter.NewWriter(w, 0, 0, 1, ' ', 0)
	fmt.Fprintln(tw, "| job\t| instead\t| its median\t| honestplate\t| ratio\t| answers differ by\t|")
	fmt.Fprintln(tw, "|---\t|---\t|---\t|---\t|---\t|---\t|")
	for _, p := range peers {
		o, ok := ours[p.Job]
		if !ok {
			return fmt.Errorf("no figure of honestplate for %q", p.Job)
		}
		off := math.Abs(p.Answer - o.Answer)
		// The tightest claim that all jobs share: a thousandth, and whole numbers equal.
		// Two samplers that draw for themselves agree as well as their runs tell.
		within := 1e-3
		if p.Job == learned {
			within = 0.02
		}
		if off > within*math.Max(1, math.Abs(o.Answer)) || o.Answer == math.Trunc(o.Answer) && math.Abs(o.Answer) > 1 && off != 0 {
			return fmt.Errorf("%s: %s answers %g, honestplate %g", p.Job, p.Side, p.Answer, o.Answer)
		}
		fmt.Fprintf(tw, "| %s\t| %s\t| %s\t| %s\t| %s\t| %.1g\t|\n", p.Job, p.Side, inWords(p.Nanos), inWords(o.Nanos), ratio(p.Nanos/o.Nanos), off)
	}
	return tw.Flush()
}

func inWords(nanos float64) string {
	d := time.Duration(nanos)
	switch {
	case nanos < 1000:
		return fmt.Sprintf("%.0f ns", nanos)
	case d < time.Millisecond:
		return fmt.Sprintf("%.3g us", nanos/1e3)
	}
	return fmt.Sprintf("%.3g ms", nanos/1e6)
}

func ratio(r float64) string {
	if r >= 100 {
		return fmt.Sprintf("%.0f", r)
	}
	return fmt.Sprintf("%.2g", r)
}
