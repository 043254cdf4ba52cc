//! The lower end of a valley's pan: how each leg is cut, folded and sealed there, and how far the pan runs on for it.

use super::cautions::VALLEY_RUNS_OUT;
use crate::error::{Error, ErrorKind, Faults};
use crate::junction::{BeadSize, Side};
use crate::num;
use crate::panel::Growth;
use crate::record::{Calculation, Caution, Recorder, Source, Step};
use crate::units::{Angle, Length};

/// What a leg of a pan comes to at the valley's lower end.
///
/// ```
/// use seamwright::assembly::PanEndOn;
/// assert_ne!(PanEndOn::Eave, PanEndOn::Roof);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum PanEndOn {
    /// The plane ends at its eave: the leg runs over the eave's trim and is folded there as the panels are.
    Eave,
    /// The plane goes on below: the leg runs out over the panels there, and is cut level.
    Roof,
    /// The plane ends against a curb, a wall or an edge of its own, whose flashing laps over the leg.
    Against,
}

/// One leg of a pan at the valley's lower end.
///
/// ```
/// use seamwright::assembly::{PanEndOn, PanEndSide};
/// use seamwright::units::{Angle, Length};
/// let side = PanEndSide {
///     on: PanEndOn::Eave, angle: Angle::parse("135 deg")?, centre: Length::ZERO, edge: Length::inches(12), beyond: Length::inches(1), fold: Length::inches(1),
///     grows: None,
/// };
/// assert!(side.edge > side.centre);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct PanEndSide {
    /// What it comes to.
    pub on: PanEndOn,
    /// In the plane, between the valley's line going up and the line on which the plane ends here, or the level line where it goes on: 90 degrees is square.
    pub angle: Angle,
    /// From the junction line, along the plane and square to the line, to the pan's centreline.
    pub centre: Length,
    /// And to the pan's edge.
    pub edge: Length,
    /// How far the leg runs past the line on which the plane ends, square to that line; negative is short of it.
    pub beyond: Length,
    /// What is folded under there; 0 for a raw end.
    #[cfg_attr(feature = "serde", serde(default))]
    pub fold: Length,
    /// How the pan's edge goes out farther down the line, of a pan that widens: `edge` is that at the line's lower end.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub grows: Option<Growth>,
}

/// The lower end of a valley's pan.
///
/// A leg's end is cut along the line on which its plane ends. That line leaves the valley's lower end at more than a right angle where it is level, so that the pan's edges run
/// on farther than its centreline: by `out * tan(meeting)`.
///
/// # Errors
/// Computing refuses, with the field, an angle that is not between 0 and 180 degrees, an edge that lies no farther out than the centreline, a negative fold
/// ([`ErrorKind::OutOfRange`]).
///
/// ```
/// use seamwright::assembly::{PanEnd, PanEndOn, PanEndSide};
/// use seamwright::practice::junction as practice;
/// use seamwright::junction::BeadSize;
/// use seamwright::record::Calculation;
/// use seamwright::units::{Angle, Length};
/// // Eaves at 135 degrees from the valley: the edge of a 12 in leg runs on 12 in more than the centreline.
/// let side = PanEndSide {
///     on: PanEndOn::Eave, angle: Angle::parse("135 deg")?, centre: Length::ZERO, edge: Length::inches(12), beyond: Length::ZERO, fold: Length::ZERO,
///     grows: None,
/// };
/// let bead = BeadSize { width: practice::VALLEY_END_BEAD, depth: practice::VALLEY_END_BEAD };
/// let cut = PanEnd { first: side, second: side, beads: practice::VALLEY_END_BEADS, bead }.compute()?;
/// assert_eq!((cut.run_on, cut.first.at_centre), (Length::inches(12), Length::ZERO));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct PanEnd {
    /// The leg on side 1.
    pub first: PanEndSide,
    /// The leg on side 2.
    pub second: PanEndSide,
    /// Beads of sealant under each end that laps over an eave or a roof.
    pub beads: u32,
    /// Each of them.
    pub bead: BeadSize,
}

/// How a leg is cut.
///
/// See [`PanEnd`] for an example.
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct PanEndLeg {
    /// What it comes to.
    pub on: PanEndOn,
    /// Between the pan's centreline going up and the cut, along the leg.
    pub angle: Angle,
    /// Where the cut meets the pan's centreline, down from the end of the junction line; negative is up from it.
    pub at_centre: Length,
    /// Where it meets the pan's edge.
    pub at_edge: Length,
    /// The length of the cut.
    pub cut: Length,
    /// From the fold's line to the cut, square to it; 0 for a raw end.
    pub fold: Length,
    /// The same along the pan.
    pub fold_along: Length,
}

/// The lower end of a pan.
///
/// See [`PanEnd`] for an example.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct PanEndCut {
    /// How far the metal runs on beyond the end of the junction line.
    pub run_on: Length,
    /// The leg on side 1.
    pub first: PanEndLeg,
    /// The leg on side 2.
    pub second: PanEndLeg,
    /// Beads under each end that laps over an eave or a roof.
    pub beads: u32,
    /// Each of them.
    pub bead: BeadSize,
    /// All of them together.
    pub bead_length: Length,
    /// What to know before it is cut.
    pub cautions: Vec<Caution>,
}

/// How far down from the end of the line this side's own line lies, so far out on the plane; square to the line where it goes past it.
fn down(angle: Angle, out: Length, past: Length) -> Result<Length, Error> {
    let (sine, cosine) = (num::sin_deg(angle.degrees()), num::cos_deg(angle.degrees()));
    Length::from_mm((past.mm() - out.mm() * cosine) / sine)
}

impl PanEndSide {
    fn check(&self, path: &str, faults: &mut Faults) {
        let degrees = self.angle.degrees();
        if !(degrees > 0.0 && degrees < 180.0) {
            let fault = Error::new(ErrorKind::OutOfRange, "the plane has no width at the valley's end").at(format!("{path}.angle")).value_of(self.angle);
            faults.add(fault.accepts("more than 0 deg and less than 180 deg; 90 deg is square"));
        }
        if self.edge <= self.centre {
            let fault = Error::new(ErrorKind::OutOfRange, "the leg has no width").at(format!("{path}.edge")).value_of(self.edge);
            faults.add(fault.accepts(format!("more than {}", self.centre)));
        }
        faults.keep(self.fold.not_negative(&format!("{path}.fold")));
        if let Some(grows) = self.grows {
            faults.keep(grows.check().map_err(|e| e.under(&format!("{path}.grows"))));
        }
    }

    /// Where the cut meets the pan's edge: down from the end of the line, and out from the line. An edge that goes on outward beyond the end of the line meets it
    /// farther down and farther out.
    pub(crate) fn corner(&self) -> Result<(Length, Length), Error> {
        let lean = self.grows.map_or(0.0, |g| g.by.mm() / g.over.mm());
        let cot = num::cos_deg(self.angle.degrees()) / num::sin_deg(self.angle.degrees());
        let at_edge = Length::from_mm(down(self.angle, self.edge, (self.beyond + self.fold).length()?)?.mm() / (1.0 + lean * cot))?;
        Ok((at_edge, Length::from_mm(self.edge.mm() + lean * at_edge.mm())?))
    }

    fn leg(&self) -> Result<PanEndLeg, Error> {
        let past = (self.beyond + self.fold).length()?;
        let (at_edge, edge) = self.corner()?;
        let cut = Length::from_mm((edge - self.centre).length()?.mm() / num::sin_deg(self.angle.degrees()))?;
        Ok(PanEndLeg {
            on: self.on,
            angle: self.angle,
            at_centre: down(self.angle, self.centre, past)?,
            at_edge,
            cut,
            fold: self.fold,
            fold_along: down(self.angle, Length::ZERO, self.fold)?,
        })
    }
}

impl PanEndCut {
    /// The leg of a side.
    #[must_use]
    pub fn leg(&self, side: Side) -> &PanEndLeg {
        if side == Side::Second { &self.second } else { &self.first }
    }

    /// How far what runs along the pan so far out on a side goes on beyond the end of the line, to where its plane ends; at least to the end of the line.
    ///
    /// # Errors
    /// [`ErrorKind::Overflow`] beyond the range of a length.
    pub fn beside(&self, side: Side, out: Length) -> Result<Length, Error> {
        let leg = self.leg(side);
        match leg.on {
            PanEndOn::Roof => Ok(Length::ZERO),
            PanEndOn::Eave | PanEndOn::Against => Ok(down(leg.angle, out, Length::ZERO)?.max(Length::ZERO)),
        }
    }
}

impl Calculation for PanEnd {
    type Out = PanEndCut;

    fn title(&self) -> String {
        "lower end of a valley's pan".into()
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<PanEndCut, Error> {
        let mut faults = Faults::default();
        self.first.check("first", &mut faults);
        self.second.check("second", &mut faults);
        for (path, length) in [("bead.width", self.bead.width), ("bead.depth", self.bead.depth)] {
            faults.keep(length.positive(path));
        }
        faults.check()?;
        let (first, second) = (self.first.leg().map_err(|e| e.under("first"))?, self.second.leg().map_err(|e| e.under("second"))?);
        for (name, side, leg) in [("side 1", &self.first, &first), ("side 2", &self.second, &second)] {
            r.step(|| {
                Step::new(format!("the cut of {name} at the centreline, down from the end of the line"))
                    .formula("(beyond + fold) / sin(angle) - centre cot(angle)")
                    .with("beyond", side.beyond)
                    .with("fold", side.fold)
                    .with("angle", side.angle)
                    .with("centre", side.centre)
                    .gives(leg.at_centre)
                    .source(Source::geometry())
            });
            r.step(|| {
                let step = Step::new(format!("the same at the edge of {name}"));
                let step = match side.grows {
                    None => step.formula("(beyond + fold) / sin(angle) - edge cot(angle)"),
                    Some(g) => {
                        step.formula("((beyond + fold) / sin(angle) - edge cot(angle)) / (1 + by / over cot(angle))").with("by", g.by).with("over", g.over)
                    }
                };
                step.with("edge", side.edge).gives(leg.at_edge).source(Source::geometry())
            });
        }
        let run_on = [first.at_centre, first.at_edge, second.at_centre, second.at_edge].into_iter().fold(Length::ZERO, Length::max);
        let lapped = [&first, &second].into_iter().filter(|l| l.on != PanEndOn::Against).map(|l| &l.cut);
        let bead_length = (Length::total(lapped)? * i32::try_from(self.beads).unwrap_or(i32::MAX)).length()?;
        r.step(|| {
            let step = Step::new("beads under the end").formula("beads x the cuts over an eave or a roof").with("beads", self.beads);
            step.gives(bead_length).source(Source::CommonPractice)
        });
        let mut cautions = Vec::new();
        for (name, leg) in [("first", &first), ("second", &second)] {
            if leg.on == PanEndOn::Roof {
                cautions.push(Caution::new(VALLEY_RUNS_OUT, name, Source::CommonPractice).arg("run", leg.at_centre).arg("cut", leg.cut));
            }
        }
        Ok(PanEndCut { run_on, first, second, beads: self.beads, bead: self.bead, bead_length, cautions })
    }
}
