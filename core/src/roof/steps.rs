//! Steps: the lower end of one plane plumb over the upper end of another.

use super::kind::LineKind;
use super::line::{Beyond, EdgeId, Line};
use super::matching::{Meeting, RoofEdge, Stretch, over_in_plan};
use super::plane_number::plane_number;
use super::{Plane, Water};
use crate::error::{Error, ErrorKind, Faults};
use crate::units::Length;

/// A step of the roof, by the names of its planes.
///
/// ```
/// use seamwright::roof::StepInput;
/// let step = StepInput { lower: "porch".into(), upper: "hall".into() };
/// assert_ne!(step.lower, step.upper);
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct StepInput {
    /// The plane below the riser, whose panels end at its foot.
    pub lower: String,
    /// The plane above it, whose water drops over the riser.
    pub upper: String,
}

/// Whether these planes are the two of a step: their ends lie apart as they should.
pub(super) fn parts(steps: &[StepInput], one: &Plane, other: &Plane) -> bool {
    let of = |lower: &Plane, upper: &Plane| steps.iter().any(|s| s.lower == lower.name() && s.upper == upper.name());
    of(one, other) || of(other, one)
}

/// A line of a step before it has its name, with the stretches of the edges that it takes.
pub(super) struct FoundStep {
    pub(super) meeting: Meeting,
    pub(super) line: Line,
}

/// The lines of every step; a fault for each that the planes do not make.
pub(super) fn find(steps: &[StepInput], planes: &[Plane], edges: &[RoofEdge], tolerance: Length) -> Result<Vec<FoundStep>, Error> {
    let (mut out, mut faults) = (Vec::new(), Faults::default());
    for (i, step) in steps.iter().enumerate() {
        let path = format!("steps[{i}]");
        if steps.iter().take(i).any(|s| s == step) {
            faults.add(
                Error::new(ErrorKind::Conflict, "a step given twice")
                    .at(path)
                    .value_of(format!("{} under {}", step.lower, step.upper))
                    .accepts("each step once"),
            );
            continue;
        }
        let mut number = |field: &str, name: &str| faults.keep(plane_number(planes.iter().map(Plane::name), name, format!("{path}.{field}")));
        let (Some(lower), Some(upper)) = (number("lower", &step.lower), number("upper", &step.upper)) else { continue };
        let before = out.len();
        let of = |plane: usize| edges.iter().enumerate().filter(move |(_, e)| e.id.plane == plane && e.id.ring == 0);
        for (f, lower_edge) in of(lower) {
            for (e, upper_edge) in of(upper).filter(|_| lower != upper) {
                let Some([on_f, on_e]) = over_in_plan(lower_edge, upper_edge, tolerance.mm())? else { continue };
                let (Some(below), Some(above)) = (planes.get(lower), planes.get(upper)) else { continue };
                let ends = Ends { below, above, ids: (lower_edge.id, upper_edge.id), on: (on_f, on_e), tolerance };
                match ends.line() {
                    Ok(Some(line)) => out.push(FoundStep { meeting: Meeting { edges: (f, e), on: (on_f, on_e) }, line }),
                    Ok(None) => {}
                    Err(fault) => faults.add(fault.at(path.clone()).about(&format!("{} under {}", step.lower, step.upper))),
                }
            }
        }
        if out.len() == before && faults.is_empty() {
            let error = Error::new(ErrorKind::Geometry, "no lower end of the upper plane lies plumb over an upper end of the lower one").at(path);
            faults.add(error.value_of(format!("{} under {}", step.lower, step.upper)).accepts("two planes whose level ends lie one over the other in plan"));
        }
    }
    faults.check()?;
    Ok(out)
}

/// Two edges over each other.
struct Ends<'a> {
    below: &'a Plane,
    above: &'a Plane,
    ids: (EdgeId, EdgeId),
    on: (Stretch, Stretch),
    tolerance: Length,
}

impl Ends<'_> {
    /// The line at the riser's foot; none where the two edges are no ends of their planes.
    fn line(&self) -> Result<Option<Line>, Error> {
        let tolerance = self.tolerance.mm();
        let (foot, top) = (self.on.0.piece(), self.on.1.piece());
        let (at_foot, at_top) = (foot.measures(), top.measures());
        let (side, _) = at_foot.side(self.below, self.ids.0, &foot, tolerance)?;
        let (other, _) = at_top.side(self.above, self.ids.1, &top, tolerance)?;
        if side.water == Water::Along && other.water == Water::Along {
            // Rakes over each other.
            return Ok(None);
        }
        let geometry = |message: String| Error::new(ErrorKind::Geometry, message);
        // The two run against each other.
        let risers = [(foot.start, top.end), (foot.end, top.start)].map(|(low, high)| (high.vertex().z - low.vertex().z).length());
        let [start, end] = risers;
        let (start, end) = (start?, end?);
        let (least, most) = (start.min(end), start.max(end));
        if (most - least).length()? > self.tolerance {
            return Err(geometry(format!("the riser's height varies by {}", (most - least).length()?))
                .value_of(format!("{start} to {end}"))
                .accepts(format!("one height within {}", self.tolerance))
                .cured_by("planes whose ends are parallel; a headwall and an eave, with a wall between, where they are not"));
        }
        if !(at_foot.is_level(tolerance) && at_top.is_level(tolerance)) {
            return Err(geometry("the ends at the riser are not level".into())
                .value_of(format!("{} out of level", (foot.end.vertex().z - foot.start.vertex().z).length()?))
                .accepts(format!("level within {}", self.tolerance)));
        }
        if least <= self.tolerance {
            let (message, cure) = if least < (-self.tolerance).length()? {
                (format!("the plane named the upper lies {} below the other", (-least).length()?), "the two names exchanged")
            } else {
                ("there is no riser between them".into(), "no step: planes that touch meet in a line of their own")
            };
            return Err(geometry(message).value_of(least).accepts(format!("a riser of more than {}", self.tolerance)).cured_by(cure));
        }
        for (water, wanted, message, plane) in [
            (side.water, Water::Away, "water runs against the riser and is dammed", self.below),
            (other.water, Water::Toward, "no water of the upper plane runs over the riser", self.above),
        ] {
            if water != wanted {
                let error = geometry(message.into()).value_of(format!("water of {} runs {water} the riser", plane.name()));
                return Err(error.accepts(format!("water {wanted}")).cured_by("a wall there, or a valley and a cricket that lead the water out"));
            }
        }
        let line = at_foot.line(LineKind::Step, &foot, None, side, Beyond::Plane(other))?;
        Ok(Some(Line { riser: Some(start), ..line }))
    }
}
