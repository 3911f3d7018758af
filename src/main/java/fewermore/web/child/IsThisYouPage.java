package fewermore.web.child;

/**
 * "Is this you?": asked after a tap on a name tile and after a desk card.
 * {@code pages/child/is-this-you.html}.
 *
 * @param language {@code en} or {@code es}
 * @param post where "Yes, it's me" is posted, for example {@code /come-in/17}
 */
public record IsThisYouPage(String language, Me me, String post) {}
