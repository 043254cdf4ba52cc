//! A plane's line on the flat.

use super::section::{Section, Stretch};
use crate::error::{Error, ErrorKind};
use crate::num;
use crate::trim::Point;
use crate::trim::size::to_length;
use crate::units::Length;

/// The most points of one line in one bend.
const MOST: f64 = 10_000.0;

/// A plane that cuts a run: how far along the run it lies, as a linear function of the section.
#[derive(Debug, Clone, Copy)]
pub(in crate::trim) struct PlaneCut {
    pub(in crate::trim) at_origin: f64,
    pub(in crate::trim) by_x: f64,
    pub(in crate::trim) by_y: f64,
}

impl PlaneCut {
    pub(in crate::trim) fn along(&self, (x, y): (f64, f64)) -> f64 {
        self.at_origin + self.by_x * x + self.by_y * y
    }

    /// How far the cut runs on for each length of a leg of this heading: the cotangent of its angle from the bend lines.
    pub(in crate::trim) fn slope(&self, heading: f64) -> f64 {
        self.by_x * num::cos_deg(heading) + self.by_y * num::sin_deg(heading)
    }

    pub(in crate::trim) fn steepness(&self) -> f64 {
        num::hypot(self.by_x, self.by_y)
    }
}

/// How many chords a bend's line is cut into: an even number, so that the bend line is among the points.
///
/// On an arc of radius r the cut runs on by a sine of amplitude r k, so a chord over the angle p strays by at most r k p^2/8.
fn chords(stretch: &Stretch, steepness: f64, tolerance: f64) -> Result<u32, Error> {
    let turn = stretch.turn.abs() * num::RADIANS_PER_DEGREE;
    let pairs = (turn * (stretch.radius * steepness / (8.0 * tolerance)).sqrt() / 2.0).ceil().max(1.0);
    if 2.0 * pairs > MOST {
        return Err(Error::new(ErrorKind::TooLarge, "the line in a bend would need too many points")
            .at("tolerance")
            .value_of(format_args!("{tolerance} mm"))
            .accepts("a tolerance that 10 000 points in a bend can keep"));
    }
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "between 2 and 10 000")]
    Ok(2 * pairs as u32)
}

/// The line on the flat, from the start edge to the end edge: stations, and how far along the run. Exact at the tangent lines and at the bend lines.
pub(in crate::trim) fn cut_line(section: &Section, planes: &[PlaneCut], tolerance: Length) -> Result<Vec<Point>, Error> {
    let tolerance = tolerance.positive("tolerance")?.mm();
    let mut out: Vec<Point> = Vec::with_capacity(3 * section.0.len());
    let mut put = |station: f64, along: f64| -> Result<(), Error> {
        let point = Point { x: to_length(station)?, y: to_length(along)? };
        // Two stretches that meet share a point, to the rounding of the section's points.
        if out.last().is_none_or(|last| last.x != point.x || (last.y.pm() - point.y.pm()).abs() > 100) {
            out.push(point);
        }
        Ok(())
    };
    for (stretch, plane) in section.0.iter().zip(planes) {
        let count = if stretch.is_bend() { chords(stretch, plane.steepness(), tolerance)? } else { 1 };
        for i in 0..=count {
            let share = f64::from(i) / f64::from(count);
            let station = if 2 * i == count { stretch.middle } else { stretch.station(share) };
            put(station, plane.along(stretch.at(share)))?;
        }
    }
    Ok(out)
}
