package org.duskply.engine.mask;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;
import org.duskply.recipe.mask.FillRule;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Point;
import org.locationtech.jts.operation.polygonize.Polygonizer;
import org.locationtech.jts.operation.union.UnaryUnionOp;

/**
 * Areas of pixels against JTS: the outline's lines are noded and made into faces, the winding
 * number of a point in each face says whether it is inside, and each pixel's square is cut with the
 * faces.
 */
class OutlineAreaTest {
  private static final GeometryFactory FACTORY = new GeometryFactory();

  /** 1e-6 of a pixel is what the raster promises; JTS rounds crossings to about 1e-14. */
  private static final double PROMISED = 1e-6;

  @Property(seed = "41", tries = 60)
  void everyPixelHasTheAreaThatJtsFinds(@ForAll @IntRange(max = 1_000_000) int seed) {
    Random random = new Random(seed);
    FillRule rule = random.nextBoolean() ? FillRule.NONZERO : FillRule.EVENODD;
    Outline outline = Outlines.random(random, 16);
    Planes got = new Planes(new Region(-1, -2, 18, 22), 1);
    OutlineRaster.of(outline, rule).fill(got, 0);
    Geometry inside = inside(outline, rule);
    for (int y = got.area().top(); y < got.area().bottom(); y++) {
      // The row is cut out first: a pixel's square meets few of the lines.
      Geometry row = inside.intersection(square(got.area().left(), got.area().right(), y));
      for (int x = got.area().left(); x < got.area().right(); x++) {
        double area = row.intersection(square(x, x + 1, y)).getArea();
        float value = got.plane(0)[got.at(x, y)];
        assertThat(Math.abs(value - area))
            .as("pixel %d, %d: %.9f, JTS %.9f", x, y, value, area)
            .isLessThan(PROMISED);
      }
    }
  }

  private static Geometry square(int left, int right, int top) {
    return FACTORY.toGeometry(new Envelope(left, right, top, top + 1));
  }

  private static Geometry inside(Outline outline, FillRule rule) {
    List<Geometry> lines = new ArrayList<>();
    for (int c = 0; c < outline.contours(); c++) {
      lines.add(ring(outline, c));
    }
    Polygonizer polygonizer = new Polygonizer();
    polygonizer.add(UnaryUnionOp.union(lines));
    @SuppressWarnings("unchecked")
    Collection<Geometry> faces = polygonizer.getPolygons();
    List<Geometry> kept = new ArrayList<>();
    for (Geometry face : faces) {
      int winding = winding(outline, face.getInteriorPoint());
      if (rule == FillRule.EVENODD ? winding % 2 != 0 : winding != 0) {
        kept.add(face);
      }
    }
    return kept.isEmpty() ? FACTORY.createPolygon() : UnaryUnionOp.union(kept);
  }

  private static LineString ring(Outline outline, int contour) {
    List<Coordinate> points = new ArrayList<>();
    for (int p = outline.start(contour); p < outline.end(contour); p++) {
      points.add(new Coordinate(outline.x(p), outline.y(p)));
    }
    points.add(points.get(0));
    return FACTORY.createLineString(points.toArray(new Coordinate[0]));
  }

  /** Signed crossings of a ray to the right, as SVG 2 "fill-rule" defines them. */
  private static int winding(Outline outline, Point at) {
    int winding = 0;
    for (int c = 0; c < outline.contours(); c++) {
      int q = outline.end(c) - 1;
      for (int p = outline.start(c); p < outline.end(c); p++) {
        boolean above = outline.y(q) <= at.getY();
        if (above != (outline.y(p) <= at.getY())) {
          double t = (at.getY() - outline.y(q)) / (outline.y(p) - outline.y(q));
          if (outline.x(q) + t * (outline.x(p) - outline.x(q)) > at.getX()) {
            winding += above ? 1 : -1;
          }
        }
        q = p;
      }
    }
    return winding;
  }
}
