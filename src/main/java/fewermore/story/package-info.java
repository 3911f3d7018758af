/**
 * Who has what and how it is related: quantities, roles, the relation and the unknown. No English, no
 * pages, no SQL. A story is true by construction; what a text says is the business of {@code wording}.
 *
 * <pre>{@code
 * var story = new Comparison(new Persons("Tomas", "Ines"), new Thing("shell", "shells"), null, List.of(),
 *     new Relation(52, 38, 14), Role.SMALLER, Wording.FEWER, List.of());
 * story.answer();        // 38
 * story.kind().agrees(); // true: "fewer" pulls to −, and 52 − 14 finds it
 * }</pre>
 */
package fewermore.story;
