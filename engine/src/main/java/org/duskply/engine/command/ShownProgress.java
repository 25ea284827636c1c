package org.duskply.engine.command;

import java.io.PrintWriter;
import java.time.Duration;
import java.util.Locale;
import me.tongfei.progressbar.ProgressBar;
import me.tongfei.progressbar.ProgressBarBuilder;
import me.tongfei.progressbar.ProgressBarStyle;
import org.duskply.engine.Progress;
import org.jspecify.annotations.Nullable;

/** How far a rendering has come: a bar on a terminal, a plain line every tenth elsewhere. */
final class ShownProgress implements Progress, AutoCloseable {
  private static final int STEPS = 1000;
  private static final int UPDATE_MILLIS = 200;

  private final PrintWriter lines;
  private final Interruption interruption;
  private final @Nullable ProgressBar bar;
  private int tenths;
  private String left = "";

  ShownProgress(PrintWriter lines, boolean terminal, Interruption interruption) {
    this.lines = lines;
    this.interruption = interruption;
    this.bar = terminal ? bar() : null;
  }

  private static ProgressBar bar() {
    return new ProgressBarBuilder()
        .setTaskName("Rendering")
        .setInitialMax(STEPS)
        .setStyle(ProgressBarStyle.ASCII)
        .setUpdateIntervalMillis(UPDATE_MILLIS)
        .hideEta()
        .build();
  }

  @Override
  public void left(Duration about) {
    left = words(about);
  }

  @Override
  public void reached(double share) {
    if (bar != null) {
      bar.setExtraMessage(share < 1 ? left : "");
      bar.stepTo(Math.round(share * STEPS));
    } else if ((int) (share * 10) > tenths) {
      tenths = (int) (share * 10);
      boolean known = share < 1 && !left.isEmpty();
      lines.println(tenths * 10 + " % rendered" + (known ? ", " + left : ""));
    }
  }

  /** A time as one would say it: no finer than it is known. */
  static String words(Duration about) {
    long seconds = about.toSeconds();
    if (seconds < 1) {
      return "nearly done";
    }
    if (seconds < 100) {
      return "about " + seconds + " s left";
    }
    long minutes = Math.round(seconds / 60.0);
    return minutes < 100
        ? "about " + minutes + " min left"
        : String.format(Locale.ROOT, "about %.1f h left", minutes / 60.0);
  }

  @Override
  public boolean cancelled() {
    return interruption.asked();
  }

  @Override
  public void close() {
    if (bar != null) {
      bar.close();
    }
  }
}
