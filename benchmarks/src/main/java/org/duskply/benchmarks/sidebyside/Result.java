package org.duskply.benchmarks.sidebyside;

import java.util.List;

/**
 * How a program fared with a workload.
 *
 * @param workload its name
 * @param program its name
 * @param costs one a round
 * @param bytes of the file that it wrote
 * @param difference mean CIEDE2000 to our picture; NaN for our own
 */
record Result(String workload, String program, List<Cost> costs, long bytes, double difference) {
  /** One of the numbers, of all rounds. */
  Series series(Cost.Measure measure) {
    return new Series(costs.stream().map(measure::of).toList());
  }
}
