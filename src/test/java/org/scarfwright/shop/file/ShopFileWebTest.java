package org.scarfwright.shop.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.allOf;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.startsWith;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.multipart;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.flash;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.header;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scarfwright.database.EmptyDatabase;
import org.scarfwright.database.OnH2;
import org.scarfwright.shop.ShopList;
import org.scarfwright.shop.ShopLists;
import org.scarfwright.shop.ShopStart;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.mock.web.MockHttpServletRequest;
import org.springframework.mock.web.MockMultipartFile;
import org.springframework.test.web.servlet.MockMvc;

/** The shop file's page and API, and the document that describes it. */
@OnH2
@SuppressWarnings("NullAway.Init")
class ShopFileWebTest {
    private static final Path DOCUMENT = Path.of("src/docs/shop-file.md");

    @Autowired
    MockMvc mvc;

    @Autowired
    Flyway flyway;

    @Autowired
    ShopStart start;

    @Autowired
    List<ShopLists> rooms;

    @BeforeEach
    @AfterEach
    void empty() {
        EmptyDatabase.of(flyway);
    }

    private byte[] demo(String address) throws Exception {
        start.loadDemo();
        byte[] file = mvc.perform(get(address))
                .andExpect(status().isOk())
                .andExpect(content().contentType("application/zip"))
                .andExpect(
                        header().string("Content-Disposition", startsWith("attachment; filename=\"scarfwright-shop-")))
                .andReturn()
                .getResponse()
                .getContentAsByteArray();
        EmptyDatabase.of(flyway);
        return file;
    }

    /** Counted in the demo shop's own file, below its header. */
    private static long rows(String name) throws IOException {
        try (Stream<String> lines = Files.lines(Path.of("demo-data", name + ".csv"))) {
            return lines.count() - 1;
        }
    }

    private static MockMultipartFile file(byte[] bytes) {
        return new MockMultipartFile("file", "shop.zip", "application/zip", bytes);
    }

    @Test
    void theFirstPageOfAnEmptyShopLeadsToIt() throws Exception {
        mvc.perform(get("/start")).andExpect(content().string(containsString("href=\"/shop/file\"")));
        mvc.perform(get("/shop")).andExpect(content().string(containsString("href=\"/shop/file\"")));
        mvc.perform(get("/shop/file"))
                .andExpect(content()
                        .string(allOf(containsString("This shop is empty."), containsString("Read the shop file"))));
    }

    @Test
    void aShopIsWrittenAndReadOnThePage() throws Exception {
        byte[] file = demo("/shop/file.zip");
        mvc.perform(multipart("/shop/file").file(file(file)).with(csrf()))
                .andExpect(redirectedUrl("/"))
                .andExpect(flash().attribute(
                                "notice",
                                containsString(rows("rack") + " pieces, " + rows("designs") + " designs, "
                                        + rows("orders") + " orders")));
        mvc.perform(get("/shop/file"))
                .andExpect(content()
                        .string(allOf(
                                containsString("This shop was read from a file on"),
                                containsString("into an empty shop only"),
                                not(containsString("type=\"file\"")))));
        mvc.perform(multipart("/shop/file").file(file(file)).with(csrf()))
                .andExpect(redirectedUrl("/"))
                .andExpect(flash().attribute(
                                "notice", "This shop was read from this very file before; nothing was done now."));
    }

    @Test
    void thePageSaysWhatIsNotRight() throws Exception {
        mvc.perform(multipart("/shop/file").with(csrf()))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("Shop file is missing or empty; choose one.")));
        mvc.perform(multipart("/shop/file")
                        .file(file("code,wood\n".getBytes(StandardCharsets.UTF_8)))
                        .with(csrf()))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("The file is no shop file, which is a ZIP file")));
        byte[] file = demo("/shop/file.zip");
        start.loadDemo();
        mvc.perform(multipart("/shop/file").file(file(file)).with(csrf()))
                .andExpect(status().isConflict())
                .andExpect(content().string(containsString("The file was not read. This shop is not empty")));
    }

    @Test
    void theApiCanWhatThePageCan() throws Exception {
        byte[] file = demo("/api/shop/file");
        mvc.perform(post("/api/shop/file")
                        .contentType("application/zip")
                        .header("Idempotency-Key", "a file is known by its content")
                        .content(file))
                .andExpect(status().isCreated())
                .andExpect(jsonPath("$.again").value(false))
                .andExpect(jsonPath("$.lists[?(@.name == 'pieces')].lines").value((int) rows("rack")));
        mvc.perform(post("/api/shop/file").contentType("application/zip").content(file))
                .andExpect(status().isOk())
                .andExpect(jsonPath("$.again").value(true));
        mvc.perform(post("/api/shop/file").contentType("application/zip").content("PK"))
                .andExpect(status().isUnprocessableContent())
                .andExpect(jsonPath("$.errors[0].pointer").value("/file"));
        mvc.perform(post("/api/shop/file").contentType("application/json").content("{}"))
                .andExpect(status().isUnsupportedMediaType());
    }

    @Test
    void anotherFileIsRefusedByAShopThatWasRead() throws Exception {
        byte[] first = demo("/api/shop/file");
        byte[] second = demo("/api/shop/file");
        mvc.perform(post("/api/shop/file").contentType("application/zip").content(first))
                .andExpect(status().isCreated());
        mvc.perform(post("/api/shop/file").contentType("application/zip").content(second))
                .andExpect(status().isConflict())
                .andExpect(jsonPath("$.detail").value(containsString("This shop is not empty")));
    }

    @Test
    void onlyTheShopFilesAddressTakesLargeForms() throws Exception {
        long large = 40L << 20;
        mvc.perform(post("/rack/import")
                        .contentType("multipart/form-data; boundary=x")
                        .with(r -> length(r, large)))
                .andExpect(status().isContentTooLarge());
        mvc.perform(post("/rack/import")
                        .contentType("multipart/form-data; boundary=x")
                        .header("Transfer-Encoding", "chunked"))
                .andExpect(status().isLengthRequired());
        mvc.perform(post("/shop/file")
                        .contentType("multipart/form-data; boundary=x")
                        .with(r -> length(r, large)))
                .andExpect(status().isForbidden()); // no token: it came past the limit
    }

    private static MockHttpServletRequest length(MockHttpServletRequest request, long bytes) {
        request.setContent(new byte[(int) bytes]);
        return request;
    }

    /** To write the lists anew after they were changed: {@code mvn test -Dtest=ShopFileWebTest -Dshopfile.write}. */
    @Test
    void theDocumentTellsTheListsTheProgramWrites() throws IOException {
        String document = Files.readString(DOCUMENT);
        int lists = document.indexOf("## Lists");
        String now = (lists < 0 ? document : document.substring(0, lists)) + markdown();
        if (System.getProperty("shopfile.write") != null) {
            Files.writeString(DOCUMENT, now);
        }
        assertThat(Files.readString(DOCUMENT)).isEqualTo(now);
    }

    private String markdown() {
        StringBuilder text = new StringBuilder("## Lists\n\nA kind with a question mark may be left out.\n");
        for (ShopList list : rooms.stream().flatMap(r -> r.lists().stream()).toList()) {
            text.append("\n### ").append(list.name()).append("\n\n").append(list.about());
            text.append(" In the order of ")
                    .append(String.join(", ", list.keys()))
                    .append(".\n\n");
            text.append("| field | kind | meaning |\n|---|---|---|\n");
            for (ShopList.Field field : list.fields()) {
                text.append("| `")
                        .append(field.name())
                        .append("` | ")
                        .append(field.kind().words());
                text.append(field.optional() ? "? | " : " | ")
                        .append(field.meaning())
                        .append(" |\n");
            }
        }
        return text.toString();
    }
}
