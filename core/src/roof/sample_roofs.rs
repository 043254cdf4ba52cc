//! Whole roofs of every common kind, as the files of the examples hold them, with what a look at each says that it has.
#![cfg(feature = "serde")]

use super::LineKind::{self, CurbBack, CurbFront, CurbSide, Eave, Headwall, HighEdge, Hip, Rake, Ridge, ShallowToSteep, Sidewall, SteepToShallow, Valley};
use super::{Roof, RoofInput};
use crate::record::Calculation;

pub(crate) struct Sample {
    pub(crate) name: &'static str,
    json: &'static str,
    /// How many lines of each kind it has, counted by hand on a sketch of it.
    pub(crate) lines: &'static [(LineKind, usize)],
}

impl Sample {
    pub(crate) fn input(&self) -> RoofInput {
        RoofInput::from_json(self.json.as_bytes()).unwrap()
    }

    pub(crate) fn roof(&self) -> Roof {
        self.input().compute().unwrap()
    }
}

macro_rules! samples {
    ($($name:literal: $($kind:ident $count:literal),+;)+) => {
        pub(crate) const SAMPLES: &[Sample] = &[$(Sample {
            name: $name,
            json: include_str!(concat!("../../examples/roofs/", $name, ".json")),
            lines: &[$(($kind, $count)),+],
        }),+];
    };
}

samples! {
    "gable": Ridge 1, Eave 2, Rake 4;
    "hip": Ridge 1, Hip 4, Eave 4;
    "half-hip": Ridge 1, Hip 4, Eave 4, Rake 4;
    "gambrel": Ridge 1, ShallowToSteep 2, Eave 2, Rake 8;
    "mansard": Ridge 1, Hip 8, ShallowToSteep 4, Eave 4;
    "saltbox": Ridge 1, SteepToShallow 1, Eave 2, Rake 6;
    "pyramid": Hip 4, Eave 4;
    "dutch-gable": Ridge 1, Hip 4, Eave 4, Rake 4, Headwall 2;
    "l-plan": Ridge 2, Hip 1, Valley 1, Eave 4, Rake 4;
    "t-plan": Ridge 2, Hip 4, Valley 2, Eave 7, Rake 2;
    "u-plan": Ridge 3, Hip 2, Valley 2, Eave 6, Rake 4;
    "h-plan": Ridge 3, Valley 4, Eave 8, Rake 8;
    "crossed-gables": Ridge 4, Valley 4, Eave 8, Rake 8;
    "courtyard": Ridge 4, Hip 4, Valley 4, Eave 8;
    "gable-dormers": Ridge 3, Valley 4, Eave 6, Rake 8, CurbFront 2, CurbSide 4;
    "shed-dormer": Ridge 1, SteepToShallow 1, Eave 3, Rake 6, CurbFront 1, CurbSide 2;
    "tower-cone": Hip 8, Eave 8;
    "bay-window": Hip 4, Eave 5, Sidewall 2;
    "mono-slopes": Eave 2, Rake 4, HighEdge 1, Headwall 1;
    "butterfly": Valley 1, Rake 4, HighEdge 2;
    "unequal-hip": Ridge 1, Hip 4, Eave 4;
    "skewed-walls": Ridge 1, Hip 4, Eave 4;
    "skewed-end": Ridge 1, Eave 3, Rake 2, HighEdge 1;
    "stepped-gable": Ridge 2, Eave 4, Rake 6, Sidewall 2;
    "lean-tos": Ridge 1, SteepToShallow 1, Eave 6, Rake 10, Headwall 2;
    "curbs": Ridge 1, Eave 2, Rake 4, CurbFront 4, CurbSide 8, CurbBack 4;
    "chimney-cricket": Ridge 2, Valley 2, Eave 2, Rake 4, Sidewall 2, CurbFront 1, CurbSide 2;
}

#[test]
fn every_roof_has_the_lines_that_a_sketch_of_it_has() {
    for sample in SAMPLES {
        let roof = sample.roof();
        for kind in LineKind::ALL {
            let expected = sample.lines.iter().find(|(k, _)| k == kind).map_or(0, |(_, n)| *n);
            assert_eq!(roof.lines_of(*kind).count(), expected, "{kind} of {}", sample.name);
        }
        // Of all of them only the level valley of the butterfly calls for a word.
        let said: Vec<&str> = roof.cautions().iter().map(|c| c.code().name).collect();
        assert_eq!(said, if sample.name == "butterfly" { vec!["level-valley"] } else { vec![] }, "{}", sample.name);
    }
}
