package org.duskply.engine;

import java.util.Map;
import org.duskply.engine.plan.Node;
import org.duskply.recipe.Recipe;

/**
 * The picture of one alternate, as a view shows it.
 *
 * @param alternate its name
 * @param recipe what is done for it
 * @param picture the finished picture, cropped
 * @param maskOfStep the masks of its steps that are done, by the steps' paths
 */
record Version(String alternate, Recipe recipe, Node picture, Map<String, Node> maskOfStep) {
  /** Stands for an alternate's name where the picture is what the finished one is compared with. */
  static final String BEFORE = "before";
}
