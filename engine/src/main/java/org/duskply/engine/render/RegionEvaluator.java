package org.duskply.engine.render;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.duskply.engine.frame.FrameReader;
import org.duskply.engine.frame.FrameSource;
import org.duskply.engine.frame.Samples;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;
import org.duskply.engine.pixel.Runs;
import org.duskply.engine.plan.Bands;
import org.duskply.engine.plan.FrameNode;
import org.duskply.engine.plan.Node;
import org.duskply.engine.plan.Plan;
import org.duskply.engine.plan.PlanSettings;
import org.duskply.engine.plan.Stage;
import org.duskply.engine.plan.StageInputs;
import org.duskply.engine.plan.StageNeeds;
import org.duskply.engine.plan.Stop;
import org.jspecify.annotations.Nullable;

/**
 * Any rectangle of any picture of a plan, computed in the caller's thread by the same stages that
 * render bands. Keeps the frames' files open and a bounded number of bytes of decoded units. Frames
 * at a preview's scale and units are looked for in a store, too: they are the same for every edit
 * of a recipe, while what is blended of them is made anew. Thread-safe; calls take turns.
 */
public final class RegionEvaluator implements AutoCloseable {
  private final Plan plan;
  private final long unitBytes;
  private final Bands bands;
  private final JobStore store;
  private final Map<Integer, FrameReader> readers = new HashMap<>();
  private final Map<Long, Samples> units = new LinkedHashMap<>(16, 0.75f, true);
  private long bytes;
  private boolean closed;

  /**
   * An evaluator of a plan.
   *
   * @param unitBytes bytes of decoded units that may be kept between calls
   */
  public RegionEvaluator(Plan plan, long unitBytes) {
    this.plan = plan;
    this.unitBytes = unitBytes;
    this.bands = new Bands(PlanSettings.DEFAULT.bandRows());
    this.store = new JobStore(plan, List.of(), bands, Store.NONE);
  }

  /**
   * An evaluator that looks for what was kept of earlier pictures.
   *
   * @param picture what is looked at
   * @param canvas its pixels
   * @param bandRows rows of a band, as for all who share the store
   */
  public RegionEvaluator(
      Plan plan, long unitBytes, Node picture, Region canvas, int bandRows, Store store) {
    this.plan = plan;
    this.unitBytes = unitBytes;
    this.bands = new Bands(bandRows);
    this.store = new JobStore(plan, picture, canvas, bands, store);
  }

  /** The pixels of {@code root} in {@code region}. */
  public synchronized Planes compute(Node root, Region region, Stop stop) {
    if (closed) {
      throw new IllegalStateException("The composite has been closed.");
    }
    int stage = plan.stageOf(root);
    if (!store.keeps() || region.empty()) {
      return new Call(stage, region).run(stop);
    }
    // Band by band as jobs do it, so that what one has kept serves the other.
    Planes all = new Planes(region, root.planes());
    for (int k = bands.first(region); k <= bands.last(region); k++) {
      try {
        all.copyFrom(new Call(stage, bands.cut(region, k)).run(stop));
      } finally {
        store.release();
      }
    }
    return all;
  }

  /** Closes the frames' files. */
  @Override
  public synchronized void close() {
    closed = true;
    readers.values().forEach(FrameReader::close);
    readers.clear();
    units.clear();
  }

  private static long key(int frame, int unit) {
    return ((long) frame << 32) | unit;
  }

  /** At least {@code part} of a unit; all that the picture needs of it, once it must be decoded. */
  private Samples unit(int frame, int unit, Region part) {
    Samples known = units.get(key(frame, unit));
    if (known != null && known.area().contains(part)) {
      return known;
    }
    Samples kept = store.samples(frame, unit, part);
    if (kept != null) {
      return kept;
    }
    FrameSource source = plan.frames().get(frame).source();
    Region asked = store.unitAsked(frame, unit);
    Region read = asked.contains(part) ? asked : source.unit(unit);
    Samples samples = readers.computeIfAbsent(frame, f -> source.reader()).read(unit, read);
    store.offer(frame, unit, samples);
    keep(key(frame, unit), samples);
    return samples;
  }

  private void keep(long key, Samples samples) {
    Samples before = units.put(key, samples);
    bytes += samples.heldBytes() - (before == null ? 0 : before.heldBytes());
    var oldest = units.entrySet().iterator();
    while (bytes > unitBytes && units.size() > 1) {
      bytes -= oldest.next().getValue().heldBytes();
      oldest.remove();
    }
  }

  /** One rectangle: what is needed of each stage, then the stages in order. */
  private final class Call implements StageInputs, StageNeeds {
    private final int root;
    private final Region[] regions;
    private final Planes[] done;
    private final Runs[] runs;
    private final Map<Integer, List<Integer>> lastRead = new HashMap<>(); // stages, by reader
    private final BitSet read = new BitSet();
    private final Map<Long, Region> parts = new HashMap<>();
    private int reader; // whose needs are asked for

    Call(int root, Region region) {
      this.root = root;
      List<Stage> stages = plan.stages();
      regions = new Region[stages.size()];
      done = new Planes[stages.size()];
      runs = new Runs[stages.size()];
      java.util.Arrays.fill(regions, Region.EMPTY);
      regions[root] = region;
      for (int s = root; s >= 0; s--) {
        if (!regions[s].empty()) {
          reader = s;
          stages.get(s).needs(regions[s], this);
        }
      }
    }

    Planes run(Stop stop) {
      for (int s = 0; s <= root; s++) {
        if (!regions[s].empty() || s == root) {
          Stage stage = plan.stages().get(s);
          Planes out = new Planes(regions[s], stage.node().planes());
          if (store.keeps() && stage.node() instanceof FrameNode frame && frame.reduction() > 1) {
            fillFromBands(s, out, stop);
          } else {
            stage.fill(this, out, stop);
          }
          done[s] = out;
          if (stage.mask()) {
            runs[s] = Runs.of(out);
          }
          letGo(s);
        }
      }
      return done[root];
    }

    /** Lets go of the stages that nobody reads after stage {@code s}. */
    private void letGo(int s) {
      for (int above : lastRead.getOrDefault(s, List.of())) {
        done[above] = null;
        runs[above] = null;
      }
    }

    /** Whole bands are made where some are missing, so that the next rectangle finds them. */
    private void fillFromBands(int s, Planes out, Stop stop) {
      Region area = out.area();
      for (int k = bands.first(area); k <= bands.last(area); k++) {
        Region part = bands.cut(area, k);
        KeptBand kept = store.band(s, k, part);
        out.copyFrom(kept != null ? kept.planes() : band(s, k, part, stop));
      }
    }

    private Planes band(int s, int band, Region part, Stop stop) {
      Stage stage = plan.stages().get(s);
      Planes planes = new Planes(store.asked(s, band).hull(part), stage.node().planes());
      stage.needs(planes.area(), this);
      stage.fill(this, planes, stop);
      store.offer(s, band, planes, null);
      return planes;
    }

    @Override
    public void frame(int frame, Region part) {
      Units.cut(
          plan.frames().get(frame).source(),
          part,
          (unit, cut) -> parts.merge(key(frame, unit), cut, Region::hull));
    }

    @Override
    public void stage(int stage, Region part) {
      regions[stage] = regions[stage].hull(part);
      if (!read.get(stage)) { // the walk goes from the last reader to the first
        read.set(stage);
        lastRead.computeIfAbsent(reader, r -> new ArrayList<>()).add(stage);
      }
    }

    @Override
    public Samples samples(int frame, int y) {
      FrameSource source = plan.frames().get(frame).source();
      int unit = Units.at(source, y);
      return unit(frame, unit, parts.getOrDefault(key(frame, unit), source.unit(unit)));
    }

    @Override
    public @Nullable Planes planes(int stage, int y) {
      return done[stage];
    }

    @Override
    public @Nullable Runs runs(int stage, int y) {
      return runs[stage];
    }

    @Override
    public Planes block(int stage, Region part) {
      Planes block = new Planes(part, plan.stages().get(stage).node().planes());
      if (done[stage] != null) {
        block.copyFrom(done[stage]);
      }
      return block;
    }
  }
}
