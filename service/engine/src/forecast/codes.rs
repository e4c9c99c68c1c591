//! Codes of `length-forecast`, beside their texts. Codes shared by all calculations are in
//! `catalogue/common.rs`.

/// Checks.
pub mod checks {
    use crate::catalogue::codes;
    codes! { CheckDef:
        EXTENSIONS_AVAILABLE = "forecast_extensions_available", "Extensions that suffice with the stated probability, the ground moving all piles together, against those there are.";
    }
}

/// Warnings.
pub mod warnings {
    use crate::catalogue::codes;
    codes! { WarningDef:
        FEW_LOGS = "forecast_few_logs", "Few logs met the torque; the bands rest in part on what is assumed of any ground.";
        MANY_NOT_MET = "forecast_many_logs_not_met", "Many logs ended before they met the torque; the depths below them are known by the others only.";
        BEYOND_LOGS = "forecast_beyond_logs", "Piles to come stand farther from any log than the logs stand from each other.";
        ONE_SIDE = "forecast_logs_on_one_side", "All logs stand on one side of the piles to come; a slope of the ground towards the other side is not seen, and the bands there may be too narrow.";
        POSITIONS_MISSING = "forecast_positions_missing", "Some piles have a place in plan and some have none; no place was used.";
        PRIOR_CONTRADICTED = "forecast_prior_contradicted", "The logs contradict the stated forecast; they count for more than it.";
        LOG_NOT_USABLE = "forecast_log_not_used", "A log says nothing of a required torque and was left out.";
    }
}

/// Faults and refusals.
pub mod refusals {
    use crate::catalogue::codes;
    codes! { RefusalDef:
        TOO_FEW_LOGS = "forecast_too_few_logs", "Fewer than three logs met the required torque; no depth is forecast from less.";
        LOG_NOT_USABLE = "forecast_log_not_usable", "With too few logs: why this one does not show the depth of its torque.";
        LOG_NOT_DOWNWARD = "forecast_log_not_downward", "A reading is not deeper than the one before; send the way down only.";
        PILE_COMPLETE = "forecast_pile_complete", "A pile to come has met its torque by its own log; it needs no forecast.";
        TOO_MANY_TORQUES = "forecast_too_many_torques", "The piles to come have more different torques than are accepted.";
        PRIOR_OF_ONE_TORQUE = "forecast_prior_of_one_torque", "A stated depth belongs to one torque, and the piles to come have several; ask for each torque alone.";
        EXTENSION_TWICE = "forecast_extension_twice", "Two extensions have one length.";
        LEAD_TOO_SHORT = "forecast_lead_too_short", "The lead does not reach below grade.";
        PIECES_DO_NOT_REACH = "forecast_pieces_do_not_reach", "Forty extensions do not reach as deep as a pile may go.";
    }
}

/// Methods.
pub mod methods {
    use crate::catalogue::methods;
    methods! {
        CRITERION = "forecast_torque_depth", version 1, [AC358_TORQUE_AVERAGING, BEARWELL_CHOICE], "Depth of a log's torque: the least depth from which on the mean torque by depth over the averaging length is at least the required torque down to the last reading that counts. Each reading stands for the depth since the one before, the first one for none; a rise of more than 1.5 times that falls again within the averaging length or 1 m, or that has not yet held over the averaging length at the end, does not count. A log that ends below its torque says that the pile goes deeper than its last reading that counts; one stopped by an obstruction that it goes deeper than where the obstruction was felt; a torque met elsewhere that a greater one lies no higher. A log that begins deeper than one averaging length and has its torque from the start says nothing.";
        MODEL = "forecast_of_depths", version 1, [NORMAL_GIVEN_NORMAL, EXPECTATION_PROPAGATION, FORECAST_PRIORS], "Depth y of the torque of each pile = mean + ground + own part, in depth and not its logarithm: a layer undulates as much whether it lies deep or not, and lengths add up. Ground and own part are normal with the total standard deviation s; the correlation of two piles is (1 - w) exp(-h / l) over their distance h in plan, so that a slope of the ground is a long l; without places all piles are alike and independent given mean and s. The logs are then taken for a fair sample of the piles to come. A new pile has both parts. Summed over fixed values: ln s normal about ln 0.8 m with 0.8, by 31 steps of 0.16 within three standard deviations; w = q^2 / (1 + q^2) with own over common scatter q = 1/3, 2/3, 1, 2 and l = 3, 8, 20, 50 m, each as likely. The mean is flat, or normal about the stated depth with 1, 3 or 9 times the stated standard deviation (weights 0.6, 0.3, 0.1), so that logs overrule a wrong one. Given these values mean and depths follow from the logs in closed form; logs that ended before their torque are truncated normal variables, by moments matched in turn, ten times. Values less likely than 1e-9 of the likeliest are left out. A pile being driven goes deeper than it is. Final depth = the deeper of y and the least depth; its bands are quantiles of the weighted sum. At least 3 logs that met the torque.";
        TOTALS = "forecast_of_totals", version 1, [ONE_FACTOR, BEARWELL_CHOICE], "Piles together: each keeps its own distribution and shares one normal factor, by which the covariances of all pairs add up to those of the forecast (negative ones of a pile with all others are taken as nil); between piles of different torques the factor is the same one. Given the factor depths and pieces are independent: the sum of depths is taken as normal, that of pieces is counted out exactly; the factor runs from -5 to 5 by quarters, with twenty interpolated parts to each. Fully correlated: each pile at the same probability of its own depth. Independent: no factor.";
        PIECES = "forecast_pieces_rule", version 1, [FORECAST_PIECES, BEARWELL_CHOICE], "As few extensions as reach, of those the set with the least steel, of equal ones that with more of the longest; whole piles, the lead with each.";
    }
}
