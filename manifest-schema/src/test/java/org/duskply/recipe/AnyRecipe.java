package org.duskply.recipe;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.function.Supplier;
import org.duskply.recipe.adjust.Adjustment;
import org.duskply.recipe.adjust.Axis;
import org.duskply.recipe.adjust.Cdl;
import org.duskply.recipe.adjust.Channel;
import org.duskply.recipe.adjust.Contrast;
import org.duskply.recipe.adjust.Curve;
import org.duskply.recipe.adjust.CurvePoint;
import org.duskply.recipe.adjust.Ends;
import org.duskply.recipe.adjust.Exposure;
import org.duskply.recipe.adjust.Gel;
import org.duskply.recipe.adjust.Hue;
import org.duskply.recipe.adjust.Power;
import org.duskply.recipe.adjust.Saturation;
import org.duskply.recipe.adjust.Shoulder;
import org.duskply.recipe.deliver.Compress;
import org.duskply.recipe.deliver.Deliverable;
import org.duskply.recipe.deliver.Format;
import org.duskply.recipe.deliver.Metadata;
import org.duskply.recipe.mask.AllOf;
import org.duskply.recipe.mask.AnyOf;
import org.duskply.recipe.mask.Ease;
import org.duskply.recipe.mask.Ellipse;
import org.duskply.recipe.mask.FillRule;
import org.duskply.recipe.mask.Flash;
import org.duskply.recipe.mask.FlashReach;
import org.duskply.recipe.mask.Gradient;
import org.duskply.recipe.mask.HueRange;
import org.duskply.recipe.mask.Hues;
import org.duskply.recipe.mask.Image;
import org.duskply.recipe.mask.Luminance;
import org.duskply.recipe.mask.LuminanceRange;
import org.duskply.recipe.mask.Mask;
import org.duskply.recipe.mask.MaskKind;
import org.duskply.recipe.mask.MaskUse;
import org.duskply.recipe.mask.Oval;
import org.duskply.recipe.mask.Path;
import org.duskply.recipe.mask.Point;
import org.duskply.recipe.mask.Polygon;
import org.duskply.recipe.mask.Radii;
import org.duskply.recipe.mask.Ramp;
import org.duskply.recipe.mask.ShownSteps;
import org.duskply.recipe.mask.Stroke;
import org.duskply.recipe.mask.Strokes;
import org.duskply.recipe.mask.Svg;
import org.duskply.recipe.shape.PerChannel;
import org.duskply.recipe.step.Adjust;
import org.duskply.recipe.step.Blend;
import org.duskply.recipe.step.Burn;
import org.duskply.recipe.step.Compare;
import org.duskply.recipe.step.Dodge;
import org.duskply.recipe.step.Falloff;
import org.duskply.recipe.step.Group;
import org.duskply.recipe.step.Lay;
import org.duskply.recipe.step.Pop;
import org.duskply.recipe.step.Shade;
import org.duskply.recipe.step.Step;
import org.duskply.recipe.step.Verb;
import org.duskply.recipe.step.Vignette;
import org.jspecify.annotations.Nullable;

/** Sound recipes with parts of every kind, one for each seed. */
final class AnyRecipe {
  /** Names that a reader of YAML could take for something else are among them. */
  private static final List<String> FRAMES =
      List.of("dusk", "on", "no", "y", "null", "true", "x-1");

  private static final List<String> MASKS = List.of("m0", "m1", "off", "e", "m4");

  private static final List<String> FILES =
      List.of("a.tif", "frames/bh 7.tif", "no", "true", "1", "ä/😀.tif", "- x", "ab: c", "#1");

  private static final List<String> ALTERNATES = List.of("no-fire", "off", "x1");

  private static final List<String> LINES =
      List.of("dusk", "yes", "1", "© 2026", "a: b", "# no", "\"", " é😀 ", "{", "a\tb");

  private static final List<String> TEXTS =
      List.of(
          "",
          " ",
          "yes",
          "1",
          ".5",
          "null",
          "~",
          "a: b",
          "# no",
          "- x",
          "it's",
          "\"",
          "\\",
          "%",
          "two\nlines",
          "two\nlines\n",
          "\n",
          " lead",
          "trail ",
          "a\tb",
          "é😀",
          "…",
          "@home",
          "a\n\nb",
          "a\n  b",
          "\uFEFF",
          "\u2028",
          "\u0085",
          "\u00a0",
          "*a",
          "&a",
          "!a",
          "<<",
          "?",
          "{",
          "[",
          "|",
          ">",
          "a #b",
          "true",
          "\r",
          "a\r\nb",
          "a\u0000b",
          "\u007f",
          "\uffff",
          "'");

  private final Random random;
  private final List<String> ids = new ArrayList<>(List.of("a", "no-1", "false", "step-1", "z9"));

  private AnyRecipe(long seed) {
    random = new Random(seed);
  }

  static Recipe of(long seed) {
    return new AnyRecipe(seed).recipe();
  }

  private Recipe recipe() {
    Map<String, Frame> frames = new LinkedHashMap<>();
    FRAMES.forEach(name -> frames.put(name, frame(name)));
    Map<String, Mask> masks = new LinkedHashMap<>();
    // Masks use only those before them, so that there is no ring.
    MASKS.forEach(name -> masks.put(name, mask(List.copyOf(masks.keySet()), 2)));
    Map<String, Deliverable> deliverables = new LinkedHashMap<>();
    for (String name : List.of("web", "print", "on").subList(0, random.nextInt(4))) {
      deliverables.put(name, deliverable());
    }
    Map<String, Alternate> alternates = new LinkedHashMap<>();
    List<Step> steps = some(0, 6, () -> step(2));
    ALTERNATES.forEach(name -> alternates.put(name, alternate(steps.size())));
    return new Recipe(
        1,
        1,
        maybe(this::text),
        maybe(this::text),
        maybe(() -> new Size(1 + random.nextInt(Limits.SIDE), 1 + random.nextInt(Limits.SIDE))),
        "dusk",
        any(FRAMES),
        maybe(() -> any(NamedSpace.values())),
        frames,
        masks,
        steps,
        new Finish(maybe(this::crop), last(steps.size())),
        alternates,
        deliverables,
        metadata(),
        extensions(),
        Places.NONE);
  }

  private Frame frame(String name) {
    return new Frame(
        any(FILES),
        number(-20, 20),
        name.equals("dusk") ? null : maybe(() -> new Match("dusk", MatchBy.EXIF)),
        maybe(this::gel),
        maybe(() -> any(NamedSpace.values())),
        maybe(() -> any(ReadsAs.values())),
        any(Coverage.values()),
        extensions());
  }

  /** Small enough for any grid that is stated: one pixel. */
  private Crop crop() {
    return new Crop(0, 0, 1, 1);
  }

  /** Steps by their places: an id or a frame's name may belong to any of them. */
  private Alternate alternate(int steps) {
    Map<String, Map<String, Object>> set = new LinkedHashMap<>();
    List<String> places = new ArrayList<>();
    for (int i = 1; i <= steps; i++) {
      places.add("#" + i);
    }
    for (String place : places.subList(0, random.nextInt(steps + 1))) {
      Map<String, Object> keys = new LinkedHashMap<>();
      keys.put("opacity", number(0, 1));
      if (random.nextBoolean()) {
        keys.put("notes", text() + "!");
        keys.put("mask", any(List.of("m0", Map.of("polygon", "0,0 1,0 1,1", "feather", 2L))));
      }
      set.put(place, keys);
    }
    int cut = random.nextInt(steps + 1);
    return new Alternate(places.subList(0, cut), places.subList(cut, steps), set, extensions());
  }

  /** Steps of the finish, of which the first may ask where those before it show. */
  private List<Step> last(int steps) {
    List<Step> last = new ArrayList<>(some(0, 2, () -> step(1)));
    if (steps > 0 && !last.isEmpty()) {
      List<String> asked = some(1, 3, () -> "#" + (1 + random.nextInt(steps)));
      Mask mask =
          new Mask(
              new ShownSteps(asked), List.of(), List.of(), 0, number(0, 9), false, 1, Map.of());
      Step first = last.get(0);
      last.set(
          0,
          new Step(
              first.id(),
              first.title(),
              first.notes(),
              new MaskUse.Inline(mask),
              first.opacity(),
              first.skip(),
              first.verb(),
              first.extensions()));
    }
    return last;
  }

  private Metadata metadata() {
    return new Metadata(
        maybe(() -> any(LINES)),
        maybe(() -> any(LINES)),
        maybe(() -> any(LINES)),
        maybe(() -> any(LINES) + "\n" + any(LINES)),
        some(0, 3, () -> any(LINES)),
        maybe(() -> any(LINES)),
        maybe(() -> any(LINES)),
        maybe(() -> any(LINES)),
        maybe(() -> any(LINES)),
        extensions());
  }

  private MaskUse use(List<String> known, int depth) {
    return known.isEmpty() || (depth > 0 && random.nextBoolean())
        ? new MaskUse.Inline(mask(known, depth - 1))
        : new MaskUse.Named(any(known));
  }

  private Mask mask(List<String> known, int depth) {
    int most = depth > 0 ? 2 : 0;
    if (random.nextInt(8) == 0) {
      // What widen moves must be an outline.
      return new Mask(
          outline(), List.of(), List.of(), number(-500, 500), 0, false, 1, extensions());
    }
    return new Mask(
        maybe(() -> kind(known, depth)),
        some(0, most, () -> use(known, depth)),
        some(0, most, () -> use(known, depth)),
        0,
        number(0, 2000),
        random.nextBoolean(),
        number(0, 1),
        extensions());
  }

  private MaskKind kind(List<String> known, int depth) {
    return switch (random.nextInt(depth > 0 ? 10 : 7)) {
      case 0 -> outline();
      case 2 -> luminance();
      case 3 ->
          new Hues(
              new HueRange(
                  number(-360, 360), number(1, 360), number(0, 180), maybe(() -> any(FRAMES))));
      case 4 -> new Image(any(FILES));
      case 5 -> new Strokes(some(1, 3, this::stroke));
      case 6 -> new Flash(new FlashReach(any(FRAMES), maybe(() -> any(FRAMES)), number(0.01, 20)));
      case 1 ->
          new Gradient(new Ramp(point(), new Point(1e6, number(-1e6, 1e6)), any(Ease.values())));
      case 7 -> new AllOf(some(1, 3, () -> use(known, depth)));
      default -> new AnyOf(some(1, 3, () -> use(known, depth)));
    };
  }

  private Luminance luminance() {
    double from = number(0, 4);
    Double to = maybe(() -> Math.min(4, from + number(0, 1)));
    Double least = to == null ? (Double) from : maybe(() -> from);
    return new Luminance(new LuminanceRange(least, to, number(0, 4), maybe(() -> any(FRAMES))));
  }

  private Stroke stroke() {
    return new Stroke(some(1, 4, this::point), number(0.1, 10_000), number(0, 1), number(0, 1));
  }

  private MaskKind outline() {
    FillRule rule = any(FillRule.values());
    return switch (random.nextInt(4)) {
      case 0 -> new Polygon(some(3, 9, this::point), rule);
      case 1 ->
          new Path(any(List.of("M0 0H1V1Z", "m 1,2 l3 4 5 6z\nM1e2.5 1-2C1 2 3 4 5 6")), rule);
      case 2 ->
          new Ellipse(
              new Oval(point(), new Radii(number(1, 1e6), number(0.5, 1e6)), number(-360, 360)));
      default -> new Svg(any(FILES), maybe(() -> "Tür 1"), List.of(), maybe(() -> rule));
    };
  }

  private Point point() {
    return new Point(number(-1e6, 999_999), number(-1e6, 1e6));
  }

  private Step step(int depth) {
    String id = ids.isEmpty() ? null : maybe(() -> ids.remove(random.nextInt(ids.size())));
    return new Step(
        id,
        maybe(this::text),
        maybe(this::text),
        maybe(() -> use(MASKS, 1)),
        number(0, 1),
        random.nextInt(4) == 0,
        verb(depth),
        extensions());
  }

  private Verb verb(int depth) {
    return switch (random.nextInt(depth > 0 ? 7 : 6)) {
      case 0 -> new Pop(any(FRAMES), any(Compare.values()), some(0, 2, this::adjustment));
      case 1 ->
          new Lay(
              any(FRAMES), any(Blend.values()), any(Axis.values()), some(0, 2, this::adjustment));
      case 2 -> new Adjust(some(1, 3, this::adjustment));
      case 3 -> new Dodge(shade());
      case 4 -> new Burn(shade());
      case 5 -> new Vignette(falloff());
      default -> new Group(some(1, 3, () -> step(depth - 1)), some(0, 2, this::adjustment));
    };
  }

  private Shade shade() {
    return new Shade(number(0, 20), maybe(this::gel));
  }

  private Falloff falloff() {
    double begins = number(0, 10);
    Point centre = maybe(() -> new Point(number(-1e6, 1e6), number(-1e6, 1e6)));
    return new Falloff(number(-20, 20), begins, number(begins, 10), centre);
  }

  private Adjustment adjustment() {
    return switch (random.nextInt(10)) {
      case 0 -> new Exposure(number(-20, 20));
      case 1 -> new Power(number(0.05, 20));
      case 2 -> new Saturation(number(0, 4));
      case 3 ->
          new Contrast(
              number(-0.9, 4), number(0.001, 1), any(List.of(Channel.RGB, Channel.LUMINANCE)));
      case 4 -> new Ends(number(0, 0.5), number(0.55, 4));
      case 5 -> gel();
      case 6 -> hue();
      case 7 ->
          new Cdl(
              three(0, 100),
              three(-10, 10),
              three(0.05, 20),
              number(0, 10),
              any(Axis.values()),
              random.nextBoolean());
      case 8 -> new Shoulder(number(0, 0.95), number(1, 1000));
      default -> curve();
    };
  }

  private Gel gel() {
    return switch (random.nextInt(3)) {
      case 0 -> new Gel(number(-320, 320), null, null, number(-50, 50));
      case 1 -> new Gel(null, number(1667, 25_000), number(1667, 25_000), number(-50, 50));
      default -> new Gel(null, null, null, number(0.1, 50));
    };
  }

  private Hue hue() {
    boolean range = random.nextBoolean();
    return new Hue(
        number(-180, 180),
        number(0, 4),
        number(-1, 1),
        range ? number(-360, 360) : null,
        range ? number(1, 360) : null,
        range ? number(0, 180) : 0);
  }

  private PerChannel three(double least, double most) {
    return random.nextBoolean()
        ? PerChannel.all(number(least, most))
        : new PerChannel(number(least, most), number(least, most), number(least, most));
  }

  private Curve curve() {
    List<CurvePoint> points = new ArrayList<>();
    double x = number(0, 1);
    double y = number(0, 1);
    for (int i = 2 + random.nextInt(4); i > 0; i--) {
      points.add(new CurvePoint(x, y));
      x += 0.001 + number(0, 1);
      y += random.nextBoolean() ? 0 : number(0, 1);
    }
    return new Curve(points, any(Channel.values()), any(Axis.values()));
  }

  /** What would be idle in a format has its default. */
  private Deliverable deliverable() {
    Format format = any(Format.values());
    int depth = format == Format.JPEG ? 8 : any(List.of(8, 16));
    Integer edge = maybe(() -> 1 + random.nextInt(65_535));
    return new Deliverable(
        "out/<deliverable> <width>" + format.endings().get(0),
        format,
        depth,
        any(NamedSpace.values()),
        format == Format.TIFF ? any(Compress.values()) : Compress.DEFLATE,
        format == Format.JPEG ? number(0, 1) : 0.92,
        edge,
        edge != null ? null : maybe(() -> new Size(1 + random.nextInt(65_535), 7)),
        1 + random.nextInt(65_535),
        depth == 8 && (format != Format.JPEG || random.nextBoolean()),
        some(1, 1, () -> any(ALTERNATES)),
        extensions());
  }

  private Map<String, Object> extensions() {
    Map<String, Object> own = new LinkedHashMap<>();
    if (random.nextInt(4) == 0) {
      own.put(any(List.of("x-a", "x-b", "x-Ω", "x-: no")), leafOr(2));
    }
    return own;
  }

  private Object leafOr(int depth) {
    switch (random.nextInt(depth > 0 ? 6 : 4)) {
      case 0:
        return text();
      case 1:
        return random.nextLong() >> random.nextInt(64);
      case 2:
        return random.nextBoolean() ? number(-1e20, 1e20) : (double) random.nextInt();
      case 3:
        return random.nextBoolean();
      case 4:
        List<@Nullable Object> list = new ArrayList<>();
        some(0, 3, () -> leafOr(depth - 1)).forEach(list::add);
        list.add(null);
        return list;
      default:
        Map<String, Object> map = new LinkedHashMap<>();
        some(0, 3, this::text).forEach(key -> map.put(key, leafOr(depth - 1)));
        return map;
    }
  }

  /** Texts that try the quotes, and any characters but halves. */
  private String text() {
    if (random.nextBoolean()) {
      return any(TEXTS);
    }
    StringBuilder text = new StringBuilder();
    for (int i = random.nextInt(20); i > 0; i--) {
      int point = random.nextInt(random.nextBoolean() ? 0x100 : 0x20000);
      text.appendCodePoint(point >= 0xd800 && point < 0xe000 ? ' ' : point);
    }
    return text.toString();
  }

  /** Round numbers, crooked ones, and the ends of the range. */
  private double number(double least, double most) {
    double value = least + random.nextDouble() * (most - least);
    return switch (random.nextInt(4)) {
      case 0 -> Math.min(most, Math.max(least, Math.rint(value))) + 0.0;
      case 1 -> Math.min(most, Math.max(least, Math.rint(value * 100) / 100)) + 0.0;
      case 2 -> random.nextBoolean() ? least : most;
      default -> value;
    };
  }

  private <V> @Nullable V maybe(Supplier<V> value) {
    return random.nextInt(3) == 0 ? value.get() : null;
  }

  private <V> List<V> some(int least, int most, Supplier<V> value) {
    List<V> list = new ArrayList<>();
    for (int i = least + random.nextInt(most - least + 1); i > 0; i--) {
      list.add(value.get());
    }
    return list;
  }

  private <V> V any(List<V> values) {
    return values.get(random.nextInt(values.size()));
  }

  private <V> V any(V[] values) {
    return values[random.nextInt(values.length)];
  }
}
