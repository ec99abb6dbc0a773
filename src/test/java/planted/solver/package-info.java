@NullMarked
package planted.solver;

import org.jspecify.annotations.NullMarked;
