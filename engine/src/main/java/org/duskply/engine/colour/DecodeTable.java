package org.duskply.engine.colour;

/**
 * The linear value of every code of an integer file: {@code curve(code / (codes − 1))}, each
 * computed in double and rounded once to float.
 */
public final class DecodeTable {
  private DecodeTable() {}

  /**
   * A table of all codes.
   *
   * @param curve the channel's curve
   * @param codes how many codes there are, 2 to 65,536: 256 for 8 bits, 65,536 for 16
   */
  public static float[] of(TransferCurve curve, int codes) {
    if (codes < 2 || codes > 1 << 16) {
      throw new IllegalArgumentException("codes: " + codes);
    }
    float[] table = new float[codes];
    double last = codes - 1;
    for (int code = 0; code < codes; code++) {
      table[code] = (float) curve.toLinear(code / last);
    }
    return table;
  }
}
