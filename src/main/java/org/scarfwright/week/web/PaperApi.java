package org.scarfwright.week.web;

import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.media.Schema;
import org.scarfwright.measure.LengthUnit;
import org.scarfwright.shop.Shop;
import org.scarfwright.week.PlanPapers;
import org.scarfwright.week.paper.Correction;
import org.scarfwright.week.paper.CutSheets;
import org.scarfwright.week.paper.JigTemplates;
import org.scarfwright.week.paper.PaperSize;
import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

/** The sheets of a plan over the API, as PDF. */
@RestController
class PaperApi {
    private final PlanPapers papers;
    private final Shop shop;

    PaperApi(PlanPapers papers, Shop shop) {
        this.papers = papers;
        this.shop = shop;
    }

    /**
     * @param paper A4 or Letter
     * @param measured what the bar of 100 mm measures on the printer's paper, 95 to 105 mm; empty when it is right
     */
    @GetMapping(path = "/api/plans/{id}/cut-sheets", produces = MediaType.APPLICATION_PDF_VALUE)
    ResponseEntity<byte[]> cutSheets(
            @PathVariable long id,
            @RequestParam(defaultValue = "A4") String paper,
            @RequestParam(defaultValue = "") String measured) {
        return pdf(
                "plan-" + id + "-cut-sheets.pdf",
                CutSheets.pdf(papers.of(id), PaperSize.of(paper), Correction.of(measured)));
    }

    /** The wedge of every saw set-up at 1 : 1; paper and measured as for the cut sheets. */
    @GetMapping(path = "/api/plans/{id}/jig-templates", produces = MediaType.APPLICATION_PDF_VALUE)
    ResponseEntity<byte[]> jigTemplates(
            @PathVariable long id,
            @RequestParam(defaultValue = "A4") String paper,
            @RequestParam(defaultValue = "") String measured) {
        return pdf(
                "plan-" + id + "-jig-templates.pdf",
                JigTemplates.pdf(papers.of(id), PaperSize.of(paper), Correction.of(measured)));
    }

    /**
     * The wedge of one joint at 1 : 1, without a plan; paper and measured as for the cut sheets.
     *
     * @param angle degrees, 3 to 30
     * @param thicknessMm of the thicker piece at the saw, 1 to 100
     */
    @GetMapping(path = "/api/joint/jig-template", produces = MediaType.APPLICATION_PDF_VALUE)
    ResponseEntity<byte[]> jigTemplate(
            @RequestParam(defaultValue = "")
                    @Parameter(
                            description = "degrees",
                            schema = @Schema(type = "number", minimum = "3", maximum = "30"))
                    String angle,
            @RequestParam(defaultValue = "")
                    @Parameter(schema = @Schema(type = "number", minimum = "1", maximum = "100"))
                    String thicknessMm,
            @RequestParam(defaultValue = "A4") @Parameter(schema = @Schema(allowableValues = {"A4", "Letter"}))
                    String paper,
            @RequestParam(defaultValue = "")
                    @Parameter(
                            description = "what the bar of 100 mm measures on the printer’s paper, mm",
                            schema = @Schema(type = "number", minimum = "95", maximum = "105"))
                    String measured) {
        return JigAsked.read(
                        angle,
                        new JigAsked.Thick("thicknessMm", thicknessMm, LengthUnit.MM),
                        new JigAsked.Printer(paper, measured))
                .pdf(shop.settings().unit());
    }

    static ResponseEntity<byte[]> pdf(String name, byte[] bytes) {
        return ResponseEntity.ok()
                .contentType(MediaType.APPLICATION_PDF)
                .header(
                        HttpHeaders.CONTENT_DISPOSITION,
                        ContentDisposition.inline().filename(name).build().toString())
                .body(bytes);
    }
}
