/**
 * Story to text, in English and Spanish, and typed English to story, with one lexicon. A {@link fewermore.wording.Scenario} is what a problem is
 * about; a {@link fewermore.wording.Scene} is a scenario with its persons; a {@link fewermore.wording.Shape} is the
 * order and fullness of the three sentences.
 *
 * <pre>{@code
 * Scenario shells = Lexicon.scenario("shells").orElseThrow();
 * Scene scene = Lexicon.scene(shells, new Random(7), List.of(), Set.of()).orElseThrow();
 * Comparison story = scene.story(new Relation(52, 38, 14), Role.SMALLER, Wording.FEWER);
 * WordingWriter.english(story, scene, Shape.PLAIN).text();
 * // "Omar found 52 shells. Zoe found 14 fewer shells than Omar. How many shells did Zoe find?"
 * }</pre>
 *
 * <p>Reading: {@link fewermore.wording.WordingReader} cuts a text into sentences of tokens, reads each by a grammar into
 * facts (who has how many, who has how many more than whom, what is asked), puts names in the place of pronouns, and
 * looks for the one comparison the facts make. What is not in the grammar, or may mean two things, is declined with its
 * place.
 *
 * <pre>{@code
 * ReadText read = WordingReader.read("Ines has 14 fewer shells than Tomas. Tomas has 52 shells. How many has Ines?");
 * if (read instanceof ReadText.Understood understood) {
 *   understood.story().answer();                     // 38
 *   understood.places(ReadText.Part.COMPARING_WORD); // where "fewer" stands
 * }
 * }</pre>
 *
 * <p>Not checked: whether numbers suit a scenario (any whole number is written), and whether a Spanish noun that a
 * teacher gives is right.
 */
package fewermore.wording;
