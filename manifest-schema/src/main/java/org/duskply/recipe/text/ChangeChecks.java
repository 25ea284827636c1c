package org.duskply.recipe.text;

import java.util.HashSet;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.duskply.recipe.shape.Shape;

/**
 * Checks changes of steps as if their keys were written in the step itself, and reports what is
 * wrong where the change stands. Mistakes of the step as it stands are left to its own reading.
 */
public final class ChangeChecks {
  private final Shape<?> root;
  private final TreePlaces places;
  private final Problems problems;

  /** Checks changes in one text. */
  public ChangeChecks(Shape<?> root, TreePlaces places, Problems problems) {
    this.root = root;
    this.places = places;
    this.problems = problems;
  }

  /**
   * Checks all changes, and notes the names and files that they use.
   *
   * @param paths the path of the record under a name
   */
  public void check(Mentions mentions, Function<String, Optional<String>> paths) {
    for (Mentions.Change change : mentions.changes()) {
      Tree record = paths.apply(change.name()).map(places::part).orElse(null);
      if (fixed(change) && record instanceof Tree.Mapping mapping) {
        check(change, mapping, mentions);
      }
    }
  }

  /** Whether no key is changed that cannot be. */
  private boolean fixed(Mentions.Change change) {
    boolean sound = true;
    for (Tree.Entry entry : change.keys().entries()) {
      String advice = change.kind().fixed().get(entry.key());
      if (advice != null) {
        sound = false;
        problems.add(
            entry.spot(),
            change.path() + "/" + entry.key(),
            "`" + entry.key() + "` cannot be changed by an alternate; " + advice,
            entry.key(),
            "another key");
      }
    }
    return sound;
  }

  private void check(Mentions.Change change, Tree.Mapping record, Mentions mentions) {
    Problems before = new Problems(problems.source());
    bind(change, record, before);
    Problems after = new Problems(problems.source());
    Mentions used = bind(change, Changed.merged(record, change.keys()), after);
    Set<Spot> own = new HashSet<>();
    change.keys().entries().forEach(entry -> collect(entry, own));
    if (!before.any()) {
      own.add(change.keys().spot());
    }
    after.moveTo(problems, own);
    used.moveTo(mentions, own);
  }

  private Mentions bind(Mentions.Change change, Tree.Mapping record, Problems found) {
    Shape<?> shape = change.kind().shape().get();
    return Binder.bind(root, shape, record, change.path(), places, found).mentions();
  }

  private static void collect(Tree.Entry entry, Set<Spot> spots) {
    spots.add(entry.spot());
    collect(entry.value(), spots);
  }

  private static void collect(Tree tree, Set<Spot> spots) {
    spots.add(tree.spot());
    if (tree instanceof Tree.Mapping mapping) {
      mapping.entries().forEach(entry -> collect(entry, spots));
    } else if (tree instanceof Tree.Listing listing) {
      listing.members().forEach(member -> collect(member, spots));
    }
  }
}
