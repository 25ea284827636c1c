package org.duskply.engine.svg;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.geom.AffineTransform;
import java.io.StringReader;
import java.util.Locale;
import java.util.Objects;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.apache.batik.parser.AWTTransformProducer;
import org.duskply.engine.pixel.Affine;
import org.duskply.engine.testing.Close;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Transform lists: the standard's matrices, and another parser. */
class SvgTransformTest {
  private static Affine parsed(String text) {
    return Objects.requireNonNull(SvgTransform.parse(text), text);
  }

  private static void same(String what, Affine got, double... want) {
    double[] all = {got.a(), got.b(), got.c(), got.d(), got.e(), got.f()};
    for (int i = 0; i < 6; i++) {
      Close.check(what + " [" + i + "]", all[i], want[i], 1e-12);
    }
  }

  /** CSS Transforms 1, "Mathematical Description of Transform Functions". */
  @Test
  void eachFunctionHasItsMatrix() {
    double half = Math.sqrt(0.5);
    double third = Math.sqrt(3);
    same("matrix", parsed("matrix(1 2 3 4 5 6)"), 1, 2, 3, 4, 5, 6);
    same("translate", parsed("translate(7,-8)"), 1, 0, 0, 1, 7, -8);
    same("translate x", parsed("translate(7)"), 1, 0, 0, 1, 7, 0);
    same("scale", parsed("scale(2 3)"), 2, 0, 0, 3, 0, 0);
    same("scale both", parsed("scale(-.5)"), -0.5, 0, 0, -0.5, 0, 0);
    same("rotate", parsed("rotate(45)"), half, half, -half, half, 0, 0);
    same("skewX", parsed("skewX(60)"), 1, 0, third, 1, 0, 0);
    same("skewY", parsed("skewY(-60)"), 1, -third, 0, 1, 0, 0);
    same("none", parsed("none"), 1, 0, 0, 1, 0, 0);
    same("nothing", parsed(" "), 1, 0, 0, 1, 0, 0);
  }

  /** rotate(a, x, y) is translate(x, y) rotate(a) translate(−x, −y) by its definition. */
  @Test
  void turnsAboutAPoint() {
    Affine turn = parsed("rotate(90 30,40)");
    Close.check("x", turn.x(30, 30), 40, 1e-12);
    Close.check("y", turn.y(30, 30), 40, 1e-12);
    Affine long_ = parsed("translate(30 40) rotate(90) translate(-30 -40)");
    same("long", turn, long_.a(), long_.b(), long_.c(), long_.d(), long_.e(), long_.f());
  }

  /** SVG 1.1, 7.4, the picture of nested transformations (figures from memory, two decimals). */
  @Test
  void theInnerOneIsDoneFirst() {
    Affine ctm = parsed("translate(50,90),rotate(-45) translate(130,160)");
    double half = Math.sqrt(0.5);
    same("ctm", ctm, half, -half, half, half, 50 + half * 290, 90 + half * 30);
    Close.within("e", ctm.e(), 255.03, 0.05);
    Close.within("f", ctm.f(), 111.21, 0.05);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "turn(3)", "rotate(3", "rotate 3", "rotate(a)", "rotate(1,2)", "scale(1,2,3)", "scale()",
        "matrix(1 2 3 4 5)", "translate(1px)", "rotate(3)x", "skewX(1 2)", "rotate(3,)", "(",
            "rotate((3))"
      })
  void whatIsNoListIsRefused(String text) {
    assertThat(SvgTransform.parse(text)).isNull();
  }

  @Test
  void anEndlessListIsRefused() {
    assertThat(SvgTransform.parse("scale(1)".repeat(SvgLimits.TRANSFORMS))).isNotNull();
    assertThat(SvgTransform.parse("scale(1)".repeat(SvgLimits.TRANSFORMS + 1))).isNull();
  }

  @Property(seed = "71", tries = 200)
  void agreesWithAnotherParser(@ForAll @IntRange(max = 1_000_000) int seed) throws Exception {
    Random random = new Random(seed);
    StringBuilder text = new StringBuilder();
    for (int i = 1 + random.nextInt(4); i > 0; i--) {
      int kind = random.nextInt(6);
      String name = new String[] {"matrix", "translate", "scale", "rotate", "skewX", "skewY"}[kind];
      int[][] counts = {{6, 6}, {1, 2}, {1, 2}, {1, 3}, {1, 1}, {1, 1}};
      int count = counts[kind][random.nextInt(2)];
      text.append(name).append(random.nextBoolean() ? "(" : " ( ");
      for (int n = 0; n < count; n++) {
        text.append(n == 0 ? "" : random.nextBoolean() ? " , " : " ")
            .append(String.format(Locale.ROOT, "%.3f", random.nextDouble() * 160 - 80));
      }
      text.append(random.nextBoolean() ? ") " : "),");
    }
    String list = text.substring(0, text.length() - 1);
    AffineTransform want = AWTTransformProducer.createAffineTransform(new StringReader(list));
    Affine got = parsed(list);
    double[] matrix = new double[6];
    want.getMatrix(matrix);
    double[] all = {got.a(), got.b(), got.c(), got.d(), got.e(), got.f()};
    for (int i = 0; i < 6; i++) {
      // Both multiply in double; batik turns angles as float.
      Close.check(list + " [" + i + "]", all[i], matrix[i], 1e-4);
    }
  }

  @ParameterizedTest
  @CsvSource({
    "12,12",
    "12px,12",
    "1in,96",
    "2.54cm,96",
    "25.4mm,96",
    "101.6q,96",
    "72pt,96",
    "6pc,96",
    "50%,100",
    "-.5,-0.5",
    "1e2,100",
    " 3 ,3"
  })
  void lengthsAreUserUnits(String text, double want) {
    // CSS Values and Units 3: one inch is 96 px, 2.54 cm, 72 pt or 6 pc.
    Close.check(text, Objects.requireNonNull(SvgLength.parse(text, 200)), want, 1e-12);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"", "px", "1em", "2rem", "1vw", "1..2", "calc(1px)", "1 2", "auto", "--1"})
  void otherLengthsAreRefused(String text) {
    assertThat(SvgLength.parse(text, 200)).isNull();
  }

  /**
   * SVG 1.1, 7.7: the two pictures of one viewBox (from memory), then SVG 2's rules of alignment.
   */
  @Test
  void aViewBoxIsFittedIn() {
    ViewBox box = Objects.requireNonNull(ViewBox.parse("0 0 1500 1000"));
    same("same shape", box.into(300, 200, null), 0.2, 0, 0, 0.2, 0, 0);
    same("none", box.into(150, 200, "none"), 0.1, 0, 0, 0.2, 0, 0);
    same("meet", box.into(150, 200, null), 0.1, 0, 0, 0.1, 0, 50);
    same("top", box.into(150, 200, "xMidYMin"), 0.1, 0, 0, 0.1, 0, 0);
    same("bottom", box.into(150, 200, "xMinYMax meet"), 0.1, 0, 0, 0.1, 0, 100);
    same("slice", box.into(150, 200, "xMidYMid slice"), 0.2, 0, 0, 0.2, -75, 0);
    same("right", box.into(150, 200, "xMaxYMid slice"), 0.2, 0, 0, 0.2, -150, 0);
    ViewBox off = Objects.requireNonNull(ViewBox.parse("-10,20 5 10"));
    same("origin", off.into(50, 100, null), 10, 0, 0, 10, 100, -200);
    assertThat(ViewBox.parse("0 0 0 5")).isNull();
    assertThat(ViewBox.parse("0 0 5")).isNull();
    assertThat(ViewBox.parse("0 0 5 x")).isNull();
  }
}
