package org.duskply.benchmarks.sidebyside;

/** Why nothing can be measured: one sentence for whoever asked. */
final class Refusal extends RuntimeException {
  private static final long serialVersionUID = 1;

  Refusal(String sentence) {
    super(sentence);
  }

  Refusal(String sentence, Throwable cause) {
    super(sentence, cause);
  }
}
