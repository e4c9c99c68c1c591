//! References: groups of piles, and the movement of a pile head under load.

use super::references;

references! { GROUP:
    IBC_1810_3_3_1_6 = "ibc_1810_3_3_1_6", "International Building Code (a state edition)", "1810.3.3.1.6", Verified, "Uplift of a group with centres closer than 3 times the least horizontal dimension of the largest element: lesser of the allowable uplift of one element times their number, and 2/3 of the effective weight of the block within the perimeter over the length of the element plus 2/3 of the ultimate shear along it. Silent on shaft or helix; which year the text seen follows is not known.";
    GROUP_SPACING_3D = "group_spacing_3d", "Evaluation practice under AC358; UFC 3-220-20 (2025)", "distance between piles", Secondary, "No reduction from 3 diameters of the largest helix on, centre to centre; closer, the reduction must be in the geotechnical report. Seen quoted.";
    GROUP_SPACING_4D = "group_spacing_4d", "Salehzadeh et al. 2022", "abstract", Verified, "Four diameters between adjacent anchors keep their interaction small.";
    GROUP_READING = "group_reading", "Engineering default of this service", "least horizontal dimension, perimeter of a group", CommonPracticeNoSource, "The largest helix is the least horizontal dimension, and the outer edges of the helices are the perimeter; codes are silent on shaft or helix.";
    BLOCK_COMPRESSION = "block_compression", "Terzaghi and Peck; UFC 3-220-20 (2025)", "eq. 6-38", Secondary, "Bearing of the base of the block plus shear on its sides. Seen as a transcription.";
    BLOCK_BEARING_FACTOR = "block_bearing_factor", "Skempton 1951; UFC 3-220-20 (2025)", "eq. 6-39", Secondary, "N_c = 5 (1 + 0.2 B/L)(1 + 0.2 z/B), at most 9; here z/B is held at 2.5, as Skempton has it, which never gives more.";
    BLOCK_SHEAR_HEIGHT = "block_shear_height", "Engineering default of this service", "height of the sides that shear in compression", CommonPracticeNoSource, "Thin shafts do not drag the soil above the top helix down with them; the full depth is for piles with thick shafts and can be chosen.";
    BLOCK_REACH = "block_reach", "UFC 3-220-20 (2025)", "6-5.4.3.2", Secondary, "The soil within 1 to 2 widths of the base matters most. That two breadths are looked at, each layer under the load spread down to it, is the choice of this service.";
    BLOCK_UPLIFT = "block_uplift", "UFC 3-220-20 (2025)", "eq. 6-42, 6-43", Secondary, "Effective weight of the block plus s_u on its sides. Seen as a transcription; s'_v K_0 tan phi on sides in sand is the choice of this service.";
    BLOCK_LEANING = "block_leaning_sides", "UFC 3-220-20 (2025)", "eq. 6-41", Secondary, "Sides at 4 vertical to 1 horizontal in coarse soil. The two transcriptions seen do not give the volume of that body; it is integrated here.";
    BLOCK_SAME_FACTOR = "block_same_factor", "Engineering default of this service", "factor of a block where the basis has none of its own", CommonPracticeNoSource, "The factor of the single pile in the same direction.";
    EN_1997_1_GROUP_SPACING = "en_1997_1_group_spacing", "EN 1997-1:2004", "7.6.3, groups of piles in tension", Secondary, "The block is considered where the distance is at most the root of diameter times penetration into the resisting stratum. Seen as a transcription.";
    SHAFT_SHORTENING = "shaft_shortening", "Hooke's law; UFC 3-220-20 (2025)", "eq. 6-45", Derived, "Shortening P L / (A E), length by length with the load that is left in the shaft there.";
    MOVEMENT_TO_MOBILISE = "movement_to_mobilise", "UFC 3-220-20 (2025)", "movement that mobilises side and base", Secondary, "Side resistance after 2.5 to 10 mm; base after 4 to 5 % of the width in fine soil and about 10 % in coarse soil. Seen as a transcription; 5 mm and 5 % within the ranges are the choice of this service.";
    MOVEMENT_HYPERBOLA = "movement_hyperbola", "Engineering default of this service", "load and movement of a helix", CommonPracticeNoSource, "A hyperbola z/(a + b z) through the ultimate; the failure ratio 0.75 puts half the ultimate at a fifth of the movement, which is 2 % of the diameter in sand and 1 % in clay.";
}
