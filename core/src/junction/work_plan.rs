//! An order of work from what must be in place before what.

use crate::error::{Error, ErrorKind, Faults};
use crate::record::{Calculation, Recorder, Source, Step};
use std::collections::BTreeMap;

/// A task of a plan.
///
/// ```
/// use seamwright::junction::WorkTask;
/// let lay = WorkTask { does: "lay the panels".into(), gives: vec!["panels".into()], needs: vec!["hook strip".into()] };
/// assert_eq!(lay.needs, ["hook strip"]);
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct WorkTask {
    /// What is done.
    pub does: String,
    /// What is in place when it is done.
    #[cfg_attr(feature = "serde", serde(default))]
    pub gives: Vec<String>,
    /// What must be in place before.
    #[cfg_attr(feature = "serde", serde(default))]
    pub needs: Vec<String>,
}

/// Tasks to be put in order.
///
/// A task comes as soon as what it needs is in place; of several that could come next, the one that is listed first does. What several tasks give is in place
/// when all of them are done.
///
/// # Errors
/// Computing refuses a task that needs what no task gives and what is not there ([`ErrorKind::Missing`]), and tasks that wait for each other
/// ([`ErrorKind::Conflict`]); each with the task, by name, and what it lacks.
///
/// ```
/// use seamwright::junction::{WorkPlan, WorkTask};
/// use seamwright::record::Calculation;
/// let task = |does: &str, gives: &str, needs: &[&str]| WorkTask { does: does.into(), gives: vec![gives.into()], needs: needs.iter().map(|n| (*n).into()).collect() };
/// let plan = WorkPlan {
///     there: vec!["deck".into()],
///     tasks: vec![task("lay the panels", "panels", &["eave trim"]), task("set the eave trim", "eave trim", &["deck"])],
/// };
/// assert_eq!(plan.compute()?, [1, 0]);
/// let e = WorkPlan { there: vec![], tasks: vec![task("rivet the cap", "rivets", &["cap"])] }.compute().unwrap_err();
/// assert_eq!((e.path(), e.value()), ("tasks[0].needs[0]", Some("cap")));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct WorkPlan {
    /// What is there before any task.
    #[cfg_attr(feature = "serde", serde(default))]
    pub there: Vec<String>,
    /// The tasks.
    pub tasks: Vec<WorkTask>,
}

impl Calculation for WorkPlan {
    type Out = Vec<usize>;

    fn title(&self) -> String {
        "order of work".into()
    }

    /// Gives the tasks by number, in the order in which they are done.
    fn run<R: Recorder>(&self, r: &mut R) -> Result<Vec<usize>, Error> {
        // How many tasks are still to give each thing.
        let mut awaited: BTreeMap<&str, usize> = self.there.iter().map(|t| (t.as_str(), 0)).collect();
        for thing in self.tasks.iter().flat_map(|t| &t.gives) {
            *awaited.entry(thing).or_insert(0) += 1;
        }
        let mut faults = Faults::default();
        for (i, task) in self.tasks.iter().enumerate() {
            for (j, need) in task.needs.iter().enumerate().filter(|(_, n)| !awaited.contains_key(n.as_str())) {
                let error = Error::new(ErrorKind::Missing, format!("\"{}\" needs what nothing puts in place", task.does)).at(format!("tasks[{i}].needs[{j}]"));
                let known = awaited.keys().copied().collect::<Vec<_>>().join(", ");
                faults.add(error.value_of(need).accepts(known).cured_by("a task that gives it"));
            }
        }
        core::mem::take(&mut faults).check()?;
        let mut done = vec![false; self.tasks.len()];
        let mut out: Vec<usize> = Vec::with_capacity(self.tasks.len());
        while out.len() < self.tasks.len() {
            let lacks = |task: &WorkTask| task.needs.iter().position(|n| awaited.get(n.as_str()).is_some_and(|left| *left > 0));
            let next = self.tasks.iter().zip(&done).position(|(task, done)| !*done && lacks(task).is_none());
            let Some(k) = next else {
                let waiting = self.tasks.iter().zip(&done).enumerate().filter(|(_, (_, done))| !**done);
                for (i, (task, _)) in waiting {
                    let j = lacks(task).unwrap_or_default();
                    let error = Error::new(ErrorKind::Conflict, format!("\"{}\" waits for what waits for it", task.does)).at(format!("tasks[{i}].needs[{j}]"));
                    faults.add(error.value_of(task.needs.get(j).map_or("", String::as_str)).accepts("tasks of which one can come first"));
                }
                return faults.check().map(|()| out);
            };
            let Some(task) = self.tasks.get(k) else { break };
            for thing in &task.gives {
                if let Some(left) = awaited.get_mut(thing.as_str()) {
                    *left = left.saturating_sub(1);
                }
            }
            if let Some(d) = done.get_mut(k) {
                *d = true;
            }
            out.push(k);
            r.step(|| {
                let needs = if task.needs.is_empty() { "nothing".to_owned() } else { task.needs.join(", ") };
                Step::new(format!("{}. {}", out.len(), task.does)).with("needs", needs).gives(task.gives.join(", ")).source(Source::CommonPractice)
            });
        }
        Ok(out)
    }
}
