//! Quantities of the trade, and how each is read and written.
//!
//! A quantity carries its dimension in its type, so that a pressure cannot be passed where a force is
//! asked for:
//!
//! ```compile_fail
//! use fencegust::units::{Force, psf};
//! let force: Force = psf(25.0);
//! ```
//!
//! Values are held in SI. [`Measure`] says how a value is read and written in either system, so that a wall
//! stands in inches or millimetres and a height in feet or metres though both are lengths. This is the only
//! module that names the units library.

mod measure;
mod read;
mod unit;
mod write;

pub use measure::{Measure, System};
pub use read::{ReadError, read, read_number};
pub use unit::{Dimension, UNITS, Unit};
pub use write::{number, trimmed};

use uom::si::{ISQ, SI};
use uom::typenum::{N1, N2, N3, P1, P2, P3, P4, Z0};

type Si<L, M, T> = uom::si::Quantity<ISQ<L, M, T, Z0, Z0, Z0, Z0>, SI<f64>, f64>;

/// A length.
pub type Length = Si<P1, Z0, Z0>;
/// An area.
pub type Area = Si<P2, Z0, Z0>;
/// A section modulus, elastic or plastic.
pub type SectionModulus = Si<P3, Z0, Z0>;
/// A second moment of area.
pub type SecondMoment = Si<P4, Z0, Z0>;
/// One over a length.
pub type PerLength = Si<N1, Z0, Z0>;
/// A speed.
pub type Velocity = Si<P1, Z0, N1>;
/// A force.
pub type Force = Si<P1, P1, N2>;
/// A bending moment.
pub type Moment = Si<P2, P1, N2>;
/// A pressure or a stress.
pub type Pressure = Si<N1, P1, N2>;
/// A force for each length.
pub type LineLoad = Si<Z0, P1, N2>;
/// A mass for each length; no formula is given one, so it is neither read nor written.
pub type MassPerLength = Si<N1, P1, Z0>;
/// A pressure that grows with depth.
pub type PressurePerDepth = Si<N2, P1, N2>;
/// Pressure for each speed squared, the dimension of a density.
pub type PressurePerSpeedSquared = Si<N3, P1, Z0>;
/// A time.
pub type Time = Si<Z0, Z0, P1>;
/// A frequency.
pub type Frequency = Si<Z0, Z0, N1>;
/// An acceleration.
pub type Acceleration = Si<P1, Z0, N2>;
/// A pure number as the units library makes it from like divided by like; see [`Pure`].
pub type Ratio = Si<Z0, Z0, Z0>;

/// What every quantity of the trade can do.
pub trait Quantity: Copy {
    /// How it is read and written when nothing else is said.
    const MEASURE: Measure;
    /// The quantity of so many SI units.
    fn from_si(si: f64) -> Self;
    /// How many SI units it is.
    fn si(self) -> f64;
}

macro_rules! quantities {
    ($($type:ty => $measure:ident),+ $(,)?) => { $(
        impl Quantity for $type {
            const MEASURE: Measure = Measure::$measure;
            #[inline(always)]
            fn from_si(si: f64) -> Self {
                Self { dimension: std::marker::PhantomData, units: std::marker::PhantomData, value: si }
            }
            #[inline(always)]
            fn si(self) -> f64 {
                self.value
            }
        }
    )+ };
}

quantities! {
    Length => Length,
    Area => Area,
    SectionModulus => SectionModulus,
    SecondMoment => SecondMoment,
    PerLength => PerLength,
    Velocity => Speed,
    Force => Force,
    Moment => Moment,
    Pressure => Pressure,
    LineLoad => LineLoad,
    PressurePerDepth => PressurePerDepth,
    PressurePerSpeedSquared => PressurePerSpeedSquared,
    Time => Time,
    Frequency => Frequency,
    Acceleration => Acceleration,
}

impl Quantity for f64 {
    const MEASURE: Measure = Measure::Ratio;
    #[inline(always)]
    fn from_si(si: f64) -> Self {
        si
    }
    #[inline(always)]
    fn si(self) -> f64 {
        self
    }
}

/// Standard gravity, by definition.
pub const STANDARD_GRAVITY: Acceleration =
    Si { dimension: std::marker::PhantomData, units: std::marker::PhantomData, value: unit::GRAVITY };

/// From a quotient of like quantities to a plain number.
pub trait Pure {
    /// The plain number.
    fn pure(self) -> f64;
}
impl Pure for Ratio {
    #[inline(always)]
    fn pure(self) -> f64 {
        self.value
    }
}

/// Powers as they are written in formulas, for plain numbers and quantities alike.
pub trait Powers: Copy + std::ops::Mul<Self> + Sized {
    /// The square.
    #[inline(always)]
    fn squared(self) -> <Self as std::ops::Mul>::Output {
        self * self
    }
    /// The cube.
    #[inline(always)]
    fn cubed(self) -> <<Self as std::ops::Mul>::Output as std::ops::Mul<Self>>::Output
    where
        <Self as std::ops::Mul>::Output: std::ops::Mul<Self>,
    {
        self * self * self
    }
    /// The fourth power.
    #[inline(always)]
    fn to_the_fourth(self) -> <<Self as std::ops::Mul>::Output as std::ops::Mul>::Output
    where
        <Self as std::ops::Mul>::Output: Copy + std::ops::Mul,
    {
        (self * self) * (self * self)
    }
}
impl<T: Copy + std::ops::Mul<T>> Powers for T {}

/// A quantity whose type has been forgotten, with the way it is written.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Value {
    /// So many SI units.
    pub si: f64,
    /// How it is read and written.
    pub measure: Measure,
}

impl Value {
    /// A quantity, to be written as `measure` says.
    pub fn new(quantity: impl Quantity, measure: Measure) -> Self {
        Self { si: quantity.si(), measure }
    }
    /// A quantity, written as its kind is written.
    pub fn of<Q: Quantity>(quantity: Q) -> Self {
        Self::new(quantity, Q::MEASURE)
    }
    /// The text in one system, with its unit.
    #[must_use]
    pub fn written(self, system: System) -> String {
        self.measure.write(self.si, system)
    }
}

macro_rules! makers {
    ($($(#[$doc:meta])* $name:ident: $type:ty = $unit:literal;)+) => { $(
        $(#[$doc])*
        #[inline]
        #[must_use]
        pub const fn $name(value: f64) -> $type {
            Si { dimension: std::marker::PhantomData, units: std::marker::PhantomData, value: value * unit::si_of($unit) }
        }
    )+ };
}

makers! {
    /// So many feet.
    feet: Length = "ft";
    /// So many inches.
    inches: Length = "in";
    /// So many metres.
    metres: Length = "m";
    /// So many millimetres.
    millimetres: Length = "mm";
    /// So many miles an hour.
    mph: Velocity = "mph";
    /// So many metres a second.
    metres_per_second: Velocity = "m/s";
    /// So many pounds-force a square foot.
    psf: Pressure = "psf";
    /// So many thousand pounds-force a square inch.
    ksi: Pressure = "ksi";
    /// So many megapascals.
    megapascals: Pressure = "MPa";
    /// So many pascals.
    pascals: Pressure = "Pa";
    /// The weight of so many ounces a square yard.
    ounces_per_square_yard: Pressure = "oz/yd²";
    /// So many pounds-force.
    pounds: Force = "lbf";
    /// So many newtons.
    newtons: Force = "N";
    /// So many pound-feet.
    pound_feet: Moment = "lb-ft";
    /// So many newton-metres.
    newton_metres: Moment = "N m";
    /// So many pounds-force a foot.
    pounds_per_foot: LineLoad = "lb/ft";
    /// So many newtons a metre.
    newtons_per_metre: LineLoad = "N/m";
    /// So many pounds-force a square foot for each mile an hour squared.
    psf_per_mph_squared: PressurePerSpeedSquared = "psf/mph²";
    /// So many pascals for each metre a second squared.
    pascals_per_speed_squared: PressurePerSpeedSquared = "Pa/(m/s)²";
    /// So many seconds.
    seconds: Time = "s";
    /// So many hertz.
    hertz: Frequency = "Hz";
    /// So many pounds-force a square foot for each foot of depth, or pounds-force a cubic foot.
    psf_per_foot: PressurePerDepth = "psf/ft";
    /// So many kilopascals for each metre of depth, or kilonewtons a cubic metre.
    kilopascals_per_metre: PressurePerDepth = "kPa/m";
    /// So many pounds-force a cubic inch.
    pounds_per_cubic_inch: PressurePerDepth = "lb/in³";
    /// So many a foot.
    per_foot: PerLength = "/ft";
}

#[cfg(test)]
mod tests {
    use super::*;
    use approx::assert_relative_eq;

    #[test]
    fn the_pound_force_is_exact() {
        assert_eq!(pounds(1.0).si(), 0.453_592_37 * 9.806_65);
        assert_relative_eq!(
            ksi(1.0).si(),
            1000.0 * 0.453_592_37 * 9.806_65 / (0.0254 * 0.0254),
            max_relative = 1e-15
        );
        assert_relative_eq!(psf(1.0).si() * 144.0, ksi(0.001).si(), max_relative = 1e-15);
    }

    #[test]
    fn force_times_length_is_a_moment_and_pressure_times_area_a_force() {
        let moment: Moment = pounds(100.0) * feet(5.0);
        assert_relative_eq!(moment.si(), pound_feet(500.0).si(), max_relative = 1e-15);
        let force: Force = psf(10.0) * (feet(10.0) * feet(9.0));
        assert_relative_eq!(force.si(), pounds(900.0).si(), max_relative = 1e-15);
    }

    #[test]
    fn a_quantity_that_forgot_its_type_is_written_as_its_kind_is() {
        let length = Value::of(feet(10.0));
        assert_eq!([System::Us, System::Si].map(|system| length.written(system)), ["10 ft", "3.048 m"]);
    }

    #[test]
    fn a_plain_number_is_itself_in_any_unit() {
        assert_eq!((f64::from_si(0.25), 0.25.si()), (0.25, 0.25));
    }

    #[test]
    fn a_mile_an_hour_is_0_44704_metres_a_second() {
        assert_eq!(mph(1.0).si(), 0.44704);
    }
}
