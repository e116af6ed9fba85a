//! Wind over a hill: the topographic factor of 26.8, which ASCE 7-10, 7-16 and 7-22 print with the same figure.

use super::Exposure;
use crate::rule;
use crate::source::{Clause, Stated};
use crate::units::{Length, Measure, Powers, Pure, Quantity, feet};
use crate::wind::{Heavier, KeyKind, OnHill, SiteKey, SiteValues};
use crate::workings::{Blank, Ledger, Listed, OutOfRange, within};

const RETOLD: &str = "BNBC 2020 part 6 Fig. 6.2.4 (there exposures A, B, C), and a transcription of CIRSOC 102-2025 Fig. 1.8-1";
const FIGURE: Clause = super::DOCUMENT.at("26.8.2, Fig. 26.8-1").through(RETOLD);
const EQUATION: Clause = super::DOCUMENT.at(PLACE).through(RETOLD);
/// Where each edition prints the factor.
pub(in crate::wind) const PLACE: &str = "26.8.2, Eq. 26.8-1";
const STEEP: Clause = super::DOCUMENT.at("26.8.2, Fig. 26.8-1, note 2").through(RETOLD);

/// A hill flatter than this asks for no factor (26.8.1).
const FLATTEST: f64 = 0.2;
/// A lower hill asks for no factor: in open country and by open water, and among houses (26.8.1).
const LOWEST: (Length, Length) = (feet(15.0), feet(60.0));

const TOO_FLAT: Stated<f64> =
    Stated { value: 1.0, because: "26.8.1: a hill with H/L_h below 0.2 asks for no topographic factor" };
const TOO_LOW: Stated<f64> = Stated {
    value: 1.0,
    because: "26.8.1: a hill below 15 ft (in exposure B below 60 ft) asks for no topographic factor",
};
/// What 26.8.1 asks besides, and a survey does not say.
///
/// # Source
/// The first two in 7-10 and 7-16 only, as a public page quotes them from 7-16; the third in 7-22 too, by a public
/// transcription and by CIRSOC 102-2025, 1.8.1.
const UNMET: Stated<f64> = Stated { value: 0.0, because: TAKEN };
const TAKEN: &str = "as met without being asked, which is the heavier side (ours): the hill stands clear upwind of any \
other like it for 100 times its height or 2 miles, and rises to twice the height of the country round it or more (7-10 \
and 7-16; 7-22 asks neither); the fence stands on its upper half or near the crest. Where one of these is not so, 26.8.1 \
asks for no factor";

rule! {
    /// A constant of the table for hills: of a ridge (shape 1), an escarpment (2) or a hill round on all sides (3), k_1 in exposure B, C, D (columns 1 to 3), γ (4), μ upwind and downwind of the crest (5, 6).
    ///
    /// # Range
    /// Shape 1 to 3, column 1 to 6, whole.
    HillConstant, "asce7-16/hill-constant", FIGURE;
    /// shape, counted from 1
    shape: f64 = "shape";
    /// column, counted from 1; k_1 is K_1/(H/L_h)
    column: f64 = "column";
    constant "c": f64
}
/// Fig. 26.8-1: K_1/(H/L_h) in exposures B, C and D, γ, μ upwind, μ downwind.
const CONSTANTS: [[f64; 6]; 3] = [
    [1.30, 1.45, 1.55, 3.0, 1.5, 1.5], // two-dimensional ridge
    [0.75, 0.85, 0.95, 2.5, 1.5, 4.0], // two-dimensional escarpment
    [0.95, 1.05, 1.15, 4.0, 1.5, 1.5], // three-dimensional axisymmetric hill
];
impl HillConstant {
    /// Reads the table.
    ///
    /// # Errors
    /// If there is no such shape or column.
    pub fn work(self, ledger: &mut impl Ledger) -> Result<f64, OutOfRange> {
        let whole = |what, value: f64, greatest: f64| {
            within(what, FIGURE, value, 1.0, greatest)?;
            // Between two rows there is none: told as outside the row below.
            within(what, FIGURE, value, value.round(), value.round())
        };
        whole("shape", self.shape, 3.0)?;
        whole("column", self.column, 6.0)?;
        Ok(self.keep(ledger, CONSTANTS[self.shape as usize - 1][self.column as usize - 1]))
    }
}
rule! {
    /// How far a hill's effect reaches: by its half length, of a steep hill by twice its height.
    Reach, "asce7-16/hill-reach", STEEP;
    /// distance upwind of the crest to where the ground is half as high
    half_length: Length as Distance = "L_h";
    /// height of the hill over the country upwind
    height: Length as Distance = "H";
    reach "L_h'": Length as Distance = half_length.max(2.0 * height)
}
rule! {
    /// Factor for the shape of a hill and its steepness; H/L_h counts up to 0.5.
    ShapeFactor, "asce7-16/hill-shape-factor", FIGURE;
    /// constant of the shape and the exposure
    constant: f64 = "k_1";
    /// height of the hill over the country upwind
    height: Length as Distance = "H";
    /// distance upwind of the crest to where the ground is half as high
    half_length: Length as Distance = "L_h";
    factor "K_1": f64 as Coefficient = constant * (height / half_length).pure().min(0.5)
}
rule! {
    /// Factor for the distance from the crest.
    DistanceFactor, "asce7-16/hill-distance-factor", FIGURE;
    /// distance from the crest
    distance: Length as Distance = "x";
    /// constant of the shape and the side of the crest
    constant: f64 = "μ";
    /// half length of the hill, twice the height of a steep one
    reach: Length as Distance = "L_h'";
    factor "K_2": f64 as Coefficient = (1.0 - (distance / (constant * reach)).pure()).max(0.0)
}
rule! {
    /// Factor for the height above the ground.
    LevelFactor, "asce7-16/hill-level-factor", FIGURE;
    /// height above the ground where the fence stands
    level: Length as Distance = "z";
    /// constant of the shape
    constant: f64 = "γ";
    /// half length of the hill, twice the height of a steep one
    reach: Length as Distance = "L_h'";
    factor "K_3": f64 as Coefficient = (-(constant * (level / reach).pure())).exp()
}
rule! {
    /// Topographic factor.
    TopographicFactor, "asce7-16/topographic-factor", EQUATION;
    /// factor for the shape of the hill
    shape: f64 as Coefficient = "K_1";
    /// factor for the distance from the crest
    distance: f64 as Coefficient = "K_2";
    /// factor for the height above the ground
    level: f64 as Coefficient = "K_3";
    factor "K_zt": f64 as Coefficient = (1.0 + shape * distance * level).squared()
}

/// The rules of hills by name.
pub(super) const RULES: [Listed; 6] = [
    Listed::of::<HillConstant>(),
    Listed::of::<Reach>(),
    Listed::of::<ShapeFactor>(),
    Listed::of::<DistanceFactor>(),
    Listed::of::<LevelFactor>(),
    Listed::of::<TopographicFactor>(),
];

/// The key of a factor that an engineer found.
pub(in crate::wind) const FACTOR_KEY: SiteKey = SiteKey {
    key: "topographic_factor",
    about: "K_zt of 26.8: above 1 on a hill or the edge of a bank",
    kind: KeyKind::Quantity(Measure::Ratio, Some(crate::units::Value { si: 1.0, measure: Measure::Ratio })),
    example: ["1.0", "1.0"],
    range: Some((1.0, 4.0)),
    heavier: Heavier::Greater,
    instead_of: None,
};

const fn size(
    key: &'static str,
    about: &'static str,
    example: [&'static str; 2],
    range: (f64, f64),
    heavier: Heavier,
) -> SiteKey {
    let kind = KeyKind::Quantity(Measure::Elevation, None);
    SiteKey { key, about, kind, example, range: Some(range), heavier, instead_of: None }
}
const fn word(
    key: &'static str,
    about: &'static str,
    choices: &'static [(&'static str, &'static str)],
    example: &'static str,
    heavier: Heavier,
) -> SiteKey {
    let example = [example, example];
    SiteKey { key, about, kind: KeyKind::Choice(choices), example, range: None, heavier, instead_of: None }
}

const SHAPE_KEY: SiteKey = word(
    "shape",
    "\"escarpment\" a slope or bank with level ground above it, \"hill\" round on all sides, \"ridge\" long and falling \
     on both sides",
    &[
        ("escarpment", "a slope with level ground above it"),
        ("hill", "round on all sides"),
        ("ridge", "long, falling on both sides"),
    ],
    "\"escarpment\"",
    // A ridge is the heavier at the crest, an escarpment far behind it.
    Heavier::Between,
);
const HEIGHT_KEY: SiteKey = size(
    "height",
    "how far its crest rises over the country upwind, from a map",
    ["\"40 ft\"", "\"12 m\""],
    (0.3048, 3048.0),
    Heavier::Greater,
);
const HALF_LENGTH_KEY: SiteKey = size(
    "half_length",
    "from the crest towards the wind to where the ground is half as high, as the map has it",
    ["\"100 ft\"", "\"30 m\""],
    (0.3048, 30_480.0),
    // A longer hill is flatter and reaches farther.
    Heavier::Between,
);
const DISTANCE_KEY: SiteKey = size(
    "distance",
    "from the crest to the fence, as the map has it; 0 on the crest",
    ["\"20 ft\"", "\"6 m\""],
    (0.0, 30_480.0),
    Heavier::Lesser,
);
const SIDE_KEY: SiteKey = word(
    "side",
    "on which side of the crest the fence stands, \"upwind\" or \"downwind\" of it",
    &[("upwind", "towards the wind"), ("downwind", "behind the crest, or on the level ground above a bank")],
    "\"downwind\"",
    Heavier::Greater,
);
/// The table that describes a hill, and its keys in their order.
pub(in crate::wind) const HILL_KEY: SiteKey = SiteKey {
    key: "hill",
    about: "a hill, a ridge or the edge of a bank that the fence stands on or near, in place of topographic_factor",
    kind: KeyKind::Table(&[SHAPE_KEY, HEIGHT_KEY, HALF_LENGTH_KEY, DISTANCE_KEY, SIDE_KEY]),
    example: ["\"none\"", "\"none\""],
    range: None,
    heavier: Heavier::Greater,
    instead_of: Some((
        FACTOR_KEY.key,
        "keep topographic_factor if an engineer found it, else keep the hill: its factor is worked at each height",
    )),
};

/// The shape of a hill, in the order of its key.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Shape {
    /// A slope with level ground above it.
    Escarpment,
    /// Round on all sides.
    Hill,
    /// Long, falling on both sides.
    Ridge,
}

impl Shape {
    const ALL: [Self; 3] = [Self::Escarpment, Self::Hill, Self::Ridge];

    /// Its row in the table of the figure, counted from 1.
    const fn row(self) -> f64 {
        match self {
            Self::Ridge => 1.0,
            Self::Escarpment => 2.0,
            Self::Hill => 3.0,
        }
    }
}

/// A hill and the place of the fence on it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Hill {
    /// Its shape.
    pub shape: Shape,
    /// H, over the country upwind.
    pub height: Length,
    /// L_h, upwind of the crest to where the ground is half as high.
    pub half_length: Length,
    /// x, from the crest.
    pub distance: Length,
    /// Whether the fence stands behind the crest.
    pub is_downwind: bool,
}

/// What the ground does to the wind.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Topography {
    /// K_zt as it was given, the same at every height.
    Factor(f64),
    /// A hill, from which K_zt is worked at each height.
    Hill(Hill),
}

impl Topography {
    /// From the values of a site: that of the factor at one place, those of the hill from another on.
    pub(in crate::wind) fn of(values: &SiteValues, factor: usize, hill: usize) -> Self {
        if values.is_absent(hill) {
            return Self::Factor(values.quantity(factor));
        }
        let length = |at: usize| Length::from_si(values.quantity(hill + at));
        Self::Hill(Hill {
            shape: Shape::ALL[values.choice(hill).min(2)],
            height: length(1),
            half_length: length(2),
            distance: length(3),
            is_downwind: values.choice(hill + 4) == 1,
        })
    }

    /// K_zt at a height above the ground.
    ///
    /// # Errors
    /// If the hill has no height or length.
    pub(in crate::wind) fn factor(
        &self,
        exposure: Exposure,
        level: Length,
        ledger: &mut impl Ledger,
    ) -> Result<f64, OutOfRange> {
        match self {
            Self::Factor(factor) => Ok(*factor),
            Self::Hill(hill) => hill.factor(exposure, level, ledger),
        }
    }

    /// What a reader is told of the hill, if there is one.
    pub(in crate::wind) fn told(&self, exposure: Exposure, level: Length, clause: Clause) -> Option<OnHill> {
        let Self::Hill(hill) = self else { return None };
        let none = hill.no_factor(exposure).map(|stated| stated.because);
        let factor = hill.factor(exposure, level, &mut Blank).ok()?;
        let taken = if none.is_none() { TAKEN } else { "" };
        Some(OnHill { factor, clause, taken, none })
    }
}

impl Hill {
    /// Why 26.8.1 asks for no factor, if it asks for none.
    fn no_factor(&self, exposure: Exposure) -> Option<Stated<f64>> {
        let lowest = if exposure == Exposure::B { LOWEST.1 } else { LOWEST.0 };
        let at_least = |value: f64, bound: f64| crate::numerics::on_bound(value, &[bound]) >= bound;
        if !at_least((self.height / self.half_length).pure(), FLATTEST) {
            Some(TOO_FLAT)
        } else if !at_least(self.height.si(), lowest.si()) {
            Some(TOO_LOW)
        } else {
            None
        }
    }

    fn factor(&self, exposure: Exposure, level: Length, ledger: &mut impl Ledger) -> Result<f64, OutOfRange> {
        let above_nought = Length::from_si(f64::MIN_POSITIVE);
        within("height of the hill", FIGURE, self.height, above_nought, Length::from_si(f64::MAX))?;
        within("half length of the hill", FIGURE, self.half_length, above_nought, Length::from_si(f64::MAX))?;
        within(
            "distance from the crest",
            FIGURE,
            self.distance,
            Length::from_si(0.0),
            Length::from_si(f64::MAX),
        )?;
        if let Some(none) = self.no_factor(exposure) {
            return Ok(ledger.judge("K_zt", none));
        }
        let (shape, column) = (self.shape.row(), exposure.column());
        let _ = ledger.judge("conditions of 26.8.1 that are not met", UNMET);
        let side = if self.is_downwind { 6.0 } else { 5.0 };
        let for_shape = HillConstant { shape, column }.work(ledger)?;
        let for_distance = HillConstant { shape, column: side }.work(ledger)?;
        let for_level = HillConstant { shape, column: 4.0 }.work(ledger)?;
        let Self { height, half_length, distance, .. } = *self;
        let reach = Reach { half_length, height }.work(ledger);
        Ok(TopographicFactor {
            shape: ShapeFactor { constant: for_shape, height, half_length }.work(ledger),
            distance: DistanceFactor { distance, constant: for_distance, reach }.work(ledger),
            level: LevelFactor { level, constant: for_level, reach }.work(ledger),
        }
        .work(ledger))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{Pressure, mph, psf};
    use crate::wind::{Code, Event, Site, SiteValue};
    use proptest::prelude::*;

    const EXPOSURES: [Exposure; 3] = Exposure::ALL;

    fn hill(shape: Shape, height: f64, half_length: f64, distance: f64, is_downwind: bool) -> Hill {
        let (height, half_length, distance) = (feet(height), feet(half_length), feet(distance));
        Hill { shape, height, half_length, distance, is_downwind }
    }

    fn factor(hill: Hill, exposure: Exposure, level: f64) -> f64 {
        hill.factor(exposure, feet(level), &mut Blank).unwrap()
    }

    /// The multipliers that the figure prints for exposure C, read between its columns as its note 1 allows: a second
    /// way to K_zt, without the formulas.
    fn by_the_printed_table(hill: Hill, level: f64) -> f64 {
        use crate::numerics::linear;
        let of = Shape::ALL.iter().position(|shape| *shape == hill.shape).unwrap();
        let steepness = [0.20, 0.25, 0.30, 0.35, 0.40, 0.45, 0.50];
        let first = [
            [0.17, 0.21, 0.26, 0.30, 0.34, 0.38, 0.43],
            [0.21, 0.26, 0.32, 0.37, 0.42, 0.47, 0.53],
            [0.29, 0.36, 0.43, 0.51, 0.58, 0.65, 0.72],
        ];
        let places = [0.0, 0.5, 1.0, 1.5, 2.0, 2.5, 3.0, 3.5, 4.0];
        let behind_an_escarpment = [1.00, 0.88, 0.75, 0.63, 0.50, 0.38, 0.25, 0.13, 0.00];
        let all_other = [1.00, 0.67, 0.33, 0.00, 0.00, 0.00, 0.00, 0.00, 0.00];
        let levels = [0.0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1.0, 1.5, 2.0];
        let third = [
            [1.00, 0.78, 0.61, 0.47, 0.37, 0.29, 0.22, 0.17, 0.14, 0.11, 0.08, 0.02, 0.00],
            [1.00, 0.67, 0.45, 0.30, 0.20, 0.14, 0.09, 0.06, 0.04, 0.03, 0.02, 0.00, 0.00],
            [1.00, 0.74, 0.55, 0.41, 0.30, 0.22, 0.17, 0.12, 0.09, 0.07, 0.05, 0.01, 0.00],
        ];
        let steep = (hill.height / hill.half_length).pure();
        let reach = if steep > 0.5 { hill.height * 2.0 } else { hill.half_length };
        let second = if hill.shape == Shape::Escarpment && hill.is_downwind {
            behind_an_escarpment
        } else {
            all_other
        };
        let at = |length: Length| (length / reach).pure();
        let one = linear(&steepness, &first[of], steep.min(0.5)).unwrap();
        let two = linear(&places, &second, at(hill.distance).min(4.0)).unwrap();
        let three = linear(&levels, &third[of], at(feet(level)).min(2.0)).unwrap();
        let sum = 1.0 + one * two * three;
        sum * sum
    }

    #[test]
    fn a_hill_worked_by_hand() {
        // A ridge 100 ft high, L_h 250 ft, in open country, at its crest, 10 ft up: H/L_h 0.40, K_1 = 1.45 × 0.40 =
        // 0.58, K_2 = 1, K_3 = e^(−3 × 10 ÷ 250) = e^−0.12 = 0.886 920; K_zt = 1.514 414² = 2.293 449.
        let crest = hill(Shape::Ridge, 100.0, 250.0, 0.0, false);
        assert!((factor(crest, Exposure::C, 10.0) - 2.293_449).abs() < 5e-7);
        // 50 ft behind the edge of a bank 40 ft high, L_h 60 ft, steeper than a half: K_1 = 0.85 × 0.5 = 0.425, L_h' =
        // 80 ft, K_2 = 1 − 50 ÷ (4 × 80) = 0.843 75, K_3 = e^(−2.5 × 12 ÷ 80) = e^−0.375 = 0.687 289; K_zt =
        // 1.246 458² = 1.553 657.
        let bank = hill(Shape::Escarpment, 40.0, 60.0, 50.0, true);
        assert!((factor(bank, Exposure::C, 12.0) - 1.553_657).abs() < 2e-6);
        // The same upwind of the edge: K_2 = 1 − 50 ÷ (1.5 × 80) = 0.583 333; K_zt = 1.170 390² = 1.369 814.
        let below = Hill { is_downwind: false, ..bank };
        assert!((factor(below, Exposure::C, 12.0) - 1.369_814).abs() < 2e-6);
    }

    proptest! {
        #[test]
        fn the_formulas_give_what_the_printed_table_gives_between_its_columns(
            shape in 0_usize..3, steep in 0.2..0.9_f64, half_length in 80.0..2000.0_f64, along in 0.0..5.0_f64,
            level in 3.0..30.0_f64, is_downwind in any::<bool>(),
        ) {
            let height = steep * half_length;
            prop_assume!(height >= 15.0);
            let hill = hill(Shape::ALL[shape], height, half_length, along * half_length, is_downwind);
            let (ours, read) = (factor(hill, Exposure::C, level), by_the_printed_table(hill, level));
            // Hundredths of each multiplier, and straight lines for the exponential: 2 % at most.
            prop_assert!((ours / read - 1.0).abs() < 0.02, "{ours} for {read}, {hill:?}");
        }

        #[test]
        fn more_hill_nearer_and_lower_down_is_more_wind(
            shape in 0_usize..3, exposure in 0_usize..3, height in 60.0..500.0_f64, half_length in 100.0..2000.0_f64,
            distance in 0.0..3000.0_f64, level in 1.0..30.0_f64, is_downwind in any::<bool>(), more in 1.0..1.5_f64,
        ) {
            let exposure = EXPOSURES[exposure];
            let this = hill(Shape::ALL[shape], height, half_length, distance, is_downwind);
            let here = factor(this, exposure, level);
            prop_assert!(here >= 1.0);
            let higher = Hill { height: this.height * more, ..this };
            let farther = Hill { distance: this.distance * more, ..this };
            let behind = Hill { is_downwind: true, ..this };
            prop_assert!(factor(higher, exposure, level) >= here);
            prop_assert!(factor(farther, exposure, level) <= here);
            prop_assert!(factor(behind, exposure, level) >= here);
            prop_assert!(factor(this, exposure, level * more) <= here);
            if exposure != Exposure::D {
                let rougher = EXPOSURES.iter().position(|one| *one == exposure).unwrap();
                prop_assert!(factor(this, EXPOSURES[rougher + 1], level) >= here);
            }
        }
    }

    #[test]
    fn a_steeper_hill_than_a_half_makes_no_more_wind_but_reaches_as_far_as_twice_its_height() {
        let at =
            |half_length: f64| factor(hill(Shape::Ridge, 100.0, half_length, 60.0, true), Exposure::C, 10.0);
        assert!((at(200.0) - at(100.0)).abs() < 1e-12 && (at(200.0) - at(20.0)).abs() < 1e-12);
        assert!(at(201.0) < at(200.0));
    }

    #[test]
    fn low_and_flat_hills_ask_for_no_factor_and_those_on_the_bound_do() {
        let of = |height: f64, half_length: f64, exposure| {
            factor(hill(Shape::Ridge, height, half_length, 0.0, false), exposure, 10.0)
        };
        for (exposure, lowest) in [(Exposure::B, 60.0), (Exposure::C, 15.0), (Exposure::D, 15.0)] {
            assert!(of(lowest, 2.0 * lowest, exposure) > 1.3);
            assert_eq!(of(lowest - 0.01, 2.0 * lowest, exposure), 1.0);
        }
        assert!(of(60.0, 300.0, Exposure::C) > 1.3);
        assert_eq!(of(60.0, 300.1, Exposure::C), 1.0);
        // 0.2 in any unit.
        for tenths in 150..400_u32 {
            let height = f64::from(tenths) / 10.0;
            assert!(of(height, height * 5.0, Exposure::C) > 1.0, "{height}");
        }
    }

    #[test]
    fn a_row_or_column_that_is_not_there_is_refused() {
        for (shape, column) in [(0.0, 1.0), (4.0, 1.0), (1.5, 1.0), (1.0, 7.0), (1.0, 0.0), (f64::NAN, 1.0)] {
            assert!(HillConstant { shape, column }.work(&mut Blank).is_err(), "{shape} {column}");
        }
    }

    /// Values of a site: exposure C, sea level, with a hill behind the factor and the elevation there are.
    fn site(code: Code, hill: [SiteValue; 5]) -> Site {
        let mut values = vec![SiteValue::Choice(1), SiteValue::Absent];
        if code != Code::Asce7_10 {
            values.push(SiteValue::Quantity(0.0));
        }
        values.extend(hill);
        code.site(&SiteValues { wind_speed: Some(mph(115.0)), values })
    }

    fn pressure(site: &Site, level: f64) -> Pressure {
        let strip = crate::wind::Strip { centroid: feet(level), solidity: 0.2 };
        site.open_pressure(&strip, crate::wind::Case::Open, Event::Design, &mut Blank).unwrap().unwrap()
    }

    #[test]
    fn every_edition_multiplies_the_pressure_at_each_height_by_the_same_factor() {
        let q = |feet_up: f64| SiteValue::Quantity(feet(feet_up).si());
        let ridge = [SiteValue::Choice(2), q(100.0), q(250.0), q(0.0), SiteValue::Choice(0)];
        for code in Code::ALL {
            let (level, on_ridge) = (site(*code, [SiteValue::Absent; 5]), site(*code, ridge));
            // (1 + 0.58 e^(−3z ÷ 250))² by hand.
            for (up, factor) in [(5.0, 2.390_807), (10.0, 2.293_449), (30.0, 1.973_048)] {
                // Below 15 ft K_z stands still, K_zt does not.
                let flat = pressure(&with_factor(*code), up);
                let times = (pressure(&on_ridge, up) / flat).pure();
                assert!((times - factor).abs() < 5e-6, "{}, {up} ft: {times}", code.key());
                let told = on_ridge.on_hill(feet(up)).unwrap();
                assert!((told.factor - factor).abs() < 5e-6 && told.none.is_none());
            }
            assert_eq!(level.on_hill(feet(10.0)), None);
        }
        assert!((pressure(&site(Code::Asce7_16, ridge), 10.0) / psf(1.0)).pure() > 60.0);
    }

    #[test]
    fn a_fence_behind_the_edge_of_a_bank_has_the_longer_reach_and_one_before_it_the_shorter() {
        // The bank worked by hand above, 12 ft up.
        let q = |feet_up: f64| SiteValue::Quantity(feet(feet_up).si());
        for (side, factor) in [(0, 1.369_814), (1, 1.553_657)] {
            let bank = [SiteValue::Choice(0), q(40.0), q(60.0), q(50.0), SiteValue::Choice(side)];
            let times =
                pressure(&site(Code::Asce7_16, bank), 12.0) / pressure(&with_factor(Code::Asce7_16), 12.0);
            assert!((times.pure() - factor).abs() < 2e-6, "{side}: {}", times.pure());
        }
    }

    fn with_factor(code: Code) -> Site {
        let mut values = vec![SiteValue::Choice(1), SiteValue::Quantity(1.0)];
        if code != Code::Asce7_10 {
            values.push(SiteValue::Quantity(0.0));
        }
        code.site(&SiteValues { wind_speed: Some(mph(115.0)), values })
    }
}
