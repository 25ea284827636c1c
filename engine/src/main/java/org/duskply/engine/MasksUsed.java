package org.duskply.engine;

import java.util.ArrayDeque;
import java.util.Collection;
import java.util.Deque;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.duskply.recipe.Recipe;
import org.duskply.recipe.mask.AllOf;
import org.duskply.recipe.mask.AnyOf;
import org.duskply.recipe.mask.Image;
import org.duskply.recipe.mask.Mask;
import org.duskply.recipe.mask.MaskKind;
import org.duskply.recipe.mask.MaskUse;
import org.duskply.recipe.mask.Svg;
import org.duskply.recipe.step.Group;
import org.duskply.recipe.step.Step;

/** The masks that some steps use when they are done, those inside masks included. */
final class MasksUsed {
  private final Map<String, Mask> named;
  private final Set<String> met = new HashSet<>();
  private final Deque<At> waiting = new ArrayDeque<>();
  private final Map<String, Mask> byPath = new LinkedHashMap<>();

  /** A mask at its path in the recipe, yet to be looked into. */
  private record At(String path, MaskUse use) {}

  private MasksUsed(Map<String, Mask> named) {
    this.named = named;
  }

  /**
   * The masks from drawings, each by the path in the recipe where it is written.
   *
   * @param recipes the recipe and its alternates
   */
  static Map<String, Svg> drawn(Collection<Recipe> recipes) {
    return ofKind(Svg.class, recipes);
  }

  /**
   * The masks that are painted in files, each by the path in the recipe where it is written.
   *
   * @param recipes the recipe and its alternates
   */
  static Map<String, Image> painted(Collection<Recipe> recipes) {
    return ofKind(Image.class, recipes);
  }

  private static <K extends MaskKind> Map<String, K> ofKind(
      Class<K> kind, Collection<Recipe> recipes) {
    Map<String, K> found = new LinkedHashMap<>();
    for (Recipe recipe : recipes) {
      MasksUsed used = new MasksUsed(recipe.masks());
      used.steps(recipe.steps(), "steps");
      used.steps(recipe.finish().steps(), "finish/steps");
      used.follow();
      used.byPath.forEach(
          (path, mask) -> {
            if (kind.isInstance(mask.kind())) {
              found.put(path, kind.cast(mask.kind()));
            }
          });
    }
    return found;
  }

  private void steps(List<Step> steps, String path) {
    for (int i = 0; i < steps.size(); i++) {
      Step step = steps.get(i);
      if (step.skip() || step.opacity() == 0) {
        continue;
      }
      String at = path + "/#" + (i + 1);
      if (step.mask() != null) {
        waiting.add(new At(at + "/mask", step.mask()));
      }
      if (step.verb() instanceof Group group) {
        steps(group.steps(), at + "/group");
      }
    }
  }

  private void follow() {
    while (!waiting.isEmpty()) {
      At at = waiting.remove();
      if (at.use() instanceof MaskUse.Inline inline) {
        look(inline.mask(), at.path());
      } else if (at.use() instanceof MaskUse.Named name && met.add(name.name())) {
        Mask mask = named.get(name.name());
        if (mask != null) {
          look(mask, "masks/" + name.name());
        }
      }
    }
  }

  private void look(Mask mask, String path) {
    byPath.put(path, mask);
    later(mask.within(), path + "/within");
    later(mask.except(), path + "/except");
    MaskKind kind = mask.kind();
    if (kind instanceof AnyOf any) {
      later(any.members(), path + "/any-of");
    } else if (kind instanceof AllOf all) {
      later(all.members(), path + "/all-of");
    }
  }

  private void later(List<MaskUse> uses, String path) {
    for (int i = 0; i < uses.size(); i++) {
      waiting.add(new At(path + "/#" + (i + 1), uses.get(i)));
    }
  }
}
