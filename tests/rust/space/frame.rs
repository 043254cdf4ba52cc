//! The frame of a line in space: its direction, the two planes beside it, and the section square to it.

use super::read::length;
use super::vector::{UP, V3};
use serde_json::Value;

/// The layers on a deck, in millimetres.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Layers {
    pub(crate) built_up: f64,
    pub(crate) underlayment: f64,
    pub(crate) stand_off: f64,
    pub(crate) pan: f64,
    pub(crate) seam: f64,
    pub(crate) closure: f64,
    pub(crate) tape: f64,
}

impl Layers {
    pub(crate) fn read(json: &Value) -> Layers {
        let of = |name: &str| super::read::length_or(&json[name], 0.0);
        Layers {
            built_up: of("built_up"),
            underlayment: of("underlayment"),
            stand_off: of("stand_off"),
            pan: of("pan"),
            seam: of("seam_height"),
            closure: of("closure_metal"),
            tape: of("tape"),
        }
    }

    /// Upper face of the underlayment above the deck.
    pub(crate) fn bed(&self) -> f64 {
        self.built_up + self.underlayment
    }

    /// Upper face of the pan above the deck.
    pub(crate) fn pan_face(&self) -> f64 {
        self.bed() + self.stand_off + self.pan
    }

    /// Underside of a trim on the seam tops above the deck.
    pub(crate) fn top(&self) -> f64 {
        self.pan_face() + self.seam + self.closure + self.tape
    }
}

/// What lies on one side of the line: a deck, or the face of a wall or a fascia. Distances along it are `sign` times those along `way`.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Side {
    pub(crate) normal: V3,
    /// In it, square to the line, from the line onto it.
    pub(crate) way: V3,
    pub(crate) sign: f64,
    pub(crate) layers: Option<Layers>,
}

#[derive(Debug, Clone)]
pub(crate) struct Frame {
    pub(crate) origin: V3,
    pub(crate) x: V3,
    pub(crate) z: V3,
    pub(crate) first: Side,
    pub(crate) second: Option<Side>,
}

impl Frame {
    /// From the line's direction and its first side: x is level, away from that side, z upright to both.
    pub(crate) fn new(origin: V3, along: V3, first: Side, second: Option<Side>) -> Frame {
        let level = along.cross(UP).unit();
        let x = if level.dot(first.way) < 0.0 { level } else { -level };
        let z = along.cross(x).unit();
        Frame { origin, x, z: if z.z < 0.0 { -z } else { z }, first, second }
    }

    pub(crate) fn at(&self, p: &Value) -> V3 {
        self.origin + self.x * length(&p["x"]) + self.z * length(&p["z"])
    }

    pub(crate) fn side(&self, name: &str) -> &Side {
        if name == "first" { &self.first } else { self.second.as_ref().unwrap_or_else(|| panic!("no second side")) }
    }

    /// Height over a side's face, square to it.
    pub(crate) fn height(&self, side: &Side, p: V3) -> f64 {
        (p - self.origin).dot(side.normal)
    }

    /// The distance from the line along a side, in the sign in which the packet gives it.
    pub(crate) fn along(&self, side: &Side, p: V3) -> f64 {
        (p - self.origin).dot(side.way) * side.sign
    }

    /// The point of a side at this distance from the line and this height over it.
    pub(crate) fn on(&self, side: &Side, from_line: f64, height: f64) -> V3 {
        self.origin + side.way * (from_line * side.sign) + side.normal * height
    }
}
