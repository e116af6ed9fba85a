//! Wind codes, one module an edition, behind one list.
//!
//! A code is asked about a free-standing screen: a [`Panel`] of cloth, or a [`Strip`] of open work. It answers
//! with the pressures of one [`Case`] at a time. It knows nothing of fences and posts.
//!
//! To add a code: its module, its line in the list below, a reference case, its row in the README.

pub mod asce7_10;
pub mod asce7_16;
pub mod asce7_22;
pub mod climate;
pub mod gust;

use crate::source::{Clause, Document};
use crate::units::{Frequency, Length, Measure, Pressure, Quantity, Value, Velocity};
use crate::workings::{Ledger, Listed, OutOfRange};
use std::fmt;

/// Cloth that stands free over an unbroken length.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Panel {
    /// Its lower edge above the ground.
    pub bottom: Length,
    /// Its height, lower edge to top.
    pub height: Length,
    /// Its unbroken length.
    pub length: Length,
    /// Solid area over gross area, all layers.
    pub solidity: f64,
    /// How long the cloth goes on round a corner at the start; zero for a free end.
    pub return_at_start: Length,
    /// The same at the finish.
    pub return_at_finish: Length,
}

impl Panel {
    /// Its top above the ground.
    #[must_use]
    pub fn top(&self) -> Length {
        self.bottom + self.height
    }
}

/// Open work without cloth: wires, rails and posts.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Strip {
    /// Height of the centroid of its solid area above the ground.
    pub centroid: Length,
    /// Solid area over gross area.
    pub solidity: f64,
}

/// At which wind a pressure is asked for.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Event {
    /// The code's design event at the site's wind speed.
    Design,
    /// A 3-second gust 10 m up over open ground, taken as it is: every direction factor 1, no least pressure.
    Gust(Velocity),
}

/// From which end of the screen the wind comes.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum From {
    /// The left end, standing inside.
    Start,
    /// The right end.
    Finish,
}

impl From {
    /// In words.
    #[must_use]
    pub const fn in_words(self) -> &'static str {
        match self {
            Self::Start => "wind from the start",
            Self::Finish => "wind from the finish",
        }
    }
}

/// The load cases; they act one at a time over a whole run.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Case {
    /// Wind square on.
    Square,
    /// Wind from one end: raised there, falling along the screen.
    Along(From),
    /// The screen as open work.
    Open,
    /// The least pressure a code allows.
    Least,
}

impl Case {
    /// Every case.
    pub const ALL: [Self; 5] =
        [Self::Square, Self::Along(From::Start), Self::Along(From::Finish), Self::Open, Self::Least];
}

/// A stretch along the screen and the pressure at its two ends, straight between them.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Zone {
    /// Where it begins, from the start of the screen.
    pub from: Length,
    /// Where it ends.
    pub to: Length,
    /// Net pressure on the gross area where it begins.
    pub pressure_from: Pressure,
    /// Net pressure where it ends.
    pub pressure_to: Pressure,
    /// Its name in the code, such as "0 to s"; empty if the code names none.
    pub name: &'static str,
}

impl Zone {
    /// One pressure over a whole panel.
    pub(crate) fn even(panel: &Panel, pressure: Pressure) -> Self {
        let start = Length::from_si(0.0);
        Self { from: start, to: panel.length, pressure_from: pressure, pressure_to: pressure, name: "" }
    }
}

/// The pressures on a panel in one case.
#[derive(Debug, Clone, PartialEq)]
pub struct Pressures {
    /// From the start to the finish without a gap.
    pub zones: Vec<Zone>,
    /// Height of the resultant above the ground.
    pub resultant: Length,
    /// The case in the code's own words, such as "Fig. 29.3-1 Case C".
    pub place: &'static str,
}

/// Why a code gives no pressure.
#[derive(Debug, Clone, PartialEq)]
pub enum WindError {
    /// A value is outside the code's range.
    OutOfRange(OutOfRange),
    /// The design event was asked for without a design wind speed.
    NoSpeed,
}

impl fmt::Display for WindError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::OutOfRange(error) => error.fmt(f),
            Self::NoSpeed => {
                f.write_str("no design wind speed is given, so the design event cannot be worked")
            }
        }
    }
}

impl std::error::Error for WindError {}

impl std::convert::From<OutOfRange> for WindError {
    fn from(error: OutOfRange) -> Self {
        Self::OutOfRange(error)
    }
}

/// What a site key holds.
#[derive(Debug, Clone, Copy)]
pub enum KeyKind {
    /// One of these, with what each means.
    Choice(&'static [(&'static str, &'static str)]),
    /// A quantity, and what it is when left out.
    Quantity(Measure, Option<Value>),
    /// A table with keys of its own, or "none"; it may be left out, but of a table that stands each key is read.
    Table(&'static [SiteKey]),
}

/// Which end of a site key's range brings the heavier wind.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Heavier {
    /// The greater value, or the later choice.
    Greater,
    /// The lesser value, or the earlier choice.
    Lesser,
    /// Neither: the heaviest may lie between, and each value is tried.
    Between,
}

/// A key a code reads from the site.
#[derive(Debug, Clone, Copy)]
pub struct SiteKey {
    /// Its name in the survey.
    pub key: &'static str,
    /// What it is and how to find it out.
    pub about: &'static str,
    /// What it holds.
    pub kind: KeyKind,
    /// A value as a survey writes it, in customary and in SI units.
    pub example: [&'static str; 2],
    /// The least and greatest value taken, in SI units.
    pub range: Option<(f64, f64)>,
    /// Which end of its range is the heavier.
    pub heavier: Heavier,
    /// The key in whose place it stands, and what is said where both are given.
    pub instead_of: Option<(&'static str, &'static str)>,
}

/// A key that holds a value, and the table below the site it stands in.
#[derive(Debug, Clone, Copy)]
pub struct Leaf {
    /// The table; nothing for a key of the site itself.
    pub table: Option<&'static SiteKey>,
    /// The key.
    pub key: &'static SiteKey,
}

impl Leaf {
    /// Its name with that of its table, as in `hill.height`.
    #[must_use]
    pub fn path(&self) -> String {
        match self.table {
            Some(table) => format!("{}.{}", table.key, self.key.key),
            None => self.key.key.to_owned(),
        }
    }
}

/// The values of a code's site keys, each in the order the code declares them.
#[derive(Debug, Clone, PartialEq)]
pub struct SiteValues {
    /// The design wind speed as the code defines it, if known.
    pub wind_speed: Option<Velocity>,
    /// For a choice its place in the list, for a quantity its SI value; those of tables in the place of the table.
    pub values: Vec<SiteValue>,
}

/// The value of one site key.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum SiteValue {
    /// The place in the list of choices.
    Choice(usize),
    /// A quantity in SI units.
    Quantity(f64),
    /// Its table was left out.
    Absent,
}

impl SiteValues {
    /// The value of a key; values that are not there belong to tables left out.
    fn at(&self, at: usize) -> SiteValue {
        self.values.get(at).copied().unwrap_or(SiteValue::Absent)
    }
    pub(crate) fn is_absent(&self, at: usize) -> bool {
        self.at(at) == SiteValue::Absent
    }
    pub(crate) fn choice(&self, at: usize) -> usize {
        match self.at(at) {
            SiteValue::Choice(choice) => choice,
            SiteValue::Quantity(_) | SiteValue::Absent => 0,
        }
    }
    pub(crate) fn quantity(&self, at: usize) -> f64 {
        match self.at(at) {
            SiteValue::Quantity(si) => si,
            SiteValue::Choice(_) | SiteValue::Absent => 0.0,
        }
    }
}

/// What the ground does to the wind at a height, where a survey describes a hill.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct OnHill {
    /// What the pressure is multiplied by.
    pub factor: f64,
    /// Where that stands.
    pub clause: Clause,
    /// What was taken to be so without being asked; empty where the code asks for no factor.
    pub taken: &'static str,
    /// Why the code asks for no factor, if it asks for none.
    pub none: Option<&'static str>,
}

/// How the strength of parts belongs to a code's wind.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Level {
    /// The wind is at strength level: resistance factors, wind factor 1.0.
    Strength,
}

macro_rules! wind_codes {
    ($( $(#[$doc:meta])* $variant:ident = $module:ident; )+) => {
        /// A wind code in one edition.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
        pub enum Code { $( $(#[$doc])* $variant, )+ }

        /// A site by the wind code chosen for it.
        #[derive(Debug, Clone, PartialEq)]
        pub enum Site { $( $(#[$doc])* $variant($module::Site), )+ }

        impl Code {
            /// Every code there is.
            pub const ALL: &'static [Self] = &[$( Self::$variant, )+];
            /// Its name in a survey.
            #[must_use]
            pub const fn key(self) -> &'static str { match self { $( Self::$variant => $module::KEY, )+ } }
            /// The document.
            #[must_use]
            pub const fn document(self) -> &'static Document { match self { $( Self::$variant => &$module::DOCUMENT, )+ } }
            /// What the design wind speed is, in the code's own terms.
            #[must_use]
            pub const fn speed_is(self) -> &'static str { match self { $( Self::$variant => $module::SPEED_IS, )+ } }
            /// The level of its design wind.
            #[must_use]
            pub const fn level(self) -> Level { match self { $( Self::$variant => $module::LEVEL, )+ } }
            /// The return period, in years, of its design wind speed for a risk category, or nothing where the
            /// code knows no such category.
            #[must_use]
            pub fn design_return_period(self, risk_category: &str) -> Option<f64> {
                match self { $( Self::$variant => $module::design_return_period(risk_category), )+ }
            }
            /// The site keys it reads.
            #[must_use]
            pub const fn site_keys(self) -> &'static [SiteKey] { match self { $( Self::$variant => $module::SITE_KEYS, )+ } }
            /// The solidities of all layers at which its loads may step; between two of them they rise with it.
            #[must_use]
            pub const fn solidity_steps(self) -> &'static [f64] { match self { $( Self::$variant => $module::SOLIDITY_STEPS, )+ } }
            /// From which first frequency on it takes a structure as rigid.
            #[must_use]
            pub const fn rigid_from(self) -> Frequency { match self { $( Self::$variant => $module::RIGID_FROM, )+ } }
            /// The rules it makes known by name.
            #[must_use]
            pub const fn rules(self) -> &'static [Listed] { match self { $( Self::$variant => $module::RULES, )+ } }
            /// A site with the values of its keys.
            #[must_use]
            pub fn site(self, values: &SiteValues) -> Site {
                match self { $( Self::$variant => Site::$variant($module::Site::new(values)), )+ }
            }
        }

        impl Site {
            /// The code.
            #[must_use]
            pub const fn code(&self) -> Code { match self { $( Self::$variant(_) => Code::$variant, )+ } }
            /// The design wind speed, if known.
            #[must_use]
            pub const fn wind_speed(&self) -> Option<Velocity> { match self { $( Self::$variant(site) => site.wind_speed, )+ } }
            /// The pressures on a panel in one case, or nothing where the code has no such case for it.
            ///
            /// # Errors
            /// Outside the code's range, or without a speed for the design event.
            pub fn pressures(&self, panel: &Panel, case: Case, event: Event, ledger: &mut impl Ledger) -> Result<Option<Pressures>, WindError> {
                match self { $( Self::$variant(site) => site.pressures(panel, case, event, ledger), )+ }
            }
            /// The pressure on the solid area of open work in one case; nothing where the code has no such case.
            ///
            /// # Errors
            /// As for [`Self::pressures`].
            pub fn open_pressure(&self, strip: &Strip, case: Case, event: Event, ledger: &mut impl Ledger) -> Result<Option<Pressure>, WindError> {
                match self { $( Self::$variant(site) => site.open_pressure(strip, case, event, ledger), )+ }
            }
            /// What a hill does at a height above the ground; nothing where none is described.
            #[must_use]
            pub fn on_hill(&self, height: Length) -> Option<OnHill> {
                match self { $( Self::$variant(site) => site.on_hill(height), )+ }
            }
            /// How a ratio at one gust gives the gust at which it is 1: the design speed times the root of
            /// this over the ratio, for a part that follows the pressure.
            #[must_use]
            pub fn direction_factor(&self) -> f64 { match self { $( Self::$variant(site) => site.direction_factor(), )+ } }
            /// What the code says of the wind case that stands for open strips.
            #[must_use]
            pub const fn open_place(&self) -> &'static str { match self { $( Self::$variant(_) => $module::OPEN_PLACE, )+ } }
            /// Where the least pressure stands.
            #[must_use]
            pub const fn least_clause(&self) -> Clause { match self { $( Self::$variant(_) => $module::LEAST_CLAUSE, )+ } }
        }
    };
}

wind_codes! {
    /// ASCE/SEI 7-10.
    Asce7_10 = asce7_10;
    /// ASCE/SEI 7-16.
    Asce7_16 = asce7_16;
    /// ASCE/SEI 7-22.
    Asce7_22 = asce7_22;
}

impl Code {
    /// The keys that hold a value, those of a table in its place.
    pub fn leaves(self) -> impl Iterator<Item = Leaf> {
        self.site_keys().iter().flat_map(|key| match key.kind {
            KeyKind::Table(keys) => {
                keys.iter().map(|own| Leaf { table: Some(key), key: own }).collect::<Vec<_>>()
            }
            KeyKind::Choice(_) | KeyKind::Quantity(..) => vec![Leaf { table: None, key }],
        })
    }

    /// The code of this name, or the nearest name there is.
    ///
    /// # Errors
    /// The name nearest to it, if any is near.
    pub fn named(name: &str) -> Result<Self, Option<&'static str>> {
        Self::ALL
            .iter()
            .copied()
            .find(|code| code.key() == name)
            .ok_or_else(|| crate::workings::nearest(name, Self::ALL.iter().map(|code| code.key())))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{Pure, feet, mph, psf};
    use crate::workings::Blank;

    /// Open fields at sea level, without a hill.
    fn site(code: Code, wind_speed: Option<Velocity>) -> Site {
        // The table of a hill stands last in each edition and is left out.
        let flat = [SiteValue::Choice(1), SiteValue::Quantity(1.0), SiteValue::Quantity(0.0)];
        let values = flat[..code.site_keys().len() - 1].to_vec();
        code.site(&SiteValues { wind_speed, values })
    }

    /// Solid cloth of 10 ft by 200 ft on the ground.
    fn panel(solidity: f64) -> Panel {
        let none = feet(0.0);
        Panel {
            bottom: none,
            height: feet(10.0),
            length: feet(200.0),
            solidity,
            return_at_start: none,
            return_at_finish: none,
        }
    }

    fn in_psf(pressure: Pressure) -> f64 {
        (pressure / psf(1.0)).pure()
    }

    #[test]
    fn a_code_is_found_by_its_name_and_a_slip_finds_the_nearest() {
        for code in Code::ALL {
            assert_eq!(Code::named(code.key()), Ok(*code));
            assert_eq!(site(*code, None).code(), *code);
            assert!(code.document().title.starts_with("ASCE/SEI 7-") && code.speed_is().contains("gust"));
            assert_eq!(code.level(), Level::Strength);
        }
        assert_eq!(Code::named("asce7-61"), Err(Some("asce7-16")));
        assert_eq!(Code::named("%%%"), Err(None));
    }

    #[test]
    fn the_maps_of_each_edition_have_their_return_periods() {
        let of = |code: Code| ["I", "II", "III", "IV"].map(|category| code.design_return_period(category));
        let later = [Some(300.0), Some(700.0), Some(1700.0), Some(3000.0)];
        assert_eq!((of(Code::Asce7_16), of(Code::Asce7_22)), (later, later));
        assert_eq!(of(Code::Asce7_10), [Some(300.0), Some(700.0), Some(1700.0), Some(1700.0)]);
        assert!(Code::ALL.iter().all(|code| code.design_return_period("V").is_none()));
    }

    #[test]
    fn each_edition_gives_its_own_pressures_to_the_same_cloth() {
        // q at 10 ft, which counts as 15, by hand: 24.429 psf, in 7-22 24.494; solid cloth 1.30 × 0.85 of it.
        for (code, square, along) in [
            (Code::Asce7_10, 26.994, 67.537),
            (Code::Asce7_16, 26.994, 67.537),
            (Code::Asce7_22, 27.066, 67.717),
        ] {
            let site = site(code, Some(mph(115.0)));
            assert_eq!(site.wind_speed(), Some(mph(115.0)));
            assert_eq!(site.direction_factor(), 0.85);
            let pressure = |case| {
                let found = site.pressures(&panel(1.0), case, Event::Design, &mut Blank).unwrap().unwrap();
                assert!(!found.place.is_empty());
                in_psf(found.zones[0].pressure_from)
            };
            assert!((pressure(Case::Square) - square).abs() < 5e-4, "{code:?}");
            assert!((pressure(Case::Along(From::Start)) - along).abs() < 1e-2, "{code:?}");
            // An open frame at 0.70: 1.6 × 0.7 for 1.30.
            assert!((pressure(Case::Open) - square / 1.30 * 1.12).abs() < 1e-3, "{code:?}");
            assert!((pressure(Case::Least) - 16.0).abs() < 1e-9, "{code:?}");
            // Wires of a solidity of 0.2 have 1.3 as a wall has 1.30.
            let strip = Strip { centroid: feet(5.0), solidity: 0.2 };
            let open = |case| site.open_pressure(&strip, case, Event::Design, &mut Blank).unwrap().unwrap();
            assert!((in_psf(open(Case::Square)) - square).abs() < 5e-4, "{code:?}");
            assert!((in_psf(open(Case::Least)) - 16.0).abs() < 1e-9, "{code:?}");
        }
    }

    #[test]
    fn cloth_below_0_30_is_open_work_only_and_a_last_bit_below_the_bound_decides_nothing() {
        for code in Code::ALL {
            let site = site(*code, Some(mph(115.0)));
            let square =
                |solidity| site.pressures(&panel(solidity), Case::Square, Event::Design, &mut Blank).unwrap();
            assert!(square(0.29).is_none() && square(0.30).is_some());
            assert_eq!(square(0.30 - 1e-16), square(0.30));
            let least = |solidity| {
                let found = site.pressures(&panel(solidity), Case::Least, Event::Design, &mut Blank);
                in_psf(found.unwrap().unwrap().zones[0].pressure_from)
            };
            assert_eq!((least(0.70), least(0.70 - 1e-16)), (16.0, 16.0));
            assert!((least(0.50) - 8.0).abs() < 1e-12);
        }
    }

    #[test]
    fn without_a_speed_a_gust_can_be_worked_and_the_design_event_cannot() {
        for code in Code::ALL {
            let site = site(*code, None);
            let square = |event| site.pressures(&panel(1.0), Case::Square, event, &mut Blank);
            assert!(square(Event::Gust(mph(60.0))).is_ok());
            let told = square(Event::Design).unwrap_err();
            assert_eq!(told, WindError::NoSpeed);
            assert!(told.to_string().contains("no design wind speed is given"));
        }
    }

    #[test]
    fn a_key_of_a_table_is_named_with_its_table_and_the_ends_in_words() {
        let paths: Vec<_> = Code::Asce7_16.leaves().map(|leaf| leaf.path()).collect();
        for path in ["exposure", "topographic_factor", "hill.shape", "hill.height"] {
            assert!(paths.iter().any(|found| found == path), "{paths:?}");
        }
        assert_eq!(From::Start.in_words(), "wind from the start");
        assert_eq!(From::Finish.in_words(), "wind from the finish");
        assert_eq!(Panel { bottom: feet(1.0), ..panel(1.0) }.top(), feet(11.0));
    }
}
