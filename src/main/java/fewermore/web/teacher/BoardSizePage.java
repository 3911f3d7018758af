package fewermore.web.teacher;

/**
 * How large the Board writes. {@code pages/board/size.html}, {@code GET /board/size}; the form posts {@code distance},
 * {@code height} (any unit, both the same) and {@code dark} to the same address.
 *
 * @param problem a sentence about the last try, or null
 */
public record BoardSizePage(String distance, String height, boolean dark, boolean tooFar, String problem) {}
