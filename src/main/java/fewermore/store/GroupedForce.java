package fewermore.store;

import fewermore.store.disk.NotTaken;

/**
 * Brings committed writes to disk, many at once: a writer that has committed waits until a force that
 * began <em>after</em> its commit has ended. One force serves all who wait for it.
 *
 * <p>After a failed force nothing more is acknowledged until the app is started again: the operating
 * system may have dropped the very pages that failed, and a later force would say nothing of them. A disk that took
 * nothing ({@link NotTaken}) is another matter: those who wait are refused, and the next one tries again.
 */
final class GroupedForce {
  /** What brings everything committed so far to disk. */
  interface Force {
    void run() throws Exception;
  }

  private final Force force;
  private final Object lock = new Object();
  private long asked;
  private long done;
  private long forces;
  private boolean running;
  private Throwable failed;

  GroupedForce(Force force) {
    this.force = force;
  }

  /** Returns when all that this thread committed before the call is on disk. @throws NotOnDisk if it may not be */
  void await() {
    long mine;
    synchronized (lock) {
      mine = ++asked;
      while (running && done < mine && failed == null) {
        waitForNews();
      }
      refuseIfFailed();
      if (done >= mine) {
        return;
      }
      running = true;
      mine = asked;
    }
    Throwable problem = null;
    try {
      force.run();
    } catch (Exception | Error e) {
      problem = e;
    }
    synchronized (lock) {
      running = false;
      forces++;
      if (problem == null) {
        done = Math.max(done, mine);
      } else if (problem instanceof NotTaken) {
        lock.notifyAll();
        throw new NotOnDisk("The disk takes nothing at present.", problem);
      } else {
        failed = problem;
      }
      lock.notifyAll();
      refuseIfFailed();
    }
  }

  /** How many forces have run. */
  long forces() {
    synchronized (lock) {
      return forces;
    }
  }

  private void refuseIfFailed() {
    if (failed != null) {
      throw new NotOnDisk("The disk did not take the last work. Start Fewermore again.", failed);
    }
  }

  private void waitForNews() {
    try {
      lock.wait();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new NotOnDisk("The app is stopping; the work was not brought to disk.", e);
    }
  }
}
