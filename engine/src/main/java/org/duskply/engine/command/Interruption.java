package org.duskply.engine.command;

import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;

/**
 * The program being ended from outside, by Ctrl-C or a signal, while files are made. Those who work
 * ask {@link #asked}; the program's end waits a while for {@link #close}, so that temporary files
 * are put away and the last sentence is printed.
 */
final class Interruption implements AutoCloseable {
  private static final int GRACE_SECONDS = 10;

  private final CountDownLatch ended = new CountDownLatch(1);
  private final Thread hook = new Thread(this::interrupted, "duskply-interrupt");
  private volatile boolean asked;

  private Interruption() {}

  /** Watches from now on. */
  static Interruption watch() {
    Interruption interruption = new Interruption();
    Runtime.getRuntime().addShutdownHook(interruption.hook);
    return interruption;
  }

  /** Whether the program is to end. */
  boolean asked() {
    return asked;
  }

  private void interrupted() {
    asked = true;
    try {
      ended.await(GRACE_SECONDS, TimeUnit.SECONDS); // whatever hangs shall not hold up a shutdown
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  /** Lets the program end. */
  @Override
  public void close() {
    ended.countDown();
    try {
      Runtime.getRuntime().removeShutdownHook(hook);
    } catch (IllegalStateException e) {
      asked = true; // the program is ending already, and the hook runs or has run
    }
  }
}
