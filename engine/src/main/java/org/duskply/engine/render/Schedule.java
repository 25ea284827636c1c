package org.duskply.engine.render;

import java.util.PriorityQueue;

/**
 * Which task may start next, and how many bytes are taken: the state machine behind {@link
 * Scheduler}, for one thread at a time.
 *
 * <p>Tasks stand in the graph's order. The <em>head</em> is the first that has not finished; all
 * before it have, so it is always ready, and it may always start. Any other ready task may start
 * while the bytes of the tasks beyond the head, with its own, fit into {@code budget − floorBytes}.
 * Why this is safe: what the tasks up to the head hold is at most what a single thread would hold
 * there, {@code floorBytes}; the rest holds at most the rest of the budget; and since the head can
 * always start, the job always ends.
 */
final class Schedule {
  private enum State {
    WAITING,
    READY,
    RUNNING,
    DONE
  }

  private final TaskGraph graph;
  private final long roomAhead;
  private final State[] state;
  private final int[] missing;
  private final int[] readers;
  private final long[] held;
  private final PriorityQueue<Integer> ready = new PriorityQueue<>();
  private int head;
  private int done;
  private long used;
  private long ahead;
  private long peak;
  private double doneNanos;

  /**
   * The start of a job.
   *
   * @throws IllegalArgumentException if {@code budget} is less than the graph's {@code floorBytes}
   */
  Schedule(TaskGraph graph, long budget) {
    if (budget < graph.floorBytes()) {
      throw new IllegalArgumentException(budget + " bytes, " + graph.floorBytes() + " needed");
    }
    this.graph = graph;
    this.roomAhead = budget - graph.floorBytes();
    this.state = new State[graph.size()];
    this.missing = new int[graph.size()];
    this.readers = graph.readerCounts();
    this.held = new long[graph.size()];
    for (int i = 0; i < graph.size(); i++) {
      missing[i] = graph.predecessors(i).length;
      state[i] = missing[i] == 0 ? State.READY : State.WAITING;
      if (missing[i] == 0) {
        ready.add(i);
      }
    }
  }

  /** The first task that may start now, or −1. */
  int next() {
    if (ready.isEmpty()) {
      return -1;
    }
    int first = ready.peek();
    if (mayStart(first)) {
      return first;
    }
    return ready.stream().filter(this::mayStart).mapToInt(Integer::intValue).min().orElse(-1);
  }

  /** Whether ready task {@code i} may start now. */
  boolean mayStart(int i) {
    return state[i] == State.READY && (i == head || ahead + bytes(i) <= roomAhead);
  }

  /** Takes task {@code i}, which may start, and its bytes. */
  void start(int i) {
    state[i] = State.RUNNING;
    ready.remove(i);
    charge(i, bytes(i));
    peak = Math.max(peak, used);
  }

  /** Gives back what task {@code i} no longer needs, and makes ready what waited for it. */
  void finish(int i) {
    state[i] = State.DONE;
    done++;
    doneNanos += graph.task(i).costNanos();
    charge(i, -graph.task(i).scratchBytes());
    if (readers[i] == 0) {
      release(i);
    }
    for (int r : graph.reads(i)) {
      if (--readers[r] == 0) {
        release(r);
      }
    }
    for (int s : graph.successors(i)) {
      if (--missing[s] == 0) {
        state[s] = State.READY;
        ready.add(s);
      }
    }
    while (head < graph.size() && state[head] == State.DONE) {
      head++;
      if (head < graph.size()) {
        ahead -= held[head];
      }
    }
  }

  /** Whether every task has finished. */
  boolean finished() {
    return done == graph.size();
  }

  /** Bytes taken now. */
  long used() {
    return used;
  }

  /** Most bytes taken so far. */
  long peak() {
    return peak;
  }

  /** Share of the job's rough cost that is done, 0 to 1. */
  double share() {
    return graph.costNanos() == 0 ? 1 : Math.min(1, doneNanos / graph.costNanos());
  }

  private long bytes(int i) {
    return graph.task(i).scratchBytes() + graph.task(i).resultBytes();
  }

  private void release(int i) {
    charge(i, -graph.task(i).resultBytes());
    graph.task(i).release();
  }

  private void charge(int i, long bytes) {
    used += bytes;
    held[i] += bytes;
    if (i > head) {
      ahead += bytes;
    }
  }
}
