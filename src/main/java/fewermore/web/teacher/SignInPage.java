package fewermore.web.teacher;

/**
 * {@code pages/teacher/sign-in.html}; posts {@code passphrase} to {@code /sign-in}.
 *
 * @param problem a sentence about the last try, or null
 */
public record SignInPage(String problem) {}
