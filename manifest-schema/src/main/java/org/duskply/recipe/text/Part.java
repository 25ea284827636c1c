package org.duskply.recipe.text;

import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import org.duskply.recipe.shape.Field;
import org.duskply.recipe.shape.Kind;
import org.duskply.recipe.shape.Shape;
import org.duskply.recipe.shape.Values;

/** A record while its keys are read. */
final class Part {
  final Shape<?> shape;
  final Values values = new Values();
  // Components whose key was there, be its value sound or not.
  final Set<String> tried = new HashSet<>();

  Part(Shape<?> shape) {
    this.shape = shape;
  }

  boolean has(String key) {
    return shape.field(key).isPresent();
  }

  void read(Field field, Object value) {
    tried.add(field.component());
    if (value != Binder.FAILED) {
      values.put(field.component(), value);
    }
  }

  /** Adds what was left out: first what follows from keys, since defaults may ask for it. */
  void fill() {
    for (Field field : shape.fields()) {
      if (field.kind() instanceof Kind.Extensions && !values.has(field.component())) {
        values.fill(field.component(), Map.of());
      } else if (field.kind() instanceof Kind.Derived derived
          && derived.needs().stream().allMatch(values::has)) {
        values.fill(field.component(), derived.value().apply(values));
      }
    }
    for (Field field : shape.fields()) {
      if (field.keyed() && !field.required() && !tried.contains(field.component())) {
        values.fill(field.component(), field.fallback(values));
      }
    }
  }

  boolean complete() {
    return shape.fields().stream().allMatch(field -> values.has(field.component()));
  }
}
