package org.duskply.engine.render;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.duskply.engine.frame.Samples;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;
import org.duskply.engine.pixel.Runs;
import org.duskply.engine.plan.Bands;
import org.duskply.engine.plan.Plan;
import org.duskply.engine.plan.StageInputs;
import org.jspecify.annotations.Nullable;

/**
 * Finished bands and decoded units while a job runs. Slots are made before the job starts; each is
 * written by one task and read by tasks that the scheduler starts after it, which is what makes the
 * writes seen. What was kept from an earlier job stands in its slot from the start.
 */
final class Results implements StageInputs {
  private final Plan plan;
  private final Bands bands;
  private final List<Map<Integer, BandSlot>> stages;
  private final List<Samples[]> frames;

  Results(Plan plan, Bands bands) {
    this.plan = plan;
    this.bands = bands;
    this.stages =
        Stream.<Map<Integer, BandSlot>>generate(HashMap::new).limit(plan.stages().size()).toList();
    this.frames = plan.frames().stream().map(f -> new Samples[f.source().units()]).toList();
  }

  /** A band's planes, and its runs if it is a mask. */
  static final class BandSlot {
    @Nullable Planes planes;
    @Nullable Runs runs;
    private boolean kept;

    /** Holds a band from an earlier job; before the job starts. */
    void keep(KeptBand band) {
      planes = band.planes();
      runs = band.runs();
      kept = true;
    }

    /** Whether its band is from an earlier job, so that no task makes it. */
    boolean kept() {
      return kept;
    }
  }

  /** The slot of a band, made if it is not there; before the job starts. */
  BandSlot slot(int stage, int band) {
    return stages.get(stage).computeIfAbsent(band, k -> new BandSlot());
  }

  void setSamples(int frame, int unit, @Nullable Samples samples) {
    frames.get(frame)[unit] = samples;
  }

  @Override
  public Samples samples(int frame, int y) {
    int unit = Units.at(plan.frames().get(frame).source(), y);
    Samples samples = frames.get(frame)[unit];
    if (samples == null) {
      throw new IllegalStateException("Unit " + unit + " of a frame was not asked for");
    }
    return samples;
  }

  @Override
  public @Nullable Planes planes(int stage, int y) {
    BandSlot slot = stages.get(stage).get(bands.of(y));
    return slot == null ? null : slot.planes;
  }

  @Override
  public @Nullable Runs runs(int stage, int y) {
    BandSlot slot = stages.get(stage).get(bands.of(y));
    return slot == null ? null : slot.runs;
  }

  @Override
  public Planes block(int stage, Region part) {
    Planes block = new Planes(part, plan.stages().get(stage).node().planes());
    if (!part.empty()) {
      for (int k = bands.first(part); k <= bands.last(part); k++) {
        BandSlot slot = stages.get(stage).get(k);
        if (slot != null && slot.planes != null) {
          block.copyFrom(slot.planes);
        }
      }
    }
    return block;
  }
}
