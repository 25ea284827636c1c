package org.duskply.examples.boathouse;

import static org.duskply.examples.boathouse.House.AXES;
import static org.duskply.examples.boathouse.House.GABLE_OPENINGS;
import static org.duskply.examples.boathouse.House.LENGTH;
import static org.duskply.examples.boathouse.House.RISE;
import static org.duskply.examples.boathouse.House.SIDE_OPENINGS;
import static org.duskply.examples.boathouse.House.WALL;
import static org.duskply.examples.boathouse.House.WIDTH;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.StringJoiner;
import org.duskply.examples.trace.Axes;
import org.duskply.examples.trace.Vec;

/**
 * Where the built things of the scene are seen in the picture: what a photographer would trace by
 * hand over the base frame, found here by projecting the geometry. Prints one outline a line.
 */
public final class Outlines {
  private Outlines() {}

  public static void main(String[] arguments) {
    of(2400, 1600).forEach((name, outline) -> System.out.println(name + ": " + text(outline)));
  }

  /** Outlines by name, each a list of places in a picture of that size. */
  static Map<String, List<double[]>> of(int width, int height) {
    Map<String, List<Vec>> all = new LinkedHashMap<>();
    house(all);
    panes(all);
    waterside(all);
    Map<String, List<double[]>> seen = new LinkedHashMap<>();
    all.forEach(
        (name, points) ->
            seen.put(name, points.stream().map(p -> View.project(p, width, height)).toList()));
    return seen;
  }

  private static void house(Map<String, List<Vec>> all) {
    double over = 0.6;
    double out = 0.65 * (WIDTH / 2) / Math.sqrt(RISE * RISE + WIDTH * WIDTH / 4);
    double down = out * RISE / (WIDTH / 2);
    double eave = WALL - down + 0.13;
    double ridge = WALL + RISE + 0.22;
    Vec peak = AXES.point(-WIDTH / 2, ridge, -over);
    Vec far = AXES.point(-WIDTH / 2, ridge, LENGTH + over);
    all.put(
        "gable",
        List.of(
            AXES.point(-WIDTH, 0, 0),
            AXES.point(-WIDTH, WALL, 0),
            AXES.point(-WIDTH / 2, WALL + RISE, 0),
            AXES.point(0, WALL, 0),
            AXES.point(0, 0, 0)));
    all.put(
        "verge",
        List.of(
            AXES.point(-WIDTH - out, eave - 0.25, -over),
            peak,
            AXES.point(out, eave - 0.25, -over)));
    all.put(
        "side",
        List.of(
            AXES.point(0, 0, 0),
            AXES.point(0, WALL, 0),
            AXES.point(0, WALL, LENGTH),
            AXES.point(0, 0, LENGTH)));
    all.put(
        "roof",
        List.of(peak, far, AXES.point(out, eave, LENGTH + over), AXES.point(out, eave, -over)));
  }

  private static void panes(Map<String, List<Vec>> all) {
    for (int i = 0; i < 3; i++) {
      double[] o = GABLE_OPENINGS[i];
      double low = i == 1 ? o[2] + 0.42 : o[2];
      all.put(
          i == 1 ? "door" : "gable-" + (i == 0 ? "left" : "right"),
          List.of(
              AXES.point(o[0], low, 0.09),
              AXES.point(o[0], o[3], 0.09),
              AXES.point(o[1], o[3], 0.09),
              AXES.point(o[1], low, 0.09)));
    }
    for (int i = 0; i < 3; i++) {
      double[] o = SIDE_OPENINGS[i];
      all.put(
          "side-" + (i + 1),
          List.of(
              AXES.point(-0.09, o[2], o[0]),
              AXES.point(-0.09, o[3], o[0]),
              AXES.point(-0.09, o[3], o[1]),
              AXES.point(-0.09, o[2], o[1])));
    }
  }

  private static void waterside(Map<String, List<Vec>> all) {
    double front = Waterside.DECK_FRONT;
    double side = Waterside.DECK_SIDE;
    all.put(
        "deck",
        List.of(
            AXES.point(Waterside.DECK_LEFT, 0, front),
            AXES.point(Waterside.DECK_LEFT, 0, 0),
            AXES.point(0, 0, 0),
            AXES.point(0, 0, LENGTH),
            AXES.point(side, 0, LENGTH),
            AXES.point(side, -0.3, front),
            AXES.point(Waterside.DECK_LEFT, -0.3, front)));
    Axes pontoon = Axes.along(Waterside.PONTOON_FROM, Waterside.PONTOON_TO);
    double half = Waterside.PONTOON_WIDTH / 2;
    all.put(
        "pontoon",
        List.of(
            pontoon.point(-3.9, 0, half),
            pontoon.point(3.5, 0, half),
            pontoon.point(3.5, 0, -half),
            pontoon.point(-3.9, -0.25, -half)));
    double x0 = Waterside.STEPS_X[0] - 0.3;
    double x1 = Waterside.STEPS_X[1] + 0.3;
    double z = Waterside.QUAY_FRONT;
    all.put(
        "steps",
        List.of(
            new Vec(x0, 0, z - 2),
            new Vec(x0, 0.75, z),
            new Vec(x1, 0.75, z),
            new Vec(x1, 0, z - 2)));
    double q = Waterside.QUAY_RIGHT;
    all.put(
        "wall",
        List.of(
            new Vec(q, 0, z), new Vec(q, 0.74, z), new Vec(q, 0.74, 18.5), new Vec(q, 0, 18.5)));
    all.put("hull", hull());
  }

  /** Up the transom, along both gunwales to the stem, back along the waterline. */
  private static List<Vec> hull() {
    List<Vec> points = new ArrayList<>();
    points.add(Boat.point(0, 0, 1));
    points.add(Boat.point(0, 1, -1));
    for (int i = 1; i <= 5; i++) {
      points.add(Boat.point(0.2 * i, 1, -1));
    }
    for (int i = 4; i >= 0; i--) {
      Vec low = Boat.point(0.2 * i, 0.5, 1);
      points.add(new Vec(low.x(), -0.03, low.z()));
    }
    return points;
  }

  private static String text(List<double[]> outline) {
    StringJoiner text = new StringJoiner(" ");
    for (double[] p : outline) {
      text.add(String.format(Locale.ROOT, "%.0f,%.0f", p[0], p[1]));
    }
    return text.toString();
  }
}
