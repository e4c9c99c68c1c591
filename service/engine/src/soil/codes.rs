//! Faults a soil profile can have, beside their texts.

/// Faults of a profile.
pub mod refusals {
    use crate::catalogue::codes;
    codes! { RefusalDef:
        LAYER_INVERTED = "layer_inverted", "A layer's bottom is not below its top.";
        LAYER_GAP = "layer_gap", "There is a gap between two layers, or the first does not begin at depth 0.";
        LAYER_OVERLAP = "layer_overlap", "Two layers overlap.";
        LAYER_SATURATED_LIGHTER = "layer_saturated_lighter", "The saturated unit weight is below the unit weight above water.";
        LAYER_SATURATED_TOO_HEAVY = "layer_saturated_too_heavy", "The saturated unit weight exceeds the unit weight above water by more than that of water; no soil holds that much.";
        LAYER_LIGHTER_THAN_WATER = "layer_lighter_than_water", "Below the water table the layer would be lighter than water.";
    }
}
