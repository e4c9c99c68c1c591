//! Codes of `installation-record`, beside their texts. Codes shared by all calculations are in
//! `catalogue/common.rs`.

/// Checks.
pub mod checks {
    use crate::catalogue::codes;
    codes! { CheckDef:
        TORQUE = "record_torque", "Torque at the end of the log, by the definition that counts, against the required torque.";
        LEAST_TORQUE = "record_least_torque", "Least reading in the window at the end against a share of the required torque: a mean alone accepts a stone.";
        PLATEAU = "record_plateau", "Penetration that the readings at the end stand for, without spikes, against the length they are averaged over.";
        RISE_HELD = "record_rise_held", "Whether a rise of torque at the end has held over the averaging length; a spike on an obstruction has not.";
        FALLING = "record_torque_falling", "Last reading that counts against 0.85 of the mean over max(3 ft, 3 D): a torque that falls has gone through a crust.";
        ROW_SPACING = "record_row_spacing", "Greatest distance between the readings in the window, and from the last reading to the tip; rows that are missing leave it unjudged.";
        SHAFT_TORQUE = "record_shaft_torque", "Greatest torque of the whole log, and of turning it again after a wait, against the torque limit of shaft, couplings and bolts.";
        ADVANCE = "record_advance", "Advance in a turn at the final torque against a share of the pitch; less is spinning.";
        ADVANCE_IN_WINDOW = "record_advance_in_window", "Least advance in a turn within the window before the last row against a share of the pitch.";
        TIP_DEPTH = "record_tip_depth", "Depth of the tip against the specified least depth.";
        GREATEST_DEPTH = "record_greatest_depth", "Depth of the tip against the greatest depth allowed.";
        REFUSAL_SHORT = "record_refusal_short", "Depth of the tip against the specified least depth, for a pile that cannot be turned deeper as it is.";
        LEFT_DEEPEST = "record_left_deepest", "Depth of the tip at the end against the greatest depth it reached: a pile that was turned back stands in ground it has disturbed.";
        OBSTRUCTION = "record_obstruction", "Stopped on an obstruction: its torque says nothing of the ground.";
        SPUN_OUT = "record_spun_out", "Turned without going down, as the operator says: the torque is that of disturbed ground.";
        FROST = "record_helix_below_frost", "Depth of the top helix against the frost depth with its margin.";
        FILL = "record_helix_below_fill", "Depth of the top helix against the base of fill without credit.";
        ACTIVE_ZONE = "record_helix_below_active_zone", "Depth of the top helix against the base of the zone of swelling and shrinking.";
        TENSION_DEPTH = "record_tension_depth", "Depth of the top helix against 12 diameters of the largest helix, for tension by torque.";
        TENSION_TOP_TORQUE = "record_tension_top_torque", "Mean torque over max(3 ft, 3 D) above where the top helix stands now against the required torque, the greater of both directions, for tension.";
        CALIBRATION = "record_calibration", "Age of the calibration of the indicator on the day of installation; out of date leaves the torque unproven.";
        INCLINATION = "record_inclination", "Inclination from the planned axis against what is allowed.";
        POSITION_ALONG = "record_position_along", "Distance from the planned place along the beam against what is allowed.";
        POSITION_OFF_LINE = "record_position_off_line", "Distance off the centre line of the beam against what is allowed.";
        SPEED = "record_rotation_speed", "Speed of rotation against what is usual; advises only.";
        REUSED_PILE = "record_reused_pile", "A pile that was taken out or over-torqued before, unproven until it was inspected.";
        GROUND = "record_ground", "Whether anything is known of the ground the pile stands in.";
        HELIX_GROUND = "record_helix_ground", "Helices that stand in ground whose torque may not be correlated.";
        EXPLAINED = "record_torque_explained", "Torque at the end against the upper end of what the profile of the ground gives; more is a hard stop or another ground.";
        GROUND_CAPACITY = "record_ground_capacity", "Ultimate capacity the load needs against the ultimate capacity of the profile at this depth, punching into weaker ground counted; the least of torque and soil governs.";
        RETORQUE = "record_retorque", "Torque after the wait against the required torque.";
        COMPLETE = "record_complete", "Fields missing of the list asked for.";
    }
}

/// Warnings.
pub mod warnings {
    use crate::catalogue::codes;
    codes! { WarningDef:
        SPIKES_LEFT_OUT = "record_spikes_left_out", "Readings rose above those before and behind and fell again; they are left out of every average.";
        BACKED_OUT = "record_backed_out", "The tip went back up during the log; torque counts again only below the greatest depth reached before.";
        INSPECT_AFTER = "record_inspect_after", "Couplings, bolts and shaft need a look after over-torque or turning back.";
        GAUGE_BAND = "record_gauge_band", "The verdict turns within the stated accuracy of the indicator.";
        DESIGN_ALLOWANCE_USED = "record_design_allowance_used", "The pile stands off its planned place within the allowance that the design must make; the allowance is no licence to move it.";
        TORQUE_BELOW_EXPECTED = "record_torque_below_expected", "The torque at the end is below the lower end of what the profile of the ground gives; the ground is weaker than the profile says, or disturbed.";
        GROUND_BELOW = "record_ground_below", "What the calculation of the helices in this ground warns of.";
        SET_UP_POSSIBLE = "record_set_up_possible", "The ground gains strength after disturbance: a torque taken later may be higher, and only a load test turns that into capacity.";
        RELAXATION_POSSIBLE = "record_relaxation_possible", "The ground may lose strength after installation: turn the pile again after a wait, or test it.";
        TENSION_FACTOR_IN_DOUBT = "record_tension_factor_in_doubt", "Accepted by the torque factor in tension as in compression; by the reduced factor the torque would not be enough.";
    }
}

/// Cautions.
pub mod cautions {
    use crate::catalogue::codes;
    codes! { CautionDef:
        RECORD_IS_NO_APPROVAL = "record_is_no_approval", "A complete record and an accepted log are not the approval of the inspector or of the building official.";
    }
}

/// Faults and refusals.
pub mod refusals {
    use crate::catalogue::codes;
    codes! { RefusalDef:
        TORQUE_TWICE = "log_torque_twice", "A row of the log has a torque and pressures; send one of them.";
        GEAR_UNKNOWN = "log_gear_unknown", "A row names a gear that the drive head does not have.";
        INLET_MISSING = "log_inlet_missing", "A row has a return-line pressure or a gear and no inlet pressure.";
        PRESSURE_NEGATIVE = "log_pressure_negative", "Return-line and no-load pressures are more than the inlet pressure of a row.";
        ADVANCE_TWICE = "log_advance_twice", "A row of the log has turns and an advance in a turn; send one of them.";
        NO_TURNS = "log_no_turns", "The tip went down without a turn in a row.";
        NO_TORQUE = "log_no_torque", "No row of the log has a torque.";
        NOTE_WITHOUT_ROW = "log_note_without_row", "A note stands beside a row that the log does not have.";
        HELIX_TWICE = "record_helix_twice", "Two helices stand at one place of the shaft.";
        FIELD_TWICE = "record_field_twice", "A list of fields names one of them twice.";
        DEPTHS_CROSSED = "record_depths_crossed", "The greatest depth allowed is above the least depth asked for.";
    }
}

/// Methods.
pub mod methods {
    use crate::catalogue::methods;
    methods! {
        READINGS = "log_readings", version 1, [AC358_TORQUE_AVERAGING, AC358_AVERAGING_3_FT, BEARWELL_CHOICE], "Each reading stands for the penetration since the reading before; the first back to the ground, or to the base of a hole that was there before, where that is at most 0.65 m above it, else for nothing. A reading at a depth reached before, in this log or in that hole, is not fresh and does not count. Readings each above 1.5 times the fresh readings before and behind them, which lie at most max(averaging length, 1 m) apart, or a single one, are spikes: as if they had not been read, so that the next reading stands for their penetration too. Of what is left a rise at the end, every reading above 1.5 times the one before it, counts once it has at least two readings and has held over the averaging length max(3 ft, 3 D) from the reading before it to the last; until then none of it counts.";
        EFFECTIVE = "log_effective_torque", version 1, [AC358_TORQUE_AVERAGING, AC358_AVERAGING_3_FT, BEARWELL_CHOICE], "The lower of the means by depth over max(3 ft, 3 D) and over 3 D, D the largest helix; or one mean, the least or the last reading, as asked for. The window is max(3 ft, 3 D) up from the last reading that counts, whatever the definition; a reading on its upper end is not in it.";
        ACCEPTANCE = "log_acceptance", version 2, [IBC_1810_4_11, NYC_1814_12, IBC_1705_9_FINAL_TORQUE, IBC_1810_3_3_1_9, IBC_1810_3_1_3, PLUMB_PERMIT_NOTES, CALIBRATION_PRACTICE, FROST_MARGIN_PRACTICE, AC358_TENSION_EMBEDMENT, RETORQUE_PRACTICE, BEARWELL_CHOICE], "Torque, least reading, depth, advance, torque limit, position, calibration and knowledge of the ground, each a check of its own: a torque alone is never acceptance. Each torque that a check compares (at the end, the least, at the top helix, by a retorque) is judged within the accuracy of its gauge too: a check that turns within it leaves the verdict provisional (`record_gauge_band`). Where a profile is sent the capacity it gives, punching counted, is judged beside the torque (`record_ground_capacity`): the pile has the least of both; the capacities shown are by torque alone. `continue` where driving deeper can mend all that fails (torque, least and last reading, length, rise, tension, retorque, advance, depths, helix ground, turned back) and the pile can be driven deeper: not on an obstruction, not with a stalled drive head, not spun out, not over the torque limit of the shaft anywhere nor with the last torque at 95 % of it, not where it goes down less than a tenth of its pitch in a turn, not at the greatest depth. A pile that is too short and cannot be driven deeper fails `record_refusal_short` in place of `record_tip_depth`.";
        COMPLETENESS = "record_completeness", version 1, [IBC_1705_9, NYC_1814_12_RECORD, RECORD_PRACTICE, CALLER], "The fields of a list that the request does not carry. What the log can show is taken from the log: a torque for each foot is one at most every 1 ft from the ground, or from the base of a pre-drilled hole, to the greatest depth; the speed of rotation is there where each torque that is averaged at the end has one; a torque on an obstruction or in a hole that was there before is not that of a bearing zone. A field that is missing leaves the verdict provisional.";
        ONWARD = "record_onward", version 1, [BEARWELL_CHOICE], "What the layout is told of a pile. Accepted: nothing, it is what the layout took it for. Provisional or not asked: nothing yet, what is missing comes first. Continue: nothing yet, driving deeper comes first. Rejected: the event `stopped_short`. Its residual capacity is that of the torque that counts, at the level of the design basis of the record, where the pile is rejected because its torque is short (`record_torque`, `record_tension_top_torque`) and for nothing else, nothing needed is unproven, and nothing stands against the correlation (`capacity.withheld_for`); in tension only where the rules of tension were judged and pass, else nil. In all other cases nothing of it may be counted on, and the event has no residual.";
        ADVICE = "log_advice", version 1, [BEARWELL_CHOICE], "What can be done next, in the order in which it costs least and harms least.";
    }
}
