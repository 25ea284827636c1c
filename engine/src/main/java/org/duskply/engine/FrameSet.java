package org.duskply.engine;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.duskply.engine.colour.ColourSpace;
import org.duskply.engine.colour.GelMatrix;
import org.duskply.engine.frame.Exif;
import org.duskply.engine.frame.FrameColour;
import org.duskply.engine.frame.FrameInfo;
import org.duskply.engine.frame.FrameSource;
import org.duskply.engine.frame.Lineariser;
import org.duskply.engine.frame.Loading;
import org.duskply.engine.plan.FrameNode;
import org.duskply.recipe.Coverage;
import org.duskply.recipe.Frame;
import org.duskply.recipe.Match;
import org.duskply.recipe.NamedSpace;
import org.duskply.recipe.Recipe;
import org.duskply.recipe.adjust.Gel;
import org.duskply.recipe.shape.Shape;
import org.jspecify.annotations.Nullable;

/**
 * The frames that a recipe's steps read, opened and checked against the base. Immutable once
 * opened.
 */
final class FrameSet {
  private final Map<String, Opened> frames = new LinkedHashMap<>();
  private final Opened base;
  private final ColourSpace working;

  /**
   * One frame.
   *
   * @param name its name in the recipe
   * @param frame what the recipe says of it
   * @param source its file
   * @param colour the space it is read in
   * @param identity stands for its contents in content keys
   * @param stops how much brighter it is read, its match included
   */
  record Opened(
      String name,
      Frame frame,
      FrameSource source,
      FrameColour colour,
      String identity,
      double stops) {

    /** Whether it is transparent in places and the recipe minds it. */
    boolean covers() {
      return source.info().alpha() != FrameInfo.Alpha.NONE && frame.coverage() == Coverage.USE;
    }

    /** What the camera wrote down. */
    Exif exif() {
      return source.info().exif();
    }

    private Opened by(double newStops) {
      return new Opened(name, frame, source, colour, identity, newStops);
    }
  }

  /**
   * Opens every frame of {@code used}.
   *
   * @param used the frames that are read or matched to, the base among them
   * @param given frames that the caller holds in memory, by their names
   * @param found told of everything that is wrong; when it holds a problem afterwards the set is
   *     not to be used
   * @return null after a problem with the base
   */
  static @Nullable FrameSet open(
      Recipe recipe, Set<String> used, Roots roots, Map<String, MemoryFrame> given, Found found) {
    tellUnknown(recipe, used, found);
    Map<String, Opened> opened = new LinkedHashMap<>();
    for (Map.Entry<String, Frame> e : recipe.frames().entrySet()) {
      if (used.contains(e.getKey())) {
        Opened one =
            FrameOpening.open(e.getKey(), e.getValue(), roots, given.get(e.getKey()), found);
        if (one != null) {
          opened.put(e.getKey(), one);
        }
      }
    }
    opened.replaceAll(
        (name, one) -> {
          Match match = one.frame().match();
          Opened reference = match == null ? null : opened.get(match.frame());
          return one.by(ExposureMatch.stops(one, reference, found));
        });
    Opened base = opened.get(recipe.base());
    if (base == null) {
      return null;
    }
    checkBase(base, found);
    for (Opened one : opened.values()) {
      checkSize(one, base, found);
    }
    return new FrameSet(opened, base, recipe.working());
  }

  /** Only a recipe that a program made can name frames that are not there. */
  private static void tellUnknown(Recipe recipe, Set<String> used, Found found) {
    for (String name : used) {
      if (!recipe.frames().containsKey(name)) {
        found.problem(
            name.equals(recipe.base()) ? "base" : "frames",
            "There is no frame " + name + " among the recipe's frames.");
      }
    }
  }

  private FrameSet(Map<String, Opened> opened, Opened base, @Nullable NamedSpace working) {
    this.frames.putAll(opened);
    this.base = base;
    this.working = working(base, working);
  }

  /** The frame that the picture starts from. */
  Opened base() {
    return base;
  }

  /** All opened frames, in the recipe's order. */
  List<Opened> all() {
    return new ArrayList<>(frames.values());
  }

  /** The linear space that frames arrive in. */
  ColourSpace working() {
    return working;
  }

  /** A node of a frame at a preview's scale. */
  FrameNode node(String name, int reduction) {
    Opened one = frames.get(name);
    if (one == null) {
      throw new IllegalArgumentException("Frame " + name + " was not opened");
    }
    Gel gel = one.frame().gel();
    boolean clear = gel == null || Shape.isIdentityOf(gel);
    Loading loading =
        new Loading(
            one.stops(),
            gel == null || clear ? null : GelMatrix.of(gel, working),
            one.frame().coverage() == Coverage.IGNORE);
    Lineariser lineariser =
        Lineariser.prepare(one.source().info(), one.colour().space(), working, loading);
    String reading =
        one.colour().space()
            + " in "
            + working
            + " by "
            + one.stops()
            + (clear ? "" : " through " + gel)
            + (loading.opaque() ? " opaque" : "");
    return new FrameNode(name, one.source(), lineariser, reduction, one.identity(), reading);
  }

  private static ColourSpace working(Opened base, @Nullable NamedSpace named) {
    if (named != null) {
      return ColourSpace.of(named);
    }
    ColourSpace own = base.colour().space();
    return own.grey() || own.tables() != null ? ColourSpace.of(NamedSpace.REC2020) : own;
  }

  private static void checkBase(Opened base, Found found) {
    if (base.covers()) {
      found.problem(
          "frames/" + base.name(),
          "The base "
              + base.frame().file()
              + " is transparent in places; a base must cover everything. Export it without an alpha channel, or write coverage: ignore.");
    }
  }

  private static void checkSize(Opened one, Opened base, Found found) {
    FrameInfo a = one.source().info();
    FrameInfo b = base.source().info();
    if (a.width() != b.width() || a.height() != b.height()) {
      found.problem(
          "frames/" + one.name(),
          one.frame().file()
              + " is "
              + a.width()
              + " × "
              + a.height()
              + " pixels and the base "
              + base.name()
              + " is "
              + b.width()
              + " × "
              + b.height()
              + "; all frames must have the base's size.");
    }
  }
}
