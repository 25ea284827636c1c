package org.duskply.engine.filter;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What is left out where all samples are the same changes no bit. */
@Tag("bits")
class DirectGaussianTest {
  private static final int WIDTH = 700; // more than is worked through at a time
  private static final int HEIGHT = 90;

  @ParameterizedTest
  @ValueSource(doubles = {0.3, 0.5, 1.5, 3, 8})
  void theSameBitsAsTheSumInFull(double sigma) {
    float[] weights = weights(sigma);
    int reach = DirectGaussian.of(sigma).reach();
    Region out = new Region(-20, 7, WIDTH - 20, 7 + HEIGHT);
    for (int seed = 0; seed < 4; seed++) {
      Planes in = patches(out.grow(reach), seed);
      Planes soft = new Planes(out, 1);
      DirectGaussian.of(sigma).apply(in, 0, soft, 0);
      float[][] columns = new float[HEIGHT][WIDTH + 2 * reach];
      for (int y = 0; y < HEIGHT; y++) {
        for (int x = 0; x < WIDTH + 2 * reach; x++) {
          columns[y][x] = sum(in, x - 20 - reach, y + 7, 0, 1, weights, reach);
        }
      }
      Planes half = new Planes(new Region(-20 - reach, 7, WIDTH - 20 + reach, 7 + HEIGHT), 1);
      for (int y = 0; y < HEIGHT; y++) {
        System.arraycopy(
            columns[y], 0, half.plane(0), half.at(-20 - reach, y + 7), columns[y].length);
      }
      for (int y = out.top(); y < out.bottom(); y++) {
        for (int x = out.left(); x < out.right(); x++) {
          float wanted = sum(half, x, y, 1, 0, weights, reach);
          float got = soft.plane(0)[soft.at(x, y)];
          if (Float.floatToRawIntBits(got) != Float.floatToRawIntBits(wanted)) {
            assertThat(got).as("σ %s, seed %d, (%d, %d)", sigma, seed, x, y).isEqualTo(wanted);
            assertThat(Float.floatToRawIntBits(got)).isEqualTo(Float.floatToRawIntBits(wanted));
          }
        }
      }
    }
  }

  /** The formula of the class as it is written, in float from the nearest neighbours outward. */
  private static float sum(
      Planes in, int x, int y, int right, int down, float[] weights, int reach) {
    float[] samples = in.plane(0);
    float centre = samples[in.at(x, y)];
    float twice = 2 * centre;
    float sum = 0;
    for (int i = 1; i <= reach; i++) {
      float before = samples[in.at(x - i * right, y - i * down)];
      float after = samples[in.at(x + i * right, y + i * down)];
      sum += weights[i - 1] * (before + after - twice);
    }
    return centre + sum;
  }

  private static float[] weights(double sigma) {
    int count = (int) Math.ceil(4 * sigma);
    double sum = 1;
    for (int i = 1; i <= count; i++) {
      sum += 2 * StrictMath.exp(-((double) i * i) / (2 * sigma * sigma));
    }
    float[] weights = new float[count];
    for (int i = 1; i <= count; i++) {
      weights[i - 1] = (float) (StrictMath.exp(-((double) i * i) / (2 * sigma * sigma)) / sum);
    }
    return weights;
  }

  /** Rectangles of one value, −0 among them, and of noise, over each other. */
  private static Planes patches(Region area, int seed) {
    Random random = new Random(seed);
    Planes planes = new Planes(area, 1);
    for (int patch = 0; patch < 12; patch++) {
      int left = area.left() + random.nextInt(area.width());
      int top = area.top() + random.nextInt(area.height());
      Region part =
          new Region(left, top, left + 1 + random.nextInt(400), top + 1 + random.nextInt(60))
              .meet(area);
      float value = patch % 3 == 0 ? -0f : random.nextInt(3) / 2f;
      boolean noise = patch % 4 == 1;
      for (int y = part.top(); y < part.bottom(); y++) {
        for (int x = part.left(); x < part.right(); x++) {
          planes.plane(0)[planes.at(x, y)] = noise ? random.nextFloat() : value;
        }
      }
    }
    return planes;
  }
}
