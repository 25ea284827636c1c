package org.duskply.recipe.mask;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Path data against the grammar of SVG 2, and the sentence for each way to depart from it. */
class PathDataTest {
  /**
   * Expected values: the library svgpath 2.6.0 (absolute forms, smooth curves written out), which
   * read these paths outside this project; horizontal and vertical lines as lines.
   */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          M10 20 30 40 50 60         | M 10 20 L 30 40 L 50 60
          m10 20 30 40 5-5.5.5.5     | M 10 20 L 40 60 L 45 54.5 L 45.5 55
          M0,0l10-5.5.5.5            | M 0 0 L 10 -5.5 L 10.5 -5
          M0 0C1 2 3 4 5 6S8 9 10 10 | M 0 0 C 1 2 3 4 5 6 C 7 8 8 9 10 10
          M0 0Q5 10 10 0T20 0        | M 0 0 Q 5 10 10 0 Q 15 -10 20 0
          M5 5S10 10 20 0            | M 5 5 C 5 5 10 10 20 0
          M0 0a1 1 0 01.5.5          | M 0 0 A 1 1 0 0 1 0.5 0.5
          M1e1-2.5E-1L.5.5           | M 10 -0.25 L 0.5 0.5
          M0 0H10V10h-10z m5 5h1     | M 0 0 L 10 0 L 10 10 L 0 10 Z M 5 5 L 6 5
          M0 0h10zl5 5               | M 0 0 L 10 0 Z L 5 5
          """)
  void readsWhatTheGrammarSays(String data, String expected) {
    assertThat(written(PathData.parse(data))).isEqualTo(expected);
  }

  /** SVG 2, "The cubic / quadratic Bézier curve commands": when S and T reflect. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          M0 0Q5 10 10 0L20 0T30 0        | M 0 0 Q 5 10 10 0 L 20 0 Q 20 0 30 0
          M0 0C1 2 3 4 5 6T9 9            | M 0 0 C 1 2 3 4 5 6 Q 5 6 9 9
          M0 0Q1 2 5 6S8 9 10 10          | M 0 0 Q 1 2 5 6 C 5 6 8 9 10 10
          M0 0q5 10 10 0t10 0 10 0        | M 0 0 Q 5 10 10 0 Q 15 -10 20 0 Q 25 10 30 0
          M10 10c0 5 5 5 5 0s5-5 5 0      | M 10 10 C 10 15 15 15 15 10 C 15 5 20 5 20 10
          m1 1m1 1 1 1                    | M 1 1 M 2 2 L 3 3
          M1 1 2 2zm3 0 1 1               | M 1 1 L 2 2 Z M 4 1 L 5 2
          M0 0v5 5h3-1                    | M 0 0 L 0 5 L 0 10 L 3 10 L 2 10
          M0 0A-3 4 30 1 0 6 6,3,4,5 0,1,7,8 | M 0 0 A 3 4 30 1 0 6 6 A 3 4 5 0 1 7 8
          M0 0a1 1 0 1110 10              | M 0 0 A 1 1 0 1 1 10 10
          M 5. +2                         | M 5 2
          """)
  void followsThePenAndTheLastControlPoint(String data, String expected) {
    assertThat(written(PathData.parse(data))).isEqualTo(expected);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          M0 0 L 10 10 L 20 | 17 | Expected y, found the end of the path.
          M0 0C1 2 3 4      | 12 | Expected x, found the end of the path.
          X0 0              | 0  | Expected M and a position at the start of a path, found 'X'.
          ''                | 0  | Expected M and a position at the start of a path, found the end of the path.
          '  '              | 2  | Expected M and a position at the start of a path, found the end of the path.
          L 1 1             | 0  | Expected M and a position at the start of a path, found 'L'.
          M 1 1 X           | 6  | Expected a path command (M L H V C S Q T A Z), found 'X'.
          M 1 1 Z 4         | 8  | Expected a path command (M L H V C S Q T A Z), found '4'.
          M 1 1,            | 6  | Expected a number after the comma, found the end of the path.
          M 1 1, L 2 2      | 7  | Expected a number after the comma, found 'L'.
          M ,1 1            | 2  | Expected x, found ','.
          M 1,,1            | 4  | Expected y, found ','.
          M 1 .             | 4  | Expected y, found '.'.
          M 1 -             | 4  | Expected y, found '-'.
          M 0 0 A 1 1 0 2 1 5 5 | 14 | Expected the large-arc flag (0 or 1), found '2'.
          M 0 0 A 1 1 0 1   | 15 | Expected the sweep flag (0 or 1), found the end of the path.
          M 1 1em           | 5  | Expected a path command (M L H V C S Q T A Z), found 'e'.
          M 1 1e400         | 4  | A path may not reach farther than 1,000,000 pixels from the grid.
          M 1000001 0       | 2  | A path may not reach farther than 1,000,000 pixels from the grid.
          M 900000 0 l 900000 0 | 21 | A path may not reach farther than 1,000,000 pixels from the grid.
          M 1 1 L 2 ٣       | 10 | Expected y, found '٣'.
          """)
  void saysWhatWasDueAndWhere(String data, int index, String sentence) {
    PathSyntaxException thrown =
        catchThrowableOfType(PathSyntaxException.class, () -> PathData.parse(data));
    assertThat(thrown).hasMessage(sentence);
    assertThat(thrown.index()).isEqualTo(index);
  }

  @Test
  void hasAsManySegmentsAsTheLimitAndNoMore() {
    String most = "M0 0" + "h1".repeat(PathData.MAX_SEGMENTS - 1);
    assertThat(PathData.parse(most)).hasSize(PathData.MAX_SEGMENTS);
    PathSyntaxException thrown =
        catchThrowableOfType(PathSyntaxException.class, () -> PathData.parse(most + "z"));
    assertThat(thrown).hasMessageContaining("at most 100,000 segments");
  }

  @Provide
  Arbitrary<String> scribbles() {
    return Arbitraries.strings()
        .withChars("MmZzLlHhVvCcSsQqTtAa0123456789+-.,eE \n")
        .ofMaxLength(40);
  }

  @Property(seed = "21", tries = 5_000)
  void scribblesAreReadOrRefusedAtAPlaceInThem(@ForAll("scribbles") String scribble) {
    String data = "M1 2" + scribble;
    try {
      assertThat(PathData.parse(data).get(0)).isInstanceOf(PathSegment.Move.class);
    } catch (PathSyntaxException e) {
      assertThat(e.index()).isBetween(1, data.length());
    }
  }

  @Property(seed = "22", tries = 2_000)
  void whatIsWrittenOutReadsBackTheSame(@ForAll("scribbles") String scribble) {
    List<PathSegment> once;
    try {
      once = PathData.parse("M1 2" + scribble);
    } catch (PathSyntaxException e) {
      return;
    }
    assertThat(PathData.parse(written(once))).isEqualTo(once);
  }

  private static String written(List<PathSegment> segments) {
    return segments.stream().map(PathDataTest::written).collect(Collectors.joining(" "));
  }

  private static String written(PathSegment segment) {
    if (segment instanceof PathSegment.Move m) {
      return "M " + written(m.to());
    } else if (segment instanceof PathSegment.Line l) {
      return "L " + written(l.to());
    } else if (segment instanceof PathSegment.Quadratic q) {
      return "Q " + written(q.control()) + " " + written(q.to());
    } else if (segment instanceof PathSegment.Cubic c) {
      return "C " + written(c.first()) + " " + written(c.second()) + " " + written(c.to());
    } else if (segment instanceof PathSegment.Arc a) {
      String radii = plain(a.across()) + " " + plain(a.down()) + " " + plain(a.turn());
      return String.format(
          Locale.ROOT,
          "A %s %d %d %s",
          radii,
          a.large() ? 1 : 0,
          a.clockwise() ? 1 : 0,
          written(a.to()));
    }
    return "Z";
  }

  private static String written(Point p) {
    return plain(p.x()) + " " + plain(p.y());
  }

  private static String plain(double v) {
    return v == Math.rint(v) ? String.valueOf((long) v) : String.valueOf(v);
  }
}
