package org.duskply.engine;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.duskply.engine.colour.ColourSpace;
import org.duskply.engine.frame.FrameColour;
import org.duskply.engine.frame.FrameInfo;
import org.duskply.engine.frame.FrameSource;
import org.duskply.engine.frame.FrameSources;
import org.duskply.engine.frame.Lineariser;
import org.duskply.engine.plan.FrameNode;
import org.duskply.recipe.Frame;
import org.duskply.recipe.NamedSpace;
import org.duskply.recipe.Recipe;
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
   */
  record Opened(
      String name, Frame frame, FrameSource source, FrameColour colour, String identity) {}

  /**
   * Opens the base and every frame of {@code used}.
   *
   * @param given frames that the caller holds in memory, by their names
   * @param found told of everything that is wrong; when it holds a problem afterwards the set is
   *     not to be used
   */
  static @Nullable FrameSet open(
      Recipe recipe, Set<String> used, Roots roots, Map<String, MemoryFrame> given, Found found) {
    Map<String, Opened> opened = new LinkedHashMap<>();
    for (Map.Entry<String, Frame> e : recipe.frames().entrySet()) {
      if (used.contains(e.getKey()) || e.getKey().equals(recipe.base())) {
        Opened one = openOne(e.getKey(), e.getValue(), roots, given.get(e.getKey()), found);
        if (one != null) {
          opened.put(e.getKey(), one);
        }
      }
    }
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
    Lineariser lineariser =
        Lineariser.prepare(
            one.source().info(), one.colour().space(), working, one.frame().exposure());
    String identity =
        one.identity()
            + " as "
            + one.colour().space()
            + " in "
            + working
            + " by "
            + one.frame().exposure();
    return new FrameNode(name, one.source(), lineariser, reduction, identity);
  }

  private static ColourSpace working(Opened base, @Nullable NamedSpace named) {
    if (named != null) {
      return ColourSpace.of(named);
    }
    ColourSpace own = base.colour().space();
    return own.grey() || own.tables() != null ? ColourSpace.of(NamedSpace.REC2020) : own;
  }

  private static @Nullable Opened openOne(
      String name, Frame frame, Roots roots, @Nullable MemoryFrame given, Found found) {
    String path = "frames/" + name;
    try {
      FrameSource source;
      String identity;
      if (given != null) {
        source = given.source();
        identity = given.identity();
      } else {
        Path file = roots.resolve(frame.file());
        source = FrameSources.open(file);
        identity = identity(file);
      }
      FrameColour colour = FrameColour.of(frame.file(), source.info(), frame.profile());
      source.info().notices().forEach(n -> found.notice(path, name + ": " + n));
      if (colour.notice() != null) {
        found.notice(path, name + ": " + colour.notice());
      }
      return new Opened(name, frame, source, colour, identity);
    } catch (DuskplyException e) {
      found.problem(path, sentence(e));
    } catch (InvalidPathException e) {
      found.problem(path, "\"" + frame.file() + "\" cannot be a file name on this system.");
    } catch (IOException e) {
      found.problem(path, frame.file() + " cannot be read: " + e.getMessage());
    }
    return null;
  }

  private static String sentence(RuntimeException e) {
    String message = e.getMessage();
    return message == null ? e.toString() : message;
  }

  /**
   * Size, time and key of a file: enough to tell within one run of a program that it is still the
   * same.
   */
  private static String identity(Path file) throws IOException {
    BasicFileAttributes a = Files.readAttributes(file, BasicFileAttributes.class);
    return file.toAbsolutePath() + " " + a.size() + " " + a.lastModifiedTime() + " " + a.fileKey();
  }

  private static void checkBase(Opened base, Found found) {
    if (base.source().info().alpha() != FrameInfo.Alpha.NONE) {
      found.problem(
          "frames/" + base.name(),
          "The base "
              + base.frame().file()
              + " is transparent in places; a base must cover everything. Export it without an alpha channel.");
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
