//! What a junction's result says beside its numbers.

use crate::record::CautionCode;

/// A flange that nothing carries over some width.
pub const UNSUPPORTED_FLANGE: CautionCode = CautionCode {
    number: 6001,
    name: "unsupported-flange",
    text: "nothing carries the flange over {width}, more than the limit of {limit}: a boot or snow bends it; give packing or a filler under it",
};

/// A drip whose edge is nearer to its face than water needs to let go.
pub const DRIP_NEAR_FACE: CautionCode = CautionCode {
    number: 6010,
    name: "drip-near-face",
    text: "the drip clears its face by {clears} and common practice is {practice}: water may run back onto the face",
};

/// An eave trim's flange that lies on the underlayment.
pub const FLANGE_OVER_UNDERLAYMENT: CautionCode = CautionCode {
    number: 6011,
    name: "flange-over-underlayment",
    text: "the deck flange lies on the underlayment: what runs down the underlayment gets under the trim; strip in the flange's upper edge",
};

/// Panels fixed at their lower end.
pub const EAVE_PINNED: CautionCode = CautionCode {
    number: 6012,
    name: "eave-pinned",
    text: "the panels are fastened at the eave on purpose: their upper end must slide, or the panel is fixed along two lines",
};

/// An end panel pinned along its whole length.
pub const RAKE_EDGE_PINNED: CautionCode = CautionCode {
    number: 6013,
    name: "rake-edge-pinned",
    text: "the screws of the Z go through the pan into the structure: they pin the end panel along its whole length, and it may oil-can",
};

/// A rake trim that moves with the end panel.
pub const RAKE_TRIM_RIDES: CautionCode = CautionCode {
    number: 6014,
    name: "rake-trim-rides",
    text: "the Z moves with the end panel, and the trim riveted to it along its cleat: its laps must slide and its ends need room",
};

/// A cap whose bend does not stand over the ridge line.
pub const CAP_OFF_LINE: CautionCode = CautionCode {
    number: 6015,
    name: "cap-off-line",
    text: "the planes of the seam tops meet {offset} from the ridge line, level, toward the {side}: strike the cap's bend there",
};

/// Seams that are hollow where a line of closures crosses them.
pub const SEAM_HOLLOWS: CautionCode = CautionCode {
    number: 6016,
    name: "seam-hollows",
    text: "the hollow of each seam passes straight through the line of closures: plug it, and count the plugs",
};

/// A cap over panels that move.
pub const CAP_RIDES: CautionCode = CautionCode {
    number: 6017,
    name: "cap-rides",
    text: "the closures ride with the panels on the {side}: the cap must let them move there, and the roof must be fixed elsewhere",
};

/// Closures that let through less air than the slot.
pub const VENT_CHOKED: CautionCode = CautionCode {
    number: 6018,
    name: "vent-choked",
    text: "the closures leave {opening} of free height and the slot in the deck is {slot} wide: the closures govern the free opening",
};

/// A panel's nose that stands behind the drip below it.
pub const NOSE_BEHIND_DRIP: CautionCode = CautionCode {
    number: 6019,
    name: "nose-behind-drip",
    text: "the panel's nose stands {behind} behind the edge of the drip, level: water falls on the drip and not past it",
};

/// Panels that move under closures which stand still.
pub const TOP_SLIDES: CautionCode = CautionCode {
    number: 6020,
    name: "top-slides",
    text: "the panels slide under the closures on the {side}: each screw needs its slot and sealant that bears the movement, and the roof must be fixed elsewhere",
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

/// A row of screws along a seam. (6071 was once the kick-out, which is a piece now.)
pub const PINNED_ALONG_SEAM: CautionCode = CautionCode {
    number: 6072,
    name: "pinned-along-seam",
    text: "screws into the structure pin this panel along its whole length: it cannot move with heat and will buckle",
};

/// A flashing that is fastened to the wall and to the panel.
pub const FLASHING_TIES_PANEL: CautionCode = CautionCode {
    number: 6073,
    name: "flashing-ties-panel",
    text: "the flange is fastened to the panel and the leg to the wall: through the flashing they pin this panel along its whole length; leave the leg free behind its cover, or slot the flange's fasteners",
};

/// A flashing that moves with the panel along a wall.
pub const FLASHING_RIDES: CautionCode = CautionCode {
    number: 6074,
    name: "flashing-rides",
    text: "the flashing moves with the panel along the wall: fasten its leg to nothing, let what covers it stand clear, and give its ends room",
};

/// A cap that no fastener of its section holds.
pub const CAP_NOT_HELD: CautionCode = CautionCode {
    number: 6075,
    name: "cap-not-held",
    text: "no fastener of this section holds the cap, and tape is no fastener: rivet its turned-down edges to the closures, or hook it on a cleat of its own",
};

/// A valley between unequal planes without a rib.
pub const UNEQUAL_WITHOUT_RIB: CautionCode = CautionCode {
    number: 6065,
    name: "unequal-without-rib",
    text: "the planes fall at {first} and {second}: water from the steeper one runs across and under the panels of the other; fold a splash rib of {least} or more along the centreline, where no snow slides across, or open the valley wider",
};

/// A valley pan that no fastener of its section holds.
pub const PAN_NOT_HELD: CautionCode =
    CautionCode { number: 6064, name: "pan-not-held", text: "no fastener of this section holds the pan: hook its hemmed edges with cleats" };

/// A cleat whose tongue lies off the level of the panels that hook it.
pub const CLEAT_OFF_LEVEL: CautionCode = CautionCode {
    number: 6080,
    name: "cleat-off-level",
    text: "the top of the cleat stands {off} {way} the level at which the panels lie: taper the packing on under them, or choose the cleat's rise to it",
};

/// A curb with a flat back.
pub const WATER_DAMS_BEHIND: CautionCode = CautionCode {
    number: 6081,
    name: "water-dams-behind",
    text: "water, leaves and snow dam behind the flat back of the curb, {width} wide: once water stands {height} deep it reaches {what}; keep it clean",
};

/// A curb too wide for a flat back.
pub const CRICKET_REQUIRED: CautionCode = CautionCode {
    number: 6082,
    name: "cricket-required",
    text: "the curb is {width} wide across the slope, more than {widest}: a cricket must stand behind it",
};

/// Panels that lie so high that their fold does not reach under the strip.
pub const FOLD_OVER_STRIP: CautionCode = CautionCode {
    number: 6083,
    name: "fold-over-strip",
    text: "the panels lie too high over the hook strip for a fold open {opening}: pack the strip up to them, or open the fold to {needed}",
};

/// Metal that reaches into the face behind it.
pub const RUNS_INTO_FACE: CautionCode = CautionCode {
    number: 6084,
    name: "runs-into-face",
    text: "the {part} reaches {depth} into the face behind it, as far down as that goes: a narrower hem, a drip that stands farther out, or less kick",
};

/// A coping whose top does not shed its water.
pub const COPING_NEARLY_LEVEL: CautionCode = CautionCode {
    number: 6090,
    name: "coping-nearly-level",
    text: "the top falls {fall} to the roof and common practice is {practice} or more: water stands at its joints",
};

/// A base whose upper edge is held by nothing but sealant.
pub const PIPE_AGAINST_WATER: CautionCode = CautionCode {
    number: 6091,
    name: "pipe-against-water",
    text: "the base's upper edge, {width} across, lies on the pan against the water: tape and screws alone keep it out; where snow slides, a diverter stands above it",
};

/// A base that crosses seams.
pub const PIPE_CROSSES_SEAMS: CautionCode = CautionCode {
    number: 6092,
    name: "pipe-crosses-seams",
    text: "the base is {width} wide and crosses seams, {count} of them: no tape seals over a seam; set a diverter above it, or a curb instead",
};

/// A path of water on which a lap is wrong, or too short, or missing.
pub const WATER_PATH_FAILS: CautionCode = CautionCode { number: 6093, name: "water-path-fails", text: "on the {face}, {at} up from the line, {what}: {cure}" };

/// Fasteners over which water runs.
pub const FASTENERS_IN_WATER: CautionCode = CautionCode {
    number: 6094,
    name: "fasteners-in-water",
    text: "water runs over the {row} on the {side}: put them under a sheet, through a turned-down face or on a raised flange, or seal each under a washer",
};

/// Tape that is packing and no seal.
pub const TAPE_TOO_THICK: CautionCode = CautionCode {
    number: 6095,
    name: "tape-too-thick",
    text: "the tape {part} is {tape} thick when compressed, {over} more than the {practice} of common practice: it is squeezed out and creeps; pack with metal or board, and seal on that with thinner tape",
};

/// Every caution of this room.
pub const ALL: &[CautionCode] = &[
    UNSUPPORTED_FLANGE,
    DRIP_NEAR_FACE,
    FLANGE_OVER_UNDERLAYMENT,
    EAVE_PINNED,
    RAKE_EDGE_PINNED,
    RAKE_TRIM_RIDES,
    CAP_OFF_LINE,
    SEAM_HOLLOWS,
    CAP_RIDES,
    VENT_CHOKED,
    NOSE_BEHIND_DRIP,
    TOP_SLIDES,
    SKEW_END_WITHOUT_TRIM,
    RIVETS_ON_SLOPE,
    DRIP_CROSSES_SEAMS,
    RECEIVER_STANDS_UP,
    SCREWS_THROUGH_VALLEY,
    LOW_SPLASH_RIB,
    RIB_AND_SNOW,
    PAN_NOT_HELD,
    UNEQUAL_WITHOUT_RIB,
    KICK_OUT_MISSING,
    PINNED_ALONG_SEAM,
    FLASHING_TIES_PANEL,
    FLASHING_RIDES,
    CAP_NOT_HELD,
    CLEAT_OFF_LEVEL,
    WATER_DAMS_BEHIND,
    CRICKET_REQUIRED,
    FOLD_OVER_STRIP,
    RUNS_INTO_FACE,
    COPING_NEARLY_LEVEL,
    PIPE_AGAINST_WATER,
    PIPE_CROSSES_SEAMS,
    WATER_PATH_FAILS,
    FASTENERS_IN_WATER,
    TAPE_TOO_THICK,
];
