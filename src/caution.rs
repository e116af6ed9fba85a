//! The one list of remarks a reader should see, with their wording, and the cautions of every result.

use crate::fastening::wire::{OWN_TIES, WireBreaking, tie_wires};
use crate::member::Format;
use crate::units::{Force, Length, LineLoad, Measure, System, Value, number, trimmed};
use crate::workings::Blank;

/// Something a reader of a result must know.
#[derive(Debug, Clone, PartialEq)]
#[allow(missing_docs)]
pub enum Remark {
    /// The cloth leaves a gap below: what it changes at the posts.
    GapBelow {
        run: String,
        bottom: Length,
        top: Length,
        statics: f64,
        inside: Option<f64>,
        ends: Option<f64>,
    },
    /// Windows cut in the cloth: what they change, with no credit in the check.
    Windows { run: String, share: f64, change: f64, asked: bool },
    /// A density was taken as solidity.
    DensityTaken { screen: String },
    /// A density of light yarn says little: solid at worst.
    DensityOfLightYarn { screen: String, colour: String },
    /// The solidity of a cloth is not known.
    SolidityUnknown { screen: String, low: f64 },
    /// The solidity of a cloth comes from the catalogue.
    SolidityFromCatalogue { cloth: String, known: String },
    /// A test of air permeability: what it means, with no credit in the check.
    AirPermeability { screen: String, low: f64, high: f64, taken: f64 },
    /// Cloth hung over cloth.
    ClothOverCloth { run: String, count: usize },
    /// How wind on both faces of corner posts is reckoned.
    CornerPosts { corners: Vec<String> },
    /// Cloth on a gate.
    ClothOnGate { run: String },
    /// Open gate leaf.
    Gate { run: String },
    /// Cloth that is iced, or may be.
    IcedCloth { run: String, known: bool },
    /// A footing that a slab or beam is said to hold at the ground.
    FootingHeld { footing: String },
    /// A footing about which the soil is chosen to count twice.
    FootingIsolated { footing: String },
    /// A method of footings that belongs with another kind of wind load.
    FootingMethod { method: &'static str, level: &'static str },
    /// Footings are held against the wind.
    FootingsChecked { methods: String },
    /// A fence on a bank or a wall.
    Raised { run: String, base: Length },
    /// Nothing was said of hills.
    Hill,
    /// What a hill does, at the top of the highest fence.
    OnHill { top: Length, factor: f64, clause: String, taken: &'static str },
    /// A hill for which the code asks for no factor.
    HillWithoutFactor { because: &'static str },
    /// A wall or grade comes from the catalogue of pipe.
    PipeFromCatalogue { kind: String, names: String },
    /// How well a catalogue that was used is known.
    Catalogue { title: String, known: String },
    /// No grade is known: the lower yield.
    UnknownYield { kind: String, because: &'static str },
    /// A shape given by its modulus: what is not worked.
    OpenShape { kind: String },
    /// A moment the survey gives is taken as it is.
    GivenMoment { kind: String, format: Format },
    /// A timber post: its rows of the catalogue and what is not worked.
    Timber { kind: String, rows: Vec<String> },
    /// Cloth that is tied to the steel mesh alone: what the mesh's own ties and bands take, and what one of these ties does.
    TiedToChainLink { run: String, load: Option<(LineLoad, Force)> },
    /// Cloth over a part of the fence where a wire stands for a rail.
    HangsOnWire { run: String, why: Vec<&'static str> },
    /// How rails were checked.
    Rails { runs: String },
    /// Cloth held at its upright edges only pulls the posts there together.
    InPlane { run: String, pull: Force },
    /// Steel is checked by allowable stress design.
    AllowableStress,
    /// No design wind speed.
    NoSpeed,
    /// The ratio is below 1 and the limit gust below the design wind all the same.
    LimitBelowDesign { run: String },
    /// The least pressure of the code governs at the design wind.
    LeastPressure { run: String, clause: String },
    /// Between the thresholds of the code, ours.
    MiddleSolidity { run: String },
    /// Case B is listed and not applied.
    CaseB { run: String },
    /// Posts are worked by hand statics alone.
    HandStatics,
    /// Back braces and guys stand and do not count.
    GuysNotCounted,
}

/// A figure without decimals: what it is made from is not known so well.
fn whole(value: Value, system: System) -> String {
    format!("{} {}", number(value.measure.in_unit(value.si, system), 0), value.measure.printed(system).0)
}

impl Remark {
    /// A name for programs.
    #[must_use]
    pub const fn id(&self) -> &'static str {
        match self {
            Self::GapBelow { .. } => "gap-below",
            Self::Windows { .. } => "windows",
            Self::DensityTaken { .. } => "density-taken-as-solidity",
            Self::DensityOfLightYarn { .. } => "density-of-light-yarn",
            Self::SolidityUnknown { .. } => "solidity-unknown",
            Self::SolidityFromCatalogue { .. } => "solidity-from-catalogue",
            Self::AirPermeability { .. } => "air-permeability",
            Self::ClothOverCloth { .. } => "cloth-over-cloth",
            Self::CornerPosts { .. } => "corner-posts",
            Self::ClothOnGate { .. } => "cloth-on-gate",
            Self::Gate { .. } => "open-gate",
            Self::IcedCloth { .. } => "iced-cloth",
            Self::FootingHeld { .. } => "footing-held-at-the-ground",
            Self::FootingIsolated { .. } => "footing-isolated",
            Self::FootingMethod { .. } => "footing-method-of-another-code",
            Self::FootingsChecked { .. } => "footings-checked",
            Self::Raised { .. } => "raised",
            Self::Hill => "hill",
            Self::OnHill { .. } => "on-a-hill",
            Self::HillWithoutFactor { .. } => "hill-without-factor",
            Self::PipeFromCatalogue { .. } => "pipe-from-catalogue",
            Self::Catalogue { .. } => "catalogue",
            Self::UnknownYield { .. } => "unknown-yield",
            Self::OpenShape { .. } => "open-shape",
            Self::GivenMoment { .. } => "given-moment",
            Self::Timber { .. } => "timber",
            Self::TiedToChainLink { .. } => "tied-to-chain-link",
            Self::HangsOnWire { .. } => "hangs-on-wire",
            Self::Rails { .. } => "rails",
            Self::InPlane { .. } => "in-plane-pull",
            Self::AllowableStress => "allowable-stress",
            Self::NoSpeed => "no-wind-speed",
            Self::LimitBelowDesign { .. } => "limit-below-design",
            Self::LeastPressure { .. } => "least-pressure",
            Self::MiddleSolidity { .. } => "middle-solidity",
            Self::CaseB { .. } => "case-b-listed",
            Self::HandStatics => "hand-statics",
            Self::GuysNotCounted => "guys-not-counted",
        }
    }

    /// The wording.
    #[must_use]
    pub fn text(&self, system: System) -> String {
        let length = |length: &Length| Value::new(*length, Measure::Length).written(system);
        let two = |ratio: &f64| format!("{ratio:.2}");
        match self {
            Self::GapBelow { run, bottom, top, statics, inside, ends } => {
                let mut by_code = Vec::new();
                if let Some(inside) = inside {
                    by_code.push(format!("{} in the middle", two(inside)));
                }
                if let Some(ends) = ends {
                    by_code.push(format!("{} at the ends", two(ends)));
                }
                format!(
                    "{run}: the cloth hangs from {} to {} and leaves a gap below. That does not help the posts: \
                     against cloth down to the ground their moment is {} times by statics at equal pressure, and \
                     by the code {}.",
                    length(bottom),
                    length(top),
                    two(statics),
                    by_code.join(" and ")
                )
            }
            Self::Windows { run, share, change, asked } => {
                let what = if *asked {
                    format!("the windows asked for ({} % of the cloth)", trimmed(share * 100.0, 2))
                } else {
                    format!(
                        "two windows of {} in each bay ({} % of the cloth)",
                        if system == System::Us { "8 in by 5 in" } else { "203 mm by 127 mm" },
                        trimmed(share * 100.0, 2)
                    )
                };
                format!(
                    "{run}: {what} change the load by {} % by the code's factor. {}The check gives windows no \
                     credit.",
                    trimmed(change * 100.0, 2),
                    if change.abs() < 0.02 { "That is next to nothing. " } else { "" }
                )
            }
            Self::DensityTaken { screen } => format!(
                "cloth \"{screen}\": a density is a figure for light. It is taken as solidity because the yarn is \
                 black or dark; ask the maker for the open area."
            ),
            Self::DensityOfLightYarn { screen, colour } => format!(
                "cloth \"{screen}\": a density is a figure for light, and {colour} yarn lets light through where \
                 no wind passes. Anything from the density up to solid is possible; ask the maker for the open area."
            ),
            Self::SolidityUnknown { screen, low } => format!(
                "cloth \"{screen}\": solidity unknown, so {low:.2} (the most open of the cloths made for courts) to 1.00 was \
                 tried. \
                 Ask the maker for the open area."
            ),
            Self::SolidityFromCatalogue { cloth, known } => {
                format!("cloth \"{cloth}\": solidity from the catalogue of cloths ({known}).")
            }
            Self::AirPermeability { screen, low, high, taken } => {
                let (least, most) = (two(low), two(high));
                let range = if least == most { most } else { format!("{least} to {most}") };
                let denser = if *high > *taken + 0.005 {
                    format!(
                        " That is denser than the {taken:.2} the check takes: ask the maker for the open area."
                    )
                } else {
                    String::new()
                };
                format!(
                    "cloth \"{screen}\": by its test of air permeability it holds wind back as round wire mesh \
                     {range} solid does. The loss-coefficient model of `compare` takes the test; the check gives it \
                     no credit, because a code knows open area and no test (ours).{denser}"
                )
            }
            Self::ClothOverCloth { run, count } => format!(
                "{run}: {count} cloths hang one over the other. The check takes the solidity of all of them together \
                 over the whole height and all bays of the first, which is on the heavy side for a strip or a banner \
                 (ours); loads of layers are never added."
            ),
            Self::CornerPosts { corners } => format!(
                "corner posts ({}) take the worst of each run alone and 0.75 of both at once, as round posts (ours).",
                corners.join("; ")
            ),
            Self::ClothOnGate { run } => format!(
                "{run}: the cloth is taken to hang on the gate too. The gate's own frame, hinges and latch: not checked."
            ),
            Self::Gate { run } => {
                format!(
                    "{run}: gate posts take half the opening with the gate shut. An open leaf hangs on its hinge post alone \
                     and loads it the other way round as well: not checked. Shut and latch gates before wind."
                )
            }
            Self::Hill => {
                "topographic_factor is left out and taken as 1.0. Does the fence stand on a hill or the \
                           edge of a bank? Then the wind is stronger: describe it in [site.hill]."
                    .to_owned()
            }
            Self::IcedCloth { run, known } => format!(
                "{run}: {} counts as solid (1.00, ours). Ice with wind, its weight, and ice on the steel mesh: not checked.",
                if *known { "the iced cloth" } else { "the cloth may be iced, and iced cloth" }
            ),
            Self::FootingHeld { footing } => format!(
                "footing \"{footing}\": taken as held at the ground, as the survey says. That asks for a slab or beam that \
                 can take the reaction; a mowing strip or loose asphalt is not accepted everywhere."
            ),
            Self::FootingIsolated { footing } => format!(
                "footing \"{footing}\": lateral bearing counted twice (IBC 1806.3.4), as the survey says: for an isolated \
                 pole that half an inch of movement at the ground does not harm. Whether a post of a row is one is a \
                 judgement for an engineer."
            ),
            Self::FootingMethod { method, level } => format!(
                "footings are worked by {method} because the survey asks for it. It belongs with another kind of wind \
                 code; here it is given {level}. Never mix its depths with those of another method."
            ),
            Self::FootingsChecked { methods } => format!(
                "footings by {methods}: depths differ threefold from method to method, each with its own level of wind and \
                 its own factors. compare --footings sets them side by side."
            ),
            Self::Raised { run, base } => format!(
                "{run}: its posts stand {} above the ground of the side where that is lower, so the wind is that of its \
                 height above there; moments are about the foot of the posts. The bank or wall itself, and how the posts \
                 are held in it: not checked.",
                length(base)
            ),
            Self::OnHill { top, factor, clause, taken } => format!(
                "on this hill the pressure of the wind is {} times that over level ground at {}, and more lower down \
                 ({clause}). Conditions of 26.8.1 were taken {taken}.",
                two(factor),
                length(top)
            ),
            Self::HillWithoutFactor { because } => {
                format!("the hill makes no difference to the wind: {because}.")
            }
            Self::PipeFromCatalogue { kind, names } => format!(
                "{kind}: wall or grade unknown, so every catalogue pipe of its diameter was tried ({names})."
            ),
            Self::Catalogue { title, known } => format!("catalogue, {title}: {known}."),
            Self::UnknownYield { kind, because } => format!("{kind}: {because}."),
            Self::OpenShape { kind } => format!(
                "post \"{kind}\": worked from the section modulus and the yield that the survey gives. Twist of an \
                 open post, buckling of its parts beyond what that modulus holds, and shear: not checked."
            ),
            Self::GivenMoment { kind, format } => format!(
                "post \"{kind}\": the moment it may carry is taken as the survey gives it, as {}. Who gave it, for \
                 which post, footing and age: not checked.",
                match format {
                    Format::Lrfd => "a design strength against the whole design wind",
                    Format::Asd => "an allowable moment against 0.6 of the design wind",
                }
            ),
            Self::Timber { kind, rows } => format!(
                "post \"{kind}\": timber by NDS 2018, allowable stress against 0.6 of the design wind, as {}. By load \
                 and resistance factors ratios come out 23 % higher: the workings have both. Rot at grade, splits, knots and holes: not checked.",
                rows.join(" to ")
            ),
            Self::TiedToChainLink { run, load } => {
                let load = load.as_ref().map_or_else(String::new, |(load, tie)| {
                    let (load, tie) = (whole(Value::of(*load), system), whole(Value::of(*tie), system));
                    let spacing = Value::new(OWN_TIES.value, Measure::Small).written(system);
                    format!(
                        ": pulled off at the design wind each row hands them up to {load}, with a tie every {spacing} \
                         ({}) up to {tie} on one tie",
                        OWN_TIES.because
                    )
                });
                let wires: Vec<String> = tie_wires()
                    .iter()
                    .map(|wire| {
                        let (strength, diameter) = (wire.strength_high, wire.diameter);
                        let at_most = WireBreaking { strength, diameter }.work(&mut Blank);
                        format!(
                            "The steel {} of ASTM F626 breaks at {} at most pulled straight ({}); hooked, it opens well \
                             before.",
                            wire.name,
                            whole(Value::of(at_most), system),
                            wire.known
                        )
                    })
                    .collect();
                format!(
                    "{run}: the cloth is tied to the chain link alone. What it pulls goes through the mesh to its own ties \
                     and bands{load}; they are not checked. {} Measure how far apart these ties are and how thick their \
                     wire is, and ask what one holds. Where a rail or tension bar is there, tie to it.",
                    wires.join(" ")
                )
            }
            Self::HangsOnWire { run, why } => {
                format!("{run}: {}. An engineer decides whether a rail is needed there.", why.join("; "))
            }
            Self::Rails { runs } => {
                format!(
                    "{runs}: rails are checked in bending and shear square on the fence, from post to post. What holds a \
                     rail to its posts, its sleeves, and the pull along it: not checked."
                )
            }
            Self::InPlane { run, pull } => format!(
                "{run}: cloth held at its upright edges only pulls the posts there towards each other with {} at the design \
                 wind, along the fence. Line posts have such a pull from both sides, end and corner posts from one: they \
                 are not checked for it. Tension bars and bands that take it there: their strength is not known.",
                whole(Value::of(*pull), system)
            ),
            Self::AllowableStress => {
                "steel is checked by allowable stress design, as the survey asks: 0.6 of the wind, safety \
                              factor 1.67. By strength design (φ 0.90, the whole wind) the same posts come out with \
                              ratios 11 % higher."
                    .to_owned()
            }
            Self::NoSpeed => {
                "no design wind speed is given: limit gusts are worked, the check at the design wind is \
                              not. Ask the building department for the basic wind speed."
                    .to_owned()
            }
            Self::LimitBelowDesign { run } => format!(
                "{run}: a ratio between 0.85 and 1.00 goes with a limit gust below the design wind. The design \
                 check takes 0.85 for the chance that the strongest wind comes from another direction; a gust \
                 that has come is taken as it is."
            ),
            Self::LeastPressure { run, clause } => format!(
                "{run}: at the design wind some posts are governed by the least pressure the code allows ({clause}), \
                 whatever the wind. Limit gusts know no least pressure."
            ),
            Self::MiddleSolidity { run } => format!(
                "{run}: between 0.30 and 0.70 solid the code knows an open frame only. The wall rule with its end \
                 zones is a case as well (ours), so that ends are not missed."
            ),
            Self::CaseB { run } => format!(
                "{run}: for runs of twice their cloth's height and longer, Case B (resultant 0.2 B off the middle) \
                 is left to Case C: a departure (ours)."
            ),
            Self::HandStatics => "posts are worked by hand statics: each takes the load of its own two bays. Rails hand \
                                  load from post to post. In runs of equal posts and bays of about 10 ft (3 m) that \
                                  can make a post's moment up to 11 % larger on soft ground, in a run of two bays 17 %; \
                                  stout end posts, stout rails or short bays can make it half as large again (ours). \
                                  --frame works posts and rails as one frame."
                .to_owned(),
            Self::GuysNotCounted => "the back braces and guys of the survey do not count here: hand statics knows none. \
                                     --frame works them."
                .to_owned(),
        }
    }
}

/// A caution that stands with every result.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Caution {
    /// A name for programs.
    pub id: &'static str,
    /// The signal word, after ANSI Z535; conformity is not claimed.
    pub word: &'static str,
    /// The wording.
    pub text: &'static str,
}

/// The cautions of every result, the one of the falling fence first.
pub const CAUTIONS: &[Caution] = &[
    Caution {
        id: "falling-fence",
        word: "WARNING",
        text: "A fence that fails with cloth on it can fall on people and kill. Nobody stays beside a screened \
               fence, and nobody climbs or works on it, in wind near these gusts.",
    },
    Caution {
        id: "licensed-engineer",
        word: "WARNING",
        text: "Anything over, near its limit, depending or not checked is for a licensed engineer to decide, not \
               for this sheet. Nothing here calls a fence safe.",
    },
    Caution {
        id: "local-code",
        word: "WARNING",
        text: "The local building code and permit office decide what wind is designed for and what needs a permit. \
               A permit exemption is no exemption from the wind.",
    },
    Caution {
        id: "cut-loose",
        word: "WARNING",
        text: "A screen cut loose in wind flogs and can injure. Take screens down before the wind, not in it.",
    },
    Caution {
        id: "screens-need-more",
        word: "WARNING",
        text: "ASTM F1043, 1.1.1, says of fences with windscreens: stronger framework, closer posts or back bracing. \
               A standard court fence is a bare one.",
    },
    Caution {
        id: "utilities",
        word: "WARNING",
        text: "Have buried utilities located before any hole is dug.",
    },
];

/// What whoever measures a fence must heed, beside the place where the work can hurt.
pub const MEASURING: &[Caution] = &[WIND, CLIMBING, STEEL, DIGGING];

/// Before anybody stands beside the fence.
pub const WIND: Caution = Caution {
    id: "no-measuring-in-wind",
    word: "WARNING",
    text: "A fence with cloth on it can fall in wind and kill. Do not measure beside it in wind.",
};

/// Before anything above one's reach is measured.
pub const CLIMBING: Caution = Caution {
    id: "do-not-climb",
    word: "WARNING",
    text: "Do not climb the fence or stand on its rails. Work from the ground or a platform that stands by itself; what \
           is out of reach is unknown.",
};

/// Before posts, rust and wire are touched.
pub const STEEL: Caution = Caution {
    id: "cut-steel",
    word: "WARNING",
    text: "Cut tube, rust and wire ends cut hands and eyes: gloves and eye protection.",
};

/// Before a footing is laid bare.
pub const DIGGING: Caution = Caution {
    id: "utilities-before-digging",
    word: "WARNING",
    text: "Have buried utilities located before digging beside a footing. Dig at one post only, and tamp the soil back.",
};

/// Before cloth is hung.
pub const HANGING: Caution = Caution {
    id: "no-hanging-in-wind",
    word: "WARNING",
    text: "Nobody hangs cloth, or is on or beside a fence that carries it, in wind. Cloth half hung flogs, and a fence \
           that fails with it can fall on people and kill.",
};

/// While cloth is hung.
pub const LADDERS: Caution = Caution {
    id: "do-not-climb-to-hang",
    word: "WARNING",
    text: "Nobody climbs the fence, stands on its rails or leans a ladder on it: work from the ground or a platform that \
           stands by itself.",
};

/// What hanging does not ask for.
pub const NO_DIGGING: Caution = Caution {
    id: "no-digging",
    word: "NOTE",
    text: "Nothing on this list needs a hole, so buried utilities need not be located for it. For any post or footing \
           they must be.",
};

/// What no result of this version covers, one line each.
pub const NOT_CHECKED: &[(&str, &str)] = &[
    ("ice", "ice with wind; iced or frozen cloth is solid"),
    ("raised", "the wall or bank a fence stands on"),
    ("footing", "the concrete of a footing itself, base plates, a soft top foot of soil, slopes, frost"),
    ("earthquake", "earthquake, for fences of 6 ft (1.8 m) and over"),
    ("banners", "banners and signs hung on the cloth"),
    ("torsion", "twist of open (roll-formed) posts"),
    ("second-order", "the second-order effect of the fence's own weight (about 1 %)"),
    ("cloth", "the cloth itself, its hem and grommets"),
];

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{feet, newtons_per_metre, pounds};

    fn remarks() -> Vec<Remark> {
        let run = || "A".to_owned();
        let screen = || "windbreak".to_owned();
        vec![
            gap(Some(1.2), Some(1.1)),
            windows(0.004, 0.001, true),
            Remark::DensityTaken { screen: screen() },
            Remark::DensityOfLightYarn { screen: screen(), colour: "white".to_owned() },
            Remark::SolidityUnknown { screen: screen(), low: 0.5 },
            Remark::SolidityFromCatalogue { cloth: screen(), known: "measured".to_owned() },
            tested(0.8, 0.9, 0.85),
            Remark::ClothOverCloth { run: run(), count: 2 },
            Remark::CornerPosts { corners: vec!["A and B".to_owned()] },
            Remark::ClothOnGate { run: run() },
            Remark::Gate { run: run() },
            Remark::IcedCloth { run: run(), known: true },
            Remark::Raised { run: run(), base: feet(4.0) },
            Remark::Hill,
            Remark::OnHill { top: feet(10.0), factor: 1.5, clause: "26.8".to_owned(), taken: "as met" },
            Remark::HillWithoutFactor { because: "it is too low" },
            Remark::PipeFromCatalogue { kind: "line".to_owned(), names: "two".to_owned() },
            Remark::Catalogue { title: "pipe".to_owned(), known: "from memory".to_owned() },
            Remark::UnknownYield { kind: "line".to_owned(), because: "the grade is not known" },
            Remark::OpenShape { kind: "line".to_owned() },
            Remark::GivenMoment { kind: "line".to_owned(), format: Format::Lrfd },
            Remark::Timber { kind: "line".to_owned(), rows: vec!["No.2".to_owned(), "No.1".to_owned()] },
            Remark::TiedToChainLink { run: run(), load: Some((newtons_per_metre(700.0), pounds(45.0))) },
            Remark::HangsOnWire { run: run(), why: vec!["no bottom rail"] },
            Remark::Rails { runs: run() },
            Remark::InPlane { run: run(), pull: pounds(1130.0) },
            Remark::AllowableStress,
            Remark::NoSpeed,
            Remark::LimitBelowDesign { run: run() },
            Remark::LeastPressure { run: run(), clause: "29.7".to_owned() },
            Remark::MiddleSolidity { run: run() },
            Remark::CaseB { run: run() },
        ]
    }

    fn gap(inside: Option<f64>, ends: Option<f64>) -> Remark {
        Remark::GapBelow {
            run: "A".to_owned(),
            bottom: feet(2.0),
            top: feet(9.0),
            statics: 1.25,
            inside,
            ends,
        }
    }

    fn windows(share: f64, change: f64, asked: bool) -> Remark {
        Remark::Windows { run: "A".to_owned(), share, change, asked }
    }

    fn tested(low: f64, high: f64, taken: f64) -> Remark {
        Remark::AirPermeability { screen: "windbreak".to_owned(), low, high, taken }
    }

    #[test]
    fn each_remark_has_a_name_of_its_own_and_a_sentence_of_its_own_that_ends() {
        let (mut names, mut texts) = (Vec::new(), Vec::new());
        for remark in remarks() {
            let (name, text) = (remark.id(), remark.text(System::Us));
            assert!(
                name.len() > 3 && name.chars().all(|letter| letter.is_ascii_lowercase() || letter == '-'),
                "{name}"
            );
            assert!(text.len() > 20 && text.trim_end_matches(')').ends_with('.'), "{text}");
            assert!(!names.contains(&name) && !texts.contains(&text), "{name}: {text}");
            names.push(name);
            texts.push(text);
        }
    }

    #[test]
    fn what_a_gap_does_is_told_by_statics_and_by_what_the_code_knows() {
        let told = |inside, ends| gap(inside, ends).text(System::Us);
        assert!(told(Some(1.2), Some(1.1)).contains("1.25 times by statics"));
        assert!(told(Some(1.2), Some(1.1)).contains("by the code 1.20 in the middle and 1.10 at the ends."));
        assert!(told(Some(1.2), None).ends_with("by the code 1.20 in the middle."));
        assert!(told(None, Some(1.1)).ends_with("by the code 1.10 at the ends."));
    }

    #[test]
    fn windows_are_told_in_the_readers_units_and_next_to_nothing_is_called_so_below_two_per_cent() {
        let told = |change, system| windows(0.004, change, false).text(system);
        assert!(
            told(-0.001, System::Us).contains("two windows of 8 in by 5 in in each bay (0.4 % of the cloth)")
        );
        assert!(told(-0.001, System::Si).contains("two windows of 203 mm by 127 mm in each bay"));
        for (change, small) in [(-0.019, true), (0.019, true), (-0.02, false), (0.03, false)] {
            assert_eq!(told(change, System::Us).contains("next to nothing"), small, "{change}");
        }
    }

    #[test]
    fn what_pulls_along_a_fence_and_off_its_mesh_is_told_without_decimals_in_the_readers_units() {
        let pull = Remark::InPlane { run: "A".to_owned(), pull: pounds(1129.7) };
        let text = pull.text(System::Us);
        assert!(text.contains("towards each other with 1130 lbf at the design wind"), "{text}");
        let load = Some((newtons_per_metre(700.0), pounds(45.0)));
        let text = Remark::TiedToChainLink { run: "A".to_owned(), load }.text(System::Us);
        // 700 N/m are 47.97 lb/ft.
        assert!(text.contains("up to 48 lb/ft") && text.contains("up to 45 lbf on one tie"), "{text}");
    }

    #[test]
    fn cloth_that_tests_denser_than_the_check_takes_it_is_told_so() {
        let told = |low, high, taken| tested(low, high, taken).text(System::Us);
        assert!(
            told(0.8, 0.9, 0.85).contains("0.80 to 0.90 solid")
                && told(0.9, 0.9, 0.9).contains("mesh 0.90 solid")
        );
        assert!(!told(0.005, 0.005, 0.0).contains("denser than"));
        // Half a hundredth, so that no figure is called denser than itself.
        for (high, denser) in [(0.8, false), (0.854, false), (0.856, true), (0.9, true)] {
            assert_eq!(
                told(0.8, high, 0.85).contains("denser than the 0.85 the check takes"),
                denser,
                "{high}"
            );
        }
    }
}
