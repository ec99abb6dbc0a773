@NullMarked
package planted.clock;

import org.jspecify.annotations.NullMarked;
