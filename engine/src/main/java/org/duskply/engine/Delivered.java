package org.duskply.engine;

import java.nio.file.Path;
import java.util.List;

/**
 * What a delivery made.
 *
 * @param files the files, in the recipe's order
 * @param peakBytes most bytes of working memory taken at once
 * @param unitsDecoded pieces of frames (strips, rows of tiles, groups of rows) that were decoded,
 *     each time counted
 * @param notices sentences about frames that were found odd while their pixels were read, each
 *     beginning with the frame's name; most often none
 */
public record Delivered(List<File> files, long peakBytes, long unitsDecoded, List<String> notices) {
  /**
   * One file.
   *
   * @param deliverable its name in the recipe
   * @param alternate the alternate that it shows; {@code main} for the recipe as it stands
   * @param path where it stands
   * @param width in pixels
   * @param height in pixels
   * @param bytes its size
   * @param clipped share of its pixels, 0 to 1, that were lighter or more colourful than the file
   *     can hold
   */
  public record File(
      String deliverable,
      String alternate,
      Path path,
      int width,
      int height,
      long bytes,
      double clipped) {}
}
