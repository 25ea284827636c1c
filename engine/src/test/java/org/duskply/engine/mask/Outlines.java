package org.duskply.engine.mask;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.duskply.recipe.mask.Point;

/** Outlines for tests, by kind of structure. */
final class Outlines {
  private Outlines() {}

  static List<Point> points(double... coordinates) {
    List<Point> points = new ArrayList<>();
    for (int i = 0; i < coordinates.length; i += 2) {
      points.add(new Point(coordinates[i], coordinates[i + 1]));
    }
    return points;
  }

  /** One to three contours: scattered, on whole pixels, on half pixels, or zigzag. */
  static Outline random(Random random, double size) {
    Outline.Builder builder = new Outline.Builder();
    int contours = 1 + random.nextInt(3);
    for (int c = 0; c < contours; c++) {
      int kind = random.nextInt(4);
      int corners = 3 + random.nextInt(12);
      for (int i = 0; i < corners; i++) {
        double x = random.nextDouble() * size;
        double y = random.nextDouble() * size;
        switch (kind) {
          case 0 -> builder.add(x, y);
          case 1 -> builder.add(Math.rint(x), Math.rint(y));
          case 2 -> builder.add(Math.rint(2 * x) / 2, Math.rint(2 * y) / 2);
          default -> builder.add(i * size / corners, size / 2 + (i % 2) * 1.7 + y * .01);
        }
      }
      builder.close();
    }
    return builder.build();
  }

  /** A hash of bits that is the same everywhere. */
  static long hash(float[] samples) {
    long hash = 0xcbf29ce484222325L;
    for (float v : samples) {
      hash = (hash ^ Float.floatToIntBits(v + 0f)) * 0x100000001b3L;
    }
    return hash;
  }
}
