//! Codes of this calculation, beside their texts.

/// Checks.
pub mod checks {
    use crate::catalogue::codes;
    codes! { CheckDef:
        CORROSION_RATE_KNOWN = "corrosion_rate_known", "A rate of loss holds for this ground. In aggressive ground only the engineer's own does.";
        CORROSION_SECTION_REMAINS = "corrosion_section_remains", "The loss does not eat through the section.";
    }
}

/// Warnings.
pub mod warnings {
    use crate::catalogue::codes;
    codes! { WarningDef:
        CORROSION_SOURCES_DISAGREE = "corrosion_sources_disagree", "Published sources do not say the same of this soil.";
        CORROSION_FIGURES_MISSING = "corrosion_figures_missing", "Not all figures of the soil were sent that a mild class needs.";
        CORROSION_ZINC_NOT_CREDITED = "corrosion_zinc_not_credited", "The method gives zinc no credit.";
        CORROSION_POWDER_NOT_CREDITED = "corrosion_powder_not_credited", "The method gives powder no credit: the steel counts as bare.";
        CORROSION_NO_LOSS = "corrosion_no_loss", "No steel is lost over the life by this method; make sure that what it rests on holds.";
        CORROSION_NET_OF_MEMBER = "corrosion_net_of_member", "The equations are recalled as net for the member, half on each side; read for each face the loss would be double.";
        CORROSION_LONG_LIFE_EXTRAPOLATED = "corrosion_long_life_extrapolated", "The values of the table beyond 25 years are extrapolated by the standard itself.";
    }
}

/// Cautions.
pub mod cautions {
    use crate::catalogue::codes;
    codes! { CautionDef:
        CORROSION_BOLTS_AND_THREADS = "corrosion_bolts_and_threads", "Bolts, threads, welds and couplings lose as much from less steel: check them by themselves. Contact with other metals, such as reinforcement, stray current, salt water and the zone about a moving water table are not covered.";
    }
}

/// Faults and refusals.
pub mod refusals {
    use crate::catalogue::codes;
    codes! { RefusalDef:
        CORROSION_WITHOUT_SOIL_CLASS = "corrosion_without_soil_class", "No life against corrosion without the class of the soil or tests of it; no ground is taken to be mild.";
        CORROSION_METHOD_OUTSIDE_LIMITS = "corrosion_method_outside_limits", "The method does not hold for a soil of this class; in aggressive soil only the engineer's own rate does.";
        CORROSION_METHOD_NOT_NAMED = "corrosion_method_not_named", "No default holds for this ground and these sections: name the method, or send `ground`.";
        CORROSION_LIFE_OUTSIDE_TABLE = "corrosion_life_outside_table", "The table of losses has lives of 5 to 125 years and is not extrapolated.";
        CORROSION_COMPACTED_NOT_FILL = "corrosion_compacted_not_fill", "Only a fill is compacted.";
    }
}

/// Methods.
pub mod methods {
    use crate::catalogue::methods;
    methods! {
        CORROSION_SOIL_CLASS = "corrosion_soil_class", version 1, [AC358_CORROSION, AASHTO_AGGRESSIVE, GEC12_AGGRESSIVE, MICROPILE_AGGRESSIVE, GEC11_USE_LIMITS],
            "Aggressive if a trigger of the acceptance criteria or of AASHTO is met; mild if resistivity, pH, sulfates, chlorides and organics are all sent and inside the limits of use of published rates; else to be tested more. A figure exactly on its limit does not trigger. What the other sources say stands beside it and does not decide.";
        CORROSION_FHWA = "corrosion_fhwa", version 1, [FHWA_CORROSION, GEC11_USE_LIMITS],
            "For each face: zinc goes at 15 um a year for 2 years, then at 4; then steel at 12 um a year. Zinc life = t_z/15 for t_z up to 30 um, else 2 + (t_z - 30)/4 years. Bare steel loses at that rate from the start, which is this service's reading. Only in mild soil.";
        CORROSION_EUROCODE = "corrosion_eurocode", version 1, [EN_1993_5_NA, EN_1993_5_NOTES],
            "For each face: a table by kind of ground at 5, 25, 50, 75, 100 and 125 years, linear between them; halved in compacted fill. Zinc has no credit.";
        CORROSION_FLAT_RATE = "corrosion_flat_rate", version 1, [FLAT_LOSS],
            "0.003 in a year, both faces together: half on each, all of it on a face that is exposed alone. Zinc has no credit.";
        CORROSION_ACCEPTANCE_CRITERIA = "corrosion_acceptance_criteria", version 1, [AC358_CORROSION],
            "Both faces together, t in years, um: zinc-coated 25 t^0.65, bare 40 t^0.80, powder-coated 40 (t - 16)^0.80 and nil up to 16 years: half on each face, all of it on a face that is exposed alone. From memory.";
        CORROSION_GIVEN_RATE = "corrosion_given_rate", version 1, [CALLER],
            "The caller's rate times the life less the time before it starts. A rate for both faces together: half on each, all of it on a face that is exposed alone.";
        ZINC_ASTM_A123 = "zinc_astm_a123", version 1, [ASTM_A123],
            "Least average zinc by product and thickness of the steel: below 1/16 in, below 1/8, up to 3/16, below 1/4, below 5/8, from 5/8 in.";
        CORROSION_SECTION = "corrosion_section", version 1, [DERIVED],
            "Section after the loss: a tube loses from its outer face always and from its inner face unless it is sealed, a bar all round, a plate on both faces.";
    }
}
