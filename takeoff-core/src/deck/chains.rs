//! Things linked two by two, gathered into chains.

/// Chains of linked things (a forest with path halving).
pub(super) struct Chains {
    parent: Vec<usize>,
}

impl Chains {
    /// So many things, none of them linked.
    pub(super) fn of(things: usize) -> Chains {
        Chains { parent: (0..things).collect() }
    }

    /// Links two things, and with them their chains. The first thing of a chain stands for it.
    pub(super) fn link(&mut self, a: usize, b: usize) {
        let (a, b) = (self.first_of(a), self.first_of(b));
        self.parent[a.max(b)] = a.min(b);
    }

    /// The chains, each in ascending order, in the order of their first members.
    pub(super) fn members(mut self) -> Vec<Vec<usize>> {
        let mut chains: Vec<Vec<usize>> = Vec::new();
        let mut place = vec![0; self.parent.len()];
        for thing in 0..self.parent.len() {
            let first = self.first_of(thing);
            if first == thing {
                place[thing] = chains.len();
                chains.push(Vec::new());
            }
            chains[place[first]].push(thing);
        }
        chains
    }

    fn first_of(&mut self, mut thing: usize) -> usize {
        while self.parent[thing] != thing {
            self.parent[thing] = self.parent[self.parent[thing]];
            thing = self.parent[thing];
        }
        thing
    }
}
