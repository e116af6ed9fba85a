//! What every report for reading says in the same words: the runs told together, their cloth, the wind, what was
//! not checked, what to measure next.

use super::figures::{gust, gust_figures, gust_spread, length, listed, ratio_spread, speed_unit};
use super::text::spans;
use crate::answers::{Check, First, MeasureNext, RailGust, RunAnswer, Side, clearly_before};
use crate::fence::{Condition, Face, Run};
use crate::member::Format;
use crate::numerics::ROUNDING;
use crate::source::Clause;
use crate::survey::{Found, HeldBy, Reading, RunSurvey, SiteReading, Survey};
use crate::units::{Measure, Quantity, System, Velocity, metres_per_second, number, trimmed};
use crate::verdict::{Flag, GuyVerdict, NO_WALL, PartKind, PostVerdict, RailCheck, RailsVerdict, Then};
use crate::wind::KeyKind;

/// Runs that are told together.
pub(super) struct Alike<'a> {
    pub(super) names: Vec<&'a str>,
    /// By index.
    pub(super) runs: Vec<usize>,
    /// The first of them by index.
    pub(super) at: usize,
    pub(super) answer: &'a RunAnswer,
    pub(super) run: &'a Run,
    pub(super) survey: &'a RunSurvey,
}

/// Runs in the order of the survey, those with the same cloth and the same figures at every post together.
pub(super) fn alike(check: &Check) -> Vec<Alike<'_>> {
    together(check, |one, other| one.worst == other.worst && one.best == other.best)
}

/// The same, those together that have the same figures near the ends, inside and bare; their corner posts may differ
/// by what stands round the corner.
pub(super) fn alike_in_groups(check: &Check) -> Vec<Alike<'_>> {
    together(check, |one, other| {
        one.near_ends == other.near_ends && one.inside == other.inside && one.bare == other.bare
    })
}

fn together(check: &Check, same: fn(&RunAnswer, &RunAnswer) -> bool) -> Vec<Alike<'_>> {
    let mut all: Vec<Alike<'_>> = Vec::new();
    let in_words = |survey: &RunSurvey| survey.fastening.as_ref().map(|fastening| fastening.text.clone());
    for (at, answer) in check.runs.iter().enumerate() {
        let (run, survey) = (&check.settled.fence.runs[at], &check.survey.runs[at]);
        let like = all.iter_mut().find(|one| {
            one.run.bays == run.bays
                && one.run.screen == run.screen
                && one.run.height == run.height
                && one.run.base_above_ground == run.base_above_ground
                && cloth_name(one.run, one.survey) == cloth_name(run, survey)
                && in_words(one.survey) == in_words(survey)
                && one.run.start.is_like(run.start)
                && one.run.finish.is_like(run.finish)
                && same(one.answer, answer)
        });
        match like {
            Some(one) => {
                one.names.push(&run.name);
                one.runs.push(at);
            }
            None => all.push(Alike { names: vec![&run.name], runs: vec![at], at, answer, run, survey }),
        }
    }
    all
}

/// How an equation was solved: its rounds and what is left of it.
pub(super) fn rounds(rounds: usize, residual: f64) -> String {
    let times = if rounds == 1 { "1 round".to_owned() } else { format!("{rounds} rounds") };
    if residual == 0.0 {
        format!("in {times}; nothing is left of the equation")
    } else {
        format!("in {times}; of the equation is left {residual:.0e} of its largest term")
    }
}

/// A wind speed that was given.
pub(super) fn speed(speed: Velocity, system: System) -> String {
    format!("{} {}", trimmed(Measure::Speed.in_unit(speed.si(), system), 1), speed_unit(system))
}

/// The design wind and where it was looked up.
pub(super) fn design_wind(check: &Check) -> String {
    let (site, system) = (&check.survey.site, check.survey.units);
    let text = match site.wind_speed.reading {
        Reading::Measured(one) => format!("design wind {}", speed(one, system)),
        Reading::Between(low, high) => {
            format!("design wind {} to {}", speed(low, system), speed(high, system))
        }
        Reading::Unknown => return "design wind UNKNOWN".to_owned(),
    };
    match &site.wind_speed_source {
        Some(source) => format!("{text} ({source})"),
        None => format!("{text} (source not given)"),
    }
}

/// The code, the design wind and what the code asks of the site, for joining in one line.
pub(super) fn wind(check: &Check) -> Vec<String> {
    let site = &check.survey.site;
    let mut wind = vec![site.code.document().short.to_owned(), design_wind(check)];
    let told = |category: &&String| {
        let category = format!("risk category {category}");
        !site.wind_speed_source.as_ref().is_some_and(|source| source.contains(&category))
    };
    wind.extend(site.risk_category.as_ref().filter(told).map(|category| format!("risk category {category}")));
    let mut tables: Vec<&str> = Vec::new();
    for (value, leaf) in site.values.iter().zip(site.code.leaves()) {
        let KeyKind::Choice(choices) = leaf.key.kind else { continue };
        let word = |reading: SiteReading| match reading {
            SiteReading::Choice(at) => Some(choices[at].0),
            SiteReading::Quantity(_) | SiteReading::Absent => None,
        };
        // Of a table its first word tells that it stands.
        let name = match leaf.table {
            Some(table) if tables.contains(&table.key) => continue,
            Some(table) => {
                tables.push(table.key);
                format!("{}:", table.key)
            }
            None => leaf.key.key.to_owned(),
        };
        let (low, high) = (value.reading.low().map(word), value.reading.high().map(word));
        wind.push(match (low, high) {
            (Some(None), _) | (_, Some(None)) => continue,
            (Some(Some(low)), Some(Some(high))) if low == high => format!("{name} {low}"),
            (Some(Some(low)), Some(Some(high))) => format!("{name} {low} or {high}"),
            _ => format!("{name} unknown"),
        });
    }
    if site.format == Format::Asd {
        wind.push("allowable stress design".to_owned());
    }
    wind
}

/// Every clause that a strength of a post comes from, at either end of what is not known.
pub(super) fn strength_clauses(check: &Check) -> Vec<Clause> {
    let mut clauses: Vec<Clause> = Vec::new();
    let verdicts = check.runs.iter().flat_map(|run| std::iter::once(&run.worst).chain(&run.best));
    let parts = verdicts.flat_map(|run| &run.posts).flat_map(|post| &post.parts);
    for part in parts.filter(|part| part.kind != PartKind::Sway) {
        let new = part.rule.filter(|clause| !clauses.contains(clause));
        clauses.extend(new);
    }
    clauses
}

/// The documents that strengths of posts come from, as they are cited, and those of their footings.
pub(super) fn strength_documents(check: &Check) -> String {
    let (mut of_posts, mut of_footings): (Vec<&str>, Vec<&str>) = (Vec::new(), Vec::new());
    let verdicts = check.runs.iter().flat_map(|run| std::iter::once(&run.worst).chain(&run.best));
    for part in verdicts.flat_map(|run| &run.posts).flat_map(PostVerdict::load_bearing) {
        let Some(clause) = part.rule else { continue };
        let documents = if part.kind == PartKind::Footing { &mut of_footings } else { &mut of_posts };
        if !documents.contains(&clause.document.short) {
            documents.push(clause.document.short);
        }
    }
    match of_footings.is_empty() {
        true => of_posts.join(", "),
        false => format!("{}, of footings by {}", of_posts.join(", "), of_footings.join(", ")),
    }
}

/// What is not checked where no speed is given.
pub(super) const NO_DESIGN_WIND: &str = "any post at the design wind (no speed is given)";

/// What was not checked of the fence, in the order of the parts.
pub(super) fn unchecked_parts(check: &Check) -> Vec<&'static str> {
    let unchecked = |kind: PartKind| {
        check
            .runs
            .iter()
            .flat_map(|run| &run.worst.posts)
            .any(|post| post.parts.iter().any(|part| part.kind == kind && part.capacity.is_none()))
    };
    let mut parts = Vec::new();
    if !check.has_speed() {
        parts.push(NO_DESIGN_WIND);
    }
    let some_worked = super::footings::posts(check).any(super::footings::is_worked);
    let rails = || check.runs.iter().flat_map(|run| &run.worst.rails.checks);
    for (kind, name) in [
        (PartKind::PostBending, "bending of driven posts"),
        (PartKind::PostShear, "shear of some posts"),
        (PartKind::Footing, if some_worked { "some footings" } else { "footings" }),
        (PartKind::Rails, if rails().any(|rail| rail.why.is_none()) { "some rails" } else { "rails" }),
        (PartKind::Sway, "sway in gusts"),
        (PartKind::Fastening, "ties and lacing"),
    ] {
        if unchecked(kind) || (kind == PartKind::Rails && rails().any(|rail| rail.why.is_some())) {
            parts.push(name);
        }
    }
    if check.settled.fence.runs.iter().any(|run| !run.guys.is_empty() || !run.braces.is_empty()) {
        let on_frame = check.runs.iter().any(|run| matches!(run.worst.frame, Some(Ok(_))));
        parts.push(if on_frame { "uplift of braces and guys" } else { "braces and guys" });
    }
    parts
}

/// What the cloth of a run is called, where it has any; by its solidity where nobody named it.
pub(super) fn cloth_name(run: &Run, survey: &RunSurvey) -> String {
    let solid = |solidity: f64| format!("cloth {solidity:.2} solid");
    let name = match (&run.screen, &survey.cloth) {
        (_, Some(name)) => name.clone(),
        (Some(screen), None) if screen.name == "own" => solid(screen.solidity),
        (Some(screen), None) => screen.name.clone(),
        (None, None) => String::new(),
    };
    let over: Vec<String> = survey
        .over
        .iter()
        .map(|over| over.cloth.clone().unwrap_or_else(|| solid(over.solidity.reading.high().unwrap_or(1.0))))
        .collect();
    if over.is_empty() { name } else { format!("{name} under {}", over.join(" and ")) }
}

/// What is said of wind from either side of a run's cloth: where it presses the cloth on, where it pulls it off and what
/// goes then, and who goes first. Three pieces, each with the words it begins with.
pub(super) fn winds(check: &Check, alike: &Alike<'_>) -> Option<[(String, String); 3]> {
    let winds = alike.answer.winds.as_ref()?;
    let system = check.survey.units;
    let held = alike.survey.fastening.as_ref();
    let (word, go) = match held.map(|held| &held.by) {
        Some(HeldBy::Lacing { .. }) => ("lacing", "starts to go"),
        _ => ("ties", "start to go"),
    };
    let spread = |(low, high): (Velocity, Velocity)| gust_spread(low, Some(high), system);
    let off = match (winds.fastening, &alike.answer.worst.fastening) {
        (Some(gusts), _) => {
            let then = match winds.then {
                Some(Then::AllGo) => {
                    "; with the first gone its neighbours follow until the row is off".to_owned()
                }
                Some(Then::Stops { gone, of }) => format!("; it stops after {gone} of {of} ties of that row"),
                Some(Then::Either) => "; its neighbours may follow until the row is off".to_owned(),
                None => String::new(),
            };
            format!("pulls it off: {word} {go} in a gust of {}{then}", spread(gusts))
        }
        (None, Err(why)) => format!("pulls it off: ◇ not checked, {}", why.why()),
        (None, Ok(found)) => {
            let ask = found.unknown.first().map_or("", |part| part.ask());
            format!("pulls it off: ◇ not checked; ask the maker for {ask}")
        }
    };
    // A footing that is the first of a post to reach its limit is told by its name.
    let post = super::footings::Apart::of(std::iter::once(alike.answer)).first();
    let first = match winds.first {
        First::Fastening => format!(
            "the {word}: {} against {} for the weakest {post}",
            spread(winds.fastening?),
            spread(winds.posts)
        ),
        First::Posts => format!(
            "the {post}s: {} against {} for the {word}, which {} nothing",
            spread(winds.posts),
            spread(winds.fastening?),
            if word == "ties" { "save" } else { "saves" }
        ),
        First::Rail(place) => format!(
            "the {}: {} against {} for the {word} and {} for the weakest {post}",
            place.name(),
            spread(winds.rail_off?.gusts),
            spread(winds.fastening?),
            spread(winds.posts)
        ),
        First::TooClose => {
            let weakest = format!("weakest {post}");
            let mut all = vec![(winds.fastening?, word), (winds.posts, weakest.as_str())];
            all.extend(winds.rail_off.map(|rail| (rail.gusts, rail.place.name())));
            all.sort_by(|((one, _), _), ((other, _), _)| one.si().total_cmp(&other.si()));
            let all: Vec<String> =
                all.into_iter().map(|(gusts, of)| format!("{} for the {of}", spread(gusts))).collect();
            format!("too close to say: {}", all.join(", "))
        }
        First::NotKnown => {
            let rail = winds.rail_off.filter(|rail| rail.gusts.0 < winds.posts.0);
            format!(
                "◇ not known; the weakest {post} is at its limit in a gust of {}{}",
                spread(winds.posts),
                rail.map_or_else(String::new, |rail| {
                    format!(", the {} before it in one of {}", rail.place.name(), spread(rail.gusts))
                })
            )
        }
    };
    let from = |outside: bool| if outside { "wind from outside" } else { "wind from inside" }.to_owned();
    let (onto_head, off_head) = match alike.run.screen.as_ref()?.face {
        Some(Face::Inside) => (from(false), from(true)),
        Some(Face::Outside) => (from(true), from(false)),
        None => ("wind one way".to_owned(), "wind the other way".to_owned()),
    };
    let rail_before = winds.rail_onto.filter(|rail| clearly_before(rail.gusts, winds.posts));
    let onto = format!(
        "presses the cloth onto the fence: no {} will relieve the fence from that side{}",
        if word == "ties" { "tie" } else { "lacing" },
        rail_before.map_or_else(String::new, |rail| {
            format!("; before the posts goes the {}, in a gust of {}", rail.place.name(), spread(rail.gusts))
        })
    );
    Some([(onto_head, onto), (off_head, off), ("first to go".to_owned(), first)])
}

/// What is said of the rails of a run; nothing where none was checked.
pub(super) fn rails(check: &Check, answer: &RunAnswer) -> Option<String> {
    let (worst, best) = (&answer.worst, answer.best.as_ref());
    let first = RailGust::of(worst, best, None)?;
    let gust = gust_spread(first.gusts.0, Some(first.gusts.1), check.survey.units);
    let name = first.place.name();
    let bays = bays_at(&worst.rails, &first);
    let bays = match bays.as_slice() {
        [bay] => format!("bay {bay}"),
        [bay, other] => format!("bays {bay} and {other}"),
        bays => format!("bays {}", spans(bays)),
    };
    let limit = format!("the {name} in {bays} reaches its limit in a gust of {gust}");
    let checked = match (rails_flag(answer), worst.rails.ratio()) {
        (Some(flag), Some(ratio)) => {
            let ratio = ratio_spread(ratio, best.and_then(|best| best.rails.ratio()));
            format!("{flag}: ratio {ratio} at the design wind; {limit}")
        }
        _ => limit,
    };
    let not = worst.rails.not_checked();
    Some(if not.is_empty() { checked } else { format!("{checked}. ◇ Not checked: {}", not.join("; ")) })
}

/// The numbers of the bays in which a rail reaches its limit in the same gust as the first.
fn bays_at(rails: &RailsVerdict, first: &RailGust) -> Vec<usize> {
    let as_low = |gust: Velocity| gust <= first.gusts.0 * (1.0 + ROUNDING);
    let alike = rails
        .checks
        .iter()
        .filter(|check| check.place == first.place && check.limit_gust.is_some_and(as_low));
    let mut bays: Vec<usize> = alike.map(|check| check.bay + 1).collect();
    bays.dedup();
    bays
}

/// The heads of a table of rails, the bays first.
pub(super) fn rail_heads(system: System) -> Vec<String> {
    let unit = |measure: Measure| measure.printed(system).0;
    vec![
        "bays".to_owned(),
        "rail".to_owned(),
        "wind".to_owned(),
        "span".to_owned(),
        format!("load {}", unit(Measure::LineLoad)),
        format!("moment {}", unit(Measure::Moment)),
        format!("strength {}", unit(Measure::Moment)),
        "ratio".to_owned(),
        format!("limit gust {}", unit(Measure::Speed)),
        "rail is".to_owned(),
    ]
}

/// The rails of a run as rows of that table: the number of the bay, and what stands beside it.
pub(super) fn rail_rows(answer: &RunAnswer, system: System) -> Vec<(usize, Vec<String>)> {
    let figure = |measure: Measure, si: Option<f64>| {
        si.map_or_else(|| "-".to_owned(), |si| number(measure.in_unit(si.abs(), system), 0))
    };
    let row = |(at, rail): (usize, &RailCheck)| {
        let best = answer.best.as_ref().and_then(|best| best.rails.checks.get(at));
        let flag = best.map_or(rail.flag(), |best| Flag::of_both_ends(rail.flag(), best.flag()));
        let cells = vec![
            rail.place.name().to_owned(),
            rail.push.in_words().to_owned(),
            length(rail.span, system),
            figure(Measure::LineLoad, rail.design.map(|design| design.line.load.si())),
            figure(Measure::Moment, rail.design.map(|design| design.moment.si())),
            figure(Measure::Moment, rail.strength.map(|strength| strength.moment.si())),
            rail.ratio()
                .map_or_else(|| "-".to_owned(), |worst| ratio_spread(worst, best.and_then(RailCheck::ratio))),
            rail.limit_gust.map_or_else(
                || "-".to_owned(),
                |worst| gust_figures(worst, best.and_then(|best| best.limit_gust), system),
            ),
            flag.to_string(),
        ];
        (rail.bay + 1, cells)
    };
    answer.worst.rails.checks.iter().enumerate().map(row).collect()
}

/// The worst flag of the rails of a run that were checked, over both ends.
pub(super) fn rails_flag(answer: &RunAnswer) -> Option<Flag> {
    let best = |at: usize| answer.best.as_ref().and_then(|best| best.rails.checks.get(at));
    let checks = answer.worst.rails.checks.iter().enumerate().filter(|(_, check)| check.ratio().is_some());
    checks
        .map(|(at, check)| {
            best(at).map_or(check.flag(), |best| Flag::of_both_ends(check.flag(), best.flag()))
        })
        .max()
}

/// Whether what holds the cloth of a run is over its strength at the design wind, and the least gust in which it goes.
pub(super) fn fastening_over(answer: &RunAnswer) -> Option<Velocity> {
    let parts = answer.worst.posts.iter().flat_map(|post| &post.parts);
    let over = parts.filter(|part| part.kind == PartKind::Fastening).any(|part| part.flag == Flag::Over);
    answer.winds.as_ref()?.fastening.filter(|_| over).map(|(low, _)| low)
}

/// The back brace or guy of a run that is over at the design wind and goes first; nothing where none is.
pub(super) fn guy_over(answer: &RunAnswer) -> Option<&GuyVerdict> {
    let Some(Ok(frame)) = &answer.worst.frame else { return None };
    let over = frame.guys.iter().filter(|guy| guy.flag == Flag::Over);
    over.min_by(|one, other| {
        let gust = |guy: &GuyVerdict| guy.limit_gust.map_or(f64::INFINITY, Quantity::si);
        gust(one).total_cmp(&gust(other))
    })
}

/// One wind on the two ends of a court, pair by pair.
pub(super) fn pairs(check: &Check) -> Vec<String> {
    let mut told = Vec::new();
    for (at, answer) in check.runs.iter().enumerate() {
        let Some(winds) = &answer.winds else { continue };
        let Some(other) = winds.opposite.filter(|other| *other > at) else { continue };
        let (Side::Compass(off), Some(there)) = (&winds.off_from, &check.runs[other].winds) else { continue };
        let (name, across) = (&check.settled.fence.runs[at].name, &check.settled.fence.runs[other].name);
        told.push(if there.onto_from == winds.off_from {
            format!(
                "One wind, two ends: from {off} it pulls the cloth off {name} and presses it onto {across}; from {} the \
                 other way round.",
                winds.onto_from.in_words()
            )
        } else if there.off_from == winds.off_from {
            format!(
                "One wind, two ends: from {off} it pulls the cloth off {name} and off {across}; from {} it presses it onto \
                 both.",
                winds.onto_from.in_words()
            )
        } else {
            continue;
        });
    }
    told
}

/// What the cloth of a run is in, after its name; nothing where it is dry.
pub(super) fn condition(run: &Run, survey: &RunSurvey) -> &'static str {
    let known = survey.condition.as_ref().is_none_or(|condition| condition.reading.is_point());
    match run.screen.as_ref().map(|screen| screen.condition) {
        Some(Condition::Iced) if known => ", iced",
        Some(Condition::Iced) => ", dry or iced",
        Some(Condition::Dry) | None => "",
    }
}

/// The cloth of a run and where it hangs.
pub(super) fn cloth(run: &Run, survey: &RunSurvey, system: System) -> String {
    let base = run.base_above_ground;
    let raised = if base.si() > 0.0 {
        format!(", posts on a bank or wall {} high", length(base, system))
    } else {
        String::new()
    };
    let Some(screen) = &run.screen else { return format!("no cloth{raised}") };
    let name = cloth_name(run, survey);
    let iced = match condition(run, survey) {
        "" => String::new(),
        condition => format!("{condition},"),
    };
    let bays = if screen.first_bay == 0 && screen.end_bay == run.bays.len() {
        String::new()
    } else {
        format!(", bays {} to {}", screen.first_bay + 1, screen.end_bay)
    };
    let from = if raised.is_empty() { "the ground" } else { "their foot" };
    format!(
        "{name}{iced} from {} to {} above {from}{bays}{raised}",
        length(screen.bottom, system),
        length(screen.top, system)
    )
}

/// Stands after what is little worth measuring.
pub(super) const LITTLE: &str = "(little to gain)";

/// Every note of a survey with what it is of, those alike together, and how things were found.
pub(super) fn notes(survey: &Survey) -> Vec<String> {
    let mut all: Vec<(&str, Vec<String>)> = Vec::new();
    let mut add = |of: String, note| match all.iter_mut().find(|(before, _)| *before == note) {
        Some((_, things)) if things.contains(&of) => {}
        Some((_, things)) => things.push(of),
        None => all.push((note, vec![of])),
    };
    survey.job.note.iter().for_each(|note| add("job".to_owned(), note));
    survey.site.note.iter().for_each(|note| add("site".to_owned(), note));
    for post in &survey.posts {
        post.note.iter().for_each(|note| add(format!("posts \"{}\"", post.name), note));
    }
    let of_runs = survey.runs.iter().flat_map(|run| &run.notes);
    of_runs.chain(&survey.notes).for_each(|(of, note)| add(of.clone(), note));
    let notes = all
        .iter()
        .map(|(note, things)| format!("note, {}: {note}", in_short(things.iter().map(String::as_str))));
    let ways = Found::ALL.into_iter().filter_map(|way| {
        let how = match way {
            Found::Tape => "measured with a tape",
            Found::Caliper => "measured with a caliper",
            Found::Drawing => "from a drawing, not measured",
            Found::Told => "as somebody told it, not measured",
            Found::Guess => "GUESSED, not measured",
        };
        found(survey, way).map(|things| format!("{how}: {}", in_short(things)))
    });
    notes.chain(ways).collect()
}

/// Things of runs, those alike together: "top rail of north, south; run north".
fn in_short<'t>(things: impl IntoIterator<Item = &'t str>) -> String {
    let mut all: Vec<(&str, Vec<&str>)> = Vec::new();
    for thing in things {
        let after = if thing.starts_with("run ") {
            4
        } else if thing.starts_with("posts ") {
            6
        } else {
            thing.find(" of ").map_or(0, |at| at + 4)
        };
        let (what, whose) = thing.split_at(after);
        match all.iter_mut().find(|(before, _)| *before == what && !what.is_empty()) {
            Some((_, names)) => names.push(whose),
            None => all.push((what, vec![whose])),
        }
    }
    all.iter().map(|(what, names)| format!("{what}{}", names.join(", "))).collect::<Vec<_>>().join("; ")
}

/// What was found in one way, if anything was.
fn found(survey: &Survey, way: Found) -> Option<Vec<&str>> {
    let things: Vec<&str> =
        survey.found.iter().filter(|(_, how)| *how == way).map(|(of, _)| of.as_str()).collect();
    (!things.is_empty()).then_some(things)
}

/// So many guesses are named where there is little room.
const MOST_GUESSES: usize = 4;

/// A text of which the end was cut away, with the quotes that the cut left open.
fn closed(text: String) -> String {
    if text.matches('"').count() % 2 == 1 { text + "\"" } else { text }
}

/// What was guessed, to be measured.
fn guessed(survey: &Survey) -> Option<String> {
    let things = found(survey, Found::Guess)?;
    let more = things.len().saturating_sub(MOST_GUESSES);
    let mut named: Vec<String> =
        things.iter().take(MOST_GUESSES).map(|thing| closed(super::chart::clipped(thing, 40))).collect();
    if more > 0 {
        named.push(format!("{more} more"));
    }
    let named: Vec<&str> = named.iter().map(String::as_str).collect();
    Some(format!("what was guessed: {}", listed(&named)))
}

/// What to measure next, the most telling first.
pub(super) fn measure_next(check: &Check) -> Vec<String> {
    let is_of_fastening = |next: &&MeasureNext| next.key.contains(".fastening.");
    // What is asked of the cloth of several runs is asked once.
    let mut of_fastening: Vec<(&str, Vec<&str>)> = Vec::new();
    for next in check.measure_next.iter().filter(is_of_fastening) {
        let (what, run) = next.what.split_once(" on ").unwrap_or((&next.what, "a run"));
        match of_fastening.iter_mut().find(|(before, _)| *before == what) {
            Some((_, runs)) => runs.push(run),
            None => of_fastening.push((what, vec![run])),
        }
    }
    let mut lines: Vec<String> = guessed(&check.survey).into_iter().collect();
    lines.extend(check.measure_next.iter().filter(|next| !is_of_fastening(next)).map(|next| {
        if next.gain >= metres_per_second(0.45) {
            format!(
                "{} (at best it lifts the limit gust of {} by {})",
                next.what,
                super::chart::clipped(next.run.as_deref().unwrap_or("a run"), 40),
                gust(next.gain, check.survey.units)
            )
        } else {
            format!("{} {LITTLE}", next.what)
        }
    }));
    lines.extend(of_fastening.iter().map(|(what, runs)| {
        format!("{what} on {} (says whether the cloth or the posts go first)", listed(runs))
    }));
    let runs = check.settled.fence.runs.iter().zip(&check.runs);
    let no_wall = runs.filter(|(_, answer)| answer.worst.rails.not_checked().contains(&NO_WALL));
    let no_wall: Vec<&str> = no_wall.map(|(run, _)| run.name.as_str()).collect();
    if !no_wall.is_empty() {
        lines.push(format!(
            "the rails on {}: wall with a caliper at an open end, and the grade",
            listed(&no_wall)
        ));
    }
    lines.extend(super::footings::to_find_out(check));
    lines
}
