package fewermore.web.child;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fewermore.classroom.Picture;
import fewermore.json.Json;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ChildTemplatesTest {
  private static final ChildPages PAGES = new ChildPages();

  private static Map<String, String> allPages(String language) {
    ShownProblem shells = "es".equals(language) ? Samples.spanishShells(1) : Samples.shells(1, null, null);
    return Map.of(
        "come-in", PAGES.render("child/come-in", language, Samples.comeIn(language, 30)),
        "come-in, nobody", PAGES.render("child/come-in", language, Samples.comeIn(language, 0)),
        "door", PAGES.render("child/door", language, Samples.door(language, 2, DoorPage.Problem.OTHER_PICTURES)),
        "is this you", PAGES.render("child/is-this-you", language,
            new IsThisYouPage(language, Samples.noor(), "/come-in/15")),
        "secret", PAGES.render("child/secret", language,
            SecretPage.of(language, Samples.noor(), "/come-in/15", SecretPage.Problem.WAIT_A_MINUTE)),
        "hello", PAGES.render("child/hello", language, new HelloPage(language)),
        "mine", PAGES.render("child/mine", language, Samples.sitting(language, shells)),
        "mine, nothing", PAGES.render("child/mine", language, Samples.sitting(language)),
        "work", PAGES.render("child/work", language, new WorkPage(language, Samples.noor(), shells, 4, "w2")));
  }

  @ParameterizedTest
  @ValueSource(strings = {"en", "es"})
  void everyPageRendersWithoutAMissingTextOrAnythingAStrictPolicyForbids(String language) {
    allPages(language).forEach((name, html) -> assertAll(name,
        () -> assertFalse(html.contains("??"), "missing text"),
        () -> assertFalse(html.contains("th:"), "left-over template attribute"),
        () -> assertFalse(html.matches("(?s).* style=.*"), "inline style"),
        () -> assertFalse(html.matches("(?s).*<[a-z][^>]* on[a-z]+=.*"), "inline handler"),
        () -> assertFalse(html.matches("(?s).*<script(?![^>]*(src=|application/json))[^>]*>.*"), "inline script"),
        () -> assertTrue(html.contains("lang=\"" + language + "\""), "language")));
  }

  @Test
  void everyPictureHasADrawingAGroundAndANameAndNoTwoAreAlike() {
    var drawings = new HashSet<String>();
    for (Picture picture : Picture.ALL) {
      assertTrue(Drawings.has(picture.id()), picture.id());
      assertTrue(Picture.GROUNDS.contains(picture.ground()), picture.id());
      assertTrue(ChildTexts.in("en").has("picture." + picture.id()), picture.id());
      assertTrue(drawings.add(Drawings.of(picture.id())), picture.id());
    }
    assertTrue(Picture.ALL.size() >= 36, "a class of 36 has no two alike");
  }

  @Test
  void aNameThatLooksLikeMarkupIsWrittenAsText() {
    Me odd = new Me("<b>Noor</b>", new ShownPicture("leaf", "moss"));
    String html = PAGES.render("child/mine", "en",
        new SittingPage("en", odd, "s", "k", List.of(Samples.shells(1, null, null))));
    assertFalse(html.contains("<b>Noor"));
    assertTrue(html.contains("&lt;b&gt;Noor"));
  }

  @Test
  void theDataOfASittingHoldTheProblemsButNotTheChild() {
    SittingPage page = Samples.today();
    String data = page.data();
    assertFalse(data.contains("Noor"), "the name stays in the page alone");
    assertFalse(data.contains("<"), "nothing can end the script block");
    var read = Json.read(data);
    assertEquals(4, read.path("problems").size());
    assertEquals("look-again", read.at("/problems/1/told/signs/bars").asText());
    assertEquals("x", read.at("/problems/1/draft/parts/bars/gap").asText());
  }

  @Test
  void aSittingOfTenProblemsIsAtMostSixtyKilobytes() {
    ShownProblem[] ten = new ShownProblem[10];
    for (int i = 0; i < 10; i++) {
      ten[i] = Samples.stripedShells(i + 1);
    }
    int bytes = PAGES.render("child/mine", "en", Samples.sitting("en", ten))
        .getBytes(java.nio.charset.StandardCharsets.UTF_8).length;
    assertTrue(bytes <= 60 * 1024, bytes + " bytes");
  }
}
