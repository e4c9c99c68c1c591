//! Codes that belong to no single calculation.

/// Checks.
pub mod checks {
    use crate::catalogue::codes;
    codes! { CheckDef: }
}

/// Warnings.
pub mod warnings {
    use crate::catalogue::codes;
    codes! { WarningDef:
        DEFAULT_FROM_MEMORY = "default_from_memory", "A default was used whose source is only remembered, not seen; confirm it or send your own value.";
    }
}

/// Cautions.
pub mod cautions {
    use crate::catalogue::codes;
    codes! { CautionDef:
        ENGINEER_OF_RECORD = "engineer_of_record", "These are calculations, not a design. A licensed engineer of record must review and seal them and decide on deviations.";
        LOCAL_CODE = "local_code", "The local code, its adopted edition and the building official's rulings govern; this service knows only what was sent.";
        LOCATE_UTILITIES = "locate_utilities", "Have utilities located, public and private, before any ground is broken; nothing here is a locate.";
        TORQUE_IS_EMPIRICAL = "torque_is_empirical", "The correlation of torque with capacity is empirical and is no substitute for a load test.";
        SOIL_PROFILE = "soil_profile", "A capacity is only as good as the soil profile; one boring is not the lot.";
        PRODUCT_STRENGTH = "product_strength", "Strengths and torque ratings of shafts, couplings and helices must come from the supplier's evaluation report; this service holds no product data.";
        NOT_COVERED = "not_covered", "Lateral load, group effects, seismic action, liquefaction, scour and downdrag are not covered unless the answer says so.";
        CORROSION = "corrosion", "Service life in corrosive ground is not covered unless the answer says so.";
        GAUGE = "gauge", "Torque not measured by a device with a calibration in date is an estimate.";
        SITE_SAFETY = "site_safety", "No advice on trenches, cranes, rig stability or traffic is given here.";
        DEMO_DATA = "demo_data", "Invented data, for demonstration only.";
    }
}

/// Faults found before any physics: shape, units, ranges, lengths.
pub mod refusals {
    use crate::catalogue::codes;
    codes! { RefusalDef:
        NOT_JSON = "not_json", "The body is not JSON.";
        NOT_CSV = "not_csv", "The body is not CSV with a header: fields between commas, quoted as RFC 4180 says, in UTF-8.";
        CSV_SEPARATOR = "csv_separator", "The fields of the CSV are separated by another sign than a comma; with decimal commas about, what is meant is not guessed.";
        CSV_MEMBER_TWICE = "csv_member_twice", "The JSON in the lines with `#` holds a member that the columns of the CSV give.";
        NESTED_TOO_DEEP = "nested_too_deep", "The body is nested deeper than is accepted.";
        UNKNOWN_MEMBER = "unknown_member", "A member that is not part of the request; the nearest known name is suggested.";
        MISSING_MEMBER = "missing_member", "A required member is absent; the pointer names its parent.";
        DUPLICATE_MEMBER = "duplicate_member", "A member stands twice in one object.";
        WRONG_TYPE = "wrong_type", "A value of another JSON type was expected.";
        UNKNOWN_UNIT = "unknown_unit", "The unit does not belong to this quantity.";
        UNKNOWN_CHOICE = "unknown_choice", "The value is not one of the known choices.";
        ONE_CHOICE_ONLY = "one_choice_only", "An object that selects one alternative must have exactly one member.";
        NUMBER_OUT_OF_RANGE = "number_out_of_range", "The number does not fit a double.";
        LIST_TOO_LONG = "list_too_long", "The list has more entries than are accepted.";
        LIST_TOO_SHORT = "list_too_short", "The list has fewer entries than are needed.";
        BELOW_MINIMUM = "below_minimum", "The value is below the accepted range.";
        ABOVE_MAXIMUM = "above_maximum", "The value is above the accepted range.";
        TEXT_LENGTH = "text_length", "The text is empty or longer than is accepted.";
        UNKNOWN_FORM = "unknown_form", "The form is not one this calculation has for the media type.";
        BASIS_DIFFERS = "basis_differs", "The service computes on another calculation basis than the one required.";
        BASIS_MIXED = "basis_mixed", "An allowable capacity is never compared with a factored load, nor a factored resistance with a service load.";
        DUPLICATE_LABEL = "duplicate_label", "Two things of one kind carry the same label.";
    }
}
