package org.duskply.engine.blend;

/**
 * The hue and saturation of the frame with the luminosity of the picture below: {@code SetLum(s,
 * Lum(b))} (W3C Compositing and Blending 1, {@code color}). See {@link Luminosity}; values below 0
 * count as 0.
 */
final class ColorKernel implements BlendKernel {
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
      Luminosity.setLuminosity(fr, fg, fb, Luminosity.of(r, g, b), white, out, i);
    }
  }
}
