package org.duskply.engine.plan;

import java.util.Arrays;
import java.util.List;
import org.duskply.engine.frame.Samples;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Runs;
import org.jspecify.annotations.Nullable;

/**
 * Where a running program stands, and its registers: one chunk's width of floats for each plane.
 * Used by one thread.
 */
final class RowState {
  private final List<FrameNode> frames;
  private final float[][][] registers;
  private final float[] maskRow;
  private final Leaves leaves;
  private final @Nullable Samples[] samples; // of each frame, those read last
  private int left;
  private int row;

  RowState(List<FrameNode> frames, int[] registerPlanes, int width, Leaves leaves) {
    this.frames = frames;
    this.leaves = leaves;
    this.registers = new float[registerPlanes.length][][];
    for (int i = 0; i < registerPlanes.length; i++) {
      registers[i] = new float[registerPlanes[i]][width];
    }
    this.maskRow = new float[width];
    this.samples = new Samples[frames.size()];
  }

  void moveTo(int left, int row) {
    this.left = left;
    this.row = row;
  }

  int left() {
    return left;
  }

  int row() {
    return row;
  }

  float[][] register(int index) {
    return registers[index];
  }

  /** Lets register {@code index} stand on the caller's own arrays. */
  void setRegister(int index, float[][] planes) {
    registers[index] = planes;
  }

  void copy(int source, int target, int from, int to) {
    for (int p = 0; p < 3; p++) {
      System.arraycopy(registers[source][p], from, registers[target][p], from, to - from);
    }
  }

  void loadFrame(int leaf, int target, int from, int to) {
    FrameNode frame = frames.get(leaf);
    Samples samples = samples(leaf);
    float[][] out = registers[target];
    frame
        .lineariser()
        .row(
            samples,
            row,
            left + from,
            left + to,
            out[0],
            out[1],
            out[2],
            out.length > 3 ? out[3] : null,
            from);
  }

  /** Units are several rows high: most rows lie in the one that was read last. */
  private Samples samples(int leaf) {
    Samples last = samples[leaf];
    if (last == null || row < last.area().top() || row >= last.area().bottom()) {
      last = leaves.samples(leaf, row);
      samples[leaf] = last;
    }
    return last;
  }

  void loadStage(int leaf, int target, int from, int to) {
    float[][] out = registers[target];
    Planes planes = leaves.planes(leaf, row);
    for (int p = 0; p < out.length; p++) {
      loadPlane(planes, p, out[p], from, to);
    }
  }

  private void loadPlane(@Nullable Planes planes, int p, float[] out, int from, int to) {
    if (planes == null || row < planes.area().top() || row >= planes.area().bottom()) {
      Arrays.fill(out, from, to, 0f);
      return;
    }
    int start = Math.max(from, Math.min(to, planes.area().left() - left));
    int end = Math.max(start, Math.min(to, planes.area().right() - left));
    Arrays.fill(out, from, start, 0f);
    if (end > start) {
      System.arraycopy(planes.plane(p), planes.at(left + start, row), out, start, end - start);
    }
    Arrays.fill(out, end, to, 0f);
  }

  /**
   * Runs {@code mix} on each run of mask stage {@code leaf} between {@code from} and {@code to}.
   */
  void eachRun(int leaf, int from, int to, Instruction.MixSpans mix) {
    Runs runs = leaves.runs(leaf, row);
    if (runs == null || row < runs.area().top() || row >= runs.area().bottom()) {
      return;
    }
    for (int i = runs.first(row); i < runs.end(row); i++) {
      int start = Math.max(from, runs.left(i) - left);
      int end = Math.min(to, runs.right(i) - left);
      if (start < end) {
        mix.span(this, start, end, runs.kind(i));
      }
    }
  }

  /** A mask's values between {@code from} and {@code to}, good until the next call. */
  float[] maskValues(int leaf, int from, int to) {
    loadPlane(leaves.planes(leaf, row), 0, maskRow, from, to);
    return maskRow;
  }
}
