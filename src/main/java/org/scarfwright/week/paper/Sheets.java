package org.scarfwright.week.paper;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;

/** Sheets of one kind of paper that are printed together. Closed when its bytes were taken. */
final class Sheets implements AutoCloseable {
    /** The letters come with the PDF library, so that any name a shop uses prints on any machine. */
    private static final byte[] LETTERS = letters("/org/apache/pdfbox/resources/ttf/LiberationSans-Regular.ttf");

    private final PDDocument document = new PDDocument();
    private final PDFont font;
    private final PaperSize size;
    private final Correction correction;
    private final List<Sheet> sheets = new ArrayList<>();

    Sheets(PaperSize size, Correction correction, String title) {
        this.size = size;
        this.correction = correction;
        try {
            TrueTypeFont type = new TTFParser().parse(new RandomAccessReadBuffer(LETTERS));
            // Ligatures would cost more than all other work on a sheet, and no word here needs one.
            type.setEnableGsub(false);
            font = PDType0Font.load(document, type, true);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        document.getDocumentInformation().setTitle(title);
        document.getDocumentInformation().setCreator("Scarfwright");
        document.getDocumentCatalog().setLanguage("en");
    }

    private static byte[] letters(String resource) {
        try (InputStream letters = Objects.requireNonNull(PDDocument.class.getResourceAsStream(resource))) {
            return letters.readAllBytes();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    Sheet upright() {
        return add(new Sheet.Extent(size.width(), size.height()));
    }

    Sheet lying() {
        return add(new Sheet.Extent(size.width(), size.height()).turned());
    }

    /** A page of any size without margins: see {@link Sheet#whole}. */
    Sheet whole(double width, double height) {
        return add(new Sheet.Extent(width, height), Sheet::whole);
    }

    private Sheet add(Sheet.Extent paper) {
        return add(paper, Sheet::new);
    }

    private interface Making {
        Sheet make(PDDocument document, PDPage page, PDFont font, Sheet.Extent paper, Correction correction)
                throws IOException;
    }

    private Sheet add(Sheet.Extent paper, Making making) {
        try {
            PDPage page = new PDPage(new PDRectangle(Sheet.points(paper.width()), Sheet.points(paper.height())));
            document.addPage(page);
            Sheet sheet = making.make(document, page, font, paper, correction);
            sheets.add(sheet);
            return sheet;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    int count() {
        return sheets.size();
    }

    /** The sheets as pictures for a page; the document is given up. */
    List<SheetPicture> pictures() {
        return sheets.stream().map(Sheet::picture).toList();
    }

    byte[] bytes() {
        try {
            for (Sheet sheet : sheets) {
                sheet.finish();
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
