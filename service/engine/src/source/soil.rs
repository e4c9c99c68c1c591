//! References: strengths of soil from field tests, index properties and stress history,
//! and ground that helix theory does not reach.

use super::references;

references! { SOIL:
    REFERENCE_PRESSURE = "reference_pressure", "Common practice", "p_a", CommonPracticeNoSource, "100 kPa makes blow counts and cone resistances comparable; a standard atmosphere of 101.3 kPa would move a blow count by 0.7 %.";
    LIAO_WHITMAN_1986 = "liao_whitman_1986", "Liao and Whitman 1986, Overburden correction factors for SPT in sand, Journal of Geotechnical Engineering 112(3)", "C_N", Secondary, "C_N = sqrt(p_a/s'_v); seen in the documentation of a public geotechnical library.";
    OVERBURDEN_CAP_PRACTICE = "overburden_correction_cap", "Common practice", "largest overburden correction", CommonPracticeNoSource, "1.7 to 2.0. EN ISO 22476-3 is quoted with at most 2 and preferably below 1.5.";
    SPT_ENERGY = "spt_energy_correction", "Ameratunga, Sivakugan and Das 2016, Correlations of Soil and Rock Properties in Geotechnical Engineering", "ch. 4, N_60", Secondary, "Seen in the documentation of a public geotechnical library.";
    SPT_ENERGY_ASSUMED = "spt_energy_assumed", "UFC 3-220-10 Soil Mechanics", "8-2.1.2", Secondary, "Where no energy correction was made, reported blow counts were taken as N_60, an energy ratio of 60 %. Seen as a transcription.";
    SPT_SILTY_SAND = "spt_silty_sand", "UFC 3-220-10 Soil Mechanics", "eq. 8-1", Secondary, "N' = 15 + 0.5 (N - 15) above 15 in saturated very fine or silty sand. Seen as a transcription.";
    PECK_HANSON_THORNBURN = "peck_hanson_thornburn_wolff", "Peck, Hanson and Thornburn 1974 as fitted by Wolff 1989; UFC 3-220-10 Soil Mechanics", "eq. 8-5", Secondary, "Called conservative there. Seen as a transcription and in the documentation of a public geotechnical library, the same in both.";
    KULHAWY_MAYNE_SPT = "kulhawy_mayne_1990_spt", "Kulhawy and Mayne 1990, Manual on Estimating Soil Properties for Foundation Design; UFC 3-220-10 Soil Mechanics", "eq. 8-4", Secondary, "Seen as a transcription and in the documentation of a public geotechnical library, the same in both.";
    HATANAKA_UCHIDA_1996 = "hatanaka_uchida_1996", "Hatanaka and Uchida 1996; UFC 3-220-10 Soil Mechanics", "eq. 8-6", Secondary, "Triaxial tests on frozen samples of natural sand, hammer of 78 %. Seen as a transcription.";
    SHIOI_FUKUI_1982 = "shioi_fukui_1982", "Shioi and Fukui 1982; UFC 3-220-10 Soil Mechanics", "eq. 8-2, 8-3", Secondary, "Roads and bridges; buildings. Seen as a transcription.";
    COARSE_SOIL_CORRELATIONS = "coarse_soil_correlations", "UFC 3-220-10 Soil Mechanics", "8-2.1", Secondary, "The relations are for relatively clean sand, not for micaceous sand, and not for gravelly soil unless it is named. Seen as a transcription.";
    SPT_RANGE = "spt_correlation_range", "Ranges given with the relations in a public geotechnical library", "", CommonPracticeNoSource, "Friction angle: blow counts up to 60. Undrained strength: up to 100. A higher count is held at the end of the range, which is on the safe side.";
    FRICTION_ANGLE_45 = "friction_angle_45", "Common practice", "", CommonPracticeNoSource, "No friction angle above 45 degrees is relied on.";
    SALGADO_2008 = "salgado_2008", "Salgado 2008, The Engineering of Foundations", "s_u by N_60 and plasticity index", Secondary, "Table of factors for plasticity indices of 15 to 60 %, interpolated; seen in the documentation of a public geotechnical library.";
    CONE_TOTAL_RESISTANCE = "cone_total_resistance", "Lunne, Robertson and Powell 1997, Cone Penetration Testing in Geotechnical Practice", "q_t", Secondary, "q_t = q_c + u_2 (1 - a); seen in the documentation of a public geotechnical library.";
    CONE_FACTOR_UFC = "cone_factor", "UFC 3-220-10 Soil Mechanics", "8-3.3", Secondary, "s_u = (q_t - s_v)/N_kt, N_kt 14 to 16; N_k 10 to 19 with a mean of 15. Seen as a transcription.";
    KULHAWY_MAYNE_CPT = "kulhawy_mayne_1990_cpt", "Kulhawy and Mayne 1990; Mayne 2007; UFC 3-220-10 Soil Mechanics", "eq. 8-7", Secondary, "Calibration-chamber tests on sand. Seen as a transcription and in the documentation of a public geotechnical library, the same in both.";
    ROBERTSON_CAMPANELLA_1983 = "robertson_campanella_1983", "Robertson and Campanella 1983", "phi' by q_c/s'_v", Secondary, "tan phi' = [log10(q_c/s'_v) + 0.29]/2.68, of uncemented quartz sand of moderate compressibility; seen in public code. UFC 3-220-10 eq. 8-8 rounds it to 0.1 + 0.38 log10(q_c/s'_v), up to 0.3 degrees higher.";
    ROBERTSON_WRIDE_1998 = "robertson_wride_1998", "Robertson and Wride 1998; exponent of Zhang, Robertson and Brachman 2002", "soil behaviour type index", Secondary, "Seen in the documentation of a public geotechnical library; below 2.5 sand-like, above 2.7 clay-like.";
    LADD_FOOTT_1974 = "ladd_foott_1974", "Ladd and Foott 1974 (SHANSEP); UFC 3-220-10 Soil Mechanics", "8-3.2", Secondary, "s_u/s'_v = S OCR^m, S about 0.22 to 0.23, m about 0.8. Seen as a transcription.";
    SKEMPTON_1957 = "skempton_1957", "Skempton 1957, discussion of the Hong Kong airport design", "s_u/s'_v by plasticity index", Secondary, "0.11 + 0.0037 PI (PI in per cent) of normally consolidated clay; seen in the documentation of public geotechnical libraries.";
    BOLTON_1986 = "bolton_1986", "Bolton 1986, The strength and dilatancy of sands, Geotechnique 36(1)", "I_R = I_D (10 - ln p') - 1, phi' = phi_cv + 3 I_R", Secondary, "Triaxial strain; I_R of 0 to 4. Seen in the documentation of public geotechnical libraries.";
    BOLTON_1987 = "bolton_1987", "Bolton 1986, discussion of 1987; as quoted by a public geotechnical library", "least p'", Secondary, "A mean stress of at least 150 kPa is prudent.";
    BEARING_MEAN_STRESS = "bearing_mean_stress", "Fleming, Weltman, Randolph and Elson, Piling Engineering", "mean stress at failure under a base", Memory, "p' = s'_v sqrt(N_q), the geometric mean of bearing pressure and vertical effective stress; the form is remembered.";
    CORRELATION_UNCERTAINTY = "correlation_uncertainty", "UFC 3-220-10 Soil Mechanics", "8-1", Secondary, "Correlations give an uncertain prediction, fit for preliminary design or as a check on measured values. Seen as a transcription.";
    HAZARDOUS_GROUND = "hazardous_ground", "Common practice for ground that changes its strength or stops a helix", "", CommonPracticeNoSource, "Boulders, collapsible, sensitive and liquefiable soil and permafrost need a test or a study of the site.";
    PLACEMENT_RECORD = "placement_record", "Common practice for engineered fill", "", CommonPracticeNoSource, "Fill counts as the soil it was placed as where a record shows how it was placed and tested.";
}
