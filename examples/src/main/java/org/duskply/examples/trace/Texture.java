package org.duskply.examples.trace;

/** How a surface looks: sets colour, highlight and relief of a place from where it lies. */
@FunctionalInterface
public interface Texture {
  /** Sets what the surface gives back; it must call {@link Surface#colour} first. */
  void paint(Surface at);
}
