//! A cricket's planes set behind a hole of a plane, and the hole grown by what they cover.

use super::figures::{Cricket, CricketFigures, CricketShape};
use crate::error::{Error, ErrorKind, Faults};
use crate::num;
use crate::practice::roof as practice;
use crate::record::{Calculation, Recorder};
use crate::roof::{Edge, Opening, Plane, PlaneInput, Point, Shape, Vertex, kind};
use crate::units::{Angle, Length};

/// A cricket behind a hole of a plane.
///
/// The roof then has two planes more, named after the plane and the hole (`south curb cricket left`, looking up the slope), the plane's hole is grown by what they cover, and the
/// lines between them are named and laid as any others: a ridge, two valleys, and the cricket's own edges along the curb.
///
/// ```
/// use seamwright::pitch::Pitch;
/// use seamwright::record::Calculation;
/// use seamwright::roof::{CricketInput, CricketShape, LineKind, Opening, PlaneInput, Point, RoofInput, Shape, Vertex};
/// use seamwright::units::{Angle, Length};
/// let p = |x, y| Point::new(Length::feet(x), Length::feet(y));
/// let shape = Shape::Plan {
///     outer: vec![p(0, 0), p(40, 0), p(40, 30), p(0, 30)],
///     holes: vec![Opening { name: "curb".into(), ring: vec![p(10, 8), p(14, 8), p(14, 11), p(10, 11)] }],
///     pitch: Pitch::parse("4:12")?,
///     down_slope: Angle::parse("270 deg")?,
///     anchor: Vertex::default(),
/// };
/// let mut input = RoofInput::new(vec![PlaneInput { name: "south".into(), shape }]);
/// input.crickets.push(CricketInput { plane: "south".into(), hole: "curb".into(), shape: CricketShape::of(Pitch::parse("4:12")?) });
/// let roof = input.compute()?;
/// assert_eq!((roof.planes().len(), roof.lines_of(LineKind::Valley).count(), roof.lines_of(LineKind::CurbBack).count()), (3, 2, 0));
/// assert_eq!(roof.line("ridge 1")?.length, Length::inches(24));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct CricketInput {
    /// The plane, by name.
    pub plane: String,
    /// The hole in it, by name: its upper side is one level edge.
    pub hole: String,
    /// What is chosen.
    pub shape: CricketShape,
}

impl CricketInput {
    /// The name of one of its planes, looking up the slope.
    #[must_use]
    pub fn plane_name(&self, right: bool) -> String {
        format!("{} {} cricket {}", self.plane, self.hole, if right { "right" } else { "left" })
    }
}

/// A cricket of a roof.
///
/// ```
/// use seamwright::pitch::Pitch;
/// use seamwright::record::Calculation;
/// use seamwright::roof::{CricketInput, CricketShape, Opening, PlaneInput, RoofInput, Shape, Vertex};
/// use seamwright::units::Length;
/// let v = |x, y, z| Vertex::new(Length::feet(x), Length::feet(y), Length::feet(z));
/// let curb = Opening { name: "curb".into(), ring: vec![v(10, 8, 4), v(14, 8, 4), v(14, 12, 6), v(10, 12, 6)] };
/// let shape = Shape::Space { outer: vec![v(0, 0, 0), v(40, 0, 0), v(40, 30, 15), v(0, 30, 15)], holes: vec![curb], flatness: None };
/// let mut input = RoofInput::new(vec![PlaneInput { name: "south".into(), shape }]);
/// input.crickets.push(CricketInput { plane: "south".into(), hole: "curb".into(), shape: CricketShape::of(Pitch::parse("3:12")?) });
/// let roof = input.compute()?;
/// let cricket = &roof.crickets()[0];
/// assert_eq!((cricket.left, cricket.right, cricket.figures.reach_plan), (1, 2, Length::feet(1)));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct PlacedCricket {
    /// Number of the plane in which it stands.
    pub plane: usize,
    /// The hole behind which it stands.
    pub hole: String,
    /// Number of its left plane, looking up the slope.
    pub left: usize,
    /// Number of its right plane.
    pub right: usize,
    /// Its measures.
    pub figures: CricketFigures,
}

/// The planes of a cricket in its place.
pub(in crate::roof) struct Placing {
    /// The plane with its hole grown, as given and as checked.
    pub(in crate::roof) main: (PlaneInput, Plane),
    pub(in crate::roof) left: Plane,
    pub(in crate::roof) right: Plane,
    pub(in crate::roof) figures: CricketFigures,
}

/// The back of a hole: its left and its right corner, looking up the slope, and its edge.
struct Back {
    left: Vertex,
    right: Vertex,
    edge: Edge,
}

/// To a degree: 2^40.
const TURN_STEPS: f64 = 1_099_511_627_776.0;

fn internal() -> Error {
    Error::new(ErrorKind::Internal, "a ring of a plane is out of step")
}

fn on_plan(v: Vertex) -> Point {
    Point::new(v.x, v.y)
}

/// The one edge of the hole to which water runs.
fn back(plane: &Plane, hole: usize, name: &str, tolerance: Length) -> Result<Back, Error> {
    let refuse = |what: String, value: String| {
        Error::new(ErrorKind::Geometry, what)
            .at("hole")
            .value_of(value)
            .accepts("a hole whose upper side is one level edge")
            .cured_by("a hole square to the slope")
    };
    let ring = plane.rings().get(hole + 1).ok_or_else(internal)?;
    let shape = plane.outline().rings().nth(hole + 1).ok_or_else(internal)?;
    let mut backs = Vec::new();
    for (k, edge) in plane.plan().edges().filter(|e| e.ring == hole + 1).enumerate() {
        let next = (k + 1) % ring.len().max(1);
        let (Some(&a), Some(&b), Some(p), Some(q)) = (ring.get(k), ring.get(next), shape.get(k), shape.get(next)) else { return Err(internal()) };
        let (across, up) = ((q.x - p.x).length()?.mm(), (q.y - p.y).length()?.mm());
        // The plane lies on the left of its edges: above those that run to the right.
        if across > num::hypot(across, up) * practice::RAKE_LIMIT.sin() {
            backs.push(Back { left: a, right: b, edge });
        }
    }
    let count = backs.len();
    let Some(back) = backs.pop().filter(|_| count == 1) else {
        return Err(refuse(format!("water runs against {count} edges of the hole {name}"), format!("{count} edges")));
    };
    let d = back.right.from(back.left);
    if !kind::is_level(d[2], num::space::norm(d), tolerance.mm()) {
        return Err(refuse(format!("the back of the hole {name} is not level"), format!("{} over its width", Length::from_mm(d[2].abs())?)));
    }
    Ok(back)
}

/// The middle of two lengths; of two that are an odd number of picometres apart the picometre nearer to the first, so that it moves and turns with the roof.
fn middle(first: Length, second: Length) -> Result<Length, Error> {
    let apart = (second - first).length()?;
    (first + Length::from_pm(apart.pm() / 2)).length()
}

/// How far the cricket reaches past an edge that runs through it, up the slope, and the share of its pitch that would not; nothing where the edge keeps clear.
fn past(edge: (V2, V2), (a, reach): (f64, f64)) -> Option<(f64, f64)> {
    let ((x0, y0), (x1, y1)) = edge;
    // Inside the triangle: above the back line and below both valleys.
    let inside = [(0.0, 1.0, 0.0), (-reach / a, -1.0, reach), (reach / a, -1.0, reach)];
    let (mut from, mut to) = (0.0_f64, 1.0_f64);
    for (p, q, c) in inside {
        let (start, end) = (p * x0 + q * y0 + c, p * x1 + q * y1 + c);
        if start < 0.0 && end < 0.0 {
            return None;
        }
        let cut = start / (start - end);
        if start < 0.0 {
            from = from.max(cut);
        } else if end < 0.0 {
            to = to.min(cut);
        }
    }
    if from > to {
        return None;
    }
    let mut worst = (0.0_f64, 1.0_f64);
    let crest = (x0 * x1 < 0.0).then(|| x0 / (x0 - x1)).filter(|t| *t > from && *t < to);
    for t in [Some(from), Some(to), crest].into_iter().flatten() {
        let (x, y) = (x0 + t * (x1 - x0), y0 + t * (y1 - y0));
        let top = reach * (1.0 - x.abs() / a);
        worst = (worst.0.max(top - y), worst.1.min(if top > 0.0 { y / top } else { 1.0 }));
    }
    Some(worst)
}

type V2 = (f64, f64);

/// Refuses a cricket that reaches to or past an edge of its plane or of another hole.
fn fits(plane: &Plane, hole: usize, back: &Back, cricket: &CricketInput, figures: &CricketFigures) -> Result<(), Error> {
    let (left, right) = (plane.to_plane(back.left)?, plane.to_plane(back.right)?);
    let origin = (f64::midpoint(left.x.mm(), right.x.mm()), f64::midpoint(left.y.mm(), right.y.mm()));
    let size = (figures.half_width.mm(), figures.reach.mm());
    let at = |p: Point| (p.x.mm() - origin.0, p.y.mm() - origin.1);
    let mut worst: Option<(f64, f64, String)> = None;
    for edge in plane.outline().edges().filter(|e| e.ring != hole + 1) {
        let Some((depth, share)) = past((at(edge.from), at(edge.to)), size) else { continue };
        if worst.as_ref().is_none_or(|w| depth > w.0) {
            let of = edge.ring.checked_sub(1).and_then(|h| plane.hole_names().get(h));
            let what = of.map_or_else(|| format!("edge {} of {}", edge.given, plane.name()), |name| format!("the hole {name}"));
            worst = Some((depth, worst.map_or(share, |w| share.min(w.1)), what));
        } else if let Some(w) = &mut worst {
            w.1 = w.1.min(share);
        }
    }
    let Some((depth, share, what)) = worst else { return Ok(()) };
    let depth = Length::from_mm(depth)?;
    let flatter = cricket.shape.pitch.ratio() * share;
    let cure = if flatter * 1200.0 > 1.0 {
        format!("a cricket flatter than {:.2}:12, or one whose ridge falls away from the curb", (flatter * 1200.0).floor() / 100.0)
    } else {
        "a cricket that reaches less far past its curb, or another place for the curb".to_owned()
    };
    Err(Error::new(ErrorKind::Impossible, format!("the cricket reaches past {what} by {depth}, up the slope"))
        .at("shape")
        .value_of(format_args!("{} from the curb's back, {} to either side", figures.reach, figures.half_width))
        .accepts(format!("a cricket that ends more than {depth} lower there"))
        .cured_by(cure))
}

/// A ring with these vertices set in behind the edge of this number, whichever way round it was given.
fn grown<P: Copy>(ring: &[P], edge: usize, left_first: bool, added: &[P]) -> Vec<P> {
    let mut out = ring.to_vec();
    let mut added = added.to_vec();
    if !left_first {
        added.reverse();
    }
    let at = (edge + 1).min(out.len());
    out.splice(at..at, added);
    out
}

/// The plane with its hole grown by these vertices, from the back's left corner to its right.
fn with_grown_hole(input: &PlaneInput, plane: &Plane, hole: usize, back: &Back, added: &[Point]) -> Result<PlaneInput, Error> {
    let mut input = input.clone();
    let left = on_plan(back.left);
    let of = |ring: &[Point]| grown(ring, back.edge.given, ring.get(back.edge.given) == Some(&left), added);
    match &mut input.shape {
        Shape::Plan { holes, .. } => {
            let opening: &mut Opening<Point> = holes.get_mut(hole).ok_or_else(internal)?;
            opening.ring = of(&opening.ring);
        }
        Shape::Space { holes, .. } => {
            let opening: &mut Opening<Vertex> = holes.get_mut(hole).ok_or_else(internal)?;
            let added = added.iter().map(|p| plane.at_plan(*p)).collect::<Result<Vec<_>, _>>()?;
            let left_first = opening.ring.get(back.edge.given).map(|v| on_plan(*v)) == Some(left);
            opening.ring = grown(&opening.ring, back.edge.given, left_first, &added);
        }
    }
    Ok(input)
}

/// Sets a cricket into its plane.
pub(in crate::roof) fn place<R: Recorder>(input: &PlaneInput, plane: &Plane, cricket: &CricketInput, tolerance: Length, r: &mut R) -> Result<Placing, Error> {
    let names = plane.hole_names();
    let hole = names.iter().position(|n| *n == cricket.hole).ok_or_else(|| {
        let accepted = if names.is_empty() { "a hole of the plane, which has none".to_owned() } else { names.join(", ") };
        Error::new(ErrorKind::Unknown, "the plane has no hole of this name").at("hole").value_of(&cricket.hole).accepts(accepted)
    })?;
    let mut faults = Faults::default();
    faults.keep(cricket.shape.check().map_err(|e| e.under("shape")));
    let back = faults.keep(back(plane, hole, &cricket.hole, tolerance));
    faults.check()?;
    let back = back.ok_or_else(internal)?;
    let d = back.right.from(back.left);
    let calculation = Cricket { roof: plane.pitch(), width: Length::from_mm(num::hypot(d[0], d[1]))?, shape: cricket.shape.clone() };
    let figures = r.part(|| calculation.title(), |r| calculation.run(r))?;
    fits(plane, hole, &back, cricket, &figures)?;

    // Level and to the right, looking up the slope; and up it in plan.
    let across = [plane.across().x_ratio, plane.across().y_ratio];
    let up = [-across[1], across[0]];
    let moved = |from: Point, by: Length, along: [f64; 2]| -> Result<Point, Error> {
        let [x, y] = along;
        Ok(Point::new((from.x + Length::from_mm(by.mm() * x)?).length()?, (from.y + Length::from_mm(by.mm() * y)?).length()?))
    };
    let (left, right) = (on_plan(back.left), on_plan(back.right));
    let foot = Point::new(middle(left.x, right.x)?, middle(left.y, right.y)?);
    let top = moved(foot, figures.reach_plan, up)?;
    let beyond = cricket.shape.beyond;
    let ends = (moved(left, (-beyond).length()?, across)?, moved(right, beyond, across)?);
    let past_curb = beyond.is_positive();
    let added = if past_curb { vec![ends.0, top, ends.1] } else { vec![top] };
    let main_input = with_grown_hole(input, plane, hole, &back, &added)?;
    let main = main_input.plane()?;
    let crest = main.at_plan(top)?;

    // In steps that leave every sum with the plane's own direction whole, so that the mirrored planes have the mirrored bits.
    let turn = cricket.shape.ridge_fall.map_or(0.0, |g| num::atan2_deg(g.ratio(), cricket.shape.pitch.ratio()));
    let turn = (turn * TURN_STEPS).round() / TURN_STEPS;
    let side = |is_right: bool, corner: Point, end: Point| -> Result<Plane, Error> {
        let down = plane.down_slope().degrees() + if is_right { 90.0 + turn } else { -90.0 - turn };
        // The first edge is the one along the curb.
        let outer = if past_curb { vec![foot, corner, end, top] } else { vec![foot, corner, top] };
        let shape = Shape::Plan { outer, holes: Vec::new(), pitch: figures.pitch, down_slope: Angle::degrees_from(down)?, anchor: crest };
        let mut made = PlaneInput { name: cricket.plane_name(is_right), shape }.plane()?;
        made.behind = Some(cricket.hole.clone());
        Ok(made)
    };
    Ok(Placing { left: side(false, left, ends.0)?, right: side(true, right, ends.1)?, main: (main_input, main), figures })
}
