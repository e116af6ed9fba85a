//! Wind on screened fences.
//!
//! Cloth hung on a chain-link fence turns it into a sail. This library works out, bay by bay and post by post, the
//! wind's pressure and the bending moment at each post's foot, the ratio to what the post carries, and the gust at
//! which it reaches its limit, with the cloth and without. It never calls a fence safe: what was not checked is a
//! verdict of its own.
//!
//! ```
//! use fencegust::{Survey, check};
//!
//! let text = include_str!("../examples/tarnwick-green.toml");
//! let survey = Survey::read(text, "tarnwick-green.toml")?;
//! let answer = check(survey)?;
//! let worst = answer.runs.iter().map(|run| run.worst.limit_gust);
//! assert!(worst.clone().count() == 4 && worst.clone().all(|gust| gust < fencegust::units::mph(115.0)));
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```
//!
//! The modules stand on floors, and each imports only from floors below its own; see `DEVELOPERS.md`.

pub mod answers;
pub mod caution;
#[cfg(feature = "command")]
pub mod cli;
pub mod fastening;
pub mod fence;
pub mod footing;
pub mod frame;
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

pub use answers::{Check, check};
pub use fence::Fence;
pub use survey::Survey;
pub use verdict::RunVerdict as Verdict;
