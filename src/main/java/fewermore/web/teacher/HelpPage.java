package fewermore.web.teacher;

import java.util.List;

/**
 * A short page of help, and the licenses of all that is in the app. {@code pages/teacher/help.html}.
 *
 * @param licenses each by the name it goes by and its whole text
 */
public record HelpPage(String version, String dataFolder, String address, List<License> licenses) {
  public HelpPage {
    licenses = List.copyOf(licenses);
  }

  public record License(String name, String text) {}
}
