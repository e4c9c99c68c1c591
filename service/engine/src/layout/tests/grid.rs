//! A separate program for small plans on a grid: its own places, its own dense frame of
//! beams, and every choice of piles. Shares nothing with the search but the request.

use std::collections::BTreeSet;

/// A point in half metres.
pub(super) type At = (i64, i64);

/// A beam from west to east or from south to north; loads in kN/m, a column in kN.
#[derive(Debug, Clone)]
pub(super) struct Beam {
    pub from: At,
    pub to: At,
    pub dead: f64,
    pub up: f64,
    pub column: Option<(i64, f64)>,
}

/// A plan with its limits; distances in half metres, forces in kN.
#[derive(Debug, Clone)]
pub(super) struct Grid {
    pub beams: Vec<Beam>,
    pub min: i64,
    pub max: i64,
    pub overhang: Option<i64>,
    pub where_needed: bool,
    /// Points where no pile may stand.
    pub blocked: Vec<At>,
    pub compression: f64,
    pub tension: f64,
    /// Stiffness of a pile, kN/m.
    pub stiffness: Option<f64>,
}

/// Flexural rigidity of all beams, kN m2.
pub(super) const RIGIDITY: f64 = 20_000.0;

impl Beam {
    pub fn length(&self) -> i64 {
        (self.to.0 - self.from.0) + (self.to.1 - self.from.1)
    }

    pub fn point(&self, s: i64) -> At {
        if self.from.1 == self.to.1 {
            (self.from.0 + s, self.from.1)
        } else {
            (self.from.0, self.from.1 + s)
        }
    }

    fn place(&self, p: At) -> Option<i64> {
        (0..=self.length()).find(|s| self.point(*s) == p)
    }
}

/// A choice of places on one beam.
#[derive(Debug, Clone)]
struct Stand {
    at: BTreeSet<At>,
}

impl Grid {
    fn meetings(&self) -> Vec<At> {
        let mut out = BTreeSet::new();
        for (i, a) in self.beams.iter().enumerate() {
            for b in &self.beams[i + 1..] {
                out.extend(
                    (0..=a.length())
                        .map(|s| a.point(s))
                        .filter(|p| b.place(*p).is_some()),
                );
            }
        }
        out.into_iter().collect()
    }

    /// Whether another beam than number `b` goes on beyond a point.
    fn goes_on(&self, b: usize, p: At) -> bool {
        self.beams
            .iter()
            .enumerate()
            .any(|(i, other)| i != b && other.place(p).is_some_and(|s| s > 0 && s < other.length()))
    }

    /// How far the first pile may be from an end; none where the end must have one.
    fn reach(&self, b: usize, end: At, bare: &BTreeSet<At>) -> i64 {
        if !bare.contains(&end) {
            let meets = self.meetings().contains(&end);
            return if meets { 0 } else { self.overhang.unwrap_or(0) };
        }
        if self.goes_on(b, end) {
            self.max
        } else {
            self.overhang.unwrap_or(-1)
        }
    }

    /// Every choice of places on a beam that keeps its spacing.
    fn stands(&self, b: usize, standing: &BTreeSet<At>, bare: &BTreeSet<At>) -> Vec<Stand> {
        let beam = &self.beams[b];
        let n = beam.length();
        let (first, last) = (self.reach(b, beam.from, bare), self.reach(b, beam.to, bare));
        let mut out = Vec::new();
        let rests = |p: At| bare.contains(&p) && self.goes_on(b, p);
        if rests(beam.from) && rests(beam.to) && n <= self.max {
            let own: Vec<At> = (1..n).map(|s| beam.point(s)).collect();
            if own.iter().all(|p| !standing.contains(p)) {
                out.push(Stand {
                    at: BTreeSet::new(),
                });
            }
        }
        let free = |s: i64| {
            let p = beam.point(s);
            !bare.contains(&p) && !self.blocked.contains(&p)
        };
        // depth first over the places
        let mut open: Vec<Vec<i64>> = (0..=first.min(n))
            .filter(|s| free(*s))
            .map(|s| vec![s])
            .collect();
        while let Some(way) = open.pop() {
            let here = way[way.len() - 1];
            if n - here <= last {
                let at: BTreeSet<At> = way.iter().map(|s| beam.point(*s)).collect();
                let must = (0..=n)
                    .map(|s| beam.point(s))
                    .filter(|p| standing.contains(p));
                if must.clone().all(|p| at.contains(&p)) {
                    out.push(Stand { at });
                }
            }
            for gap in self.min..=self.max {
                if here + gap <= n && free(here + gap) {
                    let mut longer = way.clone();
                    longer.push(here + gap);
                    open.push(longer);
                }
            }
        }
        out
    }

    /// Whether some layout with fewer than `below` piles keeps all limits; the fewest of
    /// them.
    pub fn fewest(&self, below: usize) -> Option<usize> {
        let meetings = self.meetings();
        let blocked: BTreeSet<At> = self.blocked.iter().copied().collect();
        let open: Vec<At> = meetings
            .iter()
            .filter(|m| self.where_needed && !blocked.contains(m))
            .copied()
            .collect();
        let mut best = None;
        for ways in 0..1usize << open.len() {
            let mut bare: BTreeSet<At> = meetings
                .iter()
                .filter(|m| blocked.contains(m))
                .copied()
                .collect();
            bare.extend(
                open.iter()
                    .enumerate()
                    .filter(|(i, _)| ways >> i & 1 == 1)
                    .map(|o| *o.1),
            );
            let standing: BTreeSet<At> = meetings
                .iter()
                .filter(|m| !bare.contains(m))
                .copied()
                .collect();
            let lists: Vec<Vec<Stand>> = (0..self.beams.len())
                .map(|b| self.stands(b, &standing, &bare))
                .collect();
            self.choose(&lists, 0, standing, &mut best, below);
        }
        best
    }

    fn choose(
        &self,
        lists: &[Vec<Stand>],
        beam: usize,
        so_far: BTreeSet<At>,
        best: &mut Option<usize>,
        below: usize,
    ) {
        if so_far.len() >= best.unwrap_or(below) {
            return;
        }
        if beam == lists.len() {
            if self.apart(&so_far) && self.holds(&so_far) {
                *best = Some(so_far.len());
            }
            return;
        }
        for stand in &lists[beam] {
            let all: BTreeSet<At> = so_far.union(&stand.at).copied().collect();
            self.choose(lists, beam + 1, all, best, below);
        }
    }

    fn apart(&self, piles: &BTreeSet<At>) -> bool {
        let list: Vec<&At> = piles.iter().collect();
        list.iter().enumerate().all(|(i, a)| {
            list[i + 1..].iter().all(|b| {
                let (x, y) = (a.0 - b.0, a.1 - b.1);
                x * x + y * y >= self.min * self.min
            })
        })
    }

    fn holds(&self, piles: &BTreeSet<At>) -> bool {
        let within = |r: &f64| *r <= self.compression * (1.0 + 2e-9) && -*r <= self.tension + 1e-9;
        [(1.0, 0.0), (0.6, 0.6)].iter().all(|c| {
            let models = [None, self.stiffness];
            let count = 1 + usize::from(self.stiffness.is_some());
            models[..count].iter().all(|k| {
                self.reactions(piles, *k, *c)
                    .is_some_and(|all| all.iter().all(within))
            })
        })
    }

    /// Reactions of the piles in their order; none where the beams can move.
    fn reactions(
        &self,
        piles: &BTreeSet<At>,
        spring: Option<f64>,
        c: (f64, f64),
    ) -> Option<Vec<f64>> {
        let mut stations: Vec<Vec<i64>> = Vec::new();
        let mut points: BTreeSet<At> = BTreeSet::new();
        let meetings = self.meetings();
        for beam in &self.beams {
            let own = (0..=beam.length()).filter(|s| {
                let p = beam.point(*s);
                *s == 0
                    || *s == beam.length()
                    || piles.contains(&p)
                    || meetings.contains(&p)
                    || beam.column.is_some_and(|l| l.0 == *s)
            });
            let own: Vec<i64> = own.collect();
            points.extend(own.iter().map(|s| beam.point(*s)));
            stations.push(own);
        }
        let points: Vec<At> = points.into_iter().collect();
        let mut turns = points.len();
        let size = points.len() + stations.iter().map(Vec::len).sum::<usize>();
        let mut k = vec![vec![0.0; size]; size];
        let mut f = vec![0.0; size];
        let sink = |p: At| points.iter().position(|q| *q == p).unwrap();
        for (beam, own) in self.beams.iter().zip(&stations) {
            let q = c.0 * beam.dead - c.1 * beam.up;
            for (i, pair) in own.windows(2).enumerate() {
                let l = (pair[1] - pair[0]) as f64 * 0.5;
                let d = [
                    sink(beam.point(pair[0])),
                    turns + i,
                    sink(beam.point(pair[1])),
                    turns + i + 1,
                ];
                let e = RIGIDITY / (l * l * l);
                let m = [
                    [12.0, 6.0 * l, -12.0, 6.0 * l],
                    [6.0 * l, 4.0 * l * l, -6.0 * l, 2.0 * l * l],
                    [-12.0, -6.0 * l, 12.0, -6.0 * l],
                    [6.0 * l, 2.0 * l * l, -6.0 * l, 4.0 * l * l],
                ];
                let w = [
                    q * l / 2.0,
                    q * l * l / 12.0,
                    q * l / 2.0,
                    -q * l * l / 12.0,
                ];
                for a in 0..4 {
                    f[d[a]] += w[a];
                    for b in 0..4 {
                        k[d[a]][d[b]] += e * m[a][b];
                    }
                }
            }
            if let Some((s, p)) = beam.column {
                f[sink(beam.point(s))] += c.0 * p;
            }
            turns += own.len();
        }
        let (all, loads) = (k.clone(), f.clone());
        let held: Vec<usize> = piles.iter().map(|p| sink(*p)).collect();
        for h in &held {
            match spring {
                Some(s) => k[*h][*h] += s,
                None => {
                    k[*h].fill(0.0);
                    k.iter_mut().for_each(|row| row[*h] = 0.0);
                    k[*h][*h] = RIGIDITY;
                    f[*h] = 0.0;
                }
            }
        }
        let u = eliminate(k, f)?;
        let reaction = |h: &usize| match spring {
            Some(s) => s * u[*h],
            None => loads[*h] - all[*h].iter().zip(&u).map(|(a, b)| a * b).sum::<f64>(),
        };
        Some(held.iter().map(reaction).collect())
    }
}

/// Gauss with the greatest pivot of each column.
fn eliminate(mut a: Vec<Vec<f64>>, mut b: Vec<f64>) -> Option<Vec<f64>> {
    let n = b.len();
    for i in 0..n {
        let p = (i..n).max_by(|x, y| a[*x][i].abs().total_cmp(&a[*y][i].abs()))?;
        if a[p][i].abs() < 1e-7 * RIGIDITY {
            return None;
        }
        a.swap(i, p);
        b.swap(i, p);
        let (top, rest) = a.split_at_mut(i + 1);
        let pivot = &top[i];
        for (j, row) in rest.iter_mut().enumerate() {
            let t = row[i] / pivot[i];
            if t != 0.0 {
                for (v, w) in row[i..].iter_mut().zip(&pivot[i..]) {
                    *v -= t * w;
                }
                b[i + 1 + j] -= t * b[i];
            }
        }
    }
    for i in (0..n).rev() {
        let s: f64 = (i + 1..n).map(|j| a[i][j] * b[j]).sum();
        b[i] = (b[i] - s) / a[i][i];
    }
    Some(b)
}
