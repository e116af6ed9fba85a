//! The calculation for the engineer who reviews: every step of the governing post of each run, with its clause.

use super::chart;
use super::document::{Block, Column, Document, Panel, Paper, Row, Signature, Step, Table, Text, Tone};
use super::figures::{gust_at_most, ratio_spread};
use super::footings;
use super::frame;
use super::json::governs;
use super::text::spans;
use super::told;
use crate::answers::{Check, CheckError, workings};
use crate::caution::{CAUTIONS, NOT_CHECKED};
use crate::member::Format;
use crate::source::Seen;
use crate::units::{Force, Length, Measure, Quantity, System, Value, number};
use crate::workings::{Card, Entry, Formula, symbol_mathml};

/// The clauses that strengths come from, and their format.
fn strength(check: &Check) -> String {
    let clauses: Vec<String> = told::strength_clauses(check).iter().map(ToString::to_string).collect();
    let format = match check.survey.site.format {
        Format::Lrfd => "resistance factors",
        Format::Asd => "allowable stress: safety factors against 0.6 of the wind",
    };
    format!("{}; {format}", clauses.join("; "))
}

/// The calculation of a check as a document.
///
/// # Errors
/// If the workings of a run cannot be worked again.
pub fn engineer_sheet(check: &Check, paper: Paper) -> Result<Document, CheckError> {
    let system = check.survey.units;
    let title = check.survey.job.title.as_deref().unwrap_or("Fence survey");
    let mut about = vec![
        ("wind".to_owned(), Text::new().plain(told::wind(check).join(" · "))),
        ("code".to_owned(), Text::new().plain(check.survey.site.code.document().title)),
        ("strength".to_owned(), Text::new().plain(strength(check))),
    ];
    about.extend(frame::how(check).map(|how| ("frame".to_owned(), Text::new().plain(how))));
    about.push(("survey".to_owned(), Text::new().plain(&*check.survey.hash)));
    let mut blocks = vec![
        Block::Title(Text::new().plain("Calculation: ").name(title)),
        Block::KeyValues(about),
        Block::Panel(Panel {
            tone: Tone::NotChecked,
            word: "◇ NOT CHECKED".to_owned(),
            lead: Text::new().strong(told::unchecked_parts(check).join(", ")),
            lines: NOT_CHECKED.iter().map(|(_, text)| Text::new().plain(*text)).collect(),
            columns: 2,
        }),
        Block::Heading(Text::new().plain("Limit gusts")),
    ];
    // A chart that cannot be drawn leaves the figures, which stand in the table as well.
    blocks.extend(chart::limit_gusts(check).ok().map(Block::Chart));
    blocks.push(Block::Heading(Text::new().plain("Posts at the design event")));
    blocks.push(posts(check, system));
    blocks.extend(on_frame(check, system));
    blocks.extend(footings_table(check, system));
    if check.runs.iter().any(|run| run.worst.rails.first().is_some()) {
        blocks.push(Block::Heading(Text::new().plain("Rails at the design event")));
        blocks.push(rails(check, system));
    }
    blocks.push(Block::Heading(Text::new().plain("Remarks")));
    blocks.push(Block::List(
        check
            .remarks
            .iter()
            .map(|remark| remark.text(system))
            .chain(told::notes(&check.survey))
            .map(|line| Text::new().plain(line))
            .collect(),
    ));
    let mut documents: Vec<&Card> = Vec::new();
    for (name, entries) in workings(check, None)? {
        blocks.push(Block::PageBreak);
        blocks.push(Block::Title(Text::new().plain("Workings: ").name(name)));
        blocks.extend(steps(&entries, system));
        for entry in &entries {
            if let Entry::Worked { card, .. } = entry
                && !documents.iter().any(|before| before.clause.document == card.clause.document)
            {
                documents.push(card);
            }
        }
    }
    blocks.push(Block::Heading(Text::new().plain("Sources")));
    blocks.push(Block::List(documents.iter().map(|card| source(card)).collect()));
    blocks.push(Block::Panel(Panel {
        tone: Tone::Warning,
        word: "WARNING".to_owned(),
        lead: Text::new().strong(CAUTIONS[0].text),
        lines: CAUTIONS[1..].iter().map(|caution| Text::new().plain(caution.text)).collect(),
        columns: 1,
    }));
    blocks.push(Block::Signatures(vec![Signature { who: "Engineer".to_owned() }]));
    Ok(Document { title: format!("Calculation: {title}"), paper, letters_pt: 9.0, blocks })
}

fn source(card: &Card) -> Text {
    let document = card.clause.document;
    let known = match document.seen {
        Seen::FirstHand => String::new(),
        Seen::SecondHand(through) => format!("; the page was not read, known through {through}"),
        Seen::Memory => "; from memory, not seen".to_owned(),
    };
    Text::new().strong(document.short).plain(format!(": {}{known}", document.title))
}

fn posts(check: &Check, system: System) -> Block {
    let unit = |measure: Measure| measure.printed(system).0;
    let most = footings::at_most(footings::posts(check));
    let column = |head: String, share: f64, is_figures| Column { head, share, is_figures };
    let columns = vec![
        column("post".to_owned(), 0.2, false),
        column(format!("moment {}", unit(Measure::Moment)), 0.12, true),
        column(format!("strength {}", unit(Measure::Moment)), 0.12, true),
        column("ratio".to_owned(), 0.13, true),
        column(format!("limit gust{}", most.replace(" at", ", at")), 0.18, true),
        column("case".to_owned(), 0.25, false),
    ];
    let mut rows = Vec::new();
    for (run, answer) in check.settled.fence.runs.iter().zip(&check.runs) {
        rows.push(Row::Name(Text::new().name(&*run.name)));
        for (at, post) in answer.worst.posts.iter().enumerate() {
            let best = answer.best.as_ref().map(|best| &best.posts[at]);
            let figure = |si: Option<f64>| {
                si.map_or_else(|| "-".to_owned(), |si| number(Measure::Moment.in_unit(si.abs(), system), 0))
            };
            rows.push(Row::Cells(vec![
                Text::new().plain(format!("{}, {}", at + 1, run.posts[at].role.word())),
                Text::new().plain(figure(post.parts[0].demand.map(|value| value.si))),
                Text::new().plain(figure(post.parts[0].capacity.map(|value| value.si))),
                Text::new().plain(post.ratio_of_post().map_or_else(
                    || "-".to_owned(),
                    |ratio| ratio_spread(ratio, best.and_then(crate::verdict::PostVerdict::ratio_of_post)),
                )),
                Text::new().plain(gust_at_most(post.limit_gust, best.map(|best| best.limit_gust), system)),
                Text::new().plain(post.design.map_or_else(
                    || "no design wind".to_owned(),
                    |load| governs(check, load.place, "", load.case),
                )),
            ]));
        }
    }
    Block::Table(Table {
        caption: "Posts, their moments, strengths and limit gusts".to_owned(),
        columns,
        rows,
    })
}

/// What posts, rails, back braces and guys do on the frame, beside hand statics; nothing where it was not asked.
fn on_frame(check: &Check, system: System) -> Vec<Block> {
    const SHARES: [f64; 9] = [0.13, 0.1, 0.1, 0.1, 0.1, 0.09, 0.08, 0.09, 0.21];
    if !check.runs.iter().any(frame::is_worked) {
        return Vec::new();
    }
    let heads = std::iter::once("post".to_owned()).chain(frame::heads(system)).zip(SHARES).enumerate();
    let columns =
        heads.map(|(at, (head, share))| Column { head, share, is_figures: (1..8).contains(&at) }).collect();
    let (mut rows, mut lines) = (Vec::new(), Vec::new());
    for (run, answer) in
        check.settled.fence.runs.iter().zip(&check.runs).filter(|(_, one)| frame::is_worked(one))
    {
        rows.push(Row::Name(Text::new().name(&*run.name)));
        for (at, post) in answer.worst.posts.iter().enumerate() {
            let Some(cells) = frame::cells(post, system) else { continue };
            let head = format!("{}, {}", at + 1, run.posts[at].role.word());
            let cells = std::iter::once(head).chain(cells);
            rows.push(Row::Cells(cells.map(|cell| Text::new().plain(cell)).collect()));
        }
        let of_run = |line: String| Text::new().name(&*run.name).plain(format!(": {line}"));
        let guys = frame::guys(answer, system).into_iter().map(|(name, text)| format!("{name} of {text}"));
        lines.extend(guys.chain(frame::rails(answer, system)).map(of_run));
    }
    let caption =
        "Posts on the frame, with feet that do not give and with soft ones, beside hand statics".to_owned();
    let has_guys = check.settled.fence.runs.iter().any(|run| !run.guys.is_empty());
    let braced = if has_guys { format!(" {}", frame::BRACED) } else { String::new() };
    let mut blocks = vec![
        Block::Heading(Text::new().plain("Posts and rails as one frame")),
        Block::Paragraph(Text::new().plain(format!("{} {}{braced}", frame::ENGINEERS_TABLE, frame::WHY))),
        Block::Table(Table { caption, columns, rows }),
    ];
    if !lines.is_empty() {
        blocks.push(Block::List(lines));
    }
    blocks
}

/// The rails that were checked, those of bays that come out alike in one row.
fn rails(check: &Check, system: System) -> Block {
    const SHARES: [f64; 10] = [0.1, 0.12, 0.1, 0.08, 0.09, 0.1, 0.1, 0.11, 0.1, 0.1];
    let heads = told::rail_heads(system).into_iter().zip(SHARES).enumerate();
    let columns =
        heads.map(|(at, (head, share))| Column { head, share, is_figures: (4..9).contains(&at) }).collect();
    let mut rows = Vec::new();
    for (run, answer) in check.settled.fence.runs.iter().zip(&check.runs) {
        if answer.worst.rails.first().is_none() {
            continue;
        }
        rows.push(Row::Name(Text::new().name(&*run.name)));
        let mut alike: Vec<(Vec<usize>, Vec<String>)> = Vec::new();
        for (bay, cells) in told::rail_rows(answer, system) {
            match alike.iter_mut().find(|(_, before)| *before == cells) {
                Some((bays, _)) => bays.push(bay),
                None => alike.push((vec![bay], cells)),
            }
        }
        rows.extend(alike.into_iter().map(|(bays, cells)| {
            let cells = std::iter::once(spans(&bays)).chain(cells);
            Row::Cells(cells.map(|cell| Text::new().plain(cell)).collect())
        }));
    }
    Block::Table(Table { caption: "Rails, their loads, strengths and limit gusts".to_owned(), columns, rows })
}

/// What posts stand in, held against the design wind; nothing where no footing was.
fn footings_table(check: &Check, system: System) -> Vec<Block> {
    let unit = |measure: Measure| measure.printed(system).0;
    let column = |head: String, share: f64, is_figures| Column { head, share, is_figures };
    let columns = vec![
        column("footing of post".to_owned(), 0.16, false),
        column("stands in".to_owned(), 0.16, false),
        column(format!("load {}", unit(Measure::Force)), 0.1, true),
        column(format!("carries {}", unit(Measure::Force)), 0.11, true),
        column("deep".to_owned(), 0.1, true),
        column("needs".to_owned(), 0.15, true),
        column("ratio".to_owned(), 0.1, true),
        column("method".to_owned(), 0.12, false),
    ];
    let mut rows = Vec::new();
    for (run, answer) in check.settled.fence.runs.iter().zip(&check.runs) {
        if !answer.worst.posts.iter().any(|post| post.footing.checked.is_ok()) {
            continue;
        }
        rows.push(Row::Name(Text::new().name(&*run.name)));
        for (at, post) in answer.worst.posts.iter().enumerate() {
            let footing = &post.footing;
            let Ok(found) = &footing.checked else { continue };
            let best = answer.best.as_ref().and_then(|best| best.posts[at].footing.checked.as_ref().ok());
            let force = |force: Force| number(Measure::Force.in_unit(force.si(), system), 0);
            let depth = |depth: Length| footings::depth(depth, system);
            let stands = match (footing.shape, footing.width) {
                (Some(shape), Some(width)) => format!("{}, {}", shape.word(), depth(width.across)),
                _ => "not known".to_owned(),
            };
            rows.push(Row::Cells(vec![
                Text::new().plain(format!("{}, {}", at + 1, run.posts[at].role.word())),
                Text::new().plain(stands),
                Text::new().plain(force(found.demand.force)),
                Text::new().plain(force(found.capacity)),
                Text::new().plain(footing.depth.map_or_else(|| "-".to_owned(), depth)),
                Text::new().plain(footings::needed(footing, system).unwrap_or_else(|| "-".to_owned())),
                Text::new().plain(ratio_spread(found.ratio, best.map(|best| best.ratio))),
                Text::new().plain(footing.method.key()),
            ]));
        }
    }
    if rows.is_empty() {
        return Vec::new();
    }
    let caption =
        "Footings, the load at the level of their method, what they carry and the depth needed".to_owned();
    vec![
        Block::Heading(Text::new().plain("Footings at the design event")),
        Block::Table(Table { caption, columns, rows }),
    ]
}

/// The steps of a calculation, a heading between its parts.
fn steps(entries: &[Entry], system: System) -> Vec<Block> {
    let mut blocks = Vec::new();
    let mut steps: Vec<Step> = Vec::new();
    for entry in entries {
        match entry {
            Entry::Heading(text) => {
                if !steps.is_empty() {
                    blocks.push(Block::Steps(std::mem::take(&mut steps)));
                }
                blocks.push(Block::Heading(Text::new().plain(&**text)));
            }
            Entry::Worked { card, given, result } => steps.push(worked(card, given, *result, system)),
            Entry::Judged { symbol, value, because } => steps.push(Step {
                formula: String::new(),
                numbers: Text::new().plain(format!("{symbol} = {}", value.written(system))),
                about: Text::new().plain(format!("taken: {because}")),
            }),
            Entry::Added { symbol, about, terms, result } => steps.push(Step {
                formula: String::new(),
                numbers: Text::new().strong(format!("{symbol} = {}", result.written(system))),
                about: Text::new().plain(format!("sum of {terms}: {about}")),
            }),
            Entry::Solved { symbol, method, rounds, residual } => steps.push(Step {
                formula: String::new(),
                numbers: Text::new().plain(format!("{symbol} solved: {method}")),
                about: Text::new().plain(told::rounds(*rounds, *residual)),
            }),
        }
    }
    if !steps.is_empty() {
        blocks.push(Block::Steps(steps));
    }
    blocks
}

fn worked(card: &Card, given: &[Value], result: Value, system: System) -> Step {
    let place = |key: &str| card.given.iter().position(|field| field.key == key);
    let about = Text::new().plain(format!("{} [{}]", card.about.trim(), card.clause));
    if let Some(Ok(formula)) = card.source.map(Formula::read) {
        let marked = formula.mathml(&|key| match place(key) {
            Some(at) => symbol_mathml(card.given[at].symbol),
            None => symbol_mathml("π"),
        });
        let numbers = formula.text(&|key| match place(key) {
            Some(at) => given[at].written(system),
            None => "π".to_owned(),
        });
        return Step {
            formula: format!("{}<mo>=</mo>{marked}", symbol_mathml(card.symbol)),
            numbers: Text::new().plain(format!("= {numbers} = ")).strong(result.written(system)),
            about,
        };
    }
    let inputs: Vec<String> = card
        .given
        .iter()
        .zip(given)
        .map(|(field, value)| format!("{} = {}", field.symbol, value.written(system)))
        .collect();
    Step {
        formula: String::new(),
        numbers: Text::new()
            .plain(format!("{} for {} = ", card.symbol, inputs.join(", ")))
            .strong(result.written(system)),
        about,
    }
}
