//! The cut of an end as a line across the blank.

use super::end::EndCut;
use crate::error::{Error, ErrorKind};
use crate::num;
use crate::record::Calculation;
use crate::trim::size::to_length;
use crate::trim::{BendRule, Flat, Mitre, Part, PieceEnd, Point, Profile, SecondHalf};
use crate::units::{Angle, Length};

/// A line across the blank by points of rising station.
pub(super) struct EndLine(pub(super) Vec<Point>);

impl EndLine {
    /// How far along the run the line lies at this station.
    pub(super) fn at(&self, x: Length) -> Result<Length, Error> {
        let after = self.0.partition_point(|p| p.x < x);
        match (after.checked_sub(1).and_then(|i| self.0.get(i)), self.0.get(after)) {
            (_, Some(b)) if b.x == x => Ok(b.y),
            (Some(a), Some(b)) => {
                let share = (x - a.x).length()?.mm() / (b.x - a.x).length()?.mm();
                (a.y + to_length((b.y - a.y).length()?.mm() * share)?).length()
            }
            (Some(p), None) | (None, Some(p)) => Ok(p.y),
            (None, None) => Ok(Length::ZERO),
        }
    }

    /// The points between two stations, both left out.
    pub(super) fn between(&self, from: Length, to: Length) -> impl Iterator<Item = Point> {
        self.0.iter().copied().filter(move |p| p.x > from && p.x < to)
    }

    /// Whether it runs square across between two stations.
    pub(super) fn is_square(&self, from: Length, to: Length) -> Result<bool, Error> {
        let y = self.at(from)?;
        Ok(self.at(to)? == y && self.between(from, to).all(|p| p.y == y))
    }
}

fn slope(angle: Angle, path: impl FnOnce() -> String) -> Result<f64, Error> {
    let degrees = angle.degrees();
    if degrees <= 0.0 || degrees >= 180.0 {
        return Err(Error::new(ErrorKind::OutOfRange, "a cut runs across the leg").at(path()).value_of(angle).accepts("more than 0 deg and less than 180 deg"));
    }
    Ok(num::cos_deg(degrees) / num::sin_deg(degrees))
}

fn by_legs(flat: &Flat, profile: &Profile, start: Length, angles: &[Angle]) -> Result<Vec<Point>, Error> {
    if angles.len() != profile.legs.len() {
        return Err(Error::new(ErrorKind::Conflict, "there is one angle for each leg")
            .at("cut.legs.angles")
            .value_of(angles.len())
            .accepts(format!("{} angles", profile.legs.len())));
    }
    let slopes: Vec<f64> = angles.iter().enumerate().map(|(i, a)| slope(*a, || format!("cut.legs.angles[{i}]"))).collect::<Result<_, _>>()?;
    let of = |part: Part| match part {
        // A return runs back over its leg, and a lip as the leg does.
        Part::StartLip => slopes.first().copied().unwrap_or(0.0),
        Part::StartHem => slopes.first().map_or(0.0, |s| -s),
        Part::Body(i) => slopes.get(i).copied().unwrap_or(0.0),
        Part::EndHem => slopes.last().map_or(0.0, |s| -s),
        Part::EndLip => slopes.last().copied().unwrap_or(0.0),
    };
    let mut out = vec![Point { x: Length::ZERO, y: start }];
    let mut y = start.mm();
    let mut put = |by: f64, slope: f64, to: Length| -> Result<(), Error> {
        y += by * slope;
        out.push(Point { x: to, y: to_length(y)? });
        Ok(())
    };
    for (i, leg) in flat.legs().iter().enumerate() {
        put(leg.length().mm(), of(leg.part), leg.to)?;
        if let (Some(bend), Some(next)) = (flat.bends().get(i), flat.legs().get(i + 1)) {
            put(bend.allowance().mm(), (of(leg.part) + of(next.part)) / 2.0, bend.to)?;
        }
    }
    Ok(out)
}

/// The line of an end, and how far the section is turned there.
pub(super) fn of(cut: &EndCut, end: PieceEnd, flat: &Flat, profile: &Profile, rule: &BendRule, tolerance: Length) -> Result<(Vec<Point>, Angle), Error> {
    match cut {
        EndCut::Square => Ok((vec![Point::ORIGIN, Point { x: flat.girth(), y: Length::ZERO }], Angle::ZERO)),
        EndCut::Legs { start, angles } => Ok((by_legs(flat, profile, *start, angles)?, Angle::ZERO)),
        EndCut::Mitred(mitred) => {
            let mitre = Mitre {
                profile: profile.clone(),
                placement: mitred.placement,
                rule: rule.clone(),
                corner: mitred.corner,
                second: SecondHalf::Turned,
                closes_on: mitred.closes_on,
                tolerance,
            };
            let corner = mitre.compute().map_err(|e| if e.path().starts_with("tolerance") { e } else { e.under("cut.mitred") })?;
            Ok(match end {
                PieceEnd::Near => (corner.second.line, corner.roll),
                PieceEnd::Far => (corner.first.line, Angle::ZERO),
            })
        }
    }
}
