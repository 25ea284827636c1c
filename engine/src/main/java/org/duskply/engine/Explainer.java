package org.duskply.engine;

import java.math.BigDecimal;
import java.math.MathContext;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.duskply.engine.frame.Exif;
import org.duskply.engine.frame.FrameInfo;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;
import org.duskply.engine.plan.Node;
import org.duskply.engine.plan.Plan;
import org.duskply.engine.plan.Stop;
import org.duskply.engine.render.Job;
import org.duskply.engine.render.Output;
import org.duskply.engine.render.RegionEvaluator;
import org.duskply.engine.render.Store;
import org.duskply.recipe.StepNames;
import org.duskply.recipe.deliver.Deliverable;
import org.duskply.recipe.step.Group;
import org.duskply.recipe.step.Step;

/**
 * Makes the {@link Explanation} of a composite. Masks are measured by making them; no frame is
 * decoded.
 */
final class Explainer {
  private static final int ROWS = 64;

  private final PlannedComposite composite;
  private final StepNames names;

  Explainer(PlannedComposite composite) {
    this.composite = composite;
    this.names = StepNames.of(composite.recipe());
  }

  Explanation explain() {
    List<Explanation.StepLine> steps = new ArrayList<>();
    collect(composite.steps(), "steps", 0, true, steps);
    List<Delivery> deliveries = new ArrayList<>();
    for (Map.Entry<String, Deliverable> e : composite.recipe().deliverables().entrySet()) {
      deliveries.add(Delivery.prepare(composite, e.getKey(), e.getValue(), Path.of("")));
    }
    List<Output> outputs = deliveries.stream().map(Delivery::output).toList();
    Plan plan =
        Plan.of(
            outputs.isEmpty()
                ? List.of(composite.picture())
                : outputs.stream().map(Output::root).distinct().toList(),
            composite.engine().settings());
    int bandRows = composite.engine().settings().bandRows();
    try (Job job = new Job(plan, outputs, bandRows, Store.NONE)) {
      return new Explanation(
          List.copyOf(steps),
          frames(plan, job),
          job.floorBytes(),
          composite.engine().memory(),
          composite.engine().threads(),
          job.costNanos() / 1e9);
    }
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
              StepWords.sentence(step, area, composite.recipe()),
              StepWords.formula(step),
              area,
              own));
      if (step.verb() instanceof Group group) {
        collect(group.steps(), path + "/group", depth + 1, own, lines);
      }
    }
  }

  /** Share of the picture that a step's mask shows. */
  private double area(String path) {
    Node mask = composite.maskOfStep().get(path);
    if (mask == null) {
      return 1;
    }
    Region canvas = Region.ofSize(composite.width(), composite.height());
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
              description(frame),
              frame.source().reason(),
              units,
              frame.source().units()));
    }
    return lines;
  }

  private static String description(FrameSet.Opened frame) {
    FrameInfo info = frame.source().info();
    StringBuilder words = new StringBuilder();
    words.append(info.width()).append(" × ").append(info.height()).append(" pixels, ");
    words.append(
        switch (info.kind()) {
          case BYTES -> "8 bits";
          case SHORTS -> "16 bits";
          case FLOATS -> "floats";
        });
    words.append(", ").append(frame.colour().space().name()).append(settings(info.exif()));
    return words.append(". ").append(frame.colour().reason()).toString();
  }

  private static String settings(Exif exif) {
    StringBuilder words = new StringBuilder();
    Double seconds = exif.exposureSeconds();
    if (seconds != null) {
      words.append(", ").append(shutter(seconds));
    }
    if (exif.fNumber() != null) {
      words.append(", f/" + plain(exif.fNumber()));
    }
    if (exif.iso() != null) {
      words.append(", ISO ").append(exif.iso());
    }
    if (exif.taken() != null) {
      words.append(", taken ").append(exif.taken().toString().replace('T', ' '));
    }
    return words.toString();
  }

  private static String shutter(double seconds) {
    return seconds < 0.3 && seconds > 0
        ? "1/" + Math.round(1 / seconds) + " s"
        : plain(seconds) + " s";
  }

  /** A number to three digits without idle noughts. */
  private static String plain(double value) {
    return new BigDecimal(value, new MathContext(3)).stripTrailingZeros().toPlainString();
  }
}
