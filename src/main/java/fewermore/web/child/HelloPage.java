package fewermore.web.child;

/**
 * A tablet that tries whether it reaches the laptop: {@code pages/child/hello.html}. Its script posts {@code storage},
 * {@code english} and {@code spanish}, each {@code yes} or {@code no}, to {@code /hello}.
 *
 * @param language {@code en} or {@code es}
 */
public record HelloPage(String language) {}
