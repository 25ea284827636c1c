package org.duskply.examples.boathouse;

import org.duskply.engine.colour.ColourSpace;
import org.duskply.engine.colour.TransferCurve;
import org.duskply.examples.trace.Noise;
import org.duskply.recipe.NamedSpace;

/**
 * The camera: light in, 16-bit samples out. Each sample gets the noise of its photons and of its
 * read-out, is clipped where the sensor is full, and is encoded with the frames' profile.
 *
 * <p>Noise: variance = light / {@link #FULL_WELL} + ({@link #READ_NOISE} / {@link #FULL_WELL})², as
 * shares of full scale. It depends on shot, place and channel alone.
 */
public final class Sensor {
  /** Profile of the frames. */
  public static final NamedSpace PROFILE = NamedSpace.REC2020;

  /** Electrons at full scale. */
  static final double FULL_WELL = 42_000;

  /** Electrons of read-out noise, one standard deviation. */
  static final double READ_NOISE = 3;

  private static final int STEPS = 1 << 13;
  private static final float[] CURVE = curve();

  private Sensor() {}

  /** The light of a shot at one sample, free of noise and not clipped. */
  static float light(float[] weights, Buffers buffers, int sample) {
    float sum = 0;
    for (int light = 0; light < Lights.COUNT; light++) {
      if (weights[light] != 0) {
        sum += weights[light] * buffers.light(light)[sample];
      }
    }
    return sum;
  }

  /** What the sensor reads for that light, a share of full scale in 0…1. */
  static float read(float light, int shot, int pixel, int channel) {
    double plain = Math.max(0, light);
    double read = READ_NOISE / FULL_WELL;
    double spread = Math.sqrt(plain / FULL_WELL + read * read);
    double noisy = plain + spread * bell(Noise.hash(pixel, shot, channel));
    return (float) Math.min(1, Math.max(0, noisy));
  }

  /** Nearly a normal distribution of mean 0 and spread 1: four even ones summed. */
  private static double bell(int hash) {
    int other = Noise.hash(hash, 0x2545, 0x4914);
    int sum = (hash & 0xFFFF) + (hash >>> 16) + (other & 0xFFFF) + (other >>> 16);
    return (sum - 131070) * (1.7320508075688772 / 65536);
  }

  /** The 16-bit code of a share of full scale. */
  static int code(float share) {
    double place = Math.sqrt(share) * STEPS;
    int i = Math.min(STEPS - 1, (int) place);
    double encoded = CURVE[i] + (place - i) * (CURVE[i + 1] - CURVE[i]);
    return (int) (encoded * 65535 + 0.5);
  }

  /** The profile's curve over the root of the light, where it is nearly straight. */
  private static float[] curve() {
    TransferCurve exact = ColourSpace.of(PROFILE).curve(0);
    float[] curve = new float[STEPS + 1];
    for (int i = 0; i <= STEPS; i++) {
      double root = (double) i / STEPS;
      curve[i] = (float) exact.toEncoded(root * root);
    }
    return curve;
  }
}
