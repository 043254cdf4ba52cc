//! Panels on every plane: the lines around a plane tell the layout how the panels end at each edge.

use super::input::{LayoutChoices, MarkChoices};
use crate::error::{Error, ErrorKind};
use crate::layout::{Creep, EdgeUse, LaidPanel, LaidPlane, Layout, ListedPlane, MarkedSeams, PanelBreak, PanelList, SeamMarks, Start};
use crate::panel::Panel;
use crate::record::{Calculation, Recorder};
use crate::roof::{Edge, Line, LineKind, Outline, Point, Roof, Side};
use crate::units::{Length, ShopRounding, SurfaceMass};

/// The panels of one plane, with the line behind every edge of the outline that they were laid on.
///
/// ```
/// use seamwright::job::Job;
/// use seamwright::record::Calculation;
/// let packet = Job::from_json(include_bytes!(concat!(env!("CARGO_MANIFEST_DIR"), "/examples/demo_job.json")))?.compute()?;
/// let porch = packet.plane("porch").expect("the demo has a porch");
/// let names: Vec<&str> = porch.lines.iter().map(|l| packet.roof.lines()[*l].name.as_str()).collect();
/// assert_eq!(names.len(), porch.layout.outline.edge_count());
/// assert!(names.iter().any(|n| n.starts_with("eave")));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct PlaneLay {
    /// Number of the plane in the roof.
    pub plane: usize,
    /// Its name.
    pub name: String,
    /// What was laid, on the plane's own outline with a vertex wherever one line of the roof ends and the next begins, broken where a valley's pan runs out on it.
    pub layout: Layout,
    /// For every edge of that outline, the number of its line in the roof.
    pub lines: Vec<usize>,
    /// For every break of that layout, the number of the valley whose pan runs out there.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Vec::is_empty"))]
    pub broken_by: Vec<usize>,
    /// The panels. Where there is a list, marks, order lengths and coil are the list's, and a panel in pieces has those of its lowest.
    pub laid: LaidPlane,
    /// The list for shop and crew, where the job asks for one.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub listed: Option<ListedPlane>,
    /// The marks of the seams, where the job asks for them.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub marks: Option<MarkedSeams>,
}

impl PlaneLay {
    /// The line behind an edge of the layout, those of its breaks after those of its outline.
    pub(super) fn line_of(&self, edge: usize) -> Option<usize> {
        edge.checked_sub(self.lines.len()).map_or_else(|| self.lines.get(edge).copied(), |past| self.broken_by.get(past / 2).copied())
    }

    /// The panels that lie along a line beside the slope, and whether each has its seam there.
    pub(super) fn beside<'a>(&'a self, side: &'a Side) -> impl Iterator<Item = (&'a LaidPanel, bool)> + 'a {
        // The plane lies on the left of its line, which so runs up the slope on the plane's right.
        let on_right = side.end.y > side.start.y;
        let (low, high) = (side.start.y.min(side.end.y), side.start.y.max(side.end.y));
        let (near, far) = (side.start.x.min(side.end.x), side.start.x.max(side.end.x));
        self.laid.panels.iter().filter_map(move |p| {
            let (edge, seam) = if on_right { (p.right, p.right_on_seam) } else { (p.left, p.left_on_seam) };
            let foot = p.lower.iter().map(|e| e.left.y.min(e.right.y)).min()?;
            let head = p.upper.iter().map(|e| e.left.y.max(e.right.y)).max()?;
            let touches = (near <= edge && edge <= far) || (p.left < far && near < p.right);
            (touches && foot < high && low < head).then_some((p, seam && near == far))
        })
    }
}

/// The rings of a plane with a vertex at every end of a line, and the line of every edge.
fn ringed(roof: &Roof, plane: usize, around: &[(usize, &Side)]) -> Result<(Outline, Vec<usize>), Error> {
    let own = roof.planes().get(plane).ok_or_else(|| Error::new(ErrorKind::Internal, "a plane is missing").value_of(plane))?;
    let mut rings: Vec<Vec<Point>> = Vec::new();
    let mut lines = Vec::new();
    for (ring, corners) in own.outline().rings().enumerate() {
        let mut points = Vec::with_capacity(corners.len());
        for (edge, corner) in corners.iter().enumerate() {
            // Along the edge from its first corner.
            let mut on: Vec<(Length, usize, &Side)> = Vec::new();
            for &(line, side) in around.iter().filter(|(_, s)| s.ring == ring && s.edge == edge) {
                let (dx, dy) = ((side.start.x - corner.x).length()?, (side.start.y - corner.y).length()?);
                on.push((Length::from_mm(crate::num::hypot(dx.mm(), dy.mm()))?, line, side));
            }
            on.sort_by_key(|&(at, line, _)| (at, line));
            if on.is_empty() {
                return Err(Error::new(ErrorKind::Internal, "an edge of a plane is no line of the roof").at(format!("planes[{plane}]")).value_of(edge));
            }
            for (k, (_, line, side)) in on.into_iter().enumerate() {
                // The corner itself stays as the plane has it; the lines' own ends lie within the tolerance of it.
                points.push(if k == 0 { *corner } else { side.start });
                lines.push(line);
            }
        }
        rings.push(points);
    }
    let mut rings = rings.into_iter();
    let outer = rings.next().unwrap_or_default();
    Ok((Outline::new(outer, rings.collect())?, lines))
}

/// What all planes share.
pub(super) struct Lay<'a> {
    pub(super) roof: &'a Roof,
    pub(super) panel: Panel,
    pub(super) choices: &'a LayoutChoices,
    pub(super) sheet: SurfaceMass,
    /// What the crew's tape is read to.
    pub(super) tape: ShopRounding,
    /// Where the seams of every plane lie.
    pub(super) starts: Vec<Start>,
    /// For every plane, the lines around it by number.
    pub(super) around: Vec<Vec<(usize, &'a Side)>>,
}

/// How a plane's lines end its panels: by the line and its number.
pub(super) type EndAt<'a> = dyn Fn(&Line, usize) -> Result<EdgeUse, Error> + 'a;

/// Where a line breaks the panels of a plane beside which another begins, if it does: the line's number, its lower and its upper end in the plane and whether it
/// starts at the lower one, the number of the other line and that one's far end.
pub(super) type BreakAt<'a> = dyn Fn(usize, (Point, Point, bool), usize, Point) -> Result<Option<PanelBreak>, Error> + 'a;

/// What breaks a plane's panels: every valley that goes down to a corner of it.
fn broken(roof: &Roof, outline: &Outline, lines: &[usize], at: &BreakAt<'_>) -> Result<Vec<(usize, PanelBreak)>, Error> {
    let edges: Vec<Edge> = outline.edges().collect();
    let mut out = Vec::new();
    for (k, (edge, &line)) in edges.iter().zip(lines).enumerate() {
        if roof.lines().get(line).is_none_or(|l| l.kind != LineKind::Valley) {
            continue;
        }
        let starts_low = edge.from.y <= edge.to.y;
        let (low, high) = if starts_low { (edge.from, edge.to) } else { (edge.to, edge.from) };
        let beside = edges.iter().enumerate().find(|(n, e)| *n != k && e.ring == edge.ring && if starts_low { e.to == low } else { e.from == low });
        if let Some((n, next)) = beside
            && let Some(&other) = lines.get(n)
        {
            let found = at(line, (low, high, starts_low), other, if starts_low { next.from } else { next.to })?;
            out.extend(found.map(|b| (line, b)));
        }
    }
    Ok(out)
}

/// For every plane of the roof, its lines by number with their sides.
pub(super) fn lines_around(roof: &Roof) -> Vec<Vec<(usize, &Side)>> {
    let mut out = vec![Vec::new(); roof.planes().len()];
    for (number, line) in roof.lines().iter().enumerate() {
        for side in line.sides() {
            if let Some(of) = out.get_mut(side.plane) {
                of.push((number, side));
            }
        }
    }
    out
}

impl Lay<'_> {
    /// The panels of one plane.
    pub(super) fn plane<R: Recorder>(&self, r: &mut R, plane: usize, end: &EndAt<'_>, breaks: &BreakAt<'_>) -> Result<PlaneLay, Error> {
        let own = self.roof.planes().get(plane).ok_or_else(|| Error::new(ErrorKind::Internal, "a plane is missing").value_of(plane))?;
        let (outline, lines) = ringed(self.roof, plane, self.around.get(plane).map_or(&[], Vec::as_slice))?;
        let mut edges = Vec::with_capacity(lines.len());
        for &line in &lines {
            let of = self.roof.lines().get(line).ok_or_else(|| Error::new(ErrorKind::Internal, "a line is missing").value_of(line))?;
            edges.push(end(of, line)?);
        }
        let (broken_by, breaks) = broken(self.roof, &outline, &lines, breaks)?.into_iter().unzip();
        let layout = Layout {
            outline,
            panel: self.panel,
            start: self.starts.get(plane).copied().ok_or_else(|| Error::new(ErrorKind::Internal, "a plane has no start").value_of(plane))?,
            edges,
            breaks,
            rounding: self.choices.rounding,
            narrow: self.choices.narrow,
            limit: self.choices.limit,
            sheet: Some(self.sheet),
        };
        let name = own.name().to_owned();
        let path = format!("planes.{name}");
        let mut laid = r.part(|| format!("panels on {name}"), |r| layout.run(r)).map_err(|e| e.under(&path))?;
        let marks = match self.choices.marks {
            Some(choice) => Some(self.marks(r, &name, &layout, &laid, choice).map_err(|e| e.under(&path))?),
            None => None,
        };
        let mut listed = match &self.choices.list {
            Some(choices) => {
                Some(r.part(|| format!("list of {name}"), |r| PanelList::of(&layout, &laid, choices, r)).map_err(|e| e.under("layout.list").about(&name))?)
            }
            None => None,
        };
        // A mark must be unlike those of every other plane of the roof: the plane's number stands before it.
        if let Some(list) = &mut listed {
            list.onto(&mut laid);
            for group in &mut list.groups {
                group.mark = format!("{}{}", plane + 1, group.mark);
            }
        }
        for group in &mut laid.groups {
            group.mark = format!("{}{}", plane + 1, group.mark);
        }
        Ok(PlaneLay { plane, name, layout, lines, broken_by, laid, listed, marks })
    }

    fn marks<R: Recorder>(&self, r: &mut R, name: &str, layout: &Layout, laid: &LaidPlane, choice: MarkChoices) -> Result<MarkedSeams, Error> {
        let shares = self.choices.shares(name);
        let creep = choice.creep.map(|c| Creep { meets_within: c.meets_within.filter(|_| shares), ..c });
        let marks = SeamMarks { layout: layout.clone(), from: choice.from, tape: self.tape, creep };
        r.part(|| format!("marks of the seams on {name}"), |r| marks.of(laid, r))
    }
}
