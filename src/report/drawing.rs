//! A small builder of drawings in SVG, to stand inside a page: lengths in millimetres, no other resources.

use super::measure::shown;
use std::f64::consts::FRAC_1_SQRT_2;
use std::fmt;

/// An element with its attributes and what stands in it.
#[derive(Debug, Clone, PartialEq)]
pub struct Element {
    name: &'static str,
    attributes: Vec<(&'static str, String)>,
    children: Vec<Child>,
}

#[derive(Debug, Clone, PartialEq)]
enum Child {
    Element(Element),
    Text(String),
}

/// A place on a drawing, from its upper left corner.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct At {
    /// To the right, in millimetres.
    pub x: f64,
    /// Downwards, in millimetres.
    pub y: f64,
}

/// A width and a height in millimetres.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Room {
    /// To the right.
    pub width: f64,
    /// Downwards.
    pub height: f64,
}

impl Element {
    /// An empty element.
    #[must_use]
    pub const fn new(name: &'static str) -> Self {
        Self { name, attributes: Vec::new(), children: Vec::new() }
    }
    /// The same with an attribute in words.
    #[must_use]
    pub fn with(mut self, attribute: &'static str, value: impl Into<String>) -> Self {
        self.attributes.push((attribute, value.into()));
        self
    }
    /// The same with an attribute in figures, to the hundredth of a millimetre.
    #[must_use]
    pub fn at(self, attribute: &'static str, value: f64) -> Self {
        self.with(attribute, figure(value))
    }
    /// The same with an element in it.
    #[must_use]
    pub fn holding(mut self, child: Self) -> Self {
        self.children.push(Child::Element(child));
        self
    }
    /// The same with text in it.
    #[must_use]
    pub fn saying(mut self, text: &str) -> Self {
        self.children.push(Child::Text(shown(text)));
        self
    }

    /// A straight line.
    #[must_use]
    pub fn line(from: At, to: At, colour: &str, thick: f64) -> Self {
        Self::new("line")
            .at("x1", from.x)
            .at("y1", from.y)
            .at("x2", to.x)
            .at("y2", to.y)
            .with("stroke", colour)
            .at("stroke-width", thick)
    }
    /// A rectangle from its upper left corner, filled with a colour or a pattern.
    #[must_use]
    pub fn rectangle(corner: At, room: Room, fill: &str) -> Self {
        Self::new("rect")
            .at("x", corner.x)
            .at("y", corner.y)
            .at("width", room.width)
            .at("height", room.height)
            .with("fill", fill)
    }
    /// A rectangle filled with parallel lines, drawn one by one so that they print sharp.
    #[must_use]
    pub fn hatched(corner: At, room: Room, hatching: Hatching) -> Self {
        let mut path = lines_through(corner, room, hatching.run, hatching.step);
        if hatching.crossed {
            path.push_str(&lines_through(corner, room, hatching.run.across(), hatching.step));
        }
        Self::new("path")
            .with("d", path)
            .with("fill", "none")
            .with("stroke", hatching.colour)
            .at("stroke-width", hatching.thick)
    }
    /// A filled shape through these places.
    #[must_use]
    pub fn polygon(places: &[At], fill: &str) -> Self {
        let places: Vec<_> = places.iter().map(|at| format!("{},{}", figure(at.x), figure(at.y))).collect();
        Self::new("polygon").with("points", places.join(" ")).with("fill", fill)
    }
    /// Text whose letters are so high, standing on a place.
    #[must_use]
    pub fn text(at: At, size: f64, anchor: Anchor, text: &str) -> Self {
        Self::new("text")
            .at("x", at.x)
            .at("y", at.y)
            .at("font-size", size)
            .with("text-anchor", anchor.word())
            .saying(text)
    }
}

/// Which part of a text stands on its place.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Anchor {
    /// Its beginning.
    Start,
    /// Its middle.
    Middle,
    /// Its end.
    End,
}

impl Anchor {
    const fn word(self) -> &'static str {
        match self {
            Self::Start => "start",
            Self::Middle => "middle",
            Self::End => "end",
        }
    }
}

/// A drawing with its title and a description for those who do not see it.
#[derive(Debug, Clone, PartialEq)]
pub struct Drawing {
    id: String,
    room: Room,
    title: String,
    description: String,
    elements: Vec<Element>,
}

impl Drawing {
    /// An empty drawing; no two drawings of a page share an id.
    #[must_use]
    pub fn new(id: &str, room: Room, title: &str, description: &str) -> Self {
        Self {
            id: id.to_owned(),
            room,
            title: title.to_owned(),
            description: description.to_owned(),
            elements: Vec::new(),
        }
    }
    /// Its width and height.
    #[must_use]
    pub const fn room(&self) -> Room {
        self.room
    }
    /// Draws over what is there.
    pub fn draw(&mut self, element: Element) {
        self.elements.push(element);
    }
}

/// Parallel lines that fill an area.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Hatching {
    /// Their colour.
    pub colour: &'static str,
    /// How thick they are, in millimetres.
    pub thick: f64,
    /// How far apart, in millimetres.
    pub step: f64,
    /// Which way they run.
    pub run: Way,
    /// Whether a second set crosses them.
    pub crossed: bool,
}

/// Which way the lines of a hatching run.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Way {
    /// Level.
    Level,
    /// Falling to the right.
    Falling,
    /// Upright.
    Upright,
    /// Rising to the right.
    Rising,
}

impl Way {
    /// As a direction of length one.
    const fn direction(self) -> At {
        match self {
            Self::Level => At { x: 1.0, y: 0.0 },
            Self::Falling => At { x: FRAC_1_SQRT_2, y: FRAC_1_SQRT_2 },
            Self::Upright => At { x: 0.0, y: 1.0 },
            Self::Rising => At { x: FRAC_1_SQRT_2, y: -FRAC_1_SQRT_2 },
        }
    }
    /// Square to it.
    const fn across(self) -> Self {
        match self {
            Self::Level => Self::Upright,
            Self::Falling => Self::Rising,
            Self::Upright => Self::Level,
            Self::Rising => Self::Falling,
        }
    }
}

/// The lines that run one way through a rectangle, so far apart, as a path.
fn lines_through(corner: At, room: Room, way: Way, step: f64) -> String {
    let (along, far) = (way.direction(), At { x: corner.x + room.width, y: corner.y + room.height });
    // How far a place lies from the line through the origin.
    let off = |x: f64, y: f64| along.x * y - along.y * x;
    let corners = [off(corner.x, corner.y), off(far.x, corner.y), off(corner.x, far.y), off(far.x, far.y)];
    let low = corners.iter().copied().fold(f64::INFINITY, f64::min);
    let high = corners.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    let mut path = String::new();
    let mut number = (low / step).ceil();
    while number * step < high {
        let foot = At { x: -along.y * number * step, y: along.x * number * step };
        // From where to where along the line it lies in the rectangle.
        let (mut from, mut to) = (f64::NEG_INFINITY, f64::INFINITY);
        for (way, start, least, most) in
            [(along.x, foot.x, corner.x, far.x), (along.y, foot.y, corner.y, far.y)]
        {
            if way != 0.0 {
                let (one, other) = ((least - start) / way, (most - start) / way);
                from = from.max(one.min(other));
                to = to.min(one.max(other));
            }
        }
        if to > from {
            let place = |t: f64| format!("{} {}", figure(foot.x + along.x * t), figure(foot.y + along.y * t));
            path.push_str(&format!("M{}L{}", place(from), place(to)));
        }
        number += 1.0;
    }
    path
}

/// A figure to the hundredth, without trailing zeros.
fn figure(value: f64) -> String {
    let text = format!("{value:.2}");
    let text = text.trim_end_matches('0').trim_end_matches('.');
    if text == "-0" { "0".to_owned() } else { text.to_owned() }
}

fn escaped(text: &str) -> String {
    text.replace('&', "&amp;").replace('<', "&lt;").replace('>', "&gt;").replace('"', "&quot;")
}

impl fmt::Display for Element {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "<{}", self.name)?;
        for (attribute, value) in &self.attributes {
            write!(f, " {attribute}=\"{}\"", escaped(value))?;
        }
        if self.children.is_empty() {
            return f.write_str("/>");
        }
        f.write_str(">")?;
        for child in &self.children {
            match child {
                Child::Element(element) => element.fmt(f)?,
                Child::Text(text) => f.write_str(&escaped(text))?,
            }
        }
        write!(f, "</{}>", self.name)
    }
}

impl fmt::Display for Drawing {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (title, description) = (format!("{}-title", self.id), format!("{}-desc", self.id));
        let mut svg = Element::new("svg")
            .with("role", "img")
            .with("aria-labelledby", format!("{title} {description}"))
            .with("width", format!("{}mm", figure(self.room.width)))
            .with("height", format!("{}mm", figure(self.room.height)))
            .with("viewBox", format!("0 0 {} {}", figure(self.room.width), figure(self.room.height)))
            .holding(Element::new("title").with("id", title.as_str()).saying(&self.title))
            .holding(Element::new("desc").with("id", description.as_str()).saying(&self.description));
        svg.children.extend(self.elements.iter().cloned().map(Child::Element));
        svg.fmt(f)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn markup_in_a_text_is_shown_as_typed_and_quotes_end_no_attribute() {
        let text = Element::text(At { x: 1.0, y: 2.5 }, 2.0, Anchor::Start, "<b>&\"").with("id", "a\"b");
        assert_eq!(
            text.to_string(),
            "<text x=\"1\" y=\"2.5\" font-size=\"2\" text-anchor=\"start\" id=\"a&quot;b\">&lt;b&gt;&amp;&quot;</text>"
        );
    }

    #[test]
    fn a_drawing_names_itself_for_those_who_do_not_see_it() {
        let mut drawing = Drawing::new("d1", Room { width: 10.0, height: 5.0 }, "Title", "What it shows");
        drawing.draw(Element::rectangle(At { x: 0.0, y: 0.0 }, Room { width: 1.0, height: 1.0 }, "#000"));
        let text = drawing.to_string();
        assert!(text.contains("viewBox=\"0 0 10 5\"") && text.contains("role=\"img\""), "{text}");
        assert!(
            text.contains("<title id=\"d1-title\">Title</title><desc id=\"d1-desc\">What it shows</desc>")
        );
    }

    #[test]
    fn hatching_stays_in_its_rectangle_and_fills_it() {
        let (corner, room) = (At { x: 3.0, y: 7.0 }, Room { width: 10.0, height: 4.0 });
        for (run, count) in [(Way::Level, 4), (Way::Upright, 10), (Way::Falling, 10), (Way::Rising, 10)] {
            let path = lines_through(corner, room, run, 1.0);
            let numbers: Vec<f64> = path
                .split(['M', 'L', ' '])
                .filter(|text| !text.is_empty())
                .map(|text| text.parse().unwrap())
                .collect();
            assert!((numbers.len() / 4).abs_diff(count) <= 1, "{run:?}: {path}");
            for place in numbers.chunks(2) {
                assert!(
                    (3.0..=13.0).contains(&place[0]) && (7.0..=11.0).contains(&place[1]),
                    "{run:?}: {path}"
                );
            }
        }
    }

    #[test]
    fn figures_are_rounded_to_the_hundredth_and_never_minus_nothing() {
        assert_eq!((figure(1.005), figure(-0.001), figure(2.0)), ("1".into(), "0".into(), "2".into()));
    }
}
