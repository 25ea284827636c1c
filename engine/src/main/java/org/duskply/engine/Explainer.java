package org.duskply.engine;

import java.util.List;

/** Makes the {@link Explanation} of a composite. */
final class Explainer {
  private final PlannedComposite composite;

  Explainer(PlannedComposite composite) {
    this.composite = composite;
  }

  Explanation explain() {
    return new Explanation(
        List.of(), List.of(), 0, composite.engine().memory(), composite.engine().threads(), 0);
  }
}
