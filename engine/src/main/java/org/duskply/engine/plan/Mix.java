package org.duskply.engine.plan;

import java.util.ArrayList;
import java.util.List;
import org.duskply.engine.pixel.Region;
import org.jspecify.annotations.Nullable;

/**
 * The one equation, and the only place where it stands: {@code w = mask · coverage · opacity} as
 * one rounded product; where {@code w} is 0 the bits of the picture below stay, where it is 1 the
 * result is the step's value itself, else {@code b + w·(s − b)}. Per channel, in linear light, in
 * float32.
 */
public final class Mix implements PointNode {
  private final Node below;
  private final Node step;
  private final @Nullable Node mask;
  private final @Nullable FrameNode covering;
  private final float opacity;
  private final List<Node> inputs;

  /**
   * A step mixed into the picture below it.
   *
   * @param below the picture below
   * @param step what the step makes of it
   * @param mask where it shows; absent: everywhere
   * @param covering a frame whose coverage counts as a mask; absent: none
   * @param opacity 0 to 1
   */
  public Mix(
      Node below, Node step, @Nullable Node mask, @Nullable FrameNode covering, float opacity) {
    this.below = below;
    this.step = step;
    this.mask = mask;
    this.covering = covering;
    this.opacity = opacity;
    List<Node> all = new ArrayList<>(List.of(below, step));
    if (mask != null) {
      all.add(mask);
    }
    if (covering != null) {
      all.add(covering);
    }
    this.inputs = List.copyOf(all);
  }

  Node below() {
    return below;
  }

  Node step() {
    return step;
  }

  @Nullable Node mask() {
    return mask;
  }

  @Nullable FrameNode covering() {
    return covering;
  }

  float opacity() {
    return opacity;
  }

  @Override
  public List<Node> inputs() {
    return inputs;
  }

  @Override
  public int planes() {
    return 3;
  }

  @Override
  public Region footprint(Region within) {
    return mask == null ? within : mask.footprint(within);
  }

  @Override
  public Region needs(int input, Region out) {
    return input == 0 ? out : footprint(out);
  }

  @Override
  public void describe(KeyWriter key) {
    key.word("mix").number(opacity).number(mask == null ? 0 : 1).number(covering == null ? 0 : 1);
  }

  /** The equation without any short cut; the fused program must give the same bits. */
  @Override
  public void row(float[][][] in, float[][] out, int left, int y, int from, int to) {
    float @Nullable [] m = mask == null ? null : in[2][0];
    float @Nullable [] c = covering == null ? null : in[inputs.size() - 1][3];
    for (int p = 0; p < 3; p++) {
      if (out[p] != in[0][p]) {
        System.arraycopy(in[0][p], from, out[p], from, to - from);
      }
      mixed(in[1][p], m, c, opacity, out[p], from, to);
    }
  }

  /**
   * Mixes {@code step} into {@code out}, which holds the picture below, by weights that may be
   * anything from 0 to 1.
   */
  static void mixed(
      float[] step,
      float @Nullable [] mask,
      float @Nullable [] coverage,
      float opacity,
      float[] out,
      int from,
      int to) {
    for (int i = from; i < to; i++) {
      float w = weight(mask == null ? 1f : mask[i], coverage == null ? 1f : coverage[i], opacity);
      float b = out[i];
      out[i] = w == 0f ? b : w == 1f ? step[i] : b + w * (step[i] - b);
    }
  }

  /**
   * Mixes where every mask value lies strictly between 0 and 1 and nothing else covers: no weight
   * is 0 or 1.
   */
  public static void between(
      float[] step, float[] mask, float opacity, float[] out, int from, int to) {
    for (int i = from; i < to; i++) {
      float w = mask[i] * opacity;
      float b = out[i];
      out[i] = b + w * (step[i] - b);
    }
  }

  /** Mixes by one weight strictly between 0 and 1. */
  static void evenly(float[] step, float weight, float[] out, int from, int to) {
    for (int i = from; i < to; i++) {
      float b = out[i];
      out[i] = b + weight * (step[i] - b);
    }
  }

  /**
   * The product of three floats, rounded once: two factors are exact in double, and a third of 1
   * leaves them so.
   */
  static float weight(float mask, float coverage, float opacity) {
    return (float) ((double) mask * coverage * opacity);
  }
}
