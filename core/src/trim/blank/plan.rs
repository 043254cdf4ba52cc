//! A blank from a profile, its length, and what is cut at its ends.

use super::end::{BlankEnd, HolePlace, PieceEnd, PlannedHole};
use super::end_line::{self, EndLine};
use super::notch::{self, Feature};
use super::shape::{BlankBend, BlankEdge, BlankFold, BlankHole, BlankLine, BlankSide, FlatBlank};
use super::tab::{self, LaidTab};
use crate::error::{Error, ErrorKind, Faults};
use crate::num;
use crate::record::{Calculation, Caution, Recorder, Source, Step};
use crate::trim::{Arc, BendRule, Flat, Point, Profile, cautions};
use crate::units::{Angle, Area, Length};

/// A blank of a trim: its profile, its length along the run, and what is cut at its ends.
///
/// The near end's station is 0, the far end's the length: cuts that are not square run before or beyond them. Notches and tabs belong to an end; holes lie
/// anywhere. Bend lines are clipped to the metal.
///
/// # Errors
/// Computing refuses, collecting: every fault of [`Profile::validate_with`]; a length or tolerance of zero or less; what a mitred end refuses; a notch or a
/// hole outside the blank ([`ErrorKind::Impossible`]), over a bend line that is not its own or on another notch, tab or hole
/// ([`ErrorKind::Conflict`]); ends that meet ([`ErrorKind::Impossible`]); an outline that crosses itself ([`ErrorKind::Geometry`]).
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::trim::{BendRule, BlankEnd, BlankPlan, Face, NeutralFactor, Notch, NotchShape, Part, Profile};
/// use seamwright::units::{AreaUnit, BendAngle, Length};
/// let profile = Profile::builder(Length::mils(24))
///     .painted(Face::Upper)
///     .inside_radius(Length::mils(24))
///     .leg("flange", Length::inches(4))
///     .down(BendAngle::SQUARE)
///     .leg("face", Length::inches(3))
///     .build()?;
/// let notch = Notch { bend: Part::Body(0), depth: Length::inches(2), shape: NotchShape::Vee { width: Length::inches(1), round: None } };
/// let plan = BlankPlan {
///     profile,
///     rule: BendRule::neutral_axis(NeutralFactor::MIDDLE),
///     length: Length::feet(10),
///     near: BlankEnd::default(),
///     far: BlankEnd { notches: vec![notch], ..BlankEnd::default() },
///     holes: vec![],
///     tolerance: Length::micrometres(10),
/// };
/// let made = plan.compute()?;
/// // The notch takes a square inch, and two inches of the bend line.
/// let whole = made.flat.girth().times(Length::feet(10)).get(AreaUnit::SquareInch);
/// assert!((whole - made.area.get(AreaUnit::SquareInch) - 1.0).abs() < 1e-9);
/// assert_eq!(made.blank.bends[0].lines[0].length()?, Length::inches(118));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct BlankPlan {
    /// The profile.
    pub profile: Profile,
    /// The rule of every bend that has none of its own, and of the tabs.
    pub rule: BendRule,
    /// From the near end's station to the far end's, along the run.
    pub length: Length,
    /// What is cut at the near end.
    #[cfg_attr(feature = "serde", serde(default))]
    pub near: BlankEnd,
    /// What is cut at the far end.
    #[cfg_attr(feature = "serde", serde(default))]
    pub far: BlankEnd,
    /// The holes.
    #[cfg_attr(feature = "serde", serde(default))]
    pub holes: Vec<PlannedHole>,
    /// How far a chord of a mitred end may stray from the curve in a bend.
    pub tolerance: Length,
}

/// A planned blank.
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::trim::{BendRule, BlankEnd, BlankPlan, Face, NeutralFactor, Profile};
/// use seamwright::units::Length;
/// let profile = Profile::builder(Length::mils(24)).painted(Face::Upper).leg("strip", Length::inches(6)).build()?;
/// let rule = BendRule::neutral_axis(NeutralFactor::MIDDLE);
/// let (near, far, tolerance) = (BlankEnd::default(), BlankEnd::default(), Length::micrometres(10));
/// let made = BlankPlan { profile, rule, length: Length::feet(2), near, far, holes: vec![], tolerance }.compute()?;
/// assert_eq!(made.area, Length::inches(6).times(Length::feet(2)));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct PlannedBlank {
    /// The flat pattern of the profile.
    pub flat: Flat,
    /// The blank.
    pub blank: FlatBlank,
    /// The area of its metal.
    pub area: Area,
}

/// One end, laid.
struct End {
    line: EndLine,
    features: Vec<Feature>,
    tabs: Vec<LaidTab>,
}

impl End {
    /// Notches and tabs, from the start edge.
    fn in_order(&self) -> Vec<&Feature> {
        let mut all: Vec<&Feature> = self.features.iter().chain(self.tabs.iter().map(|t| &t.feature)).collect();
        all.sort_by_key(|f| (f.from, f.to));
        all
    }

    /// The whole end, from the start edge to the end edge.
    fn edges(&self, side: BlankSide, girth: Length) -> Result<Vec<BlankEdge>, Error> {
        let mut out = Vec::new();
        let mut at = Length::ZERO;
        let plain = |from: Length, to: Length, out: &mut Vec<BlankEdge>| -> Result<(), Error> {
            let mut here = Point { x: from, y: self.line.at(from)? };
            for next in self.line.between(from, to).chain([Point { x: to, y: self.line.at(to)? }]) {
                if next != here {
                    out.push(BlankEdge { side, from: here, to: next, arc: None });
                }
                here = next;
            }
            Ok(())
        };
        for feature in self.in_order() {
            plain(at, feature.from, &mut out)?;
            out.extend_from_slice(&feature.edges);
            at = feature.to;
        }
        plain(at, girth, &mut out)?;
        Ok(out)
    }
}

fn reversed(edge: &BlankEdge) -> BlankEdge {
    let arc = edge.arc.map(|a| Arc { turn: Angle::of_degrees(-a.turn.degrees()), ..a });
    BlankEdge { side: edge.side, from: edge.to, to: edge.from, arc }
}

/// No two notches or tabs of one end on each other.
fn apart(end: &End, faults: &mut Faults) {
    for pair in end.in_order().windows(2) {
        if let [a, b] = pair
            && b.from < a.to
        {
            faults.add(
                Error::new(ErrorKind::Conflict, "two of an end's notches and tabs lie on each other")
                    .at(b.path.clone())
                    .value_of(format_args!("this {} starts at {}", b.name, b.from))
                    .accepts(format!("at least {}, where the {} before it ends", a.to, a.name)),
            );
        }
    }
}

/// No notch through to the other end.
fn within(end: &End, other: &End, near: bool, faults: &mut Faults) -> Result<(), Error> {
    for feature in &end.features {
        let stations = other.line.between(feature.from, feature.to).map(|p| Ok(p.y)).chain([other.line.at(feature.from), other.line.at(feature.to)]);
        for y in stations {
            let y = y?;
            let left = if near { (y - feature.deepest).length()? } else { (feature.deepest - y).length()? };
            if !left.is_positive() {
                faults.add(
                    Error::new(ErrorKind::Impossible, "the notch reaches outside the blank at its other end")
                        .at(format!("{}.depth", feature.path))
                        .value_of(format_args!("{} past the other end", Length::from_pm(-left.pm())))
                        .accepts("a notch that leaves metal"),
                );
                break;
            }
        }
    }
    Ok(())
}

impl BlankPlan {
    fn end(&self, end: PieceEnd, flat: &Flat, first_tab: usize, faults: &mut Faults, all: &mut Vec<Caution>) -> Option<End> {
        let asked = match end {
            PieceEnd::Near => &self.near,
            PieceEnd::Far => &self.far,
        };
        let made = end_line::of(&asked.cut, end, flat, &self.profile, &self.rule, self.tolerance);
        let (points, roll) = faults.keep(made.map_err(|e| if e.path().starts_with("tolerance") { e } else { e.under(&end.to_string()) }))?;
        if roll != Angle::ZERO {
            all.push(Caution::new(cautions::MITRE_TURNED, format!("{end}.cut"), Source::geometry()).arg("roll", roll));
        }
        let station = if end == PieceEnd::Far { self.length } else { Length::ZERO };
        let moved = points.into_iter().map(|p| Ok(Point { x: p.x, y: (p.y + station).length()? })).collect::<Result<Vec<_>, Error>>();
        let line = EndLine(faults.keep(moved)?);
        let features = notch::features(&asked.notches, end, flat, &line, faults);
        let tabs = tab::lay(&asked.tabs, end, (flat, &line, &self.rule), first_tab, faults);
        for t in tabs.iter().filter(|t| t.unrelieved) {
            all.push(Caution::new(cautions::TAB_UNRELIEVED, t.feature.path.clone(), Source::CommonPractice));
        }
        Some(End { line, features, tabs })
    }

    fn holes(&self, flat: &Flat, ends: (&End, &End), blank: &FlatBlank, faults: &mut Faults) -> Vec<BlankHole> {
        let mut out: Vec<BlankHole> = Vec::with_capacity(self.holes.len());
        for (i, hole) in self.holes.iter().enumerate() {
            let path = format!("holes[{i}]");
            let made = self.hole(hole, &path, flat, ends, blank).and_then(|made| match out.iter().position(|o| o.touches(&made)) {
                Some(other) => Err(Error::new(ErrorKind::Conflict, "two holes lie on each other")
                    .at(path)
                    .value_of(format_args!("on holes[{other}]"))
                    .accepts("holes apart")),
                None => Ok(made),
            });
            out.extend(faults.keep(made));
        }
        out
    }

    fn hole(&self, hole: &PlannedHole, path: &str, flat: &Flat, ends: (&End, &End), blank: &FlatBlank) -> Result<BlankHole, Error> {
        let diameter = hole.diameter.positive(&format!("{path}.diameter"))?;
        let (centre, own) = match hole.place {
            HolePlace::At(point) => (point, None),
            HolePlace::Crossing { bend, end, tab } => {
                let found = flat.bends().iter().find(|b| b.part == bend).ok_or_else(|| notch::no_bend(bend, flat).at(format!("{path}.place.crossing.bend")))?;
                let tabs = if end == PieceEnd::Near { &ends.0.tabs } else { &ends.1.tabs };
                let crossed = tabs.get(tab).ok_or_else(|| {
                    Error::new(ErrorKind::Unknown, "that end has no such tab")
                        .at(format!("{path}.place.crossing.tab"))
                        .value_of(tab)
                        .accepts(format!("one of its {} tabs, counted from 0", tabs.len()))
                })?;
                (Point { x: found.line, y: crossed.line.from.y }, Some((bend, crossed.fold)))
            }
        };
        let radius = diameter.mm() / 2.0;
        let least = blank.clear_of_edge(centre)?;
        if least <= radius {
            let (message, accepts) = match least {
                d if d < 0.0 => ("the hole lies outside the blank", "a centre within the outline".to_owned()),
                d => ("the hole breaks through the edge of the blank", format!("a diameter of less than {}", Length::from_mm(2.0 * d)?)),
            };
            let at = if least < 0.0 { "place" } else { "diameter" };
            return Err(Error::new(ErrorKind::Impossible, message)
                .at(format!("{path}.{at}"))
                .value_of(format_args!("{diameter} at {}, {}", centre.x, centre.y))
                .accepts(accepts)
                .cured_by("at an end, a notch with a round"));
        }
        for bend in flat.bends().iter().filter(|b| own.is_none_or(|(part, _)| b.part != part)) {
            if centre.x.mm() + radius > bend.from.mm() && centre.x.mm() - radius < bend.to.mm() {
                return Err(over(path, diameter, BlankFold::Bend(bend.part)));
            }
        }
        for t in ends.0.tabs.iter().chain(&ends.1.tabs).filter(|t| own.is_none_or(|(_, fold)| t.fold != fold)) {
            let [a, b] = t.tangents;
            let (low, high) = (a.from.y.min(b.from.y).mm(), a.from.y.max(b.from.y).mm());
            let aside = (t.line.from.x.mm() - centre.x.mm()).max(centre.x.mm() - t.line.to.x.mm()).max(0.0);
            let above = (low - centre.y.mm()).max(centre.y.mm() - high).max(0.0);
            if num::hypot(aside, above) < radius {
                return Err(over(path, diameter, t.fold));
            }
        }
        Ok(BlankHole { centre, diameter })
    }
}

fn over(path: &str, diameter: Length, fold: BlankFold) -> Error {
    Error::new(ErrorKind::Conflict, "the hole lies over a bend line")
        .at(path.to_owned())
        .value_of(format_args!("{diameter}, over bend {fold}"))
        .accepts("a hole clear of the tangent lines")
        .cured_by("where two bends cross, a hole at their crossing")
}

/// Every station at which one of the two ends has a point: there the ends are closest, or nowhere.
fn apart_everywhere(near: &EndLine, far: &EndLine, length: Length) -> Result<(), Error> {
    let mut least: Option<Length> = None;
    for x in near.0.iter().chain(&far.0).map(|p| p.x) {
        let gap = (far.at(x)? - near.at(x)?).length()?;
        least = Some(least.map_or(gap, |l| l.min(gap)));
    }
    match least {
        Some(gap) if !gap.is_positive() => Err(Error::new(ErrorKind::Impossible, "the two ends of the blank meet")
            .at("length")
            .value_of(length)
            .accepts(format!("more than {}", (length - gap).length()?))),
        _ => Ok(()),
    }
}

impl Calculation for BlankPlan {
    type Out = PlannedBlank;

    fn title(&self) -> String {
        format!("blank of a trim, {}, sheet {}", self.rule, self.profile.thickness)
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<PlannedBlank, Error> {
        let mut faults = Faults::default();
        faults.keep(self.length.positive("length"));
        faults.keep(self.tolerance.positive("tolerance"));
        let flat = faults.keep(self.profile.unfold(&self.rule).map_err(|e| e.under("profile")));
        faults.check()?;
        let flat = flat.ok_or_else(|| Error::new(ErrorKind::Internal, "a fault was lost"))?;

        let mut faults = Faults::default();
        let mut all = flat.cautions().to_vec();
        let near = self.end(PieceEnd::Near, &flat, 0, &mut faults, &mut all);
        let far = self.end(PieceEnd::Far, &flat, self.near.tabs.len(), &mut faults, &mut all);
        if let (Some(near), Some(far)) = (&near, &far) {
            faults.keep(apart_everywhere(&near.line, &far.line, self.length));
            for (end, other, is_near) in [(near, far, true), (far, near, false)] {
                apart(end, &mut faults);
                within(end, other, is_near, &mut faults)?;
            }
        }
        faults.check()?;
        let (near, far) = near.zip(far).ok_or_else(|| Error::new(ErrorKind::Internal, "a fault was lost"))?;

        let girth = flat.girth();
        let mut outline = near.edges(BlankSide::NearEnd, girth)?;
        let back: Vec<BlankEdge> = far.edges(BlankSide::FarEnd, girth)?.iter().rev().map(reversed).collect();
        let corner = |edge: Option<&BlankEdge>, at: fn(&BlankEdge) -> Point| edge.map_or(Point::ORIGIN, at);
        let (low, high) = (corner(outline.last(), |e| e.to), corner(back.first(), |e| e.from));
        let (first, last) = (corner(outline.first(), |e| e.from), corner(back.last(), |e| e.to));
        outline.push(BlankEdge { side: BlankSide::EndEdge, from: low, to: high, arc: None });
        outline.extend(back);
        outline.push(BlankEdge { side: BlankSide::StartEdge, from: last, to: first, arc: None });
        let mut blank = FlatBlank { thickness: flat.thickness(), outline, bends: Vec::new(), holes: Vec::new(), cautions: all };
        blank.check()?;

        let mut faults = Faults::default();
        blank.holes = self.holes(&flat, (&near, &far), &blank, &mut faults);
        faults.check()?;
        blank.bends = bends(&flat, &near, &far, &blank)?;
        let area = blank.area()?;
        let size = blank.bounds()?.size()?;
        r.step(|| Step::new("girth").formula("sum of the flat parts and the bends").gives(girth).source(Source::geometry()));
        for (end, laid) in [("near", &near), ("far", &far)] {
            r.step(|| {
                let cut: Vec<String> = laid.line.0.iter().map(|p| format!("{} at {}", p.y, p.x)).collect();
                Step::new(format!("cut of the {end} end"))
                    .formula("along the run, at stations from the start edge")
                    .gives(cut.join("; "))
                    .source(Source::geometry())
            });
        }
        r.step(|| {
            Step::new("area")
                .formula("within the outline, less the holes")
                .with("width of the box around it", size.0)
                .with("height", size.1)
                .gives(area)
                .source(Source::geometry())
        });
        Ok(PlannedBlank { flat, blank, area })
    }
}

/// The bends, their lines clipped to the metal.
fn bends(flat: &Flat, near: &End, far: &End, blank: &FlatBlank) -> Result<Vec<BlankBend>, Error> {
    let b = blank.bounds()?;
    let mut out = Vec::with_capacity(flat.bends().len());
    for bend in flat.bends() {
        let along = |x: Length| blank.on_metal(BlankLine { from: Point { x, y: b.least.y }, to: Point { x, y: b.greatest.y } });
        let mut tangents = along(bend.from)?;
        tangents.extend(along(bend.to)?);
        out.push(BlankBend {
            fold: BlankFold::Bend(bend.part),
            lines: along(bend.line)?,
            tangents,
            angle: bend.angle,
            direction: bend.direction,
            inside_radius: bend.inside_radius,
        });
    }
    for t in near.tabs.iter().chain(&far.tabs) {
        let mut tangents = Vec::new();
        for line in t.tangents {
            tangents.extend(blank.on_metal(line)?);
        }
        out.push(BlankBend {
            fold: t.fold,
            lines: blank.on_metal(t.line)?,
            tangents,
            angle: t.tab.angle,
            direction: t.tab.direction,
            inside_radius: t.tab.inside_radius,
        });
    }
    Ok(out)
}
