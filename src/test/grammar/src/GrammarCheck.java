import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.languagetool.JLanguageTool;
import org.languagetool.Languages;
import org.languagetool.rules.ITSIssueType;
import org.languagetool.rules.Rule;
import org.languagetool.rules.RuleMatch;

/**
 * Runs a grammar checker over texts, one a line, spelling and style rules off, and prints what it finds. From the
 * top of the repository, after {@code mvn test-compile}:
 *
 * <pre>
 * java -cp target/classes:target/test-classes fewermore.wording.EveryText en &gt; target/texts-en.txt
 * mvn -q -f src/test/grammar/pom.xml compile exec:java -Dexec.args="en-US target/texts-en.txt"
 * </pre>
 *
 * <p>and the same with {@code es} and {@code es}. Last run: 2,782 English and 2,458 Spanish texts. One rule speaks up,
 * wrongly: FEWER_LESS takes "does" in "How much less does Zoe's dog weigh" for the plural of "doe".
 */
public final class GrammarCheck {
  private GrammarCheck() {}

  public static void main(String[] args) throws IOException {
    JLanguageTool checker = new JLanguageTool(Languages.getLanguageForShortCode(args[0]));
    for (Rule rule : checker.getAllActiveRules()) {
      if (rule.isDictionaryBasedSpellingRule() || rule.getLocQualityIssueType() == ITSIssueType.Style) {
        checker.disableRule(rule.getId());
      }
    }
    List<String> lines = Files.readAllLines(Path.of(args[1]), StandardCharsets.UTF_8);
    Map<String, List<String>> found = new TreeMap<>();
    for (String line : lines) {
      for (RuleMatch match : checker.check(line)) {
        found.computeIfAbsent(match.getSpecificRuleId() + ": " + match.getMessage(), rule -> new ArrayList<>())
            .add(line);
      }
    }
    System.out.println(lines.size() + " texts, " + found.size() + " rules speak up");
    found.forEach((rule, texts) -> {
      System.out.println(texts.size() + " × " + rule);
      texts.stream().limit(5).forEach(text -> System.out.println("    " + text));
    });
  }
}
