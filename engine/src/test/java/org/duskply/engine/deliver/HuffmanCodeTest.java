package org.duskply.engine.deliver;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.PriorityQueue;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;

class HuffmanCodeTest {
  /** RFC 1951 section 3.2.2: lengths (3, 3, 3, 3, 3, 2, 4, 4) give the words of its table. */
  @Test
  void theExampleOfTheStandard() {
    HuffmanCode code = HuffmanCode.of(new int[] {4, 4, 4, 4, 4, 8, 2, 2}, 15);
    String[] table = {"010", "011", "100", "101", "110", "00", "1110", "1111"};
    for (int s = 0; s < table.length; s++) {
      assertThat(sent(code, s)).as("symbol " + (char) ('A' + s)).isEqualTo(table[s]);
    }
  }

  /** The bits of a word in the order in which they are sent. */
  private static String sent(HuffmanCode code, int symbol) {
    StringBuilder bits = new StringBuilder();
    for (int i = 0; i < code.length(symbol); i++) {
      bits.append(code.words()[symbol] >>> i & 1);
    }
    return bits.toString();
  }

  @Test
  void oneSymbolHasAWordOfOneBitAndNoneHasNone() {
    HuffmanCode code = HuffmanCode.of(new int[] {0, 7, 0}, 15);
    assertThat(code.length(1)).isEqualTo(1);
    assertThat(code.length(0)).isZero();
    assertThat(HuffmanCode.of(new int[3], 15).words()).containsOnly(0);
  }

  /**
   * No prefix code is shorter: the sum of all joined weights, by a queue of them. A word of 16 bits
   * needs a sum of at least Fibonacci's 18th number, 2584 (M. Buro, 1993), more than 40 · 60.
   */
  @Property(tries = 300)
  void noCodeIsShorter(@ForAll @Size(min = 2, max = 40) List<@IntRange(max = 60) Integer> list) {
    int[] counts = list.stream().mapToInt(Integer::intValue).toArray();
    PriorityQueue<Long> queue = new PriorityQueue<>();
    Arrays.stream(counts).filter(c -> c > 0).forEach(c -> queue.add((long) c));
    if (queue.size() < 2) {
      return;
    }
    long least = 0;
    while (queue.size() > 1) {
      long joined = queue.remove() + queue.remove();
      least += joined;
      queue.add(joined);
    }
    HuffmanCode code = HuffmanCode.of(counts, 15);
    assertThat(code.cost(counts)).isEqualTo(least);
  }

  /** Fibonacci's numbers make the longest words that counts of that sum can. */
  @Test
  void wordsAreHeldToTheirLimit() {
    int[] counts = new int[30];
    counts[0] = 1;
    counts[1] = 1;
    for (int s = 2; s < counts.length; s++) {
      counts[s] = counts[s - 1] + counts[s - 2];
    }
    for (int longest = 5; longest <= 15; longest++) {
      HuffmanCode code = HuffmanCode.of(counts, longest);
      double sum = 0;
      for (int s = 0; s < counts.length; s++) {
        assertThat(code.length(s)).isBetween(1, longest);
        sum += Math.pow(2, -code.length(s));
      }
      assertThat(sum).as("L. G. Kraft, 1949: a full prefix code").isEqualTo(1);
    }
  }
}
