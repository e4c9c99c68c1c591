//! References: bearing of soil under a helix, uplift, cylinder of soil between helices,
//! adhesion on the shaft.

use super::references;

references! { AXIAL:
    PRANDTL_REISSNER = "prandtl_reissner", "Prandtl 1921, Reissner 1924; as tabulated in the Foundation Engineering Handbook (Vesic factors)", "N_q, N_c", Verified, "Closed form; agrees with the table to the last printed digit.";
    VESIC_1973 = "vesic_1973", "Vesic 1973; as tabulated in the Foundation Engineering Handbook", "N_gamma", Verified, "Closed form; agrees with the table to one unit of the last printed digit.";
    HANSEN_1970 = "hansen_1970", "Hansen 1970; as tabulated in a public table", "N_gamma", Verified, "Closed form; agrees with the table but for one row misprinted there (N_q at 6 degrees) and one rounded wrongly (N_c at 34 degrees).";
    MEYERHOF_1963 = "meyerhof_1963", "Meyerhof 1963; as tabulated in a public table", "N_gamma", Verified, "Closed form; agrees with the table.";
    MEYERHOF_DEPTH = "meyerhof_1963_depth_factor", "Meyerhof 1963", "depth factor d_q; UFC 3-220-20 (2025), table 5-6", Secondary, "Above 10 degrees; seen as notes of a transcription; it reproduces a quoted strip-footing example to 0.3 %. Meant for depths up to the width, so it is held from there on.";
    TERZAGHI_1943 = "terzaghi_1943", "Terzaghi 1943; as tabulated in public tables of bearing-capacity factors", "N_q, N_c", Verified, "Closed forms agree with the tables. N_gamma has no closed form.";
    TERZAGHI_LOCAL_SHEAR = "terzaghi_1943_local_shear", "Terzaghi 1943", "local shear failure", Verified, "tan phi_l = 2/3 tan phi; agrees with a published worked output to all its digits.";
    SKEMPTON_1951 = "skempton_1951", "Skempton 1951, The bearing capacity of clays; UFC 3-220-20 (2025)", "eq. 6-39", Secondary, "N_c = 5 (1 + 0.2 z/D)(1.2) up to 9.0 at z/D = 2.5; the limit seen, the form seen transcribed.";
    DEEP_CLAY_NINE = "deep_clay_nine", "Skempton 1951; UFC 3-220-20 (2025)", "6-5.4.3.3", Verified, "N_c = 9 of a circle at depth.";
    VESIC_CAVITY = "vesic_cavity_expansion", "UFC 3-220-20 (2025)", "eq. 6-28", Secondary, "Seen as a transcription.";
    WIDTH_SHAPE = "width_term_shape", "Vesic 1973; as used in a worked example of Gunaratne 2006", "shape factor of the width term, circle and square", Secondary, "0.6; seen in a transcribed example.";
    HELIX_AREA_NET = "helix_area_net", "Engineering default of this service", "area of a helix", CommonPracticeNoSource, "IBC 1810.3.3.1.9 puts bearing on the area of the helices; that the area of the shaft is not part of it is the choice of this service, and can be overridden.";
    BEARING_ZONE = "bearing_zone", "UFC 3-220-20 (2025)", "6-5.4.3.2", Secondary, "The soil within 1 to 2 widths of the base matters most. Two diameters on the load side is the choice of this service; no rule for helices was found.";
    WEAK_LAYER_NEAR = "weak_layer_near", "Common practice for plates above weaker soil", "", CommonPracticeNoSource, "A layer below 60 % of the bearing within three diameters on the load side may be punched through.";
    SPREAD_TWO_TO_ONE = "spread_two_to_one", "Spread of load to a weaker layer, two down for one across", "", CommonPracticeNoSource, "Textbook approximation for a footing on a strong layer above a weak one; taken over for the plate of a helix by choice of this service.";
    FRICTION_ANGLE_40 = "friction_angle_40", "Common practice", "", CommonPracticeNoSource, "Friction angles above 40 degrees are rarely relied on: N_q doubles from 35 to 40 degrees.";
    USACE_CRITICAL_DEPTH = "usace_1991_critical_depth", "US Army Corps of Engineers 1991; as told in UFC 3-220-20 (2025)", "6-5.3.1", Secondary, "Resistance constant below 10 widths in loose and 20 in dense sand; the concept is disputed. Seen as a transcription.";
    HELIX_NOT_IN_ROCK = "helix_not_in_rock", "UFC 3-220-20 (2025)", "6-4.7", Secondary, "Helical piles are not suited to hard ground, coarse gravel and cobbles. Seen as a transcription.";
    NO_CREDIT_SOILS = "no_credit_soils", "Common practice for fill, peat, organic and frozen soil", "", CommonPracticeNoSource, "No bearing and no uplift resistance is counted in them, only their weight.";
    BREAKOUT_FORM = "breakout_sand_form", "Meyerhof and Adams 1968; form checked against a published table of breakout factors", "F_q of a circular plate", Secondary, "F_q = 1 + 2 [1 + m H/D] (H/D) K_u tan phi. The table is not at hand and was not computed again here.";
    BREAKOUT_LISTS = "breakout_sand_lists", "Meyerhof and Adams 1968; Das and Shukla, Earth Anchors", "m, critical depth ratio and K_u by friction angle", Memory, "The lists are remembered. The critical ratio at medium density agrees with 4 to 5 of a published centrifuge study (Salehzadeh et al. 2022).";
    CLAY_UPLIFT = "clay_uplift", "Meyerhof and Adams 1968; Das, Earth Anchors", "F_c of a circular plate in clay", Memory, "F_c = 1.2 H/D, at most 9; the form is remembered.";
    CLAY_CRITICAL_DAS = "clay_critical_das_1980", "Das 1978, 1980", "critical embedment of square and circular plates in clay", Memory, "0.107 s_u + 2.5 with s_u in kPa, at most 7.";
    CLAY_CRITICAL_FOUR = "clay_critical_four", "Narasimha Rao; as quoted by Tappenden and Sego 2007", "critical embedment of model screw piles in clay", Secondary, "About 4.0.";
    TANG_PHOON_2020 = "tang_phoon_2020", "Choice of this service within the ratios of Tang and Phoon 2020", "abstract", CommonPracticeNoSource, "Uplift over compression of 84 tests: 0.6 to 0.8 in dense sand, 0.8 to 1.0 in very stiff clay. 0.7 within that range is the choice of this service.";
    CYLINDER_FORM = "cylindrical_shear", "Mooney, Adamczak and Clemence 1985; Mitsch and Clemence 1985; as quoted by Tappenden and Sego 2007", "cylindrical shear", Secondary, "Bearing of the end helix plus shear on the cylinder between the helices.";
    CYLINDER_TAPERED = "cylinder_tapered", "Livneh and El Naggar 2008, Canadian Geotechnical Journal 45", "abstract", Verified, "The failure surface follows the tapered profile of the helices, with bearing of the helix that leads in the direction of the load. That the mean of the two diameters of a gap stands for the taper is the choice of this service.";
    MITSCH_CLEMENCE_KU = "mitsch_clemence_1985_ku", "Mitsch and Clemence 1985; Das, Earth Anchors", "K_u by friction angle and depth ratio", Memory, "K_u = 0.6 + m H/D; two remembered lists that agree with each other.";
    CYLINDER_AT_REST = "cylinder_at_rest", "Choice of this service", "lateral stress on the cylinder in compression", CommonPracticeNoSource, "K = 1 - sin phi, the stress at rest of normally consolidated sand; no published value for the cylinder was seen.";
    HELIX_SPACING_3D = "helix_spacing_3d", "Salehzadeh et al. 2022", "abstract", Verified, "Three diameters between plates keeps their interaction small.";
    ALPHA_API = "alpha_api", "API RP 2A; UFC 3-220-20 (2025)", "eq. 6-16, 6-17", Secondary, "Calibrated on driven pipe piles; an independent library gives the same values.";
    ALPHA_EXCLUSIONS = "alpha_exclusions", "UFC 3-220-20 (2025)", "6-5.3, fig. 6-12", Secondary, "The top 1.5 m, or the depth of frost or seasonal change, is not counted. One diameter above the helix is a choice of this service.";
    NYC_1810_3_4 = "nyc_1810_3_4", "New York City Building Code", "1810.3.4", Verified, "Uplift: safety factor 3 by analysis, 2 by load test; 2.5 by analysis of a group.";
}
