package fewermore.web;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.URISyntaxException;
import java.net.URL;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;

/**
 * Style sheets, scripts, fonts and drawings. All stand under one name made from the content of all of them,
 * so that a tablet may keep them for a year and still never show an old one; inside, they find each other
 * by relative paths.
 */
public final class Assets {
  /** A file as it is sent. */
  public record File(byte[] content, String type) {}

  private static final Map<String, String> TYPES = Map.of(
      "css", "text/css; charset=utf-8",
      "js", "text/javascript; charset=utf-8",
      "svg", "image/svg+xml",
      "png", "image/png",
      "woff2", "font/woff2",
      "txt", "text/plain; charset=utf-8");

  private final Map<String, File> files;
  private final String version;

  private Assets(Map<String, File> files, String version) {
    this.files = files;
    this.version = version;
  }

  /** Reads all files under {@code static/} on the class path. */
  public static Assets load() {
    Map<String, File> files = new TreeMap<>();
    URL root = Assets.class.getClassLoader().getResource("static");
    if (root == null) {
      throw new IllegalStateException("the folder static is missing from the application");
    }
    try {
      URI uri = root.toURI();
      if (uri.getScheme().equals("jar")) {
        try (FileSystem jar = FileSystems.newFileSystem(uri, Map.of())) {
          read(jar.getPath("/static"), files);
        }
      } else {
        read(Path.of(uri), files);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (URISyntaxException e) {
      throw new IllegalStateException(e);
    }
    return new Assets(files, version(files));
  }

  private static void read(Path root, Map<String, File> files) throws IOException {
    try (Stream<Path> all = Files.walk(root)) {
      for (Path path : (Iterable<Path>) all.filter(Files::isRegularFile)::iterator) {
        String name = root.relativize(path).toString().replace('\\', '/');
        String type = TYPES.get(name.substring(name.lastIndexOf('.') + 1));
        if (type != null) {
          try (InputStream in = Files.newInputStream(path)) {
            files.put(name, new File(in.readAllBytes(), type));
          }
        }
      }
    }
  }

  private static String version(Map<String, File> files) {
    StringBuilder all = new StringBuilder();
    files.forEach((name, file) -> all.append(name).append(' ').append(Tokens.hash(file.content)).append('\n'));
    return Tokens.hash(all.toString()).substring(0, 12);
  }

  /** The address of a file, for templates: {@code of("css/tokens.css")}. */
  public String of(String name) {
    if (!files.containsKey(name)) {
      throw new IllegalArgumentException("there is no file static/" + name);
    }
    return "/static/" + version + "/" + name;
  }

  /** A file by its name, whatever version is asked: a page from before an update still finds its parts. */
  public Optional<File> find(String name) {
    return Optional.ofNullable(files.get(name));
  }
}
