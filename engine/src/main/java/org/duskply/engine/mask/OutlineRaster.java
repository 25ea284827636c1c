package org.duskply.engine.mask;

import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;
import org.duskply.recipe.mask.FillRule;

/**
 * The exact share of each pixel's area that lies inside an outline: 0 outside, 1 inside, both exact
 * bits. Error below 1e-6 of a pixel. Prepared once; immutable, so any number of threads may fill
 * from it.
 *
 * <p>A value is a function of the outline and of the pixel's own row and column: every rectangle
 * gives the same bits. Of several shapes it is the exact area of their union, so that shapes which
 * share an edge leave no seam and overlaps count once. See {@link RowSlabs} for how, and for the
 * one case that is not exact.
 */
public final class OutlineRaster {
  private static final int FEW_EDGES = 64;
  private static final long BYTES_A_COLUMN = 64; // coverage and its differences along one row
  private static final long BYTES_AN_EDGE_OF_A_ROW = 2 * 88; // what RowSlabs holds, room to grow in

  private final EdgeTable edges;
  private final boolean[] evenOdd;
  private final Region bounds;

  private OutlineRaster(EdgeTable edges, boolean[] evenOdd, Region bounds) {
    this.edges = edges;
    this.evenOdd = evenOdd;
    this.bounds = bounds;
  }

  /**
   * Prepares an outline.
   *
   * @param rule of all its shapes
   * @throws org.duskply.engine.DuskplyException where its edges touch more rows, all told, than a
   *     fill could get through in sensible time
   */
  public static OutlineRaster of(Outline outline, FillRule rule) {
    return of(outline, Collections.nCopies(outline.rules().size(), rule));
  }

  /**
   * Prepares an outline, each shape filled by its own rule.
   *
   * @throws org.duskply.engine.DuskplyException as {@link #of(Outline, FillRule)}
   */
  public static OutlineRaster of(Outline outline) {
    return of(outline, outline.rules());
  }

  private static OutlineRaster of(Outline outline, List<FillRule> rules) {
    EdgeTable edges = EdgeTable.of(outline);
    Region bounds = edges.count() == 0 ? Region.EMPTY : outline.bounds();
    boolean[] evenOdd = new boolean[rules.size()];
    for (int i = 0; i < evenOdd.length; i++) {
      evenOdd[i] = rules.get(i) == FillRule.EVENODD;
    }
    return new OutlineRaster(edges, evenOdd, bounds);
  }

  /** Whether every row has few edges, so that filling it is mostly writing values. */
  boolean simple() {
    return edges.mostInRow() <= FEW_EDGES;
  }

  /** Most bytes that are taken while {@code columns} columns are filled. */
  long scratchBytes(int columns) {
    return BYTES_A_COLUMN * columns
        + BYTES_AN_EDGE_OF_A_ROW * edges.mostInRow()
        + (long) Integer.BYTES * edges.count();
  }

  /** A region outside which every pixel is 0. */
  public Region bounds() {
    return bounds;
  }

  /**
   * A region outside which every pixel of rows {@code top} up to {@code bottom} is 0, its columns
   * as few as the edges in these rows allow.
   */
  public Region boundsWithin(int top, int bottom) {
    Region band = bounds.rows(top, bottom);
    if (band.empty()) {
      return Region.EMPTY;
    }
    int[] touching = touching(band);
    double left = Double.POSITIVE_INFINITY;
    double right = Double.NEGATIVE_INFINITY;
    for (int e : touching) {
      left = Math.min(left, Math.min(upperX(e, band), lowerX(e, band)));
      right = Math.max(right, Math.max(upperX(e, band), lowerX(e, band)));
    }
    if (touching.length == 0) {
      return Region.EMPTY;
    }
    return new Region((int) Math.floor(left), band.top(), (int) Math.ceil(right), band.bottom());
  }

  /**
   * The value of all pixels of {@code region}, 0 or 1, where that can be told from the edges beside
   * it; NaN where it cannot.
   *
   * <p>No edge comes near, and those on one side pass all its rows from top to bottom: then every
   * point has the same edges between it and the outside on that side. An edge that begins or ends
   * beside the region may go on as a level one through it, which no row has among its edges.
   */
  float uniform(Region region) {
    if (region.meet(bounds).empty()) {
      return 0f;
    }
    boolean leftPass = true;
    boolean rightPass = true;
    for (int e : touching(region)) {
      boolean passes = edges.topY[e] <= region.top() && edges.bottomY[e] >= region.bottom();
      if (Math.max(upperX(e, region), lowerX(e, region)) < region.left() - 1) {
        leftPass &= passes;
      } else if (Math.min(upperX(e, region), lowerX(e, region)) > region.right() + 1) {
        rightPass &= passes;
      } else {
        return Float.NaN;
      }
    }
    if (!leftPass && !rightPass) {
      return Float.NaN;
    }
    float[] one = new float[1];
    fill(new Region(region.left(), region.top(), region.left() + 1, region.top() + 1), one);
    return one[0];
  }

  /** Where an edge that touches some rows is uppermost in them. */
  private double upperX(int e, Region rows) {
    return edges.xAt(e, rows.top(), Math.max(0, edges.topY[e] - rows.top()));
  }

  /** Where it is lowermost in them. */
  private double lowerX(int e, Region rows) {
    return edges.xAt(e, rows.top(), Math.min(rows.height(), edges.bottomY[e] - rows.top()));
  }

  private int[] touching(Region rows) {
    int[] touching = new int[edges.gather(rows.top(), rows.bottom(), new int[0])];
    edges.gather(rows.top(), rows.bottom(), touching);
    return touching;
  }

  /** Fills plane {@code plane} of {@code out}, all of it. */
  public void fill(Planes out, int plane) {
    fill(out.area(), out.plane(plane));
  }

  /**
   * Fills a rectangle.
   *
   * @param area the rectangle
   * @param samples where its rows go, without gaps
   */
  public void fill(Region area, float[] samples) {
    Region touched = boundsWithin(area.top(), area.bottom()).meet(area);
    Arrays.fill(samples, 0, Math.toIntExact(area.count()), 0f);
    if (touched.empty()) {
      return;
    }
    RowCoverage coverage = new RowCoverage(touched.left(), touched.right());
    RowSlabs slabs = new RowSlabs(edges, evenOdd, coverage);
    for (int y = touched.top(); y < touched.bottom(); y++) {
      if (slabs.cover(y)) {
        int at = (y - area.top()) * area.width() + touched.left() - area.left();
        coverage.write(samples, at);
      }
    }
  }
}
