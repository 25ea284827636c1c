package org.duskply.engine.mask;

import java.util.List;
import org.duskply.engine.pixel.Numbers;
import org.duskply.engine.plan.KeyWriter;
import org.duskply.engine.plan.Node;
import org.duskply.engine.plan.PointNode;

/**
 * By how many stops one frame is brighter than another:
 *
 * <pre>
 * q = log₂((max(Y_f, 0) + ν)/(max(Y_a, 0) + ν)),   ν = 2⁻¹⁰
 * </pre>
 *
 * <p>ν keeps noise in black from counting as light. Where one of the two frames does not cover, q
 * is less by that share: nothing is known there. Within 2⁻²² of the formula for the luminances
 * given.
 */
final class FlashRatioNode implements PointNode {
  private static final float NOISE = 0x1p-10f;

  private final Node flash;
  private final Node ambient;
  private final float[] weights;

  /**
   * The ratio of two frames.
   *
   * @param weights of red, green and blue in luminance, summing to 1
   */
  FlashRatioNode(Node flash, Node ambient, double[] weights) {
    this.flash = flash;
    this.ambient = ambient;
    this.weights = new float[] {(float) weights[0], (float) weights[1], (float) weights[2]};
  }

  @Override
  public List<Node> inputs() {
    return List.of(flash, ambient);
  }

  @Override
  public int planes() {
    return 1;
  }

  @Override
  public void row(float[][][] in, float[][] out, int left, int y, int from, int to) {
    ratio(in[0], in[1], weights, out[0], from, to);
    LuminanceNode.covered(in[0], out[0], from, to);
    LuminanceNode.covered(in[1], out[0], from, to);
  }

  private static void ratio(
      float[][] flash, float[][] ambient, float[] weights, float[] out, int from, int to) {
    float r = weights[0];
    float g = weights[1];
    float b = weights[2];
    for (int i = from; i < to; i++) {
      float lit = r * flash[0][i] + g * flash[1][i] + b * flash[2][i];
      float unlit = r * ambient[0][i] + g * ambient[1][i] + b * ambient[2][i];
      out[i] = Numbers.log2((Math.max(lit, 0f) + NOISE) / (Math.max(unlit, 0f) + NOISE));
    }
  }

  @Override
  public void describe(KeyWriter key) {
    key.word("flash ratio");
    for (float weight : weights) {
      key.number(weight);
    }
  }
}
