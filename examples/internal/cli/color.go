package cli

// colored reports whether the output may have colors: on a terminal that has them, unless NO_COLOR is set.
func (s System) colored() bool {
	term := s.Getenv("TERM")
	return s.Terminal && s.Getenv("NO_COLOR") == "" && term != "" && term != "dumb"
}
