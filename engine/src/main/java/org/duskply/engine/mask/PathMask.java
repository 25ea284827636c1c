package org.duskply.engine.mask;

import org.duskply.engine.plan.Node;
import org.duskply.recipe.mask.Path;
import org.duskply.recipe.mask.PathData;

/** {@code path}: the inside of an outline written as SVG path data. */
final class PathMask {
  private PathMask() {}

  static Node prepare(Path path, double scale) {
    Outline outline = Flattener.flatten(PathData.parse(path.data()), scale);
    return new OutlineNode(OutlineRaster.of(outline, path.rule()), scale + " " + path);
  }
}
