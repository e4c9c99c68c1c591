//! Every choice of places on one run with a given number of piles that keeps the spacing,
//! for plans that are small enough to be tried as a whole. Knows nothing of loads.

use super::enumerate::Budget;
use super::places::Places;
use crate::contract::{Refusal, Work};

/// Choices that are kept at most.
const LIST_MAX: usize = 20_000;

/// All choices of `count` places, in order of position; none where there are too many or
/// the work limit came first.
pub(super) fn choices(
    places: &Places,
    count: usize,
    budget: &mut Budget,
    work: &Work,
) -> Result<Option<Vec<Vec<usize>>>, Refusal> {
    let mut out = Vec::new();
    if count == 0 {
        return Ok(Some(out));
    }
    let mut chosen: Vec<usize> = Vec::with_capacity(count);
    let mut cursor = vec![(0usize, places.first)];
    let mut ticks = 0u32;
    while let Some((next, end)) = cursor.last_mut() {
        if *next >= *end {
            cursor.pop();
            chosen.pop();
            continue;
        }
        let place = *next;
        *next += 1;
        let left = (count - chosen.len()) as u32;
        let fits =
            places.reaches(place) && places.fewest[place] <= left && places.most[place] >= left;
        if !fits {
            continue;
        }
        if !budget.take(1) {
            return Ok(None);
        }
        ticks += 1;
        if ticks.is_multiple_of(4096) {
            work.go_on()?;
        }
        chosen.push(place);
        if left == 1 {
            if place >= places.last {
                if out.len() == LIST_MAX {
                    return Ok(None);
                }
                out.push(chosen.clone());
            }
            chosen.pop();
        } else {
            cursor.push(places.next[place]);
        }
    }
    Ok(Some(out))
}
