//! The ultimate loads a code takes the least of.

use super::basis::HelixBasis;
use super::outcome::{UltimateItem, UltimateKind};
use crate::quantity::Force;
use crate::source::IBC_1810_3_3_1_9;
use crate::trace::Trace;

/// The ultimate loads the code takes the least of, with the least marked.
pub(crate) fn ultimates(soil: Force, basis: Option<&HelixBasis>) -> Vec<UltimateItem> {
    let sent = match basis {
        Some(HelixBasis::AllowableStress(a)) => a.other_ultimates.unwrap_or_default(),
        _ => Default::default(),
    };
    let mut items: Vec<_> = [
        (UltimateKind::SoilBearing, Some(soil)),
        (UltimateKind::TorqueCorrelation, sent.torque_correlation),
        (UltimateKind::LoadTest, sent.load_test),
        (UltimateKind::Shaft, sent.shaft),
        (UltimateKind::Couplings, sent.couplings),
        (UltimateKind::HelixPlates, sent.helix_plates),
    ]
    .into_iter()
    .map(|(item, ultimate)| UltimateItem {
        item,
        considered: ultimate.is_some(),
        ultimate,
        governing: false,
    })
    .collect();
    let mut least: Option<(usize, Force)> = None;
    for (i, item) in items.iter().enumerate() {
        if let Some(u) = item.ultimate
            && least.is_none_or(|(_, l)| u < l)
        {
            least = Some((i, u));
        }
    }
    if let Some((i, _)) = least {
        items[i].governing = true;
    }
    items
}

/// The least ultimate load.
///
/// P_u = least of the items considered (N); an item that was not sent is absent, neither nil
/// nor unlimited. `others` are the number and the least of the items beside the soil.
/// Range: at least one item. Source: IBC 1810.3.3.1.9. Sign: compression.
pub(crate) fn least_ultimate(
    soil: Force,
    others: Option<(usize, Force)>,
    trace: &mut Trace,
) -> Force {
    let (count, least) = others.map_or((0, soil), |(n, other)| (n, soil.min(other)));
    trace.step(
        "P_u",
        "least of the ultimate loads considered",
        least,
        [("n", ((count + 1) as f64).into())],
        &IBC_1810_3_3_1_9,
    )
}
