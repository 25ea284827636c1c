package org.duskply.engine.mask;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.duskply.engine.DuskplyException;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;
import org.duskply.engine.plan.AreaNode;
import org.duskply.engine.plan.KeyWriter;
import org.duskply.engine.plan.Node;
import org.duskply.recipe.mask.Strokes;

/**
 * Strokes of a brush as a mask, {@code 1 − Π(1 − v)} over the {@link BrushStroke}s in order, in
 * double, rounded once. Strokes go on beyond the canvas.
 *
 * <p>A pixel is compared with the pieces of strokes whose boxes hold it, no others: all further
 * away are 0 there, so that any rectangle has the same bits.
 */
final class StrokesNode implements AreaNode, Boundless {
  /** The most pairs of a piece of a stroke and a pixel in its box. */
  static final long MAX_WORK = 4_000_000_000L;

  private final List<BrushStroke> strokes;
  private final String identity;
  private final int mostPieces;

  private StrokesNode(List<BrushStroke> strokes, String identity) {
    this.strokes = strokes;
    this.identity = identity;
    this.mostPieces = strokes.stream().mapToInt(BrushStroke::pieces).max().orElse(0);
  }

  /**
   * A mask of strokes.
   *
   * @throws DuskplyException where painting them would take too long
   */
  static StrokesNode of(Strokes kind, Ground ground) {
    List<BrushStroke> strokes =
        kind.strokes().stream().map(s -> BrushStroke.of(s, ground.scale())).toList();
    long work = 0;
    for (BrushStroke stroke : strokes) {
      for (int piece = 0; piece < stroke.pieces(); piece++) {
        work += stroke.box(piece).meet(ground.canvas()).count();
      }
    }
    if (work > MAX_WORK) {
      throw new DuskplyException(
          "The strokes of a mask cover too much of the picture, too often: their pieces pass over 4"
              + " billion pixels all told. Use fewer points, or a smaller radius.");
    }
    return new StrokesNode(strokes, ground.scale() + " " + kind);
  }

  @Override
  public List<Node> inputs() {
    return List.of();
  }

  @Override
  public int planes() {
    return 1;
  }

  @Override
  public Region footprint(Region within) {
    Region all = Region.EMPTY;
    for (BrushStroke stroke : strokes) {
      if (stroke.bounds().meets(within)) {
        for (int piece = 0; piece < stroke.pieces(); piece++) {
          all = all.hull(stroke.box(piece, within.top(), within.bottom()));
        }
      }
    }
    return all.meet(within);
  }

  @Override
  public Region needs(int input, Region out) {
    throw new IndexOutOfBoundsException(input);
  }

  @Override
  public void fill(List<Planes> in, Planes out) {
    Region area = out.area();
    List<Touching> touching = touching(area);
    double[] rest = new double[area.width()];
    double[] squares = new double[area.width()];
    for (int y = area.top(); y < area.bottom(); y++) {
      Arrays.fill(rest, 1);
      for (Touching stroke : touching) {
        paint(stroke, y, area, squares, rest);
      }
      int at = out.at(area.left(), y);
      for (int i = 0; i < rest.length; i++) {
        out.plane(0)[at + i] = (float) (1 - rest[i]);
      }
    }
  }

  /** A stroke, and those of its pieces that touch some rectangle. */
  private record Touching(BrushStroke stroke, int[] pieces) {}

  private List<Touching> touching(Region area) {
    List<Touching> touching = new ArrayList<>();
    int[] found = new int[mostPieces];
    for (BrushStroke stroke : strokes) {
      int count = 0;
      for (int piece = 0; stroke.bounds().meets(area) && piece < stroke.pieces(); piece++) {
        if (stroke.box(piece).meets(area)) {
          found[count++] = piece;
        }
      }
      if (count > 0) {
        touching.add(new Touching(stroke, Arrays.copyOf(found, count)));
      }
    }
    return touching;
  }

  private static void paint(
      Touching touching, int y, Region area, double[] squares, double[] rest) {
    BrushStroke stroke = touching.stroke();
    Region row = area.rows(y, y + 1).meet(stroke.bounds());
    if (row.empty()) {
      return;
    }
    int from = row.left() - area.left();
    int to = row.right() - area.left();
    Arrays.fill(squares, from, to, Double.POSITIVE_INFINITY);
    for (int piece : touching.pieces()) {
      Region part = stroke.box(piece, y, y + 1).meet(row);
      if (!part.empty()) {
        stroke.nearer(piece, y, area.left(), part.left(), part.right(), squares);
      }
    }
    stroke.paint(squares, from, to, rest);
  }

  @Override
  public long scratchBytes(Region out) {
    long pieces = strokes.stream().mapToLong(BrushStroke::pieces).sum();
    return 2L * Double.BYTES * out.width() + Integer.BYTES * (pieces + mostPieces);
  }

  @Override
  public void describe(KeyWriter key) {
    key.word("strokes").word(identity);
  }
}
