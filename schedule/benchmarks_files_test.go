package schedule

import (
	"bufio"
	"context"
	"encoding/csv"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"sort"
	"strconv"
	"strings"
	"testing"
	"time"
)

// The files of the project scheduling library (Kolisch and Sprecher, European Journal of
// Operational Research 96, 1997) are not part of this project. Tests read them from the folder
// named here, with subfolders j30, rcpspmax_j10 and rcpspmax_ubo10.
const filesVariable = "MASLIN_PLANNING_INSTANCES"

func filesFolder(t testing.TB) string {
	t.Helper()
	dir := os.Getenv(filesVariable)
	if dir == "" {
		t.Skip("set " + filesVariable + " to a folder with the project scheduling files to run this")
	}
	return dir
}

// project is a project scheduling problem: jobs with start-to-start lags, to be ended soonest.
type project struct {
	dur  []int
	cap  []int
	need [][]int // by job, by resource
	lags [][3]int
}

func (q project) problem() Problem {
	anchor := time.Date(2026, 1, 1, 0, 0, 0, 0, time.UTC)
	horizon := 1
	for i, d := range q.dur {
		longest := d
		for _, l := range q.lags {
			if l[0] == i {
				longest = max(longest, l[2])
			}
		}
		horizon += longest
	}
	m := mins
	p := Problem{Anchor: anchor, Horizon: m(horizon)}
	name := func(i int) string { return "job " + strconv.Itoa(i) }
	for r, c := range q.cap {
		p.Resources = append(p.Resources, Resource{ID: "R" + strconv.Itoa(r), Capacity: c})
	}
	for i, d := range q.dur {
		s := DayStep{ID: name(i), Min: m(d)}
		for r, n := range q.need[i] {
			if n > 0 && d > 0 {
				s.Needs = append(s.Needs, Need{Resource: "R" + strconv.Itoa(r), Amount: n})
			}
		}
		p.Steps = append(p.Steps, s)
	}
	for _, l := range q.lags {
		p.Links = append(p.Links,
			Link{From: name(l[0]), To: name(l[1]), Kind: StartToStart, Min: m(l[2]), Max: NoLimit})
	}
	p.Bounds = []Bound{{Step: name(len(q.dur) - 1), Edge: End, Earliest: anchor, LatePerMinute: 1}}
	return p
}

func lines(t testing.TB, path string) []string {
	t.Helper()
	f, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	var out []string
	for s := bufio.NewScanner(f); s.Scan(); {
		out = append(out, s.Text())
	}
	return out
}

func ints(s string) []int {
	var out []int
	for _, w := range regexp.MustCompile(`-?\d+`).FindAllString(s, -1) {
		n, _ := strconv.Atoi(w)
		out = append(out, n)
	}
	return out
}

// readSM reads a single-mode file of the j30 and j60 sets.
func readSM(t testing.TB, path string) project {
	var q project
	all := lines(t, path)
	find := func(head string) int {
		for i, l := range all {
			if strings.HasPrefix(l, head) {
				return i
			}
		}
		t.Fatalf("%s: no %s", path, head)
		return 0
	}
	succ := find("PRECEDENCE") + 2
	req := find("REQUESTS") + 3
	for i := 0; !strings.HasPrefix(all[req+i], "***"); i++ {
		row := ints(all[req+i])
		q.dur = append(q.dur, row[2])
		q.need = append(q.need, row[3:])
	}
	for i := range q.dur {
		for _, s := range ints(all[succ+i])[3:] {
			q.lags = append(q.lags, [3]int{i, s - 1, q.dur[i]})
		}
	}
	q.cap = ints(all[find("RESOURCEAV")+2])
	return q
}

// readSCH reads a file with minimum and maximum lags.
func readSCH(t testing.TB, path string) project {
	var q project
	var all []string
	for _, l := range lines(t, path) {
		if strings.TrimSpace(l) != "" {
			all = append(all, l)
		}
	}
	n := ints(all[0])[0] + 2
	for i := 0; i < n; i++ {
		row := ints(all[1+i])
		k := row[2]
		for j := 0; j < k; j++ {
			q.lags = append(q.lags, [3]int{row[0], row[3+j], row[3+k+j]})
		}
		need := ints(all[1+n+i])
		q.dur = append(q.dur, need[2])
		q.need = append(q.need, need[3:])
	}
	q.cap = ints(all[1+2*n])
	return q
}

func optima(t testing.TB, path string) [][]string {
	t.Helper()
	f, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.FieldsPerRecord = -1
	rows, err := r.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	return rows
}

func TestProjectsWithLags(t *testing.T) {
	dir := filesFolder(t)
	for _, set := range []string{"rcpspmax_j10", "rcpspmax_ubo10"} {
		want := map[string]string{}
		for _, row := range optima(t, filepath.Join(dir, set, "optimum_all.csv")) {
			want[strings.ToLower(strings.TrimSpace(row[0]))] = strings.TrimSpace(row[len(row)-1])
		}
		files, _ := filepath.Glob(filepath.Join(dir, set, "*"))
		sort.Strings(files)
		for _, f := range files {
			base := strings.ToLower(filepath.Base(f))
			if !strings.HasSuffix(base, ".sch") {
				continue
			}
			start := time.Now()
			tt, err := readSCH(t, f).problem().Best(context.Background())
			if err != nil {
				t.Fatal(err)
			}
			got := fmt.Sprint(tt.Cost)
			if tt.Verdict == Infeasible {
				got = "unsat"
			}
			took := time.Since(start)
			if got != want[base] || tt.Verdict != Optimal && tt.Verdict != Infeasible {
				t.Errorf("%s/%s: %v %s, want %s", set, base, tt.Verdict, got, want[base])
			}
			t.Logf("%s/%s: %v %s in %v, %d nodes", set, base, tt.Verdict, got, took, tt.Nodes)
		}
	}
}

func TestProjectsOfThirtyJobs(t *testing.T) {
	dir := filesFolder(t)
	files, _ := filepath.Glob(filepath.Join(dir, "j30", "*.sm"))
	for _, f := range files {
		ctx, cancel := context.WithTimeout(context.Background(), 10*time.Second)
		start := time.Now()
		tt, err := readSM(t, f).problem().Best(ctx)
		cancel()
		if err != nil {
			t.Fatal(err)
		}
		t.Logf("%s: %v %d, bound %d in %v, %d nodes", filepath.Base(f), tt.Verdict, tt.Cost, tt.Bound,
			time.Since(start), tt.Nodes)
	}
}
