package org.scarfwright.shop.web;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import org.scarfwright.shop.ShopFiles;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RestController;

/** The shop file over the API. */
@RestController
class ShopFileApi {
    private final ShopFiles files;
    private final Clock clock;

    ShopFileApi(ShopFiles files, Clock clock) {
        this.files = files;
        this.clock = clock;
    }

    /** What was read. */
    @Schema(name = "ShopFileRead")
    record ReadView(
            Instant writtenAt,
            String sha256,

            @Schema(description = "The shop had been read from this very file before; nothing was done now")
            boolean again,

            List<ListView> lists) {
        static ReadView of(ShopFiles.Contents c) {
            return new ReadView(
                    c.writtenAt(),
                    c.sha256(),
                    c.again(),
                    c.lists().stream()
                            .map(l -> new ListView(l.name(), l.lines()))
                            .toList());
        }
    }

    /** A list of the file. */
    @Schema(name = "ShopFileList")
    record ListView(String name, long lines) {}

    @GetMapping("/api/shop/file")
    @Operation(
            summary = "Everything the shop has, in one file",
            description = "A ZIP file of one JSON-lines list for each kind of thing. No secrets: the program has none.",
            responses = @ApiResponse(responseCode = "200", content = @Content(mediaType = ShopFileController.TYPE)))
    void write(HttpServletResponse response) throws IOException {
        ShopFileController.send(files, LocalDate.now(clock), response);
    }

    @PostMapping(path = "/api/shop/file", consumes = ShopFileController.TYPE)
    @Operation(
            summary = "Read a shop file into an empty shop (all or none)",
            description =
                    "409 when the shop holds anything already; 422 with the list and the line when the file is not"
                            + " whole or not right. The same file sent again does nothing and is answered with 200 and again=true.",
            requestBody =
                    @io.swagger.v3.oas.annotations.parameters.RequestBody(
                            content =
                                    @Content(
                                            mediaType = ShopFileController.TYPE,
                                            schema = @Schema(type = "string", format = "binary"))))
    ResponseEntity<ReadView> read(HttpServletRequest request) throws IOException {
        try (SentFile file = SentFile.of(request.getInputStream())) {
            ShopFiles.Contents read = files.read(file.path());
            return ResponseEntity.status(read.again() ? HttpStatus.OK : HttpStatus.CREATED)
                    .body(ReadView.of(read));
        }
    }
}
