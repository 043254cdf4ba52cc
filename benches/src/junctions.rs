//! One junction of every kind as the guide has it: its section solved with every check of it, its lines, its order of work, and the water on it.

use seamwright::error::Error;
use seamwright::junction::{JunctionInput, WaterRules, WholeJunction};
use seamwright::record::read_json;

const LONGEST: usize = 1 << 20;

/// A junction of each kind with its name.
///
/// # Errors
/// None: the guide's inputs can be read.
pub fn all() -> Result<Vec<(&'static str, WholeJunction)>, Error> {
    let mut out = Vec::new();
    macro_rules! junctions {
        ($($kind:ident: $file:literal),+ $(,)?) => {
            $({
                let input = read_json(include_bytes!(concat!("../../docs/junctions/inputs/", $file, ".json")), LONGEST)?;
                out.push(($file, WholeJunction { of: JunctionInput::$kind(Box::new(input)), water: WaterRules::default() }));
            })+
        };
    }
    junctions! {
        Eave: "eave",
        Rake: "rake",
        Ridge: "ridge-of-unequal-pitches",
        Ridge: "vented-ridge",
        Hip: "hip",
        HighSide: "high-side",
        Valley: "valley-with-cleats",
        Valley: "valley-with-receiver-folds",
        Headwall: "headwall-with-a-reglet",
        Sidewall: "sidewall-on-a-Z",
        PitchTransition: "transition-shallow-below",
        PitchTransition: "transition-steep-below",
        CurbBack: "back-of-a-curb",
        Coping: "coping-on-cleats",
        Step: "step",
        ExpansionAcross: "expansion-joint-across-the-panels",
        ExpansionAlong: "expansion-joint-along-the-panels",
        Pipe: "pipe",
    }
    Ok(out)
}
