//! Words for people: lengths in their notation, cautions with their lengths in it, ways up and down the slope.

use crate::assembly::StruckLine;
use crate::error::Error;
use crate::junction::Side;
use crate::record::Caution;
use crate::roof::LineKind;
use crate::units::{Length, LengthFormat};

/// A distance of the section with its way, as the crew strikes it: up or down the slope, a wall or a fascia; across the slope inward from a rake or outward,
/// and from a wall beside the roof or toward it. Signs are those of [`AlongLine::from_line`](crate::junction::AlongLine::from_line).
///
/// ```
/// use seamwright::export::struck_distance;
/// use seamwright::junction::Side;
/// use seamwright::roof::LineKind;
/// use seamwright::units::{Length, LengthFormat};
/// let (format, two) = (LengthFormat::parse("in/16")?, Length::inches(2));
/// assert_eq!(struck_distance(format, LineKind::Eave, Side::First, two)?, "2\" up");
/// assert_eq!(struck_distance(format, LineKind::Rake, Side::First, two)?, "2\" inward");
/// # Ok::<(), seamwright::error::Error>(())
/// ```
///
/// # Errors
/// Those of writing a length in this format.
pub fn struck_distance(format: LengthFormat, kind: LineKind, side: Side, distance: Length) -> Result<String, Error> {
    let words = match (kind, side) {
        (LineKind::Rake, Side::First) => ("inward", "outward"),
        (LineKind::Sidewall | LineKind::CurbSide, Side::First) => ("to wall", "from wall"),
        (LineKind::ExpansionAlong, _) => ("from joint", "to joint"),
        _ => UP_OR_DOWN,
    };
    directed(format, words, distance)
}

/// The words for more and less along a slope or a face.
pub(super) const UP_OR_DOWN: (&str, &str) = ("up", "down");

/// A distance with the word for its way; nothing has none.
pub(super) fn directed(format: LengthFormat, (more, less): (&str, &str), distance: Length) -> Result<String, Error> {
    if distance == Length::ZERO {
        return format.string(distance);
    }
    let (size, word) = if distance.is_negative() { ((-distance).length()?, less) } else { (distance, more) };
    Ok(format!("{} {word}", format.string(size)?))
}

/// The running total along a seam, where that is another than square to the line. What lies on the junction line itself has nothing to measure there.
pub(super) fn skew_total(line: &StruckLine) -> Option<Length> {
    line.along_seam.map(|seam| seam.read).filter(|seam| *seam != line.from_start.read && line.from_line.read != Length::ZERO)
}

/// What a caution says, its lengths in the caller's notation instead of the exact one.
pub(super) fn caution(format: LengthFormat, caution: &Caution) -> Result<String, Error> {
    let mut out = caution.code().text.to_owned();
    for (name, value) in caution.arguments() {
        let shown = match Length::parse(value) {
            Ok(length) => format.string(length)?,
            Err(_) => value.clone(),
        };
        out = out.replace(&format!("{{{name}}}"), &shown);
    }
    Ok(out)
}

/// A name that may stand in a file's name: letters, digits and hyphens.
pub(super) fn file_stem(name: &str) -> String {
    let mut out = String::with_capacity(name.len());
    for c in name.chars() {
        if c.is_alphanumeric() {
            out.extend(c.to_lowercase());
        } else if !out.ends_with('-') && !out.is_empty() {
            out.push('-');
        }
    }
    out.trim_end_matches('-').to_owned()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::MOVEMENT_UNCHECKED;
    use crate::record::{CautionCode, Source};

    #[test]
    fn a_caution_speaks_the_callers_notation() {
        let code = CautionCode { number: 1, name: "x", text: "off by {off}, as {who} says" };
        let c = Caution::new(code, "", Source::CommonPractice).arg("off", Length::parse("1 1/2\"").unwrap()).arg("who", "nobody");
        assert_eq!(caution(LengthFormat::parse("in/16").unwrap(), &c).unwrap(), "off by 1 1/2\", as nobody says");
        let plain = Caution::new(MOVEMENT_UNCHECKED, "", Source::user());
        assert_eq!(caution(LengthFormat::EXACT, &plain).unwrap(), plain.message());
    }

    #[test]
    fn a_distance_says_which_way() {
        let said = |kind, side, mm| struck_distance(LengthFormat::parse("mm").unwrap(), kind, side, Length::from_mm(mm).unwrap()).unwrap();
        assert_eq!(said(LineKind::Ridge, Side::Second, -50.0), "50 mm down");
        assert_eq!(said(LineKind::Rake, Side::First, -50.0), "50 mm outward");
        assert_eq!(said(LineKind::Rake, Side::Second, -50.0), "50 mm down"); // on the fascia
        assert_eq!(said(LineKind::CurbSide, Side::First, -50.0), "50 mm from wall");
        assert_eq!(said(LineKind::Sidewall, Side::Second, 50.0), "50 mm up"); // on the wall
        assert_eq!(said(LineKind::ExpansionAlong, Side::First, 50.0), "50 mm from joint");
        assert_eq!(said(LineKind::ExpansionAlong, Side::Second, 50.0), "50 mm from joint");
        assert_eq!(said(LineKind::Eave, Side::First, 0.0), "0 mm");
    }

    #[test]
    fn names_become_file_names() {
        assert_eq!(file_stem("steep-to-shallow transition 1"), "steep-to-shallow-transition-1");
        assert_eq!(file_stem("../Äst & co/"), "äst-co");
    }
}
