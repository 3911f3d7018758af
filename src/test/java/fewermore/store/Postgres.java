package fewermore.store;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;

/** A real PostgreSQL on loopback in a temporary folder, started when a test first needs it and stopped with the JVM. */
public final class Postgres {
  private static EmbeddedPostgres server;

  private Postgres() {}

  /** The server the tests share. */
  public static synchronized School school() {
    if (server == null) {
      server = start();
    }
    return schoolOf(server.getPort());
  }

  /** The port of the server the tests share. */
  public static synchronized int port() {
    school();
    return server.getPort();
  }

  /** A server on loopback through another port, such as a {@link Line}. */
  public static School schoolOf(int port) {
    return new School("jdbc:postgresql://127.0.0.1:" + port + "/postgres", "postgres", "");
  }

  /** One of one's own, as a school's is: what it says is written is on its disk. */
  public static EmbeddedPostgres start() {
    return start(server());
  }

  /** One whose data stay in a folder when it is stopped. @param port 0 for any free one */
  public static EmbeddedPostgres startIn(Path data, int port) {
    EmbeddedPostgres.Builder server = server().setDataDirectory(data).setCleanDataDirectory(false);
    return start(port == 0 ? server : server.setPort(port));
  }

  private static EmbeddedPostgres.Builder server() {
    return EmbeddedPostgres.builder()
        .setServerConfig("listen_addresses", "127.0.0.1")
        .setServerConfig("fsync", "on")
        .setServerConfig("synchronous_commit", "on")
        .setServerConfig("max_connections", "100");
  }

  private static EmbeddedPostgres start(EmbeddedPostgres.Builder server) {
    try {
      return server.start();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
