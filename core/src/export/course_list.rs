//! The courses of underlayment as CSV (RFC 4180).

use super::sheet_text::sheet_text;
use crate::error::{Error, ErrorKind};
use crate::job::UnderlaymentPlan;
use crate::underlayment::LaidCourses;
use crate::units::LengthFormat;

/// The courses of every plane from its foot up, a line each: the running mark of its top edge, what shows of it, and its pieces from left to right. Then the strips under valleys.
///
/// # Errors
/// [`ErrorKind::Overflow`] for a length that the notation cannot show.
///
/// ```
/// use seamwright::export::course_list_csv;
/// use seamwright::job::UnderlaymentPlan;
/// use seamwright::units::LengthFormat;
/// let none = UnderlaymentPlan { planes: vec![], valleys: vec![], field_rolls: 0, eave_rolls: 0, valley_rolls: 0, cautions: vec![] };
/// assert!(String::from_utf8(course_list_csv(&none, LengthFormat::EXACT)?).unwrap().starts_with("where,what,course,"));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
pub fn course_list_csv(plan: &UnderlaymentPlan, format: LengthFormat) -> Result<Vec<u8>, Error> {
    let mut out = csv::WriterBuilder::new().terminator(csv::Terminator::CRLF).from_writer(Vec::new());
    let unwritten = |e: csv::Error| Error::new(ErrorKind::Internal, "the courses could not be written").value_of(e);
    let head = ["where", "what", "course", "lower edge from the foot", "mark of the top edge", "exposure", "width", "pieces, from the left", "length"];
    out.write_record(head).map_err(unwritten)?;
    for plane in &plan.planes {
        let eaves = plane.eaves.iter().map(|e| (format!("membrane, {}", e.name), &e.laid));
        let all: Vec<(String, &LaidCourses)> = eaves.chain(plane.field.iter().map(|f| ("underlayment".to_owned(), f))).collect();
        for (what, laid) in all {
            for (k, course) in laid.courses.iter().enumerate() {
                let pieces: Vec<String> =
                    course.pieces.iter().map(|p| Ok(format!("{} to {}", format.string(p.from)?, format.string(p.to)?))).collect::<Result<_, Error>>()?;
                let length = crate::units::Length::total(course.pieces.iter().map(|p| &p.length))?;
                let row = [
                    sheet_text(&plane.plane).into_owned(),
                    sheet_text(&what).into_owned(),
                    (k + 1).to_string(),
                    format.string(course.foot)?,
                    format.string(course.top)?,
                    format.string(course.exposure)?,
                    format.string(course.width)?,
                    pieces.join("; "),
                    format.string(length)?,
                ];
                out.write_record(row).map_err(unwritten)?;
            }
        }
    }
    for valley in &plan.valleys {
        let pieces = format!("{} piece(s)", valley.strip.pieces);
        let (name, length) = (sheet_text(&valley.name).into_owned(), format.string(valley.strip.length)?);
        let row = [name, "membrane".into(), "1".into(), String::new(), String::new(), String::new(), String::new(), pieces, length];
        out.write_record(row).map_err(unwritten)?;
    }
    out.into_inner().map_err(|e| Error::new(ErrorKind::Internal, "the courses could not be written").value_of(e.error()))
}
