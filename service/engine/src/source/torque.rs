//! References: torque correlation, hydraulics, torsion of the shaft.

use super::references;

references! { TORQUE:
    AC358_KT_LISTED = "ac358_kt_listed", "Acceptance criteria for helical piles AC358", "torque factors of the listed shafts", Secondary, "10, 10, 9, 8, 7 per foot for 1.5 and 1.75 in square and 2.875, 3.0, 3.5 in round; seen quoted, the criteria text was not seen.";
    AC358_KT_DIAMETER = "ac358_kt_effective_diameter", "Acceptance criteria for helical piles AC358, revision of October 2016", "torque factor of other shafts", Secondary, "22.285 d_eff^-0.9195 (in, per ft); square 1.5 to 3.0 in by the diagonal, round 2.375 to 4.5 in; equation, range and diagonal rule seen in a trade report of the approved revision, not in the criteria themselves.";
    AC358_TORQUE_AVERAGING = "ac358_torque_averaging", "Evaluation practice under AC358", "installation torque", Secondary, "Mean over the last penetration of 3 diameters of the largest helix; seen quoted.";
    AC358_AVERAGING_3_FT = "ac358_averaging_3_ft", "Evaluation practice under AC358", "installation torque, last 3 ft", Memory, "Mean over the last 3 ft; trade custom, criteria text not seen. The longer of this and 3 diameters is asked for.";
    AC358_TENSION_EMBEDMENT = "ac358_tension_embedment", "Evaluation practice under AC358", "tension by torque", Secondary, "Top helix at least 12 diameters of the largest helix below ground; shallower is outside the correlation; seen quoted.";
    AC358_COMPRESSION_EMBEDMENT = "ac358_compression_embedment", "Evaluation practice under AC358", "compression by torque", Secondary, "Top helix at least 5 ft below the footing; seen quoted.";
    TORQUE_AT_OBSTRUCTION = "torque_at_obstruction_practice", "Torque correlation, practice", "refusal on an obstruction", CommonPracticeNoSource, "A torque against rock, a boulder or rubble is not that of helices turning in soil; left out of the correlation by common practice.";
    LIVNEH_EL_NAGGAR_2008 = "livneh_el_naggar_2008", "Livneh and El Naggar 2008, Canadian Geotechnical Journal 45, p. 1142", "abstract", Verified, "33 per m in compression and 24 per m in uplift; 19 full-scale tests, slender solid square shaft, three tapered helices 3 diameters apart. The size of the shaft is not in the abstract; taken as 1.5 to 1.75 in.";
    HOYT_CLEMENCE_SCATTER = "hoyt_clemence_1989_scatter", "Hoyt and Clemence 1989, Uplift capacity of helical anchors in soil, 12th ICSMFE", "measured over computed by torque", Memory, "91 tension tests at 24 sites: mean 1.49, standard deviation 0.59, coefficient of variation 0.40. The paper was not seen; the band leaves the favourable mean out.";
    HOYT_CLEMENCE_1989 = "hoyt_clemence_1989", "Hoyt and Clemence 1989, Uplift capacity of helical anchors in soil, 12th ICSMFE", "recommended torque factors", Memory, "33 per m for square shafts and round ones below 89 mm, 23 per m for 89 mm, 9.8 per m for 219 mm; 91 tension tests at 24 sites, squares of 1.5 to 2.0 in. The paper was not seen.";
    PERKO_2009 = "perko_2009", "Perko 2009, Helical Piles", "regression of the torque factor", Memory, "1433 d_eff^-0.92 (mm, per m); the book was not seen; within 0.15 % of the curve of AC358.";
    HYDRAULIC_MOTOR = "hydraulic_motor", "Work of a positive-displacement motor in one turn", "T = dp V / (2 pi)", Verified, "Form seen in hydraulics texts (torque in in-lbf = psi x in3 per turn / 2 pi); gear and efficiency follow by definition.";
    TURNING_SPEED = "turning_speed_practice", "Driving of helical piles, practice", "turning speed", CommonPracticeNoSource, "5 to 30 turns a minute is usual; above 30 the answer warns. No published limit was found.";
    TORSION_ELASTIC = "torsion_elastic", "Saint-Venant torsion of a circular tube", "T = tau J / (D/2)", Derived, "First yield at the outside; J = pi (D4 - d4)/32.";
    TORSION_SQUARE = "torsion_square", "Civil Engineering Formulas, shaft torque formulas", "Fig. 2.1, 0.208 s3 f", Verified, "First yield at the middle of a side of a solid square; Saint-Venant's series gives 0.20817.";
    AISC_360_H3_1 = "aisc_360_h3_1", "AISC 360-16", "H3.1, round HSS", Memory, "Tn = Fcr C, C = pi (D - t)2 t / 2, Fcr = 0.60 E / (D/t)^1.5 but at most 0.6 Fy; the term with the length is left out, which can only lower Fcr. Standard not seen.";
    AISC_360_SHEAR_YIELD = "aisc_360_shear_yield", "AISC 360-16", "shear yield 0.6 Fy", Memory, "Standard not seen.";
    AISC_360_DESIGN_WALL = "aisc_360_design_wall", "AISC 360-16", "B4.2", Memory, "Design wall 0.93 of the nominal for electric-resistance-welded tube; pipe taken likewise. Standard not seen.";
    STEEL_MODULUS = "steel_modulus", "AISC 360-16", "E = 29,000 ksi", Memory, "Standard not seen.";
    IBC_1705_9_FINAL_TORQUE = "ibc_1705_9_final_torque", "International Building Code", "1705.9, final installation torque", Secondary, "The clause names the final installation torque among the data to be recorded; seen quoted. It does not say over which length it is taken.";
    IBC_1810_3_1_3 = "ibc_1810_3_1_3", "International Building Code (state editions of 2018 and 2021)", "1810.3.1.3, mislocation", Verified, "Piles are designed for a mislocation of at least 3 in; compressive overload of 110 % is permitted for it. An allowance of the design, no licence to move a pile.";
    PLUMB_PERMIT_NOTES = "plumb_permit_notes", "Notes of residential permit sets of a city in the state of Washington (2015 and 2018 code)", "vertical within 1 degree", Secondary, "Seen there with reference to evaluation reports; no code clause was found.";
    CALIBRATION_PRACTICE = "calibration_practice", "Common practice", "calibration of a torque indicator within a year", CommonPracticeNoSource, "Also in use: once for each job.";
    RETORQUE_PRACTICE = "retorque_practice", "Common practice", "set-up and relaxation", CommonPracticeNoSource, "Clay regains strength after disturbance, dense fine sand and silt below water may lose some; a second torque after a wait shows it, a load test proves it.";
}
