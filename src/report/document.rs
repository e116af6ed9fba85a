//! A document as data: what stands on a page, without how it is written.

use super::drawing::Drawing;
use crate::verdict::Flag;

/// The paper a document is printed on.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Paper {
    /// 8.5 in by 11 in.
    #[default]
    Letter,
    /// 210 mm by 297 mm.
    A4,
}

impl Paper {
    /// Its name in style sheets.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Letter => "letter",
            Self::A4 => "A4",
        }
    }
    /// Its width and height in millimetres.
    #[must_use]
    pub const fn size_mm(self) -> (f64, f64) {
        match self {
            Self::Letter => (215.9, 279.4),
            Self::A4 => (210.0, 297.0),
        }
    }
}

/// How a stretch of text is set.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Style {
    /// As the rest.
    Plain,
    /// Bold.
    Strong,
    /// A name that somebody gave, in any script; it does not turn the text beside it round.
    Name,
    /// A bold name.
    StrongName,
    /// A flag's shape and word, or what follows from it, in bold and in its colour.
    Flag(Flag),
}

impl Style {
    /// Whether its letters are bold.
    #[must_use]
    pub const fn is_bold(self) -> bool {
        matches!(self, Self::Strong | Self::StrongName | Self::Flag(_))
    }
}

/// A stretch of text set one way.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Span {
    /// What it says.
    pub text: String,
    /// How it is set.
    pub style: Style,
}

/// Running text.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Text {
    /// One after the other.
    pub spans: Vec<Span>,
}

impl Text {
    /// No text yet.
    #[must_use]
    pub const fn new() -> Self {
        Self { spans: Vec::new() }
    }
    /// The same with more text after it.
    #[must_use]
    pub fn plain(self, text: impl Into<String>) -> Self {
        self.with(text, Style::Plain)
    }
    /// The same with bold text after it.
    #[must_use]
    pub fn strong(self, text: impl Into<String>) -> Self {
        self.with(text, Style::Strong)
    }
    /// The same with a name after it.
    #[must_use]
    pub fn name(self, text: impl Into<String>) -> Self {
        self.with(text, Style::Name)
    }
    /// The same with a flag's words after it.
    #[must_use]
    pub fn flag(self, flag: Flag, text: impl Into<String>) -> Self {
        self.with(text, Style::Flag(flag))
    }
    /// The same with text of a style after it.
    #[must_use]
    pub fn with(mut self, text: impl Into<String>, style: Style) -> Self {
        let text = text.into();
        let is_name = matches!(style, Style::Name | Style::StrongName);
        match self.spans.last_mut() {
            Some(last) if last.style == style && !is_name => last.text.push_str(&text),
            _ if text.is_empty() => {}
            _ => self.spans.push(Span { text, style }),
        }
        self
    }
    /// The same with another text after it.
    #[must_use]
    pub fn then(self, other: Self) -> Self {
        other.spans.into_iter().fold(self, |text, span| text.with(span.text, span.style))
    }
    /// Whether it says nothing.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.spans.is_empty()
    }
    /// Its letters alone.
    #[must_use]
    pub fn letters(&self) -> String {
        self.spans.iter().map(|span| span.text.as_str()).collect()
    }
}

/// What a panel is about.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Tone {
    /// A finding; of several the worst.
    Found(Flag),
    /// What was not checked; as loud as "over".
    NotChecked,
    /// Somebody could be hurt.
    Warning,
}

/// A framed panel with a word on it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Panel {
    /// What it is about.
    pub tone: Tone,
    /// Its word, in capitals.
    pub word: String,
    /// The first sentence, beside the word.
    pub lead: Text,
    /// What follows, each on a line of its own.
    pub lines: Vec<Text>,
    /// In how many columns what follows is set.
    pub columns: usize,
}

/// A column of a table.
#[derive(Debug, Clone, PartialEq)]
pub struct Column {
    /// What stands over it.
    pub head: String,
    /// Its share of the width; the shares of a table sum to 1.
    pub share: f64,
    /// Whether it holds figures, which stand at its right edge.
    pub is_figures: bool,
}

/// A row of a table.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Row {
    /// A cell a column.
    Cells(Vec<Text>),
    /// One cell over all columns, which names the rows after it.
    Name(Text),
    /// One cell over all columns.
    Spanning(Text),
}

/// A table.
#[derive(Debug, Clone, PartialEq)]
pub struct Table {
    /// What it shows, for those who hear it.
    pub caption: String,
    /// From left to right.
    pub columns: Vec<Column>,
    /// From top to bottom.
    pub rows: Vec<Row>,
}

/// One step of a calculation.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Step {
    /// The formula in MathML, result symbol and all; empty where the step is no formula.
    pub formula: String,
    /// The same in numbers, and the result.
    pub numbers: Text,
    /// What it is and where it stands.
    pub about: Text,
}

/// A line to sign on.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Signature {
    /// Who signs.
    pub who: String,
}

/// One piece of a document.
#[derive(Debug, Clone, PartialEq)]
pub enum Block {
    /// The title of the document.
    Title(Text),
    /// A heading within it.
    Heading(Text),
    /// Running text.
    Paragraph(Text),
    /// Running text in small letters.
    Small(Text),
    /// Points, each on a line of its own.
    List(Vec<Text>),
    /// A framed panel.
    Panel(Panel),
    /// A table.
    Table(Table),
    /// Drawings in columns side by side.
    Figures(Vec<Vec<Drawing>>),
    /// A chart as it was drawn, an SVG element.
    Chart(String),
    /// Steps of a calculation.
    Steps(Vec<Step>),
    /// Words with what they stand for.
    KeyValues(Vec<(String, Text)>),
    /// Lines to sign on side by side, each with the date.
    Signatures(Vec<Signature>),
    /// What follows begins a page.
    PageBreak,
}

/// A document.
#[derive(Debug, Clone, PartialEq)]
pub struct Document {
    /// For the window and the list of files.
    pub title: String,
    /// What it is printed on.
    pub paper: Paper,
    /// The size of its letters in points.
    pub letters_pt: f64,
    /// From top to bottom.
    pub blocks: Vec<Block>,
}

/// The signal orange of warnings.
pub const ORANGE: &str = "#F28C28";
/// Of what is within.
pub const BLUE: &str = "#0072B2";
/// Of what is over.
pub const DARK_RED: &str = "#93213A";
/// Of marks near a limit, darker than the signal orange so that it shows on white.
pub const BURNT_ORANGE: &str = "#D55E00";
/// Of words and of what was not checked.
pub const BLACK: &str = "#000000";

/// The colour that goes with a flag, beside its word and its shape and never alone.
#[must_use]
pub const fn colour(flag: Flag) -> &'static str {
    match flag {
        Flag::Within => BLUE,
        Flag::NearLimit => BURNT_ORANGE,
        Flag::Over => DARK_RED,
        Flag::NotChecked | Flag::Depends => BLACK,
    }
}
