package org.duskply.engine.deliver;

import java.io.IOException;
import java.nio.channels.ClosedByInterruptException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** Why a file could not be written, in the words of the person at the desk. */
final class WriteFault {
  private WriteFault() {}

  /**
   * The exception to throw.
   *
   * @param target the file that was meant
   * @param fault what the system said
   * @param wanted bytes that were to be written when it failed; a disk with less room than this is
   *     called full
   */
  static DeliverException of(Path target, IOException fault, long wanted) {
    return new DeliverException(
        target + " cannot be written: " + reason(target, fault, wanted), fault);
  }

  private static String reason(Path target, IOException fault, long wanted) {
    if (fault instanceof ClosedByInterruptException) {
      return "the work was interrupted.";
    }
    if (fault instanceof AccessDeniedException) {
      return "you may not write in the folder " + folder(target) + ".";
    }
    if (fault instanceof FileAlreadyExistsException already) {
      return already.getFile() + " is in the way, a file where a folder is meant.";
    }
    if (fault instanceof NoSuchFileException missing) {
      return missing.getFile() + " is not there and cannot be made.";
    }
    if (diskFull(target, fault, wanted)) {
      return "the disk is full.";
    }
    String said = said(fault);
    return said == null ? "the disk refused it." : "the system says \"" + said + "\".";
  }

  /**
   * The system's wording differs from one to the next and with its language; the room that is left
   * does not.
   */
  private static boolean diskFull(Path target, IOException fault, long wanted) {
    String said = said(fault);
    String lower = said == null ? "" : said.toLowerCase(Locale.ROOT);
    if (lower.contains("no space left") || lower.contains("out of disk space")) {
      return true;
    }
    try {
      return Files.getFileStore(folder(target)).getUsableSpace() < wanted;
    } catch (IOException | RuntimeException unknown) {
      return false; // a disk that cannot be asked is not known to be full
    }
  }

  private static @Nullable String said(IOException fault) {
    return fault instanceof FileSystemException e && e.getReason() != null
        ? e.getReason()
        : fault.getMessage();
  }

  private static Path folder(Path target) {
    return SafeFile.folder(target);
  }
}
