//! What a junction's result says beside its numbers.

use crate::record::CautionCode;

/// A flange that nothing carries over some width.
pub const UNSUPPORTED_FLANGE: CautionCode = CautionCode {
    number: 6001,
    name: "unsupported-flange",
    text: "nothing carries the flange over {width}, more than the limit of {limit}: a boot or snow bends it; give packing or a filler under it",
};

/// A skew end without metal to cut.
pub const SKEW_END_WITHOUT_TRIM: CautionCode = CautionCode {
    number: 6050,
    name: "skew-end-without-trim",
    text: "the seams meet the line at {meeting} and nothing is left on to be cut on the roof: the shop must cut the skew exactly",
};

/// Rivets in a flange that has no turned-down face.
pub const RIVETS_ON_SLOPE: CautionCode = CautionCode {
    number: 6051,
    name: "rivets-on-slope",
    text: "the flange has no turned-down edge, so its rivets stand in running water on the slope: turn the edge down, or seal every rivet",
};

/// A drip that crosses seams.
pub const DRIP_CROSSES_SEAMS: CautionCode =
    CautionCode { number: 6052, name: "drip-crosses-seams", text: "the edge turns down {depth} below the seam tops: notch it at every seam" };

/// A receiver fold lifts the outer part of the pan.
pub const RECEIVER_STANDS_UP: CautionCode = CautionCode {
    number: 6060,
    name: "receiver-stands-up",
    text: "the pan lies {height} higher beyond its receiver fold: pack under it, or dress it down behind the fold",
};

/// Valley screws through the valley pan.
pub const SCREWS_THROUGH_VALLEY: CautionCode = CautionCode {
    number: 6061,
    name: "screws-through-valley",
    text: "the cleat's screws go through the valley pan {height} above its flow line: water that dams up to them comes in; a receiver fold has no hole",
};

/// A splash rib lower than is usual.
pub const LOW_SPLASH_RIB: CautionCode =
    CautionCode { number: 6062, name: "low-splash-rib", text: "the splash rib stands {height} high; common practice is {least} or more" };

/// A splash rib where snow slides.
pub const RIB_AND_SNOW: CautionCode =
    CautionCode { number: 6063, name: "rib-and-snow", text: "a rib of {height} stands across the valley: leave it out where snow slides across" };

/// A sidewall that ends at an eave without a kick-out.
pub const KICK_OUT_MISSING: CautionCode = CautionCode {
    number: 6070,
    name: "kick-out-missing",
    text: "the eave dies into the wall and nothing throws the water into the gutter there: it runs down behind the cladding",
};

/// The kick-out at a sidewall's foot.
pub const KICK_OUT: CautionCode = CautionCode {
    number: 6071,
    name: "kick-out",
    text: "make a kick-out at the foot of the wall flashing, thrown {throw} from the wall, as high as the flashing's leg ({leg}), its folds sealed",
};

/// A row of screws along a seam.
pub const PINNED_ALONG_SEAM: CautionCode = CautionCode {
    number: 6072,
    name: "pinned-along-seam",
    text: "screws into the structure pin this panel along its whole length: it cannot move with heat and will buckle",
};

/// Every caution of this room.
pub const ALL: &[CautionCode] = &[
    UNSUPPORTED_FLANGE,
    SKEW_END_WITHOUT_TRIM,
    RIVETS_ON_SLOPE,
    DRIP_CROSSES_SEAMS,
    RECEIVER_STANDS_UP,
    SCREWS_THROUGH_VALLEY,
    LOW_SPLASH_RIB,
    RIB_AND_SNOW,
    KICK_OUT_MISSING,
    KICK_OUT,
    PINNED_ALONG_SEAM,
];
