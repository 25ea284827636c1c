package org.duskply.engine.testing;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.duskply.recipe.step.Blend;

/**
 * The text of a recipe drawn by a seed, without its frames: every verb, adjustment and kind of
 * mask, masks that read the picture below or where steps show, groups in groups, a finish, and
 * alternates. Frames are called dusk, a, b and c.
 */
public final class RandomRecipe {
  private static final List<String> NAMED = List.of("dim", "blue", "low", "both", "brushed");

  private final Random random;
  private final int width;
  private final int height;
  private final boolean extreme;
  private int named;

  /**
   * A recipe for frames of {@code width × height}.
   *
   * @param extreme whether numbers lie at the ends of what is allowed
   */
  public RandomRecipe(long seed, int width, int height, boolean extreme) {
    this.random = new Random(seed);
    this.width = width;
    this.height = height;
    this.extreme = extreme;
  }

  /**
   * Masks, steps and a finish, with the alternates {@code other} and {@code less}.
   *
   * @param count of steps, at least 3
   */
  public String text(int count) {
    String masks =
        """
        masks:
          dim: { luminance: { to: 0.5, soft: 0.3 }, feather: 2 }
          blue: { hue: { centre: 250, width: 200, soft: 60 } }
          low: { luminance: { from: 0.2, soft: 0.1, frame: a }, within: [ { %s } ] }
          both: { any-of: [dim, low], except: [ { %s } ], strength: 0.8 }
          brushed: { strokes: [ { points: "%s %s", radius: 9, soft: 0.7 }, { points: "5,5", radius: 6, strength: 0.5 } ] }
          lit: { steps: [s1, s2], feather: 1.5 }
        """
            .formatted(shape(), shape(), point(), point());
    List<String> steps = new ArrayList<>();
    for (int i = 1; i <= count; i++) {
      steps.add("{ id: s" + i + ", " + step(2, i > 2) + " }");
    }
    return masks
        + "steps: "
        + list(steps)
        + "\nfinish: { steps: [ { "
        + step(0, true)
        + " }, { vignette: -0.4 } ], crop: { left: 5, top: 3, width: "
        + (width - 9)
        + ", height: "
        + (height - 8)
        + " } }\n"
        + "alternates:\n  other: { set: { s2: { opacity: 0.4 } } }\n  less: { skip: [s1] }\n"
        + "deliverables: { print: { file: <alternate>.tif, alternates: [main, other, less] } }\n";
  }

  private String step(int depth, boolean afterTwo) {
    String mask = random.nextInt(5) == 0 ? "" : ", mask: " + mask(afterTwo);
    return verb(depth, afterTwo) + mask + ", opacity: " + any("1", "1", "0.6", "0.3");
  }

  private String verb(int depth, boolean afterTwo) {
    return switch (random.nextInt(depth > 0 ? 10 : 7)) {
      case 0 -> "pop: " + frame() + any("", ", compare: luminance") + treat();
      case 1, 2 ->
          "lay: "
              + frame()
              + ", blend: "
              + any(Blend.values()).key()
              + any("", ", blend-in: encoded")
              + treat();
      case 3 -> "adjust: " + list(some(1, 3, this::adjustment));
      case 4 -> "dodge: { stops: " + ends("20", "0.7") + ", gel: 60 }";
      case 5 -> "burn: { stops: " + ends("20", "0.7") + " }";
      case 6 -> "vignette: { stops: " + ends("20", "-0.8") + ", begins: 0.2 }";
      default ->
          "group: " + list(some(1, 3, () -> "{ " + step(depth - 1, afterTwo) + " }")) + treat();
    };
  }

  private String treat() {
    return random.nextInt(3) == 0 ? ", treat: " + list(some(1, 2, this::adjustment)) : "";
  }

  private String adjustment() {
    String one =
        switch (random.nextInt(10)) {
          case 0 -> "exposure: " + ends(any("20", "-20"), "0.7");
          case 1 -> "saturation: " + ends("4", "1.3");
          case 2 -> "contrast: { strength: " + ends("4", "0.3") + any("", ", channel: rgb") + " }";
          case 3 -> "power: " + ends(any("20", "0.05"), "0.9");
          case 4 ->
              "curve: { points: [[0, 0.02], [0.4, 0.45], [1, "
                  + ends("100", "0.97")
                  + "]]"
                  + any("", ", channel: luminance", ", channel: green")
                  + any("", ", axis: linear")
                  + " }";
          case 5 -> "gel: { mired: " + any("-320", "320", "60") + ", plus-green: 20 }";
          case 6 ->
              "cdl: { slope: "
                  + ends("100", "1.2")
                  + ", offset: [0.01, 0, -0.02], power: "
                  + ends("20", "1.1")
                  + ", saturation: "
                  + ends("10", "0.8")
                  + any("", ", axis: linear")
                  + any("", "", ", clamp: true")
                  + " }";
          case 7 ->
              "hue: { turn: 40, chroma: "
                  + ends("4", "1.2")
                  + ", lightness: "
                  + ends("1", "0.05")
                  + any("", ", centre: 260, width: 100, soft: 40")
                  + " }";
          case 8 -> "shoulder: { begins: 0.5, white-at: 6 }";
          default -> "ends: { black: 0.02, white: " + ends("4", "0.9") + " }";
        };
    return "{ " + one + " }";
  }

  private String mask(boolean afterTwo) {
    if (random.nextInt(3) > 0) {
      return afterTwo && random.nextInt(4) == 0 ? "lit" : NAMED.get(named++ % NAMED.size());
    }
    String kind =
        switch (random.nextInt(4)) {
          case 0 -> "luminance: { from: 0.3, to: 0.9, soft: 0.2 }";
          case 1 -> "flash: { frame: a, over: 0.5 }";
          case 2 -> "gradient: { from: [0, 0], to: [30, 25], ease: smooth }";
          default -> shape();
        };
    boolean drawn = kind.startsWith("polygon") || kind.startsWith("ellipse");
    return "{ "
        + kind
        + any("", ", within: [ { " + shape() + " } ]", drawn ? "" : ", except: [ dim ]")
        + (drawn ? any("", ", widen: 2.5", ", widen: -1.5") : "")
        + any("", ", feather: 3")
        + any("", "", ", inverted: true")
        + " }";
  }

  private String shape() {
    return random.nextBoolean()
        ? "polygon: \"" + point() + " " + point() + " " + point() + "\""
        : "ellipse: { centre: [" + point() + "], radii: [20, 9], turn: 25 }";
  }

  private String point() {
    return String.format(
        Locale.ROOT,
        "%.2f,%.2f",
        random.nextDouble() * (width + 20) - 10,
        random.nextDouble() * (height + 20) - 10);
  }

  private String frame() {
    return any("a", "b", "c");
  }

  private String ends(String far, String near) {
    return extreme && random.nextInt(3) > 0 ? far : near;
  }

  private static String list(List<String> of) {
    return of.stream().collect(Collectors.joining(", ", "[ ", " ]"));
  }

  private <V> List<V> some(int least, int most, Supplier<V> value) {
    List<V> list = new ArrayList<>();
    for (int i = least + random.nextInt(most - least + 1); i > 0; i--) {
      list.add(value.get());
    }
    return list;
  }

  @SafeVarargs
  private <V> V any(V... values) {
    return values[random.nextInt(values.length)];
  }
}
