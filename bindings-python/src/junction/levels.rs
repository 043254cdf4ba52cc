//! `seamwright.junction.Levels`.

use crate::error::Raise;
use crate::given::Given;
use crate::record::Worksheet;
use crate::units::Length;
use pyo3::prelude::*;

use seamwright::junction as core_junction;
use seamwright::record::Calculation;

/// The layers under a trim that lies on the seam tops, each square to the roof plane, from the deck outward; one that is not given is not there.
///
/// >>> from seamwright.junction import Levels
/// >>> levels = Levels(underlayment='1/16"', seam_height='1 3/4"', tape='1/16"')
/// >>> format(levels.compute(), "in/16")
/// '1 7/8"'
#[pyclass(module = "seamwright.junction", frozen, eq, hash)]
#[derive(Clone, Copy, PartialEq, Eq)]
pub(crate) struct Levels(pub(crate) core_junction::Levels);

impl core::hash::Hash for Levels {
    fn hash<H: core::hash::Hasher>(&self, state: &mut H) {
        self.0.layers().hash(state);
    }
}

fn layer(given: Option<Given<Length>>, name: &str) -> PyResult<seamwright::units::Length> {
    given.map_or(Ok(seamwright::units::Length::ZERO), |length| length.at(name))
}

#[pymethods]
impl Levels {
    #[new]
    #[pyo3(signature = (*, built_up=None, underlayment=None, stand_off=None, pan=None, seam_height=None, closure_metal=None, tape=None))]
    #[allow(clippy::too_many_arguments, reason = "one for each layer, by name")]
    fn new(
        built_up: Option<Given<Length>>,
        underlayment: Option<Given<Length>>,
        stand_off: Option<Given<Length>>,
        pan: Option<Given<Length>>,
        seam_height: Option<Given<Length>>,
        closure_metal: Option<Given<Length>>,
        tape: Option<Given<Length>>,
    ) -> PyResult<Levels> {
        Ok(Levels(core_junction::Levels {
            built_up: layer(built_up, "built_up")?,
            underlayment: layer(underlayment, "underlayment")?,
            stand_off: layer(stand_off, "stand_off")?,
            pan: layer(pan, "pan")?,
            seam_height: layer(seam_height, "seam_height")?,
            closure_metal: layer(closure_metal, "closure_metal")?,
            tape: layer(tape, "tape")?,
        }))
    }

    /// Packing over the deck under all of the plane: its top is the deck to everything that follows.
    #[getter]
    fn built_up(&self) -> Length {
        Length(self.0.built_up)
    }

    /// Underlayment on the deck.
    #[getter]
    fn underlayment(&self) -> Length {
        Length(self.0.underlayment)
    }

    /// From the underlayment to the underside of the pan, where clips stand the pan off.
    #[getter]
    fn stand_off(&self) -> Length {
        Length(self.0.stand_off)
    }

    /// Thickness of the pan's sheet.
    #[getter]
    fn pan(&self) -> Length {
        Length(self.0.pan)
    }

    /// From the pan to the top of the seam.
    #[getter]
    fn seam_height(&self) -> Length {
        Length(self.0.seam_height)
    }

    /// Metal of a closure's top flange, where it runs over the seam top.
    #[getter]
    fn closure_metal(&self) -> Length {
        Length(self.0.closure_metal)
    }

    /// Compressed sealant tape under the trim.
    #[getter]
    fn tape(&self) -> Length {
        Length(self.0.tape)
    }

    /// The height of the trim's underside above the deck; a negative layer is refused.
    fn compute(&self) -> PyResult<Length> {
        self.0.compute().raise().map(Length)
    }

    /// The height of the trim's underside above the deck, and the worksheet.
    fn explain(&self) -> PyResult<(Length, Worksheet)> {
        let (height, sheet) = self.0.explain().raise()?;
        Ok((Length(height), Worksheet(sheet)))
    }

    fn __repr__(&self) -> String {
        let layers = self.0.layers().into_iter().filter(|(_, l)| *l != seamwright::units::Length::ZERO);
        format!("Levels({})", layers.map(|(name, l)| format!("{name}='{l}'")).collect::<Vec<_>>().join(", "))
    }

    #[allow(clippy::type_complexity, reason = "the layers in their order")]
    fn __reduce__<'py>(slf: &Bound<'py, Self>) -> PyResult<(Bound<'py, PyAny>, (Length, Length, Length, Length, Length, Length, Length))> {
        let l = slf.get();
        let layers = (l.built_up(), l.underlayment(), l.stand_off(), l.pan(), l.seam_height(), l.closure_metal(), l.tape());
        Ok((slf.get_type().getattr("_restored")?, layers))
    }

    /// For unpickling.
    #[staticmethod]
    fn _restored(
        built_up: Given<Length>,
        underlayment: Given<Length>,
        stand_off: Given<Length>,
        pan: Given<Length>,
        seam_height: Given<Length>,
        closure_metal: Given<Length>,
        tape: Given<Length>,
    ) -> PyResult<Levels> {
        Levels::new(Some(built_up), Some(underlayment), Some(stand_off), Some(pan), Some(seam_height), Some(closure_metal), Some(tape))
    }
}
