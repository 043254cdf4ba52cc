//! The order of work at a junction, from what must be in place before what. Common practice, no published source.

use super::line_order::awaited;
use super::parts::{Datum, LayoutLine, Side, Solved};
use super::work_plan::{WorkPlan, WorkTask};
use super::work_tasks::{LOWER_EDGE, THERE, TOP_EDGE, Task, of_kind, of_section};
use crate::error::Error;
use crate::record::{Calculation, Recorder};
use crate::roof::LineKind;

/// A step of the work at a junction.
///
/// See [`SectionWork`] for an example.
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct WorkStep {
    /// What is done.
    pub does: String,
    /// What is in place when it is done.
    pub gives: Vec<String>,
    /// What had to be in place before it.
    pub needs: Vec<String>,
    /// The lines that are struck for it just before, by number in [`Solved::lines`].
    pub lines: Vec<usize>,
}

/// The order of work of a section: its tasks, and each line struck before the first task that it guides, once what it is measured from and what it lies on
/// are there.
///
/// A section of a kind without tasks of its own has its trims set in their order.
///
/// # Errors
/// Computing refuses a line that is measured from what is not there by then, as [`LineOrder`](super::LineOrder) does, and tasks or lines that wait for each other
/// ([`ErrorKind::Conflict`](crate::error::ErrorKind::Conflict)), each by its name with what it lacks.
///
/// ```
/// use seamwright::job::Job;
/// use seamwright::record::Calculation;
/// let packet = Job::from_json(include_bytes!(concat!(env!("CARGO_MANIFEST_DIR"), "/examples/demo_job.json")))?.compute()?;
/// let eave = packet.junction("eave 1").expect("the demo has eaves");
/// let at = |what: &str| eave.work.iter().position(|s| s.gives.iter().any(|g| g == what)).unwrap();
/// assert!(at("continuous cleat") < at("eave trim") && at("eave trim") < at("underlayment") && at("underlayment") < at("panels"));
/// // The flange's fasteners are measured from the trim's top edge: their line is struck when the trim is set, and not before.
/// let row = eave.section.lines.iter().position(|l| l.name == "deck flange's fasteners").unwrap();
/// assert!(eave.work.iter().position(|s| s.lines.contains(&row)).unwrap() > at("eave trim"));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy)]
pub struct SectionWork<'a> {
    /// The kind of line.
    pub kind: LineKind,
    /// Its section.
    pub solved: &'a Solved,
}

fn owned(names: &[&str]) -> Vec<String> {
    names.iter().map(|n| (*n).to_owned()).collect()
}

/// What a struck line is called among the things of a plan.
fn thing(side: Side, name: &str) -> String {
    format!("{name} on the {}", super::top_end::side_name(side))
}

impl SectionWork<'_> {
    /// The tasks; a kind without its own sets its trims in their order.
    fn tasks(&self) -> Vec<WorkTask> {
        let tasks = of_section(self.kind, self.solved);
        if tasks.is_empty() {
            let set = |(k, name): (usize, &str)| {
                let before = k.checked_sub(1).and_then(|b| self.solved.trims.get(b)).map(|t| t.name.to_string());
                WorkTask { does: format!("Set the {name}."), gives: owned(&[name]), needs: before.into_iter().collect() }
            };
            return self.solved.trims.iter().map(|t| t.name.as_ref()).enumerate().map(set).collect();
        }
        // What only a part gives that this section does not have is not waited for.
        let given = |need: &str| {
            let gives = |t: &Task| t.gives.contains(&need);
            THERE.contains(&need) || tasks.iter().any(gives) || !of_kind(self.kind).iter().any(gives)
        };
        let needs = |t: &Task| t.needs.iter().filter(|n| given(n)).map(|n| (*n).to_owned()).collect();
        let made = |t: &Task| WorkTask { does: t.does.to_owned(), gives: owned(t.gives), needs: needs(t) };
        tasks.iter().map(made).collect()
    }

    /// The first task that each line guides, itself or through a line measured from it; none where it guides nothing.
    fn guides(&self) -> Vec<Option<usize>> {
        let tasks = of_section(self.kind, self.solved);
        let lines = &self.solved.lines;
        let own = |l: &LayoutLine| tasks.iter().position(|t| t.lines.iter().any(|start| l.name.starts_with(start)));
        let mut out: Vec<Option<usize>> = lines.iter().map(own).collect();
        // From the last to the first: what is measured from a line is struck after it.
        for (i, line) in lines.iter().enumerate().rev() {
            let from = awaited(&line.datum).and_then(|name| lines.iter().take(i).position(|l| l.side == line.side && l.name == name));
            if let (Some(k), Some(task)) = (from, out.get(i).copied().flatten())
                && let Some(slot) = out.get_mut(k)
            {
                *slot = Some(slot.map_or(task, |own| own.min(task)));
            }
        }
        out
    }
}

impl Calculation for SectionWork<'_> {
    type Out = Vec<WorkStep>;

    fn title(&self) -> String {
        format!("order of work, {}", self.kind)
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<Vec<WorkStep>, Error> {
        self.solved.check_lines()?;
        let tasks = self.tasks();
        let guides = self.guides();
        let lines = &self.solved.lines;
        // A line waits for its datum and for all that its task waits for: that is what it is struck on.
        let line_task = |(i, line): (usize, &LayoutLine)| -> (Option<usize>, WorkTask) {
            let guided = guides.get(i).copied().flatten();
            let mut needs: Vec<String> = guided.and_then(|k| tasks.get(k)).map_or(Vec::new(), |t| t.needs.clone());
            needs.extend(awaited(&line.datum).map(|name| thing(line.side, name)));
            let edge = match line.datum {
                Datum::TrimTopEdge => Some(TOP_EDGE),
                Datum::TrimLowerEdge => Some(LOWER_EDGE),
                Datum::JunctionLine | Datum::Line(_) => None,
            };
            needs.extend(edge.filter(|edge| tasks.iter().any(|t| t.gives.iter().any(|g| g == edge))).map(str::to_owned));
            (guided, WorkTask { does: format!("strike {}", thing(line.side, &line.name)), gives: vec![thing(line.side, &line.name)], needs })
        };
        let struck: Vec<(Option<usize>, WorkTask)> = lines.iter().enumerate().map(line_task).collect();
        // Lines stand in the plan just before what they guide, and those that guide nothing at its end.
        let mut plan = WorkPlan { there: owned(THERE), tasks: Vec::with_capacity(tasks.len() + lines.len()) };
        let mut placed: Vec<usize> = Vec::with_capacity(lines.len());
        let mut put = |plan: &mut WorkPlan, of: Option<usize>| {
            for (i, (_, task)) in struck.iter().enumerate().filter(|(_, (guided, _))| *guided == of) {
                plan.tasks.push(task.clone());
                placed.push(i);
            }
        };
        let mut numbers = Vec::with_capacity(tasks.len());
        for (k, task) in tasks.iter().enumerate() {
            put(&mut plan, Some(k));
            let mut needs = task.needs.clone();
            needs.extend(struck.iter().filter(|(guided, _)| *guided == Some(k)).flat_map(|(_, t)| t.gives.clone()));
            numbers.push(plan.tasks.len());
            plan.tasks.push(WorkTask { needs, ..task.clone() });
        }
        put(&mut plan, None);
        let order = plan.run(r)?;
        let mut out = Vec::with_capacity(tasks.len());
        let mut before: Vec<usize> = Vec::new();
        let is_task = |at: usize| numbers.iter().position(|n| *n == at);
        let tasks_before = |at: usize| numbers.iter().filter(|n| **n < at).count();
        for at in order {
            match is_task(at) {
                Some(k) => {
                    if let Some(task) = tasks.get(k) {
                        let (does, gives, needs) = (task.does.clone(), task.gives.clone(), task.needs.clone());
                        out.push(WorkStep { does, gives, needs, lines: core::mem::take(&mut before) });
                    }
                }
                None => before.extend(placed.get(at - tasks_before(at))),
            }
        }
        if !before.is_empty() {
            out.push(WorkStep { does: "Strike the lines that are left.".into(), gives: Vec::new(), needs: Vec::new(), lines: before });
        }
        Ok(out)
    }
}

/// The steps of a junction of this kind, in order, with every part that it may have. Common practice, no published source; none for a line without a name.
///
/// ```
/// use seamwright::junction::order_of_work;
/// use seamwright::roof::LineKind;
/// assert!(order_of_work(LineKind::SteepToShallow).len() > 5);
/// assert!(order_of_work(LineKind::Unknown).is_empty());
/// ```
#[must_use]
pub fn order_of_work(kind: LineKind) -> Vec<&'static str> {
    let tasks = of_kind(kind);
    let plan =
        WorkPlan { there: owned(THERE), tasks: tasks.iter().map(|t| WorkTask { does: t.does.into(), gives: owned(t.gives), needs: owned(t.needs) }).collect() };
    // A test holds that every kind's tasks can be put in order.
    plan.compute().unwrap_or_default().into_iter().filter_map(|k| tasks.get(k).map(|t| t.does)).collect()
}
