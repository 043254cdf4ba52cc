//! Common practice at junctions.

use crate::units::{Angle, Length};

/// From the closure's face to the centre of its lower flange, where its screws go: 2 3/8 in.
pub const CLOSURE_FACE_TO_SCREWS: Length = Length::inches_64(2 * 64 + 24);

/// An offset cleat's width up the slope: 3 1/2 in.
pub const CLEAT_WIDTH: Length = Length::inches_64(3 * 64 + 32);

/// An offset cleat's front stands this far below the trim's top edge: 6 in.
pub const CLEAT_FRONT_BELOW_TOP: Length = Length::inches(6);

/// A cleat's screws sit this far below the upper edge of the cleat's tape: 1/2 in.
pub const CLEAT_SCREWS_BELOW_TAPE_EDGE: Length = Length::inches_64(32);

/// The edge of a drip stands this far out from its face: 1/2 in.
pub const DRIP_CLEARS_FACE: Length = Length::inches_64(32);

/// The nose of the panels keeps at least this far behind a gutter's front lip, in the heat: 1/2 in. Common practice, no published source.
pub const GUTTER_LIP_CLEARANCE: Length = Length::inches_64(32);

/// A gutter's front lip stands at least this far below the plane of the roof, plumb: 1/2 in. Common practice, no published source.
pub const GUTTER_LIP_BELOW_PLANE: Length = Length::inches_64(32);

/// A flange's edge turns down square to the flange: 90 degrees.
pub const DRIP_TURN: Angle = Angle::SQUARE;

/// Width of a hem at a trim's edge: 1/2 in.
pub const EDGE_HEM: Length = Length::inches_64(32);

/// What an open hem needs beside the thickness of the cleat that it hooks: 1/8 in.
pub const HOOKED_HEM_ROOM: Length = Length::inches_64(8);

/// A cap's bend this near to the ridge line counts as over it: 1/16 in, what a tape is read to.
pub const CAP_ON_LINE: Length = Length::inches_64(4);

/// Rivets through a cap's drip reach the closures behind it over no more than this: 1/8 in.
pub const RIVET_REACH: Length = Length::inches_64(8);

/// A rake trim's top runs past the top flange of its Z by at least this: 1/8 in.
pub const Z_COVER_LEAST: Length = Length::inches_64(8);

/// A wall flashing's flange reaches over the last panel beside the wall by at least this: 2 in.
pub const SIDE_COVER_LEAST: Length = Length::inches(2);

/// The fasteners of a cleat that hooks a pan's hem stand this far beside the pan: 1 in.
pub const EDGE_CLEAT_FASTENERS: Length = Length::inches(1);

/// Width of the tape between the top flange of a sidewall's Z and its flashing: 1/2 in.
pub const Z_TAPE_WIDTH: Length = Length::inches_64(32);

/// A valley pan reaches at least this far from its centreline on each side: 8 in.
pub const VALLEY_LEG_LEAST: Length = Length::inches(8);

/// Under this pitch of its flatter plane a valley lies at a low slope: 4:12. Common practice, no published source.
pub const VALLEY_FLAT_RISE_IN_TWELVE: Length = Length::inches(4);

/// Its pan then reaches at least this far: 10 in. Common practice, no published source.
pub const VALLEY_LEG_FLAT: Length = Length::inches(10);

/// Under this it lies at the lowest: 2 1/2:12. Common practice, no published source.
pub const VALLEY_FLATTEST_RISE_IN_TWELVE: Length = Length::inches_64(2 * 64 + 32);

/// Its pan then reaches at least this far: 12 in. Common practice, no published source.
pub const VALLEY_LEG_FLATTEST: Length = Length::inches(12);

/// Sealant tape, compressed, is no thicker than 1/4 in: what is thicker is packing, which screws squeeze out and heat lets creep.
pub const TAPE_THICKEST: Length = Length::inches_64(16);

/// A valley pan reaches at least this far beyond its cleat: 4 in.
pub const VALLEY_BEYOND_CLEAT_LEAST: Length = Length::inches(4);

/// A valley's open width: 6 in.
pub const VALLEY_OPEN_WIDTH: Length = Length::inches(6);

/// A valley's open width is never less: 4 in.
pub const VALLEY_OPEN_WIDTH_LEAST: Length = Length::inches(4);

/// Beads of sealant under the lower end of a valley's pan, as in any lap that carries water: two.
pub const VALLEY_END_BEADS: u32 = 2;

/// Width and depth of each of them: 1/4 in.
pub const VALLEY_END_BEAD: Length = Length::inches_64(16);

/// The cleat's screws in a valley stand at least this far above the flow line: 3/4 in.
pub const VALLEY_SCREW_HEIGHT_LEAST: Length = Length::inches_64(48);

/// A splash rib's height is at least this: 3/4 in.
pub const SPLASH_RIB_LEAST: Length = Length::inches_64(48);

/// A counterflashing laps the leg that it covers by at least this: 4 in.
pub const COUNTERFLASHING_LAP_LEAST: Length = Length::inches(4);

/// A coping's top falls to the roof by at least 1/2 in in 12: less leaves water on its joints.
pub const COPING_RISE_IN_TWELVE: Length = Length::inches_64(32);

/// How far sheet metal parts may lie in each other as drawn: metal and tape give so much, and bends of unlike radius nest by it. Common practice, no
/// published source.
///
/// ```
/// use seamwright::{practice, units::Length};
/// assert_eq!(practice::junction::SHEET_GIVES, Length::parse("1/32\"")?);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
pub const SHEET_GIVES: Length = Length::inches_64(2);

/// Underlayment runs up past a line that it ends at, over a ridge, up a wall or under a trim, by this: 6 in.
pub const UNDERLAYMENT_PAST_LINE: Length = Length::inches(6);

/// A kick-out throws the water at least this far off the wall: 4 in. Common practice, no published source.
pub const KICK_OUT_THROW_LEAST: Length = Length::inches(4);

/// A kick-out's outer end stands this far past the panels' lower ends: 3 in, over the middle of a gutter of 5 or 6 in. Common practice, no published source.
pub const KICK_OUT_PAST_EAVE: Length = Length::inches(3);

/// Width of the tab by which a kick-out's two flanges lap at its turn: 1 in, room for rivets and a bead. Common practice, no published source.
pub const KICK_OUT_TAB: Length = Length::inches(1);

/// Width of the tabs by which an end cap is riveted under its trim: 3/4 in. Common practice, no published source.
pub const CAP_TAB: Length = Length::inches_64(48);

/// A hollow lower than this takes no end cap, its end is folded down: 1/4 in. Common practice, no published source.
pub const LEAST_HOLLOW: Length = Length::inches_64(16);

/// Between two edges that snips cut from one line: 1/16 in. Common practice, no published source.
pub const SNIPS_CLEARANCE: Length = Length::inches_64(4);

/// A pan reaches beyond the lower flange of the closures that stand on it by at least this: 1/2 in. Common practice, no published source.
pub const PANEL_MARGIN_LEAST: Length = Length::inches_64(32);

/// The front of a transition's cleat stands at least this far up from the bend: 1 in. Common practice, no published source.
pub const HEAD_LAP_LEAST: Length = Length::inches(1);

/// A pan behind a curb lies open by at least this, a hand's breadth and a brush: 6 in. Common practice, no published source.
pub const CLEAR_BEHIND_CURB_LEAST: Length = Length::inches(6);

/// The seams of the panels end at least this far from the low line behind a curb: 6 in. Common practice, no published source.
pub const SEAMS_FROM_CURB_LEAST: Length = Length::inches(6);
