module example.org/maslin/internal/xcheck

go 1.26.0

require (
	example.org/maslin v0.0.0
	github.com/emersion/go-ical v0.0.0-20250329121855-f41e73efc392
)

require (
	github.com/shopspring/decimal v1.6.0 // indirect
	github.com/teambition/rrule-go v1.8.2 // indirect
)

replace example.org/maslin => ../..
