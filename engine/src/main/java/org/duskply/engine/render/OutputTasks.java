package org.duskply.engine.render;

import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;
import org.duskply.engine.plan.Key;
import org.jspecify.annotations.Nullable;

/** The tasks of one output's band: it is encoded, by any thread, and then appended in its turn. */
final class OutputTasks {
  private OutputTasks() {}

  /** Encodes one band of an output, and offers it to the store. */
  static final class Encode extends Task {
    private static final double NANOS_A_PIXEL = 150;
    private final Output output;
    private final int band;
    private final Region region;
    private final int stage;
    private final @Nullable Planes kept;
    private final @Nullable Key key;
    private final Results results;
    private final Store store;
    private @Nullable Runnable append;

    Encode(
        Output output,
        int band,
        Region region,
        int stage,
        @Nullable Planes kept,
        @Nullable Key key,
        Results results,
        Store store) {
      this.output = output;
      this.band = band;
      this.region = region;
      this.stage = stage;
      this.kept = kept;
      this.key = key;
      this.results = results;
      this.store = store;
    }

    @Override
    long scratchBytes() {
      return 0;
    }

    @Override
    long resultBytes() {
      return output.sink().encodeBytes(region);
    }

    @Override
    double costNanos() {
      return NANOS_A_PIXEL * region.count();
    }

    @Override
    void run() {
      Planes planes = kept != null ? kept : results.planes(stage, region.top());
      if (planes == null) {
        throw new IllegalStateException("A band was let go before it was written");
      }
      if (!planes.area().equals(region)) { // another reader wanted more of it than this output
        Planes cut = new Planes(region, planes.count());
        cut.copyFrom(planes);
        planes = cut;
      }
      append = output.sink().encode(band, planes);
      if (kept == null && key != null) {
        store.put(key, planes);
      }
    }

    @Override
    void release() {
      append = null;
    }
  }

  /** Hands an encoded band on, after the one above it. */
  static final class Append extends Task {
    private final Encode encode;
    private final double reached;

    Append(Encode encode, double reached) {
      this.encode = encode;
      this.reached = reached;
    }

    /** How far down its output it reaches, 0 to 1. */
    double reached() {
      return reached;
    }

    @Override
    long scratchBytes() {
      return 0;
    }

    @Override
    long resultBytes() {
      return 0;
    }

    @Override
    double costNanos() {
      return 10_000;
    }

    @Override
    void run() {
      Runnable append = encode.append;
      if (append == null) {
        throw new IllegalStateException("Encoded rows were let go before they were written");
      }
      append.run();
    }
  }
}
