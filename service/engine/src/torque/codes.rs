//! Codes of `torque-capacity`, beside their texts. Codes shared by all calculations
//! are in `catalogue/common.rs`.

/// Checks.
pub mod checks {
    use crate::catalogue::codes;
    codes! { CheckDef:
        COMPRESSION = "torque_compression_capacity", "Load in compression against the capacity the installed torque stands for.";
        TENSION = "torque_tension_capacity", "Load in tension against the capacity the installed torque stands for.";
        OTHER_ULTIMATES = "torque_other_ultimates", "Ultimate capacity the load in compression needs against the other ultimate capacities sent.";
        INSTALLED_LIMIT = "installed_torque_limit", "Installed torque against the torque rating of the shaft.";
        REQUIRED_LIMIT = "required_torque_limit", "Required torque against the torque rating of the shaft.";
        INSTALLED_SECTION = "installed_torque_section", "Installed torque against the estimate of the bare section; advises only.";
        REQUIRED_SECTION = "required_torque_section", "Required torque against the estimate of the bare section; advises only.";
        DRIVE = "drive_torque", "Required torque against the torque the drive head gives at its working pressures.";
    }
}

/// Warnings.
pub mod warnings {
    use crate::catalogue::codes;
    codes! { WarningDef:
        LISTED_SHAFT_BY_FORMULA = "listed_shaft_by_formula", "The formula for other shafts was asked for a listed shaft; the lower of the two factors is used.";
        FACTOR_ABOVE_CRITERIA = "torque_factor_above_criteria", "The torque factor is above what the acceptance criteria give for this shaft.";
        TENSION_FACTOR_IN_DOUBT = "tension_factor_in_doubt", "The verdict hangs on the torque factor in tension being as high as in compression; by the published ratio it would turn.";
        SITE_FACTOR_BAND = "site_factor_band", "The verdict turns within the band that the tests on the site leave to the torque factor.";
        SITE_FACTOR_TESTS = "site_factor_tests", "The torque factor rests on tests at so many places of the site; one test is one place and tells nothing of the scatter.";
        GAUGE_BAND = "gauge_band", "The verdict turns within the stated accuracy of the torque reading.";
        TENSION_WITHHELD = "tension_by_torque_withheld", "The top helix is too shallow for tension by torque; no tension figure is given.";
        TENSION_DEPTH_NOT_STATED = "tension_depth_not_stated", "Tension by torque holds only with the top helix at least 12 diameters deep; its depth was not sent.";
        TOP_HELIX_SHALLOW = "top_helix_shallow", "The top helix is less than 5 ft deep; the torque correlation in compression asks for more below the footing.";
        CONDITIONS_NOT_STATED = "torque_conditions_not_stated", "Whether the torque came from steady turning was not fully stated; a spike or a spinning pile would not correlate.";
        ADVANCE_ABOVE_PITCH = "advance_above_pitch", "The pile advanced well over its pitch in a turn: it was pushed or the ground gave way.";
        BACK_PRESSURE_NOT_DEDUCTED = "back_pressure_not_deducted", "Neither return-line nor no-load pressure was sent; the torque is overstated by them.";
        EFFICIENCY_OF_ONE = "efficiency_of_one", "A mechanical efficiency of 1 is right only for a drive head calibrated as a whole.";
        DRIVE_CAN_OVERTORQUE = "drive_can_overtorque", "The drive head can exceed the torque rating of the shaft at its working pressures; limit the pressure.";
        TURNS_FAST = "pile_turns_fast", "The pile turns faster than is usual for driving: the soil is stirred and the torque is hard to read.";
        CARD_WITHOUT_LIMIT = "cab_card_without_limit", "No torque rating of the shaft was sent; the card for the cab tells no limit.";
        CARD_WITHOUT_ROOM = "cab_card_without_room", "The target, or only its figure rounded for the operator, lies above the shaft limit: there is no room to work in. A target that itself lies above it holds a verdict back.";
        CARD_DIFFERENCE_ONLY = "cab_card_difference_only", "Neither return-line nor no-load pressure is known: the pressures of the card are differences, and a gauge at the inlet reads more.";
        RATING_ABOVE_SECTION = "rating_above_section", "The torque rating is above the estimate of the bare section; confirm rating and steel.";
        TORQUE_ABOVE_SECTION = "torque_above_section", "The installed torque is above the estimate of the bare section.";
    }
}

/// Faults and refusals.
pub mod refusals {
    use crate::catalogue::codes;
    codes! { RefusalDef:
        NOTHING_ASKED = "torque_nothing_asked", "Nothing is asked: send an installed torque, a demand, a drive head with a pressure or a torque, the shaft's steel, or a shaft with a torque factor.";
        SHAFT_NOT_LISTED = "shaft_not_listed", "The shaft is not one of the listed sizes; use the effective diameter or send your own factor.";
        SHAFT_OUTSIDE_RANGE = "shaft_outside_torque_factor_range", "The shaft is outside the range the torque factor was published for; send your own factor with its reference.";
        TENSION_FACTOR_GIVEN = "tension_factor_given", "The torque factor chosen has its own value in tension, or none; `tension_factor` is only for a published factor that is the same in both directions.";
        SITE_BAND_REVERSED = "site_factor_band_reversed", "The band of a torque factor does not hold the factor: the least must be at most, the greatest at least the factor.";
        STOPPED_BY_OBSTRUCTION = "torque_at_obstruction", "The torque was read against an obstruction; it says nothing of the ground and is not correlated.";
        SPIN_OUT = "spin_out", "The pile advanced less than 85 % of its pitch in a turn; it spins in disturbed ground and its torque is not correlated.";
        PLATEAU_TOO_SHORT = "torque_plateau_too_short", "The torque held over less than the averaging length; it is not correlated.";
        TENSION_TOO_SHALLOW = "tension_by_torque_too_shallow", "The top helix is less than 12 diameters deep; tension by torque is not given.";
        GEAR_COUNTED_TWICE = "gear_counted_twice", "A gear ratio is sent for a displacement that includes the gear already.";
        FAST_GEAR_NOT_SMALLER = "fast_gear_not_smaller", "The displacement in the fast gear is not smaller than that in the slow one: with the same flow it would not turn faster.";
        CARD_WITHOUT_TARGET = "cab_card_without_target", "The card for the cab has no torque to aim at: send a load in `demand` or `drive.target_torque`.";
        CARD_TOO_LONG = "cab_card_too_long", "The card for the cab has too many steps up to the shaft limit: send a greater `step_ratio`, or a rating nearer to the target.";
        NO_PRESSURE_DIFFERENCE = "no_pressure_difference", "Return-line and no-load pressures leave nothing of the inlet pressure.";
        SHAFT_WALL_TOO_THICK = "shaft_wall_too_thick", "The wall is thicker than half the outside diameter.";
        SHAFT_DIAGONAL_IMPOSSIBLE = "shaft_diagonal_impossible", "The diagonal of a square shaft lies between its side and side x sqrt 2.";
    }
}

/// Methods.
pub mod methods {
    use crate::catalogue::methods;
    methods! {
        CORRELATION = "torque_correlation", version 1, [AC358_KT_LISTED, AC358_TORQUE_AVERAGING], "Ultimate capacity = torque factor x installation torque, and back. Empirical; for helical piles turned steadily into soil, not for torque against an obstruction or of a spinning pile.";
        FACTOR_LISTED = "torque_factor_listed_shaft", version 1, [AC358_KT_LISTED, BEARWELL_CHOICE], "Torque factor of five listed shafts, looked up by dimension within 0.5 mm.";
        FACTOR_DIAMETER = "torque_factor_effective_diameter", version 1, [AC358_KT_DIAMETER, AC358_KT_LISTED], "Torque factor by effective diameter; square 1.5 to 3.0 in, round 2.375 to 4.5 in; the lower of it and the listed value for a listed shaft.";
        FACTOR_LIVNEH = "torque_factor_livneh_2008", version 1, [LIVNEH_EL_NAGGAR_2008], "Torque factors in compression and in tension from full-scale tests of slender square shafts.";
        FACTOR_HOYT = "torque_factor_hoyt_clemence_1989", version 1, [HOYT_CLEMENCE_1989], "Torque factors from tension tests of multi-helix anchors.";
        FACTOR_PERKO = "torque_factor_perko_2009", version 1, [PERKO_2009], "Torque factor by regression on the effective diameter.";
        FACTOR_OWN = "torque_factor_own", version 1, [CALLER], "Torque factors sent by the caller with their reference.";
        FACTOR_SITE = "torque_factor_site_tests", version 1, [CALLER, NYC_SITE_TESTS], "Torque factors from load tests on the site, sent by the caller with their number and reference; a verdict that turns within their band, and that of the reading together, is held back.";
        TENSION_REDUCED = "torque_factor_tension_reduced", version 1, [LIVNEH_EL_NAGGAR_2008], "Torque factor in tension as 24/33 of that in compression, shown beside the one used, or used itself where that is chosen.";
        ALLOWABLE_STRESS = "torque_allowable_stress", version 1, [IBC_1810_3_3_1_9, IBC_1810_3_3_1_5, NYC_1810_3_4], "Allowable capacity = least ultimate capacity over the safety factor; in tension by the general uplift clause unless another is chosen.";
        LIMIT_STATES = "torque_limit_states", version 1, [CANADA_PHI, CANADA_PHI_TENSION], "Factored resistance = resistance factor x ultimate capacity.";
        HYDRAULIC = "hydraulic_motor_torque", version 1, [HYDRAULIC_MOTOR], "Torque of a positive-displacement motor from the pressure difference, and back.";
        SPEED = "pile_turning_speed", version 1, [HYDRAULIC_MOTOR, TURNING_SPEED, DERIVED], "Turning speed of the pile from the flow, the volumetric efficiency and the volume of one turn, in each gear; going down one pitch a turn.";
        CAB_CARD = "cab_card", version 1, [HYDRAULIC_MOTOR, BEARWELL_CHOICE], "Torque and pressures in steps of the target torque and on to the torque rating; for the operator the target is rounded up and the limit down, to 0.01 kN m and 10 ft lbf, 0.1 MPa and 10 psi.";
        SECTION_ROUND = "torsion_section_round", version 1, [TORSION_ELASTIC, AISC_360_H3_1, AISC_360_SHEAR_YIELD, AISC_360_DESIGN_WALL, STEEL_MODULUS], "Nominal torsional strength of a round hollow section: lower of first yield and the thin-wall form. Couplings and bolt holes are not in it.";
        SECTION_SQUARE = "torsion_section_square", version 1, [TORSION_SQUARE, AISC_360_SHEAR_YIELD], "First yield of a solid square bar in torsion. Couplings and bolt holes are not in it.";
        CONDITIONS = "torque_conditions", version 1, [TORQUE_AT_OBSTRUCTION, NYC_1814_12, AC358_TORQUE_AVERAGING, AC358_AVERAGING_3_FT, AC358_TENSION_EMBEDMENT, AC358_COMPRESSION_EMBEDMENT], "When a torque may be correlated: no obstruction, advance of at least 85 % of the pitch, steady over the averaging length, and for tension a top helix 12 diameters deep.";
    }
}
