//! Codes of reinforced sections, beside their texts.

/// Checks.
pub mod checks {
    use crate::catalogue::codes;
    codes! { CheckDef:
        BEAM_MINIMUM_STEEL = "beam_minimum_steel", "Bars of a face in tension, at least the least steel of the concrete code; waived where they are a third more than the moment needs.";
        BEAM_MINIMUM_STIRRUPS = "beam_minimum_stirrups", "Area of a stirrup at its spacing, at least the least of the concrete code; or a depth up to which a beam may be without stirrups.";
        BEAM_STIRRUP_SPACING = "beam_stirrup_spacing", "Spacing of stirrups, at most that of the concrete code.";
        BEAM_COVER = "beam_cover", "Clear cover of the outermost steel, at least that for its exposure.";
    }
}

/// Faults and refusals.
pub mod refusals {
    use crate::catalogue::codes;
    codes! { RefusalDef:
        SECTION_BARS_OUTSIDE = "section_bars_outside", "The bars of a face do not lie in its half of the section.";
        SECTION_OVER_REINFORCED = "section_over_reinforced", "There is more steel than the concrete can hold: it would fail before the bars yield as far as the code asks. No strength is given.";
        SECTION_OUTSIDE_CODE = "section_outside_code", "A property of the section lies outside what the equations of the concrete code cover.";
        SECTION_UNIT_WEIGHT_NEEDED = "section_unit_weight_needed", "Lightweight concrete, and by CSA A23.3 concrete above 40 MPa, needs `concrete_unit_weight` for its modulus of elasticity.";
    }
}

/// Methods.
pub mod methods {
    use crate::catalogue::methods;
    methods! {
        REINFORCED_SECTION_ACI_318_19 = "reinforced_section_aci_318_19", version 1, [STRESS_BLOCK_WORKED_PAGE, ACI_318_19_FLEXURE, ACI_318_19_MINIMUM_STEEL, ACI_318_19_SHEAR, ACI_318_19_MINIMUM_STIRRUPS, ACI_318_19_STIRRUP_SPACING, ACI_318_19_TORSION, ACI_318_19_COVER, ACI_318_19_STIFFNESS, TRANSFORMED_SECTION], "Bending by the rectangular stress block with the bars in tension alone, factor 0.90 by the strain of the bars; sections that are not tension-controlled are refused. Shear with at least the least stirrups 2 lambda sqrt(f'c) b d and the stirrups, without them by the equation with size effect and, in beams deeper than 10 in, at most lambda sqrt(f'c) b d, above which stirrups are required; stirrups below the least are not counted; the shear at the pile itself is judged, not that at a distance d from it. The stricter spacing is asked where the stirrups provided exceed 4 sqrt(f'c) b d. Least steel is waived where the bars are a third more than the moment needs. A search keeps to these strengths and looks for nothing in least steel, cover and stirrups.";
        REINFORCED_SECTION_CSA_A23_3_19 = "reinforced_section_csa_a23_3_19", version 1, [CSA_A23_3_19_FLEXURE, CSA_A23_3_19_MINIMUM_STEEL, CSA_A23_3_19_SHEAR, CSA_A23_3_19_SIMPLIFIED_SHEAR, CSA_A23_3_19_STIRRUPS, CSA_A23_3_19_TORSION, CSA_A23_1_COVER, CSA_A23_3_19_STIFFNESS, TRANSFORMED_SECTION], "Bending by the rectangular stress block with factored materials and the bars in tension alone; sections whose bars do not yield are refused. Shear by the simplified method: beta 0.18 with at least the least stirrups, by size without them, theta 35 degrees; stirrups below the least are not counted, beams deeper than 750 mm need them; the shear at the pile itself is judged. The stricter spacing is asked where the shear resistance exceeds 0.125 lambda phi f'c b d. Least steel is waived where the bars are a third more than the moment needs. A search keeps to these strengths and looks for nothing in least steel, cover and stirrups.";
    }
}
