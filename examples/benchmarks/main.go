// Command benchmarks measures the library on the jobs that the scripts in peers do
// with what a user would pick instead, and sets both side by side. run.sh does all
// of it in one run:
//
//	benchmarks -instances FILE   write the picking instances both sides solve
//	benchmarks -measure          measure the library, a JSON line a figure
//	benchmarks -report FILE ...  read the lines of both sides, print the table
package main

import (
	"encoding/json"
	"flag"
	"fmt"
	"os"
	"slices"
	"time"
)

// A figure is one measurement: the median time of a job, and the job's answer, so
// that the two sides can be seen to have solved the same problem.
type figure struct {
	Job     string  `json:"job"`
	Side    string  `json:"side"` // honestplate, or the peer and its version
	Nanos   float64 `json:"nanos"`
	Answer  float64 `json:"answer"`
	Repeats int     `json:"repeats"`
}

func main() {
	instances := flag.String("instances", "", "write the picking instances to this file")
	measure := flag.Bool("measure", false, "measure the library")
	report := flag.Bool("report", false, "print the table of the files named")
	flag.Parse()
	var err error
	switch {
	case *instances != "":
		err = writeInstances(*instances)
	case *measure:
		err = measureAll()
	case *report:
		err = reportAll(flag.Args(), os.Stdout)
	default:
		flag.Usage()
		os.Exit(2)
	}
	if err != nil {
		fmt.Fprintln(os.Stderr, "benchmarks:", err)
		os.Exit(1)
	}
}

// repeats is how many medians are taken over; each repeat lasts about pause.
const (
	repeats = 7
	pause   = 60 * time.Millisecond
)

// timeOf returns the median over repeats of the time of one call, and the last
// answer. The number of calls in a repeat is set so that it lasts about pause.
func timeOf(job string, call func(i int) (float64, error)) (figure, error) {
	n, answer := 1, 0.0
	run := func(n int) (time.Duration, error) {
		start := time.Now()
		for i := range n {
			v, err := call(i)
			if err != nil {
				return 0, fmt.Errorf("%s: %w", job, err)
			}
			if i == 0 {
				answer = v
			}
		}
		return time.Since(start), nil
	}
	for {
		d, err := run(n)
		if err != nil {
			return figure{}, err
		}
		if d > pause || n > 1<<24 {
			break
		}
		n *= 2
	}
	var times []float64
	for range repeats {
		d, err := run(n)
		if err != nil {
			return figure{}, err
		}
		times = append(times, float64(d.Nanoseconds())/float64(n))
	}
	slices.Sort(times)
	return figure{job, "honestplate", times[len(times)/2], answer, repeats}, nil
}

func measureAll() error {
	out := json.NewEncoder(os.Stdout)
	for _, job := range jobs {
		f, err := timeOf(job.name, job.call)
		if err != nil {
			return err
		}
		if err := out.Encode(f); err != nil {
			return err
		}
	}
	return nil
}
