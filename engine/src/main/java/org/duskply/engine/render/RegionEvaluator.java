package org.duskply.engine.render;

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
import org.duskply.engine.plan.Node;
import org.duskply.engine.plan.Plan;
import org.duskply.engine.plan.Stage;
import org.duskply.engine.plan.StageInputs;
import org.duskply.engine.plan.StageNeeds;
import org.duskply.engine.plan.Stop;
import org.jspecify.annotations.Nullable;

/**
 * Any rectangle of any picture of a plan, computed in the caller's thread by the same stages that
 * render bands. Keeps the frames' files open and a bounded number of bytes of decoded units.
 * Thread-safe; calls take turns.
 */
public final class RegionEvaluator implements AutoCloseable {
  private final Plan plan;
  private final long unitBytes;
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
  }

  /** The pixels of {@code root} in {@code region}. */
  public synchronized Planes compute(Node root, Region region, Stop stop) {
    if (closed) {
      throw new IllegalStateException("The composite has been closed.");
    }
    Call call = new Call(plan.stageOf(root), region);
    return call.run(stop);
  }

  /** Closes the frames' files. */
  @Override
  public synchronized void close() {
    closed = true;
    readers.values().forEach(FrameReader::close);
    readers.clear();
    units.clear();
  }

  private Samples unit(int frame, int unit) {
    long key = ((long) frame << 32) | unit;
    Samples known = units.get(key);
    if (known != null) {
      return known;
    }
    FrameSource source = plan.frames().get(frame).source();
    Samples samples = readers.computeIfAbsent(frame, f -> source.reader()).read(unit);
    units.put(key, samples);
    bytes += bytes(samples);
    var oldest = units.entrySet().iterator();
    while (bytes > unitBytes && units.size() > 1) {
      bytes -= bytes(oldest.next().getValue());
      oldest.remove();
    }
    return samples;
  }

  private static long bytes(Samples samples) {
    return samples.area().count() * samples.channels() * samples.kind().bytes();
  }

  /** One rectangle: what is needed of each stage, then the stages in order. */
  private final class Call implements StageInputs, StageNeeds {
    private final int root;
    private final Region[] regions;
    private final Planes[] done;
    private final Runs[] runs;

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
          stages.get(s).needs(regions[s], this);
        }
      }
    }

    Planes run(Stop stop) {
      for (int s = 0; s <= root; s++) {
        if (!regions[s].empty() || s == root) {
          Stage stage = plan.stages().get(s);
          Planes out = new Planes(regions[s], stage.node().planes());
          stage.fill(this, out, stop);
          done[s] = out;
          if (stage.mask()) {
            runs[s] = Runs.of(out);
          }
        }
      }
      return done[root];
    }

    @Override
    public void frame(int frame, Region part) {}

    @Override
    public void stage(int stage, Region part) {
      regions[stage] = regions[stage].hull(part);
    }

    @Override
    public Samples samples(int frame, int y) {
      return unit(frame, Units.at(plan.frames().get(frame).source(), y));
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
