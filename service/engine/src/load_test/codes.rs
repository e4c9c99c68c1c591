//! Codes of `load-test`, beside their texts. Codes shared by all calculations are in
//! `catalogue/common.rs`.

/// Checks.
pub mod checks {
    use crate::catalogue::codes;
    codes! { CheckDef:
        CAPACITY = "load_test_capacity", "Load on the pile against the capacity its load test proves.";
        STEP_SIZE = "load_test_step_size", "Largest step of load of a quick test against about 5 % of the failure load foreseen.";
        STEP_TIME_LEAST = "load_test_step_time_least", "Shortest step of a quick test against the least time of a step.";
        STEP_TIME_MOST = "load_test_step_time_most", "Longest step of a quick test against the greatest time of a step.";
        LARGEST_LOAD = "load_test_largest_load", "Largest load of a test against twice the service load.";
        REACTION_DISTANCE = "load_test_reaction_distance", "Clear distance of the reaction against five times the widest part of the pile and 8 ft.";
        SETTLEMENT_RATE = "load_test_settlement_rate", "Movement at the end of the hold at the largest load against 0.01 in an hour.";
    }
}

/// Warnings.
pub mod warnings {
    use crate::catalogue::codes;
    codes! { WarningDef:
        DAVISSON_DIAMETER_NOT_CHOSEN = "davisson_diameter_not_chosen", "Which diameter goes into the offset of Davisson was not chosen; that of the shaft is used, and that of the helix gives another load.";
        CRITERIA_DISAGREE = "load_test_criteria_disagree", "The criteria give different failure loads for one and the same curve; the engineer says which one holds.";
        CRITERION_NOT_NAMED = "load_test_criterion_not_named", "The criterion used is none of those the building code names; it needs the approval of the building official.";
        NOT_TO_FAILURE = "load_test_not_to_failure", "The test ended before its criterion was met; the largest load is a lower bound of the failure load.";
        NOT_DETERMINED = "load_test_failure_not_determined", "The criterion gives no load for this curve, and it is one whose load may lie below the largest load; nothing is judged.";
        PEAK_PASSED = "load_test_peak_passed", "The load fell while the pile moved on before the criterion was met; the largest load is the failure load.";
        LOAD_DIPS = "load_test_load_dips", "The load dipped while the pile moved on; the dips are within what is accepted and are part of the curve.";
        STEPS_COARSE = "load_test_steps_coarse", "A load was interpolated over a coarse step of load; it is as uncertain as the curve between the two points.";
        ORIGIN_ADDED = "load_test_origin_added", "The first row is not at zero load and zero displacement; the curve starts there all the same.";
        TENSION_BY_ANALOGY = "load_test_tension_by_analogy", "Criteria made for compression are applied to a tension test.";
        BUTLER_HOY_MAINTAINED = "butler_hoy_maintained_test", "The criterion of Butler and Hoy was made for quick tests; this one was maintained.";
        ONE_TEST = "site_torque_factor_of_one_test", "A torque factor from one pile says nothing of the scatter on the site.";
        FEW_TESTS = "site_torque_factor_of_few_tests", "Fewer than three counted tests give no lower value of the torque factor.";
        FACTORS_SCATTER = "site_torque_factors_scatter", "The torque factors of the site scatter so that a mean says little of a single pile.";
        TEST_NOT_COUNTED = "site_torque_factor_not_counted", "This test is not counted among those of the site: its factor is a lower bound or not determined.";
        NO_LOWER_VALUE = "site_torque_factor_without_lower_value", "The tests scatter so that the lower value of their mean is not above nil.";
        REACTION_CLOSE = "load_test_reaction_close", "The reaction stands so near to the pile that it may change the load it takes.";
        FACTOR_ABOVE_CRITERIA = "site_torque_factor_above_criteria", "The torque factor of the test is above what the acceptance criteria give for this shaft.";
        ACCURACY_BAND = "load_test_band", "The verdict turns within the stated accuracy of the load.";
    }
}

/// Faults and refusals.
pub mod refusals {
    use crate::catalogue::codes;
    codes! { RefusalDef:
        NOT_MONOTONE = "load_test_not_monotone", "The displacement goes back while the load holds or grows, or the pile is loaded again after unloading; send the first loading and at most one unloading after it.";
        NO_LOAD = "load_test_no_load", "No point of the test has both a load and a displacement.";
        TOO_FEW_POINTS = "load_test_too_few_points", "The first loading has fewer points than any criterion needs.";
        ZERO_NOT_SET = "load_test_zero_not_set", "The pile has moved at zero load; set the displacement to zero where the test begins.";
        TIME_GOES_BACK = "load_test_time_goes_back", "The time since the test began goes back from one row to the next.";
        OTHER_PROCEDURE = "load_test_other_procedure", "Something is asked that belongs to tests run in another way.";
        CHECK_TWICE = "load_test_check_twice", "A check of the test is named twice.";
        OTHER_DIRECTION = "load_test_other_direction", "Something is asked in the direction that was not tested.";
    }
}

/// Methods.
pub mod methods {
    use crate::catalogue::methods;
    methods! {
        CURVE = "load_test_curve", version 1, [ASTM_LOAD_TESTS, ELASTIC_COLUMN, STEEL_MODULUS, BEARWELL_CHOICE], "The first loading as straight lines between its points, from zero; nothing is extrapolated. A dip of load of up to 5 % while the pile moves on is part of it; unloading is not. The elastic line is that of a column with the same load over its whole length.";
        DAVISSON = "davisson_offset_limit", version 1, [DAVISSON_OFFSET, ELASTIC_COLUMN], "First point of the curve on the line P L / (A E) + 3.8 mm + D/120, with D the shaft (the outside diameter, or the side) and with D the largest helix.";
        MOVEMENT = "load_at_movement", version 1, [TANG_PHOON_5_PERCENT, LIVNEH_8_PERCENT, AC358_10_PERCENT, TEN_PERCENT_GROSS, ELASTIC_COLUMN], "First point of the curve at 5 % of the largest helix (gross), at 8 % of the largest helix beside the elastic line (net), at 10 % of the average helix beside the elastic line (net) and without it (gross).";
        BRINCH_HANSEN = "brinch_hansen_criteria", version 1, [BRINCH_HANSEN_1963], "First point of the curve where a quarter of its displacement takes 80 % of its load, and where half of it takes 90 %, both read on the measured curve.";
        CHIN = "chin_hyperbola", version 1, [CHIN_1971, BEARWELL_CHOICE], "Least-squares line of displacement over load against displacement from half of the largest load on, at least 4 points; the inverse slope, at most twice the largest load. An extrapolation: never taken as the failure load.";
        BUTLER_HOY = "butler_hoy_tangents", version 2, [BUTLER_HOY_1976, BEARWELL_CHOICE], "Where the line from the origin that touches the curve meets the line of 0.05 in per ton (40 kip/in) that touches it; only where the last point of the curve has at most 94 % of the load of that line, since readings off by 3 % can feign more.";
        DE_BEER = "de_beer_break", version 2, [DE_BEER_1968, BEARWELL_CHOICE], "Where two least-squares lines of log load against log displacement meet, the points divided where the squares are least, at least 3 on each side; the second line rises less than half as steeply as the first, and both leave at most a quarter of the squares of a single line.";
        FAILURE_LOAD = "load_test_failure_load", version 1, [IBC_LOAD_TEST_READING, UFC_LOAD_TEST_READING], "The load by the criterion asked for; where the test did not reach it, the largest load as a lower bound, or as the failure load itself where the load fell afterwards; not determined by Butler and Hoy or De Beer, whose load may lie below the largest.";
        SITE_FACTOR = "site_torque_factor", version 1, [NYC_SITE_TESTS, AC358_TORQUE_AVERAGING], "Failure load over final installation torque of the tested pile, its band from the accuracies of load and torque at their worst together.";
        SITE_FACTORS = "site_torque_factors", version 1, [SAMPLE_STATISTICS, STUDENT_T, BEARWELL_CHOICE], "Mean, least, greatest and standard deviation (n - 1) of the torque factors of the site; from three tests on the one-sided 95 % confidence limit of the mean by Student's t. The correlation factors of EN 1997-1 for numbers of load tests are not used: they are made for resistances of like piles, not for a ratio that each pile's own torque has made even.";
        CONDUCT = "load_test_conduct", version 1, [ASTM_QUICK_STEPS, ASTM_TWICE_DESIGN, UFC_REACTION_DISTANCE, UFC_SETTLEMENT_RATE, BEARWELL_CHOICE], "A row belongs to the step before unless its load rises by more than 1 % of the largest load. Size, time and largest load of a test never change the verdict, for a test with other steps is still a test; too near a reaction holds it back; the rate of movement counts where the test ended before its criterion was met and a load is to be carried.";
        ALLOWABLE_STRESS = "load_test_allowable_stress", version 1, [IBC_1810_3_3_1_9, IBC_1810_3_3_1_5, NYC_1810_3_4], "Failure load over a safety factor, by load test: 2 in compression; 2 in tension, 1.5 under wind or seismic load.";
        LIMIT_STATES = "load_test_limit_states", version 1, [CANADA_PHI, CANADA_PHI_TENSION], "Resistance factor of a static load test x failure load.";
    }
}
