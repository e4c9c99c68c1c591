//! Where piles are on the lines of a network.

use crate::beam::Network;

/// The places of piles, pile by pile: (line, node on it), lines in ascending order.
pub(super) struct Touching {
    /// Where the places of each pile begin; at last where they end.
    first: Vec<usize>,
    places: Vec<(usize, usize)>,
}

impl Touching {
    /// Of the first nodes of a network, which are its piles.
    pub fn of(network: &Network, piles: usize) -> Self {
        let mut first = vec![0; piles + 1];
        for node in network.lines.iter().flat_map(|line| &line.nodes) {
            if let Some(count) = first.get_mut(node.node + 1) {
                *count += 1;
            }
        }
        for p in 0..piles {
            first[p + 1] += first[p];
        }
        let mut places = vec![(0, 0); first[piles]];
        let mut next = first.clone();
        for (l, line) in network.lines.iter().enumerate() {
            for (i, node) in line.nodes.iter().enumerate() {
                if node.node < piles {
                    places[next[node.node]] = (l, i);
                    next[node.node] += 1;
                }
            }
        }
        Self { first, places }
    }

    /// The places of one.
    pub fn pile(&self, pile: usize) -> &[(usize, usize)] {
        &self.places[self.first[pile]..self.first[pile + 1]]
    }
}
