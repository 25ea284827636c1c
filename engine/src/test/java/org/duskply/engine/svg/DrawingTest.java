package org.duskply.engine.svg;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.util.List;
import org.duskply.engine.mask.Outline;
import org.duskply.engine.mask.OutlineRaster;
import org.duskply.engine.mask.SvgMask;
import org.duskply.engine.pixel.Region;
import org.duskply.engine.testing.Close;
import org.duskply.recipe.mask.FillRule;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a drawing's elements enclose, by the areas that geometry gives them. */
class DrawingTest {
  private static final int SIDE = 100;
  private static final String HEAD =
      "<svg xmlns='http://www.w3.org/2000/svg' xmlns:xlink='http://www.w3.org/1999/xlink'"
          + " viewBox='0 0 100 100'>";

  /** Chords stay within 1/512 px of an arc and lose two thirds of that: over 190 px at most. */
  private static final double ROUND = 0.25;

  private static Drawing drawing(String inner) {
    return Drawing.read("o.svg", (HEAD + inner + "</svg>").getBytes(StandardCharsets.UTF_8));
  }

  private static List<DrawnShape> shapes(Drawing drawing, String... ids) {
    return drawing.shapes(
        List.of(ids),
        SIDE,
        SIDE,
        (place, fault) -> {
          throw fault;
        });
  }

  private static double area(Drawing drawing, @Nullable FillRule rule, String... ids) {
    Outline outline = SvgMask.outline(shapes(drawing, ids), rule, 1);
    Region canvas = Region.ofSize(SIDE, SIDE);
    float[] samples = new float[SIDE * SIDE];
    OutlineRaster.of(outline).fill(canvas, samples);
    double area = 0;
    for (float v : samples) {
      area += v;
    }
    return area;
  }

  private static double area(String inner, String... ids) {
    return area(drawing(inner), null, ids);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "<path d='M10 10h20v30z'/> | 300",
        "<path d='M10 10h20v30'/> | 300",
        "<polygon points='10,10 30,10 30,40'/> | 300",
        "<polyline points='10 10 30 10 30 40'/> | 300",
        "<rect x='5' y='6' width='7' height='8'/> | 56",
        "<rect width='10%' height='25%'/> | 250",
        "<rect x='5' y='6' width='0.75in' height='36pt'/> | 3456",
        "<rect width='0' height='8'/><rect width='3' height='2'/> | 6",
        "<rect width='-3' height='8'/><rect width='3' height='2'/> | 6",
        "<circle cx='50' cy='50' r='30'/> | 2827.433",
        "<circle cx='50' cy='50' r='0'/><rect width='3' height='2'/> | 6",
        "<ellipse cx='50' cy='50' rx='40' ry='10'/> | 1256.637",
        "<ellipse cx='50' cy='50' rx='20'/> | 1256.637",
        "<ellipse cx='50' cy='50' rx='auto' ry='20'/> | 1256.637",
        // Four corners of radius 5 lack 25·(4 − π) of the rectangle.
        "<rect x='10' y='10' width='40' height='30' rx='5'/> | 1178.540",
        "<rect x='10' y='10' width='40' height='30' ry='5'/> | 1178.540",
        // Radii beyond half the sides make an ellipse.
        "<rect x='10' y='10' width='40' height='30' rx='99' ry='99'/> | 942.478",
        "<rect x='10' y='10' width='40' height='30' rx='99' ry='0'/> | 1200",
      })
  void shapesEncloseTheirArea(String inner, double want) {
    Close.within(inner, area(inner), want, inner.contains("r") ? ROUND : 1e-3);
  }

  @Test
  void groupsAndTransformsNest() {
    String nested =
        "<g transform='translate(10 10)'><g id='a' transform='scale(2)'>"
            + "<rect id='r' width='10' height='5' transform='rotate(90 5 5)'/></g></g>";
    Close.within("area", area(nested), 200, 1e-3);
    DrawnShape shape = shapes(drawing(nested), "r").get(0);
    // (0, 0) turned by 90° about (5, 5) is (10, 0); doubled (20, 0); moved (30, 10).
    Close.check("x", shape.map().x(0, 0), 30, 1e-12);
    Close.check("y", shape.map().y(0, 0), 10, 1e-12);
    assertThat(shapes(drawing(nested), "a")).hasSize(1);
    // A shape that is squashed to a line encloses nothing.
    Close.within("flat", area("<rect width='9' height='9' transform='scale(0 1)'/>"), 0, 0);
  }

  @Test
  void aNestedDrawingHasAViewportOfItsOwn() {
    String nested =
        "<svg x='10' y='20' width='50%' height='40' viewBox='0 0 5 4'><rect width='100%'"
            + " height='1'/></svg>";
    Close.within("area", area(nested), 50 * 10, 1e-3);
    Close.within(
        "no box", area("<svg x='90' width='20'><rect width='50%' height='5'/></svg>"), 50, 1e-3);
  }

  @Test
  void usesRepeatWhatTheyName() {
    String parts =
        "<defs><rect id='pane' width='4' height='5'/><g id='pair'><use href='#pane'/><use"
            + " xlink:href='#pane' x='10'/></g></defs>";
    Close.within("one", area(parts + "<use id='w' href='#pane' x='3' y='4'/>", "w"), 20, 1e-3);
    Close.within("two", area(parts + "<use href='#pair' transform='scale(2)'/>"), 160, 1e-3);
    Close.within("all", area(parts + "<use href='#pair'/><use href='#pair' y='50'/>"), 80, 1e-3);
    String symbol =
        "<symbol id='s' viewBox='0 0 2 2'><rect width='1' height='2'/></symbol>"
            + "<use href='#s' x='10' width='20' height='20'/>";
    Close.within("symbol", area(symbol), 200, 1e-3);
  }

  @Test
  void partsAreNotShownWhereTheyAreKept() {
    String parts =
        "<defs><rect id='pane' width='4' height='5'/></defs><symbol><rect id='s' width='9' height='9'/>"
            + "</symbol><mask><rect width='9' height='9'/></mask><pattern><rect width='9'"
            + " height='9'/></pattern><rect width='2' height='3'/>";
    Close.within("shown", area(parts), 6, 1e-3);
    assertThatThrownBy(() -> area(parts, "pane"))
        .hasMessage(
            "`pane` in o.svg is a part kept in `defs` and not shown there; give the id of the"
                + " `use` that shows it");
    assertThatThrownBy(() -> area(parts, "s")).hasMessageContaining("kept in `symbol`");
  }

  @Test
  void aClipPathIsAnOutlineByItself() {
    String clip =
        "<defs><clipPath id='c'><rect id='r' width='4' height='5'/><path clip-rule='evenodd'"
            + " fill-rule='nonzero' d='M20 0h10v10h-10zM22 2h6v6h-6z'/></clipPath></defs>"
            + "<rect width='2' height='3'/>";
    Close.within("clip", area(clip, "c"), 20 + 64, 1e-3);
    Close.within("in it", area(clip, "r"), 20, 1e-3);
    Close.within("shown", area(clip), 6, 1e-3);
    assertThatThrownBy(
            () ->
                area("<clipPath id='c' clipPathUnits='objectBoundingBox'><rect/></clipPath>", "c"))
        .hasMessageContaining("measured by whatever it clips");
  }

  @Test
  void whatIsHiddenCountsWhereItIsAskedFor() {
    String hidden =
        "<g id='layer' display='none'><rect id='a' width='2' height='3'/><rect id='b'"
            + " style='fill:red; display : none' y='10' width='5' height='3'/></g>"
            + "<g id='g' visibility='hidden'><rect id='c' x='20' width='1' height='7'/><rect"
            + " visibility='visible' x='30' width='1' height='11'/></g>";
    Close.within("all", area(hidden), 11, 1e-3);
    Close.within("layer", area(hidden, "layer"), 6, 1e-3);
    Close.within("b", area(hidden, "b"), 15, 1e-3);
    Close.within("c", area(hidden, "c"), 7, 1e-3);
    Close.within("g", area(hidden, "g"), 18, 1e-3);
    assertThatThrownBy(() -> area("<rect display='none' width='2' height='3'/>"))
        .hasMessage("o.svg shows no shape with an inside.");
  }

  @Test
  void fillRulesAreHandedDownAndCanBeOverruled() {
    String twice = "<g style='fill-rule:evenodd'><path id='p' d='M0 0h10v10h-10zM2 2h6v6h-6z'/>";
    String own = "<path id='q' fill-rule='nonzero' d='M20 0h10v10h-10zM22 2h6v6h-6z'/></g>";
    Drawing drawing = drawing(twice + own);
    Close.within("evenodd", area(drawing, null, "p"), 64, 1e-3);
    Close.within("nonzero", area(drawing, null, "q"), 100, 1e-3);
    Close.within("both", area(drawing, null), 164, 1e-3);
    Close.within("overruled", area(drawing, FillRule.NONZERO), 200, 1e-3);
    Close.within("overruled", area(drawing, FillRule.EVENODD), 128, 1e-3);
  }

  @Test
  void shapesThatTouchLeaveNoSeamAndOverlapsCountOnce() {
    // Opposite directions, a slanted edge in common, and one on top of both.
    String tiles =
        "<polygon points='10,10 52.3,10 41.7,60 10,60'/><polygon points='52.3,10 41.7,60 90,60"
            + " 90,10'/><circle cx='50' cy='35' r='20'/>";
    Outline outline = SvgMask.outline(shapes(drawing(tiles)), null, 1);
    float[] samples = new float[80 * 50];
    OutlineRaster.of(outline).fill(new Region(10, 10, 90, 60), samples);
    assertThat(samples).containsOnly(1f);
    Close.within("area", area(tiles), 4000, 1e-3);
  }

  @Test
  void elementsWithoutAnInsideArePassedOver() {
    String all =
        "<title>Boathouse</title><line x2='9' y2='9'/><text>door</text><image href='x.png'/>"
            + "<foreignObject><p xmlns='http://www.w3.org/1999/xhtml'/></foreignObject>"
            + "<e:namedview xmlns:e='urn:editor'><e:path d='oops'/></e:namedview>"
            + "<a><switch><rect width='2' height='3'/></switch></a>";
    Close.within("all", area(all), 6, 1e-3);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "<line id='x' x2='9'/> | `x` in o.svg is a `line`, which has no inside.",
        "<text id='x'>a</text> | `x` in o.svg is a `text`, which has no inside.",
        "<g id='x'><line/></g> | `x` in o.svg holds no shape with an inside.",
        "<path id='x'/> | `x` in o.svg draws nothing.",
        "<rect id='door-1' width='1' height='1'/> | o.svg has no element with the id `x`.",
        "<rect id='xy' width='1' height='1'/> | o.svg has no element with the id `x`; did you mean `xy`?",
        "<g id='x'/><g id='x'/> | o.svg has more than one element with the id `x`; ids must differ.",
        "<path id='x' d='M0 0L5'/> | the outline of `x` in o.svg cannot be followed at character 7: Expected y, found the end of the path.",
        "<polygon id='x' points='1,2 3'/> | the outline of `x` in o.svg cannot be followed at character 6: Expected y, found the end of the path.",
        "<polygon id='x' points='1,2L3,4'/> | the `points` of `x` in o.svg cannot be read: \"1,2L3,4\"",
        "<rect id='x' width='1em' height='1'/> | the `width` of `x` in o.svg cannot be read: \"1em\"",
        "<rect id='x' width='1' height='1' transform='turn(3)'/> | the `transform` of `x` in o.svg cannot be read: \"turn(3)\"",
        "<svg id='x' viewBox='0 0 0 1'><rect/></svg> | the `viewBox` of `x` in o.svg cannot be read: \"0 0 0 1\"",
        "<use id='x' href='#y'/> | `x` in o.svg repeats \"#y\", which is not in this file",
        "<use id='x' href='other.svg#y'/> | `x` in o.svg repeats \"other.svg#y\", which is not in this file",
        "<use id='x'/> | `x` in o.svg repeats \"\", which is not in this file",
        "<rect id='x' style='transform:rotate(3deg)' width='1' height='1'/> | `x` in o.svg is moved by its style, which is not read; save the drawing with `transform` attributes",
      })
  void whatCannotBeHadIsSaid(String inner, String sentence) {
    assertThatThrownBy(() -> area(inner, "x"))
        .isInstanceOf(DrawingException.class)
        .hasMessage(sentence);
  }

  @Test
  void theDrawingIsLaidOverTheGrid() {
    // No viewBox: width and height take its place; none of these: a unit is a pixel.
    for (String size : List.of("viewBox='0 0 50 50'", "width='50' height='50px'")) {
      Drawing drawing = read("<svg " + size + "><rect width='10' height='10'/></svg>");
      Close.within(size, area(drawing, null), 400, 1e-3);
      assertThat(drawing.misfit(100, 100)).isNull();
      assertThat(drawing.misfit(100, 101)).isNotNull();
    }
    Drawing plain = read("<svg width='100%'><rect width='10' height='10'/></svg>");
    Close.within("plain", area(plain, null), 100, 1e-3);
    assertThat(plain.misfit(100, 7)).isNull();
    Drawing wide = read("<svg viewBox='0 0 300 200'><rect width='300' height='200'/></svg>");
    assertThat(wide.misfit(600, 400)).isNull();
    assertThat(wide.misfit(600, 400.9)).isNull();
    assertThat(wide.misfit(100, 100))
        .isEqualTo(
            "o.svg is drawn on 300 × 200 (1.500 : 1) and the picture is 100 × 100 (1.000 : 1)");
    assertThat(wide.saysHowItFits()).isFalse();
    Close.within("meet", area(wide, null), 100 * 200 / 3.0, 1e-2);
    Drawing stretched =
        read(
            "<svg viewBox='0 0 300 200' preserveAspectRatio='none'><rect width='300' height='200'/></svg>");
    assertThat(stretched.saysHowItFits()).isTrue();
    Close.within("none", area(stretched, null), 10_000, 1e-2);
  }

  @Test
  void aSheetOfStylesThatShapesOutlinesIsNoticed() {
    assertThat(drawing("<style>.a{fill-rule:evenodd}</style>").hasShapingSheet()).isTrue();
    assertThat(drawing("<style><![CDATA[.a{display : none}]]></style>").hasShapingSheet()).isTrue();
    assertThat(drawing("<style>.a{fill:#fff;stroke-width:2}</style>").hasShapingSheet()).isFalse();
  }

  private static Drawing read(String text) {
    return Drawing.read("o.svg", text.getBytes(StandardCharsets.UTF_8));
  }
}
