//! The sheet in a state of bending, as contours: some bends made, some half made, some not yet.
//!
//! A bend that is half made keeps its inside radius and takes its share of the allowance, centred on the bend line; the rest of the allowance is still flat.

use crate::error::{Error, ErrorKind};
use crate::trim::curves::{Boxes, Curve, Round, Xy, length, meet, minus, plus, times};
use crate::trim::flat::{Flat, FlatBend};
use crate::trim::leg::Direction;
use crate::trim::outline::Pen;
use crate::trim::walk::Part;
use crate::units::{Angle, BendAngle};
use core::fmt;
use std::collections::BTreeSet;

/// Metal is drawn in by this on every side before it is asked whether it hits, in millimetres: what overlaps by less than a micrometre touches, as a
/// closed hem touches its leg.
pub(super) const SKIN: f64 = 0.0005;

/// A leg or a bend of the sheet.
///
/// ```
/// use seamwright::trim::{Part, SheetPart};
/// assert_eq!(SheetPart::Leg(Part::Body(1)).to_string(), "leg 2");
/// assert_eq!(SheetPart::Bend(Part::EndHem).to_string(), "the fold of the end hem");
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum SheetPart {
    /// The flat part of a leg.
    Leg(Part),
    /// A bend.
    Bend(Part),
}

impl SheetPart {
    /// The field of a profile that it comes from.
    pub(super) fn path(self) -> String {
        match self {
            SheetPart::Leg(part) => part.leg_path(),
            SheetPart::Bend(part) => part.bend_path(),
        }
    }
}

impl fmt::Display for SheetPart {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            SheetPart::Leg(Part::Body(i)) => write!(f, "leg {}", i.saturating_add(1)),
            SheetPart::Bend(Part::Body(i)) => write!(f, "bend {}", i.saturating_add(1)),
            SheetPart::Leg(hem) => write!(f, "the return of the {hem}"),
            SheetPart::Bend(hem) => write!(f, "the fold of the {hem}"),
        }
    }
}

/// Two pieces, the one nearer to the start edge first.
fn in_order(one: SheetPart, other: SheetPart) -> (SheetPart, SheetPart) {
    let place = |p: SheetPart| match p {
        SheetPart::Leg(part) => (part, 0),
        SheetPart::Bend(part) => (part, 1),
    };
    if place(one) <= place(other) { (one, other) } else { (other, one) }
}

/// One leg or bend of the sheet: its two faces.
#[derive(Debug, Clone, Copy)]
pub(super) struct Stretch {
    pub(super) piece: SheetPart,
    pub(super) lower: Curve,
    pub(super) upper: Curve,
}

/// The sheet, start edge to end edge, walked from the origin along the x axis.
pub(super) struct Strip {
    pub(super) stretches: Vec<Stretch>,
    /// For each leg, where its flat part starts and ends on the true lower face, and its heading.
    pub(super) legs: Vec<(Xy, Xy, f64)>,
}

/// The angle that each bend of a flat has as drawn.
pub(super) fn finished(flat: &Flat) -> Vec<f64> {
    flat.bends().iter().map(|b| b.angle.degrees()).collect()
}

/// The allowance of a bend at an angle, in millimetres.
pub(super) fn allowance_at(bend: &FlatBend, degrees: f64) -> f64 {
    bend.allowance().mm() * degrees / bend.angle.degrees()
}

impl Strip {
    /// The sheet with its bends at these angles, its faces drawn in by the skin.
    pub(super) fn fold(flat: &Flat, degrees: &[f64], skin: f64) -> Result<Strip, Error> {
        let t = flat.thickness().mm();
        let skin = skin.min(t / 4.0);
        let mut out = Strip { stretches: Vec::with_capacity(2 * degrees.len() + 1), legs: Vec::with_capacity(degrees.len() + 1) };
        let mut pen = Pen::at(0.0, 0.0, 0.0);
        // What the bend before leaves flat.
        let mut spare_before = 0.0;
        for (i, leg) in flat.legs().iter().enumerate() {
            let bend = flat.bends().get(i).zip(degrees.get(i));
            let spare = bend.map_or(0.0, |(b, d)| (b.allowance().mm() - allowance_at(b, *d)) / 2.0);
            let mut along = leg.length().mm() + spare_before + spare;
            // An over-bent bend draws in more than its allowance; a leg that ends at its tangent line leaves the last bits to rounding.
            if along < 0.0 {
                if along < -1e-9 {
                    return Err(Error::new(ErrorKind::Impossible, "the leg is too short to over-bend its bends")
                        .at(leg.part.leg_path())
                        .value_of(leg.length())
                        .accepts(format!("a flat part of at least {} mm", -(spare_before + spare)))
                        .cured_by("a longer leg or less springback"));
                }
                along = 0.0;
            }
            let before = pen;
            pen.forward(along);
            out.legs.push((before.above(0.0), pen.above(0.0), pen.heading));
            let line = |height: f64| Curve::line(before.above(height), pen.above(height));
            out.stretches.push(Stretch { piece: SheetPart::Leg(leg.part), lower: line(skin), upper: line(t - skin) });
            spare_before = spare;
            if let Some((b, d)) = bend
                && *d > 0.0
            {
                let made = FlatBend { angle: BendAngle::from_flat(Angle::degrees_from(*d)?)?, ..b.clone() };
                let swing = pen.swing(&made, t);
                let (inside, outside) = (b.inside_radius.mm() + skin, b.inside_radius.mm() + t - skin);
                let (lower, upper) = match b.direction {
                    Direction::Up => (outside, inside),
                    Direction::Down => (inside, outside),
                };
                let arc = |radius: f64| {
                    let at = |way: Xy| plus(swing.centre, times(way, radius));
                    let round = Round { centre: swing.centre, radius, heading: swing.out_heading, turn: swing.turn };
                    Curve { from: at(swing.out), to: at(swing.out_after), round: Some(round) }
                };
                out.stretches.push(Stretch { piece: SheetPart::Bend(b.part), lower: arc(lower), upper: arc(upper) });
            }
        }
        Ok(out)
    }

    /// The closed contour of the whole sheet, with what each curve belongs to.
    pub(super) fn contour(&self) -> Contour {
        Contour::around(self.stretches.clone())
    }
}

/// A closed contour: the lower face, the end, the upper face backwards, the start. Curves of no length are left out.
#[derive(Debug, Clone, Default)]
pub(super) struct Contour {
    pub(super) curves: Vec<Curve>,
    pub(super) pieces: Vec<SheetPart>,
}

/// A line without so much of its start; nothing where it is shorter.
fn without_start(line: &Curve, by: f64) -> Curve {
    let along = minus(line.to, line.from);
    let full = length(along);
    Curve { from: plus(line.from, times(along, (by / full).min(1.0))), ..*line }
}

/// Takes so much off the start of the first stretch, if it is a leg.
pub(super) fn shorten_start(stretches: &mut Vec<Stretch>, by: f64) {
    if let Some(first) = stretches.first_mut()
        && first.lower.round.is_none()
    {
        if length(minus(first.lower.to, first.lower.from)) <= by {
            stretches.remove(0);
        } else {
            (first.lower, first.upper) = (without_start(&first.lower, by), without_start(&first.upper, by));
        }
    }
}

/// Takes so much off the end of the last stretch, if it is a leg.
pub(super) fn shorten_end(stretches: &mut Vec<Stretch>, by: f64) {
    if let Some(last) = stretches.last_mut()
        && last.lower.round.is_none()
    {
        if length(minus(last.lower.to, last.lower.from)) <= by {
            stretches.pop();
        } else {
            let cut = |c: &Curve| without_start(&c.reversed(), by).reversed();
            (last.lower, last.upper) = (cut(&last.lower), cut(&last.upper));
        }
    }
}

impl Contour {
    /// Two pieces of the sheet that overlap, if it crosses itself.
    pub(super) fn crossing(&self) -> Option<(SheetPart, SheetPart)> {
        Boxes::over(&self.curves).pair(|i, j| meet(&self.curves, i, j)).and_then(|(i, j)| self.pair(i, j))
    }

    /// Every two pieces of the sheet that overlap, but for those known.
    pub(super) fn crossings(&self, known: &BTreeSet<(SheetPart, SheetPart)>) -> BTreeSet<(SheetPart, SheetPart)> {
        let mut found = BTreeSet::new();
        Boxes::over(&self.curves).pair(|i, j| {
            if let Some(pair) = self.pair(i, j).filter(|p| !known.contains(p) && !found.contains(p))
                && meet(&self.curves, i, j)
            {
                found.insert(pair);
            }
            false
        });
        found
    }

    fn pair(&self, i: usize, j: usize) -> Option<(SheetPart, SheetPart)> {
        Some(in_order(*self.pieces.get(i)?, *self.pieces.get(j)?))
    }

    /// Around these stretches, both ends drawn in by the skin.
    pub(super) fn around(mut stretches: Vec<Stretch>) -> Contour {
        stretches.retain(|s| !s.lower.is_nothing() || !s.upper.is_nothing());
        shorten_start(&mut stretches, SKIN);
        shorten_end(&mut stretches, SKIN);
        let mut out = Contour::default();
        let (Some(first), Some(last)) = (stretches.first().copied(), stretches.last().copied()) else { return out };
        let mut put = |curve: Curve, piece: SheetPart| {
            if !curve.is_nothing() {
                out.curves.push(curve);
                out.pieces.push(piece);
            }
        };
        for s in &stretches {
            put(s.lower, s.piece);
        }
        put(Curve::line(last.lower.to, last.upper.to), last.piece);
        for s in stretches.iter().rev() {
            put(s.upper.reversed(), s.piece);
        }
        put(Curve::line(first.upper.from, first.lower.from), first.piece);
        out
    }
}
