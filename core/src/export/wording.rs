//! Words for people: lengths in their notation, cautions with their lengths in it, ways up and down the slope.

use crate::error::Error;
use crate::record::Caution;
use crate::units::{Length, LengthFormat};

/// A length along the slope with its way.
pub(super) fn way(format: LengthFormat, up: Length) -> Result<String, Error> {
    if up == Length::ZERO {
        return format.string(up);
    }
    let (size, word) = if up.is_negative() { ((-up).length()?, "down") } else { (up, "up") };
    Ok(format!("{} {word}", format.string(size)?))
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
    fn names_become_file_names() {
        assert_eq!(file_stem("steep-to-shallow transition 1"), "steep-to-shallow-transition-1");
        assert_eq!(file_stem("../Äst & co/"), "äst-co");
    }
}
