//! Published sets of load combinations as data, each with its source. How they are put
//! together with the loads of a plan is in `combine`.

use super::request::LoadKind::{self, Dead, Live, RoofLive, Seismic, Snow, Wind};
use crate::source::{
    ASCE_7_16_ASD, ASCE_7_16_LRFD, ASCE_7_22_ASD, ASCE_7_22_LRFD, NBC_2020_COMBINATIONS, Sourced,
};

/// One line of a standard: loads that always act together, and groups of which each adds
/// one load or none. The line with no addition stands as a template of its own, where it
/// is not covered by another line (a combination between two others needs no line).
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Template {
    /// Kinds without which the line says nothing of its own.
    pub needs: &'static [LoadKind],
    /// Factors that are always there.
    pub fixed: &'static [(LoadKind, f64)],
    /// Groups of additions.
    pub options: &'static [&'static [(LoadKind, f64)]],
}

macro_rules! set {
    ($($needs:expr => $fixed:expr $(, $options:expr)?;)+) => {
        &[$(Template { needs: &$needs, fixed: &$fixed, options: set!(@ $($options)?) }),+]
    };
    (@) => { &[] };
    (@ $options:expr) => { &$options };
}

/// ASCE 7-16, 2.4.1 (1 to 7) and 2.4.5 (8 to 10).
pub(super) static ASCE_7_16_ASD_SET: Sourced<&[Template]> = Sourced::new(
    "asce_7_16_asd",
    set! {
        [Dead] => [(Dead, 1.0)];
        [Live] => [(Dead, 1.0), (Live, 1.0)];
        [RoofLive] => [(Dead, 1.0), (RoofLive, 1.0)];
        [Snow] => [(Dead, 1.0), (Snow, 1.0)];
        [Live, RoofLive] => [(Dead, 1.0), (Live, 0.75), (RoofLive, 0.75)];
        [Live, Snow] => [(Dead, 1.0), (Live, 0.75), (Snow, 0.75)];
        [Wind] => [(Dead, 1.0), (Wind, 0.6)];
        [Wind] => [(Dead, 1.0), (Wind, 0.45)], [&[(Live, 0.75)], &[(RoofLive, 0.75), (Snow, 0.75)]];
        [Wind] => [(Dead, 0.6), (Wind, 0.6)];
        [Seismic] => [(Dead, 1.0), (Seismic, 0.7)];
        [Seismic] => [(Dead, 1.0), (Seismic, 0.525)], [&[(Live, 0.75)], &[(Snow, 0.75)]];
        [Seismic] => [(Dead, 0.6), (Seismic, 0.7)];
    },
    &ASCE_7_16_ASD,
);

/// ASCE 7-22, as 7-16 with 0.7 S, 0.525 S and 0.1 S.
pub(super) static ASCE_7_22_ASD_SET: Sourced<&[Template]> = Sourced::new(
    "asce_7_22_asd",
    set! {
        [Dead] => [(Dead, 1.0)];
        [Live] => [(Dead, 1.0), (Live, 1.0)];
        [RoofLive] => [(Dead, 1.0), (RoofLive, 1.0)];
        [Snow] => [(Dead, 1.0), (Snow, 0.7)];
        [Live, RoofLive] => [(Dead, 1.0), (Live, 0.75), (RoofLive, 0.75)];
        [Live, Snow] => [(Dead, 1.0), (Live, 0.75), (Snow, 0.525)];
        [Wind] => [(Dead, 1.0), (Wind, 0.6)];
        [Wind] => [(Dead, 1.0), (Wind, 0.45)], [&[(Live, 0.75)], &[(RoofLive, 0.75), (Snow, 0.525)]];
        [Wind] => [(Dead, 0.6), (Wind, 0.6)];
        [Seismic] => [(Dead, 1.0), (Seismic, 0.7)];
        [Seismic] => [(Dead, 1.0), (Seismic, 0.525)], [&[(Live, 0.75)], &[(Snow, 0.1)]];
        [Seismic] => [(Dead, 0.6), (Seismic, 0.7)];
    },
    &ASCE_7_22_ASD,
);

/// ASCE 7-16, 2.3.1 (1 to 5) and 2.3.6 (6, 7).
pub(super) static ASCE_7_16_LRFD_SET: Sourced<&[Template]> = Sourced::new(
    "asce_7_16_lrfd",
    set! {
        [Dead] => [(Dead, 1.4)];
        [Live] => [(Dead, 1.2), (Live, 1.6)];
        [Live] => [(Dead, 1.2), (Live, 1.6)], [&[(RoofLive, 0.5), (Snow, 0.5)]];
        [RoofLive] => [(Dead, 1.2), (RoofLive, 1.6)];
        [RoofLive] => [(Dead, 1.2), (RoofLive, 1.6)], [&[(Live, 1.0), (Wind, 0.5)]];
        [Snow] => [(Dead, 1.2), (Snow, 1.6)];
        [Snow] => [(Dead, 1.2), (Snow, 1.6)], [&[(Live, 1.0), (Wind, 0.5)]];
        [Wind] => [(Dead, 1.2), (Wind, 1.0)];
        [Wind] => [(Dead, 1.2), (Wind, 1.0)], [&[(Live, 1.0)], &[(RoofLive, 0.5), (Snow, 0.5)]];
        [Wind] => [(Dead, 0.9), (Wind, 1.0)];
        [Seismic] => [(Dead, 1.2), (Seismic, 1.0)];
        [Seismic] => [(Dead, 1.2), (Seismic, 1.0)], [&[(Live, 1.0)], &[(Snow, 0.2)]];
        [Seismic] => [(Dead, 0.9), (Seismic, 1.0)];
    },
    &ASCE_7_16_LRFD,
);

/// ASCE 7-22, as 7-16 with 1.0 S, 0.3 S and 0.15 S.
pub(super) static ASCE_7_22_LRFD_SET: Sourced<&[Template]> = Sourced::new(
    "asce_7_22_lrfd",
    set! {
        [Dead] => [(Dead, 1.4)];
        [Live] => [(Dead, 1.2), (Live, 1.6)];
        [Live] => [(Dead, 1.2), (Live, 1.6)], [&[(RoofLive, 0.5), (Snow, 0.3)]];
        [RoofLive] => [(Dead, 1.2), (RoofLive, 1.6)];
        [RoofLive] => [(Dead, 1.2), (RoofLive, 1.6)], [&[(Live, 1.0), (Wind, 0.5)]];
        [Snow] => [(Dead, 1.2), (Snow, 1.0)];
        [Snow] => [(Dead, 1.2), (Snow, 1.0)], [&[(Live, 1.0), (Wind, 0.5)]];
        [Wind] => [(Dead, 1.2), (Wind, 1.0)];
        [Wind] => [(Dead, 1.2), (Wind, 1.0)], [&[(Live, 1.0)], &[(RoofLive, 0.5), (Snow, 0.3)]];
        [Wind] => [(Dead, 0.9), (Wind, 1.0)];
        [Seismic] => [(Dead, 1.2), (Seismic, 1.0)];
        [Seismic] => [(Dead, 1.2), (Seismic, 1.0)], [&[(Live, 1.0)], &[(Snow, 0.15)]];
        [Seismic] => [(Dead, 0.9), (Seismic, 1.0)];
    },
    &ASCE_7_22_LRFD,
);

/// NBC 2020, table 4.1.3.2.-A, cases 1 to 5 without crane loads.
pub(super) static NBC_2020_SET: Sourced<&[Template]> = Sourced::new(
    "nbc_2020",
    set! {
        [Dead] => [(Dead, 1.4)];
        [Live] => [(Dead, 1.25), (Live, 1.5)];
        [Live] => [(Dead, 1.25), (Live, 1.5)], [&[(Snow, 1.0), (Wind, 0.4)]];
        [Live] => [(Dead, 0.9), (Live, 1.5)];
        [Live] => [(Dead, 0.9), (Live, 1.5)], [&[(Snow, 1.0), (Wind, 0.4)]];
        [Snow] => [(Dead, 1.25), (Snow, 1.5)];
        [Snow] => [(Dead, 1.25), (Snow, 1.5)], [&[(Live, 1.0), (Wind, 0.4)]];
        [Snow] => [(Dead, 0.9), (Snow, 1.5)];
        [Snow] => [(Dead, 0.9), (Snow, 1.5)], [&[(Live, 1.0), (Wind, 0.4)]];
        [Wind] => [(Dead, 1.25), (Wind, 1.4)];
        [Wind] => [(Dead, 1.25), (Wind, 1.4)], [&[(Live, 0.5), (Snow, 0.5)]];
        [Wind] => [(Dead, 0.9), (Wind, 1.4)];
        [Wind] => [(Dead, 0.9), (Wind, 1.4)], [&[(Live, 0.5), (Snow, 0.5)]];
        [Seismic] => [(Dead, 1.0), (Seismic, 1.0)];
        [Seismic] => [(Dead, 1.0), (Seismic, 1.0)], [&[(Live, 0.5)], &[(Snow, 0.25)]];
    },
    &NBC_2020_COMBINATIONS,
);
