package org.duskply.engine;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.CancellationException;
import net.imglib2.RandomAccessibleInterval;
import net.imglib2.type.numeric.real.FloatType;
import org.duskply.engine.colour.ColourSpace;
import org.duskply.engine.plan.FrameNode;
import org.duskply.engine.plan.Mix;
import org.duskply.engine.plan.Node;
import org.duskply.engine.plan.Plan;
import org.duskply.engine.render.Job;
import org.duskply.engine.render.Output;
import org.duskply.engine.render.RegionEvaluator;
import org.duskply.recipe.Problem;
import org.duskply.recipe.Recipe;
import org.duskply.recipe.deliver.Deliverable;
import org.duskply.recipe.step.Step;
import org.jspecify.annotations.Nullable;

/** The composite of an {@link Opening}. */
final class PlannedComposite implements Composite {
  private static final long KEPT_UNIT_BYTES = 256L << 20;

  private final Engine engine;
  private final Opening opening;
  private final FrameSet frames;
  private final List<Step> steps;
  private final Node picture;
  private final Map<String, Node> maskOfStep;
  private final List<Problem> notices;
  private final int width;
  private final int height;
  private final Map<Node, RegionEvaluator> evaluators = new IdentityHashMap<>();
  private @Nullable Node before;
  private boolean closed;

  PlannedComposite(
      Engine engine,
      Opening opening,
      FrameSet frames,
      List<Step> steps,
      Node picture,
      Map<String, Node> maskOfStep,
      List<Problem> notices) {
    this.engine = engine;
    this.opening = opening;
    this.frames = frames;
    this.steps = steps;
    this.picture = picture;
    this.maskOfStep = maskOfStep;
    this.notices = notices;
    FrameNode base = frames.node(opening.recipe().base(), opening.view().reduction());
    this.width = base.canvas().width();
    this.height = base.canvas().height();
  }

  @Override
  public Recipe recipe() {
    return opening.recipe();
  }

  @Override
  public int width() {
    return width;
  }

  @Override
  public int height() {
    return height;
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

  List<Step> steps() {
    return steps;
  }

  Node picture() {
    return picture;
  }

  Map<String, Node> maskOfStep() {
    return maskOfStep;
  }

  @Override
  public RandomAccessibleInterval<FloatType> image() {
    return LazyPicture.of(evaluator(picture), picture, width, height);
  }

  @Override
  public RandomAccessibleInterval<FloatType> before() {
    Node shown = beforePicture();
    return LazyPicture.of(evaluator(shown), shown, width, height);
  }

  /** The frame that before/after compares with, over the base where it is transparent. */
  synchronized Node beforePicture() {
    if (before == null) {
      int n = opening.view().reduction();
      FrameNode frame = frames.node(opening.recipe().before(), n);
      before =
          frame.planes() == 3
              ? frame
              : new Mix(frames.node(opening.recipe().base(), n), frame, null, frame, 1);
    }
    return before;
  }

  private synchronized RegionEvaluator evaluator(Node root) {
    checkOpen();
    return evaluators.computeIfAbsent(
        root,
        r ->
            new RegionEvaluator(
                Plan.of(List.of(r), engine.settings()),
                Math.min(KEPT_UNIT_BYTES, engine.memory() / 4)));
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
    Map<String, Deliverable> wanted = wanted(names);
    List<Delivery> deliveries = new ArrayList<>();
    try {
      for (Map.Entry<String, Deliverable> e : wanted.entrySet()) {
        deliveries.add(Delivery.prepare(this, e.getKey(), e.getValue(), out));
      }
      Delivery.refuseSameTarget(deliveries);
      List<String> notices = new ArrayList<>();
      long peak = render(deliveries, progress, notices);
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
      return new Delivered(files, peak, List.copyOf(notices));
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

  private long render(List<Delivery> deliveries, Progress progress, List<String> notices) {
    List<Output> outputs = deliveries.stream().map(Delivery::output).toList();
    Plan plan = Plan.of(outputs.stream().map(Output::root).distinct().toList(), engine.settings());
    try (Job job = new Job(plan, outputs, engine.settings().bandRows(), engine.store())) {
      if (job.floorBytes() > engine.memory()) {
        throw new MemoryException(job.floorBytes(), engine.memory());
      }
      deliveries.forEach(Delivery::open);
      long peak =
          job.run(
              engine.pool(),
              engine.threads(),
              engine.memory(),
              progress::reached,
              progress::cancelled);
      notices.addAll(ReadingNotices.of(plan, job));
      return peak;
    }
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
