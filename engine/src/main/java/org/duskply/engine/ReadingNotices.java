package org.duskply.engine;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.duskply.engine.frame.Lineariser;
import org.duskply.engine.plan.FrameNode;

/** What was found odd in frames while their pixels were read, in sentences. */
final class ReadingNotices {
  private ReadingNotices() {}

  /**
   * The sentences on one frame.
   *
   * @param read what its reader had to say, the work being done
   */
  static List<String> of(FrameNode frame, Set<String> read) {
    List<String> notices = new ArrayList<>();
    for (String notice : read) {
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
    return notices;
  }
}
