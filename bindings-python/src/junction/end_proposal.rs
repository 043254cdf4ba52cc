//! `seamwright.junction.EndProposal` and what it gives.

use crate::document::document;
use crate::names::name_of;
use crate::panel::PanelEnd;
use crate::place::{cautions, part};
use crate::record::Caution;
use crate::units::Length;
use pyo3::prelude::*;
use seamwright::junction as core_junction;

document! {
    /// A junction whose panels' ends are to be given the fold and the gap that their movement needs: every end that hooks something and slides. What holds the fold
    /// is made to fit it; all else stays as it is.
    ///
    /// >>> from seamwright.junction import EndProposal
    /// >>> row, sheet = {"spacing": "12 in", "source": "common-practice"}, {"thickness": "0.024 in", "inside_radius": "0.03 in"}
    /// >>> hem = {"hooked": {"sheet": sheet, "height": "2 in", "fasteners_above_bend": '1 1/4"', "fasteners": row, "hem": '5/8"', "hem_gap": "0.165 in",
    /// ...     "short_of_fold": '1/16"', "engagement": '3/8"'}}
    /// >>> face = {"depth": "3 in", "kick": "45 deg", "hem": hem}
    /// >>> flange = {"width": "4 in", "lies": "under-underlayment", "fasteners": row, "fasteners_from_edge": "1 in"}
    /// >>> strip = {"sheet": sheet, "width": "4 in", "fasteners": row, "fasteners_from_edge": "1 in"}
    /// >>> panel = {"overhang": '1 1/2"', "gap": '3/8"', "fold": '1 1/4"', "fold_opening": '3/16"'}
    /// >>> detail = {"sheet": sheet, "flange": flange, "front": "plumb", "face": face, "strip": strip, "panel": panel}
    /// >>> eave = {"roof": {"pitch": "4:12", "levels": {"pan": "0.024 in", "seam_height": '1 3/4"'}}, "detail": detail}
    /// >>> range = {"expansion": "12e-6 /K", "coldest": "-20 degC", "laid": "20 degC", "hottest": "70 degC"}
    /// >>> [end] = EndProposal.from_dict({"of": {"eave": eave}, "range": range, "to_fixed": "12 m"}).compute().ends
    /// >>> end.gap, end.travel
    /// (Length('8.935 mm'), Length('12.96 mm'))
    EndProposal(core_junction::EndProposal) in "seamwright.junction" gives ProposedEnds
}

part! {
    /// A junction with the ends that were proposed for it.
    ProposedEnds(core_junction::ProposedEnds) in "seamwright.junction",
    shown p: format_args!("{}, {} ends", p.of.name(), p.ends.len());

    /// The kind of the junction, by which it stands in ``junction``.
    kind(p) -> &'static str = p.of.name();
    /// The junction with the ends in it, as JSON: an object of its kind with the input of that kind's own calculation.
    junction(p) -> String = written(&p.of);
    /// Each of its ends that hooks and slides.
    ends(p, here) -> Vec<ProposedEnd> = here.all("ends", &p.ends);
    /// What else to know.
    cautions(p) -> Vec<Caution> = cautions(&p.cautions);
}

/// A junction is plain data of text and lists, which JSON always holds.
fn written(of: &core_junction::JunctionInput) -> String {
    serde_json::to_string(of).unwrap_or_default()
}

part! {
    /// An end with the fold and the gap that its movement needs.
    ProposedEnd(core_junction::ProposedEnd) in "seamwright.junction",
    shown e: format_args!("fold {}, gap {}", e.fold, e.gap);

    /// On which side: ``first`` or ``second``.
    side(e) -> String = name_of(&e.side)?;
    /// The end as the layout takes it: hold-back or overhang, gap and fold.
    end(e) -> PanelEnd = PanelEnd(e.end.clone());
    /// From the nose to what the fold hooks, when laid.
    gap(e) -> Length = Length(e.gap);
    /// The fold.
    fold(e) -> Length = Length(e.fold);
    /// How far the end moves over the year, square to the line.
    travel(e) -> Length = Length(e.travel);
    /// The gap that is left on the coldest night.
    clearance_in_the_cold(e) -> Length = Length(e.clearance_in_the_cold);
    /// The length that is hooked on the hottest afternoon.
    engagement_in_the_heat(e) -> Length = Length(e.engagement_in_the_heat);
}
