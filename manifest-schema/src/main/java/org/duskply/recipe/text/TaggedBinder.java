package org.duskply.recipe.text;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.duskply.recipe.shape.Alternatives;
import org.duskply.recipe.shape.Kind;
import org.duskply.recipe.shape.Shape;

/** Reads a mapping with one key that says which record its value is: {@code {exposure: 1}}. */
final class TaggedBinder {
  private final Binder binder;
  private final Tree tree;
  private final String path;
  private final Complaint complaint;

  TaggedBinder(Binder binder, Tree tree, String path) {
    this.binder = binder;
    this.tree = tree;
    this.path = path;
    this.complaint = new Complaint(binder.problems, tree, path);
  }

  /** The record under the one key. */
  Object bind(Kind.Tagged kind) {
    Alternatives<?> alternatives = kind.alternatives();
    if (!(tree instanceof Tree.Mapping mapping) || mapping.entries().isEmpty()) {
      return complaint.mismatch(Words.of(kind), valueAdvice(alternatives));
    }
    List<Object> made = new ArrayList<>();
    for (Tree.Entry entry : mapping.entries()) {
      made.add(alternative(alternatives, entry));
    }
    if (made.size() > 1) {
      several(alternatives, mapping);
      return Binder.FAILED;
    }
    return made.get(0);
  }

  private void several(Alternatives<?> alternatives, Tree.Mapping mapping) {
    List<String> keys = mapping.entries().stream().map(e -> Words.quoted(e.key())).toList();
    binder.problems.add(
        mapping.entries().get(1).spot(),
        path,
        String.format(
            "one %s at a time: %s stand together; %s",
            alternatives.noun(), Words.list(keys, "and"), alternatives.advice()),
        Words.list(mapping.entries().stream().map(Tree.Entry::key).toList(), "and"),
        "one " + alternatives.noun());
  }

  private Object alternative(Alternatives<?> alternatives, Tree.Entry entry) {
    Optional<Shape<?>> shape = alternatives.withKey(entry.key());
    String below = path + "/" + entry.key();
    if (shape.isPresent()) {
      return entry.value() instanceof Tree.Broken
          ? Binder.FAILED
          : binder.record(shape.get(), entry.value(), below);
    }
    String nearest = Nearest.among(alternatives.keys(), entry.key());
    binder.problems.add(
        entry.spot(),
        below,
        String.format(
            "this version has no %s %s%s known ones are %s",
            alternatives.noun(),
            Words.quoted(entry.key()),
            nearest == null ? ";" : "; did you mean " + Words.quoted(nearest) + "? The",
            Words.list(alternatives.keys(), "and")),
        entry.key(),
        Words.list(alternatives.keys(), "and"),
        nearest);
    return Binder.FAILED;
  }

  private String valueAdvice(Alternatives<?> alternatives) {
    return tree instanceof Tree.Scalar scalar && alternatives.withKey(scalar.text()).isPresent()
        ? "; write { " + scalar.text() + ": … }"
        : "";
  }
}
