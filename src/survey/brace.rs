//! The braces of a survey.

use super::Origin;
use super::at_posts::{AtPosts, ListOf};
use super::guy::too_high;
use super::keys::*;
use super::layers::{Key, Layers, Missing, Reader};
use super::reading::Reading;
use super::run::RunReader;
use crate::fence::{Bay, Brace, Role, Shape, TrussRod, Tube, Wall};
use crate::member::Format;
use crate::units::{Length, Pressure, Quantity};
use crate::workings::Blank;
use toml::de::DeValue;

const WRITE: &str = "brace = [{ posts = [1, 7], height = \"5 ft\", diameter = \"1.660 in\", nominal_wall = \"0.140 in\", \
                     yield = \"30 ksi\", rod = \"3/8 in\" }]";

const RAIL_AT: Key = Key {
    key: "height",
    about: "from the foot of the post to its rail, with a tape",
    example: "\"5 ft\"",
    ..HEIGHT
};
const WALL: Key =
    Key { key: "nominal_wall", about: "wall of its rail by the label", example: "\"0.140 in\"", ..SMALL };
const GRADE: Key =
    Key { about: "yield strength of the steel of its rail by the mill's paper", open: false, ..YIELD };
const ROD: Key =
    Key { key: "rod", about: "across its truss rod, or \"none\"", example: "\"3/8 in\"", ..SMALL };
const ROD_GRADE: Key = Key {
    key: "rod_yield",
    about: "yield strength of the steel of its truss rod by the mill's paper",
    example: "\"36 ksi\"",
    open: false,
    ..YIELD
};

const BRACES: ListOf = ListOf {
    key: "brace",
    is: "brace is a list of tables: brace rails and truss rods",
    numbers: "posts",
    without: "brace has no posts: at which it stands; post 1 is the leftmost, seen from inside",
    keys: BRACE_KEYS,
    write: WRITE,
};

impl RunReader<'_, '_> {
    /// Braces; nothing where one cannot be read.
    pub(super) fn braces(
        &self,
        posts: Option<usize>,
        fence: Option<Length>,
        reader: &mut Reader,
    ) -> Option<Vec<AtPosts<Brace>>> {
        self.at_posts(&BRACES, posts, reader, |layers, reader| brace_of(layers, fence, reader))
    }
}

/// Each brace in the bay it stands in; nothing where one has none.
pub(super) fn stood(
    read: Vec<AtPosts<Brace>>,
    bays: &[Bay],
    role: impl Fn(usize) -> Role,
    reader: &mut Reader,
) -> Option<Vec<Brace>> {
    let (mut braces, mut fine): (Vec<Brace>, bool) = (Vec::new(), true);
    for AtPosts { found: brace, posts, name, at } in read {
        for number in posts {
            let post = number - 1;
            let mut wrong = |what: String, write: &str| {
                reader.mistake(at.clone(), format!("{name}: {what}"), write);
                fine = false;
            };
            if role(post) == Role::Line {
                wrong(
                    format!("post {number} is a line post, whose bays pull alike from both sides"),
                    "name the end, corner or gate posts that it stands at",
                );
                continue;
            }
            let mut beside = [post.checked_sub(1), Some(post)].into_iter().flatten();
            let Some(bay) = beside.find(|bay| bays.get(*bay).is_some_and(|bay| !bay.gate)) else {
                wrong(
                    format!("beside post {number} there is no bay but a gate to stand in"),
                    "a brace stands in a bay of fence beside its post",
                );
                continue;
            };
            if braces.iter().any(|before| before.post == post) {
                wrong(format!("post {number} has another brace; one is worked"), "write the one that counts");
                continue;
            }
            braces.push(Brace { post, bay, ..brace });
        }
    }
    braces.sort_by_key(|brace| brace.post);
    fine.then_some(braces)
}

/// One of them, of the first post.
fn brace_of(layers: &Layers<'_>, fence: Option<Length>, reader: &mut Reader) -> Option<Brace> {
    let length = |key: Key, reader: &mut Reader| {
        reader.quantity::<Length>(layers, key, Missing::IsMistake).and_then(|reading| reading.low())
    };
    let height = length(RAIL_AT, reader);
    let diameter = length(SMALL, reader);
    let wall = length(WALL, reader);
    let grade = reader.quantity::<Pressure>(layers, GRADE, Missing::IsMistake);
    let rod = rod_of(layers, reader);
    let rod_grade = reader.quantity::<Pressure>(layers, ROD_GRADE, Missing::IsFine);
    let shape = Shape::Round { girth: None, diameter: diameter? };
    let yield_strength = grade.as_ref().and_then(Reading::low)?;
    let rail = Tube { shape, wall: Wall::Nominal(wall?), yield_strength, rust: Length::from_si(0.0) };
    let rod = rod?;
    if rod.is_none() && rod_grade.is_some() {
        let what = format!("rod_yield of {} belongs to a rod, and it has none", layers.name);
        reader.mistake(layers.place.clone(), what, WRITE);
        return None;
    }
    let yield_strength = rod_grade.as_ref().and_then(Reading::low);
    let rod = rod.map(|diameter| TrussRod { diameter, yield_strength });
    let brace = Brace { post: 0, bay: 0, height: height?, rail, rod, format: Format::default() };
    if let Some(what) = too_high(&layers.name, brace.height, fence) {
        reader.mistake(layers.place.clone(), what, "measure from the foot of the post to its rail");
        return None;
    }
    // How long it is does not matter for whether its walls can be worked.
    if let Err(error) = brace.rail_strength(brace.height, &mut Blank) {
        let what = format!("{}: {error}", layers.name);
        reader.mistake(layers.place.clone(), what, "measure its diameter and wall again");
        return None;
    }
    Some(brace)
}

/// Across its truss rod, or that there is none; nothing where that cannot be read.
fn rod_of(layers: &Layers<'_>, reader: &mut Reader) -> Option<Option<Length>> {
    if let Some((value, _)) = reader.find(layers, ROD.key)
        && let DeValue::String(text) = value.get_ref()
        && text.trim().eq_ignore_ascii_case("none")
    {
        reader.note(layers, ROD.key, "none".to_owned(), Origin::Here);
        return Some(None);
    }
    reader.quantity::<Length>(layers, ROD, Missing::IsMistake)?.low().map(Some)
}
