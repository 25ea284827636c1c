package org.duskply.recipe.text;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.duskply.recipe.shape.Alternatives;
import org.duskply.recipe.shape.Field;
import org.duskply.recipe.shape.Kind;
import org.duskply.recipe.shape.Shape;

/** All Shapes that can be met from one Shape on, in the order in which they are met. */
public final class Atlas {
  private static final ClassValue<Atlas> KNOWN =
      new ClassValue<>() {
        @Override
        protected Atlas computeValue(Class<?> root) {
          return new Atlas(Shape.of(root));
        }
      };

  private final Map<Class<?>, Shape<?>> shapes = new LinkedHashMap<>();

  /** Walks from {@code root}. */
  public Atlas(Shape<?> root) {
    visit(root);
  }

  /** The one that begins at {@code root}, made when it is first asked for. */
  static Atlas of(Shape<?> root) {
    return KNOWN.get(root.type());
  }

  /** The Shapes, each once. */
  public List<Shape<?>> shapes() {
    return List.copyOf(shapes.values());
  }

  /**
   * What the records are called that have such a key: by the keys that they stand under, where one
   * is written as the value of a key.
   */
  public List<String> owners(String key) {
    Set<String> owners = new LinkedHashSet<>();
    for (Shape<?> shape : shapes.values()) {
      boolean tag = shape.inlined().map(f -> alternatives(f).keys().contains(key)).orElse(false);
      if (tag || shape.field(key).isPresent()) {
        List<String> keys = keysOf(shape);
        owners.addAll(keys.isEmpty() ? List.of(shape.key()) : keys);
      }
    }
    return List.copyOf(owners);
  }

  /** The keys whose value is such a record. */
  private List<String> keysOf(Shape<?> shape) {
    List<String> keys = new ArrayList<>();
    for (Shape<?> around : shapes.values()) {
      for (Field field : around.fields()) {
        if (field.kind() instanceof Kind.Nested nested
            && nested.shape().get().type().equals(shape.type())) {
          keys.add(field.key());
        }
      }
    }
    return keys;
  }

  /**
   * What a Shape is called among all: its key, and where another has the same, what it is part of.
   */
  public String heading(Shape<?> shape) {
    long same = shapes.values().stream().filter(s -> s.key().equals(shape.key())).count();
    if (same > 1) {
      for (Shape<?> around : shapes.values()) {
        if (around.inlined().map(f -> alternatives(f).shapes().contains(shape)).orElse(false)) {
          return shape.key() + " of a " + around.key();
        }
      }
    }
    return shape.key();
  }

  /** The alternatives of an inlined field. */
  static Alternatives<?> alternatives(Field inlined) {
    return ((Kind.Inlined) inlined.kind()).alternatives();
  }

  private void visit(Shape<?> shape) {
    if (shapes.putIfAbsent(shape.type(), shape) == null) {
      shape.fields().forEach(field -> visit(field.kind()));
    }
  }

  private void visit(Kind kind) {
    if (kind instanceof Kind.Items items) {
      visit(items.item());
    } else if (kind instanceof Kind.Positions positions) {
      visit(positions.row().get());
    } else if (kind instanceof Kind.Table table) {
      visit(table.shape().get());
    } else if (kind instanceof Kind.Nested nested) {
      visit(nested.shape().get());
    } else if (kind instanceof Kind.NamedOr namedOr) {
      visit(namedOr.shape().get());
    } else if (kind instanceof Kind.Tagged tagged) {
      tagged.alternatives().shapes().forEach(this::visit);
    } else if (kind instanceof Kind.Inlined inlined) {
      inlined.alternatives().shapes().forEach(this::visit);
    }
  }
}
