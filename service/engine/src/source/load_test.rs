//! References: how a static load test is read.

use super::references;

references! { LOAD_TEST:
    ELASTIC_COLUMN = "elastic_column", "Hooke's law; UFC 3-220-20 (2025), eq. 6-45", "shortening P L / (A E)", Derived, "A column with the same axial load over its whole length: the load goes to the helices and nothing to the soil beside the shaft.";
    ASTM_LOAD_TESTS = "astm_load_tests", "ASTM D1143 (compression) and D3689 (tension)", "static axial load tests of deep foundations", Secondary, "Named by building codes and UFC 3-220-20; the standards were not seen.";
    IBC_LOAD_TEST_READING = "ibc_load_test_reading", "International Building Code (a state edition)", "load test evaluation of deep foundations", Verified, "Davisson offset method, Brinch Hansen 90 % criterion, Butler-Hoy criterion, or other methods approved by the building official. Which year the text seen follows is not known.";
    UFC_LOAD_TEST_READING = "ufc_load_test_reading", "UFC 3-220-20 (2025)", "6-8.3", Secondary, "The methods do not agree; Brinch Hansen is usually above Davisson, and its 80 % form is often closest to the ultimate load. Seen as a transcription.";
    DAVISSON_OFFSET = "davisson_offset", "Davisson 1972; form as given by NeSmith and Siegel, Shortcomings of the Davisson offset limit", "s = P L / (A E) + 3.8 mm + D/120", Verified, "Made for driven piles in compression with D the width of the pile. For a helical pile no rule says whether D is the shaft or the helix.";
    TANG_PHOON_5_PERCENT = "tang_phoon_2020_5_percent", "Tang and Phoon 2020", "abstract, movement of 5 % of the helix diameter", Verified, "Gross movement. Which of several diameters is not said; the largest is the choice of this service.";
    LIVNEH_8_PERCENT = "livneh_2008_8_percent", "Livneh and El Naggar 2008, Canadian Geotechnical Journal 45, p. 1142", "abstract", Verified, "Movement of 8 % of the largest helix diameter plus the elastic deflection of the pile.";
    AC358_10_PERCENT = "ac358_10_percent", "Acceptance criteria for helical piles AC358", "load tests, 10 % net", Memory, "Net movement of 10 % of the average helix diameter, net of the elastic shortening. Criteria text not seen.";
    TEN_PERCENT_GROSS = "ten_percent_gross", "Terzaghi 1942; as told in a doctoral thesis on pile load tests", "movement of 10 % of the diameter", Secondary, "Gross movement of 10 % of the diameter of the base. The average helix stands for the base by choice of this service.";
    BRINCH_HANSEN_1963 = "brinch_hansen_1963", "Brinch Hansen 1963; as told in a doctoral thesis on pile load tests", "80 % and 90 % criteria", Secondary, "The movement at failure is four times that at 80 % of the load (80 %), or twice that at 90 % of it (90 %).";
    CHIN_1971 = "chin_1971", "Chin 1970, Kondner 1963; as told in a doctoral thesis on pile load tests", "movement over load against movement", Secondary, "The inverse slope of the straight part is the load a hyperbola tends to. It lies 20 to 40 % above Davisson there: an extrapolation, not a load that was reached.";
    BUTLER_HOY_1976 = "butler_hoy_1976", "Butler and Hoy 1976; as told in a doctoral thesis on pile load tests", "double tangent, 0.05 in per ton", Secondary, "Meets of the tangent from the origin and the tangent with a slope of 0.05 in per ton of 2,000 lbf. Meant for quick tests of piles far larger than helical ones.";
    DE_BEER_1968 = "de_beer_1968", "De Beer 1968; as told in a doctoral thesis on pile load tests", "load against movement, both logarithmic", Secondary, "Meets of two straight lines; works only with a marked change of slope. A yield load rather than an ultimate one.";
    NYC_SITE_TESTS = "nyc_1814_12_site_tests", "New York City Building Code", "1814.12, item 1.6", Verified, "The torque criterion is derived from axial load tests on the site. Where friction lengths differ by more than 25 % from the tested ones the engineer decides on more tests.";
}
