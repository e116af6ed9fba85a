//! The keys of the survey file as a crew meets them: on the printed form, in a draft and as a question.
//!
//! Each key stands here once, so that the form, the comment in a draft and the question cannot disagree. Keys that
//! a wind code declares for its site are described by the code itself.

use crate::units::System;

/// A key of the survey.
#[derive(Debug, Clone, Copy)]
pub(super) struct Field {
    /// Its name in the file.
    pub(super) key: &'static str,
    /// What it is.
    pub(super) what: &'static str,
    /// How to find it out; may be empty.
    pub(super) how: &'static str,
    us: &'static str,
    si: &'static str,
    /// Whether a crew may leave it `unknown`.
    pub(super) unknown: bool,
}

impl Field {
    /// A value as people write it.
    pub(super) const fn example(&self, system: System) -> &'static str {
        match system {
            System::Us => self.us,
            System::Si => self.si,
        }
    }
    /// The parts of an example that is a list.
    pub(super) fn example_list(&self) -> impl Iterator<Item = &'static str> {
        self.us.split(", ")
    }
    /// What it is and how to find it out, in one line.
    pub(super) fn sentence(&self) -> String {
        if self.how.is_empty() { self.what.to_owned() } else { format!("{}; {}", self.what, self.how) }
    }
    /// Whether it is a figure with a unit of either system.
    pub(super) fn us_and_si_differ(&self) -> bool {
        self.us != self.si
    }
    /// The same where a crew may leave it `unknown`.
    pub(super) const fn open(self) -> Self {
        Self { unknown: true, ..self }
    }
    /// The same where it must be known.
    pub(super) const fn known(self) -> Self {
        Self { unknown: false, ..self }
    }
}

const fn words(key: &'static str, what: &'static str, how: &'static str, example: &'static str) -> Field {
    Field { key, what, how, us: example, si: example, unknown: false }
}

const fn figure(
    key: &'static str,
    what: &'static str,
    how: &'static str,
    [us, si]: [&'static str; 2],
) -> Field {
    Field { key, what, how, us, si, unknown: false }
}

pub(super) const UNITS: Field =
    words("units", "how results are written", "us: feet, inches, mph; si: metres, millimetres, m/s", "us");
pub(super) const FROM: Field =
    words("from", "how it was found", "tape, caliper, drawing, told or guess", "tape");
pub(super) const FROM_WAYS: [&str; 5] = ["tape", "caliper", "drawing", "told", "guess"];
pub(super) const NOTE: Field =
    words("note", "what a reader must know", "printed with the result", "measured from the ground only");
pub(super) const LIKE: Field = words(
    "like",
    "name of the kind that this one is like",
    "keys written beside it win over those of the kind",
    "closed9",
);
pub(super) const FACES: [&str; 2] = ["inside", "outside"];
pub(super) const COMPASS: [&str; 8] =
    ["north", "north-east", "east", "south-east", "south", "south-west", "west", "north-west"];

pub(super) mod job {
    use super::{Field, words};

    pub(in crate::report) const TITLE: Field =
        words("title", "what the survey is for, in one line", "", "Tarnwick Green courts 1-3, new cloth");
    pub(in crate::report) const PREPARED_FOR: Field =
        words("prepared_for", "who asked for it", "", "Parks office");
    pub(in crate::report) const MEASURED_BY: Field =
        words("measured_by", "who measured, and with what", "", "crew 2, tape and caliper");
    pub(in crate::report) const DATE: Field =
        words("date", "day of the survey", "year-month-day", "2026-10-13");
}

pub(super) mod site {
    use super::{Field, figure, words};

    pub(in crate::report) const WIND_CODE: Field =
        words("wind_code", "wind code in force", "ask the building department for its edition", "asce7-16");
    pub(in crate::report) const WIND_SPEED: Field = figure(
        "wind_speed",
        "design wind speed of that code",
        "from the building department or the code's map, no forecast",
        ["115 mph", "51 m/s"],
    )
    .open();
    pub(in crate::report) const WIND_SPEED_SOURCE: Field =
        words("wind_speed_source", "where that speed was looked up", "", "city handout, risk category II");
    pub(in crate::report) const RISK_CATEGORY: Field =
        words("risk_category", "risk category the speed is for", "I, II, III or IV; the map holds it", "II");
    pub(in crate::report) const DESIGN: Field = words(
        "design",
        "format that steel is checked in",
        "lrfd: strength design; asd: allowable stress design; left out: lrfd",
        "lrfd",
    );
    pub(in crate::report) const HURRICANE_COAST: Field = words(
        "hurricane_coast",
        "whether hurricanes make the strongest winds here",
        "yes or no; how often a gust comes is told for inland winds only",
        "no",
    );
    pub(in crate::report) const SOIL: Field = words(
        "soil",
        "soil round the footings",
        "a table with one or more of its keys, or unknown",
        "unknown",
    )
    .open();
    pub(in crate::report) const LATERAL_BEARING: Field = figure(
        "lateral_bearing",
        "lateral bearing of the soil for each depth",
        "from a soil report or the table of the code",
        ["150 psf/ft", "24 kPa/m"],
    )
    .open();
    pub(in crate::report) const SOIL_CLASS: Field = words(
        "class",
        "soil by its class, in place of lateral_bearing",
        "what the post holes brought up: rock, gravel, sand, silt, clay, mud, peat or fill",
        "sandy gravel",
    );
    pub(in crate::report) const UNDRAINED_STRENGTH: Field = figure(
        "undrained_strength",
        "undrained shear strength of clay",
        "from a geotechnical engineer",
        ["1000 psf", "50 kPa"],
    )
    .open();
    pub(in crate::report) const FRICTION: Field = figure(
        "friction",
        "angle of friction of sand or gravel",
        "from a geotechnical engineer",
        ["32 deg", "32 deg"],
    )
    .open();
    pub(in crate::report) const COHESION: Field = figure(
        "cohesion",
        "cohesion beside friction",
        "from a geotechnical engineer; left out: none",
        ["100 psf", "5 kPa"],
    )
    .open();
    pub(in crate::report) const UNIT_WEIGHT: Field = figure(
        "unit_weight",
        "unit weight of the soil",
        "from a geotechnical engineer; under water the buoyant one",
        ["120 pcf", "19 kN/m3"],
    )
    .open();
    pub(in crate::report) const DENSITY: Field = words(
        "density",
        "how dense the sand lies",
        "loose, medium or dense; for how far a post gives at the ground",
        "medium",
    )
    .open();
    pub(in crate::report) const UNDER_WATER: Field =
        words("under_water", "whether the soil lies under water", "yes or no; left out: no", "no").open();
    pub(in crate::report) const QUALITY: Field = words(
        "quality",
        "quality of the ground by PD 6547",
        "good, average or poor; for that method alone",
        "average",
    )
    .open();
    pub(in crate::report) const GROUND_FACTOR: Field = figure(
        "ground_factor",
        "ground factor of PD 6547, in place of quality",
        "from an engineer; for that method alone",
        ["2500 psf/ft", "390 kPa/m"],
    )
    .open();
    pub(in crate::report) const FOOTING_METHOD: Field = words(
        "footing_method",
        "method by which footings are worked",
        "left out: IBC 1807.3; compare --footings names the others",
        "ibc-1807.3.2.1",
    );
}

pub(super) mod post {
    use super::{Field, figure, words};

    pub(in crate::report) const GIRTH: Field = figure(
        "girth",
        "all the way round the post",
        "tape pulled tight on the bare post, a hand above the concrete",
        ["9-1/16 in", "230 mm"],
    );
    pub(in crate::report) const DIAMETER: Field = figure(
        "diameter",
        "outside diameter, in place of girth",
        "caliper across the post",
        ["2.875 in", "73 mm"],
    );
    pub(in crate::report) const WIDTH: Field = figure(
        "width",
        "outside width of a square tube, in place of girth",
        "caliper across the flats",
        ["2.5 in", "60 mm"],
    );
    pub(in crate::report) const SECTION: Field = words(
        "section",
        "pipe of the catalogue by its name, in place of girth and wall",
        "fencegust catalogue pipe lists the names",
        "pipe 2-1/2 std",
    );
    pub(in crate::report) const MODULUS: Field = figure(
        "modulus",
        "effective section modulus of another steel shape, in place of girth and wall",
        "from its maker, for wind square on the fence",
        ["1.08 in3", "17700 mm3"],
    );
    pub(in crate::report) const MOMENT: Field = figure(
        "moment",
        "bending moment a post may carry at grade, in place of girth, wall and yield",
        "from its maker or an engineer",
        ["2100 lb-ft", "2850 N m"],
    );
    pub(in crate::report) const MOMENT_IS: Field = words(
        "moment_is",
        "what that moment is",
        "design: a strength with its resistance factor; allowable: a moment at service level",
        "allowable",
    );
    pub(in crate::report) const FACE_WIDTH: Field = figure(
        "face_width",
        "width of such a post that the wind sees",
        "needed with modulus and moment",
        ["2.25 in", "57 mm"],
    );
    pub(in crate::report) const TIMBER: Field = words(
        "timber",
        "square timber post by its name or its side, in place of girth, wall and yield",
        "4x4 or 6x6 as it is called, or the side as it measures",
        "6x6",
    );
    pub(in crate::report) const SPECIES: Field =
        words("species", "wood of a timber post", "by its grade stamp, or unknown", "Southern Pine");
    pub(in crate::report) const GRADE: Field =
        words("grade", "grade of a timber post", "by its grade stamp, or unknown", "No.2");
    pub(in crate::report) const SERVICE: Field =
        words("service", "whether a timber post stands wet or dry", "left out: wet", "wet");
    pub(in crate::report) const INCISED: Field = words(
        "incised",
        "whether the faces of a timber post were slit for treatment",
        "yes, no or unknown; left out: unknown",
        "no",
    );
    pub(in crate::report) const NOMINAL_WALL: Field = figure(
        "nominal_wall",
        "wall by the label or the order",
        "one of nominal_wall and measured_wall",
        ["0.203 in", "5.2 mm"],
    )
    .open();
    pub(in crate::report) const MEASURED_WALL: Field = figure(
        "measured_wall",
        "wall as measured, in place of nominal_wall",
        "caliper on an end post's open rim, at three places; the least counts",
        ["0.192 in", "4.9 mm"],
    )
    .open();
    pub(in crate::report) const SEAMLESS: Field =
        words("seamless", "whether the pipe is seamless", "yes only where its label says so", "no");
    pub(in crate::report) const YIELD: Field = figure(
        "yield",
        "yield strength of the steel",
        "from the mill's paper or the order, never from its looks",
        ["30 ksi", "205 MPa"],
    )
    .open();
    pub(in crate::report) const RUST: Field = figure(
        "rust_at_grade",
        "wall lost to rust at the concrete",
        "scrape it clean, caliper there and higher up, halve the difference",
        ["0.01 in .. 0.03 in", "0.3 mm .. 0.8 mm"],
    );
}

pub(super) mod run {
    use super::{Field, figure, words};

    pub(in crate::report) const NAME: Field = words("name", "what the crew calls this side", "", "north end");
    pub(in crate::report) const COURT: Field =
        words("court", "which court it belongs to", "the same words for all sides of a court", "courts 1-3");
    pub(in crate::report) const FACES: Field = words(
        "faces",
        "compass side the fence looks out to",
        "where you look, standing inside and facing the fence",
        "north",
    );
    pub(in crate::report) const BAYS: Field = figure(
        "bays",
        "every bay from the left, centre to centre of its posts",
        "tape along the ground; 14 x before fourteen alike, gate or double gate before a gate",
        ["9 ft 8 in, 14 x 10 ft, 6 ft 4 in", "2.95 m, 14 x 3.05 m, 1.93 m"],
    );
    pub(in crate::report) const START: Field = figure(
        "start",
        "how the fence ends at your left hand",
        "free, corner, or return: how long cloth goes on round the corner",
        ["60 ft", "18 m"],
    );
    pub(in crate::report) const FINISH: Field =
        Field { key: "finish", what: "how the fence ends at your right hand", ..START };
    pub(in crate::report) const ENDS: Field = words(
        "ends",
        "how the fence ends at both hands, in place of start and finish",
        "free, corner, or a table with return",
        "corner",
    );
    pub(in crate::report) const RETURN: Field = figure(
        "return",
        "how long cloth goes on round the corner",
        "only cloth at least as high as here counts",
        ["60 ft", "18 m"],
    );
    pub(in crate::report) const TOP_RAIL: Field =
        words("top_rail", "rail along the top", "left out: none", "none");
    pub(in crate::report) const MID_RAIL: Field =
        words("mid_rail", "rail half-way up", "left out: none", "none");
    pub(in crate::report) const BOTTOM_RAIL: Field =
        words("bottom_rail", "rail along the bottom", "left out: none", "none");
    pub(in crate::report) const CHAIN_LINK: Field =
        words("chain_link", "the steel mesh", "none where there is none", "none");
    pub(in crate::report) const FOOTING: Field =
        words("footing", "what posts stand in", "a table, the name of a kind, or unknown", "unknown").open();
    pub(in crate::report) const OTHER_POSTS: Field =
        words("other_posts", "posts that differ", "by number and kind", "");
    pub(in crate::report) const SCREEN: Field = words(
        "screen",
        "cloth on this side",
        "the name of a kind, a table that may change keys of a kind, or none",
        "none",
    );
    pub(in crate::report) const HEIGHT: Field = figure(
        "height",
        "fence, from the ground to the top rail",
        "tape or pole from the ground, at the lowest ground",
        ["10 ft", "3.05 m"],
    );
    pub(in crate::report) const BASE: Field = figure(
        "base_above_ground",
        "foot of the posts over the lower side",
        "on a bank or wall, tape or pole from the lower ground; left out: 0",
        ["3 ft", "0.9 m"],
    );
    pub(in crate::report) const RAIL: Field = figure(
        "diameter",
        "outside diameter of the rail, or none",
        "caliper, or a tape round it divided by 3.14",
        ["1.660 in", "42 mm"],
    );
    pub(in crate::report) const RAIL_NOMINAL_WALL: Field = figure(
        "nominal_wall",
        "wall of the rail by the label or the order",
        "or measured_wall; both left out: the rail is not checked",
        ["0.140 in", "3.6 mm"],
    )
    .open();
    pub(in crate::report) const RAIL_MEASURED_WALL: Field = figure(
        "measured_wall",
        "wall of the rail as measured, in place of nominal_wall",
        "caliper at an open end, at three places; the least counts",
        ["0.133 in", "3.4 mm"],
    )
    .open();
    pub(in crate::report) const SPLICE: Field = words(
        "splice",
        "how the lengths of the rail are joined",
        "sleeve, or none where no joint stands in the run; left out: a sleeve is not ruled out",
        "sleeve",
    );
    pub(in crate::report) const MESH: Field = figure(
        "mesh",
        "steel mesh, clear between two parallel wires",
        "ruler square to the wires; none where there is no steel mesh",
        ["1-3/4 in", "45 mm"],
    );
    pub(in crate::report) const WIRE: Field =
        figure("wire", "wire of the mesh over its coating", "its gauge, or caliper", ["9 gauge", "3.8 mm"]);
    pub(in crate::report) const MESH_FACE: Field =
        words("face", "side of the posts the mesh hangs on", "inside or outside", "inside");
    pub(in crate::report) const SHAPE: Field =
        words("shape", "footing, seen from above", "round, square, or driven without concrete", "round");
    pub(in crate::report) const WIDTH: Field =
        figure("width", "across the concrete", "tape where its top is bare", ["12 in", "300 mm"]).open();
    pub(in crate::report) const DEPTH: Field = figure(
        "depth",
        "ground to the bottom of the concrete or post",
        "from a drawing, or a hole beside one footing",
        ["42 in", "1050 mm"],
    )
    .open();
    pub(in crate::report) const HELD: Field = words(
        "constrained_at_ground",
        "whether a slab or beam holds the post at the ground",
        "yes only where it can take the reaction; left out: no",
        "no",
    );
    pub(in crate::report) const ISOLATED: Field = words(
        "isolated",
        "whether the soil may count twice, as at a lone pole",
        "IBC 1806.3.4, an engineer's choice; left out: no",
        "no",
    );
    pub(in crate::report) const END_FOOTING: Field =
        words("end_footing", "what end posts stand in", "left out: as footing", "deep");
    pub(in crate::report) const CORNER_FOOTING: Field =
        words("corner_footing", "what corner posts stand in", "left out: as end_footing", "deep");
    pub(in crate::report) const GATE_FOOTING: Field =
        words("gate_footing", "what gate posts stand in", "left out: as end_footing", "deep");
    pub(in crate::report) const LINE_POST: Field =
        words("line_post", "kind of the posts between the ends", "", "line");
    pub(in crate::report) const END_POST: Field =
        words("end_post", "kind of the posts at the ends", "", "end");
    pub(in crate::report) const CORNER_POST: Field =
        words("corner_post", "kind of the posts at corners", "left out: as end_post", "end");
    pub(in crate::report) const GATE_POST: Field =
        words("gate_post", "kind of the posts beside gates", "left out: as end_post", "end");
    pub(in crate::report) const NUMBERS: Field =
        words("numbers", "posts that differ, by number", "post 1 is at your left", "4, 9");
    pub(in crate::report) const OTHER_POST: Field = words("post", "the kind of those posts", "", "line");
    pub(in crate::report) const GUY: Field =
        words("guy", "back braces and guys", "by the posts they hold; they count with --frame", "");
    pub(in crate::report) const GUY_POSTS: Field =
        words("posts", "posts that one holds, by number", "post 1 is at your left", "1, 7");
    pub(in crate::report) const GUY_KIND: Field = words(
        "kind",
        "what holds the post",
        "back brace: a tube that presses and pulls; guy: a wire or rod that only pulls",
        "back brace",
    );
    pub(in crate::report) const GUY_HEIGHT: Field =
        figure("height", "how high it holds the post", "tape from the foot of the post", ["6 ft", "1.8 m"]);
    pub(in crate::report) const GUY_BACK: Field =
        figure("back", "how far back it goes in", "tape along the ground from the post", ["5 ft", "1.5 m"]);
    pub(in crate::report) const GUY_SIDE: Field =
        words("side", "side of the fence it stands on", "inside or outside", "outside");
    pub(in crate::report) const GUY_DIAMETER: Field =
        figure("diameter", "across it", "caliper", ["1.660 in", "42.4 mm"]);
    pub(in crate::report) const GUY_WALL: Field =
        figure("nominal_wall", "wall of a back brace", "by the label", ["0.140 in", "3.6 mm"]);
    pub(in crate::report) const GUY_YIELD: Field =
        figure("yield", "grade of a back brace", "the mill's paper", ["30 ksi", "205 MPa"]);
    pub(in crate::report) const GUY_ALLOWED: Field =
        figure("allowed", "pull that the maker of a guy and its fittings allows", "", ["1400 lbf", "6.2 kN"]);
    pub(in crate::report) const BRACE: Field = words(
        "brace",
        "brace rails and truss rods in the plane of the fence",
        "by the end, corner or gate posts they stand at; they count with --frame",
        "",
    );
    pub(in crate::report) const BRACE_POSTS: Field =
        words("posts", "posts that one stands at, by number", "post 1 is at your left", "1, 7");
    pub(in crate::report) const BRACE_HEIGHT: Field =
        figure("height", "how high its rail is", "tape from the foot of the post", ["5 ft", "1.5 m"]);
    pub(in crate::report) const BRACE_DIAMETER: Field =
        figure("diameter", "across its rail", "caliper", ["1.660 in", "42.4 mm"]);
    pub(in crate::report) const BRACE_WALL: Field =
        figure("nominal_wall", "wall of its rail", "by the label", ["0.140 in", "3.6 mm"]);
    pub(in crate::report) const BRACE_YIELD: Field =
        figure("yield", "grade of its rail", "the mill's paper", ["30 ksi", "205 MPa"]);
    pub(in crate::report) const BRACE_ROD: Field =
        figure("rod", "across its truss rod", "caliper, beside the threads; or none", ["3/8 in", "10 mm"]);
    pub(in crate::report) const BRACE_ROD_YIELD: Field =
        figure("rod_yield", "grade of its truss rod", "the mill's paper", ["36 ksi", "250 MPa"]);
}

pub(super) mod screen {
    use super::{Field, figure, words};

    pub(in crate::report) const CLOTH: Field = words(
        "cloth",
        "which cloth hangs or is to hang",
        "a name of the catalogue, or its maker's words",
        "closed mesh",
    );
    pub(in crate::report) const SOLIDITY: Field = words(
        "solidity",
        "solid area over gross area, 0 to 1",
        "from the maker: 1 less the open area",
        "0.95",
    )
    .open();
    pub(in crate::report) const DENSITY: Field = words(
        "density",
        "how much light it stops, in place of solidity",
        "from the maker's sheet, with the colour",
        "95 %",
    );
    pub(in crate::report) const COLOUR: Field =
        words("colour", "colour of the yarn", "needed with density", "black");
    pub(in crate::report) const WEIGHT: Field = figure(
        "weight",
        "weight of the cloth for each area, for the order list",
        "from its maker's sheet",
        ["7 oz/yd2", "240 g/m2"],
    )
    .open();
    pub(in crate::report) const BOTTOM: Field = figure(
        "bottom",
        "lower edge of the cloth above the ground",
        "tape; 0 where it touches",
        ["1 ft", "0.3 m"],
    );
    pub(in crate::report) const HEIGHT: Field = figure(
        "height",
        "height of the cloth as it hangs",
        "tape from its lower edge to its top",
        ["9 ft", "2.7 m"],
    );
    pub(in crate::report) const TOP: Field =
        figure("top", "top of the cloth above the ground, in place of height", "", ["10 ft", "3 m"]);
    pub(in crate::report) const CONDITION: Field =
        words("condition", "whether ice may close the cloth", "dry, iced or unknown; left out: dry", "iced");
    pub(in crate::report) const FACE: Field =
        words("face", "side of the fence the cloth hangs on", "inside or outside", "inside");
    pub(in crate::report) const BAYS: Field =
        words("bays", "first and last bay it hangs on", "left out: the whole side", "2..11");
    pub(in crate::report) const OVER: Field = words(
        "over",
        "cloth hung over this cloth",
        "a name of the catalogue, a table or a list",
        "closed mesh",
    );
    pub(in crate::report) const AIR_PERMEABILITY: Field = words(
        "air_permeability",
        "its maker's test of air that passes it",
        "a table of flow and pressure",
        "",
    );
    pub(in crate::report) const FLOW: Field = figure(
        "flow",
        "air that passes the cloth in that test",
        "from its maker's sheet",
        ["500 cfm/ft2", "2540 l/m2/s"],
    )
    .open();
    pub(in crate::report) const AT: Field =
        figure("at", "pressure over the cloth in that test", "from the same sheet", ["125 Pa", "200 Pa"]);
    pub(in crate::report) const FASTENING: Field =
        words("fastening", "what holds the cloth", "a table, or unknown", "unknown").open();
    pub(in crate::report) const VENTS: Field =
        words("vents", "windows cut in the cloth", "a table of their size and number", "");
    pub(in crate::report) const KIND: Field = words("kind", "what holds the cloth", "ties or lacing", "ties");
    pub(in crate::report) const STRENGTH: Field =
        figure("strength", "strength of one tie", "from its maker's sheet", ["50 lbf", "220 N"]).open();
    pub(in crate::report) const ROPE: Field =
        words("rope", "thickness and fibre of the lacing", "", "1/4 in polypropylene");
    pub(in crate::report) const SPACING: Field =
        figure("spacing", "from tie to tie", "tape; take the widest you find", ["12 in", "300 mm"]).open();
    pub(in crate::report) const AGE: Field = words(
        "age",
        "age of the ties",
        "new, aged, or aged type 2 where the maker says that they keep their strength; left out: unknown",
        "aged",
    );
    pub(in crate::report) const YEARS: Field =
        words("years", "years the lacing has been outdoors", "left out: 0", "2");
    pub(in crate::report) const TIED_TO: Field =
        words("tied_to", "what the rows are tied to", "rails or chain link; left out: rails", "rails");
    pub(in crate::report) const PANEL: Field = figure(
        "panel",
        "length of one cloth, from upright edge to upright edge",
        "left out: equal parts of 60 ft (18.3 m) at most",
        ["40 ft", "12 m"],
    );
    pub(in crate::report) const GROMMET: Field = figure(
        "grommet",
        "pull at which a grommet tears out of the hem",
        "by the maker's test, never guessed",
        ["120 lbf", "530 N"],
    );
    pub(in crate::report) const OFFSET: Field = figure(
        "offset",
        "how far a grommet stands off the rail it is laced to",
        "tape; left out: 1 in (25 mm)",
        ["1 in", "25 mm"],
    );
    pub(in crate::report) const STIFFNESS: Field = figure(
        "stiffness",
        "stiffness of cloth held at its sides only",
        "from its maker: force on a width over its stretch",
        ["5000 lb/ft", "73 kN/m"],
    );
    pub(in crate::report) const SLACK: Field = words(
        "slack",
        "by how much such cloth is longer than from edge to edge",
        "tape along the cloth and straight across",
        "1 %",
    );
    pub(in crate::report) const ROWS: Field =
        words("rows", "edges that are tied", "top, middle, bottom, sides", "top, bottom");
    pub(in crate::report) const ROW_WAYS: [&str; 4] = ["top", "middle", "bottom", "sides"];
    pub(in crate::report) const VENT_WIDTH: Field =
        figure("width", "windows cut in the cloth: across one", "tape", ["8 in", "200 mm"]);
    pub(in crate::report) const VENT_HEIGHT: Field =
        figure("height", "height of one window", "tape", ["5 in", "130 mm"]);
    pub(in crate::report) const PER_BAY: Field = words("per_bay", "windows in one bay", "count them", "2");
}

pub(super) mod order {
    use super::{Field, figure, words};

    /// Every key of the order list, in the order in which they are best written.
    pub(in crate::report) const FIELDS: &[Field] = &[
        figure(
            "end_gap",
            "left free between the cloth and each upright it ends at",
            "left out: 6 in, as a screen maker's sheet has it",
            ["6 in", "150 mm"],
        ),
        figure(
            "joint_gap",
            "left free between two panels that meet at a post",
            "left out: none",
            ["1 in", "25 mm"],
        ),
        figure(
            "top_gap",
            "left free between the cloth and the underside of the top rail",
            "left out: none, as the cloth hangs",
            ["1 in", "25 mm"],
        ),
        figure(
            "longest_panel",
            "longest panel that is made, as it hangs",
            "left out: 60 ft, as a screen maker's sheet has it",
            ["50 ft", "15 m"],
        ),
        figure(
            "hem_allowance",
            "turned in by a hem or seam at each edge",
            "where the cloth is cut, not bought as panels",
            ["2 in", "50 mm"],
        ),
        words("spares", "ties beyond those counted, as a share", "left out: a tenth", "10 %"),
        words(
            "lacing",
            "how a rope goes on from grommet to grommet",
            "plain, or locked by two more turns at each; left out: locked, which takes more",
            "plain",
        ),
        figure(
            "knot_end",
            "rope for one knot, at each end of a piece",
            "left out: 12 in",
            ["12 in", "300 mm"],
        ),
        words("rope_waste", "rope that is cut off, as a share", "left out: a tenth", "10 %"),
        words(
            "currency",
            "money the prices are in",
            "in your own words; costs come from your prices alone",
            "USD",
        ),
        figure("cloth_price", "price of cloth by its area", "from its seller", ["1.20 per ft2", "13 per m2"]),
        words("tie_price", "price of one tie", "from its seller", "0.15 each"),
        figure("rope_price", "price of rope by its length", "from its seller", ["0.10 per ft", "0.33 per m"]),
        words("grommet_price", "price of one grommet", "from its seller", "0.40 each"),
        words(
            "crew_time",
            "your crew's time to hang one panel",
            "your own figure, never a default; common practice, no source: about 45 min for one screen on one opening",
            "45 min",
        ),
        words(
            "service_life",
            "how long the cloth is said to last, and who says so",
            "",
            "5 years, by its seller",
        ),
        words("warranty", "what its maker warrants", "", "3 years against sun"),
        words("note", "what a reader must know", "printed with the list", "deliver before the season"),
    ];
}
