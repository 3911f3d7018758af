/**
 * The ways of reasoning about a comparison, and what each would write for a story. No chances and no evidence: those
 * come later.
 *
 * <pre>{@code
 * // 52 shells, 14 fewer, the smaller amount is asked, told with "more"
 * WayOfReasoning.BY_THE_CUE_WORD.predict(story).orElseThrow().equation(); // "52 + 14 = □"
 * Predictions.of(story).byEquation(); // cue word and always adds are one group here
 * }</pre>
 *
 * <p>What a way does with a kind of problem is ours, put together from the studies named at each way.
 */
package fewermore.prediction;
