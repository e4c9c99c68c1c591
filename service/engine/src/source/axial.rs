//! References: soil bearing, uplift and torque correlation.

use super::references;

references! { AXIAL:
    PRANDTL_REISSNER = "prandtl_reissner", "Prandtl 1921, Reissner 1924; as tabulated in the Foundation Engineering Handbook (Vesic factors)", "N_q, N_c", Verified, "Closed form; agrees with the table to the last printed digit.";
    SKEMPTON_1951 = "skempton_1951", "Skempton 1951, The bearing capacity of clays; UFC 3-220-20 (2025)", "eq. 6-39", Verified, "N_c = 5 (1 + 0.2 z/D)(1.2) up to 9.0 at z/D = 2.5; the limit seen, the form seen transcribed.";
}
