//! Wind on screened fences.
pub mod answers;
pub mod caution;
#[cfg(feature = "command")]
pub mod cli;
pub mod fence;
pub mod loads;
pub mod member;
pub mod numerics;
pub mod report;
pub mod rules;
pub mod screen;
pub mod source;
pub mod survey;
pub mod units;
pub mod verdict;
pub mod wind;
pub mod workings;
