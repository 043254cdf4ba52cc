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
        let mut things: BTreeMap<&str, usize> = BTreeMap::new();
        for thing in self.there.iter().chain(self.tasks.iter().flat_map(|t| &t.gives)) {
            let next = things.len();
            things.entry(thing).or_insert(next);
        }
        let mut faults = Faults::default();
        for (i, task) in self.tasks.iter().enumerate() {
            for (j, need) in task.needs.iter().enumerate().filter(|(_, n)| !things.contains_key(n.as_str())) {
                let error = Error::new(ErrorKind::Missing, format!("\"{}\" needs what nothing puts in place", task.does)).at(format!("tasks[{i}].needs[{j}]"));
                let known = things.keys().copied().collect::<Vec<_>>().join(", ");
                faults.add(error.value_of(need).accepts(known).cured_by("a task that gives it"));
            }
        }
        core::mem::take(&mut faults).check()?;
        let mut numbered = Numbered::with_things(things.len());
        let number = |name: &String| things.get(name.as_str()).copied().unwrap_or_default();
        for task in &self.tasks {
            numbered.add(task.gives.iter().map(number), task.needs.iter().map(number));
        }
        let (order, left) = numbered.in_order();
        for (i, task) in self.tasks.iter().enumerate().filter(|(i, _)| !order.contains(i)) {
            let j = task.needs.iter().position(|n| left.get(number(n)).is_some_and(|left| *left > 0)).unwrap_or_default();
            let error = Error::new(ErrorKind::Conflict, format!("\"{}\" waits for what waits for it", task.does)).at(format!("tasks[{i}].needs[{j}]"));
            faults.add(error.value_of(task.needs.get(j).map_or("", String::as_str)).accepts("tasks of which one can come first"));
        }
        faults.check()?;
        for (place, task) in (1_usize..).zip(order.iter().filter_map(|k| self.tasks.get(*k))) {
            r.step(|| task.step(place));
        }
        Ok(order)
    }
}

impl WorkTask {
    /// The step of a worksheet in which it is done.
    pub(super) fn step(&self, place: usize) -> Step {
        let needs = if self.needs.is_empty() { "nothing".to_owned() } else { self.needs.join(", ") };
        Step::new(format!("{place}. {}", self.does)).with("needs", needs).gives(self.gives.join(", ")).source(Source::CommonPractice)
    }
}

/// Tasks over things that are numbers, put in order: what [`WorkPlan`] and the work at a section are once their names are looked up.
#[derive(Debug)]
pub(super) struct Numbered {
    /// How many tasks are still to give each thing.
    left: Vec<usize>,
    /// What the tasks give and need, one after the other.
    things: Vec<usize>,
    /// Where in them each task's own begin, what it needs among them, and their end.
    tasks: Vec<(usize, usize, usize)>,
}

impl Numbered {
    pub(super) fn with_things(count: usize) -> Numbered {
        Numbered { left: vec![0; count], things: Vec::with_capacity(64), tasks: Vec::with_capacity(32) }
    }

    /// One more task. A thing beyond the count is never there.
    pub(super) fn add(&mut self, gives: impl Iterator<Item = usize>, needs: impl Iterator<Item = usize>) {
        let start = self.things.len();
        self.things.extend(gives);
        let needed = self.things.len();
        for thing in self.things.get(start..).unwrap_or_default() {
            if let Some(left) = self.left.get_mut(*thing) {
                *left += 1;
            }
        }
        self.things.extend(needs);
        self.tasks.push((start, needed, self.things.len()));
    }

    /// The tasks by number in the order in which they are done, as far as one can come next; and how many are still to give each thing.
    pub(super) fn in_order(mut self) -> (Vec<usize>, Vec<usize>) {
        let mut waiting: Vec<usize> = (0..self.tasks.len()).collect();
        let mut out = Vec::with_capacity(waiting.len());
        let ready = |numbered: &Numbered, task: usize| {
            let (_, needed, end) = numbered.tasks.get(task).copied().unwrap_or_default();
            numbered.things.get(needed..end).unwrap_or_default().iter().all(|t| numbered.left.get(*t) == Some(&0))
        };
        while let Some(at) = waiting.iter().position(|task| ready(&self, *task)) {
            let task = waiting.remove(at);
            let (start, needed, _) = self.tasks.get(task).copied().unwrap_or_default();
            for thing in self.things.get(start..needed).unwrap_or_default() {
                if let Some(left) = self.left.get_mut(*thing) {
                    *left = left.saturating_sub(1);
                }
            }
            out.push(task);
        }
        (out, self.left)
    }
}
