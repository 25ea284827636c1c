package org.duskply.recipe.shape;

import java.util.List;
import java.util.function.Function;

/**
 * A condition between the values of one record, or among the members of one list.
 *
 * @param needs components that must have been read without fault before the rule can be asked
 * @param check lists the faults; empty when all is well
 */
public record Rule(List<String> needs, Function<Values, List<Fault>> check) {
  /** Copies the list. */
  public Rule {
    needs = List.copyOf(needs);
  }

  /** The rule's faults, none while a component that it needs has faults of its own. */
  public List<Fault> faults(Values values) {
    return needs.stream().allMatch(values::has) ? check.apply(values) : List.of();
  }
}
