package org.duskply.engine;

import java.time.Duration;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.duskply.engine.colour.ColourSpace;
import org.duskply.engine.frame.FrameException;
import org.duskply.engine.frame.FrameInfo;
import org.duskply.engine.frame.Lineariser;
import org.duskply.engine.frame.Loading;
import org.duskply.engine.frame.Samples;
import org.duskply.engine.measure.CameraExposure;
import org.duskply.engine.measure.Development;
import org.duskply.engine.measure.Lattice;
import org.jspecify.annotations.Nullable;

/**
 * Looks whether a recipe's frames were developed alike, which linear light stands on. Each frame is
 * compared with the one taken before it and with the base, as far as they were taken within {@value
 * #FAR_SECONDS} seconds of each other: by then the evening itself has changed them more than a
 * developer would. Frames that do not say when they were taken are compared with the base.
 *
 * <p>What twilight may change is allowed for: at civil twilight's end on the equator light falls by
 * 0.41 stop a minute, the fastest there is (Explanatory Supplement to the Astronomical Almanac,
 * with the Sun's path), and lamps stay as they are.
 */
final class DevelopmentCheck {
  private static final int FAR_SECONDS = 300;
  private static final double TWILIGHT = 0.41 / 60;

  /** Change of ratio over brightness, in stops, that shows in no picture. */
  private static final double ALLOWED_TREND = 0.1;

  /**
   * Three marked settings of two frames, each up to 0.035 stop from what it stands for, and room.
   */
  private static final double ALLOWED_OFFSET = 0.25;

  /** Share of places that must agree before the camera's settings are doubted. */
  private static final double CONVINCING = 0.2;

  private static final int BLOCKS = 24;

  /** Codes of 8 bits lie 0.09 stop apart here, and ever farther below; of 16 bits at the other. */
  private static final double FLOOR_OF_BYTES = 0.01;

  private static final double FLOOR = 0.002;

  private final FrameSet frames;
  private final Found found;
  private final Progress progress;
  private final long memory;
  private final List<Curved> curved = new ArrayList<>();
  private final List<Shifted> shifted = new ArrayList<>();

  /** A frame with its lattice. */
  private record Seen(FrameSet.Opened frame, Lattice lattice) {}

  /** Two frames whose ratio changes with brightness. */
  private record Curved(
      FrameSet.Opened first, FrameSet.Opened second, double stops, Development.Trend trend) {}

  /** Two frames whose ratio is not what the camera's settings say. */
  private record Shifted(
      FrameSet.Opened first, FrameSet.Opened second, double measured, double expected) {
    double by() {
      return Math.abs(measured - expected);
    }
  }

  private DevelopmentCheck(FrameSet frames, long memory, Found found, Progress progress) {
    this.frames = frames;
    this.memory = memory;
    this.found = found;
    this.progress = progress;
  }

  /**
   * Compares the frames.
   *
   * @param memory most bytes that a reader may need
   * @param found told as notices what does not fit, and what could not be measured
   * @throws CancelledException if {@code progress} asked for it
   */
  static void run(FrameSet frames, long memory, Found found, Progress progress) {
    DevelopmentCheck check = new DevelopmentCheck(frames, memory, found, progress);
    check.compareAll();
    check.tell();
  }

  private void compareAll() {
    List<FrameSet.Opened> inTime = inTime();
    Seen base = null;
    Seen before = null;
    double done = 0;
    List<FrameSet.Opened> order = new ArrayList<>(inTime);
    order.remove(frames.base());
    order.add(0, frames.base());
    for (FrameSet.Opened frame : order) {
      progress.reached(done++ / order.size());
      if (progress.cancelled()) {
        throw new CancelledException();
      }
      Seen seen = look(frame);
      if (seen == null) {
        continue;
      }
      if (frame == frames.base()) {
        base = seen;
        continue;
      }
      if (base != null) {
        compare(base, seen);
      }
      if (before != null && frame.exif().taken() != null) {
        compare(before, seen);
      }
      before = seen;
    }
    progress.reached(1);
  }

  /** The frames of the base's size, in the order in which they were taken. */
  private List<FrameSet.Opened> inTime() {
    FrameInfo base = frames.base().source().info();
    List<FrameSet.Opened> all = new ArrayList<>(frames.all());
    all.removeIf(
        one ->
            one.source().info().width() != base.width()
                || one.source().info().height() != base.height());
    all.sort(
        Comparator.comparing(
            one -> one.exif().taken(), Comparator.nullsFirst(Comparator.naturalOrder())));
    return all;
  }

  private @Nullable Seen look(FrameSet.Opened frame) {
    long needed = frame.source().cursorBytes() + frame.source().workingBytes();
    if (needed > memory) {
      notMeasured(frame, "it would take " + (needed >> 20) + " MB of memory to read");
      return null;
    }
    ColourSpace working = frames.working();
    Lineariser lineariser =
        Lineariser.prepare(frame.source().info(), frame.colour().space(), working, Loading.PLAIN);
    try {
      return new Seen(frame, Lattice.read(frame.source(), lineariser, BLOCKS, progress::cancelled));
    } catch (FrameException e) {
      notMeasured(frame, String.valueOf(e.getMessage()));
      return null;
    }
  }

  private void notMeasured(FrameSet.Opened frame, String why) {
    found.notice(
        "frames/" + frame.name(),
        "Whether " + frame.name() + " was developed like the others was not measured: " + why);
  }

  private void compare(Seen a, Seen f) {
    double seconds = apart(a.frame, f.frame);
    if (seconds > FAR_SECONDS) {
      return;
    }
    double floor = Math.max(floor(a.frame), floor(f.frame));
    Development development =
        Development.compare(a.lattice, f.lattice, frames.working().luminance(), floor);
    if (development == null) {
      return;
    }
    double twilight = TWILIGHT * seconds;
    Development.Trend trend = development.trend(ALLOWED_TREND + twilight);
    CameraExposure first = CameraExposure.of(a.frame.exif());
    CameraExposure second = CameraExposure.of(f.frame.exif());
    if (trend != null) {
      curved.add(new Curved(a.frame, f.frame, development.stops(), trend));
    } else if (first != null && second != null && development.share() >= CONVINCING) {
      Shifted shift = new Shifted(a.frame, f.frame, development.stops(), second.stopsAbove(first));
      if (shift.by() > ALLOWED_OFFSET + twilight) {
        shifted.add(shift);
      }
    }
  }

  /** Seconds between two shots; 0 where one does not say when it was taken. */
  private static double apart(FrameSet.Opened a, FrameSet.Opened f) {
    LocalDateTime first = a.exif().taken();
    LocalDateTime second = f.exif().taken();
    return first == null || second == null ? 0 : Duration.between(first, second).abs().toSeconds();
  }

  private static double floor(FrameSet.Opened frame) {
    return frame.source().info().kind() == Samples.Kind.BYTES ? FLOOR_OF_BYTES : FLOOR;
  }

  /** The worst of each kind, and how many more there are: one sentence, not thirty. */
  private void tell() {
    curved.stream()
        .max(Comparator.comparingDouble(c -> c.trend.stops()))
        .ifPresent(
            worst ->
                found.notice(
                    "frames/" + worst.second.name(),
                    DevelopmentWords.curved(
                        worst.first.name(),
                        worst.second.name(),
                        worst.stops,
                        worst.trend,
                        curved.size() - 1)));
    shifted.stream()
        .max(Comparator.comparingDouble(Shifted::by))
        .ifPresent(
            worst ->
                found.notice(
                    "frames/" + worst.second.name(),
                    DevelopmentWords.shifted(
                        worst.first.name(),
                        worst.second.name(),
                        worst.measured,
                        worst.expected,
                        shifted.size() - 1)));
  }
}
