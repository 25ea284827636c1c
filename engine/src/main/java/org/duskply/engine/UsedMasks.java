package org.duskply.engine;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.duskply.recipe.Recipe;
import org.duskply.recipe.mask.Mask;
import org.duskply.recipe.mask.MaskKind;
import org.duskply.recipe.mask.MaskUse;
import org.duskply.recipe.shape.Shape;
import org.duskply.recipe.step.Group;
import org.duskply.recipe.step.Step;

/**
 * The masks that some steps need when they are done, with all that these are made of, each once and
 * with its place in the recipe.
 */
final class UsedMasks {
  private final Map<String, Mask> masks;
  private final Map<String, Mask> byPath = new LinkedHashMap<>();

  private UsedMasks(Map<String, Mask> masks) {
    this.masks = masks;
  }

  /** The masks of {@code steps}. */
  static UsedMasks of(Recipe recipe, List<Step> steps) {
    UsedMasks used = new UsedMasks(recipe.masks());
    used.add(steps, "steps");
    return used;
  }

  /** Each by its path: {@code masks/sky}, {@code steps/#4/mask/within/#1}. */
  Map<String, Mask> byPath() {
    return byPath;
  }

  /** Names of the frames that they read. */
  Set<String> frames() {
    Set<String> frames = new LinkedHashSet<>();
    for (Mask mask : byPath.values()) {
      MaskKind kind = mask.kind();
      if (kind != null) {
        frames.addAll(kind.frames());
      }
    }
    return frames;
  }

  private void add(List<Step> steps, String prefix) {
    for (int i = 0; i < steps.size(); i++) {
      Step step = steps.get(i);
      String path = prefix + "/#" + (i + 1);
      if (step.skip() || step.opacity() == 0) {
        continue;
      }
      if (step.mask() != null) {
        add(step.mask(), path + "/mask");
      }
      if (step.verb() instanceof Group group) {
        add(group.steps(), path + "/group");
      }
    }
  }

  private void add(MaskUse use, String path) {
    if (use instanceof MaskUse.Named name) {
      String there = "masks/" + name.name();
      Mask mask = masks.get(name.name());
      if (mask != null && !byPath.containsKey(there)) {
        add(mask, there);
      }
    } else {
      add(((MaskUse.Inline) use).mask(), path);
    }
  }

  private void add(Mask mask, String path) {
    byPath.put(path, mask);
    MaskKind kind = mask.kind();
    if (kind != null) {
      addAll(kind.members(), path + "/" + Shape.of((Record & MaskKind) kind).key());
    }
    addAll(mask.within(), path + "/within");
    addAll(mask.except(), path + "/except");
  }

  private void addAll(List<MaskUse> uses, String path) {
    for (int i = 0; i < uses.size(); i++) {
      add(uses.get(i), path + "/#" + (i + 1));
    }
  }
}
