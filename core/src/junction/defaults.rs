//! What a job file may leave out: each default is a constant of common practice, named there.

use super::draft::FastenerRow;
use super::wall::WallRule;
use crate::practice;
use crate::record::Source;
use crate::units::{Angle, Length};

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
    counterflashing_lap => practice::junction::COUNTERFLASHING_LAP_LEAST,
    drip_clears_face => practice::junction::DRIP_CLEARS_FACE,
    edge_hem => practice::junction::EDGE_HEM,
    far_side_to_fixed => practice::movement::FAR_SIDE_TO_FIXED,
    end_fold => practice::panel::END_FOLD,
    engagement => practice::movement::ENGAGEMENT,
    set_back => practice::closure::SET_BACK,
    skew_field_trim => practice::panel::SKEW_FIELD_TRIM,
    turn_up => practice::panel::TURN_UP,
    valley_beyond_cleat => practice::junction::VALLEY_BEYOND_CLEAT_LEAST,
    valley_leg => practice::junction::VALLEY_LEG_LEAST,
    valley_open_width => practice::junction::VALLEY_OPEN_WIDTH,
    valley_open_width_least => practice::junction::VALLEY_OPEN_WIDTH_LEAST,
    valley_screw_height => practice::junction::VALLEY_SCREW_HEIGHT_LEAST,
}

pub(super) fn drip_turn() -> Angle {
    practice::junction::DRIP_TURN
}

pub(super) fn z_cover() -> WallRule {
    WallRule::COVER_OF_Z
}

/// A starting figure and never a strength: its source says so.
pub(super) fn closure_screws() -> FastenerRow {
    FastenerRow { spacing: practice::closure::ON_CENTRE, source: Source::CommonPractice }
}
