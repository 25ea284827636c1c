package org.duskply.benchmarks.sidebyside;

import java.util.List;

/**
 * One number as all rounds gave it, from the least to the greatest.
 *
 * @param values at least one
 */
record Series(List<Double> values) {
  Series {
    if (values.isEmpty()) {
      throw new IllegalArgumentException("no round");
    }
    values = values.stream().sorted().toList();
  }

  /** The middle one; of an even number the mean of the two in the middle. */
  double median() {
    int half = values.size() / 2;
    return values.size() % 2 == 1
        ? values.get(half)
        : (values.get(half - 1) + values.get(half)) / 2;
  }

  double least() {
    return values.get(0);
  }

  double greatest() {
    return values.get(values.size() - 1);
  }
}
