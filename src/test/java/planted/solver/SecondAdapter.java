package planted.solver;

import com.google.ortools.Loader;

/** A second class that knows the native solver. */
public final class SecondAdapter {
    private SecondAdapter() {}

    public static void load() {
        Loader.loadNativeLibraries();
    }
}
