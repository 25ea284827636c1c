package org.duskply.engine.measure;

import static org.assertj.core.api.Assertions.assertThat;

import org.assertj.core.data.Offset;
import org.duskply.engine.frame.Exif;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Camera settings against each other. The formulas are APEX (ASA PH2.5-1960; EXIF 2.3, annex C) and
 * ISO 2720:1974: {@code Ev = log2(N²/t)}, {@code Sv = log2(S/3.125)}; the numbers were computed
 * from them outside this project.
 */
class CameraExposureTest {
  private static final Offset<Double> SIX_DECIMALS = Offset.offset(5.1e-7);

  /** EV100 = Ev − log2(S/100) of well-known settings: how much darker than f/1, 1 s, ISO 100. */
  @ParameterizedTest
  @CsvSource({
    "1, 1, 100, 0",
    "8, 0.016666666666666666, 100, 11.906891",
    "16, 0.008, 100, 14.965784",
    "8, 4, 100, 4",
    "5.6, 0.25, 400, 4.970854",
    "11, 0.5, 200, 6.918863",
    "2.8, 30, 1600, -5.936037"
  })
  void exposureValues(double fNumber, double seconds, double iso, double ev100) {
    CameraExposure one = new CameraExposure(1, 1, 100);
    assertThat(one.stopsAbove(new CameraExposure(seconds, fNumber, iso)))
        .isCloseTo(ev100, SIX_DECIMALS);
  }

  @ParameterizedTest
  @CsvSource({
    "8, 60, 100, 8, 15, 100, 2",
    "8, 60, 100, 5.6, 60, 100, 1.029146",
    "11, 0.5, 100, 11, 4, 100, -3",
    "8, 1, 100, 8, 2, 400, 1",
    "8, 0.25, 100, 11, 125, 200, -8.884648",
    "8, 125, 100, 8, 128, 100, -0.034216"
  })
  void ratios(
      double n1, double perSecond1, double s1, double n2, double perSecond2, double s2, double r) {
    CameraExposure first = new CameraExposure(1 / perSecond1, n1, s1);
    CameraExposure second = new CameraExposure(1 / perSecond2, n2, s2);
    assertThat(second.stopsAbove(first)).isCloseTo(r, SIX_DECIMALS);
    assertThat(first.stopsAbove(second)).isCloseTo(-r, SIX_DECIMALS);
  }

  @Test
  void whatIsMissingIsNamed() {
    assertThat(CameraExposure.of(Exif.NONE)).isNull();
    assertThat(CameraExposure.missing(Exif.NONE))
        .containsExactly("shutter time", "f-number", "ISO");
    Exif noTime = new Exif(null, null, 8.0, 100, null);
    assertThat(CameraExposure.of(noTime)).isNull();
    assertThat(CameraExposure.missing(noTime)).containsExactly("shutter time");
    assertThat(CameraExposure.of(new Exif(null, 0.5, 8.0, 100, null)))
        .isEqualTo(new CameraExposure(0.5, 8, 100));
  }

  @Test
  void measuredNumbersHaveSixDigits() {
    assertThat(SixDigits.round(1.0291463)).isEqualTo(1.02915);
    assertThat(SixDigits.round(-8.8846479)).isEqualTo(-8.88465);
    assertThat(SixDigits.round(0.000123456789)).isEqualTo(0.000123457);
    assertThat(SixDigits.round(2)).isEqualTo(2);
    assertThat(Double.doubleToLongBits(SixDigits.round(-0.0))).isZero();
    // What is printed and read again is the same number.
    double rounded = SixDigits.round(StrictMath.sqrt(2));
    assertThat(Double.parseDouble(Double.toString(rounded))).isEqualTo(rounded);
  }
}
