package org.duskply.engine.step;

import java.util.List;
import org.duskply.engine.pixel.Planes;
import org.duskply.engine.pixel.Region;
import org.duskply.engine.plan.AreaNode;
import org.duskply.engine.plan.KeyWriter;
import org.duskply.engine.plan.Node;

/**
 * A part of a picture on a canvas of its own: a move by whole pixels, so that every bit stays. Rows
 * and columns outside the part are asked of nobody.
 */
public final class CropNode implements AreaNode {
  private final Node picture;
  private final Region part;

  /** The picture's pixels in {@code part}, which is not empty. */
  public CropNode(Node picture, Region part) {
    if (part.empty()) {
      throw new IllegalArgumentException("A crop to nothing");
    }
    this.picture = picture;
    this.part = part;
  }

  @Override
  public List<Node> inputs() {
    return List.of(picture);
  }

  @Override
  public int planes() {
    return picture.planes();
  }

  @Override
  public Region footprint(Region within) {
    return within.meet(Region.ofSize(part.width(), part.height()));
  }

  @Override
  public Region needs(int input, Region out) {
    return footprint(out).move(part.left(), part.top());
  }

  @Override
  public void fill(List<Planes> in, Planes out) {
    Planes from = in.get(0);
    Region rows = footprint(out.area());
    for (int p = 0; p < out.count(); p++) {
      for (int y = rows.top(); y < rows.bottom(); y++) {
        System.arraycopy(
            from.plane(p),
            from.at(rows.left() + part.left(), y + part.top()),
            out.plane(p),
            out.at(rows.left(), y),
            rows.width());
      }
    }
  }

  @Override
  public long scratchBytes(Region out) {
    return 0;
  }

  @Override
  public void describe(KeyWriter key) {
    key.word("crop").region(part);
  }
}
