package org.duskply.recipe.text;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.duskply.recipe.shape.Alternatives;
import org.duskply.recipe.shape.Field;
import org.duskply.recipe.shape.Kind;
import org.duskply.recipe.shape.Rule;
import org.duskply.recipe.shape.Shape;
import org.jspecify.annotations.Nullable;

/**
 * Reads new values for some keys of a record as if they stood in the record itself. Other keys are
 * not read again, so that many small changes of a large record cost little.
 *
 * @param <T> the record
 */
final class ChangeBinder<T extends Record> {
  private static final String EXTENSIONS = "extensions";

  private final Binder binder;
  private final Shape<T> shape;
  private final Part own;
  private final @Nullable Part chosen;
  private final boolean whole;

  private ChangeBinder(
      Binder binder, Shape<T> shape, Part own, @Nullable Part chosen, boolean whole) {
    this.binder = binder;
    this.shape = shape;
    this.own = own;
    this.chosen = chosen;
    this.whole = whole;
  }

  /** Changes of a record that is there. */
  static <T extends Record> ChangeBinder<T> of(Binder binder, T record, Tree.Mapping keys) {
    Shape<T> shape = Shape.of(record);
    Object inlined = shape.inlined().map(field -> shape.get(record, field)).orElse(null);
    Part chosen = inlined instanceof Record part ? rest(part, keys) : null;
    return new ChangeBinder<>(binder, shape, rest(record, keys), chosen, true);
  }

  /** Changes of a record with mistakes of its own, of which no more is known than its keys. */
  static <T extends Record> ChangeBinder<T> of(Binder binder, Shape<T> shape, Tree.Mapping record) {
    Optional<Shape<?>> known = Optional.empty();
    if (shape.inlined().isPresent()) {
      Alternatives<?> alternatives = Atlas.alternatives(shape.inlined().get());
      known =
          record.entries().stream()
              .flatMap(e -> alternatives.withKey(e.key()).stream())
              .findFirst();
    }
    return new ChangeBinder<>(
        binder, shape, new Part(shape), known.<Part>map(Part::new).orElse(null), false);
  }

  /** The values of all keys that are not changed. */
  private static <R extends Record> Part rest(R record, Tree.Mapping keys) {
    Shape<R> shape = Shape.of(record);
    Part part = new Part(shape);
    for (Field field : shape.fields()) {
      if (!field.keyed() || keys.entry(field.key()) == null) {
        part.values.put(field.component(), shape.get(record, field));
      }
    }
    return part;
  }

  /** The changed record; null after a problem, or where the record had mistakes of its own. */
  @Nullable T bind(Tree.Mapping keys, String path) {
    int before = binder.problems.count();
    keys.entries().forEach(entry -> read(entry, path + "/" + entry.key()));
    strangers(keys, path);
    rules(own, path);
    if (chosen != null) {
      rules(chosen, path);
    }
    return whole && binder.problems.count() == before ? build() : null;
  }

  private void read(Tree.Entry entry, String below) {
    Part part =
        own.has(entry.key()) ? own : chosen != null && chosen.has(entry.key()) ? chosen : null;
    if (part != null) {
      Field field = part.shape.field(entry.key()).orElseThrow();
      part.read(field, binder.value(field.kind(), entry.value(), below));
    } else if (extension(entry.key())) {
      Object value = new PlainReader(binder.problems).plain(entry.value(), below);
      Map<String, @Nullable Object> extensions = new LinkedHashMap<>();
      if (own.values.get(EXTENSIONS) instanceof Map<?, ?> known) {
        known.forEach((key, old) -> extensions.put((String) key, old));
      }
      extensions.put(entry.key(), value);
      own.values.put(EXTENSIONS, extensions);
    }
  }

  private boolean extension(String key) {
    return shape.extensible() && key.startsWith(Kind.Extensions.PREFIX);
  }

  /** Keys that the record does not have; another alternative's own key first of all. */
  private void strangers(Tree.Mapping keys, String path) {
    List<Shape<?>> shapes = chosen == null ? List.of() : List.of(chosen.shape);
    Alternatives<?> alternatives = shape.inlined().map(Atlas::alternatives).orElse(null);
    List<Tree.Entry> others = new ArrayList<>(keys.entries());
    if (alternatives != null) {
      for (Tree.Entry entry : keys.entries()) {
        boolean other = alternatives.withKey(entry.key()).isPresent() && !shapes.isEmpty();
        if (other && !shapes.get(0).key().equals(entry.key())) {
          others.remove(entry);
          second(entry, path, shapes.get(0).key(), alternatives);
        }
      }
    }
    if (alternatives == null || !shapes.isEmpty()) {
      Tree.Mapping rest = new Tree.Mapping(keys.spot(), others);
      new KeyChecker(binder.problems, binder.atlas, shape, shapes).check(rest, path);
    }
  }

  private void second(Tree.Entry entry, String path, String first, Alternatives<?> alternatives) {
    binder.problems.add(
        entry.spot(),
        path + "/" + entry.key(),
        String.format(
            "this %s is `%s`; a change cannot make it `%s` as well",
            shape.key(), first, entry.key()),
        entry.key(),
        "one " + alternatives.noun());
  }

  private void rules(Part part, String path) {
    for (Rule rule : part.shape.rules()) {
      rule.faults(part.values).forEach(fault -> binder.fault(fault, path));
    }
  }

  private T build() {
    if (chosen != null) {
      String component = shape.inlined().orElseThrow().component();
      own.values.put(component, chosen.shape.build(chosen.values));
    }
    return shape.build(own.values);
  }
}
