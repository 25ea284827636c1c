package org.duskply.engine.render;

import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;
import org.jspecify.annotations.Nullable;

/** The tasks of one output's band: it is encoded, by any thread, and then appended in its turn. */
final class OutputTasks {
  private OutputTasks() {}

  /** Encodes one band of an output, and offers it to the store. */
  static final class Encode extends Task {
    private static final double NANOS_A_PIXEL = 60;
    private final Output output;
    private final int outputIndex;
    private final int band;
    private final Region region;
    private final int stage;
    private final Results results;
    private final Counters counters;
    private final JobStore store;
    private @Nullable EncodedBand encoded;

    Encode(
        Output output,
        int outputIndex,
        int band,
        Region region,
        int stage,
        Results results,
        Counters counters,
        JobStore store) {
      this.output = output;
      this.outputIndex = outputIndex;
      this.band = band;
      this.region = region;
      this.stage = stage;
      this.results = results;
      this.counters = counters;
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
      Planes planes = results.planes(stage, region.top());
      if (planes == null) {
        throw new IllegalStateException("A band was let go before it was written");
      }
      if (!planes.area().equals(region)) { // another reader wanted more of it than this output
        Planes cut = new Planes(region, planes.count());
        cut.copyFrom(planes);
        planes = cut;
      }
      EncodedBand made = output.sink().encode(band, planes);
      encoded = made;
      counters.encoded(outputIndex);
      store.offer(outputIndex, band, made);
    }

    @Override
    void release() {
      encoded = null;
    }
  }

  /** Hands an encoded band on, after the one above it. */
  static final class Append extends Task {
    private final Output output;
    private final int band;
    private final double reached;
    private final @Nullable Encode encode;
    private final @Nullable EncodedBand kept;

    /**
     * Appends a band.
     *
     * @param reached how far down its output it reaches, 0 to 1
     * @param encode what encodes it; absent where it is {@code kept}
     * @param kept the band from an earlier job
     */
    Append(
        Output output,
        int band,
        double reached,
        @Nullable Encode encode,
        @Nullable EncodedBand kept) {
      this.output = output;
      this.band = band;
      this.reached = reached;
      this.encode = encode;
      this.kept = kept;
      if (encode != null) {
        reads().add(encode);
      }
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
      EncodedBand encoded = encode == null ? kept : encode.encoded;
      if (encoded == null) {
        throw new IllegalStateException("Encoded rows were let go before they were written");
      }
      output.sink().append(band, encoded);
    }
  }
}
