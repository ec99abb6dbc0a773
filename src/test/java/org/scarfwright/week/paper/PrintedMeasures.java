package org.scarfwright.week.paper;

import java.awt.geom.Point2D;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.contentstream.PDFGraphicsStreamEngine;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.graphics.image.PDImage;
import org.apache.pdfbox.util.Matrix;
import org.apache.pdfbox.util.Vector;
import org.jspecify.annotations.Nullable;

/** Reads a PDF back: where its lines run on the paper, what they say they measure, and where its text stands. */
final class PrintedMeasures {
    private static final double MM_PER_POINT = 25.4 / 72;

    private PrintedMeasures() {}

    /**
     * A dimension as printed.
     *
     * @param scale words of the last scale printed before it; empty when there was none
     * @param length of its line on the paper, in millimetres
     */
    record Measure(int page, String scale, String figure, double length) {}

    /** What one PDF holds; outside counts lines and letters that leave the paper. */
    record Read(List<Measure> measures, List<String> texts, int pages, int outside) {}

    static Read of(byte[] pdf) {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            List<Measure> measures = new ArrayList<>();
            List<String> texts = new ArrayList<>();
            int outside = 0;
            String scale = "";
            int number = 0;
            for (PDPage page : document.getPages()) {
                Reader reader = new Reader(page, number++, scale, measures, texts);
                reader.processPage(page);
                scale = reader.scale;
                outside += reader.outside;
            }
            return new Read(measures, texts, number, outside);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static final class Reader extends PDFGraphicsStreamEngine {
        private final List<Measure> measures;
        private final List<String> texts;
        private final PDPage page;
        private final int number;
        private String scale;
        private int outside;
        private boolean inside;
        private double length = -1;
        private final StringBuilder figure = new StringBuilder();
        private StringBuilder text = new StringBuilder();
        private @Nullable Point2D here;
        private double segment;

        Reader(PDPage page, int number, String scale, List<Measure> measures, List<String> texts) {
            super(page);
            this.page = page;
            this.number = number;
            this.scale = scale;
            this.measures = measures;
            this.texts = texts;
            addOperator(new org.apache.pdfbox.contentstream.operator.markedcontent.BeginMarkedContentSequence(this));
            addOperator(new org.apache.pdfbox.contentstream.operator.markedcontent.EndMarkedContentSequence(this));
        }

        @Override
        public void beginMarkedContentSequence(COSName tag, @Nullable COSDictionary properties) {
            if (tag.getName().equals("Measure")) {
                inside = true;
                length = -1;
                figure.setLength(0);
            }
        }

        @Override
        public void endMarkedContentSequence() {
            if (inside) {
                measures.add(new Measure(number, scale, figure.toString(), length));
            }
            inside = false;
        }

        @Override
        public void beginText() {
            text = new StringBuilder();
        }

        @Override
        public void endText() {
            String said = text.toString();
            texts.add(said);
            if (said.startsWith("Scale 1 : ") || said.contains("True to scale, 1 : 1")) {
                scale = said;
            }
        }

        @Override
        protected void showGlyph(Matrix place, PDFont font, int code, Vector displacement) throws IOException {
            String letter = font.toUnicode(code);
            text.append(letter);
            if (inside) {
                figure.append(letter);
            }
            see(place.getTranslateX(), place.getTranslateY());
        }

        private void see(double x, double y) {
            double w = page.getMediaBox().getWidth();
            double h = page.getMediaBox().getHeight();
            if (x < 0 || y < 0 || x > w || y > h) {
                outside++;
            }
        }

        @Override
        public void moveTo(float x, float y) {
            here = new Point2D.Double(x, y);
            segment = 0;
            see(x, y);
        }

        @Override
        public void lineTo(float x, float y) {
            Point2D to = new Point2D.Double(x, y);
            segment += here == null ? 0 : here.distance(to);
            here = to;
            see(x, y);
        }

        @Override
        public void curveTo(float x1, float y1, float x2, float y2, float x3, float y3) {
            here = new Point2D.Double(x3, y3);
            see(x3, y3);
        }

        @Override
        public void strokePath() {
            if (inside && length < 0) {
                length = segment * MM_PER_POINT;
            }
        }

        @Override
        public void appendRectangle(Point2D p0, Point2D p1, Point2D p2, Point2D p3) {
            see(p0.getX(), p0.getY());
            see(p2.getX(), p2.getY());
        }

        @Override
        public void drawImage(PDImage image) {
            throw new AssertionError("sheets have no images");
        }

        @Override
        public void clip(int rule) {}

        @Override
        public @Nullable Point2D getCurrentPoint() {
            return here;
        }

        @Override
        public void closePath() {}

        @Override
        public void endPath() {}

        @Override
        public void fillPath(int rule) {}

        @Override
        public void fillAndStrokePath(int rule) {}

        @Override
        public void shadingFill(COSName name) {}
    }
}
