//! What the rules of each kind ask of the lengths beside them.

use super::draft::TrimSheet;
use super::drip::{ContinuousCleat, DripFace, DripHem};
use super::eave_parts::{DeckFlange, EaveFront, EavePanel, FlangeLies, HookStrip};
use super::rule_set::{Part, RuleBook, chosen, rule};
use super::sidewall_parts::{PanelSide, SidewallFlange, SidewallFoot};
use super::whole::JunctionInput;
use super::{
    CopingDetail, CopingHold, CopingSide, CurbBackDetail, EaveDetail, ExpansionAcrossDetail, ExpansionAlongDetail, HeadwallDetail, HighSideDetail, HipDetail,
    Levels, OffsetCleat, PitchTransitionDetail, RakeDetail, RidgeDetail, SidewallDetail, StepDetail, TopEdge, TopEnd, ValleyDetail, ValleyHook, WallCover,
    WallLeg,
};
use crate::record::Calculation;
use crate::units::Length;

/// What the layers leave between the pan and the underside of a trim on the seam tops; nothing where they are refused by themselves.
fn over_pan(levels: &Levels) -> Option<Length> {
    levels.compute().ok()?;
    levels.over_pan().ok()
}

impl RuleBook {
    /// The lap of panels over metal, as the rules of water ask it.
    fn panels_over_metal(&self) -> Option<Part> {
        let (water, place) = self.water.as_ref()?;
        let field = if *place == "water" { "water.panels_over_metal.least" } else { "supplies.water.panels_over_metal.least" };
        Some(rule(field, &water.panels_over_metal).outside())
    }
}

impl ContinuousCleat {
    fn asks(&self, book: &mut RuleBook, trim: TrimSheet) {
        let sheet = chosen("sheet.thickness of the trim", trim.thickness).outside();
        book.ask([chosen("engagement", self.engagement), sheet, chosen("short_of_fold", self.short_of_fold)], [chosen("hem", self.hem)], "a wider hem");
        book.ask([chosen("fasteners_above_bend", self.fasteners_above_bend)], [chosen("height", self.height)], "a higher cleat");
        book.ask([chosen("sheet.thickness", self.sheet.thickness)], [chosen("hem_gap", self.hem_gap)], "a hem opened wider");
    }
}

impl DripFace {
    fn asks(&self, book: &mut RuleBook, trim: TrimSheet) {
        if let DripHem::Hooked(cleat) = &self.hem {
            book.under("face.hem.hooked", |b| cleat.asks(b, trim));
        }
    }
}

/// A drip trim on the deck, its strip, and the panels' folds around it.
fn drip_trim(book: &mut RuleBook, flange: &DeckFlange, strip: &HookStrip, p: &EavePanel) {
    let row = [chosen("flange.fasteners_from_edge", flange.fasteners_from_edge)];
    book.ask(row, [chosen("flange.width", flange.width)], "a wider flange, or fasteners nearer to its edge");
    let row = [chosen("strip.fasteners_from_edge", strip.fasteners_from_edge), chosen("panel.overhang", p.overhang)];
    book.ask(row, [chosen("strip.width", strip.width)], "a wider strip, or fasteners nearer to its edge");
    let (fold, gap) = (|| chosen("panel.fold", p.fold), || chosen("panel.gap", p.gap));
    let engagement = || chosen("panel.engagement", p.engagement);
    book.ask([engagement(), gap()], [fold()], "a longer fold, or a smaller gap");
    if p.fixed.is_none() {
        let clearance = || chosen("panel.clearance", p.clearance);
        book.ask([clearance()], [gap()], "a wider gap, or another clearance");
        book.ask([engagement(), clearance()], [fold()], "a longer fold");
        book.keeps_moving(fold(), gap());
    }
    book.ask([chosen("strip.sheet.thickness", strip.sheet.thickness)], [chosen("panel.fold_opening", p.fold_opening)], "a fold opened wider");
}

impl EaveDetail {
    pub(crate) fn asks(&self, book: &mut RuleBook) {
        drip_trim(book, &self.flange, &self.strip, &self.panel);
        // A face that leans out, or a flange on underlayment, may reach a little farther onto the deck than it is wide.
        if self.flange.lies == FlangeLies::UnderUnderlayment && !matches!(self.front, EaveFront::BelowLevel(_)) {
            book.ask([rule("on_deck.least", &self.on_deck)], [chosen("flange.width", self.flange.width)], "a wider flange");
            if let Some(lap) = book.panels_over_metal() {
                let nose = [chosen("panel.overhang", self.panel.overhang), chosen("panel.gap", self.panel.gap), chosen("flange.width", self.flange.width)];
                book.ask([lap], nose, "a wider flange");
            }
        }
        book.ask([rule("below_deck.least", &self.below_deck)], [chosen("face.depth", self.face.depth)], "a deeper face");
        self.face.asks(book, self.sheet);
        if let Some(gutter) = self.gutter {
            let clear = chosen("gutter.lip_clearance", gutter.lip_clearance);
            book.ask([chosen("gutter.back", gutter.back), clear], [chosen("gutter.front", gutter.front)], "a gutter's front before its back and the clearance");
        }
    }
}

impl RakeDetail {
    pub(crate) fn asks(&self, book: &mut RuleBook, levels: &Levels) {
        book.ask([rule("z_cover.least", &self.z_cover)], [chosen("inner.cover", self.inner.cover)], "a greater cover");
        book.ask([rule("below_deck.least", &self.below_deck)], [chosen("face.depth", self.face.depth)], "a deeper face");
        book.ask([chosen("trim_tape_width", self.trim_tape_width)], [chosen("z.top_flange", self.z.top_flange)], "narrower tape, or a wider top flange");
        book.ask([chosen("z.tape_width", self.z.tape_width)], [chosen("z.lower_flange", self.z.lower_flange)], "narrower tape, or a wider lower flange");
        if let Some(room) = over_pan(levels) {
            let edge = [chosen("inner.drop", self.inner.drop), chosen("inner.above_pan", self.inner.above_pan)];
            book.ask(edge, [chosen("the levels over the pan", room).outside()], "an edge that turns down less");
            let tape = [chosen("z.tape", self.z.tape), chosen("the levels' tape", levels.tape).outside()];
            book.ask(tape, [chosen("the levels over the pan", room).outside()], "thinner tape");
        }
        self.face.asks(book, self.sheet);
    }
}

impl TopEnd {
    fn asks(&self, book: &mut RuleBook, levels: &Levels) {
        let c = &self.closure;
        book.ask([chosen("closure.tape_width", c.tape_width)], [chosen("closure.lower_flange", c.lower_flange)], "narrower tape, or a wider flange");
        book.ask([chosen("cap_tape_width", self.cap_tape_width)], [chosen("closure.top_flange", c.top_flange)], "narrower tape, or a wider flange");
        book.ask([chosen("closure.tape_beneath", c.tape_beneath)], [chosen("the seam height", levels.seam_height).outside()], "thinner tape, or higher seams");
        if let (Some(room), Ok(depth)) = (over_pan(levels), self.drip.depth()) {
            let room = || [chosen("the levels over the pan", room).outside()];
            book.ask([chosen("turn_up", self.turn_up)], room(), "a smaller turn-up");
            book.ask([chosen("drip.above_pan", self.drip.above_pan), chosen("drip.leg", depth)], room(), "a shorter drip");
        }
    }

    /// As [`asks`](Self::asks), where nothing but the line itself limits the panels' ends.
    fn asks_to_line(&self, book: &mut RuleBook, levels: &Levels) {
        self.asks(book, levels);
        book.ask([chosen("clearance", self.clearance)], [chosen("hold_back", self.hold_back)], "a greater hold-back");
    }
}

impl RidgeDetail {
    pub(crate) fn asks(&self, book: &mut RuleBook, (first, second): (&Levels, &Levels)) {
        book.under("first", |b| self.first.asks_to_line(b, first));
        book.under("second", |b| self.second.asks_to_line(b, second));
    }
}

impl HipDetail {
    pub(crate) fn asks(&self, book: &mut RuleBook, (first, second): (&Levels, &Levels)) {
        book.under("first", |b| self.first.asks_to_line(b, first));
        book.under("second", |b| self.second.asks_to_line(b, second));
    }
}

impl HighSideDetail {
    pub(crate) fn asks(&self, book: &mut RuleBook, levels: &Levels) {
        book.under("end", |b| self.end.asks(b, levels));
        book.ask([rule("below_deck.least", &self.below_deck)], [chosen("face.depth", self.face.depth)], "a deeper face");
        self.face.asks(book, self.sheet);
    }
}

impl WallLeg {
    /// `above` is how far the flange at its foot stands over the pan.
    fn asks(&self, book: &mut RuleBook, above: Option<Length>) {
        let leg = || chosen("leg", self.leg);
        let below_top = || chosen("fasteners_below_top", self.fasteners_below_top);
        if let Some(above) = above {
            book.ask([rule("upstand.least", &self.upstand)], [leg(), chosen("the flange over the pan", above).outside()], "a longer leg");
        }
        match &self.cover {
            WallCover::Cladding { lap, rule: least, clearance } => {
                let (lap, clearance) = (|| chosen("cover.cladding.lap", *lap), || chosen("cover.cladding.clearance", *clearance));
                book.ask([rule("cover.cladding.rule.least", least)], [lap()], "cladding brought farther down");
                book.ask([rule("cover.cladding.rule.least", least), clearance()], [leg()], "a longer leg");
                book.ask([lap(), clearance()], [leg()], "a longer leg, or cladding that ends higher");
                book.ask([below_top()], [lap()], "fasteners nearer to the top");
            }
            WallCover::Reglet(c) => {
                let (above, face) = (|| chosen("cover.reglet.above_leg", c.above_leg), || chosen("cover.reglet.face", c.face));
                book.ask([rule("cover.reglet.rule.least", &c.rule)], [chosen("cover.reglet.tongue", c.tongue)], "a longer tongue");
                book.ask([rule("cover.reglet.least_lap.least", &c.least_lap), above()], [face()], "a longer face, or a lower reglet");
                book.ask([rule("cover.reglet.least_lap.least", &c.least_lap)], [leg()], "a longer leg");
                book.ask([face()], [leg(), above()], "a shorter face, or a longer leg");
                book.ask([below_top(), above()], [face()], "fasteners nearer to the top");
            }
        }
    }
}

impl HeadwallDetail {
    pub(crate) fn asks(&self, book: &mut RuleBook, levels: &Levels) {
        book.under("end", |b| self.end.asks(b, levels));
        book.under("wall", |b| self.wall.asks(b, over_pan(levels)));
    }
}

impl SidewallDetail {
    pub(crate) fn asks(&self, book: &mut RuleBook, levels: &Levels) {
        let edge = || chosen("edge_from_wall", self.edge_from_wall);
        let cover = || rule("cover.least", &self.cover);
        book.ask([chosen("wall.stands_out", self.wall.stands_out)], [edge()], "an edge farther from the wall");
        let above = match &self.flange {
            SidewallFlange::OnZ { web_from_wall, foot, web_to_screws, tape_width, tape_beneath, cover: past, .. } => {
                let (web, foot) = (|| chosen("flange.on-z.web_from_wall", *web_from_wall), || chosen("flange.on-z.foot", *foot));
                let screws = || chosen("flange.on-z.web_to_screws", *web_to_screws);
                book.ask([cover(), edge()], [web(), chosen("flange.on-z.cover", *past)], "a flange that reaches farther");
                book.ask([screws(), chosen("flange.on-z.tape_width", *tape_width).half()], [foot()], "a wider foot, or narrower tape");
                book.ask([edge(), foot()], [web()], "a narrower foot, or a web farther from the wall");
                let room = over_pan(levels);
                if let Some(room) = room {
                    let tape = [chosen("flange.on-z.tape_beneath", *tape_beneath), chosen("the levels' tape", levels.tape).outside()];
                    book.ask(tape, [chosen("the levels over the pan", room).outside()], "thinner tape");
                }
                room
            }
            SidewallFlange::OnPan { width, tape_width, edge_to_fasteners, .. } => {
                let reach = [chosen("flange.on-pan.width", *width), chosen("wall.stands_out", self.wall.stands_out)];
                book.ask([cover(), edge()], reach, "a wider flange");
                let row = [chosen("flange.on-pan.edge_to_fasteners", *edge_to_fasteners)];
                book.ask(row, [chosen("flange.on-pan.tape_width", *tape_width)], "wider tape, or fasteners nearer to the edge");
                Some(levels.tape)
            }
        };
        if let PanelSide::TurnedUp { height } = self.edge {
            let seams = chosen("the seam height", levels.seam_height).outside();
            book.ask([seams], [chosen("edge.turned-up.height", height)], "an edge turned up higher");
        }
        book.under("wall", |b| self.wall.asks(b, above));
        if let SidewallFoot::DiesIntoWall { kick_out: Some(k) } = &self.foot {
            book.under("foot.dies-into-wall.kick_out", |b| {
                b.ask([rule("least_throw.least", &k.least_throw)], [chosen("throw", k.throw)], "a greater throw");
                b.ask([rule("least_lap.least", &k.least_lap)], [chosen("lap", k.lap)], "a longer lap");
            });
        }
    }
}

impl OffsetCleat {
    fn asks(&self, book: &mut RuleBook, pan: Length) {
        let (fold, gap) = (|| chosen("fold", self.fold), || chosen("gap", self.gap));
        book.ask([chosen("tape_width", self.tape_width), chosen("tongue", self.tongue)], [chosen("width", self.width)], "a wider cleat, or narrower tape");
        let row = chosen("screws_below_tape_edge", self.screws_below_tape_edge);
        book.ask([row], [chosen("tape_width", self.tape_width)], "wider tape, or screws nearer to its edge");
        book.ask([chosen("least_engagement", self.least_engagement), gap()], [fold()], "a longer fold, or a smaller gap");
        // In the cold the whole fold goes under it.
        book.ask([fold()], [chosen("tongue", self.tongue)], "a longer tongue, or a shorter fold");
        book.keeps_moving(fold(), gap());
        book.ask([chosen("the pan", pan).outside()], [chosen("rise", self.rise), chosen("tape", self.tape)], "a greater rise");
    }
}

impl ValleyHook {
    fn asks(&self, book: &mut RuleBook, levels: &Levels) {
        match self {
            ValleyHook::OffsetCleat { cleat, .. } => book.under("hook.offset-cleat.cleat", |b| cleat.asks(b, levels.pan)),
            ValleyHook::ReceiverFold { depth, opening, gap, fold, least_engagement } => book.under("hook.receiver-fold", |b| {
                let (fold, gap) = (|| chosen("fold", *fold), || chosen("gap", *gap));
                b.ask([chosen("least_engagement", *least_engagement), gap()], [fold()], "a longer fold, or a smaller gap");
                b.ask([fold()], [chosen("depth", *depth)], "a deeper receiver, or a shorter fold");
                b.keeps_moving(fold(), gap());
                b.ask([chosen("the pan", levels.pan).outside()], [chosen("opening", *opening)], "a wider opening");
            }),
        }
    }

    /// Its gap and its reach, as parts.
    fn parts(&self) -> [Part; 2] {
        let (gap, reach) = match self {
            ValleyHook::OffsetCleat { .. } => ("hook.offset-cleat.cleat.gap", "hook.offset-cleat.cleat.width"),
            ValleyHook::ReceiverFold { .. } => ("hook.receiver-fold.gap", "hook.receiver-fold.depth"),
        };
        [chosen(gap, self.gap()), chosen(reach, self.reach())]
    }
}

impl ValleyDetail {
    pub(crate) fn asks(&self, book: &mut RuleBook, (first, second): (&Levels, &Levels)) {
        let open = || chosen("open_width", self.open_width);
        book.ask([rule("least_open_width.least", &self.least_open_width)], [open()], "a greater open width");
        if let Some(rib) = self.rib {
            book.ask([chosen("rib.half_width", rib.half_width)], [open().half()], "a narrower rib");
        }
        let path = book.at("open_width");
        for (name, side, levels) in [("first", &self.first, first), ("second", &self.second, second)] {
            let open = || chosen(path.clone(), self.open_width).outside().half();
            book.under(name, |b| {
                let leg = || chosen("leg", side.leg);
                // At the slope that asks for the least of all: what no pitch can cure.
                b.ask([rule("least_leg", side.least_leg.mildest())], [leg()], "a wider pan");
                let [gap, reach] = side.hook.parts();
                b.ask([rule("least_beyond.least", &side.least_beyond), gap, reach, open()], [leg()], "a wider pan, or a smaller open width");
                if let Some(lap) = b.panels_over_metal() {
                    b.ask([lap, open()], [leg()], "a wider pan, or a smaller open width");
                }
                side.hook.asks(b, levels);
            });
        }
    }
}

impl TopEdge {
    fn asks(&self, book: &mut RuleBook) {
        book.ask([chosen("hem", self.hem)], [chosen("screws_below", self.screws_below)], "screws farther from the edge, or a narrower hem");
    }
}

impl CurbBackDetail {
    pub(crate) fn asks(&self, book: &mut RuleBook, levels: &Levels) {
        let (clear, reach) = (|| chosen("clear_width", self.clear_width), || chosen("reach", self.reach));
        book.ask([rule("least_clear_width.least", &self.least_clear_width)], [clear()], "a greater clear width");
        let seams = [clear(), chosen("seam_cut_back", self.seam_cut_back)];
        book.ask([rule("least_to_seams.least", &self.least_to_seams)], seams, "seams cut back farther");
        book.ask([rule("under_panels.least", &self.under_panels), clear()], [reach()], "a pan that reaches farther");
        let [gap, hook] = self.hook.parts();
        book.ask([rule("least_beyond.least", &self.least_beyond), clear(), gap, hook], [reach()], "a pan that reaches farther, or a smaller clear width");
        if let Some(lap) = book.panels_over_metal() {
            book.ask([lap, clear()], [reach()], "a pan that reaches farther");
        }
        book.under("top_edge", |b| self.top_edge.asks(b));
        // The leg stands on the pan itself.
        book.under("wall", |b| self.wall.asks(b, Some(Length::ZERO)));
        self.hook.asks(book, levels);
    }
}

impl PitchTransitionDetail {
    pub(crate) fn asks(&self, book: &mut RuleBook, (lower, upper): (&Levels, &Levels)) {
        book.under("end", |b| self.end.asks_to_line(b, lower));
        book.under("cleat", |b| self.cleat.asks(b, upper.pan));
        book.under("top_edge", |b| self.top_edge.asks(b));
        let (front, head_lap) = (|| chosen("front_below_top", self.front_below_top), || rule("head_lap.least", &self.head_lap));
        let width = || chosen("cleat.width", self.cleat.width);
        book.ask([head_lap(), front()], [chosen("upper_flange", self.upper_flange)], "a longer upper flange");
        book.ask([chosen("cleat.gap", self.cleat.gap)], [head_lap()], "a greater head-lap, or a smaller gap");
        book.ask([width(), chosen("top_edge.screws_below", self.top_edge.screws_below)], [front()], "a front lower on the flange, or a narrower cleat");
        if let Some(lap) = book.panels_over_metal() {
            book.ask([lap], [front(), chosen("cleat.gap", self.cleat.gap)], "a front lower on the flange");
        }
    }
}

impl StepDetail {
    pub(crate) fn asks(&self, book: &mut RuleBook, lower: &Levels) {
        let (l, u) = (&self.lower, &self.upper);
        book.under("lower.end", |b| l.end.asks(b, lower));
        let (depth, below) = (|| chosen("upper.face.depth", u.face.depth), || chosen("lower.below_edge", l.below_edge));
        book.ask([rule("lower.lap.least", &l.lap), below()], [depth()], "a deeper face, or a leg that goes up higher");
        book.ask([chosen("lower.fasteners_below_top", l.fasteners_below_top), below()], [depth()], "fasteners nearer to the top");
        book.under("upper", |b| {
            drip_trim(b, &u.flange, &u.strip, &u.panel);
            u.face.asks(b, u.sheet);
        });
    }
}

impl ExpansionAcrossDetail {
    pub(crate) fn asks(&self, book: &mut RuleBook, levels: &Levels) {
        book.under("flashing", |b| self.flashing.asks(b, (levels, levels)));
    }
}

impl ExpansionAlongDetail {
    pub(crate) fn asks(&self, book: &mut RuleBook, levels: &Levels) {
        let turn_up = || chosen("turn_up", self.turn_up);
        book.ask([rule("upstand.least", &self.upstand)], [turn_up()], "an edge turned up higher");
        book.ask([chosen("the seam height", levels.seam_height).outside()], [turn_up()], "an edge turned up higher");
        book.ask([chosen("clearance", self.clearance)], [chosen("gap", self.gap)], "a wider gap");
        let hook = [chosen("engagement", self.engagement), chosen("clearance", self.clearance), chosen("sheet.thickness", self.sheet.thickness)];
        book.ask(hook, [chosen("hook", self.hook)], "a longer hook");
        let row = [chosen("fasteners_from_edge", self.fasteners_from_edge)];
        book.ask(row, [chosen("curb_width", self.curb_width)], "a wider curb, or fasteners nearer to the cleat's edge");
    }
}

impl CopingSide {
    fn asks(&self, book: &mut RuleBook, sheet: TrimSheet) {
        let depth = || chosen("depth", self.depth);
        if let Some(over) = &self.over {
            book.ask([rule("over.rule.least", &over.rule), chosen("over.below_top", over.below_top)], [depth()], "a deeper face");
        }
        match &self.hold {
            CopingHold::Cleat(cleat) => book.under("hold.cleat", |b| cleat.asks(b, sheet)),
            CopingHold::Screws(s) => {
                book.ask([chosen("hold.screws.above_bend", s.above_bend)], [depth()], "a deeper face, or screws nearer to its bend");
                let slot = [chosen("hold.screws.shank", s.shank), chosen("hold.screws.travel", s.travel)];
                book.ask(slot, [chosen("hold.screws.slot", s.slot)], "a longer slot, or shorter pieces");
            }
        }
    }
}

impl CopingDetail {
    pub(crate) fn asks(&self, book: &mut RuleBook) {
        book.under("roof_side", |b| self.roof_side.asks(b, self.sheet));
        book.under("outside", |b| self.outside.asks(b, self.sheet));
    }
}

impl JunctionInput {
    /// What its rules ask, under its own name.
    pub(super) fn asks(&self, book: &mut RuleBook) {
        book.under(format!("{}.detail", self.name()), |b| match self {
            JunctionInput::Coping(c) => c.detail.asks(b),
            JunctionInput::CurbBack(c) => c.detail.asks(b, &c.roof.levels),
            JunctionInput::Eave(e) => e.detail.asks(b),
            JunctionInput::ExpansionAcross(e) => e.detail.asks(b, &e.roof.levels),
            JunctionInput::ExpansionAlong(e) => e.detail.asks(b, &e.first.levels),
            JunctionInput::Headwall(h) => h.detail.asks(b, &h.roof.levels),
            JunctionInput::HighSide(h) => h.detail.asks(b, &h.roof.levels),
            JunctionInput::Hip(h) => h.detail.asks(b, (&h.first, &h.second)),
            // A boot is bought, and its rule stands alone.
            JunctionInput::Pipe(_) => {}
            JunctionInput::PitchTransition(t) => t.detail.asks(b, (&t.lower.levels, &t.upper.levels)),
            JunctionInput::Rake(k) => k.detail.asks(b, &k.levels),
            JunctionInput::Ridge(k) => k.detail.asks(b, (&k.first.levels, &k.second.levels)),
            JunctionInput::Sidewall(s) => s.detail.asks(b, &s.roof.levels),
            JunctionInput::Step(s) => s.detail.asks(b, &s.lower.levels),
            JunctionInput::Valley(v) => v.detail.asks(b, (&v.first, &v.second)),
        });
    }
}
