package org.duskply.engine.adjust;

import java.util.List;

/** Kernels one after the other; none leaves the picture as it is. */
final class AdjustSequence implements AdjustKernel {
  private final List<AdjustKernel> kernels;

  AdjustSequence(List<AdjustKernel> kernels) {
    this.kernels = List.copyOf(kernels);
  }

  @Override
  public void run(float[] red, float[] green, float[] blue, int from, int to) {
    for (AdjustKernel kernel : kernels) {
      kernel.run(red, green, blue, from, to);
    }
  }
}
