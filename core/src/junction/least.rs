//! The least that a cover, an upstand or a lap may be, each with its source.

use crate::error::{Error, ErrorKind, Faults};
use crate::record::{Seen, Source};
use crate::units::Length;
use std::borrow::Cow;

/// The least that a cover, an upstand or a lap may be, with the document that asks for it: at a wall, a ridge, an eave, a valley, along a path of water.
///
/// ```
/// use seamwright::junction::LeastRule;
/// use seamwright::record::Source;
/// use seamwright::units::Length;
/// assert_eq!(LeastRule::UFC_UPSTAND.least, Length::inches(6));
/// let own = LeastRule::given("upstand", Length::inches(10), Source::user());
/// assert!(own.least > LeastRule::UFGS_UPSTAND.least);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct LeastRule {
    /// What is measured; in a job file `what the rule asks` unless given.
    #[cfg_attr(feature = "serde", serde(default = "super::defaults::what_is_asked"))]
    pub what: Cow<'static, str>,
    /// The least that it may be.
    pub least: Length,
    /// Where the rule stands.
    pub source: Source,
}

impl LeastRule {
    /// Watertight flashing connections reach 6 in (150 mm) above the drainage plane.
    pub const UFC_UPSTAND: LeastRule = LeastRule::of("upstand above the drainage plane", 6, Source::published("UFC 3-110-03", "2006", "4-6", Seen::Text));
    /// Base flashing goes up the wall 8 in (200 mm).
    pub const UFGS_UPSTAND: LeastRule = LeastRule::of("base flashing up the wall", 8, Source::published("UFGS-07600", "", "3.1.11", Seen::Text));
    /// Base flashing goes under the roof covering 4 in (100 mm).
    pub const UFGS_UNDER_COVERING: LeastRule =
        LeastRule::of("base flashing under the roof covering", 4, Source::published("UFGS-07600", "", "3.1.11", Seen::Text));
    /// Base flashing goes 6 in (150 mm) behind the wall covering.
    pub const UFGS_BEHIND_CLADDING: LeastRule = LeastRule::of("leg behind the wall covering", 6, Source::published("UFGS-07600", "", "3.1.11", Seen::Text));
    /// Counterflashing goes 2 in (50 mm) into the wall.
    pub const UFGS_INTO_WALL: LeastRule = LeastRule::of("counterflashing into the wall", 2, Source::published("UFGS-07600", "", "3.1.12", Seen::Text));
    /// A fascia hooks its edge strip by 3/4 in (20 mm).
    pub const UFGS_HOOK: LeastRule =
        LeastRule::exactly("fascia hooked over the edge strip", Length::inches_64(48), Source::published("UFGS-07600", "", "3.1.15.1", Seen::Text));
    /// A fascia's backing plate laps each piece by 4 in (100 mm).
    pub const UFGS_PLATE_LAP: LeastRule = LeastRule::of("joint plate under each piece", 4, Source::published("UFGS-07600", "", "3.1.15.2", Seen::Text));
    /// The pieces of a fascia stand 1/4 in (6 mm) apart.
    pub const UFGS_END_GAP: LeastRule =
        LeastRule::exactly("gap between pieces", Length::inches_64(16), Source::published("UFGS-07600", "", "3.1.15.2", Seen::Text));
    /// A corner piece has legs of 12 in (300 mm).
    pub const UFGS_CORNER_LEG: LeastRule = LeastRule::of("leg of a corner piece", 12, Source::published("UFGS-07600", "", "2", Seen::Text));
    /// Penetrations stand 18 in apart.
    pub const NAVFAC_APART: LeastRule = LeastRule::of("distance between penetrations", 18, Source::published("NAVFAC roofing guidance", "", "", Seen::Text));
    /// Edge metal reaches at least 2 in up the deck, and underlayment lies over it along eaves. The clause is written for shingles; it is the nearest published one.
    pub const IRC_OVER_EDGE_METAL: LeastRule = LeastRule::of("edge metal up the deck", 2, Self::IRC_DRIP_EDGE);
    /// Edge metal comes down at least 1/4 in below the deck: the same clause.
    pub const IRC_BELOW_DECK: LeastRule = LeastRule::exactly("face below the deck", Length::inches_64(16), Self::IRC_DRIP_EDGE);
    /// Base flashing along a wall is at least 4 in wide. The clause is written for shingles.
    pub const IRC_BASE_WIDTH: LeastRule =
        LeastRule::of("base flashing over the roof", 4, Source::published("International Residential Code", "2018", "R905.2.8.3", Seen::Text));
    /// The same flashing is at least 4 in high.
    pub const IRC_BASE_HEIGHT: LeastRule =
        LeastRule::of("base flashing up the wall", 4, Source::published("International Residential Code", "2018", "R905.2.8.3", Seen::Text));
    /// A lap that is not soldered is at least 3 in: of the flange of a cap or of a flashing over the panels that end under it.
    pub const UFGS_UNSOLDERED: LeastRule = LeastRule::of("lap over what ends under it", 3, Source::published("UFGS-07600", "", "3.1.6.2", Seen::Text));
    /// An eave strip reaches 3 in onto the roof.
    pub const COPPER_EAVE_STRIP: LeastRule =
        LeastRule::of("eave strip on the roof", 3, Source::published("Copper Flashings, a manual", "", "par. 52-55", Seen::Text));
    /// A valley lies open by 4 in at its top.
    pub const COPPER_VALLEY_OPEN: LeastRule =
        LeastRule::of("open width of a valley", 4, Source::published("Copper Roofings, a manual", "", "par. 29", Seen::Text));
    /// A lap that slides is 3 in longer than its movement. Common practice, no published source.
    pub const SLIDING_LAP: LeastRule = LeastRule::of("lap beside the movement", 3, Source::CommonPractice);
    /// A face comes down 4 in over the leg or the cladding that comes up under it, as a counterflashing does. Common practice, no published source.
    pub const LAP_OVER_LEG: LeastRule =
        LeastRule::exactly("lap over the leg that comes up under it", crate::practice::junction::COUNTERFLASHING_LAP_LEAST, Source::CommonPractice);
    /// The rake trim's top runs past the top flange of the Z by this: common practice, no published source.
    pub const COVER_OF_Z: LeastRule = LeastRule::exactly("cover of the Z by the trim", crate::practice::junction::Z_COVER_LEAST, Source::CommonPractice);
    /// The flange of a wall flashing reaches 2 in over the last panel beside it. Common practice, no published source.
    pub const SIDE_COVER: LeastRule = LeastRule::exactly("flange over the last panel", crate::practice::junction::SIDE_COVER_LEAST, Source::CommonPractice);
    /// A kick-out throws the water 4 in off the wall. Common practice, no published source.
    pub const KICK_OUT_THROW: LeastRule =
        LeastRule::exactly("kick-out thrown from the wall", crate::practice::junction::KICK_OUT_THROW_LEAST, Source::CommonPractice);
    /// The pan reaches 1/2 in beyond the lower flange of the closures that stand on it. Common practice, no published source.
    pub const PANEL_MARGIN: LeastRule =
        LeastRule::exactly("pan beyond the closures' lower flange", crate::practice::junction::PANEL_MARGIN_LEAST, Source::CommonPractice);
    /// The front of a transition's cleat stands 1 in up from the bend. Common practice, no published source.
    pub const HEAD_LAP: LeastRule =
        LeastRule::exactly("head-lap of the cleat over the bend", crate::practice::junction::HEAD_LAP_LEAST, Source::CommonPractice);
    /// A pan behind a curb lies open by 6 in, so that it can be cleaned. Common practice, no published source.
    pub const CLEAR_BEHIND_CURB: LeastRule =
        LeastRule::exactly("open pan behind the curb", crate::practice::junction::CLEAR_BEHIND_CURB_LEAST, Source::CommonPractice);
    /// The seams end 6 in from the low line behind a curb. Common practice, no published source.
    pub const SEAMS_FROM_CURB: LeastRule =
        LeastRule::exactly("seams' ends from the curb", crate::practice::junction::SEAMS_FROM_CURB_LEAST, Source::CommonPractice);
    /// A valley's pan reaches 8 in from its centreline on each side. Common practice, no published source.
    pub const VALLEY_LEG: LeastRule = LeastRule::exactly("valley pan from its centreline", crate::practice::junction::VALLEY_LEG_LEAST, Source::CommonPractice);
    /// A pan reaches 4 in beyond what the panels hook on it. Common practice, no published source.
    pub const BEYOND_HOOK: LeastRule =
        LeastRule::exactly("pan beyond what the panels hook", crate::practice::junction::VALLEY_BEYOND_CLEAT_LEAST, Source::CommonPractice);
    /// A valley lies open by 4 in. Common practice, no published source.
    pub const VALLEY_OPEN: LeastRule = LeastRule::exactly("open width of a valley", crate::practice::junction::VALLEY_OPEN_WIDTH_LEAST, Source::CommonPractice);
    /// Underlayment runs 6 in up past a line that it ends at. Common practice, no published source.
    pub const UNDERLAYMENT_PAST_LINE: LeastRule =
        LeastRule::exactly("underlayment past its line", crate::practice::junction::UNDERLAYMENT_PAST_LINE, Source::CommonPractice);

    /// Every published rule that the library holds.
    pub const ALL: &'static [LeastRule] = &[
        Self::UFC_UPSTAND,
        Self::UFGS_UPSTAND,
        Self::UFGS_UNDER_COVERING,
        Self::UFGS_BEHIND_CLADDING,
        Self::UFGS_INTO_WALL,
        Self::UFGS_HOOK,
        Self::UFGS_PLATE_LAP,
        Self::UFGS_END_GAP,
        Self::UFGS_CORNER_LEG,
        Self::NAVFAC_APART,
        Self::IRC_OVER_EDGE_METAL,
        Self::IRC_BELOW_DECK,
        Self::IRC_BASE_WIDTH,
        Self::IRC_BASE_HEIGHT,
        Self::UFGS_UNSOLDERED,
        Self::COPPER_EAVE_STRIP,
        Self::COPPER_VALLEY_OPEN,
    ];

    const IRC_DRIP_EDGE: Source = Source::published("International Residential Code", "2012 to 2021", "R905.2.8.5", Seen::Secondary);

    const fn of(what: &'static str, inches: i16, source: Source) -> LeastRule {
        LeastRule::exactly(what, Length::inches(inches), source)
    }

    const fn exactly(what: &'static str, least: Length, source: Source) -> LeastRule {
        LeastRule { what: Cow::Borrowed(what), least, source }
    }

    /// A rule from another document, or the caller's own.
    #[must_use]
    pub fn given(what: impl Into<Cow<'static, str>>, least: Length, source: Source) -> LeastRule {
        LeastRule { what: what.into(), least, source }
    }

    /// A fault unless `have` is at least the rule's.
    pub(crate) fn check(&self, faults: &mut Faults, path: &str, have: Length, value: Length, cure: String) -> Result<(), Error> {
        if have >= self.least {
            return Ok(());
        }
        let short = (self.least - have).length()?;
        let error = Error::new(ErrorKind::Impossible, format!("{}: {have}, too little by {short}", self.what)).at(path).value_of(value);
        faults.add(error.accepts(format!("{} or more ({})", self.least, self.source)).cured_by(cure));
        Ok(())
    }
}
