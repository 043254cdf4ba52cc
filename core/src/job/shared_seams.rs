//! Planes whose seams meet: one datum, carried over the lines between them.

use super::input::LayoutChoices;
use crate::error::{Error, ErrorKind, Faults};
use crate::layout::Start;
use crate::roof::{Beyond, Roof, Side, has_plane};
use crate::units::{Length, ShopRounding};

/// Planes whose seams meet across the lines between them: a ridge, a transition, a hip that both meet at one angle.
///
/// The first lies by its own start, and the others go on from it, each over a line that it has with one before it in the list.
///
/// ```
/// use seamwright::job::SharedSeams;
/// let hall = SharedSeams { planes: vec!["main south".into(), "main north".into()] };
/// assert_eq!(hall.planes.len(), 2);
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct SharedSeams {
    /// The planes, by name: two or more.
    pub planes: Vec<String>,
}

impl LayoutChoices {
    /// Whether a plane shares its seams with another.
    pub(super) fn shares(&self, plane: &str) -> bool {
        self.shared.iter().any(|s| s.planes.iter().any(|p| p == plane))
    }

    /// What can be checked before the roof is known.
    pub(super) fn check_shared(&self, planes: &[&str], faults: &mut Faults) {
        let mut seen: Vec<&str> = Vec::new();
        for (i, shared) in self.shared.iter().enumerate() {
            if shared.planes.len() < 2 {
                let fault = Error::new(ErrorKind::OutOfRange, "seams are shared by two planes or more").at(format!("layout.shared[{i}].planes"));
                faults.add(fault.value_of(shared.planes.len()).accepts("2 or more"));
            }
            for (k, name) in shared.planes.iter().enumerate() {
                let path = format!("layout.shared[{i}].planes[{k}]");
                if !has_plane(planes, name, &path, faults) {
                    continue;
                }
                if seen.contains(&name.as_str()) {
                    faults.add(Error::new(ErrorKind::Conflict, "a plane shares its seams twice").at(path).value_of(name).accepts("each plane once"));
                } else if k > 0 && self.planes.iter().any(|p| p.plane == *name) {
                    let fault = Error::new(ErrorKind::Conflict, "a plane that goes on from another has a start of its own").at(path).value_of(name);
                    faults.add(fault.accepts("a plane without one, or the first of the list"));
                }
                seen.push(name);
            }
        }
    }

    /// Where the seams of every plane lie.
    pub(super) fn starts(&self, roof: &Roof, coverage: Length) -> Result<Vec<Start>, Error> {
        let mut out: Vec<Start> = roof.planes().iter().map(|p| self.start_on(p.name())).collect();
        let mut faults = Faults::default();
        for (i, shared) in self.shared.iter().enumerate() {
            let numbers: Vec<usize> = shared.planes.iter().filter_map(|name| roof.planes().iter().position(|p| p.name() == name)).collect();
            for (k, &plane) in numbers.iter().enumerate().skip(1) {
                let path = format!("shared[{i}].planes[{k}]");
                let before = numbers.get(..k).unwrap_or_default();
                let Some(start) = faults.keep(carried(roof, &out, before, plane, coverage).map_err(|e| e.at(path))) else { break };
                if let Some(slot) = out.get_mut(plane) {
                    *slot = start;
                }
            }
        }
        faults.check()?;
        Ok(out)
    }
}

/// The start of a plane whose seams go on from those of one of these planes.
fn carried(roof: &Roof, starts: &[Start], before: &[usize], plane: usize, coverage: Length) -> Result<Start, Error> {
    let internal = |what: &'static str| Error::new(ErrorKind::Internal, what).value_of(plane);
    let own = roof.planes().get(plane).ok_or_else(|| internal("a plane is missing"))?;
    let mut refused = None;
    for line in roof.lines() {
        let Beyond::Plane(other) = &line.beyond else { continue };
        let pair = [(&line.side, other), (other, &line.side)].into_iter().find(|(a, b)| before.contains(&a.plane) && b.plane == plane);
        let Some((from, to)) = pair else { continue };
        let first = roof.planes().get(from.plane).ok_or_else(|| internal("a plane is missing"))?;
        let start = starts.get(from.plane).ok_or_else(|| internal("a plane has no start"))?;
        let seam = start.seam(&first.outline().bounds(), coverage)?;
        match over(from, to, seam)? {
            Some(x) => return Ok(Start::Datum(snapped(x, own.outline().bounds(), coverage)?)),
            None => refused = Some(line.name.as_str()),
        }
    }
    Err(match refused {
        Some(line) => {
            Error::new(ErrorKind::Impossible, "the seams of the two planes do not meet on the line between them, which they cross at different angles")
                .value_of(format!("{} at {line}", own.name()))
                .accepts("planes that meet their line at one angle, as at a ridge or a transition")
        }
        None => Error::new(ErrorKind::Impossible, "the plane has no line with one before it in the list")
            .value_of(own.name())
            .accepts(before.iter().filter_map(|p| roof.planes().get(*p)).map(|p| format!("a neighbour of {}", p.name())).collect::<Vec<_>>().join(", or ")),
    })
}

/// A seam of one side of a line where it goes on, on the other side; none where equal seams do not meet there.
fn over(from: &Side, to: &Side, seam: Length) -> Result<Option<Length>, Error> {
    // Each side runs with its plane on the left, so the one ends where the other starts.
    let (a, b) = ((from.end.x - from.start.x).length()?, (to.start.x - to.end.x).length()?);
    let apart = (a.pm().abs() - b.pm().abs()).abs();
    if a == Length::ZERO || apart > ShopRounding::TOLERANCE.pm() {
        return Ok(None);
    }
    let along = seam - from.start.x;
    let x = if (a.pm() > 0) == (b.pm() > 0) { to.end.x + along } else { to.end.x - along };
    x.length().map(Some)
}

/// The seam moved onto a bound of its plane where it misses that by noise: else the noise would be a panel.
fn snapped(x: Length, bounds: crate::roof::Bounds, coverage: Length) -> Result<Length, Error> {
    for bound in [bounds.low.x, bounds.high.x] {
        let off = (i128::from(bound.pm()) - i128::from(x.pm())).rem_euclid(i128::from(coverage.pm()));
        let off = if 2 * off > i128::from(coverage.pm()) { off - i128::from(coverage.pm()) } else { off };
        if off.abs() <= i128::from(ShopRounding::TOLERANCE.pm()) {
            return (x + Length::from_pm(i64::try_from(off).unwrap_or_default())).length();
        }
    }
    Ok(x)
}
