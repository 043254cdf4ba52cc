//! Drawings of a trim.

use crate::document::document;
use crate::error::Raise;
use pyo3::prelude::*;
use seamwright::record::Calculation;

document! {
    /// A drawing of a trim: ``section-svg``, ``flat-svg``, ``section-dxf`` or ``flat-dxf``.
    ///
    /// >>> from seamwright.trim import DrawnTrim
    /// >>> legs = [{"name": "flange", "length": "4 in", "start": "sheet-edge", "end": "outer-corner"},
    /// ...     {"name": "face", "length": "3 in", "start": "outer-corner", "end": "sheet-edge"}]
    /// >>> bends = [{"angle": "90 deg", "direction": "down", "inside_radius": "0.03 in"}]
    /// >>> profile = {"thickness": "0.024 in", "legs": legs, "bends": bends, "painted": "upper"}
    /// >>> asked = {"profile": profile, "rule": "sharp-corner", "name": "angle", "format": "in/16"}
    /// >>> 'girth 7"' in DrawnTrim.from_dict(asked | {"view": "flat-svg"}).text().replace("&quot;", '"')
    /// True
    /// >>> DrawnTrim.from_dict(asked | {"view": {"flat-dxf": {"unit": "inch", "piece": "10 ft"}}}).text().splitlines()[1]
    /// 'SECTION'
    DrawnTrim(seamwright::export::DrawnTrim) in "seamwright.trim" with {
        /// The drawing: the text of an SVG or of a DXF file.
        fn text(&self) -> PyResult<String> {
            self.0.compute().raise()
        }
    }
}
