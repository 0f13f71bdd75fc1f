package spanwright.kernel.dispatch;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Memory and processor use, by the names that front ends look for. What this system does not tell is left
 * out. Percentages of a processor are over the time since the last call.
 */
final class Usage {
    private static final Path STATUS = Path.of("/proc/self/status");
    private static final Path MEMINFO = Path.of("/proc/meminfo");

    private long lastCpuNanos = processCpuNanos();
    private long lastNanos = System.nanoTime();

    /** The figures now; used by one thread. */
    Map<String, Object> figures() {
        final Map<String, Object> figures = new LinkedHashMap<>();
        figures.put("hostname", hostname());
        figures.put("pid", ProcessHandle.current().pid());
        figures.put("kernel_cpu", cpuPercent());
        figures.put("kernel_memory", memoryBytes());
        figures.put("cpu_count", Runtime.getRuntime().availableProcessors());
        hostMemory().ifPresent(m -> figures.put("host_virtual_memory", m));
        return figures;
    }

    private static String hostname() {
        try {
            return InetAddress.getLocalHost().getHostName();
        } catch (UnknownHostException e) {
            return "localhost";
        }
    }

    private static long processCpuNanos() {
        return ProcessHandle.current().info().totalCpuDuration().map(java.time.Duration::toNanos).orElse(0L);
    }

    private double cpuPercent() {
        final long cpu = processCpuNanos();
        final long now = System.nanoTime();
        final double percent = 100.0 * (cpu - lastCpuNanos) / Math.max(1, now - lastNanos);
        lastCpuNanos = cpu;
        lastNanos = now;
        return Math.max(0, Math.round(percent * 10) / 10.0);
    }

    /** Resident memory of the process; where the system does not tell, what the virtual machine has taken. */
    private static long memoryBytes() {
        try {
            for (final String line : lines(STATUS)) {
                if (line.startsWith("VmRSS:")) {
                    return kilobytes(line);
                }
            }
            return committed();
        } catch (IOException | NumberFormatException e) {
            return committed();
        }
    }

    private static long committed() {
        final var memory = ManagementFactory.getMemoryMXBean();
        return memory.getHeapMemoryUsage().getCommitted() + memory.getNonHeapMemoryUsage().getCommitted();
    }

    private static Optional<Map<String, Object>> hostMemory() {
        try {
            long total = -1;
            long available = -1;
            for (final String line : lines(MEMINFO)) {
                total = line.startsWith("MemTotal:") ? kilobytes(line) : total;
                available = line.startsWith("MemAvailable:") ? kilobytes(line) : available;
            }
            if (total <= 0 || available < 0) {
                return Optional.empty();
            }
            final Map<String, Object> host = new LinkedHashMap<>();
            host.put("total", total);
            host.put("available", available);
            host.put("used", total - available);
            host.put("percent", Math.round(1000.0 * (total - available) / total) / 10.0);
            return Optional.of(host);
        } catch (IOException | NumberFormatException e) {
            return Optional.empty();
        }
    }

    private static List<String> lines(Path path) throws IOException {
        return Files.isReadable(path) ? Files.readAllLines(path) : List.of();
    }

    private static long kilobytes(String line) {
        return Long.parseLong(line.replaceAll("\\D+", "")) * 1024;
    }
}
