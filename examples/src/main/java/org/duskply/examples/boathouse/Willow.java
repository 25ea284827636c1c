package org.duskply.examples.boathouse;

import org.duskply.examples.trace.Leaf;
import org.duskply.examples.trace.Maths;
import org.duskply.examples.trace.Noise;
import org.duskply.examples.trace.Rod;
import org.duskply.examples.trace.Vec;

/**
 * The willow at the right: a leaning trunk, limbs that arch out, and hundreds of hanging switches.
 */
final class Willow {
  private static final int LIMBS = 17;
  private static final int SWITCHES = 8;

  private final Scenery scenery;

  Willow(Scenery scenery) {
    this.scenery = scenery;
  }

  void build() {
    Vec foot = Nature.WILLOW;
    Vec knee = foot.plus(new Vec(0.15, 1.1, 0));
    Vec fork = foot.plus(new Vec(-0.1, 2.5, 0.1));
    part(foot.plus(new Vec(0, -0.3, 0)), knee, 0.40, 0.29);
    part(knee, fork, 0.29, 0.25);
    for (int limb = 0; limb < LIMBS; limb++) {
      limb(fork, limb);
    }
  }

  private void part(Vec from, Vec to, double r0, double r1) {
    scenery.add(new Rod(from, to, r0, r1, Textures::bark, scenery.seed()));
  }

  private void limb(Vec fork, int limb) {
    double a = 2 * Math.PI * (limb + 0.6 * n(limb, 1)) / LIMBS;
    double out = 1.9 + 1.9 * n(limb, 2);
    double up = 2.0 + 2.2 * n(limb, 3);
    Vec way = new Vec(Maths.cos(a), 0, 0.8 * Maths.sin(a));
    Vec before = fork.plus(new Vec(0, -0.2, 0));
    int pieces = 9;
    for (int i = 1; i <= pieces; i++) {
      double k = (double) i / pieces;
      double arch = Maths.sin(Math.min(1, 1.12 * k) * Math.PI / 2) - 0.25 * k * k;
      double wag = 0.25 * (n(limb, 10 + i) - 0.5);
      Vec next =
          fork.plus(way.times(out * k))
              .plus(new Vec(wag, up * arch, 0.25 * (n(limb, 30 + i) - 0.5)));
      double r = 0.10 * (1 - k) * (1 - k) + 0.014;
      part(before, next, r + 0.015, r);
      if (i >= 2) {
        switches(limb, i, before, next);
      }
      before = next;
    }
  }

  private void switches(int limb, int piece, Vec from, Vec to) {
    int count = SWITCHES;
    for (int j = 0; j < count; j++) {
      int id = (limb * 16 + piece) * 16 + j;
      Vec top =
          from.towards(to, n(id, 41))
              .plus(new Vec(0.9 * (n(id, 42) - 0.5), 0.3 * n(id, 43), 0.9 * (n(id, 44) - 0.5)));
      double share = 0.40 + 0.58 * n(id, 45);
      double length = Math.min(share * 3.6, top.y() - 0.5 - 1.6 * n(id, 46));
      if (length > 0.4) {
        hang(top, length, id);
      }
    }
  }

  /** One switch: hangs in a gentle curve, leaves on alternate sides. */
  private void hang(Vec top, double length, int id) {
    double a = 2 * Math.PI * n(id, 51);
    Vec way = new Vec(Maths.cos(a), 0, Maths.sin(a)).times(0.10 + 0.18 * n(id, 52));
    Vec before = top;
    int leaves = (int) (length / 0.048);
    for (int i = 1; i <= leaves; i++) {
      double k = (double) i / leaves;
      double drop = length * k;
      Vec at =
          top.plus(way.times(Math.sqrt(k) * Math.min(1.6, length * 0.5)))
              .plus(new Vec(0, -drop, 0));
      int leaf = id * 128 + i;
      if (i % 6 == 0 || i == leaves) {
        part(before, at, 0.0035, 0.003);
        before = at;
      }
      double b = 2 * Math.PI * n(leaf, 53);
      double size = (0.052 + 0.030 * n(leaf, 54)) * (1 - 0.35 * k);
      Vec tip = new Vec(0.62 * Maths.cos(b), -0.78, 0.62 * Maths.sin(b)).times(size);
      double c = b + 1.57 + 1.4 * (n(leaf, 55) - 0.5);
      Vec side = new Vec(Maths.cos(c), 0.35 * (n(leaf, 56) - 0.5), Maths.sin(c)).times(0.0105);
      Vec across = side.minus(tip.times(side.dot(tip) / tip.dot(tip)));
      scenery.add(Leaf.pointed(at.plus(tip), tip, across, Textures::willowLeaf, scenery.seed()));
    }
  }

  private static double n(int a, int b) {
    return Noise.unit(a, b, 78);
  }
}
