//! Codes of `installation-job`, beside their texts. Those of a single log are in `record`;
//! codes shared by all calculations are in `catalogue/common.rs`.

/// Checks.
pub mod checks {
    use crate::catalogue::codes;
    codes! { CheckDef:
        PILE = "job_pile", "A pile by its own log: checks that failed, or that are open, against none.";
        PROOF_TESTS = "job_proof_tests", "Piles that were proof-tested against the share of the lot asked for.";
        LOAD_TEST = "job_load_test", "Load tests of a pile that failed against none.";
        LENGTHS = "job_length_tolerance", "Greatest difference of a depth from that of the tested pile it differs from least against what is allowed; advises only, the engineer decides on more tests.";
        RETESTS = "job_retests", "Piles tested or turned again against those that failed piles ask for.";
    }
}

/// Warnings.
pub mod warnings {
    use crate::catalogue::codes;
    codes! { WarningDef:
        NO_PROOF_TESTS_ASKED = "job_no_proof_tests_asked", "No share of piles to be proof-tested was sent; no tests are asked for.";
        STOPPED_SHORT_TOGETHER = "job_stopped_short_together", "Piles next to each other in the order of the job could not be turned to their least depth; the ground there is not what the depth was set by.";
        CALIBRATION_OF_MANY = "job_calibration_of_many", "The calibration of the indicator is out of date for several piles; one calibration may settle all of them.";
        OPERATOR_SPINS = "job_operator_spins", "Every pile of one operator advances too little in a turn, and piles of others do not; it may be the crowd and not the ground.";
    }
}

/// Faults and refusals.
pub mod refusals {
    use crate::catalogue::codes;
    codes! { RefusalDef:
        TEST_OF_UNKNOWN_PILE = "job_test_of_unknown_pile", "A load test names a pile that the job does not have.";
        TEST_TWICE = "job_test_twice", "Two load tests of one pile in one direction; send the one that holds.";
        TOLERANCE_WITHOUT_TESTS = "job_tolerance_without_tests", "A tolerance of lengths is one against tested piles, and no load test was sent.";
    }
}

/// Methods.
pub mod methods {
    use crate::catalogue::methods;
    methods! {
        LOT = "job_lot", version 1, [MICROPILE_PROOF_TESTS, NYC_SITE_TESTS, NYC_MORE_TESTS, BEARWELL_CHOICE, CALLER], "All piles of the request are one lot, in the order they were turned in. A pile that failed in a load test, or whose log is rejected for its torque, its advance or the ground of its helices, asks for tests of the piles nearest to it in that order, at equal distance the earlier one first, those left out that failed themselves or could not be judged. One that stopped short or on an obstruction never reached the ground of the others, and one that is out of place or out of plumb says nothing of it: neither asks for any. The number is a choice of this service: codes ask for more tests of elements that do not conform or are doubtful and leave the number to the engineer.";
    }
}
