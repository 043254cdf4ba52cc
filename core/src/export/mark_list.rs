//! The marks of the seams as CSV, for the crew.

use super::sheet_text::sheet_text;
use crate::error::{Error, ErrorKind};
use crate::job::PlaneLay;
use crate::layout::{EndMark, PlaneSide};
use crate::units::LengthFormat;

/// The running marks of every seam of these planes as CSV in UTF-8: across the slope from the datum, and along the edges at its foot and its head, each as it is read
/// off the tape. Planes without marks have no rows.
///
/// # Errors
/// [`ErrorKind::Overflow`] for a length that the notation cannot show.
///
/// ```
/// use seamwright::export::seam_marks_csv;
/// use seamwright::units::LengthFormat;
/// assert_eq!(seam_marks_csv(&[], LengthFormat::EXACT)?, b"plane,seam,across,at the foot,at the head\r\n");
/// # Ok::<(), seamwright::error::Error>(())
/// ```
pub fn seam_marks_csv(planes: &[PlaneLay], format: LengthFormat) -> Result<Vec<u8>, Error> {
    let mut out = csv::WriterBuilder::new().terminator(csv::Terminator::CRLF).from_writer(Vec::new());
    out.write_record(["plane", "seam", "across", "at the foot", "at the head"]).map_err(unwritten)?;
    let end = |mark: Option<EndMark>| mark.map_or(Ok(String::new()), |m| format.string(m.along.read));
    for (lay, marks) in planes.iter().filter_map(|p| Some((p, p.marks.as_ref()?))) {
        for seam in &marks.seams {
            let number = (seam.seam + 1).to_string();
            out.write_record([sheet_text(&lay.name).as_ref(), &number, &format.string(seam.across.read)?, &end(seam.foot)?, &end(seam.head)?])
                .map_err(unwritten)?;
        }
    }
    out.into_inner().map_err(|e| Error::new(ErrorKind::Internal, "the marks could not be written").value_of(e.error()))
}

/// The checks of creep of these planes as CSV in UTF-8.
///
/// # Errors
/// As [`seam_marks_csv`].
///
/// ```
/// use seamwright::export::creep_checks_csv;
/// use seamwright::units::LengthFormat;
/// let csv = creep_checks_csv(&[], LengthFormat::EXACT)?;
/// assert!(csv.starts_with(b"plane,toward,after panels,mark,"));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
pub fn creep_checks_csv(planes: &[PlaneLay], format: LengthFormat) -> Result<Vec<u8>, Error> {
    // What is allowed and pulled is far under what a tape is read to.
    let fine = format.fine()?;
    let mut out = csv::WriterBuilder::new().terminator(csv::Terminator::CRLF).from_writer(Vec::new());
    out.write_record(["plane", "toward", "after panels", "mark", "plus or minus", "recover over panels", "pull each"]).map_err(unwritten)?;
    for (lay, marks) in planes.iter().filter_map(|p| Some((p, p.marks.as_ref()?))) {
        for check in &marks.checks {
            let toward = if check.toward == PlaneSide::Left { "left" } else { "right" };
            let (panels, over) = (check.panels.to_string(), check.recover_over.to_string());
            let (mark, allowed, pull) = (format.string(check.across.read)?, fine.string(check.allowed)?, fine.string(check.pull)?);
            out.write_record([sheet_text(&lay.name).as_ref(), toward, &panels, &mark, &allowed, &over, &pull]).map_err(unwritten)?;
        }
    }
    out.into_inner().map_err(|e| Error::new(ErrorKind::Internal, "the checks could not be written").value_of(e.error()))
}

#[allow(clippy::needless_pass_by_value, reason = "the shape that map_err asks for")]
fn unwritten(error: csv::Error) -> Error {
    Error::new(ErrorKind::Internal, "the marks could not be written").value_of(error)
}
