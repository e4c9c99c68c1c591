//! The torque at the end of a log: what is averaged, and over which length. Which readings
//! count at all is in `spikes.rs`; what is asked of the torque is in `rules`.

use super::spikes::Reading;
use crate::quantity::{Length, Size, Torque};
use crate::source::{
    AC358_AVERAGING_3_FT, AC358_TORQUE_AVERAGING, BEARWELL_CHOICE, Reference, Sourced,
};
use crate::torque::conditions::{AVERAGING_DIAMETERS, AVERAGING_LEAST, averaging_length};
use crate::trace::Trace;

/// Readings of which the last ones are averaged by that definition.
pub static LAST_READINGS: Sourced<usize> = Sourced::new("last_readings", 3, &BEARWELL_CHOICE);

/// The two lengths that a torque is averaged over.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Windows {
    /// 3 diameters of the largest helix, m.
    pub diameters: f64,
    /// The longer of that and 3 ft, m.
    pub longer: f64,
}

impl Windows {
    /// Those of a pile with this largest helix.
    pub fn of(largest_helix: Size, trace: &mut Trace) -> Self {
        let diameters = Length::from(largest_helix) * AVERAGING_DIAMETERS.value;
        Self {
            diameters: diameters.si(),
            longer: averaging_length(largest_helix, trace).si(),
        }
    }

    /// 3 ft, m.
    pub fn three_feet() -> f64 {
        AVERAGING_LEAST.value.si()
    }
}

/// The readings of a log that count, with where the first of them begins.
#[derive(Debug, Clone, PartialEq)]
pub struct Counted {
    /// In order of depth.
    pub readings: Vec<Reading>,
    /// Depth from which the first one stands, m.
    pub start: f64,
}

/// What stands at the end of the readings over a length.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Window {
    /// Upper end, m.
    pub from: f64,
    /// Lower end: the last reading that counts, m.
    pub to: f64,
    /// Mean torque by depth, N m.
    pub mean: f64,
    /// Least reading, N m.
    pub least: f64,
    /// Greatest reading, N m.
    pub greatest: f64,
    /// Readings in it.
    pub count: usize,
}

impl Counted {
    /// Depth of the last reading, m.
    pub fn end(&self) -> Option<f64> {
        self.readings.last().map(|r| r.depth)
    }

    /// Penetration that the readings stand for, m.
    pub fn length(&self) -> f64 {
        self.end().map_or(0.0, |end| end - self.start)
    }

    /// Mean torque over a length that ends at a depth.
    ///
    /// T_m = sum (T_i l_i) / sum l_i
    ///
    /// T_i reading, N m; l_i the part of the penetration since the reading before that lies
    /// between `to - length` and `to`, m. None where the readings do not stand for the whole
    /// length, or none lies in it. Source: arithmetic. Positive.
    pub fn window(&self, to: f64, length: f64) -> Option<Window> {
        let from = to - length;
        let nearly = 1e-9 * length.max(1.0);
        if from < self.start - nearly || self.end().is_none_or(|end| to > end + nearly) {
            return None;
        }
        let mut before = self.start;
        let (mut sum, mut total) = (0.0, 0.0);
        let (mut least, mut greatest, mut count) = (f64::INFINITY, 0.0_f64, 0);
        for reading in &self.readings {
            let part = reading.depth.min(to) - before.max(from);
            before = reading.depth;
            if part <= nearly {
                continue;
            }
            sum += reading.torque * part;
            total += part;
            least = least.min(reading.torque);
            greatest = greatest.max(reading.torque);
            count += 1;
        }
        (count > 0).then(|| Window {
            from,
            to,
            mean: sum / total,
            least,
            greatest,
            count,
        })
    }

    /// The window at the end.
    pub fn last_window(&self, length: f64) -> Option<Window> {
        self.window(self.end()?, length)
    }

    /// Plain mean of the last three readings; none where there are fewer.
    pub fn last_readings(&self) -> Option<f64> {
        let from = self.readings.len().checked_sub(LAST_READINGS.value)?;
        let last = &self.readings[from..];
        let sum: f64 = last.iter().map(|r| r.torque).sum();
        Some(sum / last.len() as f64)
    }

    /// Penetration at the end over which every reading is at least `torque`, m.
    pub fn held(&self, torque: f64) -> f64 {
        let Some(end) = self.end() else {
            return 0.0;
        };
        let low = self.readings.iter().rposition(|r| r.torque < torque);
        end - low.map_or(self.start, |at| self.readings[at].depth)
    }
}

/// The lower of the means over both windows, with where it comes from.
///
/// T_eff = min(mean over max(3 ft, 3 D), mean over 3 D)
///
/// D diameter of the largest helix, m. None where the readings do not stand for the longer
/// window. Source: evaluation practice under AC358 names both lengths; the lower counts by
/// choice of this service. Positive.
pub fn lower_of_two_windows(
    counted: &Counted,
    windows: &Windows,
    trace: &mut Trace,
) -> Option<(Torque, &'static Reference)> {
    let longer = counted.last_window(windows.longer)?;
    let diameters = counted.last_window(windows.diameters)?;
    let (mean, source) = if longer.mean <= diameters.mean {
        (longer.mean, &AC358_AVERAGING_3_FT)
    } else {
        (diameters.mean, &AC358_TORQUE_AVERAGING)
    };
    let torque = trace.step(
        "T_eff",
        "min(mean over max(3 ft, 3 D), mean over 3 D)",
        Torque::from_si(mean),
        [
            ("T_longer", Torque::from_si(longer.mean).into()),
            ("T_3D", Torque::from_si(diameters.mean).into()),
        ],
        source,
    );
    Some((torque, source))
}
