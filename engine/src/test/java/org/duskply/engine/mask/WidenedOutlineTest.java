package org.duskply.engine.mask;

import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.duskply.engine.filter.Widening;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;
import org.duskply.engine.testing.Close;
import org.duskply.recipe.mask.FillRule;
import org.duskply.recipe.mask.PathData;
import org.duskply.recipe.mask.Point;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.operation.distance.DistanceOp;

/** Outlines filled, then moved, against where geometry says that they should be. */
class WidenedOutlineTest {
  private static final GeometryFactory FACTORY = new GeometryFactory();
  private static final Region AREA = new Region(-10, -10, 110, 110);

  /** A signed distance, negative inside, and how far off the moved outline may be there. */
  private interface Truth {
    double[] distanceAndBound(double x, double y);
  }

  private static void check(String what, Outline outline, double by, Truth truth) {
    Widening widening = Widening.of(by);
    Planes filled = new Planes(widening.needs(AREA), 1);
    OutlineRaster.of(outline, FillRule.NONZERO).fill(filled, 0);
    Planes moved = new Planes(AREA, 1);
    widening.apply(filled, moved);
    for (int y = AREA.top(); y < AREA.bottom(); y++) {
      for (int x = AREA.left(); x < AREA.right(); x++) {
        double[] there = truth.distanceAndBound(x + 0.5, y + 0.5);
        double want = Math.max(0, Math.min(1, 0.5 + by - there[0]));
        String pixel = what + " by " + by + " at " + x + ", " + y;
        Close.within(pixel, moved.plane(0)[moved.at(x, y)], want, there[1]);
      }
    }
  }

  /** Half planes of any slant; a hundredth of a pixel is what Widening's comment states. */
  @Test
  void straightEdgesKeepTheirPlace() {
    for (int degrees = 0; degrees < 180; degrees += 7) {
      double nx = StrictMath.sin(StrictMath.toRadians(degrees));
      double ny = -StrictMath.cos(StrictMath.toRadians(degrees));
      double cx = 50.3;
      double cy = 49.1;
      double tx = -ny * 400;
      double ty = nx * 400;
      Outline outline =
          Outline.ofPolygon(
              List.of(
                  new Point(cx - tx, cy - ty),
                  new Point(cx + tx, cy + ty),
                  new Point(cx + tx - nx * 800, cy + ty - ny * 800),
                  new Point(cx - tx - nx * 800, cy - ty - ny * 800)),
              1);
      for (double by : new double[] {-20, -0.4, 0.3, 1, 9.5, 30}) {
        Truth truth = (x, y) -> new double[] {(x - cx) * nx + (y - cy) * ny, 0.01};
        check(degrees + "°", outline, by, truth);
      }
    }
  }

  @Test
  void aCircleGrowsByWhatItIsMoved() {
    String circle = "M30.2 49.7a20 20 0 0 1 40 0a20 20 0 0 1 -40 0Z";
    Outline outline = Flattener.flatten(PathData.parse(circle), 1);
    for (double by : new double[] {-15, -5.5, -1, 0.5, 2, 17.25, 40}) {
      Truth truth =
          (x, y) -> {
            double square = (x - 50.2) * (x - 50.2) + (y - 49.7) * (y - 49.7);
            return new double[] {Math.sqrt(square) - 20, 0.02};
          };
      check("circle", outline, by, truth);
    }
  }

  /**
   * JTS measures the distance from a polygon's boundary. Away from corners the bound is that of
   * straight edges. Within reach of a corner of angle φ the level is reached at the latest where
   * the tip is a pixel wide, 1/(2·tan(φ/2)) from the corner, give or take half a pixel of the grid.
   */
  @Property(seed = "91", tries = 25)
  void polygonsAreMovedAsJtsMeasures(@ForAll @IntRange(max = 1_000_000) int seed) {
    Random random = new Random(seed);
    int corners = 3 + random.nextInt(6);
    Coordinate[] ring = new Coordinate[corners + 1];
    Outline.Builder outline = new Outline.Builder();
    for (int i = 0; i < corners; i++) {
      double angle = (i + 0.6 * random.nextDouble()) * 2 * Math.PI / corners;
      double r = 15 + 35 * random.nextDouble();
      ring[i] = new Coordinate(50 + r * StrictMath.cos(angle), 50 + r * StrictMath.sin(angle));
      outline.add(ring[i].x, ring[i].y);
    }
    ring[corners] = ring[0];
    double[] moves = {-6, -1.5, 1, 4, 12.5};
    double by = moves[random.nextInt(moves.length)];
    Geometry polygon = FACTORY.createPolygon(ring);
    Geometry boundary = polygon.getBoundary();
    Truth truth =
        (x, y) -> {
          Geometry centre = FACTORY.createPoint(new Coordinate(x, y));
          Coordinate nearest = DistanceOp.nearestPoints(boundary, centre)[0];
          double distance = boundary.distance(centre);
          return new double[] {
            polygon.contains(centre) ? -distance : distance, bound(ring, nearest)
          };
        };
    check("polygon " + seed, outline.build(), by, truth);
  }

  private static double bound(Coordinate[] ring, Coordinate nearest) {
    double bound = 0.02;
    int corners = ring.length - 1;
    for (int i = 0; i < corners; i++) {
      Coordinate before = ring[(i + corners - 1) % corners];
      Coordinate after = ring[i + 1];
      double tip = 0.5 / StrictMath.tan(angle(before, ring[i], after) / 2) + 0.5;
      if (nearest.distance(ring[i]) < 2 * tip + 1) {
        bound = Math.max(bound, tip);
      }
    }
    return bound;
  }

  /** The angle at a corner, the lesser of inside and outside. */
  private static double angle(Coordinate a, Coordinate corner, Coordinate b) {
    double dot = (a.x - corner.x) * (b.x - corner.x) + (a.y - corner.y) * (b.y - corner.y);
    return StrictMath.acos(dot / (a.distance(corner) * b.distance(corner)));
  }
}
