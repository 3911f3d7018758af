package fewermore.web;

import fewermore.web.teacher.HelpPage.License;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The licences of what is shipped, as {@code META-INF/licenses/all.txt} names them. */
final class Licences {
  private static final String FOLDER = "/META-INF/licenses/";
  private static final String ALL = "all.txt";
  private static final Pattern NAMED = Pattern.compile("see (\\S+\\.txt)");

  private Licences() {}

  /** The list of what is used first, then each licence's text. */
  static List<License> all() {
    TreeSet<String> names = new TreeSet<>();
    Matcher named = NAMED.matcher(read(ALL));
    while (named.find()) {
      names.add(named.group(1));
    }
    List<License> all = new ArrayList<>(List.of(new License("What is used, under which license", read(ALL))));
    names.forEach(name -> all.add(new License(name, read(name))));
    return all;
  }

  private static String read(String name) {
    try (InputStream in = Licences.class.getResourceAsStream(FOLDER + name)) {
      if (in == null) {
        throw new IllegalStateException("missing from the program: " + FOLDER + name);
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
