package org.duskply.recipe.text;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.duskply.recipe.shape.Alternatives;
import org.duskply.recipe.shape.Fault;
import org.duskply.recipe.shape.Field;
import org.duskply.recipe.shape.Kind;
import org.duskply.recipe.shape.Rule;
import org.duskply.recipe.shape.Shape;
import org.jspecify.annotations.Nullable;

/**
 * Makes records from a {@link Tree} by their Shapes. A fault is reported where it stands and
 * reading goes on beside it, so that one pass finds all; {@link #FAILED} stands for what could not
 * be made.
 */
public final class Binder {
  /** In place of a value with faults, all of which have been reported. */
  static final Object FAILED = new Object();

  private static final String EXTENSIONS = "extensions";

  final Problems problems;
  final Mentions mentions = new Mentions();
  final Atlas atlas;
  private final TreePlaces places;

  /**
   * A binder for parts of one text.
   *
   * @param root what can be met anywhere in it
   */
  Binder(Shape<?> root, TreePlaces places, Problems problems) {
    this.problems = problems;
    this.places = places;
    this.atlas = Atlas.of(root);
  }

  /**
   * What came of it.
   *
   * @param record the record; null when there were faults
   * @param mentions the names given and used
   */
  public record Bound<T>(@Nullable T record, Mentions mentions) {}

  /** Makes a record from a whole tree. */
  public static <T extends Record> Bound<T> bind(Shape<T> root, Tree tree, Problems problems) {
    Binder binder = new Binder(root, new TreePlaces(problems.source(), tree), problems);
    Object record = binder.record(root, tree, "");
    return new Bound<>(record == FAILED ? null : root.type().cast(record), binder.mentions);
  }

  /** A record in any of the forms that its Shape allows. */
  Object record(Shape<?> shape, Tree tree, String path) {
    if (shape.layout() == Shape.Layout.ROW) {
      return row(shape, tree, path);
    }
    if (tree instanceof Tree.Mapping mapping) {
      return mapping(shape, mapping, path);
    }
    Optional<Field> principal = shape.principal();
    if (principal.isEmpty()) {
      return new Complaint(problems, tree, path).mismatch(Words.record(shape), advice(shape, tree));
    }
    Part part = new Part(shape);
    part.read(principal.get(), value(principal.get().kind(), tree, path));
    return finished(part, tree.spot(), path);
  }

  Object value(Kind kind, Tree tree, String path) {
    boolean table = kind instanceof Kind.Table;
    return tree instanceof Tree.Broken && !table
        ? FAILED
        : kind.accept(new ValueBinder(this, tree, path));
  }

  /** How to write what stands here as a word, or as a list for a record that has one list. */
  private static String advice(Shape<?> shape, Tree tree) {
    if (tree instanceof Tree.Scalar && !shape.example().isEmpty()) {
      return ", such as " + shape.example();
    }
    List<Field> required = shape.fields().stream().filter(Field::required).toList();
    return tree instanceof Tree.Listing && required.size() == 1
        ? "; write { " + required.get(0).key() + ": [ … ] }"
        : "";
  }

  private Object row(Shape<?> shape, Tree tree, String path) {
    if (!(tree instanceof Tree.Listing listing)
        || listing.members().size() != shape.fields().size()) {
      return new Complaint(problems, tree, path)
          .mismatch(Words.record(shape), commaAdvice(shape, tree));
    }
    Part part = new Part(shape);
    for (int i = 0; i < shape.fields().size(); i++) {
      Field field = shape.fields().get(i);
      part.read(field, value(field.kind(), listing.members().get(i), path + "/#" + (i + 1)));
    }
    return finished(part, tree.spot(), path);
  }

  /** Twice as many numbers as there should be come of commas for decimal points. */
  private static String commaAdvice(Shape<?> shape, Tree tree) {
    boolean doubled =
        tree instanceof Tree.Listing listing
            && listing.members().size() == 2 * shape.fields().size();
    return doubled ? "; write decimals with a point: [0,5, 0,25] is [0.5, 0.25]" : "";
  }

  private Object mapping(Shape<?> shape, Tree.Mapping mapping, String path) {
    Part own = new Part(shape);
    List<Part> parts = chosen(shape, mapping, path).stream().<Part>map(Part::new).toList();
    Map<String, Object> extensions = new LinkedHashMap<>();
    for (Tree.Entry entry : mapping.entries()) {
      String key = entry.key();
      String below = path.isEmpty() ? key : path + "/" + key;
      Part part =
          own.has(key) ? own : parts.stream().filter(p -> p.has(key)).findFirst().orElse(null);
      if (part != null) {
        Field field = part.shape.field(key).orElseThrow();
        part.read(field, value(field.kind(), entry.value(), below));
      } else if (shape.extensible() && key.startsWith(Kind.Extensions.PREFIX)) {
        extensions.put(key, new PlainReader(problems).plain(entry.value(), below));
      }
    }
    own.values.put(EXTENSIONS, Collections.unmodifiableMap(extensions));
    shape.inlined().ifPresent(field -> inline(field, parts, own, mapping.spot(), path));
    Object record = finished(own, mapping.spot(), path);
    List<Shape<?>> chosen = parts.stream().<Shape<?>>map(part -> part.shape).toList();
    new KeyChecker(problems, atlas, shape, chosen).check(mapping, path);
    return record;
  }

  /** The record among those of its own fields: the first of those found, all of them looked at. */
  private void inline(Field field, List<Part> parts, Part own, Spot spot, String path) {
    List<Object> made = parts.stream().map(part -> finished(part, spot, path)).toList();
    if (made.isEmpty() && Atlas.alternatives(field).optional()) {
      own.values.put(field.component(), null);
    } else if (!made.isEmpty()) {
      own.read(field, made.get(0));
    }
  }

  /** The alternatives whose tell-tale key stands in the mapping; more than one is a problem. */
  private List<Shape<?>> chosen(Shape<?> shape, Tree.Mapping mapping, String path) {
    if (shape.inlined().isEmpty()) {
      return List.of();
    }
    Alternatives<?> alternatives = Atlas.alternatives(shape.inlined().get());
    List<Shape<?>> chosen = new ArrayList<>();
    for (Tree.Entry entry : mapping.entries()) {
      alternatives.withKey(entry.key()).ifPresent(chosen::add);
    }
    if (chosen.size() > 1) {
      Tree.Entry second = mapping.entry(chosen.get(1).key());
      List<String> keys = chosen.stream().map(s -> Words.quoted(s.key())).toList();
      problems.add(
          second == null ? mapping.spot() : second.spot(),
          path,
          String.format(
              "this %s has %d %ss, %s; %s",
              shape.key(),
              chosen.size(),
              alternatives.noun(),
              Words.list(keys, "and"),
              alternatives.advice()),
          Words.list(chosen.stream().map(Shape::key).toList(), "and"),
          "one " + alternatives.noun());
    }
    return chosen;
  }

  /** Adds what was left out, asks the rules, builds. */
  private Object finished(Part part, Spot spot, String path) {
    int before = problems.count();
    for (Field field : part.shape.fields()) {
      if (field.required() && field.keyed() && !part.tried.contains(field.component())) {
        missing(part.shape, field, spot, path);
      }
    }
    part.fill();
    for (Rule rule : part.shape.rules()) {
      rule.faults(part.values).forEach(fault -> fault(fault, path));
    }
    return part.complete() && problems.count() == before ? part.shape.build(part.values) : FAILED;
  }

  private void missing(Shape<?> shape, Field field, Spot spot, String path) {
    String example =
        field.example().isEmpty() ? "" : ", such as " + field.key() + ": " + field.example();
    problems.add(
        spot,
        path,
        String.format(
            "%s is missing from this %s; give it %s%s",
            Words.quoted(field.key()), shape.key(), Words.of(field.kind()), example),
        "nothing",
        field.key() + ": " + Words.of(field.kind()));
  }

  /** Reports a fault below a part. */
  void fault(Fault fault, String path) {
    String at = fault.at().isEmpty() ? path : path.isEmpty() ? fault.at() : path + "/" + fault.at();
    problems.add(places.spot(at), at, fault.sentence(), fault.found(), fault.expected());
  }
}
