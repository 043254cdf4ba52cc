//! `seamwright.job.Packet` and its junctions.

use super::{
    CapItem, CopingCornerItem, CopingItem, EndCap, Job, KickOutItem, Metals, OrderLine, Paperwork, PipeItem, PlaneClips, PlaneHeat, PlaneLay, Summary,
    Temperatures, TrimItem, UnderlaymentPlan,
};
use crate::assembly::{LineAssembly, PanEndCut, RoofCorners, SideSeal};
use crate::error::Raise;
use crate::given::Text;
use crate::json::{dict, written};
use crate::junction::{JointMoves, Levels, Solved, WaterCheck, WorkStep};
use crate::metal::MetalMeeting;
use crate::movement::CapMoves;
use crate::names::{hash_written, name_of};
use crate::place::{Part, Place, cautions, part};
use crate::record::{Caution, Worksheet};
use crate::roof::Roof;
use crate::units::{Angle, LengthFormat};
use core::hash::{Hash, Hasher};
use pyo3::prelude::*;
use pyo3::types::{PyBytes, PyDict};
use seamwright::export::packet_files;
use seamwright::job as core_job;
use std::collections::BTreeMap;

/// A job worked out: what the shop, the crew and the office work from. It pickles as its job, which computes it again.
#[pyclass(module = "seamwright.job", frozen, eq, hash)]
pub(crate) struct Packet {
    of: Py<Job>,
    packet: core_job::Packet,
}

impl PartialEq for Packet {
    fn eq(&self, other: &Packet) -> bool {
        self.packet == other.packet
    }
}

impl Hash for Packet {
    fn hash<H: Hasher>(&self, state: &mut H) {
        self.packet.job.hash(state);
        hash_written(&self.packet.summary, state);
    }
}

impl Packet {
    pub(super) fn of(of: Py<Job>, packet: core_job::Packet) -> Packet {
        Packet { of, packet }
    }

    /// The parts of one of its lists.
    fn parts<P: Part>(slf: &Bound<'_, Self>, list: &'static str, parts: &[P::Core]) -> Vec<P> {
        parts.iter().enumerate().map(|(number, part)| P::at(part.clone(), Place::numbered(slf, list, number))).collect()
    }

    /// The one of this number.
    fn nth<P: Part>(slf: &Bound<'_, Self>, list: &'static str, parts: &[P::Core], number: Option<usize>) -> Option<P> {
        let number = number?;
        parts.get(number).map(|part| P::at(part.clone(), Place::numbered(slf, list, number)))
    }
}

#[pymethods]
impl Packet {
    /// The job.
    #[getter]
    fn job(&self, py: Python<'_>) -> Py<Job> {
        self.of.clone_ref(py)
    }

    /// The name of the packet format.
    #[getter]
    fn format(&self) -> &str {
        &self.packet.format
    }

    /// The version of the packet format.
    #[getter]
    fn version(&self) -> u32 {
        self.packet.version
    }

    /// The version of the library that worked it out.
    #[getter]
    fn library(&self) -> &str {
        &self.packet.library
    }

    /// How lengths are written, and on what.
    #[getter]
    fn paperwork(slf: &Bound<'_, Self>) -> Paperwork {
        Paperwork::at(slf.get().packet.paperwork, Place::under(slf, "paperwork"))
    }

    /// The sheets.
    #[getter]
    fn metals(slf: &Bound<'_, Self>) -> Metals {
        Metals::at(slf.get().packet.metals.clone(), Place::under(slf, "metals"))
    }

    /// The metal's temperatures; ``None`` where the job gives none.
    #[getter]
    fn temperatures(slf: &Bound<'_, Self>) -> Option<Temperatures> {
        slf.get().packet.temperatures.map(|metal| Temperatures::at(metal, Place::under(slf, "temperatures")))
    }

    /// The notation of lengths for crew and shop.
    #[getter]
    fn lengths(&self) -> LengthFormat {
        LengthFormat(self.packet.paperwork.lengths)
    }

    /// The notation of what is small: widths, trims, spacings and struck lines.
    #[getter]
    fn details(&self) -> LengthFormat {
        LengthFormat(self.packet.paperwork.small())
    }

    /// The packet in a few figures.
    #[getter]
    fn summary(slf: &Bound<'_, Self>) -> Summary {
        Summary::at(slf.get().packet.summary.clone(), Place::under(slf, "summary"))
    }

    /// The roof with its lines.
    #[getter]
    fn roof(&self) -> Roof {
        Roof::known(self.of.get().0.roof.clone(), self.packet.roof.clone())
    }

    /// The panels of every plane, in the order of the roof's planes.
    #[getter]
    fn planes(slf: &Bound<'_, Self>) -> Vec<PlaneLay> {
        Packet::parts(slf, "planes", &slf.get().packet.planes)
    }

    /// The panels of the plane of this name, if there is one.
    fn plane(slf: &Bound<'_, Self>, name: Text) -> Option<PlaneLay> {
        let all = &slf.get().packet.planes;
        Packet::nth(slf, "planes", all, all.iter().position(|p| p.name == name.0))
    }

    /// The lines that could be named, worked out.
    #[getter]
    fn junctions(slf: &Bound<'_, Self>) -> Vec<JunctionItem> {
        Packet::parts(slf, "junctions", &slf.get().packet.junctions)
    }

    /// The junction of the line of this name, if there is one.
    fn junction(slf: &Bound<'_, Self>, name: Text) -> Option<JunctionItem> {
        let all = &slf.get().packet.junctions;
        Packet::nth(slf, "junctions", all, all.iter().position(|j| j.name == name.0))
    }

    /// The copings, run by run.
    #[getter]
    fn copings(slf: &Bound<'_, Self>) -> Vec<CopingItem> {
        Packet::parts(slf, "copings", &slf.get().packet.copings)
    }

    /// Where copings meet: each corner and tee piece once.
    #[getter]
    fn coping_corners(slf: &Bound<'_, Self>) -> Vec<CopingCornerItem> {
        Packet::parts(slf, "coping_corners", &slf.get().packet.coping_corners)
    }

    /// The kick-outs at the feet of wall flashings, like ones together.
    #[getter]
    fn kick_outs(slf: &Bound<'_, Self>) -> Vec<KickOutItem> {
        Packet::parts(slf, "kick_outs", &slf.get().packet.kick_outs)
    }

    /// The pipes, in the order given.
    #[getter]
    fn pipes(slf: &Bound<'_, Self>) -> Vec<PipeItem> {
        Packet::parts(slf, "pipes", &slf.get().packet.pipes)
    }

    /// Where lines meet.
    #[getter]
    fn corners(slf: &Bound<'_, Self>) -> RoofCorners {
        RoofCorners::at(slf.get().packet.corners.clone(), Place::under(slf, "corners"))
    }

    /// The trims.
    #[getter]
    fn trims(slf: &Bound<'_, Self>) -> Vec<TrimItem> {
        Packet::parts(slf, "trims", &slf.get().packet.trims)
    }

    /// What closes trims where nothing lies over their ends, corner by corner.
    #[getter]
    fn end_caps(slf: &Bound<'_, Self>) -> Vec<EndCap> {
        Packet::parts(slf, "end_caps", &slf.get().packet.end_caps)
    }

    /// The blanks of the end caps, like ones together.
    #[getter]
    fn cap_pieces(slf: &Bound<'_, Self>) -> Vec<CapItem> {
        Packet::parts(slf, "cap_pieces", &slf.get().packet.cap_pieces)
    }

    /// The trim of this mark, if there is one.
    fn trim(slf: &Bound<'_, Self>, mark: Text) -> Option<TrimItem> {
        let all = &slf.get().packet.trims;
        Packet::nth(slf, "trims", all, all.iter().position(|t| t.mark == mark.0))
    }

    /// Metals that do not go together, from what touches and from where water runs.
    #[getter]
    fn metals_met(slf: &Bound<'_, Self>) -> Vec<MetalMeeting> {
        Packet::parts(slf, "metals_met", &slf.get().packet.metals_met)
    }

    /// The underlayment; ``None`` where the job does not ask for it.
    #[getter]
    fn underlayment(slf: &Bound<'_, Self>) -> Option<UnderlaymentPlan> {
        slf.get().packet.underlayment.clone().map(|plan| UnderlaymentPlan::at(plan, Place::under(slf, "underlayment")))
    }

    /// The clips of every plane.
    #[getter]
    fn clips(slf: &Bound<'_, Self>) -> Vec<PlaneClips> {
        Packet::parts(slf, "clips", &slf.get().packet.clips)
    }

    /// Where the panels of every plane are held, and how they move with heat.
    #[getter]
    fn heat(slf: &Bound<'_, Self>) -> Vec<PlaneHeat> {
        Packet::parts(slf, "heat", &slf.get().packet.heat)
    }

    /// The order.
    #[getter]
    fn order(slf: &Bound<'_, Self>) -> Vec<OrderLine> {
        Packet::parts(slf, "order", &slf.get().packet.order)
    }

    /// Every caution, its subject a path into the packet or the job.
    #[getter]
    fn cautions(&self) -> Vec<Caution> {
        cautions(&self.packet.cautions)
    }

    /// What the crew and the office must know of every job.
    #[getter]
    fn site(&self) -> Vec<String> {
        self.packet.site.iter().map(ToString::to_string).collect()
    }

    /// The packet as JSON text, with every quantity in its canonical form.
    fn to_json(&self, py: Python<'_>) -> PyResult<String> {
        py.detach(|| written(&self.packet))
    }

    /// The packet as a dict, with every quantity as text in its canonical form.
    fn to_dict<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyDict>> {
        dict(py, &self.to_json(py)?)
    }

    /// Every file of the packet: its name, folders and all, with ``/`` between them, and what it holds.
    ///
    /// They are the packet's JSON, lists, plan, crew sheets, drawings, flats and cautions; with a ``worksheet``, from ``Job.explain``, the working for
    /// the office too. Nothing is written: that is the caller's. Other threads of Python run meanwhile.
    #[pyo3(signature = (worksheet=None))]
    fn files<'py>(&self, py: Python<'py>, worksheet: Option<&Bound<'py, Worksheet>>) -> PyResult<BTreeMap<String, Bound<'py, PyBytes>>> {
        let (packet, sheet) = (&self.packet, worksheet.map(|w| &w.get().0));
        let files = py.detach(|| packet_files(packet, sheet)).raise()?;
        Ok(files.into_iter().map(|file| (file.name, PyBytes::new(py, &file.bytes))).collect())
    }

    fn __repr__(&self) -> String {
        let s = &self.packet.summary;
        format!("<Packet {:?}: {} planes, {} panels, {} trims, {} cautions>", self.packet.job, s.planes, s.panels, s.trims, s.cautions)
    }

    fn __reduce__<'py>(&self, py: Python<'py>) -> PyResult<(Bound<'py, PyAny>, ())> {
        Ok((self.of.bind(py).getattr("compute")?, ()))
    }
}

part! {
    /// One line of the roof, worked out.
    JunctionItem(core_job::JunctionItem) in "seamwright.job",
    shown item: format_args!("{}, {}", item.name, item.along.length);

    /// Number of the line in the roof.
    line(item) -> usize = item.line;
    /// Its name.
    name(item) -> String = item.name.clone();
    /// Its kind.
    kind(item) -> String = name_of(&item.kind)?;
    /// Where in the job its detail stands.
    detail(item) -> String = item.detail.clone();
    /// The plane on the first side of the section.
    first(item, here) -> SectionSide = here.one("first", &item.first);
    /// The plane on the second side, where there is one.
    second(item, here) -> Option<SectionSide> = item.second.as_ref().map(|side| here.one("second", side));
    /// Its section.
    section(item, here) -> Solved = here.one("section", &item.section);
    /// What lies along the real line: bays, closures, tapes, beads, rows of fasteners, cleats, trims, lines to strike.
    along(item, here) -> LineAssembly = here.one("along", &item.along);
    /// How a valley's pan is cut, folded and sealed at its lower end, where the roof there is known; else ``None``.
    pan_end(item, here) -> Option<PanEndCut> = item.pan_end.as_ref().map(|end| here.one("pan_end", end));
    /// What moves there over the year, at an expansion joint; else ``None``.
    moves(item, here) -> Option<JointMoves> = item.moves.as_ref().map(|moves| here.one("moves", moves));
    /// What its cap must let pass over the year, where its closures ride with panels that move and the job gives temperatures; else ``None``.
    rides(item, here) -> Option<CapMoves> = item.rides.as_ref().map(|moves| here.one("rides", moves));
    /// The sealed line of each side, from one end of the line to the other.
    sealed(item, here) -> Vec<SideSeal> = here.all("sealed", &item.sealed);
    /// Water on its section.
    water(item, here) -> WaterCheck = here.one("water", &item.water);
    /// The order of the work.
    work(item, here) -> Vec<WorkStep> = here.all("work", &item.work);
    /// Rows of fasteners whose spacing no engineer gave.
    not_engineered(item) -> Vec<String> = item.not_engineered().map(str::to_owned).collect();
}

part! {
    /// A side of a junction's section.
    SectionSide(core_job::SectionSide) in "seamwright.job",
    shown side: format_args!("plane {}, {}", side.plane, side.rise);

    /// Number of the plane in the roof.
    plane(side) -> usize = side.plane;
    /// The direction of the deck in the section, walking from the first side to the second: positive where it rises.
    rise(side) -> Angle = Angle(side.rise);
    /// The layers on the deck.
    levels(side) -> Levels = Levels(side.levels);
}
