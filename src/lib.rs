//! Wind on screened fences.
pub mod numerics;
pub mod source;
pub mod units;
pub mod workings;
pub mod wind;
