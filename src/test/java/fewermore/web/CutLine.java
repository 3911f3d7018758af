package fewermore.web;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicLong;

/**
 * A bad Wi-Fi between tablets and the laptop, on loopback: connections that are cut, answers that get lost after the
 * laptop has done its work, requests that stick for seconds, and moments in which nothing goes at all.
 */
final class CutLine implements AutoCloseable {
  final AtomicLong connections = new AtomicLong();
  final AtomicLong cut = new AtomicLong();
  final AtomicLong answersLost = new AtomicLong();
  final AtomicLong stuck = new AtomicLong();
  final AtomicLong outages = new AtomicLong();

  private final ServerSocket listening;
  private final int to;
  private final Random random;
  private final Set<Socket> open = ConcurrentHashMap.newKeySet();
  private final AtomicBoolean bad = new AtomicBoolean();
  private final AtomicBoolean closed = new AtomicBoolean();
  private volatile boolean out;

  CutLine(int to, long seed) throws IOException {
    this.listening = new ServerSocket(0, 100, InetAddress.getLoopbackAddress());
    this.to = to;
    this.random = new Random(seed);
    daemon(this::accept, "line");
    daemon(this::weather, "weather");
  }

  int port() {
    return listening.getLocalPort();
  }

  /** Good at first, so that tablets can come in: from now on it is bad. */
  void spoil() {
    bad.set(true);
  }

  /** From now on nothing is cut. */
  void mend() {
    bad.set(false);
    out = false;
  }

  private static void daemon(Runnable work, String name) {
    Thread thread = new Thread(work, name);
    thread.setDaemon(true);
    thread.start();
  }

  private synchronized double chance() {
    return random.nextDouble();
  }

  private void accept() {
    while (!closed.get()) {
      try {
        Socket tablet = listening.accept();
        connections.incrementAndGet();
        if (out) {
          cut.incrementAndGet();
          tablet.close();
          continue;
        }
        Socket laptop = new Socket(InetAddress.getLoopbackAddress(), to);
        open.add(tablet);
        open.add(laptop);
        daemon(() -> pump(tablet, laptop, true), "up");
        daemon(() -> pump(laptop, tablet, false), "down");
      } catch (IOException e) {
        if (!closed.get()) {
          continue;
        }
        return;
      }
    }
  }

  private void pump(Socket from, Socket into, boolean up) {
    byte[] buffer = new byte[16 * 1024];
    try {
      InputStream in = from.getInputStream();
      OutputStream onward = into.getOutputStream();
      for (int read = in.read(buffer); read >= 0; read = in.read(buffer)) {
        double chance = bad.get() ? chance() : 1;
        if (!up && chance < 0.10) {
          answersLost.incrementAndGet();
          break;
        }
        if (up && chance < 0.04) {
          cut.incrementAndGet();
          break;
        }
        if (up && chance < 0.07) {
          stuck.incrementAndGet();
          Thread.sleep(500 + (long) (chance() * 3_000));
        }
        onward.write(buffer, 0, read);
        onward.flush();
      }
    } catch (IOException e) {
      // The other end is gone: that is what this is for.
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    } finally {
      hangUp(from);
      hangUp(into);
    }
  }

  private void hangUp(Socket socket) {
    open.remove(socket);
    try {
      socket.close();
    } catch (IOException e) {
      // Closed already.
    }
  }

  /** Every 5 to 15 seconds the whole Wi-Fi is gone for 1 to 6 seconds. */
  private void weather() {
    try {
      while (!closed.get()) {
        Thread.sleep(5_000 + (long) (chance() * 10_000));
        if (bad.get()) {
          outages.incrementAndGet();
          out = true;
          open.forEach(this::hangUp);
          Thread.sleep(1_000 + (long) (chance() * 5_000));
          out = false;
        }
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  @Override
  public void close() throws IOException {
    closed.set(true);
    listening.close();
    open.forEach(this::hangUp);
  }
}
