package org.duskply.engine;

import java.io.IOException;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.duskply.engine.colour.ColourSpace;
import org.duskply.engine.frame.FirstSample;
import org.duskply.engine.frame.FrameInfo;
import org.duskply.engine.frame.FrameSource;
import org.duskply.engine.frame.FrameSources;
import org.duskply.engine.frame.Lineariser;
import org.duskply.engine.plan.FrameNode;
import org.duskply.recipe.NamedSpace;
import org.duskply.recipe.Size;
import org.duskply.recipe.mask.Image;
import org.jspecify.annotations.Nullable;

/**
 * The picture files that masks are painted in, opened and checked. Each has the size of the grid or
 * of the base.
 */
final class PaintedMasks {
  private final Map<String, Opened> files = new HashMap<>();
  private final Roots roots;
  private final Found found;
  private final Size base;
  private final Size grid;

  /** One file. */
  private record Opened(FrameSource source, String identity) {}

  private PaintedMasks(Roots roots, Found found, Size base, Size grid) {
    this.roots = roots;
    this.found = found;
    this.base = base;
    this.grid = grid;
  }

  /**
   * Opens the files of some masks.
   *
   * @param uses the masks of each alternate with their paths in the recipe
   * @param grid the recipe's grid; absent: the base's size
   * @param found told of everything that is wrong; when it holds a problem afterwards the files are
   *     not to be used
   */
  static PaintedMasks open(
      List<Map<String, Image>> uses, @Nullable Size grid, Size base, Roots roots, Found found) {
    PaintedMasks masks = new PaintedMasks(roots, found, base, grid == null ? base : grid);
    uses.forEach(one -> one.forEach((path, image) -> masks.open(image.file(), path + "/image")));
    return masks;
  }

  /**
   * A file at a preview's scale, its values as they are stored.
   *
   * @param reduction the {@code n} of the scale {@code 1/n}
   */
  FrameNode node(String file, int reduction) {
    Opened opened = files.get(file);
    if (opened == null) {
      throw new IllegalArgumentException("The mask " + file + " was not opened");
    }
    ColourSpace stored = ColourSpace.of(NamedSpace.SRGB).linear();
    Lineariser asIs = Lineariser.prepare(opened.source().info(), stored, stored, 0);
    return new FrameNode(
        file, opened.source(), asIs, reduction, opened.identity() + " as a painted mask", "");
  }

  private void open(String file, String path) {
    if (files.containsKey(file)) {
      return;
    }
    try {
      Path there = roots.resolve(file);
      FrameSource source = FrameSources.open(there);
      files.put(file, new Opened(new FirstSample(source), FrameOpening.identity(there)));
      check(file, source.info(), path);
    } catch (DuskplyException e) {
      found.problem(path, FrameOpening.sentence(e));
    } catch (InvalidPathException e) {
      found.problem(path, "\"" + file + "\" cannot be a file name on this system.");
    } catch (IOException e) {
      found.problem(path, file + " cannot be read: " + e.getMessage());
    }
  }

  private void check(String file, FrameInfo info, String path) {
    info.notices().forEach(n -> found.notice(path, file + ": " + n));
    if (info.channels() > 2) {
      found.notice(
          path,
          file
              + " is in colour; as a mask only the first of its channels, red, is used. Save it as"
              + " a grey picture to have what you see.");
    }
    Size size = new Size(info.width(), info.height());
    if (!size.equals(base) && !size.equals(grid)) {
      String grids = grid.equals(base) ? "" : " (and the grid " + words(grid) + ")";
      found.problem(
          path,
          file
              + " is "
              + words(size)
              + " pixels and the base "
              + words(base)
              + grids
              + "; a painted mask must have the same size.");
    }
  }

  private static String words(Size size) {
    return size.width() + " × " + size.height();
  }
}
