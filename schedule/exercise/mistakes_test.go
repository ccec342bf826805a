package exercise_test

import (
	"math"
	"strings"
	"testing"

	"example.org/maslin/dough/working"
	"example.org/maslin/schedule/exercise"
)

// mistakes reckons every usual mistake out of the numbers of the question alone, in the order in which they stand
// there, as somebody does who makes it: it knows nothing of how the exercise was made. Fahrenheit is true where the
// question is in °F.
var mistakes = map[string]func(n []float64, fahrenheit bool) float64{
	"percentages_water/share_of_dough": func(n []float64, _ bool) float64 { return n[3] * n[1] / (100 - n[1] - n[2]) },
	"percentages_water/share_of_total": func(n []float64, _ bool) float64 { return n[3] * n[1] / (100 + n[1] + n[2]) },
	"percentages_water/dry_only":       func(n []float64, _ bool) float64 { return n[3] * (100 - n[1]) / 100 },

	"percentages_flour/share_of_dough": func(n []float64,
		_ bool) float64 {
		return n[0] * n[1] * (100 - n[3] - n[4]) / 100
	},
	"percentages_flour/one_piece":      func(n []float64, _ bool) float64 { return n[1] / (1 + (n[3]+n[4])/100) },
	"percentages_flour/salt_forgotten": func(n []float64, _ bool) float64 { return n[0] * n[1] / (1 + n[3]/100) },

	"percentages_mishap/weight_for_weight": func(n []float64, _ bool) float64 { return n[2] - n[0]*n[1]/100 },
	"percentages_mishap/wrong_way": func(n []float64,
		_ bool) float64 {
		return (n[2] - n[0]*n[1]/100) * n[1] / 100
	},

	"levain_weight/flour_alone":  func(n []float64, _ bool) float64 { return n[0] * n[1] / 100 },
	"levain_weight/water_alone":  func(n []float64, _ bool) float64 { return n[0] * n[1] / 100 * n[2] / 100 },
	"levain_weight/of_all_flour": func(n []float64, _ bool) float64 { return n[0] * (n[1] + n[2]) / 100 },

	"levain_water/levain_twice": func(n []float64, _ bool) float64 { return n[0] * n[1] / 100 },
	"levain_water/whole_levain": func(n []float64, _ bool) float64 {
		return n[0]*n[1]/100 - n[0]*n[2]/100*(1+n[3]/100)
	},
	"levain_water/share_of_water": func(n []float64, _ bool) float64 { return n[0] * n[1] / 100 * (1 - n[2]/100) },

	"levain_build/nothing_kept":      func(n []float64, _ bool) float64 { return n[0] / (1 + n[2] + n[3]) },
	"levain_build/starter_no_part":   func(n []float64, _ bool) float64 { return (n[0] + n[1]) / (n[2] + n[3]) },
	"levain_build/flour_parts_alone": func(n []float64, _ bool) float64 { return (n[0] + n[1]) / n[2] },

	"water_factors/two_factors":        func(n []float64, _ bool) float64 { return 2*n[0] - n[2] - n[3] },
	"water_factors/friction_added":     func(n []float64, _ bool) float64 { return 3*n[0] - n[1] - n[2] + n[3] },
	"water_factors/friction_forgotten": func(n []float64, _ bool) float64 { return 3*n[0] - n[1] - n[2] },

	"water_levain/three_factors":      func(n []float64, _ bool) float64 { return 3*n[0] - n[1] - n[2] - n[4] },
	"water_levain/friction_added":     func(n []float64, _ bool) float64 { return 4*n[0] - n[1] - n[2] - n[3] + n[4] },
	"water_levain/friction_forgotten": func(n []float64, _ bool) float64 { return 4*n[0] - n[1] - n[2] - n[3] },

	"water_other_degrees/difference_as_point": func(n []float64, fahrenheit bool) float64 {
		if fahrenheit { // the book is in °C
			return 3*n[0] - n[1] - n[2] - (n[3]*9/5 + 32)
		}
		return 3*n[0] - n[1] - n[2] - (n[3]-32)*5/9
	},
	"water_other_degrees/not_converted": func(n []float64, _ bool) float64 { return 3*n[0] - n[1] - n[2] - n[3] },

	"water_ice/melting_alone": func(n []float64, _ bool) float64 { return n[0] * (n[2] - n[1]) / n[3] },
	"water_ice/ice_on_top": func(n []float64, fahrenheit bool) float64 {
		return n[0] * (n[2] - n[1]) / (n[1] - freezing(fahrenheit) + n[3])
	},
	"water_ice/tap_alone": func(n []float64, fahrenheit bool) float64 {
		return n[0] * (n[2] - freezing(fahrenheit)) / (n[2] - freezing(fahrenheit) + n[3])
	},

	"rising_one/multiplied":     func(n []float64, _ bool) float64 { return n[1] * n[2] },
	"rising_one/upside_down":    func(n []float64, _ bool) float64 { return n[1] / n[2] },
	"rising_one/rate_forgotten": func(n []float64, _ bool) float64 { return n[2] },

	"rising_two/nothing_had": func(n []float64, _ bool) float64 { return n[0] / n[5] },
	"rising_two/time_off":    func(n []float64, _ bool) float64 { return n[0]/n[5] - n[1] },
	"rising_two/warm_rate":   func(n []float64, _ bool) float64 { return (n[0] - n[1]*n[3]) / n[3] },

	"rising_less_levain/in_proportion": func(n []float64, _ bool) float64 { return n[1] * n[0] / n[len(n)-1] },
	"rising_less_levain/wrong_way": func(n []float64, _ bool) float64 {
		return n[1] - math.Log(n[0]/n[len(n)-1])/n[3]
	},
	"rising_less_levain/longer_alone": func(n []float64, _ bool) float64 { return math.Log(n[0]/n[len(n)-1]) / n[3] },

	"altitude_boiling/added":     func(n []float64, _ bool) float64 { return n[0] + n[2]/n[1] },
	"altitude_boiling/no_change": func(n []float64, _ bool) float64 { return n[0] },
	"altitude_boiling/ten_times": func(n []float64, _ bool) float64 { return n[0] - n[2]/n[1]/10 },

	"altitude_core/lowered": func(n []float64, fahrenheit bool) float64 {
		if fahrenheit {
			return n[0] - (212 - n[1])
		}
		return n[0] - (100 - n[1])
	},
	"altitude_core/no_margin":   func(n []float64, _ bool) float64 { return n[1] },
	"altitude_core/sea_level":   func(n []float64, _ bool) float64 { return n[0] },
	"altitude_core/twice_lower": func(n []float64, _ bool) float64 { return n[0] - n[2] },

	"altitude_both/lowered":     func(n []float64, _ bool) float64 { return n[0] - n[4]/n[2] },
	"altitude_both/no_margin":   func(n []float64, _ bool) float64 { return n[1] - n[4]/n[2] },
	"altitude_both/sea_level":   func(n []float64, _ bool) float64 { return n[0] },
	"altitude_both/twice_lower": func(n []float64, _ bool) float64 { return n[0] - n[3] },

	"loss_percent/of_bread":   func(n []float64, _ bool) float64 { return 100 * (n[0] - n[1]) / n[1] },
	"loss_percent/what_stays": func(n []float64, _ bool) float64 { return 100 * n[1] / n[0] },

	"loss_scaling/added":     func(n []float64, _ bool) float64 { return n[0] * (1 + n[1]/100) },
	"loss_scaling/taken_off": func(n []float64, _ bool) float64 { return n[0] * (1 - n[1]/100) },

	"loss_batch/losses_added":   func(n []float64, _ bool) float64 { return n[0] * n[1] / (1 - (n[2]+n[3])/100) },
	"loss_batch/added":          func(n []float64, _ bool) float64 { return n[0] * n[1] * (1 + (n[2]+n[3])/100) },
	"loss_batch/bowl_forgotten": func(n []float64, _ bool) float64 { return n[0] * n[1] / (1 - n[2]/100) },
	"loss_batch/one_loaf":       func(n []float64, _ bool) float64 { return n[1] / (1 - n[2]/100) / (1 - n[3]/100) },

	"cooling_core/temperature_halved": func(n []float64, _ bool) float64 { return n[0] / math.Pow(2, n[3]/n[2]) },
	"cooling_core/room_forgotten":     func(n []float64, _ bool) float64 { return (n[0] - n[1]) / math.Pow(2, n[3]/n[2]) },
	"cooling_core/once":               func(n []float64, _ bool) float64 { return (n[0] + n[1]) / 2 },

	"cooling_time/straight_line": func(n []float64, _ bool) float64 { return n[2] * (n[0] - n[3]) / ((n[0] - n[1]) / 2) },
	"cooling_time/one_halving_short": func(n []float64, _ bool) float64 {
		return n[2] * (math.Log2((n[0]-n[1])/(n[3]-n[1])) - 1)
	},
	"cooling_time/ratio_as_count": func(n []float64, _ bool) float64 { return n[2] * (n[0] - n[1]) / (n[3] - n[1]) },

	"cooling_readings/straight_line": func(n []float64, _ bool) float64 { return n[2] * (n[1] - n[4]) / (n[0] - n[1]) },
	"cooling_readings/from_the_start": func(n []float64, _ bool) float64 {
		return n[2] * math.Log((n[0]-n[3])/(n[4]-n[3])) / math.Log((n[0]-n[3])/(n[1]-n[3]))
	},
	"cooling_readings/no_room": func(n []float64, _ bool) float64 {
		return n[2] * math.Log(n[1]/n[4]) / math.Log(n[0]/n[1])
	},

	"backward_oven/no_cooling":  func(n []float64, _ bool) float64 { return n[0] - n[1] },
	"backward_oven/forward":     func(n []float64, _ bool) float64 { return n[0] + n[1] + n[2] },
	"backward_oven/out_of_oven": func(n []float64, _ bool) float64 { return n[0] - n[2] },

	"backward_mix/preheat_in_line": func(n []float64, _ bool) float64 { return n[0] - total(n[1:8]) },
	"backward_mix/no_cooling":      func(n []float64, _ bool) float64 { return n[0] - total(n[1:6]) },
	"backward_mix/mixing_ends":     func(n []float64, _ bool) float64 { return n[0] - total(n[2:7]) },

	"backward_night/asleep": func(n []float64, _ bool) float64 {
		return n[0] - n[5] - n[4] - 60*n[6] - n[3] - n[2] - n[1]
	},
	"backward_night/shaping_after_bed": func(n []float64, _ bool) float64 {
		return math.Min(n[0]-n[5]-n[4]-60*n[6], n[8]) - n[2] - n[1]
	},
	"backward_night/mixing_ends": func(n []float64, _ bool) float64 {
		return math.Min(n[0]-n[5]-n[4]-60*n[6], n[8]) - n[3] - n[2]
	},
}

func freezing(fahrenheit bool) float64 {
	if fahrenheit {
		return 32
	}
	return 0
}

func total(n []float64) float64 {
	sum := 0.0
	for _, x := range n {
		sum += x
	}
	return sum
}

// Two hundred exercises of every topic, at every difficulty and in both units: each wrong answer is what its mistake
// gives when it is made by hand, and each mistake comes up.
func TestSlipsComeFromTheirMistakes(t *testing.T) {
	most := 200
	if testing.Short() {
		most = 60
	}
	met := map[string]int{}
	for _, topic := range allTopics {
		for _, units := range []working.Units{working.Metric, working.USCustomary} {
			for difficulty := exercise.OneStep; difficulty <= exercise.Hard; difficulty++ {
				for seed := range most {
					task := exercise.Task{Topic: topic, Seed: uint64(seed), Difficulty: difficulty, Units: units}
					e, err := task.Exercise()
					if err != nil {
						t.Fatal(err)
					}
					r := working.Reader{Units: units}
					question := e.Question.Text(r)
					id := strings.TrimPrefix(e.Question.ID(), "exercise.")
					n := numbers(question)
					for _, s := range e.Slips {
						by, known := mistakes[id+"/"+s.Code]
						if !known {
							t.Fatalf("no mistake is known as %s of %s", s.Code, id)
						}
						met[id+"/"+s.Code]++
						got, want := numberOf(s.Value, r), by(n, strings.Contains(question, "°F") &&
							!strings.Contains(question, " °F for three"))
						allowed := 1e-6*math.Abs(want) + 2*math.Pow10(-s.Value.For(r).Decimals)
						if s.Value.Unit == working.Clock {
							allowed = 1e-6
						}
						if d := apart(e, got, want); !(d <= allowed) {
							t.Fatalf("%+v: %s\n%s gives %v, by hand %v", task, question, s.Code, got, want)
						}
					}
				}
			}
		}
	}
	for name := range mistakes {
		if met[name] == 0 {
			t.Errorf("%s never comes up", name)
		}
	}
}
