//! Numbers as every writer writes them.

use crate::error::Error;
use crate::num;
use crate::units::{Length, LengthFormat, LengthStyle, LengthUnit, Rounding};

/// A number with fixed decimals; what rounds to nothing has no sign.
pub(super) fn fixed(value: f64, places: usize) -> String {
    let text = format!("{value:.places$}");
    match text.strip_prefix('-') {
        Some(rest) if rest.bytes().all(|b| b == b'0' || b == b'.') => rest.to_owned(),
        _ => text,
    }
}

/// A number of degrees with at most two decimals, zeros trimmed, and the sign.
pub(super) fn degrees(value: f64) -> String {
    let text = fixed(value, 2);
    format!("{}\u{b0}", text.trim_end_matches('0').trim_end_matches('.'))
}

/// A slope as the crew sets it: the run and the rise of its triangle in inches where the lengths are, else no run and the degrees to the half.
pub(super) fn pitch_figures(rise: f64, format: LengthFormat) -> Result<(String, String), Error> {
    let inch = match format.style() {
        LengthStyle::FeetInches { .. } | LengthStyle::Inches { .. } => true,
        LengthStyle::Decimal { unit, .. } => matches!(unit, LengthUnit::Inch | LengthUnit::Foot),
        LengthStyle::Exact => false,
    };
    if !inch {
        return Ok((String::new(), degrees((rise.abs() * 2.0).round() / 2.0)));
    }
    let in_twelve = Length::from_f64(12.0 * num::tan_deg(rise.abs()), LengthUnit::Inch)?;
    let text = LengthFormat::new(LengthStyle::Inches { denominator: 8 }, Rounding::HalfEven)?.text(in_twelve)?;
    Ok(("12".to_owned(), text.as_str().trim_end_matches('"').to_owned()))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_rounds_to_nothing_has_no_sign() {
        assert_eq!(fixed(-0.0004, 3), "0.000");
        assert_eq!(fixed(-0.0006, 3), "-0.001");
        assert_eq!(fixed(1234.5, 2), "1234.50");
    }

    #[test]
    fn degrees_keep_their_zeros_before_the_point() {
        assert_eq!(degrees(90.0), "90\u{b0}");
        assert_eq!(degrees(100.0), "100\u{b0}");
        assert_eq!(degrees(18.43494), "18.43\u{b0}");
        assert_eq!(degrees(-0.001), "0\u{b0}");
    }
}
