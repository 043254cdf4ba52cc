use crate::numbers::{LENGTH_UNITS, ROUNDINGS, STAGES};
use crate::status::{NAMED, SW_BUFFER_TOO_SMALL, SW_OK};
use seamwright_core::error::ErrorKind;
use seamwright_core::job::Stage;
use seamwright_core::units::{LengthUnit, Rounding};
use std::collections::BTreeSet;

#[test]
fn every_kind_of_error_has_its_status_and_no_other_has() {
    for kind in ErrorKind::ALL {
        let name = format!("SW_{}", kind.name().to_uppercase().replace(' ', "_"));
        assert!(NAMED.contains(&(name.as_str(), kind.code())), "{name} should be {}", kind.code());
    }
    assert_eq!(NAMED.len(), ErrorKind::ALL.len());
    assert!(ErrorKind::from_code(SW_OK).is_none());
    assert!(ErrorKind::from_code(SW_BUFFER_TOO_SMALL).is_none(), "the number of the C interface's own status is taken");
}

#[test]
fn every_unit_direction_and_stage_has_one_number_and_none_is_zero() {
    assert_eq!(LENGTH_UNITS.iter().map(|(_, u)| *u).collect::<Vec<_>>(), LengthUnit::ALL);
    assert_eq!(ROUNDINGS.iter().map(|(_, r)| *r).collect::<Vec<_>>(), Rounding::ALL);
    assert_eq!(STAGES.iter().map(|(_, s)| *s).collect::<Vec<_>>(), Stage::ALL);
    for numbers in
        [LENGTH_UNITS.iter().map(|(n, _)| *n).collect::<Vec<_>>(), ROUNDINGS.iter().map(|(n, _)| *n).collect(), STAGES.iter().map(|(n, _)| *n).collect()]
    {
        assert_eq!(numbers.iter().collect::<BTreeSet<_>>().len(), numbers.len());
        assert!(!numbers.contains(&0));
    }
}
