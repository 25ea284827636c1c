package org.duskply.benchmarks.sidebyside;

import java.nio.file.Path;
import java.util.List;

/**
 * A program that does the work of a workload.
 *
 * @param name what it is called in the tables
 * @param command how it is run
 * @param folder where it is run
 * @param picture the file that it writes
 */
record Program(String name, List<String> command, Path folder, Path picture) {
  static final String OURS = "Duskply";
  static final String OURS_AT_SIX = "Duskply, level 6";
  static final String FLOOR = "the floor";
  static final String VIPS = "libvips";
  static final String OPENCV = "OpenCV + numpy";
}
