package org.duskply.engine;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.duskply.engine.Explanation.NamedLine;
import org.duskply.engine.deliver.Extent;
import org.duskply.engine.deliver.FileNames;
import org.duskply.recipe.Recipe;
import org.duskply.recipe.deliver.Deliverable;
import org.duskply.recipe.mask.Mask;
import org.duskply.recipe.mask.MaskUse;
import org.duskply.recipe.step.Group;
import org.duskply.recipe.step.Step;
import org.jspecify.annotations.Nullable;

/** The parts of an explanation that are no steps: masks within masks, alternates, deliverables. */
final class ExplainedParts {
  private ExplainedParts() {}

  /** The named masks that steps use and do not tell themselves, in recipe order. */
  static List<NamedLine> masks(Recipe recipe, ToldMasks masks) {
    List<MaskUse> used = new ArrayList<>();
    collect(recipe.steps(), used);
    collect(recipe.finish().steps(), used);
    Set<String> told = new HashSet<>();
    used.forEach(use -> name(use).stream().filter(n -> masks.atStep(n) != null).forEach(told::add));
    Set<String> met = new LinkedHashSet<>();
    Deque<MaskUse> waiting = new ArrayDeque<>(used);
    while (!waiting.isEmpty()) {
      MaskUse use = waiting.remove();
      boolean first = use instanceof MaskUse.Inline || met.addAll(name(use));
      Mask mask = mask(use, recipe);
      if (first && mask != null) {
        waiting.addAll(mask.parts());
      }
    }
    List<NamedLine> lines = new ArrayList<>();
    for (String name : recipe.masks().keySet()) {
      if (met.contains(name) && !told.contains(name)) {
        lines.add(new NamedLine(name, "This is " + masks.all(name) + "."));
      }
    }
    return List.copyOf(lines);
  }

  private static void collect(List<Step> steps, List<MaskUse> used) {
    for (Step step : steps) {
      if (step.mask() != null) {
        used.add(step.mask());
      }
      if (step.verb() instanceof Group group) {
        collect(group.steps(), used);
      }
    }
  }

  private static List<String> name(MaskUse use) {
    return use instanceof MaskUse.Named named ? List.of(named.name()) : List.of();
  }

  private static @Nullable Mask mask(MaskUse use, Recipe recipe) {
    return use instanceof MaskUse.Named named
        ? recipe.masks().get(named.name())
        : ((MaskUse.Inline) use).mask();
  }

  /** What each alternate does otherwise. */
  static List<NamedLine> alternates(Recipe recipe, ToldMasks masks) {
    return recipe.alternates().keySet().stream()
        .map(name -> new NamedLine(name, AlternateWords.sentences(recipe, name, masks)))
        .toList();
  }

  /** What each deliverable writes; of alternates that are not looked at, nothing. */
  static List<NamedLine> deliverables(PlannedComposite composite) {
    List<NamedLine> lines = new ArrayList<>();
    for (Map.Entry<String, Deliverable> e : composite.recipe().deliverables().entrySet()) {
      List<Version> versions = composite.versionsOf(e.getValue());
      if (!versions.isEmpty()) {
        lines.add(new NamedLine(e.getKey(), written(composite, e, versions)));
      }
    }
    return List.copyOf(lines);
  }

  private static String written(
      PlannedComposite composite, Map.Entry<String, Deliverable> e, List<Version> versions) {
    Deliverable deliverable = e.getValue();
    Extent extent = Delivery.extent(composite, deliverable);
    boolean dated = composite.frames().base().exif().taken() != null;
    List<String> files = new ArrayList<>();
    for (Version version : versions) {
      files.add(
          dated || !FileNames.asksForShot(deliverable.file())
              ? Delivery.fileName(composite, version, e.getKey(), deliverable, extent.size())
              : deliverable.file());
    }
    return DeliverableWords.sentence(
        deliverable,
        extent,
        composite.width(),
        composite.height(),
        versions.stream().map(Version::alternate).toList(),
        files);
  }
}
