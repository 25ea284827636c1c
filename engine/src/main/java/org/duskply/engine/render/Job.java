package org.duskply.engine.render;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.Executor;
import java.util.function.DoubleConsumer;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;
import org.duskply.engine.pixel.Runs;
import org.duskply.engine.plan.Key;
import org.duskply.engine.plan.Keys;
import org.duskply.engine.plan.Plan;
import org.duskply.engine.plan.Stage;
import org.duskply.engine.plan.StageNeeds;
import org.duskply.engine.plan.Stop;
import org.jspecify.annotations.Nullable;

/**
 * One rendering of a plan into some outputs: the tasks for every unit, band, encoding and writing
 * that is needed, each once, whatever number of outputs share it. Used once.
 */
public final class Job implements AutoCloseable {
  private final Plan plan;
  private final Bands bands;
  private final List<Output> outputs;
  private final Store store;
  private final NeededBands needed;
  private final Results results;
  private final Counters counters;
  private final List<FrameTasks> frames = new ArrayList<>();
  private final List<Map<Integer, Task>> stageTasks = new ArrayList<>();
  private final Map<Key, Planes> found = new HashMap<>();
  private final TaskGraph graph;
  private final long sinkBytes;
  private volatile Stop stop = Stop.NEVER;

  /**
   * Works out all tasks; reads no pixel.
   *
   * @param bandRows rows of a band; the sinks count theirs in the same way
   * @param store asked for the outputs' bands, and offered them
   */
  public Job(Plan plan, List<Output> outputs, int bandRows, Store store) {
    this.plan = plan;
    this.bands = new Bands(bandRows);
    this.outputs = List.copyOf(outputs);
    this.store = store;
    this.needed = new NeededBands(plan, bands);
    this.results = new Results(plan, bands);
    this.counters = new Counters(plan);
    this.sinkBytes = outputs.stream().mapToLong(o -> o.sink().heldBytes()).sum();
    this.graph = build();
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
    return new TreeMap<>(needed.units(frame));
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

  /** Closes the frames' files. */
  @Override
  public void close() {
    frames.forEach(FrameTasks::close);
  }

  private TaskGraph build() {
    Keys keys = new Keys();
    List<Map<Integer, Key>> outputKeys = new ArrayList<>();
    for (Output output : outputs) {
      outputKeys.add(wantBands(output, keys));
    }
    needed.walk();
    for (int f = 0; f < plan.frames().size(); f++) {
      frames.add(new FrameTasks(f, plan.frames().get(f), needed.units(f), results, counters));
    }
    for (int s = 0; s < plan.stages().size(); s++) {
      stageTasks.add(new HashMap<>());
      for (Map.Entry<Integer, Region> e : needed.regions(s).entrySet()) {
        stageTasks.get(s).put(e.getKey(), new FillTask(s, e.getKey(), e.getValue()));
      }
    }
    List<OutputTasks.Append> appends = new ArrayList<>();
    for (int o = 0; o < outputs.size(); o++) {
      appendTasks(outputs.get(o), outputKeys.get(o), appends);
    }
    // Outputs advance together, so that a band that several of them read is let go early.
    appends.sort(Comparator.comparingDouble(OutputTasks.Append::reached));
    return new TaskGraph(List.copyOf(appends));
  }

  /** Wants the bands of an output that the store does not have; returns the keys of all. */
  private Map<Integer, Key> wantBands(Output output, Keys keys) {
    int stage = plan.stageOf(output.root());
    Map<Integer, Key> ofBand = new HashMap<>();
    for (int k = bands.first(output.canvas()); k <= bands.last(output.canvas()); k++) {
      Region region = bands.cut(output.canvas(), k);
      if (store != Store.NONE) {
        Key key = keys.of(output.root(), region);
        ofBand.put(k, key);
        Planes planes = store.get(key);
        if (planes != null) {
          found.put(key, planes);
          continue;
        }
      }
      needed.want(stage, region);
    }
    return ofBand;
  }

  private void appendTasks(
      Output output, Map<Integer, Key> keys, List<OutputTasks.Append> appends) {
    int stage = plan.stageOf(output.root());
    OutputTasks.Append before = null;
    int last = bands.last(output.canvas());
    for (int k = bands.first(output.canvas()); k <= last; k++) {
      Region region = bands.cut(output.canvas(), k);
      Key key = keys.get(k);
      Planes kept = key == null ? null : found.get(key);
      OutputTasks.Encode encode =
          new OutputTasks.Encode(output, k, region, stage, kept, key, results, store);
      Task fill = stageTasks.get(stage).get(k);
      if (kept == null && fill != null) {
        encode.reads().add(fill);
      }
      OutputTasks.Append append = new OutputTasks.Append(encode, (k + 1.0) / (last + 1.0));
      append.reads().add(encode);
      if (before != null) {
        append.after().add(before);
      }
      appends.add(append);
      before = append;
    }
  }

  /** Fills one band of a stage. */
  private final class FillTask extends Task {
    private final Stage stage;
    private final int stageIndex;
    private final Region region;
    private final Results.BandSlot slot;

    FillTask(int stageIndex, int band, Region region) {
      this.stageIndex = stageIndex;
      this.stage = plan.stages().get(stageIndex);
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
      if (!part.empty()) {
        FrameTasks tasks = frames.get(frame);
        int last = Units.at(tasks.source(), part.bottom() - 1);
        for (int u = Units.at(tasks.source(), part.top()); u <= last; u++) {
          read(tasks.unit(u));
        }
      }
    }

    private void readBands(int s, Region part) {
      if (!part.empty()) {
        for (int k = bands.first(part); k <= bands.last(part); k++) {
          read(stageTasks.get(s).get(k));
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
      Planes planes = new Planes(region, stage.node().planes());
      stage.fill(results, planes, stop);
      slot.planes = planes;
      if (stage.mask()) {
        slot.runs = Runs.of(planes);
      }
      counters.ran(stageIndex);
    }

    @Override
    void release() {
      slot.planes = null;
      slot.runs = null;
    }
  }
}
