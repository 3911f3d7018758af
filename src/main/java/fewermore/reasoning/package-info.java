/**
 * From marks to what may be said: how a child reasons, estimated from her written work; the next problem that would
 * tell most; whom to sit with. It takes a list of evidence, never a student.
 *
 * <ul>
 *   <li><b>plan</b>: what is done with the two given numbers on one problem ({@code fewermore.prediction.Plan})
 *   <li><b>way</b>: a way of reasoning, which takes plans with certain chances, kind by kind
 *   <li><b>evidence</b>: one first hand-in, as weights over plans
 *   <li><b>telling</b>: a problem on which two ways would differ; where the word agrees with the story, reading the
 *       story and following the word write the same, and such work moves nothing between the two
 * </ul>
 *
 * <pre>{@code
 * var table = ReasoningTable.standard();
 * var evidence = Evidence.of(day, story, work, Marker.mark(story, work), table); // empty: says nothing
 * var estimate = Estimate.none(table).with(evidence.orElseThrow());
 * estimate.ways().of(WayOfReasoning.BY_THE_CUE_WORD); // 0 to 1
 * estimate.says().strength();                         // TOO_EARLY, after one problem
 * }</pre>
 *
 * <p>Not checked here: that evidence is of first hand-ins only, and of one child. What is said is evidence with its
 * strength, never a verdict, and no test for a learning difficulty.
 */
package fewermore.reasoning;
