package org.duskply.engine.blend;

/**
 * The hue of the frame with the saturation and luminosity of the picture below: {@code
 * SetLum(SetSat(s, Sat(b)), Lum(b))} (W3C Compositing and Blending 1, {@code hue}). See {@link
 * Luminosity}; values below 0 count as 0.
 */
final class HueKernel implements BlendKernel {
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
      float saturation = most - Luminosity.least(r, g, b);
      float luminosity = Luminosity.of(r, g, b);
      Luminosity.setSaturationAndLuminosity(fr, fg, fb, saturation, luminosity, white, out, i);
    }
  }
}
