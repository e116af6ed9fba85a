//! A value as a crew knows it: measured, between two, or unknown.

/// A value as far as it is known.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Reading<T> {
    /// One value.
    Measured(T),
    /// Between two, the lesser first.
    Between(T, T),
    /// Not known.
    Unknown,
}

impl<T: Copy> Reading<T> {
    /// Whether it is one value.
    #[must_use]
    pub const fn is_point(&self) -> bool {
        matches!(self, Self::Measured(_))
    }
    /// The lesser end, if there is one.
    #[must_use]
    pub fn low(&self) -> Option<T> {
        match self {
            Self::Measured(value) | Self::Between(value, _) => Some(*value),
            Self::Unknown => None,
        }
    }
    /// The greater end, if there is one.
    #[must_use]
    pub fn high(&self) -> Option<T> {
        match self {
            Self::Measured(value) | Self::Between(_, value) => Some(*value),
            Self::Unknown => None,
        }
    }
    /// The same with each value changed.
    #[must_use]
    pub fn map<U>(self, change: impl Fn(T) -> U) -> Reading<U> {
        match self {
            Self::Measured(value) => Reading::Measured(change(value)),
            Self::Between(low, high) => Reading::Between(change(low), change(high)),
            Self::Unknown => Reading::Unknown,
        }
    }
}

/// Which end of what is not known.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Extreme {
    /// The end that is worse for the fence.
    Worst,
    /// The end that is better.
    Best,
}
