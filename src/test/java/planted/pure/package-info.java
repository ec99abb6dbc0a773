@NullMarked
package planted.pure;

import org.jspecify.annotations.NullMarked;
