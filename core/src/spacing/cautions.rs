//! What stations say beside their numbers; 2300 and on.

use crate::record::CautionCode;

/// A run that has room for a single station.
pub const ONE_STATION: CautionCode = CautionCode { number: 2300, name: "one-station", text: "the run of {run} has room for one station only" };
/// The last station of a fixed spacing, farther from the end than was asked for.
pub const LAST_FAR_FROM_END: CautionCode =
    CautionCode { number: 2301, name: "last-far-from-end", text: "the last station is {found} from the end of the run, {wanted} was asked for" };
/// Supports that carry no station.
pub const SUPPORTS_NOT_USED: CautionCode = CautionCode { number: 2302, name: "supports-not-used", text: "{count} of the supports given carry no station" };

/// Every caution of this room.
pub const ALL: &[CautionCode] = &[ONE_STATION, LAST_FAR_FROM_END, SUPPORTS_NOT_USED];
