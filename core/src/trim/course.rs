//! A profile said in one list from edge to edge: legs, bends and offset bends as they come.

use super::builder::ProfileBuilder;
use super::edge::Edge;
use super::leg::{Direction, Face, LegEnd};
use super::profile::Profile;
use super::rule::BendRule;
use crate::error::Error;
use crate::record::{Calculation, Recorder};
use crate::units::{BendAngle, Length};
use std::borrow::Cow;

/// One item of a [`Course`].
///
/// ```
/// use seamwright::trim::{CourseItem, Direction};
/// use seamwright::units::{BendAngle, Length};
/// let turn = CourseItem::Bend { angle: BendAngle::SQUARE, direction: Direction::Down, inside_radius: Length::mils(30), rule: None };
/// assert!(matches!(turn, CourseItem::Bend { rule: None, .. }));
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "kebab-case", deny_unknown_fields))]
pub enum CourseItem {
    /// A leg.
    Leg {
        /// What it is called.
        name: Cow<'static, str>,
        /// Its length between its ends.
        length: Length,
        /// To what its start is dimensioned; as the course says where left out.
        #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
        start: Option<LegEnd>,
        /// To what its end is dimensioned; as the course says where left out.
        #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
        end: Option<LegEnd>,
    },
    /// A bend.
    Bend {
        /// How far, from flat.
        angle: BendAngle,
        /// Which way.
        direction: Direction,
        /// Radius of the inside face.
        inside_radius: Length,
        /// A rule for this bend in place of the profile's.
        #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
        rule: Option<Box<BendRule>>,
    },
    /// An offset bend: it stands between two legs as a bend does, and becomes two bends and a web.
    Joggle {
        /// What the web is called.
        name: Cow<'static, str>,
        /// From a face of the leg before to the same face of the leg after.
        depth: Length,
        /// Of both bends, from flat.
        angle: BendAngle,
        /// Which way the first bend turns.
        direction: Direction,
        /// Radius of the inside face at both bends.
        inside_radius: Length,
    },
}

/// A profile as one list of legs, bends and offset bends, with the working of the offset bends.
///
/// Where a leg's ends are not said, they go to what `measured_to` says at a bend, to the sheet's edge at a raw edge and to the outside of the fold at a hem.
///
/// ```
/// use seamwright::record::Calculation;
/// use seamwright::trim::{Course, CourseItem, Direction, Edge, Face, LegEnd};
/// use seamwright::units::{Angle, BendAngle, Length};
/// let leg = |name: &'static str, inches| CourseItem::Leg { name: name.into(), length: Length::inches(inches), start: None, end: None };
/// let angle = BendAngle::from_flat(Angle::parse("45 deg")?)?;
/// let step = CourseItem::Joggle { name: "step".into(), depth: Length::mils(250), angle, direction: Direction::Up, inside_radius: Length::mils(30) };
/// let course = Course {
///     thickness: Length::mils(24),
///     start_edge: Edge::Raw,
///     items: vec![leg("lap", 1), step, leg("apron", 6)],
///     end_edge: Edge::Raw,
///     measured_to: LegEnd::OuterCorner,
///     painted: Face::Upper,
/// };
/// let (profile, sheet) = course.explain()?;
/// assert_eq!((profile.legs.len(), profile.bends.len()), (3, 2));
/// assert!(sheet.steps().iter().any(|s| s.formula == "D / sin A"));
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct Course {
    /// Thickness of the sheet.
    pub thickness: Length,
    /// The edge where the walk starts.
    #[cfg_attr(feature = "serde", serde(default))]
    pub start_edge: Edge,
    /// Legs, with a bend or an offset bend between every two.
    pub items: Vec<CourseItem>,
    /// The edge where the walk ends.
    #[cfg_attr(feature = "serde", serde(default))]
    pub end_edge: Edge,
    /// To what legs are dimensioned at a bend where they do not say it.
    pub measured_to: LegEnd,
    /// The painted face, or the face that is shown.
    pub painted: Face,
}

impl Calculation for Course {
    type Out = Profile;

    fn title(&self) -> String {
        format!("profile of {} items in sheet {}", self.items.len(), self.thickness)
    }

    /// # Errors
    /// As [`ProfileBuilder::build`]; what concerns one item of the list alone is placed at `items[i]`.
    fn run<R: Recorder>(&self, r: &mut R) -> Result<Profile, Error> {
        let mut b: ProfileBuilder =
            Profile::builder(self.thickness).painted(self.painted).measured_to(self.measured_to).start(self.start_edge.clone()).end(self.end_edge.clone());
        for (i, item) in self.items.iter().enumerate() {
            b = b.of_item(i);
            b = match item {
                CourseItem::Leg { name, length, start, end } => b.leg_with(name.clone(), *length, *start, *end),
                CourseItem::Bend { angle, direction, inside_radius, rule } => {
                    let b = b.inside_radius(*inside_radius);
                    match rule {
                        Some(rule) => b.bend_by(*angle, *direction, (**rule).clone()),
                        None => b.turn(*angle, *direction, None),
                    }
                }
                CourseItem::Joggle { name, depth, angle, direction, inside_radius } => {
                    b.inside_radius(*inside_radius).joggle_told(name.clone(), *depth, *angle, *direction, r)
                }
            };
        }
        b.build()
    }
}
