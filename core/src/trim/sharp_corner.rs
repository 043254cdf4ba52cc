//! The sharp-corner sum: nominal legs are added and nothing is deducted.

use super::size::BendMm;
use crate::error::{Error, ErrorKind};
use crate::record::{Source, Step};
use crate::units::Length;

pub(super) static SOURCE: Source = Source::CommonPractice;

#[inline]
pub(super) fn allowance_mm(bend: &BendMm) -> Result<f64, Error> {
    let degrees = bend.degrees();
    if degrees < 180.0 {
        bend.two_setbacks()
    } else if degrees > 180.0 {
        Err(Error::new(ErrorKind::OutOfRange, "a bend past 180 degrees has no nominal legs to add")
            .at("angle")
            .value_of(bend.size.angle)
            .accepts("at most 180 deg from flat")
            .cured_by("the neutral-axis rule for this bend"))
    } else {
        // A hem's legs are nominal to the outside of the fold: the single hem's allowance is its width (NAVEDTRA 14251, Steelworker vol. 2,
        // 1996, chapter 2, figure 2-54).
        Ok(2.0 * (bend.r + bend.t))
    }
}

pub(super) fn step(bend: &BendMm, allowance: Length) -> Step {
    let step = Step::new("flat length of the bend BA");
    let step = if bend.degrees() < 180.0 {
        step.formula("2 (R + T) tan(A/2): legs to the outer corner are added, nothing is deducted")
    } else {
        step.formula("2 (R + T): legs to the outside of the fold are added, nothing is deducted")
    };
    step.with("A", bend.size.angle).with("R", bend.size.inside_radius).with("T", bend.size.thickness).gives(allowance).source(SOURCE.clone())
}
