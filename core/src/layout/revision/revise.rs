//! The revision of a list.
//!
//! What is formed and serves nothing is all that is formed less what is served from it. So the least scrap is had by serving the needs of greatest area, which a
//! matching by falling area does exactly. Pieces that fit as they are come first, which costs nothing: where a best use cuts such a piece down for another need, that
//! need can take what this one would have had.

use super::super::cautions;
use super::super::laid::mark;
use super::super::lists::CutEdge;
use super::super::matching::matched;
use super::super::placing::area_of;
use super::given::{FormedRow, ListRow};
use super::revised::{FormedUse, Revised, RevisedRow, RowState, VoidRow};
use crate::error::{Error, ErrorKind, Faults};
use crate::record::{Calculation, Caution, Recorder, Source, Step};
use crate::units::Length;
use core::cmp::Reverse;
use std::collections::{BTreeMap, BTreeSet};

/// Pieces that are matched one by one.
const PIECES: u64 = 4000;
/// Rows of one list.
const ROWS: usize = 10_000;

/// A list before and a list now, and what is formed by the list before.
///
/// A mark keeps its meaning for ever: one plane, length, width and cut edge. Rows that are the same in both lists keep the mark of the list before, whatever the list now
/// calls them; others get marks that no list had. A formed piece serves a need that is no longer and no wider: as it is, cut down, or ripped from a whole panel.
///
/// ```
/// use seamwright::layout::{CutEdge, FormedRow, ListRow, Revision};
/// use seamwright::record::Calculation;
/// use seamwright::units::Length;
/// let row = |mark: &str, feet| ListRow { plane: "south".into(), mark: mark.into(), order: Length::feet(feet), width: Length::inches(16), cut: CutEdge::None, count: 1 };
/// // The new list renumbers; the revision does not.
/// let now = vec![row("A", 30), row("B", 20)];
/// let revised = Revision { before: vec![row("A", 20), row("B", 10)], now, formed: vec![], between_planes: false }.compute()?;
/// assert_eq!(revised.rows.iter().map(|r| r.mark.as_str()).collect::<Vec<_>>(), ["C", "A", "B"]);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct Revision {
    /// The list before.
    pub before: Vec<ListRow>,
    /// The list now.
    pub now: Vec<ListRow>,
    /// What is formed, by the marks of the list before.
    #[cfg_attr(feature = "serde", serde(default))]
    pub formed: Vec<FormedRow>,
    /// Whether a panel formed for one plane may serve another.
    #[cfg_attr(feature = "serde", serde(default))]
    pub between_planes: bool,
}

/// What a mark means.
type Meaning<'a> = (&'a str, Length, Length, CutEdge);

fn meaning(row: &ListRow) -> Meaning<'_> {
    (row.plane.as_str(), row.order, row.width, row.cut)
}

fn area(order: Length, width: Length) -> i128 {
    i128::from(order.pm()) * i128::from(width.pm())
}

impl Revision {
    fn check(&self) -> Result<(), Error> {
        let mut faults = Faults::default();
        for (name, rows) in [("before", &self.before), ("now", &self.now)] {
            if rows.len() > ROWS {
                faults.add(Error::new(ErrorKind::TooLarge, "too many rows").at(name).value_of(rows.len()).accepts(format!("at most {ROWS}")));
                continue;
            }
            let (mut marks, mut meanings) = (BTreeMap::new(), BTreeMap::new());
            for (i, row) in rows.iter().enumerate() {
                faults.keep(row.order.positive(&format!("{name}[{i}].order")));
                faults.keep(row.width.positive(&format!("{name}[{i}].width")));
                if row.mark.trim().is_empty() {
                    faults.add(Error::new(ErrorKind::Missing, "a row needs its mark").at(format!("{name}[{i}].mark")).value_of(&row.mark).accepts("a mark"));
                }
                if let Some(first) = marks.insert((row.mark.as_str(), if name == "now" { row.plane.as_str() } else { "" }), i) {
                    let fault = Error::new(ErrorKind::Conflict, "a mark is given twice").at(format!("{name}[{i}].mark")).value_of(&row.mark);
                    faults.add(fault.accepts(format!("another mark than that of {name}[{first}]")));
                }
                if let Some(first) = meanings.insert(meaning(row), i) {
                    let fault =
                        Error::new(ErrorKind::Conflict, "two rows of one plane, length, width and cut edge").at(format!("{name}[{i}]")).value_of(&row.mark);
                    faults.add(fault.accepts(format!("one row, with what {name}[{first}] has")));
                }
            }
        }
        let known: BTreeSet<&str> = self.before.iter().map(|r| r.mark.as_str()).collect();
        for (i, formed) in self.formed.iter().enumerate() {
            let path = format!("formed[{i}].mark");
            if !known.contains(formed.mark.as_str()) {
                let fault = Error::new(ErrorKind::Unknown, "the list before has no such mark").at(path).value_of(&formed.mark);
                faults.add(fault.accepts(known.iter().take(40).copied().collect::<Vec<_>>().join(", ")));
            } else if self.formed.iter().take(i).any(|other| other.mark == formed.mark) {
                faults.add(Error::new(ErrorKind::Conflict, "a mark is given twice").at(path).value_of(&formed.mark).accepts("each mark once"));
            }
        }
        faults.check()
    }

    /// The marks of the rows now.
    fn marks(&self) -> Vec<String> {
        let before: BTreeMap<Meaning<'_>, &str> = self.before.iter().map(|r| (meaning(r), r.mark.as_str())).collect();
        let mut used: BTreeSet<String> = self.before.iter().map(|r| r.mark.clone()).collect();
        let mut next: BTreeMap<String, usize> = BTreeMap::new();
        let mut out = Vec::with_capacity(self.now.len());
        for row in &self.now {
            if let Some(mark) = before.get(&meaning(row)) {
                out.push((*mark).to_owned());
                continue;
            }
            // The plane's number stays before its letters.
            let digits: String = row.mark.chars().take_while(char::is_ascii_digit).collect();
            let n = next.entry(digits.clone()).or_default();
            let mut fresh = format!("{digits}{}", mark(*n));
            while used.contains(&fresh) {
                *n += 1;
                fresh = format!("{digits}{}", mark(*n));
            }
            used.insert(fresh.clone());
            out.push(fresh);
        }
        out
    }

    /// Whether a formed piece serves a row.
    fn fits(&self, formed: &ListRow, need: &ListRow) -> bool {
        let same_width = formed.width == need.width && formed.cut == need.cut;
        let ripped = formed.cut == CutEdge::None && need.cut != CutEdge::None && formed.width >= need.width;
        formed.order >= need.order && (same_width || ripped) && (self.between_planes || formed.plane == need.plane)
    }

    /// For every row now, how many of each formed row serve it.
    fn used(&self) -> Result<Vec<BTreeMap<usize, u64>>, Error> {
        let row_of: BTreeMap<&str, usize> = self.before.iter().enumerate().map(|(i, r)| (r.mark.as_str(), i)).collect();
        let mut left: Vec<u64> = vec![0; self.before.len()];
        for formed in &self.formed {
            if let Some(slot) = row_of.get(formed.mark.as_str()).and_then(|&i| left.get_mut(i)) {
                *slot = formed.count;
            }
        }
        let mut wanted: Vec<u64> = self.now.iter().map(|r| r.count).collect();
        let mut out: Vec<BTreeMap<usize, u64>> = vec![BTreeMap::new(); self.now.len()];
        // As they are: on their own plane first.
        for own_plane in [true, false] {
            for (n, need) in self.now.iter().enumerate() {
                for (f, formed) in self.before.iter().enumerate() {
                    let alike = (formed.order, formed.width, formed.cut) == (need.order, need.width, need.cut);
                    if !alike || (formed.plane == need.plane) != own_plane || !self.fits(formed, need) {
                        continue;
                    }
                    if let (Some(wanted), Some(left), Some(out)) = (wanted.get_mut(n), left.get_mut(f), out.get_mut(n)) {
                        let take = (*wanted).min(*left);
                        if take > 0 {
                            *out.entry(f).or_default() += take;
                            *wanted -= take;
                            *left -= take;
                        }
                    }
                }
            }
        }
        // Cut down: piece by piece, no more of a row than there are pieces that could serve it.
        let all_left: u64 = left.iter().copied().fold(0, u64::saturating_add);
        let all_wanted: u64 = wanted.iter().map(|w| (*w).min(all_left)).fold(0, u64::saturating_add);
        if all_left > PIECES || all_wanted > PIECES.saturating_mul(4) {
            return Err(Error::new(ErrorKind::TooLarge, "too many formed pieces that fit nothing as they are")
                .at("formed")
                .value_of(all_left)
                .accepts(format!("at most {PIECES}"))
                .cured_by("the revision of one plane at a time"));
        }
        let of = |counts: &[u64], most: u64| -> Vec<usize> { counts.iter().enumerate().flat_map(|(i, n)| (0..(*n).min(most)).map(move |_| i)).collect() };
        let mut needs = of(&wanted, all_left);
        needs.sort_by_key(|&n| Reverse(self.now.get(n).map(|r| area(r.order, r.width))));
        // The smallest that will do comes first, so that long pieces stay long.
        let mut offers = of(&left, u64::MAX);
        offers.sort_by_key(|&f| self.before.get(f).map(|r| area(r.order, r.width)));
        let fits = |n: usize, o: usize| match (needs.get(n).and_then(|&n| self.now.get(n)), offers.get(o).and_then(|&f| self.before.get(f))) {
            (Some(need), Some(formed)) => self.fits(formed, need),
            _ => false,
        };
        for (need, offer) in needs.iter().zip(matched(needs.len(), offers.len(), fits)) {
            if let (Some(out), Some(&formed)) = (out.get_mut(*need), offer.and_then(|o| offers.get(o))) {
                *out.entry(formed).or_default() += 1;
            }
        }
        Ok(out)
    }

    fn row(&self, n: usize, mark: &str, used: &BTreeMap<usize, u64>) -> Result<Option<RevisedRow>, Error> {
        let Some(row) = self.now.get(n) else { return Ok(None) };
        let before = self.before.iter().find(|b| meaning(b) == meaning(row)).map(|b| b.count);
        let state = match before {
            None => RowState::New,
            Some(count) if count == row.count => RowState::Kept,
            Some(_) => RowState::Recounted,
        };
        let mut from_formed = Vec::with_capacity(used.len());
        for (&f, &count) in used {
            if let Some(formed) = self.before.get(f) {
                let (cut_off, rip_off) = ((formed.order - row.order).length()?, (formed.width - row.width).length()?);
                from_formed.push(FormedUse { mark: formed.mark.clone(), count, cut_off, rip_off });
            }
        }
        from_formed.sort_by_key(|u| (u.rip_off, u.cut_off));
        let served: u64 = used.values().sum();
        Ok(Some(RevisedRow {
            plane: row.plane.clone(),
            mark: mark.to_owned(),
            order: row.order,
            width: row.width,
            cut: row.cut,
            state,
            before: before.unwrap_or(0),
            count: row.count,
            from_formed,
            to_form: row.count.saturating_sub(served),
        }))
    }

    /// Rows of the list before that the list now has no more.
    fn dropped(&self) -> impl Iterator<Item = RevisedRow> {
        let now: BTreeSet<Meaning<'_>> = self.now.iter().map(meaning).collect();
        self.before.iter().filter(move |r| !now.contains(&meaning(r))).map(|r| RevisedRow {
            plane: r.plane.clone(),
            mark: r.mark.clone(),
            order: r.order,
            width: r.width,
            cut: r.cut,
            state: RowState::Dropped,
            before: r.count,
            count: 0,
            from_formed: Vec::new(),
            to_form: 0,
        })
    }
}

impl Calculation for Revision {
    type Out = Revised;

    fn title(&self) -> String {
        "a revised list".to_owned()
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<Revised, Error> {
        self.check()?;
        let (marks, used) = (self.marks(), self.used()?);
        let mut rows = Vec::with_capacity(self.now.len());
        for (n, (mark, used)) in marks.iter().zip(&used).enumerate() {
            rows.extend(self.row(n, mark, used)?);
        }
        let mut scrap = 0_i128;
        let mut void = Vec::new();
        for formed in &self.formed {
            let Some((f, row)) = self.before.iter().enumerate().find(|(_, b)| b.mark == formed.mark) else { continue };
            let served: u64 = used.iter().filter_map(|u| u.get(&f)).sum();
            let count = formed.count.saturating_sub(served);
            scrap = scrap.saturating_add(area(row.order, row.width).saturating_mul(i128::from(formed.count)));
            if count > 0 {
                void.push(VoidRow { mark: row.mark.clone(), order: row.order, width: row.width, count });
            }
        }
        for (row, used) in self.now.iter().zip(&used) {
            let served: u64 = used.values().sum();
            scrap = scrap.saturating_sub(area(row.order, row.width).saturating_mul(i128::from(served)));
        }
        let to_form = rows.iter().map(|row| i128::from(row.order.pm()).saturating_mul(i128::from(row.to_form))).fold(0_i128, i128::saturating_add);
        let to_form = i64::try_from(to_form)
            .map(Length::from_pm)
            .map_err(|_| Error::new(ErrorKind::Overflow, "what is to be formed is too long").at("now").accepts("at most 9 223 372 m"))?;
        let scrap = area_of(scrap);
        for row in &rows {
            r.step(|| {
                let formed: u64 = row.from_formed.iter().map(|u| u.count).sum();
                let step = Step::new(format!("{} {}", row.plane, row.mark)).formula("wanted - served from what is formed").with("wanted", row.count);
                step.with("from formed", formed).with("state", row.state.name()).gives(format_args!("{} to form", row.to_form)).source(Source::geometry())
            });
        }
        rows.extend(self.dropped());
        let mut cautions = Vec::new();
        let cut_down: u64 = rows.iter().flat_map(|row| &row.from_formed).filter(|u| !u.as_it_is()).map(|u| u.count).sum();
        if cut_down > 0 {
            cautions.push(Caution::new(cautions::CUT_DOWN, "rows", Source::CommonPractice).arg("count", cut_down));
        }
        Ok(Revised { rows, void, to_form, scrap, cautions })
    }
}
