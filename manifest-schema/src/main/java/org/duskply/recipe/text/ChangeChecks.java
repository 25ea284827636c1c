package org.duskply.recipe.text;

import java.util.Optional;
import java.util.function.Function;
import org.duskply.recipe.shape.Shape;
import org.jspecify.annotations.Nullable;

/**
 * Checks changes of steps as if their keys were written in the step itself, and reports what is
 * wrong where the change stands. Mistakes of the step as it stands are left to its own reading.
 */
public final class ChangeChecks {
  private final TreePlaces places;
  private final Problems problems;
  private final Binder binder;

  /**
   * Checks changes in one text.
   *
   * @param root what can be met anywhere in it
   */
  public ChangeChecks(Shape<?> root, TreePlaces places, Problems problems) {
    this.places = places;
    this.problems = problems;
    this.binder = new Binder(root, places, problems);
  }

  /**
   * Checks all changes, and notes the names and files that they use.
   *
   * @param paths the path of the record under a name
   * @param records the record at a path; null where it has mistakes of its own
   */
  public void check(
      Mentions mentions,
      Function<String, Optional<String>> paths,
      Function<String, @Nullable Record> records) {
    for (Mentions.Change change : mentions.changes()) {
      paths.apply(change.name()).ifPresent(path -> check(change, path, records.apply(path)));
    }
    mentions.addUses(binder.mentions);
  }

  private void check(Mentions.Change change, String path, @Nullable Record record) {
    if (!fixed(change)) {
      return;
    }
    if (record != null) {
      ChangeBinder.of(binder, record, change.keys()).bind(change.keys(), change.path());
    } else if (places.part(path) instanceof Tree.Mapping written) {
      Shape<?> shape = change.kind().shape().get();
      ChangeBinder.of(binder, shape, written).bind(change.keys(), change.path());
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
}
