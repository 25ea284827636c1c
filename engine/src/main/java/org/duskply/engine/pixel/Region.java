package org.duskply.engine.pixel;

/**
 * A rectangle of pixels with half-open bounds: from {@code left} and {@code top} up to, not
 * including, {@code right} and {@code bottom}. Every region without a pixel is equal to {@link
 * #EMPTY}.
 *
 * @param left first column
 * @param top first row
 * @param right one past the last column
 * @param bottom one past the last row
 */
public record Region(int left, int top, int right, int bottom) {
  /** The region without a pixel. */
  public static final Region EMPTY = new Region(0, 0, 0, 0);

  /**
   * Half the reach of {@link #EVERYWHERE}: far beyond any picture, yet safe to grow and add in
   * {@code int}.
   */
  public static final int FAR = 1 << 28;

  /** All pixels that can be meant. */
  public static final Region EVERYWHERE = new Region(-FAR, -FAR, FAR, FAR);

  public Region {
    if (right <= left || bottom <= top) {
      left = 0;
      top = 0;
      right = 0;
      bottom = 0;
    }
  }

  /** The region of {@code width × height} pixels at the origin. */
  public static Region ofSize(int width, int height) {
    return new Region(0, 0, width, height);
  }

  /** Columns. */
  public int width() {
    return right - left;
  }

  /** Rows. */
  public int height() {
    return bottom - top;
  }

  /** Pixels. */
  public long count() {
    return (long) width() * height();
  }

  /** Whether there is no pixel. */
  public boolean empty() {
    return right == left;
  }

  /** The pixels in both. */
  public Region meet(Region o) {
    return new Region(
        Math.max(left, o.left),
        Math.max(top, o.top),
        Math.min(right, o.right),
        Math.min(bottom, o.bottom));
  }

  /** Whether there is a pixel in both. */
  public boolean meets(Region o) {
    return !meet(o).empty();
  }

  /** The least region that holds both. */
  public Region hull(Region o) {
    if (empty()) {
      return o;
    }
    if (o.empty()) {
      return this;
    }
    return new Region(
        Math.min(left, o.left),
        Math.min(top, o.top),
        Math.max(right, o.right),
        Math.max(bottom, o.bottom));
  }

  /**
   * This region with {@code by} more pixels on each side (fewer below 0), held to {@link
   * #EVERYWHERE}; an empty one stays so.
   */
  public Region grow(int by) {
    return grow(by, by);
  }

  /** As {@link #grow(int)} with its own number across and down. */
  public Region grow(int across, int down) {
    if (empty()) {
      return EMPTY;
    }
    return new Region(
        clamp((long) left - across),
        clamp((long) top - down),
        clamp((long) right + across),
        clamp((long) bottom + down));
  }

  /** Whether every pixel of {@code o} is in this region. */
  public boolean contains(Region o) {
    return o.empty() || meet(o).equals(o);
  }

  /** Whether the pixel in column {@code x} of row {@code y} is in this region. */
  public boolean contains(int x, int y) {
    return x >= left && x < right && y >= top && y < bottom;
  }

  /** This region moved. */
  public Region move(int right, int down) {
    return empty()
        ? EMPTY
        : new Region(left + right, top + down, this.right + right, bottom + down);
  }

  /** The rows of this region from {@code top} up to {@code bottom}. */
  public Region rows(int top, int bottom) {
    return new Region(left, Math.max(this.top, top), right, Math.min(this.bottom, bottom));
  }

  private static int clamp(long v) {
    return (int) Math.max(-FAR, Math.min(FAR, v));
  }

  @Override
  public String toString() {
    return empty() ? "[]" : "[" + left + "," + top + " " + width() + "×" + height() + "]";
  }
}
