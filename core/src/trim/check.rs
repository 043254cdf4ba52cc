//! Every fault of a profile at once. The unfolding stops at the first; this repeats its questions one by one and says where each arises.

use super::leg::{Leg, LegEnd};
use super::profile::Profile;
use super::rule::BendRule;
use super::size::BendMm;
use super::solve::{self, flat_part, setback};
use super::walk::{Part, Walk, WalkBend, WalkLeg};
use crate::error::{Error, ErrorKind, Faults};
use crate::units::Length;

/// Checks a profile, and with a rule also whether the rule covers its bends.
pub(super) fn profile(profile: &Profile, rule: Option<&BendRule>) -> Result<(), Error> {
    let mut faults = Faults::default();
    faults.keep(profile.thickness.positive("thickness"));
    if profile.legs.is_empty() {
        faults.add(Error::new(ErrorKind::Missing, "a profile needs a leg").at("legs").value_of("0 legs").accepts("at least one leg"));
    } else if profile.bends.len() + 1 != profile.legs.len() {
        faults.add(Error::new(ErrorKind::Conflict, "there is one bend between every two legs").at("bends").value_of(profile.bends.len()).accepts(format!(
            "{} bends for {} legs",
            profile.legs.len() - 1,
            profile.legs.len()
        )));
    }
    for (path, edge) in [("start_edge", &profile.start_edge), ("end_edge", &profile.end_edge)] {
        if let Err(e) = edge.check(profile.thickness) {
            faults.add(e.under(path));
        }
    }
    check_edge_ends(profile, &mut faults);
    faults.check()?;

    // The counts fit: now the walk.
    let mut faults = Faults::default();
    let t = profile.thickness.mm();
    let walk = Walk::of(profile);
    let bends: Vec<Option<BendMm>> = walk.bends().map(|bend| faults.keep(check_bend(profile, bend, t, rule))).collect();
    let mut flats: Vec<(WalkLeg<'_>, Option<Length>)> = Vec::with_capacity(bends.len() + 1);
    for (i, leg) in walk.legs().enumerate() {
        let before = i.checked_sub(1).and_then(|b| bends.get(b));
        let after = bends.get(i);
        let flat = match (before, after) {
            // A bend that is no bend has been reported; what it does to the leg is unknown.
            (Some(None), _) | (_, Some(None)) => None,
            _ => faults.keep(check_leg(profile, &leg, before.and_then(Option::as_ref), after.and_then(Option::as_ref))),
        };
        flats.push((leg, flat));
    }
    check_hems(profile, &flats, &mut faults);
    faults.check()
}

/// The ends of the outermost legs must be what their edges are.
fn check_edge_ends(profile: &Profile, faults: &mut Faults) {
    let count = profile.legs.len();
    for (i, leg) in profile.legs.iter().enumerate() {
        let Leg { start, end, .. } = leg;
        for (field, at, edge) in [("start", *start, (i == 0).then_some(&profile.start_edge)), ("end", *end, (i + 1 == count).then_some(&profile.end_edge))] {
            let raw = edge.is_some_and(super::Edge::is_raw);
            if raw && at != LegEnd::SheetEdge {
                faults.add(
                    Error::new(ErrorKind::Conflict, "the leg ends at the sheet's edge, not at a bend")
                        .at(format!("legs[{i}].{field}"))
                        .value_of(format_args!("{at:?}"))
                        .accepts("sheet-edge"),
                );
            }
            if !raw && at == LegEnd::SheetEdge {
                faults.add(
                    Error::new(ErrorKind::Conflict, "the leg ends at a bend, not at the sheet's edge")
                        .at(format!("legs[{i}].{field}"))
                        .value_of("sheet-edge")
                        .accepts("outer-corner, inner-corner, outer-tangent, tangent"),
                );
            }
        }
    }
}

fn check_bend(profile: &Profile, bend: WalkBend<'_>, t: f64, rule: Option<&BendRule>) -> Result<BendMm, Error> {
    let place = |e: Error| match bend.part {
        Part::Body(_) => e.under(&bend.part.bend_path()),
        // A hem's angle is no field of its edge.
        _ => e.at(bend.part.bend_path()),
    };
    let mm = solve::measure(&bend, profile.thickness, t).map_err(place)?;
    if let Some(rule) = bend.rule.or(rule) {
        let allowance = solve::allowance(&bend, &mm, rule).map_err(place)?;
        if allowance.is_negative() {
            return Err(place(solve::negative_allowance(allowance)));
        }
    }
    Ok(mm)
}

fn check_leg(profile: &Profile, leg: &WalkLeg<'_>, before: Option<&BendMm>, after: Option<&BendMm>) -> Result<Length, Error> {
    let field = |name: &'static str| {
        let part = leg.part;
        move |e: Error| match e.path() {
            "" => e.at(format!("{}.{name}", part.leg_path())),
            _ => e.under(&part.leg_path()),
        }
    };
    // Both ends are asked, so that two faults on one leg are both told.
    let mut faults = Faults::default();
    let start = faults.keep(setback(leg.start, before).map_err(field("start")));
    let end = faults.keep(setback(leg.end, after).map_err(field("end")));
    faults.check()?;
    flat_part(leg, start.unwrap_or_default(), end.unwrap_or_default()).map_err(|e| e.at(length_path(profile, leg.part)))
}

/// The field that says how long a leg or a return is.
fn length_path(profile: &Profile, part: Part) -> String {
    let field = match part {
        Part::StartLip | Part::StartHem => profile.start_edge.length_field(),
        Part::Body(_) => "length",
        Part::EndHem | Part::EndLip => profile.end_edge.length_field(),
    };
    format!("{}.{field}", part.leg_path())
}

fn check_hems(profile: &Profile, flats: &[(WalkLeg<'_>, Option<Length>)], faults: &mut Faults) {
    for pair in flats.windows(2) {
        let (hem, body) = match pair {
            [(hem, Some(_)), (_, Some(body))] if hem.part.is_of_start_edge() => (hem, body),
            [(_, Some(body)), (hem, Some(_))] if hem.part.is_of_end_edge() => (hem, body),
            _ => continue,
        };
        if hem.reach > *body {
            faults.add(
                Error::new(ErrorKind::Impossible, "the hem is longer than the flat part of the leg it lies on")
                    .at(length_path(profile, hem.part))
                    .value_of(format_args!("flat part {}", hem.reach))
                    .accepts(format!("a flat part of at most {body}"))
                    .missing_by(hem.reach.pm() - body.pm()),
            );
        }
    }
}
