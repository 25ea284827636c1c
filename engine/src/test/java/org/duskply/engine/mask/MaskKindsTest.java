package org.duskply.engine.mask;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.duskply.engine.DuskplyException;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;
import org.duskply.engine.plan.Bands;
import org.duskply.engine.plan.KeyWriter;
import org.duskply.engine.plan.Keys;
import org.duskply.engine.plan.Node;
import org.duskply.engine.plan.Plan;
import org.duskply.engine.plan.PlanSettings;
import org.duskply.engine.plan.PointNode;
import org.duskply.engine.plan.Stop;
import org.duskply.engine.render.RegionEvaluator;
import org.duskply.engine.svg.Drawing;
import org.duskply.engine.testing.Close;
import org.duskply.engine.testing.FramesOnly;
import org.duskply.recipe.mask.AllOf;
import org.duskply.recipe.mask.AnyOf;
import org.duskply.recipe.mask.Ease;
import org.duskply.recipe.mask.Ellipse;
import org.duskply.recipe.mask.FillRule;
import org.duskply.recipe.mask.Gradient;
import org.duskply.recipe.mask.Mask;
import org.duskply.recipe.mask.MaskKind;
import org.duskply.recipe.mask.MaskUse;
import org.duskply.recipe.mask.Oval;
import org.duskply.recipe.mask.Point;
import org.duskply.recipe.mask.Polygon;
import org.duskply.recipe.mask.Radii;
import org.duskply.recipe.mask.Ramp;
import org.duskply.recipe.mask.Svg;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** Kinds of mask and the keys that act on them, against their formulas. */
class MaskKindsTest {
  private static final Region CANVAS = Region.ofSize(60, 40);

  private static MaskGraph graph(double scale) {
    Ground ground = new Ground(CANVAS.width() / scale, CANVAS.height() / scale, scale, CANVAS);
    return new MaskGraph(Map.of(), ground, Map.of(), FramesOnly.NONE);
  }

  private static Mask mask(@Nullable MaskKind kind, double widen, double feather) {
    return new Mask(kind, List.of(), List.of(), widen, feather, false, 1, Map.of());
  }

  private static MaskUse use(MaskKind kind) {
    return new MaskUse.Inline(mask(kind, 0, 0));
  }

  private static Planes made(Node node, Region region) {
    Plan plan = Plan.of(List.of(node), PlanSettings.DEFAULT);
    try (RegionEvaluator evaluator = new RegionEvaluator(plan, 0)) {
      return evaluator.compute(node, region, Stop.NEVER);
    }
  }

  private static Planes made(Mask mask) {
    return made(graph(1).of(new MaskUse.Inline(mask)), CANVAS);
  }

  private static Polygon box(double left, double top, double right, double bottom) {
    return new Polygon(
        Outlines.points(left, top, right, top, right, bottom, left, bottom), FillRule.NONZERO);
  }

  /** The formula in plain double, then one rounding to float. */
  @Property(seed = "101", tries = 60)
  void gradientsAreTheirFormula(@ForAll @IntRange(max = 1_000_000) int seed) {
    Random random = new Random(seed);
    Point from = new Point(random.nextInt(200) - 70.5, random.nextDouble() * 100 - 30);
    Point to = new Point(random.nextInt(200) - 70.25, random.nextDouble() * 100 - 30);
    Ease ease = random.nextBoolean() ? Ease.LINEAR : Ease.SMOOTH;
    double scale = random.nextBoolean() ? 1 : 0.5;
    Planes got = made(graph(scale).of(use(new Gradient(new Ramp(from, to, ease)))), CANVAS);
    for (int y = 0; y < CANVAS.height(); y++) {
      for (int x = 0; x < CANVAS.width(); x++) {
        double px = (x + 0.5) / scale - from.x();
        double py = (y + 0.5) / scale - from.y();
        double dx = to.x() - from.x();
        double dy = to.y() - from.y();
        double t = Math.max(0, Math.min(1, (px * dx + py * dy) / (dx * dx + dy * dy)));
        double want = ease == Ease.SMOOTH ? t * t * (3 - 2 * t) : t;
        // Half a unit in the last place of 1 for the rounding, and what double leaves.
        Close.within(x + ", " + y, got.plane(0)[got.at(x, y)], want, 0x1p-25 + 1e-11);
      }
    }
  }

  @Test
  void aGradientGoesOnAtBothEnds() {
    Ramp ramp = new Ramp(new Point(10, 0), new Point(20, 0), Ease.LINEAR);
    Planes got = made(graph(1).of(use(new Gradient(ramp))), CANVAS);
    assertThat(got.plane(0)[got.at(9, 3)]).isEqualTo(0f);
    assertThat(got.plane(0)[got.at(10, 3)]).isEqualTo(0.05f);
    assertThat(got.plane(0)[got.at(19, 30)]).isEqualTo(0.95f);
    assertThat(got.plane(0)[got.at(20, 3)]).isEqualTo(1f);
    assertThatThrownBy(
            () -> new GradientNode(new Ramp(new Point(1, 2), new Point(1, 2), Ease.LINEAR), 1))
        .isInstanceOf(IllegalArgumentException.class);
  }

  /** Check values 7.6, COV-4: a circle of 1.5 about (2, 2); chords take up to 1/512 px from it. */
  @Test
  void anEllipseCoversWhatACircleDoes() {
    Planes got =
        made(
            graph(1).of(use(new Ellipse(new Oval(new Point(2, 2), new Radii(1.5, 1.5), 33)))),
            Region.ofSize(4, 4));
    double corner = 0.0072246524;
    double edge = 0.3799606076;
    double[] expected = {
      corner, edge, edge, corner, edge, 1, 1, edge, edge, 1, 1, edge, corner, edge, edge, corner
    };
    for (int i = 0; i < 16; i++) {
      assertThat(expected[i] - got.plane(0)[i])
          .isBetween(-1e-6, Flattener.TOLERANCE * Math.sqrt(2));
    }
  }

  @Test
  void anEllipseIsTurnedClockwise() {
    Oval oval = new Oval(new Point(30, 20), new Radii(18, 5), 30);
    Planes got = made(graph(1).of(use(new Ellipse(oval))), CANVAS);
    double area = 0;
    for (float v : got.plane(0)) {
      area += v;
    }
    // Two thirds of a 512th of a pixel along about 80 px of outline.
    Close.within("area", area, Math.PI * 18 * 5, 0.11);
    // 15 px from the centre along 30° below the horizontal, and along 30° above it.
    assertThat(got.plane(0)[got.at(43, 27)]).isEqualTo(1f);
    assertThat(got.plane(0)[got.at(43, 12)]).isEqualTo(0f);
  }

  @Test
  void allOfIsTheProductAndAnyOfTheGreatest() {
    List<MaskUse> members =
        List.of(
            use(new Gradient(new Ramp(new Point(0, 0), new Point(60, 0), Ease.LINEAR))),
            use(new Gradient(new Ramp(new Point(0, 40), new Point(0, 0), Ease.LINEAR))),
            use(box(5, 5, 55.5, 35.25)));
    Planes product = made(graph(1).of(use(new AllOf(members))), CANVAS);
    Planes greatest = made(graph(1).of(use(new AnyOf(members))), CANVAS);
    float[][] each = new float[3][];
    for (int m = 0; m < 3; m++) {
      each[m] = made(graph(1).of(members.get(m)), CANVAS).plane(0);
    }
    for (int i = 0; i < each[0].length; i++) {
      assertThat(product.plane(0)[i]).isEqualTo(each[0][i] * each[1][i] * each[2][i]);
      float most = Math.max(each[0][i], Math.max(each[1][i], each[2][i]));
      assertThat(greatest.plane(0)[i]).isEqualTo(most);
    }
    Node one = graph(1).of(use(new AllOf(members.subList(0, 1))));
    assertThat(one).isInstanceOf(GradientNode.class);
  }

  /** Check values 7.6, COV-1 to COV-3, drawn. */
  @Test
  void aDrawingCoversWhatPolygonsDo() {
    String svg =
        "<svg><polygon id='one' points='0,0 4,0 0,4'/><path id='two' d='M.5.5L3.5 1 1 3.25z'/>"
            + "<rect id='three' x='.25' y='.5' width='2.5' height='1.75'/></svg>";
    Drawing drawing = Drawing.read("o.svg", svg.getBytes(StandardCharsets.UTF_8));
    double[][] expected = {
      {1, 1, 1, .5, 1, 1, .5, 0, 1, .5, 0, 0, .5, 0, 0, 0},
      {
        109 / 528.0,
        1 / 3.0,
        1 / 6.0,
        1 / 48.0,
        7 / 22.0,
        1,
        599 / 720.0,
        9 / 80.0,
        3 / 22.0,
        551 / 720.0,
        49 / 720.0,
        0,
        1 / 176.0,
        5 / 144.0,
        0,
        0
      },
      {3 / 8.0, .5, 3 / 8.0, 0, .75, 1, .75, 0, 3 / 16.0, .25, 3 / 16.0, 0, 0, 0, 0, 0}
    };
    String[] ids = {"one", "two", "three"};
    for (int i = 0; i < 3; i++) {
      Svg mask = new Svg("o.svg", ids[i], List.of(), null);
      Outline outline =
          SvgMask.outline(
              drawing.shapes(
                  mask.wanted(),
                  4,
                  4,
                  (place, fault) -> {
                    throw fault;
                  }),
              null,
              1);
      Planes got =
          made(
              new MaskGraph(
                      Map.of(),
                      new Ground(4, 4, 1, Region.ofSize(4, 4)),
                      Map.of(mask, outline),
                      FramesOnly.NONE)
                  .of(use(mask)),
              Region.ofSize(4, 4));
      Close.check(ids[i], got.plane(0), expected[i], 1e-6);
    }
  }

  // The border

  /** A mask that has values on the canvas alone, as a painted picture has. */
  private record Painted() implements PointNode {
    @Override
    public List<Node> inputs() {
      return List.of();
    }

    @Override
    public int planes() {
      return 1;
    }

    @Override
    public void row(float[][][] in, float[][] out, int left, int y, int from, int to) {
      for (int i = from; i < to; i++) {
        if (!CANVAS.contains(left + i, y)) {
          throw new AssertionError("asked for " + (left + i) + ", " + y);
        }
        out[0][i] = value(left + i, y);
      }
    }

    static float value(int x, int y) {
      return x / 60f * (y % 7) / 6f;
    }

    @Override
    public void describe(KeyWriter key) {
      key.word("painted");
    }
  }

  @Test
  void onlyWhatIsMadeOfShapesHasNoBorder() {
    Node shape = graph(1).of(use(box(0, 0, 9, 9)));
    Node gradient =
        graph(1).of(use(new Gradient(new Ramp(new Point(0, 0), new Point(1, 1), Ease.LINEAR))));
    Node soft = new FeatherNode(shape, 3, CANVAS);
    assertThat(Boundless.is(shape)).isTrue();
    assertThat(Boundless.is(new EverywhereNode())).isTrue();
    assertThat(Boundless.is(soft)).isTrue();
    assertThat(Boundless.is(CombinedNode.except(soft, gradient))).isTrue();
    assertThat(Boundless.is(new Painted())).isFalse();
    assertThat(Boundless.is(new FeatherNode(new Painted(), 3, CANVAS))).isFalse();
    assertThat(Boundless.is(CombinedNode.anyOf(List.of(shape, new Painted())))).isFalse();
  }

  @Test
  void aShapeThatRunsOverTheBorderStaysWholeThere() {
    for (double widen : new double[] {0, 3, -3}) {
      Planes got = made(mask(box(-50, -50, 40, 90), widen, 10));
      for (int y = 0; y < CANVAS.height(); y++) {
        assertThat(got.plane(0)[got.at(0, y)]).isEqualTo(1f);
        // The same as in the middle of the edge: nothing of the border is in it.
        assertThat(got.plane(0)[got.at(38, y)]).isEqualTo(got.plane(0)[got.at(38, 20)]);
      }
    }
  }

  @Test
  void aGradientGoesOnBeyondTheBorder() {
    Ramp ramp = new Ramp(new Point(-100, 0), new Point(160, 0), Ease.LINEAR);
    Planes soft = made(mask(new Gradient(ramp), 0, 12));
    Planes hard = made(mask(new Gradient(ramp), 0, 0));
    for (int x = 0; x < CANVAS.width(); x++) {
      // A symmetric mean of a straight ramp is the ramp: float sums of a few dozen terms.
      Close.within("x " + x, soft.plane(0)[x], hard.plane(0)[x], 1e-6);
    }
  }

  @Test
  void whatIsPaintedContinuesByItsEdgeValue() {
    Node mixed =
        new FeatherNode(
            CombinedNode.anyOf(List.of(new Painted(), graph(1).of(use(box(-9, -9, 3, 60))))),
            8,
            CANVAS);
    Planes got = made(mixed, CANVAS);
    // By hand: the same Gaussian over the canvas continued by its edge.
    Region wide = CANVAS.grow(40);
    Planes continued = new Planes(wide, 1);
    for (int y = wide.top(); y < wide.bottom(); y++) {
      for (int x = wide.left(); x < wide.right(); x++) {
        int cx = Math.max(0, Math.min(59, x));
        int cy = Math.max(0, Math.min(39, y));
        continued.plane(0)[continued.at(x, y)] = cx < 3 ? 1 : Painted.value(cx, cy);
      }
    }
    Planes want = new Planes(CANVAS, 1);
    org.duskply.engine.filter.Gaussian.of(8).apply(continued, 0, want, 0);
    assertThat(got.plane(0)).isEqualTo(want.plane(0));
    for (Region part : List.of(new Region(0, 0, 1, 1), new Region(50, 3, 60, 4), CANVAS)) {
      Planes cut = new Planes(part, 1);
      cut.copyFrom(want);
      assertThat(made(mixed, part).plane(0)).isEqualTo(cut.plane(0));
    }
    made(new WidenNode(new Painted(), 5, CANVAS), CANVAS);
  }

  // The order of the keys

  @Test
  void widenComesAfterExceptAndBeforeFeather() {
    Mask hole =
        new Mask(
            box(10, 10, 50, 30),
            List.of(use(box(0, 0, 40, 40))),
            List.of(use(box(20, 15, 30, 25))),
            3,
            0,
            false,
            1,
            Map.of());
    Planes got = made(hole);
    // Within cut it at 40, except at 20 to 30; then all of it grew by 3.
    assertThat(got.plane(0)[got.at(42, 20)]).isEqualTo(1f);
    assertThat(got.plane(0)[got.at(43, 20)]).isEqualTo(0f);
    assertThat(got.plane(0)[got.at(22, 20)]).isEqualTo(1f);
    assertThat(got.plane(0)[got.at(23, 20)]).isEqualTo(0f);
    assertThat(got.plane(0)[got.at(20, 7)]).isEqualTo(1f);
    assertThat(got.plane(0)[got.at(20, 6)]).isEqualTo(0f);
    Planes soft = made(mask(box(10, 10, 50, 30), 4, 6));
    // The feather lies about the widened edge: half of it there.
    double middle = (soft.plane(0)[soft.at(53, 20)] + soft.plane(0)[soft.at(54, 20)]) / 2.0;
    Close.within("middle", middle, 0.5, 1e-3);
  }

  @Test
  void aMoveOfTooManyPixelsIsRefused() {
    Ground ground = new Ground(6, 4, 10, CANVAS);
    MaskGraph graph = new MaskGraph(Map.of(), ground, Map.of(), FramesOnly.NONE);
    assertThatThrownBy(() -> graph.of(new MaskUse.Inline(mask(box(0, 0, 1, 1), 500, 0))))
        .isInstanceOf(DuskplyException.class)
        .hasMessage("An outline cannot be moved by 5000 pixels of the base; 4000 is the most.");
  }

  @Test
  void contentKeysTellMasksApart() {
    List<Mask> masks =
        List.of(
            mask(box(1, 1, 9, 9), 0, 0),
            mask(box(1, 1, 9, 9.5), 0, 0),
            mask(box(1, 1, 9, 9), 2, 0),
            mask(box(1, 1, 9, 9), -2, 0),
            mask(new Ellipse(new Oval(new Point(5, 5), new Radii(4, 4), 0)), 0, 0),
            mask(new Ellipse(new Oval(new Point(5, 5), new Radii(4, 3), 0)), 0, 0),
            mask(new Gradient(new Ramp(new Point(0, 0), new Point(9, 9), Ease.LINEAR)), 0, 0),
            mask(new Gradient(new Ramp(new Point(0, 0), new Point(9, 9), Ease.SMOOTH)), 0, 0));
    List<String> all = masks.stream().map(m -> key(graph(1).of(new MaskUse.Inline(m)))).toList();
    assertThat(all).doesNotHaveDuplicates();
    assertThat(masks.stream().map(m -> key(graph(1).of(new MaskUse.Inline(m)))).toList())
        .isEqualTo(all);
  }

  /** What a mask has beyond the canvas decides what a neighbourhood makes of its edge. */
  @Test
  void aNeighbourhoodIsToldApartByTheCanvasUnlessTheMaskGoesOnBeyondIt() {
    Node shape = graph(1).of(new MaskUse.Inline(mask(box(1, 1, 9, 9), 0, 0)));
    Node frame = new PaintedNode(MaskRows.frame(1, 60, 40, 3));
    Region wider = Region.ofSize(80, 40);
    assertThat(key(new FeatherNode(frame, 3, CANVAS)))
        .isNotEqualTo(key(new FeatherNode(frame, 3, wider)));
    assertThat(key(new WidenNode(frame, 3, CANVAS)))
        .isNotEqualTo(key(new WidenNode(frame, 3, wider)));
    assertThat(key(new MedianNode(frame, CANVAS))).isNotEqualTo(key(new MedianNode(frame, wider)));
    assertThat(key(new FeatherNode(shape, 3, CANVAS)))
        .isEqualTo(key(new FeatherNode(shape, 3, wider)));
  }

  private static String key(Node mask) {
    Keys keys = new Keys(new IdentityHashMap<>(Map.of(mask, CANVAS)), new Bands(64));
    return String.valueOf(keys.of(mask, 0, CANVAS));
  }

  /** Masks that use each other many times over would be walked 2³⁰ times without a memory. */
  @Test
  void masksThatShareMembersAreWalkedOnce() {
    Node node = graph(1).of(use(box(1, 1, 9, 9)));
    for (int i = 0; i < 30; i++) {
      node = CombinedNode.within(CombinedNode.anyOf(List.of(node, node)), node);
    }
    assertThat(node.footprint(CANVAS)).isEqualTo(new Region(1, 1, 9, 9));
    Node soft = graph(1).of(use(box(1, 1, 9, 9)));
    for (int i = 0; i < 30; i++) {
      // Each reads another width about the one below: 2³⁰ different regions.
      Node other = new FeatherNode(soft, 0.01 * i, CANVAS);
      soft = CombinedNode.anyOf(List.of(soft, i % 3 == 0 ? new WidenNode(soft, i, CANVAS) : other));
    }
    assertThat(soft.footprint(CANVAS).contains(new Region(1, 1, 9, 9))).isTrue();
    assertThat(Boundless.is(soft)).isTrue();
  }
}
