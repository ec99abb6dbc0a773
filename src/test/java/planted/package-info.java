/** Code that breaks the rules of the rooms on purpose: the proof that each rule sees something. */
@NullMarked
package planted;

import org.jspecify.annotations.NullMarked;
