package org.duskply.engine.command;

import java.io.PrintWriter;
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
    return interruption.asked();
  }

  @Override
  public void close() {
    if (bar != null) {
      bar.close();
    }
  }
}
