//! References: frost, adfreeze, heave and void forms.

use super::references;

references! { FROST:
    FROST_DEPTH_OFFICIAL = "frost_depth_official", "The jurisdiction's own frost depth", "", Derived, "Sent by the caller; never inferred from a place.";
}
