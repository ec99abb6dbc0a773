package org.scarfwright.web;

import io.swagger.v3.oas.models.OpenAPI;
import io.swagger.v3.oas.models.info.Info;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

/** The head of the API's description at {@code /api/openapi}. */
@Configuration(proxyBeanMethods = false)
class OpenApiDescription {
    @Bean
    OpenAPI description() {
        return new OpenAPI()
                .info(new Info()
                        .title("Scarfwright")
                        .version("1")
                        .description("Lengths are decimal millimetres in keys that end in Mm. "
                                + "Errors are problem details (RFC 9457) with a JSON pointer per field. "
                                + "An edit (PUT) sends the ETag it read as If-Match; a single value, such as the day a step is"
                                + " pinned to or the glue of a design, is set as a whole and needs none. "
                                + "A POST with an Idempotency-Key is done once, however often it is sent."));
    }
}
