//! A tab as stretches of the outline, with its bend.

use super::end::Tab;
use super::end_line::EndLine;
use super::notch::{Feature, inward};
use super::shape::{BlankEdge, BlankFold, BlankLine, BlankSide};
use crate::error::{Error, ErrorKind, Faults};
use crate::trim::{BendRule, Flat, FlatLeg, PieceEnd, Point};
use crate::units::Length;

/// A tab in the flat.
pub(super) struct LaidTab {
    pub(super) fold: BlankFold,
    pub(super) tab: Tab,
    /// Its bend line, from one side of it to the other.
    pub(super) line: BlankLine,
    pub(super) tangents: [BlankLine; 2],
    pub(super) feature: Feature,
    /// Whether metal beside the tab reaches past the tangent line, so that it would be crushed.
    pub(super) unrelieved: bool,
}

struct Placed<'a> {
    tab: &'a Tab,
    leg: FlatLeg,
    thickness: Length,
    line: &'a EndLine,
    end: PieceEnd,
    rule: &'a BendRule,
    path: &'a str,
    girth: Length,
}

impl Placed<'_> {
    /// From side to side, and with the slots.
    fn stations(&self) -> Result<[Length; 4], Error> {
        let at = |field: &str| format!("{}.{field}", self.path);
        let mut faults = Faults::default();
        faults.keep(self.tab.from.not_negative(&at("from")));
        faults.keep(self.tab.width.positive(&at("width")));
        faults.keep(self.tab.length.positive(&at("length")));
        faults.keep(self.tab.relief.not_negative(&at("relief")));
        faults.check()?;
        let from = (self.leg.from + self.tab.from).length()?;
        let to = (from + self.tab.width).length()?;
        // At the edge of the blank there is nothing beside the tab to slot.
        let slot = |at_edge: bool| if at_edge { Length::ZERO } else { self.tab.relief };
        let (low, high) = ((from - slot(from == Length::ZERO)).length()?, (to + slot(to == self.girth)).length()?);
        if low < self.leg.from || high > self.leg.to {
            let room = (self.leg.length() - self.tab.from - self.tab.relief).length()?;
            let (field, accepts) = if low < self.leg.from { ("from", format!("at least {}", self.tab.relief)) } else { ("width", format!("at most {room}")) };
            return Err(Error::new(ErrorKind::Conflict, "the tab with its slots lies over a bend line or beyond the blank's edge")
                .at(at(field))
                .value_of(if field == "from" { self.tab.from } else { self.tab.width })
                .accepts(accepts));
        }
        if !self.line.is_square(low, high)? {
            return Err(Error::new(ErrorKind::Conflict, "a tab needs an end that is cut square across it")
                .at(self.path.to_owned())
                .value_of(format_args!("from {low} to {high}"))
                .accepts("a square cut there"));
        }
        Ok([low, from, to, high])
    }

    fn lay(&self, fold: BlankFold) -> Result<LaidTab, Error> {
        let [low, from, to, high] = self.stations()?;
        let under = |e: Error| e.under(self.path);
        let size = self.tab.size(self.thickness);
        size.check().map_err(under)?;
        if self.tab.angle.degrees() > 180.0 {
            return Err(Error::new(ErrorKind::OutOfRange, "a tab is bent by half a turn at most")
                .at(format!("{}.angle", self.path))
                .value_of(self.tab.angle)
                .accepts("at most 180 deg from flat"));
        }
        let setback = self.tab.setback(self.thickness).map_err(under)?;
        let allowance = self.rule.allowance(size).map_err(under)?;
        if self.tab.length <= setback {
            return Err(Error::new(ErrorKind::Impossible, "the tab is swallowed by the setback of its bend")
                .at(format!("{}.length", self.path))
                .value_of(self.tab.length)
                .accepts(format!("more than {setback}")));
        }
        let end = self.line.at(from)?;
        let tangent = inward(end, setback, self.end)?;
        let out = |by: Length| inward(tangent, Length::from_pm(-by.pm()), self.end);
        let (middle, far) = (out(Length::from_pm(allowance.pm() / 2))?, out(allowance)?);
        let tip = out((allowance + self.tab.length - setback).length()?)?;
        let at = |x: Length, y: Length| Point { x, y };
        let mut corners = if low < from {
            vec![(at(low, end), BlankSide::Relief), (at(low, tangent), BlankSide::Relief), (at(from, tangent), BlankSide::Tab)]
        } else {
            vec![(at(from, end), BlankSide::Tab)]
        };
        corners.extend([(at(from, tip), BlankSide::Tab), (at(to, tip), BlankSide::Tab)]);
        if high > to {
            corners.extend([(at(to, tangent), BlankSide::Relief), (at(high, tangent), BlankSide::Relief)]);
        }
        corners.push((at(high, end), BlankSide::Tab));
        let edges = corners
            .windows(2)
            .filter_map(|pair| match pair {
                [(a, side), (b, _)] if a != b => Some(BlankEdge { side: *side, from: *a, to: *b, arc: None }),
                _ => None,
            })
            .collect();
        let across = |y: Length| BlankLine { from: at(from, y), to: at(to, y) };
        Ok(LaidTab {
            fold,
            tab: *self.tab,
            line: across(middle),
            tangents: [across(tangent), across(far)],
            feature: Feature { from: low, to: high, deepest: tangent, edges, path: self.path.to_owned(), name: "tab" },
            unrelieved: !self.tab.relief.is_positive() && setback.is_positive(),
        })
    }
}

pub(super) fn lay(tabs: &[Tab], end: PieceEnd, (flat, line, rule): (&Flat, &EndLine, &BendRule), first: usize, faults: &mut Faults) -> Vec<LaidTab> {
    let mut out = Vec::with_capacity(tabs.len());
    for (i, tab) in tabs.iter().enumerate() {
        let path = format!("{end}.tabs[{i}]");
        let leg = flat.legs().iter().find(|l| l.part == tab.leg).copied().ok_or_else(|| {
            Error::new(ErrorKind::Unknown, "the profile has no such leg")
                .at(format!("{path}.leg"))
                .value_of(tab.leg)
                .accepts(format!("one of its {} legs, hems counted", flat.legs().len()))
        });
        let made = leg
            .and_then(|leg| Placed { tab, leg, thickness: flat.thickness(), line, end, rule, path: &path, girth: flat.girth() }.lay(BlankFold::Tab(first + i)));
        out.extend(faults.keep(made));
    }
    out
}
