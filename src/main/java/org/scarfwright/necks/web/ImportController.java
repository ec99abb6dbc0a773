package org.scarfwright.necks.web;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.scarfwright.necks.NeckDesign;
import org.scarfwright.necks.NeckOrder;
import org.scarfwright.necks.book.Checked;
import org.scarfwright.necks.book.Checked.Fate;
import org.scarfwright.necks.book.DesignBook;
import org.scarfwright.necks.book.DesignField;
import org.scarfwright.necks.book.Draft;
import org.scarfwright.necks.book.Entry;
import org.scarfwright.necks.book.NeckFiles;
import org.scarfwright.necks.book.OrderBook;
import org.scarfwright.necks.book.OrderField;
import org.scarfwright.web.CsvTable;
import org.scarfwright.web.CsvTable.Columns;
import org.scarfwright.web.FieldError;
import org.scarfwright.web.FieldErrors;
import org.scarfwright.web.InvalidInputException;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.multipart.MultipartFile;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** Files of designs and of orders, uploaded or pasted: read first, entered when every row is right. */
@Controller
class ImportController {
    private static final int ROWS_SHOWN = 200;
    private static final String FILE = "file";
    private static final String ENTER = "enter";

    private final DesignBook designs;
    private final OrderBook orders;

    ImportController(DesignBook designs, OrderBook orders) {
        this.designs = designs;
        this.orders = orders;
    }

    /**
     * What the page calls things.
     *
     * @param path where the form is sent and where the list stands
     * @param example a header and a row
     */
    record Kind(String path, String one, String more, Columns columns, String example) {
        String title() {
            return "Read a file of " + more;
        }
    }

    /** One row of the file and what would become of it. */
    record Line(int row, String code, String what, String fate, List<String> errors) {}

    private static final Kind DESIGNS = new Kind("designs", "design", "designs", NeckFiles.designColumns(), """
            code,name,neck_length,nut_width,heel_width,neck_thickness,head_length,head_width,head_thickness,angle,arrangements,finish
            HOB-4,Hob short bass,560,41,61,1 in,8 1/2 in,88,16,13,both,veneered
            """);
    private static final Kind ORDERS = new Kind("orders", "order", "orders", NeckFiles.orderColumns(), """
            design,quantity,due,priority,note
            HOB-4,1,2026-12-04,5,Left-handed
            """);

    @GetMapping("/designs/import")
    ModelAndView designs() {
        return page(DESIGNS, "", List.of(), List.of());
    }

    @GetMapping("/orders/import")
    ModelAndView orders() {
        return page(ORDERS, "", List.of(), List.of());
    }

    @PostMapping("/designs/import")
    ModelAndView readDesigns(
            @RequestParam(name = FILE, required = false) @Nullable MultipartFile file,
            @RequestParam(name = "csv", defaultValue = "") String csv,
            @RequestParam(name = "act", defaultValue = "") String act,
            RedirectAttributes after) {
        return read(new Sent(DESIGNS, file, csv, act), after, new Book<NeckDesign>() {
            @Override
            public List<Entry> entries(CsvTable table) {
                return NeckFiles.designs(table);
            }

            @Override
            public List<Checked<NeckDesign>> check(List<Entry> entries) {
                return designs.check(entries);
            }

            @Override
            public List<Checked<NeckDesign>> add(List<Entry> entries) {
                return designs.add(entries);
            }

            @Override
            public String code(NeckDesign design) {
                return design.code();
            }

            @Override
            public String what(Draft draft) {
                return draft.text(DesignField.NAME);
            }
        });
    }

    @PostMapping("/orders/import")
    ModelAndView readOrders(
            @RequestParam(name = FILE, required = false) @Nullable MultipartFile file,
            @RequestParam(name = "csv", defaultValue = "") String csv,
            @RequestParam(name = "act", defaultValue = "") String act,
            RedirectAttributes after) {
        return read(new Sent(ORDERS, file, csv, act), after, new Book<NeckOrder>() {
            @Override
            public List<Entry> entries(CsvTable table) {
                return NeckFiles.orders(table);
            }

            @Override
            public List<Checked<NeckOrder>> check(List<Entry> entries) {
                return orders.check(entries);
            }

            @Override
            public List<Checked<NeckOrder>> add(List<Entry> entries) {
                return orders.add(entries);
            }

            @Override
            public String code(NeckOrder order) {
                return order.code();
            }

            @Override
            public String what(Draft draft) {
                return draft.text(OrderField.QUANTITY) + " × " + draft.text(OrderField.DESIGN) + ", due "
                        + draft.text(OrderField.DUE);
            }
        });
    }

    /** What differs between the two files. */
    private interface Book<T> {
        List<Entry> entries(CsvTable table);

        List<Checked<T>> check(List<Entry> entries);

        List<Checked<T>> add(List<Entry> entries);

        String code(T value);

        String what(Draft draft);
    }

    private record Sent(Kind kind, @Nullable MultipartFile file, String csv, String act) {
        boolean hasFile() {
            return file != null && !file.isEmpty();
        }

        /** The text to show again; a file that is no UTF-8 shows as nothing. */
        String text() {
            return hasFile() ? new String(bytes(), StandardCharsets.UTF_8) : csv;
        }

        CsvTable table() {
            return hasFile()
                    ? CsvTable.read(bytes(), kind.columns(), NeckFiles.LIMITS)
                    : CsvTable.read(csv, kind.columns(), NeckFiles.LIMITS);
        }

        private byte[] bytes() {
            try {
                return file == null ? new byte[0] : file.getBytes();
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
    }

    private <T> ModelAndView read(Sent sent, RedirectAttributes after, Book<T> book) {
        CsvTable table;
        try {
            table = sent.table();
        } catch (InvalidInputException e) {
            boolean readable = e.errors().stream().noneMatch(f -> f.pointer().equals("/file"));
            return page(sent.kind(), sent.hasFile() && !readable ? "" : sent.text(), List.of(), e.errors());
        }
        List<Entry> entries = book.entries(table);
        List<Checked<T>> checked = book.check(entries);
        List<FieldError> errors = Checked.errors(checked);
        if (sent.act().equals(ENTER) && errors.isEmpty()) {
            List<Checked<T>> done = book.add(entries);
            after.addFlashAttribute(
                    "notice",
                    counted(done, Fate.NEW, sent.kind()) + " entered, " + counted(done, Fate.UNCHANGED, sent.kind())
                            + " unchanged.");
            return new ModelAndView("redirect:/" + sent.kind().path());
        }
        ModelAndView page = page(sent.kind(), sent.text(), lines(table, checked, book), errors);
        page.setStatus(sent.act().equals(ENTER) ? HttpStatus.UNPROCESSABLE_CONTENT : HttpStatus.OK);
        page.addObject("wasRead", true);
        page.addObject("added", counted(checked, Fate.NEW, sent.kind()));
        page.addObject("unchanged", counted(checked, Fate.UNCHANGED, sent.kind()));
        page.addObject("refused", counted(checked, Fate.REFUSED, sent.kind()));
        page.addObject("rowsLeftOut", Math.max(0, checked.size() - ROWS_SHOWN));
        page.addObject("canEnter", errors.isEmpty() && !checked.isEmpty());
        return page;
    }

    private static <T> String counted(List<Checked<T>> checked, Fate fate, Kind kind) {
        long count = checked.stream().filter(c -> c.fate() == fate).count();
        return count + " " + (count == 1 ? kind.one() : kind.more());
    }

    private static <T> List<Line> lines(CsvTable table, List<Checked<T>> checked, Book<T> book) {
        Function<Checked<T>, String> code =
                c -> c.value().map(book::code).filter(s -> !s.isEmpty()).orElse("");
        List<Line> lines = new ArrayList<>();
        for (int i = 0; i < Math.min(ROWS_SHOWN, checked.size()); i++) {
            Checked<T> c = checked.get(i);
            lines.add(new Line(
                    table.rows().get(i).number(),
                    code.apply(c),
                    book.what(c.entry().draft()),
                    c.fate().name().toLowerCase(Locale.ROOT),
                    c.errors().stream().map(FieldError::sentence).toList()));
        }
        return lines;
    }

    private static ModelAndView page(Kind kind, String csv, List<Line> lines, List<FieldError> errors) {
        ModelAndView page = new ModelAndView("necks/import");
        page.setStatus(errors.isEmpty() ? HttpStatus.OK : HttpStatus.UNPROCESSABLE_CONTENT);
        page.addObject("kind", kind);
        page.addObject("title", kind.title());
        page.addObject("required", String.join(", ", kind.columns().required()));
        page.addObject("optional", String.join(", ", kind.columns().optional()));
        page.addObject("csv", csv);
        page.addObject("lines", lines);
        page.addObject("wasRead", false);
        page.addObject("canEnter", false);
        page.addObject("rowsLeftOut", 0);
        page.addObject("errorList", errors);
        page.addObject("errors", FieldErrors.byField(errors));
        return page;
    }
}
