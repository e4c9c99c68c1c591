//! A layout that is its own mirror image, of the same count and within all limits, where
//! the caller wishes one. The plan's own symmetry is found in `mirror`.

use super::Task;
use super::enumerate::{Best, Budget};
use super::mirror::{Image, Mirror, over};
use super::stack::{Line, Stack};
use super::whole::{Whole, places, rate};
use crate::contract::{Refusal, Work};
use crate::layout::outcome::{SymmetryReason, SymmetryReport};
use crate::layout::request::SymmetryWish;

/// Counted steps for a symmetric layout; part of the method's version.
pub(super) const SYMMETRY_WORK: u64 = 2_000_000;

/// Makes the layout symmetric where that can be, and tells.
pub(super) fn symmetric(
    task: &Task<'_>,
    wish: &SymmetryWish,
    lines: &[Line],
    whole: &mut Whole,
    budget: &mut Budget,
    work: &Work,
) -> Result<SymmetryReport, Refusal> {
    let mirror = Mirror::of(task, wish);
    let tell = |symmetric: bool, reason: SymmetryReason, detail: &str| SymmetryReport {
        symmetric,
        reason,
        detail: detail.to_owned(),
        through: mirror.shown(task),
    };
    if !whole.keeps() {
        let detail = "no layout that keeps the limits was found";
        return Ok(tell(false, SymmetryReason::Infeasible, detail));
    }
    let images = match mirror.images(task, lines) {
        Ok(images) => images,
        Err(why) => return Ok(tell(false, SymmetryReason::PlanNotSymmetric, &why)),
    };
    let maps: Vec<Vec<Option<usize>>> = images
        .iter()
        .zip(lines)
        .map(|(image, line)| over(line, &lines[image.run], image.reversed))
        .collect();
    if (0..lines.len()).all(|r| {
        image_of(&whole.chosen[r], &maps[r], images[r])
            .is_some_and(|c| c == whole.chosen[images[r].run])
    }) {
        let detail = "the best layout is symmetric";
        return Ok(tell(true, SymmetryReason::AsFound, detail));
    }
    let mut half = Half {
        task,
        lines,
        images: &images,
        maps: &maps,
        whole,
        all: true,
        budget,
        work,
    };
    let found = half.found()?;
    let all = half.all && lines.len() == 1 && !task.springs();
    match found {
        Some(found) => {
            *whole = found;
            let detail = "a symmetric layout of the same count was taken instead of the one with the lowest utilisation";
            Ok(tell(true, SymmetryReason::Preferred, detail))
        }
        None if all => {
            let detail = "every symmetric layout of this count breaks a limit, or its places are no whole staking increments";
            Ok(tell(false, SymmetryReason::NoneKeepsTheLimits, detail))
        }
        None => {
            let detail = "no symmetric layout of this count that keeps the limits was found";
            Ok(tell(false, SymmetryReason::NoneFound, detail))
        }
    }
}

/// The mirror image of a choice of places; none where a pile may not stand there.
fn image_of(chosen: &[usize], map: &[Option<usize>], image: Image) -> Option<Vec<usize>> {
    let mut out: Option<Vec<usize>> = chosen.iter().map(|i| map[*i]).collect();
    if image.reversed
        && let Some(out) = &mut out
    {
        out.reverse();
    }
    out
}

/// Puts symmetric layouts together.
struct Half<'a> {
    task: &'a Task<'a>,
    lines: &'a [Line],
    images: &'a [Image],
    maps: &'a [Vec<Option<usize>>],
    whole: &'a Whole,
    /// Every symmetric layout of the runs that are their own image was tried.
    all: bool,
    budget: &'a mut Budget,
    work: &'a Work,
}

impl Half<'_> {
    /// The best of a few: one side's layouts for both, then the other's.
    fn found(&mut self) -> Result<Option<Whole>, Refusal> {
        let count = places(self.task.frame, self.lines, &self.whole.chosen).len();
        let mut best: Option<Whole> = None;
        for other_side in [false, true] {
            self.work.go_on()?;
            let Some(mut whole) = self.put(other_side)? else {
                continue;
            };
            if places(self.task.frame, self.lines, &whole.chosen).len() != count {
                continue;
            }
            rate(self.task, self.lines, &mut whole, self.budget, self.work)?;
            if whole.keeps() && best.as_ref().is_none_or(|b| whole.worst < b.worst) {
                best = Some(whole);
            }
        }
        Ok(best)
    }

    fn put(&mut self, other_side: bool) -> Result<Option<Whole>, Refusal> {
        let mut whole = self.whole.clone();
        for r in 0..self.lines.len() {
            let image = self.images[r];
            if image.run == r {
                if !image.reversed {
                    continue;
                }
                match self.own(r)? {
                    Some(chosen) => whole.chosen[r] = chosen,
                    None => return Ok(None),
                }
            } else if (image.run > r) != other_side {
                let chosen = image_of(&self.whole.chosen[r], &self.maps[r], image);
                match chosen {
                    Some(chosen) => whole.chosen[image.run] = chosen,
                    None => return Ok(None),
                }
            }
        }
        Ok(Some(whole))
    }

    /// The best symmetric layout of a run that is its own image.
    fn own(&mut self, r: usize) -> Result<Option<Vec<usize>>, Refusal> {
        let line = &self.lines[r];
        let count = self.whole.chosen[r].len();
        let map = &self.maps[r];
        if count == 0 {
            return Ok(Some(Vec::new()));
        }
        let mut stack = Stack::new(count, line.loads.count);
        let mut best: Option<Best> = None;
        let mut open: Vec<Vec<usize>> = (0..line.places.first)
            .rev()
            .filter(|i| map[*i].is_some())
            .map(|i| vec![i])
            .collect();
        let mut ticks = 0u32;
        while let Some(way) = open.pop() {
            ticks += 1;
            if ticks.is_multiple_of(1024) {
                self.work.go_on()?;
            }
            if !self.budget.take(line.loads.count as u64) {
                self.all = false;
                break;
            }
            let here = way[way.len() - 1];
            if way.len() == count.div_ceil(2) {
                if let Some(chosen) = closed(line, map, &way, count) {
                    let rated = super::start::rated(line, chosen, &mut stack, self.budget);
                    if best.as_ref().is_none_or(|b| rated.beats(b)) {
                        best = Some(rated);
                    }
                }
                continue;
            }
            let (from, to) = line.places.next[here];
            for j in (from..to).rev() {
                if map[j].is_some_and(|m| m >= j) {
                    let mut longer = way.clone();
                    longer.push(j);
                    open.push(longer);
                }
            }
        }
        Ok(best.map(|b| b.chosen))
    }
}

/// A left half with its image, where the spacing allows it.
fn closed(line: &Line, map: &[Option<usize>], way: &[usize], count: usize) -> Option<Vec<usize>> {
    let last = *way.last()?;
    let odd = count % 2 == 1;
    if odd && map[last] != Some(last) {
        return None;
    }
    let mut chosen = way.to_vec();
    for i in way.iter().rev().skip(usize::from(odd)) {
        chosen.push(map[*i]?);
    }
    super::bare::valid(&line.places, &chosen).then_some(chosen)
}
