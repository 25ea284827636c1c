package org.duskply.engine.plan;

import java.util.stream.IntStream;
import org.duskply.engine.frame.CellMeans;
import org.duskply.engine.frame.Samples;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;

/** A frame as planes: as it is, or at a preview's scale. */
final class FrameStage implements Stage {
  private static final double NANOS_A_SAMPLE = 3;

  private final FrameNode node;
  private final int frame;

  FrameStage(FrameNode node, Index index) {
    this.node = node;
    this.frame = index.frame(node);
  }

  @Override
  public Node node() {
    return node;
  }

  @Override
  public void needs(Region out, StageNeeds needs) {
    needs.frame(frame, node.stored(out));
  }

  @Override
  public void fill(StageInputs in, Planes out, Stop stop) {
    float[][] planes = IntStream.range(0, out.count()).mapToObj(out::plane).toArray(float[][]::new);
    if (node.reduction() == 1) {
      for (int y = out.area().top(); y < out.area().bottom(); y++) {
        stop.check();
        row(in.samples(frame, y), y, out.area(), planes, out.at(out.area().left(), y));
      }
    } else {
      reduced(in, out, planes, stop);
    }
  }

  private void reduced(StageInputs in, Planes out, float[][] planes, Stop stop) {
    Region stored = node.stored(out.area());
    int n = node.reduction();
    CellMeans means =
        new CellMeans(
            n, stored.left(), stored.right(), node.source().info().height(), planes.length);
    float[][] line = new float[planes.length][stored.width()];
    for (int y = stored.top(); y < stored.bottom(); y++) {
      stop.check();
      row(in.samples(frame, y), y, stored, line, 0);
      if (means.add(y, line, 0)) {
        means.take(planes, out.at(out.area().left(), y / n));
      }
    }
  }

  private void row(Samples samples, int y, Region columns, float[][] planes, int at) {
    node.lineariser()
        .row(
            samples,
            y,
            columns.left(),
            columns.right(),
            planes[0],
            planes[1],
            planes[2],
            planes.length > 3 ? planes[3] : null,
            at);
  }

  @Override
  public long scratchBytes(Region out) {
    Region stored = node.stored(out);
    return Planes.bytes(new Region(0, 0, stored.width(), 1), node.planes())
        + CellMeans.bytes(node.reduction(), Math.max(1, stored.width()), node.planes());
  }

  @Override
  public double costNanos(Region out) {
    return NANOS_A_SAMPLE * node.stored(out).count() * node.planes();
  }
}
