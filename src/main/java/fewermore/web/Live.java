package fewermore.web;

import io.javalin.http.sse.SseClient;
import java.util.Set;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.TimeUnit;

/**
 * Tells the teacher's open pages that something of a class changed. Each stream has its own short queue and
 * sender, so that one that does not read holds up no other; a full queue closes it, and the page comes back.
 */
public final class Live implements AutoCloseable {
  private static final int QUEUE = 100;
  private static final long BEAT_SECONDS = 10;
  /** A browser drops an event that has no data. */
  private static final String SOMETHING = "now";

  private final Set<Stream> streams = ConcurrentHashMap.newKeySet();
  private volatile boolean closed;

  private record Event(String name) {}

  private final class Stream implements Runnable {
    private final SseClient client;
    private final long classroom;
    private final BlockingQueue<Event> queue = new ArrayBlockingQueue<>(QUEUE);

    private Stream(SseClient client, long classroom) {
      this.client = client;
      this.classroom = classroom;
    }

    @Override
    public void run() {
      try {
        client.sendEvent("whole", SOMETHING);
        while (!closed && !client.terminated()) {
          Event event = queue.poll(BEAT_SECONDS, TimeUnit.SECONDS);
          client.sendEvent(event == null ? "beat" : event.name, SOMETHING);
        }
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
      } finally {
        streams.remove(this);
        client.close();
      }
    }
  }

  /** Watches a class until the page goes away. */
  public void watch(SseClient client, long classroom) {
    Stream stream = new Stream(client, classroom);
    client.keepAlive();
    streams.add(stream);
    Thread sender = new Thread(stream, "live-" + classroom);
    sender.setDaemon(true);
    client.onClose(() -> {
      streams.remove(stream);
      sender.interrupt();
    });
    sender.start();
  }

  /** Something of this class changed: pages that show it fetch themselves anew. */
  public void changed(long classroom) {
    for (Stream stream : streams) {
      if (stream.classroom == classroom && !stream.queue.offer(new Event("change"))) {
        streams.remove(stream);
        stream.client.close();
      }
    }
  }

  @Override
  public void close() {
    closed = true;
    streams.forEach(stream -> stream.client.close());
  }
}
