//! References: torque correlation, hydraulics, torsion of the shaft.

use super::references;

references! { TORQUE:
    AC358_KT_LISTED = "ac358_kt_listed", "Acceptance criteria for helical piles AC358", "torque factors of the listed shafts", Secondary, "10, 10, 9, 8, 7 per foot for 1.5 and 1.75 in square and 2.875, 3.0, 3.5 in round; seen quoted, the criteria text was not seen.";
}
