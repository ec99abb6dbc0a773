package planted.modules;

import org.springframework.modulith.Modulithic;

/** The root of two rooms, one of which reaches into the other without naming it. */
@Modulithic
public final class PlantedProgram {
    private PlantedProgram() {}
}
