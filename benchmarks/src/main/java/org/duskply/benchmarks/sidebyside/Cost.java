package org.duskply.benchmarks.sidebyside;

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

  /** The same with less time of the processor. */
  Cost without(double seconds) {
    return new Cost(wall, processor - seconds, peak);
  }

  /** One of the three numbers. */
  enum Measure {
    WALL,
    PROCESSOR,
    PEAK;

    private static final double MEGABYTE = 1e6;

    /** The number, as it is printed: seconds, or megabytes. */
    double of(Cost cost) {
      return switch (this) {
        case WALL -> cost.wall;
        case PROCESSOR -> cost.processor;
        case PEAK -> cost.peak / MEGABYTE;
      };
    }
  }
}
