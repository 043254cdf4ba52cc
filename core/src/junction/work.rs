//! The order of work at a junction, from what must be in place before what. Common practice, no published source.

use super::line_order::awaited;
use super::parts::{Datum, LayoutLine, Side, Solved};
use super::section_kind::SectionKind;
use super::work_plan::{Numbered, WorkPlan, WorkTask};
use super::work_tasks::{LOWER_EDGE, THERE, TOP_EDGE, Task, of_kind, of_section};
use crate::error::{Error, ErrorKind};
use crate::record::{Calculation, Recorder};
use std::borrow::Cow;

/// A step of the work at a junction.
///
/// See [`SectionWork`] for an example.
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct WorkStep {
    /// What is done.
    pub does: Cow<'static, str>,
    /// What is in place when it is done.
    pub gives: Vec<Cow<'static, str>>,
    /// What had to be in place before it.
    pub needs: Vec<Cow<'static, str>>,
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
    /// What it is of.
    pub kind: SectionKind,
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

/// A task of this section: of its kind, or one that sets a trim.
struct Made {
    does: Cow<'static, str>,
    gives: Vec<Cow<'static, str>>,
    needs: Vec<Cow<'static, str>>,
}

/// What stands in the plan: a line by its number, struck for a task if it guides one, or a task by its own.
#[derive(Clone, Copy)]
enum Entry {
    Line(usize, Option<usize>),
    Task(usize),
}

impl SectionWork<'_> {
    /// The tasks; a kind without its own sets its trims in their order.
    fn tasks(&self, own: &[Task]) -> Vec<Made> {
        if own.is_empty() {
            let set = |(k, name): (usize, &Cow<'static, str>)| {
                let before = k.checked_sub(1).and_then(|b| self.solved.trims.get(b)).map(|t| t.name.clone());
                Made { does: format!("Set the {name}.").into(), gives: vec![name.clone()], needs: before.into_iter().collect() }
            };
            return self.solved.trims.iter().map(|t| &t.name).enumerate().map(set).collect();
        }
        // What only a part gives that this section does not have is not waited for.
        let given = |need: &&'static str| {
            let gives = |t: &Task| t.gives.contains(need);
            THERE.contains(need) || own.iter().any(gives) || !of_kind(self.kind).iter().any(gives)
        };
        let made = |t: &Task| Made {
            does: t.does.into(),
            gives: t.gives.iter().map(|g| Cow::Borrowed(*g)).collect(),
            needs: t.needs.iter().copied().filter(given).map(Cow::Borrowed).collect(),
        };
        own.iter().map(made).collect()
    }

    /// The line that this one is measured from; none where it is not one struck before it.
    fn struck_on(&self, i: usize, line: &LayoutLine) -> Option<usize> {
        let name = awaited(&line.datum)?;
        self.solved.lines.iter().take(i).position(|l| l.side == line.side && l.name == name)
    }

    /// The first task that each line guides, itself or through a line measured from it; none where it guides nothing.
    fn guides(&self, own: &[Task]) -> Vec<Option<usize>> {
        let lines = &self.solved.lines;
        let first = |l: &LayoutLine| own.iter().position(|t| t.lines.iter().any(|start| l.name.starts_with(start)));
        let mut out: Vec<Option<usize>> = lines.iter().map(first).collect();
        // From the last to the first: what is measured from a line is struck after it.
        for (i, line) in lines.iter().enumerate().rev() {
            if let (Some(task), Some(k)) = (out.get(i).copied().flatten(), self.struck_on(i, line))
                && let Some(slot) = out.get_mut(k)
            {
                *slot = Some(slot.map_or(task, |own| own.min(task)));
            }
        }
        out
    }

    /// An entry in words: for a worksheet, and for what cannot be put in order.
    fn spelled(&self, tasks: &[Made], guides: &[Option<usize>], entry: Entry) -> WorkTask {
        let owned = |all: &[Cow<'static, str>]| all.iter().map(|n| n.clone().into_owned()).collect::<Vec<String>>();
        let lines = &self.solved.lines;
        match entry {
            Entry::Line(i, guided) => {
                let Some(line) = lines.get(i) else { return WorkTask { does: String::new(), gives: Vec::new(), needs: Vec::new() } };
                let mut needs = guided.and_then(|k| tasks.get(k)).map_or(Vec::new(), |t| owned(&t.needs));
                needs.extend(awaited(&line.datum).map(|name| thing(line.side, name)));
                needs.extend(edge(line, tasks).map(str::to_owned));
                WorkTask { does: format!("strike {}", thing(line.side, &line.name)), gives: vec![thing(line.side, &line.name)], needs }
            }
            Entry::Task(k) => {
                let Some(task) = tasks.get(k) else { return WorkTask { does: String::new(), gives: Vec::new(), needs: Vec::new() } };
                let mut needs = owned(&task.needs);
                needs.extend(lines.iter().zip(guides).filter(|(_, guided)| **guided == Some(k)).map(|(l, _)| thing(l.side, &l.name)));
                WorkTask { does: task.does.clone().into_owned(), gives: owned(&task.gives), needs }
            }
        }
    }
}

/// The edge of a trim that a line is measured from, where a task puts it in place.
fn edge(line: &LayoutLine, tasks: &[Made]) -> Option<&'static str> {
    let edge = match line.datum {
        Datum::TrimTopEdge => TOP_EDGE,
        Datum::TrimLowerEdge => LOWER_EDGE,
        Datum::JunctionLine | Datum::Line(_) => return None,
    };
    tasks.iter().any(|t| t.gives.iter().any(|g| g == edge)).then_some(edge)
}

impl Calculation for SectionWork<'_> {
    type Out = Vec<WorkStep>;

    fn title(&self) -> String {
        format!("order of work, {}", self.kind)
    }

    fn run<R: Recorder>(&self, r: &mut R) -> Result<Vec<WorkStep>, Error> {
        self.solved.check_lines()?;
        let own = of_section(self.kind, self.solved);
        let (tasks, guides) = (self.tasks(&own), self.guides(&own));
        let lines = &self.solved.lines;
        // Lines stand in the plan just before what they guide, and those that guide nothing at its end.
        let mut entries = Vec::with_capacity(tasks.len() + lines.len());
        for of in (0..tasks.len()).map(Some).chain([None]) {
            entries.extend(guides.iter().enumerate().filter(|(_, guided)| **guided == of).map(|(i, _)| Entry::Line(i, of)));
            entries.extend(of.map(Entry::Task));
        }
        // Things are numbers: what tasks give, and behind them the lines.
        let mut things: Vec<&str> = THERE.to_vec();
        for given in tasks.iter().flat_map(|t| &t.gives) {
            if !things.contains(&&**given) {
                things.push(given);
            }
        }
        let number = |name: &str| things.iter().position(|t| *t == name).unwrap_or(usize::MAX);
        let struck = |i: usize| things.len() + i;
        let needs: Vec<Vec<usize>> = tasks.iter().map(|t| t.needs.iter().map(|n| number(n)).collect()).collect();
        let needs_of = |k: usize| needs.get(k).into_iter().flatten().copied();
        let mut plan = Numbered::with_things(things.len() + lines.len());
        for entry in &entries {
            match *entry {
                // A line waits for its datum and for all that its task waits for: that is what it is struck on.
                Entry::Line(i, guided) => {
                    let line = lines.get(i);
                    let datum = line.and_then(|l| self.struck_on(i, l)).map(struck);
                    let edge = line.and_then(|l| edge(l, &tasks)).map(number);
                    plan.add([struck(i)].into_iter(), guided.into_iter().flat_map(needs_of).chain(datum).chain(edge));
                }
                Entry::Task(k) => {
                    let guiding = guides.iter().enumerate().filter(|(_, guided)| **guided == Some(k)).map(|(i, _)| struck(i));
                    let gives = tasks.get(k).into_iter().flat_map(|t| &t.gives).map(|g| number(g));
                    plan.add(gives, needs_of(k).chain(guiding));
                }
            }
        }
        let (order, _) = plan.in_order();
        if order.len() < entries.len() {
            // The same plan in words says what waits for what.
            let there = THERE.iter().map(|t| (*t).to_owned()).collect();
            let plan = WorkPlan { there, tasks: entries.iter().map(|e| self.spelled(&tasks, &guides, *e)).collect() };
            plan.compute()?;
            return Err(Error::new(ErrorKind::Internal, "work that can be put in order was not"));
        }
        let mut out = Vec::with_capacity(tasks.len() + 1);
        let mut before: Vec<usize> = Vec::new();
        for (place, entry) in (1_usize..).zip(order.iter().filter_map(|at| entries.get(*at))) {
            r.step(|| self.spelled(&tasks, &guides, *entry).step(place));
        }
        let mut tasks_out: Vec<Option<Made>> = tasks.into_iter().map(Some).collect();
        for entry in order.iter().filter_map(|at| entries.get(*at)) {
            match *entry {
                Entry::Line(i, _) => before.push(i),
                Entry::Task(k) => {
                    if let Some(Made { does, gives, needs }) = tasks_out.get_mut(k).and_then(Option::take) {
                        out.push(WorkStep { does, gives, needs, lines: core::mem::take(&mut before) });
                    }
                }
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
/// use seamwright::junction::{SectionKind, order_of_work};
/// use seamwright::roof::LineKind;
/// assert!(order_of_work(LineKind::SteepToShallow).len() > 5);
/// assert!(order_of_work(SectionKind::Coping)[0].starts_with("Build the wall's top"));
/// assert!(order_of_work(LineKind::Unknown).is_empty());
/// ```
#[must_use]
pub fn order_of_work(kind: impl Into<SectionKind>) -> Vec<&'static str> {
    let tasks = of_kind(kind.into());
    let plan =
        WorkPlan { there: owned(THERE), tasks: tasks.iter().map(|t| WorkTask { does: t.does.into(), gives: owned(t.gives), needs: owned(t.needs) }).collect() };
    // A test holds that every kind's tasks can be put in order.
    plan.compute().unwrap_or_default().into_iter().filter_map(|k| tasks.get(k).map(|t| t.does)).collect()
}
