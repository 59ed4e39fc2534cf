package main

import (
	"cmp"
	"context"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"time"

	"yardproof/exporters"
	"yardproof/pipeline"
	"yardproof/pipeline/report"
	"yardproof/pipeline/store/handed"
	"yardproof/scripts/hostile"
)

func main() {
	var o options
	flag.BoolVar(&o.export, "export", false, "make workbooks, too")
	flag.IntVar(&o.random, "random", 0, "how many random plans follow those at the limits")
	flag.Int64Var(&o.seed, "seed", 1, "of the first random plan")
	flag.DurationVar(&o.most, "most", 30*time.Second, "processor time after which a plan is given up")
	flag.StringVar(&o.write, "write", "", "lay the plans into this folder instead")
	flag.Parse()
	if err := o.run(flag.Args()); err != nil {
		fmt.Fprintln(os.Stderr, "worst:", err)
		os.Exit(3)
	}
}

type options struct {
	export bool
	random int
	seed   int64
	most   time.Duration
	write  string
}

// took is what a plan cost.
type took struct {
	name  string
	cpu   time.Duration
	given bool // up
	bytes int
}

func (o options) run(names []string) error {
	var all []took
	for _, p := range o.plans(names) {
		if o.write != "" {
			if err := lay(filepath.Join(o.write, p.Name), p); err != nil {
				return err
			}
			continue
		}
		t, err := o.measure(p)
		if err != nil {
			return err
		}
		all = append(all, t)
	}
	slices.SortStableFunc(all, func(a, b took) int { return cmp.Compare(b.cpu, a.cpu) })
	for _, t := range all {
		note := ""
		if t.given {
			note = " given up"
		}
		fmt.Printf("%-20s %7.2f s %8d bytes%s\n", t.name, t.cpu.Seconds(), t.bytes, note)
	}
	return nil
}

func (o options) plans(names []string) []hostile.Plan {
	plans := hostile.Plans()
	for n := range o.random {
		plans = append(plans, hostile.Random(o.seed+int64(n)))
	}
	if len(names) > 0 {
		plans = slices.DeleteFunc(plans, func(p hostile.Plan) bool { return !slices.Contains(names, p.Name) })
	}
	return plans
}

func lay(dir string, p hostile.Plan) error {
	if err := os.MkdirAll(dir, 0o777); err != nil {
		return err
	}
	return os.WriteFile(filepath.Join(dir, p.Name+".plan.json"), p.Text, 0o666)
}

// measure runs one plan by itself.
func (o options) measure(p hostile.Plan) (took, error) {
	dir, err := os.MkdirTemp("", "hostile")
	if err != nil {
		return took{}, err
	}
	defer os.RemoveAll(dir)
	if err := lay(dir, p); err != nil {
		return took{}, err
	}
	ctx, cancel := context.WithCancel(context.Background())
	defer cancel()
	start := processor()
	go func() {
		for ctx.Err() == nil && processor()-start < o.most {
			time.Sleep(20 * time.Millisecond)
		}
		cancel()
	}()
	c := pipeline.Config{Paths: []string{dir}, Jobs: 1, Tables: o.export, Draft: true}
	if format, ok := exporters.Export("xlsx"); ok && o.export {
		c.Sink = handed.On{EachPlan: func(_ context.Context, p *report.Plan) error {
			_, err := format.Plan(p)
			return err
		}}
	}
	_, err = pipeline.Run(ctx, c)
	return took{p.Name, processor() - start, ctx.Err() != nil, len(p.Text)}, err
}
