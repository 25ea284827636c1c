package org.duskply.engine.command;

import java.io.Console;
import java.io.PrintStream;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import me.tongfei.progressbar.ProgressBar;
import me.tongfei.progressbar.ProgressBarBuilder;
import me.tongfei.progressbar.ProgressBarStyle;
import org.duskply.engine.Progress;
import org.jspecify.annotations.Nullable;

/**
 * How far a rendering has come: a bar on a terminal, a plain line every tenth elsewhere. Ends the
 * rendering when the program is interrupted, and holds the program's end until the rendering has
 * put its temporary files away.
 */
final class ShownProgress implements Progress, AutoCloseable {
  private static final int STEPS = 1000;
  private static final int GRACE_SECONDS = 10;

  private final PrintStream lines;
  private final @Nullable ProgressBar bar;
  private final Thread hook = new Thread(this::interrupted, "duskply-interrupt");
  private final CountDownLatch ended = new CountDownLatch(1);
  private volatile boolean cancelled;
  private int tenths;

  private ShownProgress(PrintStream lines, @Nullable ProgressBar bar) {
    this.lines = lines;
    this.bar = bar;
  }

  static ShownProgress on(PrintStream errors) {
    boolean terminal = errors == System.err && onTerminal();
    ShownProgress progress = new ShownProgress(errors, terminal ? bar() : null);
    Runtime.getRuntime().addShutdownHook(progress.hook);
    return progress;
  }

  /** From JDK 22 on a console may be there without a terminal behind it, and says so itself. */
  @SuppressWarnings("SystemConsoleNull")
  private static boolean onTerminal() {
    Console console = System.console();
    if (console == null) {
      return false;
    }
    try {
      return (boolean) Console.class.getMethod("isTerminal").invoke(console);
    } catch (ReflectiveOperationException e) {
      return true; // before JDK 22 a console is a terminal
    }
  }

  private static ProgressBar bar() {
    return new ProgressBarBuilder()
        .setTaskName("Rendering")
        .setInitialMax(STEPS)
        .setStyle(ProgressBarStyle.ASCII)
        .setUpdateIntervalMillis(200)
        .hideEta()
        .build();
  }

  @Override
  public void reached(double share) {
    if (bar != null) {
      bar.stepTo(Math.round(share * STEPS));
    } else if ((int) (share * 10) > tenths) {
      tenths = (int) (share * 10);
      lines.println(tenths * 10 + " % rendered");
    }
  }

  @Override
  public boolean cancelled() {
    return cancelled;
  }

  private void interrupted() {
    cancelled = true;
    try {
      ended.await(GRACE_SECONDS, TimeUnit.SECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  @Override
  public void close() {
    ended.countDown();
    if (bar != null) {
      bar.close();
    }
    if (!cancelled) {
      try {
        Runtime.getRuntime().removeShutdownHook(hook);
      } catch (IllegalStateException e) {
        cancelled = true; // the program is ending already, and the hook has been told
      }
    }
  }
}
