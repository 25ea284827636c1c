package org.duskply.recipe.text;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.duskply.recipe.Limits;
import org.duskply.recipe.Place;
import org.duskply.recipe.Problem;
import org.duskply.recipe.Problem.Severity;
import org.jspecify.annotations.Nullable;

/** Collects what is wrong with one text. After the first so many it only counts. */
public final class Problems {
  // More than are shown, since they are put in the order of the text first.
  private static final int KEPT = Limits.PROBLEMS * 10;

  private static final Comparator<Problem> PLACES =
      Comparator.comparingInt((Problem p) -> p.place().line())
          .thenComparingInt(p -> p.place().column());

  private final Source source;
  private final List<Problem> listed = new ArrayList<>();
  private final List<Problem> notices = new ArrayList<>();
  private int problems;

  /** Starts with none. */
  public Problems(Source source) {
    this.source = source;
  }

  /** The text they are about. */
  public Source source() {
    return source;
  }

  /** Adds a problem without a nearest name. */
  public void add(Spot spot, String path, String sentence, String found, String expected) {
    add(spot, path, sentence, found, expected, null);
  }

  /** Adds a problem. */
  public void add(
      Spot spot,
      String path,
      String sentence,
      String found,
      String expected,
      @Nullable String nearest) {
    problems++;
    list(listed, Severity.PROBLEM, spot, path, sentence, found, expected, nearest);
  }

  /** Adds a notice. */
  public void notice(Spot spot, String path, String sentence, String found, String expected) {
    list(notices, Severity.NOTICE, spot, path, sentence, found, expected, null);
  }

  /** How many problems there are, notices not counted. */
  public int count() {
    return problems;
  }

  /** Whether so many are listed that further ones are only counted. */
  boolean full() {
    return listed.size() > KEPT;
  }

  /** Whether there is any problem beyond notices. */
  public boolean any() {
    return problems > 0;
  }

  /** Takes over all of another collection about the same text. */
  void addAll(Problems others) {
    problems += others.problems;
    listed.addAll(others.listed);
    notices.addAll(others.notices);
  }

  /**
   * In the order of the text, with a closing line when not all are listed. Problems leave no room
   * for notices where there is not enough for both.
   */
  public List<Problem> inOrder() {
    List<Problem> shown = first(listed, Limits.PROBLEMS);
    shown.addAll(first(notices, Limits.PROBLEMS - shown.size()));
    shown.sort(PLACES);
    shown.replaceAll(this::withSnippet);
    int hidden = Math.max(problems, listed.size()) + notices.size() - shown.size();
    if (hidden > 0) {
      shown.add(more(hidden, problems > 0 ? Severity.PROBLEM : Severity.NOTICE));
    }
    return List.copyOf(shown);
  }

  /** Those that come first in the text. */
  private static List<Problem> first(List<Problem> all, int most) {
    List<Problem> sorted = new ArrayList<>(all);
    sorted.sort(PLACES);
    return new ArrayList<>(sorted.subList(0, Math.min(most, sorted.size())));
  }

  /** Snippets are cut for the problems that are shown, not for all that were found. */
  private Problem withSnippet(Problem problem) {
    Place place = problem.place();
    return new Problem(
        problem.severity(),
        place,
        problem.path(),
        problem.sentence(),
        problem.found(),
        problem.expected(),
        problem.nearest(),
        source.snippet(place.line(), place.column()));
  }

  private Problem more(int hidden, Severity severity) {
    return new Problem(
        severity,
        source.place(new Spot(source.lines(), 1)),
        "",
        "and " + hidden + " more like these; mend the first " + Limits.PROBLEMS + " and try again",
        hidden + " more",
        "",
        null,
        "");
  }

  private void list(
      List<Problem> list,
      Severity severity,
      Spot spot,
      String path,
      String sentence,
      String found,
      String expected,
      @Nullable String nearest) {
    if (list.size() > KEPT) {
      return;
    }
    list.add(
        new Problem(
            severity,
            source.place(spot),
            path,
            sentence,
            Words.shortened(found),
            expected,
            nearest,
            ""));
  }
}
