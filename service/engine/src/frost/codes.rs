//! Codes of this calculation, beside their texts.

/// Checks.
pub mod checks {
    use crate::catalogue::codes;
    codes! { CheckDef:
        HELIX_BELOW_FROST = "helix_below_frost", "No helix is in ground that freezes. A helix exactly at the base of frost passes.";
        TOP_HELIX_FROST_MARGIN = "top_helix_frost_margin", "The top helix is below the base of frost by the margin.";
        TOP_HELIX_DIAMETERS = "top_helix_diameters", "The top helix is a number of diameters of the largest helix below the ground.";
        TOP_HELIX_TORQUE_DIAMETERS = "top_helix_torque_diameters", "Where tension capacity comes from torque, the top helix is deep enough for that correlation.";
        TOP_HELIX_BELOW_FILL = "top_helix_below_fill", "The top helix is below the base of fill by its margin.";
        TOP_HELIX_BELOW_ACTIVE_ZONE = "top_helix_below_active_zone", "The top helix is below the zone of seasonal swelling and shrinking by its margin.";
        TOP_HELIX_BELOW_COLLAPSE = "top_helix_below_collapse", "The top helix, and so every helix, is below soil that collapses when wetted by its margin.";
        TIP_FROST_MARGIN = "tip_frost_margin", "The tip of the pile is below the base of frost by the margin.";
        FROST_UPLIFT = "frost_uplift", "Net tension from adfreeze, less the counted share of dead load, is within the design tension resistance below frost.";
        FROST_UPLIFT_SEVERE = "frost_uplift_severe", "The same at the severe bond stress; worth a look, never decides.";
        SWELL_UPLIFT = "swell_uplift", "Net tension from swelling soil, less the counted share of dead load, is within the design tension resistance below the active zone.";
        FROST_AND_SWELL_UPLIFT = "frost_and_swell_uplift", "The same for frost and swelling soil at one time, below both; only where the caller says that both can peak together.";
        TENSION_PATH_COUPLING = "tension_path_coupling", "The coupling carries the largest net tension of all uplift.";
        TENSION_PATH_HEAD = "tension_path_head", "The head carries the largest net tension of the stages in which the beam is on the pile.";
        TENSION_PATH_BEAM_ANCHOR = "tension_path_beam_anchor", "The anchor in the beam carries the same.";
        BEAM_UNDERSIDE_FREE = "beam_underside_free", "A beam without a void form lies on ground that does not heave.";
        VOID_FORM_CLEARANCE = "void_form_clearance", "What stays free of the void form once crushed takes the heave and its margin.";
        VOID_FORM_CRUSH_STRENGTH = "void_form_crush_strength", "The pressure at which the void form is crushed is at least that of the wet concrete on it; else the form cannot carry the concrete.";
        VOID_FORM_CONCRETE_LOAD = "void_form_concrete_load", "The void form carries the wet concrete.";
    }
}

/// Warnings.
pub mod warnings {
    use crate::catalogue::codes;
    codes! { WarningDef:
        BEAM_SIDES_NOT_STATED = "beam_sides_not_stated", "Nothing is said of the grade beam; where its sides stand in freezing or swelling soil, they are gripped and the force comes on the pile.";
        BEAM_GRIP_EXCEEDS_DEAD_LOAD = "beam_grip_exceeds_dead_load", "Frost grip on the beam's sides is larger than the dead load on the pile.";
        BOND_STRESS_LOW = "bond_stress_low", "The bond stress sent is below the average for fine soil on steel.";
        CONSTRUCTION_STAGE_LEFT_OUT = "construction_stage_left_out", "The unloaded pile standing over a winter was not judged, as the caller asked.";
        GIVEN_TENSION_WITH_FROZEN_HELIX = "given_tension_with_frozen_helix", "A helix is in ground that freezes; the tension resistance sent must not count it.";
        GIVEN_TENSION_WITH_ACTIVE_HELIX = "given_tension_with_active_helix", "A helix is in ground that swells; the tension resistance sent must not count it.";
        COMPUTED_FROST_NOT_USED = "computed_frost_not_used", "The computed frost depth is deeper than the official one and was not used, as the caller asked.";
        SLEEVE_NOT_CREDITED = "sleeve_not_credited", "The sleeve counts nothing: it ends in ground that freezes, or that it can heave freely was not stated.";
        COATING_NOT_CREDITED = "coating_not_credited", "A coating of the shaft is given no credit against bond.";
        UNLOADED_SWELL_STAGE_LEFT_OUT = "unloaded_swell_stage_left_out", "The unloaded pile in swelling soil was not judged, as the caller asked.";
        SWELL_METHODS_DIFFER = "swell_methods_differ", "Published methods for uplift by swelling soil differ by 4 to 10 times and rest on concrete piers.";
        BEAM_UNDERSIDE_NOT_STATED = "beam_underside_not_stated", "Nothing is said of heave under a beam that stands in moving ground without a void form; the verdict is at best `provisional`.";
        SWELL_UPLIFT_NOT_COVERED = "swell_uplift_not_covered", "An active zone was given without `swelling`; uplift by swelling soil on the shaft is not computed.";
        VOID_FORM_RESIDUAL_UNTESTED = "void_form_residual_untested", "The crushed thickness of the void form is a rule of thumb, not a test of the form.";
        VOID_FORM_CLOSES = "void_form_closes", "The heave takes more than the void form leaves free: the ground bears on the beam with more than the crush pressure.";
        VOID_FORM_PRESSURE_NOT_COUNTED = "void_form_pressure_not_counted", "A crushing form still pushes on the beam; that pressure is not counted.";
    }
}

/// Faults and refusals.
pub mod refusals {
    use crate::catalogue::codes;
    codes! { RefusalDef:
        FROST_BELOW_TIP = "frost_below_tip", "The ground freezes below the tip: the whole pile is in frozen ground and nothing holds it. No frost check can be made of such a pile; it must not be accepted.";
        DEPTHS_OUT_OF_ORDER = "depths_out_of_order", "Two depths contradict each other, such as a tip above a helix.";
        VOID_FORM_WITHOUT_HEAVE = "void_form_without_heave", "A void form cannot be judged without the predicted heave; it is never assumed.";
        RATED_LOAD_ABOVE_CRUSH = "rated_load_above_crush", "The load that a void form is rated for exceeds the pressure at which it is crushed; one of the two is wrong.";
        TRIBUTARY_LENGTHS_DIFFER = "tributary_lengths_differ", "Two lengths of beam on the same pile are sent, and they differ.";
        OFFICIAL_DEPTHS_DIFFER = "official_depths_differ", "Two official frost depths are sent, and they differ.";
        NOT_PART_OF_COMPUTED_DEPTH = "not_part_of_computed_depth", "A member of `frost-depth` that a computed frost depth beside a pile does not take.";
        SWELL_UPLIFT_WITHOUT_DATA = "swell_uplift_without_data", "Uplift by swelling soil needs the active depth and a swell pressure or an adhesion; none of them is ever assumed.";
        BEAM_WIDTHS_DIFFER = "beam_widths_differ", "Two widths of one beam are sent, and they differ.";
        HEAVE_STATED_TWICE = "heave_stated_twice", "With a void form the predicted heave stands there, not at the beam.";
        PURPOSE_CONTRADICTED = "purpose_contradicted", "The purpose of the pile says something else than `tension_by_torque` or a tension resistance by torque.";
        CRUSHED_NOT_BELOW_NOMINAL = "crushed_not_below_nominal", "The crushed thickness of a void form must be less than its nominal thickness.";
    }
}

/// Methods.
pub mod methods {
    use crate::catalogue::methods;
    methods! {
        EMBEDMENT_RULES = "embedment_rules", version 1, [FROST_DEPTH_OFFICIAL, IRC_FROST_PROTECTION, OBC_DEPTH_OF_FOUNDATIONS, TOP_HELIX_5D, TOP_HELIX_12D, FROST_MARGIN_PRACTICE, DOMASCHUK_1982],
            "Depth of the top helix and the tip against frost with its margin, diameters of the largest helix (12 where tension comes from torque), fill, active zone and soil that collapses; all are listed and the deepest governs. A helix exactly at the base of frost passes, as does any depth exactly on its limit; it holds nothing in tension.";
        FROST_DESIGN_DEPTH = "frost_design_depth", version 1, [FROST_DEPTH_OFFICIAL, BEARWELL_CHOICE],
            "The jurisdiction's frost depth, or a computed one where that is deeper, both from the surface exposed to the cold; a computed depth, insulated or not, never makes it shallower.";
        SHAFT_ADFREEZE = "shaft_adfreeze", version 1, [CFEM_ADFREEZE, USACE_ADFREEZE, DOMASCHUK_1982, CRORY_REED_1965, OBC_DEPTH_OF_FOUNDATIONS, SLEEVE_PRACTICE, COATING_PRACTICE],
            "Uplift on the shaft: average bond stress times perimeter times frozen length, with a second line at the severe bond stress. A sleeve counts, with no bond at all, only where it reaches the base of frost and is stated free to heave; the severe line is without it. A coating never counts.";
        BEAM_SIDE_ADFREEZE = "beam_side_adfreeze", version 1, [CFEM_ADFREEZE],
            "Frost grip on the sides of a grade beam over their frozen depth, carried to the pile by its tributary length.";
        FROST_UPLIFT_ALLOWABLE_STRESS = "frost_uplift_allowable_stress", version 1, [IBC_1810_3_3_1_5, FROST_DEAD_LOAD_SHARE, BABA_2016],
            "Force of the moving ground less a share of dead load against ultimate tension over a safety factor, or against an allowable tension as sent.";
        FROST_UPLIFT_LIMIT_STATES = "frost_uplift_limit_states", version 1, [FROST_LIMIT_STATES_FACTOR, NBCC_DEAD_COUNTERACTING, CANADA_PHI_TENSION, BABA_2016],
            "Factored force of the moving ground less factored dead load against factored tension resistance.";
        SWELL_ALPHA_SHARE = "swell_alpha_share", version 1, [CHEN_SWELL_UPLIFT],
            "Uplift by swelling soil: adhesion as a share of the swell pressure, 0.15 unless sent, at most the undrained strength where that is sent; times perimeter times the shaft between contact and active depth.";
        SWELL_ALPHA_RANGE = "swell_alpha_range", version 1, [NELSON_MILLER_ALPHA],
            "The same with 0.10 and 0.25 of the swell pressure; both are shown and the upper decides.";
        SWELL_FULL_PRESSURE = "swell_full_pressure", version 1, [TXDOT_SWELL_UPLIFT],
            "The same with the whole swell pressure, for an active depth of 10 to 20 ft only.";
        SWELL_UNDRAINED_CAP = "swell_undrained_cap", version 1, [BURKE_2022],
            "The same with an adhesion factor of the caller times the undrained strength of the wetted soil.";
        SWELL_GIVEN_ADHESION = "swell_given_adhesion", version 1, [CALLER],
            "The same with the caller's own adhesion.";
        BEAM_SIDE_SWELL = "beam_side_swell", version 1, [BEARWELL_CHOICE],
            "Grip of swelling soil on the sides of a grade beam over the active depth, by the adhesion on the shaft unless sent, carried to the pile by its tributary length.";
        FROST_AND_SWELL = "frost_and_swell", version 1, [BEARWELL_CHOICE],
            "Forces of frost and swelling soil added in full, the void form once, against the tension resistance below both; an upper bound where both grip the same shaft.";
        BEAM_UNDERSIDE_CONTACT = "beam_underside_contact", version 1, [DOMASCHUK_1982],
            "A beam on the ground fails where that ground is predicted to heave; swell pressure on its width is told, frost has no known limit.";
        TENSION_PATH = "tension_path", version 1, [CALLER],
            "Coupling against the largest net tension of all stages, head and anchor against that of the stages in which the beam is on the pile.";
        PILE_SUBMERGED_WEIGHT = "pile_submerged_weight", version 1, [STEEL_DENSITY],
            "Weight of the shaft's steel between head and tip, less the water it displaces, helices left out; it counts as dead load.";
        VOID_FORM_RESIDUAL_THICKNESS = "void_form_residual_thickness", version 1, [VOID_FORM_RESIDUAL_PRACTICE, CONCRETE_UNIT_WEIGHT_PRACTICE],
            "Free thickness of a void form after collapse against heave and margin; weight of the wet concrete against the form's rated load.";
        VOID_FORM_CRUSH = "void_form_crush", version 1, [CALLER, DERIVED],
            "Crush pressure of the form on the beam's width as a load along the beam, and by the tributary length as tension on the pile.";
    }
}
