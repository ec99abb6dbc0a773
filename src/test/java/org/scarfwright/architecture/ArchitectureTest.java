package org.scarfwright.architecture;

import static com.tngtech.archunit.base.DescribedPredicate.describe;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.lang.ArchRule;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.scarfwright.ScarfwrightApplication;
import org.scarfwright.joint.Arrangement;
import org.scarfwright.matching.search.MatchSearch;
import org.scarfwright.matching.search.NativeSolver;
import org.scarfwright.measure.Length;
import org.scarfwright.shop.Shop;
import org.scarfwright.week.schedule.CpSatScheduler;
import org.scarfwright.week.schedule.Scheduler;
import org.scarfwright.wood.Species;
import org.springframework.modulith.core.ApplicationModules;
import planted.catchall.util.Everything;
import planted.clock.ReadsTheMachinesClock;
import planted.modules.PlantedProgram;
import planted.pure.PureNoMore;
import planted.solver.SecondAdapter;
import planted.visible.PublicRows;

class ArchitectureTest {
    private static final Package MEASURE = Length.class.getPackage();
    private static final Package WOOD = Species.class.getPackage();
    private static final Package JOINT = Arrangement.class.getPackage();
    private static final Package SEARCH = MatchSearch.class.getPackage();
    private static final Package SCHEDULE = Scheduler.class.getPackage();

    private static final JavaClasses PROGRAM = new ClassFileImporter()
            .withImportOption(new ImportOption.DoNotIncludeTests())
            .importPackagesOf(ScarfwrightApplication.class);

    @Test
    void everyRoomKnowsOnlyTheRoomsItNames() {
        ApplicationModules rooms = ApplicationModules.of(ScarfwrightApplication.class);
        assertThat(rooms.stream().map(r -> r.getIdentifier().toString()))
                .contains("measure", "wood", "joint", "rack", "necks", "matching", "week", "ledger", "shop", "web");
        rooms.verify();
    }

    @Test
    void aRoomThatReachesTooFarIsCaught() {
        assertThat(ApplicationModules.of(PlantedProgram.class, new ImportOption.OnlyIncludeTests())
                        .detectViolations()
                        .getMessages())
                .anyMatch(m -> m.contains("upper") && m.contains("lower"));
    }

    @TestFactory
    Stream<DynamicTest> thePureRoomsStayPure() {
        return Map.of(
                        "measure", Rules.pure(MEASURE),
                        "wood", Rules.pure(WOOD, MEASURE),
                        "joint", Rules.pure(JOINT, MEASURE, WOOD))
                .entrySet()
                .stream()
                .map(e -> DynamicTest.dynamicTest(e.getKey(), () -> e.getValue().check(PROGRAM)));
    }

    @Test
    void theSearchesKnowNeitherTheRackNorTheFramework() {
        Set<String> adapters = Rules.knowTheSolver(PROGRAM);
        for (Package search : List.of(SEARCH, SCHEDULE)) {
            Rules.pure(search)
                    .check(PROGRAM.that(describe(
                            "are not the solver's adapters",
                            c -> adapters.stream().noneMatch(a -> c.getName().startsWith(a)))));
        }
    }

    @Test
    void onlyOneClassOfEachSearchKnowsTheSolver() {
        assertThat(Rules.knowTheSolver(PROGRAM))
                .containsExactlyInAnyOrder(NativeSolver.class.getName(), CpSatScheduler.class.getName());
    }

    @Test
    void whatReadsRowsOrAnswersRequestsIsHidden() {
        Rules.hidden().check(PROGRAM);
    }

    @Test
    void timeComesFromTheInjectedClock() throws ClassNotFoundException {
        Rules.clockIsInjected(Class.forName(Shop.class.getPackageName() + ".ShopConfiguration"))
                .check(PROGRAM);
    }

    @Test
    void noPackageIsACatchAll() {
        Rules.noCatchAllPackage().check(PROGRAM);
    }

    @Test
    void everyRuleCatchesItsPlantedViolator() {
        assertCaught(Rules.pure(PureNoMore.class.getPackage()), PureNoMore.class);
        assertThat(Rules.knowTheSolver(new ClassFileImporter().importClasses(SecondAdapter.class)))
                .containsExactly(SecondAdapter.class.getName());
        assertCaught(Rules.hidden(), PublicRows.class);
        assertCaught(Rules.hidden(), planted.visible.PublicController.class);
        assertCaught(Rules.clockIsInjected(Shop.class), ReadsTheMachinesClock.class);
        assertCaught(Rules.noCatchAllPackage(), Everything.class);
    }

    @Test
    void theClockRuleCatchesEveryWayOfAsking() {
        assertThat(violations(Rules.clockIsInjected(Shop.class), ReadsTheMachinesClock.class))
                .hasSize(5);
    }

    private static void assertCaught(ArchRule rule, Class<?> violator) {
        assertThat(violations(rule, violator))
                .as(rule.getDescription())
                .isNotEmpty()
                .anyMatch(d -> d.contains(violator.getSimpleName()) || d.contains(violator.getPackageName()));
    }

    private static List<String> violations(ArchRule rule, Class<?> violator) {
        return rule.evaluate(new ClassFileImporter().importClasses(violator))
                .getFailureReport()
                .getDetails();
    }
}
