package org.duskply.examples.boathouse;

import static org.assertj.core.api.Assertions.assertThat;

import org.duskply.engine.colour.ColourSpace;
import org.duskply.engine.colour.TransferCurve;
import org.duskply.examples.trace.Noise;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;

/**
 * Light adds: the evening's base plus what each pop adds over the same evening without the flash is
 * the picture that all flashes at once would have made. In linear light this holds within the noise
 * of the 29 frames that enter; done on encoded values it does not come near.
 *
 * <p>Errors are counted in standard deviations of the noise that {@link Sensor} documents, summed
 * over those frames, so a perfect recombination has a root mean square of 1.
 */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class LightAddsTest {
  private static final int WIDTH = 180;
  private static final int HEIGHT = 120;

  /** Below so much light the sensor's floor at 0 cuts the read-out noise (five deviations). */
  private static final double DARK = 5 * Sensor.READ_NOISE / Sensor.FULL_WELL;

  /** Above it some frame may be clipped. */
  private static final double BRIGHT = 0.95;

  private final TransferCurve curve = ColourSpace.of(Sensor.PROFILE).curve(0);
  private Buffers buffers = new Buffers(0, 0, 1, 1);

  @BeforeAll
  void render() {
    buffers = BoathouseScene.empty().render(WIDTH, HEIGHT, 2);
  }

  @Test
  void inLinearLightWithinTheNoise() {
    Outcome linear = recombine(true);
    // The mean of n squared unit deviates spreads by √(2/n); four of them, plus 0.02 for what is
    // not
    // a bell: the noise has no tails, and 16-bit codes add a variance of less than 1e-4 of it.
    double bound = 4 * Math.sqrt(2.0 / linear.count) + 0.02;
    assertThat(linear.count).as("samples that no frame clips").isGreaterThan(5_000);
    assertThat(linear.meanSquare).as("mean square error, linear").isBetween(1 - bound, 1 + bound);
  }

  @Test
  void onEncodedValuesFarOutsideTheNoise() {
    Outcome encoded = recombine(false);
    // Measured: 17.9 deviations, where linear light gives 1.001. The bound asks for an order of
    // magnitude over the noise, which no chance closes.
    assertThat(Math.sqrt(encoded.meanSquare)).as("error, encoded").isGreaterThan(10);
  }

  private record Outcome(int count, double meanSquare) {}

  private Outcome recombine(boolean linear) {
    Shot dusk = Evening.shots().get(2);
    float[] truth = dusk.weights();
    for (Shot shot : Evening.shots()) {
      if (shot.flash() != Shot.NO_FLASH) {
        truth[Lights.FLASH + shot.flash()] = shot.weights()[Lights.FLASH + shot.flash()];
      }
    }
    int count = 0;
    double squares = 0;
    for (int sample = 0; sample < 3 * WIDTH * HEIGHT; sample++) {
      double light = Sensor.light(truth, buffers, sample);
      if (light > BRIGHT || darkest(sample) < DARK) {
        continue;
      }
      double[] sum = {0, 0};
      take(dusk, dusk.weights(), 0, sample, linear, 1, sum);
      for (Shot shot : Evening.shots()) {
        if (shot.flash() != Shot.NO_FLASH) {
          take(shot, shot.weights(), 0, sample, linear, 1, sum);
          take(shot, ambient(shot), 100, sample, linear, -1, sum);
        }
      }
      double result = linear ? sum[0] : curve.toLinear(Math.max(0, sum[0]));
      squares += (result - light) * (result - light) / sum[1];
      count++;
    }
    return new Outcome(count, squares / count);
  }

  /** Adds a frame's sample as written, times a sign, and the variance of its noise. */
  private void take(
      Shot shot, float[] weights, int other, int sample, boolean linear, int sign, double[] sum) {
    float light = Sensor.light(weights, buffers, sample);
    int number = shot.number() + other;
    float read = Sensor.read(light, number, Noise.hash(sample, 5, 6), sample % 3);
    double encoded = Sensor.code(read) / 65535.0;
    sum[0] += sign * (linear ? curve.toLinear(encoded) : encoded);
    double readOut = Sensor.READ_NOISE / Sensor.FULL_WELL;
    sum[1] += light / Sensor.FULL_WELL + readOut * readOut;
  }

  private static float[] ambient(Shot shot) {
    float[] weights = shot.weights();
    weights[Lights.FLASH + shot.flash()] = 0;
    return weights;
  }

  private double darkest(int sample) {
    double least = 1;
    for (Shot shot : Evening.shots()) {
      if (shot.flash() != Shot.NO_FLASH) {
        least = Math.min(least, Sensor.light(ambient(shot), buffers, sample));
      }
    }
    return least;
  }
}
