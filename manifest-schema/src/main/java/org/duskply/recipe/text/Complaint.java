package org.duskply.recipe.text;

import org.jspecify.annotations.Nullable;

/** Says what is wrong with one value: what it is called, what was found, what it takes. */
final class Complaint {
  private final Problems problems;
  private final Tree tree;
  private final String path;

  /** About the part of the tree at {@code path}. */
  Complaint(Problems problems, Tree tree, String path) {
    this.problems = problems;
    this.tree = tree;
    this.path = path;
  }

  /** Reports that something else was wanted. */
  Object mismatch(String expected, String advice) {
    if (tree instanceof Tree.Broken) {
      return Binder.FAILED;
    }
    if (tree instanceof Tree.Scalar scalar && scalar.empty()) {
      return problem(
          label() + " has no value; give it " + expected + ", or delete the key",
          "nothing",
          expected);
    }
    String found = found();
    String shown = tree instanceof Tree.Scalar ? Words.quoted(found) : found;
    return problem(label() + " is " + shown + "; it takes " + expected + advice, found, expected);
  }

  private String found() {
    if (tree instanceof Tree.Scalar scalar) {
      return scalar.text();
    }
    if (tree instanceof Tree.Listing listing) {
      int size = listing.members().size();
      return size == 0 ? "an empty list" : "a list of " + size;
    }
    return "keys and values";
  }

  /** Reports a word that is none of those known. */
  Object unknown(String text, String expected, @Nullable String nearest) {
    String guess = nearest == null ? "" : "; did you mean " + Words.quoted(nearest) + "?";
    problems.add(
        tree.spot(),
        path,
        label() + " is " + Words.quoted(text) + "; it takes " + expected + guess,
        text,
        expected,
        nearest);
    return Binder.FAILED;
  }

  /** Reports whatever else is wrong with it. */
  Object problem(String sentence, String found, String expected) {
    problems.add(tree.spot(), path, sentence, found, expected);
    return Binder.FAILED;
  }

  /** What the value is called: its key, or its number in its list. */
  String label() {
    if (path.isEmpty()) {
      return "the recipe";
    }
    int slash = path.lastIndexOf('/');
    String last = path.substring(slash + 1);
    if (!last.startsWith("#") || slash < 0) {
      return Words.quoted(last);
    }
    String list = path.substring(path.lastIndexOf('/', slash - 1) + 1, slash);
    return last + " of " + Words.quoted(list);
  }
}
