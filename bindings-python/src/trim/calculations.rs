//! One class a calculation of the room, all of one shape: read from JSON or a dict, and computed; and the classes of what they give.

use super::{Flat, Part, Profile};
use crate::document::document;
use crate::error::Raise;
use crate::given::Given;
use crate::json::{dict, written};
use crate::names::hash_written;
use crate::place::cautions;
use crate::record::{Caution, Source, Worksheet};
use crate::trim::{Bend, Leg, NeutralFactor};
use crate::units::{Angle, BendAngle, Length};
use core::hash::{Hash, Hasher};
use pyo3::prelude::*;
use pyo3::types::PyDict;
use seamwright::record::Calculation;
use seamwright::trim as core_trim;

/// Makes the class of a calculation whose result is a value, or pickles as its calculation.
macro_rules! calculation {
    ($(#[$meta:meta])* $class:ident => $out:ty, |$of:ident, $found:ident| $made:expr) => {
        document! {
            $(#[$meta])*
            $class(core_trim::$class) in "seamwright.trim" with {
                /// The result.
                fn compute(&self) -> PyResult<$out> {
                    let ($of, $found) = (self, self.0.compute().raise()?);
                    Ok($made)
                }

                /// The result, and its worksheet.
                fn explain(&self) -> PyResult<($out, Worksheet)> {
                    let (out, sheet) = self.0.explain().raise()?;
                    let ($of, $found) = (self, out);
                    Ok(($made, Worksheet(sheet)))
                }
            }
        }
    };
}

/// Makes the class of a result. It pickles as its calculation, which computes again.
macro_rules! result {
    ($(#[$meta:meta])* $class:ident of $calculation:ident { $($(#[$doc:meta])* fn $field:ident(&$this:ident) -> $type:ty { $get:expr })+ }) => {
        $(#[$meta])*
        #[pyclass(module = "seamwright.trim", frozen, eq, hash)]
        #[derive(Clone, PartialEq)]
        pub(crate) struct $class {
            of: $calculation,
            found: core_trim::$class,
        }

        impl Hash for $class {
            fn hash<H: Hasher>(&self, state: &mut H) {
                self.of.hash(state);
            }
        }

        #[pymethods]
        impl $class {
            $(
                $(#[$doc])*
                #[getter]
                fn $field(&$this) -> $type {
                    $get
                }
            )+

            fn __repr__(&self) -> String {
                format!("<{} of {}>", stringify!($class), self.of.0.title())
            }

            fn __reduce__<'py>(slf: &Bound<'py, Self>) -> PyResult<(Bound<'py, PyAny>, ())> {
                Ok((slf.get().of.clone().into_pyobject(slf.py())?.getattr("compute")?, ()))
            }
        }
    };
}

calculation! {
    /// An offset bend by its depth and angle: two like bends, there and back, and the web between them.
    ///
    /// >>> from seamwright.trim import Joggle
    /// >>> step = {"name": "step", "depth": '1/2"', "angle": "30 deg", "direction": "up", "inside_radius": "0.03 in", "thickness": "0.024 in"}
    /// >>> parts = Joggle.from_dict(step).compute()
    /// >>> format(parts.web.length, "in.3"), parts.second.direction
    /// ('1.000 in', 'down')
    Joggle => JoggleParts, |of, found| JoggleParts { of: of.clone(), found }
}

result! {
    /// What an offset bend stands for in a profile.
    JoggleParts of Joggle {
        /// The bend there.
        fn first(&self) -> Bend { Bend(self.found.first.clone()) }
        /// The web, from the outer corner of the first bend to the inner corner of the second.
        fn web(&self) -> Leg { Leg(self.found.web.clone()) }
        /// The bend back.
        fn second(&self) -> Bend { Bend(self.found.second.clone()) }
        /// The flat part of the web.
        fn web_flat(&self) -> Length { Length(self.found.web_flat) }
        /// How far the web runs along the legs; negative for one that leans back.
        fn run(&self) -> Length { Length(self.found.run) }
    }
}

calculation! {
    /// A profile as one list of legs, bends and offset bends, with the working of the offset bends.
    ///
    /// >>> from seamwright.trim import Course
    /// >>> bend = {"angle": "90 deg", "direction": "down", "inside_radius": "0.03 in"}
    /// >>> items = [{"leg": {"name": "flange", "length": "4 in"}}, {"bend": bend}, {"leg": {"name": "face", "length": "3 in"}}]
    /// >>> course = {"thickness": "0.024 in", "items": items, "measured_to": "outer-corner", "painted": "upper"}
    /// >>> [leg.name for leg in Course.from_dict(course).compute().legs]
    /// ['flange', 'face']
    Course => Profile, |_of, found| Profile(found)
}

calculation! {
    /// A profile said by the corners of one face: the face that lies on the supports.
    ///
    /// >>> from seamwright.trim import Chain
    /// >>> legs = [{"name": "flange", "to": {"x": "0 in", "y": "0 in"}}, {"name": "face", "to": {"x": "0 in", "y": "-3 in"}}]
    /// >>> line = {"thickness": "0.024 in", "inside_radius": "0.03 in", "face": "lower", "start": {"x": "-4 in", "y": "0 in"}}
    /// >>> profile = Chain.from_dict(line | {"legs": legs, "painted": "upper"}).compute()
    /// >>> profile.legs[0].end, profile.bends[0].direction
    /// ('inner-corner', 'down')
    Chain => Profile, |_of, found| Profile(found)
}

calculation! {
    /// A profile said by the vertices of a drawing whose dimensions are all outside, or all inside, ones.
    ///
    /// >>> from seamwright.trim import Vertices
    /// >>> legs = [{"name": "flange", "to": {"x": "4 in", "y": "0 in"}}, {"name": "face", "to": {"x": "4 in", "y": "-3 in"}}]
    /// >>> line = {"thickness": "0.024 in", "inside_radius": "0.03 in", "drawn_to": "outside", "start": {"x": "0 in", "y": "0 in"}}
    /// >>> profile = Vertices.from_dict(line | {"legs": legs, "painted": "upper"}).compute()
    /// >>> [str(leg.length) for leg in profile.legs], profile.legs[0].end
    /// (['101.6 mm', '76.2 mm'], 'outer-corner')
    Vertices => Profile, |_of, found| Profile(found)
}

calculation! {
    /// What a hem, a wired edge or a seam takes as a trade book gives it: hem, double-hem, wired-edge, grooved-seam, single-lock or double-lock.
    ///
    /// >>> from seamwright.trim import NominalSeam
    /// >>> metal = NominalSeam.from_dict({"double-lock": {"height": "1 in", "lock": '1/4"'}}).compute()
    /// >>> format(metal.first, "in/16"), format(metal.second, "in/16")
    /// ('1 1/4"', '1 1/2"')
    NominalSeam => SeamMetal, |of, found| SeamMetal { of: of.clone(), found }
}

result! {
    /// What an edge or a seam takes on each side.
    SeamMetal of NominalSeam {
        /// The one side, or the low upstand, or the first strip of a hem.
        fn first(&self) -> Length { Length(self.found.first) }
        /// The other side, or the high upstand, or the second strip of a hem.
        fn second(&self) -> Length { Length(self.found.second) }
        /// Together.
        fn total(&self) -> Length { Length(self.found.total) }
        /// What must be known beside the numbers.
        fn cautions(&self) -> Vec<Caution> { cautions(&self.found.cautions) }
    }
}

calculation! {
    /// A blank cut to the sum of its nominal legs, with the leg that absorbs what the sum is too wide.
    ///
    /// >>> from seamwright.trim import NominalSum
    /// >>> a, b = {"name": "a", "length": "2 in", "start": "sheet-edge"}, {"name": "b", "length": "3 in", "end": "sheet-edge"}
    /// >>> legs = [a | {"end": "outer-corner"}, b | {"start": "outer-corner"}]
    /// >>> bends = [{"angle": "90 deg", "direction": "up", "inside_radius": "0.024 in"}]
    /// >>> profile = {"thickness": "0.024 in", "legs": legs, "bends": bends, "painted": "upper"}
    /// >>> made = NominalSum.from_dict({"profile": profile, "rule": {"neutral-axis": {"factor": 0.5}}, "take_up": 0}).compute()
    /// >>> format(made.nominal, "in.3"), format(made.difference, "in.4"), format(made.leg, "in.4")
    /// ('5.000 in', '0.0395 in', '2.0395 in')
    NominalSum => NominalFlat, |of, found| NominalFlat { of: of.clone(), found }
}

result! {
    /// A nominal sum worked out.
    NominalFlat of NominalSum {
        /// The width of the blank: the nominal sum.
        fn nominal(&self) -> Length { Length(self.found.nominal) }
        /// The girth as developed.
        fn developed(&self) -> Length { Length(self.found.developed) }
        /// Nominal less developed: what the leg takes up.
        fn difference(&self) -> Length { Length(self.found.difference) }
        /// The same bend by bend.
        fn bends(&self) -> Vec<NominalBend> { self.found.bends.iter().copied().map(NominalBend).collect() }
        /// The length to which the leg that takes up is made.
        fn leg(&self) -> Length { Length(self.found.leg) }
        /// The flat pattern of the piece as made; its girth is the nominal sum.
        fn flat(&self) -> PyResult<Flat> { self.made() }
        /// What must be known beside the numbers.
        fn cautions(&self) -> Vec<Caution> { cautions(&self.found.cautions) }
    }
}

impl NominalFlat {
    /// The flat with the piece that it is of.
    fn made(&self) -> PyResult<Flat> {
        let mut made = self.of.0.profile.clone();
        if let Some(leg) = made.legs.get_mut(self.of.0.take_up) {
            leg.length = self.found.leg;
        }
        Ok(Flat::known(&made, self.found.flat.clone()))
    }
}

/// What one bend takes nominally and as developed. It is read from its sum and does not pickle alone.
#[pyclass(module = "seamwright.trim", frozen, eq, hash)]
#[derive(Clone, Copy, PartialEq, Eq)]
pub(crate) struct NominalBend(core_trim::NominalBend);

impl Hash for NominalBend {
    fn hash<H: Hasher>(&self, state: &mut H) {
        hash_written(&self.0, state);
    }
}

#[pymethods]
impl NominalBend {
    /// Which bend of the profile by its index, or the fold of an edge by its name.
    #[getter]
    fn part(&self) -> Part {
        self.0.part.into()
    }

    /// What it takes in the nominal sum.
    #[getter]
    fn nominal(&self) -> Length {
        Length(self.0.nominal)
    }

    /// What it takes as developed.
    #[getter]
    fn developed(&self) -> Length {
        Length(self.0.developed)
    }

    /// Nominal less developed.
    #[getter]
    fn difference(&self) -> Length {
        Length(self.0.difference)
    }

    fn __repr__(&self) -> String {
        format!("<NominalBend {}: {} more than developed>", self.0.part, self.0.difference)
    }
}

calculation! {
    /// One bend and its rule, for all that can be said of it.
    ///
    /// >>> from seamwright.trim import BendFigures
    /// >>> size = {"thickness": "0.04 in", "inside_radius": "0.04 in", "angle": "90 deg"}
    /// >>> found = BendFigures.from_dict({"size": size, "rule": {"handbook": "soft-steel"}}).compute()
    /// >>> round(found.neutral_factor, 4), format(found.outside_setback, "in.2")
    /// (0.4074, '0.08 in')
    BendFigures => BendFound, |of, found| BendFound { of: of.clone(), found }
}

result! {
    /// The figures of one bend.
    BendFound of BendFigures {
        /// The angle between the flanges: 180 degrees less the bend.
        fn opening(&self) -> Angle { Angle(self.found.opening) }
        /// From the tangent line to the corner of the outside faces; ``None`` at 180 degrees and more.
        fn outside_setback(&self) -> Option<Length> { self.found.outside_setback.map(Length) }
        /// From the tangent line to the corner of the inside faces; ``None`` at 180 degrees and more.
        fn inside_setback(&self) -> Option<Length> { self.found.inside_setback.map(Length) }
        /// The bend allowance: flat length between the tangent lines.
        fn allowance(&self) -> Length { Length(self.found.allowance) }
        /// The bend deduction, for legs to the outer corner; ``None`` at 180 degrees and more.
        fn deduction(&self) -> Option<Length> { self.found.deduction.map(Length) }
        /// The neutral-axis factor that gives this allowance.
        fn neutral_factor(&self) -> f64 { self.found.neutral_factor }
    }
}

calculation! {
    /// A strip of known width, bent once, and its two legs measured.
    ///
    /// >>> from seamwright.trim import BendRule, TrialBend
    /// >>> strip = {"thickness": "0.05 in", "inside_radius": "0.032 in", "angle": "90 deg", "blank": "1.921 in"}
    /// >>> found = TrialBend.from_dict(strip | {"legs": ["1 in", "1 in"], "measured_to": "outer-corner"}).compute()
    /// >>> round(found.factor.value, 4), format(found.deduction, "in.3")
    /// (0.4423, '0.079 in')
    TrialBend => TrialFound, |of, found| TrialFound { of: of.clone(), found }
}

result! {
    /// What a trial bend says.
    TrialFound of TrialBend {
        /// What the bend took: the strip less the flat parts of its legs.
        fn allowance(&self) -> Length { Length(self.found.allowance) }
        /// The deduction, for a table; ``None`` at 180 degrees and more.
        fn deduction(&self) -> Option<Length> { self.found.deduction.map(Length) }
        /// The neutral-axis factor; with its source it makes a rule.
        fn factor(&self) -> NeutralFactor { NeutralFactor(self.found.axis.factor) }
        /// Where the factor comes from.
        fn source(&self) -> Source { Source(self.found.axis.source.clone()) }
        /// What must be known beside the numbers.
        fn cautions(&self) -> Vec<Caution> { cautions(&self.found.cautions) }
    }
}

calculation! {
    /// What a bend formed to a radius and an angle springs back to.
    ///
    /// >>> from seamwright.trim import Springback
    /// >>> formed = {"thickness": "0.0359 in", "forming_radius": "0.5 in", "forming_angle": "90 deg", "yield_strength": "40 ksi", "modulus": "29000 ksi"}
    /// >>> sprung = Springback.from_dict(formed).compute()
    /// >>> round(sprung.strain_ratio, 4), round(sprung.radius_ratio, 3)
    /// (0.0192, 0.942)
    Springback => Sprung, |of, found| Sprung { of: of.clone(), found }
}

result! {
    /// A bend that has sprung back.
    Sprung of Springback {
        /// x = Ri Y/(E T).
        fn strain_ratio(&self) -> f64 { self.found.strain_ratio }
        /// Forming radius to the radius that is left.
        fn radius_ratio(&self) -> f64 { self.found.radius_ratio }
        /// The angle that is left to the forming angle.
        fn angle_ratio(&self) -> f64 { self.found.angle_ratio }
        /// The inside radius that is left.
        fn inside_radius(&self) -> Length { Length(self.found.inside_radius) }
        /// The angle that is left, from flat.
        fn angle(&self) -> BendAngle { BendAngle(self.found.angle) }
        /// What must be known beside the numbers.
        fn cautions(&self) -> Vec<Caution> { cautions(&self.found.cautions) }
    }
}

calculation! {
    /// How far to bend over, and round what radius, for a wanted bend.
    ///
    /// >>> from seamwright.trim import OverBend
    /// >>> wanted = {"thickness": "1 mm", "inside_radius": "1 mm", "angle": "90 deg", "by": {"table": "dc01"}}
    /// >>> tool = OverBend.from_dict(wanted).compute()
    /// >>> tool.angle_ratio, round(tool.over_bend.degrees, 3)
    /// (0.99, 0.909)
    OverBend => Tooled, |of, found| Tooled { of: of.clone(), found }
}

result! {
    /// What the tool has to do for a wanted bend.
    Tooled of OverBend {
        /// The angle that is left to the forming angle.
        fn angle_ratio(&self) -> f64 { self.found.angle_ratio }
        /// Inside radius in the tool.
        fn forming_radius(&self) -> Length { Length(self.found.forming_radius) }
        /// Angle in the tool, from flat.
        fn forming_angle(&self) -> BendAngle { BendAngle(self.found.forming_angle) }
        /// By how much the tool goes over the wanted angle.
        fn over_bend(&self) -> Angle { Angle(self.found.over_bend) }
        /// x = Ri Y/(E T), where the elastic formula gave it.
        fn strain_ratio(&self) -> Option<f64> { self.found.strain_ratio }
        /// What must be known beside the numbers.
        fn cautions(&self) -> Vec<Caution> { cautions(&self.found.cautions) }
    }
}

calculation! {
    /// A cold bend in steel whose least inside radius DIN 6935 gives.
    ///
    /// >>> from seamwright.trim import DinMinimumRadius
    /// >>> sheet = {"thickness": "0.6 mm", "tensile_strength": "330 MPa", "angle": "90 deg", "grain": "across"}
    /// >>> str(DinMinimumRadius.from_dict(sheet).compute())
    /// '1 mm'
    DinMinimumRadius => Length, |_of, found| Length(found)
}

calculation! {
    /// A relief hole where bends cross, sized by a published habit; they disagree, so the caller chooses.
    ///
    /// >>> from seamwright.trim import ReliefHole
    /// >>> hole = ReliefHole.from_dict({"habit": "thickness", "inside_radius": "0.04 in", "thickness": "0.04 in"})
    /// >>> format(hole.compute(), "in/8")
    /// '1/8"'
    ReliefHole => Length, |_of, found| Length(found)
}

calculation! {
    /// The profile of a second run, upright, that closes on a first one's in one plane.
    ///
    /// >>> from seamwright.trim import MatchingSection, Mitre
    /// >>> legs = [{"name": "flange", "length": "4 in", "start": "sheet-edge", "end": "outer-corner"},
    /// ...     {"name": "face", "length": "3 in", "start": "outer-corner", "end": "sheet-edge"}]
    /// >>> bends = [{"angle": "90 deg", "direction": "down", "inside_radius": "0.03 in"}]
    /// >>> eave = {"thickness": "0.024 in", "legs": legs, "bends": bends, "painted": "upper"}
    /// >>> corner = {"plan": {"turn": "-90 deg", "first_rise": "0 deg", "second_rise": "26.565 deg"}}
    /// >>> rake = MatchingSection.from_dict({"profile": eave, "corner": corner, "closes_on": "upper"}).compute()
    /// >>> round(rake.profile.bends[0].angle.degrees, 2)
    /// 65.91
    /// >>> mitre = {"profile": eave, "rule": "sharp-corner", "corner": corner, "second": {"matching": {}}, "closes_on": "upper", "tolerance": "0.01 mm"}
    /// >>> len(Mitre.from_dict(mitre).compute().second.legs)
    /// 2
    /// >>> mitre["second"] = rake.second_half("0.001 mm")
    /// >>> str(Mitre.from_dict(mitre).compute().parts)
    /// '0 mm'
    MatchingSection => MatchedSection, |of, found| MatchedSection { of: of.clone(), found }
}

/// The matching section. It pickles as its calculation, which computes again.
#[pyclass(module = "seamwright.trim", frozen, eq, hash)]
#[derive(Clone, PartialEq)]
pub(crate) struct MatchedSection {
    of: MatchingSection,
    found: core_trim::MatchedSection,
}

impl Hash for MatchedSection {
    fn hash<H: Hasher>(&self, state: &mut H) {
        self.of.hash(state);
    }
}

#[pymethods]
impl MatchedSection {
    /// The profile of the run that leaves.
    #[getter]
    fn profile(&self) -> Profile {
        Profile(self.found.profile.clone())
    }

    /// Where its section is put, as a dict.
    #[getter]
    fn placement<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyDict>> {
        dict(py, &written(&self.found.placement)?)
    }

    /// Both as the second half of a mitre, whose corners may part by so much.
    fn second_half<'py>(&self, py: Python<'py>, within: Given<Length>) -> PyResult<Bound<'py, PyDict>> {
        let (profile, placement, within) = (self.found.profile.clone(), self.found.placement, within.at("within")?);
        dict(py, &written(&core_trim::SecondHalf::Other { profile, placement, within })?)
    }

    fn __repr__(&self) -> String {
        format!("<MatchedSection: {} legs>", self.found.profile.legs.len())
    }

    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> PyResult<(Bound<'py, PyAny>, ())> {
        Ok((slf.get().of.clone().into_pyobject(slf.py())?.getattr("compute")?, ()))
    }
}
