package org.scarfwright.necks.web;

import java.util.List;
import org.scarfwright.web.Science;
import org.scarfwright.web.ScienceRow;
import org.scarfwright.web.ScienceSection;
import org.springframework.stereotype.Component;

/** Sources of every figure about strings. */
@Component
class StringsScience implements Science {
    @Override
    public ScienceSection section() {
        return new ScienceSection(
                22,
                "Strings",
                "T tension; µ mass per length; L scale length; f frequency; a tilt; β break angle; g height of the slot above the "
                        + "neck’s top at the nut; p height of the winding above the face; d distance of the post from the nut; "
                        + "w, z width and thickness of the section at the nut. The string runs level along the neck; friction, "
                        + "turning sideways and stiffness are left out.",
                List.of(
                        ScienceRow.of(
                                        "strings-tension",
                                        "pull of a string",
                                        "T = µ·(2·L·f)²",
                                        "Mersenne’s law, Harmonie universelle, 1636")
                                .in("joint.StringTension")
                                .provedBy(
                                        "joint.StringTensionTest",
                                        "strings and exercises of physics texts, each to half its last digit"),
                        ScienceRow.of(
                                        "strings-pitch",
                                        "frequency of a note",
                                        "440·2^(n/12) Hz, n half tones above A4",
                                        "equal temperament; A4 = 440 Hz by ISO 16")
                                .in("joint.Pitch")
                                .provedBy("joint.PitchTest", "thirteen notes as commonly printed, to 0.005 Hz"),
                        ScienceRow.of(
                                        "strings-break-angle",
                                        "break angle over the nut",
                                        "tan β = (g + d·sin a − p·cos a)/(d·cos a + p·sin a)",
                                        "derived here")
                                .in("joint.StringPath")
                                .provedBy("joint.StringPathTest", "a head turned by a geometry library"),
                        ScienceRow.of(
                                        "strings-nut-load",
                                        "load on the nut",
                                        "resultant 2·T·sin(β/2); down T·sin β; along T·(1 − cos β)",
                                        "derived here: sum of two equal pulls")
                                .in("joint.NutLoad")
                                .provedBy(
                                        "joint.NutLoadTest", "right angle, sixty degrees, and the sum of two vectors"),
                        ScienceRow.of(
                                        "strings-bending",
                                        "bending at the nut",
                                        "M = T·((z/2)·cos(β − a) + g·cos β); σ = M·c/I = 6·M/(w·z²), a rectangle",
                                        "beam theory, any text on strength of materials; the arm derived here")
                                .in("joint.NutSection")
                                .provedBy(
                                        "joint.NutSectionTest",
                                        "the arm as a distance measured by a geometry library; the stress summed over thin layers"),
                        ScienceRow.of(
                                        "joint-blank-weight",
                                        "weight of the glued blank",
                                        "density × (neck: t·w·(front + back)/2 + head: h·W·(front + back)/2), wings left out",
                                        "derived here; density Wood Handbook eq. 4-14")
                                .in("joint.GluedBlank", "wood.Density")
                                .provedBy("joint.GluedBlankTest", "areas of outlines clipped by a geometry library")
                                .provedBy("wood.DensityTest", ""),
                        ScienceRow.of(
                                        "strings-short-grain",
                                        "what a one-piece head keeps",
                                        "modulus of rupture × share kept at 1 in cot a; no efficiency of the scarf is printed",
                                        "Wood Handbook Tables 5-3b, 5-5b and 5-12; Hankinson’s formula")
                                .in("wood.GrainSlope", "necks.web.StringsSheet")
                                .provedBy("wood.GrainSlopeTest", "")
                                .provedBy("necks.web.StringsWebTest", "hard maple at 10°")));
    }
}
