//! The answer as JSON: SI figures, the unit in the key; see the contract in the README.

use super::told;
use crate::answers::{
    Check, First, GroupPlan, MEAN_TO_GUST_CYCLONE, MEAN_TO_GUST_INLAND, MEAN_TO_GUST_LEAST, Often, Pulled,
    RunAnswer, RunPlan, TAKE_DOWN_AT, WARN_AT, Winds, flag_over_both, plan,
};
use crate::caution::{CAUTIONS, NOT_CHECKED};
use crate::fence::{Face, FootingShape, Post, RailPlace, Run, Shared};
use crate::loads::frame::{Base, FrameWhy};
use crate::loads::{BayLoad, PostLoad};
use crate::source::Clause;
use crate::survey::Survey;
use crate::units::{Dimension, Force, Length, Quantity, Value};
use crate::verdict::{
    FasteningVerdict, Flag, FootingVerdict, GuyVerdict, Part, PartKind, PostFrame, PostVerdict, RailCheck,
    RunFrame, RunVerdict, Then,
};
use crate::wind::{Case, From};
use serde::Serialize;
use std::io::{self, Write};

#[derive(Serialize)]
struct CheckJson<'a> {
    format: &'static str,
    version: u32,
    program: String,
    survey_hash: &'a str,
    title: Option<&'a str>,
    wind_code: &'static str,
    wind_speed_m_s: Option<f64>,
    flag: &'static str,
    flag_of_checked: Option<&'static str>,
    runs: Vec<RunJson<'a>>,
    plan_judgements: Vec<JudgementJson>,
    measure_next: Vec<MeasureJson<'a>>,
    by_frame: bool,
    remarks: Vec<RemarkJson>,
    cautions: Vec<CautionJson>,
    not_covered: Vec<RemarkJson>,
}

#[derive(Serialize)]
struct RunJson<'a> {
    name: &'a str,
    court: &'a str,
    faces: Option<&'a str>,
    flag: &'static str,
    flag_of_checked: Option<&'static str>,
    solidity: Option<f64>,
    #[serde(skip_serializing_if = "Option::is_none")]
    condition: Option<&'static str>,
    base_above_ground_m: f64,
    limit_gust_m_s: f64,
    limit_gust_is: &'static str,
    bare_limit_gust_m_s: f64,
    load_times_bare: f64,
    #[serde(skip_serializing_if = "Option::is_none")]
    limit_gust_best_m_s: Option<f64>,
    #[serde(skip_serializing_if = "Option::is_none")]
    bare_limit_gust_best_m_s: Option<f64>,
    #[serde(skip_serializing_if = "Option::is_none")]
    flag_best: Option<&'static str>,
    near_ends_limit_gust_m_s: Option<f64>,
    near_ends_comes: Option<ComesJson>,
    corners_limit_gust_m_s: Option<f64>,
    own_flag_of_checked: Option<&'static str>,
    own_ratio: Option<f64>,
    inside_limit_gust_m_s: Option<f64>,
    inside_comes: Option<ComesJson>,
    bare_comes: Option<ComesJson>,
    return_at_start_m: f64,
    return_at_finish_m: f64,
    bays: Vec<BayJson>,
    posts: Vec<PostJson<'a>>,
    levers: Option<Vec<LeverJson>>,
    plan: PlanJson,
    fastening: Option<FasteningJson<'a>>,
    #[serde(skip_serializing_if = "Option::is_none")]
    frame: Option<RunFrameJson<'a>>,
    rails_limit_gust_m_s: Option<f64>,
    rails_flag_of_checked: Option<&'static str>,
    rails: Vec<RailJson>,
}

/// A rail in one bay, with wind that acts one way.
#[derive(Serialize)]
struct RailJson {
    rail: &'static str,
    bay: usize,
    wind: &'static str,
    span_m: f64,
    load_n_per_m: Option<f64>,
    moment_n_m: Option<f64>,
    /// Where the frame counts.
    #[serde(skip_serializing_if = "Option::is_none")]
    hand_moment_n_m: Option<f64>,
    shear_n: Option<f64>,
    moment_capacity_n_m: Option<f64>,
    shear_capacity_n: Option<f64>,
    ratio: Option<f64>,
    #[serde(skip_serializing_if = "Option::is_none")]
    ratio_best: Option<f64>,
    flag: &'static str,
    #[serde(skip_serializing_if = "Option::is_none")]
    flag_best: Option<&'static str>,
    limit_gust_m_s: Option<f64>,
    #[serde(skip_serializing_if = "Option::is_none")]
    limit_gust_best_m_s: Option<f64>,
    governs: Option<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    rule: Option<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    why: Option<&'static str>,
}

/// Wind from either side of the cloth, what holds it, and who goes first.
#[derive(Serialize)]
struct FasteningJson<'a> {
    held_by: Option<&'a str>,
    onto_wind_from: &'static str,
    off_wind_from: &'static str,
    opposite_run: Option<&'a str>,
    goes_gust_m_s: Option<f64>,
    #[serde(skip_serializing_if = "Option::is_none")]
    goes_gust_best_m_s: Option<f64>,
    bay: Option<usize>,
    row: Option<&'static str>,
    part: Option<&'static str>,
    pull_n: Option<f64>,
    twice_pull_n: Option<f64>,
    in_plane_pull_n: Option<f64>,
    then: Option<&'static str>,
    goes_first: &'static str,
    not_checked: Vec<AskJson>,
    #[serde(skip_serializing_if = "Option::is_none")]
    why: Option<&'static str>,
}

#[derive(Serialize)]
struct AskJson {
    part: &'static str,
    ask: &'static str,
}

#[derive(Serialize)]
struct PlanJson {
    near_ends: Option<GroupPlanJson>,
    inside: Option<GroupPlanJson>,
    bare: Option<GroupPlanJson>,
    whole: Option<GroupPlanJson>,
    end_panels_off_limit_gust_m_s: Option<f64>,
    end_panels_alone_help: Option<bool>,
}

#[derive(Serialize)]
struct GroupPlanJson {
    limit_gust_m_s: f64,
    warn_gust_m_s: f64,
    act_gust_m_s: f64,
    act: &'static str,
    workable: bool,
}

#[derive(Serialize)]
struct JudgementJson {
    id: &'static str,
    value: f64,
    because: &'static str,
}

/// How often a limit gust comes.
#[derive(Serialize)]
struct ComesJson {
    words: String,
    return_period_years: Option<f64>,
    chance_in_one_year: Option<f64>,
    chance_in_ten_years: Option<f64>,
    days_a_year_from: Option<f64>,
    days_a_year_to: Option<f64>,
    order_of_magnitude: bool,
    #[serde(skip_serializing_if = "Option::is_none")]
    why: Option<String>,
}

#[derive(Serialize)]
struct LeverJson {
    id: &'static str,
    words: &'static str,
    limit_gust_m_s: f64,
    limit_gust_times: f64,
    largest_moment_times: f64,
}

#[derive(Serialize)]
struct BayJson {
    number: usize,
    from_m: f64,
    to_m: f64,
    gate: bool,
    leaves: usize,
    cloth: bool,
    pressure_pa: Option<f64>,
    force_n: Option<f64>,
    governs: Option<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    why: Option<&'static str>,
}

#[derive(Serialize)]
struct PostJson<'a> {
    number: usize,
    kind: &'static str,
    post: &'a str,
    at_m: f64,
    #[serde(skip_serializing_if = "Option::is_none")]
    shared_with: Option<SharedJson<'a>>,
    governs: Option<String>,
    base_shear_n: Option<f64>,
    base_moment_n_m: Option<f64>,
    bare_base_moment_n_m: Option<f64>,
    #[serde(skip_serializing_if = "Option::is_none")]
    why: Option<&'static str>,
    limit_gust_m_s: f64,
    limit_gust_is: &'static str,
    limited_by: &'static str,
    bare_limit_gust_m_s: f64,
    load_times_bare: f64,
    #[serde(skip_serializing_if = "Option::is_none")]
    limit_gust_best_m_s: Option<f64>,
    flag: &'static str,
    flag_of_checked: Option<&'static str>,
    #[serde(skip_serializing_if = "Option::is_none")]
    flag_best: Option<&'static str>,
    /// First frequency, at least: with a foot that does not give, and with one as soft as it may be.
    frequency_clamped_hz: Option<f64>,
    frequency_hz: Option<f64>,
    /// Beside hand statics, where that was asked; the parts, flag and limit gust above are the worse of both.
    #[serde(skip_serializing_if = "Option::is_none")]
    frame: Option<PostFrameJson>,
    parts: Vec<PartJson>,
}

#[derive(Serialize)]
struct SharedJson<'a> {
    run: &'a str,
    number: usize,
}

#[derive(Serialize)]
struct PartJson {
    part: &'static str,
    demand: Option<f64>,
    capacity: Option<f64>,
    unit: Option<&'static str>,
    ratio: Option<f64>,
    #[serde(skip_serializing_if = "Option::is_none")]
    ratio_best: Option<f64>,
    flag: &'static str,
    #[serde(skip_serializing_if = "Option::is_none")]
    flag_best: Option<&'static str>,
    #[serde(skip_serializing_if = "Option::is_none")]
    rule: Option<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    why: Option<String>,
    #[serde(flatten)]
    footing: Option<FootingJson>,
}

/// What stands beside the figures of a footing.
#[derive(Serialize)]
struct FootingJson {
    method: &'static str,
    load_level: &'static str,
    load_share: f64,
    load_factor: f64,
    load_height_m: Option<f64>,
    shape: Option<&'static str>,
    width_m: Option<f64>,
    width_is: Option<&'static str>,
    depth_m: Option<f64>,
    depth_needed_m: Option<f64>,
    #[serde(skip_serializing_if = "Option::is_none")]
    depth_needed_why: Option<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    depth_needed_best_m: Option<f64>,
    dug_by_standard_depth_m: Option<f64>,
    dug_by_standard_width_m: Option<f64>,
}

/// How a run was worked on the frame, or why not.
#[derive(Serialize)]
struct RunFrameJson<'a> {
    worked: bool,
    with: Vec<&'a str>,
    soft_feet: bool,
    order: Option<&'static str>,
    rounds: Option<usize>,
    residual: Option<f64>,
    out_of_balance: Option<f64>,
    hand_limit_gust_m_s: Option<f64>,
    guys: Vec<GuyJson>,
    rails: Vec<RailOnFrameJson>,
    #[serde(skip_serializing_if = "Option::is_none")]
    why: Option<String>,
}

/// The largest moment of a rail in one bay on the frame, beside that by hand statics.
#[derive(Serialize)]
struct RailOnFrameJson {
    rail: &'static str,
    bay: usize,
    moment_n_m: f64,
    hand_moment_n_m: Option<f64>,
}

/// A back brace or guy; a guy is never pressed.
#[derive(Serialize)]
struct GuyJson {
    post: usize,
    kind: &'static str,
    pressed_n: Option<f64>,
    pulled_n: f64,
    slack_in_wind_that_pushes: Option<&'static str>,
    compression_capacity_n: Option<f64>,
    tension_capacity_n: Option<f64>,
    ratio: Option<f64>,
    flag: &'static str,
    limit_gust_m_s: Option<f64>,
    foot_uplift_n: f64,
    post_uplift_n: f64,
    rule: Option<String>,
    why: &'static str,
}

/// What a post does on the frame; soft feet are null where they were not worked.
#[derive(Serialize)]
struct PostFrameJson {
    hand_moment_n_m: f64,
    moment_n_m: Option<f64>,
    times_hand: Option<f64>,
    times_hand_least: Option<f64>,
    feet: Option<&'static str>,
    load_on: Option<&'static str>,
    governs: Option<&'static str>,
    ratio: Option<f64>,
    hand_ratio: Option<f64>,
    limit_gust_m_s: f64,
    hand_limit_gust_m_s: f64,
    rigid: Option<OnFeetJson>,
    soft: Option<OnFeetJson>,
}

#[derive(Serialize)]
struct OnFeetJson {
    base_shear_n: f64,
    base_moment_n_m: f64,
    greatest_moment_n_m: f64,
    greatest_moment_at_m: f64,
    load_on: &'static str,
    top_moves_m: Option<f64>,
}

#[derive(Serialize)]
struct MeasureJson<'a> {
    key: &'a str,
    what: &'a str,
    limit_gust_gain_m_s: f64,
}

#[derive(Serialize)]
struct RemarkJson {
    id: &'static str,
    text: String,
}

#[derive(Serialize)]
struct CautionJson {
    id: &'static str,
    word: &'static str,
    text: &'static str,
}

const NO_SPEED: &str = "no design wind speed is given";

/// The answer as a JSON value.
///
/// # Errors
/// None in practice: every figure of an answer is finite.
pub fn value(check: &Check) -> serde_json::Result<serde_json::Value> {
    serde_json::to_value(answer(check))
}

/// Writes one answer as an object.
///
/// # Errors
/// If the writer fails.
pub fn check(check: &Check, out: &mut impl Write) -> io::Result<()> {
    serde_json::to_writer_pretty(&mut *out, &answer(check))?;
    writeln!(out)
}

/// Writes several answers as a list.
///
/// # Errors
/// If the writer fails.
pub fn list<'c>(checks: impl IntoIterator<Item = &'c Check>, out: &mut impl Write) -> io::Result<()> {
    let all: Vec<_> = checks.into_iter().map(answer).collect();
    serde_json::to_writer_pretty(&mut *out, &all)?;
    writeln!(out)
}

fn answer(check: &Check) -> CheckJson<'_> {
    let Survey { job, units, hash, .. } = &check.survey;
    let remark = |id, text| RemarkJson { id, text };
    CheckJson {
        format: "check",
        version: 1,
        program: concat!("fencegust ", env!("CARGO_PKG_VERSION")).to_owned(),
        survey_hash: hash,
        title: job.title.as_deref(),
        wind_code: check.survey.site.code.key(),
        wind_speed_m_s: check.settled.site.wind_speed().map(Quantity::si),
        flag: check.flag.word(),
        flag_of_checked: check.flag_of_checked.map(|flag| flag.word()),
        runs: check
            .runs
            .iter()
            .zip(plan(check))
            .enumerate()
            .map(|(at, (run, plan))| run_json(check, at, run, &plan))
            .collect(),
        plan_judgements: [
            ("warn-at", WARN_AT),
            ("act-at", TAKE_DOWN_AT),
            ("mean-to-gust-least", MEAN_TO_GUST_LEAST),
            ("mean-to-gust-inland", MEAN_TO_GUST_INLAND),
            ("mean-to-gust-tropical-cyclone", MEAN_TO_GUST_CYCLONE),
        ]
        .map(|(id, stated)| JudgementJson { id, value: stated.value, because: stated.because })
        .into(),
        measure_next: check
            .measure_next
            .iter()
            .map(|next| MeasureJson { key: &next.key, what: &next.what, limit_gust_gain_m_s: next.gain.si() })
            .collect(),
        by_frame: check.by_frame,
        remarks: check.remarks.iter().map(|told| remark(told.id(), told.text(*units))).collect(),
        cautions: CAUTIONS
            .iter()
            .map(|caution| CautionJson { id: caution.id, word: caution.word, text: caution.text })
            .collect(),
        not_covered: NOT_CHECKED.iter().map(|(id, text)| remark(id, (*text).to_owned())).collect(),
    }
}

fn is(post: &PostVerdict) -> &'static str {
    if post.is_at_most() { "at most" } else { "exactly" }
}

fn run_json<'a>(check: &'a Check, at: usize, answer: &'a RunAnswer, plan: &RunPlan) -> RunJson<'a> {
    let (fence, survey) = (&check.settled.fence, &check.survey.runs[at]);
    let run = &fence.runs[at];
    let (worst, best) = (&answer.worst, answer.best.as_ref());
    let at_most = worst.posts.iter().any(PostVerdict::is_at_most);
    RunJson {
        name: &run.name,
        court: &survey.court,
        faces: survey.faces.as_deref(),
        flag: answer.flag.word(),
        flag_of_checked: answer.flag_of_checked.map(|flag| flag.word()),
        solidity: worst.solidity,
        condition: run.screen.as_ref().map(|screen| screen.condition.word()),
        base_above_ground_m: run.base_above_ground.si(),
        limit_gust_m_s: worst.limit_gust.si(),
        limit_gust_is: if at_most { "at most" } else { "exactly" },
        bare_limit_gust_m_s: worst.bare_limit_gust.si(),
        load_times_bare: worst.times_bare,
        limit_gust_best_m_s: best.map(|best| best.limit_gust.si()),
        bare_limit_gust_best_m_s: best.map(|best| best.bare_limit_gust.si()),
        flag_best: best.map(|best| best.flag.word()),
        near_ends_limit_gust_m_s: answer.near_ends.as_ref().map(|group| group.limit_gust.si()),
        near_ends_comes: answer.near_ends.as_ref().map(|group| comes_json(&group.often)),
        corners_limit_gust_m_s: answer.corners.as_ref().map(|group| group.limit_gust.si()),
        own_flag_of_checked: answer.own_flag_of_checked().map(|flag| flag.word()),
        own_ratio: answer.own_ratio(),
        inside_limit_gust_m_s: answer.inside.as_ref().map(|group| group.limit_gust.si()),
        inside_comes: answer.inside.as_ref().map(|group| comes_json(&group.often)),
        bare_comes: [&answer.near_ends, &answer.inside, &answer.bare]
            .into_iter()
            .flatten()
            .min_by(|one, other| one.bare_limit_gust.si().total_cmp(&other.bare_limit_gust.si()))
            .map(|group| comes_json(&group.bare_often)),
        return_at_start_m: fence.return_length(at, true).si(),
        return_at_finish_m: fence.return_length(at, false).si(),
        bays: (0..run.bays.len())
            .map(|bay| bay_json(check, run, bay, worst.bays.as_ref().map(|bays| &bays[bay])))
            .collect(),
        posts: run
            .posts
            .iter()
            .enumerate()
            .map(|(number, post)| {
                post_json(check, number, post, &worst.posts[number], best.map(|best| &best.posts[number]))
            })
            .collect(),
        levers: check.levers[at].as_ref().map(|pulled| pulled.iter().map(lever_json).collect()),
        plan: plan_json(plan),
        fastening: answer.winds.as_ref().map(|winds| fastening_json(check, at, answer, winds)),
        frame: worst.frame.as_ref().map(|frame| run_frame_json(check, worst, frame)),
        rails_limit_gust_m_s: worst.rails.first().and_then(|first| first.limit_gust).map(Quantity::si),
        rails_flag_of_checked: told::rails_flag(answer).map(Flag::word),
        rails: worst
            .rails
            .checks
            .iter()
            .enumerate()
            .map(|(at, rail)| rail_json(check, rail, best.and_then(|best| best.rails.checks.get(at))))
            .collect(),
    }
}

fn rail_json(check: &Check, rail: &RailCheck, best: Option<&RailCheck>) -> RailJson {
    let (design, strength) = (rail.design, rail.strength);
    let shear = strength.and_then(|strength| strength.shear.ok());
    let rule = design.zip(strength).map(|(design, strength)| match shear {
        Some((_, clause)) if design.by_shear => clause,
        _ => strength.moment_clause,
    });
    RailJson {
        rail: rail.place.name(),
        bay: rail.bay + 1,
        wind: rail.push.word(),
        span_m: rail.span.si(),
        load_n_per_m: design.map(|design| design.line.load.si().abs()),
        moment_n_m: design.map(|design| design.moment.si()),
        hand_moment_n_m: rail.by_hand.map(|hand| hand.moment.si()),
        shear_n: design.map(|design| design.shear.si()),
        moment_capacity_n_m: strength.map(|strength| strength.moment.si()),
        shear_capacity_n: shear.map(|(shear, _)| shear.si()),
        ratio: rail.ratio(),
        ratio_best: best.and_then(RailCheck::ratio),
        flag: best.map_or(rail.flag(), |best| Flag::of_both_ends(rail.flag(), best.flag())).word(),
        flag_best: best.map(|best| best.flag().word()),
        limit_gust_m_s: rail.limit_gust.map(Quantity::si),
        limit_gust_best_m_s: best.and_then(|best| best.limit_gust).map(Quantity::si),
        governs: design.map(|design| governs(check, design.line.place, "", design.line.case)),
        rule: rule.map(|rule| rule.to_string()),
        why: rail.why.or_else(|| design.is_none().then_some(NO_SPEED)),
    }
}

fn fastening_json<'a>(
    check: &'a Check,
    at: usize,
    answer: &'a RunAnswer,
    winds: &'a Winds,
) -> FasteningJson<'a> {
    let found = answer.worst.fastening.as_ref().ok();
    // The bay that goes first; where no strength is known, that with the largest pull.
    let largest = |found: &FasteningVerdict| {
        let pulls =
            found.bays.iter().enumerate().filter_map(|(bay, found)| Some((bay, (*found)?.design?.force)));
        pulls.max_by(|one, other| one.1.si().total_cmp(&other.1.si())).map(|(bay, _)| bay)
    };
    let bay = found.and_then(|found| found.first.map(|(_, bay)| bay).or_else(|| largest(found)));
    let in_bay = found.zip(bay).and_then(|(found, bay)| found.bays[bay]);
    let pull = in_bay.and_then(|bay| bay.design);
    FasteningJson {
        held_by: check.survey.runs[at].fastening.as_ref().map(|fastening| fastening.text.as_str()),
        onto_wind_from: winds.onto_from.in_words(),
        off_wind_from: winds.off_from.in_words(),
        opposite_run: winds.opposite.map(|other| check.settled.fence.runs[other].name.as_str()),
        goes_gust_m_s: winds.fastening.map(|(low, _)| low.si()),
        goes_gust_best_m_s: winds.fastening.filter(|_| answer.best.is_some()).map(|(_, high)| high.si()),
        bay: bay.map(|bay| bay + 1),
        row: in_bay.map(|bay| bay.row.name()),
        part: in_bay.and_then(|bay| bay.first).map(|(_, part)| part.name()),
        pull_n: pull.map(|pull| pull.force.si()),
        twice_pull_n: pull.and_then(|pull| pull.twice).map(Quantity::si),
        in_plane_pull_n: found.and_then(|found| found.in_plane).map(Quantity::si),
        then: winds.then.map(|then| match then {
            Then::AllGo => "all go",
            Then::Stops { .. } => "stops",
            Then::Either => "stops or all go",
        }),
        goes_first: match winds.first {
            First::Fastening => {
                match check.settled.fence.runs[at].screen.as_ref().and_then(|s| s.fastening.as_ref()) {
                    Some(fastening) if fastening.kind.word() == "lacing" => "the lacing",
                    _ => "the ties",
                }
            }
            First::Rail(RailPlace::Top) => "the top rail",
            First::Rail(RailPlace::Middle) => "the middle rail",
            First::Rail(RailPlace::Bottom) => "the bottom rail",
            First::Posts => "the posts",
            First::TooClose => "too close to say",
            First::NotKnown => "not known",
        },
        not_checked: found
            .map(|found| {
                found.unknown.iter().map(|part| AskJson { part: part.name(), ask: part.ask() }).collect()
            })
            .unwrap_or_default(),
        why: answer.worst.fastening.as_ref().err().map(|why| why.why()),
    }
}

fn plan_json(plan: &RunPlan) -> PlanJson {
    let group = |act: &'static str| {
        move |group: GroupPlan| GroupPlanJson {
            limit_gust_m_s: group.limit_gust.si(),
            warn_gust_m_s: group.warn.si(),
            act_gust_m_s: group.act.si(),
            act,
            workable: group.is_workable,
        }
    };
    PlanJson {
        near_ends: plan.near_ends.map(group("take down")),
        inside: plan.inside.map(group("take down")),
        bare: plan.bare.map(group("keep clear")),
        whole: plan.whole().map(group(if plan.has_cloth() { "take down" } else { "keep clear" })),
        end_panels_off_limit_gust_m_s: plan.end_panels.map(|panels| panels.rest.limit_gust.si()),
        end_panels_alone_help: plan.end_panels.map(|panels| panels.helps),
    }
}

fn comes_json(often: &Often) -> ComesJson {
    let law = match often {
        Often::Law(law) => Some(law),
        Often::Rarer | Often::Unknown(_) => None,
    };
    ComesJson {
        words: often.words(),
        return_period_years: law.map(|law| law.years),
        chance_in_one_year: law.map(|law| law.in_one_year),
        chance_in_ten_years: law.map(|law| law.in_ten_years),
        days_a_year_from: law.and_then(|law| law.days_a_year).map(|days| days.0),
        days_a_year_to: law.and_then(|law| law.days_a_year).map(|days| days.1),
        order_of_magnitude: law.is_some_and(|law| !law.exact),
        why: if law.is_none() { Some(often.words()) } else { None },
    }
}

fn lever_json(pulled: &Pulled) -> LeverJson {
    LeverJson {
        id: pulled.lever.id(),
        words: pulled.lever.words(),
        limit_gust_m_s: pulled.limit_gust.si(),
        limit_gust_times: pulled.gust_times(),
        largest_moment_times: pulled.moment_times,
    }
}

fn bay_json(check: &Check, run: &Run, bay: usize, load: Option<&BayLoad>) -> BayJson {
    let place = |at: usize| Length::si(run.posts[at].at);
    BayJson {
        number: bay + 1,
        from_m: place(bay),
        to_m: place(bay + 1),
        gate: run.bays[bay].gate,
        leaves: run.bays[bay].leaves(),
        cloth: run.has_cloth(bay),
        pressure_pa: load.map(|load| load.pressure.si()),
        force_n: load.map(|load| load.force.si()),
        governs: load.map(|load| governs(check, load.place, load.zone, load.case)),
        why: if load.is_none() { Some(NO_SPEED) } else { None },
    }
}

/// The case in words: code, place, zone, from which end.
pub(super) fn governs(check: &Check, place: &str, zone: &str, case: Case) -> String {
    let mut text = format!("{} {place}", check.survey.site.code.key());
    if !zone.is_empty() {
        text.push_str(", ");
        text.push_str(zone);
    }
    if let Case::Along(from) = case {
        text.push_str(", ");
        text.push_str(From::in_words(from));
    }
    text
}

fn post_json<'a>(
    check: &'a Check,
    number: usize,
    post: &Post,
    worst: &PostVerdict,
    best: Option<&PostVerdict>,
) -> PostJson<'a> {
    let fence = &check.settled.fence;
    let (flag, of_checked) = flag_over_both(worst, best);
    let load = |of: fn(&PostLoad) -> f64| worst.design.as_ref().map(of);
    PostJson {
        number: number + 1,
        kind: post.role.word(),
        post: &fence.kinds[post.kind].name,
        at_m: post.at.si(),
        shared_with: post
            .shared_with
            .map(|Shared { run, post }| SharedJson { run: &fence.runs[run].name, number: post + 1 }),
        governs: worst.design.map(|load| governs(check, load.place, "", load.case)),
        base_shear_n: load(|load| load.shear.si().abs()),
        base_moment_n_m: load(|load| load.moment.si().abs()),
        bare_base_moment_n_m: worst.bare_design.map(|load| load.moment.si().abs()),
        why: if worst.design.is_none() { Some(NO_SPEED) } else { None },
        limit_gust_m_s: worst.limit_gust.si(),
        limit_gust_is: is(worst),
        limited_by: worst.limited_by.name(),
        bare_limit_gust_m_s: worst.bare_limit_gust.si(),
        load_times_bare: worst.times_bare,
        limit_gust_best_m_s: best.map(|best| best.limit_gust.si()),
        flag: flag.word(),
        flag_of_checked: of_checked.map(|flag| flag.word()),
        flag_best: best.map(|best| best.flag.word()),
        frequency_clamped_hz: worst.sway.ok().map(|sway| sway.clamped.si()),
        frequency_hz: worst.sway.ok().and_then(|sway| Some(sway.soft.ok()?.si())),
        frame: worst.frame.as_ref().map(post_frame_json),
        parts: worst
            .parts
            .iter()
            .enumerate()
            .map(|(at, part)| part_json((worst, part), best.map(|best| (best, &best.parts[at]))))
            .collect(),
    }
}

fn footing_json(footing: &FootingVerdict, best: Option<&FootingVerdict>) -> FootingJson {
    let needed = footing.needed.as_ref();
    FootingJson {
        method: footing.method.key(),
        load_level: footing.method.level().symbol(),
        load_share: footing.share,
        load_factor: footing.load_factor.value,
        load_height_m: footing.checked.as_ref().ok().map(|found| found.demand.height.si()),
        shape: footing.shape.map(FootingShape::word),
        width_m: footing.width.map(|width| width.across.si()),
        width_is: footing.width.map(|width| width.is.words()),
        depth_m: footing.depth.map(|depth| depth.si()),
        depth_needed_m: needed.ok().map(|depth| depth.si()),
        depth_needed_why: needed.err().map(ToString::to_string),
        depth_needed_best_m: best.and_then(|best| best.needed.as_ref().ok()).map(|depth| depth.si()),
        dug_by_standard_depth_m: footing.dug.map(|dug| dug.depth.si()),
        dug_by_standard_width_m: footing.dug.map(|dug| dug.width.si()),
    }
}

fn part_json((post, part): (&PostVerdict, &Part), best: Option<(&PostVerdict, &Part)>) -> PartJson {
    let (best_post, best) = (best.map(|(post, _)| post), best.map(|(_, part)| part));
    let unit = |value: &Value| match value.measure.dimension() {
        Dimension::Moment => "N m",
        Dimension::Force => "N",
        Dimension::Frequency => "Hz",
        _ => "SI",
    };
    let flag = best.map_or(part.flag, |best| crate::verdict::Flag::of_both_ends(part.flag, best.flag));
    PartJson {
        part: part.kind.name(),
        demand: part.demand.map(|value| value.si),
        capacity: part.capacity.map(|value| value.si),
        unit: part.capacity.as_ref().map(unit),
        ratio: part.ratio,
        ratio_best: best.and_then(|best| best.ratio),
        flag: flag.word(),
        flag_best: best.map(|best| best.flag.word()),
        rule: part.rule.map(|rule| rule.to_string()),
        why: post.why(part),
        footing: (part.kind == PartKind::Footing)
            .then(|| footing_json(&post.footing, best_post.map(|post| &post.footing))),
    }
}

fn run_frame_json<'a>(
    check: &'a Check,
    worst: &RunVerdict,
    frame: &Result<RunFrame, FrameWhy>,
) -> RunFrameJson<'a> {
    match frame {
        Ok(frame) => RunFrameJson {
            worked: true,
            with: frame.with.iter().map(|run| check.settled.fence.runs[*run].name.as_str()).collect(),
            soft_feet: frame.soft.is_ok(),
            order: Some("second"),
            rounds: Some(frame.rounds),
            residual: Some(frame.residual),
            out_of_balance: Some(frame.out_of_balance),
            hand_limit_gust_m_s: Some(frame.hand_limit_gust.si()),
            guys: frame.guys.iter().map(guy_json).collect(),
            rails: frame
                .rails
                .iter()
                .map(|rail| RailOnFrameJson {
                    rail: rail.place.name(),
                    bay: rail.bay + 1,
                    moment_n_m: rail.moment.si(),
                    hand_moment_n_m: super::frame::by_hand(worst, rail).map(Quantity::si),
                })
                .collect(),
            why: frame.soft.err().map(|why| why.why().to_owned()),
        },
        Err(why) => RunFrameJson {
            worked: false,
            with: Vec::new(),
            soft_feet: false,
            order: None,
            rounds: None,
            residual: None,
            out_of_balance: None,
            hand_limit_gust_m_s: None,
            guys: Vec::new(),
            rails: Vec::new(),
            why: Some(why.to_string()),
        },
    }
}

fn post_frame_json(frame: &PostFrame) -> PostFrameJson {
    let worst = frame.worst();
    let times = frame.times_hand();
    let feet = |base| {
        frame.on(base).map(|one| OnFeetJson {
            base_shear_n: one.found.base_shear.si(),
            base_moment_n_m: one.found.base_moment.si(),
            greatest_moment_n_m: one.found.greatest.si(),
            greatest_moment_at_m: one.found.at.si(),
            load_on: one.way.word(),
            top_moves_m: frame.top(base).map(Quantity::si),
        })
    };
    PostFrameJson {
        hand_moment_n_m: frame.hand.si().abs(),
        moment_n_m: worst.map(|one| one.found.greatest.si()),
        times_hand: times.map(|(_, most)| most),
        times_hand_least: times.map(|(least, _)| least),
        feet: worst.map(|one| one.base.word()),
        load_on: worst.map(|one| one.way.word()),
        governs: worst.map(|one| one.place),
        ratio: frame.ratios.map(|(frame, _)| frame),
        hand_ratio: frame.ratios.map(|(_, hand)| hand),
        limit_gust_m_s: frame.limit_gust.si(),
        hand_limit_gust_m_s: frame.hand_limit_gust.si(),
        rigid: feet(Base::Rigid),
        soft: feet(Base::Soft),
    }
}

fn guy_json(guy: &GuyVerdict) -> GuyJson {
    let capacity = |one: Option<(Force, Clause)>| one.map(|(force, _)| force.si());
    GuyJson {
        post: guy.post + 1,
        kind: guy.name,
        pressed_n: guy.pressed.map(Quantity::si),
        pulled_n: guy.pulled.si(),
        slack_in_wind_that_pushes: guy.slack.map(Face::word),
        compression_capacity_n: capacity(guy.compression),
        tension_capacity_n: capacity(guy.tension),
        ratio: guy.ratio,
        flag: guy.flag.word(),
        limit_gust_m_s: guy.limit_gust.map(Quantity::si),
        foot_uplift_n: guy.foot_uplift.si(),
        post_uplift_n: guy.post_uplift.si(),
        rule: guy.compression.or(guy.tension).map(|(_, clause)| clause.to_string()),
        why: super::frame::GUY_FOOTING,
    }
}
