package fewermore.web;

import com.microsoft.playwright.Browser.NewContextOptions;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import fewermore.classroom.Child;
import fewermore.classroom.Classroom;
import fewermore.classroom.Picture;
import fewermore.classroom.ProblemSet;
import fewermore.classroom.SentItem;
import fewermore.classroom.Sitting;
import fewermore.marking.Part;
import fewermore.marking.Work;
import fewermore.problem.NumberRange;
import fewermore.problem.Problem;
import fewermore.problem.ProblemWriter;
import fewermore.problem.Regrouping;
import fewermore.store.ClassStore.NewChild;
import fewermore.store.ProblemStore.NewProblem;
import fewermore.story.Kind;
import fewermore.web.child.SecretPage;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/**
 * Pictures of a child's pages in every state, from the real app, to be looked at: {@code Pictures FOLDER [SIZES
 * [LANGUAGES]]}, for example {@code pictures 1024x600,768x1024 es}. A size followed by {@code x2} is at 200 % text,
 * {@code 1024x600x2}: half the viewport at twice the scale, as a browser's zoom makes it.
 */
public final class Pictures {
  private static final String SIZES = "1024x600,768x1024,1280x800,1024x600x2,768x1024x2,1280x800x2";

  /** Stands in for a voice of the tablet that is there and speaks. */
  private static final String VOICES = """
      const voices = [{ name: 'Samantha', lang: 'en-US', localService: true },
        { name: 'Paulina', lang: 'es-MX', localService: true }];
      window.SpeechSynthesisUtterance = function (text) { this.text = text; };
      Object.defineProperty(window, 'speechSynthesis', { value: { getVoices: () => voices, speaking: false,
        pending: false, cancel() {}, addEventListener() {},
        speak(utterance) { setTimeout(() => utterance.onstart?.(), 20); } } });
      """;

  private static final List<String> NAMES = List.of("Ana", "Ben", "Chloe", "Dev", "Emma", "Farid", "Grace", "Hana",
      "Ivo", "Jada", "Kai", "Lena", "Maximiliano", "Nora", "Omar", "Priya", "Quinn", "Rosa", "Sam", "Tess", "Uma", "Vera",
      "Will", "Xena", "Yusuf", "Zoe");

  private final Rig rig;
  private final Path folder;
  private final String prefix;
  private final BrowserContext tablet;
  private final Page page;
  private final String origin;
  private int number;

  private Pictures(Rig rig, Path folder, String prefix, NewContextOptions options, boolean voice) {
    this.rig = rig;
    this.folder = folder;
    this.prefix = prefix;
    this.tablet = Chromium.tablet(options);
    if (voice) {
      tablet.addInitScript(VOICES);
    }
    tablet.setDefaultTimeout(90_000);   // other work may go on beside
    this.page = tablet.newPage();
    this.origin = "http://tablet.test:" + rig.app.port();
  }

  public static void main(String[] arguments) {
    int status = 1;
    try {
      draw(arguments);
      status = 0;
    } catch (Exception e) {
      e.printStackTrace();
    } finally {
      System.exit(status);              // a browser that is still open would keep the program alive
    }
  }

  private static void draw(String[] arguments) throws Exception {
    Path folder = Files.createDirectories(Path.of(arguments[0]));
    for (String size : (arguments.length > 1 ? arguments[1] : SIZES).split(",")) {
      for (String language : (arguments.length > 2 ? arguments[2] : "en,es").split(",")) {
        String[] numbers = size.split("x");
        int scale = numbers.length > 2 ? 2 : 1;
        try (Rig rig = Rig.startForTablets()) {
          NewContextOptions options = new NewContextOptions().setHasTouch(true)
              .setViewportSize(Integer.parseInt(numbers[0]) / scale, Integer.parseInt(numbers[1]) / scale)
              .setDeviceScaleFactor(scale);
          Child child = child(rig, language);
          new Pictures(rig, folder, size + "-" + language, options, true).doorsAndCalls(child);
          new Pictures(rig, folder, size + "-" + language, options, true).workingItOut(child);
          new Pictures(rig, folder, size + "-" + language, options.setJavaScriptEnabled(false), false)
              .pausedWithoutScript(child);
        }
        try (Rig rig = Rig.startForTablets()) {
          NewContextOptions options = new NewContextOptions().setHasTouch(true)
              .setViewportSize(Integer.parseInt(numbers[0]) / scale, Integer.parseInt(numbers[1]) / scale)
              .setDeviceScaleFactor(scale);
          new Pictures(rig, folder, size + "-" + language, options, true).all(child(rig, language));
          new Pictures(rig, folder, size + "-" + language, options, false).withoutVoice(child(rig, language));
          new Pictures(rig, folder, size + "-" + language, options.setJavaScriptEnabled(false), false)
              .withoutScript(child(rig, language));
        }
        System.out.println(size + " " + language);
      }
    }
  }

  private static Child child(Rig rig, String language) {
    rig.services.classes.addChildren(rig.classroom.id(),
        List.of(new NewChild("Marisol", "fish", "sea", language)), rig.now());
    List<Child> all = rig.services.classes.children(rig.classroom.id());
    return all.get(all.size() - 1);
  }

  /** A long story of two kinds, one of a length with a number too many, one of counted things. */
  private void give(int tries, boolean tellLater) {
    List<NewProblem> problems = new ArrayList<>();
    for (Map.Entry<Kind, Long> each : new TreeMap<>(Map.of(Kind.LARGER_FEWER, 4L, Kind.SMALLER_MORE, 21L)).entrySet()) {
      Problem problem = ProblemWriter.generate(each.getKey(), NumberRange.WITHIN_100, Regrouping.EITHER, each.getValue());
      problems.add(NewProblem.of(problem));
    }
    rig.services.problems.addSet(rig.classroom.id(), rig.services.today(rig.classroom), true, tries, tellLater,
        Set.of(Part.READING, Part.BARS, Part.EQUATION, Part.ANSWER, Part.LABEL, Part.ESTIMATE), problems, rig.now());
    rig.services.problems.addSet(rig.classroom.id(), rig.services.today(rig.classroom), true, tries, tellLater,
        ProblemSet.USUAL_PARTS, problems.subList(0, 1), rig.now());
  }

  private void comeIn(Child child) {
    page.navigate(origin + "/in/" + rig.door());
    page.click("a[href='/come-in/" + child.id() + "']");
    page.click("form[data-once] button[type=submit], form button[type=submit]");
    page.waitForURL("**/mine");
  }

  private void shot(String state) {
    page.waitForTimeout(220);
    page.screenshot(new Page.ScreenshotOptions().setFullPage(true)
        .setPath(folder.resolve(String.format("%s-%02d-%s.png", prefix, ++number, state))));
  }

  private void open(int problem) {
    page.click("[data-open='" + problem + "']");
    page.waitForSelector(".show");
  }

  private void tab(String part) {
    page.click("[data-part='" + part + "']");
    page.waitForSelector("[data-for='" + part + "']:not([hidden])");
  }

  private void keys(String part, String text) {
    String before = "";
    for (String key : text.split("")) {
      page.waitForTimeout(key.equals(before) ? 170 : 0);
      page.click("[data-for=" + part + "] [data-key='" + key + "']");
      before = key;
    }
  }

  private void put(String chip, String place) {
    page.click("[data-chip='" + chip + "']");
    page.click("[data-place='" + place + "']");
  }

  private void all(Child child) {
    give(2, false);
    comeIn(child);
    page.waitForSelector("[data-open='1'][href='#1']");
    page.waitForTimeout(1100);
    shot("my-problems");
    open(3);
    shot("reading-empty");
    page.locator("[data-pick]").last().click();
    shot("reading-question-found");
    page.locator("[data-number-word]").first().click();
    page.locator("[data-number-word]").last().click();
    shot("reading-full");
    tab("bars");
    shot("bars-empty");
    page.click("[data-longer='1']");
    page.waitForTimeout(200);
    shot("bars-who-has-more");
    List<String> chips = page.locator("[data-chip]").allTextContents();
    page.click("[data-chip='" + chips.get(0) + "']");
    shot("bars-picked");
    page.click("[data-place='0']");
    page.click("[data-other]");
    keys("bars", "27");
    shot("bars-own-number");
    page.click("[data-key=ready]");
    page.click("[data-place='1']");
    put(chips.get(1), "gap");
    shot("bars-full");
    tab("equation");
    shot("equation-empty");
    keys("equation", chips.get(0) + "−" + chips.get(1) + "=□");
    shot("equation-full");
    tab("answer");
    shot("answer-empty");
    keys("answer", "38");
    shot("answer-full");
    tab("label");
    shot("label-empty");
    page.locator("[data-word]").nth(2).click();
    shot("label-full");
    page.click("[data-hand]");
    shot("help-asked");
    page.click("[data-listen]");
    page.click("[data-part=equation]");
    shot("touch-and-listen");
    page.click("[data-listen]");
    page.click("[data-menu]");
    shot("menu");
    page.click("[data-own-keys]");
    page.click("[data-menu-close]");
    shot("own-keyboard");
    page.click("[data-menu]");
    page.click("[data-own-keys]");
    page.click("[data-menu-close]");
    tab("estimate");
    shot("estimate-empty");
    page.waitForTimeout(850);
    page.click("[data-hand-in]");
    shot("asked-about-a-blank-part");
    page.click("[data-ask-box] [data-go]");
    keys("estimate", "40");
    shot("estimate-full");
    tablet.setOffline(true);
    tab("answer");
    keys("answer", "1");
    shot("kept-on-this-tablet");
    tablet.setOffline(false);
    page.waitForTimeout(850);
    page.click("[data-hand-in]");
    page.waitForSelector(".parts a:not([hidden]) .tick.again");
    shot("look-again");
    tab("answer");
    shot("handed-in-another-part");
    keys("answer", "2");
    page.waitForTimeout(850);
    page.click("[data-hand-in]");
    page.waitForSelector(".show.locked");
    tab("bars");
    shot("no-tries-left");
    page.click(".show [data-still-you]");
    shot("covered");
    page.click("[data-still-me]");
    page.click("[data-back]");
    open(4);
    right();
    shot("handed-in-all-fits");
    page.click("[data-back]");
    shot("my-problems-after");
    open(5);
    right();
    shot("fits-without-estimate");
    tab("equation");
    shot("fits-equation");
    page.click("[data-back]");
    tablet.setOffline(true);
    page.click("[data-leave] button");
    if (page.isVisible("[data-ask-box]")) {
      shot("asked-before-leaving");
      page.click("[data-anyway]");
    }
    page.waitForSelector(".closed");
    shot("closed-waiting");
    tablet.close();
  }

  /** Does the open problem as its story says. */
  private void right() {
    int at = Integer.parseInt(page.url().replaceAll(".*#(\\d+).*", "$1"));
    var works = new ArrayList<fewermore.classroom.AssignedProblem>();
    rig.services.problems.given(rig.classroom.id(), rig.services.today(rig.classroom))
        .forEach(set -> works.addAll(set.problems()));
    var story = works.get(at - 1).story();
    var work = new RightWork(story);
    tab("bars");
    page.locator(".lane .who", new Page.LocatorOptions()).first().waitFor();
    int longer = page.locator("[data-build] .who").allTextContents().indexOf(work.nameOfLonger(page.getAttribute("html", "lang")));
    page.click("[data-longer='" + longer + "']");
    put(work.on(fewermore.story.Role.LARGER), String.valueOf(longer));
    put(work.on(fewermore.story.Role.SMALLER), String.valueOf(1 - longer));
    put(work.on(fewermore.story.Role.DIFFERENCE), "gap");
    tab("equation");
    keys("equation", work.equation());
    tab("answer");
    keys("answer", String.valueOf(story.answer()));
    tab("label");
    page.fill("[data-for=label] [data-field]", story.thing().many());
    if (page.isVisible("[data-part=estimate]")) {
      tab("estimate");
      keys("estimate", String.valueOf((story.answer() + 5) / 10 * 10));
    }
    page.waitForTimeout(850);
    page.click("[data-hand-in]");
    page.waitForSelector("[data-for=fitted]:not([hidden])");
  }

  /** Coming in among thirty, nothing to do, what waits from another day, a call, a pause, one more. */
  private void doorsAndCalls(Child child) {
    number = 70;
    List<NewChild> more = new ArrayList<>();
    for (int at = 4; at < 30; at++) {
      Picture picture = Picture.ALL.get(at);
      more.add(new NewChild(NAMES.get(at - 4), picture.id(), picture.ground(), "en"));
    }
    rig.services.classes.addChildren(rig.classroom.id(), more, rig.now());
    rig.services.cards.setSecrets(Map.of(child.id(), SecretPage.CHOICES.subList(2, 4)));
    rig.services.cards.askSecret(rig.classroom.id(), true);
    LocalDate today = rig.services.today(rig.classroom);
    nothingYet(child.language());
    page.navigate(origin + "/come-in?language=" + child.language());
    shot("door");
    page.navigate(origin + "/in/" + rig.door());
    shot("come-in-thirty");
    page.click("a[href='/come-in/" + child.id() + "']");
    shot("is-this-you");
    page.click("form button[type=submit]");
    page.waitForSelector("[name=secret]");
    shot("secret");
    SecretPage.CHOICES.subList(2, 4).forEach(each -> page.click("label:has([value='" + each + "']), button[value='" + each + "']"));
    shot("secret-tapped");
    page.waitForURL("**/mine");
    rig.services.problems.addSet(rig.classroom.id(), today.minusDays(1), true, 3, false, ProblemSet.USUAL_PARTS,
        List.of(Stories.BEADS), rig.now());
    rig.services.problems.addSet(rig.classroom.id(), today, true, 3, false, ProblemSet.USUAL_PARTS,
        List.of(Stories.SHELLS), rig.now());
    page.navigate(origin + "/mine");
    page.waitForSelector("[data-open='1'][href='#1']");
    shot("from-another-day");
    Sitting sitting = rig.services.sittings.open(rig.classroom.id()).get(0);
    rig.services.calls.call(sitting.id(), "call.come", rig.now());
    page.navigate(origin + "/mine");
    page.waitForSelector("[data-call][open]");
    shot("call");
    page.click("[data-call-seen]");
    rig.services.pauses.pause(rig.classroom.id(), rig.now());
    page.navigate(origin + "/mine");
    page.waitForSelector("[data-pause][open]");
    page.waitForTimeout(1000);
    shot("pause");
    rig.services.pauses.goOn(rig.classroom.id(), rig.now());
    page.waitForSelector("[data-call][open]");
    page.click("[data-call-seen]");
    rig.services.sittings.works(sitting, today, rig.services.tokens::idInOrder, rig.now()).forEach(work ->
        rig.services.works.keep(sitting.id(), List.of(new SentItem(work.id(), "p", 1, SentItem.Kind.HANDED_IN,
            new Work("52-14=x", "38", "shells", null, null), rig.now(), false)), rig.now()));
    page.navigate(origin + "/mine");
    page.waitForSelector("[data-more]:not([hidden])");
    page.waitForSelector("[data-call][open]");
    page.click("[data-call-seen]");
    shot("one-more");
    tablet.close();
  }

  private void nothingYet(String language) {
    Classroom other = rig.services.classes.add(rig.services.teachers.first().orElseThrow().id(), "Room 14",
        rig.classroom.zone(), false, List.of(new NewChild("Ada", "drum", "sea", language)), rig.now());
    page.navigate(origin + "/in/" + rig.services.door(other).token());
    page.click(".tile");
    page.click("form button[type=submit]");
    page.waitForURL("**/mine");
    shot("nothing-yet");
    tablet.clearCookies();
  }

  /** All seven parts asked: the three ways to work it out, empty, worked, and with their keys open. */
  private void workingItOut(Child child) {
    number = 85;
    rig.services.cards.askSecret(rig.classroom.id(), false);
    rig.services.problems.addSet(rig.classroom.id(), rig.services.today(rig.classroom), true, 3, false,
        Set.of(Part.values()), List.of(Stories.SHELLS), rig.now());
    comeIn(child);
    page.waitForSelector("[data-open='1'][href='#1']");
    page.click("[data-open]:has([data-pm=strategy])");
    tab("equation");
    keys("equation", "52−14=□");
    shot("seven-parts");
    tab("estimate");
    page.click("[data-side=smaller]");
    shot("estimate-side");
    tab("strategy");
    shot("strategy-choose");
    way("pieces");
    shot("pieces-empty");
    times("[data-put=ten]", 5);
    times("[data-put=one]", 2);
    times("[data-pile='1'][data-column=ten]", 1);
    shot("pieces-picked");
    times("[data-do=trade]", 1);
    times("[data-do=away]", 1);
    times("[data-pile='1'][data-column=one]", 1);
    times("[data-do=away]", 4);
    shot("pieces-taken-away");
    page.click("[data-way=pieces] [data-count]");
    shot("pieces-keys");
    page.click("[data-pad] [data-key=away]");
    times("[data-second-pile]", 1);
    times("[data-put=ten]", 3);
    times("[data-put=one]", 9);
    shot("pieces-two-piles");
    way("line");
    shot("line-empty");
    times("[data-start]", 1);
    number(52);
    times("[data-jump='-10']", 1);
    shot("line-keys");
    number(42);
    times("[data-jump=back]", 1);
    number(2);
    number(40);
    times("[data-jump=back]", 1);
    number(2);
    number(38);
    shot("line-jumps");
    times("[data-undo]", 4);
    way("expanded");
    shot("expanded-empty");
    for (String[] each : new String[][] {{"first-tens", "50"}, {"first-ones", "2"}, {"second-tens", "10"}, {"second-ones", "4"}}) {
      times("[data-cell='" + each[0] + "']", 1);
      number(Integer.parseInt(each[1]));
    }
    times("[data-regroup=first]", 1);
    times("[data-cell='first-again-tens']", 1);
    shot("expanded-keys");
    number(40);
    times("[data-cell='first-again-ones']", 1);
    number(12);
    for (String[] each : new String[][] {{"result-tens", "30"}, {"result-ones", "8"}, {"written", "38"}}) {
      times("[data-cell='" + each[0] + "']", 1);
      number(Integer.parseInt(each[1]));
    }
    shot("expanded-done");
    tablet.close();
  }

  private void way(String kind) {
    page.locator("[data-for=strategy] [data-kind=" + kind + "]:visible").first().click();
    page.waitForSelector("[data-way=" + kind + "]:not([hidden])");
  }

  private void times(String selector, int times) {
    for (int at = 0; at < times; at++) {
      page.click(selector + ":visible");
      page.waitForTimeout(30);
    }
  }

  private void number(int number) {
    page.waitForSelector("[data-pad]:not([hidden])");
    String before = "";
    for (String digit : Integer.toString(number).split("")) {
      page.waitForTimeout(digit.equals(before) ? 170 : 0);
      page.click("[data-pad] [data-key='" + digit + "']");
      before = digit;
    }
    page.click("[data-pad] [data-key=ready]");
  }

  private void pausedWithoutScript(Child child) {
    number = 66;
    comeIn(child);
    rig.services.pauses.pause(rig.classroom.id(), rig.now());
    page.navigate(origin + "/mine");
    shot("no-script-paused");
    page.click(".problem:has([data-pm=strategy])");
    shot("no-script-seven-parts");
    tablet.close();
  }

  private void withoutVoice(Child child) {
    number = 50;
    rig.services.problems.addSet(rig.classroom.id(), rig.services.today(rig.classroom), true, 3, true,
        ProblemSet.USUAL_PARTS, List.of(Stories.SHELLS), rig.now());
    comeIn(child);
    page.waitForSelector("[data-open='1'][href='#1']");
    open(1);
    page.waitForTimeout(1100);
    shot("no-voice");
    page.click("[data-back]");
    int last = page.locator("[data-open]").count();
    open(last);
    tab("answer");
    keys("answer", "66");
    page.waitForTimeout(850);
    page.click("[data-hand-in]");
    if (page.isVisible("[data-ask-box]")) {
      page.click("[data-ask-box] [data-go]");
      page.waitForTimeout(850);
      page.click("[data-hand-in]");
    }
    page.waitForTimeout(600);
    shot("handed-in-told-later");
    tablet.close();
  }

  private void withoutScript(Child child) {
    number = 60;
    comeIn(child);
    shot("no-script-my-problems");
    page.click(".problem >> nth=2");
    shot("no-script-problem");
    page.locator("input[name=question]").last().check();
    page.fill("input[name=equation]", "52 + 14 = ?");
    page.fill("input[name=answer]", "66");
    page.locator("form .button.first").first().click();
    shot("no-script-handed-in");
    page.click("form[action$='/hand'] button");
    shot("no-script-hand-up");
    tablet.close();
  }
}
