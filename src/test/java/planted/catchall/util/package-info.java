@NullMarked
package planted.catchall.util;

import org.jspecify.annotations.NullMarked;
