package org.scarfwright.web;

import jakarta.servlet.Filter;
import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.ServletRequest;
import jakarta.servlet.ServletResponse;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.scarfwright.ScarfwrightApplication;
import org.springframework.boot.SpringApplication;
import org.springframework.boot.web.servlet.FilterRegistrationBean;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.context.support.GenericApplicationContext;
import org.springframework.core.Ordered;

/**
 * The table of pages in {@code src/docs/benchmarks.md}: starts the program on a shop that {@code LargeShop} filled and asks it for
 * each kind of page and report, some times to warm it up and some times measured, one request after the other, over the
 * loopback. Measured is the server's time, from the first filter until the answer is written: by the clock, and as processor time of
 * the thread that answers, in which the embedded database works too. On a busy machine only the second can be
 * compared. Pieces, entries and plans are drawn at random with a fixed seed.
 *
 * <p>Arguments, all optional: {@code port=8430 times=40 warm=10 rounds=1 only=rack|week}, the last an
 * expression over room and name; what begins with two hyphens goes to the program, for
 * example {@code --scarfwright.home=target/large}.
 */
public final class PageTimes {
    private static final String CUT = """
            {"who": "Ada", "fields": {"left-length": "60 mm", "left-width": "20 mm", "left-thickness": "6 mm",
             "rest-1-length": "40 mm", "rest-1-width": "20 mm", "rest-1-thickness": "6 mm",
             "waste-kerf": "5", "waste-trim": "4", "waste-planing": "9"}}""";
    private static final String ENTRY = "\"entry\":(\\d+)";

    private static final BlockingQueue<Served> SERVED = new LinkedBlockingQueue<>();

    private final HttpClient client = HttpClient.newHttpClient();
    private final String base;
    private final Random random = new Random(1);
    private final Map<String, List<String>> samples = new LinkedHashMap<>();

    private PageTimes(String base) {
        this.base = base;
    }

    /** What one answer took, in nanoseconds. */
    private record Served(long wall, long processor) {}

    /** Stands around everything else. */
    private static final class Watch implements Filter {
        private final ThreadMXBean threads = ManagementFactory.getThreadMXBean();

        @Override
        public void doFilter(ServletRequest request, ServletResponse response, FilterChain chain)
                throws IOException, ServletException {
            long wall = System.nanoTime();
            long processor = threads.getCurrentThreadCpuTime();
            try {
                chain.doFilter(request, response);
                response.flushBuffer();
            } finally {
                SERVED.add(new Served(System.nanoTime() - wall, threads.getCurrentThreadCpuTime() - processor));
            }
        }
    }

    /** A line of the table. */
    private record Asked(String room, String name, String path, int limit) {}

    private static List<Asked> asked() {
        List<Asked> all = new ArrayList<>();
        LocalDate today = LocalDate.now();
        String year = "from=" + today.minusYears(1).plusDays(1) + "&to=" + today;
        page(all, "shop", "today", "/");
        page(all, "shop", "settings", "/shop");
        page(all, "shop", "workshop", "/shop/workshop");
        page(all, "shop", "sources", "/science");
        page(all, "rack", "list", "/rack");
        page(all, "rack", "list, some page", "/rack?page={page}");
        page(all, "rack", "list, last page", "/rack?page=999999");
        page(all, "rack", "free pieces", "/rack?state=on_rack");
        page(all, "rack", "of a wood", "/rack?wood=walnut_black");
        page(all, "rack", "in a place", "/rack?place=Bay+7");
        page(all, "rack", "at least so large", "/rack?minLength=800&minWidth=80&minThickness=25");
        page(all, "rack", "longest first", "/rack?sort=longest");
        page(all, "rack", "longest first, last page", "/rack?sort=longest&page=999999");
        page(all, "rack", "newest first", "/rack?sort=newest");
        page(all, "rack", "search for a wood", "/rack?q=walnut");
        page(all, "rack", "search in notes", "/rack?q=figured");
        page(all, "rack", "search for a code", "/rack?q={code}");
        page(all, "rack", "search for nothing there", "/rack?q=zzzzz");
        page(all, "rack", "can be a neck", "/rack?can=neck");
        page(all, "rack", "can be a head, free, last page", "/rack?can=head&state=on_rack&page=99999");
        page(all, "rack", "a piece", "/rack/{code}");
        page(all, "rack", "a piece, edit", "/rack/{code}/edit");
        page(all, "rack", "a piece, measure", "/rack/{code}/measure");
        page(all, "rack", "a piece, cut", "/rack/{code}/cut");
        page(all, "rack", "a piece, scrap or sell", "/rack/{code}/away");
        page(all, "rack", "by its label", "/p/{code}");
        page(all, "rack", "by a code said wrongly", "/p?code={code}X");
        page(all, "rack", "new piece", "/rack/new");
        page(all, "rack", "labels", "/labels?q={free}");
        page(all, "wood", "woods", "/wood");
        page(all, "necks", "designs", "/designs");
        page(all, "necks", "a design", "/designs/D-3");
        page(all, "necks", "orders", "/orders");
        page(all, "necks", "orders of a week", "/orders?week={week}");
        page(all, "matching", "match", "/match");
        page(all, "matching", "match of a week", "/match?week={week}");
        page(all, "matching", "a plan", "/match/{plan}");
        page(all, "week", "week", "/week");
        page(all, "week", "a week", "/week?week={week}");
        page(all, "week", "bench", "/bench");
        page(all, "ledger", "newest", "/ledger");
        page(all, "ledger", "up to some entry", "/ledger?before={entry}");
        page(all, "ledger", "first entries", "/ledger?before=60");
        page(all, "ledger", "of a piece", "/ledger?piece={code}");
        page(all, "ledger", "an entry", "/ledger/{entry}");
        page(all, "ledger", "an entry that can be taken back", "/ledger/{last}");
        page(all, "ledger", "check", "/ledger/check");
        page(all, "ledger", "family tree", "/ledger/tree/{code}");
        page(all, "api", "pieces", "/api/rack/pieces");
        page(all, "api", "pieces, some page of 500", "/api/rack/pieces?size=500&page={page500}");
        page(all, "api", "a piece", "/api/rack/pieces/{code}");
        page(all, "api", "acts", "/api/ledger");
        page(all, "api", "acts up to some entry", "/api/ledger?before={entry}");
        page(all, "api", "an entry", "/api/ledger/entries/{entry}");
        page(all, "api", "bench", "/api/bench");
        page(all, "api", "orders of a week", "/api/orders?week={week}");
        for (String by : List.of("week", "month", "wood", "lot", "design", "person")) {
            report(all, "yield", "by " + by + ", twelve months", "/yield?by=" + by + "&" + year);
            report(all, "yield", "by " + by + ", all time", "/yield?by=" + by + "&from=2000-01-01");
        }
        report(all, "yield", "as it opens", "/yield");
        report(all, "yield", "rows, all time", "/yield/rows?by=week&what=input&from=2000-01-01");
        report(all, "yield", "rows, last page", "/yield/rows?by=week&what=input&from=2000-01-01&page=999999");
        report(all, "yield", "rows of a wood, kerf", "/yield/rows?by=wood&key=wenge&what=kerf&from=2000-01-01");
        report(all, "yield", "rows of a design, spoilt", "/yield/rows?by=design&key=D-3&what=spoilt&from=2000-01-01");
        report(all, "yield", "rows of a person, rescued", "/yield/rows?by=person&key=Eve&what=rescued&from=2000-01-01");
        report(all, "yield", "rows of a design, all time", "/yield/rows?by=design&key=D-3&what=input");
        report(all, "yield", "rows of a design, last page", "/yield/rows?by=design&key=D-3&what=input&page=999999");
        report(all, "yield", "rows of all designs, last page", "/yield/rows?by=design&what=input&page=999999");
        report(all, "yield", "rows of a person, all time", "/yield/rows?by=person&key=Ada&what=input");
        report(all, "yield", "rows of a person, last page", "/yield/rows?by=person&key=Ada&what=input&page=999999");
        report(all, "yield", "rows of a wood, all time", "/yield/rows?by=wood&key=wenge&what=input");
        report(all, "yield", "rows of a wood, last page", "/yield/rows?by=wood&key=wenge&what=input&page=999999");
        report(all, "yield", "rows of no lot, all time", "/yield/rows?by=lot&key=&what=input");
        report(
                all,
                "yield",
                "rows of a design beside the plan",
                "/yield/rows?by=design&key=D-3&what=parts&beside=plan");
        report(
                all,
                "yield",
                "rows of all beside the plan, twelve months",
                "/yield/rows?what=waste&beside=plan&" + year);
        report(all, "yield", "rows of one entry", "/yield/rows?what=waste&entry={entry}");
        report(all, "yield", "costs of necks, all time", "/yield/necks");
        report(all, "yield", "costs of necks of a design, last page", "/yield/necks?design=D-3&cost=known&page=999999");
        report(all, "yield", "costs of necks, the most first", "/yield/necks?first=most");
        report(all, "yield", "what became of all wood", "/yield/flow");
        report(all, "yield", "what became of all wood as CSV", "/yield/flow.csv");
        report(all, "yield", "moisture over time", "/yield/readings");
        report(
                all,
                "yield",
                "moisture of a wood, rows of a month",
                "/yield/readings?wood=wenge&month=" + today.toString().substring(0, 7));
        report(all, "yield", "moisture over time as CSV", "/yield/readings.csv");
        report(all, "yield", "offcuts of any age", "/yield/offcuts?months=0");
        report(all, "yield", "age of the rack as CSV", "/yield/age.csv");
        report(all, "yield", "age, a bar as CSV", "/yield/age.csv?months=12");
        report(all, "yield", "CSV by lot, all time", "/yield.csv?by=lot&from=2000-01-01");
        report(all, "yield", "CSV by design, twelve months", "/yield.csv?by=design&" + year);
        report(all, "yield", "rows as CSV, a month", "/yield/rows.csv?by=week&what=input&" + month(today));
        report(all, "yield", "age of the rack", "/yield/age");
        report(all, "yield", "age, rows of a bar", "/yield/age?months=12");
        report(all, "yield", "offcuts not worth keeping", "/yield/offcuts");
        report(all, "yield", "what runs short", "/short");
        report(all, "api", "yield by week, twelve months", "/api/yield?by=week&" + year);
        report(all, "api", "yield by lot, all time", "/api/yield?by=lot&from=2000-01-01");
        report(all, "api", "yield rows", "/api/yield/rows?by=week&what=input&from=2000-01-01");
        report(all, "api", "costs of necks", "/api/yield/necks?size=500");
        report(all, "api", "what became of all wood", "/api/yield/flow");
        report(all, "api", "moisture over time", "/api/yield/readings");
        report(all, "api", "offcuts", "/api/yield/offcuts");
        report(all, "api", "age", "/api/yield/age");
        report(all, "api", "balance", "/api/ledger/balance");
        return all;
    }

    private static String month(LocalDate today) {
        return "from=" + today.minusMonths(1) + "&to=" + today;
    }

    private static void page(List<Asked> all, String room, String name, String path) {
        all.add(new Asked(room, name, path, 50));
    }

    private static void report(List<Asked> all, String room, String name, String path) {
        all.add(new Asked(room, name, path, 300));
    }

    public static void main(String[] args) throws IOException, InterruptedException {
        Map<String, String> asked = new LinkedHashMap<>();
        for (String arg : args) {
            asked.put(arg.substring(0, arg.indexOf('=')), arg.substring(arg.indexOf('=') + 1));
        }
        String port = asked.getOrDefault("port", "8430");
        SpringApplication program = new SpringApplication(ScarfwrightApplication.class);
        program.addInitializers(context -> ((GenericApplicationContext) context)
                .registerBean("pageTimes", FilterRegistrationBean.class, () -> {
                    FilterRegistrationBean<Watch> watch = new FilterRegistrationBean<>(new Watch());
                    watch.setOrder(Ordered.HIGHEST_PRECEDENCE);
                    return watch;
                }));
        List<String> given = new ArrayList<>(List.of("--server.port=" + port));
        given.addAll(Arrays.stream(args).filter(a -> a.startsWith("--")).toList());
        try (ConfigurableApplicationContext context = program.run(given.toArray(String[]::new))) {
            PageTimes pages = new PageTimes("http://127.0.0.1:" + port);
            if (given.stream().noneMatch(a -> a.startsWith("--scarfwright.ledger.check-by-itself=false"))) {
                pages.untilChecked();
            }
            pages.sample();
            int times = Integer.parseInt(asked.getOrDefault("times", "40"));
            int warm = Integer.parseInt(asked.getOrDefault("warm", "10"));
            System.out.println(
                    "| room | page | status | kB | processor ms p50 | p95 | wall ms p50 | p95 | max | bar |");
            System.out.println("|---|---|---|---|---|---|---|---|---|---|");
            String only = asked.getOrDefault("only", "");
            List<Asked> chosen = asked().stream()
                    .filter(one -> (one.room() + " " + one.name()).matches(".*(" + only + ").*"))
                    .toList();
            // What is compiled by the first requests of one page serves the others too.
            for (int i = 0; i < Integer.parseInt(asked.getOrDefault("rounds", "1")); i++) {
                for (Asked one : chosen) {
                    pages.body(pages.filled(one.path()));
                }
            }
            for (Asked one : chosen) {
                pages.measure(one, warm, times);
            }
            if ("deed a cut".matches(".*(" + only + ").*")) {
                pages.cuts(warm, times);
            }
        }
    }

    /** The check of the ledger that begins with the program would be measured too. */
    private void untilChecked() throws IOException, InterruptedException {
        while (send("/api/ledger/verification").statusCode() != 200) {
            Thread.sleep(1_000);
        }
        Matcher m = Pattern.compile("\"tookMillis\":(\\d+)").matcher(body("/api/ledger/verification"));
        System.out.println("check of the ledger: " + (m.find() ? m.group(1) : "?") + " ms");
    }

    private void sample() throws IOException, InterruptedException {
        int total = number(body("/api/rack/pieces?size=1"), "\"total\":(\\d+)");
        List<String> codes = new ArrayList<>();
        for (int i = 0; i < 12; i++) {
            codes.addAll(codes("/api/rack/pieces?size=5&page=" + (1 + random.nextInt(Math.max(1, total / 5)))));
        }
        int last = number(body("/api/ledger?size=1"), ENTRY);
        samples.put("code", codes);
        samples.put("free", codes("/api/rack/pieces?state=on_rack&size=60&page=7"));
        samples.put("last", List.of(String.valueOf(last)));
        samples.put("entry", numbers(last));
        samples.put("page", numbers(Math.max(1, total / 25)));
        samples.put("page500", numbers(Math.max(1, total / 500)));
        samples.put("plan", numbers(259));
        List<String> weeks = new ArrayList<>();
        for (int i = 0; i < 60; i++) {
            LocalDate day = LocalDate.now().minusWeeks(random.nextInt(250));
            weeks.add(String.format(
                    Locale.ROOT,
                    "%d-W%02d",
                    day.get(java.time.temporal.IsoFields.WEEK_BASED_YEAR),
                    day.get(java.time.temporal.IsoFields.WEEK_OF_WEEK_BASED_YEAR)));
        }
        samples.put("week", weeks);
    }

    private List<String> codes(String path) throws IOException, InterruptedException {
        List<String> codes = new ArrayList<>();
        Matcher m = Pattern.compile("\"code\":\"([^\"]+)\"").matcher(body(path));
        while (m.find()) {
            codes.add(m.group(1));
        }
        return codes;
    }

    private List<String> numbers(int most) {
        List<String> numbers = new ArrayList<>();
        for (int i = 0; i < 60; i++) {
            numbers.add(String.valueOf(1 + random.nextInt(most)));
        }
        return numbers;
    }

    private static int number(String body, String pattern) {
        Matcher m = Pattern.compile(pattern).matcher(body);
        return m.find() ? Integer.parseInt(m.group(1)) : 1;
    }

    private String body(String path) throws IOException, InterruptedException {
        return send(path).body();
    }

    private HttpResponse<String> send(String path) throws IOException, InterruptedException {
        return client.send(get(path), HttpResponse.BodyHandlers.ofString());
    }

    private void measure(Asked one, int warm, int times) throws IOException, InterruptedException {
        Times taken = new Times(one, times);
        for (int i = -warm; i < times; i++) {
            taken.take(i, get(filled(one.path())));
        }
        taken.print();
    }

    /** Times of one line of the table. */
    private final class Times {
        private final Asked one;
        private final double[] wall;
        private final double[] processor;
        private int status;
        private int size;

        Times(Asked one, int times) {
            this.one = one;
            this.wall = new double[times];
            this.processor = new double[times];
        }

        /**
         * Asks once.
         *
         * @param i which of the times; below zero to warm up
         * @return the answer
         */
        String take(int i, HttpRequest request) throws IOException, InterruptedException {
            SERVED.clear();
            HttpResponse<String> answer = client.send(request, HttpResponse.BodyHandlers.ofString());
            Served served = SERVED.take();
            if (answer.statusCode() > 399 && answer.statusCode() != status) {
                System.out.println(request.uri() + " " + answer.statusCode() + " " + answer.body());
            }
            status = Math.max(status, answer.statusCode());
            size = Math.max(size, answer.body().length());
            if (i >= 0) {
                wall[i] = served.wall() / 1e6;
                processor[i] = served.processor() / 1e6;
            }
            return answer.body();
        }

        void print() {
            Arrays.sort(wall);
            Arrays.sort(processor);
            int p95 = (int) Math.ceil(wall.length * 0.95) - 1;
            System.out.printf(
                    Locale.ROOT,
                    "| %s | %s | %d | %d | %.1f | %.1f | %.1f | %.1f | %.1f | %d%s |%n",
                    one.room(),
                    one.name(),
                    status,
                    size / 1000,
                    processor[wall.length / 2],
                    processor[p95],
                    wall[wall.length / 2],
                    wall[p95],
                    wall[wall.length - 1],
                    one.limit(),
                    wall[p95] <= one.limit() ? "" : processor[p95] <= one.limit() ? " (wall missed)" : " **missed**");
        }
    }

    /** Cuts free pieces into what is left, a rest and waste, looks at the yield, and takes each cut back. */
    private void cuts(int warm, int times) throws IOException, InterruptedException {
        List<String> free = codes("/api/rack/pieces?state=on_rack&size=60");
        Times cut = new Times(new Asked("deed", "a cut: a rest, three figures of waste, a difference", "", 50), times);
        Times report = new Times(new Asked("yield", "as it opens, first after a cut", "", 300), times);
        Times undo = new Times(new Asked("deed", "a cut taken back", "", 50), times);
        for (int i = -warm; i < times; i++) {
            String piece = "/api/rack/pieces/" + free.get((i + warm) % free.size());
            String version = send(piece + "/cut").headers().firstValue("ETag").orElseThrow();
            String made = cut.take(i, post(piece + "/cuts", CUT, version));
            report.take(i, get("/yield"));
            undo.take(
                    i,
                    post(
                            "/api/ledger/entries/" + number(made, "\"id\":(\\d+)") + "/undo",
                            "{\"who\":\"Ada\",\"why\":\"measured\"}",
                            version));
        }
        List.of(cut, report, undo).forEach(Times::print);
    }

    private HttpRequest get(String path) {
        return HttpRequest.newBuilder(URI.create(base + path)).build();
    }

    private HttpRequest post(String path, String json, String version) {
        return HttpRequest.newBuilder(URI.create(base + path))
                .header("Content-Type", "application/json")
                .header("Origin", base)
                .header("If-Match", version)
                .POST(HttpRequest.BodyPublishers.ofString(json))
                .build();
    }

    private String filled(String path) {
        String filled = path;
        for (Map.Entry<String, List<String>> e : samples.entrySet()) {
            String word = "{" + e.getKey() + "}";
            if (filled.contains(word)) {
                filled = filled.replace(
                        word,
                        URLEncoder.encode(
                                e.getValue().get(random.nextInt(e.getValue().size())), StandardCharsets.UTF_8));
            }
        }
        return filled;
    }
}
