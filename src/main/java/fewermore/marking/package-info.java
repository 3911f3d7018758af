/**
 * From a story and a child's work to marks: structure, answer, label and bars, each on its own.
 * Everything is computed from the story; there is no list of accepted strings.
 *
 * <pre>{@code
 * Marks marks = Marker.mark(story, new Work("52 - 14 = x", "38", "shells", null, null));
 * marks.equation().fits();   // true
 * Signs.of(marks, false);    // what the tablet is told
 * }</pre>
 *
 * Not checked here: whether the work is the child's own, and which hand-in is the evidence.
 */
package fewermore.marking;
