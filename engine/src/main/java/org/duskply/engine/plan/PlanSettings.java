package org.duskply.engine.plan;

import java.util.EnumSet;
import java.util.Set;

/**
 * How the work is cut up and what is left out of it. Never changes a bit of the picture.
 *
 * @param bandRows rows of a band, at least 1
 * @param chunkWidth pixels of a row carried through a fused run before the next, at least 1
 * @param legLeaves frames and masks of full width that a fused run should read at most before its
 *     picture is finished and they are let go; at least 1
 * @param rules what may be left out
 */
public record PlanSettings(int bandRows, int chunkWidth, int legLeaves, Set<Rule> rules) {
  /** Three frames with a mask each: a third less memory than one long run, in the same time. */
  private static final int LEG_LEAVES = 6;

  /** What is used where nobody says otherwise. */
  public static final PlanSettings DEFAULT = new PlanSettings(64, 512, true);

  public PlanSettings {
    rules = Set.copyOf(rules);
  }

  /** With legs of the usual length, and all rules or none. */
  public PlanSettings(int bandRows, int chunkWidth, boolean optimise) {
    this(bandRows, chunkWidth, LEG_LEAVES, optimise ? EnumSet.allOf(Rule.class) : Set.of());
  }

  /** The same with legs of another length. */
  public PlanSettings withLegLeaves(int leaves) {
    return new PlanSettings(bandRows, chunkWidth, leaves, rules);
  }

  /** The same without one rule. */
  public PlanSettings without(Rule rule) {
    EnumSet<Rule> others = EnumSet.allOf(Rule.class);
    others.retainAll(rules);
    others.remove(rule);
    return new PlanSettings(bandRows, chunkWidth, legLeaves, others);
  }

  /** Whether a rule holds. */
  public boolean has(Rule rule) {
    return rules.contains(rule);
  }
}
