package org.duskply.recipe.shape;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * The records of a sealed interface as alternatives in a recipe: found through its permitted
 * subclasses, each of which keeps its Shape in a constant {@code SHAPE}. They are looked up when
 * first asked for, since a record may hold others of its own interface.
 *
 * @param <T> the sealed interface
 */
public final class Alternatives<T> {
  private final Class<T> type;
  private final String noun;
  private final String advice;
  private final boolean optional;
  private volatile @Nullable List<Shape<?>> shapes;

  private Alternatives(Class<T> type, String noun, String advice, boolean optional) {
    this.type = type;
    this.noun = noun;
    this.advice = advice;
    this.optional = optional;
  }

  /**
   * Exactly one of them.
   *
   * @param noun what one is called: "verb"
   * @param advice what to do where two are found, a clause
   */
  public static <T> Alternatives<T> one(Class<T> type, String noun, String advice) {
    return new Alternatives<>(type, noun, advice, false);
  }

  /** One of them or none. */
  public static <T> Alternatives<T> oneOrNone(Class<T> type, String noun, String advice) {
    return new Alternatives<>(type, noun, advice, true);
  }

  /** What one is called. */
  public String noun() {
    return noun;
  }

  /** What to do where two are found. */
  public String advice() {
    return advice;
  }

  /** Whether there may be none. */
  public boolean optional() {
    return optional;
  }

  /** The Shapes in the order of the interface's permits clause. */
  public List<Shape<?>> shapes() {
    List<Shape<?>> known = shapes;
    if (known == null) {
      known = find(type);
      shapes = known;
    }
    return known;
  }

  /** The keys that tell them apart. */
  public List<String> keys() {
    return shapes().stream().map(Shape::key).toList();
  }

  /** The Shape with that key. */
  public Optional<Shape<?>> withKey(String key) {
    return shapes().stream().filter(shape -> shape.key().equals(key)).findFirst();
  }

  private static List<Shape<?>> find(Class<?> type) {
    List<Shape<?>> found = new ArrayList<>();
    for (Class<?> permitted : type.getPermittedSubclasses()) {
      found.add(Shape.of(permitted));
    }
    return List.copyOf(found);
  }
}
