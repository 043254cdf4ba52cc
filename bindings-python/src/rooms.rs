//! The rooms: one module each, made when its room is first asked for, because making its classes is most of what an import costs.

use pyo3::prelude::*;
use pyo3::wrap_pymodule;

/// The compiled part of the room with this name.
#[pyfunction]
pub(crate) fn _room(py: Python<'_>, name: &str) -> PyResult<Py<PyModule>> {
    Ok(match name {
        "assembly" => wrap_pymodule!(assembly)(py),
        "closure" => wrap_pymodule!(closure)(py),
        "job" => wrap_pymodule!(job)(py),
        "junction" => wrap_pymodule!(junction)(py),
        "layout" => wrap_pymodule!(layout)(py),
        "metal" => wrap_pymodule!(metal)(py),
        "movement" => wrap_pymodule!(movement)(py),
        "panel" => wrap_pymodule!(panel)(py),
        "pitch" => wrap_pymodule!(pitch)(py),
        "record" => wrap_pymodule!(record)(py),
        "roof" => wrap_pymodule!(roof)(py),
        "spacing" => wrap_pymodule!(spacing)(py),
        "stock" => wrap_pymodule!(stock)(py),
        "trim" => wrap_pymodule!(trim)(py),
        "underlayment" => wrap_pymodule!(underlayment)(py),
        "units" => wrap_pymodule!(units)(py),
        _ => return Err(pyo3::exceptions::PyKeyError::new_err(name.to_owned())),
    })
}

/// The classes of `seamwright.assembly`.
#[pymodule(submodule, module = "seamwright._seamwright")]
pub(crate) mod assembly {
    #[pymodule_export]
    use crate::assembly::{
        Bay, BeadRun, Beside, CleatRun, ClipGroup, ClipRule, ClipSchedule, ClosureGroup, ClosureList, ClosureRow, CopingCleat, CopingCorner, CopingMeets,
        CopingPiece, CopingPieces, CopingRun, CopingScrews, Corner, CornerLine, CornerPair, EdgeMovement, FastenerRow, LineAssembly, PanEndCut, PanEndLeg,
        PanelPin, PlaneMovement, PlanePins, RoofCorners, RunOfCoping, SealBreak, SealCheck, SealedLine, SeamPlugs, SideBays, SideSeal, Stretch, StruckLine,
        TapeReading, TapeRun, TeeOnRun, TrimRun,
    };
}

/// The classes of `seamwright.closure`.
#[pymodule(submodule, module = "seamwright._seamwright")]
pub(crate) mod closure {
    #[pymodule_export]
    use crate::closure::ClosurePiece;
}

/// The classes of `seamwright.job`.
#[pymodule(submodule, module = "seamwright._seamwright")]
pub(crate) mod job {
    #[pymodule_export]
    use crate::job::{
        CapItem, CopingCornerItem, CopingItem, EaveUnderlayment, EndCap, Job, JobRevised, JobRevision, JunctionItem, KickOutItem, Metals, OrderLine, Packet,
        PanelChange, Paperwork, PipeItem, PlaneClips, PlaneHeat, PlaneLay, PlaneUnderlayment, Progress, SectionSide, SourceCount, Summary, Temperatures,
        TrimItem, TrimRun, UnderlaymentPlan, ValleyUnderlayment,
    };
}

/// The classes of `seamwright.junction`.
#[pymodule(submodule, module = "seamwright._seamwright")]
pub(crate) mod junction {
    #[pymodule_export]
    use crate::junction::{
        Adjoining, AlongLine, BeadSize, CapBlank, CapOutline, Coping, CurbBack, Eave, EndProposal, ExpansionAcross, ExpansionAlong, FacePath, Headwall,
        HighSide, Hip, JointMoves, JunctionTrim, KickOut, KickOutPiece, LayoutLine, Levels, LineOrder, PathCheck, PathFault, PathLap, Pipe, PipePlan,
        PitchTransition, ProposedEnd, ProposedEnds, Rake, Ridge, RowShelter, SectionPoint, SideEnd, Sidewall, Solved, Step, Valley, WaterCheck, WaterPath,
        WorkPlan, WorkStep,
    };
}

/// The classes of `seamwright.layout`.
#[pymodule(submodule, module = "seamwright._seamwright")]
pub(crate) mod layout {
    #[pymodule_export]
    use crate::layout::{
        _strips, BlankPair, Bundle, Coil, CoilTotal, CoilTotals, CreepCheck, CutShapes, DirectionCost, DirectionOfLay, EdgeUse, EndMark, EndPart, EndShape,
        FormedUse, Group, LaidPanel, LaidPlane, LayCost, LayDirections, Layout, LengthLimit, ListGroup, ListedPiece, ListedPlane, MarkedSeams, NarrowLimit,
        Notch, NotchShape, OrderRounding, PanelBreak, PanelList, PanelShape, Revised, RevisedRow, Revision, SeamClearance, SeamDistance, SeamMark, SeamMarks,
        SeamShift, Start, TaperedLay, TaperedPanels, VoidRow, Waste, mark,
    };
}

/// The classes of `seamwright.metal`.
#[pymodule(submodule, module = "seamwright._seamwright")]
pub(crate) mod metal {
    #[pymodule_export]
    use crate::metal::{Gauge, GaugeSystem, MetalMeeting, MetalsTogether, Sheet};
}

/// The classes of `seamwright.movement`.
#[pymodule(submodule, module = "seamwright._seamwright")]
pub(crate) mod movement {
    #[pymodule_export]
    use crate::movement::{CapMoves, EndVerdict, LengthChange, SideParting};
}

/// The classes of `seamwright.panel`.
#[pymodule(submodule, module = "seamwright._seamwright")]
pub(crate) mod panel {
    #[pymodule_export]
    use crate::panel::{DevelopedWidth, Leg, Levels, Panel, PanelEnd, Reach, Seam, along_seam};
}

/// The classes of `seamwright.pitch`.
#[pymodule(submodule, module = "seamwright._seamwright")]
pub(crate) mod pitch {
    #[pymodule_export]
    use crate::pitch::{BendAt, Corner, CornerGeometry, CornerSide, Framing, FramingRow, JunctionBend, Pitch, SlopeCheck, SlopeRule};
}

/// The classes of `seamwright.record`.
#[pymodule(submodule, module = "seamwright._seamwright")]
pub(crate) mod record {
    #[pymodule_export]
    use crate::record::{Caution, Source, Step, Worksheet};
}

/// The classes of `seamwright.roof`.
#[pymodule(submodule, module = "seamwright._seamwright")]
pub(crate) mod roof {
    #[pymodule_export]
    use crate::roof::{
        Bounds, Cricket, CricketFigures, Drain, DroppedVertex, Edge, FlattenedFace, JoinedPlanes, JoinedRoof, JointFit, Line, MeasuredPlane, MeasuringSheet,
        MergedFaces, NamedCorner, NamedOpening, OutOfTrue, Outline, PlacedCricket, PlacedPlane, Plane, PlaneShape, PlaneSheet, Point, Reading, Roof, RoofInput,
        SheetLine, Side, SketchedRoof, SnapMove, SnappedRoof, Snapping, SplitEdge, Vertex, Wall,
    };
}

/// The classes of `seamwright.spacing`.
#[pymodule(submodule, module = "seamwright._seamwright")]
pub(crate) mod spacing {
    #[pymodule_export]
    use crate::spacing::Stations;
}

/// The classes of `seamwright.stock`.
#[pymodule(submodule, module = "seamwright._seamwright")]
pub(crate) mod stock {
    #[pymodule_export]
    use crate::stock::{Across, CutPlan, DropPlan, ScrapReport, SlitPlan, SlitScrap, Slitting, StickPlan};
}

/// The classes of `seamwright.trim`.
#[pymodule(submodule, module = "seamwright._seamwright")]
pub(crate) mod trim {
    #[pymodule_export]
    use crate::trim::{
        _girths_into, Bend, BendFigures, BendFound, BendLines, BendOrder, BendRule, BendSize, BlankBend, BlankEdge, BlankPlan, Chain, Course, Deduction,
        DeductionTable, DinFactor, DinMinimumRadius, DrawnTrim, Edge, EndFold, FaceWidths, Figures, Flat, FlatBend, FlatBlank, FlatLeg, FlatPattern, FoldedEnd,
        FormingCheck, FormingFault, FormingReport, GaugeStep, HoleFinding, Joggle, JoggleParts, Leg, LegCut, MatchedSection, MatchingSection, Mitre, MitreHalf,
        MitredCorner, NeutralFactor, NominalBend, NominalFlat, NominalSeam, NominalSum, OrderFound, OrderSearch, OrderSheet, OrderTrial, OrderVerdict,
        OverBend, PieceFigures, PlannedBlank, Profile, RadiusFinding, ReliefHole, SeamMetal, SectionFigures, SetbackFactor, Springback, Sprung, StepFault,
        Taper, TaperBend, TaperLeg, TaperedPiece, TaperedPieces, TaperedRun, TaperedTrim, Tooled, TrialBend, TrialFound, TrimFigures, Vertices,
        din_compensation,
    };
}

/// The classes of `seamwright.underlayment`.
#[pymodule(submodule, module = "seamwright._seamwright")]
pub(crate) mod underlayment {
    #[pymodule_export]
    use crate::underlayment::{Course, CourseLayout, CoursePiece, EaveBand, EaveMembrane, LaidCourses, ValleyMembrane, ValleyStrip};
}

/// The classes of `seamwright.units`.
#[pymodule(submodule, module = "seamwright._seamwright")]
pub(crate) mod units {
    #[pymodule_export]
    use crate::units::{
        Angle, Area, BendAngle, Density, Expansion, Force, Length, LengthFormat, LineLoad, LineMass, Mass, Pressure, ShopRounding, SurfaceMass, Temperature,
        TemperatureDifference, Volume,
    };
}
