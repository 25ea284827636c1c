package org.duskply.recipe.text;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.duskply.recipe.shape.Alternatives;
import org.duskply.recipe.shape.Kind;
import org.duskply.recipe.shape.Shape;
import org.jspecify.annotations.Nullable;

/** Looks for keys that have no business in a mapping, and says where they would have. */
final class KeyChecker {
  private static final Map<String, String> SPELLINGS =
      Map.of("center", "centre", "color", "colour", "gray", "grey", "colours", "colour");

  private final Problems problems;
  private final Atlas atlas;
  private final Shape<?> shape;
  private final List<Shape<?>> chosen;

  /**
   * Prepares.
   *
   * @param chosen the inlined alternatives found in the mapping
   */
  KeyChecker(Problems problems, Atlas atlas, Shape<?> shape, List<Shape<?>> chosen) {
    this.problems = problems;
    this.atlas = atlas;
    this.shape = shape;
    this.chosen = chosen;
  }

  void check(Tree.Mapping mapping, String path) {
    List<Tree.Entry> strangers = mapping.entries().stream().filter(e -> !known(e.key())).toList();
    Optional<Alternatives<?>> alternatives = shape.inlined().map(Atlas::alternatives);
    boolean undecided =
        alternatives.isPresent() && !alternatives.get().optional() && chosen.isEmpty();
    List<Tree.Entry> reserved =
        strangers.stream().filter(e -> shape.reserved().contains(e.key())).toList();
    if (undecided && !reserved.isEmpty()) {
      strangers = reserved; // the others may well belong to them
    }
    if (undecided && strangers.stream().allMatch(e -> !owners(e.key()).isEmpty())) {
      undecided(alternatives.get(), mapping, path);
      return;
    }
    for (Tree.Entry stranger : strangers) {
      stranger(stranger, path.isEmpty() ? stranger.key() : path + "/" + stranger.key());
    }
  }

  private boolean known(String key) {
    return shape.field(key).isPresent()
        || chosen.stream().anyMatch(part -> part.field(key).isPresent())
        || (shape.extensible() && key.startsWith(Kind.Extensions.PREFIX));
  }

  /** The alternatives not chosen here that have such a key. */
  private List<String> owners(String key) {
    return shape.inlined().map(Atlas::alternatives).stream()
        .flatMap(alternatives -> alternatives.shapes().stream())
        .filter(part -> part.field(key).isPresent())
        .map(Shape::key)
        .toList();
  }

  private void undecided(Alternatives<?> alternatives, Tree.Mapping mapping, String path) {
    String keys = Words.list(alternatives.keys(), "or");
    problems.add(
        mapping.spot(),
        path,
        String.format(
            "this %s has no %s; give it one of %s", shape.key(), alternatives.noun(), keys),
        "no " + alternatives.noun(),
        "one of " + keys);
  }

  private void stranger(Tree.Entry entry, String path) {
    String key = entry.key();
    if (problems.full()) {
      problems.add(entry.spot(), path, "unknown key", key, "a known key");
      return;
    }
    List<String> owners = owners(key);
    if (shape.reserved().contains(key)) {
      problems.add(
          entry.spot(),
          path,
          Words.quoted(key) + " is kept for a later version and cannot be used yet",
          key,
          keysHere());
    } else if (!owners.isEmpty()) {
      foreign(entry, path, owners);
    } else {
      unknown(entry, path);
    }
  }

  private void foreign(Tree.Entry entry, String path, List<String> owners) {
    String owner = Words.list(owners.stream().map(Words::quoted).toList(), "or");
    String noun = shape.inlined().map(Atlas::alternatives).map(Alternatives::noun).orElse("");
    String here =
        chosen.isEmpty()
            ? "this " + shape.key() + " has no " + noun
            : "this " + shape.key() + " is " + Words.quoted(chosen.get(0).key());
    problems.add(
        entry.spot(),
        path,
        Words.quoted(entry.key()) + " belongs to " + owner + ", but " + here,
        entry.key(),
        keysHere());
  }

  private void unknown(Tree.Entry entry, String path) {
    String key = entry.key();
    String nearest = nearest(key);
    List<String> elsewhere = atlas.owners(key);
    StringBuilder sentence = new StringBuilder();
    if (elsewhere.isEmpty()) {
      sentence.append("this version has no key ").append(Words.quoted(key)).append(" here");
    } else {
      String owners = Words.list(elsewhere.stream().map(Words::quoted).toList(), "or");
      sentence.append(Words.quoted(key)).append(" belongs in ").append(owners);
      sentence.append(", not in ").append(Words.quoted(shape.key()));
    }
    if (SPELLINGS.containsKey(key)) {
      sentence.append(" (and recipes spell it ").append(SPELLINGS.get(key)).append(")");
    }
    if (nearest != null && elsewhere.isEmpty()) {
      sentence.append("; did you mean ").append(Words.quoted(nearest)).append("?");
    }
    sentence.append(nearest != null && elsewhere.isEmpty() ? " Known" : "; known");
    sentence.append(" keys here are ").append(keysHere());
    problems.add(entry.spot(), path, sentence.toString(), key, keysHere(), nearest);
  }

  private @Nullable String nearest(String key) {
    List<String> keys = keys();
    String spelling = SPELLINGS.get(key);
    return spelling != null && keys.contains(spelling) ? spelling : Nearest.among(keys, key);
  }

  private String keysHere() {
    return Words.list(keys(), "and");
  }

  private List<String> keys() {
    List<String> keys = new ArrayList<>();
    if (chosen.isEmpty()) {
      shape.inlined().map(Atlas::alternatives).ifPresent(a -> keys.addAll(a.keys()));
    }
    chosen.forEach(part -> keys.addAll(part.keys()));
    keys.addAll(shape.keys());
    return keys;
  }
}
