package org.duskply.benchmarks.sidebyside;

import java.util.Locale;

/**
 * What one whole process took.
 *
 * @param wall seconds from its start to its end
 * @param processor seconds of all its threads, in the program and in the system
 * @param peak most bytes of it that were resident at once
 */
record Cost(double wall, double processor, double peak) {
  /** What GNU time is asked for: seconds, seconds, seconds, and units of 1024 bytes. */
  static final String FORMAT = "%e %U %S %M";

  private static final double KIBIBYTE = 1024;

  /** Reads a line of {@link #FORMAT}. */
  static Cost of(String line) {
    String[] fields = line.strip().split(" ");
    if (fields.length != 4) {
      throw new IllegalArgumentException("not a line of " + FORMAT + ": " + line);
    }
    return new Cost(
        Double.parseDouble(fields[0]),
        Double.parseDouble(fields[1]) + Double.parseDouble(fields[2]),
        Double.parseDouble(fields[3]) * KIBIBYTE);
  }

  /** One of the three numbers. */
  enum Measure {
    WALL("wall", "s"),
    PROCESSOR("processor", "s"),
    PEAK("peak memory", "MB");

    private static final double MEGABYTE = 1e6;

    private final String word;
    private final String unit;

    Measure(String word, String unit) {
      this.word = word;
      this.unit = unit;
    }

    /** What it is called, for people. */
    String word() {
      return word;
    }

    /** The number, in the unit that is printed. */
    double of(Cost cost) {
      return switch (this) {
        case WALL -> cost.wall;
        case PROCESSOR -> cost.processor;
        case PEAK -> cost.peak / MEGABYTE;
      };
    }

    /** A number for people, without its unit. */
    String text(double value) {
      return String.format(Locale.ROOT, this == PEAK ? "%.0f" : "%.2f", value);
    }

    /** What its numbers are printed in. */
    String unit() {
      return unit;
    }
  }
}
