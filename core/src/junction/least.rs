//! The least that a cover, an upstand or a lap may be, each with its source.

use crate::error::{Error, ErrorKind, Faults};
use crate::record::{Seen, Source};
use crate::units::Length;
use std::borrow::Cow;

/// The least that a cover, an upstand or a lap may be, with the document that asks for it: at a wall, a ridge, an eave, a valley, along a path of water.
///
/// ```
/// use seamwright::junction::WallRule;
/// use seamwright::record::Source;
/// use seamwright::units::Length;
/// assert_eq!(WallRule::UFC_UPSTAND.least, Length::inches(6));
/// let own = WallRule::given("upstand", Length::inches(10), Source::user());
/// assert!(own.least > WallRule::UFGS_UPSTAND.least);
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct WallRule {
    /// What is measured; in a job file `what the rule asks` unless given.
    #[cfg_attr(feature = "serde", serde(default = "super::defaults::what_is_asked"))]
    pub what: Cow<'static, str>,
    /// The least that it may be.
    pub least: Length,
    /// Where the rule stands.
    pub source: Source,
}

impl WallRule {
    /// Watertight flashing connections reach 6 in (150 mm) above the drainage plane.
    pub const UFC_UPSTAND: WallRule = WallRule::of("upstand above the drainage plane", 6, Source::published("UFC 3-110-03", "2006", "4-6", Seen::Text));
    /// Base flashing goes up the wall 8 in (200 mm).
    pub const UFGS_UPSTAND: WallRule = WallRule::of("base flashing up the wall", 8, Source::published("UFGS-07600", "", "3.1.11", Seen::Text));
    /// Base flashing goes under the roof covering 4 in (100 mm).
    pub const UFGS_UNDER_COVERING: WallRule =
        WallRule::of("base flashing under the roof covering", 4, Source::published("UFGS-07600", "", "3.1.11", Seen::Text));
    /// Base flashing goes 6 in (150 mm) behind the wall covering.
    pub const UFGS_BEHIND_CLADDING: WallRule = WallRule::of("leg behind the wall covering", 6, Source::published("UFGS-07600", "", "3.1.11", Seen::Text));
    /// Counterflashing goes 2 in (50 mm) into the wall.
    pub const UFGS_INTO_WALL: WallRule = WallRule::of("counterflashing into the wall", 2, Source::published("UFGS-07600", "", "3.1.12", Seen::Text));
    /// A fascia hooks its edge strip by 3/4 in (20 mm).
    pub const UFGS_HOOK: WallRule =
        WallRule::exactly("fascia hooked over the edge strip", Length::inches_64(48), Source::published("UFGS-07600", "", "3.1.15.1", Seen::Text));
    /// A fascia's backing plate laps each piece by 4 in (100 mm).
    pub const UFGS_PLATE_LAP: WallRule = WallRule::of("joint plate under each piece", 4, Source::published("UFGS-07600", "", "3.1.15.2", Seen::Text));
    /// The pieces of a fascia stand 1/4 in (6 mm) apart.
    pub const UFGS_END_GAP: WallRule =
        WallRule::exactly("gap between pieces", Length::inches_64(16), Source::published("UFGS-07600", "", "3.1.15.2", Seen::Text));
    /// A corner piece has legs of 12 in (300 mm).
    pub const UFGS_CORNER_LEG: WallRule = WallRule::of("leg of a corner piece", 12, Source::published("UFGS-07600", "", "2", Seen::Text));
    /// Penetrations stand 18 in apart.
    pub const NAVFAC_APART: WallRule = WallRule::of("distance between penetrations", 18, Source::published("NAVFAC roofing guidance", "", "", Seen::Text));
    /// Edge metal reaches at least 2 in up the deck, and underlayment lies over it along eaves. The clause is written for shingles; it is the nearest published one.
    pub const IRC_OVER_EDGE_METAL: WallRule = WallRule::of("edge metal up the deck", 2, Self::IRC_DRIP_EDGE);
    /// Edge metal comes down at least 1/4 in below the deck: the same clause.
    pub const IRC_BELOW_DECK: WallRule = WallRule::exactly("face below the deck", Length::inches_64(16), Self::IRC_DRIP_EDGE);
    /// Base flashing along a wall is at least 4 in wide. The clause is written for shingles.
    pub const IRC_BASE_WIDTH: WallRule =
        WallRule::of("base flashing over the roof", 4, Source::published("International Residential Code", "2018", "R905.2.8.3", Seen::Text));
    /// The same flashing is at least 4 in high.
    pub const IRC_BASE_HEIGHT: WallRule =
        WallRule::of("base flashing up the wall", 4, Source::published("International Residential Code", "2018", "R905.2.8.3", Seen::Text));
    /// A lap that is not soldered is at least 3 in: of the flange of a cap or of a flashing over the panels that end under it.
    pub const UFGS_UNSOLDERED: WallRule = WallRule::of("lap over what ends under it", 3, Source::published("UFGS-07600", "", "3.1.6.2", Seen::Text));
    /// An eave strip reaches 3 in onto the roof.
    pub const COPPER_EAVE_STRIP: WallRule =
        WallRule::of("eave strip on the roof", 3, Source::published("Copper Flashings, a manual", "", "par. 52-55", Seen::Text));
    /// A valley lies open by 4 in at its top.
    pub const COPPER_VALLEY_OPEN: WallRule =
        WallRule::of("open width of a valley", 4, Source::published("Copper Roofings, a manual", "", "par. 29", Seen::Text));
    /// A lap that slides is 3 in longer than its movement. Common practice, no published source.
    pub const SLIDING_LAP: WallRule = WallRule::of("lap beside the movement", 3, Source::CommonPractice);
    /// A face comes down 4 in over the leg or the cladding that comes up under it, as a counterflashing does. Common practice, no published source.
    pub const LAP_OVER_LEG: WallRule =
        WallRule::exactly("lap over the leg that comes up under it", crate::practice::junction::COUNTERFLASHING_LAP_LEAST, Source::CommonPractice);
    /// The rake trim's top runs past the top flange of the Z by this: common practice, no published source.
    pub const COVER_OF_Z: WallRule = WallRule::exactly("cover of the Z by the trim", crate::practice::junction::Z_COVER_LEAST, Source::CommonPractice);
    /// The flange of a wall flashing reaches 2 in over the last panel beside it. Common practice, no published source.
    pub const SIDE_COVER: WallRule = WallRule::exactly("flange over the last panel", crate::practice::junction::SIDE_COVER_LEAST, Source::CommonPractice);
    /// A valley's pan reaches 8 in from its centreline on each side. Common practice, no published source.
    pub const VALLEY_LEG: WallRule = WallRule::exactly("valley pan from its centreline", crate::practice::junction::VALLEY_LEG_LEAST, Source::CommonPractice);
    /// A pan reaches 4 in beyond what the panels hook on it. Common practice, no published source.
    pub const BEYOND_HOOK: WallRule =
        WallRule::exactly("pan beyond what the panels hook", crate::practice::junction::VALLEY_BEYOND_CLEAT_LEAST, Source::CommonPractice);
    /// A valley lies open by 4 in. Common practice, no published source.
    pub const VALLEY_OPEN: WallRule = WallRule::exactly("open width of a valley", crate::practice::junction::VALLEY_OPEN_WIDTH_LEAST, Source::CommonPractice);
    /// Underlayment runs 6 in up past a line that it ends at. Common practice, no published source.
    pub const UNDERLAYMENT_PAST_LINE: WallRule =
        WallRule::exactly("underlayment past its line", crate::practice::junction::UNDERLAYMENT_PAST_LINE, Source::CommonPractice);

    /// Every published rule that the library holds.
    pub const ALL: &'static [WallRule] = &[
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

    const fn of(what: &'static str, inches: i16, source: Source) -> WallRule {
        WallRule::exactly(what, Length::inches(inches), source)
    }

    const fn exactly(what: &'static str, least: Length, source: Source) -> WallRule {
        WallRule { what: Cow::Borrowed(what), least, source }
    }

    /// A rule from another document, or the caller's own.
    #[must_use]
    pub fn given(what: impl Into<Cow<'static, str>>, least: Length, source: Source) -> WallRule {
        WallRule { what: what.into(), least, source }
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
