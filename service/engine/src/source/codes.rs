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
    IBC_1705_9 = "ibc_1705_9", "International Building Code", "1705.9, helical pile foundations", Secondary, "Continuous inspection; the record holds installation equipment used, pile dimensions, tip elevations, final depth, final installation torque and other data the design professional requires. Seen quoted; which year the text follows is not known.";
    NYC_1814_12_RECORD = "nyc_1814_12_record", "New York City Building Code", "1814.12, items 1.1 to 1.7 and 2", Verified, "Pile type with its product sheet, make and model of equipment and indicator, calibration record, speed, torque criterion with its tests, torque for each foot with the final torque in the bearing zone and the advance there; inspection of field welds. The number of the item of the equipment follows from its place between the others.";
    RECORD_PRACTICE = "record_practice", "What installers keep of a pile, practice", "", CommonPracticeNoSource, "No published list: what tells later which pile this is, how it was turned in, to what, where it stands and why it ended there.";
    CANADA_PHI = "canada_resistance_factors", "National Building Code of Canada, structural commentary (resistance factors as quoted in Geo-Risk 2017, GSP 282, p. 99)", "deep foundations", Secondary, "Compression 0.4 by analysis to 0.6 by static test seen quoted; tension 0.3 by analysis, 0.4 by test from memory.";
    CANADA_PHI_TENSION = "canada_resistance_factors_tension", "Canadian Foundation Engineering Manual, 4th ed. (2006)", "resistance factors, uplift", Memory, "0.3 by analysis, 0.4 by test.";
    EN_1997_1_2_4_7_3 = "en_1997_1_2_4_7_3", "EN 1997-1:2004, Geotechnical design", "2.4.7.3, design approaches 1 and 2 for piles", Secondary, "A1 + M1 + R1 and A2 + M1 + R4; A1 + M1 + R2. Seen quoted in textbooks.";
    EN_1997_1_7_6_2 = "en_1997_1_7_6_2", "EN 1997-1:2004, Geotechnical design", "7.6.2.2, 7.6.2.3, 7.6.3.2, 7.6.3.3", Secondary, "Characteristic resistance from the mean and the least of several resistances; seen transcribed.";
    EN_1997_1_MODEL = "en_1997_1_model_factor", "EN 1997-1:2004, Geotechnical design", "7.6.2.3(8), note", Secondary, "A model factor above 1 may be set nationally; seen quoted.";
    EN_1997_1_A3 = "en_1997_1_table_a3", "EN 1997-1:2004, Geotechnical design", "annex A, table A.3", Secondary, "Recommended values for buildings, seen in a public copy of the text; a national annex may set others.";
    EN_1997_1_A6 = "en_1997_1_table_a6", "EN 1997-1:2004, Geotechnical design", "annex A, table A.6, driven piles", Secondary, "Recommended values, seen transcribed; a national annex may set others.";
    EN_1997_1_A7 = "en_1997_1_table_a7", "EN 1997-1:2004, Geotechnical design", "annex A, table A.7, bored piles", Secondary, "Recommended values, seen transcribed; a national annex may set others.";
    EN_1997_1_A8 = "en_1997_1_table_a8", "EN 1997-1:2004, Geotechnical design", "annex A, table A.8, continuous flight auger piles", Secondary, "Recommended values, seen transcribed; a national annex may set others.";
    EN_1997_1_A9 = "en_1997_1_table_a9", "EN 1997-1:2004, Geotechnical design", "annex A, table A.9, static load tests", Secondary, "Recommended values, seen transcribed; a national annex may set others.";
    EN_1997_1_A10 = "en_1997_1_table_a10", "EN 1997-1:2004, Geotechnical design", "annex A, table A.10, ground test results", Secondary, "Recommended values, seen transcribed; a national annex may set others.";
    AS_2159_LOWEST = "as_2159_lowest_risk", "AS 2159-2009, Piling - Design and installation", "basic geotechnical strength reduction factor, lowest risk", Secondary, "0.67 with low and 0.76 with high redundancy, seen quoted; the form phi_gb R >= S* was seen in a textbook.";
    AS_2159_ROWS = "as_2159_higher_risk", "AS 2159-2009, Piling - Design and installation", "basic geotechnical strength reduction factor, other ratings", Memory, "Seven rows of average risk rating, remembered.";
    AS_2159_TESTING = "as_2159_testing_benefit", "AS 2159-2009, Piling - Design and installation", "benefit of load testing", Memory, "phi_g = phi_gb + (phi_tf - phi_gb) K, remembered.";
}
