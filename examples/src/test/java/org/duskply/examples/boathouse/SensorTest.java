package org.duskply.examples.boathouse;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.duskply.engine.colour.ColourSpace;
import org.duskply.engine.colour.TransferCurve;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SensorTest {
  /** ITU-R BT.2020-2, table 4; 0.02 is what the interpolation of the table may add to rounding. */
  @Test
  void codesFollowTheProfilesCurve() {
    TransferCurve exact = ColourSpace.of(Sensor.PROFILE).curve(0);
    for (int i = 0; i <= 200_000; i++) {
      float share = (float) (i / 200_000.0);
      double code = exact.toEncoded(share) * 65535;
      assertThat((double) Sensor.code(share)).as("share %s", share).isCloseTo(code, within(0.52));
    }
  }

  /**
   * Over n reads the mean spreads by σ/√n and the variance by about √(2/n) of itself; four each.
   */
  @ParameterizedTest
  @ValueSource(doubles = {0.001, 0.02, 0.18, 0.7})
  void noiseIsThatOfPhotonsAndReadOut(double light) {
    int n = 40_000;
    double variance = light / Sensor.FULL_WELL + Math.pow(Sensor.READ_NOISE / Sensor.FULL_WELL, 2);
    double sum = 0;
    double squares = 0;
    for (int i = 0; i < n; i++) {
      double off = Sensor.read((float) light, 7, i, i % 3) - light;
      sum += off;
      squares += off * off;
    }
    assertThat(sum / n).isCloseTo(0, within(4 * Math.sqrt(variance / n)));
    assertThat(squares / n / variance).isCloseTo(1, within(4 * Math.sqrt(2.0 / n)));
  }

  @Test
  void clipsWhereTheSensorIsFull() {
    assertThat(Sensor.code(Sensor.read(30f, 1, 2, 0))).isEqualTo(65535);
    assertThat(Sensor.code(Sensor.read(-1f, 1, 2, 0))).isLessThan(200);
  }
}
