//! Calculations that can show their working.
//!
//! A calculation has one code path, [`Calculation::run`], generic over its recorder; so computing and explaining cannot
//! disagree. With the recorder [`Off`] the steps are closures that are never called, and cost nothing.

use super::Source;
use crate::error::{Error, Faults};
use core::fmt;
use std::borrow::Cow;

/// One step, as a foreman would check it by hand.
///
/// ```
/// use seamwright::record::{Source, Step};
/// let s = Step::new("slope factor").formula("sqrt(1 + (rise/run)^2)").with("rise/run", 0.5).gives(1.118034).source(Source::geometry());
/// assert_eq!(s.to_string(), "slope factor = sqrt(1 + (rise/run)^2) with rise/run = 0.5 = 1.118034 (geometry [derived])");
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct Step {
    /// What is computed.
    pub what: Cow<'static, str>,
    /// The formula in words and symbols.
    pub formula: Cow<'static, str>,
    /// The values put in, by symbol.
    pub with: Vec<(Cow<'static, str>, String)>,
    /// The result.
    pub result: String,
    /// The source of the rule, where it is more than arithmetic.
    pub source: Option<Source>,
}

impl Step {
    /// A step that computes this.
    #[must_use]
    pub fn new(what: impl Into<Cow<'static, str>>) -> Self {
        Step { what: what.into(), formula: Cow::Borrowed(""), with: Vec::new(), result: String::new(), source: None }
    }

    /// The formula.
    #[must_use]
    pub fn formula(mut self, formula: impl Into<Cow<'static, str>>) -> Self {
        self.formula = formula.into();
        self
    }

    /// One value put in.
    #[must_use]
    pub fn with(mut self, symbol: impl Into<Cow<'static, str>>, value: impl fmt::Display) -> Self {
        self.with.push((symbol.into(), value.to_string()));
        self
    }

    /// The result.
    #[must_use]
    pub fn gives(mut self, result: impl fmt::Display) -> Self {
        self.result = result.to_string();
        self
    }

    /// The source of the rule.
    #[must_use]
    pub fn source(mut self, source: Source) -> Self {
        self.source = Some(source);
        self
    }
}

impl fmt::Display for Step {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.what)?;
        if !self.formula.is_empty() {
            write!(f, " = {}", self.formula)?;
        }
        for (i, (symbol, value)) in self.with.iter().enumerate() {
            write!(f, "{} {symbol} = {value}", if i == 0 { " with" } else { "," })?;
        }
        if !self.result.is_empty() {
            write!(f, " = {}", self.result)?;
        }
        if let Some(source) = &self.source {
            write!(f, " ({source})")?;
        }
        Ok(())
    }
}

/// A step, or a part with steps of its own.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
pub enum Entry {
    /// One step.
    Step(Step),
    /// A nested part.
    Part(Worksheet),
}

/// The recorded working of a calculation.
#[derive(Debug, Clone, PartialEq, Default)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct Worksheet {
    /// What the sheet, or this part of it, works out.
    pub title: String,
    /// Steps and parts in the order of the work.
    pub entries: Vec<Entry>,
}

impl Worksheet {
    /// An empty sheet.
    #[must_use]
    pub fn new(title: impl Into<String>) -> Self {
        Worksheet { title: title.into(), entries: Vec::new() }
    }

    /// Every step of this sheet and of its parts, in order.
    #[must_use]
    pub fn steps(&self) -> Vec<&Step> {
        let mut out = Vec::new();
        for e in &self.entries {
            match e {
                Entry::Step(s) => out.push(s),
                Entry::Part(p) => out.extend(p.steps()),
            }
        }
        out
    }
}

/// What a calculation tells its steps to.
pub trait Recorder: Sized {
    /// Records a step. The closure is called only if something is recorded.
    fn step(&mut self, make: impl FnOnce() -> Step);

    /// Records what `run` tells as a nested part. The title closure is called only if something is recorded.
    ///
    /// # Errors
    /// Those of `run`.
    fn part<T>(&mut self, title: impl FnOnce() -> String, run: impl FnOnce(&mut Self) -> Result<T, Error>) -> Result<T, Error>;
}

/// The recorder that records nothing.
#[derive(Debug, Clone, Copy, Default)]
pub struct Off;

impl Recorder for Off {
    #[inline(always)]
    fn step(&mut self, _make: impl FnOnce() -> Step) {}

    #[inline(always)]
    fn part<T>(&mut self, _title: impl FnOnce() -> String, run: impl FnOnce(&mut Self) -> Result<T, Error>) -> Result<T, Error> {
        run(self)
    }
}

impl Recorder for Worksheet {
    fn step(&mut self, make: impl FnOnce() -> Step) {
        self.entries.push(Entry::Step(make()));
    }

    fn part<T>(&mut self, title: impl FnOnce() -> String, run: impl FnOnce(&mut Self) -> Result<T, Error>) -> Result<T, Error> {
        let mut part = Worksheet::new(title());
        let out = run(&mut part);
        self.entries.push(Entry::Part(part));
        out
    }
}

/// A calculation with one generic code path.
///
/// ```
/// use seamwright::error::Error;
/// use seamwright::record::{Calculation, Recorder, Step};
/// struct Double(f64);
/// impl Calculation for Double {
///     type Out = f64;
///     fn title(&self) -> String { "twice".into() }
///     fn run<R: Recorder>(&self, r: &mut R) -> Result<f64, Error> {
///         let out = 2.0 * self.0;
///         r.step(|| Step::new("twice").formula("2 x").with("x", self.0).gives(out));
///         Ok(out)
///     }
/// }
/// assert_eq!(Double(3.0).compute().unwrap(), 6.0);
/// let (out, sheet) = Double(3.0).explain().unwrap();
/// assert_eq!((out, sheet.steps().len()), (6.0, 1));
/// ```
pub trait Calculation {
    /// What is computed.
    type Out;

    /// The title of the worksheet.
    fn title(&self) -> String;

    /// The only code path: computes, telling each step to the recorder.
    ///
    /// # Errors
    /// Those of the calculation.
    #[doc(hidden)]
    fn run<R: Recorder>(&self, r: &mut R) -> Result<Self::Out, Error>;

    /// Computes without recording.
    ///
    /// # Errors
    /// Those of the calculation.
    fn compute(&self) -> Result<Self::Out, Error> {
        self.run(&mut Off)
    }

    /// Computes and records the working.
    ///
    /// # Errors
    /// Those of the calculation.
    fn explain(&self) -> Result<(Self::Out, Worksheet), Error> {
        let mut sheet = Worksheet::new(self.title());
        let out = self.run(&mut sheet)?;
        Ok((out, sheet))
    }
}

/// Computes many of one calculation in one call; the results stand in their order.
///
/// # Errors
/// Those of every one that is refused, each at its number: `[17].detail.fold`.
///
/// ```
/// use seamwright::movement::LengthChange;
/// use seamwright::record::compute_all;
/// use seamwright::units::{Expansion, Length, TemperatureDifference};
/// let (expansion, difference) = (Expansion::parse("12e-6 /K")?, TemperatureDifference::parse("50 K")?);
/// let of = |length| Length::parse(length).map(|length| LengthChange { expansion, length, difference });
/// assert_eq!(compute_all(&[of("10 m")?, of("20 m")?])?, [Length::parse("6 mm")?, Length::parse("12 mm")?]);
/// assert_eq!(compute_all(&[of("10 m")?, of("-1 m")?]).unwrap_err().path(), "[1].length");
/// # Ok::<(), seamwright::error::Error>(())
/// ```
pub fn compute_all<C: Calculation>(all: &[C]) -> Result<Vec<C::Out>, Error> {
    let mut faults = Faults::default();
    let mut out = Vec::with_capacity(all.len());
    for (i, one) in all.iter().enumerate() {
        out.extend(faults.keep(one.compute().map_err(|e| e.under(&format!("[{i}]")))));
    }
    faults.check()?;
    Ok(out)
}
