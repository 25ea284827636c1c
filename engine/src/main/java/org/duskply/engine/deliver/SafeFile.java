package org.duskply.engine.deliver;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.SeekableByteChannel;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.HexFormat;
import java.util.concurrent.ThreadLocalRandom;
import java.util.regex.Pattern;

/**
 * A file that is either there whole or not there. Bytes go into a temporary file in the same
 * folder; {@link #commit} forces them to the disk and gives the file its name in one step that
 * replaces what stood there. Until then, whatever happens, the old file stays as it was.
 *
 * <ul>
 *   <li>Any failure, and {@link #close} without {@link #commit}, deletes the temporary file.
 *   <li>A process that is killed or a machine that loses power leaves it behind: {@code
 *       .NAME.0123abcd.part}, eight hexadecimal digits that differ from run to run. {@link
 *       #isLeftOver} knows such names. They are never deleted here, for another process may be
 *       writing one; when no render runs, all can go.
 *   <li>Folders that are missing are made. Whether a file may be written there at all is {@link
 *       OutFolder}'s matter.
 *   <li>Where the target is a symbolic link the link itself is replaced; what it points to, perhaps
 *       outside the folder that was allowed, is not touched.
 *   <li>A target that is a folder, a device or write-protected is refused before anything is
 *       written.
 *   <li>A file system without an atomic rename gets a plain one: for a moment neither file may have
 *       the name, but never a half-written one.
 * </ul>
 *
 * For one thread at a time.
 */
public final class SafeFile implements AutoCloseable {
  /** Bytes written at once; the JDK keeps a copy of this size outside the heap for each thread. */
  static final int SLICE = 1 << 18;

  /** Characters of the target's name in the temporary one, so that it stays within 255 bytes. */
  private static final int NAME_KEPT = 50;

  private static final int NAME_TRIES = 100;

  private static final Pattern LEFT_OVER = Pattern.compile("\\..+\\.[0-9a-f]{8}\\.part");

  private final Path target;
  private final Path part;
  private final SeekableByteChannel channel;
  private boolean done;

  private SafeFile(Path target, Path part, SeekableByteChannel channel) {
    this.target = target;
    this.part = part;
    this.channel = channel;
  }

  /** How a temporary file is opened: for writing, and only if it is not there yet. */
  interface Opener {
    SeekableByteChannel open(Path part) throws IOException;
  }

  /**
   * Begins a file.
   *
   * @param target where it will stand
   * @throws DeliverException if no file can be written there
   */
  public static SafeFile open(Path target) {
    return open(
        target,
        part ->
            Files.newByteChannel(part, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE));
  }

  static SafeFile open(Path target, Opener opener) {
    refuseOddTarget(target);
    try {
      makeFolder(folder(target));
      return openPart(target, opener);
    } catch (IOException e) {
      throw WriteFault.of(target, e, 0);
    }
  }

  /** The folder of a file, also of one that is named without. */
  static Path folder(Path target) {
    Path parent = target.getParent();
    return parent == null ? target.getFileSystem().getPath("").toAbsolutePath() : parent;
  }

  /** Whether a file is what a killed process leaves of an unfinished one. */
  public static boolean isLeftOver(Path file) {
    Path name = file.getFileName();
    return name != null && LEFT_OVER.matcher(name.toString()).matches();
  }

  /** Where the file will stand. */
  public Path target() {
    return target;
  }

  /** Bytes written so far. */
  public long size() {
    try {
      return channel.size();
    } catch (IOException e) {
      throw fail(e, 0);
    }
  }

  /** Writes at the end. */
  public void append(byte[] bytes) {
    write(size(), bytes);
  }

  /** Writes over what is there from byte {@code position} on. */
  public void write(long position, byte[] bytes) {
    try {
      channel.position(position);
      for (int from = 0; from < bytes.length; from += SLICE) {
        writeFully(ByteBuffer.wrap(bytes, from, Math.min(SLICE, bytes.length - from)));
      }
    } catch (IOException e) {
      throw fail(e, bytes.length);
    }
  }

  /**
   * Forces everything to the disk and puts the file at its name.
   *
   * @throws DeliverException if that fails; what stood there before still does
   */
  public void commit() {
    try {
      if (channel instanceof FileChannel file) {
        file.force(true);
      }
      channel.close();
      rename();
      done = true;
    } catch (IOException e) {
      throw fail(e, 0);
    }
    forceFolder();
  }

  /** Ends the work; without {@link #commit} before it, as if it had never begun. */
  @Override
  public void close() {
    if (!done) {
      discard();
    }
  }

  private void writeFully(ByteBuffer buffer) throws IOException {
    while (buffer.hasRemaining()) {
      channel.write(buffer);
    }
  }

  private void rename() throws IOException {
    if (Files.isDirectory(target, LinkOption.NOFOLLOW_LINKS)) {
      throw new IOException("a folder has this name");
    }
    try {
      Files.move(part, target, StandardCopyOption.ATOMIC_MOVE);
    } catch (AtomicMoveNotSupportedException e) {
      Files.move(part, target, StandardCopyOption.REPLACE_EXISTING);
    }
  }

  /** Makes the new name outlast a loss of power. */
  private void forceFolder() {
    try (FileChannel folder = FileChannel.open(folder(target), StandardOpenOption.READ)) {
      folder.force(true);
    } catch (IOException | RuntimeException e) {
      // Not every system lets a folder be opened; the whole file has its name all the same.
    }
  }

  private DeliverException fail(IOException e, long wanted) {
    DeliverException fault =
        WriteFault.of(target, e, wanted); // asks for the room before it is freed
    discard();
    return fault;
  }

  private void discard() {
    done = true;
    try {
      channel.close();
    } catch (IOException e) {
      // It is deleted next; what it held no longer matters.
    }
    try {
      Files.deleteIfExists(part);
    } catch (IOException e) {
      // Its name tells what it is.
    }
  }

  private static void refuseOddTarget(Path target) {
    if (target.getFileName() == null || Files.isDirectory(target, LinkOption.NOFOLLOW_LINKS)) {
      throw new DeliverException(target + " cannot be written: a folder has this name.");
    }
    if (!Files.exists(target, LinkOption.NOFOLLOW_LINKS) || Files.isSymbolicLink(target)) {
      return;
    }
    if (!Files.isRegularFile(target, LinkOption.NOFOLLOW_LINKS)) {
      throw new DeliverException(target + " cannot be written: what has this name is not a file.");
    }
    if (!Files.isWritable(target)) {
      throw new DeliverException(
          target + " cannot be written: the file that is there is write-protected.");
    }
  }

  private static void makeFolder(Path folder) throws IOException {
    if (!Files.isDirectory(folder)) { // a link to a folder will do, which createDirectories refuses
      Files.createDirectories(folder);
    }
  }

  private static SafeFile openPart(Path target, Opener opener) throws IOException {
    for (int i = 0; ; i++) {
      Path part = target.resolveSibling(partName(target));
      try {
        return new SafeFile(target, part, opener.open(part));
      } catch (FileAlreadyExistsException e) {
        if (i == NAME_TRIES) {
          throw e;
        }
      }
    }
  }

  private static String partName(Path target) {
    String name = String.valueOf(target.getFileName());
    int kept =
        name.offsetByCodePoints(0, Math.min(NAME_KEPT, name.codePointCount(0, name.length())));
    String digits = HexFormat.of().toHexDigits(ThreadLocalRandom.current().nextInt());
    return "." + name.substring(0, kept) + "." + digits + ".part";
  }
}
