//! The section that a second run needs to close on a first one's in a chosen plane.

use super::corner::{MitreCorner, Way};
use super::section::{Section, Stretch};
use crate::error::{Error, ErrorKind};
use crate::num;
use crate::num::space::{V3, add, dot, scale, unit};
use crate::record::{Calculation, Recorder, Source, Step};
use crate::trim::edge::Edge;
use crate::trim::size::to_length;
use crate::trim::{BendRule, Chain, ChainLeg, Face, NeutralFactor, Part, Placement, Point, Profile};
use crate::units::Length;

/// The profile of a second run, upright, that closes on a first one's in one plane: where a level eave turns into a rake, the rake's trim is another one.
///
/// The plane cuts the first run; what it cuts is carried along the second run onto the section of that one. Faces of legs stay planes, so that corners and
/// legs close exactly, their lengths and the angles of the bends being what the second run asks. A bend is made round its own radius again, where an exact match
/// would be an ellipse. Edges are carried over as they are: a hem's return lies on its leg again, and a wired edge or a teardrop keeps its own shape.
///
/// # Errors
/// Computing refuses, with the field: every fault of [`Profile::validate`]; a bend of the profile's own of 180 degrees or more, which has no corner
/// ([`ErrorKind::Impossible`]); what the corner refuses; a plane along a run or beside both ([`ErrorKind::Geometry`]); and, under `second`, a section that cannot be bent:
/// a leg that the match leaves too short for its bends.
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::trim::{BendRule, Face, MatchingSection, Mitre, MitreCorner, NeutralFactor, Placement, Profile, SecondHalf, SheetSurface};
/// use seamwright::units::{Angle, BendAngle, Length};
/// let eave = Profile::builder(Length::mils(24))
///     .painted(Face::Upper)
///     .inside_radius(Length::mils(30))
///     .leg("flange", Length::inches(4))
///     .down(BendAngle::SQUARE)
///     .leg("face", Length::inches(3))
///     .build()?;
/// // A square corner to the right, from the level eave up a rake of 6 in 12.
/// let corner = MitreCorner::Plan { turn: Angle::degrees_from(-90.0)?, first_rise: Angle::ZERO, second_rise: Angle::parse("26.565 deg")? };
/// let placement = Placement::default();
/// let rake = MatchingSection { profile: eave.clone(), placement, corner, plane: None, closes_on: Face::Upper }.compute()?;
/// // The flange leans back along the rake, the plumb face is seen foreshortened.
/// assert!((rake.profile.bends[0].angle.degrees() - 65.905).abs() < 1e-3);
/// assert!((rake.profile.legs[1].length.get(seamwright::units::LengthUnit::Inch) - 3.0 * 0.894_427).abs() < 1e-5);
/// // The mitre of the two, which works it out again, and says how far the round bends part.
/// let second = SecondHalf::Matching { plane: None };
/// let rule = BendRule::neutral_axis(NeutralFactor::MIDDLE);
/// let mitre = Mitre { profile: eave, placement, rule, corner, second, closes_on: SheetSurface::Upper, tolerance: Length::micrometres(1) };
/// assert!(mitre.compute()?.parts < Length::mils(20));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct MatchingSection {
    /// The profile of the run that arrives.
    pub profile: Profile,
    /// Where its section is put, seen along the run: x to the right, y upward, the run through the origin.
    #[cfg_attr(feature = "serde", serde(default))]
    pub placement: Placement,
    /// The two runs.
    pub corner: MitreCorner,
    /// A way square to the plane in which they are to close; the plumb plane that halves the turn in plan where it is left out.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub plane: Option<Way>,
    /// The face on which they close.
    pub closes_on: Face,
}

/// The matching section, as a second half takes it ([`SecondHalf::Other`](super::SecondHalf::Other)); [`SecondHalf::Matching`](super::SecondHalf::Matching) works it
/// out for itself.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct MatchedSection {
    /// The profile of the run that leaves.
    pub profile: Profile,
    /// Where its section is put.
    pub placement: Placement,
}

/// The corners of a section on one surface, edge to edge: the ends of the profile's own legs, drawn to where they meet.
fn corners(section: &Section, profile: &Profile) -> Result<Vec<(f64, f64)>, Error> {
    let way = |s: &Stretch| (num::cos_deg(s.heading), num::sin_deg(s.heading));
    let on = |p: (f64, f64), w: (f64, f64), by: f64| (p.0 + w.0 * by, p.1 + w.1 * by);
    let beyond = |edge: &Edge| if edge.is_raw() { 0.0 } else { edge.first_radius(profile.thickness).mm() + profile.thickness.mm() };
    let body = |s: &&Stretch| matches!(s.part, Part::Body(_));
    let legs: Vec<&Stretch> = section.0.iter().filter(|s| !s.is_bend()).filter(body).collect();
    let bends = section.0.iter().filter(|s| s.is_bend()).filter(body);
    let mut out = Vec::with_capacity(legs.len() + 1);
    out.extend(legs.first().map(|s| on(s.from, way(s), -beyond(&profile.start_edge))));
    for ((i, leg), bend) in legs.iter().enumerate().zip(bends) {
        if bend.turn.abs() >= 180.0 {
            return Err(Error::new(ErrorKind::Impossible, "the two legs of a fold have no corner to close on")
                .at(format!("profile.bends[{i}].angle"))
                .value_of(format_args!("{} deg", bend.turn.abs()))
                .accepts("less than 180 deg")
                .cured_by("a hem at the edge"));
        }
        out.push(on(leg.to, way(leg), bend.radius * num::tan_deg(bend.turn.abs() / 2.0)));
    }
    out.extend(legs.last().map(|s| on(s.to, way(s), beyond(&profile.end_edge))));
    Ok(out)
}

impl MatchingSection {
    /// The plane's normal, onward.
    pub(super) fn normal(&self, first: V3, second: V3) -> Result<V3, Error> {
        let level = |v: V3| unit([v[0], v[1], 0.0]);
        let normal = match self.plane {
            Some(way) => way.unit("plane")?,
            None => level(first).zip(level(second)).and_then(|(a, b)| unit(add(a, b))).ok_or_else(|| {
                Error::new(ErrorKind::Geometry, "no plumb plane halves the turn of these runs")
                    .at("plane")
                    .value_of("left out")
                    .accepts("a way square to the plane in which the two close, where a run is plumb or turns back in plan")
            })?,
        };
        let (a, b) = (dot(normal, first), dot(normal, second));
        if a.abs().min(b.abs()) < 1e-6 || (a > 0.0) != (b > 0.0) {
            return Err(Error::new(ErrorKind::Geometry, "the plane does not lie between the two runs")
                .at("plane")
                .value_of(format_args!(
                    "{} deg and {} deg between its square and the runs",
                    num::acos_deg(a.clamp(-1.0, 1.0)),
                    num::acos_deg(b.clamp(-1.0, 1.0))
                ))
                .accepts("a plane that the first run comes to and the second leaves on its other side"));
        }
        Ok(normal)
    }
}

impl Calculation for MatchingSection {
    type Out = MatchedSection;

    fn title(&self) -> String {
        "section of a second run that closes on a first one's".into()
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<MatchedSection, Error> {
        // The section as folded hangs on no bend rule.
        let flat = self.profile.unfold(&BendRule::neutral_axis(NeutralFactor::MIDDLE)).map_err(|e| e.under("profile"))?;
        let (first, second) = self.corner.frames().map_err(|e| e.under("corner"))?;
        let normal = self.normal(first.along, second.along)?;
        let section = Section::of(&flat, &self.placement, self.closes_on.into()).map_err(|e| e.under("placement"))?;
        let mut points = Vec::with_capacity(self.profile.legs.len() + 1);
        for (x, y) in corners(&section, &self.profile)? {
            let level = first.point((x, y), 0.0);
            let met = add(level, scale(first.along, -dot(normal, level) / dot(normal, first.along)));
            // Along the second run it comes to that run's section.
            points.push(Point { x: to_length(dot(met, second.x))?, y: to_length(dot(met, second.y))? });
            r.step(|| {
                let step = Step::new(format!("corner {}", points.len()));
                let step = step.formula("carried along the first run to the plane, and along the second to its section");
                let step = step.with("in the first section", format_args!("{x} mm, {y} mm"));
                let told = points.last().map(|p| format!("{}, {}", p.x, p.y)).unwrap_or_default();
                step.with("along the run", format_args!("{} mm", dot(met, first.along))).gives(told).source(Source::geometry())
            });
        }
        let legs = self.profile.legs.iter().zip(points.iter().skip(1)).map(|(leg, to)| ChainLeg { name: leg.name.clone(), to: *to });
        let chain = Chain {
            thickness: self.profile.thickness,
            // Each bend gets the radius of its fellow below.
            inside_radius: Length::ZERO,
            face: self.closes_on,
            start: points.first().copied().unwrap_or_default(),
            legs: legs.collect(),
            start_edge: self.profile.start_edge.clone(),
            end_edge: self.profile.end_edge.clone(),
            painted: self.profile.painted,
        };
        let (mut profile, placement) = chain.profile().and_then(|p| Ok((p, chain.placement()?))).map_err(|e| e.under("second"))?;
        for (own, fellow) in profile.bends.iter_mut().zip(&self.profile.bends) {
            own.inside_radius = fellow.inside_radius;
            own.rule.clone_from(&fellow.rule);
        }
        profile.validate().map_err(|e| e.under("second"))?;
        Ok(MatchedSection { profile, placement })
    }
}
