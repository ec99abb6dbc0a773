package org.scarfwright.browser;

import static org.assertj.core.api.Assertions.assertThat;

import com.deque.html.axecore.args.AxeRunOptions;
import com.deque.html.axecore.results.CheckedNode;
import com.deque.html.axecore.selenium.AxeBuilder;
import java.io.File;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Arrays;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.junit.jupiter.api.Assumptions;
import org.openqa.selenium.By;
import org.openqa.selenium.WebDriverException;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.print.PageSize;
import org.openqa.selenium.print.PrintOptions;
import org.openqa.selenium.support.ui.Select;
import org.openqa.selenium.support.ui.WebDriverWait;

/** Headless Chromium, used as a person uses it: by labels, links and buttons. */
final class Browser implements AutoCloseable {
    private static final double CENTIMETRES_TO_THE_INCH = 2.54;

    private final ChromeDriver driver;
    private final String address;

    private Browser(ChromeDriver driver, String address) {
        this.driver = driver;
        this.address = address;
    }

    /** A browser that is missing fails the build where CI is true, and skips the test with a reason elsewhere. */
    static Browser open(String address) {
        Optional<File> chromium = onPath("chromium");
        Optional<File> chromedriver = onPath("chromedriver");
        if (chromium.isEmpty() || chromedriver.isEmpty()) {
            String missing =
                    "No chromium and chromedriver on the PATH; on Debian: apt-get install chromium chromium-driver";
            if (Boolean.parseBoolean(System.getenv("CI"))) {
                throw new AssertionError(missing);
            }
            Assumptions.abort(missing);
        }
        ChromeOptions options = new ChromeOptions();
        options.setBinary(chromium.orElseThrow());
        options.addArguments(
                "--headless=new",
                "--no-sandbox",
                "--disable-gpu",
                "--disable-dev-shm-usage",
                "--disable-background-networking",
                "--disable-component-update",
                "--disable-sync",
                "--no-first-run",
                "--lang=en");
        ChromeDriverService service = new ChromeDriverService.Builder()
                .usingDriverExecutable(chromedriver.orElseThrow())
                .usingAnyFreePort()
                .build();
        ChromeDriver driver = new ChromeDriver(service, options);
        driver.manage().timeouts().pageLoadTimeout(Duration.ofMinutes(3)).scriptTimeout(Duration.ofMinutes(2));
        return new Browser(driver, address);
    }

    private static Optional<File> onPath(String name) {
        return Arrays.stream(
                        Objects.requireNonNullElse(System.getenv("PATH"), "").split(File.pathSeparator, -1))
                .map(folder -> new File(folder, name))
                .filter(File::canExecute)
                .findFirst();
    }

    // Looking

    void width(int pixels) {
        driver.executeCdpCommand(
                "Emulation.setDeviceMetricsOverride",
                Map.of("width", pixels, "height", 900, "deviceScaleFactor", 1, "mobile", false));
    }

    void dark(boolean dark) {
        driver.executeCdpCommand(
                "Emulation.setEmulatedMedia",
                Map.of("features", List.of(Map.of("name", "prefers-color-scheme", "value", dark ? "dark" : "light"))));
    }

    /** The page's own scripts; the test itself can still look. */
    void scripts(boolean on) {
        driver.executeCdpCommand("Emulation.setScriptExecutionDisabled", Map.of("value", !on));
    }

    String heading() {
        List<WebElement> headings = driver.findElements(By.tagName("h1"));
        assertThat(headings).as("one h1 on " + path()).hasSize(1);
        return headings.get(0).getText();
    }

    String text() {
        return driver.findElement(By.tagName("main")).getText();
    }

    String path() {
        return Objects.requireNonNull(driver.getCurrentUrl()).substring(address.length());
    }

    int count(String selector) {
        return driver.findElements(By.cssSelector(selector)).size();
    }

    /** Texts of what the selector finds, in the page's order. */
    List<String> texts(String selector) {
        return driver.findElements(By.cssSelector(selector)).stream()
                .map(WebElement::getText)
                .toList();
    }

    String value(String label) {
        return Objects.requireNonNull(field(label).getDomProperty("value"));
    }

    /** Paths of this program that the page links to. */
    List<String> links() {
        return driver.findElements(By.cssSelector("a[href]")).stream()
                .map(a -> Objects.requireNonNull(a.getDomProperty("href")))
                .filter(href -> href.startsWith(address + "/"))
                .map(href -> href.substring(address.length()).replaceFirst("#.*", ""))
                .distinct()
                .toList();
    }

    /** Whether the page itself scrolls sideways. */
    boolean overflows() {
        return (boolean) Objects.requireNonNull(driver.executeScript(
                "return document.documentElement.scrollWidth > document.documentElement.clientWidth"));
    }

    /** What the accessibility rules find, one line each. */
    List<String> violations() {
        AxeRunOptions options = new AxeRunOptions();
        options.setResultTypes(List.of("violations")); // the rest is not read and costs most of the time
        return new AxeBuilder()
                .withOptions(options).analyze(driver).getViolations().stream()
                        .map(v -> v.getId() + " at "
                                + v.getNodes().stream()
                                        .map(CheckedNode::getTarget)
                                        .map(String::valueOf)
                                        .limit(5)
                                        .toList())
                        .toList();
    }

    /** The page as it is printed. */
    byte[] pdf(PageSize paper) {
        PrintOptions options = new PrintOptions();
        options.setPageSize(paper);
        return Base64.getDecoder().decode(driver.print(options).getContent());
    }

    /** The page as it is printed where its style says how the paper lies and how wide the margins are. */
    byte[] pdfAsStyled(PageSize paper) {
        Map<String, Object> printed = driver.executeCdpCommand(
                "Page.printToPDF",
                Map.of(
                        "paperWidth",
                        paper.getWidth() / CENTIMETRES_TO_THE_INCH,
                        "paperHeight",
                        paper.getHeight() / CENTIMETRES_TO_THE_INCH,
                        "preferCSSPageSize",
                        true));
        return Base64.getDecoder().decode(String.valueOf(printed.get("data")));
    }

    // Acting

    void go(String path) {
        driver.get(address + path);
    }

    void link(String text) {
        press(driver.findElement(
                By.xpath("//a[normalize-space()=" + quoted(text) + "][not(ancestor::details[not(@open)])]")));
    }

    /** Follows the link that is the n-th thing the selector finds, from 0. */
    void follow(String selector, int n) {
        press(driver.findElements(By.cssSelector(selector)).get(n));
    }

    void button(String text) {
        press(driver.findElement(By.xpath("//main//button[starts-with(normalize-space()," + quoted(text) + ")]")));
    }

    void fill(String label, String text) {
        WebElement field = field(label);
        field.clear();
        field.sendKeys(text);
    }

    void tick(String id) {
        WebElement box = driver.findElement(By.id(id));
        if (!box.isSelected()) {
            box.click();
        }
    }

    void choose(String label, String option) {
        new Select(field(label)).selectByVisibleText(option);
    }

    void upload(String label, String name, String content) {
        try {
            Path file = Files.createTempDirectory("upload").resolve(name);
            Files.writeString(file, content);
            field(label).sendKeys(file.toString());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private WebElement field(String label) {
        WebElement named = driver.findElement(By.xpath("//main//label[normalize-space()=" + quoted(label) + "]"));
        return driver.findElement(By.id(Objects.requireNonNull(named.getDomAttribute("for"))));
    }

    /**
     * Presses what leads to another page, and waits for it: the old page may have the same heading as the new one, so it is marked.
     * Between the two the driver may answer with any error.
     */
    private void press(WebElement element) {
        driver.executeScript("window.pressed = true; arguments[0].scrollIntoView({block: 'center'})", element);
        element.click();
        new WebDriverWait(driver, Duration.ofMinutes(2))
                .ignoring(WebDriverException.class)
                .until(d -> Boolean.TRUE.equals(
                        driver.executeScript("return !window.pressed && document.readyState === 'complete'")));
    }

    /** Waits for a page that leads on by itself. */
    void waitFor(String path) {
        WebDriverWait patience = new WebDriverWait(driver, Duration.ofMinutes(2));
        patience.until(d -> path().matches(path));
        patience.until(d -> "complete".equals(driver.executeScript("return document.readyState")));
    }

    private static String quoted(String text) {
        return "\"" + text + "\"";
    }

    @Override
    public void close() {
        driver.quit();
    }
}
