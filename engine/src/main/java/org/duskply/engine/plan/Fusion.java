package org.duskply.engine.plan;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;

/**
 * Turns point nodes into a {@link Program}. Values live in registers; a step and all that it alone
 * needs stand inside the mix that shows it, so that they run on the mask's runs only. A mix works
 * in place on the register of the picture below where it is the last to read it.
 */
final class Fusion {
  private final Predicate<Node> stage;
  private final boolean inSpans;
  private final List<FrameNode> frames = new ArrayList<>();
  private final List<Node> stages = new ArrayList<>();
  private final List<Integer> registerPlanes = new ArrayList<>();
  private final Deque<Integer> free = new ArrayDeque<>();

  private Fusion(Predicate<Node> stage, boolean inSpans) {
    this.stage = stage;
    this.inSpans = inSpans;
  }

  /**
   * The program of {@code root}.
   *
   * @param stage which nodes are finished beforehand and only read
   * @param inSpans whether mixes skip what their masks do not show; without, every mix is done in
   *     full by its own row method
   */
  static Program compile(PointNode root, Predicate<Node> stage, boolean inSpans) {
    Fusion fusion = new Fusion(node -> node != root && stage.test(node), inSpans);
    Scope scope = new Scope(null);
    int result = fusion.emit(root, scope);
    int[] planes = fusion.registerPlanes.stream().mapToInt(Integer::intValue).toArray();
    return new Program(fusion.frames, fusion.stages, scope.instructions, planes, result);
  }

  /** Instructions that run over the same pixels, and the values that are there while they do. */
  private static final class Scope {
    final @Nullable Scope outer;
    final List<Instruction> instructions = new ArrayList<>();
    final Map<Node, Integer> values = new IdentityHashMap<>();
    final List<Integer> owned = new ArrayList<>();

    Scope(@Nullable Scope outer) {
      this.outer = outer;
    }

    @Nullable Integer find(Node node) {
      for (Scope s = this; s != null; s = s.outer) {
        Integer register = s.values.get(node);
        if (register != null) {
          return register;
        }
      }
      return null;
    }
  }

  /** Emits what computes {@code node} and returns the register that holds it. */
  private int emit(Node node, Scope scope) {
    // The pictures below are a chain as long as the recipe: walked, not recursed.
    Deque<Mix> chain = new ArrayDeque<>();
    Node at = node;
    while (inSpans && at instanceof Mix mix && scope.find(at) == null && !stage.test(at)) {
      chain.push(mix);
      at = mix.below();
    }
    int register = emitOne(at, scope);
    while (!chain.isEmpty()) {
      register = emitMix(chain.pop(), register, scope);
    }
    return register;
  }

  private int emitOne(Node node, Scope scope) {
    Integer known = scope.find(node);
    if (known != null) {
      return known;
    }
    if (stage.test(node)) {
      int register = take(node, scope);
      scope.instructions.add(new Instruction.LoadStage(register, leaf(stages, node), node));
      return register;
    }
    if (node instanceof FrameNode frame) {
      int register = take(node, scope);
      scope.instructions.add(new Instruction.LoadFrame(register, leaf(frames, frame)));
      return register;
    }
    return emitPoint((PointNode) node, scope);
  }

  private int emitPoint(PointNode node, Scope scope) {
    int[] in = new int[node.inputs().size()];
    for (int i = 0; i < in.length; i++) {
      in[i] = emit(node.inputs().get(i), scope);
    }
    int register = take(node, scope);
    scope.instructions.add(new Instruction.Apply(node, in, register));
    return register;
  }

  private int emitMix(Mix mix, int below, Scope scope) {
    // The result's register is taken first: it holds the picture below while the step is made.
    boolean inPlace = Integer.valueOf(below).equals(scope.values.get(mix.below()));
    int to = inPlace ? below : take(mix, scope);
    Scope inner = new Scope(scope);
    int step = emit(mix.step(), inner);
    FrameNode covering = mix.covering();
    int coverage = covering == null ? -1 : emit(covering, inner);
    Node mask = mix.mask();
    scope.instructions.add(
        new Instruction.MixSpans(
            mix,
            below,
            to,
            mask == null ? -1 : leaf(stages, mask),
            List.copyOf(inner.instructions),
            step,
            coverage));
    scope.values.remove(mix.below());
    scope.values.put(mix, to);
    free.addAll(inner.owned);
    return to;
  }

  /** A register for {@code node}'s value, kept until the scope ends. */
  private int take(Node node, Scope scope) {
    int planes = node.planes();
    Integer register = null;
    for (Integer candidate : free) {
      if (registerPlanes.get(candidate) == planes) {
        register = candidate;
        break;
      }
    }
    if (register == null) {
      register = registerPlanes.size();
      registerPlanes.add(planes);
    } else {
      free.remove(register);
    }
    scope.owned.add(register);
    scope.values.put(node, register);
    return register;
  }

  private static <N extends Node> int leaf(List<N> leaves, N node) {
    for (int i = 0; i < leaves.size(); i++) {
      if (leaves.get(i) == node) {
        return i;
      }
    }
    leaves.add(node);
    return leaves.size() - 1;
  }
}
