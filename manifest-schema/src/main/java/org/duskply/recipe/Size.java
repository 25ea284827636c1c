package org.duskply.recipe;

/**
 * A size in pixels.
 *
 * @param width at least 1
 * @param height at least 1
 */
public record Size(int width, int height) {}
