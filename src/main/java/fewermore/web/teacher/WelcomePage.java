package fewermore.web.teacher;

/**
 * After the passphrase: her own class or the invented one. {@code pages/teacher/welcome.html}; posts
 * {@code name} and {@code names}, one a line, to {@code /classes}, or nothing to {@code /classes/invented}.
 *
 * @param name what she typed as the class's name
 * @param names what she pasted
 * @param problem a sentence about the last try, or null
 * @param most how many children a class may have
 */
public record WelcomePage(String name, String names, String problem, int most) {}
