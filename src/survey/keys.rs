//! The keys of a survey and what the messages say of them.

use super::Found;
use super::layers::{Key, Sign};
use crate::units::Measure;

pub(super) const TOP_KEYS: &[&str] =
    &["survey", "units", "job", "site", "post", "screen", "footing", "all_runs", "run", "order"];
/// Keys that people write at the top of the file, where they belong, and what to do.
pub(super) const NOT_AT_THE_TOP: &[(&[&str], &str, &str)] = &[
    (&["title", "prepared_for", "measured_by", "date", "note"], "to [job]", "write it below [job]"),
    (
        &[
            "wind_code",
            "wind_speed",
            "wind_speed_source",
            "risk_category",
            "exposure",
            "topographic_factor",
            "ground_elevation",
            "soil",
            "footing_method",
        ],
        "to [site]",
        "write it below [site]",
    ),
    (&["hill"], "to [site]", "write [site.hill]"),
    (
        &["bays", "height", "ends", "line_post", "end_post", "chain_link"],
        "to a run",
        "write it below [[run]], or below [all_runs] if it is so for all of them",
    ),
];
pub(super) const JOB_KEYS: &[&str] = &["title", "prepared_for", "measured_by", "date", "note"];
pub(super) const SITE_KEYS: &[&str] = &[
    "wind_code",
    "wind_speed",
    "wind_speed_source",
    "risk_category",
    "hurricane_coast",
    "design",
    "soil",
    "footing_method",
    "note",
    "from",
];
/// The keys that say the size of a post; each kind of post has one of them.
pub(super) const POST_SIZES: &[&str] =
    &["girth", "diameter", "width", "section", "modulus", "moment", "timber"];
/// The keys of a post, in the order in which they are best written.
pub(super) const POST_KEYS: &[&str] = &[
    "girth",
    "diameter",
    "width",
    "section",
    "nominal_wall",
    "measured_wall",
    "seamless",
    "yield",
    "rust_at_grade",
    "modulus",
    "moment",
    "moment_is",
    "face_width",
    "timber",
    "species",
    "grade",
    "service",
    "incised",
    "note",
    "from",
    "like",
];
/// The keys of a run that say what kind its posts are.
pub(super) const POSTS_OF_A_RUN: &[&str] =
    &["line_post", "end_post", "corner_post", "gate_post", "other_posts"];
pub(super) const POST_RESERVED: &[&str] = &["condition"];
pub(super) const SCREEN_KEYS: &[&str] = &[
    "cloth",
    "solidity",
    "density",
    "colour",
    "air_permeability",
    "over",
    "weight",
    "height",
    "bottom",
    "top",
    "face",
    "condition",
    "fastening",
    "vents",
    "bays",
    "note",
    "from",
    "like",
];
/// Keys that people write at a run and that belong to its cloth, where, and what to do.
pub(super) const IN_ITS_SCREEN: (&[&str], &str, &str) =
    (&["solidity", "cloth", "condition"], "in its screen", "move it into screen = { … }");
/// The keys of a cloth that hangs over another.
pub(super) const OVER_KEYS: &[&str] =
    &["cloth", "solidity", "density", "colour", "air_permeability", "note", "from"];
pub(super) const OVER: &str = "over = \"closed mesh\" or over = { solidity = 0.9 }";
pub(super) const AIR_TEST_KEYS: &[&str] = &["flow", "at", "note", "from"];
pub(super) const AIR_TEST: &str = "air_permeability = { flow = \"500 cfm/ft2\", at = \"125 Pa\" }";
pub(super) const FASTENING_KEYS: &[&str] = &[
    "kind",
    "strength",
    "age",
    "rope",
    "years",
    "spacing",
    "rows",
    "tied_to",
    "panel",
    "grommet",
    "offset",
    "stiffness",
    "slack",
    "note",
    "from",
];
/// The keys of the order list, in the order in which they are best written.
pub(super) const ORDER_KEYS: &[&str] = &[
    "end_gap",
    "joint_gap",
    "top_gap",
    "longest_panel",
    "hem_allowance",
    "spares",
    "lacing",
    "knot_end",
    "rope_waste",
    "currency",
    "cloth_price",
    "tie_price",
    "rope_price",
    "grommet_price",
    "crew_time",
    "service_life",
    "warranty",
    "note",
];
pub(super) const VENT_KEYS: &[&str] = &["width", "height", "per_bay", "note", "from"];
pub(super) const FOOTING_KEYS: &[&str] =
    &["shape", "width", "depth", "constrained_at_ground", "isolated", "note", "from", "like"];
/// The keys of the soil, in the order in which they are best written.
pub(super) const SOIL_KEYS: &[&str] = &[
    "class",
    "lateral_bearing",
    "undrained_strength",
    "friction",
    "cohesion",
    "unit_weight",
    "density",
    "under_water",
    "quality",
    "ground_factor",
    "note",
    "from",
];
/// The keys of a rail, in the order in which they are best written.
pub(super) const RAIL_KEYS: &[&str] =
    &["diameter", "nominal_wall", "measured_wall", "seamless", "yield", "splice", "note", "from"];
pub(super) const RUN_ONLY_KEYS: &[&str] =
    &["name", "court", "faces", "bays", "other_posts", "guy", "brace", "start", "finish"];
/// The keys of a run, in the order in which they are best written.
pub(crate) const RUN_KEYS: &[&str] = &[
    "name",
    "court",
    "faces",
    "height",
    "base_above_ground",
    "top_rail",
    "mid_rail",
    "bottom_rail",
    "chain_link",
    "footing",
    "end_footing",
    "corner_footing",
    "gate_footing",
    "line_post",
    "end_post",
    "corner_post",
    "gate_post",
    "bays",
    "ends",
    "start",
    "finish",
    "screen",
    "other_posts",
    "guy",
    "brace",
    "note",
    "from",
];
/// The keys of back braces and guys, in the order in which they are best written.
pub(super) const GUY_KEYS: &[&str] = &[
    "posts",
    "kind",
    "height",
    "back",
    "side",
    "diameter",
    "nominal_wall",
    "yield",
    "allowed",
    "note",
    "from",
];
/// The keys of braces, in the order in which they are best written.
pub(super) const BRACE_KEYS: &[&str] =
    &["posts", "height", "diameter", "nominal_wall", "yield", "rod", "rod_yield", "note", "from"];
/// How a thing was found.
pub(super) const FROM: &[&str] =
    &[Found::Tape.key(), Found::Caliper.key(), Found::Drawing.key(), Found::Told.key(), Found::Guess.key()];
/// More bays than any fence has: a slip of the finger, not a run.
pub(super) const MOST_BAYS: usize = 2000;

pub(super) const HEIGHT: Key = Key {
    key: "height",
    measure: Measure::Length,
    about: "from the ground to the top rail, with a tape",
    example: "\"10 ft\"",
    sign: Sign::Positive,
    open: false,
};
/// What the foot of the posts stands on.
pub(super) const BASE: Key = Key {
    key: "base_above_ground",
    about: "from the ground below a bank or wall up to the foot of the posts, on the side where it is lower; 0 on \
            level ground",
    example: "\"3 ft\"",
    sign: Sign::NotNegative,
    ..HEIGHT
};
pub(super) const SMALL: Key = Key {
    key: "diameter",
    measure: Measure::Small,
    about: "outside diameter, with a caliper, or a tape round it divided by 3.1416",
    example: "\"1.660 in\"",
    sign: Sign::Positive,
    open: false,
};
/// Yield strength of the steel of a post.
pub(super) const YIELD: Key = Key {
    key: "yield",
    measure: Measure::Stress,
    about: "yield strength of the steel by the mill's paper, or \"unknown\"",
    example: "\"30 ksi\"",
    sign: Sign::Positive,
    open: true,
};

pub(super) const fn length(key: &'static str, about: &'static str, example: &'static str) -> Key {
    Key { key, about, example, ..HEIGHT }
}
pub(super) const fn small(key: &'static str, about: &'static str, example: &'static str, open: bool) -> Key {
    Key { key, about, example, open, ..SMALL }
}
