package org.duskply.engine.frame;

/**
 * Unpacks deflated bytes in the zlib form (RFC 1950, 1951). However much a run could unpack to, no
 * more than is asked for is ever made.
 */
interface DeflateUnpacker extends Unpacker {
  /** Whether something was met that is no deflated data, or whose checksum does not match. */
  boolean damaged();
}
