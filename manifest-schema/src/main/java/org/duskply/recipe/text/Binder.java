package org.duskply.recipe.text;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.duskply.recipe.shape.Alternatives;
import org.duskply.recipe.shape.Fault;
import org.duskply.recipe.shape.Field;
import org.duskply.recipe.shape.Kind;
import org.duskply.recipe.shape.Rule;
import org.duskply.recipe.shape.Shape;
import org.duskply.recipe.shape.Values;
import org.jspecify.annotations.Nullable;

/**
 * Makes records from a {@link Tree} by their Shapes. A fault is reported where it stands and
 * reading goes on beside it, so that one pass finds all; {@link #FAILED} stands for what could not
 * be made.
 */
public final class Binder {
  /** In place of a value with faults, all of which have been reported. */
  static final Object FAILED = new Object();

  final Problems problems;
  final Mentions mentions = new Mentions();
  private final Atlas atlas;
  private final TreePlaces places;

  private Binder(Shape<?> root, Tree tree, Problems problems) {
    this.problems = problems;
    this.places = new TreePlaces(problems.source(), tree);
    this.atlas = new Atlas(root);
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
    Binder binder = new Binder(root, tree, problems);
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
      return new ValueBinder(this, tree, path)
          .mismatch(Words.record(shape), listAdvice(shape, tree));
    }
    Values values = new Values();
    put(values, principal.get(), value(principal.get().kind(), tree, path));
    return finished(shape, values, List.of(principal.get().component()), tree.spot(), path);
  }

  Object value(Kind kind, Tree tree, String path) {
    boolean table = kind instanceof Kind.Table;
    return tree instanceof Tree.Broken && !table
        ? FAILED
        : kind.accept(new ValueBinder(this, tree, path));
  }

  /** Where a list stands for a record that has one list: how to write it. */
  private static String listAdvice(Shape<?> shape, Tree tree) {
    List<Field> required = shape.fields().stream().filter(Field::required).toList();
    return tree instanceof Tree.Listing && required.size() == 1
        ? "; write { " + required.get(0).key() + ": [ … ] }"
        : "";
  }

  private Object row(Shape<?> shape, Tree tree, String path) {
    if (!(tree instanceof Tree.Listing listing)
        || listing.members().size() != shape.fields().size()) {
      return new ValueBinder(this, tree, path)
          .mismatch(Words.record(shape), commaAdvice(shape, tree));
    }
    Values values = new Values();
    List<String> read = new ArrayList<>();
    for (int i = 0; i < shape.fields().size(); i++) {
      Field field = shape.fields().get(i);
      read.add(field.component());
      put(values, field, value(field.kind(), listing.members().get(i), path + "/#" + (i + 1)));
    }
    return finished(shape, values, read, tree.spot(), path);
  }

  /** Twice as many numbers as there should be come of commas for decimal points. */
  private static String commaAdvice(Shape<?> shape, Tree tree) {
    boolean doubled =
        tree instanceof Tree.Listing listing
            && listing.members().size() == 2 * shape.fields().size();
    return doubled ? "; write decimals with a point: [0,5, 0,25] is [0.5, 0.25]" : "";
  }

  private Object mapping(Shape<?> shape, Tree.Mapping mapping, String path) {
    List<Shape<?>> chosen = chosen(shape, mapping, path);
    Values own = new Values();
    Map<Shape<?>, Values> parts = new LinkedHashMap<>();
    Map<Shape<?>, List<String>> read = new LinkedHashMap<>();
    List<String> ownRead = new ArrayList<>();
    chosen.forEach(part -> parts.put(part, new Values()));
    chosen.forEach(part -> read.put(part, new ArrayList<>()));
    Map<String, Object> extensions = new LinkedHashMap<>();
    for (Tree.Entry entry : mapping.entries()) {
      String key = entry.key();
      String below = path.isEmpty() ? key : path + "/" + key;
      Optional<Field> field = shape.field(key);
      Optional<Shape<?>> part = chosen.stream().filter(s -> s.field(key).isPresent()).findFirst();
      if (field.isPresent()) {
        ownRead.add(field.get().component());
        put(own, field.get(), value(field.get().kind(), entry.value(), below));
      } else if (part.isPresent()) {
        Field partField = part.get().field(key).orElseThrow();
        Objects.requireNonNull(read.get(part.get())).add(partField.component());
        put(
            Objects.requireNonNull(parts.get(part.get())),
            partField,
            value(partField.kind(), entry.value(), below));
      } else if (shape.extensible() && key.startsWith(Kind.Extensions.PREFIX)) {
        extensions.put(key, new PlainReader(problems).plain(entry.value(), below));
      }
    }
    own.put("extensions", Collections.unmodifiableMap(extensions));
    ownRead.add("extensions");
    shape.inlined().ifPresent(f -> inline(f, chosen, parts, read, own, mapping, path));
    shape.inlined().ifPresent(f -> ownRead.add(f.component()));
    Object record = finished(shape, own, ownRead, mapping.spot(), path);
    new KeyChecker(problems, atlas, shape, chosen).check(mapping, path);
    return record;
  }

  private void inline(
      Field field,
      List<Shape<?>> chosen,
      Map<Shape<?>, Values> parts,
      Map<Shape<?>, List<String>> read,
      Values own,
      Tree.Mapping mapping,
      String path) {
    if (chosen.isEmpty() && Atlas.alternatives(field).optional()) {
      own.put(field.component(), null);
    }
    for (Shape<?> part : chosen) {
      Object made =
          finished(
              part,
              Objects.requireNonNull(parts.get(part)),
              Objects.requireNonNull(read.get(part)),
              mapping.spot(),
              path);
      if (made != FAILED && part == chosen.get(0)) {
        own.put(field.component(), made);
      }
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

  private static void put(Values values, Field field, Object value) {
    if (value != FAILED) {
      values.put(field.component(), value);
    }
  }

  /** Adds what was left out, asks the rules, builds. */
  private Object finished(
      Shape<?> shape, Values values, List<String> read, Spot spot, String path) {
    int before = problems.count();
    for (Field field : shape.fields()) {
      if (field.required() && field.keyed() && !read.contains(field.component())) {
        missing(shape, field, spot, path);
      }
    }
    defaults(shape, values, read);
    for (Rule rule : shape.rules()) {
      for (Fault fault : rule.faults(values)) {
        fault(fault, path);
      }
    }
    boolean complete = shape.fields().stream().allMatch(f -> values.has(f.component()));
    return complete && problems.count() == before ? shape.build(values) : FAILED;
  }

  private static void defaults(Shape<?> shape, Values values, List<String> read) {
    for (Field field : shape.fields()) {
      String component = field.component();
      if (field.kind() instanceof Kind.Extensions && !values.has(component)) {
        values.fill(component, Map.of());
      } else if (field.kind() instanceof Kind.Derived derived) {
        if (derived.needs().stream().allMatch(values::has)) {
          values.fill(component, derived.value().apply(values));
        }
      }
    }
    for (Field field : shape.fields()) {
      if (field.keyed() && !field.required() && !read.contains(field.component())) {
        values.fill(field.component(), field.fallback(values));
      }
    }
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
