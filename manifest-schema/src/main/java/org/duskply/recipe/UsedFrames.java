package org.duskply.recipe;

import java.util.Collection;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Set;
import org.duskply.recipe.shape.Field;
import org.duskply.recipe.shape.Kind;
import org.duskply.recipe.shape.NameList;
import org.duskply.recipe.shape.Shape;
import org.duskply.recipe.step.Step;
import org.jspecify.annotations.Nullable;

/**
 * The frames that a recipe's picture is made of: the base, what it is compared with, those that
 * steps and their masks name, and those that frames are matched to. Found by walking the records'
 * Shapes, so that whatever names a frame counts. Steps that are skipped or have opacity 0 count for
 * nothing, and neither do masks that no other step uses.
 */
public final class UsedFrames {
  private final Recipe recipe;
  private final Set<String> frames = new LinkedHashSet<>();
  private final Set<String> masks = new HashSet<>();

  private UsedFrames(Recipe recipe) {
    this.recipe = recipe;
  }

  /**
   * Their names, in the order in which they are met: the base first.
   *
   * @param recipe one whose names all exist
   */
  public static Set<String> of(Recipe recipe) {
    UsedFrames used = new UsedFrames(recipe);
    used.frame(recipe.base());
    used.frame(recipe.before());
    recipe.steps().forEach(used::record);
    recipe.finish().steps().forEach(used::record);
    return used.frames;
  }

  private <T extends Record> void record(T record) {
    if (record instanceof Step step && (step.skip() || step.opacity() == 0)) {
      return;
    }
    Shape<T> shape = Shape.of(record);
    for (Field field : shape.fields()) {
      Object value = shape.get(record, field);
      if (value != null) {
        value(field.kind(), value);
      }
    }
  }

  private void value(Kind kind, Object value) {
    if (kind instanceof Kind.Mention mention) {
      name(mention.list(), (String) value);
    } else if (kind instanceof Kind.NamedOr namedOr) {
      namedOr(namedOr, value);
    } else if (kind instanceof Kind.Items items) {
      ((Collection<?>) value).forEach(member -> value(items.item(), member));
    } else if (kind instanceof Kind.Table) {
      ((Map<?, ?>) value).values().forEach(member -> record((Record) member));
    } else if (value instanceof Record part) {
      record(part);
    }
  }

  private void namedOr(Kind.NamedOr kind, Object value) {
    String name = kind.forms().name(value);
    if (name != null) {
      name(kind.list(), name);
    } else {
      record(kind.forms().thing(value));
    }
  }

  private void name(NameList list, String name) {
    if (list == NameList.FRAMES) {
      frame(name);
    } else if (list == NameList.MASKS && masks.add(name)) {
      known(recipe.masks().get(name));
    }
  }

  private void frame(String name) {
    if (frames.add(name)) {
      known(recipe.frames().get(name));
    }
  }

  private void known(@Nullable Record named) {
    if (named != null) {
      record(named);
    }
  }
}
