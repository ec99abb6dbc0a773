package org.scarfwright.week.paper;

import java.awt.geom.AffineTransform;
import java.awt.geom.GeneralPath;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.contentstream.PDFGraphicsStreamEngine;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDVectorFont;
import org.apache.pdfbox.pdmodel.graphics.image.PDImage;
import org.apache.pdfbox.util.Matrix;
import org.apache.pdfbox.util.Vector;

/** What lies on a page of a PDF, read back from its vectors: every letter's ink and every filled box, in millimetres from the top left. */
final class PrintedLabels extends PDFGraphicsStreamEngine {
    private static final double MM = 25.4 / 72;

    /** The ink of one letter; empty for a space. */
    record Letter(String text, Rectangle2D ink) {}

    private final double height;
    private final List<Letter> letters = new ArrayList<>();
    private final List<Rectangle2D> boxes = new ArrayList<>();
    private final List<Rectangle2D> path = new ArrayList<>();

    private PrintedLabels(PDPage page) {
        super(page);
        height = page.getMediaBox().getHeight();
    }

    static List<PrintedLabels> of(PDDocument document) throws IOException {
        List<PrintedLabels> pages = new ArrayList<>();
        for (PDPage page : document.getPages()) {
            PrintedLabels read = new PrintedLabels(page);
            read.processPage(page);
            pages.add(read);
        }
        return pages;
    }

    List<Letter> letters() {
        return letters;
    }

    List<Rectangle2D> boxes() {
        return boxes;
    }

    private Rectangle2D onPaper(Rectangle2D points) {
        return new Rectangle2D.Double(
                points.getX() * MM, (height - points.getMaxY()) * MM, points.getWidth() * MM, points.getHeight() * MM);
    }

    @Override
    protected void showGlyph(Matrix place, PDFont font, int code, Vector displacement) throws IOException {
        AffineTransform at = place.createAffineTransform();
        at.concatenate(font.getFontMatrix().createAffineTransform());
        GeneralPath outline = ((PDVectorFont) font).getNormalizedPath(code);
        letters.add(new Letter(
                String.valueOf(font.toUnicode(code)),
                onPaper(outline.createTransformedShape(at).getBounds2D())));
    }

    @Override
    public void appendRectangle(Point2D p0, Point2D p1, Point2D p2, Point2D p3) {
        Rectangle2D box = new Rectangle2D.Double(p0.getX(), p0.getY(), 0, 0);
        box.add(p1);
        box.add(p2);
        box.add(p3);
        path.add(onPaper(box));
    }

    @Override
    public void fillPath(int windingRule) {
        boxes.addAll(path);
        path.clear();
    }

    @Override
    public void endPath() {
        path.clear();
    }

    @Override
    public void drawImage(PDImage image) {
        throw new AssertionError("a label holds no picture");
    }

    @Override
    public void clip(int windingRule) {
        throw new AssertionError("a label is not clipped");
    }

    @Override
    public void moveTo(float x, float y) {
        throw new AssertionError("a label holds boxes only");
    }

    @Override
    public void lineTo(float x, float y) {
        throw new AssertionError("a label holds boxes only");
    }

    @Override
    public void curveTo(float x1, float y1, float x2, float y2, float x3, float y3) {
        throw new AssertionError("a label holds boxes only");
    }

    @Override
    public Point2D getCurrentPoint() {
        return new Point2D.Double();
    }

    @Override
    public void closePath() {
        throw new AssertionError("a label holds boxes only");
    }

    @Override
    public void strokePath() {
        throw new AssertionError("a label holds no line");
    }

    @Override
    public void fillAndStrokePath(int windingRule) {
        throw new AssertionError("a label holds no line");
    }

    @Override
    public void shadingFill(COSName shading) {
        throw new AssertionError("a label holds no shading");
    }
}
