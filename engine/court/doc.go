// Package court is the geometry of the six on each side: positions, rows and
// rotation, who overlaps whom at the service, and the order of service over a
// set. Lengths are whole numbers, so that "level" means level.
//
// A question about positions is an [Alignment], one about the order of service
// a [Lineup]. Both are subjects that engine.Decide rules on. The plain geometry
// stands on its own:
//
//	law := court.LawOf(book)
//	for _, o := range law.Overlaps(six, false) { … }
package court
