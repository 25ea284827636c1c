package org.duskply.engine.measure;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.function.DoubleUnaryOperator;
import org.assertj.core.data.Offset;
import org.duskply.engine.colour.ColourSpace;
import org.duskply.engine.frame.Corpus;
import org.duskply.engine.frame.FrameSource;
import org.duskply.engine.frame.FrameSources;
import org.duskply.engine.frame.Lineariser;
import org.duskply.engine.frame.ReadCounters;
import org.duskply.engine.plan.Stop;
import org.duskply.engine.testing.TiffFile;
import org.duskply.recipe.NamedSpace;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Whether two frames were developed alike, told from their pixels. */
class DevelopmentTest {
  private static final ColourSpace SRGB = ColourSpace.of(NamedSpace.SRGB);
  private static final DoubleUnaryOperator PLAIN = Scene.curve(0);
  private static final double ALLOWED = 0.1;

  @TempDir Path folder;

  private Lattice lattice(TiffFile file) throws Exception {
    Path path = Files.write(folder.resolve("frame.tif"), file.bytes());
    return lattice(FrameSources.open(path), 24);
  }

  private static Lattice lattice(FrameSource source, int blocks) {
    return Lattice.read(
        source, Lineariser.prepare(source.info(), SRGB, SRGB, 0), blocks, Stop.NEVER);
  }

  private Development compare(int bits, double stops, DoubleUnaryOperator look, Scene.Flash flash)
      throws Exception {
    Lattice a = lattice(Scene.frame(1, bits, 0, look, Scene.Flash.NONE));
    Lattice f = lattice(Scene.frame(2, bits, stops, look, flash));
    Development found = Development.compare(a, f, SRGB.luminance(), bits == 8 ? 0.01 : 0.002);
    assertThat(found).isNotNull();
    return found;
  }

  @ParameterizedTest
  @CsvSource({"16, -1", "16, -2", "16, -3", "16, 1.5", "16, 0", "8, -1", "8, -2", "8, 1.5"})
  void framesWithoutACurveHaveOneRatio(int bits, double stops) throws Exception {
    Development found = compare(bits, stops, PLAIN, Scene.Flash.NONE);
    // A median of 1500 and more places with noise up to ±1/8 stop.
    assertThat(found.stops()).isCloseTo(stops, Offset.offset(0.02));
    assertThat(found.share()).isGreaterThan(0.8);
    assertThat(found.classes()).hasSizeGreaterThanOrEqualTo(4);
    assertThat(found.trend(ALLOWED)).isNull();
  }

  @ParameterizedTest
  @CsvSource({"16, -1, 0.5", "16, -2, 0.2", "16, -2, 0.5", "16, 1.5, 0.5", "16, -2, 1"})
  void aCurveMakesTheRatioChangeWithBrightness(int bits, double stops, double strength)
      throws Exception {
    Development found = compare(bits, stops, Scene.curve(strength), Scene.Flash.NONE);
    Development.Trend trend = found.trend(ALLOWED);
    assertThat(trend).isNotNull();
    // What the curve does to the light of both classes, by its own formula.
    double dark = expected(trend.dark(), stops, Scene.curve(strength));
    double bright = expected(trend.bright(), stops, Scene.curve(strength));
    assertThat(trend.dark().stops()).isCloseTo(dark, Offset.offset(0.06));
    assertThat(trend.bright().stops()).isCloseTo(bright, Offset.offset(0.06));
  }

  /**
   * The ratio in stops of two places, one exposed by {@code stops} more than the other, whose mean
   * developed brightness is that of the class, by bisection.
   */
  private static double expected(
      Development.Brightness tone, double stops, DoubleUnaryOperator look) {
    double low = -14;
    double high = 0;
    double ratio = 0;
    for (int i = 0; i < 60; i++) {
      double middle = (low + high) / 2;
      double a = developed(middle - stops / 2, look);
      double f = developed(middle + stops / 2, look);
      ratio = f - a;
      if ((a + f) / 2 < tone.middle()) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return ratio;
  }

  private static double developed(double log2, DoubleUnaryOperator look) {
    double encoded = SRGB.curve(0).toEncoded(Math.min(1, StrictMath.pow(2, log2)));
    double light = SRGB.curve(0).toLinear(look.applyAsDouble(encoded));
    return StrictMath.log(light) / StrictMath.log(2);
  }

  @Test
  void aFlashThatLightsHalfTheViewIsNoCurve() throws Exception {
    // From the left edge to the middle, falling off as a flash does; two stops less of the ambient.
    Scene.Flash flash = (i, j) -> i >= 30 ? 0 : 40.0 / ((i + 8) * (i + 8));
    Development found = compare(16, -2, PLAIN, flash);
    assertThat(found.stops()).isCloseTo(-2, Offset.offset(0.02));
    assertThat(found.trend(ALLOWED)).isNull();
  }

  @Test
  void lampsThatStayWhileTheSkyFadesAreNoCurve() throws Exception {
    // The brighter third is lamplight, which the other frame has as well; the rest is half a stop
    // darker: two ratios with a step between them.
    Lattice a = lattice(Scene.frame(1, 16, 0, PLAIN, Scene.Flash.NONE));
    Lattice f = lattice(Scene.frame(2, 16, 0, PLAIN, Scene.Flash.NONE));
    for (int i = 0; i < f.points(); i++) {
      for (int p = 0; p < 3; p++) {
        f.plane(p)[i] *= a.plane(1)[i] > 0.1f ? 1 : 0.7071f;
      }
    }
    Development found = Development.compare(a, f, SRGB.luminance(), 0.002);
    assertThat(found).isNotNull();
    assertThat(found.classes().get(0).stops()).isCloseTo(-0.5, Offset.offset(0.06));
    assertThat(found.trend(ALLOWED)).isNull();
  }

  @Test
  void whereNothingIsSoundNothingIsSaid() throws Exception {
    Lattice black = lattice(new TiffFile(40, 30, 3, 16, (x, y, c) -> 0));
    Lattice white = lattice(new TiffFile(40, 30, 3, 16, (x, y, c) -> 65535));
    Lattice grey = lattice(new TiffFile(40, 30, 3, 16, (x, y, c) -> 30000));
    assertThat(Development.compare(black, grey, SRGB.luminance(), 0.002)).isNull();
    assertThat(Development.compare(grey, white, SRGB.luminance(), 0.002)).isNull();
    Development same = Development.compare(grey, grey, SRGB.luminance(), 0.002);
    assertThat(same).isNotNull();
    assertThat(same.share()).isEqualTo(1);
    assertThat(same.trend(ALLOWED)).isNull();
  }

  @Test
  void theLatticeIsEveryEighthPixelOfEveryEighthRow() throws Exception {
    TiffFile file = new TiffFile(21, 20, 3, 16, (x, y, c) -> 100 * x + 3000 * y + c).strips(3);
    Lattice lattice = lattice(file);
    assertThat(lattice.points()).isEqualTo(9);
    for (int j = 0; j < 3; j++) {
      for (int i = 0; i < 3; i++) {
        double code = (800 * i + 24_000 * j + 1) / 65535.0;
        assertThat(lattice.plane(1)[3 * j + i]).isEqualTo((float) SRGB.curve(1).toLinear(code));
      }
    }
  }

  @Test
  void pointsThatSayNothingAreNotSound() throws Exception {
    // 0.995 of 65535 is 65207.3.
    int[] codes = {65207, 65208, 0, 40000};
    Lattice lattice =
        lattice(new TiffFile(32, 1, 3, 16, (x, y, c) -> c == 2 ? codes[x / 8] : 20_000));
    assertThat(new boolean[] {lattice.sound(0), lattice.sound(1), lattice.sound(2)})
        .containsExactly(true, false, true);
    Lattice covered =
        lattice(new TiffFile(32, 1, 4, 8, (x, y, c) -> c == 3 ? 255 - x / 8 : 90).shorts(338, 2));
    assertThat(covered.sound(0)).isTrue();
    assertThat(covered.sound(1)).isFalse();
  }

  @Test
  void ofAHighPictureOnlySomeStripsAreInflated() throws Exception {
    // 1600 rows are 25 blocks of 64; at most 5 of them: every fifth. Strips of 16 rows.
    assertThat(Lattice.rows(1600, 5)).hasSize(40).startsWith(0, 8).contains(320, 1336);
    assertThat(Lattice.rows(1600, 25)).hasSize(200);
    assertThat(Lattice.rows(1, 5)).containsExactly(0);
    byte[] bytes = new TiffFile(8, 1600, 3, 16, (x, y, c) -> y).compression(8).strips(16).bytes();
    Path path = Files.write(folder.resolve("high.tif"), bytes);
    ReadCounters counters = new ReadCounters();
    FrameSource source = FrameSources.open(path, counters);
    Lattice lattice = lattice(source, 5);
    assertThat(lattice.points()).isEqualTo(40);
    assertThat(counters.units()).isEqualTo(5 * 64 / source.unit(0).height());
  }

  /** A bracket of a real interior, exposed by arithmetic from one measured picture (CC0). */
  @Test
  void aBracketOfTheCorpusIsOneRatio() {
    Path bracket = Corpus.file("scenes/derived_bracket");
    int[] stops = {0, -2, -5};
    Lattice[] frames = new Lattice[3];
    for (int i = 0; i < 3; i++) {
      String name = "apartment_ev" + (stops[i] == 0 ? "0" : stops[i]) + ".tif";
      frames[i] = lattice(FrameSources.open(bracket.resolve(name)), 24);
    }
    for (int i = 0; i < 3; i++) {
      for (int j = i + 1; j < 3; j++) {
        Development found = Development.compare(frames[i], frames[j], SRGB.luminance(), 0.002);
        assertThat(found).isNotNull();
        assertThat(found.stops()).isCloseTo(stops[j] - stops[i], Offset.offset(0.002));
        assertThat(found.trend(ALLOWED)).isNull();
      }
    }
  }
}
