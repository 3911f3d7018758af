package fewermore.web.teacher;

import fewermore.classroom.Child;
import fewermore.classroom.ClassSetup;
import fewermore.classroom.Classroom;
import fewermore.marking.Part;
import fewermore.store.SetupStore.LeftChild;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

/**
 * The class list and how the class is set up. {@code pages/teacher/setup.html}. Posts to {@code /setup}: {@code name},
 * {@code zone}, {@code tries}, {@code part-<id>}, {@code tell} ({@code now} or {@code later}).
 *
 * @param backRow how far it is and how high the picture, for example "27 4"
 * @param address how tablets reach this laptop, or null when there is no network
 * @param vpn whether the laptop's way out is one that tablets can't reach
 * @param publicRange whether the address is outside the private ranges, so that a browser may warn
 * @param until until when the class is kept, in words, or null
 * @param past whether that day is over
 * @param problem a sentence about the last try, or null
 */
public record SetupPage(
    String className, boolean invented, String zone, List<String> zones, List<Line> children, List<Left> left,
    int tries, List<AskedPart> parts, boolean tellLater, String backRow, String address, boolean vpn, boolean publicRange,
    String dataFolder, String until, boolean past, String problem) {

  /** @param spanish whether she reads Spanish */
  public record Line(ShownChild child, boolean spanish) {}

  public record Left(ShownChild child, String on) {}

  public record AskedPart(String id, String word, boolean asked) {}

  public SetupPage {
    zones = List.copyOf(zones);
    children = List.copyOf(children);
    left = List.copyOf(left);
    parts = List.copyOf(parts);
  }

  public static SetupPage of(
      Classroom room, ClassSetup setup, Collection<Child> classList, Collection<LeftChild> left, String backRow, String address,
      boolean vpn, boolean publicRange, String dataFolder, LocalDate today, String problem) {
    List<Line> children = classList.stream().sorted(Comparator.comparing(Child::name))
        .map(child -> new Line(ShownChild.of(child), child.language().equals("es"))).toList();
    List<AskedPart> parts = Stream.of(Part.values())
        .map(part -> new AskedPart(part.id(), PartWords.of(part), setup.usualParts().contains(part))).toList();
    LocalDate until = setup.keptUntil();
    return new SetupPage(room.name(), room.invented(), room.zone().getId(), zones(room.zone()), children,
        left.stream().map(each -> new Left(ShownChild.of(each.child()), AmericanDates.shortDay(each.on()))).toList(),
        setup.usualTries(), parts, setup.tellLater(), backRow, address, vpn, publicRange, dataFolder,
        until == null ? null : AmericanDates.longDay(until) + ", " + until.getYear(),
        until != null && until.isBefore(today), problem);
  }

  public String distance() {
    return backRow.split(" ")[0];
  }

  public String height() {
    return backRow.split(" ")[1];
  }

  /** Those of the United States first, then this class's own where it is another. */
  private static List<String> zones(ZoneId own) {
    List<String> usual = List.of("America/New_York", "America/Chicago", "America/Denver", "America/Phoenix",
        "America/Los_Angeles", "America/Anchorage", "Pacific/Honolulu", "America/Puerto_Rico");
    return Stream.concat(usual.stream(), Stream.of(own.getId())).distinct().toList();
  }
}
