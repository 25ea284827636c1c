package org.duskply.engine.render;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Tasks in one fixed order in which a single thread could do them: each comes after all that it
 * depends on, and as late as may be, so that results are kept briefly. The most bytes that are
 * alive at once in that order are {@link #floorBytes}: with so many, and the rule of {@link
 * Schedule}, every job ends. Immutable once built.
 */
final class TaskGraph {
  private final List<Task> tasks;
  private final int[][] reads;
  private final int[][] predecessors;
  private final int[][] successors;
  private final long floorBytes;
  private final double costNanos;

  /**
   * The graph of all that {@code last} depend on.
   *
   * @param last tasks that are wanted, in the order in which a single thread should reach them
   */
  TaskGraph(List<Task> last) {
    this.tasks = order(last);
    Map<Task, Integer> index = new IdentityHashMap<>();
    for (int i = 0; i < tasks.size(); i++) {
      index.put(tasks.get(i), i);
    }
    this.reads = new int[tasks.size()][];
    this.predecessors = new int[tasks.size()][];
    List<List<Integer>> following = new ArrayList<>();
    double cost = 0;
    for (int i = 0; i < tasks.size(); i++) {
      Task task = tasks.get(i);
      following.add(new ArrayList<>());
      reads[i] = indices(task.reads(), index);
      predecessors[i] = union(reads[i], indices(task.after(), index));
      for (int p : predecessors[i]) {
        following.get(p).add(i);
      }
      cost += task.costNanos();
    }
    this.successors = new int[tasks.size()][];
    for (int i = 0; i < successors.length; i++) {
      successors[i] = following.get(i).stream().mapToInt(Integer::intValue).toArray();
    }
    this.costNanos = cost;
    this.floorBytes = simulate();
  }

  int size() {
    return tasks.size();
  }

  Task task(int i) {
    return tasks.get(i);
  }

  /** Tasks whose results task {@code i} reads, each once. */
  int[] reads(int i) {
    return reads[i];
  }

  /** Tasks that must be done before task {@code i}, each once. */
  int[] predecessors(int i) {
    return predecessors[i];
  }

  /** Tasks that have task {@code i} among their predecessors. */
  int[] successors(int i) {
    return successors[i];
  }

  /** Most bytes alive at once when one thread does the tasks in order. */
  long floorBytes() {
    return floorBytes;
  }

  /** Rough cost of all tasks. */
  double costNanos() {
    return costNanos;
  }

  private long simulate() {
    int[] readers = readerCounts();
    long now = 0;
    long peak = 0;
    for (int i = 0; i < tasks.size(); i++) {
      now += tasks.get(i).scratchBytes() + tasks.get(i).resultBytes();
      peak = Math.max(peak, now);
      now -= tasks.get(i).scratchBytes();
      if (readers[i] == 0) {
        now -= tasks.get(i).resultBytes();
      }
      for (int r : reads[i]) {
        if (--readers[r] == 0) {
          now -= tasks.get(r).resultBytes();
        }
      }
    }
    return peak;
  }

  /** How many tasks read the result of each. */
  int[] readerCounts() {
    int[] readers = new int[tasks.size()];
    for (int[] of : reads) {
      for (int r : of) {
        readers[r]++;
      }
    }
    return readers;
  }

  private static int[] indices(List<Task> of, Map<Task, Integer> index) {
    return of.stream().mapToInt(index::get).distinct().toArray();
  }

  private static int[] union(int[] a, int[] b) {
    int[] all = Arrays.copyOf(a, a.length + b.length);
    System.arraycopy(b, 0, all, a.length, b.length);
    return Arrays.stream(all).distinct().toArray();
  }

  private static List<Task> order(List<Task> last) {
    List<Task> order = new ArrayList<>();
    Map<Task, Boolean> seen = new IdentityHashMap<>();
    Deque<Visit> stack = new ArrayDeque<>();
    for (Task root : last) {
      if (seen.put(root, true) == null) {
        stack.push(new Visit(root));
      }
      while (!stack.isEmpty()) {
        Task before = stack.peek().next();
        if (before == null) {
          order.add(stack.pop().task);
        } else if (seen.put(before, true) == null) {
          stack.push(new Visit(before));
        }
      }
    }
    return order;
  }

  /** A task on the way down, and which of its predecessors comes next. */
  private static final class Visit {
    final Task task;
    private int next;

    Visit(Task task) {
      this.task = task;
    }

    @Nullable Task next() {
      int i = next++;
      int after = task.after().size();
      if (i < after) {
        return task.after().get(i);
      }
      return i - after < task.reads().size() ? task.reads().get(i - after) : null;
    }
  }
}
