//! The two edges of a profile: raw, hemmed, or wired. Each edge but the raw one is a short list of folds.

use super::leg::Direction;
use super::nominal_seam::{self, NominalSeam};
use super::rule::BendRule;
use super::size::{BendMm, to_length};
use crate::error::{Error, ErrorKind, Faults};
use crate::num;
use crate::record::{Source, Step};
use crate::units::{Angle, BendAngle, Length};

/// How an edge of the profile is finished.
///
/// A hem is a bend of 180 degrees, or more, and a return. Its width is measured from the outside of the fold to the sheet's edge, and the
/// leg that it lies on is measured to the outside of the fold ([`LegEnd::OuterTangent`](super::LegEnd::OuterTangent)) or to the
/// tangent line. A hem folded up lies on the upper face, at either edge.
///
/// With R the inside radius, T the thickness and K the neutral-axis factor, what an edge takes beyond the outside of its fold is by geometry, and
/// nominally (under [`BendRule::SharpCorner`]):
///
/// | edge | folds | nominal |
/// |---|---|---|
/// | `ClosedHem`, `OpenHem` | 180 degrees; R is 0, or half the gap | W |
/// | `DoubleHem` | 180 degrees round one layer (R = T/2), then 180 degrees flat (R = 0), the lip as long as what it lies on | 2 W |
/// | `TeardropHem` | 180 degrees and the angle by which the return closes onto the leg | none is published: refused |
/// | `WiredEdge` | round the wire, until the sheet's edge touches the leg | 2 1/2 diameters |
///
/// ```
/// use seamwright::trim::{Direction, Edge};
/// use seamwright::units::Length;
/// let stiff = Edge::closed_hem(Length::parse("1/2\"")?, Direction::Down);
/// let hook = Edge::open_hem(Length::parse("1/2\"")?, Length::parse("5/32\"")?, Direction::Down);
/// assert_ne!(stiff, hook);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Default)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case", deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub enum Edge {
    /// As cut.
    #[default]
    Raw,
    /// Folded flat on itself: inside radius 0.
    ClosedHem {
        /// From the outside of the fold to the sheet's edge.
        width: Length,
        /// The face that it lies on: up is the upper.
        direction: Direction,
        /// A bend rule for the fold in place of the profile's.
        #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
        rule: Option<Box<BendRule>>,
    },
    /// Folded back with a gap, to hook a cleat: inside radius half the gap.
    OpenHem {
        /// From the outside of the fold to the sheet's edge.
        width: Length,
        /// Clear between the two layers.
        gap: Length,
        /// The face that it lies on: up is the upper.
        direction: Direction,
        /// A bend rule for the fold in place of the profile's.
        #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
        rule: Option<Box<BendRule>>,
    },
    /// Folded back past 180 degrees, so that the end of the return touches the leg, or clears it by a gap.
    TeardropHem {
        /// Radius of the inside face.
        inside_radius: Length,
        /// The flat part of the return, from the tangent line to the sheet's edge.
        return_flat: Length,
        /// Clear between the end of the return and the leg; 0 where it touches.
        gap: Length,
        /// The face that it lies on: up is the upper.
        direction: Direction,
        /// A bend rule for the fold in place of the profile's.
        #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
        rule: Option<Box<BendRule>>,
    },
    /// Folded over twice, the sheet's edge inside: three layers. The lip, the layer inside, is as long as the flat part that it lies on.
    DoubleHem {
        /// From the outside of the one fold to the outside of the other.
        width: Length,
        /// The face that it lies on: up is the upper.
        direction: Direction,
        /// A bend rule for both folds in place of the profile's.
        #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
        rule: Option<Box<BendRule>>,
    },
    /// Curled round a wire until the sheet's edge touches the leg.
    WiredEdge {
        /// Diameter of the wire.
        wire: Length,
        /// The face that the wire lies on: up is the upper.
        direction: Direction,
        /// A bend rule for the curl in place of the profile's.
        #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
        rule: Option<Box<BendRule>>,
    },
}

impl Edge {
    /// A closed hem under the profile's own bend rule.
    #[must_use]
    pub const fn closed_hem(width: Length, direction: Direction) -> Edge {
        Edge::ClosedHem { width, direction, rule: None }
    }

    /// An open hem under the profile's own bend rule.
    #[must_use]
    pub const fn open_hem(width: Length, gap: Length, direction: Direction) -> Edge {
        Edge::OpenHem { width, gap, direction, rule: None }
    }

    /// A teardrop hem under the profile's own bend rule.
    ///
    /// The return closes by the angle at which its end is the gap away from the leg; touching, that is `2 atan(R/L)`, L the flat part.
    ///
    /// ```
    /// use seamwright::trim::{BendRule, Direction, Edge, Face, NeutralFactor, Profile};
    /// use seamwright::units::Length;
    /// // Flat part and radius alike: closed by 90 degrees more.
    /// let drop = Edge::teardrop_hem(Length::mils(125), Length::mils(125), Length::ZERO, Direction::Up);
    /// let p = Profile::builder(Length::mils(24)).painted(Face::Lower).leg("face", Length::inches(2)).end(drop).build()?;
    /// let flat = p.unfold(&BendRule::neutral_axis(NeutralFactor::new(0.4)?))?;
    /// assert!((flat.bends()[0].angle.degrees() - 270.0).abs() < 1e-9);
    /// # Ok::<(), seamwright::error::Error>(())
    /// ```
    #[must_use]
    pub const fn teardrop_hem(inside_radius: Length, return_flat: Length, gap: Length, direction: Direction) -> Edge {
        Edge::TeardropHem { inside_radius, return_flat, gap, direction, rule: None }
    }

    /// A double hem under the profile's own bend rule.
    ///
    /// ```
    /// use seamwright::trim::{BendRule, Direction, Edge, Face, Profile};
    /// use seamwright::units::Length;
    /// let hem = Edge::double_hem(Length::parse("1/4\"")?, Direction::Down);
    /// let p = Profile::builder(Length::mils(24)).painted(Face::Upper).leg("face", Length::inches(3)).end(hem).build()?;
    /// // NAVEDTRA 14251, figure 2-55: the allowance of a double hem is twice its width.
    /// assert_eq!(p.girth(&BendRule::SharpCorner)?, Length::parse("3 1/2\"")?);
    /// # Ok::<(), seamwright::error::Error>(())
    /// ```
    #[must_use]
    pub const fn double_hem(width: Length, direction: Direction) -> Edge {
        Edge::DoubleHem { width, direction, rule: None }
    }

    /// A wired edge under the profile's own bend rule.
    ///
    /// ```
    /// use seamwright::trim::{BendRule, Direction, Edge, Face, Profile};
    /// use seamwright::units::Length;
    /// let bead = Edge::wired_edge(Length::parse("1/8\"")?, Direction::Up);
    /// let p = Profile::builder(Length::mils(24)).painted(Face::Upper).leg("side", Length::inches(6)).end(bead).build()?;
    /// // NAVEDTRA 14251, figure 2-56: 2 1/2 diameters, here 5/16 in.
    /// assert_eq!(p.girth(&BendRule::SharpCorner)?, Length::parse("6 5/16\"")?);
    /// # Ok::<(), seamwright::error::Error>(())
    /// ```
    #[must_use]
    pub const fn wired_edge(wire: Length, direction: Direction) -> Edge {
        Edge::WiredEdge { wire, direction, rule: None }
    }

    /// The same edge with a bend rule of its own; a raw edge stays as it is.
    #[must_use]
    pub fn with_rule(mut self, own: BendRule) -> Edge {
        match &mut self {
            Edge::Raw => {}
            Edge::ClosedHem { rule, .. }
            | Edge::OpenHem { rule, .. }
            | Edge::TeardropHem { rule, .. }
            | Edge::DoubleHem { rule, .. }
            | Edge::WiredEdge { rule, .. } => *rule = Some(Box::new(own)),
        }
        self
    }

    /// Its name in text.
    #[must_use]
    pub const fn name(&self) -> &'static str {
        match self {
            Edge::Raw => "raw",
            Edge::ClosedHem { .. } => "closed-hem",
            Edge::OpenHem { .. } => "open-hem",
            Edge::TeardropHem { .. } => "teardrop-hem",
            Edge::DoubleHem { .. } => "double-hem",
            Edge::WiredEdge { .. } => "wired-edge",
        }
    }

    /// Whether it is as cut.
    #[must_use]
    pub const fn is_raw(&self) -> bool {
        matches!(self, Edge::Raw)
    }

    /// The bend rule of its own, where it has one.
    #[must_use]
    pub fn rule(&self) -> Option<&BendRule> {
        match self {
            Edge::Raw => None,
            Edge::ClosedHem { rule, .. }
            | Edge::OpenHem { rule, .. }
            | Edge::TeardropHem { rule, .. }
            | Edge::DoubleHem { rule, .. }
            | Edge::WiredEdge { rule, .. } => rule.as_deref(),
        }
    }

    /// The field that says how long its return is.
    pub(super) const fn length_field(&self) -> &'static str {
        match self {
            Edge::TeardropHem { .. } => "return_flat",
            Edge::WiredEdge { .. } => "wire",
            _ => "width",
        }
    }

    /// How many folds it has.
    #[inline]
    pub(super) const fn fold_count(&self) -> usize {
        match self {
            Edge::Raw => 0,
            Edge::DoubleHem { .. } => 2,
            _ => 1,
        }
    }

    /// Whether [`Edge::check`] finds nothing that the walk itself would not show.
    #[inline]
    pub(super) fn is_sound(&self, thickness: Length) -> bool {
        match self {
            Edge::Raw | Edge::ClosedHem { .. } => true,
            Edge::OpenHem { gap, .. } => gap.is_positive(),
            _ => self.check(thickness).is_ok(),
        }
    }

    /// The folds from the leg outwards, for a sound edge. Half a gap of an odd number of picometres loses half a picometre.
    #[inline]
    pub(super) fn folds(&self, thickness: Length) -> [Option<Fold<'_>>; 2] {
        let hem = |width: Length, inside_radius: Length, direction: Direction, rule| Fold {
            width,
            // What is not in range here is refused where the return is swallowed.
            reach: Length::from_pm(width.pm().saturating_sub(inside_radius.pm()).saturating_sub(thickness.pm())),
            angle: BendAngle::FOLDED,
            inside_radius,
            direction,
            rule,
            nominal: None,
        };
        match self {
            Edge::Raw => [None, None],
            Edge::ClosedHem { width, direction, rule } => [Some(hem(*width, Length::ZERO, *direction, rule.as_deref())), None],
            Edge::OpenHem { width, gap, direction, rule } => [Some(hem(*width, Length::from_pm(gap.pm() / 2), *direction, rule.as_deref())), None],
            Edge::DoubleHem { width, direction, rule } => double_hem(*width, thickness, *direction, rule.as_deref()),
            Edge::TeardropHem { .. } | Edge::WiredEdge { .. } => [self.curl(thickness), None],
        }
    }

    /// The fold of an edge that closes by more than 180 degrees; nothing where it cannot be.
    fn curl(&self, thickness: Length) -> Option<Fold<'_>> {
        let r = self.first_radius(thickness);
        let outside = (r + thickness).length().ok()?;
        let angle = BendAngle::from_flat(Angle::degrees_from(self.closing(thickness)?).ok()?).ok()?;
        match self {
            Edge::TeardropHem { return_flat, direction, rule, .. } => {
                // Where the end of the return stands over the leg, counted from the tangent line.
                let (sin, cos) = (-angle.angle().sin(), -angle.angle().cos());
                let reach = to_length(r.mm() * sin + return_flat.mm() * cos).ok()?.max(*return_flat);
                let width = (*return_flat + outside).length().ok()?;
                Some(Fold { width, reach, angle, inside_radius: r, direction: *direction, rule: rule.as_deref(), nominal: None })
            }
            Edge::WiredEdge { wire, direction, rule } => {
                // 2 1/2 diameters beyond the outside of the bead, to which the leg goes.
                let (metal, _) = NominalSeam::WiredEdge { wire: *wire }.sides().ok()?;
                let nominal = Nominal {
                    allowance: (metal + outside).length().ok()?,
                    formula: "2 1/2 d + R + T: 2 1/2 wire diameters beyond the outside of the bead",
                    source: &nominal_seam::WIRED,
                };
                Some(Fold { width: outside, reach: outside, angle, inside_radius: r, direction: *direction, rule: rule.as_deref(), nominal: Some(nominal) })
            }
            _ => None,
        }
    }

    /// Inside radius of the fold next to the leg.
    pub(super) fn first_radius(&self, thickness: Length) -> Length {
        match self {
            Edge::Raw | Edge::ClosedHem { .. } => Length::ZERO,
            Edge::OpenHem { gap, .. } => Length::from_pm(gap.pm() / 2),
            Edge::TeardropHem { inside_radius, .. } => *inside_radius,
            Edge::DoubleHem { .. } => Length::from_pm(thickness.pm() / 2),
            Edge::WiredEdge { wire, .. } => Length::from_pm(wire.pm() / 2),
        }
    }

    /// By how many degrees an edge that closes past 180 is bent.
    ///
    /// The return of a teardrop starts 2 R above the leg. Turned on by a, its end is `R + R cos a - L sin a` above it, and that is the gap. The
    /// outside of a curl round a wire meets the leg where `(R + T) cos f = R`, f short of the full turn.
    fn closing(&self, thickness: Length) -> Option<f64> {
        match self {
            Edge::TeardropHem { inside_radius, return_flat, gap, .. } => {
                let (r, l) = (inside_radius.mm(), return_flat.mm());
                let rho = num::hypot(r, l);
                Some(180.0 + num::acos_deg((gap.mm() - r) / rho) - num::atan2_deg(l, r))
            }
            Edge::WiredEdge { .. } => {
                let r = self.first_radius(thickness).mm();
                Some(360.0 - num::acos_deg(r / (r + thickness.mm())))
            }
            _ => None,
        }
    }

    /// Every fault of the edge's own figures, in sheet of this thickness.
    pub(super) fn check(&self, thickness: Length) -> Result<(), Error> {
        let mut faults = Faults::default();
        match self {
            Edge::Raw => {}
            Edge::ClosedHem { width, .. } => {
                faults.keep(width.positive("width"));
            }
            Edge::OpenHem { width, gap, .. } => {
                faults.keep(width.positive("width"));
                if !gap.is_positive() {
                    faults.add(
                        Error::new(ErrorKind::OutOfRange, "an open hem needs a gap").at("gap").value_of(gap).accepts("more than 0 mm").cured_by("a closed hem"),
                    );
                }
            }
            Edge::TeardropHem { inside_radius, return_flat, gap, .. } => {
                faults.keep(inside_radius.positive("inside_radius").map_err(|e| e.cured_by("a closed hem")));
                faults.keep(return_flat.positive("return_flat"));
                faults.keep(gap.not_negative("gap"));
                if inside_radius.is_positive() && gap.pm() / 2 >= inside_radius.pm() {
                    faults.add(
                        Error::new(ErrorKind::Conflict, "the return does not close onto the leg")
                            .at("gap")
                            .value_of(gap)
                            .accepts(format!("less than twice the inside radius {inside_radius}"))
                            .cured_by("an open hem"),
                    );
                }
            }
            Edge::DoubleHem { width, .. } => {
                // Two and a half thicknesses are bend; a strip without a flat part would not be two folds.
                let least = to_length(2.5 * thickness.mm())?;
                if *width <= least && thickness.is_positive() {
                    faults.add(
                        Error::new(ErrorKind::Impossible, "the two folds of the double hem leave nothing flat")
                            .at("width")
                            .value_of(width)
                            .accepts(format!("more than {least}: 2 1/2 thicknesses")),
                    );
                }
                faults.keep(width.positive("width"));
            }
            Edge::WiredEdge { wire, .. } => {
                faults.keep(wire.positive("wire"));
            }
        }
        faults.check()?;
        if matches!(self, Edge::TeardropHem { .. } | Edge::WiredEdge { .. }) && thickness.is_positive() && self.curl(thickness).is_none() {
            return Err(Error::new(ErrorKind::Impossible, "the edge does not close on the leg")
                .at(self.length_field())
                .value_of(format_args!("in sheet {thickness}"))
                .accepts("a size that can be bent"));
        }
        Ok(())
    }
}

/// Both folds of a double hem: the outer one goes round the layer inside, and the lip is as long as the flat part that it lies on.
fn double_hem(width: Length, thickness: Length, direction: Direction, rule: Option<&BendRule>) -> [Option<Fold<'_>>; 2] {
    let t = thickness.pm();
    let half = Length::from_pm(t / 2);
    let reach = Length::from_pm(width.pm().saturating_sub(half.pm()).saturating_sub(t));
    let lip_flat = Length::from_pm(reach.pm().saturating_sub(t));
    let lip = Length::from_pm(lip_flat.pm().saturating_add(t));
    let first = Fold { width, reach, angle: BendAngle::FOLDED, inside_radius: half, direction, rule, nominal: None };
    // Nominally 2 W in all: W from fold to fold, as under the sum of legs, and as much again for the lip.
    let nominal = Nominal {
        allowance: Length::from_pm(width.pm().saturating_sub(lip.pm()).saturating_add(t.saturating_mul(2))),
        formula: "W - lip + 2 T: the double hem takes twice its width",
        source: &nominal_seam::DOUBLE_HEM,
    };
    let second = Fold { width: lip, reach: lip_flat, angle: BendAngle::FOLDED, inside_radius: Length::ZERO, direction, rule, nominal: Some(nominal) };
    [Some(first), Some(second)]
}

/// What a fold takes under nominal sums, where that is not the rule of two legs.
#[derive(Debug, Clone, Copy)]
pub(super) struct Nominal {
    pub(super) allowance: Length,
    pub(super) formula: &'static str,
    pub(super) source: &'static Source,
}

impl Nominal {
    pub(super) fn step(&self, bend: &BendMm) -> Step {
        Step::new("flat length of the bend BA")
            .formula(self.formula)
            .with("A", bend.size.angle)
            .with("R", bend.size.inside_radius)
            .with("T", bend.size.thickness)
            .gives(self.allowance)
            .source(self.source.clone())
    }
}

/// One fold of an edge: what it adds to the walk is one return leg and one bend.
#[derive(Debug, Clone, Copy)]
pub(super) struct Fold<'a> {
    /// From the outside of the fold to the end of the return: the sheet's edge, or the outside of the next fold.
    pub(super) width: Length,
    /// How far the return reaches back over the leg that it lies on, from the tangent line.
    pub(super) reach: Length,
    pub(super) angle: BendAngle,
    pub(super) inside_radius: Length,
    pub(super) direction: Direction,
    pub(super) rule: Option<&'a BendRule>,
    pub(super) nominal: Option<Nominal>,
}
