package org.scarfwright.shop.web;

import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.nio.file.Files;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.scarfwright.shop.ShopFiles;
import org.scarfwright.web.ConflictException;
import org.scarfwright.web.FieldError;
import org.scarfwright.web.Formats;
import org.scarfwright.web.InvalidInputException;
import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.multipart.MultipartFile;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** Everything the shop has, in one file: taken along, and read into an empty shop. */
@Controller
class ShopFileController {
    static final String TYPE = "application/zip";

    private final ShopFiles files;
    private final Formats formats;
    private final Clock clock;

    ShopFileController(ShopFiles files, Formats formats, Clock clock) {
        this.files = files;
        this.formats = formats;
        this.clock = clock;
    }

    @GetMapping("/shop/file")
    ModelAndView show() {
        return page(List.of(), HttpStatus.OK);
    }

    @GetMapping("/shop/file.zip")
    void download(HttpServletResponse response) throws IOException {
        send(files, LocalDate.now(clock), response);
    }

    /** The whole file is written before any of it is sent, so that what went wrong is never taken for a shop. */
    static void send(ShopFiles files, LocalDate day, HttpServletResponse response) throws IOException {
        try (SentFile file = new SentFile()) {
            files.write(file.path());
            response.setContentType(TYPE);
            response.setContentLengthLong(Files.size(file.path()));
            response.setHeader(
                    HttpHeaders.CONTENT_DISPOSITION,
                    ContentDisposition.attachment()
                            .filename("scarfwright-shop-" + day + ".zip")
                            .build()
                            .toString());
            response.setHeader(HttpHeaders.CACHE_CONTROL, "no-store");
            Files.copy(file.path(), response.getOutputStream());
        }
    }

    @PostMapping("/shop/file")
    ModelAndView read(
            @RequestParam(name = "file", required = false) @Nullable MultipartFile sent, RedirectAttributes after)
            throws IOException {
        if (sent == null || sent.isEmpty()) {
            return page(
                    List.of(new FieldError("/file", "Shop file", "", "is missing or empty; choose one")),
                    HttpStatus.UNPROCESSABLE_CONTENT);
        }
        try (SentFile file = SentFile.of(sent.getInputStream())) {
            after.addFlashAttribute("notice", words(files.read(file.path())));
        } catch (InvalidInputException e) {
            return page(e.errors(), HttpStatus.UNPROCESSABLE_CONTENT);
        } catch (ConflictException e) {
            return page(
                    List.of(new FieldError("", "The file", "", "was not read. " + e.getMessage())),
                    HttpStatus.CONFLICT);
        }
        return new ModelAndView("redirect:/");
    }

    private String words(ShopFiles.Contents read) {
        if (read.again()) {
            return "This shop was read from this very file before; nothing was done now.";
        }
        String held = Stream.of(
                        formats.count(read.lines("pieces"), "piece", "pieces"),
                        formats.count(read.lines("designs"), "design", "designs"),
                        formats.count(read.lines("orders"), "order", "orders"))
                .collect(Collectors.joining(", "));
        return "The shop is as it was on " + formats.moment(read.writtenAt()) + ": " + held + " and "
                + formats.count(read.lines("entries"), "entry", "entries")
                + " in the ledger. Whether the ledger is sound is being looked at; its page says so.";
    }

    private ModelAndView page(List<FieldError> errors, HttpStatus status) {
        ModelAndView page = new ModelAndView("shop/file");
        page.setStatus(status);
        boolean empty = files.isEmpty();
        page.addObject("isEmpty", empty);
        page.addObject("readAt", files.readAt());
        page.addObject("version", ShopFiles.VERSION);
        page.addObject("mostGb", ShopFiles.MOST_BYTES >> 30);
        // Where the shop is not empty there is no field an error could lead to.
        page.addObject(
                "errorList",
                empty
                        ? errors
                        : errors.stream()
                                .map(e -> new FieldError("", e.label(), e.value(), e.message()))
                                .toList());
        return page;
    }
}
