package org.duskply.engine;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.concurrent.CancellationException;
import net.imglib2.RandomAccessibleInterval;
import net.imglib2.type.numeric.real.FloatType;
import org.duskply.engine.colour.ColourSpace;
import org.duskply.engine.pixel.Region;
import org.duskply.engine.plan.FrameNode;
import org.duskply.engine.plan.Node;
import org.duskply.engine.plan.Plan;
import org.duskply.engine.render.Job;
import org.duskply.engine.render.Output;
import org.duskply.engine.render.RegionEvaluator;
import org.duskply.engine.render.Store;
import org.duskply.recipe.Problem;
import org.duskply.recipe.Recipe;
import org.duskply.recipe.deliver.Deliverable;

/** The composite of an {@link Opening}. */
final class PlannedComposite implements Composite {
  private static final long KEPT_UNIT_BYTES = 256L << 20;

  private final Engine engine;
  private final Opening opening;
  private final FrameSet frames;
  private final Map<String, Version> versions;
  private final Region canvas;
  private final Region shown;
  private final List<Problem> notices;
  private final Node before;
  private final Map<Node, RegionEvaluator> evaluators = new IdentityHashMap<>();
  private boolean closed;

  /**
   * A composite.
   *
   * @param versions the picture of each alternate that may be asked for, by its name; the one that
   *     is shown first
   * @param canvas all pixels of the frames
   * @param shown those of them that the finished picture keeps
   * @param before what the finished picture is compared with, cropped as it is
   */
  PlannedComposite(
      Engine engine,
      Opening opening,
      FrameSet frames,
      Map<String, Version> versions,
      Region canvas,
      Region shown,
      Node before,
      List<Problem> notices) {
    this.engine = engine;
    this.opening = opening;
    this.frames = frames;
    this.versions = versions;
    this.canvas = canvas;
    this.shown = shown;
    this.before = before;
    this.notices = notices;
  }

  @Override
  public Recipe recipe() {
    return opening.recipe();
  }

  @Override
  public int width() {
    return shown.width();
  }

  @Override
  public int height() {
    return shown.height();
  }

  @Override
  public List<Problem> notices() {
    return notices;
  }

  @Override
  public String working() {
    return frames.working().name();
  }

  ColourSpace workingSpace() {
    return frames.working();
  }

  Engine engine() {
    return engine;
  }

  Opening opening() {
    return opening;
  }

  FrameSet frames() {
    return frames;
  }

  /** The picture that is looked at. */
  Version version() {
    return versions.values().iterator().next();
  }

  /** The pictures of all alternates that are looked at, by their names. */
  Map<String, Version> versions() {
    return versions;
  }

  /** The part of the frames' canvas that the finished picture keeps. */
  Region shown() {
    return shown;
  }

  /** All pixels of the frames. */
  Region canvas() {
    return canvas;
  }

  @Override
  public RandomAccessibleInterval<FloatType> image() {
    return image(version().picture());
  }

  @Override
  public RandomAccessibleInterval<FloatType> before() {
    return image(before);
  }

  private RandomAccessibleInterval<FloatType> image(Node picture) {
    return LazyPicture.of(evaluator(picture), picture, width(), height());
  }

  private synchronized RegionEvaluator evaluator(Node root) {
    checkOpen();
    return evaluators.computeIfAbsent(
        root,
        r ->
            new RegionEvaluator(
                Plan.of(List.of(r), engine.settings()),
                Math.min(KEPT_UNIT_BYTES, engine.memory() / 4),
                r,
                Region.ofSize(width(), height()),
                engine.settings().bandRows(),
                engine.store()));
  }

  @Override
  public Explanation explain() {
    checkOpen();
    return new Explainer(this).explain();
  }

  @Override
  public List<Problem> measure(Progress progress) {
    checkOpen();
    Found found = new Found(opening.recipe(), List.of());
    try {
      DevelopmentCheck.run(frames, engine.memory(), found, progress);
    } catch (CancellationException e) {
      throw new CancelledException();
    }
    return found.noticesOrThrow();
  }

  @Override
  public Delivered deliver(Path out, Set<String> names, Progress progress) {
    checkOpen();
    return deliver(deliveries(names, out), progress);
  }

  @Override
  public Delivered deliverBefore(Path out, Set<String> names, Progress progress) {
    checkOpen();
    Version version = new Version(Version.BEFORE, opening.recipe(), before, Map.of());
    List<Delivery> deliveries = new ArrayList<>();
    wanted(names)
        .forEach(
            (name, deliverable) ->
                deliveries.add(Delivery.prepare(this, version, name, deliverable, out)));
    Delivery.refuseSameTarget(deliveries);
    return deliver(deliveries, progress);
  }

  private Delivered deliver(List<Delivery> deliveries, Progress progress) {
    try {
      Rendered rendered = render(deliveries, progress);
      for (Delivery delivery : deliveries) {
        delivery.finish(progress::cancelled);
      }
      if (progress.cancelled()) {
        throw new CancelledException();
      }
      // All are whole now. From here on nothing stops, so that all change or none.
      List<Delivered.File> files = new ArrayList<>();
      for (Delivery delivery : deliveries) {
        files.add(delivery.commit());
      }
      return new Delivered(files, rendered.peakBytes, rendered.unitsDecoded, rendered.notices);
    } catch (CancellationException e) {
      throw new CancelledException();
    } catch (OutOfMemoryError e) {
      throw new DuskplyException(
          "Java's heap was full before the picture was done; no file has been changed. Give it more with -Xmx, or lower --memory.",
          e);
    } finally {
      deliveries.forEach(Delivery::close);
    }
  }

  private record Rendered(long peakBytes, long unitsDecoded, List<String> notices) {}

  private Rendered render(List<Delivery> deliveries, Progress progress) {
    List<Output> outputs = deliveries.stream().map(Delivery::output).toList();
    Plan plan = plan(outputs);
    try (Job job = job(plan, outputs)) {
      if (job.floorBytes() > engine.memory()) {
        throw new MemoryException(job.floorBytes(), engine.memory());
      }
      deliveries.forEach(Delivery::open);
      TimeLeft pace = new TimeLeft(progress, System::nanoTime);
      long peak =
          job.run(
              engine.pool(), engine.threads(), engine.memory(), pace::reached, progress::cancelled);
      job.close();
      List<String> notices = new ArrayList<>();
      for (int f = 0; f < plan.frames().size(); f++) {
        FrameNode frame = plan.frames().get(f);
        List<String> odd = ReadingNotices.of(frame, job.notices(f));
        if (!odd.isEmpty()) {
          engine.noteOdd(frame);
        }
        notices.addAll(odd);
      }
      return new Rendered(peak, job.counters().unitsDecoded(), List.copyOf(notices));
    }
  }

  /** Without what is kept where less memory is needed so: no job is refused for what is kept. */
  private Job job(Plan plan, List<Output> outputs) {
    int bandRows = engine.settings().bandRows();
    Job job = new Job(plan, outputs, bandRows, engine.store(plan));
    if (job.floorBytes() <= engine.memory()) {
      return job;
    }
    job.close();
    return new Job(plan, outputs, bandRows, Store.NONE);
  }

  /** One plan for all outputs: what several have in common is made once. */
  Plan plan(List<Output> outputs) {
    return Plan.of(outputs.stream().map(Output::root).toList(), engine.settings());
  }

  /** The files to be made: each wanted deliverable of each alternate that it names. */
  List<Delivery> deliveries(Set<String> names, Path out) {
    List<Delivery> deliveries = new ArrayList<>();
    wanted(names)
        .forEach(
            (name, deliverable) ->
                versionsOf(deliverable)
                    .forEach(
                        v -> deliveries.add(Delivery.prepare(this, v, name, deliverable, out))));
    if (deliveries.isEmpty()) {
      throw new UnknownNameException(
          "None of these deliverables is made of the alternate "
              + opening.view().alternate()
              + "; write it under their alternates.");
    }
    Delivery.refuseSameTarget(deliveries);
    return deliveries;
  }

  /** The versions that a deliverable is made of, in its order. */
  List<Version> versionsOf(Deliverable deliverable) {
    return deliverable.alternates().stream().map(versions::get).filter(Objects::nonNull).toList();
  }

  private Map<String, Deliverable> wanted(Set<String> names) {
    Map<String, Deliverable> all = opening.recipe().deliverables();
    for (String name : names) {
      if (!all.containsKey(name)) {
        throw new UnknownNameException(
            "The recipe has no deliverable "
                + name
                + "; it has "
                + (all.isEmpty() ? "none" : String.join(", ", all.keySet()))
                + ".");
      }
    }
    if (all.isEmpty()) {
      throw new DuskplyException(
          "The recipe has no deliverables, so there is nothing to write. Add one, for example:  deliverables: { print: out/<recipe>.tif }");
    }
    Map<String, Deliverable> wanted = new LinkedHashMap<>(all);
    if (!names.isEmpty()) {
      wanted.keySet().retainAll(names);
    }
    return wanted;
  }

  private synchronized void checkOpen() {
    if (closed) {
      throw new IllegalStateException("The composite has been closed.");
    }
  }

  @Override
  public synchronized void close() {
    closed = true;
    evaluators.values().forEach(RegionEvaluator::close);
  }
}
