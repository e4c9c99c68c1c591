//! The order in which unknowns are eliminated: as they are numbered or along the plan where that
//! keeps a narrow band, by nested dissection where many lines cross. No numbers of the matrix here.

use super::sparse::Tied;

/// A band of this many entries an unknown is left as it is numbered: that of a single line.
const NARROW: usize = 4;

/// A band of this many entries an unknown is not dissected.
const BAND: usize = 64;

/// Unknowns of a part that is dissected no further.
const LEAF: usize = 48;

/// Row of every unknown.
pub(super) fn order(unknowns: usize, groups: &[Tied]) -> Vec<usize> {
    let numbered: Vec<usize> = (0..unknowns).collect();
    if profile(unknowns, groups, &numbered) <= NARROW * unknowns {
        return numbered;
    }
    let near = Neighbours::new(unknowns, groups);
    let banded = along(unknowns, &near);
    if profile(unknowns, groups, &banded) <= BAND * unknowns {
        return banded;
    }
    let mut cut = Dissection {
        near: &near,
        part: vec![0; unknowns],
        parts: 0,
        mark: Marks::new(unknowns),
        sequence: Vec::with_capacity(unknowns),
    };
    cut.whole(&numbered);
    rows(&cut.sequence)
}

fn rows(sequence: &[usize]) -> Vec<usize> {
    let mut place = vec![0; sequence.len()];
    for (i, unknown) in sequence.iter().enumerate() {
        place[*unknown] = i;
    }
    place
}

/// Entries from the first of each row to the diagonal.
fn profile(unknowns: usize, groups: &[Tied], place: &[usize]) -> usize {
    let mut first: Vec<usize> = (0..unknowns).collect();
    for (g, n) in groups {
        let least = g[..*n].iter().map(|u| place[*u]).min().unwrap_or(0);
        for u in &g[..*n] {
            first[place[*u]] = first[place[*u]].min(least);
        }
    }
    first.iter().enumerate().map(|(row, f)| row - f + 1).sum()
}

/// Reverse Cuthill-McKee: breadth first from an end of each connected part, neighbours by
/// degree, then turned round.
fn along(unknowns: usize, near: &Neighbours) -> Vec<usize> {
    let mut seen = vec![false; unknowns];
    let mut sequence = Vec::with_capacity(unknowns);
    let mut mark = Marks::new(unknowns);
    let all = |_: usize| true;
    for seed in 0..unknowns {
        if !seen[seed] {
            let start = far_end(seed, near, &all, &mut mark);
            breadth_first(start, near, &mut seen, &mut sequence);
        }
    }
    sequence.reverse();
    rows(&sequence)
}

struct Neighbours {
    first: Vec<usize>,
    list: Vec<usize>,
}

impl Neighbours {
    fn new(unknowns: usize, groups: &[Tied]) -> Self {
        let mut first = vec![0; unknowns + 1];
        for (g, n) in groups {
            for u in &g[..*n] {
                first[u + 1] += n.saturating_sub(1);
            }
        }
        for i in 0..unknowns {
            first[i + 1] += first[i];
        }
        let mut next = first.clone();
        let mut list = vec![0; first[unknowns]];
        for (g, n) in groups {
            for u in &g[..*n] {
                for v in &g[..*n] {
                    if u != v {
                        list[next[*u]] = *v;
                        next[*u] += 1;
                    }
                }
            }
        }
        Self { first, list }
    }

    fn of(&self, u: usize) -> &[usize] {
        &self.list[self.first[u]..self.first[u + 1]]
    }
}

/// Which unknowns a sweep has reached.
struct Marks {
    mark: Vec<usize>,
    round: usize,
}

impl Marks {
    fn new(unknowns: usize) -> Self {
        Self {
            mark: vec![0; unknowns],
            round: 0,
        }
    }

    fn begin(&mut self) {
        self.round += 1;
    }

    /// Whether it is reached for the first time in this sweep.
    fn reach(&mut self, u: usize) -> bool {
        let first = self.mark[u] != self.round;
        self.mark[u] = self.round;
        first
    }
}

/// Unknowns reached from a start, level by level; the first of every level.
fn levels(
    start: usize,
    near: &Neighbours,
    within: &impl Fn(usize) -> bool,
    mark: &mut Marks,
) -> (Vec<usize>, Vec<usize>) {
    mark.begin();
    mark.reach(start);
    let (mut reached, mut begins) = (vec![start], vec![0]);
    let mut head = 0;
    while head < reached.len() {
        let end = reached.len();
        for i in head..end {
            for v in near.of(reached[i]) {
                if within(*v) && mark.reach(*v) {
                    reached.push(*v);
                }
            }
        }
        head = end;
        if reached.len() > end {
            begins.push(end);
        }
    }
    (reached, begins)
}

/// An unknown at an end of the part that holds `seed`: the last one that two sweeps reach.
fn far_end(
    seed: usize,
    near: &Neighbours,
    within: &impl Fn(usize) -> bool,
    mark: &mut Marks,
) -> usize {
    let mut start = seed;
    for _ in 0..2 {
        let (reached, _) = levels(start, near, within, mark);
        start = reached.last().copied().unwrap_or(seed);
    }
    start
}

fn breadth_first(start: usize, near: &Neighbours, seen: &mut [bool], sequence: &mut Vec<usize>) {
    let mut head = sequence.len();
    sequence.push(start);
    seen[start] = true;
    let mut level = Vec::new();
    while head < sequence.len() {
        let u = sequence[head];
        head += 1;
        level.clear();
        for v in near.of(u) {
            if !seen[*v] {
                seen[*v] = true;
                level.push(*v);
            }
        }
        level.sort_by_key(|v| (near.of(*v).len(), *v));
        sequence.extend_from_slice(&level);
    }
}

/// Nested dissection: a level of a sweep from one end to the other parts what is left in
/// two; the two come first, then the level.
struct Dissection<'a> {
    near: &'a Neighbours,
    /// The part an unknown is in now.
    part: Vec<usize>,
    parts: usize,
    mark: Marks,
    sequence: Vec<usize>,
}

impl Dissection<'_> {
    /// Orders the unknowns of a part, piece by connected piece.
    fn whole(&mut self, members: &[usize]) {
        let own = self.claim(members);
        for seed in members {
            // every piece is claimed away from `own`
            if self.part[*seed] == own {
                let (near, part) = (self.near, &self.part);
                let within = |u: usize| part[u] == own;
                let start = far_end(*seed, near, &within, &mut self.mark);
                let (reached, begins) = levels(start, near, &within, &mut self.mark);
                self.piece(&reached, &begins);
            }
        }
    }

    fn claim(&mut self, members: &[usize]) -> usize {
        self.parts += 1;
        for u in members {
            self.part[*u] = self.parts;
        }
        self.parts
    }

    fn piece(&mut self, reached: &[usize], begins: &[usize]) {
        let Some((from, to)) = middle(reached, begins).filter(|_| reached.len() > LEAF) else {
            self.claim(reached);
            self.sequence.extend(reached.iter().rev());
            return;
        };
        let beyond = self.claim(&reached[to..]);
        // of the level only what touches the far side keeps the two apart
        let touches = |u: usize| self.near.of(u).iter().any(|v| self.part[*v] == beyond);
        let (level, nearer): (Vec<usize>, Vec<usize>) =
            reached[from..to].iter().partition(|u| touches(**u));
        let mut before = reached[..from].to_vec();
        before.extend(nearer);
        self.claim(&level);
        self.whole(&before);
        self.whole(&reached[to..]);
        self.sequence.extend(level);
    }
}

/// Where the shortest level lies that leaves a third or more on either side.
fn middle(reached: &[usize], begins: &[usize]) -> Option<(usize, usize)> {
    let n = reached.len();
    let mut best: Option<(usize, usize)> = None;
    for (i, from) in begins.iter().enumerate().skip(1) {
        let to = begins.get(i + 1).copied().unwrap_or(n);
        let fits = *from >= n / 3 && n - to >= n / 3;
        if fits && best.is_none_or(|b| to - from < b.1 - b.0) {
            best = Some((*from, to));
        }
    }
    best
}

#[cfg(test)]
mod tests {
    use super::super::sparse::{Factor, Sparse};
    use super::*;

    fn pair(a: usize, b: usize) -> Tied {
        ([a, b, 0, 0, 0, 0], 2)
    }

    #[test]
    fn a_chain_listed_at_random_gets_a_band_of_one() {
        let chain = [4usize, 0, 5, 2, 1, 3];
        let groups: Vec<Tied> = chain.windows(2).map(|p| pair(p[0], p[1])).collect();
        let place = along(6, &Neighbours::new(6, &groups));
        for (g, _) in &groups {
            assert_eq!(place[g[0]].abs_diff(place[g[1]]), 1);
        }
    }

    /// A mesh of 100 by 100: every unknown has its row, and the factor has less than a
    /// quarter of the entries of the band, which is 100 an unknown.
    #[test]
    fn a_mesh_is_dissected() {
        let k = 100;
        let mut groups = Vec::new();
        for i in 0..k * k {
            if (i + 1) % k != 0 {
                groups.push(pair(i, i + 1));
            }
            if i + k < k * k {
                groups.push(pair(i, i + k));
            }
        }
        let place = order(k * k, &groups);
        let mut sorted = place.clone();
        sorted.sort_unstable();
        assert!(sorted.iter().enumerate().all(|(i, p)| i == *p));
        let mut matrix = Sparse::new(&groups, &place);
        for (g, _) in &groups {
            matrix.add(place[g[0]], place[g[1]], -1.0);
        }
        for i in 0..k * k {
            matrix.add(i, i, 5.0);
        }
        let entries = Factor::of(&matrix).unwrap().entries();
        assert!(entries < k * k * 25, "{entries}");
    }
}
