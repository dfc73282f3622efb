// Command callsheet plans a studio day: it reads a brief, and what has happened since,
// and prints what the crew works from.
//
//	callsheet                        the first of three invented days
//	callsheet -day coast             another of them: autumn, coast, motion
//	callsheet -brief day.json        your own day
//	callsheet -brief day.json -facts facts.json
//	                                 the rest of the day, from what it has shown
//	callsheet -out sheet             the pages too: print.html for the printer, set.html
//	                                 for a phone on the set, day.svg, callsheet.md,
//	                                 plan.json, and a record a picture to fill in
//	callsheet -schema brief          the JSON Schema of a brief, or of facts
//
// The exit status is 2 for a brief, facts or flags that cannot be used and 1 for a file
// that cannot be read or written. A folder gets all of the files or keeps what it had; a
// record that was filled in stays as it is, and that is said.
//
// Estimates, not guarantees; local codes and licensed practice come first.
package main

import (
	"bytes"
	"embed"
	"errors"
	"flag"
	"fmt"
	"io"
	"io/fs"
	"os"
	"os/signal"
	"syscall"

	"example.org/honestplate/examples/shoot"
)

//go:embed days/*.json
var days embed.FS

func main() { os.Exit(run(os.Args[1:], os.Stdout, os.Stderr)) }

func run(args []string, out, errOut io.Writer) int {
	flags := flag.NewFlagSet("callsheet", flag.ContinueOnError)
	flags.SetOutput(errOut)
	day := flags.String("day", "autumn", "the invented day to plan: autumn, coast or motion")
	brief := flags.String("brief", "", "a brief to plan instead (a file)")
	facts := flags.String("facts", "", "what has happened so far (a file)")
	folder := flags.String("out", "", "a folder for the pages and the records")
	schema := flags.String("schema", "", "print the JSON Schema of a brief or of facts")
	if err := flags.Parse(args); err != nil {
		if errors.Is(err, flag.ErrHelp) {
			return 0
		}
		return 2
	}
	fail := func(status int, err error) int {
		fmt.Fprintln(errOut, "callsheet:", err)
		return status
	}
	if flags.NArg() > 0 {
		return fail(2, fmt.Errorf("%q is left over: see -help", flags.Arg(0)))
	}
	if *schema != "" {
		make := map[string]func() ([]byte, error){"brief": shoot.Schema, "facts": shoot.FactsSchema}[*schema]
		if make == nil {
			return fail(2, fmt.Errorf("there is a schema of a brief and one of facts, none of %q", *schema))
		}
		b, err := make()
		if err == nil {
			_, err = out.Write(b)
		}
		if err != nil {
			return fail(1, err)
		}
		return 0
	}
	p, err := planOf(*day, *brief, *facts)
	if err != nil {
		var faults shoot.Faults
		if errors.As(err, &faults) {
			fmt.Fprintf(errOut, "callsheet: faults in the file: %d\n%v\n", len(faults), err)
			return 2
		}
		var path *fs.PathError
		if errors.As(err, &path) {
			return fail(1, err)
		}
		return fail(2, err)
	}
	var kept []keptRecord
	if *folder != "" {
		kept = filledInRecords(*folder)
		files, err := filesOf(p, kept...)
		if err != nil {
			return fail(1, err)
		}
		interrupt := make(chan os.Signal, 1)
		signal.Notify(interrupt, os.Interrupt, syscall.SIGTERM)
		err = writeFolder(*folder, files, interrupt)
		signal.Stop(interrupt)
		if err != nil {
			return fail(1, err)
		}
		for _, k := range kept {
			fmt.Fprintf(errOut, "callsheet: %s is filled in, or not as this program wrote it: it stays as it is\n", k.name)
		}
	}
	if err := newSheet(p, kept...).writeText(out); err != nil {
		return fail(1, err)
	}
	return 0
}

// planOf reads brief and facts and plans.
func planOf(day, brief, facts string) (*shoot.Plan, error) {
	data, err := days.ReadFile("days/" + day + ".json")
	if errors.Is(err, fs.ErrNotExist) || errors.Is(err, fs.ErrInvalid) {
		return nil, fmt.Errorf("there is no invented day %q: autumn, coast, motion", day)
	}
	if brief != "" {
		data, err = os.ReadFile(brief)
	}
	if err != nil {
		return nil, err
	}
	b, err := shoot.Read(bytes.NewReader(data))
	if err != nil {
		return nil, err
	}
	var f *shoot.Facts
	if facts != "" {
		from, err := os.Open(facts)
		if err != nil {
			return nil, err
		}
		defer from.Close()
		if f, err = shoot.ReadFacts(from); err != nil {
			return nil, err
		}
	}
	return b.Plan(f)
}
