//! A document as one HTML file that needs nothing else: no scripts, no other files, the reader's own fonts.
//!
//! The numbers of the style sheet stand here once, for the style sheet and for the reckoning of how high a page
//! comes out, so that a page can be made to fit its paper before it is printed.

use super::document::{
    BLACK, BLUE, BURNT_ORANGE, Block, DARK_RED, Document, ORANGE, Panel, Row, Span, Style, Table, Text, Tone,
};
use super::drawing::Drawing;
use super::measure::{BOLD, lines, lines_of};
use crate::verdict::Flag;
use maud::{DOCTYPE, Markup, PreEscaped, html};
use std::io::{self, Write};

/// Margins of a page, above and below, in millimetres.
const MARGIN_HIGH: f64 = 8.5;
/// Margins of a page, left and right.
const MARGIN_WIDE: f64 = 11.0;
/// Millimetres in a point.
const POINT: f64 = 25.4 / 72.0;
/// From line to line, in em.
const LINE: f64 = 1.25;
/// Room after a block, in em.
const GAP: f64 = 0.4;
/// Letters of the title, in em.
const TITLE: f64 = 1.45;
/// Letters of headings.
const HEADING: f64 = 1.05;
/// Small letters.
const SMALL: f64 = 0.85;
/// Letters of tables.
const TABLE: f64 = 0.92;
/// Letters of what was found.
const FOUND: f64 = 1.1;
/// Frame of a panel, in millimetres.
const FRAME: f64 = 0.6;
/// Between frame and text, in em.
const PAD: f64 = 0.35;
/// Between the first sentence of a panel and what follows, in em.
const PAD_LOW: f64 = 0.15;
/// Left and right in a cell, in em.
const CELL_PAD: f64 = 0.35;
/// Above and below in a cell, in em.
const CELL_HIGH: f64 = 0.12;
/// Between drawings, in millimetres.
pub(super) const BETWEEN: f64 = 2.0;
/// The lines to sign on, side by side, in millimetres.
const SIGNATURE: f64 = 10.0;

const STYLES: &str = r"
.step{break-inside:avoid;margin:0 0 0.6em;padding-left:0.8em;border-left:0.6mm solid #bbbbbb}
.step p{margin:0}
.step math{text-align:left;margin:0.15em 0}
.chart svg{width:100%;height:auto}
@page{size:{paper} portrait;margin:{margin_high}mm {margin_wide}mm}
*{box-sizing:border-box}
html{-webkit-print-color-adjust:exact;print-color-adjust:exact}
body{margin:0;background:#ffffff;color:{black};font:{letters}pt/{line} system-ui,sans-serif;overflow-wrap:anywhere;hyphens:manual}
.page{width:100%;max-width:{width}mm;margin:0 auto}
.page+.page{break-before:page}
h1,h2,p,ul,dl,table,.panel,.figures,.signatures{margin:0 0 {gap}em}
h1{font-size:{title}em;line-height:{line};margin-bottom:{title_gap}em}
h2{font-size:{heading}em;line-height:{line};margin-bottom:0}
.small{font-size:{small}em}
ul{padding:0;list-style:none}
ul.points>li,.warning li{padding-left:.9em;text-indent:-.9em}
ul.points>li::before,.warning li::before{content:'– '}
.panel{border:{frame}mm solid {black};break-inside:avoid}
.panel>p,.panel>ul{margin:0;padding:{pad}em {pad_wide}em}
.panel>ul{column-gap:1.5em}
.panel>.lead+ul{padding-top:{pad_low}em}
.found>.lead{padding-bottom:0}
.panel li{break-inside:avoid}
.word{display:inline-block;background:{black};color:#ffffff;padding:0 .4em;font-weight:bold}
.lead{font-weight:bold}
.found{font-size:{found}em}
.found.over{border-color:{dark_red}}.found.over .word{background:{dark_red}}
.found.within{border-color:{blue}}.found.within .word{background:{blue}}
.found.near-limit{border-color:{burnt_orange}}.found.near-limit .word{background:{orange};color:{black}}
.not-checked>.lead{background:repeating-linear-gradient(135deg,#ffffff 0 1.1mm,#9a9a9a 1.1mm 1.4mm)}
.not-checked>.lead>span{background:#ffffff;box-decoration-break:clone;-webkit-box-decoration-break:clone;padding:0 .2em}
.warning{border-color:{orange}}
.warning>.lead{background:{orange};color:{black}}
.warning .word{background:{black};color:{orange}}
.flag{font-weight:bold}
.flag.over{color:{dark_red}}.flag.within{color:{blue}}
table{width:100%;table-layout:fixed;border-collapse:collapse;font-size:{table}em}
caption{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%)}
th,td{padding:{cell_high}em {cell_pad}em;text-align:left;vertical-align:top;border-top:.2mm solid {black}}
th{vertical-align:bottom}
tbody .name th{font-weight:normal}
tbody .name+tr td{border-top:0}
table tbody tr:last-child td{border-bottom:.2mm solid {black}}
.figure{text-align:right;font-variant-numeric:tabular-nums;overflow-wrap:normal}
.figures{display:flex;gap:{between}mm;align-items:flex-start}
.figures>div{display:flex;flex-direction:column;gap:{between}mm}
svg{display:block;max-width:100%;overflow:visible}
dl{display:grid;grid-template-columns:max-content 1fr;column-gap:1em}
dt{font-weight:bold}dd{margin:0}
.signatures{display:flex;gap:6mm;height:{signature}mm;align-items:flex-end}
.signatures div{flex:1;display:flex;gap:1.5mm;align-items:flex-end}
.signatures span{border-bottom:.25mm solid {black};flex:1}
.signatures .date{flex:0 0 22mm}
@media screen{.page{padding:4mm}.figures{flex-wrap:wrap}svg{height:auto}}
@media print{.page{display:flex;flex-direction:column;min-height:{height}mm}.signatures{margin-top:auto}}
";

/// The width and height of a page within its margins, in millimetres.
pub(super) fn inner_mm(paper: super::document::Paper) -> (f64, f64) {
    let (width, height) = paper.size_mm();
    (width - 2.0 * MARGIN_WIDE, height - 2.0 * MARGIN_HIGH)
}

/// Writes a document.
///
/// # Errors
/// If the writer fails.
pub fn html(document: &Document, out: &mut impl Write) -> io::Result<()> {
    let pages: Vec<&[Block]> = document.blocks.split(|block| *block == Block::PageBreak).collect();
    let page = html! {
        (DOCTYPE)
        html lang="en" {
            head {
                meta charset="utf-8";
                meta name="viewport" content="width=device-width, initial-scale=1";
                title { (document.title) }
                style { (PreEscaped(styles(document))) }
            }
            body {
                @for page in pages {
                    main.page { @for block in page { (block_markup(block)) "\n" } }
                }
            }
        }
    };
    writeln!(out, "{}", page.into_string())
}

fn styles(document: &Document) -> String {
    let (width, height) = inner_mm(document.paper);
    let mut text = STYLES.trim_start().to_owned();
    for (key, value) in [
        ("paper", document.paper.name().to_owned()),
        ("letters", document.letters_pt.to_string()),
        ("line", LINE.to_string()),
        ("width", width.to_string()),
        // A little less than the page, so that rounding makes no second one.
        ("height", format!("{:.1}", height - 1.0)),
        ("margin_high", MARGIN_HIGH.to_string()),
        ("margin_wide", MARGIN_WIDE.to_string()),
        ("gap", GAP.to_string()),
        ("title", TITLE.to_string()),
        ("title_gap", format!("{:.3}", GAP / 2.0 / TITLE)),
        ("heading", HEADING.to_string()),
        ("small", SMALL.to_string()),
        ("table", TABLE.to_string()),
        ("found", FOUND.to_string()),
        ("frame", FRAME.to_string()),
        ("pad", PAD.to_string()),
        ("pad_wide", format!("{:.3}", PAD * 1.6)),
        ("pad_low", PAD_LOW.to_string()),
        ("cell_pad", CELL_PAD.to_string()),
        ("cell_high", CELL_HIGH.to_string()),
        ("between", BETWEEN.to_string()),
        ("signature", SIGNATURE.to_string()),
        ("orange", ORANGE.to_owned()),
        ("burnt_orange", BURNT_ORANGE.to_owned()),
        ("dark_red", DARK_RED.to_owned()),
        ("blue", BLUE.to_owned()),
        ("black", BLACK.to_owned()),
    ] {
        text = text.replace(&format!("{{{key}}}"), &value);
    }
    text
}

fn text_markup(text: &Text) -> Markup {
    html! {
        @for Span { text, style } in &text.spans {
            @match style {
                Style::Plain => (text),
                Style::Strong => b { (text) },
                Style::Name => bdi { (text) },
                Style::StrongName => b { bdi { (text) } },
                Style::Flag(flag) => b class={ "flag " (class(*flag)) } { (text) },
            }
        }
    }
}

/// A flag as a class of the style sheet.
fn class(flag: Flag) -> String {
    flag.word().replace(' ', "-")
}

fn block_markup(block: &Block) -> Markup {
    html! {
        @match block {
            Block::Title(text) => h1 { (text_markup(text)) },
            Block::Heading(text) => h2 { (text_markup(text)) },
            Block::Paragraph(text) => p { (text_markup(text)) },
            Block::Small(text) => p.small { (text_markup(text)) },
            Block::List(points) => ul.points { @for point in points { li { (text_markup(point)) } } },
            Block::Panel(panel) => (panel_markup(panel)),
            Block::Table(table) => (table_markup(table)),
            Block::Figures(columns) => div.figures {
                @for column in columns { div { @for drawing in column { (PreEscaped(drawing.to_string())) } } }
            },
            Block::Chart(svg) => div.chart { (PreEscaped(svg)) },
            Block::Steps(steps) => div {
                @for step in steps {
                    div.step {
                        @if !step.formula.is_empty() { math display="block" { (PreEscaped(&step.formula)) } }
                        p { (text_markup(&step.numbers)) }
                        p.small { (text_markup(&step.about)) }
                    }
                }
            },
            Block::KeyValues(pairs) => dl {
                @for (key, value) in pairs { dt { (key) } dd { (text_markup(value)) } }
            },
            Block::Signatures(all) => div.signatures {
                @for signature in all {
                    div { (signature.who) " " span {} " date " span.date {} }
                }
            },
            Block::PageBreak => {},
        }
    }
}

fn panel_markup(panel: &Panel) -> Markup {
    let kind = match panel.tone {
        Tone::Found(flag) => format!("panel found {}", class(flag)),
        Tone::NotChecked => "panel not-checked".to_owned(),
        Tone::Warning => "panel warning".to_owned(),
    };
    html! {
        section class=(kind) {
            p.lead { b.word { (panel.word) } " " span { (text_markup(&panel.lead)) } }
            @if !panel.lines.is_empty() {
                ul style=(format!("columns:{}", panel.columns.max(1))) {
                    @for line in &panel.lines { li { (text_markup(line)) } }
                }
            }
        }
    }
}

fn table_markup(table: &Table) -> Markup {
    let kind = |at: usize| table.columns[at].is_figures.then_some("figure");
    let all = table.columns.len();
    html! {
        table {
            caption { (table.caption) }
            colgroup {
                @for column in &table.columns { col style=(format!("width:{:.2}%", column.share * 100.0)); }
            }
            thead {
                tr { @for (at, column) in table.columns.iter().enumerate() {
                    th scope="col" class=[kind(at)] { (column.head) }
                } }
            }
            tbody {
                @for row in &table.rows {
                    @match row {
                        Row::Cells(cells) => tr { @for (at, cell) in cells.iter().enumerate() {
                            td class=[kind(at)] { (text_markup(cell)) }
                        } },
                        Row::Name(text) => tr.name { th colspan=(all) scope="rowgroup" { (text_markup(text)) } },
                        Row::Spanning(text) => tr { td colspan=(all) { (text_markup(text)) } },
                    }
                }
            }
        }
    }
}

/// How high a page of these blocks comes out, in millimetres, with letters of so many points; no less than it will.
pub(super) fn height_mm(blocks: &[Block], width: f64, letters_pt: f64) -> f64 {
    let em = letters_pt * POINT;
    blocks.iter().map(|block| block_height(block, width, em)).sum()
}

/// Lines of a text in a width, with letters so high.
fn text_lines(text: &Text, width: f64, em: f64) -> f64 {
    let wider = |span: &Span| if span.style.is_bold() { BOLD } else { 1.0 };
    lines_of(text.spans.iter().map(|span| (span.text.as_str(), wider(span))), width / em) as f64
}

fn block_height(block: &Block, width: f64, em: f64) -> f64 {
    let gap = GAP * em;
    match block {
        Block::Title(text) => {
            let em = em * TITLE;
            lines(&text.letters(), width / em / BOLD) as f64 * LINE * em + gap / 2.0
        }
        Block::Heading(text) => {
            let em = em * HEADING;
            lines(&text.letters(), width / em / BOLD) as f64 * LINE * em
        }
        Block::Paragraph(text) => text_lines(text, width, em) * LINE * em + gap,
        Block::Small(text) => {
            let em = em * SMALL;
            text_lines(text, width, em) * LINE * em + GAP * em
        }
        Block::List(points) => {
            points.iter().map(|point| text_lines(point, width - 1.2 * em, em)).sum::<f64>() * LINE * em + gap
        }
        Block::Panel(panel) => panel_height(panel, width, em),
        Block::Table(table) => table_height(table, width, em * TABLE) + gap,
        Block::Figures(columns) => figures_height(columns) + gap,
        Block::KeyValues(pairs) => {
            let keys =
                pairs.iter().map(|(key, _)| super::measure::width(key)).fold(0.0, f64::max) * BOLD * em;
            pairs.iter().map(|(_, value)| text_lines(value, width - keys - em, em)).sum::<f64>() * LINE * em
                + gap
        }
        Block::Signatures(_) => SIGNATURE + gap,
        // These stand in documents of several pages, which are not made to fit.
        Block::Chart(_) | Block::Steps(_) | Block::PageBreak => 0.0,
    }
}

fn panel_height(panel: &Panel, width: f64, em: f64) -> f64 {
    let em = if matches!(panel.tone, Tone::Found(_)) { em * FOUND } else { em };
    let room = width - 2.0 * FRAME - 3.2 * PAD * em;
    let lead = Text::new().strong(format!("{}mm {}", panel.word, panel.lead.letters()));
    // The last lower edge: of the lead alone or of what follows it.
    let mut height = 2.0 * FRAME + text_lines(&lead, room, em) * LINE * em + 2.0 * PAD * em + GAP * em;
    if !panel.lines.is_empty() {
        let columns = panel.columns.max(1);
        let column = (room - (columns - 1) as f64 * 1.5 * em) / columns as f64 - 0.9 * em;
        let each: Vec<f64> = panel.lines.iter().map(|line| text_lines(line, column, em)).collect();
        let lead_pad = if matches!(panel.tone, Tone::Found(_)) { 0.0 } else { PAD };
        height += balanced(&each, columns) * LINE * em + (PAD_LOW + lead_pad) * em;
    }
    height
}

/// The height of columns filled one after the other with points that are not broken, made as even as they go.
fn balanced(points: &[f64], columns: usize) -> f64 {
    let mut high = points.iter().copied().fold(0.0, f64::max);
    loop {
        let (mut filled, mut used) = (1, 0.0);
        for point in points {
            if used + point > high {
                filled += 1;
                used = 0.0;
            }
            used += point;
        }
        if filled <= columns {
            return high;
        }
        high += 1.0;
    }
}

fn table_height(table: &Table, width: f64, em: f64) -> f64 {
    const RULE: f64 = 0.25;
    let cell = |text: &Text, share: f64| text_lines(text, width * share - 2.0 * CELL_PAD * em, em);
    let high = |lines: f64| lines * LINE * em + 2.0 * CELL_HIGH * em + RULE;
    let heads = table.columns.iter().map(|column| cell(&Text::new().strong(&column.head), column.share));
    let rows = table.rows.iter().map(|row| match row {
        Row::Cells(cells) => {
            let lines = cells.iter().zip(&table.columns).map(|(text, column)| cell(text, column.share));
            high(lines.fold(1.0, f64::max))
        }
        Row::Name(text) | Row::Spanning(text) => high(cell(text, 1.0)),
    });
    high(heads.fold(1.0, f64::max)) + rows.sum::<f64>() + RULE
}

fn figures_height(columns: &[Vec<Drawing>]) -> f64 {
    let column = |drawings: &Vec<Drawing>| {
        drawings.iter().map(|drawing| drawing.room().height).sum::<f64>()
            + BETWEEN * drawings.len().saturating_sub(1) as f64
    };
    columns.iter().map(column).fold(0.0, f64::max)
}
