//! References: beams, load combinations, hydraulics and steel.

use super::references;

references! { STRUCTURAL:
    EULER_BERNOULLI = "euler_bernoulli", "Euler-Bernoulli beam theory, direct stiffness method", "Hermite element, 2 degrees of freedom a node", Derived, "Checked against published continuous-beam tables and independent solvers.";
    UNIFORM_TORSION = "uniform_torsion", "Uniform torsion of a straight member", "T = G J times twist over length, 3 degrees of freedom a node", Derived, "Checked against closed forms, an independent solver and rotated plans; warping is left out.";
    HEAD_ROTATION = "head_rotation", "Long beam on an elastic foundation", "moment at an end that does not move sideways", Derived, "theta = M/(2 lambda E I) with lambda = (k/(4 E I))^(1/4), so that M/theta = sqrt(2) E I/R with R = (E I/k)^(1/4); holds where the shaft is longer than about 4 R in that ground.";
    PUSHING_SUPPORTS = "pushing_supports", "Equilibrium of supports that push and do not pull", "no pull, no penetration, either no force or no gap", Derived, "Checked against every subset of supports on small plans: exactly one set meets it.";
    CONTINUOUS_BEAM_TABLE = "continuous_beam_table", "Civil Engineering Formulas", "table 2.1, uniformly loaded continuous beams over equal spans, p. 50", Verified, "2 to 5 equal spans; the solver is tested against every row.";
    THREE_MOMENT = "three_moment", "Kassimali, Structural Analysis", "appendix D.3, three-moment equation", Verified, "General form with loads and settlements, as shown on a worked page; used by the search and as the second check of the stiffness method.";
    STEEL_DENSITY = "steel_density", "Handbook value of structural steel", "", CommonPracticeNoSource, "7,850 kg/m3 (490 lb/ft3).";
    STATICS_CLOSURE = "statics_closure", "Statics", "equilibrium of forces and moments", Derived, "Sum of reactions against sum of loads, and their moments about both plan axes.";
    SITE_GRID = "site_grid", "Plane geometry", "turn, factor and shift of axes, distance of two points", Derived, "Holds where the site is small beside the map projection, so that one factor does for all of it.";
    TRIBUTARY_PRACTICE = "tributary_practice", "Half spans to each side of a support", "", CommonPracticeNoSource, "Misses continuity: the first interior support of equal spans carries 10 to 25 % more, an end support less.";
    SLAB_TRIBUTARY = "slab_tributary", "Tributary areas of two-way slabs on beams", "bisectors of the corners, 45 degrees on a rectangle", Memory, "Textbook rule after the yield lines of a slab; text not seen. The areas themselves are geometry.";
    SLAB_ONE_WAY = "slab_one_way_span", "Slabs at least twice as long as wide span one way", "", Memory, "Textbook rule of reinforced concrete; text not seen. Half of each strip to either end is statics of a simple beam.";
    PATTERN_SUPERPOSITION = "pattern_superposition", "Superposition of partial loads (influence areas)", "", Derived, "The extreme of a sum over parts that are there or not is the sum of those of one sign.";
    SPRINGS_IN_SERIES = "springs_in_series", "Springs in series", "", Derived, "Shortening of the shaft and movement of the lowest helix add up.";
    PILE_STIFFNESS_PRACTICE = "pile_stiffness_practice", "Stiffness of light helical piles under service load", "", CommonPracticeNoSource, "30 to 150 kip/in (5 to 26 kN/mm) is usual.";
    LAYOUT_ENUMERATION = "layout_enumeration", "Exhaustive enumeration with bounds", "", Derived, "A count is infeasible when every placement within the spacing limits breaks a limit; branches are cut only where bounds on the support moments show that no completion can do.";
    ASCE_7_16_ASD = "asce_7_16_asd", "ASCE/SEI 7-16", "2.4.1 and 2.4.5, basic combinations for allowable stress design", Verified, "Rain, flood, soil and self-straining loads are not among the kinds of load; the factors were seen, the numbers of the seismic paragraphs are from memory.";
    ASCE_7_16_LRFD = "asce_7_16_lrfd", "ASCE/SEI 7-16", "2.3.1 and 2.3.6, basic combinations for strength design", Verified, "Rain, flood, soil and self-straining loads are not among the kinds of load; the factors were seen, the numbers of the seismic paragraphs are from memory; the reduced companion live load of 0.5 is not used.";
    ASCE_7_22_ASD = "asce_7_22_asd", "ASCE/SEI 7-22", "2.4.1 and 2.4.5", Memory, "Snow became a strength-level load: 0.7 S, 0.525 S beside live load, 0.1 S with seismic. Text not seen.";
    ASCE_7_22_LRFD = "asce_7_22_lrfd", "ASCE/SEI 7-22", "2.3.1 and 2.3.6", Memory, "Snow became a strength-level load: 1.0 S, 0.3 S as companion, 0.15 S with seismic. Text not seen.";
    NBC_2020_COMBINATIONS = "nbc_2020_combinations", "National Building Code of Canada 2020, division B", "table 4.1.3.2.-A", Memory, "Text not seen; a secondary page gives other companion factors (0.4 S, 0.5 L).";
}
