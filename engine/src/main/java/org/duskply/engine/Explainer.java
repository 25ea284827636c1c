package org.duskply.engine;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Map;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;
import org.duskply.engine.plan.KeyWriter;
import org.duskply.engine.plan.Plan;
import org.duskply.engine.plan.PlanSettings;
import org.duskply.engine.render.BandSink;
import org.duskply.engine.render.EncodedBand;
import org.duskply.engine.render.Job;
import org.duskply.engine.render.Output;
import org.duskply.engine.render.Store;
import org.duskply.recipe.Recipe;
import org.duskply.recipe.StepNames;
import org.duskply.recipe.deliver.Deliverable;
import org.duskply.recipe.step.Group;
import org.duskply.recipe.step.Lay;
import org.duskply.recipe.step.Pop;
import org.duskply.recipe.step.Step;
import org.duskply.recipe.step.Verb;
import org.jspecify.annotations.Nullable;

/**
 * Makes the {@link Explanation} of a composite. Masks are measured by making them; no frame is
 * decoded and no file begun.
 */
final class Explainer {
  private static final double NANOS = 1e9;

  private final PlannedComposite composite;
  private final StepNames names;
  private final MaskAreas areas;
  private final ToldMasks masks;

  Explainer(PlannedComposite composite) {
    this.composite = composite;
    this.names = StepNames.of(composite.recipe());
    this.areas = new MaskAreas(composite);
    this.masks = ToldMasks.of(composite.recipe());
  }

  Explanation explain() {
    Recipe shown = composite.version().recipe();
    List<Explanation.StepLine> steps = new ArrayList<>();
    collect(shown.steps(), "steps", 0, true, steps);
    List<Explanation.StepLine> finish = new ArrayList<>();
    collect(shown.finish().steps(), "finish/steps", 0, true, finish);
    PlanSettings settings = composite.engine().settings();
    List<Output> outputs = outputs();
    Plan plan = composite.plan(outputs);
    try (Job job = new Job(plan, outputs, settings.bandRows(), Store.NONE)) {
      return new Explanation(
          composite.version().alternate(),
          List.copyOf(steps),
          crop(),
          List.copyOf(finish),
          ExplainedParts.masks(shown, masks),
          frames(plan, job),
          ExplainedParts.alternates(composite.recipe(), masks),
          ExplainedParts.deliverables(composite),
          job.floorBytes(),
          composite.engine().memory(),
          composite.engine().threads(),
          job.costNanos() / NANOS);
    }
  }

  /** What is cut off, in pixels of the picture. */
  private @Nullable String crop() {
    Region all = composite.canvas();
    Region kept = composite.shown();
    return kept.equals(all) ? null : CropWords.sentence(all, kept);
  }

  /** What would be rendered: the deliverables, or where there are none the picture itself. */
  private List<Output> outputs() {
    List<Output> outputs = new ArrayList<>();
    for (Map.Entry<String, Deliverable> e : composite.recipe().deliverables().entrySet()) {
      for (Version version : composite.versionsOf(e.getValue())) {
        outputs.add(Delivery.imagined(composite, version, e.getKey(), e.getValue()).output());
      }
    }
    if (outputs.isEmpty()) {
      Region canvas = Region.ofSize(composite.width(), composite.height());
      outputs.add(new Output(composite.version().picture(), canvas, new Nowhere()));
    }
    return outputs;
  }

  private void collect(
      List<Step> steps, String prefix, int depth, boolean done, List<Explanation.StepLine> lines) {
    for (int i = 0; i < steps.size(); i++) {
      Step step = steps.get(i);
      String path = prefix + "/#" + (i + 1);
      boolean own = done && !step.skip() && step.opacity() > 0;
      double area = own ? areas.of(composite.version().maskOfStep().get(path)) : 0;
      lines.add(
          new Explanation.StepLine(
              names.name(path),
              step.title(),
              depth,
              StepWords.sentence(
                  step,
                  Members.names(step, path, names),
                  own ? area : null,
                  composite.recipe(),
                  masks),
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

  private List<Explanation.FrameLine> frames(Plan plan, Job job) {
    List<Explanation.FrameLine> lines = new ArrayList<>();
    for (FrameSet.Opened frame : composite.frames().all()) {
      BitSet units = new BitSet();
      for (int f = 0; f < plan.frames().size(); f++) {
        if (plan.frames().get(f).source() == frame.source()) {
          job.unitsNeeded(f).keySet().forEach(units::set);
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
    public EncodedBand encode(int band, Planes rows) {
      return () -> 0;
    }

    @Override
    public void append(int band, EncodedBand encoded) {}

    @Override
    public void describe(KeyWriter key) {}

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
