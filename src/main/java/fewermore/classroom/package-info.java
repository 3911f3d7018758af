/**
 * A school day's nouns and verbs: class list, problem sets, sittings, hand-ins, and what the teacher
 * reads from them. Knows no SQL and no pages; {@code store} keeps what is here.
 *
 * <p><b>Words.</b> A <i>sitting</i> is one child on one tablet. A <i>hand-in</i> is one try at one
 * problem. The <i>evidence</i> of a child on a problem is the first hand-in; tries made after a prompt
 * was shown are kept and shown apart and are never evidence of a way of reasoning.
 */
package fewermore.classroom;
