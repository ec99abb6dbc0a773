package org.scarfwright.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.scarfwright.database.OnH2;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.core.io.Resource;
import org.springframework.core.io.support.PathMatchingResourcePatternResolver;
import org.springframework.test.web.servlet.MockMvc;

/** Files that pages name: each is there, under its own name and under the one that changes with its content. */
@OnH2
class StaticFilesTest {
    private static final Pattern NAMED = Pattern.compile("(?:href|src)=\"(/[^\"?]+\\.(?:css|js|svg))\"");

    @Autowired
    @SuppressWarnings("NullAway.Init")
    MockMvc mvc;

    @Test
    void everyFileThereIsIsServed() throws Exception {
        List<String> names = Stream.of(files()).map(Resource::getFilename).toList();
        assertThat(names).contains("scarfwright.css");
        for (String name : names) {
            mvc.perform(get("/" + name)).andExpect(status().isOk());
        }
    }

    @Test
    void everyFileAPageNamesIsServedUnderItsNameOfNow() throws Exception {
        String page = mvc.perform(get("/wood")).andReturn().getResponse().getContentAsString();
        List<String> named = new ArrayList<>();
        Matcher file = NAMED.matcher(page);
        while (file.find()) {
            named.add(file.group(1));
            mvc.perform(get(file.group(1))).andExpect(status().isOk());
        }
        assertThat(named).hasSizeGreaterThanOrEqualTo(3).anyMatch(n -> n.matches("/scarfwright-[0-9a-f]{32}\\.css"));
        mvc.perform(get(named.stream()
                        .filter(n -> n.endsWith(".css"))
                        .findFirst()
                        .orElseThrow()))
                .andExpect(content().contentTypeCompatibleWith("text/css"));
    }

    private static Resource[] files() throws IOException {
        return new PathMatchingResourcePatternResolver().getResources("classpath:static/*.*");
    }
}
