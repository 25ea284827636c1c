package org.duskply.engine.blend;

/**
 * The saturation of the frame with the hue and luminosity of the picture below: {@code
 * SetLum(SetSat(b, Sat(s)), Lum(b))} (W3C Compositing and Blending 1, {@code saturation}). See
 * {@link Luminosity}; values below 0 count as 0.
 */
final class SaturationKernel implements BlendKernel {
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
      float saturation = frameMost - Luminosity.least(fr, fg, fb);
      float luminosity = Luminosity.of(r, g, b);
      Luminosity.setSaturationAndLuminosity(r, g, b, saturation, luminosity, white, out, i);
    }
  }
}
