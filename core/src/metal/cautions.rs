//! The cautions of this room, numbered from 2100.

use crate::record::CautionCode;

/// A gauge read in a system that is not the usual one for its metal.
pub const UNUSUAL_GAUGE_SYSTEM: CautionCode =
    CautionCode { number: 2100, name: "unusual-gauge-system", text: "{system} is not the usual gauge system for {alloy}: confirm the thickness" };

/// A property that was recalled, not read.
pub const PROPERTY_FROM_MEMORY: CautionCode =
    CautionCode { number: 2101, name: "property-from-memory", text: "the {property} of {alloy} is from memory: confirm it with the supplier" };

/// Two metals that should not meet as asked.
pub const UNLIKE_METALS: CautionCode =
    CautionCode { number: 2102, name: "unlike-metals", text: "{upper} against {lower} by {way}: keep them apart with a separator, or use another metal" };

/// Two metals on which nothing is recorded.
pub const UNJUDGED_METALS: CautionCode =
    CautionCode { number: 2103, name: "unjudged-metals", text: "{upper} against {lower} by {way} is not in the table: ask the supplier" };

/// Two parts of a roof whose metals should not meet as they do.
pub const UNLIKE_METALS_AT: CautionCode = CautionCode { number: 2104, name: "unlike-metals-at", text: "the {first} {way} the {second} at {place}: {cure}" };

/// Every caution of this room.
pub const ALL: &[CautionCode] = &[UNUSUAL_GAUGE_SYSTEM, PROPERTY_FROM_MEMORY, UNLIKE_METALS, UNJUDGED_METALS, UNLIKE_METALS_AT];
