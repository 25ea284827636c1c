package org.duskply.engine.render;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.Executor;
import java.util.function.DoubleConsumer;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;
import org.duskply.engine.pixel.Runs;
import org.duskply.engine.plan.Bands;
import org.duskply.engine.plan.Plan;
import org.duskply.engine.plan.Stage;
import org.duskply.engine.plan.StageNeeds;
import org.duskply.engine.plan.Stop;
import org.jspecify.annotations.Nullable;

/**
 * One rendering of a plan into some outputs: the tasks for every unit, band, encoding and writing
 * that is needed, each once, whatever number of outputs share it. What the store has kept is
 * neither made again nor is anything below it. Used once; to be closed.
 */
public final class Job implements AutoCloseable {
  private final Plan plan;
  private final Bands bands;
  private final List<Output> outputs;
  private final JobStore store;
  private final NeededBands needed;
  private final Results results;
  private final Counters counters;
  private final List<FrameTasks> frames = new ArrayList<>();
  private final List<Map<Integer, Task>> stageTasks = new ArrayList<>();
  private final TaskGraph graph;
  private final long sinkBytes;
  private volatile Stop stop = Stop.NEVER;

  /**
   * Works out all tasks; reads no pixel.
   *
   * @param bandRows rows of a band; the sinks count theirs in the same way
   * @param store asked for finished work, and offered it; what it gives is held until this is
   *     closed
   */
  public Job(Plan plan, List<Output> outputs, int bandRows, Store store) {
    this.plan = plan;
    this.bands = new Bands(bandRows);
    this.outputs = List.copyOf(outputs);
    this.needed = new NeededBands(plan, bands);
    this.results = new Results(plan, bands);
    this.counters = new Counters(plan, outputs.size());
    this.sinkBytes = outputs.stream().mapToLong(o -> o.sink().heldBytes()).sum();
    this.store = new JobStore(plan, outputs, bands, store);
    boolean built = false;
    try {
      this.graph = build();
      built = true;
    } finally {
      if (!built) {
        this.store.release();
      }
    }
  }

  /** Fewest bytes with which this job can be done. */
  public long floorBytes() {
    return graph.floorBytes() + sinkBytes;
  }

  /** How many tasks there are. */
  public int tasks() {
    return graph.size();
  }

  /** Rough cost in nanoseconds of one core. */
  public double costNanos() {
    return graph.costNanos();
  }

  /** How much was done. */
  public Counters counters() {
    return counters;
  }

  /** The units that will be decoded of a frame of the plan, with what is needed of each. */
  public Map<Integer, Region> unitsNeeded(int frame) {
    return frames.get(frame).unitsToDecode();
  }

  /**
   * Does all of it; what the sinks were given is not yet committed.
   *
   * @param budget bytes that may be taken; at least {@link #floorBytes}
   * @return the most bytes taken at once
   */
  public long run(Executor pool, int threads, long budget, DoubleConsumer progress, Stop stop) {
    this.stop = stop;
    return sinkBytes
        + new Scheduler(graph, pool, threads, budget - sinkBytes, progress, stop).run();
  }

  TaskGraph graph() {
    return graph;
  }

  /**
   * What was odd in a frame's file and did not stop it from being read, once the work is done and
   * the files are closed.
   *
   * @param frame of the plan
   */
  public Set<String> notices(int frame) {
    return frames.get(frame).notices();
  }

  /** Closes the frames' files, and lets go of what was kept from earlier jobs. */
  @Override
  public void close() {
    frames.forEach(FrameTasks::close);
    store.release();
  }

  private TaskGraph build() {
    List<Map<Integer, EncodedBand>> encoded = new ArrayList<>();
    for (int o = 0; o < outputs.size(); o++) {
      encoded.add(keptOrWanted(o));
    }
    needed.walk(this::keptBand);
    for (int f = 0; f < plan.frames().size(); f++) {
      frames.add(
          new FrameTasks(f, plan.frames().get(f), needed.units(f), results, counters, store));
    }
    for (int s = 0; s < plan.stages().size(); s++) {
      stageTasks.add(new HashMap<>());
      for (Map.Entry<Integer, Region> e : needed.regions(s).entrySet()) {
        stageTasks.get(s).put(e.getKey(), new FillTask(s, e.getKey(), e.getValue()));
      }
    }
    List<OutputTasks.Append> appends = new ArrayList<>();
    for (int o = 0; o < outputs.size(); o++) {
      appendTasks(o, encoded.get(o), appends);
    }
    // Outputs advance together, so that a band that several of them read is let go early.
    appends.sort(Comparator.comparingDouble(OutputTasks.Append::reached));
    return new TaskGraph(List.copyOf(appends));
  }

  /** The encoded bands of an output that are kept; the others are wanted. */
  private Map<Integer, EncodedBand> keptOrWanted(int outputIndex) {
    Output output = outputs.get(outputIndex);
    int stage = plan.stageOf(output.root());
    Map<Integer, EncodedBand> kept = new HashMap<>();
    for (int k = bands.first(output.canvas()); k <= bands.last(output.canvas()); k++) {
      EncodedBand encoded = store.encoded(outputIndex, k);
      if (encoded != null) {
        kept.put(k, encoded);
      } else {
        needed.want(stage, bands.cut(output.canvas(), k));
      }
    }
    return kept;
  }

  /** Puts a band of a stage into its place if it is kept. */
  private boolean keptBand(int stage, int band, Region part) {
    KeptBand kept = store.band(stage, band, part);
    if (kept != null) {
      results.slot(stage, band).keep(kept);
    }
    return kept != null;
  }

  private void appendTasks(
      int outputIndex, Map<Integer, EncodedBand> kept, List<OutputTasks.Append> appends) {
    Output output = outputs.get(outputIndex);
    OutputTasks.Append before = null;
    int last = bands.last(output.canvas());
    for (int k = bands.first(output.canvas()); k <= last; k++) {
      EncodedBand encoded = kept.get(k);
      OutputTasks.Encode encode = encoded == null ? encodeTask(outputIndex, k) : null;
      OutputTasks.Append append =
          new OutputTasks.Append(output, k, (k + 1.0) / (last + 1.0), encode, encoded);
      if (before != null) {
        append.after().add(before);
      }
      appends.add(append);
      before = append;
    }
  }

  private OutputTasks.Encode encodeTask(int outputIndex, int band) {
    Output output = outputs.get(outputIndex);
    int stage = plan.stageOf(output.root());
    Region region = bands.cut(output.canvas(), band);
    OutputTasks.Encode encode =
        new OutputTasks.Encode(output, outputIndex, band, region, stage, results, counters, store);
    Task fill = stageTasks.get(stage).get(band);
    if (fill != null) {
      encode.reads().add(fill);
    }
    return encode;
  }

  /** Fills one band of a stage. */
  private final class FillTask extends Task {
    private final Stage stage;
    private final int stageIndex;
    private final int band;
    private final Region region;
    private final Results.BandSlot slot;

    FillTask(int stageIndex, int band, Region region) {
      this.stageIndex = stageIndex;
      this.stage = plan.stages().get(stageIndex);
      this.band = band;
      this.region = region;
      this.slot = results.slot(stageIndex, band);
      stage.needs(
          region,
          new StageNeeds() {
            @Override
            public void frame(int frame, Region part) {
              readUnits(frame, part);
            }

            @Override
            public void stage(int s, Region part) {
              readBands(s, part);
            }
          });
    }

    private void readUnits(int frame, Region part) {
      FrameTasks tasks = frames.get(frame);
      Units.cut(
          tasks.source(),
          part,
          (unit, cut) -> {
            if (!tasks.keeps(unit)) {
              read(tasks.unit(unit));
            }
          });
    }

    private void readBands(int s, Region part) {
      if (!part.empty()) {
        for (int k = bands.first(part); k <= bands.last(part); k++) {
          if (!results.slot(s, k).kept()) {
            read(stageTasks.get(s).get(k));
          }
        }
      }
    }

    private void read(@Nullable Task task) {
      if (task == null) {
        throw new IllegalStateException("A stage asks for more than it said it needs");
      }
      reads().add(task);
    }

    @Override
    long scratchBytes() {
      return stage.scratchBytes(region);
    }

    @Override
    long resultBytes() {
      return stage.resultBytes(region);
    }

    @Override
    double costNanos() {
      return stage.costNanos(region);
    }

    @Override
    void run() {
      boolean full = stage.full(region);
      Planes planes = full ? Planes.uniform(region, 1f) : filled();
      Runs runs = full ? Runs.full(region) : stage.mask() ? Runs.of(planes) : null;
      slot.planes = planes;
      slot.runs = runs;
      counters.ran(stageIndex);
      // A full mask takes no time, and what goes to an encoder alone is kept encoded.
      if (!full && !stage.passing() && needed.isRead(stageIndex)) {
        store.offer(stageIndex, band, planes, runs);
      }
    }

    private Planes filled() {
      Planes planes = new Planes(region, stage.node().planes());
      stage.fill(results, planes, stop);
      return planes;
    }

    @Override
    void release() {
      slot.planes = null;
      slot.runs = null;
    }
  }
}
