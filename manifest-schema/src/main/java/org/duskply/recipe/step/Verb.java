package org.duskply.recipe.step;

/** What a step does: its one verb. */
public sealed interface Verb permits Pop, Lay, Adjust, Group, Dodge, Burn, Vignette {}
