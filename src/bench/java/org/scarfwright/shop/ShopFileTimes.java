package org.scarfwright.shop;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.function.Supplier;
import org.scarfwright.ScarfwrightApplication;
import org.springframework.boot.builder.SpringApplicationBuilder;
import org.springframework.context.ConfigurableApplicationContext;

/**
 * How long the file of a large shop takes: starts the program on a shop that {@code LargeShop} filled, writes its shop file, starts
 * another on a new folder and reads the file there, which holds all of it against itself. Both are written out in seconds.
 *
 * <p>Arguments: the home of the large shop, a new folder for the file and the second shop; what begins with two hyphens goes to
 * the first program.
 */
public final class ShopFileTimes {
    private ShopFileTimes() {}

    public static void main(String[] args) throws IOException {
        Path folder = Files.createDirectories(Path.of(args[1]));
        Path file = folder.resolve("shop.zip");
        List<String> given = new ArrayList<>(List.of("--scarfwright.home=" + args[0]));
        given.addAll(Arrays.asList(args).subList(2, args.length));
        try (ConfigurableApplicationContext large = program(given)) {
            timed("written", () -> large.getBean(ShopFiles.class).write(file));
        }
        System.out.printf(Locale.ROOT, "%d MB%n", Files.size(file) / 1_000_000);
        try (ConfigurableApplicationContext empty = program(List.of("--scarfwright.home=" + folder.resolve("home")))) {
            timed("read", () -> empty.getBean(ShopFiles.class).read(file));
        }
    }

    private static ConfigurableApplicationContext program(List<String> arguments) {
        List<String> all = new ArrayList<>(List.of("--server.port=0", "--scarfwright.ledger.check-by-itself=false"));
        all.addAll(arguments);
        return new SpringApplicationBuilder(ScarfwrightApplication.class).run(all.toArray(String[]::new));
    }

    private static void timed(String what, Supplier<ShopFiles.Contents> work) {
        long begun = System.nanoTime();
        ShopFiles.Contents contents = work.get();
        long lines = contents.lists().stream().mapToLong(ShopFiles.Count::lines).sum();
        System.out.printf(
                Locale.ROOT,
                "%s: %d lines in %.1f s%n",
                what,
                lines,
                Duration.ofNanos(System.nanoTime() - begun).toMillis() / 1000.0);
    }
}
