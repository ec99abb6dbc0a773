package org.scarfwright.week.paper;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;

/** Sheets of one kind of paper that are printed together. Closed when its bytes were taken. */
final class Sheets implements AutoCloseable {
    /** The letters come with the PDF library, so that any name a shop uses prints on any machine. */
    private static final String LETTERS = "/org/apache/pdfbox/resources/ttf/LiberationSans-Regular.ttf";

    private final PDDocument document = new PDDocument();
    private final PDFont font;
    private final PaperSize size;
    private final Correction correction;
    private final List<Sheet> sheets = new ArrayList<>();

    Sheets(PaperSize size, Correction correction, String title) {
        this.size = size;
        this.correction = correction;
        try (InputStream letters = PDDocument.class.getResourceAsStream(LETTERS)) {
            font = PDType0Font.load(document, letters, true);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        document.getDocumentInformation().setTitle(title);
        document.getDocumentInformation().setCreator("Scarfwright");
        document.getDocumentCatalog().setLanguage("en");
    }

    Sheet upright() {
        return add(size.width(), size.height());
    }

    Sheet lying() {
        return add(size.height(), size.width());
    }

    private Sheet add(double width, double height) {
        try {
            PDPage page = new PDPage(new PDRectangle(Sheet.points(width), Sheet.points(height)));
            document.addPage(page);
            Sheet sheet = new Sheet(document, page, font, new Sheet.Extent(width, height), correction);
            sheets.add(sheet);
            return sheet;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    int count() {
        return sheets.size();
    }

    List<Sheet> all() {
        return sheets;
    }

    byte[] bytes() {
        try {
            for (Sheet sheet : sheets) {
                sheet.close();
            }
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            document.save(out);
            return out.toByteArray();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Override
    public void close() {
        try {
            document.close();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
