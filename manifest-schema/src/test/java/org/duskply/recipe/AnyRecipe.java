package org.duskply.recipe;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import org.duskply.recipe.adjust.Adjustment;
import org.duskply.recipe.adjust.Axis;
import org.duskply.recipe.adjust.Channel;
import org.duskply.recipe.adjust.Contrast;
import org.duskply.recipe.adjust.Curve;
import org.duskply.recipe.adjust.CurvePoint;
import org.duskply.recipe.adjust.Exposure;
import org.duskply.recipe.adjust.Power;
import org.duskply.recipe.adjust.Saturation;
import org.duskply.recipe.deliver.Compress;
import org.duskply.recipe.deliver.Deliverable;
import org.duskply.recipe.deliver.Format;
import org.duskply.recipe.mask.AnyOf;
import org.duskply.recipe.mask.FillRule;
import org.duskply.recipe.mask.Mask;
import org.duskply.recipe.mask.MaskKind;
import org.duskply.recipe.mask.MaskUse;
import org.duskply.recipe.mask.Path;
import org.duskply.recipe.mask.Point;
import org.duskply.recipe.mask.Polygon;
import org.duskply.recipe.step.Adjust;
import org.duskply.recipe.step.Blend;
import org.duskply.recipe.step.Group;
import org.duskply.recipe.step.Lay;
import org.duskply.recipe.step.Pop;
import org.duskply.recipe.step.Step;
import org.duskply.recipe.step.Verb;

/** Sound recipes of every kind, for properties. */
final class AnyRecipe {
  /** Names that a reader of YAML could take for something else. */
  private static final List<String> FRAMES =
      List.of("dusk", "on", "no", "y", "null", "true", "x-1");

  private static final List<String> MASKS = List.of("m0", "m1", "off", "e", "m4");

  private AnyRecipe() {}

  static Arbitrary<Recipe> recipes() {
    Arbitrary<Map<String, Frame>> frames =
        frame().list().ofSize(FRAMES.size()).map(list -> table(FRAMES, list));
    return Combinators.combine(
            text().injectNull(0.3),
            text().injectNull(0.3),
            Combinators.combine(
                    Arbitraries.integers().between(1, Limits.SIDE),
                    Arbitraries.integers().between(1, Limits.SIDE))
                .as(Size::new)
                .injectNull(0.3),
            Arbitraries.of(NamedSpace.class).injectNull(0.3),
            frames,
            masks(),
            steps(2).list().ofMaxSize(6),
            deliverables())
        .as(
            (title, notes, grid, working, byName, masks, steps, deliverables) ->
                new Recipe(
                    1,
                    1,
                    title,
                    notes,
                    grid,
                    "dusk",
                    working,
                    byName,
                    masks,
                    named(steps),
                    deliverables,
                    Map.of(),
                    Places.NONE))
        .flatMap(recipe -> extensions().map(own -> with(recipe, own)));
  }

  private static Recipe with(Recipe r, Map<String, Object> own) {
    return new Recipe(
        r.version(),
        r.needs(),
        r.title(),
        r.notes(),
        r.grid(),
        r.base(),
        r.working(),
        r.frames(),
        r.masks(),
        r.steps(),
        r.deliverables(),
        own,
        r.places());
  }

  /** Each id once: later steps of the same id lose theirs. */
  private static List<Step> named(List<Step> steps) {
    return named(steps, new ArrayList<>());
  }

  private static List<Step> named(List<Step> steps, List<String> seen) {
    List<Step> named = new ArrayList<>();
    for (Step s : steps) {
      String id = s.id() == null || seen.contains(s.id()) ? null : s.id();
      seen.add(String.valueOf(id));
      Verb verb = s.verb() instanceof Group g ? new Group(named(g.steps(), seen)) : s.verb();
      named.add(
          new Step(
              id, s.title(), s.notes(), s.mask(), s.opacity(), s.skip(), verb, s.extensions()));
    }
    return named;
  }

  private static <V> Map<String, V> table(List<String> names, List<V> values) {
    Map<String, V> table = new LinkedHashMap<>();
    for (int i = 0; i < values.size(); i++) {
      table.put(names.get(i), values.get(i));
    }
    return table;
  }

  private static Arbitrary<Frame> frame() {
    return Combinators.combine(
            Arbitraries.of(
                "a.tif", "frames/bh 7.tif", "no", "true", "1", "ä/😀.tif", "- x", "ab: c"),
            number(-20, 20),
            Arbitraries.of(NamedSpace.class).injectNull(0.6),
            extensions())
        .as(Frame::new);
  }

  /** Masks use only those before them, so that there is no ring. */
  private static Arbitrary<Map<String, Mask>> masks() {
    Arbitrary<Map<String, Mask>> masks = Arbitraries.just(Map.of());
    for (int i = 0; i < MASKS.size(); i++) {
      List<String> known = MASKS.subList(0, i);
      String name = MASKS.get(i);
      masks =
          Combinators.combine(masks, mask(known, 2))
              .as(
                  (before, mask) -> {
                    Map<String, Mask> all = new LinkedHashMap<>(before);
                    all.put(name, mask);
                    return all;
                  });
    }
    return masks;
  }

  private static Arbitrary<MaskUse> use(List<String> known, int depth) {
    Arbitrary<MaskUse> inline = mask(known, depth - 1).map(MaskUse.Inline::new);
    return known.isEmpty()
        ? inline
        : Arbitraries.oneOf(Arbitraries.of(known).map(MaskUse.Named::new), inline);
  }

  private static Arbitrary<Mask> mask(List<String> known, int depth) {
    Arbitrary<List<MaskUse>> uses =
        depth == 0 ? Arbitraries.just(List.of()) : use(known, depth).list().ofMaxSize(2);
    return Combinators.combine(
            kind(known, depth).injectNull(0.3),
            uses,
            uses,
            number(0, 2000),
            Arbitraries.of(true, false),
            number(0, 1),
            extensions())
        .as(Mask::new);
  }

  private static Arbitrary<MaskKind> kind(List<String> known, int depth) {
    Arbitrary<FillRule> rule = Arbitraries.of(FillRule.class);
    Arbitrary<Point> point =
        Combinators.combine(number(-1e6, 1e6), number(-1e6, 1e6)).as(Point::new);
    Arbitrary<MaskKind> polygon =
        Combinators.combine(point.list().ofMinSize(3).ofMaxSize(9), rule).as(Polygon::new);
    Arbitrary<MaskKind> path =
        Combinators.combine(
                Arbitraries.of("M0 0H1V1Z", "m 1,2 l3 4 5 6z\nM1e2.5 1-2C1 2 3 4 5 6"), rule)
            .as(Path::new);
    return depth == 0
        ? Arbitraries.oneOf(polygon, path)
        : Arbitraries.oneOf(
            polygon, path, use(known, depth).list().ofMinSize(1).ofMaxSize(3).map(AnyOf::new));
  }

  private static Arbitrary<Step> steps(int depth) {
    return Combinators.combine(
            Arbitraries.of("a", "no", "true", "step-1", "z9").injectNull(0.5),
            text().injectNull(0.7),
            text().injectNull(0.7),
            use(MASKS, 1).injectNull(0.4),
            number(0, 1),
            Arbitraries.of(true, false, false),
            verb(depth),
            extensions())
        .as(Step::new);
  }

  private static Arbitrary<Verb> verb(int depth) {
    Arbitrary<String> frame = Arbitraries.of(FRAMES);
    Arbitrary<List<Adjustment>> treat = adjustment().list().ofMaxSize(2);
    Arbitrary<Verb> pop = Combinators.combine(frame, treat).as(Pop::new);
    Arbitrary<Verb> lay =
        Combinators.combine(frame, Arbitraries.of(Blend.class), treat).as(Lay::new);
    Arbitrary<Verb> adjust = adjustment().list().ofMinSize(1).ofMaxSize(3).map(Adjust::new);
    if (depth == 0) {
      return Arbitraries.oneOf(pop, lay, adjust);
    }
    Arbitrary<Verb> group =
        Arbitraries.lazy(() -> steps(depth - 1)).list().ofMinSize(1).ofMaxSize(3).map(Group::new);
    return Arbitraries.oneOf(pop, lay, adjust, group);
  }

  private static Arbitrary<Adjustment> adjustment() {
    return Arbitraries.oneOf(
        number(-20, 20).map(Exposure::new),
        number(0.05, 20).map(Power::new),
        number(0, 4).map(Saturation::new),
        Combinators.combine(
                number(-0.9, 4), number(0.001, 1), Arbitraries.of(Channel.RGB, Channel.LUMINANCE))
            .as(Contrast::new),
        curve());
  }

  private static Arbitrary<Adjustment> curve() {
    Arbitrary<List<Double>> ascending =
        number(0, 100)
            .list()
            .uniqueElements()
            .ofMinSize(2)
            .ofMaxSize(5)
            .map(list -> list.stream().sorted().toList());
    return Combinators.combine(
            ascending, number(0, 100), Arbitraries.of(Channel.class), Arbitraries.of(Axis.class))
        .as(
            (xs, y, channel, axis) ->
                new Curve(xs.stream().map(x -> new CurvePoint(x, y)).toList(), channel, axis));
  }

  private static Arbitrary<Map<String, Deliverable>> deliverables() {
    return Combinators.combine(
            Arbitraries.of(Format.class),
            Arbitraries.of(8, 16),
            Arbitraries.of(NamedSpace.class),
            Arbitraries.of(Compress.class),
            number(0, 1),
            Arbitraries.integers().between(1, 65_535).injectNull(0.3),
            extensions())
        .as(AnyRecipe::deliverable)
        .list()
        .ofMaxSize(3)
        .map(list -> table(List.of("web", "print", "on"), list));
  }

  /** What would be idle in a format has its default. */
  private static Deliverable deliverable(
      Format format,
      int depth,
      NamedSpace profile,
      Compress compress,
      double quality,
      Integer edge,
      Map<String, Object> own) {
    return new Deliverable(
        "out/<deliverable> <width>" + format.endings().get(0),
        format,
        format == Format.JPEG ? 8 : depth,
        profile,
        format == Format.TIFF ? compress : Compress.DEFLATE,
        format == Format.JPEG ? quality : 0.92,
        edge,
        own);
  }

  private static Arbitrary<Map<String, Object>> extensions() {
    Arbitrary<Object> leaf =
        Arbitraries.oneOf(
            text().map(Object.class::cast),
            Arbitraries.longs().map(Object.class::cast),
            Arbitraries.doubles().map(d -> (Object) (d + 0.0)),
            Arbitraries.of(true, false).map(Object.class::cast));
    Arbitrary<Object> value =
        Arbitraries.oneOf(
            leaf,
            leaf.injectNull(0.2).list().ofMaxSize(3).map(Object.class::cast),
            Arbitraries.maps(text().filter(key -> key.length() < 200), leaf)
                .ofMaxSize(2)
                .map(Object.class::cast));
    return Arbitraries.maps(Arbitraries.of("x-a", "x-b", "x-Ω", "x-: no"), value).ofMaxSize(1);
  }

  /** Texts that try the quotes, and all other characters but halves and controls. */
  private static Arbitrary<String> text() {
    return Arbitraries.oneOf(
        Arbitraries.of(
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
            "two\nlines",
            "two\nlines\n",
            "\n",
            " lead",
            "trail ",
            "a\tb",
            "é😀",
            "…",
            "@home",
            "%",
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
            "true"),
        Arbitraries.strings()
            .withCharRange(' ', '\ud7ff')
            .withChars("\u0001\u001f\u007f\u0080\ufffe\uffff\r\n\t")
            .ofMaxLength(30));
  }

  private static Arbitrary<Double> number(double least, double most) {
    return Arbitraries.oneOf(
            Arbitraries.doubles().between(least, most).ofScale(3),
            Arbitraries.doubles().between(least, most).ofScale(17))
        .map(value -> value + 0.0);
  }
}
