//! Codes of the design basis, beside their texts.

/// Warnings.
pub mod warnings {
    use crate::catalogue::codes;
    codes! { WarningDef:
        UPLIFT_CLAUSES_DISAGREE = "uplift_clauses_disagree", "The clause of helical piles and the general uplift clause give different safety factors in tension; the answer names the one in force.";
        FACTOR_RESTS_ON_TEST = "factor_rests_on_test", "The factor holds only with static load tests on this site that bear the analysis out; none is part of the request.";
    }
}

/// Faults.
pub mod refusals {
    use crate::catalogue::codes;
    codes! { RefusalDef:
        TENSION_FACTOR_TWICE = "tension_factor_twice", "A safety factor in tension and a clause for it are sent together; send one of them.";
    }
}
