package org.duskply.engine.deliver;

import java.lang.reflect.Method;

/**
 * Bytes of heap that the current thread has ever allocated, as the JVM counts them. Asked by
 * reflection: the module under test does not read the JVM's management, nor should it.
 */
final class Allocated {
  private Allocated() {}

  static long bytes() throws ReflectiveOperationException {
    Object bean =
        Class.forName("java.lang.management.ManagementFactory")
            .getMethod("getThreadMXBean")
            .invoke(null);
    Method count =
        Class.forName("com.sun.management.ThreadMXBean")
            .getMethod("getThreadAllocatedBytes", long.class);
    return (long) count.invoke(bean, Thread.currentThread().getId());
  }
}
