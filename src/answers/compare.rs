//! Cloths side by side on one fence, or whole surveys side by side.

use super::check::{Check, CheckError, RunAnswer, check};
use super::levers::highest_cloth;
use super::often::{Often, often};
use crate::fence::{Condition, Screen};
use crate::screen::loss::{Layer, MadeOf, ModelFactor, ObliqueShare, load_factor};
use crate::screen::{all_cloths, named, nearest_name};
use crate::survey::{AirTest, Extreme, Open, OtherCode, Reading, Recoded, Survey};
use crate::units::{Length, Quantity, Velocity};
use crate::verdict::{Flag, run_verdict};
use crate::wind::Code;
use crate::workings::Blank;
use std::f64::consts::FRAC_PI_4;
use std::fmt;

/// What is hung in one column of a comparison.
#[derive(Debug, Clone, PartialEq)]
pub struct Variant {
    /// The cloth of the catalogue, "none" for no cloth; nothing for the cloth surveyed.
    pub cloth: Option<String>,
    /// From the ground up to here; nothing for the height surveyed.
    pub height: Option<Length>,
}

/// One column of a comparison.
#[derive(Debug, Clone)]
pub struct Column {
    /// What it is called.
    pub label: String,
    /// What a seller would say of its openness, where it is a cloth of the catalogue.
    pub sold_open: Option<(f64, f64)>,
    /// The whole answer.
    pub check: Check,
    /// The runs compared, by their index in the answer.
    pub(crate) order: Vec<usize>,
}

/// A comparison.
#[derive(Debug, Clone)]
pub struct Comparison {
    /// The columns, as they were asked; the same runs in the same order in each.
    pub columns: Vec<Column>,
    /// Whether they are one fence with other cloth, so that savings may be told.
    pub one_fence: bool,
    /// What a column is: a cloth, a survey or a code.
    pub column_is: &'static str,
    /// What must be known of the columns, in sentences.
    pub notes: Vec<String>,
    /// Runs that stand in one survey only, with the column they stand in.
    unpaired: Vec<(String, String)>,
}

impl Comparison {
    /// Runs that stand in one survey only, with the column they stand in.
    #[must_use]
    pub fn unpaired(&self) -> &[(String, String)] {
        &self.unpaired
    }
}

/// Why there is no comparison.
#[derive(Debug, Clone, PartialEq)]
pub enum CompareError {
    /// The catalogue has no such cloth.
    NoSuchCloth {
        /// As written.
        written: String,
        /// The nearest there is.
        nearest: Option<&'static str>,
    },
    /// There is one thing only, or no cloth to change.
    NothingToCompare,
    /// Surveys that share no run by name.
    NoCommonRun,
    /// One code only, that of the survey.
    OneCode(Code),
    /// A survey that another code cannot work.
    OtherCode(OtherCode),
    /// A height above the fence.
    TooHigh {
        /// The run.
        run: String,
    },
    /// A column could not be worked.
    Check(CheckError),
}

impl fmt::Display for CompareError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NoSuchCloth { written, nearest } => {
                let all: Vec<_> = all_cloths().map(|cloth| cloth.name.as_str()).collect();
                write!(f, "the catalogue has no cloth \"{written}\"")?;
                if let Some(nearest) = nearest {
                    write!(f, ", perhaps \"{nearest}\"")?;
                }
                write!(f, ": known are none, {}", all.join(", "))
            }
            Self::NothingToCompare => f.write_str(
                "nothing to compare: no run has cloth. Name cloths with --cloth together with --height, or a second \
                 survey",
            ),
            Self::NoCommonRun => f.write_str(
                "nothing to compare: the surveys have no run of the same name. Runs are set side by side by their names",
            ),
            Self::OneCode(code) => {
                write!(f, "nothing to compare: the survey is by {} already; name another with --code", code.key())
            }
            Self::OtherCode(error) => error.fmt(f),
            Self::TooHigh { run } => write!(f, "--height is above the fence of run \"{run}\""),
            Self::Check(error) => error.fmt(f),
        }
    }
}

impl std::error::Error for CompareError {}

impl From<OtherCode> for CompareError {
    fn from(error: OtherCode) -> Self {
        Self::OtherCode(error)
    }
}

impl From<CheckError> for CompareError {
    fn from(error: CheckError) -> Self {
        Self::Check(error)
    }
}

/// Compares variants of the cloth on one survey.
///
/// # Errors
/// A [`CompareError`] that says what to write.
pub fn compare(survey: &Survey, variants: &[Variant]) -> Result<Comparison, CompareError> {
    let any_cloth = survey.runs.iter().any(|run| run.run.screen.is_some());
    let any_height = variants.iter().any(|variant| variant.height.is_some());
    if variants.is_empty() || (!any_cloth && !any_height) {
        return Err(CompareError::NothingToCompare);
    }
    let mut columns = Vec::new();
    for variant in variants {
        let (survey, label, sold_open) = hung(survey, variant)?;
        let check = check(survey)?;
        let order = (0..check.runs.len()).collect();
        columns.push(Column { label, sold_open, check, order });
    }
    let (column_is, notes) = ("cloth", Vec::new());
    Ok(Comparison { columns, one_fence: true, column_is, notes, unpaired: Vec::new() })
}

/// Sets one survey by several wind codes side by side; where one is named, beside the survey's own.
///
/// # Errors
/// If a code cannot work the survey, or there is one code only.
pub fn by_codes(survey: &Survey, codes: &[Code]) -> Result<Comparison, CompareError> {
    let own = survey.site.code;
    let codes = match codes {
        [one] if *one == own => return Err(CompareError::OneCode(own)),
        [one] => vec![own, *one],
        several => several.to_vec(),
    };
    let mut notes = Vec::new();
    if !matches!(survey.site.wind_speed.reading, Reading::Unknown) {
        notes.push(
            "One wind speed is taken for all of them; each edition has maps of its own, which may give another."
                .to_owned(),
        );
    }
    let mut columns = Vec::new();
    for code in codes {
        let Recoded { survey, left_out } = survey.by_code(code)?;
        if !left_out.is_empty() {
            notes.push(format!("{} does not read {}: left out.", code.key(), left_out.join(", ")));
        }
        let check = check(survey)?;
        let order = (0..check.runs.len()).collect();
        columns.push(Column { label: code.key().to_owned(), sold_open: None, check, order });
    }
    Ok(Comparison { columns, one_fence: false, column_is: "code", notes, unpaired: Vec::new() })
}

/// Sets whole surveys side by side.
///
/// # Errors
/// If one of them cannot be worked, or there is one only.
pub fn side_by_side(surveys: Vec<(String, Survey)>) -> Result<Comparison, CompareError> {
    if surveys.len() < 2 {
        return Err(CompareError::NothingToCompare);
    }
    let mut columns = Vec::new();
    for (label, survey) in surveys {
        columns.push(Column { label, sold_open: None, check: check(survey)?, order: Vec::new() });
    }
    paired(columns)
}

/// Whole surveys by the names of their runs: what stands in one only is told and not compared.
fn paired(mut columns: Vec<Column>) -> Result<Comparison, CompareError> {
    let names = |column: &Column| -> Vec<String> {
        column.check.settled.fence.runs.iter().map(|run| run.name.clone()).collect()
    };
    let in_all: Vec<String> = names(&columns[0])
        .into_iter()
        .filter(|name| columns.iter().all(|column| names(column).contains(name)))
        .collect();
    let mut unpaired = Vec::new();
    for column in &columns {
        unpaired.extend(
            names(column)
                .into_iter()
                .filter(|name| !in_all.contains(name))
                .map(|name| (column.label.clone(), name)),
        );
    }
    if in_all.is_empty() {
        return Err(CompareError::NoCommonRun);
    }
    for column in &mut columns {
        let order: Vec<usize> = in_all
            .iter()
            .filter_map(|name| column.check.settled.fence.runs.iter().position(|run| run.name == *name))
            .collect();
        column.order = order;
    }
    let (column_is, notes) = ("survey", Vec::new());
    Ok(Comparison { columns, one_fence: false, column_is, notes, unpaired })
}

const NO_CLOTH: &str = "no cloth";

type Sold = Option<(f64, f64)>;

/// The survey with a variant hung on it.
fn hung(survey: &Survey, variant: &Variant) -> Result<(Survey, String, Sold), CompareError> {
    let mut changed = survey.clone();
    let none = variant.cloth.as_deref().is_some_and(|cloth| cloth.trim().eq_ignore_ascii_case("none"));
    let cloth = match variant.cloth.as_deref() {
        Some(written) if !none => Some(named(written).ok_or_else(|| CompareError::NoSuchCloth {
            written: written.to_owned(),
            nearest: nearest_name(written),
        })?),
        _ => None,
    };
    for run in &mut changed.runs {
        if variant.height.is_some_and(|height| height > run.run.height) {
            return Err(CompareError::TooHigh { run: run.run.name.clone() });
        }
        if none {
            run.run.screen = None;
            run.solidity = None;
            run.condition = None;
            run.cloth = None;
            run.air_test = None;
            run.over = Vec::new();
            continue;
        }
        if let Some(height) = variant.height {
            let bays = run.run.bays.len();
            let screen = run.run.screen.get_or_insert_with(|| Screen {
                name: "cloth".to_owned(),
                solidity: 1.0,
                solidity_as_return: None,
                condition: Condition::Dry,
                over: Vec::new(),
                bottom: Length::from_si(0.0),
                top: height,
                first_bay: 0,
                end_bay: bays,
                windows: None,
                face: None,
                fastening: None,
            });
            (screen.bottom, screen.top) = (Length::from_si(0.0), height);
            run.solidity.get_or_insert_with(|| Open {
                key: format!("run.{}.solidity", run.run.name),
                reading: Reading::Measured(1.0),
            });
        }
        if let (Some(cloth), Some(screen)) = (cloth, &mut run.run.screen) {
            screen.solidity = cloth.solidity_high;
            screen.over = Vec::new();
            (run.over, run.air_test) = (Vec::new(), None);
            run.cloth = Some(cloth.name.clone());
            let (low, high) = (cloth.solidity_low, cloth.solidity_high);
            run.solidity = Some(Open {
                key: format!("run.{}.solidity", run.run.name),
                reading: if low == high { Reading::Measured(high) } else { Reading::Between(low, high) },
            });
        }
    }
    let system = survey.units;
    let mut label = match (&variant.cloth, cloth) {
        (_, Some(cloth)) => cloth.name.clone(),
        (Some(_), None) => NO_CLOTH.to_owned(),
        (None, None) => "as surveyed".to_owned(),
    };
    if let Some(height) = variant.height {
        let height = crate::units::Value::new(height, crate::units::Measure::Length).written(system);
        label = format!("{label}, {height} from the ground");
    }
    let sold = cloth.map(|cloth| (1.0 - cloth.solidity_high, 1.0 - cloth.solidity_low));
    Ok((changed, label, sold))
}

/// The figures of one run in one column.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Figures {
    /// The largest mean pressure on a bay at the design wind, in pascals.
    pub pressure: Option<crate::units::Pressure>,
    /// The largest base moment at the design wind.
    pub moment: Option<crate::units::Moment>,
    /// The largest ratio at the design wind.
    pub ratio: Option<f64>,
    /// The least limit gust near the ends, or of a bare run.
    pub limit_gust_ends: Velocity,
    /// The least limit gust inside; of a bare run the same.
    pub limit_gust_inside: Velocity,
    /// How often the least limit gust comes.
    pub often: Often,
    /// Force on the middle of the run in one gust, to compare cloths by: the inside post's moment in newton metres.
    pub inside_moment: f64,
    /// The same with the cloth at its most open, where its solidity is a range.
    pub inside_moment_open: f64,
    /// Load factor of all layers by the loss-coefficient model, where there is cloth.
    pub model: Option<ModelFactor>,
    /// The same with the cloth at its most open.
    pub model_open: Option<ModelFactor>,
    /// Share of the load that the model leaves in wind at 45°; nobody may count on it.
    pub model_at_45_degrees: Option<f64>,
}

impl Figures {
    /// The least limit gust of all its posts.
    #[must_use]
    pub fn least(&self) -> Velocity {
        if self.limit_gust_ends < self.limit_gust_inside {
            self.limit_gust_ends
        } else {
            self.limit_gust_inside
        }
    }

    /// Whether it is the same but for the rounding of sums.
    #[must_use]
    pub fn is_like(&self, other: &Self) -> bool {
        let near = |one: f64, other: f64| (one - other).abs() <= 1e-9 * one.abs().max(other.abs());
        let optional = |one: Option<f64>, other: Option<f64>| match (one, other) {
            (Some(one), Some(other)) => near(one, other),
            (None, None) => true,
            _ => false,
        };
        near(self.limit_gust_ends.si(), other.limit_gust_ends.si())
            && near(self.limit_gust_inside.si(), other.limit_gust_inside.si())
            && near(self.inside_moment, other.inside_moment)
            && optional(self.ratio, other.ratio)
            && optional(self.moment.map(Quantity::si), other.moment.map(Quantity::si))
            && optional(self.model.map(|model| model.factor), other.model.map(|model| model.factor))
    }
}

impl Column {
    /// The figures of a run, counted among those compared.
    #[must_use]
    pub fn figures(&self, run: usize) -> Figures {
        let run = self.order[run];
        let answer: &RunAnswer = &self.check.runs[run];
        let posts = &answer.worst.posts;
        let greatest = |of: fn(&crate::verdict::PostVerdict) -> Option<f64>| {
            posts.iter().filter_map(of).max_by(f64::total_cmp)
        };
        let gust = |group: Option<&super::check::Group>| group.map(|group| group.limit_gust);
        let whole = answer.worst.limit_gust;
        let middle = posts.len() / 2;
        let model = self.model(run, Extreme::Worst);
        let at_45_degrees =
            |model: ModelFactor| ObliqueShare { loss: model.loss, angle: FRAC_PI_4 }.work(&mut Blank).ok();
        Figures {
            pressure: answer.worst.bays.as_ref().and_then(|bays| {
                bays.iter().map(|bay| bay.pressure).max_by(|a, b| a.si().total_cmp(&b.si()))
            }),
            moment: greatest(|post| post.design.map(|load| load.moment.si().abs())).map(Quantity::from_si),
            ratio: greatest(crate::verdict::PostVerdict::ratio),
            limit_gust_ends: gust(answer.near_ends.as_ref()).unwrap_or(whole),
            limit_gust_inside: gust(answer.inside.as_ref()).unwrap_or(whole),
            often: often(&self.check.survey, whole),
            inside_moment: posts[middle].at_reference_gust.moment.si().abs(),
            inside_moment_open: self.moment_open(run, middle),
            model,
            model_open: self.model(run, Extreme::Best),
            model_at_45_degrees: model.and_then(at_45_degrees),
        }
    }

    /// The cloth of a run at its most open, where a solidity of it is a range.
    fn most_open(&self, run: usize) -> Option<Screen> {
        let survey = &self.check.survey.runs[run];
        let solidities = survey.solidity.iter().chain(survey.over.iter().map(|over| &over.solidity));
        if solidities.clone().all(|solidity| solidity.reading.is_point()) {
            return None;
        }
        let mut low = solidities.map(|solidity| solidity.reading.low());
        let screen = self.check.settled.fence.runs[run].screen.as_ref()?;
        Some(Screen { solidity: low.next()??, over: low.collect::<Option<_>>()?, ..screen.clone() })
    }

    /// The moment of a post in one gust with the cloth at its most open.
    fn moment_open(&self, run: usize, post: usize) -> f64 {
        let as_it_is = self.check.runs[run].worst.posts[post].at_reference_gust.moment.si().abs();
        let Some(screen) = self.most_open(run) else { return as_it_is };
        let mut fence = self.check.settled.fence.clone();
        fence.runs[run].screen = Some(Screen { solidity_as_return: None, ..screen });
        run_verdict(&fence, run, &self.check.settled.site)
            .map_or(as_it_is, |verdict| verdict.posts[post].at_reference_gust.moment.si().abs())
    }

    /// What the loss-coefficient model makes of the layers of a run at one end of what is not known: a cloth by its
    /// test of air permeability where it has one, other cloth and chain link as round wire.
    fn model(&self, run: usize, end: Extreme) -> Option<ModelFactor> {
        let survey = &self.check.survey.runs[run];
        let run = &self.check.settled.fence.runs[run];
        let screen = run.screen.as_ref()?;
        let cloth = |solidity: &Open<f64>, test: Option<AirTest>| {
            let of = match end {
                Extreme::Worst => solidity.reading.high(),
                Extreme::Best => solidity.reading.low(),
            };
            let tested = test.and_then(|test| test.at_end(end));
            Some(Layer::whole(tested.map_or(MadeOf::Wire(of?), MadeOf::Tested)))
        };
        let mut layers = match screen.condition {
            Condition::Dry => vec![cloth(survey.solidity.as_ref()?, survey.air_test)?],
            Condition::Iced => vec![Layer::whole(MadeOf::Wire(screen.own_solidity(&mut Blank)))],
        };
        for over in &survey.over {
            layers.push(cloth(&over.solidity, over.air_test)?);
        }
        layers.extend(run.chain_link.map(|link| Layer::whole(MadeOf::Wire(link.solidity(&mut Blank)))));
        load_factor(&layers, &mut Blank).ok()
    }

    /// How many runs are compared.
    #[must_use]
    pub fn runs(&self) -> usize {
        self.order.len()
    }

    /// The name of a run.
    #[must_use]
    pub fn run_name(&self, run: usize) -> &str {
        &self.check.settled.fence.runs[self.order[run]].name
    }

    /// The flag of a run.
    #[must_use]
    pub fn flag(&self, run: usize) -> Flag {
        self.check.runs[self.order[run]].flag
    }

    /// How sentences call it.
    #[must_use]
    pub fn named(&self) -> &str {
        if self.label == NO_CLOTH { "the bare fence" } else { &self.label }
    }

    /// Solidity of all layers of a run, if it has cloth.
    #[must_use]
    pub fn solidity(&self, run: usize) -> Option<f64> {
        self.check.runs[self.order[run]].worst.solidity
    }
}

/// The highest cloth from the ground on one run.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HighestCloth {
    /// Solidity of all layers.
    pub solidity: f64,
    /// How high; nothing if even the bare fence does not carry the gust.
    pub height: Option<Length>,
}

/// The highest cloth from the ground for a gust, run by run, with the cloth surveyed or closed mesh on a bare
/// run.
///
/// # Errors
/// If a run cannot be worked.
pub fn highest_cloths(check: &Check, gust: Velocity) -> Result<Vec<HighestCloth>, CheckError> {
    let fence = &check.settled.fence;
    let closed = named("closed mesh").map_or(1.0, |cloth| cloth.solidity_high);
    fence
        .runs
        .iter()
        .enumerate()
        .map(|(at, run)| {
            let solidity = run.screen.as_ref().map_or(closed, |screen| screen.own_solidity(&mut Blank));
            let height = highest_cloth(fence, at, &check.settled.site, solidity, gust)?;
            Ok(HighestCloth { solidity: run.all_layers(solidity, &mut Blank), height })
        })
        .collect()
}
