package org.duskply.engine;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.duskply.engine.mask.Ground;
import org.duskply.engine.mask.Outline;
import org.duskply.engine.mask.SvgMask;
import org.duskply.engine.pixel.Region;
import org.duskply.engine.svg.Drawing;
import org.duskply.engine.svg.DrawnShape;
import org.duskply.engine.svg.SvgLimits;
import org.duskply.recipe.mask.Svg;
import org.jspecify.annotations.Nullable;

/**
 * The drawings that a recipe's masks take their outlines from: each file read once, from the
 * folders that frames may lie in. What is wrong with one is told at the mask that uses it.
 */
final class Drawings {
  /** The most masks with different outlines from drawings. */
  static final int MOST_MASKS = 2_000;

  /** The most points of all their outlines, curves followed. */
  static final int MOST_POINTS = 4_000_000;

  private static final Ground SOMEWHERE = new Ground(1, 1, 1, Region.EMPTY);

  private final Roots roots;
  private final @Nullable Ground ground;
  private final Found found;
  private final Map<String, Drawing> byFile = new HashMap<>();
  private final Set<String> unreadable = new HashSet<>();
  private final Map<Svg, Outline> outlines = new LinkedHashMap<>();
  private long points;

  private Drawings(Roots roots, @Nullable Ground ground, Found found) {
    this.roots = roots;
    this.ground = ground;
    this.found = found;
  }

  /**
   * Opens the drawings of some masks.
   *
   * @param uses the masks with the path of each in the recipe
   * @param found told of everything that is wrong
   * @return the outline of each mask that could be made
   */
  static Map<Svg, Outline> open(Map<String, Svg> uses, Roots roots, Ground ground, Found found) {
    Drawings drawings = new Drawings(roots, ground, found);
    uses.forEach(drawings::add);
    return drawings.outlines;
  }

  /** Looks for what is wrong with drawings where the picture's size is not known. */
  static void check(Map<String, Svg> uses, Roots roots, Found found) {
    Drawings drawings = new Drawings(roots, null, found);
    uses.forEach(drawings::add);
  }

  private void add(String path, Svg svg) {
    Drawing drawing = outlines.containsKey(svg) ? null : drawing(path + "/svg", svg.file());
    if (drawing == null) {
      return;
    }
    if (outlines.size() == MOST_MASKS) {
      found.problem(path + "/svg", "A recipe may have at most 2,000 masks from drawings.");
      unreadable.add(svg.file());
      return;
    }
    Ground any = ground == null ? SOMEWHERE : ground;
    List<DuskplyException> faults = new ArrayList<>();
    List<DrawnShape> shapes =
        drawing.shapes(
            svg.wanted(),
            any.width(),
            any.height(),
            (place, fault) -> {
              faults.add(fault);
              found.problem(path + place(svg, place), sentence(fault));
            });
    if (faults.isEmpty()) {
      outline(path, svg, shapes, any.scale());
    }
  }

  private void outline(String path, Svg svg, List<DrawnShape> shapes, double scale) {
    try {
      Outline outline = SvgMask.outline(shapes, svg.rule(), scale);
      points += outline.points();
      if (points > MOST_POINTS) {
        throw new DuskplyException(
            "The outlines from drawings have more than 4,000,000 points all told.");
      }
      outlines.put(svg, outline);
    } catch (DuskplyException e) {
      found.problem(path + "/svg", sentence(e));
    }
  }

  /** Where in a mask the id with that place in its list stands. */
  private static String place(Svg svg, int place) {
    return svg.id() != null ? "/id" : svg.ids().isEmpty() ? "/svg" : "/ids/#" + (place + 1);
  }

  /** The drawing in a file; null where it cannot be read, which is told once. */
  private @Nullable Drawing drawing(String path, String file) {
    Drawing known = byFile.get(file);
    if (known != null || unreadable.contains(file)) {
      return known;
    }
    try {
      Drawing drawing = Drawing.read(file, bytes(roots.resolve(file), file));
      checkFit(drawing, path);
      byFile.put(file, drawing);
      return drawing;
    } catch (DuskplyException e) {
      found.problem(path, sentence(e));
    } catch (InvalidPathException e) {
      found.problem(path, "\"" + file + "\" cannot be a file name on this system.");
    } catch (NoSuchFileException e) {
      found.problem(path, file + " is not there.");
    } catch (IOException e) {
      found.problem(path, file + " cannot be read.");
    }
    unreadable.add(file);
    return null;
  }

  private static byte[] bytes(Path path, String file) throws IOException {
    if (Files.isDirectory(path)) {
      throw new DuskplyException(file + " is a folder; name a drawing in it.");
    }
    try (InputStream in = Files.newInputStream(path)) {
      return in.readNBytes(SvgLimits.FILE_BYTES + 1);
    }
  }

  private void checkFit(Drawing drawing, String path) {
    if (ground == null) {
      return;
    }
    String misfit = drawing.misfit(ground.width(), ground.height());
    if (misfit != null && drawing.saysHowItFits()) {
      found.notice(path, misfit + "; it is fitted in as its preserveAspectRatio says.");
    } else if (misfit != null) {
      throw new DuskplyException(
          misfit
              + ": another shape. Draw it over the base, or say in the drawing how it is to be"
              + " fitted, such as preserveAspectRatio=\"xMidYMid meet\".");
    }
    if (drawing.hasShapingSheet()) {
      found.notice(
          path,
          "a style sheet in the drawing sets how shapes are filled, shown or moved; style sheets"
              + " are not read. Save it with attributes instead.");
    }
  }

  private static String sentence(DuskplyException e) {
    String message = e.getMessage();
    String sentence = message == null ? e.toString() : message;
    return sentence.endsWith(".") || sentence.endsWith("?") ? sentence : sentence + ".";
  }
}
