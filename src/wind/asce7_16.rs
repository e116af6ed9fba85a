//! ASCE/SEI 7-16: velocity pressure, free-standing walls, open frames, least pressure.
//!
//! No purchased copy was read: the tables and clauses come through national codes that reprint them, general
//! structural libraries and permit documents, as each clause says.

pub mod hill;

use super::{
    Case, Event, From, Heavier, KeyKind, Level, OnHill, Panel, Pressures, SiteKey, SiteValues, Strip,
    WindError, Zone,
};
use crate::numerics::{between, bilinear, bracket, linear, on_bound};
use crate::rule;
use crate::source::{Clause, Document, Seen, Stated};
use crate::units::{
    Frequency, Length, Measure, PerLength, Powers, Pressure, PressurePerSpeedSquared, Pure, Quantity, Value,
    Velocity, feet, hertz, pascals_per_speed_squared, per_foot, psf, psf_per_mph_squared,
};
use crate::workings::{Entry, Ledger, Listed, OutOfRange, within};
use hill::Topography;
use nalgebra::SMatrix;
use std::sync::LazyLock;

/// The name in a survey.
pub const KEY: &str = "asce7-16";
/// What the speed is.
pub const SPEED_IS: &str = "3-second gust, 33 ft up over open ground, from the map of the risk category";
/// Strength level.
pub const LEVEL: Level = Level::Strength;
/// The case of open strips.
pub const OPEN_PLACE: &str = "Fig. 29.4-2 open frame";

const RETOLD: &str = "BNBC 2020 part 6 chapter 2 and other reprints of the same tables";

/// The document.
pub static DOCUMENT: Document = Document {
    short: "ASCE 7-16",
    title: "ASCE/SEI 7-16, Minimum Design Loads and Associated Criteria for Buildings and Other Structures",
    seen: Seen::SecondHand(RETOLD),
};

const VELOCITY_PRESSURE: Clause = DOCUMENT.at("26.10.2, Eq. 26.10-1");
const EXPOSURE_COEFFICIENT: Clause = DOCUMENT.at("26.10.1, Table 26.10-1, note 1");
const EXPOSURE_CONSTANTS: Clause = DOCUMENT.at("26.11, Table 26.11-1");
const ELEVATION: Clause = DOCUMENT.at("26.9, Table 26.9-1");
const WALL: Clause = DOCUMENT.at("29.3.1, Fig. 29.3-1");
const WALL_FIT: Clause = DOCUMENT.at("commentary C29.3.1").through("CIRSOC 102-2025 C4.4.1");
const OPEN: Clause = DOCUMENT.at("29.4, Fig. 29.4-2");
/// Where the return periods of the maps stand.
pub const RETURN_PERIODS: Clause =
    DOCUMENT.at("26.5, maps of the basic wind speed by risk category").through(
        "two firms' pages for 300, 700 and 1700 years, notes of a state's structural engineers for 3000",
    );
/// Where the least pressure stands.
pub const LEAST_CLAUSE: Clause = DOCUMENT.at("29.7").from_memory();
/// From which first frequency on a structure is rigid and answers gusts by their factor alone: 26.2, "rigid", and 26.11 (from memory).
pub const RIGID_FROM: Frequency = hertz(1.0);

/// ASCE 7-16 26.6, Table 26.6-1: solid free-standing walls and open frames alike.
pub(super) const DIRECTIONALITY: Stated<f64> =
    Stated { value: 0.85, because: "ASCE 7-16 26.6, Table 26.6-1: free-standing walls and open frames" };
const ANY_DIRECTION: Stated<f64> =
    Stated { value: 1.0, because: "a gust taken as it is, from the worst direction: no direction factor" };
const GUST: Stated<f64> = Stated {
    value: 0.85,
    because: "ASCE 7-16 26.11.1, for a structure whose first frequency is 1 Hz or more",
};
pub(super) const CONSTANT: PressurePerSpeedSquared = psf_per_mph_squared(0.00256);
pub(super) const ELEVATION_RATE: PerLength = per_foot(0.000_036_2);
pub(super) const LEAST_HEIGHT: Length = feet(15.0);
/// ASCE 7-16 29.7, at strength level; the clause number is from memory.
const LEAST: Pressure = psf(16.0);
/// Openings of 30 % or more make an open frame (29.4); the wall rule is for less than 30 % (29.3.1).
const OPEN_BELOW: f64 = 0.70;
/// Below this solidity cloth is open work only; from here up to 0.70 the wall rule is a case as well.
const WALL_FROM: f64 = 0.30;
/// Where a row of the table of open frames ends (29.4) within the range of open work.
const OPEN_ROW: f64 = 0.10;
/// Solidities at which loads may step: rows of the table of open frames, and the two above.
pub const SOLIDITY_STEPS: &[f64] = &[OPEN_ROW, WALL_FROM, OPEN_BELOW];

rule! {
    /// Velocity pressure exposure coefficient.
    ExposureCoefficient, "asce7-16/exposure-coefficient", EXPOSURE_COEFFICIENT;
    /// height above ground, not below 15 ft
    height: Length as Distance = "z";
    /// gradient height of the exposure (Table 26.11-1)
    gradient_height: Length as Elevation = "z_g";
    /// power of the exposure (Table 26.11-1)
    power: f64 = "α";
    coefficient "K_z": f64 as Coefficient = 2.01 * (height / gradient_height).pure().powf(2.0 / power)
}

rule! {
    /// Ground elevation factor.
    ElevationFactor, "asce7-16/elevation-factor", ELEVATION;
    /// ground elevation above sea level
    elevation: Length as Elevation = "z_e";
    /// rate of the exponent
    rate: PerLength = "r";
    factor "K_e": f64 as Coefficient = (-(rate * elevation).pure()).exp()
}

rule! {
    /// Velocity pressure.
    VelocityPressure, "asce7-16/velocity-pressure", VELOCITY_PRESSURE;
    /// constant of the equation
    constant: PressurePerSpeedSquared = "c";
    /// velocity pressure exposure coefficient
    exposure_coefficient: f64 as Coefficient = "K_z";
    /// topographic factor
    topographic_factor: f64 as Coefficient = "K_zt";
    /// wind directionality factor
    directionality: f64 = "K_d";
    /// ground elevation factor
    elevation_factor: f64 as Coefficient = "K_e";
    /// basic wind speed
    speed: Velocity = "V";
    pressure "q": Pressure = constant * exposure_coefficient * topographic_factor * directionality * elevation_factor * speed.squared()
}

rule! {
    /// Velocity pressure by the constant of the SI form, 0.056 % below the customary one.
    VelocityPressureSi, "asce7-16/velocity-pressure-si", VELOCITY_PRESSURE;
    /// velocity pressure exposure coefficient
    exposure_coefficient: f64 as Coefficient = "K_z";
    /// topographic factor
    topographic_factor: f64 as Coefficient = "K_zt";
    /// wind directionality factor
    directionality: f64 = "K_d";
    /// ground elevation factor, or the importance factor of earlier editions
    elevation_factor: f64 as Coefficient = "K_e";
    /// basic wind speed
    speed: Velocity = "V";
    pressure "q": Pressure
}
impl VelocityPressureSi {
    /// Works it with 0.613 Pa/(m/s)².
    ///
    /// # Errors
    /// None; the signature is that of every rule worked by hand.
    pub fn work(self, ledger: &mut impl Ledger) -> Result<Pressure, OutOfRange> {
        let Self { exposure_coefficient, topographic_factor, directionality, elevation_factor, speed } = self;
        let pressure = VelocityPressure {
            constant: pascals_per_speed_squared(0.613),
            exposure_coefficient,
            topographic_factor,
            directionality,
            elevation_factor,
            speed,
        }
        .work(ledger);
        Ok(self.keep(ledger, pressure))
    }
}

const S_OVER_H: [f64; 7] = [0.16, 0.2, 0.3, 0.5, 0.7, 0.9, 1.0];
const B_OVER_S: [f64; 12] = [0.05, 0.1, 0.2, 0.5, 1.0, 2.0, 4.0, 5.0, 10.0, 20.0, 30.0, 45.0];
/// Fig. 29.3-1, Cases A and B: rows s/h as above, columns B/s as above.
static WALL_TABLE: LazyLock<SMatrix<f64, 7, 12>> = LazyLock::new(|| {
    SMatrix::from_row_slice(&[
        1.95, 1.90, 1.85, 1.85, 1.80, 1.80, 1.85, 1.85, 1.85, 1.90, 1.90, 1.95, // s/h <= 0.16
        1.95, 1.90, 1.85, 1.80, 1.80, 1.80, 1.80, 1.80, 1.85, 1.90, 1.90, 1.95, // 0.2
        1.95, 1.90, 1.85, 1.80, 1.80, 1.80, 1.80, 1.80, 1.80, 1.85, 1.85, 1.85, // 0.3
        1.95, 1.85, 1.80, 1.75, 1.75, 1.70, 1.70, 1.70, 1.70, 1.70, 1.70, 1.75, // 0.5
        1.90, 1.85, 1.75, 1.70, 1.65, 1.60, 1.60, 1.55, 1.55, 1.55, 1.55, 1.55, // 0.7
        1.85, 1.75, 1.70, 1.60, 1.55, 1.50, 1.45, 1.45, 1.40, 1.40, 1.40, 1.40, // 0.9
        1.80, 1.70, 1.65, 1.55, 1.45, 1.40, 1.35, 1.35, 1.30, 1.30, 1.30, 1.30, // 1
    ])
});

rule! {
    /// Force coefficient of a free-standing wall, Cases A and B.
    ///
    /// # Range
    /// B/s and s/h above 0 and s/h up to 1; the table holds its edge values at s/h ≤ 0.16, B/s ≤ 0.05 and
    /// B/s ≥ 45, as printed.
    WallCoefficient, "asce7-16/wall-coefficient", WALL;
    /// height of the wall over height of its top
    s_over_h: f64 = "s/h";
    /// length over height of the wall
    b_over_s: f64 = "B/s";
    coefficient "C_f": f64 as Coefficient
}
impl WallCoefficient {
    /// Reads the table, straight between its values.
    ///
    /// # Errors
    /// If s/h is above 1, or either is not above 0.
    pub fn work(self, ledger: &mut impl Ledger) -> Result<f64, OutOfRange> {
        within("s/h", WALL, self.s_over_h, f64::MIN_POSITIVE, 1.0 + 1e-12)?;
        within("B/s", WALL, self.b_over_s, f64::MIN_POSITIVE, f64::MAX)?;
        let row = self.s_over_h.clamp(S_OVER_H[0], 1.0);
        let column = self.b_over_s.clamp(B_OVER_S[0], B_OVER_S[11]);
        let value = bilinear(&S_OVER_H, &B_OVER_S, &WALL_TABLE, row, column)
            .expect("both values were held at the edges of the table");
        Ok(self.keep(ledger, value))
    }
}

rule! {
    /// The commentary's fit of the wall table, which reproduces its 84 values when rounded to 0.05.
    WallFit, "asce7-16/wall-coefficient-fit", WALL_FIT;
    /// height of the wall over height of its top
    s_over_h: f64 = "y";
    /// length over height of the wall
    b_over_s: f64 = "x";
    coefficient "C_f": f64 as Coefficient = (1.563 + 0.008542 * b_over_s.ln() - 0.06148 * s_over_h
        + 0.009011 * b_over_s.ln().squared() - 0.2603 * s_over_h.squared()
        - 0.08393 * s_over_h * b_over_s.ln()) / 0.85
}

rule! {
    /// Reduction of a porous wall with less than 30 % openings.
    OpeningsFactor, "asce7-16/openings-factor", DOCUMENT.at("29.3.1, Fig. 29.3-1, note 1");
    /// solid area over gross area
    solidity: f64 as Coefficient = "ε";
    factor "f_o": f64 as Coefficient = 1.0 - (1.0 - solidity).powf(1.5)
}

rule! {
    /// Reduction of Case C for a wall that stands nearly on the ground (s/h above 0.8).
    GroundReduction, "asce7-16/case-c-reduction", DOCUMENT.at("29.3.1, Fig. 29.3-1, note 4");
    /// height of the wall over height of its top
    s_over_h: f64 as Coefficient = "s/h";
    factor "r": f64 as Coefficient = 1.8 - s_over_h
}

rule! {
    /// Factor of the first zone where the wall goes on round a corner.
    ///
    /// # Range
    /// Nothing is given below L_r/s 0.3, where the factor is 1; it stays at 0.60 from 2.0 on.
    ReturnFactor, "asce7-16/return-factor", WALL;
    /// length of the return over height of the wall
    return_over_s: f64 as Coefficient = "L_r/s";
    factor "k_r": f64 as Coefficient
}
impl ReturnFactor {
    /// Reads the table of the figure.
    ///
    /// # Errors
    /// If the length is below 0.
    pub fn work(self, ledger: &mut impl Ledger) -> Result<f64, OutOfRange> {
        within("L_r/s", WALL, self.return_over_s, 0.0, f64::MAX)?;
        let factor = if self.return_over_s < RETURN_FROM {
            1.0
        } else {
            linear(&[RETURN_FROM, 1.0, 2.0], &[0.90, 0.75, 0.60], self.return_over_s.min(2.0))
                .expect("held between 0.3 and 2")
        };
        Ok(self.keep(ledger, factor))
    }
}

/// Zones of Case C by their ends in multiples of s, up to B/s 10; the last one runs on to the end of the wall.
const SHORT_ENDS: &[f64] = &[1.0, 2.0, 3.0, f64::INFINITY];
const SHORT_NAMES: &[&str] = &["0 to s", "s to 2s", "2s to 3s", "3s to 10s"];
/// The same above B/s 10.
const LONG_ENDS: &[f64] = &[1.0, 2.0, 3.0, 4.0, 5.0, 10.0, f64::INFINITY];
const LONG_NAMES: &[&str] =
    &["0 to s", "s to 2s", "2s to 3s", "3s to 4s", "4s to 5s", "5s to 10s", "beyond 10s"];
const ZONED_B_OVER_S: [f64; 11] = [2.0, 3.0, 4.0, 5.0, 6.0, 7.0, 8.0, 9.0, 10.0, 13.0, 45.0];
/// Fig. 29.3-1, Case C, each column split to the zones of a long wall: the zone 3s–10s of B/s 4 to 10 stands in
/// the three it covers. `NONE` where a column has no such zone.
const NONE: f64 = f64::NAN;
const ZONED: [[f64; 7]; 11] = [
    [2.25, 1.50, NONE, NONE, NONE, NONE, NONE],
    [2.60, 1.70, 1.15, NONE, NONE, NONE, NONE],
    [2.90, 1.90, 1.30, 1.10, 1.10, 1.10, NONE],
    [3.10, 2.00, 1.45, 1.05, 1.05, 1.05, NONE],
    [3.30, 2.15, 1.55, 1.05, 1.05, 1.05, NONE],
    [3.40, 2.25, 1.65, 1.05, 1.05, 1.05, NONE],
    [3.55, 2.30, 1.70, 1.05, 1.05, 1.05, NONE],
    [3.65, 2.35, 1.75, 1.00, 1.00, 1.00, NONE],
    [3.75, 2.45, 1.85, 0.95, 0.95, 0.95, NONE],
    [4.00, 2.60, 2.00, 1.50, 1.35, 0.90, 0.55],
    [4.30, 2.55, 1.95, 1.85, 1.85, 1.10, 0.55],
];
/// From this B/s on the figure stars the first zone: a return counts.
const STARRED_FROM: f64 = 5.0;
/// Nothing is given for a return shorter than this in multiples of s.
const RETURN_FROM: f64 = 0.3;

/// How zones are found that are not read straight off the figure.
const ZONES_BETWEEN: &str = "ours where the figure is silent: between its columns the values are straight; a zone that \
the lower column lacks takes the upper column's value; from B/s 10 to 13 the zone 3s to 10s is split in three, beyond \
10s 0.55";

fn zone_layout(b_over_s: f64) -> (&'static [f64], &'static [&'static str]) {
    if b_over_s > 10.0 { (LONG_ENDS, LONG_NAMES) } else { (SHORT_ENDS, SHORT_NAMES) }
}

fn zone_coefficient(b_over_s: f64, zone: usize) -> f64 {
    let last = ZONED_B_OVER_S.len() - 1;
    let column = b_over_s.clamp(ZONED_B_OVER_S[0], ZONED_B_OVER_S[last]);
    let (at, share) = bracket(&ZONED_B_OVER_S, column).expect("held between the first and last column");
    let (lower, upper) = (ZONED[at][zone], ZONED[at + 1][zone]);
    if lower.is_nan() { upper } else { between(lower, upper, share) }
}

rule! {
    /// Force coefficient of a free-standing wall at a place along it, Case C.
    ///
    /// The reduction for s/h above 0.8 and the return factor come after it.
    ///
    /// # Departure
    /// Between columns the values are straight; a zone missing in the lower column takes the upper column's
    /// value; between B/s 10 and 13 the zone 3s–10s is split into three. These are judgements.
    ZoneCoefficient, "asce7-16/zone-coefficient", WALL;
    /// length over height of the wall
    b_over_s: f64 as Coefficient = "B/s";
    /// distance from the windward end over height of the wall
    distance_over_s: f64 as Coefficient = "x/s";
    coefficient "C_f": f64 as Coefficient
}
impl ZoneCoefficient {
    /// Reads the figure.
    ///
    /// # Errors
    /// If B/s is below 2, or the place is not on the wall.
    pub fn work(self, ledger: &mut impl Ledger) -> Result<f64, OutOfRange> {
        within("B/s", WALL, self.b_over_s, 2.0, f64::MAX)?;
        within("x/s", WALL, self.distance_over_s, 0.0, self.b_over_s)?;
        let (ends, _) = zone_layout(self.b_over_s);
        let zone = ends.iter().position(|end| self.distance_over_s < *end).unwrap_or(ends.len() - 1);
        Ok(self.keep(ledger, zone_coefficient(self.b_over_s, zone)))
    }
}

rule! {
    /// What a force coefficient of Case C is multiplied by.
    ZoneFactor, "asce7-16/zone-factor", DOCUMENT.at("29.3.1, Fig. 29.3-1, notes 1 and 4");
    /// openings factor
    openings: f64 as Coefficient = "f_o";
    /// reduction for s/h above 0.8, else 1
    reduction: f64 as Coefficient = "r";
    /// return factor in the first zone, else 1
    corner: f64 as Coefficient = "k_r";
    factor "f": f64 as Coefficient = openings * reduction * corner
}

rule! {
    /// Net pressure on the gross area of a wall.
    WallPressure, "asce7-16/wall-pressure", DOCUMENT.at("29.3.1, Eq. 29.3-1");
    /// velocity pressure at the top of the wall
    velocity_pressure: Pressure = "q_h";
    /// gust-effect factor
    gust: f64 = "G";
    /// force coefficient
    coefficient: f64 as Coefficient = "C_f";
    /// openings factor, in Case C with the reduction and the return factor
    factor: f64 as Coefficient = "f";
    pressure "p": Pressure = velocity_pressure * gust * coefficient * factor
}

rule! {
    /// Pressure along a wall in Case B: the resultant lies 0.2 B off the middle towards the windward end.
    SkewedPressure, "asce7-16/case-b-pressure", DOCUMENT.at("29.3.1, Fig. 29.3-1, note 2");
    /// mean pressure
    mean: Pressure = "p";
    /// distance from the windward end
    distance: Length as Distance = "x";
    /// length of the wall
    length: Length as Distance = "B";
    pressure "p_x": Pressure = mean * (1.0 + 1.2 * (1.0 - 2.0 * (distance / length).pure()))
}

rule! {
    /// Height of the resultant above the ground: 0.05 s above the middle at s/h = 1, falling to none at 0.8.
    ///
    /// # Departure
    /// The code raises it by 0.05 h at s/h = 1 only; the straight way down to 0.8 is a judgement, without a
    /// step.
    ResultantHeight, "asce7-16/resultant-height", DOCUMENT.at("29.3.1, Fig. 29.3-1, note 3; below s/h 1 ours");
    /// lower edge above the ground
    bottom: Length as Distance = "z_b";
    /// height of the wall
    height: Length as Distance = "s";
    /// height of the wall over height of its top
    s_over_h: f64 as Coefficient = "s/h";
    resultant "z_r": Length as Distance = bottom + height * (0.5 + 0.05 * ((s_over_h - 0.8) / 0.2).clamp(0.0, 1.0))
}

rule! {
    /// Force coefficient of a single-plane open frame of round members, D√q up to 2.5 ft√psf.
    ///
    /// # Departure
    /// The lighter column for larger members is never used: a judgement on the heavier side.
    OpenRoundCoefficient, "asce7-16/open-frame-round", OPEN;
    /// solid area over gross area
    solidity: f64 as Coefficient = "ε";
    coefficient "C_f": f64
}
impl OpenRoundCoefficient {
    /// Reads the table.
    ///
    /// # Errors
    /// If the solidity is above 0.70, where a frame is no longer open.
    pub fn work(self, ledger: &mut impl Ledger) -> Result<f64, OutOfRange> {
        within("solidity", OPEN, self.solidity, 0.0, OPEN_BELOW)?;
        Ok(self.keep(ledger, open_row(self.solidity, [1.2, 1.3, 1.5])))
    }
}

rule! {
    /// Force coefficient of a single-plane open frame of flat-sided members, taken for cloth.
    OpenFlatCoefficient, "asce7-16/open-frame-flat", OPEN;
    /// solid area over gross area
    solidity: f64 as Coefficient = "ε";
    coefficient "C_f": f64
}
impl OpenFlatCoefficient {
    /// Reads the table.
    ///
    /// # Errors
    /// If the solidity is above 0.70, where a frame is no longer open.
    pub fn work(self, ledger: &mut impl Ledger) -> Result<f64, OutOfRange> {
        within("solidity", OPEN, self.solidity, 0.0, OPEN_BELOW)?;
        Ok(self.keep(ledger, open_row(self.solidity, [2.0, 1.8, 1.6])))
    }
}

/// The printed rows are < 0.1, 0.1–0.29 and 0.3–0.7; what lies between 0.29 and 0.3 belongs to the second.
fn open_row(solidity: f64, rows: [f64; 3]) -> f64 {
    rows[if solidity < OPEN_ROW {
        0
    } else if solidity < WALL_FROM {
        1
    } else {
        2
    }]
}

rule! {
    /// Pressure on the solid area of an open frame.
    OpenPressure, "asce7-16/open-frame-pressure", DOCUMENT.at("29.4, Eq. 29.4-1");
    /// velocity pressure at the centroid of the solid area
    velocity_pressure: Pressure = "q_z";
    /// gust-effect factor
    gust: f64 = "G";
    /// force coefficient
    coefficient: f64 = "C_f";
    pressure "p": Pressure = velocity_pressure * gust * coefficient
}

rule! {
    /// Pressure on the gross area of cloth taken as an open frame.
    OpenCloth, "asce7-16/open-cloth-pressure", DOCUMENT.at("29.4, Eq. 29.4-1");
    /// pressure on the solid area
    pressure: Pressure = "p_s";
    /// solid area over gross area, not above 0.70
    solidity: f64 as Coefficient = "ε";
    gross "p": Pressure = pressure * solidity
}

rule! {
    /// Least pressure for structures that are no buildings, at strength level, on the gross area of cloth.
    LeastPressure, "asce7-16/least-pressure", LEAST_CLAUSE;
    /// least pressure on the area
    least: Pressure = "p_min";
    /// share of the gross area it acts on: 1 from ε 0.70 on, ε below
    share: f64 as Coefficient = "a";
    pressure "p": Pressure = least * share
}

/// The rules this edition makes known by name.
pub const RULES: &[Listed] = &[
    Listed::of::<ExposureCoefficient>(),
    Listed::of::<ElevationFactor>(),
    Listed::of::<VelocityPressure>(),
    Listed::of::<VelocityPressureSi>(),
    Listed::of::<WallCoefficient>(),
    Listed::of::<WallFit>(),
    Listed::of::<OpeningsFactor>(),
    Listed::of::<GroundReduction>(),
    Listed::of::<ReturnFactor>(),
    Listed::of::<ZoneCoefficient>(),
    Listed::of::<ZoneFactor>(),
    Listed::of::<WallPressure>(),
    Listed::of::<SkewedPressure>(),
    Listed::of::<ResultantHeight>(),
    Listed::of::<OpenRoundCoefficient>(),
    Listed::of::<OpenFlatCoefficient>(),
    Listed::of::<OpenPressure>(),
    Listed::of::<OpenCloth>(),
    Listed::of::<LeastPressure>(),
    hill::RULES[0],
    hill::RULES[1],
    hill::RULES[2],
    hill::RULES[3],
    hill::RULES[4],
    hill::RULES[5],
];

/// What lies upwind.
pub(super) const EXPOSURE_KEY: SiteKey = SiteKey {
    key: "exposure",
    about: "what lies upwind: \"B\" houses or trees all round, \"C\" open fields, \"D\" open water",
    kind: KeyKind::Choice(&[("B", "houses or trees all round"), ("C", "open fields"), ("D", "open water")]),
    example: ["\"B or C\"", "\"B or C\""],
    range: None,
    heavier: Heavier::Greater,
    instead_of: None,
};
const ELEVATION_KEY: SiteKey = SiteKey {
    key: "ground_elevation",
    about: "height of the ground above sea level",
    kind: KeyKind::Quantity(Measure::Elevation, Some(Value { si: 0.0, measure: Measure::Elevation })),
    example: ["\"340 ft\"", "\"104 m\""],
    range: Some((-500.0, 6000.0)),
    // Elevation thins the air.
    heavier: Heavier::Lesser,
    instead_of: None,
};

/// The keys this edition reads from a site.
pub const SITE_KEYS: &[SiteKey] = &[EXPOSURE_KEY, hill::FACTOR_KEY, ELEVATION_KEY, hill::HILL_KEY];

/// The return period, in years, of the map of a risk category: 300 for I, 700 for II, 1700 for III and 3000 for IV.
/// Nothing for what is no risk category.
///
/// # Source
/// [`RETURN_PERIODS`]
#[must_use]
pub fn design_return_period(risk_category: &str) -> Option<f64> {
    match risk_category.trim() {
        "I" => Some(300.0),
        "II" => Some(700.0),
        "III" => Some(1700.0),
        "IV" => Some(3000.0),
        _ => None,
    }
}

/// The upwind terrain.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Exposure {
    /// Houses or trees all round.
    B,
    /// Open fields.
    C,
    /// Open water.
    D,
}

impl Exposure {
    /// Every exposure, the lightest wind first, as the site keys list them.
    pub(super) const ALL: [Self; 3] = [Self::B, Self::C, Self::D];

    /// Power and gradient height, Table 26.11-1.
    pub(super) const fn constants(self) -> (f64, Length) {
        match self {
            Self::B => (7.0, feet(1200.0)),
            Self::C => (9.5, feet(900.0)),
            Self::D => (11.5, feet(700.0)),
        }
    }

    /// Its column in the table for hills, counted from 1.
    const fn column(self) -> f64 {
        match self {
            Self::B => 1.0,
            Self::C => 2.0,
            Self::D => 3.0,
        }
    }
}

/// A site by this edition.
#[derive(Debug, Clone, PartialEq)]
pub struct Site {
    /// Basic wind speed, if known.
    pub wind_speed: Option<Velocity>,
    /// Upwind terrain.
    pub exposure: Exposure,
    /// What the ground does to the wind.
    pub topography: Topography,
    /// Height of the ground above the sea.
    pub ground_elevation: Length,
}

impl Site {
    /// A site from the values of [`SITE_KEYS`], in their order, those of a table in its place.
    #[must_use]
    pub fn new(values: &SiteValues) -> Self {
        Self {
            wind_speed: values.wind_speed,
            exposure: Exposure::ALL[values.choice(0).min(2)],
            topography: Topography::of(values, 1, 3),
            ground_elevation: Length::from_si(values.quantity(2)),
        }
    }

    /// K_d, which a gust taken as it is does without.
    #[must_use]
    pub fn direction_factor(&self) -> f64 {
        DIRECTIONALITY.value
    }

    /// Velocity pressure at a height, K_d inside.
    ///
    /// # Errors
    /// Above the gradient height of the exposure, or without a speed for the design event.
    pub fn velocity_pressure(
        &self,
        height: Length,
        event: Event,
        ledger: &mut impl Ledger,
    ) -> Result<Pressure, WindError> {
        let (power, gradient_height) = self.exposure.constants();
        within("height", EXPOSURE_CONSTANTS, height, Length::from_si(0.0), gradient_height)?;
        let topographic_factor = self.topography.factor(self.exposure, height, ledger)?;
        let height = if height < LEAST_HEIGHT { LEAST_HEIGHT } else { height };
        let exposure_coefficient = ExposureCoefficient { height, gradient_height, power }.work(ledger);
        let elevation_factor =
            ElevationFactor { elevation: self.ground_elevation, rate: ELEVATION_RATE }.work(ledger);
        let (speed, directionality) = speed_of(event, self.wind_speed, ledger)?;
        Ok(VelocityPressure {
            constant: CONSTANT,
            exposure_coefficient,
            topographic_factor,
            directionality,
            elevation_factor,
            speed,
        }
        .work(ledger))
    }

    /// What a hill does at a height above the ground.
    #[must_use]
    pub fn on_hill(&self, height: Length) -> Option<OnHill> {
        self.topography.told(self.exposure, height, DOCUMENT.at(hill::PLACE))
    }

    /// The pressures on a panel in one case.
    ///
    /// # Errors
    /// Outside the range of the figure, or without a speed for the design event.
    pub fn pressures(
        &self,
        panel: &Panel,
        case: Case,
        event: Event,
        ledger: &mut impl Ledger,
    ) -> Result<Option<Pressures>, WindError> {
        pressures(self, panel, case, event, ledger)
    }

    /// The pressure on the solid area of wires, rails and posts.
    ///
    /// # Errors
    /// Outside the range of the table, or without a speed for the design event.
    pub fn open_pressure(
        &self,
        strip: &Strip,
        case: Case,
        event: Event,
        ledger: &mut impl Ledger,
    ) -> Result<Option<Pressure>, WindError> {
        open_pressure(self, strip, case, event, ledger)
    }
}

/// The speed of an event, with K_d; a gust is taken as it is, from whichever side it comes.
pub(super) fn speed_of(
    event: Event,
    design: Option<Velocity>,
    ledger: &mut impl Ledger,
) -> Result<(Velocity, f64), WindError> {
    Ok(match event {
        Event::Design => (design.ok_or(WindError::NoSpeed)?, ledger.judge("K_d", DIRECTIONALITY)),
        Event::Gust(speed) => (speed, ledger.judge("K_d", ANY_DIRECTION)),
    })
}

/// What the rules of walls and open frames ask of the edition they are worked for; later and earlier editions
/// print the same rules in other places.
pub(super) trait Edition {
    /// Where the edition prints them.
    const PLACES: &'static Places;
    /// Velocity pressure at a height, directionality inside.
    fn velocity_pressure(
        &self,
        height: Length,
        event: Event,
        ledger: &mut impl Ledger,
    ) -> Result<Pressure, WindError>;
}

/// Where an edition prints the cases, as reports name them.
#[derive(Debug)]
pub(super) struct Places {
    pub(super) square: &'static str,
    pub(super) skewed: &'static str,
    pub(super) zoned: &'static str,
    pub(super) open: &'static str,
    pub(super) dense: &'static str,
    pub(super) least: &'static str,
}

impl Edition for Site {
    const PLACES: &'static Places = &Places {
        square: "Fig. 29.3-1 Case A",
        skewed: "Fig. 29.3-1 Case B",
        zoned: "Fig. 29.3-1 Case C",
        open: OPEN_PLACE,
        dense: "Fig. 29.4-2 open frame at 0.70",
        least: "29.7 least pressure",
    };
    fn velocity_pressure(
        &self,
        height: Length,
        event: Event,
        ledger: &mut impl Ledger,
    ) -> Result<Pressure, WindError> {
        Self::velocity_pressure(self, height, event, ledger)
    }
}

/// The pressures on a panel in one case.
///
/// # Errors
/// Outside the range of the figure, or without a speed for the design event.
pub(super) fn pressures(
    edition: &impl Edition,
    panel: &Panel,
    case: Case,
    event: Event,
    ledger: &mut impl Ledger,
) -> Result<Option<Pressures>, WindError> {
    let solidity = on_bound(panel.solidity, SOLIDITY_STEPS);
    let panel = &Panel { solidity, ..*panel };
    if panel.solidity < WALL_FROM && case != Case::Open && case != Case::Least {
        return Ok(None);
    }
    let s_over_h = (panel.height / panel.top()).pure();
    let b_over_s = on_bound((panel.length / panel.height).pure(), &ZONED_B_OVER_S);
    let places = places_of(edition);
    let even = |pressure, resultant, place| {
        Ok(Some(Pressures { zones: vec![Zone::even(panel, pressure)], resultant, place }))
    };
    match case {
        Case::Square => {
            let mean = mean_pressure(edition, panel, s_over_h, b_over_s, event, ledger)?;
            even(mean, raised(panel, s_over_h, ledger), places.square)
        }
        Case::Along(from) if b_over_s < 2.0 => {
            let mean = mean_pressure(edition, panel, s_over_h, b_over_s, event, ledger)?;
            let at = |distance, ledger: &mut _| {
                SkewedPressure { mean, distance, length: panel.length }.work(ledger)
            };
            let (near, far) = (at(Length::from_si(0.0), ledger), at(panel.length, ledger));
            let (pressure_from, pressure_to) = match from {
                From::Start => (near, far),
                From::Finish => (far, near),
            };
            let zone =
                Zone { from: Length::from_si(0.0), to: panel.length, pressure_from, pressure_to, name: "" };
            Ok(Some(Pressures {
                zones: vec![zone],
                resultant: raised(panel, s_over_h, ledger),
                place: places.skewed,
            }))
        }
        Case::Along(from) => {
            let zones = zones(edition, panel, s_over_h, b_over_s, from, event, ledger)?;
            Ok(Some(Pressures { zones, resultant: raised(panel, s_over_h, ledger), place: places.zoned }))
        }
        Case::Open => {
            let middle = panel.bottom + panel.height * 0.5;
            let velocity_pressure = edition.velocity_pressure(middle, event, ledger)?;
            let solidity = panel.solidity.min(OPEN_BELOW);
            let coefficient = OpenFlatCoefficient { solidity }.work(ledger)?;
            let gust = ledger.judge("G", GUST);
            let pressure = OpenPressure { velocity_pressure, gust, coefficient }.work(ledger);
            let pressure = OpenCloth { pressure, solidity }.work(ledger);
            let place = if panel.solidity > OPEN_BELOW { places.dense } else { places.open };
            even(pressure, middle, place)
        }
        Case::Least => match event {
            Event::Gust(_) => Ok(None),
            Event::Design => {
                let share = if panel.solidity >= OPEN_BELOW { 1.0 } else { panel.solidity };
                let pressure = LeastPressure { least: LEAST, share }.work(ledger);
                even(pressure, raised(panel, s_over_h, ledger), places.least)
            }
        },
    }
}

/// The pressure on the solid area of wires, rails and posts.
///
/// # Errors
/// Outside the range of the table, or without a speed for the design event.
pub(super) fn open_pressure(
    edition: &impl Edition,
    strip: &Strip,
    case: Case,
    event: Event,
    ledger: &mut impl Ledger,
) -> Result<Option<Pressure>, WindError> {
    if case == Case::Least {
        return Ok(match event {
            Event::Gust(_) => None,
            Event::Design => Some(LeastPressure { least: LEAST, share: 1.0 }.work(ledger)),
        });
    }
    let velocity_pressure = edition.velocity_pressure(strip.centroid, event, ledger)?;
    let coefficient = OpenRoundCoefficient { solidity: strip.solidity.min(OPEN_BELOW) }.work(ledger)?;
    let gust = ledger.judge("G", GUST);
    Ok(Some(OpenPressure { velocity_pressure, gust, coefficient }.work(ledger)))
}

/// Case A, which is also the mean of Case B.
fn mean_pressure(
    edition: &impl Edition,
    panel: &Panel,
    s_over_h: f64,
    b_over_s: f64,
    event: Event,
    ledger: &mut impl Ledger,
) -> Result<Pressure, WindError> {
    let velocity_pressure = edition.velocity_pressure(panel.top(), event, ledger)?;
    let coefficient = WallCoefficient { s_over_h, b_over_s }.work(ledger)?;
    let factor = OpeningsFactor { solidity: panel.solidity }.work(ledger);
    let gust = ledger.judge("G", GUST);
    Ok(WallPressure { velocity_pressure, gust, coefficient, factor }.work(ledger))
}

fn zones(
    edition: &impl Edition,
    panel: &Panel,
    s_over_h: f64,
    b_over_s: f64,
    windward: From,
    event: Event,
    ledger: &mut impl Ledger,
) -> Result<Vec<Zone>, WindError> {
    let velocity_pressure = edition.velocity_pressure(panel.top(), event, ledger)?;
    let openings = OpeningsFactor { solidity: panel.solidity }.work(ledger);
    let reduction = if s_over_h > 0.8 { GroundReduction { s_over_h }.work(ledger) } else { 1.0 };
    let corner = match windward {
        From::Start => panel.return_at_start,
        From::Finish => panel.return_at_finish,
    };
    let return_factor = if b_over_s >= STARRED_FROM && corner.si() > 0.0 {
        let return_over_s = on_bound((corner / panel.height).pure(), &[RETURN_FROM]);
        ReturnFactor { return_over_s }.work(ledger)?
    } else {
        1.0
    };
    if !ZONED_B_OVER_S.contains(&b_over_s) {
        ledger.write(|| Entry::Judged {
            symbol: "B/s",
            value: Value::new(b_over_s, Measure::Coefficient),
            because: ZONES_BETWEEN,
        });
    }
    let gust = ledger.judge("G", GUST);
    let (ends, names) = zone_layout(b_over_s);
    let mut zones = Vec::with_capacity(ends.len());
    let mut from = 0.0;
    for (at, (end, name)) in ends.iter().zip(names).enumerate() {
        let to = end.min(b_over_s);
        let coefficient =
            ZoneCoefficient { b_over_s, distance_over_s: between(from, to, 0.5) }.work(ledger)?;
        let corner = if at == 0 { return_factor } else { 1.0 };
        let factor = ZoneFactor { openings, reduction, corner }.work(ledger);
        let pressure = WallPressure { velocity_pressure, gust, coefficient, factor }.work(ledger);
        let (near, far) = match windward {
            From::Start => (panel.height * from, panel.height * to),
            From::Finish => (panel.length - panel.height * to, panel.length - panel.height * from),
        };
        zones.push(Zone { from: near, to: far, pressure_from: pressure, pressure_to: pressure, name });
        if to >= b_over_s {
            break;
        }
        from = to;
    }
    match windward {
        From::Start => {
            if let Some(last) = zones.last_mut() {
                last.to = panel.length;
            }
        }
        From::Finish => {
            zones.reverse();
            zones[0].from = Length::from_si(0.0);
        }
    }
    Ok(zones)
}

fn places_of<E: Edition>(_: &E) -> &'static Places {
    E::PLACES
}

/// Height of the resultant of a wall's pressure.
fn raised(panel: &Panel, s_over_h: f64, ledger: &mut impl Ledger) -> Length {
    ResultantHeight { bottom: panel.bottom, height: panel.height, s_over_h }.work(ledger)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::mph;
    use crate::workings::Blank;

    fn site() -> Site {
        Site {
            wind_speed: Some(mph(115.0)),
            exposure: Exposure::C,
            topography: Topography::Factor(1.0),
            ground_elevation: feet(0.0),
        }
    }

    fn panel(length: f64, height: f64) -> Panel {
        let none = feet(0.0);
        Panel {
            bottom: none,
            height: feet(height),
            length: feet(length),
            solidity: 1.0,
            return_at_start: none,
            return_at_finish: none,
        }
    }

    #[test]
    fn the_table_of_walls_is_the_commentary_fit_rounded_to_a_twentieth() {
        for (row, s_over_h) in S_OVER_H.iter().enumerate() {
            for (column, b_over_s) in B_OVER_S.iter().enumerate() {
                let fit = WallFit { s_over_h: *s_over_h, b_over_s: *b_over_s }.work(&mut Blank);
                assert_eq!(
                    (fit * 20.0).round(),
                    (WALL_TABLE[(row, column)] * 20.0).round(),
                    "s/h {s_over_h}, B/s {b_over_s}"
                );
            }
        }
    }

    #[test]
    fn the_table_holds_its_printed_edges_and_refuses_beyond_what_a_wall_can_be() {
        let at = |s_over_h, b_over_s| WallCoefficient { s_over_h, b_over_s }.work(&mut Blank);
        assert_eq!(at(1.0, 60.0), at(1.0, 45.0));
        assert_eq!(at(0.1, 1.0), at(0.16, 1.0));
        assert_eq!(at(0.5, 0.01), at(0.5, 0.05));
        assert!(at(1.01, 1.0).is_err());
        assert!(at(0.0, 1.0).is_err());
        assert!(at(1.0, f64::NAN).is_err());
    }

    #[test]
    fn zones_between_ten_and_thirteen_are_split_and_a_missing_zone_takes_the_upper_value() {
        let at = |b_over_s, x| ZoneCoefficient { b_over_s, distance_over_s: x }.work(&mut Blank).unwrap();
        for (x, printed) in
            [(0.5, 3.917), (1.5, 2.55), (2.5, 1.95), (3.5, 1.317), (4.5, 1.217), (7.0, 0.917), (11.0, 0.55)]
        {
            assert!((at(12.0, x) - printed).abs() < 6e-4, "{x}");
        }
        assert_eq!(at(2.5, 2.2), 1.15);
        assert_eq!(at(10.0, 9.0), 0.95);
        // The far end of the wall still lies in its last zone.
        assert_eq!(at(10.0, 10.0), 0.95);
        assert!((at(4.5, 4.2) - 1.075).abs() < 1e-12);
    }

    #[test]
    fn zones_cover_the_wall_without_a_gap_from_either_end() {
        for b_over_s in [2.0, 2.5, 3.0, 4.5, 9.9, 10.0, 10.1, 12.0, 13.0, 45.0, 60.0] {
            let panel = panel(10.0 * b_over_s, 10.0);
            let along = |from| {
                site().pressures(&panel, Case::Along(from), Event::Design, &mut Blank).unwrap().unwrap().zones
            };
            let (forth, back) = (along(From::Start), along(From::Finish));
            assert_eq!(forth.len(), back.len());
            for zones in [&forth, &back] {
                assert_eq!(zones[0].from.si(), 0.0);
                assert_eq!(zones[zones.len() - 1].to, panel.length);
                assert!(zones.windows(2).all(|two| (two[0].to - two[1].from).si().abs() < 1e-9));
                assert!(zones.iter().all(|zone| zone.to > zone.from));
            }
            for (one, other) in forth.iter().zip(back.iter().rev()) {
                assert_eq!(one.pressure_from, other.pressure_from);
                assert!((one.from + other.to - panel.length).si().abs() < 1e-9);
            }
        }
    }

    #[test]
    fn case_b_keeps_the_mean_and_puts_the_resultant_a_fifth_of_the_length_off_the_middle() {
        let panel = panel(15.0, 10.0);
        let mean = site().pressures(&panel, Case::Square, Event::Design, &mut Blank).unwrap().unwrap().zones
            [0]
        .pressure_from;
        let zone = site()
            .pressures(&panel, Case::Along(From::Start), Event::Design, &mut Blank)
            .unwrap()
            .unwrap()
            .zones[0];
        let (near, far) = (zone.pressure_from, zone.pressure_to);
        assert!(((near + far) * 0.5 - mean).si().abs() < 1e-9);
        // Resultant of a trapezoid from its start, as a share of the length.
        let place = ((near + far * 2.0) / (near + far)).pure() / 3.0;
        assert!((place - 0.3).abs() < 1e-12);
    }

    #[test]
    fn a_return_relieves_the_starred_zone_only_and_a_short_one_nothing() {
        let first = |return_ft, b_over_s: f64| {
            let panel = Panel { return_at_start: feet(return_ft), ..panel(10.0 * b_over_s, 10.0) };
            let zones = site()
                .pressures(&panel, Case::Along(From::Start), Event::Design, &mut Blank)
                .unwrap()
                .unwrap()
                .zones;
            (zones[0].pressure_from.si(), zones[1].pressure_from.si())
        };
        let free = first(0.0, 12.0);
        for (return_ft, factor) in
            [(2.9, 1.0), (3.0, 0.9), (10.0, 0.75), (15.0, 0.675), (20.0, 0.6), (500.0, 0.6)]
        {
            let with = first(return_ft, 12.0);
            assert!((with.0 / free.0 - factor).abs() < 1e-12, "{return_ft}");
            assert_eq!(with.1, free.1);
        }
        assert_eq!(first(20.0, 4.9), first(0.0, 4.9));
    }

    #[test]
    fn the_worked_vector_of_a_solid_screen() {
        let panel = panel(200.0, 10.0);
        let q = site().velocity_pressure(feet(10.0), Event::Design, &mut Blank).unwrap();
        assert!(((q / psf(1.0)).pure() - 24.429).abs() < 5e-4);
        let square = site().pressures(&panel, Case::Square, Event::Design, &mut Blank).unwrap().unwrap();
        assert!(((square.zones[0].pressure_from / psf(1.0)).pure() - 26.994).abs() < 5e-4);
        assert!((square.resultant - feet(5.5)).si().abs() < 1e-12);
        let along =
            site().pressures(&panel, Case::Along(From::Start), Event::Design, &mut Blank).unwrap().unwrap();
        assert!(((along.zones[0].pressure_from / psf(1.0)).pure() - 67.537).abs() < 5e-4);
    }

    #[test]
    fn the_maps_of_the_four_risk_categories_have_their_return_periods_and_no_other_word_has_one() {
        use crate::wind::Code;
        let of = |category| Code::Asce7_16.design_return_period(category);
        let periods = ["I", "II", " III ", "IV"].map(of);
        assert_eq!(periods, [Some(300.0), Some(700.0), Some(1700.0), Some(3000.0)]);
        for none in ["", "V", "ii", "2", "I or II"] {
            assert_eq!(of(none), None, "{none}");
        }
    }

    #[test]
    fn the_constant_of_the_si_form_gives_61_3_pascals_at_ten_metres_a_second() {
        let ten = Velocity::from_si(10.0);
        let asked = VelocityPressureSi {
            exposure_coefficient: 1.0,
            topographic_factor: 1.0,
            directionality: 1.0,
            elevation_factor: 1.0,
            speed: ten,
        };
        assert!((asked.work(&mut Blank).unwrap().si() - 61.3).abs() < 1e-12);
    }

    #[test]
    fn an_open_frame_just_at_a_bound_is_in_the_denser_row() {
        let rows = [0.0999, 0.1, 0.2999, 0.3].map(|solidity| open_row(solidity, [2.0, 1.8, 1.6]));
        assert_eq!(rows, [2.0, 1.8, 1.8, 1.6]);
    }

    #[test]
    fn cloth_of_0_70_is_still_an_open_frame_by_the_figure_and_denser_cloth_is_taken_as_one_and_told_so() {
        let place = |solidity| {
            let panel = Panel { solidity, ..panel(60.0, 10.0) };
            site().pressures(&panel, Case::Open, Event::Design, &mut Blank).unwrap().unwrap().place
        };
        assert_eq!([0.5, 0.70].map(place), [OPEN_PLACE; 2]);
        assert_eq!(place(0.71), "Fig. 29.4-2 open frame at 0.70");
    }

    #[test]
    fn a_height_above_the_gradient_height_is_refused_with_its_clause() {
        let error = site().velocity_pressure(feet(901.0), Event::Design, &mut Blank).unwrap_err();
        let text = error.to_string();
        assert!(text.contains("901 ft") && text.contains("Table 26.11-1"), "{text}");
    }

    #[test]
    fn a_gust_knows_no_direction_factor_and_no_least_pressure() {
        let q = |event| site().velocity_pressure(feet(10.0), event, &mut Blank).unwrap();
        assert!((q(Event::Gust(mph(115.0))).si() * 0.85 / q(Event::Design).si() - 1.0).abs() < 1e-12);
        let least = |event| site().pressures(&panel(100.0, 10.0), Case::Least, event, &mut Blank).unwrap();
        assert!(least(Event::Gust(mph(20.0))).is_none());
        assert!((least(Event::Design).unwrap().zones[0].pressure_from / psf(16.0)).pure() == 1.0);
    }
}
