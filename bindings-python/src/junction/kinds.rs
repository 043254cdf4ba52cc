//! One class a kind of junction, all of one shape: read from JSON or a dict, and solved.

use super::Solved;
use crate::document::document;
use pyo3::prelude::*;
use seamwright::junction as core_junction;

/// Makes the class of a kind, which gives the junction solved in its section.
macro_rules! kind {
    ($(#[$meta:meta])* $class:ident) => {
        document! {
            $(#[$meta])*
            $class(core_junction::$class) in "seamwright.junction" gives Solved
        }
    };
}

kind! {
    /// The eave: a drip trim on the deck and down the fascia, and the panels that run past it and fold around a strip.
    ///
    /// >>> from seamwright.junction import Eave
    /// >>> row, sheet = {"spacing": "12 in", "source": "common-practice"}, {"thickness": "0.024 in", "inside_radius": "0.03 in"}
    /// >>> hem = {"hooked": {"sheet": sheet, "height": "2 in", "fasteners_above_bend": '1 1/4"', "fasteners": row, "hem": '5/8"', "hem_gap": "0.165 in",
    /// ...     "short_of_fold": '1/16"', "engagement": '3/8"'}}
    /// >>> face = {"depth": "3 in", "kick": "45 deg", "hem": hem}
    /// >>> flange = {"width": "4 in", "lies": "under-underlayment", "fasteners": row, "fasteners_from_edge": "1 in"}
    /// >>> strip = {"sheet": sheet, "width": "4 in", "fasteners": row, "fasteners_from_edge": "1 in"}
    /// >>> panel = {"overhang": '1 1/2"', "gap": '3/8"', "fold": '1 1/4"', "fold_opening": '3/16"'}
    /// >>> detail = {"sheet": sheet, "flange": flange, "front": "plumb", "face": face, "strip": strip, "panel": panel}
    /// >>> roof = {"pitch": "4:12", "levels": {"pan": "0.024 in", "seam_height": '1 3/4"'}}
    /// >>> eave = Eave.from_dict({"roof": roof, "detail": detail})
    /// >>> [format(end.end.allowance(), "in/16") for end in eave.compute().ends]
    /// ['3 1/8"']
    Eave
}

kind! {
    /// The rake: a Z beside the last seam, and the trim over it and down the face.
    ///
    /// >>> from seamwright.junction import Rake
    /// >>> row, sheet = {"spacing": "12 in", "source": "common-practice"}, {"thickness": "0.024 in", "inside_radius": "0.03 in"}
    /// >>> hem = {"hooked": {"sheet": sheet, "height": "2 in", "fasteners_above_bend": '1 1/4"', "fasteners": row, "hem": '5/8"', "hem_gap": "0.165 in",
    /// ...     "short_of_fold": '1/16"', "engagement": '3/8"'}}
    /// >>> face = {"depth": "5 in", "kick": "45 deg", "hem": hem}
    /// >>> z = {"sheet": sheet, "from_turned_up_edge": '1/2"', "lower_flange": '1 1/4"', "top_flange": "1 in", "tape_width": '7/8"', "tape": '1/16"',
    /// ...     "bites": "panel", "screws": row}
    /// >>> inner = {"cover": '1/8"', "drop": "1 in", "hem": '1/2"', "above_pan": '1/4"'}
    /// >>> detail = {"edge_from_line": '1/2"', "turn_up": '1 3/4"', "seam_room": '1/2"', "z": z, "sheet": sheet, "inner": inner, "rivets": row,
    /// ...     "trim_tape_width": '7/8"', "face": face}
    /// >>> levels = {"pan": "0.024 in", "seam_height": '1 3/4"', "tape": '1/16"'}
    /// >>> rake = Rake.from_dict({"levels": levels, "edge": "ripped", "end_panel": "12 in", "detail": detail})
    /// >>> [trim.name for trim in rake.compute().trims]
    /// ['continuous cleat', 'rake Z', 'rake trim']
    Rake
}

kind! {
    /// The ridge: a cap over the closures of both sides.
    ///
    /// >>> from seamwright.junction import Ridge
    /// >>> row, sheet = {"spacing": "8 in", "source": "common-practice"}, {"thickness": "0.024 in", "inside_radius": "0.03 in"}
    /// >>> drip = {"leg": '3/4"', "hem": '1/2"', "above_pan": '1/4"'}
    /// >>> closure = {"face": "web", "lower_flange": '1 1/4"', "top_flange": '1/2"', "tape_width": '7/8"', "tape_beneath": '1/16"'}
    /// >>> end = {"flange": '8"', "drip": drip, "closure": closure, "bites": "structure", "screws": row, "rivets": row, "hollow_seams": False}
    /// >>> end |= {"cap_tape_width": '1/2"', "hold_back": '2"', "clearance": '1/4"', "field_trim": "0 in"}
    /// >>> levels = {"seam_height": '1 3/4"'}
    /// >>> side = {"pitch": "6:12", "levels": levels}
    /// >>> detail = {"first": end, "second": end, "sheet": sheet, "vent": "closed"}
    /// >>> ridge = Ridge.from_dict({"first": side, "second": side, "detail": detail})
    /// >>> [format(end.end.allowance(), "in/16") for end in ridge.compute().ends]
    /// ['-1"', '-1"']
    Ridge
}

kind! {
    /// The top of a mono-slope: a cap over the closures and down the wall.
    ///
    /// >>> from seamwright.junction import HighSide
    /// >>> row, sheet = {"spacing": "8 in", "source": "common-practice"}, {"thickness": "0.024 in", "inside_radius": "0.03 in"}
    /// >>> drip = {"leg": '3/4"', "hem": '1/2"', "above_pan": '1/4"'}
    /// >>> closure = {"face": "web", "lower_flange": '1 1/4"', "top_flange": '1/2"', "tape_width": '7/8"', "tape_beneath": '1/16"'}
    /// >>> end = {"flange": '8"', "drip": drip, "closure": closure, "bites": "structure", "screws": row, "rivets": row, "hollow_seams": False}
    /// >>> end |= {"cap_tape_width": '1/2"', "hold_back": '2"', "clearance": '1/4"', "field_trim": "0 in"}
    /// >>> hem = {"hooked": {"sheet": sheet, "height": "2 in", "fasteners_above_bend": '1 1/4"', "fasteners": row, "hem": '5/8"', "hem_gap": "0.165 in",
    /// ...     "short_of_fold": '1/16"', "engagement": '3/8"'}}
    /// >>> face = {"depth": "3 in", "kick": "45 deg", "hem": hem}
    /// >>> levels = {"seam_height": '1 3/4"'}
    /// >>> high = HighSide.from_dict({"roof": {"pitch": "2:12", "levels": levels}, "detail": {"end": end, "sheet": sheet, "face": face}})
    /// >>> [trim.name for trim in high.compute().trims]
    /// ['continuous cleat', 'high-side cap']
    HighSide
}

kind! {
    /// The hip: a cap over the closures of both sides, which the seams meet at a skew.
    ///
    /// >>> from seamwright.junction import Hip
    /// >>> row, sheet = {"spacing": "8 in", "source": "common-practice"}, {"thickness": "0.024 in", "inside_radius": "0.03 in"}
    /// >>> drip = {"leg": '3/4"', "hem": '1/2"', "above_pan": '1/4"'}
    /// >>> closure = {"face": "web", "lower_flange": '1 1/4"', "top_flange": '1/2"', "tape_width": '7/8"', "tape_beneath": '1/16"'}
    /// >>> end = {"flange": '8"', "drip": drip, "closure": closure, "bites": "structure", "screws": row, "rivets": row, "hollow_seams": False}
    /// >>> end |= {"cap_tape_width": '1/2"', "hold_back": '2"', "clearance": '1/4"', "field_trim": "0 in"}
    /// >>> levels = {"seam_height": '1 3/4"'}
    /// >>> corner = {"first": "12:12", "second": "12:12", "plan": "90 deg"}
    /// >>> detail = {"first": end, "second": end, "sheet": sheet}
    /// >>> hip = Hip.from_dict({"corner": corner, "first": levels, "second": levels, "detail": detail})
    /// >>> round(hip.compute().trim("hip cap").profile.bends[1].angle.degrees)
    /// 60
    Hip
}

kind! {
    /// The valley: a pan in the trough, and panels that hook it on both sides.
    ///
    /// >>> from seamwright.junction import Valley
    /// >>> row, sheet = {"spacing": "12 in", "source": "common-practice"}, {"thickness": "0.024 in", "inside_radius": "0.03 in"}
    /// >>> cleat = {"sheet": sheet, "tongue": '1 1/4"', "rise": '1/4"', "tape_width": '1 1/2"', "tape": '1/16"', "screws": row, "gap": '1/4"'}
    /// >>> side = {"leg": "12 in", "hook": {"offset-cleat": {"cleat": cleat}}}
    /// >>> minimum = {"covering": "metal valley", "limit": "2:12", "printed_percentage": None, "source": "common-practice"}
    /// >>> detail = {"sheet": sheet, "bed": "0 in", "first": side, "second": side, "minimum": minimum}
    /// >>> corner = {"first": "6:12", "second": "6:12", "plan": "90 deg"}
    /// >>> levels = {"seam_height": '1 3/4"'}
    /// >>> valley = Valley.from_dict({"corner": corner, "first": levels, "second": levels, "detail": detail})
    /// >>> [format(end.end.allowance(), "in/16") for end in valley.compute().ends]
    /// ['-2"', '-2"']
    Valley
}

kind! {
    /// A wall above a roof: a flashing over the closures and up the wall.
    ///
    /// >>> from seamwright.junction import Headwall
    /// >>> row, sheet = {"spacing": "8 in", "source": "common-practice"}, {"thickness": "0.024 in", "inside_radius": "0.03 in"}
    /// >>> drip = {"leg": '3/4"', "hem": '1/2"', "above_pan": '1/4"'}
    /// >>> closure = {"face": "web", "lower_flange": '1 1/4"', "top_flange": '1/2"', "tape_width": '7/8"', "tape_beneath": '1/16"'}
    /// >>> end = {"flange": '8"', "drip": drip, "closure": closure, "bites": "structure", "screws": row, "rivets": row, "hollow_seams": False}
    /// >>> end |= {"cap_tape_width": '1/2"', "hold_back": '2"', "clearance": '1/4"', "field_trim": "0 in"}
    /// >>> levels = {"seam_height": '1 3/4"'}
    /// >>> upstand = {"what": "upstand", "least": "6 in", "source": {"user": {"note": "the wall's drawing"}}}
    /// >>> cover = {"cladding": {"lap": "6 in", "rule": upstand | {"least": "4 in"}, "clearance": "1 in"}}
    /// >>> wall = {"leg": "9 in", "stands_out": '1/8"', "upstand": upstand, "fasteners": row, "fasteners_below_top": "1 in", "cover": cover}
    /// >>> headwall = Headwall.from_dict({"roof": {"pitch": "4:12", "levels": levels}, "detail": {"end": end, "sheet": sheet, "wall": wall}})
    /// >>> [trim.name for trim in headwall.compute().trims]
    /// ['headwall flashing']
    Headwall
}

kind! {
    /// A wall beside a roof: a flashing over the panel at the wall and up the wall.
    ///
    /// >>> from seamwright.junction import Sidewall
    /// >>> row, sheet = {"spacing": "12 in", "source": "common-practice"}, {"thickness": "0.024 in", "inside_radius": "0.03 in"}
    /// >>> upstand = {"what": "upstand", "least": "6 in", "source": {"user": {"note": "the wall's drawing"}}}
    /// >>> cover = {"cladding": {"lap": "6 in", "rule": upstand | {"least": "4 in"}, "clearance": "1 in"}}
    /// >>> wall = {"leg": "9 in", "stands_out": '1/8"', "upstand": upstand, "fasteners_below_top": "1 in", "cover": cover}
    /// >>> on_z = {"web_from_wall": "3 in", "foot": '1 1/4"', "web_to_screws": '5/8"', "tape_width": '7/8"', "tape_beneath": '1/16"', "bites": "panel",
    /// ...     "screws": row, "cover": '3/4"', "rivets": row}
    /// >>> drip = {"leg": '3/4"', "hem": '1/2"', "above_pan": '1/4"'}
    /// >>> detail = {"sheet": sheet, "edge": {"turned-up": {"height": '1 3/4"'}}, "edge_from_wall": '1/2"', "flange": {"on-z": on_z}, "drip": drip,
    /// ...     "wall": wall, "foot": {"dies-into-wall": {"kick_out": {"throw": "4 in"}}}}
    /// >>> levels = {"seam_height": '1 3/4"'}
    /// >>> sidewall = Sidewall.from_dict({"roof": {"pitch": "4:12", "levels": levels}, "first_seam_from_wall": "12 in", "detail": detail})
    /// >>> [trim.name for trim in sidewall.compute().trims]
    /// ['Z', 'sidewall flashing']
    Sidewall
}

kind! {
    /// A change of pitch, steep above shallow or shallow above steep: a trim on the seam tops of the lower roof, and on the upper deck.
    ///
    /// >>> from seamwright.junction import PitchTransition
    /// >>> row, sheet = {"spacing": "8 in", "source": "common-practice"}, {"thickness": "0.024 in", "inside_radius": "0.03 in"}
    /// >>> drip = {"leg": '3/4"', "hem": '1/2"', "above_pan": '1/4"'}
    /// >>> closure = {"face": "web", "lower_flange": '1 1/4"', "top_flange": '1/2"', "tape_width": '7/8"', "tape_beneath": '1/16"'}
    /// >>> end = {"flange": '8"', "drip": drip, "closure": closure, "bites": "structure", "screws": row, "rivets": row, "hollow_seams": False}
    /// >>> end |= {"cap_tape_width": '1/2"', "hold_back": '2"', "clearance": '1/4"', "field_trim": "0 in"}
    /// >>> levels = {"seam_height": '1 3/4"'}
    /// >>> top_edge = {"hem": '1/2"', "screws_below": "1 in", "screws": row}
    /// >>> cleat = {"sheet": sheet, "tongue": '1 1/4"', "rise": '1/4"', "tape_width": '1 1/2"', "tape": '1/16"', "screws": row, "gap": '1/4"'}
    /// >>> end |= {"flange": "12 in", "hold_back": '1 1/2"'}
    /// >>> detail = {"sheet": sheet, "end": end, "packing": "0 in", "bending": "direct", "unsupported_limit": "8 in", "upper_flange": "9 in",
    /// ...     "top_edge": top_edge, "cleat": cleat}
    /// >>> lower, upper = {"pitch": "3:12", "levels": levels}, {"pitch": "8:12", "levels": levels}
    /// >>> transition = PitchTransition.from_dict({"lower": lower, "upper": upper, "detail": detail})
    /// >>> [format(end.end.allowance(), "in/16") for end in transition.compute().ends]
    /// ['-1/2"', '-6 15/16"']
    PitchTransition
}

kind! {
    /// The upper side of a curb: a pan under the panels and up the curb.
    ///
    /// >>> from seamwright.junction import CurbBack
    /// >>> row, sheet = {"spacing": "12 in", "source": "common-practice"}, {"thickness": "0.024 in", "inside_radius": "0.03 in"}
    /// >>> upstand = {"what": "upstand", "least": "6 in", "source": {"user": {"note": "the wall's drawing"}}}
    /// >>> cover = {"cladding": {"lap": "6 in", "rule": upstand | {"least": "4 in"}, "clearance": "1 in"}}
    /// >>> wall = {"leg": "9 in", "stands_out": '1/8"', "upstand": upstand, "fasteners": row, "fasteners_below_top": "1 in", "cover": cover}
    /// >>> top_edge = {"hem": '1/2"', "screws_below": "1 in", "screws": row}
    /// >>> cleat = {"sheet": sheet, "tongue": '1 1/4"', "rise": '1/4"', "tape_width": '1 1/2"', "tape": '1/16"', "screws": row, "gap": '1/4"'}
    /// >>> under = {"what": "pan under the panels", "least": "4 in", "source": "common-practice"}
    /// >>> detail = {"sheet": sheet, "wall": wall, "reach": "18 in", "top_edge": top_edge, "under_panels": under,
    /// ...     "clear_width": "6 in", "seam_cut_back": '1 1/4"',
    /// ...     "hook": {"offset-cleat": {"cleat": cleat}}, "cricket": {"widest": "30 in", "source": "common-practice"}}
    /// >>> roof = {"pitch": "4:12", "levels": {"pan": "0.024 in", "seam_height": '1 3/4"'}}
    /// >>> curb = CurbBack.from_dict({"roof": roof, "width": "36 in", "detail": detail})
    /// >>> [caution.name for caution in curb.compute().cautions]
    /// ['water-dams-behind', 'cricket-required']
    CurbBack
}

kind! {
    /// A cap on the top of a wall that falls to the roof, hooked on a cleat on each face or screwed through slots on one.
    ///
    /// >>> from seamwright.junction import Coping
    /// >>> row, sheet = {"spacing": "12 in", "source": "common-practice"}, {"thickness": "0.024 in", "inside_radius": "0.03 in"}
    /// >>> cleat = {"sheet": sheet, "height": "3 in", "fasteners_above_bend": '1 1/2"', "fasteners": row, "hem": '7/8"', "hem_gap": "0.165 in",
    /// ...     "short_of_fold": '1/16"', "engagement": '3/4"'}
    /// >>> side = {"behind": "0 in", "depth": "4 in", "kick": "40 deg", "clears": '3/4"', "hold": {"cleat": cleat}}
    /// >>> lap = {"below_top": "0 in", "rule": {"what": "lap over the flashing", "least": "4 in", "source": "common-practice"}}
    /// >>> detail = {"sheet": sheet, "bed": "0.04 in", "fall": "1:12", "roof_side": side | {"behind": "0.024 in", "over": lap}, "outside": side}
    /// >>> [trim.name for trim in Coping.from_dict({"thickness": "8 in", "detail": detail}).compute().trims]
    /// ['continuous cleat, roof side', 'continuous cleat, outside', 'coping']
    Coping
}

kind! {
    /// An upper roof that ends over a plumb riser above a lower one: an eave above, a headwall below, the upper trim's face over the lower one's leg.
    ///
    /// >>> from seamwright.junction import Step
    /// >>> row, sheet = {"spacing": "12 in", "source": "common-practice"}, {"thickness": "0.024 in", "inside_radius": "0.03 in"}
    /// >>> drip = {"leg": '3/4"', "hem": '1/2"', "above_pan": '1/4"'}
    /// >>> closure = {"face": "web", "lower_flange": '1 1/4"', "top_flange": '1/2"', "tape_width": '7/8"', "tape_beneath": '1/16"'}
    /// >>> end = {"flange": '8"', "drip": drip, "closure": closure, "bites": "structure", "screws": row, "rivets": row, "hollow_seams": False}
    /// >>> end |= {"cap_tape_width": '1/2"', "hold_back": '2"', "clearance": '1/4"', "field_trim": "0 in"}
    /// >>> least = {"what": "upstand", "least": "8 in", "source": "common-practice"}
    /// >>> lower = {"end": end, "sheet": sheet, "stands_out": "0 in", "below_edge": "1 in", "upstand": least, "fasteners": row, "fasteners_below_top": "1 in",
    /// ...     "lap": least | {"what": "lap", "least": "4 in"}, "clearance": "1 in"}
    /// >>> upper = {"sheet": sheet, "flange": {"width": "4 in", "lies": "under-underlayment", "fasteners": row, "fasteners_from_edge": "1 in"},
    /// ...     "face": {"depth": "5 in", "kick": "40 deg", "clears": '5/8"', "hem": {"closed": {"width": '1/2"'}}},
    /// ...     "strip": {"sheet": sheet, "width": "4 in", "fasteners": row, "fasteners_from_edge": "1 in"},
    /// ...     "panel": {"overhang": '1 1/2"', "gap": '1/4"', "fold": "1 in", "fold_opening": '3/16"'}}
    /// >>> roof = {"pitch": "3:12", "levels": {"pan": "0.024 in", "seam_height": '1 3/4"'}}
    /// >>> step = Step.from_dict({"lower": roof, "upper": roof, "riser": "14 in", "detail": {"lower": lower, "upper": upper}})
    /// >>> [(end.side, format(end.end.allowance(), "in/16")) for end in step.compute().ends]
    /// [('first', '-1"'), ('second', '2 3/4"')]
    Step
}

kind! {
    /// An expansion joint along the panels: two curbs, the panels' edges turned up against them, and a cap that slides on one.
    ///
    /// >>> from seamwright.junction import ExpansionAlong
    /// >>> row, sheet = {"spacing": "12 in", "source": "common-practice"}, {"thickness": "0.024 in", "inside_radius": "0.03 in"}
    /// >>> side = {"levels": {"pan": "0.024 in", "seam_height": '1 3/4"'}, "to_fixed": "50 ft", "first_seam": "12 in"}
    /// >>> temperatures = {"expansion": "12e-6 /K", "coldest": "-20 degC", "laid": "20 degC", "hottest": "70 degC"}
    /// >>> least = {"what": "upstand", "least": "6 in", "source": "common-practice"}
    /// >>> detail = {"sheet": sheet, "gap": "1 in", "curb_width": '1 1/2"', "curb_height": "9 in", "edge_room": '1/8"', "turn_up": "8 in", "upstand": least,
    /// ...     "cleat_room": '1/8"', "cleat_fasteners": row, "fasteners_from_edge": '3/4"', "drop": "5 in", "lap": least | {"least": "4 in"}, "hook": "2 in",
    /// ...     "play": '1/16"', "rivets": row}
    /// >>> joint = ExpansionAlong.from_dict({"first": side, "second": side, "range": temperatures, "detail": detail})
    /// >>> [trim.name for trim in joint.compute().trims]
    /// ['joint cleat, fixed side', 'joint cleat, sliding side', 'joint cap']
    ExpansionAlong
}

kind! {
    /// An expansion joint across the panels: the upper ones slide over a flashing that is fixed to the deck.
    ///
    /// >>> from seamwright.junction import ExpansionAcross
    /// >>> row, sheet = {"spacing": "8 in", "source": "common-practice"}, {"thickness": "0.024 in", "inside_radius": "0.03 in"}
    /// >>> drip = {"leg": '3/4"', "hem": '1/2"', "above_pan": '1/4"'}
    /// >>> closure = {"face": "web", "lower_flange": '1 1/4"', "top_flange": '1/2"', "tape_width": '7/8"', "tape_beneath": '1/16"'}
    /// >>> end = {"flange": "9 in", "drip": drip, "closure": closure, "bites": "structure", "screws": row, "rivets": row, "hollow_seams": False}
    /// >>> end |= {"cap_tape_width": '1/2"', "hold_back": "1 in", "clearance": '1/4"', "field_trim": "0 in"}
    /// >>> cleat = {"sheet": sheet, "width": "5 in", "tongue": "2 in", "rise": '1/4"', "tape_width": '1 1/2"', "tape": '1/16"', "screws": row, "gap": '1/2"',
    /// ...     "fold": '1 3/4"'}
    /// >>> flashing = {"sheet": sheet, "end": end, "packing": '1 3/4"', "bending": "direct", "unsupported_limit": "2 in", "upper_flange": "11 in",
    /// ...     "top_edge": {"hem": '1/2"', "screws_below": "1 in", "screws": row}, "cleat": cleat, "front_below_top": "8 in"}
    /// >>> temperatures = {"expansion": "12e-6 /K", "coldest": "-20 degC", "laid": "20 degC", "hottest": "70 degC"}
    /// >>> lap = {"what": "lap beside the movement", "least": "3 in", "source": "common-practice"}
    /// >>> roof = {"pitch": "3:12", "levels": {"seam_height": '1 3/4"'}}
    /// >>> joint = ExpansionAcross.from_dict({"roof": roof, "to_fixed": "50 ft", "range": temperatures, "detail": {"lap": lap, "flashing": flashing}})
    /// >>> [format(end.end.fold, "in/16") for end in joint.compute().ends]
    /// ['0"', '1 3/4"']
    ExpansionAcross
}
