// Package picture draws what is known of a question: a play of the ball from
// the side and from above, players in their places from above. A picture is a
// value, a Scene of a few kinds of shape; it prints itself as SVG, and package
// raster prints it as PNG.
//
//	if s, ok := picture.Of(rally, picture.Mark{}); ok {
//		os.Stdout.Write(s.SVG())
//	}
//
// Only what was told is drawn as such. What was not told is drawn with a
// dashed outline or as a question mark, never as if it were known. The sides
// differ in shape and label as well as in colour.
package picture
