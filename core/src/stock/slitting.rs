//! Blanks from coil: which girths lie side by side across the coil's width, and what drops off.

use super::cautions::DROPS_NOT_PROVEN;
use super::input::{Cutting, Piece, StockLength};
use super::plan::{CutPlan, Measure, PieceCount};
use crate::error::{Error, ErrorKind, Faults};
use crate::record::{Calculation, Caution, Recorder, Source, Step};
use crate::units::{Area, AreaUnit, Length, Sum};
use std::collections::BTreeMap;

/// The most blanks that one slitting may ask for.
pub const MAX_BLANKS: u32 = 10_000;

/// A flat blank that is needed.
///
/// ```
/// use seamwright::stock::Blank;
/// use seamwright::units::Length;
/// let b = Blank { label: "eave drip".into(), girth: Length::parse("7 1/4\"")?, length: Length::feet(10), count: 12 };
/// assert_eq!(b.count, 12);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Blank {
    /// Its mark.
    pub label: String,
    /// Its width across the coil: the girth of the trim.
    pub girth: Length,
    /// Its length along the coil.
    pub length: Length,
    /// How many are needed.
    pub count: u32,
}

/// Blanks to be cut from a coil: the coil is cut to a length, a *drop*, and the drop is slit into strips.
///
/// Every blank of a drop has the drop's length; blanks of different lengths are not laid into one drop. Slitting knives and shears take no
/// kerf. The edge trim is what is slit off each of the coil's two edges before the first strip.
///
/// # Errors
/// Computing refuses, with the field: no blank ([`ErrorKind::Missing`]); a width, girth, length or count of zero or less, a negative edge trim, or one that
/// leaves nothing of the coil ([`ErrorKind::OutOfRange`]); a girth wider than what is left of the coil ([`ErrorKind::Impossible`]); more than
/// [`MAX_BLANKS`] blanks ([`ErrorKind::TooLarge`]). All faults are told at once.
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::stock::{Blank, Slitting};
/// use seamwright::units::Length;
/// let plan = Slitting {
///     coil_width: Length::inches(48),
///     edge_trim: Length::inches_64(16),
///     blanks: vec![
///         Blank { label: "drip".into(), girth: Length::inches(7), length: Length::feet(10), count: 12 },
///         Blank { label: "cap".into(), girth: Length::inches(19), length: Length::feet(10), count: 2 },
///     ],
/// }
/// .compute()?;
/// // 47 1/2 in are left: six drips lie side by side, or two caps and a drip.
/// assert_eq!((plan.across[0].count, plan.across[1].count), (6, 2));
/// assert_eq!((plan.drop_count(), plan.coil_length, plan.proven), (3, Length::feet(30), true));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Slitting {
    /// The coil's width as bought.
    pub coil_width: Length,
    /// What is slit off each edge of the coil.
    pub edge_trim: Length,
    /// The blanks that are needed.
    pub blanks: Vec<Blank>,
}

/// How many of one blank alone lie side by side.
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::stock::{Blank, Slitting};
/// use seamwright::units::Length;
/// let drip = Blank { label: "drip".into(), girth: Length::inches(7), length: Length::feet(10), count: 1 };
/// let plan = Slitting { coil_width: Length::inches(48), edge_trim: Length::ZERO, blanks: vec![drip] }.compute()?;
/// assert_eq!((plan.across[0].count, plan.across[0].left), (6, Length::inches(6)));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Across {
    /// How many strips of this girth the trimmed coil gives.
    pub count: u64,
    /// What is left beside them.
    pub left: Length,
}

/// Drops that are slit alike.
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::stock::{Blank, Slitting};
/// use seamwright::units::Length;
/// let drip = Blank { label: "drip".into(), girth: Length::inches(7), length: Length::feet(10), count: 13 };
/// let plan = Slitting { coil_width: Length::inches(48), edge_trim: Length::ZERO, blanks: vec![drip] }.compute()?;
/// let (full, last) = (&plan.drops[0], &plan.drops[1]);
/// assert_eq!((full.count, full.strips[0].count, full.offcut), (2, 6, Length::inches(6)));
/// assert_eq!((last.count, last.strips[0].count, last.offcut), (1, 1, Length::inches(41)));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct DropPlan {
    /// The length that is cut off the coil.
    pub length: Length,
    /// How many drops are slit like this.
    pub count: u32,
    /// The strips side by side, widest first: `piece` is the index into the blanks asked for.
    pub strips: Vec<PieceCount>,
    /// Width of what drops off beside the strips, the edge trim not counted.
    pub offcut: Length,
}

/// Where the coil goes. The blanks, the edge trim and the offcuts add up to it, but for the last bits.
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::stock::{Blank, Slitting};
/// use seamwright::units::{AreaUnit, Length};
/// let drip = Blank { label: "drip".into(), girth: Length::inches(12), length: Length::feet(10), count: 4 };
/// let plan = Slitting { coil_width: Length::inches(50), edge_trim: Length::inches(1), blanks: vec![drip] }.compute()?;
/// assert_eq!(plan.scrap.blanks.get(AreaUnit::SquareFoot).round(), 40.0);
/// assert!((plan.scrap.scrap_ratio - 0.04).abs() < 1e-12);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct SlitScrap {
    /// Area of the coil that is cut off.
    pub coil: Area,
    /// Area of the blanks.
    pub blanks: Area,
    /// Area of the edge trim.
    pub edge_trim: Area,
    /// Area of what drops off beside the strips.
    pub offcuts: Area,
    /// The part of the coil that does not end in a blank: 0 is none.
    pub scrap_ratio: f64,
}

/// The slitting list of a coil.
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::stock::{Blank, Slitting};
/// use seamwright::units::Length;
/// let blank = |girth, length| Blank { label: "trim".into(), girth: Length::inches(girth), length: Length::feet(length), count: 3 };
/// let plan = Slitting { coil_width: Length::inches(48), edge_trim: Length::ZERO, blanks: vec![blank(24, 10), blank(16, 12)] }.compute()?;
/// // Longest drops first: three 16s in one of 12 ft, three 24s in two of 10 ft.
/// assert_eq!((plan.drops[0].length, plan.coil_length), (Length::feet(12), Length::feet(32)));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct SlitPlan {
    /// The drops, longest first, those slit alike together.
    pub drops: Vec<DropPlan>,
    /// For each blank asked for, how many of it alone lie side by side.
    pub across: Vec<Across>,
    /// Length of coil that is cut off.
    pub coil_length: Length,
    /// What no plan of such drops can take less than.
    pub bound: Length,
    /// Whether the plan meets the bound, so that none is better.
    pub proven: bool,
    /// Where the coil goes.
    pub scrap: SlitScrap,
    /// What to know before it is cut.
    pub cautions: Vec<Caution>,
}

impl SlitPlan {
    /// How many drops are cut off the coil.
    #[must_use]
    pub fn drop_count(&self) -> u32 {
        self.drops.iter().map(|d| d.count).sum()
    }
}

impl Slitting {
    /// Width between the edge trims, with every fault of the input.
    fn room(&self) -> Result<Length, Error> {
        let mut faults = Faults::default();
        let coil = faults.keep(self.coil_width.positive("coil_width"));
        let trim = faults.keep(self.edge_trim.not_negative("edge_trim"));
        if self.blanks.is_empty() {
            faults.add(Error::new(ErrorKind::Missing, "no blank to cut").at("blanks").accepts("one blank or more"));
        }
        let room = match (coil, trim) {
            (Some(coil), Some(trim)) => {
                let room = faults.keep((coil - trim * 2).length().map_err(|e| e.at("edge_trim")));
                if room.is_some_and(|r| !r.is_positive()) {
                    faults.add(
                        Error::new(ErrorKind::OutOfRange, "the edge trim leaves nothing of the coil")
                            .at("edge_trim")
                            .value_of(trim)
                            .accepts(format!("less than half of {coil}")),
                    );
                }
                room.filter(|r| r.is_positive())
            }
            _ => None,
        };
        let mut total = 0_u64;
        for (i, blank) in self.blanks.iter().enumerate() {
            let girth = faults.keep(blank.girth.positive(&format!("blanks[{i}].girth")));
            faults.keep(blank.length.positive(&format!("blanks[{i}].length")));
            if blank.count == 0 {
                faults.add(
                    Error::new(ErrorKind::OutOfRange, "a blank that is not needed").at(format!("blanks[{i}].count")).value_of(blank.count).accepts("1 or more"),
                );
            }
            if let (Some(girth), Some(room)) = (girth, room)
                && girth > room
            {
                faults.add(
                    Error::new(ErrorKind::Impossible, "the coil does not give this girth")
                        .at(format!("blanks[{i}].girth"))
                        .value_of(girth)
                        .accepts(format!("at most {room}, what the edge trim leaves of the coil"))
                        .cured_by("a wider coil, or the trim in two pieces"),
                );
            }
            total += u64::from(blank.count);
        }
        if total > u64::from(MAX_BLANKS) {
            faults.add(
                Error::new(ErrorKind::TooLarge, "too many blanks in one slitting list")
                    .at("blanks")
                    .value_of(total)
                    .accepts(format!("at most {MAX_BLANKS} in all")),
            );
        }
        faults.check()?;
        room.ok_or_else(|| Error::new(ErrorKind::Internal, "a fault was lost"))
    }

    /// The widths of one length as pieces that are cut from sticks as long as the coil is wide.
    fn across_the_coil(&self, of: &[usize]) -> Result<Cutting, Error> {
        let pieces = of.iter().filter_map(|&i| self.blanks.get(i)).map(|b| Piece { label: b.label.clone(), length: b.girth, count: b.count }).collect();
        let coil = StockLength { label: "coil".into(), length: self.coil_width, cost: None };
        Ok(Cutting { stock: vec![coil], pieces, kerf: Length::ZERO, end_loss: (self.edge_trim * 2).length()? })
    }
}

/// The least number of drops that the bound of a plan stands for.
fn least_drops(plan: &CutPlan, coil_width: Length) -> u32 {
    match plan.bound {
        Measure::Length(all) => u32::try_from(all.pm() / coil_width.pm().max(1)).unwrap_or(u32::MAX),
        Measure::Cost(_) => plan.stick_count(),
    }
}

impl Calculation for Slitting {
    type Out = SlitPlan;

    fn title(&self) -> String {
        format!("slitting of a coil {} wide", self.coil_width)
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<SlitPlan, Error> {
        let room = self.room()?;
        r.step(|| {
            Step::new("width between the edge trims")
                .formula("coil width - 2 x edge trim")
                .with("coil width", self.coil_width)
                .with("edge trim", self.edge_trim)
                .gives(room)
                .source(Source::geometry())
        });
        let mut across = Vec::with_capacity(self.blanks.len());
        let mut by_length: BTreeMap<Length, Vec<usize>> = BTreeMap::new();
        for (i, blank) in self.blanks.iter().enumerate() {
            let (count, left) = (room.pm() / blank.girth.pm(), room.pm() % blank.girth.pm());
            across.push(Across { count: count.unsigned_abs(), left: Length::from_pm(left) });
            by_length.entry(blank.length).or_default().push(i);
        }
        let (mut drops, mut cautions) = (Vec::new(), Vec::new());
        let (mut coil_length, mut bound) = (Sum::ZERO, Sum::ZERO);
        for (&length, of) in by_length.iter().rev() {
            let cutting = self.across_the_coil(of)?;
            let plan = r.part(|| format!("drops of {length}"), |r| cutting.run(r)).map_err(|e| e.moved("pieces", "blanks"))?;
            let least = least_drops(&plan, self.coil_width);
            if !plan.proven {
                let found = format!("{} drops of {length}", plan.stick_count());
                cautions.push(Caution::new(DROPS_NOT_PROVEN, "drops", Source::geometry()).arg("found", found).arg("bound", least));
            }
            coil_length += length.station(plan.stick_count(), 1)?;
            bound += length.station(least, 1)?;
            for stick in plan.sticks {
                let strips = stick.pieces.iter().filter_map(|p| of.get(p.piece).map(|&piece| PieceCount { piece, count: p.count })).collect();
                drops.push(DropPlan { length, count: stick.count, strips, offcut: stick.offcut });
            }
        }
        let (coil_length, bound) = (coil_length.length()?, bound.length()?);
        let scrap = self.scrap(&drops, coil_length)?;
        r.step(|| {
            Step::new("what drops off beside the strips")
                .formula("coil = blanks + edge trim + offcuts")
                .with("coil", scrap.coil)
                .with("blanks", scrap.blanks)
                .with("edge trim", scrap.edge_trim)
                .gives(scrap.offcuts)
                .source(Source::geometry())
        });
        Ok(SlitPlan { drops, across, coil_length, bound, proven: coil_length == bound, scrap, cautions })
    }
}

impl Slitting {
    fn scrap(&self, drops: &[DropPlan], coil_length: Length) -> Result<SlitScrap, Error> {
        let square_metres = |a: Length, b: Length| a.times(b).get(AreaUnit::SquareMetre);
        let area = |v: f64| Area::new(v, AreaUnit::SquareMetre);
        let blanks = self.blanks.iter().map(|b| square_metres(b.girth, b.length) * f64::from(b.count)).sum::<f64>();
        let offcuts = drops.iter().map(|d| square_metres(d.offcut, d.length) * f64::from(d.count)).sum::<f64>();
        let coil = square_metres(self.coil_width, coil_length);
        let edges = square_metres((self.edge_trim * 2).length()?, coil_length);
        Ok(SlitScrap { coil: area(coil)?, blanks: area(blanks)?, edge_trim: area(edges)?, offcuts: area(offcuts)?, scrap_ratio: 1.0 - blanks / coil })
    }
}
