//! What comes before what: the order of lines that are struck, and of the work.

use crate::document::document;
use crate::error::Raise;
use crate::place::part;
use crate::record::Worksheet;
use pyo3::prelude::*;
use seamwright::junction as core_junction;
use seamwright::record::Calculation as _;

/// Makes the class of a calculation that gives plain numbers.
macro_rules! numbers {
    ($(#[$meta:meta])* $class:ident gives $out:ty) => {
        document! {
            $(#[$meta])*
            $class(core_junction::$class) in "seamwright.junction" with {
                /// What it comes to.
                fn compute(&self) -> PyResult<$out> {
                    self.0.compute().raise()
                }

                /// What it comes to, and the worksheet.
                fn explain(&self) -> PyResult<($out, Worksheet)> {
                    let (out, sheet) = self.0.explain().raise()?;
                    Ok((out, Worksheet(sheet)))
                }
            }
        }
    };
}

numbers! {
    /// Lines to strike, in the order of the work: each must be measured from what is there by then. It gives how many there are.
    ///
    /// >>> from seamwright.junction import LineOrder
    /// >>> face = {"name": "closure face", "side": "first", "datum": "junction-line", "from_datum": "-6 in", "from_line": "-6 in"}
    /// >>> screws = {"name": "screws", "side": "first", "datum": {"line": "closure face"}, "from_datum": "0 in", "from_line": "-6 in"}
    /// >>> LineOrder.from_dict({"lines": [face, screws]}).compute()
    /// 2
    LineOrder gives usize
}

numbers! {
    /// Tasks to be put in order by what must be in place before each. It gives the tasks by number, in the order in which they are done.
    ///
    /// >>> from seamwright.junction import WorkPlan
    /// >>> panels = {"does": "lay the panels", "gives": ["panels"], "needs": ["eave trim"]}
    /// >>> trim = {"does": "set the eave trim", "gives": ["eave trim"], "needs": ["deck"]}
    /// >>> WorkPlan.from_dict({"there": ["deck"], "tasks": [panels, trim]}).compute()
    /// [1, 0]
    WorkPlan gives Vec<usize>
}

part! {
    /// A step of the work at a junction.
    WorkStep(core_junction::WorkStep) in "seamwright.junction",
    shown step: &step.does;

    /// What is done.
    does(step) -> String = step.does.clone().into_owned();
    /// What is in place when it is done.
    gives(step) -> Vec<String> = step.gives.iter().map(|g| g.clone().into_owned()).collect();
    /// What had to be in place before it.
    needs(step) -> Vec<String> = step.needs.iter().map(|n| n.clone().into_owned()).collect();
    /// The lines that are struck for it just before, by number in the section's ``lines``.
    lines(step) -> Vec<usize> = step.lines.clone();
}
