//! Codes of `footing-bearing`, beside their texts. Codes shared by all calculations are in
//! `catalogue/common.rs`.

/// Checks.
pub mod checks {
    use crate::catalogue::codes;
    codes! { CheckDef:
        FOOTING_PRESSURE = "footing_pressure", "Pressure under the footing against what the soil may bear by the lowest of the theories asked.";
    }
}

/// Warnings.
pub mod warnings {
    use crate::catalogue::codes;
    codes! { WarningDef:
        FOOTING_DEEPER_THAN_WIDE = "footing_deeper_than_wide", "The footing is deeper than it is wide, and a theory asked was made for footings up to that depth; it counts no more strength above the base from there on.";
        FOOTING_DEPTH_FACTOR_FALLS = "footing_depth_factor_falls", "The depth factors of Hansen and Vesic fall back at a depth of one width as published; near it a shallower footing can come out stronger.";
        FOOTING_FRICTION_ABOVE_40 = "footing_friction_above_40", "A friction angle above 40 degrees is used; few soils keep it under load, and bearing doubles within five degrees.";
        FOOTING_LOW_FRICTION = "footing_low_friction", "Meyerhof's shape and depth factors of overburden and width are published for phi = 0 and above 10 degrees; between them they are taken as 1, which is on the safe side.";
        FOOTING_WIDTH_FACTOR_TABLE = "footing_width_factor_table", "Terzaghi's N_gamma was read between two rows of a table; it has no closed form.";
    }
}

/// Cautions.
pub mod cautions {
    use crate::catalogue::codes;
    codes! { CautionDef:
        FOOTING_CENTRAL_LOAD = "footing_central_load", "The load is taken as vertical and through the centre of a level base below level ground. An eccentric or inclined load, a slope or a tilted base lowers the capacity and is not covered.";
        FOOTING_ONE_SOIL = "footing_one_soil", "One soil is taken from the ground down to at least one width below the base. Weaker soil within about three widths can be punched through; layers are not covered.";
        FOOTING_SETTLEMENT = "footing_settlement", "Settlement is not covered, and it governs most footings. Bases in fill, organic or swelling soil, or above frost, need another answer.";
        FOOTING_SOIL_ABOVE = "footing_soil_above", "Depth factors count the strength of the soil above the base. They hold only where that soil is as strong as the soil below and stays there.";
    }
}

/// Faults and refusals.
pub mod refusals {
    use crate::catalogue::codes;
    codes! { RefusalDef:
        FOOTING_NOTHING_ASKED = "footing_nothing_asked", "Nothing is asked: send a footing with its soil, or a table of factors.";
        FOOTING_METHOD_TWICE = "footing_method_twice", "A method is asked twice.";
        FOOTING_METHOD_UNDRAINED_ONLY = "footing_method_undrained_only", "The method holds for soil that carries load undrained only.";
        FOOTING_WITHOUT_STRENGTH = "footing_without_strength", "Friction angle and cohesion are both nil; nothing bears.";
        FOOTING_LENGTH_BELOW_WIDTH = "footing_length_below_width", "The length of a rectangle is its longer side.";
        FOOTING_TOO_DEEP = "footing_too_deep", "The base is deeper than about five widths; theories of shallow footings do not apply. It is a pile or a pier.";
        FOOTING_LOAD_OF_OTHER_SHAPE = "footing_load_of_other_shape", "A strip carries a load per length or a pressure, any other base a force or a pressure.";
        FOOTING_TABLE_WITHOUT_METHOD = "footing_table_without_method", "None of the methods asked has the table asked.";
    }
}

/// Methods.
pub mod methods {
    use crate::catalogue::methods;
    methods! {
        FOOTING_TERZAGHI = "footing_terzaghi_1943", version 1, [TERZAGHI_1943, TERZAGHI_WIDTH_TABLE, TERZAGHI_SHAPE, UFC_BEARING_EQUATION], "Terzaghi: rough base, N_gamma by its table and between the rows straight in its logarithm, shape factors, no depth factors.";
        FOOTING_MEYERHOF = "footing_meyerhof_1963", version 1, [PRANDTL_REISSNER, MEYERHOF_1963, MEYERHOF_SHAPE_DEPTH, MEYERHOF_DEPTH, UFC_BEARING_EQUATION], "Meyerhof: shape and depth factors, those of depth held from one width on; those of overburden and width 1 up to 10 degrees.";
        FOOTING_HANSEN = "footing_hansen_1970", version 1, [PRANDTL_REISSNER, HANSEN_1970, HANSEN_SHAPE_DEPTH, VESIC_SHAPE_DEPTH, UFC_BEARING_EQUATION], "Hansen: shape and depth factors, added at phi = 0; s_c above phi = 0 by De Beer.";
        FOOTING_VESIC = "footing_vesic_1973", version 1, [PRANDTL_REISSNER, VESIC_1973, VESIC_SHAPE_DEPTH, HANSEN_SHAPE_DEPTH, UFC_BEARING_EQUATION], "Vesic: shape factors of De Beer, depth factors of Hansen, added at phi = 0.";
        FOOTING_SKEMPTON = "footing_skempton_1951", version 1, [SKEMPTON_1951, UFC_BEARING_EQUATION], "Skempton: N_c = 5 (1 + 0.2 B/L)(1 + 0.2 D/B), the last at most 1.5, in soil that carries load undrained.";
        FOOTING_LOCAL_SHEAR = "footing_local_shear_two_thirds", version 1, [TERZAGHI_LOCAL_SHEAR], "tan phi and the cohesion times two thirds, for soil that fails in local shear.";
        FOOTING_GROUNDWATER = "footing_groundwater", version 1, [UFC_GROUNDWATER, DERIVED], "Drained: effective stress at the base, and the effective unit weight averaged over one width below it. Undrained: total stress.";
        FOOTING_ALLOWABLE = "footing_allowable_stress", version 1, [UFC_ALLOWABLE_PRESSURE, UFC_FOOTING_SAFETY, SAFETY_ON_NET], "Allowable pressure = ultimate / safety factor, on the gross or the net pressure.";
        FOOTING_LIMIT_STATES = "footing_limit_states", version 1, [CANADA_PHI_SHALLOW, UFC_ALLOWABLE_PRESSURE], "Factored resistance = resistance factor x ultimate, on the gross or the net pressure.";
    }
}
