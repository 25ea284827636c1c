package org.duskply.examples.boathouse;

/** The light sources, each of which is rendered into a picture of its own. Light adds. */
public final class Lights {
  /** The blue of the whole sky after sunset. */
  public static final int DOME = 0;

  /** The afterglow over the hills, and the clouds that it lights from below. */
  public static final int AFTERGLOW = 1;

  /** The lit rooms, and what spills out through the panes. */
  public static final int ROOMS = 2;

  public static final int LANTERNS = 3;
  public static final int BRAZIER = 4;

  /** The first of the flash positions; they follow one another. */
  public static final int FLASH = 5;

  public static final int FLASHES = 14;
  public static final int COUNT = FLASH + FLASHES;

  private Lights() {}
}
