// Package vessel answers how large a container, basket, bowl or tin a dough needs, how much dough one takes, and where
// to mark a container to read a rise.
//
// # Standing assumptions
//
// A mixed dough weighs about 1.12 kg/L (from memory). Height is volume only in a container with straight sides. The
// volumes for baskets, bowls and tins are practitioners' figures, and their range is part of the answer.
//
// # Limits
//
// A container's start is within about 7 % unless it is measured. A tapered or fluted tin holds less than its outer
// measures say: fill it with water and weigh the water.
//
// # From question to function
//
//	room for a dough                           DoughVolume
//	marks for a rise                           FillLines
//	a sample in a small jar                    FillSample
//	baskets and lined bowls                    ProofVesselFor, DoughForVessel
//	tins                                       DoughForTin, TinForDough, TinFactorOf, TinBox
//	how was this reached                       the Working method of every result
package vessel
