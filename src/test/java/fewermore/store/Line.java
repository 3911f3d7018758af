package fewermore.store;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;

/** The network between a laptop and the school's database, on loopback: it can be cut, go silent, and be there again. */
public final class Line implements AutoCloseable {
  private final ServerSocket listening;
  private final int to;
  private final Set<Socket> open = ConcurrentHashMap.newKeySet();
  private volatile boolean cut;
  private volatile boolean silent;
  private volatile boolean closed;

  public Line(int to) {
    try {
      this.listening = new ServerSocket(0, 100, InetAddress.getLoopbackAddress());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    this.to = to;
    daemon(this::accept);
  }

  public int port() {
    return listening.getLocalPort();
  }

  /** Every connection ends, and none comes about. */
  public void cut() {
    cut = true;
    open.forEach(Line::hangUp);
    open.clear();
  }

  /** Nothing goes through any more and nobody is told, as with a pulled cable. */
  public void goSilent() {
    silent = true;
  }

  /** It is there again; what went silent stays so. */
  public void mend() {
    silent = false;
    cut = false;
  }

  private static void daemon(Runnable work) {
    Thread thread = new Thread(work, "line");
    thread.setDaemon(true);
    thread.start();
  }

  private void accept() {
    while (!closed) {
      try {
        Socket laptop = listening.accept();
        if (cut) {
          laptop.close();
          continue;
        }
        Socket server = new Socket(InetAddress.getLoopbackAddress(), to);
        open.add(laptop);
        open.add(server);
        daemon(() -> pump(laptop, server));
        daemon(() -> pump(server, laptop));
      } catch (IOException e) {
        if (closed) {
          return;
        }
      }
    }
  }

  private void pump(Socket from, Socket into) {
    byte[] buffer = new byte[16 * 1024];
    try {
      InputStream in = from.getInputStream();
      OutputStream onward = into.getOutputStream();
      boolean dead = false;
      for (int read = in.read(buffer); read >= 0; read = in.read(buffer)) {
        dead |= silent;
        if (!dead) {
          onward.write(buffer, 0, read);
          onward.flush();
        }
      }
    } catch (IOException e) {
      // One end is gone: that is what this is for.
    }
    hangUp(from);
    hangUp(into);
  }

  private static void hangUp(Socket socket) {
    try {
      socket.close();
    } catch (IOException e) {
      // Closed already.
    }
  }

  @Override
  public void close() throws IOException {
    closed = true;
    listening.close();
    cut();
  }
}
