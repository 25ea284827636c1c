package org.duskply.engine.blend;

/**
 * The luminosity of the frame with the hue and saturation of the picture below: {@code SetLum(b,
 * Lum(s))} (W3C Compositing and Blending 1, {@code luminosity}). See {@link Luminosity}; values
 * below 0 count as 0.
 */
final class LuminosityKernel implements BlendKernel {
  @Override
  public void run(float[][] below, float[][] frame, float[][] out, int from, int to) {
    for (int i = from; i < to; i++) {
      float r = Math.max(below[0][i], 0f);
      float g = Math.max(below[1][i], 0f);
      float b = Math.max(below[2][i], 0f);
      float fr = Math.max(frame[0][i], 0f);
      float fg = Math.max(frame[1][i], 0f);
      float fb = Math.max(frame[2][i], 0f);
      float most = Luminosity.greatest(r, g, b);
      float frameMost = Luminosity.greatest(fr, fg, fb);
      float white = Luminosity.white(Math.max(most, frameMost));
      Luminosity.setLuminosity(r, g, b, Luminosity.of(fr, fg, fb), white, out, i);
    }
  }
}
