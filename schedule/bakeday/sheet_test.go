package bakeday_test

import (
	"context"
	"fmt"
	"strings"
	"time"

	"example.org/maslin/dough/report"
	"example.org/maslin/schedule/bakeday"
)

func ExampleDay_Sheet() {
	clock := bakeday.KitchenClock{Now: time.Date(2026, 11, 25, 20, 0, 0, 0, time.UTC), Zone: time.UTC}
	day, err := bakeday.NewBread{Name: "Hall loaf", Zone: "UTC"}.Plan(context.Background(), clock)
	if err != nil {
		fmt.Println(err)
		return
	}
	page := string(day.Sheet(report.Options{}))
	fmt.Println(page[:15], strings.Count(page, "<main"), strings.Contains(page, "dough after mixing"))
	fmt.Println(strings.Index(page, "What you weigh") < strings.Index(page, "Rising"))
	// Output:
	// <!DOCTYPE html> 1 true
	// true
}
