//! The job as its caller gives it.

use super::choices::JunctionChoices;
use super::copings::CopingChoice;
use super::joints::JointHold;
use super::list_columns::{ListColumn, check_columns};
use super::pipes::PipeChoice;
use super::schedule::Schedule;
use super::shared_seams::SharedSeams;
use super::supplies::Supplies;
use crate::closure::{ClosureBay, ClosureFasteners};
use crate::error::{Error, ErrorKind, Faults};
use crate::junction::Levels;
use crate::layout::{Creep, LengthLimit, ListChoices, MarkFrom, NarrowLimit, OrderRounding, Start};
use crate::metal::{Alloy, Sheet};
use crate::movement::HeatRange;
use crate::panel::Panel;
use crate::record::Calculation;
use crate::roof::{RoofInput, has_plane};
use crate::trim::BendRule;
use crate::units::{Angle, Length, LengthFormat, Rounding, ShopRounding, Temperature};

/// The name of the job format.
///
/// ```
/// use seamwright::job::Job;
/// let job = Job::from_json(include_bytes!(concat!(env!("CARGO_MANIFEST_DIR"), "/examples/demo_job.json")))?;
/// assert_eq!(job.format, seamwright::job::JobFormat::SeamwrightJob);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum JobFormat {
    /// A job of this library.
    #[cfg_attr(feature = "serde", serde(rename = "seamwright-job"))]
    SeamwrightJob,
}

/// The version of the job format that this library reads.
pub const JOB_VERSION: u32 = 1;

/// The sheets of a job.
///
/// ```
/// use seamwright::job::Metals;
/// use seamwright::metal::{Alloy, Sheet};
/// use seamwright::units::Length;
/// let sheet = |mils| Sheet::new(Alloy::Aluminium3003, Length::mils(mils), None);
/// let metals = Metals { panel: sheet(32)?, trims: vec![sheet(32)?, sheet(40)?], gutter: None };
/// assert_eq!(metals.trims[1].thickness(), Length::mils(40));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Metals {
    /// The panels' sheet.
    pub panel: Sheet,
    /// The sheets that trims and cleats are folded from, each of another thickness: a trim's thickness picks its sheet.
    pub trims: Vec<Sheet>,
    /// The gutters' metal, where it is known: it is neither folded nor ordered, but the roof's water runs into it.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub gutter: Option<Alloy>,
}

/// What lies between the deck and a trim on the seam tops, beside the panel itself.
///
/// ```
/// use seamwright::job::DeckLevels;
/// use seamwright::units::Length;
/// let levels = DeckLevels { underlayment: Length::parse("1/16 in")?, ..DeckLevels::default() };
/// assert_eq!(levels.stand_off, Length::ZERO); // the pan lies on the underlayment
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct DeckLevels {
    /// Underlayment on the deck.
    pub underlayment: Length,
    /// From the underlayment to the underside of the pan, where clips stand the pan off.
    pub stand_off: Length,
    /// Metal of a closure's top flange, where it runs over the seam tops.
    pub closure_metal: Length,
    /// Compressed sealant tape under a trim.
    pub tape: Length,
}

/// The temperatures of the metal.
///
/// ```
/// use seamwright::job::Temperatures;
/// use seamwright::units::Temperature;
/// let t = |text| Temperature::parse(text);
/// let metal = Temperatures { laid: t("20 degC")?, coldest: t("-20 degC")?, hottest: t("75 degC")? };
/// assert!(metal.coldest < metal.laid && metal.laid < metal.hottest);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Temperatures {
    /// When the panels are laid.
    pub laid: Temperature,
    /// On the coldest night.
    pub coldest: Temperature,
    /// On the hottest afternoon.
    pub hottest: Temperature,
}

impl Temperatures {
    /// What this metal goes through.
    pub(super) fn range(self, metal: &Sheet) -> HeatRange {
        HeatRange { expansion: metal.alloy().expansion().value, coldest: self.coldest, laid: self.laid, hottest: self.hottest }
    }
}

/// Where the seams of one plane lie.
///
/// ```
/// use seamwright::job::PlaneStart;
/// use seamwright::layout::Start;
/// let south = PlaneStart { plane: "south".into(), start: Start::CentreSeam };
/// assert_ne!(south.start, Start::Left);
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct PlaneStart {
    /// The plane, by name.
    pub plane: String,
    /// Where its seams lie.
    pub start: Start,
}

/// Which marks of the seams the crew gets.
///
/// ```
/// use seamwright::job::MarkChoices;
/// use seamwright::layout::MarkFrom;
/// let marks = MarkChoices { from: MarkFrom::Left, creep: None };
/// assert_eq!(marks.creep, None);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct MarkChoices {
    /// What the marks of every plane run from.
    pub from: MarkFrom,
    /// How panels creep; none for marks alone. How far seams may be apart where they meet is asked of planes with shared seams alone.
    #[cfg_attr(feature = "serde", serde(default))]
    pub creep: Option<Creep>,
}

/// How panels are laid.
///
/// ```
/// use seamwright::job::LayoutChoices;
/// use seamwright::layout::{OrderRounding, Start};
/// let rounding = OrderRounding::common_practice()?;
/// let plain = LayoutChoices {
///     start: Start::Left, planes: vec![], shared: vec![], rounding, narrow: None, limit: None, marks: None, list: None, columns: vec![],
/// };
/// assert_eq!(plain.limit, None); // panels of any length
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct LayoutChoices {
    /// Where the seams of every plane lie that has no choice of its own.
    pub start: Start,
    /// Planes with a start of their own.
    #[cfg_attr(feature = "serde", serde(default))]
    pub planes: Vec<PlaneStart>,
    /// Planes whose seams meet across the lines between them.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Vec::is_empty"))]
    pub shared: Vec<SharedSeams>,
    /// The shop's rounding of order lengths.
    pub rounding: OrderRounding,
    /// The least width of a panel; none for no limit.
    #[cfg_attr(feature = "serde", serde(default))]
    pub narrow: Option<NarrowLimit>,
    /// The greatest length of a panel; none for no limit.
    #[cfg_attr(feature = "serde", serde(default))]
    pub limit: Option<LengthLimit>,
    /// The marks of the seams for the crew; none for no marks.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub marks: Option<MarkChoices>,
    /// How the list of each plane is made: the order of laying, end laps, pairs, bundles; none for the grouped list alone.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub list: Option<ListChoices>,
    /// The columns of the panel list; none for the usual ones.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Vec::is_empty"))]
    pub columns: Vec<ListColumn>,
}

impl LayoutChoices {
    /// What can be checked without a plane.
    fn check(&self) -> Result<(), Error> {
        let mut faults = Faults::default();
        if let Some(narrow) = &self.narrow {
            faults.keep(narrow.least.positive("narrow.least"));
        }
        if let Some(limit) = &self.limit {
            faults.keep(limit.check().map_err(|e| e.under("limit")));
        }
        if let Some(creep) = self.marks.and_then(|m| m.creep) {
            faults.keep(creep.check().map_err(|e| e.under("marks.creep")));
        }
        if let Some(list) = &self.list {
            faults.keep(list.check(self.limit.as_ref()).map_err(|e| e.under("list")));
        }
        if !self.columns.is_empty() {
            faults.keep(check_columns(&self.columns));
        }
        faults.check()
    }

    pub(super) fn start_on(&self, plane: &str) -> Start {
        self.planes.iter().find(|p| p.plane == plane).map_or(self.start, |p| p.start)
    }
}

/// The sheet of paper for the crew.
///
/// ```
/// use seamwright::job::Paper;
/// assert_eq!(Paper::default(), Paper::Letter);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum Paper {
    /// 8 1/2 in by 11 in.
    #[default]
    Letter,
    /// 210 mm by 297 mm (ISO 216).
    A4,
}

/// How lengths are written, and on what.
///
/// ```
/// use seamwright::job::{Paper, Paperwork};
/// use seamwright::units::LengthFormat;
/// let metric = Paperwork { lengths: LengthFormat::parse("mm.0")?, details: Some(LengthFormat::parse("mm.1")?), paper: Paper::A4 };
/// assert_eq!(metric.small().to_string(), "mm.1");
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Paperwork {
    /// The notation of lengths for crew and shop: panels and runs, and all else where `details` is not given.
    pub lengths: LengthFormat,
    /// The notation of what is small: widths, trims, spacings and struck lines.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub details: Option<LengthFormat>,
    /// The crew's sheets.
    #[cfg_attr(feature = "serde", serde(default))]
    pub paper: Paper,
}

impl Paperwork {
    /// The notation of what is small.
    #[must_use]
    pub fn small(&self) -> LengthFormat {
        self.details.unwrap_or(self.lengths)
    }

    /// The same notations, in which a length half way between two steps reads as the crew's tape reads it, so that every paper of a job shows one figure for it. A notation that names another
    /// direction than to the nearest step keeps it.
    #[must_use]
    pub fn read_by(self, tape: ShopRounding) -> Paperwork {
        let is_nearest = |rounding| matches!(rounding, Rounding::HalfEven | Rounding::HalfAway);
        let by = |format: LengthFormat| if is_nearest(format.rounding()) && is_nearest(tape.rounding()) { format.rounding_by(tape.rounding()) } else { format };
        Paperwork { lengths: by(self.lengths), details: self.details.map(by), ..self }
    }
}

/// A job: a measured roof, a panel, metals, a choice for each kind of junction, supplies, and the engineer's schedule where there is one.
///
/// ```
/// use seamwright::job::Job;
/// use seamwright::record::Calculation;
/// let job = Job::from_json(include_bytes!(concat!(env!("CARGO_MANIFEST_DIR"), "/examples/demo_job.json")))?;
/// let packet = job.compute()?;
/// assert!(packet.summary.panels >= 150);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Job {
    /// The name of the format.
    pub format: JobFormat,
    /// Its version: [`JOB_VERSION`].
    pub version: u32,
    /// What the job is called.
    pub name: String,
    /// The roof.
    pub roof: RoofInput,
    /// The panel.
    pub panel: Panel,
    /// The sheets.
    pub metals: Metals,
    /// What lies on the deck.
    pub levels: DeckLevels,
    /// How trims are unfolded.
    pub bend_rule: BendRule,
    /// The metal's temperatures; without them movement is not checked, and the packet says so.
    #[cfg_attr(feature = "serde", serde(default))]
    pub temperatures: Option<Temperatures>,
    /// How panels are laid.
    pub layout: LayoutChoices,
    /// How each line is built.
    pub junctions: JunctionChoices,
    /// The copings on the roof's walls.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Vec::is_empty"))]
    pub copings: Vec<CopingChoice>,
    /// The pipes through the roof.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Vec::is_empty"))]
    pub pipes: Vec<PipeChoice>,
    /// How far from their expansion joints planes are held, where that is other than taken.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Vec::is_empty"))]
    pub joint_holds: Vec<JointHold>,
    /// What is bought and in which sizes.
    pub supplies: Supplies,
    /// The engineer's schedule; without it no spacing is engineered, and the packet says so on every line concerned.
    #[cfg_attr(feature = "serde", serde(default))]
    pub engineer: Option<Schedule>,
    /// How lengths are written, and on what.
    pub paperwork: Paperwork,
}

#[cfg(feature = "serde")]
impl Job {
    /// The longest job that is read, in bytes: 64 MiB, a roof of some hundred thousand planes.
    pub const LONGEST: usize = 64 << 20;

    /// A job from JSON text in UTF-8.
    ///
    /// # Errors
    /// [`ErrorKind::TooLarge`] beyond [`Job::LONGEST`], [`ErrorKind::Parse`] for text that is not UTF-8, [`ErrorKind::Format`] for what is not JSON or
    /// nests too deeply, and for fields that are missing, unknown or of another kind the path to them.
    ///
    /// ```
    /// use seamwright::job::Job;
    /// let e = Job::from_json(br#"{"format": "seamwright-job", "version": 1, "colour": "red"}"#).unwrap_err();
    /// assert_eq!(e.path(), "colour");
    /// ```
    pub fn from_json(json: &[u8]) -> Result<Job, Error> {
        crate::record::read_json(json, Self::LONGEST)
    }
}

impl Job {
    /// A whole bay of the panel takes a closure: else every bay of the roof would go without, as those do that are too small.
    fn closures_fit(&self) -> Result<(), Error> {
        let (panel, made) = (&self.panel, &self.supplies.closures);
        let bay = ClosureBay {
            coverage: panel.coverage,
            seam_width_at_foot: panel.seam_foot(self.metals.panel.thickness()).map_err(|e| e.under("panel"))?,
            seam_height: panel.seam_height,
            compressed_tape: Length::ZERO,
            meeting: Angle::SQUARE,
            clearance: made.clearance,
            tab: made.tab,
            // At a square line the flanges take no part in whether it fits.
            lower_flange: panel.coverage,
            top_flange: Length::ZERO,
            top_lap: made.top_lap,
            fasteners: ClosureFasteners { from_tab: made.from_tab, engineered: None },
        };
        bay.compute()
            .map(drop)
            .map_err(|e| e.moved("fasteners.from_tab", "from_tab").under("supplies.closures").moved("supplies.closures.seam_width_at_foot", "panel.seam"))
    }

    /// The layers on every deck.
    pub(super) fn layers(&self) -> Levels {
        let l = &self.levels;
        Levels {
            built_up: Length::ZERO,
            underlayment: l.underlayment,
            stand_off: l.stand_off,
            pan: self.metals.panel.thickness(),
            seam_height: self.panel.seam_height,
            closure_metal: l.closure_metal,
            tape: l.tape,
        }
    }

    /// What can be checked before the roof is known.
    pub(super) fn check(&self) -> Result<(), Error> {
        let mut faults = Faults::default();
        if self.version != JOB_VERSION {
            faults.add(
                Error::new(ErrorKind::Format, "a version that this library does not read")
                    .at("version")
                    .value_of(self.version)
                    .accepts(JOB_VERSION.to_string()),
            );
        }
        if self.name.trim().is_empty() {
            faults.add(Error::new(ErrorKind::Missing, "a job needs a name").at("name").value_of(&self.name).accepts("a name"));
        }
        faults.keep(self.panel.check().map_err(|e| e.under("panel")));
        for (i, sheet) in self.metals.trims.iter().enumerate() {
            if self.metals.trims.iter().take(i).any(|other| other.thickness() == sheet.thickness()) {
                faults.add(
                    Error::new(ErrorKind::Conflict, "two trim sheets of one thickness: a trim could not tell which is its own")
                        .at(format!("metals.trims[{i}]"))
                        .value_of(sheet.thickness())
                        .accepts("sheets of different thickness"),
                );
            }
        }
        let planes = self.roof.plane_names();
        let planes: Vec<&str> = planes.iter().map(String::as_str).collect();
        for (i, choice) in self.layout.planes.iter().enumerate() {
            let path = format!("layout.planes[{i}].plane");
            if has_plane(&planes, &choice.plane, &path, &mut faults) && self.layout.planes.iter().take(i).any(|other| other.plane == choice.plane) {
                faults.add(Error::new(ErrorKind::Conflict, "two starts for one plane").at(path).value_of(&choice.plane).accepts("each plane once"));
            }
        }
        faults.keep(self.layout.check().map_err(|e| e.under("layout")));
        self.layout.check_shared(&planes, &mut faults);
        let l = &self.levels;
        for (path, length) in [("underlayment", l.underlayment), ("stand_off", l.stand_off), ("closure_metal", l.closure_metal), ("tape", l.tape)] {
            faults.keep(length.not_negative(path).map_err(|e| e.under("levels")));
        }
        if let Some(t) = &self.temperatures
            && !(t.coldest <= t.laid && t.laid <= t.hottest)
        {
            faults.add(
                Error::new(ErrorKind::Conflict, "the metal is laid between its coldest and its hottest")
                    .at("temperatures.laid")
                    .value_of(t.laid)
                    .accepts(format!("from {} to {}", t.coldest, t.hottest)),
            );
        }
        if !self.roof.expansion_joints.is_empty() && self.temperatures.is_none() {
            let error = Error::new(ErrorKind::Missing, "the gap of an expansion joint follows from the metal's temperatures").at("temperatures");
            faults.add(error.accepts("the metal's temperatures when laid, at its coldest and at its hottest"));
        }
        self.check_copings(&mut faults);
        self.check_pipes(&planes, &mut faults);
        faults.keep(self.supplies.check().map_err(|e| e.under("supplies")));
        if faults.is_empty() {
            faults.keep(self.closures_fit());
        }
        if let Some(schedule) = &self.engineer {
            faults.keep(schedule.check().map_err(|e| e.under("engineer")));
        }
        faults.check()
    }
}
