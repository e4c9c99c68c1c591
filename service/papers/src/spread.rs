//! Moves texts that stand at depths apart along one line, so that none covers another and
//! each stays as near to its depth as the others let it.

/// Upper edges of items of the given heights between `from` and `to`, in the order given,
/// the sum of their squared distances to the wanted edges least; none where they do not fit.
pub fn spread(wanted: &[f64], heights: &[f64], from: f64, to: f64) -> Option<Vec<f64>> {
    let total: f64 = heights.iter().sum();
    if total > to - from + 1e-9 {
        return None;
    }
    // less what stands above, the edges only must not fall: pool those that do
    let mut above = 0.0;
    let mut pools: Vec<(f64, usize)> = Vec::new();
    for (want, height) in wanted.iter().zip(heights) {
        pools.push((want - above, 1));
        above += height;
        while let [.., (a, n), (b, m)] = pools[..] {
            if a <= b {
                break;
            }
            let both = n + m;
            let mean = (a * n as f64 + b * m as f64) / both as f64;
            pools.truncate(pools.len() - 2);
            pools.push((mean, both));
        }
    }
    let edges = pools
        .iter()
        .flat_map(|(edge, n)| std::iter::repeat_n(*edge, *n));
    let mut above = 0.0;
    let placed = edges.zip(heights).map(|(edge, height)| {
        let y = edge.clamp(from, (to - total).max(from)) + above;
        above += height;
        y
    });
    Some(placed.collect())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_has_room_stays_where_it_is() {
        let at = spread(&[10.0, 20.0, 31.0], &[5.0, 5.0, 5.0], 0.0, 60.0);
        assert_eq!(at, Some(vec![10.0, 20.0, 31.0]));
    }

    #[test]
    fn what_collides_moves_apart_evenly_and_stays_inside() {
        let at = spread(&[10.0, 10.0, 10.0], &[4.0, 4.0, 4.0], 0.0, 60.0);
        assert_eq!(at, Some(vec![6.0, 10.0, 14.0]));
        let at = spread(&[0.0, 1.0, 58.0], &[4.0, 4.0, 4.0], 2.0, 60.0);
        assert_eq!(at, Some(vec![2.0, 6.0, 56.0]));
        let at = spread(&[59.0, 59.5], &[4.0, 4.0], 2.0, 60.0);
        assert_eq!(at, Some(vec![52.0, 56.0]));
    }

    #[test]
    fn no_room_is_told() {
        assert_eq!(spread(&[1.0, 2.0], &[4.0, 4.0], 0.0, 7.9), None);
        assert_eq!(spread(&[], &[], 0.0, 0.0), Some(Vec::new()));
    }
}
