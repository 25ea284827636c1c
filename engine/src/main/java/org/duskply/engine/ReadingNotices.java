package org.duskply.engine;

import java.util.ArrayList;
import java.util.List;
import org.duskply.engine.frame.Lineariser;
import org.duskply.engine.plan.FrameNode;
import org.duskply.engine.plan.Plan;
import org.duskply.engine.render.Job;

/** What was found odd in frames while their pixels were read, in sentences. */
final class ReadingNotices {
  private ReadingNotices() {}

  /** The sentences of a job whose work is done; its files are closed. */
  static List<String> of(Plan plan, Job job) {
    job.close();
    List<String> notices = new ArrayList<>();
    for (int f = 0; f < plan.frames().size(); f++) {
      FrameNode frame = plan.frames().get(f);
      for (String notice : job.notices(f)) {
        notices.add(frame.name() + ": " + notice);
      }
      long held = frame.lineariser().held();
      if (held > 0) {
        notices.add(
            frame.name()
                + ": "
                + held
                + (held == 1 ? " value was" : " values were")
                + " no number or beyond ±"
                + (int) Lineariser.MOST
                + "; no number became 0, the others were held to that.");
      }
    }
    return notices;
  }
}
