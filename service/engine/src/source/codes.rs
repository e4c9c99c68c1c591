//! References: building codes, acceptance criteria, and what holds everywhere.

use super::references;

references! { CODES:
    DERIVED = "derived", "Statics, geometry or arithmetic", "", Derived, "Follows from the definition of the symbols; can be checked without a source.";
    CALLER = "caller", "The request", "", Derived, "A value the caller sent; its own source is the caller's to keep.";
    BEARWELL_CHOICE = "bearwell_choice", "Engineering default of this service", "", CommonPracticeNoSource, "A choice on the safe side where no published rule was found; can be overridden in the request.";
    IBC_1810_3_3_1_9 = "ibc_1810_3_3_1_9", "International Building Code (a state edition)", "1810.3.3.1.9, eq. 18-4", Secondary, "Pa = 0.5 Pu, Pu the least of soil bearing, torque correlation, load test, shaft, couplings and plates. The clause and its first item were seen, the factor 0.5 and items 2 to 6 only quoted; which year the text seen follows is not known.";
    IBC_1810_3_3_1_5 = "ibc_1810_3_3_1_5", "International Building Code (a state edition)", "1810.3.3.1.5", Verified, "Uplift of one element: safety factor 3 by analysis, 2 by load test; for wind or seismic 2 and 1.5. Which year the text seen follows is not known.";
    IBC_1810_4_11 = "ibc_1810_4_11", "International Building Code", "1810.4.11", Secondary, "Embed to the specified depth and torsional criteria; never exceed the maximum torque of the pile. Seen quoted; neither its wording nor the year it follows was seen.";
    NYC_1814_12 = "nyc_1814_12", "New York City Building Code", "1814.12, item 1.7", Verified, "Advance of at least 85 % of the pitch per revolution when the final torque is taken.";
    CANADA_PHI = "canada_resistance_factors", "National Building Code of Canada, structural commentary (resistance factors as quoted in Geo-Risk 2017, GSP 282, p. 99)", "deep foundations", Secondary, "Compression 0.4 by analysis to 0.6 by static test seen quoted; tension 0.3 by analysis, 0.4 by test from memory.";
    CANADA_PHI_TENSION = "canada_resistance_factors_tension", "Canadian Foundation Engineering Manual, 4th ed. (2006)", "resistance factors, uplift", Memory, "0.3 by analysis, 0.4 by test.";
}
