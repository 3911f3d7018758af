package fewermore;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;

/** Everything of others that is shipped is named with its licence, and the licence's text is there. */
class LicencesTest {
  private static final Path LICENSES = Path.of("src/main/resources/META-INF/licenses");
  private static final Pattern SEE = Pattern.compile("see (\\S+\\.txt)");

  private static String all() {
    try {
      return Files.readString(LICENSES.resolve("all.txt"));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Test
  void everyDependencyOfThePomIsNamedAtItsVersion() throws IOException {
    String pom = Files.readString(Path.of("pom.xml"));
    Set<String> missing = new TreeSet<>();
    Matcher dependency = Pattern.compile(
        "<groupId>([^<]+)</groupId><artifactId>([^<]+)</artifactId><version>\\$\\{([^}]+)}</version>(<scope>test)?")
        .matcher(pom);
    int found = 0;
    while (dependency.find()) {
      if (dependency.group(4) == null) {
        found++;
        Matcher version = Pattern.compile("<" + Pattern.quote(dependency.group(3)) + ">([^<]+)<").matcher(pom);
        assertTrue(version.find(), dependency.group(3));
        String line = dependency.group(1) + ":" + dependency.group(2) + " " + version.group(1) + ": ";
        if (!all().contains(line)) {
          missing.add(line);
        }
      }
    }
    assertTrue(found >= 14, "dependencies were not found: " + found);
    assertEquals(Set.of(), missing);
  }

  @Test
  void everyLicenceNamedIsThereAndEveryOneThereIsNamed() throws IOException {
    Set<String> named = new TreeSet<>();
    Matcher see = SEE.matcher(all());
    while (see.find()) {
      named.add(see.group(1));
    }
    Set<String> there = new TreeSet<>();
    try (var files = Files.list(LICENSES)) {
      files.map(file -> file.getFileName().toString()).filter(name -> !name.equals("all.txt")).forEach(there::add);
    }
    assertEquals(there, named);
  }

  /** Licences under which a library may be given away with the app; every library needs one of them. */
  private static final Set<String> MAY_BE_GIVEN_AWAY =
      Set.of("Apache-2.0", "MIT", "BSD-3-Clause", "BSD-2-Clause", "EPL-2.0", "MPL-2.0");

  @Test
  void everyLibraryShippedMayBeGivenAway() throws IOException {
    Path bill = Path.of("target/bom.json");
    boolean made = Files.exists(bill);
    if (!made && System.getenv("CI") == null) {
      System.err.println("SKIPPED: the bill of materials is made by the whole test command only");
      Assumptions.abort();
    }
    Set<String> forbidden = new TreeSet<>();
    int libraries = 0;
    for (JsonNode library : new ObjectMapper().readTree(bill.toFile()).get("components")) {
      libraries++;
      Set<String> licences = new TreeSet<>();
      library.path("licenses").forEach(each -> {
        licences.add(each.path("license").path("id").asText(""));
        licences.addAll(Set.of(each.path("expression").asText("").split(" OR ")));
      });
      if (licences.stream().noneMatch(MAY_BE_GIVEN_AWAY::contains)) {
        forbidden.add(library.get("name").asText() + " " + licences);
      }
    }
    assertTrue(libraries >= 50, "libraries were not found: " + libraries);
    assertEquals(Set.of(), forbidden);
  }
}
