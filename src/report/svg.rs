//! A small builder of line drawings as SVG, ruled or as if drawn by hand.
//!
//! A drawing says what it shows: it is an image with a title and a description for those who do not see it. Its
//! lines are black unless a pen says otherwise, it loads nothing, and the same calls make the same bytes.

use std::fmt::{self, Write as _};

/// A place on a drawing in its own units, x to the right and y downwards.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct At {
    /// To the right.
    pub x: f64,
    /// Downwards.
    pub y: f64,
}

/// A place so far to the right and so far down.
#[must_use]
pub const fn at(x: f64, y: f64) -> At {
    At { x, y }
}

impl At {
    /// The place so much further right and down.
    #[must_use]
    pub const fn by(self, x: f64, y: f64) -> Self {
        Self { x: self.x + x, y: self.y + y }
    }
}

/// What a drawing is.
#[derive(Debug, Clone, Copy)]
pub struct About<'a> {
    /// Its name among the drawings of a page: letters, digits and dashes.
    pub id: &'a str,
    /// What it shows, in a few words.
    pub title: &'a str,
    /// What can be read from it, for those who do not see it.
    pub desc: &'a str,
    /// Its right lower corner.
    pub size: At,
}

/// How a line is drawn.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Pen {
    /// Width in the units of the drawing.
    pub width: f64,
    /// Colour as CSS writes it.
    pub colour: &'static str,
    /// Dashes as SVG writes them; empty for a full line.
    pub dash: &'static str,
    /// Whether the line wavers as one drawn by hand.
    pub by_hand: bool,
}

impl Pen {
    /// A black line drawn by hand.
    pub const INK: Self = Self { width: 1.4, colour: "#000", dash: "", by_hand: true };
    /// A thin one.
    pub const THIN: Self = Self { width: 0.7, ..Self::INK };
    /// A thick one.
    pub const THICK: Self = Self { width: 2.6, ..Self::INK };
    /// A thin ruled line, for dimensions.
    pub const RULED: Self = Self { width: 0.7, by_hand: false, ..Self::INK };
    /// A thin dashed line, for what is hidden.
    pub const HIDDEN: Self = Self { dash: "4 3", ..Self::RULED };
}

/// Where a text stands against its place.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Anchor {
    /// It begins there.
    Start,
    /// Its middle is there.
    Middle,
    /// It ends there.
    End,
}

/// How a text is set.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Lettering {
    /// Height of the letters in the units of the drawing.
    pub size: f64,
    /// Where it stands.
    pub anchor: Anchor,
    /// Whether it is bold.
    pub bold: bool,
}

impl Lettering {
    /// Plain letters of a size, beginning at their place.
    #[must_use]
    pub const fn of(size: f64) -> Self {
        Self { size, anchor: Anchor::Start, bold: false }
    }
    /// The same with their middle at their place.
    #[must_use]
    pub const fn middle(self) -> Self {
        Self { anchor: Anchor::Middle, ..self }
    }
    /// The same, ending at their place.
    #[must_use]
    pub const fn end(self) -> Self {
        Self { anchor: Anchor::End, ..self }
    }
    /// The same in bold.
    #[must_use]
    pub const fn bold(self) -> Self {
        Self { bold: true, ..self }
    }
}

/// A drawing in the making; written out as an element to stand inside a page.
#[derive(Debug, Clone)]
pub struct Svg {
    head: String,
    body: String,
}

impl Svg {
    /// An empty drawing.
    #[must_use]
    pub fn new(about: &About<'_>) -> Self {
        let id: String = about.id.chars().map(|c| if c.is_ascii_alphanumeric() { c } else { '-' }).collect();
        let head = format!(
            "<svg viewBox=\"0 0 {} {}\" role=\"img\" \
             aria-labelledby=\"{id}-title {id}-desc\">\n<title id=\"{id}-title\">{}</title>\n\
             <desc id=\"{id}-desc\">{}</desc>\n",
            figure(about.size.x),
            figure(about.size.y),
            escaped(about.title),
            escaped(about.desc),
        );
        Self { head, body: String::new() }
    }

    /// A line from one place to another.
    pub fn line(&mut self, from: At, to: At, pen: Pen) -> &mut Self {
        self.lines(&[from, to], pen)
    }

    /// Lines from place to place.
    pub fn lines(&mut self, places: &[At], pen: Pen) -> &mut Self {
        let path = path(places, pen.by_hand);
        self.path(&path, "none", pen)
    }

    /// An area with its border; `fill` is a colour as CSS writes it, or `none`.
    pub fn area(&mut self, places: &[At], fill: &'static str, pen: Pen) -> &mut Self {
        let mut round = places.to_vec();
        round.extend(places.first());
        let path = path(&round, pen.by_hand) + " Z";
        self.path(&path, fill, pen)
    }

    /// A rectangle between two opposite corners.
    pub fn rectangle(&mut self, corner: At, opposite: At, fill: &'static str, pen: Pen) -> &mut Self {
        let places = [corner, at(opposite.x, corner.y), opposite, at(corner.x, opposite.y)];
        self.area(&places, fill, pen)
    }

    /// An ellipse; `reach` is how far it goes to the right and down from its middle.
    pub fn ellipse(&mut self, middle: At, reach: At, fill: &'static str, pen: Pen) -> &mut Self {
        let _ = writeln!(
            self.body,
            "<ellipse cx=\"{}\" cy=\"{}\" rx=\"{}\" ry=\"{}\" fill=\"{fill}\"{}/>",
            figure(middle.x),
            figure(middle.y),
            figure(reach.x),
            figure(reach.y),
            stroke(pen)
        );
        self
    }

    /// A curve that leaves and arrives in the direction of its two handles.
    pub fn curve(&mut self, from: At, handles: [At; 2], to: At, pen: Pen) -> &mut Self {
        let [first, second] = handles;
        let path = format!("M{} C{} {} {}", place(from), place(first), place(second), place(to));
        self.path(&path, "none", pen)
    }

    /// Text at a place: its foot stands there.
    pub fn text(&mut self, at: At, text: &str, lettering: Lettering) -> &mut Self {
        let anchor = match lettering.anchor {
            Anchor::Start => "",
            Anchor::Middle => " text-anchor=\"middle\"",
            Anchor::End => " text-anchor=\"end\"",
        };
        let bold = if lettering.bold { " font-weight=\"bold\"" } else { "" };
        let _ = writeln!(
            self.body,
            "<text x=\"{}\" y=\"{}\" font-family=\"sans-serif\" font-size=\"{}\"{anchor}{bold} fill=\"#000\">{}</text>",
            figure(at.x),
            figure(at.y),
            figure(lettering.size),
            escaped(text)
        );
        self
    }

    /// An arrow that points at a place.
    pub fn arrow(&mut self, from: At, to: At, pen: Pen) -> &mut Self {
        self.line(from, to, pen).arrow_head(from, to, pen)
    }

    /// A dimension: a line with an arrow at either end.
    pub fn dimension(&mut self, from: At, to: At, pen: Pen) -> &mut Self {
        self.line(from, to, pen).arrow_head(from, to, pen).arrow_head(to, from, pen)
    }

    fn arrow_head(&mut self, from: At, to: At, pen: Pen) -> &mut Self {
        const LONG: f64 = 6.0;
        let length = (to.x - from.x).hypot(to.y - from.y);
        if length <= 0.0 {
            return self;
        }
        let (x, y) = ((to.x - from.x) / length, (to.y - from.y) / length);
        let side = |way: f64| to.by(-LONG * x - way * LONG * 0.4 * y, -LONG * y + way * LONG * 0.4 * x);
        let path = format!("M{} L{} L{}", place(side(1.0)), place(to), place(side(-1.0)));
        self.path(&path, "none", Pen { dash: "", ..pen })
    }

    fn path(&mut self, path: &str, fill: &'static str, pen: Pen) -> &mut Self {
        let _ = writeln!(self.body, "<path d=\"{path}\" fill=\"{fill}\"{}/>", stroke(pen));
        self
    }
}

impl fmt::Display for Svg {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}{}</svg>", self.head, self.body)
    }
}

fn stroke(pen: Pen) -> String {
    let dash =
        if pen.dash.is_empty() { String::new() } else { format!(" stroke-dasharray=\"{}\"", pen.dash) };
    format!(
        " stroke=\"{}\" stroke-width=\"{}\" stroke-linecap=\"round\" stroke-linejoin=\"round\"{dash}",
        pen.colour,
        figure(pen.width)
    )
}

fn path(places: &[At], by_hand: bool) -> String {
    let mut path = String::new();
    let mut last: Option<At> = None;
    for to in places {
        match last {
            None => path = format!("M{}", place(*to)),
            Some(from) if by_hand => {
                let [first, second] = wavering(from, *to);
                let _ = write!(path, " C{} {} {}", place(first), place(second), place(*to));
            }
            Some(_) => {
                let _ = write!(path, " L{}", place(*to));
            }
        }
        last = Some(*to);
    }
    path
}

/// Two handles a little off the straight line, the same for the same line.
fn wavering(from: At, to: At) -> [At; 2] {
    let (x, y) = (to.x - from.x, to.y - from.y);
    let length = x.hypot(y);
    if length <= 0.0 {
        return [from, to];
    }
    // A hand wavers more on a long line, and never by much.
    let reach = (length / 60.0).min(1.3);
    let mut seed = [from.x, from.y, to.x, to.y]
        .iter()
        .fold(0x9e37_79b9_u32, |seed, value| (seed ^ (value * 8.0) as i32 as u32).wrapping_mul(0x0100_0193));
    let mut off = || {
        seed ^= seed >> 15;
        seed = seed.wrapping_mul(0x2c1b_3c6d);
        seed ^= seed >> 13;
        reach * (f64::from(seed % 2001) / 1000.0 - 1.0)
    };
    [0.35, 0.7].map(|share| {
        let off = off();
        from.by(x * share - y / length * off, y * share + x / length * off)
    })
}

fn place(place: At) -> String {
    format!("{} {}", figure(place.x), figure(place.y))
}

/// A coordinate to two decimals, without trailing zeros.
fn figure(value: f64) -> String {
    let text = format!("{value:.2}");
    let text = text.trim_end_matches('0').trim_end_matches('.');
    if text == "-0" { "0".to_owned() } else { text.to_owned() }
}

fn escaped(text: &str) -> String {
    let mut safe = String::with_capacity(text.len());
    for letter in text.chars() {
        match letter {
            '&' => safe.push_str("&amp;"),
            '<' => safe.push_str("&lt;"),
            '>' => safe.push_str("&gt;"),
            '"' => safe.push_str("&quot;"),
            // Not allowed in XML at all.
            control if control.is_control() => safe.push(' '),
            other => safe.push(other),
        }
    }
    safe
}

#[cfg(test)]
mod tests {
    use super::*;

    const ABOUT: About<'static> =
        About { id: "a b", title: "a <post>", desc: "\"tall\" & thin", size: At { x: 10.0, y: 20.0 } };

    #[test]
    fn a_drawing_says_what_it_shows_and_escapes_it() {
        let text = Svg::new(&ABOUT).to_string();
        for part in [
            "role=\"img\"",
            "viewBox=\"0 0 10 20\"",
            "aria-labelledby=\"a-b-title a-b-desc\"",
            "<title id=\"a-b-title\">a &lt;post&gt;</title>",
            "<desc id=\"a-b-desc\">&quot;tall&quot; &amp; thin</desc>",
        ] {
            assert!(text.contains(part), "{part} is not in\n{text}");
        }
        assert!(text.ends_with("</svg>"));
    }

    #[test]
    fn a_hand_wavers_little_and_always_alike() {
        for step in 0..200 {
            let (from, to) = (at(f64::from(step), 3.0), at(400.0 - f64::from(step), 90.0));
            let handles = wavering(from, to);
            assert_eq!(handles, wavering(from, to));
            let length = (to.x - from.x).hypot(to.y - from.y);
            for handle in handles {
                let off =
                    ((to.x - from.x) * (handle.y - from.y) - (to.y - from.y) * (handle.x - from.x)) / length;
                assert!(off.abs() <= 1.3 + 1e-9, "{off}");
            }
        }
        assert_ne!(wavering(at(0.0, 0.0), at(9.0, 0.0)), wavering(at(0.0, 1.0), at(9.0, 1.0)));
    }

    #[test]
    fn a_ruled_line_is_straight_and_a_point_has_no_arrow_head() {
        let mut drawing = Svg::new(&ABOUT);
        drawing.line(at(0.0, -0.001), at(5.0, 0.0), Pen::RULED);
        assert!(drawing.to_string().contains("d=\"M0 0 L5 0\""), "{drawing}");
        let before = drawing.to_string().matches("<path").count();
        drawing.arrow(at(1.0, 1.0), at(1.0, 1.0), Pen::RULED);
        assert_eq!(drawing.to_string().matches("<path").count(), before + 1);
        assert!(!drawing.to_string().contains("NaN"));
    }
}
