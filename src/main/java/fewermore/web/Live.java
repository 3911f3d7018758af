package fewermore.web;

import io.javalin.http.sse.SseClient;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Set;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.LongConsumer;
import java.util.function.Supplier;

/**
 * Tells the teacher's open pages what changed. Each stream has its own short queue and sender, so that one that does
 * not read holds up no other; a full queue closes it, and the page comes back and gets the whole state.
 *
 * <p>An event's id is {@code boot-n}: another boot says that the laptop's program started anew in between.
 */
public final class Live implements AutoCloseable {
  private static final int QUEUE = 100;
  private static final long BEAT_SECONDS = 10;
  /** Milliseconds after which a browser comes back by itself. */
  private static final int RETRY = 2000;
  /** A browser drops an event that has no data. */
  private static final String SOMETHING = "now";

  private final String boot = Long.toString(System.currentTimeMillis(), 36);
  private final AtomicLong count = new AtomicLong();
  private final Set<Stream> streams = ConcurrentHashMap.newKeySet();
  private volatile boolean closed;
  private volatile LongConsumer also = classroom -> { };

  private record Event(String name, String data) {}

  private final class Stream implements Runnable {
    private final SseClient client;
    private final Set<String> topics;
    private final Supplier<String> whole;
    private final BlockingQueue<Event> queue = new ArrayBlockingQueue<>(QUEUE);

    private Stream(SseClient client, Set<String> topics, Supplier<String> whole) {
      this.client = client;
      this.topics = Set.copyOf(topics);
      this.whole = whole;
    }

    @Override
    public void run() {
      try {
        client.ctx().res().getOutputStream().write(("retry: " + RETRY + "\n\n").getBytes(StandardCharsets.US_ASCII));
        send(new Event("whole", whole.get()));
        while (!closed && !client.terminated()) {
          Event event = queue.poll(BEAT_SECONDS, TimeUnit.SECONDS);
          send(event == null ? new Event("beat", SOMETHING) : event);
        }
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
      } catch (IOException | RuntimeException e) {
        System.getLogger(Live.class.getName()).log(System.Logger.Level.DEBUG, "a stream ended", e);
      } finally {
        streams.remove(this);
        client.close();
      }
    }

    private void send(Event event) {
      client.sendEvent(event.name, event.data, boot + "-" + count.incrementAndGet());
    }
  }

  /** Watches a class until the page goes away: hears only that something changed. */
  public void watch(SseClient client, long classroom) {
    watch(client, Set.of(topic(classroom)), () -> SOMETHING);
  }

  /**
   * Watches topics until the page goes away.
   *
   * @param whole the data of the first event, asked after the stream hears of changes
   */
  public void watch(SseClient client, Set<String> topics, Supplier<String> whole) {
    Stream stream = new Stream(client, topics, whole);
    client.keepAlive();
    streams.add(stream);
    Thread sender = new Thread(stream, "live");
    sender.setDaemon(true);
    client.onClose(() -> {
      streams.remove(stream);
      sender.interrupt();
    });
    sender.start();
  }

  /** Something of this class changed: pages that show it fetch themselves anew. */
  public void changed(long classroom) {
    also.accept(classroom);
    publish(topic(classroom), "change", SOMETHING);
  }

  /** Tells one more of every class that changes. */
  void alsoTell(LongConsumer listener) {
    also = listener;
  }

  /** Sends an event to all who watch a topic; never waits for any of them. */
  public void publish(String topic, String name, String data) {
    Event event = new Event(name, data);
    for (Stream stream : streams) {
      if (stream.topics.contains(topic) && !stream.queue.offer(event)) {
        streams.remove(stream);
        // Closing may wait for a write that hangs: not on the thread of whoever tells.
        Thread closer = new Thread(stream.client::close, "live-close");
        closer.setDaemon(true);
        closer.start();
      }
    }
  }

  /** Something that every page shows changed. */
  public void changedEverywhere() {
    streams.stream().flatMap(stream -> stream.topics.stream()).distinct().toList()
        .forEach(topic -> publish(topic, "change", SOMETHING));
  }

  /** Whether anybody watches a topic. */
  public boolean watched(String topic) {
    return streams.stream().anyMatch(stream -> stream.topics.contains(topic));
  }

  static String topic(long classroom) {
    return "class-" + classroom;
  }

  @Override
  public void close() {
    closed = true;
    streams.forEach(stream -> stream.client.close());
  }
}
