// Package bake answers: is it baked, how long still, how much will it lose, and when may I cut it?
package bake
