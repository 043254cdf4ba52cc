//! The private extension under the Python package `seamwright`.
//!
//! Nothing here knows the trade: every class wraps one type of core and hands the work on. Each room of core has a module of its own, because
//! names repeat between rooms; the public modules of the package re-export them.

#![forbid(unsafe_code)]

mod assembly;
mod by_name;
mod calculation;
mod closure;
mod error;
mod given;
mod job;
mod json;
mod junction;
mod layout;
mod metal;
mod movement;
mod names;
mod panel;
mod parts;
mod pitch;
mod place;
mod record;
mod roof;
mod spacing;
mod stock;
mod trim;
mod units;

/// The compiled part of `seamwright`; use `seamwright` and its rooms instead.
#[pyo3::pymodule]
mod _seamwright {
    use pyo3::pymodule;

    #[pymodule_export]
    use crate::by_name::{_calculation_names, _compute_json, _explain_json};
    #[pymodule_export]
    use crate::error::{_error_kinds, _panic_class, _raise_kind};

    /// The version of the library.
    #[pymodule_export]
    const VERSION: &str = env!("CARGO_PKG_VERSION");

    /// The classes of `seamwright.assembly`.
    #[pymodule]
    mod assembly {
        #[pymodule_export]
        use crate::assembly::{
            Bay, BeadRun, Beside, CleatRun, ClipGroup, ClipSchedule, ClosureGroup, ClosureList, ClosureRow, Corner, CornerLine, CornerPair, EdgeMovement,
            FastenerRow, LineAssembly, PanelPin, PlaneMovement, PlanePins, RoofCorners, SeamPlugs, SideBays, Stretch, StruckLine, TapeReading, TapeRun,
            TrimRun,
        };
    }

    /// The classes of `seamwright.closure`.
    #[pymodule]
    mod closure {
        #[pymodule_export]
        use crate::closure::ClosurePiece;
    }

    /// The classes of `seamwright.job`.
    #[pymodule]
    mod job {
        #[pymodule_export]
        use crate::job::{
            Job, JunctionItem, OrderLine, Packet, PlaneClips, PlaneHeat, PlaneLay, Progress, SectionSide, SourceCount, Summary, TrimItem, TrimRun,
        };
    }

    /// The classes of `seamwright.junction`.
    #[pymodule]
    mod junction {
        #[pymodule_export]
        use crate::junction::{
            AlongLine, CurbBack, Eave, Headwall, HighSide, Hip, JunctionTrim, LayoutLine, Levels, PitchTransition, Rake, Ridge, SectionPoint, SideEnd,
            Sidewall, Solved, Valley,
        };
    }

    /// The classes of `seamwright.layout`.
    #[pymodule]
    mod layout {
        #[pymodule_export]
        use crate::layout::{Coil, EdgeUse, EndPart, Group, LaidPanel, LaidPlane, Layout, LengthLimit, NarrowLimit, OrderRounding, Start, mark};
    }

    /// The classes of `seamwright.metal`.
    #[pymodule]
    mod metal {
        #[pymodule_export]
        use crate::metal::{Gauge, GaugeSystem};
    }

    /// The classes of `seamwright.movement`.
    #[pymodule]
    mod movement {
        #[pymodule_export]
        use crate::movement::{EndVerdict, LengthChange};
    }

    /// The classes of `seamwright.panel`.
    #[pymodule]
    mod panel {
        #[pymodule_export]
        use crate::panel::{DevelopedWidth, Leg, Levels, Panel, PanelEnd, Reach, Seam, along_seam};
    }

    /// The classes of `seamwright.pitch`.
    #[pymodule]
    mod pitch {
        #[pymodule_export]
        use crate::pitch::{BendAt, Corner, CornerGeometry, CornerSide, Framing, FramingRow, JunctionBend, Pitch, SlopeCheck, SlopeRule};
    }

    /// The classes of `seamwright.record`.
    #[pymodule]
    mod record {
        #[pymodule_export]
        use crate::record::{Caution, Source, Step, Worksheet};
    }

    /// The classes of `seamwright.roof`.
    #[pymodule]
    mod roof {
        #[pymodule_export]
        use crate::roof::{Bounds, Drain, Edge, Line, Outline, Plane, Point, Roof, RoofInput, Side, Vertex, Wall};
    }

    /// The classes of `seamwright.spacing`.
    #[pymodule]
    mod spacing {
        #[pymodule_export]
        use crate::spacing::Stations;
    }

    /// The classes of `seamwright.stock`.
    #[pymodule]
    mod stock {
        #[pymodule_export]
        use crate::stock::{Across, CutPlan, DropPlan, ScrapReport, SlitPlan, SlitScrap, Slitting, StickPlan};
    }

    /// The classes of `seamwright.trim`.
    #[pymodule]
    mod trim {
        #[pymodule_export]
        use crate::trim::{
            Bend, BendLines, BendOrder, BendRule, BendSize, Deduction, DeductionTable, DinFactor, Edge, FaceWidths, Figures, Flat, FlatBend, FlatLeg,
            FlatPattern, FormingCheck, FormingFault, FormingReport, GaugeStep, HoleFinding, Leg, NeutralFactor, OrderFound, OrderSearch, OrderSheet,
            OrderTrial, OrderVerdict, PieceFigures, Profile, RadiusFinding, SectionFigures, SetbackFactor, StepFault, TrimFigures, din_compensation,
        };
    }

    /// The classes of `seamwright.units`.
    #[pymodule]
    mod units {
        #[pymodule_export]
        use crate::units::{
            Angle, Area, BendAngle, Density, Expansion, Force, Length, LengthFormat, LineLoad, LineMass, Mass, Pressure, ShopRounding, SurfaceMass,
            Temperature, TemperatureDifference, Volume,
        };
    }
}
