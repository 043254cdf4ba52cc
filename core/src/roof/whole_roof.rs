//! The roof: its planes, walls, lines and drainage.

use super::crickets::{CricketInput, PlacedCricket, place};
use super::drainage::{Drain, drains};
use super::expansion_joints::ExpansionJointInput;
use super::line::Line;
use super::naming::{self, Meet};
use super::overlap::{Box2, near_pairs, overlap};
use super::plan_edges::PlanEdges;
use super::plane_number::plane_number;
use super::steps::StepInput;
use super::walls::{self, Wall};
use super::{Plane, PlaneInput, cautions};
use crate::error::{Error, ErrorKind, Faults};
use crate::pitch::Pitch;
use crate::practice::roof as practice;
use crate::record::{Calculation, Caution, Recorder, Source, Step};
use crate::units::{Area, AreaUnit, Length};

/// What becomes of gaps between planes.
///
/// ```
/// use seamwright::roof::{GapChoice, RoofInput};
/// let survey = RoofInput { gaps: GapChoice::Refuse, ..RoofInput::new(vec![]) };
/// assert_ne!(survey.gaps, GapChoice::default());
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum GapChoice {
    /// Each gets a caution: it may be meant.
    #[default]
    Report,
    /// The roof is refused, with every gap.
    Refuse,
}

impl GapChoice {
    #[cfg(feature = "serde")]
    #[allow(clippy::trivially_copy_pass_by_ref, reason = "as serde asks")]
    fn is_report(&self) -> bool {
        *self == GapChoice::Report
    }
}

/// A roof as the caller gives it.
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::roof::{LineKind, PlaneInput, RoofInput, Shape, Vertex};
/// use seamwright::units::Length;
/// let v = |x, y, z| Vertex::new(Length::feet(x), Length::feet(y), Length::feet(z));
/// let plane = |name: &str, outer| PlaneInput { name: name.into(), shape: Shape::Space { outer, holes: vec![], flatness: None } };
/// let gable = RoofInput::new(vec![
///     plane("south", vec![v(0, 0, 10), v(40, 0, 10), v(40, 20, 20), v(0, 20, 20)]),
///     plane("north", vec![v(40, 40, 10), v(0, 40, 10), v(0, 20, 20), v(40, 20, 20)]),
/// ]);
/// let roof = gable.compute()?;
/// let ridge = roof.line("ridge 1")?;
/// assert_eq!((ridge.kind, ridge.length), (LineKind::Ridge, Length::feet(40)));
/// assert_eq!(roof.lines_of(LineKind::Rake).count(), 4);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct RoofInput {
    /// The planes; they may touch, but not overlap in plan.
    pub planes: Vec<PlaneInput>,
    /// Walls that the roof runs into.
    #[cfg_attr(feature = "serde", serde(default))]
    pub walls: Vec<Wall>,
    /// Crickets behind holes of the planes, each by the hole's name; their planes come after those given, left and right.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Vec::is_empty"))]
    pub crickets: Vec<CricketInput>,
    /// Steps: planes of which the one ends plumb over the other.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Vec::is_empty"))]
    pub steps: Vec<StepInput>,
    /// Expansion joints, along the panels or across them: planes in one that a joint parts.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Vec::is_empty"))]
    pub expansion_joints: Vec<ExpansionJointInput>,
    /// How far apart edges may lie and still be one; [`practice`](crate::practice::roof::TOLERANCE) unless given.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub tolerance: Option<Length>,
    /// What becomes of gaps between planes: free edges that run side by side farther apart than the tolerance, and no more than
    /// [`practice`](crate::practice::roof::GAP) apart.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "GapChoice::is_report"))]
    pub gaps: GapChoice,
    /// The minimum slope of the panel or of the code; planes below it get a caution.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub minimum_slope: Option<Pitch>,
    /// The mean width below which a plane is a sliver; [`practice`](crate::practice::roof::SLIVER) unless given.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub sliver_width: Option<Length>,
}

impl RoofInput {
    /// A roof of these planes, without walls, with the tolerances of common practice.
    #[must_use]
    pub fn new(planes: Vec<PlaneInput>) -> RoofInput {
        RoofInput {
            planes,
            walls: Vec::new(),
            crickets: Vec::new(),
            steps: Vec::new(),
            expansion_joints: Vec::new(),
            tolerance: None,
            gaps: GapChoice::Report,
            minimum_slope: None,
            sliver_width: None,
        }
    }

    /// The names of its planes, those of its crickets among them, in the order of the roof's planes.
    #[must_use]
    pub fn plane_names(&self) -> Vec<String> {
        let crickets = self.crickets.iter().flat_map(|c| [c.plane_name(false), c.plane_name(true)]);
        self.planes.iter().map(|p| p.name.clone()).chain(crickets).collect()
    }
}

/// A roof with its lines named and measured. It comes from [`RoofInput`].
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::roof::{Outfall, PlaneInput, RoofInput, Shape, Vertex, Wall, Point};
/// use seamwright::units::Length;
/// let v = |x, y, z| Vertex::new(Length::feet(x), Length::feet(y), Length::feet(z));
/// let shape = Shape::Space { outer: vec![v(0, 0, 10), v(40, 0, 10), v(40, 20, 20), v(0, 20, 20)], holes: vec![], flatness: None };
/// let mut input = RoofInput::new(vec![PlaneInput { name: "shed".into(), shape }]);
/// let p = |x, y| Point::new(Length::feet(x), Length::feet(y));
/// input.walls.push(Wall::new("house", p(0, 20), p(25, 20)));
/// let roof = input.compute()?;
/// assert_eq!(roof.line("headwall 1")?.length, Length::feet(25));
/// assert_eq!(roof.line("high edge 1")?.length, Length::feet(15));
/// assert_eq!(roof.drains()[0].to, Outfall::Off);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Roof {
    planes: Vec<Plane>,
    walls: Vec<Wall>,
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Vec::is_empty"))]
    crickets: Vec<PlacedCricket>,
    tolerance: Length,
    lines: Vec<Line>,
    drains: Vec<Drain>,
    cautions: Vec<Caution>,
}

impl Roof {
    /// The planes, in the order given and then those of crickets; their numbers count from 0.
    #[must_use]
    pub fn planes(&self) -> &[Plane] {
        &self.planes
    }

    /// The walls, in the order given.
    #[must_use]
    pub fn walls(&self) -> &[Wall] {
        &self.walls
    }

    /// The crickets, in the order given.
    #[must_use]
    pub fn crickets(&self) -> &[PlacedCricket] {
        &self.crickets
    }

    /// How far apart edges were allowed to lie.
    #[must_use]
    pub fn tolerance(&self) -> Length {
        self.tolerance
    }

    /// Every line, in the order of planes and edges.
    #[must_use]
    pub fn lines(&self) -> &[Line] {
        &self.lines
    }

    /// The lines of this kind, in order.
    pub fn lines_of(&self, kind: super::LineKind) -> impl Iterator<Item = &Line> {
        self.lines.iter().filter(move |l| l.kind == kind)
    }

    /// The lines round the plane of this number, in the order of the roof's lines.
    pub fn lines_round(&self, plane: usize) -> impl Iterator<Item = &Line> {
        self.lines.iter().filter(move |l| l.sides().any(|s| s.plane == plane))
    }

    /// The plane of this name.
    ///
    /// # Errors
    /// [`ErrorKind::Unknown`] if there is none.
    pub fn plane(&self, name: &str) -> Result<&Plane, Error> {
        let number = plane_number(self.planes.iter().map(Plane::name), name, "")?;
        self.planes.get(number).ok_or_else(|| Error::new(ErrorKind::Internal, "a plane is missing").value_of(number))
    }

    /// The line of this name.
    ///
    /// # Errors
    /// [`ErrorKind::Unknown`] if there is none.
    pub fn line(&self, name: &str) -> Result<&Line, Error> {
        self.lines.iter().find(|l| l.name == name).ok_or_else(|| Error::new(ErrorKind::Unknown, "no line has this name").value_of(name))
    }

    /// Where the water of each plane goes, in the order of planes and lines.
    #[must_use]
    pub fn drains(&self) -> &[Drain] {
        &self.drains
    }

    /// What the reader must know before metal is cut.
    #[must_use]
    pub fn cautions(&self) -> &[Caution] {
        &self.cautions
    }

    /// The true area of all planes.
    #[must_use]
    pub fn area(&self) -> Area {
        Area::of(self.planes.iter().map(|p| p.area().get(AreaUnit::SquareMetre)).sum(), AreaUnit::SquareMetre)
    }
}

impl Calculation for RoofInput {
    type Out = Roof;

    fn title(&self) -> String {
        "The roof's planes and lines".to_owned()
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<Roof, Error> {
        let mut faults = Faults::default();
        let tolerance = faults.keep(self.tolerance.unwrap_or(practice::TOLERANCE).positive("tolerance"));
        let sliver = faults.keep(self.sliver_width.unwrap_or(practice::SLIVER).not_negative("sliver_width"));
        // With a tolerance at fault the checks go on with that of practice, so that all faults show at once.
        let used = tolerance.unwrap_or(practice::TOLERANCE);
        if self.planes.is_empty() {
            faults.add(Error::new(ErrorKind::Missing, "a roof needs a plane").at("planes").accepts("1 plane or more"));
        }
        self.check_names(&mut faults);
        walls::check(&self.walls, &self.planes, used.mm(), &mut faults);
        let mut built: Vec<(String, Plane)> = self
            .planes
            .iter()
            .enumerate()
            .filter_map(|(i, p)| {
                let path = format!("planes[{i}]");
                faults.keep(p.plane().map_err(|e| e.under(&path).about(&p.name))).map(|p| (path, p))
            })
            .collect();
        // Planes at fault, or holes that are, have no cricket that could be checked.
        let crickets = if faults.is_empty() { self.set_crickets(&mut built, used, &mut faults, r)? } else { Vec::new() };
        check_planes(&built, used, &mut faults);
        let meet = Meet::of(built.iter().map(|(_, p)| p), &self.steps, used);
        if self.gaps == GapChoice::Refuse {
            naming::refuse_gaps(&built, &meet, used, &mut faults);
        }
        faults.check()?;

        let planes: Vec<Plane> = built.into_iter().map(|(_, p)| p).collect();
        for (i, plane) in planes.iter().enumerate() {
            r.step(|| {
                Step::new(format!("area of plane {i}, {}", plane.name()))
                    .formula("plan area x slope factor")
                    .with("plan area", plane.plan_area())
                    .with("pitch", plane.pitch())
                    .with("slope factor", plane.pitch().slope_factor())
                    .gives(plane.area())
                    .source(Source::geometry())
            });
        }
        let (lines, mut found) = naming::name_lines(&planes, &self.walls, (&self.steps, &self.expansion_joints), meet, used)?;
        for line in &lines {
            naming::tell(line, &planes, r);
        }
        naming::plane_cautions(&planes, self.minimum_slope, sliver.unwrap_or(practice::SLIVER), self.sliver_width.is_some(), &mut found)?;
        for (i, cricket) in crickets.iter().enumerate().filter(|(_, c)| c.figures.end_height.is_positive()) {
            let caution = Caution::new(cautions::CRICKET_END, format!("crickets[{i}]"), Source::geometry()).arg("hole", &cricket.hole);
            found.push(caution.arg("height", cricket.figures.end_height));
        }
        let drains = drains(&lines);
        Ok(Roof { planes, walls: self.walls.clone(), crickets, tolerance: used, lines, drains, cautions: found })
    }
}

impl RoofInput {
    fn check_names(&self, faults: &mut Faults) {
        let all = self.plane_names();
        let mut names: Vec<(&str, usize)> = all.iter().enumerate().map(|(i, name)| (name.as_str(), i)).collect();
        names.sort_unstable();
        for (a, b) in names.iter().zip(names.iter().skip(1)) {
            if a.0 == b.0 && !a.0.trim().is_empty() {
                let path = match b.1.checked_sub(self.planes.len()) {
                    None => format!("planes[{}].name", b.1),
                    Some(k) => format!("crickets[{}].hole", k / 2),
                };
                faults.add(Error::new(ErrorKind::Conflict, "two planes have one name").at(path).value_of(b.0));
            }
        }
    }

    /// Grows the holes that crickets stand behind, and adds the crickets' planes.
    fn set_crickets<R: Recorder>(
        &self,
        built: &mut Vec<(String, Plane)>,
        tolerance: Length,
        faults: &mut Faults,
        r: &mut R,
    ) -> Result<Vec<PlacedCricket>, Error> {
        let mut given = self.planes.clone();
        let mut out = Vec::with_capacity(self.crickets.len());
        for (i, cricket) in self.crickets.iter().enumerate() {
            let path = format!("crickets[{i}]");
            let named = plane_number(given.iter().map(|p| p.name.as_str()), &cricket.plane, format!("{path}.plane"));
            let Some(plane) = faults.keep(named) else { continue };
            let lost = || Error::new(ErrorKind::Internal, "a plane is missing").value_of(&cricket.plane);
            let (input, slot) = given.get_mut(plane).zip(built.get_mut(plane)).ok_or_else(lost)?;
            let placed = r.part(|| format!("cricket behind {} in {}", cricket.hole, cricket.plane), |r| place(input, &slot.1, cricket, tolerance, r));
            let Some(placed) = faults.keep(placed.map_err(|e| e.under(&path).about(&cricket.hole))) else { continue };
            (*input, slot.1) = placed.main;
            let left = built.len();
            out.push(PlacedCricket { plane, hole: cricket.hole.clone(), left, right: left + 1, figures: placed.figures });
            built.push((path.clone(), placed.left));
            built.push((path, placed.right));
        }
        Ok(out)
    }
}

/// Faults of planes that are sound by themselves: together too far apart, edges within the tolerance, overlaps.
fn check_planes(planes: &[(String, Plane)], tolerance: Length, faults: &mut Faults) {
    if let Some((_, first)) = planes.first() {
        let origin = first.rings.first().and_then(|r| r.first()).copied().unwrap_or_default();
        for (at, plane) in planes {
            let far = plane.rings.iter().flatten().flat_map(|v| v.from(origin)).fold(0.0, |m: f64, d| m.max(d.abs()));
            if far >= practice::GREATEST_EXTENT.mm() {
                faults.add(
                    Error::new(ErrorKind::OutOfRange, format!("the plane {} lies too far from {}", plane.name(), first.name()))
                        .at(at.clone())
                        .value_of(format_args!("{far:.0} mm"))
                        .accepts(format!("less than {}", practice::GREATEST_EXTENT))
                        .cured_by("check the unit of the coordinates"),
                );
            }
        }
    }
    for (at, plane) in planes {
        for (r, ring) in plane.rings.iter().enumerate() {
            for (edge, (a, b)) in plane.plan.edges().filter(|e| e.ring == r).zip(ring.iter().zip(ring.iter().cycle().skip(1))) {
                let length = crate::num::space::norm(b.from(*a));
                if length <= tolerance.mm() {
                    let ring = if r == 0 { "outer".to_owned() } else { format!("holes[{}].ring", r - 1) };
                    faults.add(
                        Error::new(ErrorKind::Geometry, format!("an edge of {} is no longer than the tolerance", plane.name()))
                            .at(format!("{at}.{}.{ring}[{}]", plane.form, edge.given))
                            .value_of(format_args!("{length} mm"))
                            .accepts(format!("edges longer than {tolerance}"))
                            .cured_by("leave the vertex out, or give a smaller tolerance"),
                    );
                }
            }
        }
    }
    let boxes: Vec<Box2> = planes.iter().map(|(_, p)| Box2::round(p.rings.iter().flatten())).collect();
    let origin = planes.first().and_then(|(_, p)| p.rings.first()?.first()).copied().unwrap_or_default();
    let mut edges: Vec<Option<PlanEdges>> = planes.iter().map(|_| None).collect();
    // No plane lies deeper in another than their boxes do: neighbours along a level edge need no closer look. A micrometre is left for rounding.
    let margin = (tolerance.pm() / 2 - Length::micrometres(1).pm()).max(0);
    for (a, b) in near_pairs(&boxes, -margin) {
        let (Some((i, p)), Some((j, q))) = (planes.get(a), planes.get(b)) else { continue };
        for (k, plane) in [(a, p), (b, q)] {
            if let Some(slot) = edges.get_mut(k) {
                slot.get_or_insert_with(|| PlanEdges::of(plane, origin));
            }
        }
        let (Some(Some(of_p)), Some(Some(of_q))) = (edges.get(a), edges.get(b)) else { continue };
        if let Some(depth) = overlap(of_p, of_q, tolerance.mm()) {
            faults.add(
                Error::new(ErrorKind::Geometry, format!("the planes {} and {} overlap in plan", p.name(), q.name()))
                    .at(j.clone())
                    .value_of(format_args!("{depth:.3} mm deep in {i}"))
                    .accepts(format!("planes that overlap by no more than {tolerance}"))
                    .cured_by("cut a hole for the one on top, or end both at the line where they meet"),
            );
        }
    }
}
