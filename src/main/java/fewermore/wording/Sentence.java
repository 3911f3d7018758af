package fewermore.wording;

/**
 * One sentence, as the page shows it (numbers as digits) and as it is read aloud (numbers as words, which in Spanish
 * agree with the noun: <i>veintiuna conchas</i>).
 */
public record Sentence(String text, String forSpeech) {}
