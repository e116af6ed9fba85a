//! The back braces and guys of a survey.

use super::at_posts::{AtPosts, ListOf};
use super::keys::*;
use super::layers::{Key, Layers, Missing, Reader};
use super::reading::Reading;
use super::run::RunReader;
use crate::fence::{Face, Guy, GuyKind, Shape, Tube, Wall};
use crate::member::Format;
use crate::units::{Force, Length, Measure, Pressure, Quantity, System, Value};
use crate::workings::Blank;

/// The kinds, as a survey writes them.
pub(crate) const KINDS: [&str; 2] = ["back brace", "guy"];

const WRITE: &str = "guy = [{ posts = [1, 7], kind = \"back brace\", height = \"6 ft\", back = \"5 ft\", side = \"outside\", \
                     diameter = \"1.660 in\", nominal_wall = \"0.140 in\", yield = \"30 ksi\" }]";

const REACH: Key = Key {
    key: "height",
    about: "from the foot of the post to where it holds the post, with a tape",
    example: "\"6 ft\"",
    ..HEIGHT
};
const BACK: Key = Key {
    key: "back",
    about: "along the ground from the post to where it goes in, with a tape",
    example: "\"5 ft\"",
    ..HEIGHT
};
const GUY_WALL: Key =
    Key { key: "nominal_wall", about: "wall of a back brace by the label", example: "\"0.140 in\"", ..SMALL };
const GUY_YIELD: Key =
    Key { about: "yield strength of the steel of a back brace by the mill's paper", open: false, ..YIELD };
const GUY_PULL: Key = Key {
    key: "allowed",
    measure: Measure::Force,
    about: "the pull on a guy and its fittings that their maker allows",
    example: "\"1400 lbf\"",
    ..HEIGHT
};

const GUYS: ListOf = ListOf {
    key: "guy",
    is: "guy is a list of tables: back braces and guys",
    numbers: "posts",
    without: "guy has no posts: which it holds; post 1 is the leftmost, seen from inside",
    keys: GUY_KEYS,
    write: WRITE,
};

impl RunReader<'_, '_> {
    /// Back braces and guys; nothing where one cannot be read.
    pub(super) fn guys(
        &self,
        posts: Option<usize>,
        fence: Option<Length>,
        reader: &mut Reader,
    ) -> Option<Vec<Guy>> {
        let all = self.at_posts(&GUYS, posts, reader, |layers, reader| guy_of(layers, fence, reader))?;
        let of = |one: &AtPosts<Guy>| {
            one.posts.iter().map(|at| Guy { post: at - 1, ..one.found }).collect::<Vec<_>>()
        };
        Some(all.iter().flat_map(of).collect())
    }
}

/// One of them, of the first post.
fn guy_of(layers: &Layers<'_>, fence: Option<Length>, reader: &mut Reader) -> Option<Guy> {
    let length = |key: Key, reader: &mut Reader| {
        reader.quantity::<Length>(layers, key, Missing::IsMistake).and_then(|reading| reading.low())
    };
    let kind = reader.choice(
        layers,
        "kind",
        &KINDS,
        "\"back brace\" for a tube that presses and pulls, \"guy\" for a wire or rod that only pulls",
        Missing::IsMistake,
    );
    let height = length(REACH, reader);
    let back = length(BACK, reader);
    let side = reader.choice(
        layers,
        "side",
        &Face::ALL.map(Face::word),
        "the side of the fence it stands on",
        Missing::IsMistake,
    );
    let diameter = length(SMALL, reader);
    let has = |key: &str| layers.tables.iter().any(|(table, _)| table.contains_key(key));
    let only = |keys: &[&str], of: &str, reader: &mut Reader| {
        let wrong = keys.iter().find(|key| has(key));
        if let Some(key) = wrong {
            reader.mistake(
                layers.place.clone(),
                format!("{key} of {} belongs to a {of}", layers.name),
                WRITE,
            );
        }
        wrong.is_none().then_some(())
    };
    let kind = match kind? {
        0 => {
            let wall = length(GUY_WALL, reader);
            let grade = reader.quantity::<Pressure>(layers, GUY_YIELD, Missing::IsMistake);
            only(&["allowed"], "guy", reader)?;
            let shape = Shape::Round { girth: None, diameter: diameter? };
            let yield_strength = grade.as_ref().and_then(Reading::low)?;
            let rust = Length::from_si(0.0);
            GuyKind::BackBrace(Tube { shape, wall: Wall::Nominal(wall?), yield_strength, rust })
        }
        _ => {
            let allowed = reader.quantity::<Force>(layers, GUY_PULL, Missing::IsFine);
            only(&["nominal_wall", "yield"], "back brace", reader)?;
            GuyKind::Guy { diameter: diameter?, allowed: allowed.as_ref().and_then(Reading::low) }
        }
    };
    let guy = Guy {
        post: 0,
        height: height?,
        back: back?,
        side: Face::ALL[side?],
        kind,
        format: Format::default(),
    };
    if let Some(what) = too_high(&layers.name, guy.height, fence) {
        reader.mistake(
            layers.place.clone(),
            what,
            "measure from the foot of the post to where it holds the post",
        );
        return None;
    }
    if let Err(error) = guy.strength(&mut Blank) {
        let what = format!("{}: {error}", layers.name);
        reader.mistake(layers.place.clone(), what, "measure its diameter and wall again");
        return None;
    }
    Some(guy)
}

/// What is wrong where something holds its post above the fence.
pub(super) fn too_high(name: &str, height: Length, fence: Option<Length>) -> Option<String> {
    let fence = fence.filter(|fence| height > *fence)?;
    let written = |length: Length| {
        let value = Value::new(length, Measure::Length);
        format!("{} ({})", value.written(System::Us), value.written(System::Si))
    };
    Some(format!("{name} holds its post {} up, above the fence of {}", written(height), written(fence)))
}
