package org.duskply.engine.render;

import java.util.BitSet;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.duskply.engine.frame.FrameInfo;
import org.duskply.engine.frame.FrameReader;
import org.duskply.engine.frame.FrameSource;
import org.duskply.engine.frame.Samples;
import org.duskply.engine.pixel.Region;
import org.duskply.engine.plan.FrameNode;
import org.jspecify.annotations.Nullable;

/**
 * The tasks of one frame: opens it when the first of its units is decoded, decodes them, and closes
 * it after the last. Units that are kept from an earlier job are not decoded again.
 */
final class FrameTasks implements AutoCloseable {
  private final int frame;
  private final FrameSource source;
  private final Map<Integer, Task> units = new HashMap<>();
  private final Map<Integer, Region> toDecode = new TreeMap<>();
  private Region part = Region.EMPTY; // of all that is decoded
  private final BitSet kept = new BitSet();
  private final Results results;
  private final Counters counters;
  private final JobStore store;
  private final Set<String> notices = new LinkedHashSet<>();
  private @Nullable FrameReader
      reader; // opened by the opening task, which comes before all decoding

  FrameTasks(
      int frame,
      FrameNode node,
      Map<Integer, Region> wanted,
      Results results,
      Counters counters,
      JobStore store) {
    this.frame = frame;
    this.results = results;
    this.counters = counters;
    this.store = store;
    this.source = node.source();
    Task open = new OpenTask(this);
    Task before = open;
    for (Map.Entry<Integer, Region> unit : wanted.entrySet()) {
      Samples samples = store.samples(frame, unit.getKey(), unit.getValue());
      if (samples != null) {
        results.setSamples(frame, unit.getKey(), samples);
        kept.set(unit.getKey());
        continue;
      }
      Task decode = new DecodeTask(this, unit.getKey(), unit.getValue());
      decode.reads().add(open);
      if (source.access() == FrameSource.Access.FORWARD) {
        decode.after().add(before);
        before = decode;
      }
      units.put(unit.getKey(), decode);
      toDecode.put(unit.getKey(), unit.getValue());
      part = part.hull(unit.getValue());
    }
  }

  @Override
  public synchronized void close() {
    if (reader != null) {
      notices.addAll(reader.notices());
      reader.close();
    }
  }

  /** What its reader had to say of the file, each sentence once. */
  synchronized Set<String> notices() {
    return new LinkedHashSet<>(notices);
  }

  /** Its file. */
  FrameSource source() {
    return source;
  }

  /** The units that are decoded, with what is needed of each. */
  Map<Integer, Region> unitsToDecode() {
    return new TreeMap<>(toDecode);
  }

  /** Whether a unit is there without being decoded. */
  boolean keeps(int unit) {
    return kept.get(unit);
  }

  /** The task that decodes a unit; absent where the unit is kept or not wanted. */
  @Nullable Task unit(int unit) {
    return units.get(unit);
  }

  private synchronized FrameReader reader() {
    if (reader == null) {
      throw new IllegalStateException("A unit was decoded before its frame was opened");
    }
    return reader;
  }

  /** Opens a frame; what its reader keeps between units is this task's result. */
  private static final class OpenTask extends Task {
    private final FrameTasks frame;

    OpenTask(FrameTasks frame) {
      this.frame = frame;
    }

    @Override
    long scratchBytes() {
      return 0;
    }

    @Override
    long resultBytes() {
      return frame.source.cursorBytes(frame.part);
    }

    @Override
    double costNanos() {
      return 100_000;
    }

    @Override
    void run() {
      synchronized (frame) {
        frame.reader = frame.source.reader(frame.part);
      }
    }

    @Override
    void release() {
      frame.close();
    }
  }

  /** Decodes what is needed of one unit of a frame. */
  private static final class DecodeTask extends Task {
    private static final double NANOS_A_BYTE = 6;
    private final FrameTasks frame;
    private final int unit;
    private final Region part;

    DecodeTask(FrameTasks frame, int unit, Region part) {
      this.frame = frame;
      this.unit = unit;
      this.part = part;
    }

    @Override
    long scratchBytes() {
      return frame.source.workingBytes(frame.part);
    }

    @Override
    long resultBytes() {
      return bytes(frame.source.returned(unit, part));
    }

    /** Rows are unpacked from their left end to their right, whatever is kept of them. */
    @Override
    double costNanos() {
      Region whole = frame.source.unit(unit);
      return NANOS_A_BYTE * bytes(whole.rows(part.top(), part.bottom()));
    }

    private long bytes(Region area) {
      FrameInfo info = frame.source.info();
      return area.count() * info.channels() * info.kind().bytes();
    }

    @Override
    void run() {
      Samples samples = frame.reader().read(unit, part);
      frame.results.setSamples(frame.frame, unit, samples);
      frame.counters.decoded(frame.frame);
      frame.store.offer(frame.frame, unit, samples);
    }

    @Override
    void release() {
      frame.results.setSamples(frame.frame, unit, null);
    }
  }
}
