//! Codes of `frost-depth`, beside their texts.

/// Checks.
pub mod checks {
    use crate::catalogue::codes;
    codes! { CheckDef:
        FROST_DEPTH_OFFICIAL_DEEPER = "frost_depth_official_deeper", "The computed frost depth is within the jurisdiction's; worth a look, never decides.";
    }
}

/// Warnings.
pub mod warnings {
    use crate::catalogue::codes;
    codes! { WarningDef:
        HALF_OF_WINTERS_DEEPER = "half_of_winters_deeper", "The freezing index is a mean: about half of all winters freeze deeper.";
        CONDUCTIVITY_BAND = "soil_conductivity_band", "Conductivities from texture, dry weight and water are within about 25 % of measured ones; the frost depth is as uncertain as their square root.";
        MEAN_PROPERTIES = "frost_mean_properties", "The ground conducts heat better frozen than unfrozen and the method takes the mean: the frost may go deeper by some per cent.";
        STEFAN_OVER_PREDICTS = "stefan_over_predicts", "The Stefan equation leaves the warmth of the ground out and goes too deep.";
        LAYERED_BERGGREN_INSULATED = "layered_berggren_insulated", "The layered form of the modified Berggren equation goes too deep where much of the resistance lies in layers without water; heat conduction is the better method.";
        SNOW_MAY_BE_MISSING = "snow_may_be_missing", "Snow may be blown or cleared away or come late; a frost depth under snow is no design depth.";
        INSULATION_FOR_INFORMATION = "insulation_for_information", "The thickness of insulation is for information: no design of a frost-protected shallow foundation, and how far the board must reach sideways is not judged.";
        INSULATION_INDEX_NOT_RETURN_100 = "insulation_index_not_return_100", "Frost protection by insulation is designed for the freezing index with a return period of 100 years; another one was sent.";
    }
}

/// Faults and refusals.
pub mod refusals {
    use crate::catalogue::codes;
    codes! { RefusalDef:
        NOTHING_ASKED = "frost_depth_nothing_asked", "Neither a frost depth (`winter` and `layers`) nor `correction_factors` were asked for.";
        PERMAFROST = "permafrost", "The mean annual temperature is at or below freezing: the ground may be frozen all year, and no frost depth by a freezing index holds.";
        TOO_FEW_WINTERS = "too_few_winters", "There are fewer winters than the definition of the freezing index asks for; another definition is never taken instead.";
        RETURN_100_FROM_WINTERS = "return_100_from_winters", "A freezing index with a return period of 100 years is not found from a list of winters here; send it as `given`.";
        SEASON_TOO_COLD = "season_too_cold", "The freezing index over the length of the season makes a surface colder on average than any place is; one of them is wrong.";
        MOISTURE_BELOW_CORRELATION = "moisture_below_correlation", "The soil is drier than the correlation for its conductivity goes; send its thermal properties.";
        WATER_BEYOND_SATURATION = "water_beyond_saturation", "The soil cannot hold that much water at its dry unit weight.";
        INSULATION_CONTRADICTS = "insulation_given_twice", "A board of insulation has exactly one of `conductivity` and `resistance`.";
        LAST_LAYER_HAS_THICKNESS = "last_layer_has_thickness", "The last layer goes on down; leave its `thickness` out.";
        LAST_LAYER_HOLDS_NO_WATER = "last_layer_holds_no_water", "The last layer holds no water that freezes; the frost depth is not defined there.";
        SNOW_COUNTED_TWICE = "snow_counted_twice", "The factor of the surface includes its snow, and snow is a layer too.";
        SNOW_NOT_ON_TOP = "snow_not_on_top", "Snow lies on top of everything else.";
        BERGGREN_OUTSIDE_CHART = "berggren_outside_chart", "A parameter of the modified Berggren equation is outside the published chart of its correction factor.";
        FROST_ENDS_WITHOUT_WATER = "frost_ends_without_water", "By this winter the cold does not get through the layers on top that hold no water that freezes; there is no frost depth in them.";
        FROST_TOO_DEEP = "frost_too_deep", "The ground would freeze deeper than this service computes; one of the values is wrong.";
        INSULATION_LAYER_UNKNOWN = "insulation_layer_unknown", "No layer has the label that the board of insulation is to lie on.";
        INSULATION_CANNOT_HELP = "insulation_cannot_help", "No board at that place brings the frost to that depth.";
        FROST_METHOD_NOT_FOR_INSULATION = "frost_method_not_for_insulation", "Stefan's equation leaves the warmth of the ground out; no insulation is found by it.";
    }
}

/// Methods.
pub mod methods {
    use crate::catalogue::methods;
    methods! {
        FREEZING_INDEX_FROM_WINTERS = "freezing_index_from_winters", version 1, [FREEZING_INDEX_DESIGN],
            "Freezing index from the indices of single winters: mean of all (at least 10); mean of the three largest of the latest 30; largest of the latest 10. Never one for another.";
        SOIL_CONDUCTIVITY_KERSTEN = "soil_conductivity_kersten", version 1, [KERSTEN_1949, KERSTEN_LIMITS],
            "Conductivity of mineral soil, frozen and unfrozen, from dry unit weight and water. Fine from 7 % of water, coarse from 1 %, not for peat, about +/-25 %. A published reading of the chart for coarse frozen soil (135 lbf/ft3, 5 %) is 1.8 Btu/(h ft F), the equation gives 1.61: the chart is 12 % higher there.";
        SOIL_HEAT = "soil_heat", version 1, [SOIL_HEAT_CAPACITY_0_17, SOIL_HEAT_CAPACITY_0_20, WATER_LATENT_HEAT],
            "Heat capacity of soil, C = g_d (c + 0.75 w), mean of frozen and unfrozen, and latent heat, L = 144 Btu/lb g_d w. With the conductivity from texture and water too, a drier soil mostly freezes deeper; where the ground is warm (alpha above 0.5) it can freeze less deep, by less than 0.3 % for a hundredth less water.";
        MODIFIED_BERGGREN = "frost_depth_modified_berggren", version 1, [MODIFIED_BERGGREN_EQUATION, BERGGREN_LAMBDA_CHART, BERGGREN_NEUMANN, LAYERED_BERGGREN],
            "X = lambda sqrt(2 k n F / L) with the mean conductivity, lambda from the Neumann equation; alpha 0 to 7 and mu 0 to 0.5. Layers: sum L_n d_n (R_1 + ... + R_n / 2) = lambda^2 n F with C and L weighted by thickness over the frozen depth; the first depth that meets it, sought in steps of 1/64 of a layer and of 0.02 m in the last. Beside conduction of heat on 20 grounds: median 5 % off, worst 56 % (a board of 100 mm); up to several times too deep where frost is thin under insulation.";
        STEFAN = "frost_depth_stefan", version 1, [STEFAN_EQUATION],
            "X = sqrt(2 k n F / L) with the frozen conductivity, layers by their resistance. Over-predicts.";
        HEAT_CONDUCTION = "frost_depth_heat_conduction", version 1, [FROST_HEAT_CONDUCTION, BERGGREN_NEUMANN],
            "Conduction of heat with freezing at 0 C in the layered ground: surface at -v_s for the season, ground at v_o when it begins, mean conductivity and heat capacity in both states. Cells of 10 mm at the surface, growing by 2.5 % of their depth, to 30 m; 200 implicit steps growing with the square of their number. The depth is the one that holds the latent heat that has frozen. Within 0.4 % of the Neumann solution in ground of one kind. Mean properties in both states: against frozen and unfrozen properties taken apart the depth is 11 % too shallow in wet clay and up to 13 % too deep in dry sand over wet silt, median 2 %. More conductivity of all layers never makes frost shallower, of one layer alone it can.";
        FROST_INSULATION = "frost_depth_insulation", version 1, [FROST_HEAT_CONDUCTION, NOAA_FREEZING_INDEX_100],
            "Thickness of a board, at most 0.6 m, that brings the computed depth to a given one, found by a bracketed search of at most 60 depths.";
    }
}
