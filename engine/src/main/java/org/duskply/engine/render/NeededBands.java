package org.duskply.engine.render;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.duskply.engine.frame.FrameSource;
import org.duskply.engine.pixel.Region;
import org.duskply.engine.plan.Bands;
import org.duskply.engine.plan.Plan;
import org.duskply.engine.plan.Rule;
import org.duskply.engine.plan.StageNeeds;

/**
 * What must be made for some bands of some stages: one walk from the outputs back to the frames.
 * Each stage's bands and each frame's units, with the region that is needed of each. A band whose
 * region stays empty is never run, a unit that is not named never read; and nothing is needed for a
 * band that is there already.
 */
final class NeededBands {
  /** Knows which bands are there already. */
  interface Found {
    /** Whether band {@code band} of a stage is there with all of {@code part}; asked once each. */
    boolean band(int stage, int band, Region part);
  }

  private final Plan plan;
  private final Bands bands;
  private final List<TreeMap<Integer, Region>> regions = new ArrayList<>();
  private final List<TreeMap<Integer, Region>> units = new ArrayList<>();
  private final BitSet read = new BitSet();

  NeededBands(Plan plan, Bands bands) {
    this.plan = plan;
    this.bands = bands;
    plan.stages().forEach(s -> regions.add(new TreeMap<>()));
    plan.frames().forEach(f -> units.add(new TreeMap<>()));
  }

  /** Asks for {@code part} of a stage. To be called for all outputs before {@link #walk}. */
  void want(int stage, Region part) {
    if (!part.empty()) {
      for (int k = bands.first(part); k <= bands.last(part); k++) {
        regions.get(stage).merge(k, bands.cut(part, k), Region::hull);
      }
    }
  }

  /** Works out what the wanted bands need in turn, and drops those that are there already. */
  void walk(Found found) {
    for (int s = plan.stages().size() - 1; s >= 0; s--) {
      int stageIndex = s;
      regions.get(s).entrySet().removeIf(e -> found.band(stageIndex, e.getKey(), e.getValue()));
      for (Region region : regions.get(s).values()) {
        plan.stages()
            .get(s)
            .needs(
                region,
                new StageNeeds() {
                  @Override
                  public void frame(int frame, Region part) {
                    markUnits(frame, part);
                  }

                  @Override
                  public void stage(int stage, Region part) {
                    read.set(stage);
                    want(stage, part);
                  }
                });
      }
    }
  }

  /** The needed bands of a stage with what is needed of each. */
  Map<Integer, Region> regions(int stage) {
    return regions.get(stage);
  }

  /** The needed units of a frame with what is needed of each. */
  Map<Integer, Region> units(int frame) {
    return units.get(frame);
  }

  /** Whether another stage reads a stage; else it goes to outputs alone. */
  boolean isRead(int stage) {
    return read.get(stage);
  }

  private void markUnits(int frame, Region part) {
    FrameSource source = plan.frames().get(frame).source();
    boolean parts = plan.settings().has(Rule.PARTS);
    Units.cut(
        source,
        part,
        (unit, cut) -> units.get(frame).merge(unit, parts ? cut : source.unit(unit), Region::hull));
  }
}
