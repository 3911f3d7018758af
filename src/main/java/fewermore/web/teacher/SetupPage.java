package fewermore.web.teacher;

import fewermore.classroom.Child;
import fewermore.classroom.Classroom;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;

/**
 * The class and the way in. {@code pages/teacher/setup.html}.
 *
 * <p>Forms: {@code POST /setup/children}: {@code names}, one a line, added to the class.
 * {@code POST /board/door}: nothing; today's door is made anew. {@code POST /classes/{id}/look}: another class.
 *
 * @param address how tablets reach this laptop, or null when there is no network
 * @param others further addresses, for tablets on another network
 * @param vpn whether the laptop's way out is one that tablets can't reach
 * @param publicRange whether the address is outside the private ranges, so that a browser may warn
 * @param classes the teacher's other classes
 * @param problem a sentence about the last try, or null
 * @param names what was pasted at the last try, or empty
 */
public record SetupPage(
    String className, boolean invented, long classroom, String zone, List<ShownChild> children, QrPicture qr,
    String address, List<String> others, boolean vpn, boolean publicRange, List<OtherClass> classes, String dataFolder,
    String problem, String names) {

  public record OtherClass(long id, String name, boolean invented) {}

  public SetupPage {
    children = List.copyOf(children);
    others = List.copyOf(others);
    classes = List.copyOf(classes);
  }

  public static SetupPage of(
      Classroom room, Collection<Child> classList, String address, List<String> others, boolean vpn,
      boolean publicRange, Collection<Classroom> all, String dataFolder, String problem, String names) {
    List<ShownChild> children = classList.stream().sorted(Comparator.comparing(Child::name)).map(ShownChild::of).toList();
    List<OtherClass> classes = all.stream().filter(each -> each.id() != room.id())
        .map(each -> new OtherClass(each.id(), each.name(), each.invented())).toList();
    return new SetupPage(room.name(), room.invented(), room.id(), room.zone().getId(), children,
        address == null ? null : QrPicture.of(address), address, others, vpn, publicRange, classes, dataFolder,
        problem, names);
  }
}
