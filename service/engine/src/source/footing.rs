//! References: bearing of a dug footing, its shape and depth, water, safety.

use super::references;

references! { FOOTING:
    UFC_SHALLOW_DEPTH = "ufc_shallow_depth", "UFC 3-220-20, Foundations and Earth Structures (2025)", "5-1.1", Secondary, "A foundation is shallow below a depth of about 5 widths. Seen as a transcription.";
    UFC_BEARING_EQUATION = "ufc_bearing_equation", "UFC 3-220-20, Foundations and Earth Structures (2025)", "eq. 5-15, 5-17 to 5-20", Secondary, "Sum of the terms of cohesion, overburden and width, each with its shape and depth factors; effective stresses drained, total stresses with phi = 0. Seen as a transcription.";
    UFC_GROUNDWATER = "ufc_groundwater", "UFC 3-220-20, Foundations and Earth Structures (2025)", "5-3.2, eq. 5-15", Secondary, "Drained only: effective stress at the base, effective unit weight averaged over one width below it. Seen as a transcription.";
    UFC_ALLOWABLE_PRESSURE = "ufc_allowable_pressure", "UFC 3-220-20, Foundations and Earth Structures (2025); net form after Peck, Hanson and Thornburn 1974", "eq. 5-2, 5-3, 5-13, 5-14", Secondary, "Gross q_ult / F; net q_ult / F less the overburden. Seen as a transcription.";
    UFC_FOOTING_SAFETY = "ufc_footing_safety", "UFC 3-220-20, Foundations and Earth Structures (2025)", "5-1.3", Secondary, "2 to 3 under dead load and permanent live load; the upper end is taken. Seen as a transcription.";
    SAFETY_ON_NET = "safety_on_net", "Common practice for footings in clay", "safety on the net pressure", CommonPracticeNoSource, "The overburden was carried before and needs no safety; only the net part is divided.";
    TERZAGHI_SHAPE = "terzaghi_1943_shape", "Terzaghi 1943; UFC 3-220-20 (2025)", "table 5-5", Secondary, "Cohesion 1.3 square and circle, width 0.8 square and 0.6 circle; rectangles between square and strip in proportion to B/L. Seen as a transcription.";
    TERZAGHI_WIDTH_TABLE = "terzaghi_1943_width_table", "Terzaghi 1943; as tabulated in public tables of bearing-capacity factors", "N_gamma", Verified, "No closed form. The tables give 0 to 45 degrees in steps of 5, and 34 degrees (35.0 there).";
    MEYERHOF_SHAPE_DEPTH = "meyerhof_1963_shape_depth", "Meyerhof 1963; UFC 3-220-20 (2025)", "table 5-6", Secondary, "s_q, s_gamma, d_q and d_gamma differ from 1 above 10 degrees only. Seen as notes of a transcription and in a public formula sheet.";
    HANSEN_SHAPE_DEPTH = "hansen_1970_shape_depth", "Hansen 1970; UFC 3-220-20 (2025)", "tables 5-7 and 5-8, eq. 5-21", Secondary, "The form at phi = 0 adds the factors. Seen as a transcription; s_q, s_gamma and the depth factors in public formula sheets.";
    VESIC_SHAPE_DEPTH = "vesic_1973_shape_depth", "Vesic 1973, De Beer 1970; as tabulated in a copied table of a foundation design text", "shape and depth factors", Secondary, "Agrees with a quoted example of Gunaratne 2006 to all its digits for s_q, s_gamma and d_q. Elsewhere d_c = d_q - (1 - d_q)/(N_c tan phi) is printed, which is lower.";
    CANADA_PHI_SHALLOW = "canada_resistance_factor_shallow", "Canadian Foundation Engineering Manual, 4th ed. (2006)", "resistance factors, bearing of shallow foundations", Memory, "0.5 for bearing by analysis.";
}
