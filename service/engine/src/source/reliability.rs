//! References: statistics of measured against calculated resistance, and the estimate of
//! reliability from them.

use super::references;

references! { RELIABILITY:
    RELIABILITY_LOGNORMAL = "reliability_lognormal", "First-order second-moment reliability of a lognormal resistance against a lognormal load", "reliability index", Derived, "Follows from the two lognormal distributions; the same form stands in the calibration reports of load and resistance factor design.";
    RELIABILITY_DEFAULTS = "reliability_defaults", "Engineering default of this service", "bias 1.0 and coefficient of variation 0.40 of a resistance calculated from soil strength or torque; bias 1.0 and 0.15 of the load", CommonPracticeNoSource, "The favourable bias of remembered databases is left out on purpose.";
    GIAMPA_2016 = "giampa_2016", "Giampa et al. 2016, shallow helical anchors in dense sand", "abstract", Verified, "22 tests, friction angle 40 to 50 degrees: calculated over measured 1.15 with a coefficient of variation of 0.14, by a limit equilibrium with dilation; upper-bound plasticity is off by more than 2.";
    JMSE_2020_CLAY = "jmse_2020_738", "Journal of Marine Science and Engineering 2020, 8(10), 738", "abstract, helical anchors in clay", Verified, "Measured over calculated 1.02 with a coefficient of variation of 0.10 of a large-deformation finite-element analysis; not of any equation of this service.";
    TANG_PHOON_2020_RATIOS = "tang_phoon_2020_ratios", "Tang and Phoon 2020, large-displacement helical piles", "abstract", Verified, "84 tests by a settlement of 5 % of the diameter: uplift over compression 0.8 to 1.0 in very stiff clay, 0.6 to 0.8 in dense sand.";
    FHWA_DRIVEN_PILES = "fhwa_driven_piles", "Doctoral thesis on the FHWA database of pile load tests", "213 driven piles", Verified, "Calculated over measured: mean 1.48, from 0.12 to 8.88. Of another kind of pile; information on scatter.";
    HOYT_CLEMENCE_1989_STATISTICS = "hoyt_clemence_1989_statistics", "Hoyt and Clemence 1989, Uplift capacity of helical anchors in soil, 12th ICSMFE", "measured over calculated, 91 tension tests at 24 sites", Memory, "Torque 1.49, standard deviation 0.59; cylindrical shear 1.50 and individual bearing 1.56, standard deviations of about 1.2 to 1.3. The paper was not seen.";
}
