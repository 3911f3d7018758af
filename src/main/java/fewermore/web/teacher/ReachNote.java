package fewermore.web.teacher;

import java.net.URI;

/**
 * One page for the school's IT. {@code pages/teacher/reach-note.html}, {@code GET /setup/reach/note}.
 *
 * @param address what tablets open, or null when there is no network
 * @param port the one TCP port
 * @param hardware the hardware address this network sees, or null where the machine does not say
 */
public record ReachNote(String address, int port, String hardware) {
  /** The address alone, without port; null when there is none. */
  public String host() {
    return address == null ? null : URI.create(address).getHost();
  }
}
