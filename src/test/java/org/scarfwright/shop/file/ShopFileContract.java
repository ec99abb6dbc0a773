package org.scarfwright.shop.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.UnaryOperator;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.scarfwright.database.EmptyDatabase;
import org.scarfwright.ledger.Ledger;
import org.scarfwright.ledger.Verification;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.necks.IsoWeek;
import org.scarfwright.rack.PieceCells;
import org.scarfwright.rack.PieceField;
import org.scarfwright.rack.Pieces;
import org.scarfwright.shop.ShopFiles;
import org.scarfwright.shop.ShopList;
import org.scarfwright.shop.ShopLists;
import org.scarfwright.shop.ShopStart;
import org.scarfwright.web.ConflictException;
import org.scarfwright.web.InvalidInputException;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.web.context.WebApplicationContext;

/**
 * A shop file holds all of a shop, and an empty shop that reads it is that shop: held against the database's own catalogue and
 * rows, table by table, so that a table nobody thought of fails here.
 */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@SuppressWarnings("NullAway.Init")
abstract class ShopFileContract {
    @Autowired
    WebApplicationContext program;

    @Autowired
    ShopFiles files;

    @Autowired
    List<ShopLists> rooms;

    @Autowired
    JdbcTemplate jdbc;

    @Autowired
    Flyway flyway;

    @Autowired
    Verification verification;

    @TempDir
    static Path folder;

    private Path file;
    private ShopFiles.Contents written;
    private SortedMap<String, List<String>> before;
    private String headBefore;
    private SortedMap<String, List<String>> addedUp;

    /** Asked for once: the catalogue answers slowly, and no test changes a table. */
    private SortedMap<String, List<String>> columns;

    @BeforeAll
    void aFullShopIsWritten() {
        EmptyDatabase.of(flyway);
        columns = new StoredRows(jdbc).columns();
        FullShop.fill(program);
        file = folder.resolve("shop-" + getClass().getSimpleName() + ".zip");
        before = rows();
        headBefore = head();
        addedUp = addedUp();
        written = files.write(file);
        assertThat(rows()).as("writing the file changes nothing").isEqualTo(before);
        EmptyDatabase.of(flyway);
    }

    @AfterAll
    void nothingIsLeft() {
        EmptyDatabase.of(flyway);
    }

    private Map<String, String> leftOut() {
        Map<String, String> all = new HashMap<>();
        rooms.forEach(r -> all.putAll(r.leftOut()));
        return all;
    }

    private List<ShopList> lists() {
        return rooms.stream().flatMap(r -> r.lists().stream()).toList();
    }

    private SortedMap<String, List<String>> rows() {
        StoredRows stored = new StoredRows(jdbc);
        SortedMap<String, List<String>> all = new TreeMap<>();
        columns.forEach((table, columns) -> {
            if (!leftOut().containsKey(table)) {
                List<String> kept = columns.stream()
                        .filter(c -> !leftOut().containsKey(table + "." + c))
                        .toList();
                all.put(table, stored.of(table, kept));
            }
        });
        return all;
    }

    /** What the program keeps beside the ledger and adds up anew. */
    private SortedMap<String, List<String>> addedUp() {
        StoredRows stored = new StoredRows(jdbc);
        SortedMap<String, List<String>> all = new TreeMap<>();
        stored.columns().forEach((table, columns) -> {
            if (table.startsWith("yield_")) {
                all.put(table, stored.of(table, columns));
            }
        });
        assertThat(all).hasSize(6);
        return all;
    }

    private String head() {
        return String.valueOf(
                jdbc.queryForObject("select entry_id || ' ' || hash from ledger_head where id = 1", String.class));
    }

    @Test
    void everyColumnOfEveryTableIsInTheFileOrLeftOutForAReason() {
        List<String> stored = new StoredRows(jdbc)
                .columns().entrySet().stream()
                        .flatMap(t -> t.getValue().stream().map(c -> t.getKey() + "." + c))
                        .filter(c ->
                                !leftOut().containsKey(c) && !leftOut().containsKey(c.substring(0, c.indexOf('.'))))
                        .sorted()
                        .toList();
        List<String> listed = lists().stream()
                .flatMap(l -> l.fields().stream().map(f -> l.table() + "." + f.name()))
                .sorted()
                .toList();
        assertThat(listed).as("columns of the lists").isEqualTo(stored);
        assertThat(lists().stream().map(ShopList::name)).doesNotHaveDuplicates();
    }

    @Test
    void theShopThatIsWrittenHasRowsInEveryTable() {
        assertThat(before.entrySet().stream()
                        .filter(t -> t.getValue().isEmpty())
                        .map(Map.Entry::getKey))
                .as("tables the comparison would say nothing of")
                .isEmpty();
    }

    @Test
    void anEmptyShopThatReadsTheFileIsThatShop() throws IOException {
        EmptyDatabase.of(flyway);
        assertThat(files.isEmpty()).isTrue();
        ShopFiles.Contents read = files.read(file);
        assertThat(read).isEqualTo(written);

        SortedMap<String, List<String>> after = rows();
        assertThat(after.keySet()).isEqualTo(before.keySet());
        after.forEach((table, rows) -> assertThat(rows).as(table).isEqualTo(before.get(table)));
        assertThat(head()).isEqualTo(headBefore);
        assertThat(addedUp()).as("the yield, added up anew").isEqualTo(addedUp);
        assertThat(verification.run().faults()).isEmpty();
        assertThat(files.isEmpty()).isFalse();

        Path again = folder.resolve("again.zip");
        files.write(again);
        assertThat(parts(again).get("contents.json"))
                .as("written again it is the same, list by list")
                .isEqualTo(parts(file).get("contents.json"));
    }

    @Test
    void theShopGoesOnWithIdsOfItsOwn() {
        EmptyDatabase.of(flyway);
        files.read(file);
        Map<String, Long> highest = new HashMap<>();
        for (String table : List.of(
                "piece",
                "place",
                "lot",
                "moisture_reading",
                "warp_reading",
                "neck_order",
                "plan",
                "match_run",
                "hand",
                "work_step")) {
            highest.put(table, max(table));
        }
        program.getBean(Pieces.class)
                .add(
                        new PieceCells()
                                .put(PieceField.CODE, "NEW-1")
                                .put(PieceField.WOOD, "sapele")
                                .put(PieceField.LENGTH, "650")
                                .put(PieceField.WIDTH, "70")
                                .put(PieceField.THICKNESS, "22")
                                .put(PieceField.LOT, "L-new")
                                .put(PieceField.PLACE, "A new shelf")
                                .put(PieceField.MOISTURE, "8")
                                .put(PieceField.BOW, "1"),
                        LengthUnit.MM);
        FullShop.orderAndPlan(program, new IsoWeek(2026, 50));
        highest.forEach((table, id) -> assertThat(max(table)).as(table).isGreaterThan(id));
        Ledger ledger = program.getBean(Ledger.class);
        assertThat(ledger.newest("NEW-1", 1).acts()).hasSize(1);
        assertThat(verification.run().faults()).isEmpty();
    }

    private long max(String table) {
        Long id = jdbc.queryForObject("select max(id) from " + table, Long.class);
        return id == null ? 0 : id;
    }

    @Test
    void theSameFileSentAgainDoesNothing() {
        EmptyDatabase.of(flyway);
        files.read(file);
        SortedMap<String, List<String>> once = rows();
        ShopFiles.Contents again = files.read(file);
        assertThat(again.again()).isTrue();
        assertThat(rows()).isEqualTo(once);
        assertThat(files.readAt()).isNotNull();
    }

    @Test
    void aShopThatHoldsAnythingReadsNone() {
        EmptyDatabase.of(flyway);
        program.getBean(ShopStart.class).loadDemo();
        SortedMap<String, List<String>> there = rows();
        assertThatThrownBy(() -> files.read(file))
                .isInstanceOf(ConflictException.class)
                .hasMessageContaining("This shop is not empty: it holds places already");
        assertThat(rows()).isEqualTo(there);
    }

    // ---- files that are not right ----------------------------------------------------------------------------------

    private void refuses(byte[] bytes, String... words) throws IOException {
        SortedMap<String, List<String>> there = rows();
        Path altered = Files.write(folder.resolve("altered.zip"), bytes);
        assertThatThrownBy(() -> files.read(altered))
                .isInstanceOf(InvalidInputException.class)
                .message()
                .contains(words);
        assertThat(rows()).as("nothing is saved").isEqualTo(there);
    }

    private static Map<String, String> parts(Path file) throws IOException {
        Map<String, String> parts = new LinkedHashMap<>();
        try (ZipInputStream zip = new ZipInputStream(Files.newInputStream(file))) {
            for (ZipEntry e = zip.getNextEntry(); e != null; e = zip.getNextEntry()) {
                parts.put(e.getName(), new String(zip.readAllBytes(), StandardCharsets.UTF_8));
            }
        }
        return parts;
    }

    private static byte[] zipped(Map<String, String> parts) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
            for (Map.Entry<String, String> part : parts.entrySet()) {
                zip.putNextEntry(new ZipEntry(part.getKey()));
                zip.write(part.getValue().getBytes(StandardCharsets.UTF_8));
            }
        }
        return bytes.toByteArray();
    }

    /** The file with one part told otherwise; its list of contents is made to fit it when asked for. */
    private byte[] with(String name, boolean fitting, UnaryOperator<String> change) throws IOException {
        Map<String, String> parts = parts(file);
        String text = parts.get(name);
        assertThat(text).as(name).isNotNull();
        String changed = change.apply(text);
        assertThat(changed).as("the change changes something").isNotEqualTo(text);
        parts.put(name, changed);
        if (fitting) {
            String list = name.replace(".jsonl", "");
            String contents = parts.get("contents.json");
            Matcher sum = Pattern.compile("\\{\"name\":\"" + list + "\",\"lines\":\\d+,\"sha256\":\"[0-9a-f]+\"}")
                    .matcher(contents);
            parts.put(
                    "contents.json",
                    sum.replaceFirst("{\"name\":\"" + list + "\",\"lines\":"
                            + changed.lines().count() + ",\"sha256\":\"" + sha256(changed) + "\"}"));
        }
        return zipped(parts);
    }

    private static String sha256(String text) {
        try {
            return HexFormat.of()
                    .formatHex(MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8)));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }

    @Test
    void refusesWhatIsNoShopFile() throws IOException {
        EmptyDatabase.of(flyway);
        refuses(new byte[0], "The file is empty");
        refuses("code,wood,length\n".getBytes(StandardCharsets.UTF_8), "is no shop file, which is a ZIP file");
        refuses(zipped(Map.of("readme.txt", "x")), "has “readme.txt” where its part about.json must stand first");
        refuses(
                with("about.json", false, t -> t.replace("scarfwright shop file", "another form")),
                "about.json does not say that this is a scarfwright shop file");
        refuses(with("about.json", false, t -> t + " ".repeat(70_000)), "about.json is longer than");
        refuses(with("about.json", false, t -> t.replace("\"version\":1", "\"version\":0")), "has version 0");
    }

    @Test
    void refusesAFileOfANewerForm() throws IOException {
        EmptyDatabase.of(flyway);
        refuses(
                with("about.json", false, t -> t.replace("\"version\":1", "\"version\":2")),
                "about.json says that the file was written by a newer program: its form is version 2",
                "this program reads up to version 1");
    }

    @Test
    void refusesAFileThatIsCutShortAnywhere() throws IOException {
        EmptyDatabase.of(flyway);
        byte[] whole = Files.readAllBytes(file);
        Random random = new Random(8);
        for (int i = 0; i < 40; i++) {
            byte[] cut = Arrays.copyOf(whole, 30 + random.nextInt(whole.length - 31));
            refuses(cut, "The file does not end as a shop file ends");
            // The same with an end that says nothing is missing.
            byte[] mended = new byte[cut.length + 22];
            System.arraycopy(cut, 0, mended, 0, cut.length);
            System.arraycopy(whole, whole.length - 22, mended, cut.length, 22);
            if (cut.length < whole.length - 6000) {
                refuses(mended, "");
            }
        }
        refuses(Arrays.copyOf(whole, whole.length + 1), "something was put after its end");
    }

    @Test
    void refusesAFileWithAByteChanged() throws IOException {
        EmptyDatabase.of(flyway);
        byte[] whole = Files.readAllBytes(file);
        int directory = firstOf(whole, new byte[] {'P', 'K', 1, 2});
        Random random = new Random(9);
        for (int i = 0; i < 60; i++) {
            byte[] altered = whole.clone();
            altered[30 + random.nextInt(directory - 30)] ^= (byte) (1 << random.nextInt(8));
            Path other = Files.write(folder.resolve("altered.zip"), altered);
            try {
                // A bit of a part's time says nothing of the shop; everything else is refused.
                assertThat(files.read(other).lists()).isEqualTo(written.lists());
                SortedMap<String, List<String>> after = rows();
                assertThat(after).isEqualTo(before);
                EmptyDatabase.of(flyway);
            } catch (InvalidInputException e) {
                assertThat(files.isEmpty()).isTrue();
            }
        }
    }

    private static int firstOf(byte[] in, byte[] sign) {
        for (int i = 0; i < in.length - sign.length; i++) {
            if (Arrays.equals(Arrays.copyOfRange(in, i, i + sign.length), sign)) {
                return i;
            }
        }
        throw new IllegalStateException("no such sign");
    }

    @Test
    void refusesAnAlteredListByItsHash() throws IOException {
        EmptyDatabase.of(flyway);
        refuses(
                with("pieces.jsonl", false, t -> t.replaceFirst("\"bow_um\":0", "\"bow_um\":1")),
                "pieces.jsonl is not what contents.json says it is (its SHA-256 differs): the file was altered");
        refuses(
                with("orders.jsonl", false, t -> t.substring(t.indexOf('\n') + 1)),
                "orders.jsonl has",
                "lines where contents.json says");
        refuses(with("contents.json", false, t -> t.replace("\"saws\"", "\"sows\"")), "does not name the list saws");
        refuses(
                with(
                        "contents.json",
                        false,
                        t -> t.replace("]}", ",{\"name\":\"moons\",\"lines\":0,\"sha256\":\"\"}]}")),
                "names lists this program does not know");
    }

    @Test
    void refusesPartsInAnotherOrderMissingOrMore() throws IOException {
        EmptyDatabase.of(flyway);
        Map<String, String> parts = parts(file);
        Map<String, String> turned = new LinkedHashMap<>();
        List<String> names = new ArrayList<>(parts.keySet());
        Collections.swap(names, names.indexOf("lots.jsonl"), names.indexOf("pieces.jsonl"));
        names.forEach(n -> turned.put(n, parts.get(n)));
        refuses(zipped(turned), "The file has “pieces.jsonl” where its part lots.jsonl must stand");

        Map<String, String> without = new LinkedHashMap<>(parts);
        without.remove("glues.jsonl");
        refuses(zipped(without), "where its part glues.jsonl must stand");

        without = new LinkedHashMap<>(parts);
        without.remove("contents.json");
        refuses(zipped(without), "The file ends before its part contents.json");

        Map<String, String> more = new LinkedHashMap<>(parts);
        more.put("../../etc/more.jsonl", "{}\n");
        refuses(zipped(more), "has more parts after contents.json");

        Map<String, String> path = new LinkedHashMap<>();
        parts.forEach((n, t) -> path.put(n.equals("saws.jsonl") ? "../saws.jsonl" : n, t));
        refuses(zipped(path), "has “../saws.jsonl” where its part saws.jsonl must stand");
    }

    @Test
    void namesTheListAndTheLineOfAValueThatIsNotRight() throws IOException {
        EmptyDatabase.of(flyway);
        record Case(String list, String from, String to, String words) {}
        for (Case c : List.of(
                new Case("pieces", "\"bow_um\":", "\"bow_inch\":", "pieces.jsonl, line 1: has a field “bow_inch”"),
                new Case(
                        "pieces",
                        "\"length_um\":\\d+",
                        "\"length_um\":\"long\"",
                        "pieces.jsonl, line 1: length_um is “long” and must be a whole number"),
                new Case(
                        "pieces",
                        "\"length_um\":\\d+,",
                        "",
                        "pieces.jsonl, line 1: leaves out length_um; it must hold a whole number"),
                new Case(
                        "pieces",
                        "\"length_um\":\\d+",
                        "\"length_um\":99999999999999999999",
                        "length_um is “99999999999999999999” and must be"),
                new Case(
                        "pieces",
                        "\"length_um\":\\d+",
                        "\"length_um\":5",
                        "pieces.jsonl, line 1: holds a value that is outside what the program allows"),
                new Case(
                        "pieces",
                        "\"since\":\"[^\"]+\"",
                        "\"since\":\"2026-02-31\"",
                        "since is “2026-02-31” and must be a day"),
                new Case(
                        "pieces",
                        "\"set_aside\":\\w+",
                        "\"set_aside\":1",
                        "set_aside is “1” and must be true or false"),
                new Case(
                        "pieces",
                        "\"version\":",
                        "\"id\":1,\"version\":",
                        "pieces.jsonl, line 1: cannot be read as JSON"),
                new Case("pieces", "\\{", "[{", "pieces.jsonl, line 1: is no object in braces"),
                new Case("pieces", "\\}\n", "}}\n", "pieces.jsonl, line 1:"),
                new Case(
                        "pieces",
                        "\"code\":\"[^\"]+\"",
                        "\"code\":\"A-CODE-THAT-IS-FAR-TOO-LONG\"",
                        "pieces.jsonl, line 1: holds a text that is too long"),
                new Case("pieces", "\"note\":\"[^\"]*\"", "\"note\":\"a\\\\u0000b\"", "pieces.jsonl, line 1: note is"),
                new Case(
                        "entries",
                        "\"acted_at\":\"[^\"]+\"",
                        "\"acted_at\":\"yesterday\"",
                        "entries.jsonl, line 1: acted_at is “yesterday” and must be a moment"),
                new Case(
                        "entries",
                        "\"kind\":\"[^\"]+\"",
                        "\"kind\":\"SANG\"",
                        "entries.jsonl, line 1: kind is “SANG”, which this program cannot read there"),
                new Case(
                        "acts",
                        "\"volume_after_um3\":\"\\d+\"",
                        "\"volume_after_um3\":\"1.5\"",
                        "acts.jsonl, line 1: volume_after_um3 is “1.5” and must be digits in quotes"),
                new Case("plans", "\"document\":\"\\{", "\"document\":\"", "plans.jsonl, line 1: document is"),
                new Case(
                        "orders",
                        "\"design_id\":\\d+",
                        "\"design_id\":999",
                        "orders.jsonl, line 1: points to something that is not in the file"),
                new Case(
                        "orders",
                        "\"iso_week\":\"[^\"]+\"",
                        "\"iso_week\":\"2026-W99\"",
                        "orders.jsonl, line 1: iso_week is “2026-W99”"),
                new Case("ledger_end", "(?s).+", "", "ledger_end.jsonl has 0 lines; at least 1 must be there"),
                new Case("saws", "\n$", "", "saws.jsonl does not end with the end of a line"))) {
            refuses(with(c.list() + ".jsonl", true, t -> t.replaceFirst(c.from(), c.to())), c.words());
        }
        refuses(
                with(
                        "pieces.jsonl",
                        true,
                        t -> t + t.lines().skip(4).findFirst().orElseThrow() + "\n"),
                "pieces.jsonl, line " + (written.lines("pieces") + 1) + ": has id, or another value");
    }

    @Test
    void refusesALineWithoutEnd() throws IOException {
        EmptyDatabase.of(flyway);
        Map<String, String> parts = parts(file);
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        byte[] blanks = " ".repeat(1 << 20).getBytes(StandardCharsets.UTF_8);
        try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
            for (String part : List.of("about.json", "beginning.jsonl", "rules.jsonl")) {
                zip.putNextEntry(new ZipEntry(part));
                if (part.equals("rules.jsonl")) {
                    for (int i = 0; i < 200; i++) {
                        zip.write(blanks);
                    }
                } else {
                    zip.write(parts.getOrDefault(part, "").getBytes(StandardCharsets.UTF_8));
                }
            }
        }
        assertThat(bytes.size()).as("a small file").isLessThan(1 << 20);
        refuses(bytes.toByteArray(), "rules.jsonl has a line longer than 64 MB");
    }

    @Test
    void tellsWhatEachListHolds() {
        assertThat(written.lists().stream().collect(Collectors.toMap(ShopFiles.Count::name, ShopFiles.Count::lines)))
                .containsEntry("designs", 8L)
                .containsEntry("own_woods", 1L)
                .containsEntry("days_off", 1L)
                .containsEntry("ledger_end", 1L);
    }
}
