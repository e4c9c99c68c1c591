//! References: ground that settles round a shaft, and ground that collapses on wetting.

use super::references;

references! { DRAG:
    UFC_DOWNDRAG = "ufc_3_220_20_downdrag", "UFC 3-220-20, Foundations and Earth Structures (2025)", "6-7.4", Secondary, "Neutral plane from the permanent load alone; upper friction for the drag, lower friction for the resistance; 1.25 Q + 1.10 DF for the structure; drag is no part of the geotechnical check and is not combined with live load; a slim shaft slips fully at about 0.1 in. Seen transcribed.";
    GEC12_BETA = "fhwa_nhi_16_009_table_7_9", "FHWA-NHI-16-009, Design and Construction of Driven Pile Foundations (after Fellenius 2014)", "Table 7-9", Secondary, "beta of clay 0.15 to 0.35, silt 0.25 to 0.50, sand 0.30 to 0.90, gravel 0.35 to 0.80. For driven piles; nothing was found for slim steel with helices. Seen transcribed.";
    GEC12_NEUTRAL_PLANE = "fhwa_nhi_16_064_d17", "FHWA-NHI-16-064, Design and Construction of Driven Pile Foundations, Comprehensive Design Examples", "D.17, Table D-30, eq. 7-70", Verified, "North abutment: neutral plane 54 ft, 486 kip, drag force 285 kip, factored 565 kip from the static resistances of Table D-6 with all of the toe mobilised; a footnote of Table D-30 says 50 %, its numbers are those of 100 %.";
    DRAG_SCREENING = "drag_screening_nchrp_1997", "NCHRP 1997, Design and construction guidelines for downdrag on piles; UFC 3-220-20, Foundations and Earth Structures (2025)", "6-7.4, when to look at downdrag", Secondary, "Ground settlement above 4 in; after construction above 0.4 in; fill above 6 ft; compressible ground thicker than 30 ft; water table drawn down by more than 12 ft. Seen transcribed.";
    ASTM_D5333 = "astm_d5333", "ASTM D5333, Measurement of collapse potential of soils", "classification by collapse index", Memory, "Up to 2 % slight, to 6 % moderate, to 10 % moderately severe, above severe.";
}
