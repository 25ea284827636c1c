package org.duskply.examples.boathouse;

/**
 * What each light source alone would give, in linear light (red, green, blue in the primaries of
 * the frames), free of noise. A picture under any mix of the lights is a weighted sum of these.
 */
public final class Buffers {
  private final int left;
  private final int top;
  private final int width;
  private final int height;
  private final float[][] planes;

  Buffers(int left, int top, int width, int height) {
    this.left = left;
    this.top = top;
    this.width = width;
    this.height = height;
    planes = new float[Lights.COUNT][3 * width * height];
  }

  /** The first column of the whole picture that is held here. */
  public int left() {
    return left;
  }

  /** The first row of the whole picture that is held here. */
  public int top() {
    return top;
  }

  public int width() {
    return width;
  }

  public int height() {
    return height;
  }

  /** One light's samples, row by row, red, green, blue a pixel; not a copy. */
  public float[] light(int light) {
    return planes[light];
  }
}
