package org.duskply.engine;

import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;
import org.duskply.engine.plan.Node;
import org.duskply.engine.plan.Plan;
import org.duskply.engine.plan.PlanSettings;
import org.duskply.engine.plan.Stop;
import org.duskply.engine.render.BandSink;
import org.duskply.engine.render.Job;
import org.duskply.engine.render.Output;
import org.duskply.engine.render.RegionEvaluator;
import org.duskply.engine.render.Store;
import org.duskply.recipe.StepNames;
import org.duskply.recipe.deliver.Deliverable;
import org.duskply.recipe.step.Group;
import org.duskply.recipe.step.Lay;
import org.duskply.recipe.step.Pop;
import org.duskply.recipe.step.Step;
import org.duskply.recipe.step.Verb;

/**
 * Makes the {@link Explanation} of a composite. Masks are measured by making them; no frame is
 * decoded and no file begun.
 */
final class Explainer {
  private static final int ROWS = 64;
  private static final double NANOS = 1e9;

  private final PlannedComposite composite;
  private final StepNames names;
  private final Map<Node, Double> areaOfMask = new IdentityHashMap<>();

  Explainer(PlannedComposite composite) {
    this.composite = composite;
    this.names = StepNames.of(composite.recipe());
  }

  Explanation explain() {
    List<Explanation.StepLine> steps = new ArrayList<>();
    collect(composite.steps(), "steps", 0, true, steps);
    PlanSettings settings = composite.engine().settings();
    List<Output> outputs = outputs();
    Plan plan = Plan.of(outputs.stream().map(Output::root).distinct().toList(), settings);
    try (Job job = new Job(plan, outputs, settings.bandRows(), Store.NONE)) {
      return new Explanation(
          List.copyOf(steps),
          frames(plan, job),
          job.floorBytes(),
          composite.engine().memory(),
          composite.engine().threads(),
          job.costNanos() / NANOS);
    }
  }

  /** What would be rendered: the deliverables, or where there are none the picture itself. */
  private List<Output> outputs() {
    List<Output> outputs = new ArrayList<>();
    for (Map.Entry<String, Deliverable> e : composite.recipe().deliverables().entrySet()) {
      outputs.add(Delivery.imagined(composite, e.getKey(), e.getValue()).output());
    }
    if (outputs.isEmpty()) {
      outputs.add(new Output(composite.picture(), canvas(), new Nowhere()));
    }
    return outputs;
  }

  private Region canvas() {
    return Region.ofSize(composite.width(), composite.height());
  }

  private void collect(
      List<Step> steps, String prefix, int depth, boolean done, List<Explanation.StepLine> lines) {
    for (int i = 0; i < steps.size(); i++) {
      Step step = steps.get(i);
      String path = prefix + "/#" + (i + 1);
      boolean own = done && !step.skip() && step.opacity() > 0;
      double area = own ? area(path) : 0;
      lines.add(
          new Explanation.StepLine(
              names.name(path),
              depth,
              StepWords.sentence(step, own ? area : null, composite.recipe()),
              StepFormula.of(step, covers(step.verb())),
              area,
              own));
      if (step.verb() instanceof Group group) {
        collect(group.steps(), path + "/group", depth + 1, own, lines);
      }
    }
  }

  /** Whether a step's frame is transparent in places. */
  private boolean covers(Verb verb) {
    String name = verb instanceof Pop pop ? pop.frame() : verb instanceof Lay l ? l.frame() : "";
    return composite.frames().all().stream().anyMatch(f -> f.name().equals(name) && f.covers());
  }

  /** Share of the picture that a step's mask shows. */
  private double area(String path) {
    Node mask = composite.maskOfStep().get(path);
    return mask == null ? 1 : areaOfMask.computeIfAbsent(mask, this::measure);
  }

  private double measure(Node mask) {
    Region canvas = canvas();
    double sum = 0;
    Plan plan = Plan.of(List.of(mask), composite.engine().settings());
    try (RegionEvaluator evaluator = new RegionEvaluator(plan, 0)) {
      for (int y = 0; y < canvas.bottom(); y += ROWS) {
        Region part = mask.footprint(canvas.rows(y, y + ROWS));
        if (!part.empty()) {
          Planes planes = evaluator.compute(mask, part, Stop.NEVER);
          for (float v : planes.plane(0)) {
            sum += v;
          }
        }
      }
    }
    return sum / canvas.count();
  }

  private List<Explanation.FrameLine> frames(Plan plan, Job job) {
    List<Explanation.FrameLine> lines = new ArrayList<>();
    for (FrameSet.Opened frame : composite.frames().all()) {
      int units = 0;
      for (int f = 0; f < plan.frames().size(); f++) {
        if (plan.frames().get(f).source() == frame.source()) {
          units += job.unitsNeeded(f);
        }
      }
      lines.add(
          new Explanation.FrameLine(
              frame.name(),
              frame.frame().file(),
              FrameWords.description(frame),
              frame.source().reason(),
              units,
              frame.source().units()));
    }
    return lines;
  }

  /** Stands where a picture is asked for that no file will hold. */
  private static final class Nowhere implements BandSink {
    @Override
    public Runnable encode(int band, Planes rows) {
      return () -> {};
    }

    @Override
    public long encodeBytes(Region band) {
      return 0;
    }

    @Override
    public long heldBytes() {
      return 0;
    }
  }
}
