// Package vessel answers how large a container, basket, bowl or tin a dough needs, how much dough one takes, how much
// goes into a tray, a pizza or a baguette of a size, and where to mark a container to read a rise.
//
// # Standing assumptions
//
// A mixed dough weighs about 1.12 kg/L (from memory). Height is volume only in a container with straight sides. The
// volumes for baskets, bowls and tins are practitioners' figures, and their range is part of the answer; a tin that
// somebody has filled once knows its own factor ([OwnTin]).
//
// # Limits
//
// A container's start is within about 7 % unless it is measured. A tapered or fluted tin holds less than its outer
// measures say: fill it with water and weigh the water.
//
// # From question to method
//
//	how much room does a dough take            MixedDough.Volume
//	where to mark a tub for the rise           RiseContainer.Marks
//	how much dough into a sample jar           SampleJar.Sample
//	which basket or lined bowl for a dough     Proofing.Size
//	how much dough for a basket or bowl        Proofing.Fill, by its volume or its sides
//	how much dough for a tray, disk or stick   SizedPiece.Dough
//	how large a tray, disk or stick of a dough SizedPiece.Size
//	how much dough for a tin                   TinFactor.Fill
//	how large a tin for a dough                TinFactor.Tin
//	… by its sides                             TinBox.Fill
//	… by kind of loaf, from one's own tin      TinLoaf.Factor, OwnTin.Factor
//	what does a box or a tapered tin hold      TinBox.Volume
//	how was this reached, how is it shown      the Working and Report methods of every answer
package vessel
