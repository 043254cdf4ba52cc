//! A trim that cannot be folded is told by the input that its part follows from.

use crate::error::{Error, Faults};
use crate::units::Length;

/// The input behind a leg of a trim, or behind its `start` or `end`, as the trim's own refusals are placed; none where several inputs make it.
fn input_of(trim: &str, part: &str) -> Option<&'static str> {
    Some(match (trim, part) {
        ("ridge cap" | "hip cap", "first drip") => "detail.first.drip.leg",
        ("ridge cap" | "hip cap", "first flange") => "detail.first.flange",
        ("ridge cap" | "hip cap", "second flange") => "detail.second.flange",
        ("ridge cap" | "hip cap", "second drip") => "detail.second.drip.leg",
        ("ridge cap" | "hip cap", "start") => "detail.first.drip.hem",
        ("ridge cap" | "hip cap", "end") => "detail.second.drip.hem",
        ("high-side cap", "roof drip") | ("headwall flashing" | "transition trim", "drip") => "detail.end.drip.leg",
        ("high-side cap", "roof flange") | ("headwall flashing" | "transition trim", "flange") | ("transition trim", "lower flange") => "detail.end.flange",
        ("high-side cap" | "headwall flashing" | "transition trim", "start") => "detail.end.drip.hem",
        ("high-side cap", "wall leg") | ("eave trim" | "rake trim", "face") => "detail.face.depth",
        ("high-side cap", "wall drip") | ("eave trim" | "rake trim", "drip") => "detail.face.clears",
        ("high-side cap" | "eave trim" | "rake trim", "end") => "detail.face.hem",
        ("headwall flashing" | "sidewall flashing" | "back pan", "leg") => "detail.wall.leg",
        ("sidewall flashing", "drip") => "detail.drip.leg",
        ("sidewall flashing", "start") => "detail.drip.hem",
        ("sidewall flashing", "flange") => "detail.flange",
        ("Z", "top flange") => "detail.flange.on-z.cover",
        ("Z", "web") => "roof.levels.seam_height",
        ("Z", "foot") => "detail.flange.on-z.foot",
        ("transition trim", "upper flange") => "detail.upper_flange",
        ("transition trim", "riser") => "detail.bending.riser.distance",
        ("transition trim" | "back pan", "end") | ("back pan", "start") => "detail.top_edge.hem",
        ("eave trim", "deck flange") => "detail.flange.width",
        ("rake Z" | "rake cleat", "top flange") => "detail.z.top_flange",
        ("rake Z" | "rake cleat", "web") => "levels.seam_height",
        ("rake Z" | "rake cleat", "lower flange") => "detail.z.lower_flange",
        ("rake trim", "inner edge") => "detail.inner.drop",
        ("rake trim", "top") => "detail.inner.cover",
        ("rake trim", "start") => "detail.inner.hem",
        ("valley pan", "leg 1" | "outer part 1") => "detail.first.leg",
        ("valley pan", "leg 2" | "outer part 2") => "detail.second.leg",
        ("valley pan", "return 1") => "detail.first.hook.receiver-fold.opening",
        ("valley pan", "return 2") => "detail.second.hook.receiver-fold.opening",
        ("valley pan", "rib 1" | "rib 2") => "detail.rib.height",
        ("valley pan", "start" | "end") => "detail.edge_hem",
        ("lower flashing", "drip") => "detail.lower.end.drip.leg",
        ("lower flashing", "flange") => "detail.lower.end.flange",
        ("lower flashing", "start") => "detail.lower.end.drip.hem",
        ("lower flashing", "leg") => "riser",
        ("back pan", "pan" | "outer part 1") => "detail.reach",
        ("back pan", "return 1") => "detail.hook.receiver-fold.opening",
        ("coping", "roof-side drip") => "detail.roof_side.clears",
        ("coping", "roof-side face") => "detail.roof_side.depth",
        ("coping", "top") => "thickness",
        ("coping", "outside face") => "detail.outside.depth",
        ("coping", "outside drip") => "detail.outside.clears",
        ("coping", "start") => "detail.roof_side.hold",
        ("coping", "end") => "detail.outside.hold",
        ("joint cap", "fixed leg" | "sliding leg") => "detail.drop",
        ("joint cap", "top") => "detail.gap",
        ("joint cap", "return") => "detail.hook",
        ("joint cleat, fixed side" | "joint cleat, sliding side", "top") => "detail.curb_width",
        ("joint cleat, fixed side" | "joint cleat, sliding side", "leg") => "detail.drop",
        ("joint cleat, sliding side", "hook") => "detail.hook",
        // Told under the part that it belongs to.
        ("counterflashing", "start") => "cover.reglet.hem",
        ("counterflashing", "counterflashing face") => "cover.reglet.face",
        ("counterflashing", "tongue") => "cover.reglet.tongue",
        ("continuous cleat", "face") => "face.hem.hooked.height",
        ("continuous cleat", "hook") => "face.hem.hooked.short_of_fold",
        ("offset cleat", "tongue") => "tongue",
        ("offset cleat", "web") => "rise",
        ("offset cleat", "foot") => "width",
        _ => return None,
    })
}

/// What a profile refuses, told of the trim's part by its name, with the input that it follows from and the distance by which it fails.
pub(super) fn told<'a>(e: &Error, trim: &str, legs: impl Iterator<Item = &'a str>) -> Error {
    let names: Vec<&str> = legs.collect();
    let mut faults = Faults::default();
    for fault in core::iter::once(e).chain(e.others()) {
        let leg = fault.path().strip_prefix("legs[").and_then(|rest| rest.split_once(']')).and_then(|(k, _)| names.get(k.parse::<usize>().ok()?));
        let (part, name) = match (leg, fault.path()) {
            (Some(leg), _) => (*leg, (*leg).to_owned()),
            (None, path) if path.starts_with("start_edge") => ("start", "hem at the start".to_owned()),
            (None, path) if path.starts_with("end_edge") => ("end", "hem at the end".to_owned()),
            (None, path) => ("", path.to_owned()),
        };
        let path = input_of(trim, part).map_or_else(|| format!("{trim}.{}", fault.path()), str::to_owned);
        let short = fault.missed_by().map_or_else(String::new, |by| format!(" by {}", Length::from_pm(by)));
        let mut out = Error::new(fault.kind(), format!("the {trim}, {name}: {}{short}", fault.message())).at(path);
        out = if let Some(value) = fault.value() { out.value_of(value) } else { out };
        out = if let Some(allowed) = fault.allowed() { out.accepts(allowed.to_owned()) } else { out };
        faults.add(out.cured_by(fault.cure().map_or_else(|| "a narrower hem, or a longer leg".to_owned(), str::to_owned)));
    }
    match faults.check() {
        Err(told) => told,
        Ok(()) => e.clone(),
    }
}
