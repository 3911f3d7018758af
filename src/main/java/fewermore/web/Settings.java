package fewermore.web;

import java.nio.file.Path;

/**
 * How the app is started.
 *
 * @param data the folder all data lie in
 * @param port the tablets' port; 0 takes any free one
 * @param teacherPort the teacher's port, on loopback only; 0 takes any free one
 * @param host the address the tablets' port is bound to; {@code 0.0.0.0} for every network
 * @param publicAddress the address tablets use when this machine can't know it (in a container), or null
 * @param teacherHost the address the teacher's port is bound to: loopback, but for a container, whose own
 *     loopback nobody outside reaches and whose port is published on the laptop's loopback only
 */
public record Settings(
    Path data, int port, int teacherPort, String host, String publicAddress, String teacherHost) {
  /** The teacher's pages are served to this very laptop only. */
  public static final String LOOPBACK = "127.0.0.1";

  public static final int PORT = 8420;
  public static final int TEACHER_PORT = 8421;

  /** The teacher's port on loopback, as everywhere but in a container. */
  public Settings(Path data, int port, int teacherPort, String host, String publicAddress) {
    this(data, port, teacherPort, host, publicAddress, LOOPBACK);
  }
}
