//! What a job file may leave out: each default is a constant of common practice, named there.

use super::draft::FastenerRow;
use super::least::LeastRule;
use super::least_by_slope::LeastBySlope;
use crate::practice;
use crate::record::Source;
use crate::units::{Angle, Length};
use std::borrow::Cow;

macro_rules! lengths {
    ($($name:ident => $value:path),+ $(,)?) => {
        $(pub(super) fn $name() -> Length {
            $value
        })+
    };
}

lengths! {
    clearance => practice::movement::CLEARANCE,
    cleat_front_below_top => practice::junction::CLEAT_FRONT_BELOW_TOP,
    cleat_screws_below_tape_edge => practice::junction::CLEAT_SCREWS_BELOW_TAPE_EDGE,
    cleat_width => practice::junction::CLEAT_WIDTH,
    drip_clears_face => practice::junction::DRIP_CLEARS_FACE,
    edge_hem => practice::junction::EDGE_HEM,
    far_side_to_fixed => practice::movement::FAR_SIDE_TO_FIXED,
    end_fold => practice::panel::END_FOLD,
    engagement => practice::movement::ENGAGEMENT,
    cap_tab => practice::junction::CAP_TAB,
    kick_out_past_eave => practice::junction::KICK_OUT_PAST_EAVE,
    kick_out_tab => practice::junction::KICK_OUT_TAB,
    trim_lap => practice::assembly::TRIM_LAP,
    gutter_lip_below_plane => practice::junction::GUTTER_LIP_BELOW_PLANE,
    gutter_lip_clearance => practice::junction::GUTTER_LIP_CLEARANCE,
    set_back => practice::closure::SET_BACK,
    skew_field_trim => practice::panel::SKEW_FIELD_TRIM,
    turn_up => practice::panel::TURN_UP,
    z_tape_width => practice::junction::Z_TAPE_WIDTH,
    valley_open_width => practice::junction::VALLEY_OPEN_WIDTH,
    valley_screw_height => practice::junction::VALLEY_SCREW_HEIGHT_LEAST,
}

pub(super) fn what_is_asked() -> Cow<'static, str> {
    Cow::Borrowed("what the rule asks")
}

pub(super) fn valley_leg() -> LeastBySlope {
    LeastBySlope::VALLEY_LEG
}

pub(super) fn drip_turn() -> Angle {
    practice::junction::DRIP_TURN
}

macro_rules! rules {
    ($($name:ident => $value:path),+ $(,)?) => {
        $(pub(super) fn $name() -> LeastRule {
            $value
        })+
    };
}

rules! {
    below_deck => LeastRule::IRC_BELOW_DECK,
    clear_behind_curb => LeastRule::CLEAR_BEHIND_CURB,
    head_lap => LeastRule::HEAD_LAP,
    panel_margin => LeastRule::PANEL_MARGIN,
    seams_from_curb => LeastRule::SEAMS_FROM_CURB,
    beyond_hook => LeastRule::BEYOND_HOOK,
    flange_over_panels => LeastRule::UFGS_UNSOLDERED,
    kick_out_throw => LeastRule::KICK_OUT_THROW,
    lap_over_leg => LeastRule::LAP_OVER_LEG,
    side_cover => LeastRule::SIDE_COVER,
    on_deck => LeastRule::IRC_OVER_EDGE_METAL,
    valley_open => LeastRule::VALLEY_OPEN,
    z_cover => LeastRule::COVER_OF_Z,
}

/// A starting figure and never a strength: its source says so.
pub(super) fn closure_screws() -> FastenerRow {
    FastenerRow { spacing: practice::closure::ON_CENTRE, source: Source::CommonPractice }
}

/// As the guide specification spaces them.
#[allow(clippy::unnecessary_wraps, reason = "none says that nothing of the kind is there")]
pub(super) fn reglet_wedges() -> Option<FastenerRow> {
    Some(FastenerRow::UFGS_WEDGES)
}
