//! References: frost, adfreeze, heave and void forms.

use super::references;

references! { FROST:
    FROST_DEPTH_OFFICIAL = "frost_depth_official", "The jurisdiction's own frost depth", "", Derived, "Sent by the caller; never inferred from a place.";
    IRC_FROST_PROTECTION = "irc_r403_1_4_1", "International Residential Code", "R403.1.4.1", Secondary, "Supports of a building extend below the frost line of Table R301.2, or are protected otherwise. Seen quoted.";
    OBC_DEPTH_OF_FOUNDATIONS = "obc_depth_of_foundations", "Ontario Building Code (text of National Building Code of Canada 4.2.4.4)", "Depth of foundations", Verified, "The bearing surface lies below the depth of frost damage and the foundation is designed against adfreezing and frost jacking. Gives no bond stress and no factor.";
    TOP_HELIX_5D = "ufc_top_helix_5d", "UFC 3-220-20, Foundations and Earth Structures (2025)", "6-4.7", Secondary, "Uppermost helix at least 5 diameters of the largest helix deep, stated there as the rule of many specifications. Seen transcribed.";
    TOP_HELIX_12D = "ac358_top_helix_12d", "Evaluation report under acceptance criteria AC358", "tension capacity by torque", Secondary, "Top helix at least 12 diameters of the largest helix below the ground where tension capacity is taken from torque; shallower piles are outside the method. Seen quoted.";
    FROST_MARGIN_PRACTICE = "frost_margin_practice", "Common practice", "clearance of the top helix below frost", CommonPracticeNoSource, "12 in or 0.3 m; one helix diameter and nothing are also in use. No published rule was found.";
    CFEM_ADFREEZE = "cfem_2006_adfreeze", "Canadian Foundation Engineering Manual, 4th ed. (2006)", "frost action, average adfreeze bond", Memory, "65 kPa fine soil on wood or concrete, 100 kPa fine soil on steel, 150 kPa saturated gravel on steel.";
    USACE_ADFREEZE = "usace_adfreeze", "U.S. Army Corps of Engineers, cold regions foundation guidance", "adfreeze bond in silt, 40 psi average and 60 psi peak", Memory, "276 kPa average, 414 kPa peak. The severe line of this service, 275 kPa, follows the average.";
    DOMASCHUK_1982 = "domaschuk_1982", "Domaschuk 1982, Frost heave forces on embedded structural units, 4th Canadian Permafrost Conference", "abstract", Verified, "Steel angle in silt, 4 to 75 mm of frost a day: peak bond 150 to 350 kPa, highest at the slowest rate; pressure under a plate 1,900 to 2,500 kPa without a limit being reached. Laboratory peaks, not design averages.";
    CRORY_REED_1965 = "crory_reed_1965", "Crory and Reed 1965, Measurement of frost heaving forces on piles, CRREL Technical Report 145", "abstract", Verified, "Heave force on timber and steel pipe piles may reach or exceed 50,000 lbf, in early winter with frost at 2 to 3 ft.";
    BABA_2016 = "baba_2016", "Baba 2016, adfreeze in pile design, GeoVancouver", "abstract", Verified, "Canadian codes give no load or resistance factor for adfreeze; one pile came out between 10.3 and 20.9 m by the choice of factors.";
    FROST_DEAD_LOAD_SHARE = "frost_dead_load_share", "0.6 D of ASCE 7-16 section 2.4.1, carried over from wind to frost", "", CommonPracticeNoSource, "The share of dead load against uplift is published for wind; no code gives one for adfreeze. 0.9 D with a safety factor of 2 is also in use.";
    FROST_LIMIT_STATES_FACTOR = "frost_limit_states_factor", "Limit states practice for adfreeze", "load factor 1.25 to 1.5", Memory, "Discretionary: no code gives a factor for adfreeze.";
    NBCC_DEAD_COUNTERACTING = "nbcc_dead_counteracting", "National Building Code of Canada 2020", "Table 4.1.3.2.-A, dead load that counteracts", Memory, "0.9 D.";
    VOID_FORM_RESIDUAL_PRACTICE = "void_form_residual_practice", "Practitioners' discussion of collapsible void forms", "about 60 % of the thickness stays free after collapse", Secondary, "Weak: a rule of thumb. The tested crushed thickness of the form is to be preferred.";
    CONCRETE_UNIT_WEIGHT_PRACTICE = "concrete_unit_weight_practice", "Common practice", "normal-weight reinforced concrete", CommonPracticeNoSource, "150 lbf/ft3 (23.6 kN/m3) for wet normal-weight concrete with its bars.";
    SLEEVE_PRACTICE = "frost_sleeve_practice", "Common practice", "loose sleeve round the shaft", CommonPracticeNoSource, "Frees the shaft only where it reaches below frost and can itself heave freely. No published credit was found.";
    COATING_PRACTICE = "frost_coating_practice", "Common practice", "bitumen, wrap or zinc on the shaft", CommonPracticeNoSource, "Bitumen and wraps lower the bond; no number was found that is safe to credit. Zinc is given none.";
    CHEN_SWELL_UPLIFT = "chen_swell_uplift", "Chen, Foundations on Expansive Soils", "uplift on piers, U = 2 pi r f u D", Memory, "0.15 of the swell pressure over the wetted depth. Concrete piers.";
    NELSON_MILLER_ALPHA = "nelson_miller_alpha", "Nelson and Miller, Expansive Soils", "uplift on drilled piers, alpha 0.10 to 0.25 of the swell pressure", Memory, "Concrete piers.";
    TXDOT_SWELL_UPLIFT = "txdot_swell_uplift", "Texas Department of Transportation, Geotechnical Manual (LRFD)", "uplift of drilled shafts in expansive soil", Secondary, "The whole swell pressure over the upper 10 to 20 ft. Seen summarised; concrete shafts.";
    BURKE_2022 = "burke_2022_swell_uplift", "da Silva Burke et al. 2022, Canadian Geotechnical Journal", "abstract", Secondary, "The lesser of an elastic heave solution and a limiting alpha times undrained strength fits full-scale tests best; only the limiting branch is used here. Seen summarised.";
}
