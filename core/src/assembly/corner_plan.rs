//! The corners of a whole roof, and what each line's trims come to with them.

use super::corner_ends::TrimEnd;
use super::corners::{Corner, CornerAllowances, Corners, LineEnd, RoofCorners};
use super::trim_runs::{LineEnds, TrimAlong, TrimChoice};
use crate::error::{Error, ErrorKind, Faults};
use crate::junction::JointMoves;
use crate::record::{Calculation, Caution, Recorder};
use crate::roof::{Line, LineKind, Roof, RoofInput};
use crate::units::Length;
use std::collections::{BTreeMap, BTreeSet};

/// How far an expansion joint opens in the cold.
///
/// ```
/// use seamwright::assembly::JointOpening;
/// use seamwright::units::Length;
/// let joint = JointOpening { line: "expansion joint 1".into(), opens: Length::parse("7/8\"")? };
/// assert_eq!(joint.line, "expansion joint 1");
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct JointOpening {
    /// The joint, by the name that the roof gives its line.
    pub line: String,
    /// From the laying temperature to the coldest, both sides together.
    pub opens: Length,
}

/// How high the trims of a line stand over it, square to it: a wall's flashing as high as its leg.
///
/// ```
/// use seamwright::assembly::LineStands;
/// use seamwright::units::Length;
/// assert_eq!(LineStands { line: "sidewall 1".into(), height: Length::inches(8) }.height, Length::inches(8));
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct LineStands {
    /// The line, by the name that the roof gives it.
    pub line: String,
    /// How high.
    pub height: Length,
}

/// A roof whose corners are asked for: [`Corners`] over its own lines, and the run of each line's trims with them.
///
/// A valley's pan runs on at its foot as its kind does; how it is cut to eaves or on the roof depends on its width, which [`PanEnd`](super::PanEnd) takes and a job hands it.
///
/// # Errors
/// Computing refuses, all at once, what [`RoofInput`] refuses, under `roof`; a negative allowance and a joint that opens by less than nothing
/// ([`ErrorKind::OutOfRange`]), as a height below zero; a joint or a line that the roof does not have ([`ErrorKind::Unknown`]) or that is given twice ([`ErrorKind::Conflict`]).
///
/// ```
/// use seamwright::assembly::{CornerAllowances, CornerPlan, TrimEnd};
/// use seamwright::record::Calculation;
/// use seamwright::roof::{PlaneInput, RoofInput, Shape, Vertex};
/// use seamwright::units::Length;
/// let v = |x, y, z| Vertex::new(Length::feet(x), Length::feet(y), Length::feet(z));
/// let plane = |name: &str, outer| PlaneInput { name: name.into(), shape: Shape::Space { outer, holes: vec![], flatness: None } };
/// let roof = RoofInput::new(vec![
///     plane("south", vec![v(0, 0, 10), v(40, 0, 10), v(40, 20, 20), v(0, 20, 20)]),
///     plane("north", vec![v(40, 40, 10), v(0, 40, 10), v(0, 20, 20), v(40, 20, 20)]),
/// ]);
/// let plan = CornerPlan { roof, allowances: CornerAllowances::usual(), joints: vec![], stands: vec![] };
/// let made = plan.compute()?;
/// let ridge = made.lines.iter().find(|l| l.name == "ridge 1").unwrap();
/// // 4 in over the rakes at each end, capped there.
/// assert_eq!((ridge.along.run, ridge.along.at_start.closed), ((Length::feet(40) + Length::inches(8)).length()?, TrimEnd::Capped));
/// assert_eq!(made.closed.iter().map(|c| c.count).sum::<usize>(), 2 * made.lines.len());
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct CornerPlan {
    /// The roof.
    pub roof: RoofInput,
    /// What trims run on at corners; common practice unless given.
    #[cfg_attr(feature = "serde", serde(default = "CornerAllowances::usual"))]
    pub allowances: CornerAllowances,
    /// What opens at expansion joints; one that is not given is taken not to move.
    #[cfg_attr(feature = "serde", serde(default))]
    pub joints: Vec<JointOpening>,
    /// How high trims stand over their lines; one that is not given takes its allowance alone at a peak.
    #[cfg_attr(feature = "serde", serde(default))]
    pub stands: Vec<LineStands>,
}

/// An end of a trim at its corner.
///
/// See [`CornerPlan`] for an example.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct EndAtCorner {
    /// The corner, by number.
    pub corner: usize,
    /// What the trim runs on there.
    pub allowance: Length,
    /// How its end is closed.
    pub closed: TrimEnd,
}

/// A trim from one of its corners to the other.
///
/// See [`CornerPlan`] for an example.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct CornerToCorner {
    /// Its line's true length.
    pub length: Length,
    /// At the line's start.
    pub at_start: EndAtCorner,
    /// At its end.
    pub at_end: EndAtCorner,
    /// What is covered: the line and what the trim runs on at both ends.
    pub run: Length,
}

/// A line's trims with its corners.
///
/// See [`CornerPlan`] for an example.
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct LineWithCorners {
    /// The line's name.
    pub name: String,
    /// Its kind.
    pub kind: LineKind,
    /// Its trims.
    pub along: CornerToCorner,
    /// At a step, those along its upper edge.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub upper: Option<CornerToCorner>,
}

/// All lines of a kind.
///
/// See [`CornerPlan`] for an example.
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct KindWithCorners {
    /// The kind in words; `step, upper edge` for the upper edges of steps.
    pub name: String,
    /// How many.
    pub count: usize,
    /// Their true length together.
    pub length: Length,
    /// Their runs together.
    pub run: Length,
}

/// How many ends are closed in one way.
///
/// See [`CornerPlan`] for an example.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct ClosedEnds {
    /// The way.
    pub name: TrimEnd,
    /// How many.
    pub count: usize,
}

/// The corners of a roof, and what the trims of its lines come to.
///
/// See [`CornerPlan`] for an example.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct CornerSchedule {
    /// The corners, in the order of the lines that first end there.
    pub corners: Vec<Corner>,
    /// Every line of the roof, in its order.
    pub lines: Vec<LineWithCorners>,
    /// The same by kind, of kinds that the roof has.
    pub kinds: Vec<KindWithCorners>,
    /// How ends are closed, each end of each line once, and of a step's upper edge once more.
    pub closed: Vec<ClosedEnds>,
    /// What to decide before trims are cut.
    pub cautions: Vec<Caution>,
}

impl CornerPlan {
    /// The joints by the number of their line.
    fn moves(&self, roof: &Roof, faults: &mut Faults) -> Vec<(usize, JointMoves)> {
        let found = by_name("joints", self.joints.iter().map(|j| &j.line), roof, |l| l.kind.is_expansion_joint(), faults);
        found.into_iter().zip(&self.joints).filter_map(|(n, j)| Some((n?, JointMoves { opens: j.opens, ..JointMoves::default() }))).collect()
    }

    /// The heights of all lines.
    fn heights(&self, roof: &Roof, faults: &mut Faults) -> Vec<Length> {
        let mut out = vec![Length::ZERO; roof.lines().len()];
        let found = by_name("stands", self.stands.iter().map(|s| &s.line), roof, |_| true, faults);
        for (number, stands) in found.into_iter().zip(&self.stands) {
            if let Some(slot) = number.and_then(|n| out.get_mut(n)) {
                *slot = stands.height;
            }
        }
        out
    }
}

/// The numbers of named lines that are of the right kind; none for one that the roof does not have, or that has been named.
fn by_name<'a>(field: &str, names: impl Iterator<Item = &'a String>, roof: &Roof, fits: impl Fn(&Line) -> bool, faults: &mut Faults) -> Vec<Option<usize>> {
    let numbers: BTreeMap<&str, usize> = roof.lines().iter().enumerate().filter(|(_, l)| fits(l)).map(|(n, l)| (l.name.as_str(), n)).collect();
    let mut seen = BTreeSet::new();
    let find = |(i, name): (usize, &String)| {
        let path = format!("{field}[{i}].line");
        let number = numbers.get(name.as_str()).copied();
        if number.is_none() {
            let all: Vec<&str> = roof.lines().iter().filter(|l| fits(l)).map(|l| l.name.as_str()).collect();
            let error = Error::new(ErrorKind::Unknown, "the roof has no such line").at(path).value_of(name);
            faults.add(error.accepts(if all.is_empty() { "none: the roof has no expansion joint".to_owned() } else { all.join(", ") }));
            return None;
        }
        if !seen.insert(number) {
            faults.add(Error::new(ErrorKind::Conflict, "a line given twice").at(path).value_of(name).accepts("each line once"));
            return None;
        }
        number
    };
    names.enumerate().map(find).collect()
}

/// Every end of a line, and of a step's upper edge, at its corner.
struct Ends(BTreeMap<(usize, LineEnd, bool), EndAtCorner>);

impl Ends {
    fn of(corners: &[Corner]) -> Ends {
        let all = corners.iter().enumerate().flat_map(|(corner, c)| c.lines.iter().map(move |l| (corner, l)));
        Ends(all.map(|(corner, l)| ((l.line, l.end, l.above.is_some()), EndAtCorner { corner, allowance: l.allowance, closed: l.closed })).collect())
    }

    /// A trim between the corners of its line, by the line's number.
    fn along<R: Recorder>(&self, r: &mut R, (number, line): (usize, &Line), is_above: bool) -> Result<CornerToCorner, Error> {
        let at = |end| self.0.get(&(number, end, is_above)).copied();
        let (at_start, at_end) =
            at(LineEnd::Start).zip(at(LineEnd::End)).ok_or_else(|| Error::new(ErrorKind::Internal, "a line that ends at no corner").value_of(&line.name))?;
        let ends = LineEnds { at_start: at_start.allowance, at_end: at_end.allowance };
        let made = TrimAlong { line: line.length, ends, choice: TrimChoice::usual() }.run(r)?;
        Ok(CornerToCorner { length: made.line, at_start, at_end, run: made.run })
    }
}

impl Calculation for CornerPlan {
    type Out = CornerSchedule;

    fn title(&self) -> String {
        "corners of the roof and runs of its trims".into()
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<CornerSchedule, Error> {
        let mut faults = Faults::default();
        self.allowances.check("allowances", &mut faults);
        for (i, joint) in self.joints.iter().enumerate() {
            faults.keep(joint.opens.not_negative(&format!("joints[{i}].opens")));
        }
        for (i, stands) in self.stands.iter().enumerate() {
            faults.keep(stands.height.not_negative(&format!("stands[{i}].height")));
        }
        let roof = faults.keep(r.part(|| self.roof.title(), |r| self.roof.run(r)).map_err(|e| e.under("roof")));
        let given = roof.as_ref().map(|roof| (self.moves(roof, &mut faults), self.heights(roof, &mut faults)));
        faults.check()?;
        let (Some(roof), Some((joints, stands))) = (roof, given) else { return Err(Error::new(ErrorKind::Internal, "a roof without fault is missing")) };
        let asked = Corners { lines: roof.lines(), tolerance: roof.tolerance(), allowances: &self.allowances, joints: &joints, stands: &stands };
        let RoofCorners { corners, cautions, .. } = asked.run(r)?;
        let ends = Ends::of(&corners);
        let mut lines = Vec::with_capacity(roof.lines().len());
        for (number, line) in roof.lines().iter().enumerate() {
            let here = (number, line);
            let along = |r: &mut R| Ok((ends.along(r, here, false)?, line.riser.map(|_| ends.along(r, here, true)).transpose()?));
            let (along, upper) = r.part(|| line.name.clone(), along)?;
            lines.push(LineWithCorners { name: line.name.clone(), kind: line.kind, along, upper });
        }
        let (kinds, closed) = (kinds(&lines)?, closed(&lines));
        Ok(CornerSchedule { corners, lines, kinds, closed, cautions })
    }
}

fn kinds(lines: &[LineWithCorners]) -> Result<Vec<KindWithCorners>, Error> {
    let mut out = Vec::new();
    for kind in LineKind::ALL {
        let of: Vec<&CornerToCorner> = lines.iter().filter(|l| l.kind == *kind).map(|l| &l.along).collect();
        let upper: Vec<&CornerToCorner> = lines.iter().filter(|l| l.kind == *kind).filter_map(|l| l.upper.as_ref()).collect();
        for (name, of) in [(kind.name().to_owned(), of), (format!("{kind}, upper edge"), upper)].into_iter().filter(|(_, of)| !of.is_empty()) {
            let (length, run) = (Length::total(of.iter().map(|l| &l.length))?, Length::total(of.iter().map(|l| &l.run))?);
            out.push(KindWithCorners { name, count: of.len(), length, run });
        }
    }
    Ok(out)
}

fn closed(lines: &[LineWithCorners]) -> Vec<ClosedEnds> {
    let mut out: BTreeMap<TrimEnd, usize> = BTreeMap::new();
    for edge in lines.iter().flat_map(|l| core::iter::once(&l.along).chain(&l.upper)) {
        [edge.at_start.closed, edge.at_end.closed].into_iter().for_each(|way| *out.entry(way).or_default() += 1);
    }
    out.into_iter().map(|(name, count)| ClosedEnds { name, count }).collect()
}
